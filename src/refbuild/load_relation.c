#include "load_relation.h"

#include "database.h"
#include "number.h"

#include <string.h>

/* Columns that the loader fills itself; a relation may not name them. */
static const char *const own_columns[] = {"ordinal", "file", "file_line", "source_id",
					  "source_place"};

static bool is_own(const char *column)
{
	for (size_t i = 0; i < sizeof own_columns / sizeof own_columns[0]; i++)
		if (strcmp(own_columns[i], column) == 0)
			return true;
	return false;
}

/* Finds the declared type of a column: *type is 'I', 'T', or 0 if there is no such column. */
static bool column_type(struct loader *loader, const char *table, const char *column, char *type,
			struct error *err)
{
	sqlite3_stmt *statement;

	*type = 0;
	if (!database_prepare(loader->db, "SELECT type FROM pragma_table_info(?1) WHERE name = ?2",
			      &statement, err) ||
	    !database_bound(statement, sqlite3_bind_text(statement, 1, table, -1, SQLITE_STATIC),
			    err) ||
	    !database_bound(statement, sqlite3_bind_text(statement, 2, column, -1, SQLITE_STATIC),
			    err))
		return false;
	while (database_next(statement))
		*type = database_text(statement, 0)[0];
	return database_ended(statement, err);
}

static bool is_repeated(const struct relation_row *row, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (strcmp(row->columns[i], row->columns[n]) == 0)
			return true;
	return false;
}

/* Learns what the columns of a relation take; header_ok is false if one is at fault. */
static bool begin_relation(struct loader *loader, const struct relation_row *row, struct error *err)
{
	size_t before = loader->problems->count;
	bool has_source = false;
	char cites;
	char type;

	if (!column_type(loader, row->relation, "source_id", &cites, err))
		return false;
	for (size_t i = 0; i < row->n; i++) {
		bool source = cites && strcmp(row->columns[i], "source") == 0;
		if (!column_type(loader, row->relation, row->columns[i], &type, err))
			return false;
		if (is_repeated(row, i))
			problem_at(loader->problems, row->header, "column '%s' is named twice",
				   row->columns[i]);
		else if (!source && (type == 0 || is_own(row->columns[i])))
			problem_at(loader->problems, row->header, "%s has no column '%s'",
				   row->relation, row->columns[i]);
		has_source = has_source || source;
		loader->whole[i] = type == 'I';
	}
	if (cites && !has_source)
		problem_at(loader->problems, row->header,
			   "%s has no column 'source': every row names its publication",
			   row->relation);
	loader->header = row->header;
	loader->header_ok = loader->problems->count == before;
	return true;
}

/* Adds one value; says what is wrong with it. */
static void add_value(struct loader *loader, struct insert *insert, const struct relation_row *row,
		      size_t i)
{
	const char *column = row->columns[i];
	const char *value = row->values[i];
	int32_t whole;

	if (strcmp(column, "source") == 0) {
		if (value)
			insert_source(insert, value);
		else
			problem_at(loader->problems, row->at, "%s has no source", row->relation);
	} else if (!loader->whole[i] || !value) {
		insert_text(insert, column, value);
	} else if (number_whole(value, strlen(value), &whole)) {
		insert_number(insert, column, whole);
	} else {
		problem_at(loader->problems, row->at, "%s: '%s' is not a whole number", column,
			   value);
	}
}

bool load_row(struct loader *loader, const struct relation_row *row, struct error *err)
{
	struct insert insert;
	int64_t id;

	if (loader->header.line != row->header.line && !begin_relation(loader, row, err))
		return false;
	if (!loader->header_ok)
		return true;
	size_t before = loader->problems->count;
	insert_begin(&insert, row->relation, row->at);
	for (size_t i = 0; i < row->n; i++)
		add_value(loader, &insert, row, i);
	if (loader->problems->count != before)
		return true;
	return insert_run(&insert, loader->db, loader->problems, &id, err);
}
