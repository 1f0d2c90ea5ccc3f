/* Rows of touched jars, as tracing and recalls read them. Used in this folder only. */
#ifndef JARWRIGHT_HOUSEHOLD_TOUCHED_H
#define JARWRIGHT_HOUSEHOLD_TOUCHED_H

#include <jansson.h>
#include <sqlite3.h>

#include "jarwright/household_recalls.h"

#define TOUCHED_COLUMNS                                                                            \
	"jar.batch, batch.year, batch.number, jar.number, batch.title, batch.day, jar.size, "      \
	"jar.state, jar.place, jar.since_ms"
#define TOUCHED_COLUMNS_N 10

/* False: no jarwright wrote the row. */
bool touched_jar_read(sqlite3_stmt *row, struct touched_jar *out);

/* As household_touched(), within a transaction; *out is to be released also if false. */
bool touched_walk(struct household *db, const struct fault *fault, struct touched_jars *out,
		  struct error *err);

/* {"batch": UUID, "jars": "1-7"}; NULL: *err is filled, or there was no memory. */
json_t *recall_batch_item(struct household *db, int64_t batch, const struct jar_set *set,
			  struct error *err);

/* The statements of the walk, of which a test shows that they use the indexes. */
const char *touched_seed(enum fault_kind kind);
#define TOUCHED_LATER                                                                              \
	"SELECT batch, from_number FROM batch_from WHERE from_batch = ?1 ORDER BY from_number"

#endif
