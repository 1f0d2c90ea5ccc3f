#include "database.h"
#include "emit.h"
#include "format.h"

/* The columns of a relation that its struct carries, in order. */
static const char columns_sql[] =
    "SELECT name FROM pragma_table_info(?1)"
    " WHERE name NOT IN ('ordinal', 'file', 'file_line', 'source_id', 'source_place')"
    " ORDER BY cid";

/* "SELECT each column, source FROM relation"; the caller frees it. NULL: *err is set. */
static char *select_rows(sqlite3 *db, const char *relation, int *columns, struct error *err)
{
	sqlite3_stmt *names;

	*columns = 0;
	if (!database_prepare(db, columns_sql, &names, err) ||
	    !database_bound(names, sqlite3_bind_text(names, 1, relation, -1, SQLITE_STATIC), err))
		return NULL;
	sqlite3_str *sql = sqlite3_str_new(db);
	sqlite3_str_appendall(sql, "SELECT ");
	for (; database_next(names); ++*columns)
		sqlite3_str_appendf(sql, "r.\"%w\", ", database_text(names, 0));
	sqlite3_str_appendf(sql,
			    "s.at || ' ' || coalesce(r.source_place, '') AS source"
			    " FROM \"%w\" AS r JOIN source_at AS s ON s.id = r.source_id"
			    " ORDER BY r.ordinal",
			    relation);
	char *text = sqlite3_str_finish(sql);
	if (!database_ended(names, err)) {
		sqlite3_free(text);
		return NULL;
	}
	if (!text)
		error_failed(err, "out of memory");
	return text;
}

/*
 * The rows of one relation, and a check at compile time that the struct has
 * exactly the columns of the table, so that none is left unset.
 */
static bool emit_relation(sqlite3 *db, FILE *file, const char *relation, struct error *err)
{
	char type[64];
	int columns;
	char *sql = select_rows(db, relation, &columns, err);

	if (!sql)
		return false;
	sqlite3_snprintf(sizeof type, type, "%s_row", relation);
	bool ok = emit_array(db, file, type, relation, sql, err);
	sqlite3_free(sql);
	fprintf(file,
		"_Static_assert(sizeof(struct %s) ==\n"
		"                   %d * sizeof(const char *) + sizeof(struct citation),\n"
		"               \"struct %s differs from its table\");\n\n",
		type, columns, type);
	return ok;
}

bool emit_plain_tables(sqlite3 *db, FILE *file, struct error *err)
{
	for (size_t i = 0; format_plain_relations[i]; i++)
		if (!emit_relation(db, file, format_plain_relations[i], err))
			return false;
	fputs("static const struct reference_tables reference_tables = {\n", file);
	for (size_t i = 0; format_plain_relations[i]; i++)
		fprintf(file, "\t.%s = %s_rows, .%s_n = %s_n,\n", format_plain_relations[i],
			format_plain_relations[i], format_plain_relations[i],
			format_plain_relations[i]);
	fputs("};\n\n"
	      "const struct reference_tables *reference_tables_edition(void)\n"
	      "{\n\treturn &reference_tables;\n}\n\n",
	      file);
	return !ferror(file) || error_failed(err, "the C text could not be written");
}
