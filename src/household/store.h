/* The one door to SQLite: what the sources of this module share. */
#ifndef JARWRIGHT_HOUSEHOLD_STORE_H
#define JARWRIGHT_HOUSEHOLD_STORE_H

#include <sqlite3.h>
#include <stdbool.h>

#include "jarwright/error.h"
#include "jarwright/household.h"

struct household {
	sqlite3 *sql; /* NULL: read, and there is no file yet */
	int version;  /* of its schema: an older file is read as it is, and brought up by a write */
	char path[HOUSEHOLD_PATH_SIZE];
};

/* Fills *err from SQLite's last error on this file; returns false. */
bool store_failed(const struct household *db, struct error *err);

/* Runs statements that return nothing. */
bool store_exec(struct household *db, const char *sql, struct error *err);
/* The statement is the caller's to finalize; NULL when false. */
bool store_prepare(struct household *db, const char *sql, sqlite3_stmt **out, struct error *err);
/* Runs a prepared statement to its end and finalizes it, whatever happens. */
bool store_finish(struct household *db, sqlite3_stmt *statement, struct error *err);
/* The integer that a one-row, one-column query gives. */
bool store_integer(struct household *db, const char *sql, int *out, struct error *err);

/* A write transaction. Ends it: commits if ok so far, else rolls back; returns whether it held. */
bool store_begin(struct household *db, struct error *err);
bool store_end(struct household *db, bool ok, struct error *err);

/*
 * Brings a file of ours, or an empty one, to the newest version, one transaction a migration.
 * Two programs may do so at the same moment.
 */
bool store_migrate(struct household *db, struct error *err);
/* What a file is, judged by its header and schema, within one transaction. */
enum store_kind { STORE_EMPTY, STORE_OLDER, STORE_CURRENT };
/* False for a file of another program or from a newer jarwright. */
bool store_recognise(struct household *db, enum store_kind *out, int *version, struct error *err);

/*
 * Makes the folders that lead to the file, each one on disk before the next is made.
 * path: of less than HOUSEHOLD_PATH_SIZE bytes, as in struct household.
 */
bool store_make_folders(const char *path, struct error *err);

#endif
