/* Recalls opened, listed, and followed to each jar's end. */
#include <string.h>

#include "jarwright/instant.h"
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "recall_words.h"

static char *moment(int64_t ms, char buffer[static INSTANT_SIZE])
{
	return instant_text(instant_at((time_t)(ms / 1000)), buffer);
}

void opening_text(const struct page *page, const struct opening_view *view)
{
	char what[RECALL_TEXT_SIZE];
	unsigned states = 0;
	text_harmless(view->what, what, sizeof what);
	if (*view->code)
		page_format(page, "RECALL  ", "%s is open: %s", view->code, what);
	else if (view->dry_run && view->jars->jars_n > 0)
		page_format(page, "", "Nothing is logged yet. This would recall: %s", what);
	else
		page_format(page, "", "No recall is opened: %s", what);
	page_blank(page);
	touched_text(page, view->jars,
		     view->in_question ? "No jar in the log is touched." : never_used);
	if (view->jars->unfilled_n > 0)
		page_text(page, "          ", "Do not go on with a batch that is begun with it.");
	if (*view->left_out)
		page_text(page, "left out  ", view->left_out);
	for (size_t i = 0; i < view->jars->jars_n; i++)
		states |= 1U << view->jars->jars[i].state;
	advice_text(page, view->rules, states);
	if (!*view->code)
		return;
	page_blank(page);
	page_format(page, "Next: ",
		    "jarwright recall show %s prints a sheet for those who were given "
		    "jars; jarwright recall record %s JARS discarded (or returned, "
		    "eaten, told ...) says what became of them.",
		    view->code, view->code);
}

void recall_list_text(const struct page *page, const struct recall_list *list)
{
	if (list->entries_n == 0)
		page_text(page, "", "No recall was ever opened.");
	for (size_t i = 0; i < list->entries_n; i++) {
		const struct recall_entry *entry = &list->entries[i];
		char what[RECALL_TEXT_SIZE], lead[RECALL_CODE_SIZE + 4], opened[INSTANT_SIZE],
		    closed[INSTANT_SIZE];
		snprintf(lead, sizeof lead, "%s  ", entry->code);
		page_format(page, lead, "%s, opened %s, %zu jar%s, %s%s",
			    text_harmless(entry->what, what, sizeof what),
			    moment(entry->opened_ms, opened), entry->jars_n,
			    entry->jars_n == 1 ? "" : "s", entry->closed_ms ? "closed " : "OPEN: ",
			    entry->closed_ms ? moment(entry->closed_ms, closed) : "");
		if (!entry->closed_ms)
			page_format(page, "        ", "%zu jar%s still open under it",
				    entry->open_n, entry->open_n == 1 ? "" : "s");
	}
}

static bool alike(const struct recalled_jar *a, const struct recalled_jar *b)
{
	return a->disposition == b->disposition && same_place(&a->jar, &b->jar) &&
	       strcmp(a->note, b->note) == 0;
}

static bool bunch(const struct recall_sheet *sheet, size_t i, struct jar_set *out)
{
	const struct recalled_jar *jars = sheet->jars;
	memset(out, 0, sizeof *out);
	for (size_t k = i; k > 0 && jars[k - 1].jar.batch == jars[i].jar.batch; k--)
		if (alike(&jars[k - 1], &jars[i]))
			return false;
	for (size_t k = i; k < sheet->entry.jars_n && jars[k].jar.batch == jars[i].jar.batch; k++)
		if (alike(&jars[k], &jars[i]))
			jar_set_add(out, jars[k].jar.number);
	return true;
}

static void put_jars(const struct page *page, const struct recalled_jar *jar,
		     const struct jar_set *set)
{
	char numbers[JAR_SET_SIZE], place[WORDS_BUFFER], note[RECALL_NOTE_SIZE], at[INSTANT_SIZE];
	bool open = jar->disposition == DISPOSITION_OPEN;
	page_format(page, "  ", "%s %s%s: %s%s%s%s%s", open ? "OPEN " : "",
		    jar_set_count(set) == 1 ? "jar " : "jars ",
		    jar_set_text(set, numbers, sizeof numbers),
		    place_words(place, sizeof place, &jar->jar), open ? "" : "; ",
		    open ? "" : disposition_word(jar->disposition), open ? "" : " ",
		    open ? "" : moment(jar->at_ms, at));
	if (*jar->note)
		page_format(page, "    ", "\"%s\"", text_harmless(jar->note, note, sizeof note));
}

static void put_entry(const struct page *page, const struct recall_entry *entry)
{
	char what[RECALL_TEXT_SIZE], why[RECALL_TEXT_SIZE], opened[INSTANT_SIZE];
	page_format(page, "RECALL  ", "%s, %s, opened %s", entry->code,
		    text_harmless(entry->what, what, sizeof what),
		    moment(entry->opened_ms, opened));
	if (*entry->why)
		page_text(page, "why:    ", text_harmless(entry->why, why, sizeof why));
	if (entry->closed_ms)
		page_format(page, "closed: ", "%s", moment(entry->closed_ms, opened));
	else
		page_format(page, "open:   ", "%zu of %zu jars", entry->open_n, entry->jars_n);
	page_blank(page);
}

/* Jars that were made since, out of recalled ones. */
static void put_since(const struct page *page, const struct recall_sheet *sheet)
{
	const struct touched_jars *since = &sheet->since;
	if (since->jars_n == 0 && since->unfilled_n == 0)
		return;
	page_blank(page);
	page_headline(page, "Made with jars of this recall since it was opened:",
		      " recall these batches too, with 'jarwright recall open batch'");
	if (since->jars_n > 0)
		touched_text(page, since, "");
	else
		unfilled_text(page, since);
}

void recall_jars_text(const struct page *page, const struct recall_sheet *sheet,
		      const struct load_rules *rules)
{
	unsigned open = 0;
	put_entry(page, &sheet->entry);
	for (size_t i = 0; i < sheet->entry.jars_n; i++) {
		const struct touched_jar *jar = &sheet->jars[i].jar;
		char code[BATCH_WORDS_SIZE], title[TITLE_SIZE];
		struct jar_set set;
		if (i == 0 || jar->batch != sheet->jars[i - 1].jar.batch)
			page_format(page, "", "%s  %s, %s",
				    batch_words(code, jar->year, jar->number_of_batch),
				    text_harmless(jar->title, title, sizeof title), jar->day);
		if (bunch(sheet, i, &set))
			put_jars(page, &sheet->jars[i], &set);
	}
	put_since(page, sheet);
	for (size_t i = 0; i < sheet->entry.jars_n; i++)
		if (sheet->jars[i].disposition == DISPOSITION_OPEN && !sheet->jars[i].jar.missing)
			open |= 1U << sheet->jars[i].jar.state;
	advice_text(page, rules, open);
}
