#include "recipe_scale.h"

#include <stdlib.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
#include "jarwright/words.h"
#include "request.h"

#define NL_PER_ML 1000000
#define JARS_MOST 10000

bool factor_option(struct invocation *inv, const char *name, struct rational *out)
{
	const char *given = option(inv, name);
	*out = (struct rational){1, 1};
	if (!given)
		return true;
	if (!rational_parse(given, out, inv->err))
		return error_context(inv->err, "%s", name);
	char shown[TEXT_SHOWN_SIZE];
	text_show(given, SIZE_MAX, shown);
	return out->num > 0 ||
	       error_usage(inv->err, "%s: '%s' is not above 0; say a factor such as 1/2 or 3", name,
			   shown);
}

/* The jar of this name, "pint" or "pints". */
static bool jar_named(const char *words, size_t length, enum jar *out)
{
	const struct reference *ref = reference_edition();
	char folded[WORDS_SIZE];
	if (!words_fold(words, length, folded))
		return false;
	for (int i = 0; i < JAR_COUNT; i++)
		if (words_fold_to(ref->jars[i].name, strlen(ref->jars[i].name), folded)) {
			*out = (enum jar)i;
			return true;
		}
	return false;
}

static bool empty_volume(struct error *err, const char *name, const char *shown)
{
	return error_usage(err, "%s: '%s' is nothing; say how much, such as '4 pints' or '2 L'",
			   name, shown);
}

/* A named jar holds whole US fluid ounces; the tables keep it rounded down to a nanolitre. */
static bool jar_volume(int64_t nl, struct rational *ml)
{
	struct kitchen_measure ounce;
	int64_t down, ounces;
	struct rational rounded, count;
	if (!rational_make(nl, NL_PER_ML, &rounded))
		return false;
	*ml = rounded;
	if (!kitchen_measure_find(reference_tables_edition(), UNIT_FLUID_OUNCE, SYSTEM_US,
				  &ounce) ||
	    !rational_div(rounded, ounce.amount, &count) || !rational_ceil(count, 1, &ounces))
		return true;
	struct rational whole;
	if (rational_mul(ounce.amount, (struct rational){ounces, 1}, &whole) &&
	    rational_floor(whole, NL_PER_ML, &down) && down == nl)
		*ml = whole;
	return true;
}

bool volume_option(struct invocation *inv, const char *name, struct rational *ml)
{
	const char *given = option(inv, name), *unit = "";
	struct rational count = {0, 1}, jar = {0, 1};
	struct quantity volume;
	enum jar named;
	char shown[TEXT_SHOWN_SIZE];
	text_show(given, SIZE_MAX, shown);
	if (!kitchen_quantity_split(name, given, &count, &unit, inv->err))
		return false;
	if (count.num <= 0)
		return empty_volume(inv->err, name, shown);
	if (jar_named(unit, strlen(unit), &named)) {
		if (jar_volume(reference_edition()->jars[named].volume_nl, &jar) &&
		    rational_mul(count, jar, ml))
			return true;
		return error_usage(inv->err, "%s: '%s' does not fit; say less", name, shown);
	}
	if (!quantity_parse(DIMENSION_VOLUME, name, given, &volume, inv->err))
		return false;
	*ml = volume.amount;
	return true;
}

bool jar_option(struct invocation *inv, int64_t *nl, char *words, size_t size)
{
	struct asked asked;
	memset(&asked, 0, sizeof asked);
	if (!asked_jar(inv, &asked))
		return false;
	const struct jar_choice *jar = &asked.request.jar;
	if (!jar->stated)
		return error_usage(inv->err, "jar: which jar is not said; say --jar pint or --jar "
					     "500mL");
	*nl = jar->by_volume ? jar->volume_nl : reference_edition()->jars[jar->jar].volume_nl;
	jar_words(words, size, reference_edition(), jar);
	return true;
}

static bool factor_by_jars(struct invocation *inv, struct rational *out)
{
	int jars = 0;
	int64_t nl = 0;
	char words[WORDS_BUFFER];
	struct rational made = {0, 1}, wanted = {0, 1};
	if (!option(inv, "makes"))
		return error_usage(
		    inv->err, "jars: what the recipe makes is not known; say --makes '4 pints' or "
			      "--makes 2L, as it is written or as you measured it");
	if (!count_parse("jars", option(inv, "jars"), JARS_MOST, &jars, inv->err) ||
	    !jar_option(inv, &nl, words, sizeof words) || !volume_option(inv, "makes", &made))
		return false;
	if (jar_volume(nl, &wanted) && rational_mul(wanted, (struct rational){jars, 1}, &wanted) &&
	    rational_div(wanted, made, out))
		return true;
	return error_usage(inv->err, "jars: the factor does not fit; say --by instead");
}

/* Does the line name what --of says? */
static bool line_is_of(const struct recipe_line *line, const char *of)
{
	char words[WORDS_SIZE], wanted[WORDS_SIZE];
	return words_fold(line->read.ingredient, strlen(line->read.ingredient), words) &&
	       words_fold(of, strlen(of), wanted) && words_all_in(words, wanted);
}

/* A word for a harvest: plums, onions; not sugar or vinegar. */
static bool is_produce(const struct recipe_line *line)
{
	struct food_match match;
	reference_find_harvest(reference_edition(), line->read.ingredient, &match);
	return match.kind == MATCH_ONE || match.kind == MATCH_SEVERAL;
}

struct weighed_line {
	bool found;
	size_t line;
	bool doubtful; /* another line may be what is meant, and has no weight */
	size_t unweighed;
	struct rational least, most;
};

/*
 * "breakfast cups diced plums" ends with a word for a food. A line whose weight is not known is
 * looked at with care, for it may be the one that is meant.
 */
static bool ends_with_food(const struct recipe_line *line)
{
	char folded[WORDS_SIZE];
	struct food_match match;
	if (!words_fold(line->read.ingredient, strlen(line->read.ingredient), folded))
		return false;
	const char *last = strrchr(folded, ' ');
	reference_find_food(reference_edition(), last ? last + 1 : folded, &match);
	return match.kind == MATCH_ONE || match.kind == MATCH_SEVERAL;
}

/* The heaviest line of produce, or of what --of says. */
static void find_line(const struct recipe *recipe, const char *of, struct weighed_line *out)
{
	*out = (struct weighed_line){.found = false};
	for (size_t i = 0; i < recipe->lines_n; i++) {
		const struct recipe_line *line = &recipe->lines[i];
		struct rational least, most;
		bool weighed =
		    recipe_line_grams(reference_tables_edition(), recipe, i, &least, &most);
		bool meant = of ? line_is_of(line, of) : is_produce(line);
		if (!weighed && (meant || ends_with_food(line))) {
			out->doubtful = true;
			out->unweighed = i;
		}
		if (!weighed || !meant || (out->found && rational_compare(most, out->most) <= 0))
			continue;
		out->found = true;
		out->line = i;
		out->least = least;
		out->most = most;
	}
}

/* Pounds to grams, exactly, through the published pound. */
static bool pounds_to_grams(struct rational lb, struct rational *out)
{
	struct kitchen_measure pound;
	return kitchen_measure_find(reference_tables_edition(), UNIT_POUND, SYSTEM_US, &pound) &&
	       rational_mul(lb, pound.amount, out);
}

static bool factor_by_produce(struct invocation *inv, const struct recipe *recipe,
			      struct rational *out)
{
	const char *of = option(inv, "of");
	struct quantity have;
	struct rational grams;
	struct weighed_line line;
	if (!quantity_parse(DIMENSION_MASS, "have", option(inv, "have"), &have, inv->err))
		return false;
	if (have.amount.num <= 0)
		return error_usage(inv->err, "have: nothing to cook; type a weight such as 1.7kg");
	find_line(recipe, of, &line);
	if (!line.found)
		return error_usage(inv->err,
				   "have: no line of the recipe has %s and a published weight; say "
				   "which with --of, or the factor with --by",
				   of ? "those words" : "a fruit or vegetable");
	if (line.doubtful && !of)
		return error_usage(
		    inv->err,
		    "have: line %d, '%.60s', has no published weight, so which line is the most is "
		    "not known; say which you have with --of, or the factor with --by",
		    recipe->lines[line.unweighed].number, recipe->lines[line.unweighed].text);
	if (rational_compare(line.least, line.most) != 0)
		return error_usage(
		    inv->err,
		    "have: line %d, '%.60s', is %.0f to %.0f g by what is published; "
		    "weigh it once and say the factor with --by",
		    recipe->lines[line.line].number, recipe->lines[line.line].text,
		    rational_double(line.least), rational_double(line.most));
	if (pounds_to_grams(have.amount, &grams) && rational_div(grams, line.least, out))
		return true;
	return error_usage(inv->err, "have: the factor does not fit; say --by instead");
}

bool factor_wanted(struct invocation *inv, const struct recipe *recipe, struct rational *out)
{
	bool by = option(inv, "by") != NULL, jars = option(inv, "jars") != NULL;
	bool have = option(inv, "have") != NULL;
	if (by + jars + have != 1)
		return error_usage(inv->err,
				   "recipe scale: say one of --by 1/2, --jars N with --jar and "
				   "--makes, or --have 1.7kg");
	if (by)
		return factor_option(inv, "by", out);
	return jars ? factor_by_jars(inv, out) : factor_by_produce(inv, recipe, out);
}
