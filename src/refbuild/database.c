#include "database.h"

bool database_failed(sqlite3 *db, struct error *err, const char *what)
{
	return error_failed(err, "%s: %s", what, sqlite3_errmsg(db));
}

bool database_run(sqlite3 *db, const char *sql, struct error *err)
{
	if (sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
		return database_failed(db, err, "the database refused a statement");
	return true;
}

bool database_prepare(sqlite3 *db, const char *sql, sqlite3_stmt **out, struct error *err)
{
	if (sqlite3_prepare_v2(db, sql, -1, out, NULL) != SQLITE_OK)
		return database_failed(db, err, sql);
	return true;
}

bool database_bound(sqlite3_stmt *statement, int code, struct error *err)
{
	if (code == SQLITE_OK)
		return true;
	database_failed(sqlite3_db_handle(statement), err, "a value could not be bound");
	sqlite3_finalize(statement);
	return false;
}

bool database_next(sqlite3_stmt *statement)
{
	return sqlite3_step(statement) == SQLITE_ROW;
}

bool database_ended(sqlite3_stmt *statement, struct error *err)
{
	sqlite3 *db = sqlite3_db_handle(statement);
	int code = sqlite3_errcode(db);

	if (code != SQLITE_DONE && code != SQLITE_OK)
		database_failed(db, err, "the database could not be read");
	sqlite3_finalize(statement);
	return code == SQLITE_DONE || code == SQLITE_OK;
}

const char *database_text(sqlite3_stmt *statement, int column)
{
	const char *text = (const char *)sqlite3_column_text(statement, column);

	return text ? text : "";
}
