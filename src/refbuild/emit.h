/* C text from the reference database. */
#ifndef REFBUILD_EMIT_H
#define REFBUILD_EMIT_H

#include "jarwright/error.h"

#include <sqlite3.h>
#include <stdbool.h>
#include <stdio.h>

/* rule_ids.h: enum rule_id in the order of the tables. */
bool emit_rule_ids(sqlite3 *db, FILE *file, struct error *err);

/* reference_data.c: everything of reference.h and reference_tables.h. */
bool emit_data(sqlite3 *db, FILE *file, struct error *err);

/* Numbers the rows of every array in temporary tables NAME_at; the parts below join them. */
bool emit_layout(sqlite3 *db, struct error *err);

/* The parts of reference_data.c: what foods are made of, and reference_tables.h. */
bool emit_foods(sqlite3 *db, FILE *file, struct error *err);
bool emit_plain_tables(sqlite3 *db, FILE *file, struct error *err);

/*
 * Writes "static const struct TYPE NAME_rows[] = {" and a row for each row of sql,
 * then "};" and "enum { NAME_n = ROWS };". No row: NAME_rows is NULL.
 * The name of each column of sql says how it is written:
 *   name     .name = "text", "" if NULL
 *   @name    .name = text, as it is: an enum constant, an address, a count
 *   #name    .name = 12, NONE if NULL
 *   source   .from = {&source_rows[N], "place"} from "N place"
 */
bool emit_array(sqlite3 *db, FILE *file, const char *type, const char *name, const char *sql,
		struct error *err);

#endif
