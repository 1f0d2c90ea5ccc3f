/* foods: what there is a published process for. */
#include <string.h>

#include "cli.h"
#include "jarwright/text.h"
#include "request.h"

static const struct option_spec options[] = {OPTION_JSON, OPTIONS_END};

static const struct example examples[] = {
    {"jarwright foods", "every food of the edition"},
    {"jarwright foods chutney", "the foods a word can mean"},
    EXAMPLES_END,
};

static bool has_table(const struct food *food, int canner)
{
	for (size_t i = 0; i < food->tables_n; i++)
		if ((int)food->tables[i].canner == canner)
			return true;
	return false;
}

static void canner_list(const struct food *food, char *buffer, size_t size)
{
	size_t n = 0;
	snprintf(buffer, size, "no process");
	for (int canner = 0; canner < CANNER_COUNT; canner++)
		if (has_table(food, canner) && n < size)
			n += (size_t)snprintf(buffer + n, size - n, "%s%s", n ? ", " : "",
					      canner_word((enum canner)canner));
}

static json_t *food_json(const struct food *food)
{
	json_t *canners = json_array();
	for (int canner = 0; canners && canner < CANNER_COUNT; canner++)
		if (has_table(food, canner))
			canners =
			    json_append(canners, json_string(canner_word((enum canner)canner)));
	return json_pack("{s:s, s:s, s:s, s:o}", "food", food->slug, "title", food->title, "kind",
			 food->kind, "canners", canners);
}

static bool listed(const struct food_match *match, const struct food *food)
{
	for (size_t i = 0; i < match->foods_n; i++)
		if (match->foods[i] == food)
			return true;
	return false;
}

/* match NULL: all of them. */
static int list_foods(struct invocation *inv, const struct food_match *match)
{
	const struct reference *ref = reference_edition();
	struct page page = answer_page(inv);
	bool json = flag(inv, "json");
	json_t *list = json ? json_array() : NULL;
	for (size_t i = 0; i < ref->foods_n; i++) {
		const struct food *food = &ref->foods[i];
		char canners[WORDS_BUFFER];
		if (match && !listed(match, food))
			continue;
		if (json) {
			list = json_append(list, food_json(food));
			continue;
		}
		canner_list(food, canners, sizeof canners);
		page_text(&page, "", food->slug);
		page_format(&page, "    ", "%s; %s; %s", food->title, food->kind, canners);
	}
	if (json)
		return answer_json(inv,
				   json_pack("{s:s, s:o}", "edition", ref->edition, "foods", list),
				   STATUS_DONE);
	page_blank(&page);
	page_text(&page, "",
		  "A steam canner goes by the boiling-water table, within limits; ask 'jarwright "
		  "check'.");
	return STATUS_DONE;
}

static int unknown(struct invocation *inv, const struct food_match *match, const char *words)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(words, SIZE_MAX, shown);
	if (match->foods_n > 0)
		error_usage(inv->err, "foods: nothing goes by '%s'; did you mean %s?", shown,
			    match->foods[0]->slug);
	else
		error_usage(inv->err, "foods: nothing goes by '%s'; 'jarwright foods' lists all",
			    shown);
	return command_failed(inv);
}

static int run(struct invocation *inv)
{
	char words[ARGUMENT_MAX];
	struct food_match match;
	if (!operands_between(inv, 0, 32, "WORD") || !operand_words(inv, words, sizeof words))
		return command_failed(inv);
	if (inv->operands_n == 0)
		return list_foods(inv, NULL);
	reference_find_harvest(reference_edition(), words, &match);
	if (match.kind == MATCH_BARRED)
		return answer_barred(inv, match.barred);
	if (match.kind == MATCH_NONE)
		return unknown(inv, &match, words);
	return list_foods(inv, &match);
}

const struct command command_foods = {
    .name = "foods",
    .synopsis = "[WORD...]",
    .summary = "the foods that have a published process",
    .description = "Lists name, title, kind and the canners a table is published for; with a word, "
		   "only the foods it can mean.",
    .options = options,
    .examples = examples,
    .run = run,
};
