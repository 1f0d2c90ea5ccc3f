#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"
#include "log.h"

/* --- Taking back --- */

static bool insert_undone(struct applying *a, int64_t event)
{
	sqlite3_stmt *add;
	if (!store_cached(a->db, "INSERT INTO undone (event, by) VALUES (?1, ?2)", &add, a->err))
		return false;
	sqlite3_bind_int64(add, 1, event);
	sqlite3_bind_int64(add, 2, a->event->id);
	return store_run(a->db, add, a->err);
}

/* Is the event of this subject, not taken back already, and of a kind that can be? */
static bool look_up(struct applying *a, int64_t event, bool *may)
{
	sqlite3_stmt *query;
	if (!store_cached(a->db,
			  "SELECT subject = ?2 AND kind NOT IN ('undo', 'run-step') AND "
			  "NOT EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id) "
			  "FROM event WHERE id = ?1",
			  &query, a->err))
		return false;
	sqlite3_bind_int64(query, 1, event);
	sqlite3_bind_int64(query, 2, a->event->subject);
	*may = sqlite3_step(query) == SQLITE_ROW && sqlite3_column_int(query, 0) == 1;
	return store_done(a->db, query, a->err);
}

/* Only marks the event: log_undo() and the rebuilding work the state out anew. */
static enum applied apply_undo(struct applying *a)
{
	int64_t event;
	bool may;
	if (!body_uuid_id(a, json_object_get(a->body, "event"), NULL, &event))
		return senseless(a, "undo: the entry it names is not in the log");
	if (!look_up(a, event, &may))
		return APPLY_FAILED;
	if (!may)
		return senseless(a, "undo: that entry is taken back already, or is an undo itself, "
				    "or what a clock counted");
	return insert_undone(a, event) ? APPLIED : APPLY_FAILED;
}

/* --- The kinds of events --- */

static const struct kind {
	const char *word;
	bool begins;
	apply_function *apply;
} kinds[] = {
    {"jar", false, apply_jar},
    {"load", false, apply_load},
    {"seal", false, apply_seal},
    {"batch-start", true, apply_batch_start},
    {"batch-amend", false, apply_batch_amend},
    {"batch-note", false, apply_batch_note},
    {"batch-ph", false, apply_batch_ph},
    {"batch-finish", false, apply_batch_finish},
    {"load-amend", false, apply_load_amend},
    {"load-record", false, apply_load_record},
    {"run-step", false, apply_run_step},
    {"canner-add", true, apply_canner_add},
    {"canner-change", false, apply_canner_change},
    {"canner-retire", false, apply_canner_retire},
    {"gauge-test", false, apply_gauge_test},
    {"lot-add", true, apply_lot_add},
    {"lot-change", false, apply_lot_change},
    {"lot-finish", false, apply_lot_finish},
    {"recall-open", true, apply_recall_open},
    {"recall-record", false, apply_recall_record},
    {"recall-close", false, apply_recall_close},
    {"undo", false, apply_undo},
};

static const struct kind *find_kind(const char *word)
{
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(kinds[i].word, word) == 0)
			return &kinds[i];
	return NULL;
}

bool kind_known(const char *kind, bool *begins)
{
	const struct kind *known = find_kind(kind);
	*begins = known && known->begins;
	return known != NULL;
}

enum applied apply_event(struct household *db, const struct event *event, char why[256],
			 struct error *err)
{
	struct applying a = {.db = db, .event = event, .err = err};
	const struct kind *kind = find_kind(event->kind);
	enum applied how;
	if (!body_read(event->body, event->body_length, &a.body, err))
		return APPLY_FAILED;
	if (!kind || kind->begins != (event->subject == event->id))
		how =
		    senseless(&a, "log: this jarwright knows no such entry: '%.31s'", event->kind);
	else if (!json_is_object(a.body))
		how = senseless(&a, "log: the entry '%s' has no readable body", event->kind);
	else
		how = kind->apply(&a);
	json_decref(a.body);
	memcpy(why, a.why, sizeof a.why);
	/* A look that failed is no reason to call an entry senseless. */
	return a.failed ? APPLY_FAILED : how;
}

/* --- What the apply functions share --- */

enum applied senseless(struct applying *a, const char *format, ...)
{
	va_list arguments;
	if (a->why[0])
		return SENSELESS; /* the first reason stands */
	va_start(arguments, format);
	vsnprintf(a->why, sizeof a->why, format, arguments);
	va_end(arguments);
	return SENSELESS;
}

enum applied apply_run(struct applying *a, sqlite3_stmt *statement)
{
	int code;
	do
		code = sqlite3_step(statement);
	while (code == SQLITE_ROW);
	if (code == SQLITE_DONE) {
		sqlite3_reset(statement);
		return APPLIED;
	}
	if ((code & 0xff) == SQLITE_CONSTRAINT) {
		enum applied how = senseless(a, "log: the entry '%s' cannot be: %s", a->event->kind,
					     sqlite3_errmsg(a->db->sql));
		sqlite3_reset(statement);
		return how;
	}
	store_failed(a->db, a->err);
	sqlite3_reset(statement);
	return APPLY_FAILED;
}

static bool wrong(struct applying *a, const char *key)
{
	senseless(a, "log: the entry '%s' has no '%s' that can be one", a->event->kind, key);
	return false;
}

bool body_text(struct applying *a, const char *key, const char **out)
{
	*out = json_string_value(json_object_get(a->body, key));
	return *out || wrong(a, key);
}

bool body_integer(struct applying *a, const char *key, int64_t *out)
{
	const json_t *value = json_object_get(a->body, key);
	*out = json_integer_value(value);
	return json_is_integer(value) || wrong(a, key);
}

bool body_flag(struct applying *a, const char *key, bool *out)
{
	const json_t *value = json_object_get(a->body, key);
	*out = json_is_true(value);
	return json_is_boolean(value) || wrong(a, key);
}

bool body_is(struct applying *a, const char *key, json_type type)
{
	const json_t *value = json_object_get(a->body, key);
	return !value || json_typeof(value) == type || wrong(a, key);
}

bool body_plain_text(struct applying *a, const char *key, size_t most, bool needed)
{
	const json_t *value = json_object_get(a->body, key);
	const char *text = json_string_value(value);
	if (!value && !needed)
		return true;
	return (text && *text && json_string_length(value) <= most &&
		plain_text_check(text) == PLAIN_TEXT) ||
	       wrong(a, key);
}

bool body_date(struct applying *a, const char *key, bool needed)
{
	const json_t *value = json_object_get(a->body, key);
	const char *text = json_string_value(value);
	struct date date;
	struct error ignored = {0};
	if (!value && !needed)
		return true;
	return (text && date_parse(key, text, &date, &ignored)) || wrong(a, key);
}

bool body_uuid_id(struct applying *a, const json_t *value, const char *kind, int64_t *id)
{
	uint8_t uuid[UUID_SIZE];
	const char *text = json_string_value(value);
	sqlite3_stmt *query;
	*id = 0;
	if (!text || !hex_parse(text, uuid, UUID_SIZE))
		return false;
	a->failed = !store_cached(
	    a->db, "SELECT id FROM event WHERE uuid = ?1 AND (?2 IS NULL OR kind = ?2)", &query,
	    a->err);
	if (a->failed)
		return false;
	sqlite3_bind_blob(query, 1, uuid, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_text(query, 2, kind, -1, SQLITE_STATIC);
	if (sqlite3_step(query) == SQLITE_ROW)
		*id = sqlite3_column_int64(query, 0);
	a->failed = !store_done(a->db, query, a->err);
	return !a->failed && *id != 0;
}

bool body_set_text(json_t *body, const char *key, const char *text)
{
	return !text || json_object_set_new(body, key, json_string(text)) == 0;
}

bool body_set_integer(json_t *body, const char *key, bool stated, int64_t integer)
{
	return !stated || json_object_set_new(body, key, json_integer(integer)) == 0;
}

void bind_text(sqlite3_stmt *statement, int at, const json_t *body, const char *key)
{
	const json_t *value = json_object_get(body, key);
	if (json_is_string(value))
		sqlite3_bind_text(statement, at, json_string_value(value),
				  (int)json_string_length(value), SQLITE_STATIC);
	else
		sqlite3_bind_null(statement, at);
}

void bind_integer(sqlite3_stmt *statement, int at, const json_t *body, const char *key)
{
	const json_t *value = json_object_get(body, key);
	if (json_is_integer(value))
		sqlite3_bind_int64(statement, at, json_integer_value(value));
	else
		sqlite3_bind_null(statement, at);
}
