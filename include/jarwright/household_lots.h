/*
 * Lots: what a supplier's code identifies, a carton of lids or a jug of vinegar. They go into
 * batches, and a recall finds them there. Conventions as in household_canners.h.
 */
#ifndef JARWRIGHT_HOUSEHOLD_LOTS_H
#define JARWRIGHT_HOUSEHOLD_LOTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/household_canners.h"
#include "jarwright/instant.h"

#define LOT_TEXT_MAX 127 /* bytes of a name, a supplier or a code */

/* The words a lot's kind may be; the last is NULL. */
extern const char *const lot_kinds[];
const char *lot_kind_find(const char *word); /* of lot_kinds[], or NULL */

struct lot {
	const char *kind; /* of lot_kinds[] */
	char name[LOT_TEXT_MAX + 1];
	char supplier[LOT_TEXT_MAX + 1]; /* "" not said */
	char code[LOT_TEXT_MAX + 1];     /* as printed on the carton; "" not said */
	char dated[DATE_SIZE];           /* the date on the pack: "2026-06-01"; "" not said */
	int32_t strength_mpct;           /* of vinegar, thousandths of a percent; 0: not said */
	/* Not written by hand: */
	char mark[MARK_SIZE];
	bool finished;
	size_t batches_n; /* batches it went into */
};

struct lots {
	struct lot *items; /* by kind, then name; released with lots_release() */
	size_t n;
};

/* A batch that a lot went into. */
struct lot_batch {
	char code[32]; /* "26-041" */
	char day[DATE_SIZE];
	char title[256];
	int jars;
};
struct lot_batches {
	struct lot_batch *items; /* by day; released with lot_batches_release() */
	size_t n;
};

/* No file has no lots. Finished ones only with `all`. */
bool household_lots(struct household *db, bool all, struct lots *out, struct error *err);
void lots_release(struct lots *lots);
/* By name or by the supplier's code; one in use before one that is finished. */
bool household_lot(struct household *db, const char *name, struct lot *out,
		   struct lot_batches *batches, struct error *err);
void lot_batches_release(struct lot_batches *batches);

/* Refuses a name that a lot in use has already. */
bool household_add_lot(struct household *db, const struct lot *lot, struct instant at,
		       struct lot *now, struct error *err);
/* What is NULL or 0 stays. */
struct lot_change {
	const char *kind, *name, *supplier, *code, *dated;
	int32_t strength_mpct;
};
bool household_change_lot(struct household *db, const char *name, const struct lot_change *change,
			  struct instant at, struct lot *now, struct error *err);
bool household_finish_lot(struct household *db, const char *name, struct instant at,
			  struct lot *now, struct error *err);

#endif
