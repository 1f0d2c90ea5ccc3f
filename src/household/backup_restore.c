/*
 * Putting a copy back.
 *
 * The copy goes into the file that is there, through SQLite's backup, as one transaction: so a
 * program that has the file open sees the old or the new household, and one killed at any moment
 * leaves one of them whole. Renaming would leave the old file's write-ahead log beside the new
 * file. Only what is no database at all is put aside by name.
 *
 * What is restored goes on as a new device. The log that it holds may have been continued after
 * the copy was made, on this device or on another that has the same file: if this one wrote on in
 * the same chain, two different entries would bear one number, and every later merge would find
 * a fork.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "backup.h"
#include "jarwright/household_keeping.h"

#define COPIES     1000
#define BUSY_MS    10000
#define KEPT_NAME  "%s.before-restore"
#define KEPT_NAMES "%s.before-restore.%d"

static bool failed(const char *path, const char *why, struct error *err)
{
	return error_failed(err,
			    "household file '%s': nothing was put back (%s); what was there is "
			    "there still; make room or check the disk, then try again",
			    path, why);
}

static bool sql_failed(const char *path, int code, struct error *err)
{
	bool busy = (code & 0xff) == SQLITE_BUSY || (code & 0xff) == SQLITE_LOCKED;
	return failed(path, busy ? "another program is using it" : sqlite3_errstr(code), err);
}

/* --- The copy that will be put in place --- */

/* Ours alone, so it needs no transaction of the log. */
static int disown(const char *part)
{
	sqlite3 *sql = NULL;
	sqlite3_stmt *query = NULL;
	int code = sqlite3_open_v2(part, &sql, SQLITE_OPEN_READWRITE, NULL);
	if (code == SQLITE_OK)
		code = sqlite3_prepare_v2(sql, "PRAGMA user_version", -1, &query, NULL);
	bool logged = code == SQLITE_OK && sqlite3_step(query) == SQLITE_ROW &&
		      sqlite3_column_int(query, 0) >= HOUSEHOLD_LOGGED_SINCE;
	/* It gives the code of a step that failed: a version that was not read is not an old one.
	 */
	int read = sqlite3_finalize(query);
	if (code == SQLITE_OK)
		code = read;
	if (code == SQLITE_OK && logged)
		code = sqlite3_exec(sql, "PRAGMA synchronous = FULL; UPDATE chain SET own = 0",
				    NULL, NULL, NULL);
	int closed = sqlite3_close(sql);
	return code != SQLITE_OK ? code : closed;
}

static bool make_part(const char *path, const char *from, const char *part, struct error *err)
{
	int code = backup_pages(from, part);
	if (code == SQLITE_OK)
		code = disown(part);
	if (code != SQLITE_OK)
		return sql_failed(path, code, err);
	return backup_sync(part, 0) || failed(path, strerror(errno), err);
}

/* --- What was there --- */

/* The first name that is free. */
static bool keep_as(const char *part, const char *path, char *kept)
{
	for (int n = 1; n < COPIES; n++) {
		if (n == 1)
			snprintf(kept, BACKUP_NAME_SIZE, KEPT_NAME, path);
		else
			snprintf(kept, BACKUP_NAME_SIZE, KEPT_NAMES, path, n);
		if (backup_move(part, kept))
			return true;
		if (errno != EEXIST)
			break;
	}
	*kept = '\0';
	return false;
}

static bool keep_present(const char *path, char *kept, struct error *err)
{
	char part[BACKUP_NAME_SIZE];
	snprintf(part, sizeof part, "%s.keeping-%ld", path, (long)getpid());
	int code = backup_pages(path, part);
	bool ok = code == SQLITE_OK || sql_failed(path, code, err);
	if (ok && !(backup_sync(part, 0) && keep_as(part, path, kept) && backup_sync_folder(path)))
		ok = failed(path, strerror(errno), err);
	(void)unlink(part); /* mostly moved */
	return ok;
}

/* --- Into the file --- */

/* With the file locked against writers, keeps what it holds, then writes the copy over it. */
static bool overwrite(sqlite3_backup *backup, const char *path, char *kept, struct error *err)
{
	/* No page is copied yet, but the lock is taken: nothing is written between the two. */
	int code = sqlite3_backup_step(backup, 0);
	if (code != SQLITE_OK)
		return sql_failed(path, code, err);
	if (!keep_present(path, kept, err))
		return false;
	code = sqlite3_backup_step(backup, -1);
	return code == SQLITE_DONE || sql_failed(path, code, err);
}

static bool put_into(sqlite3 *source, sqlite3 *target, const char *path, char *kept,
		     struct error *err)
{
	sqlite3_backup *backup = sqlite3_backup_init(target, "main", source, "main");
	if (!backup)
		return failed(path, sqlite3_errmsg(target), err);
	bool ok = overwrite(backup, path, kept, err);
	int finished = sqlite3_backup_finish(backup);
	return ok && (finished == SQLITE_OK || sql_failed(path, finished, err));
}

/* Is there a database that SQLite can lock, whatever it holds? */
static int open_target(const char *path, sqlite3 **target)
{
	int code = sqlite3_open_v2(path, target, SQLITE_OPEN_READWRITE, NULL);
	if (code == SQLITE_OK)
		code = sqlite3_busy_timeout(*target, BUSY_MS);
	if (code == SQLITE_OK)
		code = sqlite3_exec(*target,
				    "PRAGMA synchronous = FULL; PRAGMA journal_mode = WAL;"
				    "BEGIN IMMEDIATE; ROLLBACK",
				    NULL, NULL, NULL);
	return code & 0xff;
}

/* --- In place of what is no database --- */

/* A write-ahead log belongs to the file it was written for: it goes aside with it. */
static bool put_aside(const char *path, char *kept, struct error *err)
{
	static const char *const ends[] = {"-wal", "-journal", "-shm"};
	/* A second name: the first one stays until the new file takes it. */
	for (int n = 1; n < COPIES; n++) {
		if (n == 1)
			snprintf(kept, BACKUP_NAME_SIZE, KEPT_NAME, path);
		else
			snprintf(kept, BACKUP_NAME_SIZE, KEPT_NAMES, path, n);
		if (link(path, kept) == 0)
			break;
		*kept = '\0';
		if (errno != EEXIST)
			return failed(path, strerror(errno), err);
	}
	if (!*kept)
		return failed(path, "too many files were put aside", err);
	for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
		char from[BACKUP_NAME_SIZE], to[BACKUP_NAME_SIZE + 16];
		snprintf(from, sizeof from, "%s%s", path, ends[i]);
		snprintf(to, sizeof to, "%s%s", kept, ends[i]);
		if (rename(from, to) != 0 && errno != ENOENT)
			return failed(path, strerror(errno), err);
	}
	return true;
}

static bool put_in_place(const char *part, const char *path, char *kept, struct error *err)
{
	struct stat is;
	if (lstat(path, &is) == 0 && !put_aside(path, kept, err))
		return false;
	if (rename(part, path) != 0 || !backup_sync_folder(path))
		return failed(path, strerror(errno), err);
	return true;
}

static bool put_back(const char *part, const char *path, char *kept, struct error *err)
{
	sqlite3 *source = NULL, *target = NULL;
	struct stat is;
	int code = lstat(path, &is) == 0 ? open_target(path, &target) : SQLITE_NOTADB;
	bool ok;
	if (code == SQLITE_NOTADB || code == SQLITE_CORRUPT) {
		sqlite3_close(target);
		return put_in_place(part, path, kept, err);
	}
	if (code == SQLITE_OK)
		code = sqlite3_open_v2(part, &source, SQLITE_OPEN_READONLY, NULL);
	ok = code == SQLITE_OK ? put_into(source, target, path, kept, err)
			       : sql_failed(path, code, err);
	sqlite3_close(source);
	sqlite3_close(target);
	return ok;
}

/* Whose database it is; what is none has no tables. An SQLite code. */
static int look_at(const char *path, int *application, int *tables)
{
	sqlite3 *sql = NULL;
	sqlite3_stmt *row = NULL;
	*application = *tables = 0;
	int code = sqlite3_open_v2(path, &sql, SQLITE_OPEN_READONLY, NULL);
	if (code == SQLITE_OK)
		code = sqlite3_busy_timeout(sql, BUSY_MS);
	if (code == SQLITE_OK)
		code = sqlite3_prepare_v2(sql,
					  "SELECT (SELECT * FROM pragma_application_id), "
					  "(SELECT count(*) FROM sqlite_schema)",
					  -1, &row, NULL);
	if (code == SQLITE_OK && sqlite3_step(row) == SQLITE_ROW) {
		*application = sqlite3_column_int(row, 0);
		*tables = sqlite3_column_int(row, 1);
	}
	int read = sqlite3_finalize(row);
	sqlite3_close(sql);
	return code != SQLITE_OK ? code : read;
}

/* A file of another program is no household file to be replaced; nor one that is in its hands. */
static bool may_replace(const char *path, struct error *err)
{
	struct stat is;
	int application, tables;
	if (lstat(path, &is) != 0)
		return store_make_folders(path, err);
	if (!S_ISREG(is.st_mode))
		return error_failed(err,
				    "household file '%s': it is not a file; name the right one "
				    "in JARWRIGHT_DB",
				    path);
	int code = look_at(path, &application, &tables);
	if ((code & 0xff) == SQLITE_BUSY || (code & 0xff) == SQLITE_NOMEM)
		return sql_failed(path, code, err);
	return tables == 0 || application == HOUSEHOLD_APPLICATION_ID ||
	       error_failed(err,
			    "household file '%s': it belongs to another program and is not "
			    "replaced; name the right file in JARWRIGHT_DB",
			    path);
}

bool household_restore(const char *path, const char *from, char *kept, struct error *err)
{
	char part[BACKUP_NAME_SIZE];
	*kept = '\0';
	/* The number of the process: two at once do not write one file. */
	snprintf(part, sizeof part, "%s.restoring-%ld", path, (long)getpid());
	if (!backup_check(from, err) || !may_replace(path, err))
		return false;
	bool ok = make_part(path, from, part, err) && put_back(part, path, kept, err);
	(void)unlink(part); /* where it was not moved */
	return ok;
}
