/* The units that quantities are given in. Used in this folder only. */
#ifndef JARWRIGHT_MEASURE_UNITS_H
#define JARWRIGHT_MEASURE_UNITS_H

#include "jarwright/measure.h"

/* One of this unit is `factor` base units, counted from `offset` base units. */
struct unit {
	const char *names; /* lower case, '|' before, between and after */
	struct rational factor;
	struct rational offset;
};

struct unit_family {
	const char *noun;      /* "a length" */
	const char *suffix[2]; /* the two units a message offers, as written behind a number */
	const struct unit *units;
	size_t units_n;
};

const struct unit_family *unit_family(enum dimension dimension);

/* Longest unit understood, in bytes. */
#define UNIT_NAME_MAX 32

/*
 * The unit written as text, or NULL. Upper and lower case, surplus blanks and the point
 * of an abbreviation ("lb.", "fl. oz.") do not matter.
 */
const struct unit *unit_find(const struct unit_family *family, const char *text);

/* Is this a kitchen measure that holds more in one country than in another? */
bool unit_differs_by_country(const char *text);

#endif
