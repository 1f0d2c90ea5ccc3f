#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

/* For sums that a single tolerance must not hide a change in. */
#define EXACT 1e-9

void judge_cite(struct judge *j, enum weight weight, const char *rule, const struct citation *from,
		size_t line, int printed, const char *text)
{
	static const enum level levels[] = {LEVEL_NOTE, LEVEL_WARN, LEVEL_ASK, LEVEL_REFUSE,
					    LEVEL_REFUSE};
	struct compare_finding new = {rule, levels[weight], weight == WEIGH_UNCOVERED, line, "",
				      from};
	j->asked |= weight == WEIGH_ASK;
	j->uncovered |= weight == WEIGH_UNCOVERED;
	j->forbidden |= weight == WEIGH_FORBIDDEN;
	if (weight >= WEIGH_ASK && printed >= 0)
		j->bad_printed[printed] = true;
	if (weight >= WEIGH_ASK && line != COMPARE_NO_LINE)
		j->bad_line[line] = true;
	if (!j->out)
		return;
	snprintf(new.text, sizeof new.text, "%s", text);
	text_drop_partial(new.text);
	/* Worst first; of the same weight in order. */
	size_t at = j->out->findings_n;
	while (at > 0 && (j->out->findings[at - 1].level < new.level ||
			  (j->out->findings[at - 1].level == new.level &&
			   j->out->findings[at - 1].uncovered && !new.uncovered)))
		at--;
	if (j->out->findings_n == COMPARE_FINDINGS_MAX) {
		j->out->findings_left_out++;
		if (at == COMPARE_FINDINGS_MAX)
			return;
		j->out->findings_n--;
	}
	memmove(&j->out->findings[at + 1], &j->out->findings[at],
		(j->out->findings_n - at) * sizeof new);
	j->out->findings[at] = new;
	j->out->findings_n++;
}

void judge_say(struct judge *j, enum weight weight, const char *rule, enum change change,
	       size_t line, int printed, const char *format, ...)
{
	char text[COMPARE_TEXT_SIZE] = "";
	va_list args;
	va_start(args, format);
	if (j->out)
		vsnprintf(text, sizeof text, format, args);
	va_end(args);
	judge_cite(j, weight, rule, &j->set->rules[change]->from, line, printed, text);
}

bool kind_is(const struct food *food, const char *list)
{
	size_t length = strlen(food->kind);
	for (const char *at = list; (at = strstr(at, food->kind)) != NULL; at++)
		if (at > list && at[-1] == '|' && at[length] == '|')
			return true;
	return false;
}

/* A line of the formula and what the recipe has of it. */
struct held {
	struct judge *j;
	int at;
	const struct item *printed;
	size_t line;       /* the first of the recipe's lines, or COMPARE_NO_LINE */
	size_t lines;      /* how many */
	struct span share; /* of the scaled formula's amount */
	const char *name;
};

static bool surely_more(const struct held *h)
{
	return h->share.least > 1 + COMPARE_TOLERANCE;
}
static bool surely_less(const struct held *h)
{
	return h->share.most < 1 - COMPARE_TOLERANCE;
}
/* Several lines of the cook's in one of the formula's: a change of one must not hide. */
static bool maybe_more(const struct held *h)
{
	return h->share.most > 1 + (h->lines > 1 ? EXACT : COMPARE_TOLERANCE);
}
static bool maybe_less(const struct held *h)
{
	return h->share.least < 1 - (h->lines > 1 ? EXACT : COMPARE_TOLERANCE);
}
static bool differs(const struct held *h)
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
static void say_amount(const struct held *h, enum weight weight, const char *rule,
		       enum change change, const char *then)
{
	double middle = (h->share.least + h->share.most) / 2;
	int by = percent(middle);
	if (by == 0)
		judge_say(h->j, weight, rule, change, h->line, h->at,
			  "%s: not the formula's share for this much produce. %s", h->name, then);
	else
		judge_say(h->j, weight, rule, change, h->line, h->at,
			  "%s: %d %% %s than the formula has for this much produce. %s", h->name,
			  by, middle > 1 ? "more" : "less", then);
}

const char *printed_unit(const struct item *printed)
{
	const char *unit = printed->printed->unit;
	return strcmp(unit, "each") == 0 ? "whole ones" : *unit ? unit : "the formula's measure";
}

/* The published densities leave both open. */
static void ask_measure(const struct held *h)
{
	judge_say(h->j, WEIGH_ASK, "amount-unsure", CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: the amount cannot be told surely enough. Measure it as the formula does: in "
		  "%s.",
		  h->name, printed_unit(h->printed));
}

/* Not the same share: forbidden in pickles and relishes, covered by nothing elsewhere. */
static void proportions(const struct held *h, const char *rule)
{
	bool pickled = kind_is(h->j->formula->food, "|pickle|relish|fermented|");
	say_amount(h, pickled ? WEIGH_FORBIDDEN : WEIGH_UNCOVERED, rule,
		   pickled ? CHANGE_PROPORTIONS : CHANGE_OWN_RECIPE,
		   "Keep the formula's proportions.");
}

static void must_equal(const struct held *h, const char *rule)
{
	if (surely_differs(h))
		proportions(h, rule);
	else if (differs(h))
		ask_measure(h);
}

static void judge_acid(const struct held *h)
{
	if (surely_less(h) || (h->lines > 1 && h->share.most < 1 - EXACT))
		say_amount(h, WEIGH_FORBIDDEN, "less-acid", CHANGE_LESS_ACID,
			   "Never use less acid than was tested.");
	else if (surely_more(h))
		proportions(h, "more-acid");
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

static void less_low_acid(const struct held *h)
{
	bool vegetable = (h->printed->words.is & (IS_MEAT | IS_FAT | IS_DAIRY)) == 0;
	bool listed = kind_is(h->j->formula->food, "|salsa|pickle|relish|");
	if ((h->printed->words.said & SAID_OPTIONAL) && h->lines == 0)
		return;
	judge_say(h->j, vegetable && listed ? WEIGH_FINE : WEIGH_UNCOVERED, "less-low-acid",
		  vegetable && listed ? CHANGE_LESS_VEGETABLE : CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: less than the formula has. %s", h->name,
		  vegetable && listed ? "That is safe, as long as nothing else takes its place."
				      : "No publication says that this may be less.");
}

static void judge_low_acid(const struct held *h)
{
	bool pepper = (h->printed->words.is & IS_PEPPER) != 0;
	if (maybe_more(h) && pepper && peppers_within(h)) {
		judge_say(h->j, WEIGH_FINE, "pepper-for-pepper", CHANGE_PEPPER_FOR_PEPPER, h->line,
			  h->at, "%s: peppers may stand for one another, the total being no more.",
			  h->name);
		return;
	}
	const bool less_is_safe = kind_is(h->j->formula->food, "|salsa|pickle|relish|");
	if (surely_more(h) || (h->lines > 1 && h->share.least > 1 + EXACT))
		say_amount(h, WEIGH_FORBIDDEN, pepper ? "more-peppers" : "more-low-acid",
			   pepper ? CHANGE_MORE_PEPPERS : CHANGE_MORE_VEGETABLES,
			   "Low-acid food takes up the acid: use no more than was tested.");
	else if (!maybe_more(h) && (surely_less(h) || (h->lines > 1 && maybe_less(h))))
		less_low_acid(h);
	else if (maybe_more(h) || (maybe_less(h) && !less_is_safe))
		ask_measure(h);
}

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

static void sugar_less(const struct held *h)
{
	const struct food *food = h->j->formula->food;
	enum change change = less_sugar(h->j);
	if (kind_is(food, "|jam|jelly|spread|butter|"))
		judge_say(
		    h->j, WEIGH_FORBIDDEN, "less-sugar", CHANGE_SUGAR_JAM, h->line, h->at,
		    "%s: less than the formula has. It will not set, and mould may grow; use a "
		    "formula tested with little sugar.",
		    h->name);
	else if (change == CHANGE_COUNT)
		judge_say(
		    h->j, WEIGH_UNCOVERED, "less-sugar", CHANGE_OWN_RECIPE, h->line, h->at,
		    "%s: less than the formula has, and no publication says that this food may "
		    "have less.",
		    h->name);
	else
		judge_say(
		    h->j, WEIGH_FINE, "less-sugar", change, h->line, h->at,
		    "%s: less than the formula has. That is safe; taste and texture may suffer.",
		    h->name);
}

static void sugar_more(const struct held *h)
{
	bool listed = kind_is(h->j->formula->food, "|salsa|pickle|");
	judge_say(h->j, listed ? WEIGH_FINE : WEIGH_UNCOVERED, "more-sugar",
		  listed ? CHANGE_SUGAR_MORE : CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: more than the formula has. %s", h->name,
		  listed ? "That is safe, and better than less acid."
			 : "No publication says that this food may have more.");
}

static void judge_sugar(const struct held *h)
{
	if (surely_less(h))
		sugar_less(h);
	else if (surely_more(h))
		sugar_more(h);
	else if (differs(h))
		ask_measure(h);
}

/* The row that lets this food have less salt, or CHANGE_COUNT. */
static enum change less_salt(const struct held *h)
{
	const struct food *food = h->j->formula->food;
	/* Salt of a soak draws water out before the jar is filled: that is no seasoning. */
	if (h->printed->words.said & SAID_SOAK)
		return CHANGE_COUNT;
	if (kind_is(food, "|pickle|relish|"))
		return is_quick(h->j) ? CHANGE_SALT_PICKLE : CHANGE_COUNT;
	if (kind_is(food, "|salsa|"))
		return CHANGE_SALT_SALSA;
	return kind_is(food, "|vegetable|tomato|sauce|meat|poultry|soup|seafood|")
		   ? CHANGE_SALT_PLAIN
		   : CHANGE_COUNT;
}

static void judge_salt(const struct held *h)
{
	enum change change = less_salt(h);
	if (kind_is(h->j->formula->food, "|fermented|") && (h->lines == 0 || differs(h)))
		judge_say(h->j, WEIGH_FORBIDDEN, "salt-fermented", CHANGE_SALT_FERMENTED, h->line,
			  h->at, "%s: fermenting needs the very share of salt that was tested.",
			  h->name);
	else if (h->lines > 0 && maybe_more(h))
		judge_say(h->j, surely_more(h) ? WEIGH_UNCOVERED : WEIGH_ASK, "more-salt",
			  CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: more than the formula has. Less is published as safe, more is not.",
			  h->name);
	else if ((h->lines == 0 || maybe_less(h)) && change == CHANGE_COUNT)
		judge_say(h->j, WEIGH_UNCOVERED, "less-salt", CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: less than the formula has, and no publication says that it may be "
			  "less here.",
			  h->name);
	else if (h->lines == 0 || maybe_less(h))
		judge_say(h->j, WEIGH_FINE, "less-salt", change, h->line, h->at,
			  "%s: less than the formula has. That is safe.", h->name);
}

/* Fresh herbs and roots are food; only dried ones may change freely. */
static void judge_spice(const struct held *h)
{
	bool dry = (h->printed->words.is & IS_DRY_SPICE) != 0;
	if (dry && h->lines > 0 && h->share.known && !differs(h))
		return;
	if (dry)
		judge_say(h->j, WEIGH_FINE, "dried-spice", CHANGE_SPICE_AMOUNT, h->line, h->at,
			  "%s: another amount than the formula's. Dried spices may change.",
			  h->name);
	else if (h->lines == 0)
		judge_say(h->j, WEIGH_UNCOVERED, "less-seasoning", CHANGE_OWN_RECIPE, h->line,
			  h->at, "%s: left out, and no publication says that it may be.", h->name);
	else
		must_equal(h, "seasoning");
}

static void judge_water(const struct held *h)
{
	bool acid = false;
	for (size_t f = 0; f < h->j->formula->lines_n; f++)
		acid |= h->j->printed[f].role == ROLE_VINEGAR;
	if (surely_more(h) && acid)
		say_amount(h, WEIGH_FORBIDDEN, "more-water", CHANGE_DILUTED,
			   "Water thins the vinegar.");
	else
		must_equal(h, "water");
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
			say_amount(h, WEIGH_FORBIDDEN, "more-thickener", CHANGE_STARCH_PRINTED,
				   "Starch only in the amount printed.");
		else
			must_equal(h, "thickener");
		break;
	default:
		must_equal(h, h->printed->role == ROLE_MAIN ? "proportions" : "amount-changed");
	}
}

static void judge_missing(const struct held *h)
{
	if (h->printed->words.said & SAID_OPTIONAL)
		return;
	switch (h->printed->role) {
	case ROLE_VINEGAR:
	case ROLE_CITRUS:
		judge_say(h->j, WEIGH_FORBIDDEN, "less-acid", CHANGE_LESS_ACID, COMPARE_NO_LINE,
			  h->at, "%s: the recipe has none. Never use less acid than was tested.",
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
		judge_say(h->j, WEIGH_UNCOVERED, "left-out", CHANGE_OWN_RECIPE, COMPARE_NO_LINE,
			  h->at, "%s: the formula has it, the recipe does not.", h->name);
	}
}

/* The publication prints no amount, so none can be held against it. */
static void judge_blank(const struct held *h)
{
	bool given = false;
	for (size_t i = 0; i < h->j->items->recipe->lines_n; i++)
		given |= h->j->pairing->to[i] == h->at &&
			 h->j->items->item[i].amount.sort != AMOUNT_UNKNOWN;
	if (h->printed->role == ROLE_SPICE || (h->printed->words.said & SAID_OPTIONAL))
		return;
	if (h->printed->role == ROLE_SALT && !kind_is(h->j->formula->food, "|fermented|"))
		judge_say(
		    h->j, given ? WEIGH_ASK : WEIGH_WARN, "amount-not-printed", CHANGE_OWN_RECIPE,
		    h->line, h->at,
		    "%s: the formula's amount is not known to these tables. Without any it is "
		    "covered; look up the publication for how much it has.",
		    h->name);
	else if (h->printed->role == ROLE_WATER && !given)
		judge_say(h->j, WEIGH_WARN, "amount-not-printed", CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: the publication gives no amount; use the least that does.", h->name);
	else
		judge_say(h->j, WEIGH_ASK, "amount-not-printed", CHANGE_OWN_RECIPE, h->line, h->at,
			  "%s: the publication gives no amount to hold yours against.", h->name);
}

static void judge_unknown(const struct held *h)
{
	if (h->printed->role == ROLE_SPICE && (h->printed->words.is & IS_DRY_SPICE))
		return;
	judge_say(h->j, WEIGH_ASK, "amount-missing", CHANGE_OWN_RECIPE, h->line, h->at,
		  "%s: how much? Give a weight, or an amount in %s.", h->name,
		  *h->printed->printed->unit ? h->printed->printed->unit : "the formula's unit");
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
	h.share = span_divide(span_of(j->items, j->pairing->to, at, h.printed), j->scale);
	if (h.lines == 0)
		judge_missing(&h);
	else if (h.printed->amount.sort == AMOUNT_UNKNOWN)
		judge_blank(&h);
	else if (!h.share.known)
		judge_unknown(&h);
	else
		judge_known(&h);
}

void judge_lines(struct judge *j)
{
	for (size_t f = 0; f < j->formula->lines_n; f++)
		judge_line(j, (int)f);
}

void judge_all(struct judge *j)
{
	j->printed = formula_items(j->set, j->formula);
	if (!j->scale.known)
		j->scale = pairing_scale(j->set, j->items, j->formula, j->pairing);
	if (!j->scale.known)
		judge_say(
		    j, WEIGH_ASK, "scale-unknown", CHANGE_OWN_RECIPE, COMPARE_NO_LINE, -1,
		    "How much of the main produce is there? Give it in the formula's measure, "
		    "or weigh it.");
	judge_lines(j);
	judge_added(j);
	judge_vinegar(j);
}
