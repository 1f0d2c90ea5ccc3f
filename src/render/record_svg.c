/* The plot of a recorder's trace: one panel a channel, on a common axis of time. */
#include <math.h>
#include <string.h>

#include "jarwright/render_record.h"

/* Layout, in the drawing's own units (pixels at its natural size). */
#define WIDTH        960
#define LEFT         90.0
#define RIGHT        880.0
#define TOP          130.0
#define PANEL        250.0
#define PANEL_SPACE  90.0
#define LINE_HEIGHT  22.0
#define MARK_SIZE    7.0
#define TICKS_MOST   8
#define DIPS_LISTED  12
#define BELOW_BOIL_F 40.0 /* how far below boiling the temperature is drawn: dips must be seen */

struct scale {
	double from, to; /* values at the two ends */
	double a, b;     /* where the ends are drawn */
};

struct plot {
	FILE *out;
	const struct record_report *report;
	const struct record_outline *outline;
	struct scale x;
	double lowest[RECORD_CHANNELS]; /* readings */
	double bottom;                  /* of the last panel */
};

static const char *const channel_titles[] = {"Temperature, °F (right: °C)",
					     "Gauge pressure, psi (right: kPa)"};

static double place(const struct scale *scale, double value)
{
	return scale->a + (value - scale->from) / (scale->to - scale->from) * (scale->b - scale->a);
}

/* Drawn no further than the panel goes. */
static double inside(const struct scale *scale, double value)
{
	return place(scale,
		     fmin(fmax(value, fmin(scale->from, scale->to)), fmax(scale->from, scale->to)));
}

static void put_escaped(FILE *out, const char *text)
{
	for (; *text; text++)
		switch (*text) {
		case '&':
			fputs("&amp;", out);
			break;
		case '<':
			fputs("&lt;", out);
			break;
		case '>':
			fputs("&gt;", out);
			break;
		case '"':
			fputs("&quot;", out);
			break;
		default:
			fputc(*text, out);
		}
}

#define LETTERS_MOST 100 /* that fit on a line; a longer one is set narrower */

static void put_text(FILE *out, double x, double y, const char *anchor, const char *text)
{
	fprintf(out, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\"", x, y, anchor);
	if (strlen(text) > LETTERS_MOST)
		fprintf(out, " textLength=\"%.0f\" lengthAdjust=\"spacingAndGlyphs\"",
			RIGHT - LEFT);
	fputc('>', out);
	put_escaped(out, text);
	fputs("</text>\n", out);
}

/* The smallest of 1, 2 or 5 times a power of ten that makes few enough ticks. */
static double nice_step(double range)
{
	double step = pow(10, floor(log10(range / TICKS_MOST)));
	static const double times[] = {1, 2, 5, 10};
	for (size_t i = 0; i < sizeof times / sizeof *times; i++)
		if (range / (step * times[i]) <= TICKS_MOST)
			return step * times[i];
	return step * 10;
}

static double nice_time_step(double range_s)
{
	static const double steps[] = {1,   2,   5,    10,   15,   30,    60,    120,  300,
				       600, 900, 1800, 3600, 7200, 10800, 21600, 43200};
	for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
		if (range_s / steps[i] <= TICKS_MOST)
			return steps[i];
	return nice_step(range_s);
}

static void time_axis(const struct plot *p, double top, double bottom)
{
	double zone_s =
	    p->report->found->of_day ? p->report->found->zone_s : -p->report->judgement->from_s;
	double step = nice_time_step(p->x.to - p->x.from);
	double first = ceil((p->x.from + zone_s) / step);
	for (int i = 0; (first + i) * step - zone_s <= p->x.to; i++) {
		char words[64];
		double at_s = (first + i) * step - zone_s, x = place(&p->x, at_s);
		fprintf(p->out, "<path class=\"grid\" d=\"M%.1f %.1fV%.1f\"/>\n", x, top, bottom);
		put_text(p->out, x, bottom + 18, "middle",
			 record_moment_words(words, sizeof words, p->report, at_s));
	}
}

/* Ticks of one side; `times` and `plus` turn the scale's values into the side's unit. */
static void value_axis(const struct plot *p, const struct scale *y, double times, double plus,
		       bool left)
{
	double from = y->from * times + plus, to = y->to * times + plus;
	double step = nice_step(to - from);
	for (int i = 0; (ceil(from / step) + i) * step <= to; i++) {
		char words[32];
		double value = (ceil(from / step) + i) * step;
		double at = place(y, (value - plus) / times);
		snprintf(words, sizeof words, "%.6g", value + 0.0);
		if (left)
			fprintf(p->out, "<path class=\"grid\" d=\"M%.1f %.1fH%.1f\"/>\n", LEFT, at,
				RIGHT);
		put_text(p->out, left ? LEFT - 8 : RIGHT + 8, at + 5, left ? "end" : "start",
			 words);
	}
}

/* Each step of time as an upright stroke from its highest to its lowest reading. */
static void curve(const struct plot *p, const struct scale *y, int c)
{
	const struct record_outline *o = p->outline;
	bool pen_down = false;
	fputs("<path class=\"trace\" d=\"", p->out);
	for (size_t i = 0; i < o->steps_n; i++) {
		const struct record_step *step = &o->steps[i];
		if (isnan(step->least[c]) || step->most[c] < y->from) {
			pen_down = pen_down && isnan(step->least[c]);
			continue;
		}
		double x = place(&p->x, o->from_s + ((double)i + 0.5) * o->step_s);
		double high = inside(y, step->most[c]), low = inside(y, step->least[c]);
		fprintf(p->out, "%c%.1f %.1f", pen_down && !step->gap ? 'L' : 'M', x, high);
		if (low - high >= 0.05)
			fprintf(p->out, "V%.1f", low);
		else
			fputs("h.1", p->out); /* a lone reading shows too */
		pen_down = true;
	}
	fputs("\"/>\n", p->out);
}

static void dip_title(const struct plot *p, size_t i)
{
	const struct record_dip *dip = &p->report->judgement->dips[i];
	char from[64], length[64];
	fprintf(p->out, "Break %zu: %s from %s, %s", i + 1, dip->gap ? "no readings" : "below",
		record_moment_words(from, sizeof from, p->report, dip->from_s),
		record_length_words(length, sizeof length, dip->to_s - dip->from_s));
	if (!dip->ended)
		fputs(", never reached again", p->out);
	if (!isnan(dip->lowest[RECORD_TEMPERATURE]))
		fprintf(p->out, ", down to %.2f °F", dip->lowest[RECORD_TEMPERATURE]);
	if (!isnan(dip->lowest[RECORD_PRESSURE]))
		fprintf(p->out, ", down to %.2f psi", dip->lowest[RECORD_PRESSURE]);
}

static size_t dips_kept(const struct plot *p)
{
	size_t n = p->report->judgement->dips_n;
	return n < RECORD_DIPS_MAX ? n : RECORD_DIPS_MAX;
}

/* A hatched band as long as the dip, and a numbered pointer over it. */
static void dips(const struct plot *p, double top, double bottom)
{
	for (size_t i = 0; i < dips_kept(p); i++) {
		const struct record_dip *dip = &p->report->judgement->dips[i];
		double from = place(&p->x, dip->from_s), to = place(&p->x, dip->to_s);
		fputs("<g><title>", p->out);
		dip_title(p, i);
		fprintf(p->out,
			"</title><rect class=\"dip\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" "
			"height=\"%.1f\"/><path class=\"mark\" d=\"M%.1f %.1fl%.1f %.1fh%.1fz\"/>",
			from, top, fmax(to - from, 2), bottom - top, (from + to) / 2, top,
			-MARK_SIZE, -2 * MARK_SIZE, 2 * MARK_SIZE);
		if (i < DIPS_LISTED)
			fprintf(p->out,
				"<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%zu</text>",
				(from + to) / 2, top - 2 * MARK_SIZE - 4, i + 1);
		fputs("</g>\n", p->out);
	}
}

static void moment(const struct plot *p, double top, double bottom, double time_s, const char *name)
{
	double x = place(&p->x, time_s);
	fprintf(p->out, "<path class=\"moment\" d=\"M%.1f %.1fV%.1f\"/>\n", x, top, bottom);
	put_text(p->out, x, bottom - 8, "middle", name);
}

static void required(const struct plot *p, const struct scale *y, int c)
{
	char words[96];
	double least = p->report->need->least[c];
	if (isnan(least))
		return;
	double at = place(y, least);
	fprintf(p->out, "<path class=\"need\" d=\"M%.1f %.1fH%.1f\"/>\n", LEFT, at, RIGHT);
	if (c == RECORD_TEMPERATURE)
		snprintf(words, sizeof words, "needed: %.2f °F", least);
	else
		snprintf(words, sizeof words, "needed: %.0f psi", least);
	put_text(p->out, RIGHT - 6, at + 18, "end", words);
}

static struct scale value_scale(struct plot *p, int c, double top, double bottom)
{
	const struct record_outline *o = p->outline;
	const struct record_need *need = p->report->need;
	double high = need->least[c];
	p->lowest[c] = NAN;
	for (size_t i = 0; i < o->steps_n; i++) {
		p->lowest[c] = fmin(p->lowest[c], o->steps[i].least[c]);
		high = fmax(high, o->steps[i].most[c]);
	}
	double low = fmin(p->lowest[c], need->least[c]);
	if (c == RECORD_TEMPERATURE)
		low = fmax(low, fmin(need->boiling_f, high) - BELOW_BOIL_F);
	double room = fmax((high - low) * 0.05, 0.5);
	return (struct scale){.from = low - room, .to = high + room, .a = bottom, .b = top};
}

static void panel(struct plot *p, int c, double top)
{
	const struct record_judgement *j = p->report->judgement;
	double bottom = top + PANEL;
	struct scale y = value_scale(p, c, top, bottom);
	fprintf(p->out, "<g role=\"group\" aria-label=\"%s\">\n", channel_titles[c]);
	char title[128];
	bool cut = !isnan(p->lowest[c]) && p->lowest[c] < y.from;
	if (cut)
		snprintf(title, sizeof title, "%s; not drawn below %.0f", channel_titles[c],
			 y.from);
	else
		snprintf(title, sizeof title, "%s", channel_titles[c]);
	put_text(p->out, LEFT, top - 38, "start", title);
	time_axis(p, top, bottom);
	value_axis(p, &y, 1, 0, true);
	/* NIST Special Publication 811 (2008): (F - 32) / 1.8 is C; a psi is 6.894757 kPa. */
	if (c == RECORD_TEMPERATURE)
		value_axis(p, &y, 1 / 1.8, -32 / 1.8, false);
	else
		value_axis(p, &y, 6.894757, 0, false);
	dips(p, top, bottom);
	required(p, &y, c);
	if (j->started)
		moment(p, top, bottom, j->complete ? j->start_s : j->first_start_s,
		       j->complete ? "start" : "reached");
	if (j->complete)
		moment(p, top, bottom, j->until_s, "end");
	curve(p, &y, c);
	fprintf(
	    p->out,
	    "<rect class=\"frame\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>\n</g>\n",
	    LEFT, top, RIGHT - LEFT, PANEL);
	p->bottom = bottom;
}

static void head(const struct plot *p, int panels)
{
	const struct record_judgement *j = p->report->judgement;
	size_t listed = j->dips_n < DIPS_LISTED ? j->dips_n : DIPS_LISTED;
	double height = TOP + panels * (PANEL + PANEL_SPACE) + 2 * LINE_HEIGHT +
			(double)listed * LINE_HEIGHT + (j->dips_n > listed ? LINE_HEIGHT : 0);
	char length[64];
	fprintf(
	    p->out,
	    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %.0f\" width=\"%d\" "
	    "height=\"%.0f\" role=\"img\" aria-labelledby=\"title desc\">\n<title id=\"title\">",
	    WIDTH, height, WIDTH, height);
	put_escaped(p->out, record_headline(j->outcome));
	fputs(": ", p->out);
	put_escaped(p->out, p->report->subject);
	fputs("</title>\n<desc id=\"desc\">Trace of a recorder", p->out);
	fprintf(p->out, ": %ld rows, %zu breaks; longest time without a break %s of %d minutes.",
		j->rows, j->dips_n, record_length_words(length, sizeof length, j->uninterrupted_s),
		p->report->need->minutes);
	fputs(" The dashed line is what the load needs; hatched bands with a numbered pointer are "
	      "breaks.</desc>\n"
	      "<style>text{font:15px "
	      "sans-serif;fill:#111;stroke:#fff;stroke-width:3;paint-order:stroke}.h{font-weight:"
	      "bold;font-size:20px}"
	      "path,rect{fill:none}.grid{stroke:#ccc}.frame{stroke:#111}"
	      ".trace{stroke:#111;stroke-width:1.5;stroke-linejoin:round}"
	      ".need{stroke:#a00000;stroke-width:2;stroke-dasharray:9 5}"
	      ".moment{stroke:#111;stroke-dasharray:2 4}.dip{fill:url(#hatch);stroke:#555}"
	      ".mark{fill:#111}</style>\n"
	      "<defs><pattern id=\"hatch\" width=\"6\" height=\"6\" "
	      "patternUnits=\"userSpaceOnUse\"><path d=\"M0 6L6 0\" stroke=\"#555\"/></pattern>"
	      "</defs>\n",
	      p->out);
	fprintf(p->out,
		"<rect style=\"fill:#fff\" width=\"%d\" height=\"%.0f\"/>\n<text class=\"h\" "
		"x=\"%.0f\" y=\"30\">%s</text>\n",
		WIDTH, height, LEFT, record_headline(j->outcome));
	put_text(p->out, LEFT, 52, "start", p->report->subject);
}

static void dip_list(const struct plot *p)
{
	const struct record_judgement *j = p->report->judgement;
	double y = p->bottom + PANEL_SPACE - 10;
	size_t listed = j->dips_n < DIPS_LISTED ? j->dips_n : DIPS_LISTED;
	for (size_t i = 0; i < listed; i++) {
		fprintf(p->out, "<text x=\"%.1f\" y=\"%.1f\">", LEFT, y);
		dip_title(p, i);
		fputs("</text>\n", p->out);
		y += LINE_HEIGHT;
	}
	if (j->dips_n > listed) {
		fprintf(p->out, "<text x=\"%.1f\" y=\"%.1f\">and %zu more</text>\n", LEFT, y,
			j->dips_n - listed);
		y += LINE_HEIGHT;
	}
	put_text(
	    p->out, LEFT, y, "start",
	    "A record shows the place of its probe. It is no proof that the process was tested.");
}

void record_svg(FILE *out, const struct record_report *report, const struct record_outline *outline)
{
	double length_s = fmax(outline->last_s - outline->from_s, outline->step_s);
	struct plot p = {
	    .out = out,
	    .report = report,
	    .outline = outline,
	    .x = {outline->from_s, outline->from_s + length_s, LEFT, RIGHT},
	};
	int panels = 0;
	for (int c = 0; c < RECORD_CHANNELS; c++)
		panels += report->found->has[c];
	head(&p, panels);
	double top = TOP;
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		if (!report->found->has[c])
			continue;
		panel(&p, c, top);
		top += PANEL + PANEL_SPACE;
	}
	dip_list(&p);
	fputs("</svg>\n", out);
}
