/* ways: everything that can be put up from a harvest. */
#include <string.h>

#include "cli.h"
#include "jarwright/measure.h"
#include "jarwright/plan.h"
#include "jarwright/text.h"
#include "request.h"

static const struct option_spec options[] = {
    {"have", "WEIGHT", "what you have, with its unit: 20lb, 9kg"},
    OPTION_ELEVATION,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright ways beets --elevation 2900ft", "every published way for beets"},
    {"jarwright ways peaches --have 20lb", "with jars and canner loads"},
    EXAMPLES_END,
};

/* What the cook brings. */
struct harvest {
	struct elevation elevation;
	struct kitchen kitchen;
	struct food_match match;
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

/* Jars in a load of her first canner of the kind, as far as she has said; else 0. */
static int own_load(const struct kitchen *kitchen, const struct way *way)
{
	for (size_t i = 0; i < kitchen->canners_n; i++) {
		const struct kitchen_canner *canner = &kitchen->canners[i];
		if (canner->kind != way->canner)
			continue;
		if (way->jar == JAR_QUART)
			return canner->holds_quarts;
		if (way->jar == JAR_PINT)
			return canner->holds_pints;
		return way->jar == JAR_HALF_PINT ? canner->holds_half_pints : 0;
	}
	return 0;
}

static bool amount_of(const struct harvest *harvest, const struct food *food, const struct way *way,
		      struct amount *out)
{
	const struct reference *ref = reference_edition();
	struct jar_choice jar = {.stated = true, .jar = way->jar};
	struct span load;
	enum load_origin origin;
	*out = (struct amount){.loads = 0};
	if (!harvest->weighed || !plan_yield(ref, food, &jar, harvest->lb, &out->yield))
		return false;
	out->jars_per_load = own_load(&harvest->kitchen, way);
	if (out->jars_per_load == 0 && plan_usual_load(ref, &jar, &load, &origin))
		out->jars_per_load = load.least;
	if (out->jars_per_load > 0)
		out->loads = (out->yield.jars + out->jars_per_load - 1) / out->jars_per_load;
	return true;
}

static void amount_words(const struct amount *amount, char *buffer, size_t size)
{
	char loads[64] = "", left[64] = "";
	double left_lb = rational_double(amount->yield.left_lb);
	if (amount->loads > 0)
		snprintf(loads, sizeof loads, ", %d load%s", amount->loads,
			 amount->loads == 1 ? "" : "s");
	if (left_lb >= 0.05) /* less than a kitchen scale shows is not worth a word */
		snprintf(left, sizeof left, ", %.1f lb left", left_lb);
	snprintf(buffer, size, "%d jar%s%s%s", amount->yield.jars,
		 amount->yield.jars == 1 ? "" : "s", loads, left);
}

/* One line a way, in columns: canner, pack, jar, process, what the harvest makes of it. */
static void print_way(const struct page *page, const struct harvest *harvest,
		      const struct food *food, const struct way *way)
{
	struct amount amount;
	char process[64], made[256] = "";
	if (amount_of(harvest, food, way, &amount))
		amount_words(&amount, made, sizeof made);
	if (way->psi > 0)
		snprintf(process, sizeof process, "%d min at %d psi", way->minutes, way->psi);
	else
		snprintf(process, sizeof process, "%d min", way->minutes);
	fprintf(page->out, "  %-14s %-3s %-9s  %-*s%s\n", canner_word(way->canner),
		way->pack == PACK_UNSTATED ? "" : pack_word(way->pack),
		reference_edition()->jars[way->jar].name, *made ? 19 : 0, process, made);
}

/* Pounds are published for few foods only. */
static void print_pounds(const struct page *page, const struct harvest *harvest,
			 const struct food *food, const struct way *way)
{
	struct amount amount;
	char pounds[WORDS_BUFFER];
	if (!harvest->weighed)
		return;
	if (!amount_of(harvest, food, way, &amount))
		page_text(page, "  ", "No publication says how many jars a weight of it makes.");
	else
		page_format(page, "  ", "Published: %s lb for %d %s jars; the rest in proportion.",
			    milli_words(pounds, sizeof pounds, amount.yield.published_milli_lb),
			    amount.yield.published_jars,
			    reference_edition()->jars[amount.yield.published_jar].name);
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
	    json_pack("{s:s, s:o, s:o, s:o}", "edition", reference_edition()->edition,
		      "elevation_ft", json_milli(harvest->elevation.mft), "have_lb",
		      harvest->weighed ? json_real(rational_double(harvest->lb)) : json_null(),
		      "ways", list),
	    STATUS_DONE);
}

static bool read_harvest(struct invocation *inv, struct harvest *out)
{
	char words[ARGUMENT_MAX], shown[TEXT_SHOWN_SIZE];
	const char *have = option(inv, "have");
	struct quantity mass;
	if (!operands_between(inv, 1, 32, "PRODUCE") || !operand_words(inv, words, sizeof words) ||
	    !invocation_kitchen(inv, &out->kitchen) || !invocation_elevation(inv, &out->elevation))
		return false;
	if (have) {
		if (!quantity_parse(DIMENSION_MASS, "have", have, &mass, inv->err))
			return false;
		if (mass.amount.num <= 0)
			return error_usage(inv->err,
					   "have: nothing to put up; type a weight such as 20lb");
		out->weighed = true;
		out->lb = mass.amount;
	}
	reference_find_harvest(reference_edition(), words, &out->match);
	if (out->match.kind != MATCH_NONE)
		return true;
	text_show(words, SIZE_MAX, shown);
	if (out->match.foods_n > 0)
		return error_usage(inv->err, "ways: nothing goes by '%s'; did you mean %s?", shown,
				   out->match.foods[0]->slug);
	return error_usage(inv->err, "ways: nothing goes by '%s'; list all with foods", shown);
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
		return answer_barred(inv, harvest.match.barred);
	if (!harvest.elevation.stated)
		return ask_elevation(inv);
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
