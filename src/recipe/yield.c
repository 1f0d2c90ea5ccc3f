#include "jarwright/recipe_yield.h"

#include <string.h>

#include "jarwright/words.h"

#define MG_PER_G  1000
#define NL_PER_ML 1000000

static bool add_mg(int64_t *sum, int64_t mg)
{
	return !__builtin_add_overflow(*sum, mg, sum);
}

bool recipe_total(const struct reference_tables *tables, const struct recipe *recipe,
		  struct recipe_total *out, struct error *err)
{
	*out = (struct recipe_total){0};
	for (size_t i = 0; i < recipe->lines_n; i++) {
		struct rational least, most;
		int64_t least_mg, most_mg;
		out->left_out[i] = !recipe_line_grams(tables, recipe, i, &least, &most);
		if (out->left_out[i])
			continue;
		/* Sums of exact fractions soon do not fit: each end is rounded outward instead. */
		if (!rational_floor(least, MG_PER_G, &least_mg) ||
		    !rational_ceil(most, MG_PER_G, &most_mg) || !add_mg(&out->least_mg, least_mg) ||
		    !add_mg(&out->most_mg, most_mg))
			return error_usage(err, "line %d: its amount is too large to add up",
					   recipe->lines[i].number);
		out->weighed_n++;
	}
	return true;
}

bool recipe_jars(struct rational ml, int64_t jar_nl, struct recipe_jars *out)
{
	struct rational jar, count, full;
	if (!rational_make(jar_nl, NL_PER_ML, &jar) || !rational_div(ml, jar, &count) ||
	    !rational_floor(count, 1, &out->full) ||
	    !rational_mul((struct rational){-out->full, 1}, jar, &full))
		return false;
	return rational_add(ml, full, &out->left_ml);
}

const struct formula_line *recipe_published_yield(const struct food *food)
{
	for (size_t i = 0; i < food->formula_n; i++)
		if (*food->formula[i].variant == '\0' && *food->formula[i].quantity &&
		    strcmp(food->formula[i].ingredient, "(yield)") == 0)
			return &food->formula[i];
	return NULL;
}

/* How the tables write the sizes of jar in a yield. */
static const struct {
	const char *unit;
	enum jar jar;
} yield_units[] = {{"half-pint", JAR_HALF_PINT}, {"pt", JAR_PINT}, {"qt", JAR_QUART}};
#define TIMES_PARTS 10000 /* a ratio of weights is known no better */
#define TIMES_MOST  1000000

bool recipe_yield_volume(const struct reference *ref, const struct formula_line *yield,
			 double times, struct rational *ml)
{
	struct rational count, jar, factor;
	struct error ignored;
	if (!(times > 0 && times < TIMES_MOST) ||
	    !rational_parse(yield->quantity, &count, &ignored))
		return false;
	for (size_t i = 0; i < sizeof yield_units / sizeof *yield_units; i++)
		if (strcmp(yield->unit, yield_units[i].unit) == 0)
			return rational_make(ref->jars[yield_units[i].jar].volume_nl, NL_PER_ML,
					     &jar) &&
			       rational_make((int64_t)(times * TIMES_PARTS + 0.5), TIMES_PARTS,
					     &factor) &&
			       rational_mul(count, jar, ml) && rational_mul(*ml, factor, ml);
	return false;
}

static bool says_one_of(const char *text, const char *const *words, size_t words_n)
{
	char folded[WORDS_SIZE];
	if (!words_fold(text, strlen(text), folded))
		return false;
	for (size_t i = 0; i < words_n; i++)
		if (words_all_in(folded, words[i]))
			return true;
	return false;
}

static bool is_sweet_spread(const struct recipe *recipe)
{
	static const char *const names[] = {"jam", "jelly", "marmalade", "preserve", "conserve"};
	static const char *const pectin[] = {"pectin"};
	if (says_one_of(recipe->name, names, sizeof names / sizeof *names))
		return true;
	for (size_t i = 0; i < recipe->lines_n; i++)
		if (says_one_of(recipe->lines[i].read.ingredient, pectin, 1))
			return true;
	return false;
}

const struct change_rule_row *recipe_batch_rule(const struct reference_tables *tables,
						const struct recipe *recipe)
{
	if (!is_sweet_spread(recipe))
		return NULL;
	for (size_t i = 0; i < tables->change_rule_n; i++)
		if (strcmp(tables->change_rule[i].change, "jam or jelly batch doubled") == 0)
			return &tables->change_rule[i];
	return NULL;
}
