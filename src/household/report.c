/* A year in figures: the jars by food, month and size, and what became of them. */
#include "report.h"

#include <stdlib.h>
#include <string.h>

#include "jarwright/reference.h"
#include "shelf.h"

#define STEP 32

void report_year_release(struct report_year *report)
{
	free(report->foods);
	free(report->sizes);
	free(report->lots);
	free(report->recalls);
	*report = (struct report_year){0};
}

void *report_more(void **list, size_t *n, size_t size, struct error *err)
{
	if (*n % STEP == 0) {
		void *more = realloc(*list, (*n + STEP) * size);
		if (!more) {
			error_failed(err,
				     "report: out of memory; close other programs and try again");
			return NULL;
		}
		*list = more;
	}
	void *one = (char *)*list + (*n)++ * size;
	memset(one, 0, size);
	return one;
}

int report_month(const char *day)
{
	if (!day || strlen(day) != strlen("2026-08-14"))
		return -1;
	int month = (day[5] - '0') * 10 + (day[6] - '0') - 1;
	return month >= 0 && month < REPORT_MONTHS ? month : -1;
}

bool report_failure_rate(const struct report_lot *lot, double *of_hundred)
{
	int64_t tested = (int64_t)lot->sealed + lot->failed;
	if (tested < REPORT_FEW)
		return false;
	*of_hundred = 100.0 * lot->failed / (double)tested;
	return true;
}

/* --- Foods --- */

/* What a row is about: its batch's title, food and recipe, from this column on. */
static void food_name(sqlite3_stmt *row, int column, char *out, size_t size)
{
	const char *slug = (const char *)sqlite3_column_text(row, column + 1);
	const struct food *food = slug ? reference_food(reference_edition(), slug) : NULL;
	if (sqlite3_column_type(row, column + 2) != SQLITE_NULL)
		store_cut_text(row, column + 2, out, size);
	else if (food)
		sqlite3_snprintf((int)size, out, "%s", food->title);
	else
		store_cut_text(row, column, out, size);
}

static struct report_food *food_of(sqlite3_stmt *row, int column, struct report_year *out,
				   struct error *err)
{
	char name[REPORT_NAME_SIZE];
	food_name(row, column, name, sizeof name);
	for (size_t i = 0; i < out->foods_n; i++)
		if (strcmp(out->foods[i].food, name) == 0)
			return &out->foods[i];
	void *list = out->foods;
	struct report_food *food = report_more(&list, &out->foods_n, sizeof *food, err);
	out->foods = list;
	if (food)
		memcpy(food->food, name, sizeof food->food);
	return food;
}

/* Adds one row, of a batch, to the report. */
typedef bool row_reader(sqlite3_stmt *row, struct report_year *out, struct error *err);

/* columns: title, food, recipe, day, jars */
static bool add_batch(sqlite3_stmt *row, struct report_year *out, struct error *err)
{
	int month = report_month((const char *)sqlite3_column_text(row, 3));
	struct report_food *food = food_of(row, 0, out, err);
	if (!food || month < 0)
		return food != NULL;
	food->put_up[month] += sqlite3_column_int(row, 4);
	out->batches[month]++;
	return true;
}

/* columns: title, food, recipe, state, jars */
static bool add_gone(sqlite3_stmt *row, struct report_year *out, struct error *err)
{
	const char *state = (const char *)sqlite3_column_text(row, 3);
	struct report_food *food = food_of(row, 0, out, err);
	if (!food || !state)
		return food != NULL;
	int *count = strcmp(state, "eaten") == 0   ? &food->eaten
		     : strcmp(state, "given") == 0 ? &food->given
						   : &food->lost;
	*count += sqlite3_column_int(row, 4);
	return true;
}

/* columns: title, food, recipe, jars */
static bool add_left(sqlite3_stmt *row, struct report_year *out, struct error *err)
{
	struct report_food *food = food_of(row, 0, out, err);
	if (food)
		food->left += sqlite3_column_int(row, 3);
	return food != NULL;
}

/* columns: size, jars */
static bool add_size(sqlite3_stmt *row, struct report_year *out, struct error *err)
{
	void *list = out->sizes;
	struct report_size *size = report_more(&list, &out->sizes_n, sizeof *size, err);
	out->sizes = list;
	if (!size)
		return false;
	store_cut_text(row, 0, size->size, sizeof size->size);
	size->jars = sqlite3_column_int(row, 1);
	return true;
}

#define OF_BATCH "batch.title, batch.food, batch.recipe"
/* INDEXED BY: without these indexes the time would grow with all jars there ever were. */
static const char *const queries[] = {
    "SELECT " OF_BATCH ", batch.day, (SELECT count(*) FROM jar WHERE jar.batch = batch.id) "
    "FROM batch INDEXED BY batch_day WHERE batch.day BETWEEN ?1 AND ?2",
    "SELECT jar.size, count(*) AS jars FROM batch INDEXED BY batch_day CROSS JOIN jar ON "
    "jar.batch = batch.id WHERE batch.day BETWEEN ?1 AND ?2 GROUP BY jar.size ORDER BY jars "
    "DESC, jar.size",
    "SELECT " OF_BATCH ", jar.state, count(*) FROM jar INDEXED BY jar_gone CROSS JOIN batch ON "
    "batch.id = jar.batch WHERE jar.gone = 1 AND jar.since_ms >= ?3 AND jar.since_ms < ?4 GROUP "
    "BY jar.batch, jar.state",
    "SELECT " OF_BATCH ", count(*) FROM jar INDEXED BY jar_here CROSS JOIN batch ON batch.id = "
    "jar.batch WHERE jar.gone = 0 AND batch.day <= ?2 GROUP BY jar.batch",
    "SELECT " OF_BATCH ", count(*) FROM jar INDEXED BY jar_gone CROSS JOIN batch ON batch.id = "
    "jar.batch WHERE jar.gone = 1 AND jar.since_ms >= ?4 AND batch.day <= ?2 GROUP BY jar.batch",
};
static row_reader *const readers[] = {add_batch, add_size, add_gone, add_left, add_left};

static bool read_rows(struct household *db, size_t which, const struct report_span *span,
		      struct report_year *out, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	if (!store_cached(db, queries[which], &query, err))
		return false;
	const char *days[] = {span->first, span->last};
	const int64_t moments[] = {span->from_ms, span->to_ms};
	for (int at = 1; at <= sqlite3_bind_parameter_count(query); at++) {
		if (at <= 2)
			sqlite3_bind_text(query, at, days[at - 1], -1, SQLITE_STATIC);
		else
			sqlite3_bind_int64(query, at, moments[at - 3]);
	}
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		ok = readers[which](query, out, err);
	return store_done(db, query, err) && ok;
}

static int by_name(const void *left, const void *right)
{
	const struct report_food *a = left, *b = right;
	return strcmp(a->food, b->food);
}

static bool read_all(struct household *db, const struct report_span *span, struct report_year *out,
		     struct error *err)
{
	for (size_t i = 0; i < sizeof queries / sizeof *queries; i++)
		if (!read_rows(db, i, span, out, err))
			return false;
	return report_lids(db, span, out, err) && report_loads(db, span, out, err) &&
	       report_recalls(db, span, out, err);
}

bool household_report(struct household *db, int year, int64_t from_ms, int64_t to_ms,
		      struct report_year *out, struct error *err)
{
	struct report_span span = {.from_ms = from_ms, .to_ms = to_ms};
	*out = (struct report_year){.year = year};
	date_text((struct date){year, 1, 1}, span.first);
	date_text((struct date){year, 12, 31}, span.last);
	if (!store_has_log(db))
		return true;
	/* One view of the file, whoever else writes meanwhile. */
	if (!store_exec(db, "BEGIN", err))
		return false;
	if (!store_end(db, read_all(db, &span, out, err), err)) {
		report_year_release(out);
		return false;
	}
	if (out->foods_n > 0)
		qsort(out->foods, out->foods_n, sizeof *out->foods, by_name);
	return true;
}
