/* The checks across rows: foreign keys, and the queries of reference-checks.sql. */
#ifndef REFBUILD_CHECK_H
#define REFBUILD_CHECK_H

#include "jarwright/error.h"
#include "problem.h"

#include <sqlite3.h>
#include <stdbool.h>

/* Says every value that names a row which does not exist: "unknown food 'x'". */
bool check_references(sqlite3 *db, struct problems *problems, struct error *err);

/*
 * Runs every statement of the file; each must give (file, line, message), and
 * each row it gives is a fault. False with *err set only if that failed.
 */
bool check_queries(sqlite3 *db, const char *path, struct problems *problems, struct error *err);

#endif
