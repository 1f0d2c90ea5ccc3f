/* One row on its way into a table: columns are gathered, then inserted at once. */
#ifndef REFBUILD_INSERT_H
#define REFBUILD_INSERT_H

#include "jarwright/error.h"
#include "problem.h"

#include <sqlite3.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { INSERT_COLUMNS_MAX = 40 };

struct insert_value {
	const char *column;
	const char *text; /* text_length bytes; NULL: the number, or SQL NULL */
	size_t text_length;
	int64_t number;
	bool is_null;
};
struct insert {
	const char *table;
	struct position at;
	struct insert_value values[INSERT_COLUMNS_MAX];
	size_t n;
};

/* Begins a row; its place in the tables goes into file and file_line. Names are borrowed. */
void insert_begin(struct insert *insert, const char *table, struct position at);

/* Add a column; the text is borrowed until insert_run. NULL text is SQL NULL. */
void insert_text(struct insert *insert, const char *column, const char *text);
void insert_text_of(struct insert *insert, const char *column, const char *text, size_t length);
void insert_number(struct insert *insert, const char *column, int64_t number);

/* Adds source_id and source_place from "id place..."; value may not be NULL. */
void insert_source(struct insert *insert, const char *value);

/* Whether this column was added already. */
bool insert_has(const struct insert *insert, const char *column);

/*
 * Inserts the row. *id is its rowid, or 0 if a constraint refused it, which is
 * then said through problems. False with *err set only if the database failed.
 */
bool insert_run(const struct insert *insert, sqlite3 *db, struct problems *problems, int64_t *id,
		struct error *err);

#endif
