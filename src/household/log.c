#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log.h"

bool log_begin(struct household *db, struct error *err)
{
	if (!store_begin(db, err))
		return false;
	db->logging = true;
	return true;
}

bool log_end(struct household *db, bool ok, struct error *err)
{
	bool held = store_end(db, ok, err);
	db->logging = false;
	return held;
}

/* The highest id and the latest UUID; each by its index. */
static bool last_event(struct household *db, int64_t *id, bool *any, uint8_t uuid[UUID_SIZE],
		       struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT (SELECT max(id) FROM event), (SELECT max(uuid) FROM event)",
			  &query, err))
		return false;
	*any = sqlite3_step(query) == SQLITE_ROW && sqlite3_column_bytes(query, 1) == UUID_SIZE;
	*id = *any ? sqlite3_column_int64(query, 0) : 0;
	if (*any)
		memcpy(uuid, sqlite3_column_blob(query, 1), UUID_SIZE);
	return store_done(db, query, err);
}

/* Everything of the event but its body. */
static bool address(struct household *db, const char *kind, int64_t subject,
		    const struct chain_head *head, struct event *event, uint8_t of[UUID_SIZE],
		    struct error *err)
{
	int64_t last;
	bool any, begins;
	uint8_t latest[UUID_SIZE];
	if (!last_event(db, &last, &any, latest, err) ||
	    !uuid_make(any ? latest : NULL, event->uuid, err))
		return false;
	if (!kind_known(kind, &begins) || begins != (subject == 0))
		return error_failed(err, "log: no event '%s' can be about that", kind);
	snprintf(event->kind, sizeof event->kind, "%s", kind);
	if (last >= INT64_MAX - 1 || head->last_seq >= INT64_MAX - 1)
		return error_failed(err,
				    "household file '%s': its log is damaged; run 'jarwright log "
				    "verify'",
				    db->path);
	event->id = last + 1;
	event->chain = head->chain;
	event->seq = head->last_seq + 1;
	event->subject = begins ? event->id : subject;
	memcpy(of, event->uuid, UUID_SIZE);
	return begins || event_uuid(db, subject, of, err);
}

/* Applies an event just written: here, what makes no sense is refused. */
static bool apply_new(struct household *db, const struct event *event, struct error *err)
{
	char why[256];
	switch (apply_event(db, event, why, err)) {
	case APPLIED:
		return true;
	case SENSELESS:
		return error_usage(err, "%s", why);
	default:
		return false;
	}
}

static bool append_text(struct household *db, const char *kind, int64_t subject, struct instant at,
			const char *body, int64_t *id, struct error *err)
{
	struct chain_head head;
	uint8_t of[UUID_SIZE];
	struct event event = {.at = at, .body = body, .body_length = strlen(body)};
	if (!chain_own(db, &head, err) || !address(db, kind, subject, &head, &event, of, err) ||
	    !event_hash(&event, head.last_hash, head.device, of, event.hash, err) ||
	    !event_insert(db, &event, err) ||
	    !chain_advance(db, head.chain, event.seq, event.hash, err) ||
	    !apply_new(db, &event, err))
		return false;
	if (id)
		*id = event.id;
	return true;
}

static bool moment_check(struct instant at, struct error *err)
{
	if (instant_in_range(at))
		return true;
	return error_usage(err, "log: the moment is outside the years 1970 to 9999; look at the "
				"clock of this device");
}

bool log_append(struct household *db, const char *kind, int64_t subject, struct instant at,
		json_t *body, int64_t *id, struct error *err)
{
	char *text = body_write(body);
	json_decref(body);
	if (!text)
		return error_failed(err, "log: out of memory; close other programs and try again");
	bool ok = moment_check(at, err) && append_text(db, kind, subject, at, text, id, err);
	free(text);
	return ok;
}
