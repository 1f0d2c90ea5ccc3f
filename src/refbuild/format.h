/*
 * What may stand in the text tables: the kinds of record with their fields and
 * the names of the relations. The columns of a relation are those of its SQL
 * table, so they are not listed here.
 */
#ifndef REFBUILD_FORMAT_H
#define REFBUILD_FORMAT_H

#include <stdbool.h>
#include <stddef.h>

enum field_type {
	FIELD_TEXT,
	FIELD_LINES,  /* repeatable; joined one a line */
	FIELD_WORDS,  /* repeatable; "a | b" becomes "|a|b|" in lower case */
	FIELD_MILLI,  /* a decimal, kept in thousandths */
	FIELD_WHOLE,  /* a whole number */
	FIELD_FIGURE, /* "45 min": the column in thousandths, the rest in column "unit" */
	FIELD_NEEDS,  /* words that each set a column to 1 */
	FIELD_SOURCE, /* source id, then the place; every record but edition and source has one */
	FIELD_DOSE,   /* repeatable; a row of acid_dose */
	FIELD_BANDS,  /* elevation bands of a process table */
	FIELD_LINE,   /* any other name in a process table is a jar and begins a line */
};

struct field_format {
	const char *name;
	enum field_type type;
	const char *column; /* NULL: the field makes no column of its own */
};

struct record_format {
	const char *kind;
	const char *table;
	const char *key_column; /* NULL: the key is several words, taken apart by the loader */
	bool needs_source;
	const struct field_format *fields;
	size_t fields_n;
};

/* The record of this kind, or NULL. */
const struct record_format *format_record(const char *kind);

/* The field of this name, or NULL. A process table takes any name as a line. */
const struct field_format *format_field(const struct record_format *record, const char *name);

/* Whether a field of this type may stand several times in a record. */
bool format_repeatable(enum field_type type);

/* Whether a relation of this name may stand in the tables. */
bool format_is_relation(const char *name);

/*
 * The relations that are carried as printed, a row a struct of
 * jarwright/reference_tables.h; ends with NULL.
 */
extern const char *const format_plain_relations[];

#endif
