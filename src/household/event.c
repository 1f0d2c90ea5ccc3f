#include <string.h>

#include "log.h"

bool event_read(sqlite3_stmt *row, struct event *out)
{
	const char *kind = (const char *)sqlite3_column_text(row, 5);
	size_t kind_length = (size_t)sqlite3_column_bytes(row, 5);
	out->id = sqlite3_column_int64(row, 0);
	out->chain = sqlite3_column_int64(row, 1);
	out->seq = sqlite3_column_int64(row, 2);
	out->subject = sqlite3_column_int64(row, 4);
	out->at.ms = sqlite3_column_int64(row, 6);
	out->at.offset_min = sqlite3_column_int(row, 7);
	out->body = (const char *)sqlite3_column_text(row, 8);
	out->body_length = (size_t)sqlite3_column_bytes(row, 8);
	if (!kind || kind_length >= KIND_SIZE || strlen(kind) != kind_length || !out->body ||
	    !instant_in_range(out->at) || !store_blob(row, 3, out->uuid, UUID_SIZE) ||
	    !store_blob(row, 9, out->hash, DIGEST_SIZE))
		return false;
	memcpy(out->kind, kind, kind_length + 1);
	return true;
}

bool event_insert(struct household *db, const struct event *event, struct error *err)
{
	static const char text[] =
	    "INSERT INTO event (id, chain, seq, uuid, subject, kind, at_ms, offset_min, body, hash)"
	    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)";
	sqlite3_stmt *add;
	if (!store_cached(db, text, &add, err))
		return false;
	sqlite3_bind_int64(add, 1, event->id);
	sqlite3_bind_int64(add, 2, event->chain);
	sqlite3_bind_int64(add, 3, event->seq);
	sqlite3_bind_blob(add, 4, event->uuid, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_int64(add, 5, event->subject);
	sqlite3_bind_text(add, 6, event->kind, -1, SQLITE_STATIC);
	sqlite3_bind_int64(add, 7, event->at.ms);
	sqlite3_bind_int(add, 8, event->at.offset_min);
	sqlite3_bind_text64(add, 9, event->body, event->body_length, SQLITE_STATIC, SQLITE_UTF8);
	sqlite3_bind_blob(add, 10, event->hash, DIGEST_SIZE, SQLITE_STATIC);
	return store_run(db, add, err);
}

bool event_uuid(struct household *db, int64_t id, uint8_t out[UUID_SIZE], struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT uuid FROM event WHERE id = ?1", &query, err))
		return false;
	sqlite3_bind_int64(query, 1, id);
	bool found = sqlite3_step(query) == SQLITE_ROW && store_blob(query, 0, out, UUID_SIZE);
	if (!store_done(db, query, err))
		return false;
	return found ||
	       error_failed(err,
			    "household file '%s': event %lld is not in its log; run 'jarwright "
			    "log verify'",
			    db->path, (long long)id);
}

bool event_find(struct household *db, const uint8_t uuid[UUID_SIZE], int64_t *id, struct error *err)
{
	sqlite3_stmt *query;
	*id = 0;
	if (!store_cached(db, "SELECT id FROM event WHERE uuid = ?1", &query, err))
		return false;
	sqlite3_bind_blob(query, 1, uuid, UUID_SIZE, SQLITE_STATIC);
	if (sqlite3_step(query) == SQLITE_ROW)
		*id = sqlite3_column_int64(query, 0);
	return store_done(db, query, err);
}
