#include <string.h>

#include "compare_internal.h"

/* One unit in millilitres or grams, or a piece. False: it cannot be told. */
static bool unit_of(const struct reference_tables *tables, enum measuring_system system,
		    const char *unit, enum amount_sort *sort, double *one)
{
	enum kitchen_unit kitchen;
	enum measuring_system said;
	struct kitchen_measure measure;
	if (*unit == '\0' || !kitchen_unit_find(unit, &kitchen, &said)) {
		*sort = AMOUNT_COUNT;
		*one = 1.0;
		return true;
	}
	if (!kitchen_measure_find(tables, kitchen, system, &measure))
		return false;
	*sort = kitchen_unit_is_mass(kitchen) ? AMOUNT_MASS : AMOUNT_VOLUME;
	*one = rational_double(measure.amount);
	return true;
}

static bool one_amount(const struct reference_tables *tables, enum measuring_system system,
		       const struct ingredient_amount *read, struct amount *out)
{
	double one;
	if (!unit_of(tables, system, read->unit, &out->sort, &one))
		return false;
	out->least = rational_double(read->quantity) * one;
	out->most = rational_double(read->quantity_max) * one;
	out->unit = read->unit;
	return true;
}

/* Units that an eye judges, or whose size nobody knows. */
static bool by_eye(const char *unit)
{
	static const char *const words[] = {"pinch",   "dash", "splash", "drizzle", "drop",
					    "handful", "knob", "bunch",  "sprig"};
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strcmp(words[i], unit) == 0)
			return true;
	return false;
}

bool unit_is_unsized(const char *unit)
{
	static const char *const words[] = {"breakfast cup", "teacup", "coffee cup",
					    "wineglass",     "glass",  "mug"};
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strcmp(words[i], unit) == 0)
			return true;
	return false;
}

void amount_read(const struct reference_tables *tables, enum measuring_system system,
		 const struct ingredient_line *line, struct amount *out)
{
	const struct ingredient_amount own = {true, line->quantity, line->quantity_max, line->unit};
	struct amount more = {.sort = AMOUNT_UNKNOWN};
	*out = (struct amount){.sort = AMOUNT_UNKNOWN, .unit = "", .size = ""};
	if (!line->has_quantity || by_eye(line->unit) || unit_is_unsized(line->unit))
		return;
	if (!one_amount(tables, system, line->pack.present ? &line->pack : &own, out)) {
		*out = (struct amount){.sort = AMOUNT_UNKNOWN, .unit = "", .size = ""};
		return;
	}
	out->size = line->size;
	if (line->pack.present) {
		out->least *= rational_double(own.quantity);
		out->most *= rational_double(own.quantity_max);
	}
	if (!line->plus.present)
		return;
	if (!one_amount(tables, system, &line->plus, &more) || more.sort != out->sort ||
	    (more.sort == AMOUNT_COUNT && strcmp(more.unit, out->unit) != 0)) {
		out->sort = AMOUNT_UNKNOWN;
		return;
	}
	out->least += more.least;
	out->most += more.most;
}

bool amount_alike(const struct amount *a, const struct amount *b)
{
	if (a->sort != b->sort || a->sort == AMOUNT_UNKNOWN)
		return false;
	return a->sort != AMOUNT_COUNT ||
	       (strcmp(a->unit, b->unit) == 0 && strcmp(a->size, b->size) == 0);
}

/* As they stand, if all the lines are of the formula's sort. */
static struct span alike_span(const struct items *items, const int *to, int at,
			      const struct item *formula)
{
	struct span sum = {.known = false};
	if (formula->amount.sort == AMOUNT_UNKNOWN || formula->amount.most <= 0)
		return sum;
	for (size_t i = 0; i < items->recipe->lines_n; i++) {
		const struct amount *amount = &items->item[i].amount;
		if (to[i] != at)
			continue;
		if (!amount_alike(amount, &formula->amount))
			return (struct span){.known = false};
		sum.known = true;
		sum.least += amount->least / formula->amount.least;
		sum.most += amount->most / formula->amount.most;
	}
	return sum;
}

static struct span grams_span(const struct items *items, const int *to, int at,
			      const struct item *formula)
{
	struct span sum = {.known = false};
	if (!formula->grams.known || formula->grams.least <= 0)
		return sum;
	for (size_t i = 0; i < items->recipe->lines_n; i++) {
		if (to[i] != at)
			continue;
		const struct grams *grams = item_grams(items, i);
		if (!grams->known)
			return (struct span){.known = false};
		sum.known = true;
		sum.least += grams->least / formula->grams.most;
		sum.most += grams->most / formula->grams.least;
	}
	return sum;
}

struct span span_of(const struct items *items, const int *to, int at, const struct item *formula)
{
	struct span span = alike_span(items, to, at, formula);
	return span.known ? span : grams_span(items, to, at, formula);
}

struct span span_divide(struct span a, struct span b)
{
	if (!a.known || !b.known || b.least <= 0)
		return (struct span){.known = false};
	return (struct span){true, a.least / b.most, a.most / b.least};
}
