/* Taking an event back: by another event, and only if nothing rests on it. */
#include "log.h"

/* Does something still rest on this subject: its own later events, or another subject? */
static bool is_needed(struct household *db, int64_t subject, bool *needed, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(
		db,
		"SELECT EXISTS (SELECT 1 FROM event WHERE subject = ?1 AND id <> ?1 AND kind <> "
		"'undo' AND NOT EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id)) "
		"OR EXISTS (SELECT 1 FROM batch_lot WHERE lot = ?1) "
		"OR EXISTS (SELECT 1 FROM batch_from WHERE from_batch = ?1) "
		"OR EXISTS (SELECT 1 FROM load WHERE canner = ?1) "
		"OR EXISTS (SELECT 1 FROM recall_jar WHERE batch = ?1)",
		&query, err))
		return false;
	sqlite3_bind_int64(query, 1, subject);
	*needed = sqlite3_step(query) == SQLITE_ROW && sqlite3_column_int(query, 0) == 1;
	return store_done(db, query, err);
}

/* How many events of the subject make no sense. */
static bool count_conflicts(struct household *db, int64_t subject, int64_t *n, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT count(*) FROM event JOIN conflict ON conflict.event = event.id "
			  "WHERE event.subject = ?1",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, subject);
	*n = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int64(query, 0) : 0;
	return store_done(db, query, err);
}

static bool event_subject(struct household *db, int64_t event, int64_t *subject, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT subject FROM event WHERE id = ?1", &query, err))
		return false;
	sqlite3_bind_int64(query, 1, event);
	*subject = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int64(query, 0) : 0;
	return store_done(db, query, err);
}

static bool append_undo(struct household *db, int64_t event, int64_t subject, struct instant at,
			struct error *err)
{
	uint8_t uuid[UUID_SIZE];
	char text[UUID_TEXT_SIZE];
	if (!event_uuid(db, event, uuid, err))
		return false;
	hex_text(uuid, UUID_SIZE, text);
	return log_append(db, "undo", subject, at, json_pack("{s:s}", "event", text), NULL, err);
}

bool log_undo(struct household *db, int64_t event, struct instant at, struct error *err)
{
	int64_t subject, before, after;
	bool needed = false;
	if (!event_subject(db, event, &subject, err) ||
	    (event == subject && !is_needed(db, subject, &needed, err)))
		return false;
	if (needed)
		return error_usage(err,
				   "undo: other entries rest on this one; take those back first");
	if (!count_conflicts(db, subject, &before, err) ||
	    !append_undo(db, event, subject, at, err) || !state_refold(db, subject, err) ||
	    !count_conflicts(db, subject, &after, err))
		return false;
	return after <= before ||
	       error_usage(err, "undo: later entries rest on that one; take those back first");
}
