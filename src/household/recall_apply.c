/* What the events of a recall do to the state. */
#include "jarwright/household_recalls.h"
#include "jarwright/jar_state.h"
#include "log.h"

static enum applied insert_jar(struct applying *a, int64_t batch, int number)
{
	sqlite3_stmt *add;
	if (!store_cached(
		a->db,
		"INSERT INTO recall_jar (recall, batch, number, disposition, note, at_ms) "
		"VALUES (?1, ?2, ?3, NULL, NULL, NULL)",
		&add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->subject);
	sqlite3_bind_int64(add, 2, batch);
	sqlite3_bind_int(add, 3, number);
	return apply_run(a, add);
}

/* A batch and jars of it, in the body or in an item of its list. */
static bool read_jars(struct applying *a, const json_t *item, int64_t *batch, struct jar_set *jars)
{
	const char *text = json_string_value(json_object_get(item, "jars"));
	if (body_uuid_id(a, json_object_get(item, "batch"), "batch-start", batch) && text &&
	    jar_set_parse(text, jars))
		return true;
	senseless(a, "recall: the jars it names are not in the log");
	return false;
}

static enum applied insert_jars(struct applying *a, const json_t *item)
{
	int64_t batch;
	struct jar_set jars;
	enum applied how = APPLIED;
	if (!read_jars(a, item, &batch, &jars))
		return SENSELESS;
	for (int n = jar_set_next(&jars, 0); n && how == APPLIED; n = jar_set_next(&jars, n))
		how = insert_jar(a, batch, n);
	return how;
}

enum applied apply_recall_open(struct applying *a)
{
	const json_t *jars = json_object_get(a->body, "jars");
	sqlite3_stmt *add;
	if (!body_plain_text(a, "what", RECALL_TEXT_SIZE - 1, true) ||
	    !body_plain_text(a, "why", RECALL_TEXT_SIZE - 1, false) ||
	    !body_is(a, "year", JSON_INTEGER) || !body_is(a, "number", JSON_INTEGER))
		return SENSELESS;
	if (!store_cached(
		a->db,
		"INSERT INTO recall (id, year, number, reason, what, why, opened_ms, closed_ms) "
		"VALUES (?1, ?5, ?6, ?2, ?3, ?7, ?4, NULL)",
		&add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->subject);
	bind_text(add, 2, a->body, "reason");
	bind_text(add, 3, a->body, "what");
	sqlite3_bind_int64(add, 4, a->event->at.ms);
	bind_integer(add, 5, a->body, "year");
	bind_integer(add, 6, a->body, "number");
	bind_text(add, 7, a->body, "why");
	enum applied how = apply_run(a, add);
	for (size_t i = 0; i < json_array_size(jars) && how == APPLIED; i++)
		how = insert_jars(a, json_array_get(jars, i));
	return how;
}

static enum applied record_jar(struct applying *a, int64_t batch, int number)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db,
			  "UPDATE recall_jar SET disposition = ?4, note = ?5, at_ms = ?6 "
			  "WHERE recall = ?1 AND batch = ?2 AND number = ?3 AND EXISTS "
			  "(SELECT 1 FROM recall WHERE id = ?1 AND closed_ms IS NULL)",
			  &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, batch);
	sqlite3_bind_int(write, 3, number);
	bind_text(write, 4, a->body, "disposition");
	bind_text(write, 5, a->body, "note");
	sqlite3_bind_int64(write, 6, a->event->at.ms);
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "recall: jar %d is not under this recall, or it is closed",
				 number);
	return how;
}

enum applied apply_recall_record(struct applying *a)
{
	int64_t batch;
	struct jar_set jars;
	const char *disposition;
	enum applied how = APPLIED;
	if (!body_text(a, "disposition", &disposition) || !read_jars(a, a->body, &batch, &jars))
		return SENSELESS;
	for (int n = jar_set_next(&jars, 0); n && how == APPLIED; n = jar_set_next(&jars, n))
		how = record_jar(a, batch, n);
	return how;
}

enum applied apply_recall_close(struct applying *a)
{
	sqlite3_stmt *write;
	if (!store_cached(
		a->db,
		"UPDATE recall SET closed_ms = ?2 WHERE id = ?1 AND closed_ms IS NULL AND "
		"NOT EXISTS (SELECT 1 FROM recall_jar WHERE recall = ?1 AND disposition IS "
		"NULL)",
		&write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, a->event->at.ms);
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a,
				 "recall: it is closed already, or jars are still open under it");
	return how;
}
