/* The one door to SQLite: what the sources of this module share. */
#ifndef JARWRIGHT_HOUSEHOLD_STORE_H
#define JARWRIGHT_HOUSEHOLD_STORE_H

#include <sqlite3.h>
#include <stdbool.h>

#include "jarwright/error.h"
#include "jarwright/household.h"

#define STORE_CACHED_MAX 128

struct household {
	sqlite3 *sql; /* NULL: read, and there is no file yet */
	int version;  /* of its schema: an older file is read as it is, and brought up by a write */
	bool logging; /* the tables of the log may be written: only between log_begin and log_end */
	char path[HOUSEHOLD_PATH_SIZE];
	/* Statements used again and again, by the address of their text. */
	struct {
		const char *text;
		sqlite3_stmt *statement;
	} cached[STORE_CACHED_MAX];
	size_t cached_n;
};

/* Fills *err from SQLite's last error on this file; returns false. */
bool store_failed(const struct household *db, struct error *err);

/* Runs statements that return nothing. */
bool store_exec(struct household *db, const char *sql, struct error *err);
/* The statement is the caller's to finalize; NULL when false. */
bool store_prepare(struct household *db, const char *sql, sqlite3_stmt **out, struct error *err);
/*
 * The same for a statement that is used again and again: text is a literal, the statement stays
 * the file's, is reset and has nothing bound. Let go of it with store_done().
 */
bool store_cached(struct household *db, const char *text, sqlite3_stmt **out, struct error *err);
/* Runs it to its end and resets it. */
bool store_run(struct household *db, sqlite3_stmt *statement, struct error *err);
/* Resets it after rows were read. True: the last step gave a row or the end. */
bool store_done(struct household *db, sqlite3_stmt *statement, struct error *err);
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

/* The canners in use, the rest of *out zeroed. Within the caller's transaction. */
bool household_canners(struct household *db, struct kitchen *out, struct error *err);

/* What the migration to the log leaves to do: carries the canners over into it. */
bool log_carry_over(struct household *db, struct error *err);

/*
 * Makes the folders that lead to the file, each one on disk before the next is made.
 * path: of less than HOUSEHOLD_PATH_SIZE bytes, as in struct household.
 */
bool store_make_folders(const char *path, struct error *err);

#endif
