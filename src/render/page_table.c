/* The published tables of a food as a chart for the wall, the kitchen's own column framed. */
#include <string.h>

#include "jarwright/render_page.h"

#define MILLI 1000

static const char chart_style[] =
    ".chart{font-size:15pt;line-height:1.25}\n"
    ".chart td{font-size:18pt;padding-top:1mm;padding-bottom:1mm}\n"
    ".chart thead th{font-size:11.5pt;text-wrap:balance}\n"
    ".chart small{font-size:11pt;font-weight:400}\n"
    ".chart tbody th{overflow-wrap:normal}\n"
    ".here,.at{display:block}\n"
    ".at{white-space:nowrap}\n"
    ".here{font-size:10.5pt}\n"
    "@media screen and (max-width:700px){.chart{font-size:10pt}.chart td{font-size:11pt}"
    ".chart thead th,.here,.chart small{font-size:8pt}.chart td,.chart th{padding:1mm}}\n";

/* The classes that decide give the longer of two published times: see rule sweet-spread. */
static bool is_sweet_spread(const struct food *food)
{
	return strcmp(food->kind, "jam") == 0 || strcmp(food->kind, "jelly") == 0 ||
	       strcmp(food->kind, "butter") == 0;
}

static void heading_cell(FILE *out, const struct band *band, bool mine)
{
	char words[WORDS_BUFFER];
	html_print(out, mine ? "<th scope=\"col\" class=\"own\">%s" : "<th scope=\"col\">%s",
		   band_words(words, sizeof words, band));
	fputs(mine ? " <span class=\"here\">your kitchen</span></th>\n" : "</th>\n", out);
}

static void cell(FILE *out, const struct cell *cell, bool mine)
{
	fputs(mine ? "<td class=\"own\">" : "<td>", out);
	if (cell->minutes == 0)
		fputs("none", out);
	else if (cell->psi > 0)
		html_print(out,
			   "%d <small>min</small> <span class=\"at\"><small>at</small> %d "
			   "<small>psi</small></span>",
			   cell->minutes, cell->psi);
	else
		html_print(out, "%d <small>min</small>", cell->minutes);
	fputs("</td>\n", out);
}

static bool seldom_read(const struct reference *ref, const struct process_line *line)
{
	return line->readings * MILLI < ref->rules[RULE_READINGS].limit_milli;
}

static void row(FILE *out, const struct reference *ref, const struct process_table *table,
		const struct process_line *line, int mine)
{
	html_print(out, "<tr><th scope=\"row\">%s%s</th>\n", ref->jars[line->jar].name,
		   seldom_read(ref, line) ? " †" : "");
	for (size_t b = 0; b < table->bands_n; b++)
		cell(out, &line->cells[b], (int)b == mine);
	fputs("</tr>\n", out);
}

static void remarks(FILE *out, const struct reference *ref, const struct process_table *table)
{
	bool seldom = false;
	if (*table->note)
		html_print(out, "<p>The publication adds: %s.</p>\n", table->note);
	for (size_t i = 0; i < table->lines_n; i++) {
		const struct process_line *line = &table->lines[i];
		const char *jar = ref->jars[line->jar].name;
		seldom = seldom || seldom_read(ref, line);
		if (line->marks & LINE_STERILE_JARS)
			html_print(out, "<p>%s: the empty jars must be sterile.</p>\n", jar);
		if (*line->note)
			html_print(out, "<p>%s: %s.</p>\n", jar, line->note);
	}
	if (seldom)
		fputs("<p>† Not every copy of the publication that was read showed this line: "
		      "compare it with the publication before you rely on it.</p>\n",
		      out);
}

/* Above the table, or so near a border that the higher column is the one to take. */
static void place_remarks(FILE *out, const struct reference *ref, const struct process_table *table,
			  struct elevation_mark here, int mine)
{
	char words[WORDS_BUFFER], margin[WORDS_BUFFER];
	if (!here.stated)
		return;
	elevation_words(words, sizeof words, here.mft);
	int32_t near_mft = ref->rules[RULE_ELEVATION_NEAR_BORDER].limit_milli;
	if (mine < 0)
		html_print(out,
			   "<p class=\"careful\">Your elevation, %s, is above this table: it gives "
			   "you no process.</p>\n",
			   words);
	else if ((size_t)mine + 1 < table->bands_n &&
		 table->bands[mine].to_ft * MILLI - here.mft <= near_mft)
		html_print(out,
			   "<p class=\"careful\">Your elevation, %s, is within %s ft of the next "
			   "column. If you are not sure of it, use the next column.</p>\n",
			   words, milli_words(margin, sizeof margin, near_mft));
}

static void one_table(FILE *out, const struct reference *ref, const struct process_table *table,
		      struct elevation_mark here)
{
	int mine = here.stated ? table_band(ref, table, here.mft) : -1;
	const char *canner = canner_title(table->canner);
	const char *pack = table->pack == PACK_UNSTATED ? "" : pack_word(table->pack);
	html_print(out, "<section>\n<h2>%s%s%s%s</h2>\n", canner, *pack ? ", " : "", pack,
		   *pack ? " pack" : "");
	html_print(out,
		   "<table class=\"chart\">\n<caption>Process time in the %s by jar and by "
		   "elevation above sea level</caption>\n<thead><tr><th scope=\"col\">jar</th>\n",
		   canner);
	for (size_t b = 0; b < table->bands_n; b++)
		heading_cell(out, &table->bands[b], (int)b == mine);
	fputs("</tr></thead>\n<tbody>\n", out);
	for (size_t l = 0; l < table->lines_n; l++)
		row(out, ref, table, &table->lines[l], mine);
	fputs("</tbody>\n</table>\n", out);
	place_remarks(out, ref, table, here, mine);
	remarks(out, ref, table);
	html_source(out, "Source:", &table->from);
	fputs("</section>\n", out);
}

static void facts(FILE *out, const struct reference *ref, const struct food *food)
{
	char words[WORDS_BUFFER];
	if (food->headspace_milli_in != NONE)
		html_print(out, "<p class=\"lede\">Headspace %s%s%s.</p>\n",
			   inches_words(words, sizeof words, food->headspace_milli_in),
			   *food->headspace_note ? "; " : "", food->headspace_note);
	if (food->doses_n == 0)
		return;
	fputs("<p class=\"lede\">In every jar, one of these acids:</p>\n<ul class=\"lede\">\n",
	      out);
	for (size_t i = 0; i < food->doses_n; i++)
		html_print(out, "<li>%s: %s of %s</li>\n", ref->jars[food->doses[i].jar].name,
			   food->doses[i].amount, acid_dose_words(food->doses[i].acid));
	fputs("</ul>\n", out);
}

static void cautions(FILE *out, const struct reference *ref, const struct table_chart *chart)
{
	char limit[WORDS_BUFFER];
	bool boiling = false;
	for (size_t i = 0; i < chart->tables_n; i++)
		boiling = boiling || chart->tables[i]->canner == CANNER_BOILING_WATER;
	fputs("<p class=\"careful\">These are the printed tables. What holds for your jar, pack "
	      "and acid is what <b>jarwright check</b> answers; it may be stricter.",
	      out);
	if (is_sweet_spread(chart->food))
		html_print(
		    out,
		    " A sweet spread also needs %s minutes plus 1 for each 1,000 ft, a "
		    "started thousand counted whole: the longer time counts.",
		    milli_words(limit, sizeof limit, ref->rules[RULE_SWEET_SPREAD].limit_milli));
	if (boiling)
		html_print(out,
			   " A steam canner takes the boiling-water times, up to %s minutes at "
			   "your elevation.",
			   milli_words(limit, sizeof limit,
				       ref->rules[RULE_STEAM_TIME_LIMIT].limit_milli));
	fputs("</p>\n", out);
}

void table_chart_html(FILE *out, const struct reference *ref, const struct table_chart *chart)
{
	char words[WORDS_BUFFER], kicker[WORDS_BUFFER + 64] = "Process times";
	if (chart->here.stated)
		snprintf(kicker, sizeof kicker, "Process times · kitchen at %s",
			 elevation_words(words, sizeof words, chart->here.mft));
	html_begin(out, chart->food->title, kicker, chart_style);
	if (chart->tables_n == 0) {
		html_print(out, "<p class=\"careful\">%s</p>\n",
			   chart->food->tables_n
			       ? "No table is published for this canner."
			       : "No process is published: refrigerate it, or freeze it.");
	} else {
		facts(out, ref, chart->food);
		cautions(out, ref, chart);
	}
	for (size_t i = 0; i < chart->tables_n; i++)
		one_table(out, ref, chart->tables[i], chart->here);
	html_end(out, ref->edition);
}
