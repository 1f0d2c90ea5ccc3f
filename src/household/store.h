/* The one door to SQLite: what the sources of this module share. */
#ifndef JARWRIGHT_HOUSEHOLD_STORE_H
#define JARWRIGHT_HOUSEHOLD_STORE_H

#include <sqlite3.h>
#include <stdbool.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"

#define STORE_CACHED_MAX 192

/* The version of the file from which there is a log. */
#define HOUSEHOLD_LOGGED_SINCE 3

struct household {
	sqlite3 *sql; /* NULL: read, and there is no file yet */
	int version;  /* of its schema: an older file is read as it is, and brought up by a write */
	int failed;   /* SQLite's code of the last failure that store_failed() told; 0: none */
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
bool store_failed(struct household *db, struct error *err);

/* Runs statements that return nothing. */
bool store_exec(struct household *db, const char *sql, struct error *err);
/* The statement is the caller's to finalize; NULL when false. */
bool store_prepare(struct household *db, const char *sql, sqlite3_stmt **out, struct error *err);
/*
 * The same for a statement that is used again and again: text is a literal, the statement stays
 * the file's, is reset and has nothing bound. Let go of it with store_done(). Binding an integer,
 * or bytes that stay where they are (SQLITE_STATIC), allocates nothing and can only fail by a
 * wrong index, a bug that a NOT NULL column or a test shows; so it is not checked.
 */
bool store_cached(struct household *db, const char *text, sqlite3_stmt **out, struct error *err);
/* Runs it to its end and resets it. */
bool store_run(struct household *db, sqlite3_stmt *statement, struct error *err);
/* Resets it after rows were read. True: the last step gave a row or the end. */
bool store_done(struct household *db, sqlite3_stmt *statement, struct error *err);
/* Runs a prepared statement to its end and finalizes it, whatever happens. */
bool store_finish(struct household *db, sqlite3_stmt *statement, struct error *err);
/* Copies a text column; false if it is no plain text that fits. */
bool store_text(sqlite3_stmt *row, int column, char *buffer, size_t size);
/* Copies a blob column; false if it is none, or not of this size. */
bool store_blob(sqlite3_stmt *row, int column, uint8_t *out, size_t size);
/* Copies any text column, "" for NULL; one that is too long is cut at a character. */
void store_cut_text(sqlite3_stmt *row, int column, char *buffer, size_t size);
/* The integer that a one-row, one-column query gives. */
bool store_integer(struct household *db, const char *sql, int *out, struct error *err);

/* Is there a log to read? False: no file yet, or one from before the log. */
bool store_has_log(const struct household *db);
/* The message for a file that was opened for reading and is from before the log. */
bool store_too_old(const struct household *db, struct error *err);

/* A write transaction. Ends it: commits if ok so far, else rolls back; returns whether it held. */
bool store_begin(struct household *db, struct error *err);
bool store_end(struct household *db, bool ok, struct error *err);

/*
 * Brings a file of ours to the newest version, one transaction a migration, each after a backup
 * beside it; makes an empty one in one go. Two programs may do so at the same moment.
 */
bool store_migrate(struct household *db, struct error *err);
/* What a file is, judged by its header and schema, within one transaction. */
enum store_kind { STORE_EMPTY, STORE_OLDER, STORE_CURRENT };
/* False for a file of another program or from a newer jarwright. */
bool store_recognise(struct household *db, enum store_kind *out, int *version, struct error *err);

/* Of a row whose first columns are a canner's name, kind and what it holds; false: it is none. */
bool household_canner_row(sqlite3_stmt *row, struct kitchen_canner *out);

/* What the migration to the log leaves to do: carries the canners over into it. */
bool log_carry_over(struct household *db, struct error *err);

/*
 * Makes the folders that lead to the file, each one on disk before the next is made.
 * path: of less than HOUSEHOLD_PATH_SIZE bytes, as in struct household.
 */
bool store_make_folders(const char *path, struct error *err);

#endif
