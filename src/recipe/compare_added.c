/* What the formula does not have, and what it has in another form. */
#include "compare_internal.h"
#include "jarwright/text.h"

/* What is in the recipe and not in the formula. The first sort that fits decides. */
struct added {
	unsigned is;
	enum weight weight;
	enum difference difference;
	enum change change;
	const char *text;
};
static const struct added added[] = {
    {IS_CITRIC, WEIGH_FORBIDDEN, DIFF_ACID_CHANGED, CHANGE_CITRIC,
     "the formula has no citric acid; it does not act in every food as vinegar or juice does."},
    {IS_VINEGAR | IS_CITRUS_JUICE, WEIGH_FORBIDDEN, DIFF_ACID_CHANGED, CHANGE_ACID_SWAPPED,
     "the formula does not have this acid."},
    {IS_MEAT, WEIGH_FORBIDDEN, DIFF_MEAT_ADDED, CHANGE_MEAT,
     "the formula has no such meat, fish or egg."},
    {IS_STARCH, WEIGH_FORBIDDEN, DIFF_THICKENER_ADDED, CHANGE_THICKENER,
     "the formula has no such thickener; heat gets through a thickened jar too slowly."},
    {IS_GRAIN, WEIGH_FORBIDDEN, DIFF_GRAIN_ADDED, CHANGE_GRAIN_IN_MEAT,
     "the formula has no grain or pasta; it swells and keeps the heat out."},
    {IS_DAIRY, WEIGH_FORBIDDEN, DIFF_DAIRY_ADDED, CHANGE_PRESERVING, "the formula has no dairy."},
    {IS_FAT, WEIGH_FORBIDDEN, DIFF_FAT_ADDED, CHANGE_FAT_IN_MEAT,
     "the formula has no such fat; fat keeps the heat from where it is needed."},
    {IS_PEPPER, WEIGH_FORBIDDEN, DIFF_MORE_PEPPERS, CHANGE_MORE_PEPPERS,
     "the formula has none, or not this one in its place."},
    {IS_VEGETABLE, WEIGH_FORBIDDEN, DIFF_LOW_ACID_ADDED, CHANGE_OTHER_VEGETABLE,
     "a low-acid food that is not in the formula."},
};

/*
 * A spice by its name that may be fresh too ("2 tsp oregano"): in so small an amount it is
 * asked which. More of it is food.
 */
#define HERB_MOST_ML 60.0
static bool is_pinch_of_herb(const struct item *mine)
{
	return (mine->words.is & IS_MAYBE_DRY) && mine->amount.sort == AMOUNT_VOLUME &&
	       mine->amount.most <= HERB_MOST_ML;
}

static void say_added(struct judge *j, size_t line, enum weight weight, enum difference difference,
		      enum change change, const char *text)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(j->items->item[line].name, (size_t)-1, shown);
	judge_say(j, weight, difference, change, line, -1, "%s: %s", shown, text);
}

static bool has_vinegar(const struct judge *j)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		if (j->printed[f].role == ROLE_VINEGAR)
			return true;
	return false;
}

/* Ours, not published: a cup, and about as much by weight. More of it makes another food. */
#define PASTE_MOST_ML 240.0
#define PASTE_MOST_G  260.0
static bool is_much_paste(const struct judge *j, size_t line)
{
	const struct amount *amount = &j->items->item[line].amount;
	const double scale = j->scale.known ? j->scale.least : 1;
	if (amount->sort == AMOUNT_VOLUME)
		return amount->most > PASTE_MOST_ML * scale;
	return amount->sort != AMOUNT_MASS || amount->most > PASTE_MOST_G * scale;
}

/* Water, salt and sugar by the kind of food. False: it is none of them. */
static bool judge_plain(struct judge *j, size_t line)
{
	const struct food *food = j->formula->food;
	unsigned is = j->items->item[line].words.is;
	if (is & IS_WATER) {
		say_added(j, line, has_vinegar(j) ? WEIGH_FORBIDDEN : WEIGH_UNCOVERED,
			  DIFF_MORE_WATER, has_vinegar(j) ? CHANGE_DILUTED : CHANGE_OWN_RECIPE,
			  "the formula has none; it thins what keeps the food.");
		return true;
	}
	if (is & IS_SALT) {
		bool fermented = kind_is(food, "|fermented|");
		say_added(j, line, fermented ? WEIGH_FORBIDDEN : WEIGH_UNCOVERED, DIFF_MORE_SALT,
			  fermented ? CHANGE_SALT_FERMENTED : CHANGE_OWN_RECIPE,
			  "the formula has none, and no publication says that it may be added.");
		return true;
	}
	if (is & IS_SUGAR) {
		bool listed = kind_is(food, "|salsa|pickle|");
		say_added(j, line, listed ? WEIGH_FINE : WEIGH_UNCOVERED, DIFF_MORE_SUGAR,
			  listed ? CHANGE_SUGAR_MORE : CHANGE_OWN_RECIPE,
			  listed ? "the formula has none. Sugar may be added against sourness."
				 : "the formula has none.");
		return true;
	}
	if ((is & IS_TOMATO_PASTE) && kind_is(food, "|salsa|")) {
		if (is_much_paste(j, line))
			say_added(j, line, WEIGH_ASK, DIFF_AMOUNT_UNSURE, CHANGE_TOMATO_PASTE,
				  "may thicken a salsa, and no publication says how much of it. "
				  "This program asks above a cup to the formula as printed.");
		else
			say_added(j, line, WEIGH_FINE, DIFF_TOMATO_PASTE, CHANGE_TOMATO_PASTE,
				  "may be added to thicken a salsa.");
		return true;
	}
	return false;
}

/* Grain and fat are published of canned meat; of other food the general rule is cited. */
static enum change change_for(const struct food *food, enum change change)
{
	const bool of_meat = change == CHANGE_GRAIN_IN_MEAT || change == CHANGE_FAT_IN_MEAT;
	return of_meat && !kind_is(food, "|meat|poultry|seafood|soup|") ? CHANGE_PRESERVING
									: change;
}

static void judge_one_added(struct judge *j, size_t line)
{
	const struct item *mine = &j->items->item[line];
	if (judge_plain(j, line))
		return;
	if (is_pinch_of_herb(mine)) {
		judge_words(j, WEIGH_ASK, DIFF_HERB_UNSURE, CHANGE_SPICE_KIND, line,
			    "not in the formula; is it dried or fresh?");
		return;
	}
	for (size_t i = 0; i < sizeof added / sizeof *added; i++) {
		if (!(mine->words.is & added[i].is))
			continue;
		say_added(j, line, added[i].weight, added[i].difference,
			  change_for(j->formula->food, added[i].change), added[i].text);
		return;
	}
	if (mine->words.is & IS_DRY_SPICE)
		judge_added_spice(j, line);
	else
		say_added(j, line, WEIGH_UNCOVERED, DIFF_NOT_IN_FORMULA, CHANGE_OWN_RECIPE,
			  "not in the formula, and nothing published says that it may be added.");
}

/* Seasonings may be ground; produce ground or crushed lies closer in the jar. */
static bool is_in_pieces(const struct item *printed)
{
	return printed->role == ROLE_MAIN || printed->role == ROLE_LOW_ACID ||
	       printed->role == ROLE_DRIED_FRUIT || printed->role == ROLE_OTHER;
}

/* The same thing in another form than was tested. */
static void judge_form(struct judge *j, size_t line)
{
	const struct item_words *mine = &j->items->item[line].words;
	const struct item *printed = &j->printed[j->pairing->to[line]];
	const bool finer = (mine->said & SAID_FINE) && !(printed->words.said & SAID_FINE);
	if (finer && (mine->said & SAID_PUREED))
		judge_words(j, WEIGH_FORBIDDEN, DIFF_PUREED, CHANGE_PUREE, line,
			    "pureed, where the formula has pieces. A puree is too dense for the "
			    "heat.");
	else if (finer && is_in_pieces(printed))
		judge_words(j, WEIGH_UNCOVERED, DIFF_FORM_CHANGED, CHANGE_OWN_RECIPE, line,
			    "finer than the formula's pieces.");
	if ((mine->said & SAID_CHANGED) && !(printed->words.said & SAID_CHANGED) &&
	    !(mine->is & IS_DRY_SPICE))
		judge_words(j, WEIGH_UNCOVERED, DIFF_FORM_CHANGED, CHANGE_OWN_RECIPE, line,
			    "dried, cooked or preserved beforehand, which the formula's is not.");
}

void judge_added(struct judge *j)
{
	for (size_t i = 0; i < j->items->recipe->lines_n; i++) {
		if (j->pairing->to[i] < 0)
			judge_one_added(j, i);
		else
			judge_form(j, i);
	}
}
