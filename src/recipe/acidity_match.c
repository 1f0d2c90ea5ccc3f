/* Which rows of the tables of acidity are about a food. */
#include "acidity_internal.h"

#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/words.h"

/* Not the fresh food: its acids are concentrated, lost or added. Black pepper is no pepper. */
static const char *const OTHER[] = {
    "dried",     "dry",    "canned",     "pickled", "acidified", "cooked", "baked",     "boiled",
    "kimchi",    "ground", "granulated", "powder",  "flake",     "black",  "sweetened", "salt",
    "processed", "juice",  "sauce",      "paste",   "puree",     "nectar"};

static bool says_other(const char *rest)
{
	char folded[WORDS_SIZE];
	if (!words_fold(rest, strlen(rest), folded))
		return false;
	for (size_t i = 0; i < sizeof OTHER / sizeof *OTHER; i++)
		if (words_all_in(folded, OTHER[i]))
			return true;
	return false;
}

bool food_named(const char *row, const char *name)
{
	if (words_same(row, name))
		return true;
	char folded[WORDS_SIZE];
	if (!words_fold(name, strlen(name), folded))
		return false;
	/* What stands in brackets only says more of the food named before them. */
	if (words_fold_to(row, strcspn(row, "("), folded))
		return true;
	size_t head = strcspn(row, ",(");
	return words_fold_to(row, head, folded) && !says_other(row + head);
}

bool figure(const char *table, const char *text, double *out, struct error *err)
{
	struct rational value;
	if (!rational_parse(text, &value, err)) {
		error_context(err, "table %s", table);
		return false;
	}
	*out = rational_double(value);
	return true;
}
