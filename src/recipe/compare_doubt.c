/*
 * Lines, and a method, that may say more than was read in them. A line that hides a second
 * food, leaves its amount open or gives two is asked about, whatever it was matched with.
 */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/words.h"

/* The formula's line that a line is; NULL: none. */
static const struct item *partner(const struct judge *j, size_t line)
{
	const int at = j->pairing->to[line];
	return at < 0 ? NULL : &j->printed[at];
}

bool printed_says(const struct item *printed, const char *word)
{
	char list[WORDS_SIZE + 3] = "|";
	strncat(list, word, WORDS_SIZE);
	strncat(list, "|", 2);
	return text_has_word(printed->printed->ingredient, list) ||
	       text_has_word(printed->printed->preparation, list) ||
	       text_has_word(printed->printed->note, list);
}

/* A food in the line's words that neither its name nor the formula's line has. */
static bool hides_food(const struct judge *j, size_t line)
{
	const struct item *mine = &j->items->item[line];
	const struct item *printed = partner(j, line);
	const char *at = j->items->recipe->lines[line].text;
	char word[WORDS_SIZE];
	if (!mine->more_food)
		return false;
	while (text_next_word(&at, word))
		if (word_is_food(word) && !item_words_have(&mine->words, word) &&
		    !(printed && printed_says(printed, word)))
			return true;
	return false;
}

/* "with 2 cups": an amount among words that tell how a thing is prepared. */
static bool has_amount_within(const char *text)
{
	char word[WORDS_SIZE];
	bool digit = false;
	while (text_next_word(&text, word)) {
		enum kitchen_unit unit;
		enum measuring_system said;
		if (digit && kitchen_unit_find(word, &unit, &said))
			return true;
		digit = *word >= '0' && *word <= '9';
	}
	return false;
}

static bool hides_amount(const struct judge *j, size_t line)
{
	const struct ingredient_line *read = &j->items->recipe->lines[line].read;
	const struct item *printed = partner(j, line);
	if (printed && printed->words.preparation == j->items->item[line].words.preparation &&
	    !*read->note)
		return false;
	if (read->alternative.present || read->pack.present)
		return has_amount_within(read->preparation);
	return has_amount_within(read->preparation) || has_amount_within(read->note);
}

/* One of the words in the preparation or the note, and not in the formula's line. */
static bool says_besides(const struct judge *j, size_t line, const char *words)
{
	const struct ingredient_line *read = &j->items->recipe->lines[line].read;
	const struct item *printed = partner(j, line);
	const char *const texts[] = {read->preparation, read->note};
	char word[WORDS_SIZE];
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
		for (const char *at = texts[i]; text_next_word(&at, word);)
			if (text_has_word(word, words) && !(printed && printed_says(printed, word)))
				return true;
	return false;
}

/* "1 cup, plus more as needed": so much, and nobody knows how much besides. */
static bool is_open(const struct judge *j, size_t line)
{
	static const char words[] = "|more|extra|additional|needed|taste|desired|liking|cover|"
				    "enough|wish|like|less|";
	const struct ingredient_line *read = &j->items->recipe->lines[line].read;
	return read->has_quantity && (read->to_taste || says_besides(j, line, words));
}

/* "4 onions, very large": a count of another size than a plain one. */
static bool is_big(const struct judge *j, size_t line)
{
	static const char words[] = "|large|big|huge|jumbo|giant|enormous|fat|oversized|";
	const struct amount *amount = &j->items->item[line].amount;
	return amount->sort == AMOUNT_COUNT && !*amount->size && says_besides(j, line, words);
}

static bool overlap(double a_least, double a_most, double b_least, double b_most)
{
	return a_least <= b_most * (1 + COMPARE_TOLERANCE) &&
	       b_least <= a_most * (1 + COMPARE_TOLERANCE);
}

/* Grams of the line's first amount alone, or of its second alone. */
static bool half_grams(const struct items *items, size_t line, bool second, struct grams *out)
{
	struct recipe_line copy = items->recipe->lines[line];
	const struct recipe one = {.system = items->recipe->system, .lines = &copy, .lines_n = 1};
	struct rational least, most;
	if (second) {
		copy.read.quantity = copy.read.alternative.quantity;
		copy.read.quantity_max = copy.read.alternative.quantity_max;
		copy.read.unit = copy.read.alternative.unit;
		copy.read.pack.present = copy.read.plus.present = false;
	}
	copy.read.alternative.present = false;
	if (!recipe_line_grams(items->set->tables, &one, 0, &least, &most))
		return false;
	out->least = rational_double(least);
	out->most = rational_double(most);
	return true;
}

/* "1 lb (2 kg)": which of them will she measure? */
static bool amounts_disagree(const struct items *items, size_t line)
{
	const struct ingredient_line *read = &items->recipe->lines[line].read;
	struct ingredient_line other = *read;
	struct amount second;
	const struct amount *first = &items->item[line].amount;
	struct grams a, b;
	if (!read->alternative.present)
		return false;
	other.quantity = read->alternative.quantity;
	other.quantity_max = read->alternative.quantity_max;
	other.unit = read->alternative.unit;
	other.pack.present = other.plus.present = false;
	amount_read(items->set->tables, items->recipe->system, &other, &second);
	if (first->sort != AMOUNT_COUNT && amount_alike(first, &second))
		return fabs(first->least - second.least) > COMPARE_TOLERANCE * first->least ||
		       fabs(first->most - second.most) > COMPARE_TOLERANCE * first->most;
	return !half_grams(items, line, false, &a) || !half_grams(items, line, true, &b) ||
	       !overlap(a.least, a.most, b.least, b.most);
}

static bool is_dry_spice(const struct judge *j, size_t line)
{
	const struct item *printed = partner(j, line);
	return printed ? printed->role == ROLE_SPICE && (printed->words.is & IS_DRY_SPICE)
		       : (j->items->item[line].words.is & IS_DRY_SPICE) != 0;
}

static void ask(struct judge *j, size_t line, enum difference difference, const char *what)
{
	judge_words(j, WEIGH_ASK, difference, CHANGE_OWN_RECIPE, line, what);
}

static void doubt_amount(struct judge *j, size_t line)
{
	if (unit_is_unsized(j->items->recipe->lines[line].read.unit))
		ask(j, line, DIFF_UNKNOWN_MEASURE,
		    "no published table gives the size of this measure.");
	if (is_dry_spice(j, line))
		return;
	if (is_open(j, line) || is_big(j, line) ||
	    (j->items->item[line].words.said & SAID_EDGE && partner(j, line)))
		ask(j, line, DIFF_AMOUNT_UNSURE,
		    "how much is it in all? Measure it level, or weigh it.");
	if (amounts_disagree(j->items, line))
		ask(j, line, DIFF_TWO_AMOUNTS, "its two amounts are not the same.");
}

/* "6 cloves": the spice, or garlic? The formula may tell, by counting the spice itself. */
static bool is_some_clove(const struct judge *j, size_t line)
{
	static const char said[] = "|whole|ground|dried|spice|powdered|stick|head|bud|";
	const struct item *mine = &j->items->item[line];
	const struct item *printed = partner(j, line);
	return (mine->words.is & IS_DRY_SPICE) && mine->amount.sort == AMOUNT_COUNT &&
	       text_has_word(mine->name, "|clove|") &&
	       !text_has_word(j->items->recipe->lines[line].text, said) &&
	       !(printed && printed->amount.sort == AMOUNT_COUNT);
}

static bool may_be_left_out(const struct judge *j, size_t line)
{
	const struct recipe_line *mine = &j->items->recipe->lines[line];
	return mine->read.optional || text_has_word(mine->read.note, "|optional|optionally|") ||
	       text_has_word(mine->read.preparation, "|optional|optionally|");
}

/* One word that neither the formula's line nor anybody knows is enough to ask. */
static void doubt_words(struct judge *j, size_t line)
{
	const struct item *mine = &j->items->item[line];
	const struct item *printed = partner(j, line);
	const char *at = j->items->recipe->lines[line].text;
	char word[WORDS_SIZE], what[WORDS_SIZE + 64];
	if (!mine->more_words)
		return;
	while (item_next_unknown(mine, &at, word)) {
		if (printed && printed_says(printed, word))
			continue;
		snprintf(what, sizeof what, "what does '%s' say of it?", word);
		ask(j, line, DIFF_WORD_UNKNOWN, what);
		return;
	}
}

static void doubt_line(struct judge *j, size_t line)
{
	const struct item *printed = partner(j, line);
	if (hides_food(j, line) || hides_amount(j, line))
		ask(j, line, DIFF_LINE_UNSURE, "is there more than one thing on this line?");
	else
		doubt_words(j, line);
	doubt_amount(j, line);
	if (is_some_clove(j, line))
		ask(j, line, DIFF_WHICH_ONE, "the spice, or cloves of garlic?");
	if (printed && may_be_left_out(j, line) && !is_dry_spice(j, line) &&
	    !(printed->words.said & SAID_OPTIONAL))
		ask(j, line, DIFF_OPTIONAL_LINE, "does it go in or not?");
	if (printed && j->items->recipe->lines[line].read.alternatives &&
	    !(printed->words.said & SAID_OR) && item_score(&j->items->item[line], printed) < 100)
		ask(j, line, DIFF_WHICH_ONE, "which of these will it be?");
}

static bool has_said(const struct judge *j, unsigned said)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		if (j->printed[f].words.said & said)
			return true;
	return false;
}

static bool has_starch(const struct judge *j)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		if (j->printed[f].words.is & IS_STARCH)
			return true;
	return false;
}

static void doubt_method(struct judge *j)
{
	const unsigned in = j->items->in_method;
	j->bad_method = (in & (METHOD_HAS_AMOUNTS | METHOD_ADDS | METHOD_CHANGES)) ||
			((in & METHOD_PUREES) && !has_said(j, SAID_FINE)) ||
			((in & METHOD_THICKENS) && !has_starch(j));
	if (j->bad_method)
		judge_say(j, WEIGH_ASK, DIFF_METHOD_UNSURE, CHANGE_OWN_RECIPE, COMPARE_NO_LINE, -1,
			  "The method seems to %s.",
			  in & (METHOD_HAS_AMOUNTS | METHOD_ADDS) ? "have ingredients in it"
			  : in & METHOD_CHANGES ? "thin, leave out or replace something"
			  : in & METHOD_PUREES  ? "puree or mash, which the formula does not"
						: "thicken, which the formula does not");
}

void judge_line_doubts(struct judge *j)
{
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		doubt_line(j, i);
}

void judge_doubts(struct judge *j)
{
	judge_line_doubts(j);
	doubt_method(j);
}
