/* The rows of the kitchen measures, by unit and system. */
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "jarwright/words.h"

/*
 * The systems of db/measures.txt that make up each of ours, the first that has the unit
 * counting. Left out on purpose: the rounded kitchen table, which contradicts itself, and the
 * nutrition labels of the US, which no cook measures by. Britain and metric countries use
 * the same metric spoons.
 */
static const char *const row_systems[SYSTEM_COUNT] = {
    [SYSTEM_UNSTATED] = "",
    [SYSTEM_US] = "|US customary|US customary (liquid)|US customary (dry)|",
    [SYSTEM_IMPERIAL] = "|Imperial (UK)|UK metric kitchen|",
    [SYSTEM_CANADA] = "|Canadian|Canadian (food labels)|Canadian (kitchen)|",
    [SYSTEM_AUSTRALIA] = "|Australian metric|",
    [SYSTEM_NEW_ZEALAND] = "|New Zealand|",
    [SYSTEM_METRIC] = "|metric|UK metric kitchen|",
};

/* What the rows call each unit. Gram and kilogram have none. */
static const char *const row_units[KITCHEN_UNIT_COUNT] = {
    [UNIT_GALLON] = "|gallon|",
    [UNIT_QUART] = "|quart|",
    [UNIT_PINT] = "|pint|",
    [UNIT_CUP] = "|cup|cup (half pint)|",
    [UNIT_GILL] = "|gill|",
    [UNIT_FLUID_OUNCE] = "|fluid ounce|",
    [UNIT_TABLESPOON] = "|tablespoon|",
    [UNIT_DESSERTSPOON] = "|dessertspoon|",
    [UNIT_TEASPOON] = "|teaspoon|",
    [UNIT_BUSHEL] = "|bushel|",
    [UNIT_PECK] = "|peck|",
    [UNIT_DRY_QUART] = "|dry quart|",
    [UNIT_DRY_PINT] = "|dry pint|",
    [UNIT_LITRE] = "|litre|",
    [UNIT_DECILITRE] = "|decilitre|",
    [UNIT_CENTILITRE] = "|centilitre|",
    [UNIT_MILLILITRE] = "|millilitre|",
    [UNIT_POUND] = "|pound|",
    [UNIT_OUNCE] = "|ounce|",
    [UNIT_STICK_OF_BUTTER] = "|stick of butter|",
    [UNIT_KILOGRAM] = "",
    [UNIT_GRAM] = "",
};

static bool is_metric(enum kitchen_unit unit)
{
	return unit >= UNIT_LITRE && unit <= UNIT_MILLILITRE;
}

/* A pound and an ounce are the same wherever they are used; only some laws are in the rows. */
static bool is_avoirdupois(enum kitchen_unit unit)
{
	return unit == UNIT_POUND || unit == UNIT_OUNCE;
}

static bool is_entry(const char *list, const char *text)
{
	const char *item;
	size_t n, length = strlen(text);
	while (words_next(&list, &item, &n))
		if (n == length && memcmp(item, text, n) == 0)
			return true;
	return false;
}

static const struct measure_row *find_row(const struct reference_tables *tables,
					  enum kitchen_unit unit, enum measuring_system system)
{
	const char *list = row_systems[system], *name;
	size_t n;
	while (words_next(&list, &name, &n)) {
		for (size_t i = 0; i < tables->measure_n; i++) {
			const struct measure_row *row = &tables->measure[i];
			if (strlen(row->system) == n && memcmp(row->system, name, n) == 0 &&
			    is_entry(row_units[unit], row->unit))
				return row;
		}
	}
	return NULL;
}

static bool find_in_system(const struct reference_tables *tables, enum kitchen_unit unit,
			   enum measuring_system system, struct kitchen_measure *out)
{
	struct error ignored;
	*out = (struct kitchen_measure){.unit = unit, .system = system, .exact = true};
	if (unit == UNIT_GRAM || unit == UNIT_KILOGRAM) {
		out->amount = (struct rational){unit == UNIT_GRAM ? 1 : 1000, 1};
		return true;
	}
	enum measuring_system where = is_metric(unit) ? SYSTEM_METRIC : system;
	out->row = find_row(tables, unit, where);
	if (out->row == NULL && is_avoirdupois(unit) && system != SYSTEM_METRIC)
		out->row = find_row(tables, unit, SYSTEM_US);
	if (out->row == NULL)
		return false;
	out->exact = strcmp(out->row->exact, "yes") == 0;
	return rational_parse(out->row->ml_or_g, &out->amount, &ignored);
}

bool kitchen_measure_find(const struct reference_tables *tables, enum kitchen_unit unit,
			  enum measuring_system system, struct kitchen_measure *out)
{
	struct kitchen_measure all[SYSTEM_COUNT];
	bool differ;
	if (system != SYSTEM_UNSTATED)
		return find_in_system(tables, unit, system, out);
	if (kitchen_measure_all(tables, unit, all, &differ) == 0 || differ)
		return false;
	*out = all[0];
	return true;
}

size_t kitchen_measure_all(const struct reference_tables *tables, enum kitchen_unit unit,
			   struct kitchen_measure out[static SYSTEM_COUNT], bool *differ)
{
	size_t n = 0;
	*differ = false;
	for (int i = SYSTEM_UNSTATED + 1; i < SYSTEM_COUNT; i++) {
		if (!find_in_system(tables, unit, (enum measuring_system)i, &out[n]))
			continue;
		if (rational_compare(out[n].amount, out[0].amount) != 0)
			*differ = true;
		n++;
	}
	return n;
}
