/* What water and a pressure canner do by elevation, as a chart for the wall. */
#include <math.h>

#include "jarwright/physics.h"
#include "jarwright/render_page.h"

#define MILLI     1000
#define FT_TO_M   0.3048 /* exact: international foot */
#define PROCESS_F 240.0  /* the temperature that the guide names for low-acid food, p. 1-19 */
#define TOP_FT    10000  /* as far as the tables of processes go */
#define ROWS      11     /* of the table, TOP_FT among them */
#define POINTS    41     /* of a curve */

static const char chart_style[] =
    ".pair{display:grid;grid-template-columns:1fr 1fr;gap:6mm}\n"
    "header,.careful{margin-bottom:3mm}\n"
    "table{table-layout:fixed}\n"
    "td,th{text-align:right;text-wrap:balance}\n"
    "td,tbody th{font-size:12.5pt;font-weight:400;padding-top:.4mm;padding-bottom:.4mm}\n"
    "tbody small{display:block;font-size:9.5pt}\n"
    "tr.own>*{font-weight:700}\n"
    "@media screen and (max-width:700px){.pair{display:block}td,tbody th{font-size:10pt}"
    "td,th{padding-left:0;padding-right:.5mm}thead th{font-size:8pt}}\n";

struct figures {
	double boiling_f, gauge_psi;
};

static double celsius(double fahrenheit)
{
	return (fahrenheit - 32) / 1.8;
}

/* The gauge rounded up to a tenth: read to the rounded figure, it is never short. */
static struct figures figures_at(double ft)
{
	return (struct figures){
	    .boiling_f = physics_boiling_point(ft),
	    .gauge_psi = ceil(physics_gauge_pressure_for(PROCESS_F, ft) * 10) / 10,
	};
}

static void row(FILE *out, double ft, bool own)
{
	struct figures at = figures_at(ft);
	char feet[32], metres[32];
	html_print(out,
		   own ? "<tr class=\"own\"><th scope=\"row\">%s<small>your kitchen</small></th>"
		       : "<tr><th scope=\"row\">%s</th>",
		   feet_words(feet, sizeof feet, (int32_t)ceil(ft)));
	fprintf(out, "<td>%s</td><td>%.1f</td><td>%.1f</td><td>%.1f</td></tr>\n",
		feet_words(metres, sizeof metres, (int32_t)lround(ft * FT_TO_M)), at.boiling_f,
		celsius(at.boiling_f), at.gauge_psi);
}

static void table(FILE *out, struct elevation_mark here)
{
	double own_ft = (double)here.mft / MILLI, step = (double)TOP_FT / (ROWS - 1);
	fputs("<table>\n<caption>By elevation above sea level</caption>\n<thead><tr>"
	      "<th scope=\"col\">feet</th><th scope=\"col\">metres</th>"
	      "<th scope=\"col\">water boils at °F</th><th scope=\"col\">water boils at °C</th>"
	      "<th scope=\"col\">gauge at 240 °F, psi</th></tr></thead>\n<tbody>\n",
	      out);
	if (here.stated && own_ft < 0)
		row(out, own_ft, true);
	for (int i = 0; i < ROWS; i++) {
		double ft = i * step;
		bool exactly = here.stated && own_ft == ft;
		row(out, ft, exactly);
		if (here.stated && own_ft > ft && own_ft < ft + step && own_ft < TOP_FT)
			row(out, own_ft, true);
	}
	if (here.stated && own_ft > TOP_FT)
		row(out, own_ft, true);
	fputs("</tbody>\n</table>\n", out);
}

/* One curve over the elevations of the chart. */
static void curve(FILE *out, struct elevation_mark here, bool gauge)
{
	double xs[POINTS], ys[POINTS], own_ft = (double)here.mft / MILLI;
	struct figures own = figures_at(own_ft);
	char mark[64];
	for (int i = 0; i < POINTS; i++) {
		xs[i] = TOP_FT * (double)i / (POINTS - 1);
		/* The curve itself, not the figures rounded for reading. */
		ys[i] = gauge ? physics_gauge_pressure_for(PROCESS_F, xs[i])
			      : physics_boiling_point(xs[i]);
	}
	snprintf(mark, sizeof mark, gauge ? "your kitchen: %.1f psi" : "your kitchen: %.1f °F",
		 gauge ? own.gauge_psi : own.boiling_f);
	struct line_plot plot = {
	    .says = gauge ? "Line: the gauge pressure for 240 °F rises with elevation; the "
			    "figures are in the table."
			  : "Line: the boiling point of water falls with elevation; the figures "
			    "are in the table.",
	    .wide = 340,
	    .x = {0, TOP_FT, 2000, "elevation, feet"},
	    .y = gauge ? (struct plot_axis){10, 16, 1, "psi"}
		       : (struct plot_axis){190, 215, 5, "°F"},
	    .xs = xs,
	    .ys = ys,
	    .n = POINTS,
	    .marked = here.stated && own_ft >= 0 && own_ft <= TOP_FT,
	    .mark_x = own_ft,
	    .mark_y = gauge ? own.gauge_psi : own.boiling_f,
	    .mark_says = mark,
	};
	html_print(out, "<figure>\n<figcaption>%s</figcaption>\n",
		   gauge ? "Gauge pressure for 240 °F in a vented canner"
			 : "Boiling point of water, °F");
	plot_line(out, &plot);
	fputs("</figure>\n", out);
}

bool boil_chart_html(FILE *out, const struct boil_chart *chart, struct error *err)
{
	char words[WORDS_BUFFER], kicker[WORDS_BUFFER + 64] = "By elevation";
	if (chart->here.stated) {
		struct figures own = figures_at((double)chart->here.mft / MILLI);
		if (isnan(own.boiling_f) || isnan(own.gauge_psi))
			return error_usage(err, "boil: the standard atmosphere ends before this "
						"elevation; check what you typed");
		snprintf(kicker, sizeof kicker, "By elevation · kitchen at %s",
			 elevation_words(words, sizeof words, chart->here.mft));
	}
	html_begin(out, "Water and steam", kicker, chart_style);
	fputs("<p class=\"careful\"><b>Not a process.</b> These figures explain the tables and "
	      "never replace them. Set the canner to the pressure that your food's own table "
	      "prints for your elevation: ask <b>jarwright check</b>.</p>\n",
	      out);
	fputs("<div class=\"pair\">\n", out);
	curve(out, chart->here, false);
	curve(out, chart->here, true);
	fputs("</div>\n", out);
	table(out, chart->here);
	fputs("<p class=\"source\">Pure water, the standard atmosphere (U.S. Standard Atmosphere, "
	      "1976) and steam tables (IAPWS-IF97); weather shifts them. Pressures are rounded up "
	      "to a tenth.</p>\n",
	      out);
	html_end(out, chart->edition);
	return true;
}
