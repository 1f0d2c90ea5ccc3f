#include "database.h"
#include "emit.h"
#include "output.h"

#include <string.h>

/* "N place" where N is the number of the source in its array. */
static void emit_citation(FILE *file, const char *value)
{
	size_t length = strcspn(value, " ");

	fprintf(file, ".from = {&source_rows[%.*s], ", (int)length, value);
	output_literal(file, value[length] ? value + length + 1 : "");
	fputc('}', file);
}

static void emit_value(FILE *file, sqlite3_stmt *row, int column)
{
	const char *name = sqlite3_column_name(row, column);
	const char *value = database_text(row, column);
	bool is_null = sqlite3_column_type(row, column) == SQLITE_NULL;

	if (strcmp(name, "source") == 0) {
		emit_citation(file, value);
	} else if (name[0] == '@') {
		fprintf(file, ".%s = %s", name + 1, value);
	} else if (name[0] == '#') {
		fprintf(file, ".%s = %s", name + 1, is_null ? "NONE" : value);
	} else {
		fprintf(file, ".%s = ", name);
		output_literal(file, value);
	}
}

static void emit_row(FILE *file, sqlite3_stmt *row)
{
	int columns = sqlite3_column_count(row);

	fputs("\t{", file);
	for (int i = 0; i < columns; i++) {
		if (i > 0)
			fputs(", ", file);
		emit_value(file, row, i);
	}
	fputs("},\n", file);
}

bool emit_array(sqlite3 *db, FILE *file, const char *type, const char *name, const char *sql,
		struct error *err)
{
	sqlite3_stmt *row;
	size_t rows = 0;

	if (!database_prepare(db, sql, &row, err))
		return false;
	for (; database_next(row); rows++) {
		if (rows == 0)
			fprintf(file, "static const struct %s %s_rows[] = {\n", type, name);
		emit_row(file, row);
	}
	if (!database_ended(row, err))
		return false;
	if (rows == 0)
		fprintf(file, "#define %s_rows NULL\n", name);
	else
		fputs("};\n", file);
	fprintf(file, "enum { %s_n = %zu };\n\n", name, rows);
	return true;
}
