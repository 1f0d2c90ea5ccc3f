/*
 * The bench of the household log. Files of 10,000 and of 1,000,000 batches with ten jars each are
 * made straight in the tables, with events; both have one lot in 120 batches and 2,000 jars that
 * are still here, so that the answers are of one size. All data is invented.
 */
#ifndef JARWRIGHT_TESTS_BENCH_LOG_H
#define JARWRIGHT_TESTS_BENCH_LOG_H

#include <sqlite3.h>
#include <stdbool.h>
#include <stdint.h>

#include "jarwright/household.h"

#define JARS_A_BATCH 10
#define LOT_BATCHES  120
#define JARS_HERE    2000
/* Events of the file in the order of their ids: lots, a canner, then three of each batch. */
#define LOTS               100
#define CANNER_EVENT       (LOTS + 1)
#define BATCH_EVENT(batch) (CANNER_EVENT + 1 + 3 * ((int64_t)(batch)-1)) /* batch: from 1 */
#define LOT_EVENT          1 /* of the lot with LOT_BATCHES batches */

double bench_seconds(void);
/* Aborts with a message; the bench goes on with nothing that failed. */
_Noreturn void bench_abort(const char *what, const char *why);
void bench_exec(sqlite3 *db, const char *sql);
sqlite3_stmt *bench_prepare(sqlite3 *db, const char *sql);

/* Makes the file anew; prints its progress. */
void bench_fill(const char *path, int batches);

/* Median seconds of ours and of bare SQL, run in turns. */
struct bench_pair {
	double ours, bare;
};
/* later: the bare SQL too looks for batches that the jars went into. */
struct bench_pair bench_recall(struct household *db, sqlite3 *bare, bool later);
struct bench_pair bench_shelf(struct household *db, sqlite3 *bare);
/* One batch started, loaded with ten jars and its seals tested, in three transactions. */
struct bench_pair bench_writes(struct household *db, sqlite3 *bare);

/* Of n numbers, which it sorts. */
double bench_median(double *numbers, int n);

#endif
