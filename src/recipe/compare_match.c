#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "compare_internal.h"

/* What two lines could be one and the same. */
struct candidate {
	int score, line, printed;
};
#define CANDIDATES_MAX 2000
/* Below this only a sort, not a name, is shared. */
#define SCORE_SORT 50

/* Peppers may stand for peppers, bottled juice for vinegar where the food says so. */
static int swap_score(const struct formula *formula, const struct item *recipe,
		      const struct item *printed)
{
	if (printed->role == ROLE_LOW_ACID && (recipe->words.is & printed->words.is & IS_PEPPER))
		return SCORE_SORT;
	if (printed->role == ROLE_VINEGAR && (recipe->words.is & IS_CITRUS_JUICE) &&
	    (formula->food->acid_need & ACID_MAY_BE_JUICE))
		return SCORE_SORT;
	return 0;
}

int item_score(const struct item *recipe, const struct item *printed)
{
	int score = item_words_score(&recipe->words, &printed->words);
	int other = score == 100 ? 0 : item_words_score(&recipe->words, &printed->read);
	return score > other ? score : other;
}

static int line_score(const struct formula *formula, const struct item *recipe,
		      const struct item *printed)
{
	if (printed->gone)
		return 0;
	int score = item_score(recipe, printed);
	if (score == 0)
		score = swap_score(formula, recipe, printed);
	if (score == 0)
		return 0;
	score *= 4;
	score += recipe->words.preparation == printed->words.preparation ? 2 : 0;
	score += recipe->amount.sort == printed->amount.sort ? 1 : 0;
	return score;
}

static int by_score(const void *a, const void *b)
{
	const struct candidate *x = a, *y = b;
	if (x->score != y->score)
		return x->score > y->score ? -1 : 1;
	if (x->line != y->line)
		return x->line < y->line ? -1 : 1;
	return (x->printed > y->printed) - (x->printed < y->printed);
}

static size_t candidates_find(const struct formula_set *set, const struct items *items,
			      const struct formula *formula, struct candidate *out)
{
	const struct item *printed = formula_items(set, formula);
	size_t n = 0;
	for (size_t i = 0; i < items->recipe->lines_n; i++) {
		for (size_t f = 0; f < formula->lines_n && n < CANDIDATES_MAX; f++) {
			int score = line_score(formula, &items->item[i], &printed[f]);
			if (score)
				out[n++] = (struct candidate){score, (int)i, (int)f};
		}
	}
	qsort(out, n, sizeof *out, by_score);
	return n;
}

/* The best first, one to one; then what is left joins the line it fits best. */
static void assign(const struct candidate *candidates, size_t n, struct pairing *out)
{
	bool taken[FORMULA_LINES_MAX] = {false};
	for (size_t i = 0; i < n; i++) {
		const struct candidate *c = &candidates[i];
		if (out->to[c->line] >= 0 || taken[c->printed])
			continue;
		out->to[c->line] = c->printed;
		taken[c->printed] = true;
	}
	for (size_t i = 0; i < n; i++)
		if (out->to[candidates[i].line] < 0)
			out->to[candidates[i].line] = candidates[i].printed;
}

/* How much a line says of which recipe this is. */
static double line_weight(int role)
{
	switch (role) {
	case ROLE_MAIN:
		return 6.0;
	case ROLE_VINEGAR:
	case ROLE_CITRUS:
		return 3.0;
	case ROLE_LOW_ACID:
		return 2.0;
	case ROLE_SPICE:
	case ROLE_SALT:
	case ROLE_WATER:
		return 0.5;
	default:
		return 1.0;
	}
}

/* The same food in an amount that cannot be told counts for more than one known to be off. */
#define LIKENESS_UNKNOWN 0.8
static double likeness(struct span span)
{
	if (!span.known || span.least + span.most <= 0)
		return LIKENESS_UNKNOWN;
	double ratio = (span.least + span.most) / 2;
	return ratio > 1 ? 1 / ratio : ratio;
}

static void measure_distance(const struct formula_set *set, const struct items *items,
			     const struct formula *formula, struct pairing *out)
{
	const struct item *printed = formula_items(set, formula);
	struct span scale = pairing_scale(set, items, formula, out);
	double shared = 0, all = 0;
	bool paired[FORMULA_LINES_MAX] = {false};
	for (size_t i = 0; i < items->recipe->lines_n; i++) {
		if (out->to[i] >= 0)
			paired[out->to[i]] = true;
		else
			all += items->item[i].words.is & IS_DRY_SPICE ? 0.5 : 2.0;
	}
	for (size_t f = 0; f < formula->lines_n; f++) {
		double weight = line_weight(printed[f].role);
		if (printed[f].gone)
			continue;
		bool optional = (printed[f].words.said & SAID_OPTIONAL) != 0;
		all += paired[f] || !optional ? weight : 0;
		if (!paired[f])
			continue;
		out->common |= printed[f].role == ROLE_MAIN || printed[f].role == ROLE_LOW_ACID;
		struct span span = span_of(items, out->to, (int)f, &printed[f]);
		bool blank = printed[f].amount.sort == AMOUNT_UNKNOWN;
		shared += weight * (blank ? 1.0 : likeness(span_divide(span, scale)));
	}
	out->distance = all > 0 ? 1 - shared / all : 1;
}

bool shares_produce(const struct formula_set *set, const struct items *items,
		    const struct formula *formula)
{
	const struct item *printed = formula_items(set, formula);
	for (size_t f = 0; f < formula->lines_n; f++) {
		if (printed[f].role != ROLE_MAIN && printed[f].role != ROLE_LOW_ACID)
			continue;
		for (size_t i = 0; i < items->recipe->lines_n; i++)
			if (line_score(formula, &items->item[i], &printed[f]) > 0)
				return true;
	}
	return false;
}

void pairing_make(const struct formula_set *set, const struct items *items,
		  const struct formula *formula, struct pairing *out)
{
	struct candidate candidates[CANDIDATES_MAX];
	out->distance = 1;
	out->common = false;
	for (size_t i = 0; i < items->recipe->lines_n; i++)
		out->to[i] = -1;
	assign(candidates, candidates_find(set, items, formula, candidates), out);
	measure_distance(set, items, formula, out);
}

/* All the lines of a role together, if all can be added up as they stand. */
static struct span role_sum(const struct items *items, const struct formula *formula,
			    const struct item *printed, const struct pairing *pairing, int role)
{
	struct amount first = {.sort = AMOUNT_UNKNOWN};
	double recipe_least = 0, recipe_most = 0, formula_sum = 0;
	for (size_t f = 0; f < formula->lines_n; f++) {
		const struct amount *amount = &printed[f].amount;
		if (printed[f].role != role || printed[f].gone)
			continue;
		if (first.sort == AMOUNT_UNKNOWN)
			first = *amount;
		if (!amount_alike(&first, amount))
			return (struct span){.known = false};
		formula_sum += amount->most;
	}
	for (size_t i = 0; i < items->recipe->lines_n; i++) {
		const struct amount *amount = &items->item[i].amount;
		if (pairing->to[i] < 0 || printed[pairing->to[i]].role != role)
			continue;
		if (!amount_alike(&first, amount))
			return (struct span){.known = false};
		recipe_least += amount->least;
		recipe_most += amount->most;
	}
	if (recipe_least <= 0 || formula_sum <= 0)
		return (struct span){.known = false};
	return (struct span){true, recipe_least / formula_sum, recipe_most / formula_sum};
}

/* Else by the first line of the role that can be compared. */
static struct span role_scale(const struct items *items, const struct formula *formula,
			      const struct item *printed, const struct pairing *pairing, int role)
{
	struct span span = role_sum(items, formula, printed, pairing, role);
	for (size_t f = 0; f < formula->lines_n && !span.known; f++)
		if (printed[f].role == role && !printed[f].gone)
			span = span_of(items, pairing->to, (int)f, &printed[f]);
	return span;
}

/*
 * By the main produce. A formula without any is scaled by its acid, so that less acid shows
 * as too much of all else; one without acid by its first vegetable.
 */
struct span pairing_scale(const struct formula_set *set, const struct items *items,
			  const struct formula *formula, const struct pairing *pairing)
{
	static const int order[] = {ROLE_MAIN, ROLE_VINEGAR, ROLE_CITRUS, ROLE_LOW_ACID};
	const struct item *printed = formula_items(set, formula);
	for (size_t r = 0; r < sizeof order / sizeof *order; r++) {
		bool any = false;
		for (size_t f = 0; f < formula->lines_n; f++)
			any |= printed[f].role == order[r] && !printed[f].gone;
		if (any)
			return role_scale(items, formula, printed, pairing, order[r]);
	}
	return (struct span){.known = false};
}
