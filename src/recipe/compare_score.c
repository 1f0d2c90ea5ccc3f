/* How surely the words of two lines name the same thing. */
#include <string.h>

#include "compare_internal.h"

static bool has_word(const struct item_words *in, uint32_t word)
{
	for (unsigned i = 0; i < in->n; i++)
		if (in->word[i] == word)
			return true;
	return false;
}

bool item_words_have(const struct item_words *words, const char *folded)
{
	const char *same = word_at_home(folded);
	return has_word(words, word_hash(same, strlen(same)));
}

/* Is every word of a, but for those that may be missing, in b? *missing counts. */
static bool within(const struct item_words *a, const struct item_words *b, uint32_t may_be_missing,
		   int *missing)
{
	*missing = 0;
	for (unsigned i = 0; i < a->n; i++) {
		if (has_word(b, a->word[i]))
			continue;
		if (!(may_be_missing >> i & 1U))
			return false;
		(*missing)++;
	}
	return true;
}

static bool same_words(const struct item_words *a, const struct item_words *b)
{
	return a->n == b->n && memcmp(a->word, b->word, a->n * sizeof *a->word) == 0;
}

#define IS_NAMED_BY_SORT                                                                           \
	(IS_VINEGAR | IS_CITRUS_JUICE | IS_CITRIC | IS_SALT | IS_SUGAR | IS_SWEETENER | IS_WATER | \
	 IS_TOMATO_PASTE | IS_DRY_SPICE | IS_FAT | IS_STARCH)

/* One of several things that the formula leaves to choose from. */
static bool one_of(const struct item_words *recipe, const struct item_words *formula)
{
	int missing;
	bool named = false;
	for (unsigned i = 0; i < recipe->n; i++)
		named |= !((recipe->neutral | recipe->colour) >> i & 1U);
	return named && (formula->said & SAID_OR) && recipe->is == formula->is &&
	       within(recipe, formula, recipe->neutral, &missing);
}

/* The same name, one of them saying more. */
static bool same_thing(const struct item_words *recipe, const struct item_words *formula,
		       int *extra)
{
	const uint32_t head = item_words_head(recipe);
	const uint32_t mine =
	    recipe->neutral | (head == word_hash("onion", 5) ? recipe->colour : 0);
	int none;
	if (head != item_words_head(formula))
		return false;
	return (within(recipe, formula, 0, &none) &&
		within(formula, recipe, formula->neutral | formula->colour, extra)) ||
	       (within(formula, recipe, 0, &none) && within(recipe, formula, mine, extra));
}

int item_words_score(const struct item_words *recipe, const struct item_words *formula)
{
	const unsigned both = recipe->is & formula->is;
	int extra;
	if (recipe->n == 0 || formula->n == 0 || ((recipe->said | formula->said) & SAID_TOO_LONG))
		return 0;
	if (same_words(recipe, formula))
		return 100;
	if ((recipe->is ^ formula->is) & IS_NAMED_BY_SORT)
		return 0;
	if (same_thing(recipe, formula, &extra))
		return 95 - extra;
	if (one_of(recipe, formula))
		return 85;
	if (both & (IS_VINEGAR | IS_SALT | IS_WATER))
		return SCORE_SAME_SORT;
	return both & IS_SUGAR ? 75 : 0;
}
