/*
 * How long a jar keeps: the published times of the relation "keeping", as figures.
 *
 * Where publications differ the shorter time counts, and of a range its lower end; a time that
 * is only words ("several days") is no figure. Times are for quality but for the hours within
 * which a jar that failed must be chilled.
 */
#ifndef JARWRIGHT_KEEPING_H
#define JARWRIGHT_KEEPING_H

#include <stdbool.h>

#include "jarwright/instant.h"
#include "jarwright/reference.h"
#include "jarwright/reference_tables.h"

enum keeping_case {
	KEEPING_SHELF,        /* home-canned, sealed, unopened */
	KEEPING_OPENED,       /* home-canned, opened, in the refrigerator */
	KEEPING_LID_FAILED,   /* chilled after its lid failed */
	KEEPING_FROZEN,       /* of the food's kind */
	KEEPING_FAILED_HOURS, /* from the canner to the cold or the canner again: the lid failed */
	KEEPING_WRONG_HOURS,  /* the same: the time, temperature or method was wrong */
	KEEPING_COOLING,      /* from the canner to the test of the seal */
	KEEPING_BOIL,         /* low-acid food before it is tasted, minutes */
	KEEPING_CASES
};

enum keeping_unit { KEEPING_MINUTES, KEEPING_HOURS, KEEPING_DAYS, KEEPING_WEEKS, KEEPING_MONTHS };

struct keeping_limit {
	int least, most; /* the ends of the range; the same where there is one figure */
	enum keeping_unit unit;
	const struct citation *from;
};

/*
 * food: slug of the reference, or NULL: not known, and the shortest of its case counts. False:
 * nothing published has a figure.
 */
bool keeping_find(const struct reference *ref, const struct reference_tables *tables,
		  enum keeping_case which, const char *food, struct keeping_limit *out);
/* The last day: `least` after `day`. For days, weeks and months. */
struct date keeping_until(const struct keeping_limit *limit, struct date day);

#define KEEPING_WORDS_SIZE 32
/* "12 months", "3-4 days". */
char *keeping_words(const struct keeping_limit *limit, char buffer[static KEEPING_WORDS_SIZE]);

#endif
