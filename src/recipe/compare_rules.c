#include <string.h>

#include "compare_internal.h"

/* How the rows of relation change_rule begin; each is looked for when formulas are prepared. */
static const char *const changes[CHANGE_COUNT] = {
    [CHANGE_LESS_ACID] = "less acid than the recipe",
    [CHANGE_PROPORTIONS] = "proportions of vinegar, food or water altered in pickles and relishes",
    [CHANGE_MORE_VEGETABLES] = "more onions or other vegetables than the recipe",
    [CHANGE_MORE_PEPPERS] = "more peppers than the recipe",
    [CHANGE_OTHER_VEGETABLE] = "other low-acid vegetables added or substituted",
    [CHANGE_LESS_VEGETABLE] = "less low-acid vegetable",
    [CHANGE_PEPPER_FOR_PEPPER] = "one kind of pepper for another",
    [CHANGE_THICKENER] = "flour, cornflour or other thickener added",
    [CHANGE_MEAT] = "meat added to a recipe that does not call for it",
    [CHANGE_GRAIN_IN_MEAT] = "rice, pasta or barley added to canned meat",
    [CHANGE_FAT_IN_MEAT] = "fat added to canned meat",
    [CHANGE_PRESERVING] = "any change that affects the preserving factors",
    [CHANGE_OWN_RECIPE] = "own or untested recipe canned",
    [CHANGE_PUREE] = "vegetable mashed or pureed instead of cubed",
    [CHANGE_SPICE_KIND] = "dried spice or herb: kind changed",
    [CHANGE_SPICE_AMOUNT] = "dried spice or herb: amount changed",
    [CHANGE_SALT_PICKLE] = "less or no salt in quick-process (fresh-pack) pickles",
    [CHANGE_SALT_SALSA] = "less or no salt in salsa",
    [CHANGE_SALT_PLAIN] = "less or no salt in canned vegetables, tomato products, meat",
    [CHANGE_SALT_FERMENTED] = "any change of salt amount or kind in sauerkraut",
    [CHANGE_SUGAR_FRUIT] = "less or no sugar in canned fruit",
    [CHANGE_SUGAR_PICKLE] = "less or no sugar in quick-process pickles or tomato products",
    [CHANGE_SUGAR_SALSA] = "less sugar in salsa",
    [CHANGE_SUGAR_JAM] = "less sugar in a standard jam or jelly",
    [CHANGE_SUGAR_MORE] = "more sugar to mask sourness (salsa, pickles)",
    [CHANGE_ACID_SWAPPED] = "acid source swapped in any other product",
    [CHANGE_CITRIC] = "citric acid in place of lemon juice or vinegar",
    [CHANGE_FRESH_JUICE] = "fresh lemon juice where bottled is required",
    [CHANGE_JUICE_FOR_VINEGAR] = "bottled lemon or lime juice in place of vinegar",
    [CHANGE_VINEGAR_KIND] = "white or cider vinegar exchanged at 5%",
    [CHANGE_DILUTED] = "vinegar diluted with water",
    [CHANGE_TOMATO_PASTE] = "tomato paste added to thicken salsa",
    [CHANGE_STARCH_PRINTED] = "starch printed in the tested formula itself",
};

bool change_rules_find(const struct reference_tables *tables,
		       const struct change_rule_row *out[CHANGE_COUNT], struct error *err)
{
	for (int i = 0; i < CHANGE_COUNT; i++) {
		size_t length = strlen(changes[i]);
		out[i] = NULL;
		for (size_t r = 0; r < tables->change_rule_n && !out[i]; r++)
			if (strncmp(tables->change_rule[r].change, changes[i], length) == 0)
				out[i] = &tables->change_rule[r];
		if (!out[i])
			return error_failed(
			    err,
			    "change rules: none begins with \"%s\"; the tables this "
			    "program was built with are incomplete, build it anew",
			    changes[i]);
	}
	return true;
}

const char *compare_keeping(const struct formula_set *set, const struct citation **from)
{
	const struct change_rule_row *row = set->rules[CHANGE_OWN_RECIPE];
	*from = &row->from;
	return row->condition;
}
