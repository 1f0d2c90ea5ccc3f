/* The time at the canner, and the recalls of a year. */
#include "report.h"

#define MINUTE_MS INT64_C(60000)

/* columns: day, started_ms, out_ms */
static void add_load(sqlite3_stmt *row, struct report_year *out)
{
	int month = report_month((const char *)sqlite3_column_text(row, 0));
	int64_t minutes = (sqlite3_column_int64(row, 2) - sqlite3_column_int64(row, 1)) / MINUTE_MS;
	out->loads++;
	/* Out as soon as timing began means that no end was said. */
	if (minutes < 1 || month < 0)
		out->loads_untimed++;
	else
		out->minutes[month] += (int)minutes;
}

bool report_loads(struct household *db, const struct report_span *span, struct report_year *out,
		  struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT batch.day, load.started_ms, load.out_ms FROM batch INDEXED BY "
			  "batch_day CROSS JOIN load ON load.batch = batch.id WHERE batch.day "
			  "BETWEEN ?1 AND ?2 AND load.canner IS NOT NULL",
			  &query, err))
		return false;
	sqlite3_bind_text(query, 1, span->first, -1, SQLITE_STATIC);
	sqlite3_bind_text(query, 2, span->last, -1, SQLITE_STATIC);
	while (sqlite3_step(query) == SQLITE_ROW)
		add_load(query, out);
	return store_done(db, query, err);
}

/* columns: what, opened_ms, closed_ms, jars, open */
static bool add_recall(sqlite3_stmt *row, struct report_year *out, struct error *err)
{
	void *list = out->recalls;
	struct report_recall *recall = report_more(&list, &out->recalls_n, sizeof *recall, err);
	out->recalls = list;
	if (!recall)
		return false;
	store_cut_text(row, 0, recall->what, sizeof recall->what);
	recall->opened = instant_at((time_t)(sqlite3_column_int64(row, 1) / 1000));
	recall->closed = sqlite3_column_type(row, 2) != SQLITE_NULL;
	recall->jars = sqlite3_column_int(row, 3);
	recall->open = sqlite3_column_int(row, 4);
	return true;
}

bool report_recalls(struct household *db, const struct report_span *span, struct report_year *out,
		    struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	if (!store_cached(
		db,
		"SELECT what, opened_ms, closed_ms, (SELECT count(*) FROM recall_jar "
		"WHERE recall = recall.id), (SELECT count(*) FROM recall_jar WHERE recall "
		"= recall.id AND disposition IS NULL) FROM recall WHERE opened_ms < ?2 AND "
		"(closed_ms IS NULL OR closed_ms >= ?1) ORDER BY opened_ms, id",
		&query, err))
		return false;
	sqlite3_bind_int64(query, 1, span->from_ms);
	sqlite3_bind_int64(query, 2, span->to_ms);
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		ok = add_recall(query, out, err);
	return store_done(db, query, err) && ok;
}
