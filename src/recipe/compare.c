#include <string.h>

#include "compare_internal.h"

/* Words before the ingredient that leave its amount open. */
static bool is_hedged(const struct recipe_line *line)
{
	static const char words[] = "|about|approx|approximately|around|roughly|circa|ca|heaped|"
				    "heaping|scant|generous|rounded|good|up|most|least|nearly|"
				    "almost|over|under|big|fat|plump|full|additional|few|some|";
	const char *end = strstr(line->text, line->read.ingredient);
	size_t length = end ? (size_t)(end - line->text) : strcspn(line->text, ",(");
	char before[INGREDIENT_LINE_MAX + 1];
	memcpy(before, line->text, length);
	before[length] = '\0';
	return strchr(before, '~') || text_has_word(before, words);
}

/* A food among the words of the line that its name does not have. */
static bool has_more_food(const char *text, const struct item_words *name)
{
	char word[WORDS_SIZE];
	while (text_next_word(&text, word))
		if (word_is_food(word) && !item_words_have(name, word))
			return true;
	return false;
}

static bool has_more_words(const char *text, const struct item *item)
{
	char word[WORDS_SIZE];
	return item_next_unknown(item, &text, word);
}

/* What is bought in a can or jar was cooked before. */
static bool is_canned(const struct ingredient_line *read)
{
	return strcmp(read->unit, "can") == 0 || strcmp(read->unit, "jar") == 0;
}

void items_make(const struct formula_set *set, const struct recipe *recipe, struct items *items)
{
	items->set = set;
	items->recipe = recipe;
	items->in_method = method_read(recipe);
	for (size_t i = 0; i < recipe->lines_n; i++) {
		const struct ingredient_line *read = &recipe->lines[i].read;
		struct item *item = &items->item[i];
		*item = (struct item){.name = read->ingredient};
		item_words_read(read->ingredient, read->preparation, read->note, &item->words);
		if (is_hedged(&recipe->lines[i]))
			item->words.said |= SAID_EDGE;
		if (is_canned(read))
			item->words.said |= SAID_CHANGED;
		item->more_food = has_more_food(recipe->lines[i].text, &item->words);
		item->more_words = has_more_words(recipe->lines[i].text, item);
		amount_read(set->tables, recipe->system, read, &item->amount);
	}
}

/* Holds against one formula; *out may be NULL, for the verdict alone. */
static enum verdict hold(const struct formula_set *set, const struct items *items,
			 const struct compare_facts *facts, const struct formula *formula,
			 const struct pairing *pairing, struct comparison *out)
{
	struct judge j = {.set = set,
			  .items = items,
			  .facts = facts,
			  .formula = formula,
			  .pairing = pairing,
			  .out = out};
	judge_all(&j);
	if (out) {
		out->verdict = judge_verdict(&j);
		out->formula = formula;
		out->scale = j.scale.known ? (j.scale.least + j.scale.most) / 2 : 0;
	}
	return judge_verdict(&j);
}

static void keep_nearest(struct comparison *out, const struct formula *formula, double distance)
{
	size_t at = out->nearest_n;
	while (at > 0 && out->nearest[at - 1].distance > distance)
		at--;
	if (at == COMPARE_NEAREST_MAX)
		return;
	if (out->nearest_n < COMPARE_NEAREST_MAX)
		out->nearest_n++;
	memmove(&out->nearest[at + 1], &out->nearest[at],
		(out->nearest_n - 1 - at) * sizeof *out->nearest);
	out->nearest[at] = (struct compare_nearest){formula, distance};
}

/*
 * Beyond this the nearest formula is another dish, and holding the recipe against it line by
 * line would say nothing. Ours, not published; it never makes a verdict tested.
 */
#define FAR_DISTANCE 0.6

/* The nearest one that the recipe is inside of, else the nearest, unless that is far. */
static const struct formula *choose(const struct formula_set *set, const struct items *items,
				    const struct compare_facts *facts,
				    const struct comparison *found, struct pairing *pairing)
{
	for (size_t i = 0; i < found->nearest_n; i++) {
		pairing_make(set, items, found->nearest[i].formula, pairing);
		if (hold(set, items, facts, found->nearest[i].formula, pairing, NULL) ==
		    VERDICT_TESTED)
			return found->nearest[i].formula;
	}
	if (found->nearest_n == 0 || found->nearest[0].distance > FAR_DISTANCE)
		return NULL;
	return found->nearest[0].formula;
}

/* Nothing near: what can be said of the lines themselves, and that. */
static void no_formula(const struct formula_set *set, const struct items *items,
		       const struct compare_facts *facts, struct pairing *none,
		       struct comparison *out)
{
	struct judge j = {.set = set,
			  .items = items,
			  .facts = facts,
			  .formula = out->nearest_n ? out->nearest[0].formula : set->formulas,
			  .pairing = none,
			  .out = out};
	j.printed = formula_items(set, j.formula);
	for (size_t i = 0; i < items->recipe->lines_n; i++)
		none->to[i] = -1;
	judge_say(&j, WEIGH_UNCOVERED, DIFF_NO_FORMULA, CHANGE_OWN_RECIPE, COMPARE_NO_LINE, -1,
		  out->nearest_n ? "No tested formula is near this recipe."
				 : "No tested formula has anything in common with this recipe.");
	judge_line_doubts(&j);
	out->verdict = judge_verdict(&j);
}

void recipe_compare(const struct formula_set *set, const struct recipe *recipe,
		    const struct compare_facts *facts, const struct formula *formula,
		    struct comparison *out)
{
	struct item item[RECIPE_LINES_MAX];
	struct items items = {.item = item};
	struct pairing pairing;
	out->formula = NULL;
	out->scale = 0;
	out->findings_n = out->findings_left_out = out->nearest_n = 0;
	items_make(set, recipe, &items);
	for (size_t i = 0; i < set->formulas_n; i++) {
		if (!shares_produce(set, &items, &set->formulas[i]))
			continue;
		pairing_make(set, &items, &set->formulas[i], &pairing);
		if (pairing.common)
			keep_nearest(out, &set->formulas[i], pairing.distance);
	}
	if (!formula)
		formula = choose(set, &items, facts, out, &pairing);
	if (!formula) {
		no_formula(set, &items, facts, &pairing, out);
		return;
	}
	pairing_make(set, &items, formula, &pairing);
	hold(set, &items, facts, formula, &pairing, out);
}
