/* Sugar, salt and spice: they may change in some foods and not in others. */
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

/*
 * Above this much more of a dried spice than the formula has, to one formula as printed, it
 * is asked about: a quarter cup, and as much by weight as would fill about one. Ours, not
 * published; without it a cup of powder would count as seasoning.
 */
#define SPICE_MORE_ML 60.0
#define SPICE_MORE_G  30.0

/* Is it ready in a day? The rules for less salt and sugar are for quick-process pickles only. */
static bool is_quick(const struct judge *j)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		if (strstr(j->printed[f].printed->note, "day") ||
		    strstr(j->printed[f].printed->note, "soaks"))
			return false;
	return true;
}

/* The row that lets this food have less sugar, or CHANGE_COUNT. */
static enum change less_sugar(const struct judge *j)
{
	const struct food *food = j->formula->food;
	if (kind_is(food, "|fruit|"))
		return CHANGE_SUGAR_FRUIT;
	if (kind_is(food, "|tomato|") || (kind_is(food, "|pickle|relish|") && is_quick(j)))
		return CHANGE_SUGAR_PICKLE;
	return kind_is(food, "|salsa|") ? CHANGE_SUGAR_SALSA : CHANGE_COUNT;
}

void sugar_less(const struct held *h)
{
	const struct food *food = h->j->formula->food;
	enum change change = less_sugar(h->j);
	if (kind_is(food, "|jam|jelly|spread|butter|"))
		judge_say(
		    h->j, WEIGH_FORBIDDEN, DIFF_LESS_SUGAR, CHANGE_SUGAR_JAM, h->line, h->at,
		    "%s: less than the formula has. It will not set, and mould may grow; use a "
		    "formula tested with little sugar.",
		    h->name);
	else if (change == CHANGE_COUNT)
		judge_say(
		    h->j, WEIGH_UNCOVERED, DIFF_LESS_SUGAR, CHANGE_OWN_RECIPE, h->line, h->at,
		    "%s: less than the formula has, and no publication says that this food may "
		    "have less.",
		    h->name);
	else
		judge_say(
		    h->j, WEIGH_FINE, DIFF_LESS_SUGAR, change, h->line, h->at,
		    "%s: less than the formula has. That is safe; taste and texture may suffer.",
		    h->name);
}

static void sugar_more(const struct held *h)
{
	bool listed = kind_is(h->j->formula->food, "|salsa|pickle|");
	judge_say(h->j, listed ? WEIGH_FINE : WEIGH_UNCOVERED, DIFF_MORE_SUGAR,
		  listed ? CHANGE_SUGAR_MORE : CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: more than the formula has. %s", h->name,
		  listed ? "That is safe, and better than less acid."
			 : "No publication says that this food may have more.");
}

void judge_sugar(const struct held *h)
{
	if (surely_less(h))
		sugar_less(h);
	else if (surely_more(h))
		sugar_more(h);
	else if (differs(h))
		ask_measure(h);
}

/* The row that lets this food have less salt, or CHANGE_COUNT. */
static enum change less_salt(const struct judge *j, const struct item *printed)
{
	const struct food *food = j->formula->food;
	/* Salt of a soak draws water out before the jar is filled: that is no seasoning. */
	if (printed->words.said & SAID_SOAK)
		return CHANGE_COUNT;
	if (kind_is(food, "|pickle|relish|"))
		return is_quick(j) ? CHANGE_SALT_PICKLE : CHANGE_COUNT;
	if (kind_is(food, "|salsa|"))
		return CHANGE_SALT_SALSA;
	return kind_is(food, "|vegetable|tomato|sauce|meat|poultry|soup|seafood|")
		   ? CHANGE_SALT_PLAIN
		   : CHANGE_COUNT;
}

bool salt_may_be_less(const struct judge *j, const struct item *printed)
{
	return less_salt(j, printed) != CHANGE_COUNT;
}

/* Is all of it the salt that was tested? "Kosher" or "sea" salt packs otherwise in a cup. */
static bool same_salt(const struct held *h)
{
	const struct judge *j = h->j;
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		if (j->pairing->to[i] == h->at &&
		    item_score(&j->items->item[i], h->printed) <= SCORE_SAME_SORT)
			return false;
	return true;
}

/* Plain "salt" may be table salt, where the formula names the salt for canning. */
static bool says_canning(const struct held *h)
{
	const struct judge *j = h->j;
	if (!printed_says(h->printed, "canning") && !printed_says(h->printed, "pickling"))
		return true;
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		if (j->pairing->to[i] == h->at &&
		    !text_has_word(j->items->recipe->lines[i].text, "|canning|pickling|pickle|"))
			return false;
	return true;
}

static void salt_fermented(const struct held *h)
{
	if (h->lines > 0 && !differs(h) && same_salt(h)) {
		if (!says_canning(h))
			judge_say(h->j, WEIGH_ASK, DIFF_SALT_FERMENTED, CHANGE_SALT_FERMENTED,
				  h->line, h->at,
				  "%s: which salt? Fermenting needs the kind that "
				  "was tested.",
				  h->name);
		return;
	}
	judge_say(h->j, WEIGH_FORBIDDEN, DIFF_SALT_FERMENTED, CHANGE_SALT_FERMENTED, h->line, h->at,
		  "%s: fermenting needs the very share and kind of salt that was tested.", h->name);
}

static void salt_less(const struct held *h)
{
	enum change change = less_salt(h->j, h->printed);
	if (change == CHANGE_COUNT)
		judge_say(h->j, WEIGH_UNCOVERED, DIFF_LESS_SALT, CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: less than the formula has, and no publication says that it may be "
			  "less here.",
			  h->name);
	else
		judge_say(h->j, WEIGH_FINE, DIFF_LESS_SALT, change, h->line, h->at,
			  "%s: less than the formula has. That is safe.", h->name);
}

void judge_salt(const struct held *h)
{
	if (kind_is(h->j->formula->food, "|fermented|"))
		salt_fermented(h);
	else if (h->lines > 0 && maybe_more(h))
		judge_say(h->j, surely_more(h) ? WEIGH_UNCOVERED : WEIGH_ASK, DIFF_MORE_SALT,
			  CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: more than the formula has. Less is published as safe, more is not.",
			  h->name);
	else if (h->lines == 0 || maybe_less(h))
		salt_less(h);
}

/* The publication speaks of salsa; elsewhere that is said. */
static void say_spice(struct judge *j, enum change change, size_t line, const char *name,
		      const char *what)
{
	bool salsa = kind_is(j->formula->food, "|salsa|");
	judge_say(j, salsa ? WEIGH_FINE : WEIGH_WARN, DIFF_DRIED_SPICE, change, line, -1,
		  "%s: %s%s", name, what,
		  salsa ? " Dried spices may change."
			: " Dried spices may change; the publication says so of salsa.");
}

/* All of the dried spices that the formula does not have, in this sort of measure. */
static double added_spices(const struct items *items, const struct pairing *pairing,
			   enum amount_sort sort)
{
	double sum = 0;
	for (size_t i = 0; i < items->recipe->lines_n; i++)
		if (pairing->to[i] < 0 && (items->item[i].words.is & IS_DRY_SPICE) &&
		    items->item[i].amount.sort == sort)
			sum += items->item[i].amount.most;
	return sum;
}

/* "5 handfuls", "2 jars": a spice by the pinch or the leaf seasons; these nobody can tell. */
static bool is_bulk(const struct ingredient_line *read)
{
	static const char small[] = "|pinch|dash|drop|sprig|stick|leaf|clove|pod|star|piece|slice|";
	return read->has_quantity && *read->unit &&
	       !word_in_list(small, read->unit, strlen(read->unit));
}

/* More of a dried spice than seasons? `printed` is the formula's of it, or NULL. */
static bool is_much(const struct judge *j, size_t line, const struct item *printed)
{
	const struct amount *amount = &j->items->item[line].amount;
	const double scale = j->scale.known ? j->scale.least : 1;
	double limit = amount->sort == AMOUNT_MASS ? SPICE_MORE_G : SPICE_MORE_ML;
	if (amount->sort != AMOUNT_MASS && amount->sort != AMOUNT_VOLUME)
		return is_bulk(&j->items->recipe->lines[line].read);
	if (printed && amount_alike(amount, &printed->amount))
		limit += printed->amount.most;
	const double most =
	    printed ? amount->most : added_spices(j->items, j->pairing, amount->sort);
	return most > limit * scale;
}

static bool ask_much(struct judge *j, size_t line, const struct item *printed)
{
	if (!is_much(j, line, printed))
		return false;
	judge_words(j, WEIGH_ASK, DIFF_SPICE_MUCH, CHANGE_PRESERVING, line,
		    "more of a dried spice than seasons.");
	return true;
}

static void dry_spice(const struct held *h)
{
	const struct judge *j = h->j;
	bool much = false;
	if (h->lines > 0 && h->share.known && !differs(h))
		return;
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		if (j->pairing->to[i] == h->at)
			much |= ask_much(h->j, i, h->printed);
	if (!much)
		say_spice(h->j, CHANGE_SPICE_AMOUNT, h->line, h->name,
			  h->lines ? "another amount than the formula's." : "left out.");
}

void judge_spice(const struct held *h)
{
	/* Fresh herbs and roots are food; only dried ones may change freely. */
	if (h->printed->words.is & IS_DRY_SPICE)
		dry_spice(h);
	else if (h->lines == 0)
		judge_say(h->j, WEIGH_UNCOVERED, DIFF_LESS_SEASONING, CHANGE_OWN_RECIPE, h->line,
			  h->at, "%s: left out, and no publication says that it may be.", h->name);
	else
		must_equal(h, DIFF_SEASONING);
}

void judge_added_spice(struct judge *j, size_t line)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(j->items->item[line].name, (size_t)-1, shown);
	if (!ask_much(j, line, NULL))
		say_spice(j, CHANGE_SPICE_KIND, line, shown, "not in the formula.");
}
