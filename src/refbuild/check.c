#include "check.h"

#include "database.h"
#include "input.h"

/* Says one dangling reference: what the row holds in the column that points at parent. */
static bool say_dangling(sqlite3 *db, sqlite3_stmt *found, struct problems *problems,
			 struct error *err)
{
	const char *parent = database_text(found, 2);
	sqlite3_stmt *row;
	char *sql = sqlite3_mprintf("SELECT \"%w\", file, file_line FROM \"%w\" WHERE rowid = ?1",
				    database_text(found, 3), database_text(found, 0));

	if (!sql)
		return error_failed(err, "out of memory");
	bool ok = database_prepare(db, sql, &row, err);
	sqlite3_free(sql);
	if (!ok ||
	    !database_bound(row, sqlite3_bind_int64(row, 1, sqlite3_column_int64(found, 1)), err))
		return false;
	while (database_next(row)) {
		struct position at = {database_text(row, 1), (size_t)sqlite3_column_int64(row, 2)};
		problem_at(problems, at, "unknown %s '%s'", parent, database_text(row, 0));
	}
	return database_ended(row, err);
}

bool check_references(sqlite3 *db, struct problems *problems, struct error *err)
{
	sqlite3_stmt *found;

	if (!database_prepare(db,
			      "SELECT c.\"table\", c.rowid, c.parent, l.\"from\""
			      " FROM pragma_foreign_key_check AS c"
			      " JOIN pragma_foreign_key_list(c.\"table\") AS l ON l.id = c.fkid"
			      " ORDER BY c.\"table\", c.rowid, c.fkid",
			      &found, err))
		return false;
	while (database_next(found)) {
		if (!say_dangling(db, found, problems, err)) {
			sqlite3_finalize(found);
			return false;
		}
	}
	return database_ended(found, err);
}

static bool run_query(sqlite3_stmt *query, const char *path, struct problems *problems,
		      struct error *err)
{
	if (sqlite3_column_count(query) != 3 || !sqlite3_stmt_readonly(query)) {
		error_failed(err, "%s: not a query of file, line and message: %s", path,
			     sqlite3_sql(query));
		sqlite3_finalize(query);
		return false;
	}
	while (database_next(query)) {
		struct position at = {database_text(query, 0),
				      (size_t)sqlite3_column_int64(query, 1)};
		problem_at(problems, at, "%s", database_text(query, 2));
	}
	return database_ended(query, err);
}

bool check_queries(sqlite3 *db, const char *path, struct problems *problems, struct error *err)
{
	struct input input;
	sqlite3_stmt *query;
	bool ok = true;

	if (!input_open(&input, path, err))
		return false;
	for (const char *next = input.text; ok && *next;) {
		if (sqlite3_prepare_v2(db, next, -1, &query, &next) != SQLITE_OK)
			ok = database_failed(db, err, path);
		else if (query) /* NULL: only blanks and comments were left */
			ok = run_query(query, path, problems, err);
	}
	input_close(&input);
	return ok;
}
