#include <stdlib.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

/* What is in the recipe and not in the formula. The first sort that fits decides. */
struct added {
	unsigned is;
	enum weight weight;
	const char *rule;
	enum change change;
	const char *text;
};
static const struct added added[] = {
    {IS_CITRIC, WEIGH_FORBIDDEN, "acid-changed", CHANGE_CITRIC,
     "the formula has no citric acid; it does not act in every food as vinegar or juice does."},
    {IS_VINEGAR | IS_CITRUS_JUICE, WEIGH_FORBIDDEN, "acid-changed", CHANGE_ACID_SWAPPED,
     "the formula has another acid. Use the kind and the amount that were tested."},
    {IS_MEAT, WEIGH_FORBIDDEN, "meat-added", CHANGE_MEAT,
     "the formula has no such meat, fish or egg."},
    {IS_STARCH, WEIGH_FORBIDDEN, "thickener-added", CHANGE_THICKENER,
     "the formula has no such thickener; heat gets through a thickened jar too slowly."},
    {IS_GRAIN, WEIGH_FORBIDDEN, "grain-added", CHANGE_GRAIN_IN_MEAT,
     "the formula has no grain or pasta; it swells and keeps the heat out."},
    {IS_DAIRY, WEIGH_FORBIDDEN, "dairy-added", CHANGE_PRESERVING, "the formula has no dairy."},
    {IS_FAT, WEIGH_FORBIDDEN, "fat-added", CHANGE_FAT_IN_MEAT,
     "the formula has no such fat; fat keeps the heat from where it is needed."},
    {IS_PEPPER, WEIGH_FORBIDDEN, "more-peppers", CHANGE_MORE_PEPPERS,
     "the formula has none, or not this one in its place."},
    {IS_VEGETABLE, WEIGH_FORBIDDEN, "low-acid-added", CHANGE_OTHER_VEGETABLE,
     "a low-acid food that is not in the formula."},
    {IS_DRY_SPICE, WEIGH_FINE, "dried-spice", CHANGE_SPICE_KIND,
     "not in the formula. Dried spices may change."},
};

static void say_added(struct judge *j, size_t line, enum weight weight, const char *rule,
		      enum change change, const char *text)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(j->items->item[line].name, (size_t)-1, shown);
	judge_say(j, weight, rule, change, line, -1, "%s: %s", shown, text);
}

static bool has_vinegar(const struct judge *j)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		if (j->printed[f].role == ROLE_VINEGAR)
			return true;
	return false;
}

/* Water, salt and sugar by the kind of food. False: it is none of them. */
static bool judge_plain(struct judge *j, size_t line)
{
	const struct food *food = j->formula->food;
	unsigned is = j->items->item[line].words.is;
	if (is & IS_WATER) {
		say_added(j, line, has_vinegar(j) ? WEIGH_FORBIDDEN : WEIGH_UNCOVERED, "more-water",
			  has_vinegar(j) ? CHANGE_DILUTED : CHANGE_OWN_RECIPE,
			  "the formula has none; it thins what keeps the food.");
		return true;
	}
	if (is & IS_SALT) {
		bool fermented = kind_is(food, "|fermented|");
		say_added(j, line, fermented ? WEIGH_FORBIDDEN : WEIGH_UNCOVERED, "more-salt",
			  fermented ? CHANGE_SALT_FERMENTED : CHANGE_OWN_RECIPE,
			  "the formula has none, and no publication says that it may be added.");
		return true;
	}
	if (is & IS_SUGAR) {
		bool listed = kind_is(food, "|salsa|pickle|");
		say_added(j, line, listed ? WEIGH_FINE : WEIGH_UNCOVERED, "more-sugar",
			  listed ? CHANGE_SUGAR_MORE : CHANGE_OWN_RECIPE,
			  listed ? "the formula has none. Sugar may be added against sourness."
				 : "the formula has none.");
		return true;
	}
	if ((is & IS_TOMATO_PASTE) && kind_is(food, "|salsa|")) {
		say_added(j, line, WEIGH_FINE, "tomato-paste", CHANGE_TOMATO_PASTE,
			  "may be added to thicken a salsa.");
		return true;
	}
	return false;
}

static void judge_one_added(struct judge *j, size_t line)
{
	const struct item_words *words = &j->items->item[line].words;
	if (judge_plain(j, line))
		return;
	for (size_t i = 0; i < sizeof added / sizeof *added; i++) {
		if (!(words->is & added[i].is))
			continue;
		say_added(j, line, added[i].weight, added[i].rule, added[i].change, added[i].text);
		return;
	}
	say_added(j, line, WEIGH_UNCOVERED, "not-in-formula", CHANGE_OWN_RECIPE,
		  "not in the formula, and nothing published says that it may be added.");
}

/* The same thing in another form than was tested. */
static void judge_form(struct judge *j, size_t line)
{
	const struct item_words *mine = &j->items->item[line].words;
	const struct item *printed = &j->printed[j->pairing->to[line]];
	char shown[TEXT_SHOWN_SIZE];
	text_show(j->items->item[line].name, (size_t)-1, shown);
	if ((mine->said & SAID_PUREED) && !(printed->words.said & SAID_FINE))
		judge_say(
		    j, WEIGH_FORBIDDEN, "pureed", CHANGE_PUREE, line, -1,
		    "%s: pureed, where the formula has it in pieces. A puree is too dense for the "
		    "heat.",
		    shown);
	if ((mine->said & SAID_CHANGED) && !(printed->words.said & SAID_CHANGED) &&
	    !(mine->is & IS_DRY_SPICE))
		judge_say(j, WEIGH_UNCOVERED, "form-changed", CHANGE_OWN_RECIPE, line, -1,
			  "%s: dried, cooked or preserved beforehand, which the formula's is not.",
			  shown);
	if (j->items->recipe->lines[line].read.alternatives && !(printed->words.said & SAID_OR) &&
	    item_score(&j->items->item[line], printed) < 100)
		judge_say(j, WEIGH_ASK, "which-one", CHANGE_OWN_RECIPE, line, -1,
			  "%s: which of these will it be? Name one.", shown);
	if ((mine->said & SAID_EDGE) && printed->role != ROLE_SPICE)
		judge_say(j, WEIGH_ASK, "amount-unsure", CHANGE_OWN_RECIPE, line, -1,
			  "%s: measure it level, or weigh it.", shown);
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

/* --- Vinegar and juice --- */

/* Thousandths of a percent before a "%" in the line's own words; 0: none is said. */
static int32_t said_strength(const char *text)
{
	const char *end = strchr(text, '%');
	if (!end)
		return 0;
	while (end > text && end[-1] == ' ')
		end--;
	const char *start = end;
	while (start > text && ((start[-1] >= '0' && start[-1] <= '9') || start[-1] == '.'))
		start--;
	char number[16];
	struct rational percent;
	struct error err;
	int64_t milli;
	size_t length = (size_t)(end - start);
	if (length == 0 || length >= sizeof number)
		return 0;
	memcpy(number, start, length);
	number[length] = '\0';
	if (!rational_parse(number, &percent, &err) || !rational_floor(percent, 1000, &milli) ||
	    milli > 100000)
		return 0;
	return (int32_t)milli;
}

static void say_vinegar(struct judge *j, enum rule_id id, enum weight weight, size_t line)
{
	const struct rule *rule = &j->set->ref->rules[id];
	struct finding finding = {.rule = id, .level = LEVEL_REFUSE};
	char text[COMPARE_TEXT_SIZE];
	int32_t said = said_strength(j->items->recipe->lines[line].text);
	finding.a_milli = said ? said : j->facts->vinegar_milli_percent;
	if (j->out)
		finding_text(j->set->ref, &finding, text, sizeof text);
	else
		text[0] = '\0';
	judge_cite(j, weight, rule->id, &rule->from, line, j->pairing->to[line], text);
}

static void judge_strength(struct judge *j, size_t line, int32_t milli)
{
	if (milli < j->set->ref->rules[RULE_VINEGAR_WEAK].limit_milli)
		say_vinegar(j, RULE_VINEGAR_WEAK, WEIGH_FORBIDDEN, line);
	else if (milli >= j->set->ref->rules[RULE_VINEGAR_STRONG].limit_milli)
		say_vinegar(j, RULE_VINEGAR_STRONG, WEIGH_FORBIDDEN, line);
}

static void judge_one_vinegar(struct judge *j, size_t line)
{
	const struct item_words *words = &j->items->item[line].words;
	int32_t said = said_strength(j->items->recipe->lines[line].text);
	if ((words->said & SAID_WINE) || j->facts->vinegar == VINEGAR_WINE)
		say_vinegar(j, RULE_VINEGAR_WINE, WEIGH_FORBIDDEN, line);
	else if ((words->said & SAID_HOME_MADE) || j->facts->vinegar == VINEGAR_HOME_MADE)
		say_vinegar(j, RULE_VINEGAR_HOME_MADE, WEIGH_FORBIDDEN, line);
	else if (words->said & SAID_ODD_VINEGAR)
		judge_say(j, WEIGH_UNCOVERED, "vinegar-kind", CHANGE_VINEGAR_KIND, line,
			  j->pairing->to[line],
			  "Only white and cider vinegar are published as standing for each other.");
	else if (said)
		judge_strength(j, line, said);
	else if (j->facts->vinegar == VINEGAR_LABELLED)
		judge_strength(j, line, j->facts->vinegar_milli_percent);
	else if (j->facts->vinegar == VINEGAR_UNKNOWN)
		say_vinegar(j, RULE_VINEGAR_UNKNOWN, WEIGH_FORBIDDEN, line);
	else
		say_vinegar(j, RULE_VINEGAR_MISSING, WEIGH_ASK, line);
}

bool needs_bottled(const struct formula *formula, const struct item *printed)
{
	return printed->role == ROLE_VINEGAR || (printed->words.said & SAID_BOTTLED) ||
	       (formula->food->acid_need & ACID_NEED_BOTTLED_JUICE);
}

static void judge_juice(struct judge *j, size_t line, const struct item *printed)
{
	const struct item *mine = &j->items->item[line];
	bool fresh = (mine->words.said & SAID_FRESH_JUICE) ||
		     strcmp(j->items->recipe->lines[line].read.unit, "fruit") == 0;
	int at = j->pairing->to[line];
	char shown[TEXT_SHOWN_SIZE];
	text_show(mine->name, (size_t)-1, shown);
	if (printed->role == ROLE_VINEGAR)
		judge_say(j, WEIGH_FINE, "juice-for-vinegar", CHANGE_JUICE_FOR_VINEGAR, line, -1,
			  "%s: bottled juice may take the place of the vinegar, equal measure.",
			  shown);
	if (!needs_bottled(j->formula, printed) || (mine->words.said & SAID_BOTTLED))
		return;
	judge_say(
	    j, fresh ? WEIGH_FORBIDDEN : WEIGH_ASK, "fresh-juice", CHANGE_FRESH_JUICE, line, at,
	    "%s: use bottled juice, and write so in the recipe; the acid of fresh fruit varies.",
	    shown);
}

void judge_vinegar(struct judge *j)
{
	for (size_t i = 0; i < j->items->recipe->lines_n; i++) {
		if (j->pairing->to[i] < 0)
			continue;
		const struct item *printed = &j->printed[j->pairing->to[i]];
		const struct item *mine = &j->items->item[i];
		if (printed->role != ROLE_VINEGAR && printed->role != ROLE_CITRUS)
			continue;
		if (mine->words.is & IS_CITRUS_JUICE)
			judge_juice(j, i, printed);
		else if (mine->words.is & IS_VINEGAR)
			judge_one_vinegar(j, i);
	}
}
