/* Batches read for a second look at their decision. */
#include <stdlib.h>
#include <string.h>

#include "batch_internal.h"
#include "jarwright/household_review.h"

struct reviewing {
	struct household *db;
	struct review_case batch;
	size_t loads_room, jars_room;
	struct error *err;
};

/* Room for one more of a list; NULL: out of memory. */
static void *room(void *list, size_t n, size_t *have, size_t size, struct error *err)
{
	if (n < *have)
		return list;
	size_t more = *have ? *have * 2 : 8;
	void *grown = realloc(list, more * size);
	if (grown)
		*have = more;
	else
		error_failed(err, "review: out of memory; close other programs and try again");
	return grown;
}

/* --- Loads --- */

static bool read_canner_kind(const char *word, enum canner *out)
{
	for (int kind = 0; word && kind < CANNER_COUNT; kind++)
		if (strcmp(word, canner_word((enum canner)kind)) == 0) {
			*out = (enum canner)kind;
			return true;
		}
	return false;
}

static bool add_load(struct reviewing *r, sqlite3_stmt *row)
{
	struct review_case *batch = &r->batch;
	void *loads =
	    room(batch->loads, batch->loads_n, &r->loads_room, sizeof *batch->loads, r->err);
	if (!loads)
		return false;
	batch->loads = loads;
	struct review_load *load = &batch->loads[batch->loads_n++];
	*load = (struct review_load){.number = sqlite3_column_int(row, 0),
				     .canner = sqlite3_column_int64(row, 1),
				     .started = {.ms = sqlite3_column_int64(row, 3)}};
	const char *outcome = (const char *)sqlite3_column_text(row, 2);
	if (!outcome || !load_outcome_find(outcome, &load->outcome))
		load->outcome = LOAD_UNCLEAR;
	store_cut_text(row, 4, load->canner_name, sizeof load->canner_name);
	store_cut_text(row, 4, load->kind.name, sizeof load->kind.name);
	if (load->canner &&
	    !read_canner_kind((const char *)sqlite3_column_text(row, 5), &load->kind.kind))
		load->canner = 0;
	load->kind.holds_quarts = sqlite3_column_int(row, 6);
	load->kind.holds_pints = sqlite3_column_int(row, 7);
	load->kind.holds_half_pints = sqlite3_column_int(row, 8);
	return true;
}

static bool read_loads(struct reviewing *r)
{
	sqlite3_stmt *row;
	bool ok = true;
	r->batch.loads_n = 0;
	if (!store_cached(r->db,
			  "SELECT load.number, load.canner, load.outcome, load.started_ms, "
			  "canner.name, canner.kind, canner.holds_quarts, canner.holds_pints, "
			  "canner.holds_half_pints FROM load LEFT JOIN canner ON canner.id = "
			  "load.canner WHERE load.batch = ?1 ORDER BY load.number",
			  &row, r->err))
		return false;
	sqlite3_bind_int64(row, 1, r->batch.record.id);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_load(r, row);
	return store_done(r->db, row, r->err) && ok;
}

/* What was said of a load, the last word counting. */
static void take_facts(struct reviewing *r, const json_t *body, int offset_min)
{
	json_int_t number = json_integer_value(json_object_get(body, "number"));
	for (size_t i = 0; i < r->batch.loads_n; i++)
		if (r->batch.loads[i].number == number) {
			r->batch.loads[i].started.offset_min = offset_min;
			load_said_read(json_object_get(body, "facts"), &r->batch.loads[i].said);
		}
}

/* Of one entry of the batch, a row of kind, body and offset: the decision, or what was said. */
static bool take_event(struct reviewing *r, sqlite3_stmt *row)
{
	const char *kind = (const char *)sqlite3_column_text(row, 0);
	const char *text = (const char *)sqlite3_column_text(row, 1);
	json_t *body = NULL;
	if (text && !body_read(text, (size_t)sqlite3_column_bytes(row, 1), &body, r->err))
		return false;
	if (kind && strcmp(kind, "batch-start") == 0) {
		json_decref(r->batch.decision);
		r->batch.decision = json_incref(json_object_get(body, "decision"));
	} else if (body) {
		take_facts(r, body, sqlite3_column_int(row, 2));
	}
	json_decref(body);
	return true;
}

static bool read_events(struct reviewing *r)
{
	sqlite3_stmt *row;
	if (!store_cached(r->db,
			  "SELECT kind, body, offset_min FROM event WHERE subject = ?1 AND kind IN "
			  "('batch-start', 'load', 'load-amend') AND NOT EXISTS (SELECT 1 FROM "
			  "undone WHERE undone.event = event.id) AND NOT EXISTS (SELECT 1 FROM "
			  "conflict WHERE conflict.event = event.id) ORDER BY uuid",
			  &row, r->err))
		return false;
	sqlite3_bind_int64(row, 1, r->batch.record.id);
	bool ok = true;
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = take_event(r, row);
	return store_done(r->db, row, r->err) && ok;
}

/* --- Gauges --- */

static bool read_gauge(struct reviewing *r, struct review_load *load)
{
	sqlite3_stmt *row;
	char day[DATE_SIZE];
	if (load->canner == 0 || load->kind.kind != CANNER_DIAL_GAUGE)
		return true;
	if (!store_cached(
		r->db,
		"SELECT max(high_mpsi), max(error_mpsi) FROM (SELECT * FROM (SELECT high_mpsi, "
		"error_mpsi FROM gauge_test WHERE canner = ?1 AND tested < ?2 ORDER BY tested "
		"DESC, id DESC LIMIT 1) UNION ALL SELECT high_mpsi, error_mpsi FROM gauge_test "
		"WHERE canner = ?1 AND tested = ?2 UNION ALL SELECT * FROM (SELECT high_mpsi, "
		"error_mpsi FROM gauge_test WHERE canner = ?1 AND tested > ?2 ORDER BY tested, id "
		"LIMIT 1))",
		&row, r->err))
		return false;
	sqlite3_bind_int64(row, 1, load->canner);
	sqlite3_bind_text(row, 2, date_text(instant_date(load->started), day), -1, SQLITE_STATIC);
	if (sqlite3_step(row) == SQLITE_ROW && sqlite3_column_type(row, 0) == SQLITE_INTEGER) {
		load->gauge.known = true;
		load->gauge.high_mpsi = sqlite3_column_int(row, 0);
		load->gauge.error_mpsi = sqlite3_column_int(row, 1);
	}
	return store_done(r->db, row, r->err);
}

static bool read_gauges(struct reviewing *r)
{
	for (size_t i = 0; i < r->batch.loads_n; i++)
		if (!read_gauge(r, &r->batch.loads[i]))
			return false;
	return true;
}

/* --- Jars --- */

static bool add_jar(struct reviewing *r, sqlite3_stmt *row)
{
	struct review_case *batch = &r->batch;
	void *jars = room(batch->jars, batch->jars_n, &r->jars_room, sizeof *batch->jars, r->err);
	if (!jars)
		return false;
	batch->jars = jars;
	struct review_jar *jar = &batch->jars[batch->jars_n++];
	*jar = (struct review_jar){.number = sqlite3_column_int(row, 0),
				   .load = sqlite3_column_int(row, 1),
				   .late = sqlite3_column_int(row, 4) == 1,
				   .recalled = sqlite3_column_int(row, 5) == 1};
	store_cut_text(row, 2, jar->size, sizeof jar->size);
	const char *state = (const char *)sqlite3_column_text(row, 3);
	return (state && jar_state_find(state, &jar->state)) ||
	       error_failed(
		   r->err,
		   "household file '%s': a jar in it is damaged; run 'jarwright log verify'",
		   r->db->path);
}

static bool read_jars(struct reviewing *r)
{
	sqlite3_stmt *row;
	bool ok = true;
	r->batch.jars_n = 0;
	if (!store_cached(
		r->db,
		"SELECT number, load, size, state, late, EXISTS (SELECT 1 FROM recall_jar "
		"JOIN recall ON recall.id = recall_jar.recall WHERE recall_jar.batch = "
		"jar.batch AND recall_jar.number = jar.number AND recall.closed_ms IS "
		"NULL) FROM jar WHERE batch = ?1 ORDER BY number",
		&row, r->err))
		return false;
	sqlite3_bind_int64(row, 1, r->batch.record.id);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_jar(r, row);
	return store_done(r->db, row, r->err) && ok;
}

/* --- All of them --- */

static bool review_batches(struct reviewing *r, const struct review_filter *filter,
			   review_each *each, void *context)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(
		r->db,
		"SELECT " BATCH_COLUMNS " FROM batch JOIN event ON event.id = batch.id "
		"WHERE batch.keep = 'shelf' AND (?1 IS NULL OR batch.day >= ?1) AND (?2 IS "
		"NULL OR batch.food = ?2) AND (?3 = 0 OR EXISTS (SELECT 1 FROM load "
		"WHERE load.batch = batch.id AND load.canner = ?3)) AND (?4 OR EXISTS "
		"(SELECT 1 FROM jar WHERE jar.batch = batch.id AND (jar.gone = 0 OR "
		"jar.state = 'given')) OR EXISTS (SELECT 1 FROM batch_from WHERE "
		"from_batch = batch.id)) ORDER BY batch.id",
		&row, r->err))
		return false;
	if (filter->since)
		sqlite3_bind_text(row, 1, filter->since, -1, SQLITE_STATIC);
	if (filter->food)
		sqlite3_bind_text(row, 2, filter->food, -1, SQLITE_STATIC);
	sqlite3_bind_int64(row, 3, filter->canner);
	sqlite3_bind_int(row, 4, filter->all);
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		batch_record_read(row, &r->batch.record);
		ok = read_loads(r) && read_events(r) && read_gauges(r) && read_jars(r) &&
		     each(context, &r->batch, r->err);
		json_decref(r->batch.decision);
		r->batch.decision = NULL;
	}
	return store_done(r->db, row, r->err) && ok;
}

bool household_review(struct household *db, const struct review_filter *filter, review_each *each,
		      void *context, struct error *err)
{
	struct reviewing r = {.db = db, .err = err};
	if (!store_has_log(db))
		return true;
	if (!store_exec(db, "BEGIN", err))
		return false;
	bool ok = store_end(db, review_batches(&r, filter, each, context), err);
	free(r.batch.loads);
	free(r.batch.jars);
	return ok;
}
