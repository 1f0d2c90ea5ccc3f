/* The two answers of one size, against bare SQL that gives the same rows. */
#include <stdio.h>

#include "bench_log.h"
#include "jarwright/household_jars.h"
#include "jarwright/household_recalls.h"

#define RUNS 41

static const char recall_sql[] =
    "WITH RECURSIVE touched (batch, number) AS (SELECT jar.batch, jar.number FROM batch_lot JOIN "
    "jar "
    "ON jar.batch = batch_lot.batch WHERE batch_lot.lot = ?1 UNION SELECT later.batch, "
    "later.number "
    "FROM touched JOIN batch_from ON batch_from.from_batch = touched.batch AND "
    "batch_from.from_number = touched.number JOIN jar AS later ON later.batch = batch_from.batch) "
    "SELECT jar.batch, batch.year, batch.number, jar.number, batch.title, batch.day, jar.size, "
    "jar.state, jar.place, jar.since_ms FROM touched CROSS JOIN jar ON jar.batch = touched.batch "
    "AND "
    "jar.number = touched.number JOIN batch ON batch.id = jar.batch ORDER BY 1, 4";

/* Without the later batches that jars went into, which the program looks for too. */
static const char plain_recall_sql[] =
    "SELECT jar.batch, batch.year, batch.number, jar.number, batch.title, batch.day, jar.size, "
    "jar.state, jar.place, jar.since_ms FROM batch_lot JOIN batch ON batch.id = batch_lot.batch "
    "JOIN "
    "jar ON jar.batch = batch.id WHERE batch_lot.lot = ?1 ORDER BY 1, 4";

static const char shelf_sql[] =
    "SELECT jar.batch, jar.number, jar.size, jar.load, jar.state, jar.place, jar.since_ms, "
    "jar.sealed, jar.late, batch.year, batch.number, batch.title, batch.food, batch.day, "
    "batch.keep = 'shelf' AND batch.held = 0, event.uuid, load.out_ms, load.outcome, EXISTS "
    "(SELECT "
    "1 FROM recall_jar JOIN recall ON recall.id = recall_jar.recall WHERE recall_jar.batch = "
    "jar.batch AND recall_jar.number = jar.number AND disposition IS NULL AND closed_ms IS NULL) "
    "FROM jar INDEXED BY jar_here JOIN batch ON batch.id = jar.batch JOIN event ON event.id = "
    "batch.id JOIN load ON load.batch = jar.batch AND load.number = jar.load WHERE jar.gone = 0 "
    "ORDER BY jar.batch, jar.number";

/* Reads every column of every row; how many rows. */
static int read_all(sqlite3_stmt *query)
{
	int rows = 0;
	static volatile unsigned char sink;
	while (sqlite3_step(query) == SQLITE_ROW) {
		for (int i = 0; i < sqlite3_column_count(query); i++) {
			const unsigned char *text = sqlite3_column_text(query, i);
			sink = text ? text[0] : 0;
		}
		rows++;
	}
	sqlite3_reset(query);
	(void)sink;
	return rows;
}

static void check_rows(const char *what, int ours, int bare, int expected)
{
	char why[96];
	snprintf(why, sizeof why, "%d rows against %d of bare SQL, %d expected", ours, bare,
		 expected);
	if (ours != bare || bare != expected)
		bench_abort(what, why);
}

struct bench_pair bench_recall(struct household *db, sqlite3 *bare, bool later)
{
	double ours[RUNS], theirs[RUNS];
	const struct fault fault = {.kind = FAULT_LOT, .subject = LOT_EVENT, .to_ms = INT64_MAX};
	sqlite3_stmt *query = bench_prepare(bare, later ? recall_sql : plain_recall_sql);
	for (int i = 0; i < RUNS; i++) {
		struct touched_jars jars;
		struct error err = {0};
		double start = bench_seconds();
		if (!household_touched(db, &fault, &jars, &err))
			bench_abort("recall", err.text);
		ours[i] = bench_seconds() - start;
		int n = (int)jars.jars_n;
		touched_jars_release(&jars);
		start = bench_seconds();
		sqlite3_bind_int(query, 1, LOT_EVENT);
		int rows = read_all(query);
		theirs[i] = bench_seconds() - start;
		check_rows("recall", n, rows, LOT_BATCHES * JARS_A_BATCH);
	}
	sqlite3_finalize(query);
	return (struct bench_pair){bench_median(ours, RUNS), bench_median(theirs, RUNS)};
}

struct bench_pair bench_shelf(struct household *db, sqlite3 *bare)
{
	double ours[RUNS], theirs[RUNS];
	const struct shelf_filter filter = {.before_day = INT64_MAX};
	sqlite3_stmt *query = bench_prepare(bare, shelf_sql);
	for (int i = 0; i < RUNS; i++) {
		struct jar_groups groups;
		struct error err = {0};
		double start = bench_seconds();
		if (!household_shelf(db, &filter, &groups, &err))
			bench_abort("shelf", err.text);
		ours[i] = bench_seconds() - start;
		int n = 0;
		for (size_t k = 0; k < groups.groups_n; k++)
			n += (int)jar_set_count(&groups.groups[k].jars);
		jar_groups_release(&groups);
		start = bench_seconds();
		int rows = read_all(query);
		theirs[i] = bench_seconds() - start;
		check_rows("shelf", n, rows, JARS_HERE);
	}
	sqlite3_finalize(query);
	return (struct bench_pair){bench_median(ours, RUNS), bench_median(theirs, RUNS)};
}
