/* ways: everything that can be put up from a harvest. */
#include <string.h>

#include "cli.h"
#include "jarwright/measure.h"
#include "jarwright/plan.h"
#include "jarwright/text.h"
#include "jarwright/words.h"
#include "request.h"

static const struct option_spec options[] = {
    {"have", "WEIGHT", "what you have, with its unit: 20lb, 9kg"},
    OPTION_ELEVATION,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright ways beets --elevation 2900ft", "every published way for beets"},
    {"jarwright ways peaches --have 20lb --elevation 880m", "with jars and canner loads"},
    EXAMPLES_END,
};

/* What the cook brings. */
struct harvest {
	struct elevation elevation;
	struct kitchen kitchen;
	char words[WORDS_SIZE]; /* what she called it, folded */
	struct food_match match;
	const struct barred *barred; /* what its plain name is refused as, or NULL */
	bool weighed;
	struct rational lb;
};

static bool own(const struct kitchen *kitchen, enum canner canner)
{
	for (size_t i = 0; i < kitchen->canners_n; i++)
		if (kitchen->canners[i].kind == canner)
			return true;
	return kitchen->canners_n == 0;
}

/* The published ways for one food that her canners can do. */
static size_t food_ways(const struct harvest *harvest, const struct food *food, struct way *ways)
{
	struct request rq = {.food = {.kind = MATCH_ONE, .foods = {food}, .foods_n = 1},
			     .elevation_stated = harvest->elevation.stated,
			     .elevation_mft = harvest->elevation.mft};
	size_t n = decide_ways(reference_edition(), &rq, ways, WAYS_MAX), kept = 0;
	for (size_t i = 0; i < n; i++)
		if (own(&harvest->kitchen, ways[i].canner))
			ways[kept++] = ways[i];
	return kept;
}

/* Jars and loads of one way. */
struct amount {
	struct yield yield;
	int loads, jars_per_load; /* 0: no load published */
};

/*
 * Is the harvest what the food's published pounds weigh? They weigh its main produce, not
 * what its title says comes with that ("Beans, dry, with tomato ... sauce"), nor something
 * else of the kind.
 */
static bool weighs(const char *harvest, const struct food *food)
{
	char all[WORDS_SIZE], produce[WORDS_SIZE];
	const char *with = strstr(food->title, " with ");
	size_t n = with ? (size_t)(with - food->title) : strlen(food->title);
	if (!words_fold(food->title, strlen(food->title), all) ||
	    !words_fold(food->title, n, produce))
		return false;
	if (words_all_in(produce, harvest))
		return true;
	return !words_all_in(all, harvest) &&
	       !words_fold_to(food->kind, strlen(food->kind), harvest);
}

static bool amount_of(const struct harvest *harvest, const struct food *food, const struct way *way,
		      struct amount *out)
{
	const struct reference *ref = reference_edition();
	struct jar_choice jar = {.stated = true, .jar = way->jar};
	struct span load;
	enum load_origin origin;
	*out = (struct amount){.loads = 0};
	if (!harvest->weighed || !weighs(harvest->words, food) ||
	    !plan_yield(ref, food, &jar, harvest->lb, &out->yield))
		return false;
	const struct kitchen_canner *only = only_canner(&harvest->kitchen, way->canner);
	if (only)
		out->jars_per_load = canner_load(only, way->jar);
	if (out->jars_per_load == 0 && plan_usual_load(ref, &jar, &load, &origin))
		out->jars_per_load = load.least;
	if (out->jars_per_load > 0)
		out->loads = (out->yield.jars + out->jars_per_load - 1) / out->jars_per_load;
	return true;
}

static void amount_words(const struct amount *amount, char *buffer, size_t size)
{
	char loads[64] = "", left[64] = "";
	if (amount->yield.jars == 0) {
		snprintf(buffer, size, "less than one jar");
		return;
	}
	if (amount->loads > 0)
		snprintf(loads, sizeof loads, ", %d load%s", amount->loads,
			 amount->loads == 1 ? "" : "s");
	snprintf(buffer, size, "%d jar%s%s%s", amount->yield.jars,
		 amount->yield.jars == 1 ? "" : "s", loads,
		 left_words(left, sizeof left, &amount->yield));
}

#define MADE_COLUMN 51 /* where what the harvest makes stands, if there is room for it */

/* One line a way, in columns: canner, pack, jar, process, what the harvest makes of it. */
static void print_way(const struct page *page, const struct harvest *harvest,
		      const struct food *food, const struct way *way)
{
	struct amount amount;
	char process[64], line[128], made[256];
	if (way->psi > 0)
		snprintf(process, sizeof process, "%d min at %d psi", way->minutes, way->psi);
	else
		snprintf(process, sizeof process, "%d min", way->minutes);
	snprintf(line, sizeof line, "  %-14s %-3s %-10s %s", canner_word(way->canner),
		 way->pack == PACK_UNSTATED ? "" : pack_word(way->pack),
		 reference_edition()->jars[way->jar].name, process);
	if (!amount_of(harvest, food, way, &amount)) {
		fprintf(page->out, "%s\n", line);
		return;
	}
	amount_words(&amount, made, sizeof made);
	if (MADE_COLUMN + (int)strlen(made) <= page->width)
		fprintf(page->out, "%-*s%s\n", MADE_COLUMN, line, made);
	else
		fprintf(page->out, "%s\n      %s\n", line, made);
}

/* Pounds are published for few foods only. */
static void print_pounds(const struct page *page, const struct harvest *harvest,
			 const struct food *food, const struct way *way)
{
	struct amount amount;
	if (!harvest->weighed)
		return;
	if (amount_of(harvest, food, way, &amount))
		yield_text(page, reference_edition(), &amount.yield);
	else if (weighs(harvest->words, food))
		page_text(page, "  ", "No publication says how many jars a weight of it makes.");
	else
		page_text(page, "  ",
			  "How many jars your weight makes depends on what else goes in.");
}

static void print_closing(const struct page *page, const struct harvest *harvest, bool vinegar)
{
	page_blank(page);
	if (vinegar) {
		char limit[WORDS_BUFFER];
		const struct rule *rule = &reference_edition()->rules[RULE_VINEGAR_WEAK];
		page_format(
		    page, "careful ",
		    "Where the recipe takes vinegar, %s %% on its label is assumed; ask check with "
		    "--vinegar for yours.",
		    milli_words(limit, sizeof limit, rule->limit_milli));
	}
	if (harvest->weighed)
		page_text(page, "note    ",
			  "A load is what your one canner of the kind holds; else the published "
			  "usual load.");
	if (harvest->kitchen.canners_n > 0)
		page_text(page, "note    ", "Only ways for the canners of your kitchen are shown.");
	page_text(
	    page, "note    ",
	    "Each way holds for its published recipe unchanged; ask check for headspace, acid and "
	    "cautions before you start.");
}

static int print(struct invocation *inv, const struct harvest *harvest)
{
	struct page page = answer_page(inv);
	char feet[WORDS_BUFFER];
	bool vinegar = false;
	size_t found = 0;
	if (harvest->barred) {
		char source[WORDS_BUFFER];
		page_headline(&page, "CAREFUL", harvest->barred->slug);
		page_format(&page, "  ", "%s %s", harvest->barred->says, harvest->barred->instead);
		page_format(&page, "  ", "[%s]",
			    citation_words(source, sizeof source, &harvest->barred->from));
		page_blank(&page);
	}
	page_format(&page, "", "Published ways at %s:",
		    elevation_words(feet, sizeof feet, harvest->elevation.mft));
	for (size_t i = 0; i < harvest->match.foods_n; i++) {
		const struct food *food = harvest->match.foods[i];
		struct way ways[WAYS_MAX];
		size_t n = food_ways(harvest, food, ways);
		if (n == 0)
			continue;
		page_blank(&page);
		page_format(&page, "", "%s (%s)", food->slug, food->title);
		print_pounds(&page, harvest, food, &ways[0]);
		for (size_t w = 0; w < n; w++)
			print_way(&page, harvest, food, &ways[w]);
		vinegar = vinegar || (food->acid_need & ACID_NEED_VINEGAR);
		found += n;
	}
	if (found == 0)
		page_text(&page, "  ",
			  harvest->kitchen.canners_n > 0
			      ? "none for the canners of your kitchen; freeze it or use it fresh"
			      : "none; freeze it or use it fresh");
	print_closing(&page, harvest, vinegar);
	return STATUS_DONE;
}

static json_t *way_json(const struct harvest *harvest, const struct food *food,
			const struct way *way)
{
	struct amount amount;
	bool known = amount_of(harvest, food, way, &amount);
	return json_pack(
	    "{s:s, s:s, s:o, s:s, s:i, s:o, s:o, s:o, s:o, s:b}", "food", food->slug, "canner",
	    canner_word(way->canner), "pack",
	    way->pack == PACK_UNSTATED ? json_null() : json_string(pack_word(way->pack)), "jar",
	    reference_edition()->jars[way->jar].name, "minutes", way->minutes, "psi",
	    json_positive(way->psi), "jars", known ? json_integer(amount.yield.jars) : json_null(),
	    "loads", known && amount.jars_per_load ? json_integer(amount.loads) : json_null(),
	    "left_lb", known ? json_real(rational_double(amount.yield.left_lb)) : json_null(),
	    "vinegar_assumed", (food->acid_need & ACID_NEED_VINEGAR) != 0);
}

static int to_json(struct invocation *inv, const struct harvest *harvest)
{
	json_t *list = json_array();
	for (size_t i = 0; i < harvest->match.foods_n; i++) {
		struct way ways[WAYS_MAX];
		size_t n = food_ways(harvest, harvest->match.foods[i], ways);
		for (size_t w = 0; list && w < n; w++)
			list =
			    json_append(list, way_json(harvest, harvest->match.foods[i], &ways[w]));
	}
	return answer_json(
	    inv,
	    json_pack("{s:s, s:o, s:o, s:o, s:s?}", "edition", reference_edition()->edition,
		      "elevation_ft", json_milli(harvest->elevation.mft), "have_lb",
		      harvest->weighed ? json_real(rational_double(harvest->lb)) : json_null(),
		      "ways", list, "barred", harvest->barred ? harvest->barred->slug : NULL),
	    STATUS_DONE);
}

/* A food refused under this word may be part of published foods under another of its words. */
static void find_relatives(struct harvest *out)
{
	const char *list = out->barred->words, *item;
	size_t length;
	while (words_next(&list, &item, &length)) {
		char word[WORDS_SIZE];
		struct food_match match;
		if (!words_fold(item, length, word))
			continue;
		reference_find_harvest(reference_edition(), word, &match);
		if (match.kind != MATCH_SEVERAL)
			continue;
		out->match = match;
		memcpy(out->words, word, sizeof out->words);
		return;
	}
}

static bool read_harvest(struct invocation *inv, struct harvest *out)
{
	char words[ARGUMENT_MAX], shown[TEXT_SHOWN_SIZE];
	if (!operands_between(inv, 1, 32, "PRODUCE") || !operand_words(inv, words, sizeof words) ||
	    !invocation_kitchen(inv, &out->kitchen) ||
	    !invocation_elevation(inv, &out->elevation) ||
	    !harvest_weight(inv, &out->weighed, &out->lb))
		return false;
	reference_find_harvest(reference_edition(), words, &out->match);
	out->barred = reference_find_barred(reference_edition(), FACET_FOOD, words);
	if (!words_fold(words, strlen(words), out->words))
		*out->words = '\0';
	if (out->match.kind == MATCH_BARRED)
		find_relatives(out);
	if (out->match.kind != MATCH_NONE)
		return true;
	text_show(words, SIZE_MAX, shown);
	if (out->match.foods_n > 0)
		return error_usage(inv->err, "ways: nothing goes by '%s'; did you mean %s?", shown,
				   out->match.foods[0]->slug);
	return error_usage(inv->err, "ways: nothing goes by '%s'; 'jarwright foods' lists all",
			   shown);
}

static int ask_elevation(struct invocation *inv)
{
	static const char text[] =
	    "At what elevation is the kitchen? Say --elevation 2900ft or 880m.";
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:n, s:s}", "ways", "text", text),
				   STATUS_UNCLEAR);
	struct page page = answer_page(inv);
	page_headline(&page, "UNCLEAR", text);
	return STATUS_UNCLEAR;
}

static int run(struct invocation *inv)
{
	struct harvest harvest;
	memset(&harvest, 0, sizeof harvest);
	if (!read_harvest(inv, &harvest))
		return command_failed(inv);
	if (harvest.match.kind == MATCH_BARRED)
		return answer_barred(inv, harvest.barred);
	if (!harvest.elevation.stated)
		return harvest.barred ? answer_barred(inv, harvest.barred) : ask_elevation(inv);
	return flag(inv, "json") ? to_json(inv, &harvest) : print(inv, &harvest);
}

const struct command command_ways = {
    .name = "ways",
    .synopsis = "PRODUCE [--have WEIGHT] [--elevation E]",
    .summary = "what can be put up from a harvest, with jars and loads",
    .description = "Lists every published way for all foods the word can mean, with the process at "
		   "your elevation; with a weight, also jars and canner loads. If canners are "
		   "stored in your kitchen, only their ways are shown.",
    .options = options,
    .examples = examples,
    .run = run,
};
