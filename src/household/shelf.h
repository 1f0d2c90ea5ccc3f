/* The reading of jars into groups: what the sources of shelf, history and due share. */
#ifndef JARWRIGHT_HOUSEHOLD_SHELF_H
#define JARWRIGHT_HOUSEHOLD_SHELF_H

#include "jarwright/household_jars.h"
#include "store.h"

#define SHELF_COLUMNS "batch, number, size, load, state, place, since_ms, sealed, late"
/* INDEXED BY: without the index this would grow with the jars that are gone. */
#define SHELF_HERE                                                                                 \
	"SELECT " SHELF_COLUMNS " FROM jar INDEXED BY jar_here WHERE gone = 0 ORDER BY batch, "    \
	"number"

/*
 * Of a load and its batch: was it processed as decided, and does its gauge not speak against it?
 * A gauge is judged by the worse of the tests before and after the load, as when a load is logged;
 * one that was found bad later takes what it showed off the shelf, until the load is corrected.
 * A date reaches no further ahead of UTC than 14 hours: so no test after the load's day counts
 * as one before it that hides the next. ?3: the error above which a gauge counts for nothing,
 * thousandths of a psi.
 */
#define SHELF_DAY " date(load.out_ms / 1000 + 50400, 'unixepoch') "
#define SHELF_PROCESSED                                                                            \
	"load.outcome = 'processed' AND batch.keep = 'shelf' AND batch.held = 0 AND NOT EXISTS "   \
	"(SELECT 1 FROM gauge_test AS test WHERE batch.canner_kind = 'dial-gauge' AND "            \
	"test.canner = load.canner AND (test.error_mpsi > ?3 OR coalesce(load.low_mpsi, 0) - "     \
	"max(test.high_mpsi, 0) < batch.psi * 1000) AND (test.id = (SELECT id FROM gauge_test "    \
	"WHERE canner = load.canner AND tested <=" SHELF_DAY "ORDER BY tested DESC, id DESC "      \
	"LIMIT 1) OR test.id = (SELECT id FROM gauge_test WHERE canner = load.canner AND "         \
	"tested >" SHELF_DAY "ORDER BY tested, id LIMIT 1)))"
/* What ?3 is to be. */
int shelf_gauge_limit(void);

/* The id of the batch that a pick is of; that there is none is a usage error. */
bool shelf_find_pick(struct household *db, const struct jar_pick *pick, int64_t *batch,
		     struct error *err);

struct shelf_batch {
	int64_t id;
	uint8_t uuid[16];
	char code[JAR_CODE_SIZE];
	char title[JAR_TITLE_SIZE];
	char food[64];
	struct date day;
	bool for_shelf;
	struct jar_set recalled;
};
bool shelf_batch_read(struct household *db, int64_t batch, struct shelf_batch *out,
		      struct error *err);
/* Adds a jar of SHELF_COLUMNS to a group of its batch, whose groups begin at `first`. */
bool shelf_add_row(struct household *db, sqlite3_stmt *query, const struct shelf_batch *batch,
		   size_t first, struct jar_groups *out, struct error *err);

#endif
