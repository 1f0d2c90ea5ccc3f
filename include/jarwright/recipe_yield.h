/*
 * What a recipe comes to: grams in all, and jars of a cooked volume.
 *
 * Grams do not tell a volume: the density of a cooked mixture is published for few foods. So
 * jars are counted from a volume that the cook measured, or by a density she chose.
 * Jars count at the full volume of their name; how much the headspace takes of it is
 * published in inches only, so there may be a jar more, never one less.
 */
#ifndef JARWRIGHT_RECIPE_YIELD_H
#define JARWRIGHT_RECIPE_YIELD_H

#include <stdint.h>

#include "jarwright/recipe.h"
#include "jarwright/reference.h"

struct recipe_total {
	int64_t least_mg, most_mg;       /* rounded down, rounded up */
	size_t weighed_n;                /* lines in it */
	bool left_out[RECIPE_LINES_MAX]; /* lines whose weight nothing published says */
};
/* False: the sum does not fit. */
bool recipe_total(const struct reference_tables *tables, const struct recipe *recipe,
		  struct recipe_total *out, struct error *err);

struct recipe_jars {
	int64_t full;            /* whole jars */
	struct rational left_ml; /* what is left over: for the refrigerator */
};
/* ml above 0, jar_nl above 0. False: it does not fit. */
bool recipe_jars(struct rational ml, int64_t jar_nl, struct recipe_jars *out);

/* The "(yield)" line of a food's formula as printed, or NULL. */
const struct formula_line *recipe_published_yield(const struct food *food);

/*
 * The volume that a published yield comes to, in millilitres, for `times` the formula's produce:
 * so many jars at the full volume of their name; of a range the lesser. False: it is given in
 * no size of jar, or does not fit.
 */
bool recipe_yield_volume(const struct reference *ref, const struct formula_line *yield,
			 double times, struct rational *ml);

/*
 * The published rule on jam and jelly batches above one, if it may speak of this recipe: its
 * name or a line says jam, jelly, marmalade, preserve, conserve or pectin. NULL: no.
 */
const struct change_rule_row *recipe_batch_rule(const struct reference_tables *tables,
						const struct recipe *recipe);

#endif
