/* A year in the kitchen: what was put up, which lids failed, the hours, what was eaten. */
#include <inttypes.h>

#include "jarwright/render_page.h"
#include "jarwright/render_paper.h"

#define MINUTES_AN_HOUR 60

static const char *const months[REPORT_MONTHS] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
						  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

static const char report_style[] =
    "td,th{padding:.9mm 1.2mm}\n"
    "table{font-size:10.5pt}\n"
    "td,thead th+th{text-align:right}\n"
    "td{white-space:nowrap}\n"
    "th[scope=row]{font-weight:400}\n"
    "tfoot>tr>*{font-weight:700;border-bottom:0}\n"
    ".months{table-layout:fixed;min-width:165mm}\n"
    ".months thead th:first-child{width:25%}\n"
    ".months td,.months thead th+th{padding-left:0;font-size:9.5pt}\n"
    ".plotted{width:28%}\n"
    "td.plotted{vertical-align:middle}\n"
    ".bar{height:3.6mm;width:100%}\n"
    "td.words,thead .words,thead .plotted{text-align:left;white-space:normal}\n"
    "@media screen and (max-width:700px){td,th{padding:.6mm}table{font-size:8.5pt}}\n";

static int64_t sum(const int months_of[REPORT_MONTHS])
{
	int64_t all = 0;
	for (int m = 0; m < REPORT_MONTHS; m++)
		all += months_of[m];
	return all;
}

/* To a tenth, rounded down, wherever hours are shown. */
static double hours_of(int64_t minutes)
{
	int64_t tenths = minutes * 10 / MINUTES_AN_HOUR;
	return (double)tenths / 10;
}

static void number(FILE *out, int64_t value)
{
	fprintf(out, "<td>%" PRId64 "</td>", value);
}

/* Nothing stands for none: twelve columns of noughts hide the figures. */
static void month_cells(FILE *out, const int64_t values[REPORT_MONTHS])
{
	int64_t all = 0;
	for (int m = 0; m < REPORT_MONTHS; m++) {
		all += values[m];
		if (values[m] > 0)
			number(out, values[m]);
		else
			fputs("<td></td>", out);
	}
	number(out, all);
	fputs("</tr>\n", out);
}

static void month_head(FILE *out, const char *caption, const char *first, const char *last)
{
	html_print(out,
		   "<section class=\"scroll\" tabindex=\"0\" aria-label=\"%s\">\n"
		   "<table class=\"months\">\n<caption>%s</caption>\n<thead><tr>"
		   "<th scope=\"col\">%s</th>",
		   caption, caption, first);
	for (int m = 0; m < REPORT_MONTHS; m++)
		html_print(out, "<th scope=\"col\">%s</th>", months[m]);
	html_print(out, "<th scope=\"col\">%s</th></tr></thead>\n", last);
}

static void month_plot(FILE *out, const char *caption, const char *says,
		       const double values[REPORT_MONTHS])
{
	const struct column_plot plot = {
	    .says = says, .names = months, .values = values, .n = REPORT_MONTHS};
	html_print(out, "<figure>\n<figcaption>%s</figcaption>\n", caption);
	plot_columns(out, &plot);
	fputs("</figure>\n", out);
}

static void put_up(FILE *out, const struct report_year *report)
{
	int64_t all[REPORT_MONTHS] = {0};
	double heights[REPORT_MONTHS];
	for (size_t i = 0; i < report->foods_n; i++)
		for (int m = 0; m < REPORT_MONTHS; m++)
			all[m] += report->foods[i].put_up[m];
	for (int m = 0; m < REPORT_MONTHS; m++)
		heights[m] = (double)all[m];
	fputs("<h2>Put up</h2>\n", out);
	month_plot(out, "Jars by month",
		   "Columns: jars put up in each month; the figures are the last row of the table.",
		   heights);
	month_head(out, "Jars of each food by month", "food", "all");
	fputs("<tbody>\n", out);
	for (size_t i = 0; i < report->foods_n; i++) {
		int64_t row[REPORT_MONTHS];
		for (int m = 0; m < REPORT_MONTHS; m++)
			row[m] = report->foods[i].put_up[m];
		html_print(out, "<tr><th scope=\"row\">%s</th>", report->foods[i].food);
		month_cells(out, row);
	}
	fputs("</tbody>\n<tfoot><tr><th scope=\"row\">all</th>", out);
	month_cells(out, all);
	fputs("</tfoot>\n</table>\n</section>\n", out);
}

/* What stands for the lot of the lids. */
static void lot_words(FILE *out, const struct report_lot *lot)
{
	if (lot->lids == REPORT_SEVERAL_LOTS)
		fputs("lids of several lots", out);
	else if (lot->lids == REPORT_NO_LOT)
		fputs("no lot said", out);
	else
		html_print(out, *lot->code ? "%s (%s)" : "%s%s", lot->lot, lot->code);
}

static void lot_row(FILE *out, const struct report_lot *lot, double most)
{
	double rate = 0;
	fputs("<tr><th scope=\"row\">", out);
	lot_words(out, lot);
	html_print(out, "</th><td class=\"words\">%s</td>", lot->maker);
	number(out, (int64_t)lot->sealed + lot->failed);
	number(out, lot->failed);
	bool enough = report_failure_rate(lot, &rate);
	if (enough)
		fprintf(out, "<td>%.1f</td>", rate);
	else
		fputs(lot->sealed + lot->failed > 0 ? "<td>too few jars</td>"
						    : "<td>none tested</td>",
		      out);
	fputs("<td class=\"plotted\">", out);
	if (enough)
		plot_cell_bar(out, rate, most);
	fputs("</td></tr>\n", out);
}

static void lots(FILE *out, const struct report_year *report)
{
	double most = 0, rate;
	for (size_t i = 0; i < report->lots_n; i++)
		if (report_failure_rate(&report->lots[i], &rate) && rate > most)
			most = rate;
	html_print(out,
		   "<h2>Seals by lid lot</h2>\n<table>\n<caption>Jars that did not seal at some "
		   "test, by the lot of their lids; a rate is given from %d jars on, and even then "
		   "says little of a small lot</caption>\n<thead><tr>"
		   "<th scope=\"col\">lot</th><th scope=\"col\" class=\"words\">from</th>"
		   "<th scope=\"col\">tested</th><th scope=\"col\">failed</th>"
		   "<th scope=\"col\">of a hundred</th>"
		   "<th scope=\"col\" class=\"plotted\">plotted</th></tr></thead>\n<tbody>\n",
		   REPORT_FEW);
	for (size_t i = 0; i < report->lots_n; i++)
		lot_row(out, &report->lots[i], most);
	fputs("</tbody>\n</table>\n", out);
}

static void sizes(FILE *out, const struct report_year *report)
{
	int most = 0;
	for (size_t i = 0; i < report->sizes_n; i++)
		if (report->sizes[i].jars > most)
			most = report->sizes[i].jars;
	if (most == 0)
		return;
	fputs("<table>\n<caption>Jars put up, by size</caption>\n<thead><tr>"
	      "<th scope=\"col\">size</th><th scope=\"col\">jars</th>"
	      "<th scope=\"col\" class=\"plotted\">plotted</th></tr></thead>\n<tbody>\n",
	      out);
	for (size_t i = 0; i < report->sizes_n; i++) {
		html_print(out, "<tr><th scope=\"row\">%s</th>", report->sizes[i].size);
		number(out, report->sizes[i].jars);
		fputs("<td class=\"plotted\">", out);
		plot_cell_bar(out, report->sizes[i].jars, most);
		fputs("</td></tr>\n", out);
	}
	fputs("</tbody>\n</table>\n", out);
}

static void recalls(FILE *out, const struct report_year *report)
{
	fputs("<h2>Recalls</h2>\n", out);
	if (report->recalls_n == 0) {
		fputs("<p>None in this year.</p>\n", out);
		return;
	}
	fputs(
	    "<table>\n<caption>Recalls opened in this year, or open in it; jars without a word on "
	    "what became of them are still open</caption>\n<thead><tr><th scope=\"col\">what"
	    "</th><th scope=\"col\">opened</th><th scope=\"col\">jars</th>"
	    "<th scope=\"col\">still open</th></tr></thead>\n<tbody>\n",
	    out);
	for (size_t i = 0; i < report->recalls_n; i++) {
		const struct report_recall *recall = &report->recalls[i];
		char day[DATE_SIZE];
		html_print(out, "<tr><th scope=\"row\">%s</th><td>%s</td>", recall->what,
			   date_text(instant_date(recall->opened), day));
		number(out, recall->jars);
		number(out, recall->open);
		fputs("</tr>\n", out);
	}
	fputs("</tbody>\n</table>\n", out);
}

/* What the hours are, and are not. */
static void hours_known(FILE *out, const struct report_year *report)
{
	fputs("<p>Hours at the canner: from the start of timing until the jars were out, as far as "
	      "it was said. Picking, peeling, filling and heating up are not known.",
	      out);
	if (report->loads_untimed > 0)
		html_print(out, " Of %d loads, %d %s no end on record; such loads are left out.",
			   report->loads, report->loads_untimed,
			   report->loads_untimed == 1 ? "has" : "have");
	fputs("</p>\n", out);
}

static void hours(FILE *out, const struct report_year *report)
{
	double heights[REPORT_MONTHS];
	int64_t batches[REPORT_MONTHS];
	for (int m = 0; m < REPORT_MONTHS; m++) {
		heights[m] = hours_of(report->minutes[m]);
		batches[m] = report->batches[m];
	}
	fputs("<h2>Time</h2>\n", out);
	hours_known(out, report);
	month_plot(out, "Hours by month",
		   "Columns: hours at the canner in each month; the figures are in the table.",
		   heights);
	month_head(out, "Batches and hours by month", "what", "all");
	fputs("<tbody>\n<tr><th scope=\"row\">batches</th>", out);
	month_cells(out, batches);
	fputs("<tr><th scope=\"row\">hours</th>", out);
	for (int m = 0; m < REPORT_MONTHS; m++)
		if (report->minutes[m] > 0)
			fprintf(out, "<td>%.1f</td>", heights[m]);
		else
			fputs("<td></td>", out);
	fprintf(out, "<td>%.1f</td></tr>\n</tbody>\n</table>\n</section>\n",
		hours_of(sum(report->minutes)));
}

static void eaten(FILE *out, const struct report_year *report)
{
	int most = 0;
	for (size_t i = 0; i < report->foods_n; i++)
		if (report->foods[i].eaten > most)
			most = report->foods[i].eaten;
	fputs("<h2>Eaten</h2>\n<table>\n<caption>Jars that left the shelf this year, whenever they "
	      "were put up, and what is left of all years</caption>\n<thead><tr><th "
	      "scope=\"col\">food</th>"
	      "<th scope=\"col\">given</th><th scope=\"col\">discarded</th><th "
	      "scope=\"col\">left</th>"
	      "<th scope=\"col\">eaten</th><th scope=\"col\" class=\"plotted\">plotted</th></tr>"
	      "</thead>\n<tbody>\n",
	      out);
	for (size_t i = 0; i < report->foods_n; i++) {
		const struct report_food *food = &report->foods[i];
		html_print(out, "<tr><th scope=\"row\">%s</th>", food->food);
		number(out, food->given);
		number(out, food->lost);
		number(out, food->left);
		number(out, food->eaten);
		fputs("<td class=\"plotted\">", out);
		plot_cell_bar(out, food->eaten, most);
		fputs("</td></tr>\n", out);
	}
	fputs("</tbody>\n</table>\n", out);
}

void report_html(FILE *out, const struct report_year *report)
{
	char title[32];
	int64_t jars = 0;
	for (size_t i = 0; i < report->foods_n; i++)
		jars += sum(report->foods[i].put_up);
	snprintf(title, sizeof title, "The year %d", report->year);
	html_begin(out, title, "Put up, sealed, eaten", report_style);
	if (report->foods_n == 0 && report->lots_n == 0 && sum(report->batches) == 0 &&
	    report->recalls_n == 0) {
		fputs("<p class=\"lede\">Nothing is on record for this year.</p>\n", out);
	} else {
		fprintf(out,
			"<p class=\"lede\">Jars put up: %" PRId64 ". Batches: %" PRId64
			". Hours at the canner: %.1f.</p>\n",
			jars, sum(report->batches), hours_of(sum(report->minutes)));
		put_up(out, report);
		sizes(out, report);
		lots(out, report);
		hours(out, report);
		eaten(out, report);
		recalls(out, report);
	}
	html_end(out, report->edition);
}
