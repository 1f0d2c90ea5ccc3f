/* One batch as a row of the state, and the list of them. */
#include <stdlib.h>
#include <string.h>

#include "batch_internal.h"

void batch_record_read(sqlite3_stmt *row, struct batch_record *out)
{
	*out = (struct batch_record){.id = sqlite3_column_int64(row, 0)};
	batch_code_text(sqlite3_column_int(row, 1), sqlite3_column_int(row, 2), out->code);
	store_cut_text(row, 3, out->day, sizeof out->day);
	store_cut_text(row, 4, out->title, sizeof out->title);
	store_cut_text(row, 5, out->food, sizeof out->food);
	store_cut_text(row, 6, out->recipe, sizeof out->recipe);
	store_cut_text(row, 7, out->keep, sizeof out->keep);
	store_cut_text(row, 8, out->verdict, sizeof out->verdict);
	store_cut_text(row, 9, out->edition, sizeof out->edition);
	store_cut_text(row, 10, out->pack, sizeof out->pack);
	store_cut_text(row, 11, out->canner_kind, sizeof out->canner_kind);
	store_cut_text(row, 12, out->jar, sizeof out->jar);
	out->elevation_stated = sqlite3_column_type(row, 13) == SQLITE_INTEGER;
	out->elevation_mft = sqlite3_column_int(row, 13);
	out->elevation_own = sqlite3_column_int(row, 14) != 0;
	out->minutes = sqlite3_column_int(row, 15);
	out->psi = sqlite3_column_int(row, 16);
	out->vent = sqlite3_column_int(row, 17);
	out->held = sqlite3_column_int(row, 18) != 0;
	out->finished = sqlite3_column_int(row, 19) != 0;
	out->started.ms = sqlite3_column_int64(row, 20);
	out->started.offset_min = sqlite3_column_int(row, 21);
}

static bool count_jars(struct household *db, struct batch_record *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT state, count(*) FROM jar WHERE batch = ?1 GROUP BY state",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, out->id);
	while (sqlite3_step(query) == SQLITE_ROW) {
		const char *word = (const char *)sqlite3_column_text(query, 0);
		enum jar_state state;
		if (!word || !jar_state_find(word, &state))
			continue;
		out->jars[state] = sqlite3_column_int(query, 1);
		out->jars_n += out->jars[state];
	}
	return store_done(db, query, err);
}

bool batch_record_count(struct household *db, struct batch_record *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!count_jars(db, out, err) ||
	    !store_cached(db,
			  "SELECT count(*), coalesce(sum(outcome IN ('under-processed', "
			  "'unclear')), 0), (SELECT count(*) FROM run WHERE batch = ?1) FROM load "
			  "WHERE batch = ?1",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, out->id);
	if (sqlite3_step(query) == SQLITE_ROW) {
		out->loads_n = sqlite3_column_int(query, 0);
		out->loads_short = sqlite3_column_int(query, 1);
		out->running_n = sqlite3_column_int(query, 2);
	}
	return store_done(db, query, err);
}

void batch_list_release(struct batch_list *list)
{
	free(list->records);
	*list = (struct batch_list){0};
}

#define STEP 64

static struct batch_record *next_record(struct batch_list *list)
{
	if (list->records_n % STEP == 0) {
		size_t size = (list->records_n + STEP) * sizeof *list->records;
		struct batch_record *more = realloc(list->records, size);
		if (!more)
			return NULL;
		list->records = more;
	}
	return &list->records[list->records_n++];
}

static bool read_list(struct household *db, const struct batch_filter *filter,
		      struct batch_list *out, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT " BATCH_COLUMNS " FROM batch JOIN event ON event.id = batch.id "
			  "WHERE (?1 = 0 OR batch.year = ?1) AND (?2 = 0 OR finished_ms IS NULL) "
			  "AND (?3 IS NULL OR instr(lower(batch.title || ' ' || "
			  "coalesce(batch.food, '') || ' ' || coalesce(batch.recipe, '')), "
			  "lower(?3))) ORDER BY batch.year DESC, batch.number DESC, batch.id",
			  &query, err))
		return false;
	sqlite3_bind_int(query, 1, filter->year);
	sqlite3_bind_int(query, 2, filter->open);
	if (filter->food)
		sqlite3_bind_text(query, 3, filter->food, -1, SQLITE_STATIC);
	while (ok && sqlite3_step(query) == SQLITE_ROW) {
		struct batch_record *record = next_record(out);
		ok = record != NULL || batch_out_of_memory(err);
		if (record)
			batch_record_read(query, record);
	}
	return store_done(db, query, err) && ok;
}

static bool list_batches(struct household *db, const struct batch_filter *filter,
			 struct batch_list *out, struct error *err)
{
	bool ok = read_list(db, filter, out, err);
	for (size_t i = 0; i < out->records_n && ok; i++)
		ok = batch_record_count(db, &out->records[i], err);
	return ok;
}

bool household_batch_list(struct household *db, const struct batch_filter *filter,
			  struct batch_list *out, struct error *err)
{
	*out = (struct batch_list){0};
	if (!store_has_log(db))
		return true;
	/* One transaction, so that no other program's entry falls between. */
	if (!store_exec(db, "BEGIN", err))
		return false;
	return store_end(db, list_batches(db, filter, out, err), err);
}
