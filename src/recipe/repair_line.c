#include <math.h>
#include <stdio.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

/* A measure of the kitchen is taken if it is this near; else the scale or the jug. */
#define NEAR 0.005

static bool rational_near(double value, struct rational *out)
{
	return value > 0 && value < 1e9 && rational_make((int64_t)llround(value * 1000), 1000, out);
}

/* Digits that keep the amount within half of what the comparison allows. */
static void plain_number(double value, const char *unit, char *out, size_t size)
{
	int digits = value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3;
	snprintf(out, size, "%.*f %s", digits, value, unit);
}

/* Where less is published as safe, an amount may be rounded down as far as this. */
#define LESS_AT_MOST 0.15

static bool may_be_less(const struct judge *j, const struct item *printed)
{
	if (printed->role == ROLE_SALT)
		return salt_may_be_less(j, printed);
	return printed->role == ROLE_LOW_ACID &&
	       !(printed->words.is & (IS_MEAT | IS_FAT | IS_DAIRY)) &&
	       kind_is(j->formula->food, "|salsa|pickle|relish|");
}

static bool nearest_measure(const struct judge *j, enum amount_sort sort, double value,
			    struct practical *out)
{
	const struct reference_tables *tables = j->set->tables;
	enum measuring_system system = j->items->recipe->system;
	struct rational wanted;
	if (!rational_near(value, &wanted))
		return false;
	/* A line can hold one amount and one more. */
	return (sort == AMOUNT_VOLUME
		    ? practical_volume(tables, system, wanted, PRACTICAL_NEAREST, out)
		    : practical_mass(tables, system, wanted, PRACTICAL_NEAREST, out)) &&
	       out->parts_n <= 2;
}

/*
 * "1 1/2 cups", if the kitchen has a measure that is near enough, or as near below as may
 * be. *value becomes what it comes to.
 */
static bool in_kitchen_measure(const struct judge *j, const struct item *printed, double *value,
			       char *out, size_t size)
{
	static const double shares[] = {1.0, 0.97, 0.94, 0.91, 0.88};
	const double most = *value * (1 + NEAR);
	const double least = *value * (1 - (may_be_less(j, printed) ? LESS_AT_MOST : NEAR));
	for (size_t i = 0; i < sizeof shares / sizeof *shares; i++) {
		struct practical practical;
		if (!nearest_measure(j, printed->amount.sort, *value * shares[i], &practical))
			return false;
		const double amount = rational_double(practical.amount);
		if (amount > most || amount < least)
			continue;
		practical_words(out, size, &practical);
		*value = amount;
		return true;
	}
	return false;
}

/* Pieces: a simple fraction if one is near, else a decimal. */
static void in_pieces(const struct amount *amount, double value, char *out, size_t size)
{
	static const int parts[] = {1, 2, 3, 4, 8};
	char number[64];
	snprintf(number, sizeof number, "%.3f", value);
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		struct rational fraction;
		double whole = round(value * parts[i]);
		if (whole < 1 || fabs(whole / parts[i] - value) > NEAR * value)
			continue;
		if (rational_make((int64_t)whole, parts[i], &fraction))
			rational_words(number, sizeof number, fraction);
		break;
	}
	snprintf(out, size, "%s%s%s%s%s", number, *amount->size ? " " : "", amount->size,
		 *amount->unit ? " " : "", amount->unit);
}

/* What the line is of: the cook's words where they will do. */
static void name_words(const struct judge *j, const struct item *printed,
		       const struct recipe_line *kept, char *out, size_t size)
{
	const char *name = kept ? kept->read.ingredient : printed->name;
	const char *preparation = kept ? kept->read.preparation : printed->printed->preparation;
	bool vinegar = (printed->words.is & IS_VINEGAR) != 0;
	bool bottled = (printed->words.is & IS_CITRUS_JUICE) &&
		       needs_bottled(j->formula, printed) && !strstr(name, "bottled");
	char strength[32] = "";
	if (vinegar && printed->role == ROLE_VINEGAR)
		snprintf(strength, sizeof strength, ", %d %%",
			 (int)(j->set->ref->rules[RULE_VINEGAR_WEAK].limit_milli / 1000));
	snprintf(out, size, "%s%s%s%s%s", name, *preparation ? ", " : "", preparation, strength,
		 bottled ? ", bottled" : "");
}

/* Reads the line back and checks that it says what was meant. */
static bool read_back(const struct judge *j, const struct item *printed, double wanted,
		      const char *words, struct new_line *out)
{
	struct error err;
	struct amount amount;
	int n = snprintf(out->line.text, sizeof out->line.text, "%s %s", out->amount, words);
	if (n < 0 || (size_t)n >= sizeof out->line.text ||
	    !ingredient_line_parse(out->line.text, strlen(out->line.text), &out->line.read, &err))
		return false;
	amount_read(j->set->tables, j->items->recipe->system, &out->line.read, &amount);
	return amount_alike(&amount, &printed->amount) &&
	       fabs(amount.least - wanted) <= 2 * NEAR * wanted && amount.least == amount.most;
}

bool new_line_make(const struct judge *j, int at, const struct recipe_line *kept, double scale,
		   struct new_line *out)
{
	const struct item *printed = &j->printed[at];
	const struct amount *amount = &printed->amount;
	double wanted = amount->least * scale;
	const char *unit = amount->sort == AMOUNT_VOLUME ? "mL" : "g";
	char words[INGREDIENT_FIELD_SIZE * 2 + 64];
	*out = (struct new_line){.amount = ""};
	if (amount->sort == AMOUNT_UNKNOWN || !(wanted > 0))
		return false;
	name_words(j, printed, kept, words, sizeof words);
	if (amount->sort == AMOUNT_COUNT) {
		in_pieces(amount, wanted, out->amount, sizeof out->amount);
		return read_back(j, printed, wanted, words, out);
	}
	if (in_kitchen_measure(j, printed, &wanted, out->amount, sizeof out->amount) &&
	    read_back(j, printed, wanted, words, out)) {
		if (!strstr(out->amount, unit) || strstr(out->amount, "kg"))
			plain_number(wanted, unit, out->about, sizeof out->about);
		return true;
	}
	plain_number(amount->least * scale, unit, out->amount, sizeof out->amount);
	return read_back(j, printed, amount->least * scale, words, out);
}
