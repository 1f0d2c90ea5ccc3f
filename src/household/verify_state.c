/* Is the state what the events give? A copy of the file is rebuilt, and both are compared. */
#include <stdlib.h>
#include <string.h>

#include "verify.h"

/* Every table of the state, in the order of its keys. */
static const struct {
	const char *what, *rows;
} tables[] = {
    {"undone", "SELECT * FROM undone ORDER BY event"},
    {"conflict", "SELECT * FROM conflict ORDER BY event"},
    {"canner", "SELECT * FROM canner ORDER BY id"},
    {"gauge_test", "SELECT * FROM gauge_test ORDER BY id"},
    {"lot", "SELECT * FROM lot ORDER BY id"},
    {"batch", "SELECT * FROM batch ORDER BY id"},
    {"batch_lot", "SELECT * FROM batch_lot ORDER BY batch, lot"},
    {"batch_from", "SELECT * FROM batch_from ORDER BY batch, from_batch, from_number"},
    {"load", "SELECT * FROM load ORDER BY batch, number"},
    {"run", "SELECT * FROM run ORDER BY batch, number"},
    {"jar", "SELECT * FROM jar ORDER BY batch, number"},
    {"recall", "SELECT * FROM recall ORDER BY id"},
    {"recall_jar", "SELECT * FROM recall_jar ORDER BY recall, batch, number"},
};

static bool same_column(sqlite3_stmt *a, sqlite3_stmt *b, int column)
{
	int type = sqlite3_column_type(a, column);
	if (type != sqlite3_column_type(b, column))
		return false;
	if (type == SQLITE_INTEGER)
		return sqlite3_column_int64(a, column) == sqlite3_column_int64(b, column);
	const void *left = sqlite3_column_blob(a, column), *right = sqlite3_column_blob(b, column);
	int n = sqlite3_column_bytes(a, column);
	return n == sqlite3_column_bytes(b, column) &&
	       (n == 0 || (left && right && memcmp(left, right, (size_t)n) == 0));
}

static bool same_row(sqlite3_stmt *a, sqlite3_stmt *b)
{
	int columns = sqlite3_column_count(a);
	bool same = columns == sqlite3_column_count(b);
	for (int i = 0; same && i < columns; i++)
		same = same_column(a, b, i);
	return same;
}

/* Both to their ends; false: a row differs, or one has more. */
static bool same_rows(sqlite3_stmt *a, sqlite3_stmt *b)
{
	for (;;) {
		bool more = sqlite3_step(a) == SQLITE_ROW;
		if (more != (sqlite3_step(b) == SQLITE_ROW))
			return false;
		if (!more)
			return true;
		if (!same_row(a, b))
			return false;
	}
}

static bool compare(struct household *db, struct household *copy, size_t table,
		    struct log_report *report, struct error *err)
{
	sqlite3_stmt *kept, *made;
	if (!store_cached(db, tables[table].rows, &kept, err) ||
	    !store_cached(copy, tables[table].rows, &made, err))
		return false;
	bool same = same_rows(kept, made);
	if (!store_done(db, kept, err) || !store_done(copy, made, err))
		return false;
	if (!same)
		verify_fault(report,
			     "the state (table '%s') is not what the entries give; run 'jarwright "
			     "log rebuild'",
			     tables[table].what);
	return true;
}

static bool copy_file(struct household *db, struct household *copy, struct error *err)
{
	/* A nameless file: SQLite keeps it in memory while it is small, and removes it. */
	if (sqlite3_open_v2("", &copy->sql, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL) !=
	    SQLITE_OK)
		return store_failed(copy, err);
	sqlite3_backup *backup = sqlite3_backup_init(copy->sql, "main", db->sql, "main");
	if (!backup)
		return store_failed(copy, err);
	int stepped = sqlite3_backup_step(backup, -1), finished = sqlite3_backup_finish(backup);
	if (stepped != SQLITE_DONE || finished != SQLITE_OK)
		return store_failed(copy, err);
	return store_exec(copy,
			  "PRAGMA trusted_schema = OFF; PRAGMA foreign_keys = ON;"
			  "PRAGMA recursive_triggers = ON; PRAGMA synchronous = OFF",
			  err);
}

/* What cannot even be rebuilt is a fault of the file, unless the copy's own disk is full. */
static bool rebuild_copy(struct household *copy, struct log_report *report, bool *rebuilt,
			 struct error *err)
{
	struct error why = {0};
	*rebuilt = false;
	if (!store_begin(copy, err))
		return false;
	*rebuilt = store_end(copy, state_rebuild(copy, &why), &why);
	if (*rebuilt)
		return true;
	int code = copy->failed & 0xff;
	if (code == SQLITE_FULL || code == SQLITE_IOERR || code == SQLITE_NOMEM) {
		*err = why;
		return false;
	}
	verify_fault(report, "the state cannot be worked out from the entries: %.150s", why.text);
	return true;
}

static bool check(struct household *db, struct household *copy, struct log_report *report,
		  struct error *err)
{
	bool rebuilt, ok;
	if (!copy_file(db, copy, err) || !rebuild_copy(copy, report, &rebuilt, err))
		return false;
	ok = true;
	for (size_t i = 0; rebuilt && ok && i < sizeof tables / sizeof *tables; i++)
		ok = compare(db, copy, i, report, err);
	return ok;
}

bool verify_state(struct household *db, struct log_report *report, struct error *err)
{
	struct household *copy = calloc(1, sizeof *copy);
	if (!copy)
		return error_failed(err, "log: out of memory; close other programs and try again");
	copy->version = db->version;
	memcpy(copy->path, db->path, sizeof copy->path);
	bool ok = check(db, copy, report, err);
	household_close(copy);
	return ok;
}
