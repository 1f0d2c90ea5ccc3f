#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "store.h"

#define BUSY_MILLISECONDS      10000
#define BUSY_STEP_MILLISECONDS 10

/* Whether there is a file, and that it is one: a link to nothing is not "no file". */
static bool file_exists(const char *path, bool *exists, struct error *err)
{
	struct stat is;
	*exists = stat(path, &is) == 0;
	if (*exists && !S_ISREG(is.st_mode))
		return error_failed(err,
				    "household file '%s': it is not a file; name the right one in "
				    "JARWRIGHT_DB",
				    path);
	if (*exists)
		return true;
	if (errno != ENOENT)
		return error_failed(err, "household file '%s': %s; check its folder", path,
				    strerror(errno));
	/* Another program may make the file between the two looks: only a link is a fault. */
	if (lstat(path, &is) == 0 && S_ISLNK(is.st_mode))
		return error_failed(
		    err,
		    "household file '%s': it is a link to a file that is not there; "
		    "connect the disk it is on, or remove the link",
		    path);
	return true;
}

/* A file may come from anywhere: its schema is not trusted to run anything of its own. */
static bool harden(struct household *db, struct error *err)
{
	static const struct {
		int option, on;
	} options[] = {
	    {SQLITE_DBCONFIG_DEFENSIVE, 1},
	    {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
	    {SQLITE_DBCONFIG_DQS_DML, 0},
	    {SQLITE_DBCONFIG_DQS_DDL, 0},
	};
	for (size_t i = 0; i < sizeof options / sizeof *options; i++)
		if (sqlite3_db_config(db->sql, options[i].option, options[i].on, NULL) != SQLITE_OK)
			return store_failed(db, err);
	if (sqlite3_extended_result_codes(db->sql, 1) != SQLITE_OK ||
	    sqlite3_busy_timeout(db->sql, BUSY_MILLISECONDS) != SQLITE_OK)
		return store_failed(db, err);
	/* Without recursive triggers, INSERT OR REPLACE walks past append-only ones. */
	return store_exec(db,
			  "PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON;"
			  "PRAGMA cell_size_check = ON; PRAGMA synchronous = FULL",
			  err);
}

/* What is the cook's own to change; every other table is the log's. */
static bool is_plain_table(const char *table)
{
	return strcmp(table, "kitchen") == 0 || strcmp(table, "recipe") == 0;
}

/* What only looks whether the file is sound, or says how much memory a long work may take. */
static bool is_look(const char *pragma)
{
	return strcmp(pragma, "integrity_check") == 0 || strcmp(pragma, "foreign_key_check") == 0 ||
	       strcmp(pragma, "cache_size") == 0;
}

/*
 * After opening, a statement may read and change rows in transactions, and nothing else; the
 * tables of the log only while the log itself is at work.
 */
static int authorize(void *household, int action, const char *a, const char *b, const char *c,
		     const char *d)
{
	const struct household *db = household;
	(void)b, (void)c;
	switch (action) {
	case SQLITE_SELECT:
	case SQLITE_READ:
	case SQLITE_TRANSACTION:
	case SQLITE_FUNCTION:
	case SQLITE_RECURSIVE:
		return SQLITE_OK;
	case SQLITE_PRAGMA:
		return is_look(a) ? SQLITE_OK : SQLITE_DENY;
	case SQLITE_UPDATE:
	case SQLITE_DELETE:
		if (strcmp(a, "event") == 0)
			return SQLITE_DENY;
		/* fall through */
	case SQLITE_INSERT:
		/* Nothing is written by a trigger: ours only refuse, and a foreign one is none. */
		return !d && (db->logging || is_plain_table(a)) ? SQLITE_OK : SQLITE_DENY;
	default:
		return SQLITE_DENY;
	}
}

static bool ready_to_read(struct household *db, struct error *err)
{
	enum store_kind kind;
	if (!store_recognise(db, &kind, &db->version, err))
		return false;
	if (kind == STORE_EMPTY) {
		sqlite3_close(db->sql);
		db->sql = NULL;
	}
	return true;
}

/*
 * SQLite does not wait by itself to change how a file is kept: while several programs make one
 * file, each has to ask again. Where the file system cannot do WAL, SQLite keeps its rollback
 * journal: slower, as safe.
 */
static bool keep_as_wal(struct household *db, struct error *err)
{
	for (int waited = 0;; waited += BUSY_STEP_MILLISECONDS) {
		int code = sqlite3_exec(db->sql, "PRAGMA journal_mode = WAL", NULL, NULL, NULL);
		if (code == SQLITE_OK)
			return true;
		if ((code & 0xff) != SQLITE_BUSY || waited >= BUSY_MILLISECONDS)
			return store_failed(db, err);
		sqlite3_sleep(BUSY_STEP_MILLISECONDS);
	}
}

/* Nothing is written before the file is known to be ours, or empty. */
static bool ready_to_write(struct household *db, struct error *err)
{
	enum store_kind kind;
	return store_recognise(db, &kind, &db->version, err) && store_migrate(db, err) &&
	       store_recognise(db, &kind, &db->version, err) && keep_as_wal(db, err);
}

/* "file:" and the path with everything but plain characters as %XX, for a URI. */
static void uri_of(const char *path, const char *ending, char *out, size_t size)
{
	/* "file://": else a path that begins with two slashes would name a host. */
	size_t n = (size_t)snprintf(out, size, *path == '/' ? "file://" : "file:");
	for (; *path && n + 4 < size; path++)
		n += (size_t)snprintf(out + n, size - n, strchr("%?#", *path) ? "%%%02X" : "%c",
				      (unsigned char)*path);
	snprintf(out + n, size - n, "%s", ending);
}

/* Is there something in the file's write-ahead log that it needs? */
static bool has_wal(const struct household *db)
{
	struct stat is;
	char path[HOUSEHOLD_PATH_SIZE + sizeof "-wal"];
	snprintf(path, sizeof path, "%s-wal", db->path);
	return lstat(path, &is) == 0 && is.st_size > 0;
}

/*
 * In a folder that may not be written, SQLite cannot make the index of a write-ahead log. Where
 * there is no such log the file alone is read, as one that does not change.
 */
static bool reopen_unchanging(struct household *db, struct error *err)
{
	char uri[3 * HOUSEHOLD_PATH_SIZE + 64];
	uri_of(db->path, "?immutable=1", uri, sizeof uri);
	sqlite3_close(db->sql);
	db->sql = NULL;
	if (sqlite3_open_v2(uri, &db->sql, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL) !=
	    SQLITE_OK)
		return store_failed(db, err);
	return true;
}

static bool can_read(struct household *db)
{
	int code = sqlite3_exec(db->sql, "PRAGMA schema_version", NULL, NULL, NULL) & 0xff;
	return code != SQLITE_CANTOPEN && code != SQLITE_READONLY;
}

static bool connect(struct household *db, enum household_access access, struct error *err)
{
	bool exists;
	if (!file_exists(db->path, &exists, err))
		return false;
	if (!exists && access == HOUSEHOLD_READ)
		return true;
	if (!exists && !store_make_folders(db->path, err))
		return false;
	int flags = access == HOUSEHOLD_READ ? SQLITE_OPEN_READONLY
					     : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
	flags |= SQLITE_OPEN_NOMUTEX; /* there is one thread */
	if (sqlite3_open_v2(db->path, &db->sql, flags, NULL) != SQLITE_OK)
		return db->sql ? store_failed(db, err)
			       : error_failed(err,
					      "household file '%s': out of memory; close other "
					      "programs and try again",
					      db->path);
	if (access == HOUSEHOLD_READ && !can_read(db) && !has_wal(db) &&
	    !reopen_unchanging(db, err))
		return false;
	if (!harden(db, err))
		return false;
	/* SQLite falls back to reading, and would only say so at the first write. */
	if (access == HOUSEHOLD_WRITE && sqlite3_db_readonly(db->sql, "main") == 1)
		return error_failed(
		    err,
		    "household file '%s': it may not be written; check the permissions "
		    "of the file and its folder",
		    db->path);
	if (!(access == HOUSEHOLD_READ ? ready_to_read : ready_to_write)(db, err))
		return false;
	if (db->sql && sqlite3_set_authorizer(db->sql, authorize, db) != SQLITE_OK)
		return store_failed(db, err);
	return true;
}

bool household_open(const char *path, enum household_access access, struct household **out,
		    struct error *err)
{
	*out = NULL;
	if (strlen(path) >= HOUSEHOLD_PATH_SIZE)
		return error_failed(err,
				    "household file: its path is too long; set JARWRIGHT_DB to a "
				    "shorter one");
	struct household *db = calloc(1, sizeof *db);
	if (!db)
		return error_failed(err,
				    "household file '%s': out of memory; close other programs "
				    "and try again",
				    path);
	memcpy(db->path, path, strlen(path) + 1);
	if (!connect(db, access, err)) {
		household_close(db);
		return false;
	}
	*out = db;
	return true;
}

void household_close(struct household *db)
{
	if (!db)
		return;
	for (size_t i = 0; i < db->cached_n; i++)
		sqlite3_finalize(db->cached[i].statement);
	sqlite3_close(db->sql); /* every other statement is finalized by whoever prepared it */
	free(db);
}
