/* Canners of a file from before the log become its first entries. */
#include "log.h"

static void bind_body(json_t *body, const char *key, sqlite3_stmt *row, int column, bool *ok)
{
	if (sqlite3_column_type(row, column) == SQLITE_INTEGER)
		*ok = json_object_set_new(body, key,
					  json_integer(sqlite3_column_int64(row, column))) == 0 &&
		      *ok;
}

/* NULL: out of memory, or a text that no jarwright wrote. */
static json_t *body_of(sqlite3_stmt *row)
{
	json_t *body = json_pack("{s:s, s:s}", "name", sqlite3_column_text(row, 0), "kind",
				 sqlite3_column_text(row, 1));
	bool ok = body != NULL;
	if (ok) {
		bind_body(body, "quarts", row, 2, &ok);
		bind_body(body, "pints", row, 3, &ok);
		bind_body(body, "half_pints", row, 4, &ok);
	}
	if (ok)
		return body;
	json_decref(body);
	return NULL;
}

bool log_carry_over(struct household *db, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_prepare(db,
			   "SELECT name, kind, holds_quarts, holds_pints, holds_half_pints "
			   "FROM canner_before_log ORDER BY id",
			   &row, err))
		return false;
	db->logging = true;
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = log_append(db, "canner-add", 0, instant_at(time(NULL)), body_of(row), NULL,
				err);
	db->logging = false;
	bool read = sqlite3_reset(row) == SQLITE_OK || (ok && store_failed(db, err));
	sqlite3_finalize(row);
	return ok && read && store_exec(db, "DROP TABLE canner_before_log", err);
}
