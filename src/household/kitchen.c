#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
#include "kitchen_internal.h"
#include "store.h"

const char *units_word(enum units units)
{
	static const char *const words[] = {"unstated", "us", "metric"};
	return words[units];
}

bool units_parse(const char *word, enum units *out, struct error *err)
{
	for (enum units u = UNITS_US; u <= UNITS_METRIC; u++)
		if (strcmp(word, units_word(u)) == 0) {
			*out = u;
			return true;
		}
	char shown[TEXT_SHOWN_SIZE];
	text_show(word, SIZE_MAX, shown);
	return error_usage(err, "units: no units '%s'; say us or metric", shown);
}

/* A row that no jarwright wrote: what decides must not be guessed from it. */
static bool damaged(const struct household *db, const char *what, struct error *err)
{
	return error_failed(err,
			    "household file '%s': its %s is damaged; say it again with 'jarwright "
			    "kitchen', or put back a backup",
			    db->path, what);
}

/* An integer within least..most; NULL is `absent`. False: neither. */
static bool integer_column(sqlite3_stmt *row, int column, int least, int most, int absent, int *out)
{
	*out = absent;
	if (sqlite3_column_type(row, column) == SQLITE_NULL)
		return true;
	sqlite3_int64 value = sqlite3_column_int64(row, column);
	*out = (int)value;
	return sqlite3_column_type(row, column) == SQLITE_INTEGER && value >= least &&
	       value <= most;
}

/* The figure decides and the words are what she sees: one changed alone would mislead her. */
static bool elevation_agrees(const char *typed, int32_t mft)
{
	struct quantity elevation = {0};
	struct error ignored = {0};
	int64_t typed_mft;
	return quantity_parse(DIMENSION_LENGTH, "elevation", typed, &elevation, &ignored) &&
	       rational_ceil(elevation.amount, 1000, &typed_mft) && typed_mft == mft;
}

static bool read_elevation(sqlite3_stmt *row, struct kitchen *out)
{
	out->elevation_stated = sqlite3_column_type(row, 0) != SQLITE_NULL;
	if (!out->elevation_stated)
		return sqlite3_column_type(row, 1) == SQLITE_NULL;
	int mft;
	if (!integer_column(row, 0, KITCHEN_ELEVATION_MIN_FT * 1000,
			    KITCHEN_ELEVATION_MAX_FT * 1000, 0, &mft))
		return false;
	out->elevation_mft = mft;
	return store_text(row, 1, out->elevation_typed, sizeof out->elevation_typed) &&
	       elevation_agrees(out->elevation_typed, mft);
}

static bool read_units(sqlite3_stmt *row, struct kitchen *out)
{
	char word[16];
	struct error ignored = {0};
	if (sqlite3_column_type(row, 2) == SQLITE_NULL)
		return true;
	return store_text(row, 2, word, sizeof word) && units_parse(word, &out->units, &ignored);
}

static bool read_kitchen(struct household *db, sqlite3_stmt *row, struct kitchen *out,
			 struct error *err)
{
	int code = sqlite3_step(row);
	if (code == SQLITE_DONE)
		return damaged(db, "kitchen", err);
	if (code != SQLITE_ROW)
		return store_failed(db, err);
	if (!read_elevation(row, out))
		return damaged(db, "elevation", err);
	if (!read_units(row, out))
		return damaged(db, "choice of units", err);
	return true;
}

static bool read_kind(sqlite3_stmt *row, int column, enum canner *out)
{
	char word[32];
	if (!store_text(row, column, word, sizeof word))
		return false;
	for (int kind = 0; kind < CANNER_COUNT; kind++)
		if (strcmp(word, canner_word((enum canner)kind)) == 0) {
			*out = (enum canner)kind;
			return true;
		}
	return false;
}

bool household_canner_row(sqlite3_stmt *row, struct kitchen_canner *out)
{
	return store_text(row, 0, out->name, sizeof out->name) && read_kind(row, 1, &out->kind) &&
	       integer_column(row, 2, 1, KITCHEN_HOLDS_MAX, 0, &out->holds_quarts) &&
	       integer_column(row, 3, 1, KITCHEN_HOLDS_MAX, 0, &out->holds_pints) &&
	       integer_column(row, 4, 1, KITCHEN_HOLDS_MAX, 0, &out->holds_half_pints);
}

static bool read_canners(struct household *db, sqlite3_stmt *row, struct kitchen *out,
			 struct error *err)
{
	int code;
	while ((code = sqlite3_step(row)) == SQLITE_ROW) {
		/* Two devices may bring more than one may add. */
		if (out->canners_n == KITCHEN_CANNERS_MAX)
			out->canners_more++;
		else if (!household_canner_row(row, &out->canners[out->canners_n++]))
			return damaged(db, "list of canners", err);
	}
	return code == SQLITE_DONE || store_failed(db, err);
}

/* Runs one query and hands its rows to `reader`. */
static bool with_rows(struct household *db, const char *sql, struct kitchen *out,
		      bool (*reader)(struct household *, sqlite3_stmt *, struct kitchen *,
				     struct error *),
		      struct error *err)
{
	sqlite3_stmt *row;
	if (!store_prepare(db, sql, &row, err))
		return false;
	bool ok = reader(db, row, out, err);
	sqlite3_finalize(row);
	return ok;
}

static bool household_canners(struct household *db, struct kitchen *out, struct error *err)
{
	memset(out, 0, sizeof *out);
	return with_rows(db,
			 db->version < HOUSEHOLD_LOGGED_SINCE
			     ? "SELECT name, kind, holds_quarts, holds_pints, holds_half_pints "
			       "FROM canner ORDER BY name"
			     : "SELECT name, kind, holds_quarts, holds_pints, holds_half_pints "
			       "FROM canner WHERE retired = 0 ORDER BY name, id",
			 out, read_canners, err);
}

static bool read_all(struct household *db, struct kitchen *out, struct error *err)
{
	return household_canners(db, out, err) &&
	       with_rows(db, "SELECT elevation_mft, elevation_typed, units FROM kitchen", out,
			 read_kitchen, err);
}

bool household_kitchen(struct household *db, struct kitchen *out, struct error *err)
{
	memset(out, 0, sizeof *out);
	if (!db->sql)
		return true;
	/* One transaction, so that no other program's change falls between the two. */
	if (!store_exec(db, "BEGIN", err))
		return false;
	return store_end(db, read_all(db, out, err), err);
}

static bool update_kitchen(struct household *db, const struct kitchen_change *change,
			   struct error *err)
{
	sqlite3_stmt *update;
	if (!store_prepare(db,
			   "UPDATE kitchen SET elevation_mft = coalesce(?1, elevation_mft), "
			   "elevation_typed = coalesce(?2, elevation_typed), "
			   "units = coalesce(?3, units) WHERE id = 1",
			   &update, err))
		return false;
	int code = SQLITE_OK; /* what is not bound is NULL: left as it is */
	if (change->elevation_stated) {
		code |= sqlite3_bind_int(update, 1, change->elevation_mft);
		code |= sqlite3_bind_text(update, 2, change->elevation_typed, -1, SQLITE_STATIC);
	}
	if (change->units != UNITS_UNSTATED)
		code |= sqlite3_bind_text(update, 3, units_word(change->units), -1, SQLITE_STATIC);
	if (code != SQLITE_OK) {
		sqlite3_finalize(update);
		return store_failed(db, err);
	}
	if (!store_finish(db, update, err))
		return false;
	return sqlite3_changes(db->sql) == 1 || damaged(db, "kitchen", err);
}

static bool change_check(const struct kitchen_change *change, struct error *err)
{
	if (!change->elevation_stated)
		return true;
	if (change->elevation_mft < KITCHEN_ELEVATION_MIN_FT * 1000 ||
	    change->elevation_mft > KITCHEN_ELEVATION_MAX_FT * 1000)
		return error_usage(err, "elevation: it is outside %d to %d ft; check the unit",
				   KITCHEN_ELEVATION_MIN_FT, KITCHEN_ELEVATION_MAX_FT);
	if (strlen(change->elevation_typed) >= KITCHEN_TYPED_SIZE)
		return error_usage(err, "elevation: it is longer than %d bytes; type it shorter",
				   KITCHEN_TYPED_SIZE - 1);
	if (!elevation_agrees(change->elevation_typed, change->elevation_mft))
		return error_usage(err, "elevation: the words and the figure differ; type it again "
					"as a number and a unit");
	return true;
}

bool kitchen_change(struct household *db, const struct kitchen_change *change, struct error *err)
{
	return change_check(change, err) && update_kitchen(db, change, err);
}

bool household_change_kitchen(struct household *db, const struct kitchen_change *change,
			      struct error *err)
{
	if (!change_check(change, err) || !store_begin(db, err))
		return false;
	return store_end(db, update_kitchen(db, change, err), err);
}
