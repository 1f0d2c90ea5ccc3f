#include "jarwright/keeping.h"

#include <stdio.h>
#include <string.h>

/* Which rows speak of a case. */
struct place {
	const char *food_class, *where;
};
#define PLACES_MAX 3
static const struct place cases[KEEPING_CASES][PLACES_MAX] = {
    [KEEPING_SHELF] = {{"home-canned food, any", "shelf, unopened"}},
    [KEEPING_OPENED] = {{"home-canned food, opened", "refrigerator"}},
    [KEEPING_LID_FAILED] = {{"any home-canned jar, lid failed", "refrigerator"},
			    {"any home-canned jar, lid failed, tested recipe followed",
			     "refrigerator"}},
    [KEEPING_FROZEN] = {{"any home-canned jar, lid failed, tested recipe followed", "freezer"}},
    [KEEPING_FAILED_HOURS] = {{"any home-canned jar, lid failed", "reprocess within"},
			      {"any home-canned jar, lid failed, correctly processed",
			       "reprocess within"},
			      {"any home-canned jar, lid failed, older than 24 h", "discard"}},
    [KEEPING_WRONG_HOURS] = {{"any home-canned jar, wrongly processed (time, temperature or "
			      "method)",
			      "reprocess within"}},
    [KEEPING_COOLING] = {{"any home-canned jar", "counter, cool undisturbed before seal test"}},
    [KEEPING_BOIL] = {{"pre-use boil of home-canned low-acid food", "stove"}},
};

static const char *const units[] = {"minute", "hour", "day", "week", "month"};

static bool take_number(const char **at, int *out)
{
	const char *start = *at;
	*out = 0;
	for (; **at >= '0' && **at <= '9' && *out < 10000; (*at)++)
		*out = *out * 10 + (**at - '0');
	return *at > start;
}

/* "3-4" and "days", "1" and "year (can no more ...)". */
static bool read_row(const struct keeping_row *row, struct keeping_limit *out)
{
	const char *at = row->time;
	if (!take_number(&at, &out->least))
		return false;
	out->most = out->least;
	if (*at == '-' && (at++, !take_number(&at, &out->most)))
		return false;
	if (*at != '\0' || out->most < out->least)
		return false;
	out->from = &row->from;
	for (size_t i = 0; i < sizeof units / sizeof *units; i++)
		if (strncmp(row->unit, units[i], strlen(units[i])) == 0) {
			out->unit = (enum keeping_unit)i;
			return true;
		}
	if (strncmp(row->unit, "year", 4) != 0)
		return false;
	out->unit = KEEPING_MONTHS;
	out->least *= 12;
	out->most *= 12;
	return true;
}

/* In minutes, to compare: a month counts 28 days, so that it is never the longer by rounding. */
static int64_t minutes(const struct keeping_limit *limit)
{
	static const int64_t each[] = {1, 60, 1440, 10080, 40320};
	return limit->least * each[limit->unit];
}

static void shorten(const struct reference_tables *tables, const struct place *place, bool *found,
		    struct keeping_limit *out)
{
	for (size_t i = 0; i < tables->keeping_n; i++) {
		const struct keeping_row *row = &tables->keeping[i];
		struct keeping_limit limit;
		if (strcmp(row->food_class, place->food_class) != 0 ||
		    strcmp(row->place, place->where) != 0 || !read_row(row, &limit))
			continue;
		if (!*found || minutes(&limit) < minutes(out))
			*out = limit;
		*found = true;
	}
}

/* The freezer's row for a kind of food; what may hold meat or fish keeps as short as they do. */
static struct place frozen_kind(const char *kind)
{
	static const char *const plants[] = {"vegetable", "fruit",  "relish",  "jelly", "salsa",
					     "jam",       "pickle", "chutney", "juice", "tomato",
					     "fermented", "puree",  "butter",  "syrup"};
	for (size_t i = 0; kind && i < sizeof plants / sizeof *plants; i++)
		if (strcmp(kind, plants[i]) == 0)
			return (struct place){"fruits and vegetables", "freezer"};
	if (kind && strcmp(kind, "poultry") == 0)
		return (struct place){"poultry", "freezer"};
	if (kind && strcmp(kind, "seafood") == 0)
		return (struct place){"fish", "freezer"};
	return (struct place){"ground meat", "freezer"};
}

bool keeping_find(const struct reference *ref, const struct reference_tables *tables,
		  enum keeping_case which, const char *food, struct keeping_limit *out)
{
	static const struct place mango = {"mango sauce, canned", "shelf, best within"};
	const struct food *known = food ? reference_food(ref, food) : NULL;
	bool found = false;
	*out = (struct keeping_limit){0};
	for (size_t i = 0; i < PLACES_MAX && cases[which][i].food_class; i++)
		shorten(tables, &cases[which][i], &found, out);
	if (which == KEEPING_SHELF && known && strcmp(known->slug, "mango-sauce") == 0)
		shorten(tables, &mango, &found, out);
	if (which == KEEPING_FROZEN) {
		const struct place kind = frozen_kind(known ? known->kind : NULL);
		shorten(tables, &kind, &found, out);
	}
	return found;
}

struct date keeping_until(const struct keeping_limit *limit, struct date day)
{
	switch (limit->unit) {
	case KEEPING_MONTHS:
		return date_add_months(day, limit->least);
	case KEEPING_WEEKS:
		return date_from_days(date_days(day) + (int64_t)7 * limit->least);
	case KEEPING_DAYS:
		return date_from_days(date_days(day) + limit->least);
	case KEEPING_MINUTES:
	case KEEPING_HOURS:
		break;
	}
	return day;
}

char *keeping_words(const struct keeping_limit *limit, char buffer[static KEEPING_WORDS_SIZE])
{
	char span[16];
	if (limit->most > limit->least)
		snprintf(span, sizeof span, "%d-%d", limit->least, limit->most);
	else
		snprintf(span, sizeof span, "%d", limit->least);
	snprintf(buffer, KEEPING_WORDS_SIZE, "%.15s %s%s", span, units[limit->unit],
		 limit->most == 1 ? "" : "s");
	return buffer;
}
