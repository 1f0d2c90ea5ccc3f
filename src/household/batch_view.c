/* Everything that is known of one batch. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "batch_internal.h"

#define STEP 32

void batch_view_release(struct batch_view *view)
{
	for (size_t i = 0; i < view->events_n; i++)
		json_decref(view->events[i].body);
	for (size_t i = 0; i < view->lots_n; i++)
		free(view->lots[i]);
	for (size_t i = 0; i < view->from_n; i++)
		free(view->from[i]);
	free(view->events);
	free(view->lots);
	free(view->from);
	free(view->loads);
	free(view->jars);
	json_decref(view->decision);
	*view = (struct batch_view){0};
}

/* Room for one more; the list grows in steps. False: out of memory. */
static bool room(void **list, size_t n, size_t size, struct error *err)
{
	if (n % STEP != 0)
		return true;
	void *more = realloc(*list, (n + STEP) * size);
	if (!more)
		return batch_out_of_memory(err);
	*list = more;
	memset((char *)more + n * size, 0, STEP * size);
	return true;
}

/* Reads the row of a query into the view. */
typedef bool row_reader(sqlite3_stmt *row, struct batch_view *out, struct error *err);

static bool read_rows(struct household *db, const char *text, struct batch_view *out,
		      row_reader *read, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	if (!store_cached(db, text, &query, err))
		return false;
	sqlite3_bind_int64(query, 1, out->record.id);
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		ok = read(query, out, err);
	return store_done(db, query, err) && ok;
}

static const char *column(sqlite3_stmt *row, int at)
{
	const char *text = (const char *)sqlite3_column_text(row, at);
	return text ? text : "";
}

static bool read_record(sqlite3_stmt *row, struct batch_view *out, struct error *err)
{
	(void)err;
	batch_record_read(row, &out->record);
	return true;
}

static bool read_load(sqlite3_stmt *row, struct batch_view *out, struct error *err)
{
	void *list = out->loads;
	if (!room(&list, out->loads_n, sizeof *out->loads, err))
		return false;
	out->loads = list;
	struct batch_load *load = &out->loads[out->loads_n++];
	load->number = sqlite3_column_int(row, 0);
	load->canner_id = sqlite3_column_int64(row, 1);
	store_cut_text(row, 2, load->canner, sizeof load->canner);
	load->started.ms = sqlite3_column_int64(row, 3);
	load->out.ms = sqlite3_column_int64(row, 4);
	if (!load_outcome_find(column(row, 5), &load->outcome))
		load->outcome = LOAD_UNCLEAR;
	store_cut_text(row, 6, load->why, sizeof load->why);
	load->recorded = *column(row, 7) != '\0';
	if (load->recorded && !load_outcome_find(column(row, 7), &load->record))
		load->record = LOAD_UNCLEAR;
	store_cut_text(row, 8, load->record_why, sizeof load->record_why);
	return true;
}

static bool read_jar(sqlite3_stmt *row, struct batch_view *out, struct error *err)
{
	void *list = out->jars;
	if (!room(&list, out->jars_n, sizeof *out->jars, err))
		return false;
	out->jars = list;
	struct batch_jar *jar = &out->jars[out->jars_n++];
	jar->number = sqlite3_column_int(row, 0);
	store_cut_text(row, 1, jar->size, sizeof jar->size);
	jar->load = sqlite3_column_int(row, 2);
	if (!jar_state_find(column(row, 3), &jar->state))
		jar->state = JAR_FILLED;
	store_cut_text(row, 4, jar->place, sizeof jar->place);
	jar->since.ms = sqlite3_column_int64(row, 5);
	return true;
}

/* The moments of a load and of its jars, as the clock of that day showed them. */
static void set_offsets(struct batch_view *out, const struct batch_event *event)
{
	json_int_t number = json_integer_value(json_object_get(event->body, "number"));
	for (size_t i = 0; i < out->loads_n; i++)
		if (out->loads[i].number == number) {
			out->loads[i].started.offset_min = event->at.offset_min;
			out->loads[i].out.offset_min = event->at.offset_min;
			load_said_read(json_object_get(event->body, "facts"), &out->loads[i].said);
		}
}

static bool read_event(sqlite3_stmt *row, struct batch_view *out, struct error *err)
{
	void *list = out->events;
	if (!room(&list, out->events_n, sizeof *out->events, err))
		return false;
	out->events = list;
	struct batch_event *event = &out->events[out->events_n++];
	event->id = sqlite3_column_int64(row, 0);
	store_cut_text(row, 1, event->kind, sizeof event->kind);
	event->at.ms = sqlite3_column_int64(row, 2);
	event->at.offset_min = sqlite3_column_int(row, 3);
	const char *body = column(row, 4);
	if (!body_read(body, strlen(body), &event->body, err))
		return false;
	event->undone = sqlite3_column_int(row, 5) != 0;
	store_cut_text(row, 6, event->conflict, sizeof event->conflict);
	bool counts = !event->undone && !event->conflict[0];
	if (counts && (strcmp(event->kind, "load") == 0 || strcmp(event->kind, "load-amend") == 0))
		set_offsets(out, event);
	if (counts && strcmp(event->kind, "batch-start") == 0 && !out->decision)
		out->decision = json_incref(json_object_get(event->body, "decision"));
	return true;
}

static bool add_words(char ***list, size_t *n, const char *words, struct error *err)
{
	void *items = *list;
	if (!room(&items, *n, sizeof **list, err))
		return false;
	*list = items;
	(*list)[*n] = strdup(words);
	if (!(*list)[*n])
		return batch_out_of_memory(err);
	(*n)++;
	return true;
}

static bool read_lot(sqlite3_stmt *row, struct batch_view *out, struct error *err)
{
	return add_words(&out->lots, &out->lots_n, column(row, 0), err);
}

static bool read_from(sqlite3_stmt *row, struct batch_view *out, struct error *err)
{
	char code[BATCH_CODE_SIZE], words[BATCH_CODE_SIZE + 16];
	batch_code_text(sqlite3_column_int(row, 0), sqlite3_column_int(row, 1), code);
	snprintf(words, sizeof words, "%s-%02d", code, sqlite3_column_int(row, 2));
	return add_words(&out->from, &out->from_n, words, err);
}

static bool read_batch(struct household *db, const char *code, struct batch_view *out,
		       struct error *err)
{
	return find_batch(db, code, &out->record.id, err) &&
	       read_rows(db,
			 "SELECT " BATCH_COLUMNS
			 " FROM batch JOIN event ON event.id = batch.id WHERE batch.id = ?1",
			 out, read_record, err) &&
	       batch_record_count(db, &out->record, err) &&
	       read_rows(db,
			 "SELECT load.number, load.canner, canner.name, load.started_ms, "
			 "load.out_ms, load.outcome, load.why, load.record, load.record_why FROM "
			 "load LEFT JOIN canner ON "
			 "canner.id = load.canner WHERE load.batch = ?1 ORDER BY load.number",
			 out, read_load, err) &&
	       read_rows(db,
			 "SELECT number, size, load, state, place, since_ms FROM jar WHERE batch = "
			 "?1 ORDER BY number",
			 out, read_jar, err) &&
	       read_rows(db,
			 "SELECT event.id, event.kind, event.at_ms, event.offset_min, event.body, "
			 "EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id), "
			 "(SELECT why FROM conflict WHERE conflict.event = event.id) FROM event "
			 "WHERE subject = ?1 ORDER BY uuid",
			 out, read_event, err) &&
	       read_rows(db,
			 "SELECT lot.kind || ' ''' || lot.name || '''' || coalesce(' (' || "
			 "lot.code || ')', '') FROM batch_lot JOIN lot ON lot.id = batch_lot.lot "
			 "WHERE batch_lot.batch = ?1 ORDER BY lot.id",
			 out, read_lot, err) &&
	       read_rows(db,
			 "SELECT batch.year, batch.number, batch_from.from_number FROM batch_from "
			 "JOIN batch ON batch.id = batch_from.from_batch WHERE batch_from.batch = "
			 "?1 ORDER BY 1, 2, 3",
			 out, read_from, err);
}

bool household_batch(struct household *db, const char *code, struct batch_view *out,
		     struct error *err)
{
	int64_t id;
	*out = (struct batch_view){0};
	if (!store_has_log(db))
		return batch_find(db, code, &id, err);
	/* One transaction, so that no other program's entry falls between. */
	if (!store_exec(db, "BEGIN", err))
		return false;
	bool ok = store_end(db, read_batch(db, code, out, err), err);
	if (!ok)
		batch_view_release(out);
	return ok;
}
