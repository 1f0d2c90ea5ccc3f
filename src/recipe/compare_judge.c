#include <stdio.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

bool kind_is(const struct food *food, const char *list)
{
	size_t length = strlen(food->kind);
	for (const char *at = list; (at = strstr(at, food->kind)) != NULL; at++)
		if (at > list && at[-1] == '|' && at[length] == '|')
			return true;
	return false;
}

bool surely_more(const struct held *h)
{
	return h->share.least > 1 + COMPARE_TOLERANCE;
}
bool surely_less(const struct held *h)
{
	return h->share.most < 1 - COMPARE_TOLERANCE;
}
/* Several lines of the cook's in one of the formula's: a change of one must not hide. */
bool maybe_more(const struct held *h)
{
	return h->share.most > 1 + (h->lines > 1 ? EXACT : COMPARE_TOLERANCE);
}
bool maybe_less(const struct held *h)
{
	return h->share.least < 1 - (h->lines > 1 ? EXACT : COMPARE_TOLERANCE);
}
bool differs(const struct held *h)
{
	return maybe_more(h) || maybe_less(h);
}
static bool surely_differs(const struct held *h)
{
	return surely_more(h) || surely_less(h) ||
	       (h->lines > 1 && (h->share.least > 1 + EXACT || h->share.most < 1 - EXACT));
}

static int percent(double share)
{
	double p = (share > 1 ? share - 1 : 1 - share) * 100;
	return p > 9999 ? 9999 : (int)(p + 0.5);
}

/* "10 % more than the formula has for this much produce". */
static void say_amount(const struct held *h, enum weight weight, enum difference rule,
		       enum change change, const char *then)
{
	double middle = (h->share.least + h->share.most) / 2;
	int by = percent(middle);
	if (by == 0)
		judge_say(h->j, weight, rule, change, h->line, h->at,
			  "%s: not the formula's share for this much produce.%s%s", h->name,
			  *then ? " " : "", then);
	else
		judge_say(h->j, weight, rule, change, h->line, h->at,
			  "%s: %d %% %s than the formula has for this much produce.%s%s", h->name,
			  by, middle > 1 ? "more" : "less", *then ? " " : "", then);
}

const char *printed_unit(const struct item *printed)
{
	const char *unit = printed->printed->unit;
	enum kitchen_unit kitchen;
	enum measuring_system said;
	if (kitchen_unit_find(unit, &kitchen, &said))
		return kitchen_unit_name(kitchen, true);
	return strcmp(unit, "each") == 0 ? "whole ones" : *unit ? unit : "the formula's measure";
}

/* The published densities leave both open. */
void ask_measure(const struct held *h)
{
	judge_say(h->j, WEIGH_ASK, DIFF_AMOUNT_UNSURE, CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: your amount may be the formula's or not; no published weight tells surely "
		  "enough. The formula has it in %s.",
		  h->name, printed_unit(h->printed));
}

/* Not the same share: forbidden in pickles and relishes, covered by nothing elsewhere. */
static void proportions(const struct held *h, enum difference rule)
{
	bool pickled = kind_is(h->j->formula->food, "|pickle|relish|fermented|");
	say_amount(h, pickled ? WEIGH_FORBIDDEN : WEIGH_UNCOVERED, rule,
		   pickled ? CHANGE_PROPORTIONS : CHANGE_OWN_RECIPE, "");
}

void must_equal(const struct held *h, enum difference rule)
{
	if (surely_differs(h))
		proportions(h, rule);
	else if (differs(h))
		ask_measure(h);
}

static void judge_acid(const struct held *h)
{
	if (surely_less(h) || (h->lines > 1 && h->share.most < 1 - EXACT))
		say_amount(h, WEIGH_FORBIDDEN, DIFF_LESS_ACID, CHANGE_LESS_ACID,
			   "Never less acid than was tested.");
	else if (surely_more(h))
		proportions(h, DIFF_MORE_ACID);
	else if (differs(h))
		ask_measure(h);
}

/* Are all the peppers together no more than the formula's, measure for measure? */
static bool peppers_within(const struct held *h)
{
	const struct judge *j = h->j;
	double recipe = 0, formula = 0;
	for (size_t f = 0; f < j->formula->lines_n; f++) {
		const struct item *p = &j->printed[f];
		if (p->role != ROLE_LOW_ACID || !(p->words.is & IS_PEPPER) ||
		    !amount_alike(&p->amount, &h->printed->amount))
			continue;
		formula += p->amount.least;
		for (size_t i = 0; i < j->items->recipe->lines_n; i++) {
			const struct amount *amount = &j->items->item[i].amount;
			if (j->pairing->to[i] != (int)f)
				continue;
			if (!amount_alike(amount, &p->amount))
				return false;
			recipe += amount->most;
		}
	}
	return recipe <= formula * j->scale.least * (1 + EXACT);
}

/* Where no main produce is printed, the low-acid foods are the produce. */
static bool is_produce(const struct held *h)
{
	for (size_t f = 0; f < h->j->formula->lines_n; f++)
		if (h->j->printed[f].role == ROLE_MAIN && !h->j->printed[f].gone)
			return false;
	return true;
}

/* Where peppers are left out, may others of the recipe be standing for them? */
static bool has_other_pepper(const struct held *h)
{
	const struct judge *j = h->j;
	if (!(h->printed->words.is & IS_PEPPER))
		return false;
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		if (j->pairing->to[i] >= 0 && (j->printed[j->pairing->to[i]].words.is & IS_PEPPER))
			return true;
	return false;
}

static void less_low_acid(const struct held *h)
{
	bool vegetable = (h->printed->words.is & (IS_MEAT | IS_FAT | IS_DAIRY)) == 0;
	bool listed = kind_is(h->j->formula->food, "|salsa|pickle|relish|");
	if ((h->printed->words.said & SAID_OPTIONAL) && h->lines == 0)
		return;
	if (h->lines == 0 && is_produce(h) && !has_other_pepper(h)) {
		judge_say(h->j, WEIGH_UNCOVERED, DIFF_LEFT_OUT, CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: the formula has it, the recipe does not.", h->name);
		return;
	}
	judge_say(h->j, vegetable && listed ? WEIGH_FINE : WEIGH_UNCOVERED, DIFF_LESS_LOW_ACID,
		  vegetable && listed ? CHANGE_LESS_VEGETABLE : CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: less than the formula has. %s", h->name,
		  vegetable && listed ? "That is safe, as long as nothing else takes its place."
				      : "No publication says that this may be less.");
}

static void judge_low_acid(const struct held *h)
{
	bool pepper = (h->printed->words.is & IS_PEPPER) != 0;
	if (maybe_more(h) && pepper && peppers_within(h)) {
		judge_say(h->j, WEIGH_FINE, DIFF_PEPPER_FOR_PEPPER, CHANGE_PEPPER_FOR_PEPPER,
			  h->line, h->at,
			  "%s: peppers may stand for one another, the total being no more.",
			  h->name);
		return;
	}
	const bool less_is_safe = kind_is(h->j->formula->food, "|salsa|pickle|relish|");
	if (surely_more(h) || (h->lines > 1 && h->share.least > 1 + EXACT))
		say_amount(h, WEIGH_FORBIDDEN, pepper ? DIFF_MORE_PEPPERS : DIFF_MORE_LOW_ACID,
			   pepper ? CHANGE_MORE_PEPPERS : CHANGE_MORE_VEGETABLES,
			   "Low-acid food takes up the acid.");
	else if (!maybe_more(h) && (surely_less(h) || (h->lines > 1 && maybe_less(h))))
		less_low_acid(h);
	else if (maybe_more(h) || (maybe_less(h) && !less_is_safe))
		ask_measure(h);
}

static void judge_water(const struct held *h)
{
	bool acid = false;
	for (size_t f = 0; f < h->j->formula->lines_n; f++)
		acid |= h->j->printed[f].role == ROLE_VINEGAR;
	if (surely_more(h) && acid)
		say_amount(h, WEIGH_FORBIDDEN, DIFF_MORE_WATER, CHANGE_DILUTED,
			   "Water thins the vinegar.");
	else
		must_equal(h, DIFF_WATER);
}

static void judge_known(const struct held *h)
{
	switch (h->printed->role) {
	case ROLE_VINEGAR:
	case ROLE_CITRUS:
		judge_acid(h);
		break;
	case ROLE_LOW_ACID:
		judge_low_acid(h);
		break;
	case ROLE_SUGAR:
		judge_sugar(h);
		break;
	case ROLE_SALT:
		judge_salt(h);
		break;
	case ROLE_SPICE:
		judge_spice(h);
		break;
	case ROLE_WATER:
		judge_water(h);
		break;
	case ROLE_STARCH:
		if (surely_more(h))
			say_amount(h, WEIGH_FORBIDDEN, DIFF_MORE_THICKENER, CHANGE_STARCH_PRINTED,
				   "Starch only in the amount printed.");
		else
			must_equal(h, DIFF_THICKENER);
		break;
	default:
		must_equal(h,
			   h->printed->role == ROLE_MAIN ? DIFF_PROPORTIONS : DIFF_AMOUNT_CHANGED);
	}
}

static void judge_missing(const struct held *h)
{
	if (h->printed->words.said & SAID_OPTIONAL)
		return;
	switch (h->printed->role) {
	case ROLE_VINEGAR:
	case ROLE_CITRUS:
		judge_say(h->j, WEIGH_FORBIDDEN, DIFF_LESS_ACID, CHANGE_LESS_ACID, COMPARE_NO_LINE,
			  h->at, "%s: the recipe has none. Never less acid than was tested.",
			  h->name);
		break;
	case ROLE_LOW_ACID:
		less_low_acid(h);
		break;
	case ROLE_SUGAR:
		sugar_less(h);
		break;
	case ROLE_SALT:
		judge_salt(h);
		break;
	case ROLE_SPICE:
		judge_spice(h);
		break;
	default:
		judge_say(h->j, WEIGH_UNCOVERED, DIFF_LEFT_OUT, CHANGE_OWN_RECIPE, COMPARE_NO_LINE,
			  h->at, "%s: the formula has it, the recipe does not.", h->name);
	}
}

static bool is_given(const struct held *h)
{
	for (size_t i = 0; i < h->j->items->recipe->lines_n; i++)
		if (h->j->pairing->to[i] == h->at &&
		    h->j->items->item[i].amount.sort != AMOUNT_UNKNOWN)
			return true;
	return false;
}

/* The publication prints no amount, so none can be held against it. */
static void judge_blank(const struct held *h)
{
	const struct item_words *words = &h->printed->words;
	bool dry = h->printed->role == ROLE_SPICE && (words->is & IS_DRY_SPICE);
	bool fermented = kind_is(h->j->formula->food, "|fermented|");
	bool harmless = (words->said & SAID_OPTIONAL) || h->printed->role == ROLE_SPICE ||
			h->printed->role == ROLE_WATER ||
			(h->printed->role == ROLE_SALT && !fermented);
	if (dry)
		return;
	if (harmless && !is_given(h))
		judge_say(h->j, WEIGH_WARN, DIFF_AMOUNT_NOT_PRINTED, CHANGE_OWN_RECIPE, h->line,
			  h->at,
			  "%s: these tables have no amount of it; use what the publication says, "
			  "and no more.",
			  h->name);
	else
		judge_say(h->j, WEIGH_ASK, DIFF_AMOUNT_NOT_PRINTED, CHANGE_OWN_RECIPE, h->line,
			  h->at, "%s: these tables have no amount of it to hold yours against.",
			  h->name);
}

/* An amount there is, and no way from its measure to the formula's. */
static void judge_unknown(const struct held *h)
{
	if (h->printed->role == ROLE_SPICE && (h->printed->words.is & IS_DRY_SPICE)) {
		judge_spice(h);
		return;
	}
	if (is_given(h))
		judge_say(
		    h->j, WEIGH_ASK, DIFF_AMOUNT_UNSURE, CHANGE_OWN_RECIPE, h->line, h->at,
		    "%s: no published weight leads from your measure to the formula's. It has "
		    "it in %s.",
		    h->name, printed_unit(h->printed));
	else
		judge_say(h->j, WEIGH_ASK, DIFF_AMOUNT_MISSING, CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: how much? The formula has it in %s.", h->name,
			  printed_unit(h->printed));
}

static void judge_line(struct judge *j, int at)
{
	struct held h = {j, at, &j->printed[at], COMPARE_NO_LINE, 0, {false, 0, 0}, ""};
	char shown[TEXT_SHOWN_SIZE];
	if (h.printed->gone)
		return;
	for (size_t i = j->items->recipe->lines_n; i-- > 0;) {
		if (j->pairing->to[i] != at)
			continue;
		h.line = i;
		h.lines++;
	}
	text_show(h.lines ? j->items->item[h.line].name : h.printed->name, (size_t)-1, shown);
	h.name = shown;
	struct span own = span_of(j->items, j->pairing->to, at, h.printed);
	h.share = span_divide(own, j->scale);
	if (h.lines == 0)
		judge_missing(&h);
	else if (h.printed->amount.sort == AMOUNT_UNKNOWN)
		judge_blank(&h);
	else if (!own.known)
		judge_unknown(&h);
	else if (h.share.known)
		judge_known(&h);
	/* Else the size of the whole is asked for, and this line waits for it. */
}

void judge_lines(struct judge *j)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		judge_line(j, (int)f);
}

/* Jam and jelly set badly in a larger batch; up to one printed batch nothing is said. */
static void judge_batch(struct judge *j)
{
	if (kind_is(j->formula->food, "|jam|jelly|") && j->scale.known &&
	    j->scale.least > 1 + COMPARE_TOLERANCE)
		judge_say(j, WEIGH_WARN, DIFF_BATCH_SIZE, CHANGE_DOUBLED, COMPARE_NO_LINE, -1,
			  "More than one batch of the formula: it may not set. Make it in batches "
			  "of the formula's size.");
}

void judge_all(struct judge *j)
{
	j->printed = formula_items(j->set, j->formula);
	if (!j->scale.known)
		j->scale = pairing_scale(j->set, j->items, j->formula, j->pairing);
	if (!j->scale.known)
		judge_say(j, WEIGH_ASK, DIFF_SCALE_UNKNOWN, CHANGE_OWN_RECIPE, COMPARE_NO_LINE, -1,
			  "How much of the main produce is there? Everything is held against it.");
	judge_batch(j);
	judge_lines(j);
	judge_added(j);
	judge_acids(j);
	judge_doubts(j);
}
