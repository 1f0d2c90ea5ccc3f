/* Running loads written and read. */
#include <stdlib.h>
#include <string.h>

#include "batch_internal.h"
#include "jarwright/household_runs.h"

#define MS_NS INT64_C(1000000) /* nanoseconds */

/* --- Writing --- */

static json_t *step_body(int number, const struct run_entry *entry)
{
	json_t *body =
	    json_pack("{s:i, s:s, s:s, s:I, s:s}", "number", number, "what",
		      run_event_word(entry->event), "stage", run_stage_word(entry->stage),
		      "clock_ms", (json_int_t)(entry->now_ns / MS_NS), "boot", entry->boot);
	if (body && entry->event == RUN_RETURN && entry->seen_ns >= 0 &&
	    json_object_set_new(body, "seen_ms", json_integer(entry->seen_ns / MS_NS)) != 0) {
		json_decref(body);
		return NULL;
	}
	return body;
}

bool household_run_step(struct household *db, const char *code, int number,
			const struct run_moment *moment, struct error *err)
{
	return batch_append(db, code, "run-step", moment->at, step_body(number, &moment->entry),
			    err);
}

static json_t *begin_body(const struct running_load *load, const struct run_moment *first,
			  json_t *canner)
{
	json_t *jars = json_array(), *body = step_body(load->number, &first->entry);
	bool ok = jars && body && json_object_set(body, "canner", canner) == 0;
	for (size_t i = 0; ok && i < load->jars_n; i++)
		ok = json_array_append_new(jars, json_pack("{s:i, s:s}", "n", load->jars[i].n,
							   "size", load->jars[i].size)) == 0;
	ok = ok && json_object_set(body, "jars", jars) == 0;
	json_decref(jars);
	if (ok)
		return body;
	json_decref(body);
	return NULL;
}

static bool begin(struct household *db, const char *code, const struct running_load *load,
		  const struct run_moment *first, struct error *err)
{
	int64_t id, canner_id;
	if (!find_batch(db, code, &id, err) || !find_canner(db, load->canner, &canner_id, err))
		return false;
	json_t *canner = batch_uuid_json(db, canner_id, err);
	bool ok = canner && log_append(db, "run-step", id, first->at,
				       begin_body(load, first, canner), NULL, err);
	json_decref(canner);
	return ok;
}

bool household_run_begin(struct household *db, const char *code, const struct running_load *load,
			 const struct run_moment *first, struct error *err)
{
	return log_begin(db, err) && log_end(db, begin(db, code, load, first, err), err);
}

/* --- Reading --- */

/* Which load: the one asked for, or the only one. */
static bool choose(struct household *db, int64_t batch, const char *code, struct running_load *out,
		   bool *found, struct error *err)
{
	sqlite3_stmt *query;
	int n = 0, number = 0;
	if (!store_cached(db,
			  "SELECT run.number, '@' || lower(substr(hex(event.uuid), -6)) FROM run "
			  "JOIN event ON event.id = run.canner WHERE run.batch = ?1 AND (?2 = 0 OR "
			  "run.number = ?2)",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	sqlite3_bind_int(query, 2, out->number);
	for (; sqlite3_step(query) == SQLITE_ROW; n++) {
		number = sqlite3_column_int(query, 0);
		sqlite3_snprintf(sizeof out->canner, out->canner, "%s",
				 (const char *)sqlite3_column_text(query, 1));
	}
	*found = n == 1;
	if (*found)
		out->number = number;
	return store_done(db, query, err) &&
	       (n <= 1 ||
		error_usage(err, "run: %d loads of batch %s are running; say which: --load N", n,
			    code));
}

static bool next_number(struct household *db, int64_t batch, int *number, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT max(number) FROM (SELECT number FROM load WHERE batch = ?1 UNION "
			  "ALL SELECT number FROM run WHERE batch = ?1)",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	*number = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int(query, 0) + 1 : 1;
	return store_done(db, query, err);
}

/* A reading that cannot be one is taken for that of another boot. */
static void read_entry(const json_t *body, struct run_entry *out)
{
	const char *what = json_string_value(json_object_get(body, "what")),
		   *stage = json_string_value(json_object_get(body, "stage")),
		   *boot = json_string_value(json_object_get(body, "boot"));
	const json_t *seen = json_object_get(body, "seen_ms");
	*out = (struct run_entry){.event = RUN_DOUBT, .stage = RUN_FILL, .seen_ns = -1};
	if (!what || !run_event_find(what, &out->event) || !stage ||
	    !run_stage_find(stage, &out->stage))
		return;
	out->now_ns = json_integer_value(json_object_get(body, "clock_ms")) * MS_NS;
	if (json_is_integer(seen))
		out->seen_ns = json_integer_value(seen) * MS_NS;
	sqlite3_snprintf(sizeof out->boot, out->boot, "%s", boot ? boot : "");
}

static void read_jars(const json_t *body, struct running_load *out)
{
	const json_t *jars = json_object_get(body, "jars");
	out->jars_n = 0;
	for (size_t i = 0; i < json_array_size(jars) && i < LOAD_JARS_MAX; i++) {
		const json_t *some = json_array_get(jars, i);
		struct load_jars *to = &out->jars[out->jars_n++];
		const char *size = json_string_value(json_object_get(some, "size"));
		to->n = (int)json_integer_value(json_object_get(some, "n"));
		sqlite3_snprintf(sizeof to->size, to->size, "%s", size ? size : "");
	}
}

/* A load that was given up and begun anew under its number starts with its last beginning. */
static bool add_moment(sqlite3_stmt *row, struct running_load *out, struct error *err)
{
	json_t *body = json_loads((const char *)sqlite3_column_text(row, 2), 0, NULL);
	struct run_moment *more, moment = {.at = {.ms = sqlite3_column_int64(row, 0),
						  .offset_min = sqlite3_column_int(row, 1)}};
	read_entry(body, &moment.entry);
	if (moment.entry.event == RUN_BEGIN) {
		read_jars(body, out);
		out->moments_n = 0;
	}
	json_decref(body);
	more = realloc(out->moments, (out->moments_n + 1) * sizeof *more);
	if (!more)
		return batch_out_of_memory(err);
	out->moments = more;
	out->moments[out->moments_n++] = moment;
	return true;
}

static bool read_moments(struct household *db, int64_t batch, struct running_load *out,
			 struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT at_ms, offset_min, body FROM event WHERE subject = ?1 AND kind = "
			  "'run-step' AND json_extract(body, '$.number') = ?2 AND "
			  "NOT EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id) AND "
			  "NOT EXISTS (SELECT 1 FROM conflict WHERE conflict.event = event.id) "
			  "ORDER BY uuid",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, batch);
	sqlite3_bind_int(row, 2, out->number);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_moment(row, out, err);
	if (!store_done(db, row, err) || !ok)
		return false;
	return (out->moments_n > 0 && out->moments[0].entry.event == RUN_BEGIN) ||
	       error_failed(err,
			    "household file '%s': a running load has no beginning; run "
			    "'jarwright log verify'",
			    db->path);
}

static bool read_running(struct household *db, const char *code, bool *found,
			 struct running_load *out, struct error *err)
{
	int64_t batch;
	int wanted = out->number;
	if (!find_batch(db, code, &batch, err) || !choose(db, batch, code, out, found, err))
		return false;
	if (*found)
		return read_moments(db, batch, out, err);
	return wanted > 0 || next_number(db, batch, &out->number, err);
}

bool household_running(struct household *db, const char *code, int number, bool *found,
		       struct running_load *out, struct error *err)
{
	int64_t id;
	*out = (struct running_load){.number = number};
	*found = false;
	if (!store_has_log(db))
		return batch_find(db, code, &id, err);
	if (!store_exec(db, "BEGIN", err))
		return false;
	bool ok = store_end(db, read_running(db, code, found, out, err), err);
	if (!ok)
		running_load_release(out);
	return ok;
}

void running_load_release(struct running_load *load)
{
	free(load->moments);
	load->moments = NULL;
	load->moments_n = 0;
}
