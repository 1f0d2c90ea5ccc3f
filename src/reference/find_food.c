/* What a cook's words for a food come to. */
#include <string.h>

#include "jarwright/reference.h"
#include "jarwright/words.h"
#include "suggest.h"

static void add(struct food_match *out, const struct food *food)
{
	for (size_t i = 0; i < out->foods_n; i++)
		if (out->foods[i] == food)
			return;
	if (out->foods_n < MATCH_MAX)
		out->foods[out->foods_n++] = food;
}

static const struct food *by_slug_or_title(const struct reference *ref, const char *folded)
{
	for (size_t i = 0; i < ref->foods_n; i++)
		if (words_fold_to(ref->foods[i].slug, strlen(ref->foods[i].slug), folded))
			return &ref->foods[i];
	for (size_t i = 0; i < ref->foods_n; i++)
		if (words_fold_to(ref->foods[i].title, strlen(ref->foods[i].title), folded))
			return &ref->foods[i];
	return NULL;
}

/* The first synonym whose word starts with this letter or a later one. */
static size_t first_synonym(const struct reference *ref, char letter)
{
	size_t low = 0, high = ref->synonyms_n;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if ((unsigned char)*ref->synonyms[middle].word < (unsigned char)letter)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

/*
 * Plural and singular of a word stand as rows of their own and may name different
 * foods: a cook who types either is asked about all of them.
 */
static void by_synonym(const struct reference *ref, const char *folded, struct food_match *out)
{
	for (size_t i = first_synonym(ref, *folded);
	     i < ref->synonyms_n && *ref->synonyms[i].word == *folded; i++) {
		const char *word = ref->synonyms[i].word;
		if (words_fold_to(word, strlen(word), folded))
			add(out, ref->synonyms[i].food);
	}
}

/* Adds the foods of the kind of this name; a kind of one food has nothing to ask about. */
static bool by_kind(const struct reference *ref, const char *folded, struct food_match *out)
{
	struct food_match kind = {.foods_n = 0};
	for (size_t i = 0; i < ref->foods_n; i++)
		if (words_fold_to(ref->foods[i].kind, strlen(ref->foods[i].kind), folded))
			add(&kind, &ref->foods[i]);
	for (size_t i = 0; kind.foods_n > 1 && i < kind.foods_n; i++)
		add(out, kind.foods[i]);
	return kind.foods_n > 1;
}

static void by_title_words(const struct reference *ref, const char *folded, struct food_match *out)
{
	for (size_t i = 0; i < ref->foods_n; i++) {
		const char *title = ref->foods[i].title;
		char mine[WORDS_SIZE];
		if (words_fold(title, strlen(title), mine) && words_all_in(mine, folded))
			add(out, &ref->foods[i]);
	}
}

void reference_find_food(const struct reference *ref, const char *words, struct food_match *out)
{
	memset(out, 0, sizeof *out);
	out->kind = MATCH_NONE;
	char folded[WORDS_SIZE];
	if (!words_fold(words, strlen(words), folded))
		return;

	const struct food *food = reference_food(ref, words);
	/* A word for a whole kind asks, even where a food or an everyday word is called so. */
	if (!food && by_kind(ref, folded, out)) {
		by_synonym(ref, folded, out);
		out->kind = MATCH_SEVERAL;
		return;
	}
	if (!food)
		food = by_slug_or_title(ref, folded);
	if (food) {
		out->kind = MATCH_ONE;
		add(out, food);
		return;
	}
	out->barred = reference_find_barred(ref, FACET_FOOD, words);
	if (out->barred) {
		out->kind = MATCH_BARRED;
		return;
	}
	by_synonym(ref, folded, out);
	out->by_synonym = out->foods_n == 1;
	if (out->foods_n > 0) {
		out->kind = out->by_synonym ? MATCH_ONE : MATCH_SEVERAL;
		return;
	}
	by_title_words(ref, folded, out);
	if (out->foods_n > 0)
		out->kind = MATCH_SEVERAL;
	else
		suggest_foods(ref, folded, out);
}

void reference_find_harvest(const struct reference *ref, const char *words, struct food_match *out)
{
	memset(out, 0, sizeof *out);
	out->kind = MATCH_NONE;
	char folded[WORDS_SIZE];
	if (!words_fold(words, strlen(words), folded))
		return;
	const struct food *food = by_slug_or_title(ref, folded);
	if (food)
		add(out, food);
	by_synonym(ref, folded, out);
	by_kind(ref, folded, out);
	by_title_words(ref, folded, out);
	if (out->foods_n > 0) {
		out->kind = MATCH_SEVERAL;
		return;
	}
	out->barred = reference_find_barred(ref, FACET_FOOD, words);
	if (out->barred)
		out->kind = MATCH_BARRED;
	else
		suggest_foods(ref, folded, out);
}
