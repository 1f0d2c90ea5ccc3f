/*
 * A year of the household file in figures: what was put up, which seals failed, the time at the
 * canner, what became of the jars, recalls. Reading a file that does not exist finds nothing.
 *
 * A jar belongs to the year and month of its batch's day; it leaves in the year of the moment at
 * which it was eaten, given or discarded. A count is >= 0 throughout.
 */
#ifndef JARWRIGHT_HOUSEHOLD_REPORT_H
#define JARWRIGHT_HOUSEHOLD_REPORT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"

#define REPORT_MONTHS    12
#define REPORT_NAME_SIZE 512
#define REPORT_SIZE_SIZE 32

/* One food: her recipe by its name, else a food of the tables by its title, else the batch's. */
struct report_food {
	char food[REPORT_NAME_SIZE];
	int put_up[REPORT_MONTHS]; /* jars, by the month of the batch */
	int eaten, given;          /* jars of whatever year, in this one */
	int lost;                  /* discarded, likewise */
	int left;                  /* jars here at the end of the year, or now if it is not over */
};

struct report_size {
	char size[REPORT_SIZE_SIZE]; /* "pint" */
	int jars;                    /* put up */
};

enum report_lids {
	REPORT_ONE_LOT,
	REPORT_SEVERAL_LOTS, /* the lids of a batch came from more than one lot */
	REPORT_NO_LOT,       /* no lot was said */
};
/*
 * Jars of the year's batches whose seal was tested. Failed: at any test, or found open later; one
 * that sealed when it was processed again counts as failed.
 */
struct report_lot {
	enum report_lids lids;
	char lot[REPORT_NAME_SIZE];   /* her name for it; "" without one lot */
	char code[REPORT_NAME_SIZE];  /* on the carton; "" */
	char maker[REPORT_NAME_SIZE]; /* or shop; "" */
	int sealed, failed;
	int64_t id; /* in the file; 0 without one lot */
};
/*
 * Jars tested below which a rate of failure is not given: one jar more or less would change it
 * by more than three in a hundred. Ours, not published.
 */
#define REPORT_FEW 30

struct report_recall {
	char what[REPORT_NAME_SIZE];
	struct instant opened;
	bool closed;
	int jars, open; /* named by it; of those, without a disposition */
};

struct report_year {
	int year;
	struct report_food *foods; /* by name */
	size_t foods_n;
	struct report_size *sizes; /* most jars first */
	size_t sizes_n;
	struct report_lot *lots; /* by name; those of no one lot last */
	size_t lots_n;
	struct report_recall *recalls; /* opened in the year, or open in it */
	size_t recalls_n;
	int batches[REPORT_MONTHS];
	int minutes[REPORT_MONTHS]; /* at the canner: from the start of timing until jars are out */
	int loads;                  /* in a canner */
	int loads_untimed;          /* of those, without an end: not in `minutes` */
	const char *edition;        /* the caller's; NULL until it is set */
};

/* from_ms, to_ms: the year's beginning and end where she is. *out is to be released. */
bool household_report(struct household *db, int year, int64_t from_ms, int64_t to_ms,
		      struct report_year *out, struct error *err);
void report_year_release(struct report_year *report);

/* Failed jars of a hundred tested. False: fewer than REPORT_FEW were. */
bool report_failure_rate(const struct report_lot *lot, double *of_hundred);

#endif
