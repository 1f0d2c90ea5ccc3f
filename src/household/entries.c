/* The entries of the log as a person sees them, and finding those that she names. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_log.h"
#include "jarwright/text.h"
#include "log.h"

/* --- In words --- */

static const char *text_of(const json_t *body, const char *key)
{
	const char *text = json_string_value(json_object_get(body, key));
	return text ? text : "?";
}

/* "7 pint and 2 quart jars" */
static void jars_words(const json_t *body, char *out, size_t size)
{
	const json_t *jars = json_object_get(body, "jars");
	size_t n = 0;
	*out = '\0';
	for (size_t i = 0; i < json_array_size(jars) && n + 1 < size; i++) {
		const json_t *some = json_array_get(jars, i);
		int wrote = snprintf(out + n, size - n, "%s%lld %s", i ? " and " : "",
				     (long long)json_integer_value(json_object_get(some, "n")),
				     text_of(some, "size"));
		n += wrote > 0 ? (size_t)wrote : 0;
	}
}

static void say_load(const struct event *event, const json_t *body, char *out, size_t size)
{
	char jars[128];
	long long number = json_integer_value(json_object_get(body, "number"));
	jars_words(body, jars, sizeof jars);
	if (strcmp(event->kind, "load") == 0)
		snprintf(out, size, "load %lld of %s jars: %s", number, jars,
			 text_of(body, "outcome"));
	else if (strcmp(event->kind, "load-record") == 0)
		snprintf(out, size, "load %lld recorded in '%s': %s", number, text_of(body, "file"),
			 text_of(body, "shown"));
	else
		snprintf(out, size, "load %lld corrected: %s", number, text_of(body, "outcome"));
}

static void say_run(const struct event *event, const json_t *body, char *out, size_t size)
{
	(void)event;
	snprintf(out, size, "load %lld in the canner: %s, %s",
		 (long long)json_integer_value(json_object_get(body, "number")),
		 text_of(body, "stage"), text_of(body, "what"));
}

static void say_thing(const struct event *event, const json_t *body, char *out, size_t size)
{
	bool adds = strcmp(event->kind, "lot-add") == 0 || strcmp(event->kind, "canner-add") == 0;
	snprintf(out, size, "%s: '%s', %s", adds ? "added" : "changed", text_of(body, "name"),
		 text_of(body, "kind"));
}

static void say_jars(const struct event *event, const json_t *body, char *out, size_t size)
{
	const char *place = json_string_value(json_object_get(body, "place"));
	if (strcmp(event->kind, "seal") == 0)
		snprintf(out, size, "jars %s %s", text_of(body, "jars"),
			 json_is_true(json_object_get(body, "sealed")) ? "sealed" : "not sealed");
	else
		snprintf(out, size, "jars %s now: %s%s%s", text_of(body, "jars"),
			 text_of(body, "to"), place ? ", " : "", place ? place : "");
}

static void say_text(const struct event *event, const json_t *body, char *out, size_t size)
{
	static const struct {
		const char *kind, *lead, *key;
	} says[] = {
	    {"batch-start", "started: ", "title"},
	    {"batch-note", "note: ", "text"},
	    {"batch-amend", "corrected: ", "why"},
	    {"gauge-test", "gauge tested on ", "tested"},
	    {"recall-open", "recall opened on ", "what"},
	    {"recall-record", "recall: ", "disposition"},
	};
	static const struct {
		const char *kind, *words;
	} plain[] = {
	    {"canner-retire", "no longer in use"},
	    {"lot-finish", "used up"},
	    {"batch-finish", "finished"},
	    {"recall-close", "recall closed"},
	};
	snprintf(out, size, "%s", event->kind);
	for (size_t i = 0; i < sizeof says / sizeof *says; i++)
		if (strcmp(says[i].kind, event->kind) == 0)
			snprintf(out, size, "%s%s", says[i].lead, text_of(body, says[i].key));
	for (size_t i = 0; i < sizeof plain / sizeof *plain; i++)
		if (strcmp(plain[i].kind, event->kind) == 0)
			snprintf(out, size, "%s", plain[i].words);
}

static void say_ph(const struct event *event, const json_t *body, char *out, size_t size)
{
	long long milli = json_integer_value(json_object_get(body, "ph_milli"));
	(void)event;
	snprintf(out, size, "pH %lld.%03lld read%s", milli / 1000, milli % 1000,
		 json_is_true(json_object_get(body, "holds")) ? "" : ": kept off the shelf");
}

static void say(const struct event *event, char *out, size_t size)
{
	static const struct {
		const char *kind;
		void (*say)(const struct event *event, const json_t *body, char *out, size_t size);
	} sayers[] = {
	    {"load", say_load},        {"load-amend", say_load},  {"run-step", say_run},
	    {"seal", say_jars},        {"jar", say_jars},         {"lot-add", say_thing},
	    {"lot-change", say_thing}, {"canner-add", say_thing}, {"canner-change", say_thing},
	    {"batch-ph", say_ph},      {"load-record", say_load},
	};
	json_t *body = json_loadb(event->body, event->body_length, JSON_REJECT_DUPLICATES, NULL);
	size_t i = 0;
	while (i < sizeof sayers / sizeof *sayers && strcmp(sayers[i].kind, event->kind) != 0)
		i++;
	(i < sizeof sayers / sizeof *sayers ? sayers[i].say : say_text)(event, body, out, size);
	text_drop_partial(out);
	json_decref(body);
}

/* "took back entry tablet#6" */
static bool say_undo(struct household *db, const struct event *event, char *out, size_t size,
		     struct error *err)
{
	json_t *body = json_loadb(event->body, event->body_length, JSON_REJECT_DUPLICATES, NULL);
	const char *text = json_string_value(json_object_get(body, "event"));
	uint8_t uuid[UUID_SIZE];
	sqlite3_stmt *row;
	bool named = text && hex_parse(text, uuid, UUID_SIZE);
	json_decref(body);
	snprintf(out, size, "took back an entry that is not in this log");
	if (!named)
		return true;
	if (!store_cached(db,
			  "SELECT chain.name, event.seq FROM event JOIN chain ON chain.id = "
			  "event.chain WHERE event.uuid = ?1",
			  &row, err))
		return false;
	sqlite3_bind_blob(row, 1, uuid, UUID_SIZE, SQLITE_STATIC);
	if (sqlite3_step(row) == SQLITE_ROW)
		snprintf(out, size, "took back entry %s#%lld",
			 (const char *)sqlite3_column_text(row, 0),
			 (long long)sqlite3_column_int64(row, 1));
	return store_done(db, row, err);
}

/* --- Rows --- */

/* What the subject is, from the event that began it: its first name, or its name now. */
#define SUBJECT_WORDS                                                                              \
	"CASE WHEN batch.id IS NOT NULL THEN 'batch ' || CASE WHEN batch.year BETWEEN 2000 AND "   \
	"2099 THEN printf('%02d', batch.year - 2000) ELSE batch.year END || "                      \
	"printf('-%03d', batch.number) WHEN lot.id IS NOT NULL THEN 'lot ''' || lot.name || '''' " \
	"WHEN canner.id IS NOT NULL THEN 'canner ''' || canner.name || '''' "                      \
	"WHEN recall.id IS NOT NULL THEN 'recall on ' || recall.what "                             \
	"ELSE substr(first.kind, 1, instr(first.kind, '-') - 1) || ' taken back' END"

#define ENTRY_COLUMNS                                                                              \
	EVENT_COLUMNS ", chain.name, " SUBJECT_WORDS ", undone.event IS NOT NULL, conflict.why "   \
		      "FROM event JOIN chain ON chain.id = event.chain "                           \
		      "JOIN event AS first ON first.id = event.subject "                           \
		      "LEFT JOIN batch ON batch.id = event.subject "                               \
		      "LEFT JOIN lot ON lot.id = event.subject "                                   \
		      "LEFT JOIN canner ON canner.id = event.subject "                             \
		      "LEFT JOIN recall ON recall.id = event.subject "                             \
		      "LEFT JOIN undone ON undone.event = event.id "                               \
		      "LEFT JOIN conflict ON conflict.event = event.id "

static bool read_entry(struct household *db, sqlite3_stmt *row, struct log_entry *out,
		       struct error *err)
{
	struct event event;
	memset(out, 0, sizeof *out);
	if (!event_read(row, &event))
		return error_failed(err,
				    "household file '%s': its log is damaged; run 'jarwright log "
				    "verify'",
				    db->path);
	out->number = event.seq;
	out->at = event.at;
	hex_text(event.uuid, UUID_SIZE, out->uuid);
	memcpy(out->kind, event.kind, sizeof out->kind);
	store_cut_text(row, 10, out->device, sizeof out->device);
	store_cut_text(row, 11, out->subject, sizeof out->subject);
	out->undone = sqlite3_column_int(row, 12) != 0;
	store_cut_text(row, 13, out->conflict, sizeof out->conflict);
	if (strcmp(event.kind, "undo") == 0)
		return say_undo(db, &event, out->words, sizeof out->words, err);
	say(&event, out->words, sizeof out->words);
	return true;
}

static bool add_entry(struct household *db, sqlite3_stmt *row, struct log_entries *out,
		      struct error *err)
{
	/* Doubled when full: when n is a power of two. */
	if ((out->n & (out->n - 1)) == 0) {
		size_t room = out->n ? out->n * 2 : 1;
		struct log_entry *more = realloc(out->items, room * sizeof *more);
		if (!more)
			return error_failed(err,
					    "log: out of memory; say fewer entries with --last N");
		out->items = more;
	}
	return read_entry(db, row, &out->items[out->n++], err);
}

void log_entries_release(struct log_entries *entries)
{
	free(entries->items);
	memset(entries, 0, sizeof *entries);
}

/* --- Names --- */

/* "#12" or "tablet#12". */
static bool find_numbered(struct household *db, const char *text, int64_t *event, struct error *err)
{
	const char *sign = strrchr(text, '#');
	char *end = NULL;
	sqlite3_stmt *query;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	*event = 0;
	long long number = sign[1] >= '0' && sign[1] <= '9' ? strtoll(sign + 1, &end, 10) : 0;
	if (number <= 0 || *end)
		return error_usage(err, "log: '%s' names no entry; type its number: #12", shown);
	if (!store_cached(db,
			  "SELECT max(event.id), count(*) FROM event JOIN chain ON chain.id = "
			  "event.chain WHERE event.seq = ?2 AND CASE ?1 WHEN '' THEN chain.own = 1 "
			  "ELSE chain.name = ?1 COLLATE NOCASE END",
			  &query, err))
		return false;
	sqlite3_bind_text(query, 1, text, (int)(sign - text), SQLITE_STATIC);
	sqlite3_bind_int64(query, 2, number);
	int n = 0;
	if (sqlite3_step(query) == SQLITE_ROW) {
		*event = sqlite3_column_int64(query, 0);
		n = sqlite3_column_int(query, 1);
	}
	if (!store_done(db, query, err))
		return false;
	if (n > 1)
		return error_usage(
		    err,
		    "log: %d devices have an entry '%s'; type its UUID, as 'jarwright "
		    "log show --json' prints it",
		    n, shown);
	return n == 1 ||
	       error_usage(err, "log: there is no entry '%s'; see 'jarwright log show'", shown);
}

/* What a name means: one event, or a subject; both 0: everything. */
struct meant {
	int64_t event, subject;
};

static bool find_uuid(struct household *db, const uint8_t uuid[UUID_SIZE], int64_t *event,
		      struct error *err)
{
	return event_find(db, uuid, event, err) &&
	       (*event ||
		error_usage(err, "log: no entry has that UUID; see 'jarwright log show'"));
}

static bool find_meant(struct household *db, const struct log_name *of, struct meant *out,
		       struct error *err)
{
	uint8_t uuid[UUID_SIZE];
	const char *first = of->words[0], *second = of->words[1];
	memset(out, 0, sizeof *out);
	if (!first)
		return true;
	if (strcmp(first, "lot") == 0 && second)
		return find_lot(db, second, &out->subject, err);
	if (strcmp(first, "canner") == 0 && second)
		return find_canner(db, second, &out->subject, err);
	if (second)
		return error_usage(err, "log: say a batch's code, lot NAME, canner NAME, or the "
					"number of an entry: #12");
	if (strchr(first, '#'))
		return find_numbered(db, first, &out->event, err);
	if (strlen(first) == (size_t)2 * UUID_SIZE && hex_parse(first, uuid, UUID_SIZE))
		return find_uuid(db, uuid, &out->event, err);
	return find_batch(db, first, &out->subject, err);
}

/* Each its own text, so that each goes by an index; ?2: at most so many, the latest. */
#define ENTRIES(where)                                                                             \
	"SELECT " ENTRY_COLUMNS "WHERE event.id IN (SELECT id FROM event WHERE " where             \
	" ORDER BY uuid DESC LIMIT ?2) ORDER BY event.uuid"

static const char *entries_of(const struct meant *meant)
{
	if (meant->event)
		return ENTRIES("id = ?1");
	return meant->subject ? ENTRIES("subject = ?1") : ENTRIES("?1 = 0");
}

bool household_log_entries(struct household *db, const struct log_name *of, size_t last,
			   struct log_entries *out, struct error *err)
{
	struct meant meant;
	sqlite3_stmt *row;
	bool ok = true;
	memset(out, 0, sizeof *out);
	if (!store_has_log(db))
		return !db->sql || store_too_old(db, err);
	if (!find_meant(db, of, &meant, err) || !store_cached(db, entries_of(&meant), &row, err))
		return false;
	sqlite3_bind_int64(row, 1, meant.event ? meant.event : meant.subject);
	sqlite3_bind_int64(row, 2, last ? (int64_t)last : -1);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_entry(db, row, out, err);
	if (store_done(db, row, err) && ok)
		return true;
	log_entries_release(out);
	return false;
}

/* --- Taking back --- */

/* In a chain UUIDs go up with its numbers. */
#define LATEST(of, order)                                                                          \
	"SELECT id FROM event WHERE " of " = ?1 AND kind <> 'undo' AND NOT EXISTS (SELECT 1 FROM " \
	"undone WHERE undone.event = event.id) ORDER BY " order " DESC LIMIT 1"

/* The latest entry of a subject, or of this device, that can be taken back. */
static bool find_latest(struct household *db, int64_t subject, int64_t *event, struct error *err)
{
	sqlite3_stmt *query;
	struct chain_head own;
	*event = 0;
	if (!chain_own(db, &own, err) ||
	    !store_cached(db, subject ? LATEST("subject", "uuid") : LATEST("chain", "seq"), &query,
			  err))
		return false;
	sqlite3_bind_int64(query, 1, subject ? subject : own.chain);
	if (sqlite3_step(query) == SQLITE_ROW)
		*event = sqlite3_column_int64(query, 0);
	return store_done(db, query, err) &&
	       (*event || error_usage(err, "undo: there is nothing to take back"));
}

static bool read_event(struct household *db, int64_t event, struct log_entry *out,
		       struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, "SELECT " ENTRY_COLUMNS "WHERE event.id = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, event);
	bool ok = sqlite3_step(row) == SQLITE_ROW
		      ? read_entry(db, row, out, err)
		      : error_usage(err, "undo: there is no such entry");
	return store_done(db, row, err) && ok;
}

static bool undo_named(struct household *db, const struct log_name *of, struct instant at,
		       struct log_entry *out, struct error *err)
{
	struct meant meant;
	return find_meant(db, of, &meant, err) &&
	       (meant.event || find_latest(db, meant.subject, &meant.event, err)) &&
	       read_event(db, meant.event, out, err) && log_undo(db, meant.event, at, err);
}

bool household_undo(struct household *db, const struct log_name *of, struct instant at,
		    struct log_entry *out, struct error *err)
{
	return log_begin(db, err) && log_end(db, undo_named(db, of, at, out, err), err);
}
