/* SQLite, with failures as struct error. */
#ifndef REFBUILD_DATABASE_H
#define REFBUILD_DATABASE_H

#include "jarwright/error.h"

#include <sqlite3.h>
#include <stdbool.h>

/* Sets *err to "what: SQLite's message"; returns false. */
bool database_failed(sqlite3 *db, struct error *err, const char *what);

/* Runs statements that return nothing. */
bool database_run(sqlite3 *db, const char *sql, struct error *err);

/* Prepares one statement; the caller finalizes it. */
bool database_prepare(sqlite3 *db, const char *sql, sqlite3_stmt **out, struct error *err);

/* Whether a sqlite3_bind_...() gave SQLITE_OK; else sets *err and finalizes the statement. */
bool database_bound(sqlite3_stmt *statement, int code, struct error *err);

/*
 * Takes a statement to its next row; false at the end or on failure, which is
 * told apart by database_ended.
 */
bool database_next(sqlite3_stmt *statement);

/* After database_next gave false: true if the rows simply ended, else sets *err. Finalizes. */
bool database_ended(sqlite3_stmt *statement, struct error *err);

/* A text column, "" if NULL; lives until the next step. */
const char *database_text(sqlite3_stmt *statement, int column);

#endif
