/* make bench-log: bench-log FOLDER */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bench_log.h"
#include "jarwright/error.h"

#define SMALL 10000
#define LARGE 1000000

double bench_seconds(void)
{
	struct timespec now;
	(void)clock_gettime(CLOCK_MONOTONIC, &now);
	return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

void bench_abort(const char *what, const char *why)
{
	(void)fprintf(stderr, "bench-log: %s: %s\n", what, why);
	exit(EXIT_FAILURE);
}

void bench_exec(sqlite3 *db, const char *sql)
{
	if (sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
		bench_abort(sql, sqlite3_errmsg(db));
}

sqlite3_stmt *bench_prepare(sqlite3 *db, const char *sql)
{
	sqlite3_stmt *statement;
	if (sqlite3_prepare_v2(db, sql, -1, &statement, NULL) != SQLITE_OK)
		bench_abort(sql, sqlite3_errmsg(db));
	return statement;
}

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a;
	double y = *(const double *)b;
	return (x > y) - (x < y);
}

double bench_median(double *numbers, int n)
{
	qsort(numbers, (size_t)n, sizeof *numbers, by_size);
	return n % 2 ? numbers[n / 2] : (numbers[n / 2 - 1] + numbers[n / 2]) / 2;
}

/* A file opened by the program's own functions, and by bare SQLite beside it. */
struct opened {
	struct household *db;
	sqlite3 *bare;
};

static void open_both(const char *path, const char *bare_path, struct opened *out)
{
	struct error err = {0};
	if (!household_open(path, HOUSEHOLD_WRITE, &out->db, &err))
		bench_abort("file", err.text);
	if (sqlite3_open(bare_path, &out->bare) != SQLITE_OK)
		bench_abort("file", bare_path);
}

static void close_both(struct opened *opened)
{
	household_close(opened->db);
	sqlite3_close(opened->bare);
}

static void print_pair(const char *what, struct bench_pair pair)
{
	printf("  %-22s ours %8.3f ms   bare SQL %8.3f ms   ratio %5.2f   goal <= 1.5\n", what,
	       pair.ours * 1e3, pair.bare * 1e3, pair.ours / pair.bare);
}

int main(int argc, char *argv[])
{
	char small[256], other[256], large[256];
	struct opened s, l, w;
	if (argc != 2)
		bench_abort("usage", "bench-log FOLDER");
	(void)snprintf(small, sizeof small, "%s/small.db", argv[1]);
	(void)snprintf(other, sizeof other, "%s/other.db", argv[1]);
	(void)snprintf(large, sizeof large, "%s/large.db", argv[1]);
	bench_fill(small, SMALL);
	bench_fill(other, SMALL);
	bench_fill(large, LARGE);
	open_both(small, small, &s);
	open_both(large, large, &l);
	struct bench_pair recall_small = bench_recall(s.db, s.bare, true);
	struct bench_pair recall_large = bench_recall(l.db, l.bare, true);
	struct bench_pair recall_plain = bench_recall(l.db, l.bare, false);
	struct bench_pair shelf_small = bench_shelf(s.db, s.bare);
	struct bench_pair shelf_large = bench_shelf(l.db, l.bare);
	close_both(&s);
	close_both(&l);
	printf("at %d batches and %d jars, medians, in turns\n", LARGE, LARGE * JARS_A_BATCH);
	print_pair("recall by lot", recall_large);
	print_pair("  its first step alone", recall_plain);
	print_pair("shelf", shelf_large);
	printf("from %d to %d batches, an answer of one size\n", SMALL, LARGE);
	printf("  %-22s %8.3f ms to %8.3f ms   growth %5.2f   goal <= 2\n", "recall by lot",
	       recall_small.ours * 1e3, recall_large.ours * 1e3,
	       recall_large.ours / recall_small.ours);
	printf("  %-22s %8.3f ms to %8.3f ms   growth %5.2f   goal <= 2\n", "shelf",
	       shelf_small.ours * 1e3, shelf_large.ours * 1e3, shelf_large.ours / shelf_small.ours);
	open_both(small, other, &w);
	struct bench_pair writes = bench_writes(w.db, w.bare);
	close_both(&w);
	printf("a batch started, loaded and its seals tested, durably\n");
	printf("  %.0f a second against %.0f of bare inserts   ratio %5.2f   goal >= 0.7\n",
	       1 / writes.ours, 1 / writes.bare, writes.bare / writes.ours);
	return EXIT_SUCCESS;
}
