/* From a fault to every jar it touches. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_recalls.h"
#include "log.h"
#include "touched.h"

#define JARS_STEP 256

void touched_jars_release(struct touched_jars *jars)
{
	free(jars->jars);
	*jars = (struct touched_jars){0};
}

/*
 * Jars made with it (the seed, which differs by the kind of fault), then those of the batches
 * that they went into. A jar reached on two ways counts with the fewest steps: UNION and not
 * UNION ALL ends the walk even if two batches went into each other.
 */
#define WALK(seed)                                                                                 \
	"WITH RECURSIVE touched (batch, number, step) AS (" seed                                   \
	" UNION SELECT later.batch, later.number, touched.step + 1 FROM touched "                  \
	"JOIN batch_from ON batch_from.from_batch = touched.batch "                                \
	"AND batch_from.from_number = touched.number "                                             \
	"JOIN jar AS later ON later.batch = batch_from.batch WHERE touched.step < 100) "           \
	"SELECT " TOUCHED_COLUMNS ", min(touched.step) FROM touched "                              \
	"JOIN jar ON jar.batch = touched.batch AND jar.number = touched.number "                   \
	"JOIN batch ON batch.id = jar.batch GROUP BY jar.batch, jar.number "                       \
	"ORDER BY jar.batch, jar.number"

static const char *const walks[] = {
    [FAULT_LOT] = WALK("SELECT jar.batch, jar.number, 0 FROM batch_lot JOIN jar ON jar.batch = "
		       "batch_lot.batch WHERE batch_lot.lot = ?1"),
    [FAULT_CANNER] = WALK("SELECT jar.batch, jar.number, 0 FROM load JOIN jar ON jar.batch = "
			  "load.batch AND jar.load = load.number WHERE load.canner = ?1 AND "
			  "load.started_ms BETWEEN ?5 AND ?6"),
    [FAULT_RECIPE] = WALK("SELECT jar.batch, jar.number, 0 FROM batch JOIN jar ON jar.batch = "
			  "batch.id WHERE batch.recipe = ?3 AND batch.recipe IS NOT NULL"),
    [FAULT_FOOD] = WALK("SELECT jar.batch, jar.number, 0 FROM batch JOIN jar ON jar.batch = "
			"batch.id WHERE batch.food = ?3 AND (?4 = '' OR batch.edition = ?4)"),
    [FAULT_EDITION] = WALK("SELECT jar.batch, jar.number, 0 FROM batch JOIN jar ON jar.batch = "
			   "batch.id WHERE batch.edition = ?4"),
    [FAULT_BATCH] = WALK("SELECT jar.batch, jar.number, 0 FROM jar WHERE jar.batch = ?1"),
    [FAULT_JAR] = WALK("SELECT jar.batch, jar.number, 0 FROM jar WHERE jar.batch = ?1 AND "
		       "jar.number = ?2"),
};

/* Binds what the statement has a place for. */
static bool bind(struct household *db, sqlite3_stmt *query, const struct fault *fault,
		 struct error *err)
{
	int places = sqlite3_bind_parameter_count(query);
	int code = sqlite3_bind_int64(query, 1, fault->subject);
	if (places >= 2)
		code |= sqlite3_bind_int(query, 2, fault->number);
	if (places >= 3)
		code |= sqlite3_bind_text(query, 3, fault->name, -1, SQLITE_STATIC);
	if (places >= 4)
		code |= sqlite3_bind_text(query, 4, fault->edition, -1, SQLITE_STATIC);
	if (places >= 6) {
		code |= sqlite3_bind_int64(query, 5, fault->from_ms);
		code |= sqlite3_bind_int64(query, 6, fault->to_ms);
	}
	return code == SQLITE_OK || store_failed(db, err);
}

static void copy_text(sqlite3_stmt *row, int column, char *out, size_t size)
{
	const char *text = (const char *)sqlite3_column_text(row, column);
	sqlite3_snprintf((int)size, out, "%s", text ? text : "");
}

bool touched_jar_read(sqlite3_stmt *row, struct touched_jar *out)
{
	const char *state = (const char *)sqlite3_column_text(row, 7);
	out->batch = sqlite3_column_int64(row, 0);
	out->year = sqlite3_column_int(row, 1);
	out->number_of_batch = sqlite3_column_int(row, 2);
	out->number = sqlite3_column_int(row, 3);
	copy_text(row, 4, out->title, sizeof out->title);
	copy_text(row, 5, out->day, sizeof out->day);
	copy_text(row, 6, out->size, sizeof out->size);
	copy_text(row, 8, out->place, sizeof out->place);
	out->since_ms = sqlite3_column_int64(row, 9);
	out->step = sqlite3_column_int(row, 10);
	return state && jar_state_find(state, &out->state);
}

/* Room for one more. */
static bool grow(struct touched_jars *out, struct error *err)
{
	if (out->jars_n % JARS_STEP != 0)
		return true;
	struct touched_jar *more =
	    realloc(out->jars, (out->jars_n + JARS_STEP) * sizeof *out->jars);
	if (!more)
		return error_failed(err,
				    "recall: out of memory; close other programs and try again");
	out->jars = more;
	return true;
}

static bool read_all(struct household *db, sqlite3_stmt *row, struct touched_jars *out,
		     struct error *err)
{
	int code;
	while ((code = sqlite3_step(row)) == SQLITE_ROW) {
		if (!grow(out, err))
			return false;
		if (!touched_jar_read(row, &out->jars[out->jars_n]))
			return error_failed(err,
					    "household file '%s': a jar in it is damaged; run "
					    "'jarwright log verify'",
					    db->path);
		out->jars_n++;
	}
	return code == SQLITE_DONE || store_failed(db, err);
}

bool household_touched(struct household *db, const struct fault *fault, struct touched_jars *out,
		       struct error *err)
{
	sqlite3_stmt *query;
	*out = (struct touched_jars){0};
	if (!store_has_log(db))
		return true;
	if (!store_cached(db, walks[fault->kind], &query, err))
		return false;
	bool ok = bind(db, query, fault, err) && read_all(db, query, out, err);
	sqlite3_reset(query);
	if (!ok)
		touched_jars_release(out);
	return ok;
}
