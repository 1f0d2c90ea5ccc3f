/* One printed table: jars down, elevations across. */
#include <string.h>

#include "jarwright/render.h"

#define MILLI  1000
#define HEAD   16 /* columns of the jar's name */
#define COLUMN 13 /* columns of one band */

int table_band(const struct reference *ref, const struct process_table *table, int32_t mft)
{
	for (size_t i = 0; i < table->bands_n; i++) {
		const struct band *band = &table->bands[i];
		int64_t top = band->to_ft == BAND_OPEN
				  ? ref->rules[RULE_ELEVATION_ABOVE].limit_milli
				  : (int64_t)band->to_ft * MILLI;
		if (mft <= top)
			return (int)i;
	}
	return -1;
}

static void title(const struct page *page, const struct process_table *table,
		  struct source_list *sources)
{
	char pack[32] = "", source[WORDS_BUFFER];
	if (table->pack != PACK_UNSTATED)
		snprintf(pack, sizeof pack, ", %s pack", pack_word(table->pack));
	page_format(page, "", "%s%s%s %s", canner_title(table->canner), pack,
		    table->canner == CANNER_BOILING_WATER ? "" : ", min @ psi",
		    cite(sources, source, sizeof source, &table->from));
}

static void short_band(const struct band *band, char *buffer, size_t size)
{
	char from[32], to[32];
	if (band->to_ft == BAND_OPEN)
		snprintf(buffer, size, "over %s",
			 feet_words(from, sizeof from, band->from_ft - (band->from_ft > 0)));
	else
		snprintf(buffer, size, "%s-%s", feet_words(from, sizeof from, band->from_ft),
			 feet_words(to, sizeof to, band->to_ft));
}

static void cell_words(const struct cell *cell, char *buffer, size_t size)
{
	if (cell->minutes == 0)
		snprintf(buffer, size, "none");
	else if (cell->psi > 0)
		snprintf(buffer, size, "%d @ %d psi", cell->minutes, cell->psi);
	else
		snprintf(buffer, size, "%d min", cell->minutes);
}

/* One entry of a row; the last of a row is not padded. */
static void entry(const struct page *page, const char *words, bool mine, bool last)
{
	fprintf(page->out, "%s%s", words, mine ? "*" : "");
	int pad = COLUMN - (int)strlen(words) - mine;
	if (!last)
		fprintf(page->out, "%*s", pad > 1 ? pad : 1, "");
}

/* Bands first to below last; wide tables are printed in pieces that fit the page. */
static void piece(const struct page *page, const struct reference *ref,
		  const struct process_table *table, size_t first, size_t last, int mine)
{
	char words[WORDS_BUFFER];
	fprintf(page->out, "  %-*s", HEAD, "feet");
	for (size_t b = first; b < last; b++) {
		short_band(&table->bands[b], words, sizeof words);
		entry(page, words, (int)b == mine, b + 1 == last);
	}
	for (size_t l = 0; l < table->lines_n; l++) {
		fprintf(page->out, "\n  %-*s", HEAD, ref->jars[table->lines[l].jar].name);
		for (size_t b = first; b < last; b++) {
			cell_words(&table->lines[l].cells[b], words, sizeof words);
			entry(page, words, (int)b == mine, b + 1 == last);
		}
	}
	fputc('\n', page->out);
}

static void remarks(const struct page *page, const struct reference *ref,
		    const struct process_table *table)
{
	if (*table->note)
		page_text(page, "  note: ", table->note);
	for (size_t i = 0; i < table->lines_n; i++) {
		const struct process_line *line = &table->lines[i];
		const char *jar = ref->jars[line->jar].name;
		if (line->marks & LINE_STERILE_JARS)
			page_format(page, "  ", "%s: the empty jars must be sterile", jar);
		if (*line->note)
			page_format(page, "  ", "%s: %s", jar, line->note);
	}
}

void table_text(const struct page *page, const struct reference *ref,
		const struct process_table *table, struct elevation_mark here,
		struct source_list *sources)
{
	int mine = here.stated ? table_band(ref, table, here.mft) : -1;
	char words[WORDS_BUFFER], band[WORDS_BUFFER];
	title(page, table, sources);
	size_t fit =
	    (size_t)(page->width > HEAD + COLUMN + 2 ? (page->width - HEAD - 2) / COLUMN : 1);
	for (size_t b = 0; b < table->bands_n; b += fit)
		piece(page, ref, table, b, b + fit < table->bands_n ? b + fit : table->bands_n,
		      mine);
	if (mine >= 0)
		page_format(page, "  ", "* your elevation, %s: the column for %s",
			    elevation_words(words, sizeof words, here.mft),
			    band_words(band, sizeof band, &table->bands[mine]));
	else if (here.stated)
		page_format(page, "  ", "Your elevation, %s, is above this table.",
			    elevation_words(words, sizeof words, here.mft));
	remarks(page, ref, table);
}
