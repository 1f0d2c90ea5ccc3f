/*
 * The canners of the kitchen and the tests of their gauges, as the log keeps them. A canner is
 * never forgotten: one that is retired stays for the batches it made.
 *
 * Names are found but for the case of A to Z; where several have one name, as after two devices
 * were merged, the "@1a2b3c" of canner_record.mark tells them apart. Each function that writes
 * is one transaction; a name that is not there, or an entry that makes no sense, is a usage error.
 */
#ifndef JARWRIGHT_HOUSEHOLD_CANNERS_H
#define JARWRIGHT_HOUSEHOLD_CANNERS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"

#define MARK_SIZE          8     /* "@1a2b3c" */
#define GAUGE_READINGS_MAX 16    /* in one test */
#define GAUGE_READING_MAX  30000 /* thousandths of a psi; home canners have none above */

struct gauge_test {
	char tested[DATE_SIZE]; /* "2026-06-01" */
	/* Thousandths of a psi above the master at worst, below 0: low everywhere; and the greatest
	 * error either way. */
	int32_t high_mpsi, error_mpsi;
};

struct canner_record {
	char mark[MARK_SIZE];
	struct kitchen_canner canner;
	bool retired;
	size_t tests_n;
	struct gauge_test last; /* by date; if tests_n > 0 */
};

struct canner_records {
	struct canner_record *items; /* by name; released with canner_records_release() */
	size_t n;
};

/* No file has no canners. Retired ones only with `all`. */
bool household_canner_records(struct household *db, bool all, struct canner_records *out,
			      struct error *err);
void canner_records_release(struct canner_records *records);
bool household_canner(struct household *db, const char *name, struct canner_record *out,
		      struct error *err);

/* What changes of a canner. */
struct canner_change {
	const char *name;                                         /* NULL: stays */
	const enum canner *kind;                                  /* NULL: stays */
	const int *holds_quarts, *holds_pints, *holds_half_pints; /* NULL: stays; 0: not known */
};

/* Refuses a name that a canner in use has already, and more than KITCHEN_CANNERS_MAX. */
bool household_add_canner(struct household *db, const struct kitchen_canner *canner,
			  struct instant at, struct canner_record *now, struct error *err);
bool household_change_canner(struct household *db, const char *name,
			     const struct canner_change *change, struct instant at,
			     struct canner_record *now, struct error *err);
bool household_retire_canner(struct household *db, const char *name, struct instant at,
			     struct canner_record *now, struct error *err);

struct gauge_reading {
	int32_t gauge_mpsi, master_mpsi; /* thousandths of a psi, 0 to GAUGE_READING_MAX */
};
/* Only a canner with a dial gauge has one to test. */
bool household_test_gauge(struct household *db, const char *name, struct date tested,
			  const struct gauge_reading *readings, size_t readings_n,
			  struct instant at, struct canner_record *now, struct error *err);

#endif
