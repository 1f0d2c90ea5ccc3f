#include "store.h"

#include <stddef.h>
#include <string.h>

#include "jarwright/text.h"

static const char *why(int code)
{
	switch (code & 0xff) {
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
		return "another program is using it; wait a moment and try again";
	case SQLITE_FULL:
		return "the disk is full; free some space and try again, nothing was changed";
	case SQLITE_READONLY:
	case SQLITE_PERM:
	case SQLITE_AUTH:
		return "it may not be written; check the permissions of the file and its folder";
	case SQLITE_CANTOPEN:
		return "it cannot be opened; check the permissions of the file and its folder";
	case SQLITE_NOTADB:
		return "it is not a household file; name the right one in JARWRIGHT_DB";
	case SQLITE_CORRUPT:
		return "it is damaged; put back a backup";
	case SQLITE_IOERR:
		return "the disk reported an error; check the disk, nothing was changed";
	case SQLITE_NOMEM:
		return "out of memory; close other programs and try again";
	default:
		return NULL;
	}
}

bool store_failed(struct household *db, struct error *err)
{
	/* SQLite forgets it with the next statement, such as the ROLLBACK that follows. */
	db->failed = sqlite3_extended_errcode(db->sql);
	const char *reason = why(db->failed);
	if (reason)
		return error_failed(err, "household file '%s': %s", db->path, reason);
	return error_failed(err, "household file '%s': %s; it may be damaged, put back a backup",
			    db->path, sqlite3_errmsg(db->sql));
}

bool store_exec(struct household *db, const char *sql, struct error *err)
{
	if (sqlite3_exec(db->sql, sql, NULL, NULL, NULL) != SQLITE_OK)
		return store_failed(db, err);
	return true;
}

bool store_prepare(struct household *db, const char *sql, sqlite3_stmt **out, struct error *err)
{
	if (sqlite3_prepare_v2(db->sql, sql, -1, out, NULL) != SQLITE_OK)
		return store_failed(db, err);
	return true;
}

bool store_cached(struct household *db, const char *text, sqlite3_stmt **out, struct error *err)
{
	*out = NULL;
	for (size_t i = 0; i < db->cached_n; i++) {
		if (db->cached[i].text != text)
			continue;
		*out = db->cached[i].statement;
		sqlite3_reset(*out);
		sqlite3_clear_bindings(*out);
		return true;
	}
	if (db->cached_n == STORE_CACHED_MAX)
		return error_failed(err, "household file '%s': too many statements are kept",
				    db->path);
	if (sqlite3_prepare_v3(db->sql, text, -1, SQLITE_PREPARE_PERSISTENT, out, NULL) !=
	    SQLITE_OK)
		return store_failed(db, err);
	db->cached[db->cached_n].text = text;
	db->cached[db->cached_n++].statement = *out;
	return true;
}

bool store_run(struct household *db, sqlite3_stmt *statement, struct error *err)
{
	int code;
	do
		code = sqlite3_step(statement);
	while (code == SQLITE_ROW);
	bool ok = code == SQLITE_DONE || store_failed(db, err);
	sqlite3_reset(statement);
	return ok;
}

bool store_done(struct household *db, sqlite3_stmt *statement, struct error *err)
{
	/* Resetting gives the code of a step that failed. */
	return sqlite3_reset(statement) == SQLITE_OK || store_failed(db, err);
}

bool store_finish(struct household *db, sqlite3_stmt *statement, struct error *err)
{
	int code;
	do
		code = sqlite3_step(statement);
	while (code == SQLITE_ROW);
	bool ok = code == SQLITE_DONE || store_failed(db, err);
	sqlite3_finalize(statement);
	return ok;
}

bool store_integer(struct household *db, const char *sql, int *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_prepare(db, sql, &query, err))
		return false;
	bool ok = sqlite3_step(query) == SQLITE_ROW;
	if (ok)
		*out = sqlite3_column_int(query, 0);
	else
		store_failed(db, err);
	sqlite3_finalize(query);
	return ok;
}

bool store_text(sqlite3_stmt *row, int column, char *buffer, size_t size)
{
	const char *text = (const char *)sqlite3_column_text(row, column);
	size_t bytes = (size_t)sqlite3_column_bytes(row, column);
	if (!text || bytes == 0 || bytes >= size || strlen(text) != bytes ||
	    plain_text_check(text) != PLAIN_TEXT)
		return false;
	memcpy(buffer, text, bytes + 1);
	return true;
}

bool store_blob(sqlite3_stmt *row, int column, uint8_t *out, size_t size)
{
	if (sqlite3_column_type(row, column) != SQLITE_BLOB ||
	    (size_t)sqlite3_column_bytes(row, column) != size)
		return false;
	memcpy(out, sqlite3_column_blob(row, column), size);
	return true;
}

void store_cut_text(sqlite3_stmt *row, int column, char *buffer, size_t size)
{
	const char *text = (const char *)sqlite3_column_text(row, column);
	size_t bytes = text ? strnlen(text, size - 1) : 0;
	if (bytes > 0)
		memcpy(buffer, text, bytes);
	buffer[bytes] = '\0';
	text_drop_partial(buffer);
}

bool store_has_log(const struct household *db)
{
	return db->sql && db->version >= HOUSEHOLD_LOGGED_SINCE;
}

bool store_too_old(const struct household *db, struct error *err)
{
	return error_failed(err,
			    "household file '%s': it is from before the log; this brings it up "
			    "to date: 'jarwright log rebuild'",
			    db->path);
}

bool store_begin(struct household *db, struct error *err)
{
	return store_exec(db, "BEGIN IMMEDIATE", err);
}

bool store_end(struct household *db, bool ok, struct error *err)
{
	if (ok && store_exec(db, "COMMIT", err))
		return true;
	/* SQLite may have rolled back by itself, after a full disk for one; then this fails. */
	if (!sqlite3_get_autocommit(db->sql))
		(void)sqlite3_exec(db->sql, "ROLLBACK", NULL, NULL, NULL);
	return false;
}
