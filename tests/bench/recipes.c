/* Recipes through parse, mass and comparison with every formula, on one core. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "bench.h"
#include "jarwright/compare.h"
#include "jarwright/recipe_yield.h"

enum { RECIPES_MAX = 512, ROUNDS = 10, TEXT_SIZE = 8192 };
#define ROUND_SECONDS 0.1

/* The published formulas as a cook would write them down. */
static char texts[RECIPES_MAX][TEXT_SIZE];
static size_t texts_n, lines_n;

static bool in_the_jar(const struct formula_line *line)
{
	return *line->variant == '\0' && *line->quantity && strcmp(line->quantity, "0") != 0 &&
	       strcmp(line->ingredient, "(yield)") != 0;
}

static void write_formula(const struct food *food)
{
	char *text = texts[texts_n];
	size_t n = 0;
	for (size_t i = 0; i < food->formula_n; i++) {
		const struct formula_line *line = &food->formula[i];
		if (!in_the_jar(line))
			continue;
		n += (size_t)snprintf(text + n, TEXT_SIZE - n, "%s %s %s%s%s\n", line->quantity,
				      strcmp(line->unit, "each") == 0 ? "" : line->unit,
				      line->ingredient, *line->preparation ? ", " : "",
				      line->preparation);
		lines_n++;
		if (n >= TEXT_SIZE)
			abort(); /* TEXT_SIZE is too small */
	}
	if (n > 0)
		texts_n++;
}

/* What came out, so that no work is left out. */
static volatile unsigned verdicts_sum;

static bool one_recipe(const struct formula_set *set, const char *text, struct comparison *out)
{
	static const struct compare_facts facts = {VINEGAR_LABELLED, 5000};
	struct recipe recipe;
	struct recipe_total total;
	struct error err;
	if (!recipe_read("bench", SYSTEM_US, text, strlen(text), &recipe, &err)) {
		(void)fprintf(stderr, "bench: %s\n", err.text);
		return false;
	}
	bool ok = recipe_total(reference_tables_edition(), &recipe, &total, &err);
	recipe_compare(set, &recipe, &facts, NULL, out);
	verdicts_sum += (unsigned)out->verdict;
	recipe_release(&recipe);
	return ok;
}

/* Time of the processor alone: the goal is one core's, whatever else the machine does. */
static double processor_seconds(void)
{
	return (double)clock() / CLOCKS_PER_SEC;
}

/* The best rate of the rounds, in recipes a second; 0: one could not be read. */
static double best_rate(const struct formula_set *set, struct comparison *out)
{
	double best = 0;
	for (int round = 0; round < ROUNDS; round++) {
		double start = processor_seconds(), took;
		size_t done = 0;
		do {
			for (size_t i = 0; i < texts_n; i++, done++)
				if (!one_recipe(set, texts[i], out))
					return 0;
			took = processor_seconds() - start;
		} while (took < ROUND_SECONDS);
		if ((double)done / took > best)
			best = (double)done / took;
	}
	return best;
}

bool bench_recipes(void)
{
	const struct reference *ref = reference_edition();
	size_t size = formula_set_size(ref);
	struct error err;
	void *memory = malloc(size);
	struct comparison *out = calloc(1, sizeof *out);
	struct formula_set *set = NULL;
	double rate = 0;
	for (size_t i = 0; i < ref->foods_n && texts_n < RECIPES_MAX; i++)
		write_formula(&ref->foods[i]);
	if (memory && out)
		set = formula_set_prepare(ref, reference_tables_edition(), memory, size, &err);
	if (set)
		rate = best_rate(set, out);
	if (rate > 0)
		printf("recipes, one core: the %zu published ones, of %.1f lines, each read, "
		       "weighed and "
		       "held against %zu formulas\n"
		       "  recipes            %6.0f a second   goal >= 1000\n",
		       texts_n, (double)lines_n / (double)texts_n, formula_set_count(set), rate);
	else
		(void)fprintf(stderr, "bench: the recipes could not be compared\n");
	free(out);
	free(memory);
	return rate > 0;
}
