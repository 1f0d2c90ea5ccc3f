/* The oracle's answers: find the table, the covering jar, the band; then the plain limits. */
#include <limits.h>
#include <string.h>

#include "oracle.h"
#include "oracle_tables.h"

/* Oklahoma State University Extension: 45 minutes in all, whatever the elevation. */
enum { STEAM_MINUTES_MAX = 45 };
/* Iowa State University Extension names half-pint, pint and quart for steam, no other. */
static const char steam_smallest[] = "half-pint";
static const char steam_largest[] = "quart";

static bool same(const char *a, const char *b)
{
	return strcmp(a, b) == 0;
}

static int fl_oz(const struct oracle *oracle, const char *jar)
{
	for (size_t i = 0; i < oracle->jars_n; i++)
		if (same(oracle->jars[i].name, jar))
			return oracle->jars[i].fl_oz;
	return 0;
}

static const struct oracle_food *find_food(const struct oracle *oracle, const char *slug)
{
	for (size_t i = 0; i < oracle->foods_n; i++)
		if (same(oracle->foods[i].slug, slug))
			return &oracle->foods[i];
	return NULL;
}

/*
 * The one table for this food, pack and canner. A pack not stated is settled by there
 * being only one table; a table that does not say its pack answers nothing else.
 */
static const struct oracle_table *find_table(const struct oracle *oracle, const char *food,
					     const char *pack, const char *canner)
{
	const struct oracle_table *found = NULL;
	for (size_t i = 0; i < oracle->tables_n; i++) {
		const struct oracle_table *table = &oracle->tables[i];
		if (!same(table->food, food) || !same(table->canner, canner))
			continue;
		if (!same(pack, "unstated") && !same(table->pack, pack))
			continue;
		if (found)
			return NULL;
		found = table;
	}
	return found;
}

/* Fluid ounces of the smallest jar of the table that is not below this one; 0: none. */
static int covering_jar(const struct oracle *oracle, const struct oracle_table *table, int oz)
{
	int smallest = INT_MAX;
	for (int i = 0; i < table->lines_n; i++) {
		int line_oz = fl_oz(oracle, table->lines[i].jar);
		if (line_oz >= oz && line_oz < smallest)
			smallest = line_oz;
	}
	return smallest == INT_MAX ? 0 : smallest;
}

static void fill_bands(const struct oracle *oracle, const struct oracle_table *table,
		       struct oracle_case *out)
{
	for (int b = 0; b < table->bands_n; b++) {
		struct oracle_band *band = &out->bands[b];
		band->from_ft = table->from_ft[b];
		band->to_ft = table->to_ft[b] == ORACLE_OPEN ? ORACLE_HIGHEST_FT : table->to_ft[b];
		for (int i = 0; i < table->lines_n; i++) {
			const struct oracle_line *line = &table->lines[i];
			if (fl_oz(oracle, line->jar) == out->covering_fl_oz &&
			    line->cells[b].minutes > 0 && band->published_n < ORACLE_CHOICES_MAX)
				band->published[band->published_n++] = line->cells[b];
		}
	}
	out->bands_n = table->bands_n;
}

/*
 * USDA AIB 539 (2015) guide 1, p. 1-30: sweet spreads take 5 minutes plus 1 for each
 * 1,000 ft. Where a food's own table differs, the longer counts. A line that starts at
 * 10 minutes or more was not made by that rule.
 */
static bool takes_sweet_rule(const struct oracle_food *food, const struct oracle_case *which)
{
	bool spread =
	    same(food->kind, "jam") || same(food->kind, "jelly") || same(food->kind, "butter");
	return spread && !which->pressure && which->bands_n > 0 &&
	       which->bands[0].published_n > 0 && which->bands[0].published[0].minutes < 10;
}

/* Strikes the times that a steam canner cannot hold; none are left for a wrong jar or food. */
static void limit_to_steam(const struct oracle *oracle, const struct oracle_food *food,
			   struct oracle_case *out)
{
	bool acid = same(food->acid, "high") || same(food->acid, "acidified");
	if (!acid || out->jar_fl_oz < fl_oz(oracle, steam_smallest) ||
	    out->jar_fl_oz > fl_oz(oracle, steam_largest))
		out->bands_n = 0;
	for (int b = 0; b < out->bands_n; b++)
		if (out->bands[b].published_n > 0 &&
		    out->bands[b].published[0].minutes > STEAM_MINUTES_MAX)
			out->bands[b].published_n = 0;
}

bool oracle_find(const struct oracle *oracle, const char *food_slug, const char *pack,
		 const char *canner, const char *jar, struct oracle_case *out)
{
	memset(out, 0, sizeof *out);
	const struct oracle_food *food = find_food(oracle, food_slug);
	out->jar_fl_oz = fl_oz(oracle, jar);
	if (!food || out->jar_fl_oz == 0)
		return false;
	bool steam = same(canner, "steam");
	out->pressure = same(canner, "dial-gauge") || same(canner, "weighted-gauge");
	out->low_acid = same(food->acid, "low");
	if (same(food->acid, "") || (out->low_acid && !out->pressure))
		return true;
	const struct oracle_table *table =
	    find_table(oracle, food_slug, pack, steam ? "boiling-water" : canner);
	if (!table)
		return true;
	out->covering_fl_oz = covering_jar(oracle, table, out->jar_fl_oz);
	if (out->covering_fl_oz == 0)
		return true;
	fill_bands(oracle, table, out);
	out->sweet_rule = takes_sweet_rule(food, out);
	if (steam)
		limit_to_steam(oracle, food, out);
	return true;
}

const struct oracle_band *oracle_band(const struct oracle_case *which, int foot)
{
	for (int b = 0; b < which->bands_n; b++)
		if (foot >= which->bands[b].from_ft && foot <= which->bands[b].to_ft)
			return &which->bands[b];
	return NULL;
}

struct oracle_answer oracle_answer(const struct oracle_case *which, int foot)
{
	const struct oracle_band *band = oracle_band(which, foot);
	if (!band || band->published_n == 0)
		return (struct oracle_answer){0};
	struct oracle_answer answer = band->published[0];
	int sweet = 5 + (foot + 999) / 1000;
	if (which->sweet_rule && sweet > answer.minutes)
		answer.minutes = sweet;
	return answer;
}

size_t oracle_foods(const struct oracle *oracle)
{
	return oracle->foods_n;
}
