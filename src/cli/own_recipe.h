/* A recipe of the cook's own where a food may stand: check and plan. */
#ifndef JARWRIGHT_CLI_OWN_RECIPE_H
#define JARWRIGHT_CLI_OWN_RECIPE_H

#include "jarwright/compare.h"
#include "recipe.h"
#include "request.h"

/* clang-format off */
#define OWN_RECIPE_OPTIONS \
	{"as", "food|recipe", "what the name means, if it is a food of the tables and a recipe of yours"}, \
	{"formula", "FOOD", "of a recipe of yours: the tested formula to hold it against; the nearest if " \
	                    "not said"}
/* clang-format on */

/* A comparison, and the formulas it was made with. */
struct held {
	struct comparison *comparison;
	const struct formula_set *set;
	void *memory;
};
/*
 * Holds a recipe against the formula of a food, or with NULL against all. *out is to be
 * released, whatever comes back. False: *err is filled.
 */
bool recipe_hold(const struct recipe *recipe, const struct compare_facts *facts,
		 const struct food *food, struct held *out, struct error *err);
void held_release(struct held *held);

struct own_recipe {
	char name[RECIPE_NAME_SIZE]; /* "": the food is none of her recipes */
	struct held held; /* its comparison NULL: it is asked whether the recipe is meant */
};

/*
 * Looks for a recipe of the name in the operands, after asked_read(). One that is no food, or
 * that --as recipe asks for, is held against the formulas under the facts given; if that comes
 * out tested, asked->request becomes a request for the formula's food. A name that is both, without
 * --as, is noted in asked->request.recipe for decide() to ask about. *out is to be released,
 * whatever comes back. False: inv->err is filled.
 */
bool own_recipe_find(struct invocation *inv, struct asked *asked, struct own_recipe *out);
void own_recipe_release(struct own_recipe *own);

/* Was a recipe held against the formulas, and not found inside one? Then nothing is decided. */
bool own_recipe_stops(const struct own_recipe *own);
/* The answer then, and its status. */
int own_recipe_answer(struct invocation *inv, const struct asked *asked,
		      const struct own_recipe *own);

/* answer, which it takes, with the member "recipe"; NULL: out of memory. */
json_t *with_own_recipe(json_t *answer, const struct own_recipe *own);

/* The food whose formula these words name, found as check finds it. */
bool formula_find(const char *words, const struct food **out, struct error *err);
/* --formula as a food of the tables; NULL if it was not given. False: inv->err is filled. */
bool formula_option(struct invocation *inv, const struct food **out);

#endif
