/* The reading of jars into groups: what the sources of shelf, history and due share. */
#ifndef JARWRIGHT_HOUSEHOLD_SHELF_H
#define JARWRIGHT_HOUSEHOLD_SHELF_H

#include "jarwright/household_jars.h"
#include "store.h"

/* The version of the schema that brought the log; an older file has no jars. */
#define LOG_SCHEMA 3

#define SHELF_COLUMNS "batch, number, size, load, state, place, since_ms, sealed, late"
/* INDEXED BY: without the index this would grow with the jars that are gone. */
#define SHELF_HERE                                                                                 \
	"SELECT " SHELF_COLUMNS " FROM jar INDEXED BY jar_here WHERE gone = 0 ORDER BY batch, "    \
	"number"

struct shelf_batch {
	int64_t id;
	uint8_t uuid[16];
	char code[JAR_CODE_SIZE];
	char title[JAR_TITLE_SIZE];
	char food[64];
	struct date day;
	bool for_shelf;
	struct jar_set recalled;
};
bool shelf_batch_read(struct household *db, int64_t batch, struct shelf_batch *out,
		      struct error *err);
/* Adds a jar of SHELF_COLUMNS to a group of its batch, whose groups begin at `first`. */
bool shelf_add_row(struct household *db, sqlite3_stmt *query, const struct shelf_batch *batch,
		   size_t first, struct jar_groups *out, struct error *err);

#endif
