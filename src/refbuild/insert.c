#include "insert.h"

#include "database.h"

#include <string.h>

static struct insert_value *add(struct insert *insert, const char *column)
{
	struct insert_value *value = &insert->values[insert->n++];

	*value = (struct insert_value){.column = column};
	return value;
}

void insert_begin(struct insert *insert, const char *table, struct position at)
{
	insert->table = table;
	insert->at = at;
	insert->n = 0;
	insert_text(insert, "file", at.file);
	insert_number(insert, "file_line", (int64_t)at.line);
}

void insert_text(struct insert *insert, const char *column, const char *text)
{
	if (text)
		insert_text_of(insert, column, text, strlen(text));
	else
		add(insert, column)->is_null = true;
}

void insert_text_of(struct insert *insert, const char *column, const char *text, size_t length)
{
	struct insert_value *value = add(insert, column);

	value->text = text;
	value->text_length = length;
}

void insert_number(struct insert *insert, const char *column, int64_t number)
{
	add(insert, column)->number = number;
}

void insert_source(struct insert *insert, const char *value)
{
	size_t length = strcspn(value, " \t");
	const char *place = value + length + strspn(value + length, " \t");

	insert_text_of(insert, "source_id", value, length);
	insert_text(insert, "source_place", *place ? place : NULL);
}

bool insert_has(const struct insert *insert, const char *column)
{
	for (size_t i = 0; i < insert->n; i++)
		if (strcmp(insert->values[i].column, column) == 0)
			return true;
	return false;
}

static bool prepare(const struct insert *insert, sqlite3 *db, sqlite3_stmt **out, struct error *err)
{
	sqlite3_str *sql = sqlite3_str_new(db);

	sqlite3_str_appendf(sql, "INSERT INTO \"%w\" (", insert->table);
	for (size_t i = 0; i < insert->n; i++)
		sqlite3_str_appendf(sql, "%s\"%w\"", i ? ", " : "", insert->values[i].column);
	sqlite3_str_appendall(sql, ") VALUES (");
	for (size_t i = 0; i < insert->n; i++)
		sqlite3_str_appendall(sql, i ? ", ?" : "?");
	sqlite3_str_appendall(sql, ")");
	char *text = sqlite3_str_finish(sql);
	if (!text)
		return error_failed(err, "out of memory");
	bool ok = database_prepare(db, text, out, err);
	sqlite3_free(text);
	return ok;
}

static bool bind(const struct insert *insert, sqlite3_stmt *statement)
{
	for (size_t i = 0; i < insert->n; i++) {
		const struct insert_value *value = &insert->values[i];
		int column = (int)i + 1;
		int code;
		if (value->is_null)
			code = sqlite3_bind_null(statement, column);
		else if (value->text)
			code = sqlite3_bind_text(statement, column, value->text,
						 (int)value->text_length, SQLITE_STATIC);
		else
			code = sqlite3_bind_int64(statement, column, value->number);
		if (code != SQLITE_OK)
			return false;
	}
	return true;
}

/* "table.a, table.b" with the table's name left out, cut to size. */
static void bare_columns(const char *columns, const char *table, char *out, size_t size)
{
	size_t skip = strlen(table) + 1;
	size_t n = 0;

	while (*columns && n + 1 < size) {
		if (strncmp(columns, table, skip - 1) == 0 && columns[skip - 1] == '.')
			columns += skip;
		else
			out[n++] = *columns++;
	}
	out[n] = '\0';
}

/* Says a refused constraint in plain words. The schema names each CHECK by its message. */
static void say_refusal(const struct insert *insert, struct problems *problems, const char *message)
{
	static const char check[] = "CHECK constraint failed: ";
	static const char missing[] = "NOT NULL constraint failed: ";
	static const char unique[] = "UNIQUE constraint failed: ";
	char columns[256];

	if (strncmp(message, check, strlen(check)) == 0) {
		problem_at(problems, insert->at, "%s", message + strlen(check));
	} else if (strncmp(message, missing, strlen(missing)) == 0) {
		bare_columns(message + strlen(missing), insert->table, columns, sizeof columns);
		problem_at(problems, insert->at, "%s has no %s", insert->table, columns);
	} else if (strncmp(message, unique, strlen(unique)) == 0) {
		bare_columns(message + strlen(unique), insert->table, columns, sizeof columns);
		problem_at(problems, insert->at, "duplicate %s: the same %s stood before",
			   insert->table, columns);
	} else {
		problem_at(problems, insert->at, "%s: %s", insert->table, message);
	}
}

bool insert_run(const struct insert *insert, sqlite3 *db, struct problems *problems, int64_t *id,
		struct error *err)
{
	sqlite3_stmt *statement = NULL;

	*id = 0;
	if (!prepare(insert, db, &statement, err))
		return false;
	int code = bind(insert, statement) ? sqlite3_step(statement) : SQLITE_ERROR;
	bool ok = true;
	if (code == SQLITE_DONE)
		*id = sqlite3_last_insert_rowid(db);
	else if (code == SQLITE_CONSTRAINT)
		say_refusal(insert, problems, sqlite3_errmsg(db));
	else
		ok = database_failed(db, err, insert->table);
	sqlite3_finalize(statement);
	return ok;
}
