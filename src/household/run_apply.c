/* What the events of a running load do to the state. */
#include <string.h>

#include "jarwright/run.h"
#include "jarwright/text.h"
#include "log.h"

/* A clock that counts from the start of the machine: thirty years in milliseconds. */
#define CLOCK_MOST_MS INT64_C(1000000000000)

/* The words and readings of the body; what another device may send is not trusted. */
static bool read_body(struct applying *a, enum run_event *event, int64_t *number)
{
	const char *what, *stage;
	enum run_stage in;
	int64_t ms;
	if (!body_integer(a, "number", number) || !body_text(a, "what", &what) ||
	    !body_text(a, "stage", &stage) || !body_integer(a, "clock_ms", &ms))
		return false;
	const json_t *boot = json_object_get(a->body, "boot"),
		     *seen = json_object_get(a->body, "seen_ms");
	bool fits = run_event_find(what, event) && *event != RUN_TICK &&
		    run_stage_find(stage, &in) && ms >= 0 && ms <= CLOCK_MOST_MS &&
		    json_is_string(boot) && json_string_length(boot) < RUN_BOOT_SIZE &&
		    plain_text_check(json_string_value(boot)) == PLAIN_TEXT &&
		    (!seen || (json_is_integer(seen) && json_integer_value(seen) >= 0 &&
			       json_integer_value(seen) <= CLOCK_MOST_MS));
	if (!fits)
		senseless(a, "run: the entry says nothing that can happen to a load");
	return fits;
}

static enum applied begin(struct applying *a, int64_t number)
{
	sqlite3_stmt *add;
	int64_t canner;
	if (!body_uuid_id(a, json_object_get(a->body, "canner"), "canner-add", &canner))
		return senseless(a, "run: the canner it names is not in the log");
	if (!store_cached(
		a->db,
		"INSERT INTO run (batch, number, canner, stage, began_ms) "
		"SELECT id, ?2, ?3, ?4, ?5 FROM batch WHERE id = ?1 AND keep = 'shelf' AND "
		"NOT EXISTS (SELECT 1 FROM load WHERE load.batch = ?1 AND load.number = ?2)",
		&add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->subject);
	sqlite3_bind_int64(add, 2, number);
	sqlite3_bind_int64(add, 3, canner);
	bind_text(add, 4, a->body, "stage");
	sqlite3_bind_int64(add, 5, a->event->at.ms);
	enum applied how = apply_run(a, add);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "run: the batch cannot have load %lld in a canner",
				 (long long)number);
	return how;
}

static enum applied change(struct applying *a, const char *text, int64_t number)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db, text, &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, number);
	return apply_run(a, write);
}

enum applied apply_run_over(struct applying *a, int64_t number)
{
	return change(a, "DELETE FROM run WHERE batch = ?1 AND number = ?2", number);
}

/* Only that it is there is asked of what goes on: the clock makes sense of the rest. */
static enum applied go_on(struct applying *a, int64_t number)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db, "UPDATE run SET stage = ?3 WHERE batch = ?1 AND number = ?2",
			  &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, number);
	bind_text(write, 3, a->body, "stage");
	return apply_run(a, write);
}

enum applied apply_run_step(struct applying *a)
{
	enum run_event event;
	int64_t number;
	if (!read_body(a, &event, &number))
		return SENSELESS;
	if (event == RUN_BEGIN)
		return begin(a, number);
	enum applied how = event == RUN_ABANDON ? apply_run_over(a, number) : go_on(a, number);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "run: load %lld of the batch is not running",
				 (long long)number);
	return how;
}
