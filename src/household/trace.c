/* From a batch back to everything that went into it, as many steps as there are. */
#include <stdlib.h>
#include <string.h>

#include "batch_internal.h"
#include "jarwright/household_trace.h"

void trace_release(struct trace *trace)
{
	for (size_t i = 0; i < trace->batches_n; i++) {
		free(trace->batches[i].lots);
		free(trace->batches[i].loads);
		free(trace->batches[i].from);
	}
	free(trace->batches);
	*trace = (struct trace){0};
}

void trace_canner_release(struct trace_canner *canner)
{
	free(canner->tests);
	*canner = (struct trace_canner){.name = ""};
}

/* A list with one more zeroed item at its end; NULL: out of memory, the list stays. */
static void *one_more(void *list, size_t n, size_t size, struct error *err)
{
	void *more = realloc(list, (n + 1) * size);
	if (more)
		memset((char *)more + n * size, 0, size);
	else
		error_failed(err, "trace: out of memory; close other programs and try again");
	return more;
}

/* --- Lots --- */

#define LOT_COLUMNS "lot.kind, lot.name, lot.supplier, lot.code, lot.dated, lot.finished"

static void read_lot(sqlite3_stmt *row, struct trace_lot *out)
{
	store_cut_text(row, 0, out->kind, sizeof out->kind);
	store_cut_text(row, 1, out->name, sizeof out->name);
	store_cut_text(row, 2, out->supplier, sizeof out->supplier);
	store_cut_text(row, 3, out->code, sizeof out->code);
	store_cut_text(row, 4, out->dated, sizeof out->dated);
	out->finished = sqlite3_column_int(row, 5) == 1;
}

bool household_trace_lot(struct household *db, int64_t lot, struct trace_lot *out,
			 struct error *err)
{
	sqlite3_stmt *row;
	*out = (struct trace_lot){.kind = ""};
	if (!store_cached(db, "SELECT " LOT_COLUMNS " FROM lot WHERE id = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, lot);
	if (sqlite3_step(row) == SQLITE_ROW)
		read_lot(row, out);
	return store_done(db, row, err);
}

static bool read_lots(struct household *db, struct trace_batch *out, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT " LOT_COLUMNS " FROM batch_lot JOIN lot ON lot.id = "
			  "batch_lot.lot WHERE batch_lot.batch = ?1 ORDER BY lot.kind, lot.name",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, out->record.id);
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		void *lots = one_more(out->lots, out->lots_n, sizeof *out->lots, err);
		ok = lots != NULL;
		if (!ok)
			break;
		out->lots = lots;
		read_lot(row, &out->lots[out->lots_n++]);
	}
	return store_done(db, row, err) && ok;
}

/* --- Loads --- */

static void read_test(sqlite3_stmt *row, int column, struct trace_test *out)
{
	store_cut_text(row, column, out->tested, sizeof out->tested);
	out->high_mpsi = sqlite3_column_int(row, column + 1);
	out->error_mpsi = sqlite3_column_int(row, column + 2);
}

/* The test nearest to a day on one side of it. */
static bool find_test(struct household *db, const char *text, int64_t canner, const char *day,
		      struct trace_test *out, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, text, &row, err))
		return false;
	sqlite3_bind_int64(row, 1, canner);
	sqlite3_bind_text(row, 2, day, -1, SQLITE_STATIC);
	if (sqlite3_step(row) == SQLITE_ROW)
		read_test(row, 0, out);
	return store_done(db, row, err);
}

static bool find_tests(struct household *db, int64_t canner, struct trace_load *out,
		       struct error *err)
{
	char day[DATE_SIZE];
	date_text(instant_date(instant_at((time_t)(out->started_ms / 1000))), day);
	return find_test(db,
			 "SELECT tested, high_mpsi, error_mpsi FROM gauge_test WHERE canner = ?1 "
			 "AND tested <= ?2 ORDER BY tested DESC, id DESC LIMIT 1",
			 canner, day, &out->before, err) &&
	       find_test(db,
			 "SELECT tested, high_mpsi, error_mpsi FROM gauge_test WHERE canner = ?1 "
			 "AND tested > ?2 ORDER BY tested, id LIMIT 1",
			 canner, day, &out->after, err);
}

static bool read_jars_of_load(struct household *db, int64_t batch, struct trace_load *out,
			      struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, "SELECT number FROM jar WHERE batch = ?1 AND load = ?2", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, batch);
	sqlite3_bind_int(row, 2, out->number);
	while (sqlite3_step(row) == SQLITE_ROW)
		jar_set_add(&out->jars, sqlite3_column_int(row, 0));
	return store_done(db, row, err);
}

static bool read_load(struct household *db, sqlite3_stmt *row, struct trace_batch *out,
		      struct error *err)
{
	void *loads = one_more(out->loads, out->loads_n, sizeof *out->loads, err);
	if (!loads)
		return false;
	out->loads = loads;
	struct trace_load *load = &out->loads[out->loads_n++];
	int64_t canner = sqlite3_column_int64(row, 6);
	load->number = sqlite3_column_int(row, 0);
	store_cut_text(row, 1, load->canner, sizeof load->canner);
	store_cut_text(row, 2, load->kind, sizeof load->kind);
	load->started_ms = sqlite3_column_int64(row, 3);
	store_cut_text(row, 4, load->outcome, sizeof load->outcome);
	store_cut_text(row, 5, load->why, sizeof load->why);
	return read_jars_of_load(db, out->record.id, load, err) &&
	       (strcmp(load->kind, "dial-gauge") != 0 || find_tests(db, canner, load, err));
}

static bool read_loads(struct household *db, struct trace_batch *out, int load, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT load.number, canner.name, canner.kind, load.started_ms, "
			  "load.outcome, load.why, load.canner FROM load LEFT JOIN canner ON "
			  "canner.id = load.canner WHERE load.batch = ?1 AND (?2 = 0 OR "
			  "load.number = ?2) ORDER BY load.number",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, out->record.id);
	sqlite3_bind_int(row, 2, load);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = read_load(db, row, out, err);
	return store_done(db, row, err) && ok;
}

bool household_load_of_jar(struct household *db, int64_t batch, int number, int *load,
			   struct error *err)
{
	sqlite3_stmt *row;
	*load = 0;
	if (!store_cached(db, "SELECT load FROM jar WHERE batch = ?1 AND number = ?2", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, batch);
	sqlite3_bind_int(row, 2, number);
	if (sqlite3_step(row) == SQLITE_ROW)
		*load = sqlite3_column_int(row, 0);
	return store_done(db, row, err);
}

/* --- Batches --- */

static bool is_there(const struct trace *trace, int64_t batch)
{
	for (size_t i = 0; i < trace->batches_n; i++)
		if (trace->batches[i].record.id == batch)
			return true;
	return false;
}

static bool add_batch(struct household *db, int64_t batch, int step, struct trace *out,
		      struct error *err)
{
	sqlite3_stmt *row;
	if (is_there(out, batch))
		return true;
	void *batches = one_more(out->batches, out->batches_n, sizeof *out->batches, err);
	if (!batches)
		return false;
	out->batches = batches;
	if (!store_cached(db,
			  "SELECT " BATCH_COLUMNS " FROM batch JOIN event ON event.id = batch.id "
			  "WHERE batch.id = ?1",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, batch);
	if (sqlite3_step(row) == SQLITE_ROW) {
		struct trace_batch *one = &out->batches[out->batches_n++];
		batch_record_read(row, &one->record);
		one->step = step;
	}
	return store_done(db, row, err);
}

/* One row a jar, the jars of a batch together. */
static bool take_from(sqlite3_stmt *row, struct trace_batch *out, struct error *err)
{
	int64_t batch = sqlite3_column_int64(row, 0);
	if (out->from_n == 0 || out->from[out->from_n - 1].batch != batch) {
		void *from = one_more(out->from, out->from_n, sizeof *out->from, err);
		if (!from)
			return false;
		out->from = from;
		struct trace_from *one = &out->from[out->from_n++];
		one->batch = batch;
		batch_code_text(sqlite3_column_int(row, 2), sqlite3_column_int(row, 3), one->code);
	}
	jar_set_add(&out->from[out->from_n - 1].jars, sqlite3_column_int(row, 1));
	return true;
}

/* The earlier jars of the batch at this place of the list, whose batches join the list. */
static bool read_from(struct household *db, size_t at, struct trace *out, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	int step = out->batches[at].step + 1;
	if (!store_cached(db,
			  "SELECT batch_from.from_batch, batch_from.from_number, batch.year, "
			  "batch.number FROM batch_from JOIN batch ON batch.id = "
			  "batch_from.from_batch WHERE batch_from.batch = ?1 ORDER BY 1, 2",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, out->batches[at].record.id);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_batch(db, sqlite3_column_int64(row, 0), step, out, err) &&
		     take_from(row, &out->batches[at], err);
	return store_done(db, row, err) && ok;
}

static bool read_trace(struct household *db, int64_t batch, int load, struct trace *out,
		       struct error *err)
{
	bool ok = add_batch(db, batch, 0, out, err);
	for (size_t i = 0; i < out->batches_n && ok; i++)
		ok = read_lots(db, &out->batches[i], err) &&
		     read_loads(db, &out->batches[i], i == 0 ? load : 0, err) &&
		     read_from(db, i, out, err);
	return ok;
}

bool household_trace(struct household *db, int64_t batch, int load, struct trace *out,
		     struct error *err)
{
	*out = (struct trace){0};
	if (!store_has_log(db))
		return true;
	if (!store_exec(db, "BEGIN", err))
		return false;
	return store_end(db, read_trace(db, batch, load, out, err), err);
}

/* --- Canners --- */

static bool read_tests(struct household *db, int64_t id, struct trace_canner *out,
		       struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT tested, high_mpsi, error_mpsi FROM gauge_test WHERE canner = ?1 "
			  "ORDER BY tested, id",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		void *tests = one_more(out->tests, out->tests_n, sizeof *out->tests, err);
		ok = tests != NULL;
		if (!ok)
			break;
		out->tests = tests;
		read_test(row, 0, &out->tests[out->tests_n++]);
	}
	return store_done(db, row, err) && ok;
}

bool household_trace_canner(struct household *db, int64_t canner, struct trace_canner *out,
			    struct error *err)
{
	sqlite3_stmt *row;
	*out = (struct trace_canner){.name = ""};
	if (!store_cached(db, "SELECT name, kind, retired FROM canner WHERE id = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, canner);
	if (sqlite3_step(row) == SQLITE_ROW) {
		store_cut_text(row, 0, out->name, sizeof out->name);
		store_cut_text(row, 1, out->kind, sizeof out->kind);
		out->retired = sqlite3_column_int(row, 2) == 1;
	}
	return store_done(db, row, err) && read_tests(db, canner, out, err);
}
