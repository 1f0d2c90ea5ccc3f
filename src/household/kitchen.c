#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
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

/* Copies a text column; false if it is no plain text that fits. */
static bool text_column(sqlite3_stmt *row, int column, char *buffer, size_t size)
{
	const char *text = (const char *)sqlite3_column_text(row, column);
	size_t bytes = (size_t)sqlite3_column_bytes(row, column);
	if (!text || bytes == 0 || bytes >= size || strlen(text) != bytes ||
	    plain_text_check(text) != PLAIN_TEXT)
		return false;
	memcpy(buffer, text, bytes + 1);
	return true;
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
	return text_column(row, 1, out->elevation_typed, sizeof out->elevation_typed) &&
	       elevation_agrees(out->elevation_typed, mft);
}

static bool read_units(sqlite3_stmt *row, struct kitchen *out)
{
	char word[16];
	struct error ignored = {0};
	if (sqlite3_column_type(row, 2) == SQLITE_NULL)
		return true;
	return text_column(row, 2, word, sizeof word) && units_parse(word, &out->units, &ignored);
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
	if (!text_column(row, column, word, sizeof word))
		return false;
	for (int kind = 0; kind < CANNER_COUNT; kind++)
		if (strcmp(word, canner_word((enum canner)kind)) == 0) {
			*out = (enum canner)kind;
			return true;
		}
	return false;
}

static bool read_canner(sqlite3_stmt *row, struct kitchen_canner *out)
{
	return text_column(row, 0, out->name, sizeof out->name) && read_kind(row, 1, &out->kind) &&
	       integer_column(row, 2, 1, KITCHEN_HOLDS_MAX, 0, &out->holds_quarts) &&
	       integer_column(row, 3, 1, KITCHEN_HOLDS_MAX, 0, &out->holds_pints) &&
	       integer_column(row, 4, 1, KITCHEN_HOLDS_MAX, 0, &out->holds_half_pints);
}

static bool read_canners(struct household *db, sqlite3_stmt *row, struct kitchen *out,
			 struct error *err)
{
	int code;
	while ((code = sqlite3_step(row)) == SQLITE_ROW)
		if (out->canners_n == KITCHEN_CANNERS_MAX ||
		    !read_canner(row, &out->canners[out->canners_n++]))
			return damaged(db, "list of canners", err);
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

static bool read_all(struct household *db, struct kitchen *out, struct error *err)
{
	return with_rows(db, "SELECT elevation_mft, elevation_typed, units FROM kitchen", out,
			 read_kitchen, err) &&
	       with_rows(db,
			 "SELECT name, kind, holds_quarts, holds_pints, holds_half_pints "
			 "FROM canner ORDER BY name",
			 out, read_canners, err);
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

bool household_change_kitchen(struct household *db, const struct kitchen_change *change,
			      struct error *err)
{
	if (!change_check(change, err) || !store_begin(db, err))
		return false;
	return store_end(db, update_kitchen(db, change, err), err);
}

static const struct kitchen_canner *find_canner(const struct kitchen *kitchen, const char *name)
{
	for (size_t i = 0; i < kitchen->canners_n; i++)
		if (sqlite3_stricmp(kitchen->canners[i].name, name) == 0)
			return &kitchen->canners[i];
	return NULL;
}

static int bind_holds(sqlite3_stmt *statement, int place, int holds)
{
	return holds ? sqlite3_bind_int(statement, place, holds)
		     : sqlite3_bind_null(statement, place);
}

static bool upsert_canner(struct household *db, const struct kitchen_canner *canner,
			  struct error *err)
{
	sqlite3_stmt *upsert;
	if (!store_prepare(db,
			   "INSERT INTO canner (name, kind, holds_quarts, holds_pints, "
			   "holds_half_pints) VALUES (?1, ?2, ?3, ?4, ?5) "
			   "ON CONFLICT (name) DO UPDATE SET name = excluded.name, "
			   "kind = excluded.kind, holds_quarts = excluded.holds_quarts, "
			   "holds_pints = excluded.holds_pints, "
			   "holds_half_pints = excluded.holds_half_pints",
			   &upsert, err))
		return false;
	int code = sqlite3_bind_text(upsert, 1, canner->name, -1, SQLITE_STATIC);
	code |= sqlite3_bind_text(upsert, 2, canner_word(canner->kind), -1, SQLITE_STATIC);
	code |= bind_holds(upsert, 3, canner->holds_quarts);
	code |= bind_holds(upsert, 4, canner->holds_pints);
	code |= bind_holds(upsert, 5, canner->holds_half_pints);
	if (code != SQLITE_OK) {
		sqlite3_finalize(upsert);
		return store_failed(db, err);
	}
	return store_finish(db, upsert, err);
}

static bool put_canner(struct household *db, const struct kitchen_canner *canner, bool *replaced,
		       struct error *err)
{
	struct kitchen kitchen = {0};
	if (!read_all(db, &kitchen, err))
		return false;
	*replaced = find_canner(&kitchen, canner->name) != NULL;
	if (!*replaced && kitchen.canners_n == KITCHEN_CANNERS_MAX)
		return error_usage(err,
				   "canner '%s': there are %d already; remove one with 'jarwright "
				   "kitchen remove NAME'",
				   canner->name, KITCHEN_CANNERS_MAX);
	return upsert_canner(db, canner, err);
}

static bool holds_check(int holds, const char *jars, struct error *err)
{
	if (holds >= 0 && holds <= KITCHEN_HOLDS_MAX)
		return true;
	return error_usage(err, "canner: it cannot hold %d %s; say a number from 1 to %d", holds,
			   jars, KITCHEN_HOLDS_MAX);
}

static bool canner_check(const struct kitchen_canner *canner, struct error *err)
{
	if (canner->name[0] == '\0' || plain_text_check(canner->name) != PLAIN_TEXT)
		return error_usage(err, "canner: its name is empty or no plain text; type a name");
	return holds_check(canner->holds_quarts, "quarts", err) &&
	       holds_check(canner->holds_pints, "pints", err) &&
	       holds_check(canner->holds_half_pints, "half-pints", err);
}

bool household_put_canner(struct household *db, const struct kitchen_canner *canner, bool *replaced,
			  struct error *err)
{
	if (!canner_check(canner, err) || !store_begin(db, err))
		return false;
	return store_end(db, put_canner(db, canner, replaced, err), err);
}

static bool no_such_canner(const struct kitchen *kitchen, const char *name, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE], list[KITCHEN_CANNERS_MAX * (KITCHEN_NAME_SIZE + 4)];
	size_t length = 0;
	text_show(name, SIZE_MAX, shown);
	if (kitchen->canners_n == 0)
		return error_usage(err,
				   "canner '%s': there is none; add it with 'jarwright kitchen "
				   "add NAME --canner KIND'",
				   shown);
	for (size_t i = 0; i < kitchen->canners_n; i++) {
		sqlite3_snprintf((int)(sizeof list - length), list + length, "%s'%s'",
				 i ? ", " : "", kitchen->canners[i].name);
		length += strlen(list + length);
	}
	return error_usage(err, "canner '%s': there is none of that name; there is %s", shown,
			   list);
}

static bool remove_canner(struct household *db, const char *name, struct error *err)
{
	struct kitchen kitchen = {0};
	if (!read_all(db, &kitchen, err))
		return false;
	if (!find_canner(&kitchen, name))
		return no_such_canner(&kitchen, name, err);
	sqlite3_stmt *statement;
	if (!store_prepare(db, "DELETE FROM canner WHERE name = ?1", &statement, err))
		return false;
	if (sqlite3_bind_text(statement, 1, name, -1, SQLITE_STATIC) != SQLITE_OK) {
		sqlite3_finalize(statement);
		return store_failed(db, err);
	}
	return store_finish(db, statement, err);
}

bool household_remove_canner(struct household *db, const char *name, struct error *err)
{
	if (!store_begin(db, err))
		return false;
	return store_end(db, remove_canner(db, name, err), err);
}
