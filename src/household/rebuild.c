/* The state worked out anew from the events: of one subject, or all of it. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_log.h"
#include "log.h"

/* What of the state belongs to a subject, by the column that names it. */
static const char *const forget[] = {
    "DELETE FROM gauge_test WHERE canner = ?1",
    "DELETE FROM canner WHERE id = ?1",
    "DELETE FROM lot WHERE id = ?1",
    "DELETE FROM jar WHERE batch = ?1",
    "DELETE FROM load WHERE batch = ?1",
    "DELETE FROM run WHERE batch = ?1",
    "DELETE FROM batch_from WHERE batch = ?1",
    "DELETE FROM batch_lot WHERE batch = ?1",
    "DELETE FROM batch WHERE id = ?1",
    "DELETE FROM recall_jar WHERE recall = ?1",
    "DELETE FROM recall WHERE id = ?1",
};

static bool run_with(struct household *db, const char *text, int64_t id, struct error *err)
{
	sqlite3_stmt *statement;
	if (!store_cached(db, text, &statement, err))
		return false;
	sqlite3_bind_int64(statement, 1, id);
	return store_run(db, statement, err);
}

static bool forget_subject(struct household *db, int64_t subject, struct error *err)
{
	for (size_t i = 0; i < sizeof forget / sizeof *forget; i++)
		if (!run_with(db, forget[i], subject, err))
			return false;
	return true;
}

static bool mark_conflict(struct household *db, int64_t event, const char *why, struct error *err)
{
	sqlite3_stmt *add;
	if (!store_cached(db, "INSERT INTO conflict (event, why) VALUES (?1, ?2)", &add, err))
		return false;
	sqlite3_bind_int64(add, 1, event);
	sqlite3_bind_text(add, 2, why, -1, SQLITE_STATIC);
	return store_run(db, add, err);
}

static bool damaged(struct household *db, struct error *err)
{
	return error_failed(
	    err, "household file '%s': its log is damaged; run 'jarwright log verify'", db->path);
}

/* The next of the subject's events that count, in order. */
static bool prepare_events(struct household *db, int64_t subject, sqlite3_stmt **out,
			   struct error *err)
{
	if (!store_cached(db,
			  "SELECT " EVENT_COLUMNS
			  " FROM event WHERE subject = ?1 AND kind <> 'undo' "
			  "AND NOT EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id) "
			  "AND NOT EXISTS (SELECT 1 FROM conflict WHERE conflict.event = event.id) "
			  "ORDER BY uuid",
			  out, err))
		return false;
	sqlite3_bind_int64(*out, 1, subject);
	return true;
}

/* Applies the event of a row; *again: it made no sense, and is marked. */
static bool apply_row(struct household *db, sqlite3_stmt *row, bool *again, struct error *err)
{
	struct event event;
	char why[256];
	if (!event_read(row, &event))
		return damaged(db, err);
	enum applied how = apply_event(db, &event, why, err);
	*again = how == SENSELESS;
	return *again ? mark_conflict(db, event.id, why, err) : how == APPLIED;
}

/* One walk through the subject's events, up to one that makes no sense. */
static bool walk(struct household *db, int64_t subject, bool *again, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	*again = false;
	if (!prepare_events(db, subject, &row, err))
		return false;
	while (ok && !*again && sqlite3_step(row) == SQLITE_ROW)
		ok = apply_row(db, row, again, err);
	return store_done(db, row, err) && ok;
}

/* Without what made no sense: it is not tried again once it is marked. clean: nothing of the
 * subject is in the state yet. */
static bool fold(struct household *db, int64_t subject, bool clean, struct error *err)
{
	for (bool again = true; again; clean = false)
		if ((!clean && !forget_subject(db, subject, err)) ||
		    !walk(db, subject, &again, err))
			return false;
	return true;
}

bool state_refold(struct household *db, int64_t subject, struct error *err)
{
	return run_with(db,
			"DELETE FROM conflict WHERE event IN "
			"(SELECT id FROM event WHERE subject = ?1 AND kind <> 'undo')",
			subject, err) &&
	       fold(db, subject, false, err);
}

static const char forget_all[] =
    "DELETE FROM gauge_test; DELETE FROM canner; DELETE FROM lot; DELETE FROM jar;"
    "DELETE FROM load; DELETE FROM run; DELETE FROM batch_from; DELETE FROM batch_lot; DELETE FROM "
    "batch;"
    "DELETE FROM recall_jar; DELETE FROM recall; DELETE FROM conflict; DELETE FROM undone;";

/* What every undo took back, in the order of the log; the others make no sense. */
static bool mark_undone(struct household *db, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true, again;
	if (!store_cached(db,
			  "SELECT " EVENT_COLUMNS " FROM event WHERE kind = 'undo' ORDER BY uuid",
			  &row, err))
		return false;
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = apply_row(db, row, &again, err);
	return store_done(db, row, err) && ok;
}

bool state_rebuild(struct household *db, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	/* While nothing is there, an undo only marks what it takes back. */
	if (!store_exec(db, forget_all, err) || !mark_undone(db, err) ||
	    !store_cached(db, "SELECT id FROM event WHERE id = subject ORDER BY id", &row, err))
		return false;
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = fold(db, sqlite3_column_int64(row, 0), true, err);
	return store_done(db, row, err) && ok;
}

bool household_rebuild(struct household *db, struct error *err)
{
	return log_begin(db, err) && log_end(db, state_rebuild(db, err), err);
}
