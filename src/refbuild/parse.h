/*
 * The text tables, taken apart: lines become records and rows.
 *
 * A record is "kind key" at column 0 and indented "field value" lines; a
 * relation is "relation NAME: column | column" and rows of values parted by
 * bars; a blank line ends either; '#' begins a comment line.
 */
#ifndef REFBUILD_PARSE_H
#define REFBUILD_PARSE_H

#include "format.h"
#include "jarwright/error.h"
#include "problem.h"

#include <stdbool.h>
#include <stddef.h>

enum {
	PARSE_LINE_MAX = 4000, /* bytes; C17 need not take a longer string */
	PARSE_FIELDS_MAX = 200,
	PARSE_COLUMNS_MAX = 24,
};

struct record_field {
	const struct field_format *format;
	const char *name;
	const char *value; /* trimmed, never empty */
	struct position at;
};
struct record {
	const struct record_format *format;
	const char *key; /* trimmed, never empty */
	struct position at;
	struct record_field fields[PARSE_FIELDS_MAX];
	size_t fields_n;
};

struct relation_row {
	const char *relation;
	const char *const *columns;
	const char *values[PARSE_COLUMNS_MAX]; /* trimmed; NULL where empty */
	size_t n;
	struct position header; /* where the relation line stands */
	struct position at;
};

/* Receives what was read. All pointers live only during the call. False: *err is set, stop. */
struct parse_sink {
	void *context;
	bool (*record)(void *context, const struct record *record, struct error *err);
	bool (*row)(void *context, const struct relation_row *row, struct error *err);
};

/*
 * Reads one file and hands its records and rows to the sink in order. Faults in
 * the text are said through problems, and what they stand in is left out; false
 * with *err set only if the file cannot be read or the sink failed.
 */
bool parse_file(const char *path, const struct parse_sink *sink, struct problems *problems,
		struct error *err);

/* Cuts blanks off both ends, in place. */
char *parse_trim(char *text);

#endif
