/* Records and rows of the text tables into SQLite. */
#ifndef REFBUILD_LOAD_H
#define REFBUILD_LOAD_H

#include "insert.h"
#include "parse.h"

enum { LOAD_SCRATCH = 5 * PARSE_LINE_MAX };

struct loader {
	sqlite3 *db;
	struct problems *problems;
	/* The relation under way: where its header stands, and what its columns take. */
	struct position header;
	bool header_ok;
	bool whole[PARSE_COLUMNS_MAX]; /* the column takes a whole number */
	/* Values put together from several fields of one record. */
	char scratch[LOAD_SCRATCH];
	size_t scratch_used;
};

/* Reads a file of tables into the database; false with *err set only if that failed. */
bool load_file(struct loader *loader, const char *path, struct error *err);

/* The first field of this type, or NULL. */
const struct record_field *load_field(const struct record *record, enum field_type type);

#endif
