/* By what a recipe is multiplied, as the cook said it. */
#ifndef JARWRIGHT_CLI_RECIPE_SCALE_H
#define JARWRIGHT_CLI_RECIPE_SCALE_H

#include "recipe.h"

/* --NAME as a factor above 0; 1 if it is not given. */
bool factor_option(struct invocation *inv, const char *name, struct rational *out);
/* --by, --jars with --jar and --makes, or --have with --of: exactly one of the three. */
bool factor_wanted(struct invocation *inv, const struct recipe *recipe, struct rational *out);
/* "4 pint" or "2 L" of --NAME in millilitres: a number of jars, or a volume. */
bool volume_option(struct invocation *inv, const char *name, struct rational *ml);
/* --jar in nanolitres, and its words. */
bool jar_option(struct invocation *inv, int64_t *nl, char *words, size_t size);

#endif
