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
		"OR EXISTS (SELECT 1 FROM run WHERE canner = ?1) "
		"OR EXISTS (SELECT 1 FROM recall_jar WHERE batch = ?1)",
		&query, err))
		return false;
	sqlite3_bind_int64(query, 1, subject);
	*needed = sqlite3_step(query) == SQLITE_ROW && sqlite3_column_int(query, 0) == 1;
	return store_done(db, query, err);
}

/*
 * What hangs in the air: events of the subject that make no sense, but for the one to be taken
 * back, and jars that another batch or a recall names but that are not there.
 */
static bool count_loose(struct household *db, int64_t subject, int64_t event, int64_t *n,
			struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(
		db,
		"SELECT (SELECT count(*) FROM event JOIN conflict ON conflict.event = event.id "
		"WHERE event.subject = ?1 AND event.id <> ?2) + "
		"(SELECT count(*) FROM batch_from WHERE from_batch = ?1 AND NOT EXISTS "
		"(SELECT 1 FROM jar WHERE jar.batch = ?1 AND jar.number = from_number)) + "
		"(SELECT count(*) FROM recall_jar WHERE batch = ?1 AND NOT EXISTS "
		"(SELECT 1 FROM jar WHERE jar.batch = ?1 AND jar.number = recall_jar.number))",
		&query, err))
		return false;
	sqlite3_bind_int64(query, 1, subject);
	sqlite3_bind_int64(query, 2, event);
	*n = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int64(query, 0) : 0;
	return store_done(db, query, err);
}

/*
 * Jars are numbered in the order of the loads, and the numbers stand on their lids: a load that
 * others follow stays.
 */
static bool is_followed(struct household *db, int64_t event, bool *followed, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(
		db,
		"SELECT 1 FROM event AS it JOIN event AS later ON later.subject = it.subject AND "
		"later.kind = 'load' AND later.uuid > it.uuid WHERE it.id = ?1 AND it.kind = "
		"'load' "
		"AND NOT EXISTS (SELECT 1 FROM undone WHERE undone.event = later.id)",
		&query, err))
		return false;
	sqlite3_bind_int64(query, 1, event);
	*followed = sqlite3_step(query) == SQLITE_ROW;
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

static bool may_go(struct household *db, int64_t event, int64_t subject, struct error *err)
{
	bool needed = false, followed;
	if ((event == subject && !is_needed(db, subject, &needed, err)) ||
	    !is_followed(db, event, &followed, err))
		return false;
	if (needed)
		return error_usage(err,
				   "undo: other entries rest on this one; take those back first");
	return !followed ||
	       error_usage(err, "undo: a later load's jars are numbered after those of this one; "
				"take that load back first, or correct this one");
}

/* Without "lost" in it, an interrupted process would count as a whole one. */
static bool is_no_run_step(struct household *db, int64_t event, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT 1 FROM event WHERE id = ?1 AND kind = 'run-step'", &query,
			  err))
		return false;
	sqlite3_bind_int64(query, 1, event);
	bool step = sqlite3_step(query) == SQLITE_ROW;
	return store_done(db, query, err) &&
	       (!step || error_usage(err, "undo: what 'jarwright run' counted is not taken back "
					  "step by step; begin its step again with b in "
					  "'jarwright run', or give the load up with --abandon"));
}

bool log_undo(struct household *db, int64_t event, struct instant at, struct error *err)
{
	int64_t subject, before, after;
	if (!event_subject(db, event, &subject, err) || !is_no_run_step(db, event, err) ||
	    !may_go(db, event, subject, err) || !count_loose(db, subject, event, &before, err) ||
	    !append_undo(db, event, subject, at, err) || !state_refold(db, subject, err) ||
	    !count_loose(db, subject, event, &after, err))
		return false;
	return after <= before ||
	       error_usage(err, "undo: later entries rest on that one; take those back first");
}
