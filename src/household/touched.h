/* Rows of touched jars, as tracing and recalls read them. Used in this folder only. */
#ifndef JARWRIGHT_HOUSEHOLD_TOUCHED_H
#define JARWRIGHT_HOUSEHOLD_TOUCHED_H

#include <sqlite3.h>

#include "jarwright/household_recalls.h"

/* Columns of jar and batch; behind them stands the step. */
#define TOUCHED_COLUMNS                                                                            \
	"jar.batch, batch.year, batch.number, jar.number, batch.title, batch.day, jar.size, "      \
	"jar.state, jar.place, jar.since_ms"
#define TOUCHED_COLUMNS_N 11 /* the step included */

/* False: no jarwright wrote the row. */
bool touched_jar_read(sqlite3_stmt *row, struct touched_jar *out);

#endif
