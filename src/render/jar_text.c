/* One jar's history, and what to say of jars that were moved. */
#include <string.h>

#include "jarwright/render_shelf.h"
#include "jarwright/text.h"

#define ENTRY_SIZE 4000

static void put_now(const struct page *page, const struct jar_history *history,
		    const struct shelf_line *line)
{
	char title[JAR_TITLE_SIZE], size[64];
	const struct jar_group *group = &history->now;
	char lead[JAR_CODE_SIZE + 16];
	snprintf(lead, sizeof lead, "%s-%02d: ", group->code, jar_set_next(&group->jars, 0));
	page_format(page, lead, "%s, %s jar", text_harmless(group->title, title, sizeof title),
		    text_harmless(group->size, size, sizeof size));
	page_blank(page);
	const struct shelf_list one = {(struct shelf_line *)line, 1};
	shelf_text(page, &one);
}

void jar_history_text(const struct page *page, const struct jar_history *history,
		      const struct shelf_line *line)
{
	put_now(page, history, line);
	page_blank(page);
	page_text(page, "", "What happened");
	for (size_t i = 0; i < history->entries_n; i++) {
		const struct jar_entry *entry = &history->entries[i];
		char words[ENTRY_SIZE], at[INSTANT_SIZE], lead[INSTANT_SIZE + 8];
		snprintf(lead, sizeof lead, "  %s  ", instant_text(entry->at, at));
		page_format(page, lead, "%s%s%s", entry->undone ? "(taken back) " : "",
			    entry->conflict ? "(in conflict) " : "",
			    text_harmless(entry->words, words, sizeof words));
	}
}

/* --- What to say of a move --- */

static const char *done_words(enum jar_state to)
{
	return to == JAR_SHELF ? "on the shelf" : jar_state_word(to);
}

static void warn(const struct page *page, const struct moved *batch)
{
	char set[JAR_SET_SIZE];
	jar_set_text(&batch->advised_against, set, sizeof set);
	if (batch->advice == JAR_STOOD_TOO_LONG)
		page_format(page, "WARNING: ",
			    "%s %s stood too long before it was chilled. Do not taste it, not even "
			    "now: discard it. If anybody has eaten of it, call a doctor or poison "
			    "centre now, even if they feel well; and the emergency number at once "
			    "at blurred or double vision, drooping eyelids, slurred speech, a dry "
			    "mouth, weak muscles, or trouble swallowing or breathing.",
			    batch->code, set);
	else if (batch->advice == JAR_TEST_SEAL)
		page_format(page, "WARNING: ",
			    "the seal of %s %s was never tested. Eat of it only if it was tested "
			    "and sealed, or chilled in time.",
			    batch->code, set);
	else if (batch->advice == JAR_NOT_STABLE)
		page_format(page, "WARNING: ",
			    "%s %s is unsealed or was not processed as decided. Tell whoever has "
			    "it: keep it in the refrigerator, and discard it if it stood warm.",
			    batch->code, set);
}

static void cite_keeping(enum keeping_case which, const char *food, struct keeping_limit *limit,
			 char *words, struct source_list *sources, char *source, size_t size)
{
	*source = '\0';
	words[0] = '\0';
	if (!keeping_find(reference_edition(), reference_tables_edition(), which, food, limit))
		return;
	keeping_words(limit, words);
	cite(sources, source, size, limit->from);
}

/* The signs of spoilage as published, and the boil for what is low in acid or not known. */
static void advise_opened(const struct page *page, const struct moved *batch,
			  struct source_list *sources)
{
	char words[KEEPING_WORDS_SIZE], source[WORDS_BUFFER] = "";
	struct keeping_limit limit;
	const struct food *food =
	    *batch->food ? reference_food(reference_edition(), batch->food) : NULL;
	const struct published_rule *rule =
	    published_find(reference_edition(), "spoilage-sign", "", "unnatural odour on opening");
	if (rule)
		cite(sources, source, sizeof source, &rule->from);
	page_format(page, "Look first: ",
		    "lid swollen or not concave, liquid that spurts, rising bubbles, odd colour or "
		    "smell, mould: do not taste it, discard it. %s",
		    source);
	if (!food || food->acid_class == ACID_CLASS_LOW ||
	    food->acid_class == ACID_CLASS_UNSTATED) {
		cite_keeping(KEEPING_BOIL, NULL, &limit, words, sources, source, sizeof source);
		if (*words)
			page_format(page, "Boil it ", "%s before you taste it. %s", words, source);
	}
	cite_keeping(KEEPING_OPENED, NULL, &limit, words, sources, source, sizeof source);
	if (*words)
		page_format(page, "", "Once open: in the refrigerator, %s. %s", words, source);
}

static void advise_cold(const struct page *page, const struct moved *batch,
			const struct jar_move *move, struct source_list *sources)
{
	char words[KEEPING_WORDS_SIZE], source[WORDS_BUFFER];
	struct keeping_limit limit;
	if (!batch->waiting)
		return;
	if (move->to == JAR_OPENED || move->to == JAR_EATEN)
		page_text(
		    page, "Mind: ",
		    "unsealed, or not processed as decided: it is like fresh food now, not like "
		    "canned food. It was to be chilled in time; keep what is left in the "
		    "refrigerator from now on, and discard it if in doubt.");
	if (move->to != JAR_REFRIGERATED && move->to != JAR_FROZEN)
		return;
	/* No time is published for what was not processed as decided: that of an opened jar. */
	enum keeping_case chilled = batch->wrong ? KEEPING_OPENED : KEEPING_LID_FAILED;
	cite_keeping(move->to == JAR_FROZEN ? KEEPING_FROZEN : chilled,
		     *batch->food ? batch->food : NULL, &limit, words, sources, source,
		     sizeof source);
	const struct published_rule *headspace =
	    published_find(reference_edition(), "reprocess", "in", "freeze with headspace");
	if (move->to == JAR_FROZEN)
		page_format(page,
			    "Keep: ", "%s at most for quality; leave %s inches of headspace. %s",
			    words, headspace ? headspace->value : "ample", source);
	else
		page_format(page, "Keep: ", "eat it within a few days, %s at the very most. %s",
			    words, source);
}

void jars_moved_text(const struct page *page, const struct jars_moved *moved,
		     const struct jar_move *move)
{
	struct source_list sources = {.sources_n = 0};
	for (size_t i = 0; i < moved->batches_n; i++) {
		const struct moved *batch = &moved->batches[i];
		char set[JAR_SET_SIZE], title[JAR_TITLE_SIZE], place[JAR_PLACE_SIZE];
		page_format(page, "", "%s %s (%s): %s%s%s", batch->code,
			    jar_set_text(&batch->jars, set, sizeof set),
			    text_harmless(batch->title, title, sizeof title), done_words(move->to),
			    move->place ? (move->to == JAR_GIVEN ? " to " : ", ") : "",
			    move->place ? text_harmless(move->place, place, sizeof place) : "");
		warn(page, batch);
		if (move->to == JAR_OPENED)
			advise_opened(page, batch, &sources);
		advise_cold(page, batch, move, &sources);
	}
	sources_text(page, &sources);
}
