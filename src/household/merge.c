/* Another device's household file: its entries become ours too. */
#include <stdlib.h>
#include <string.h>

#include "backup.h"
#include "import.h"
#include "jarwright/household_log.h"

#define TOLD_EVERY 1000

/* The hash is over the text, and our exports rest on its being what jarwright writes. */
static bool is_canonical(const struct event *event, bool *same, struct error *err)
{
	json_t *json;
	if (!body_read(event->body, event->body_length, &json, err))
		return false;
	char *text = json_is_object(json) ? body_write(json) : NULL;
	*same = text && strlen(text) == event->body_length &&
		memcmp(text, event->body, event->body_length) == 0;
	free(text);
	json_decref(json);
	return true;
}

static bool take_row(struct intake *in, sqlite3_stmt *row, struct error *err)
{
	struct traveller t;
	bool same = false;
	if (traveller_read(row, &t) && !is_canonical(&t.event, &same, err))
		return false;
	if (!same)
		return error_failed(err, "an entry of it cannot be read; use another copy");
	return intake_event(in, &t, err) ||
	       error_context(err, "entry %lld of a device", (long long)t.event.seq);
}

static bool take_events(struct household *other, struct intake *in, const struct progress *progress,
			struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	int total;
	int64_t done = 0;
	if (!store_integer(other, "SELECT count(*) FROM event", &total, err) ||
	    !travellers_prepare(other, &row, err))
		return false;
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		ok = take_row(in, row, err);
		if (progress && ++done % TOLD_EVERY == 0)
			progress->tell(progress->context, done, total);
	}
	return store_done(other, row, err) && ok;
}

/* *whose: what its own device is called. */
static bool take_tips(struct household *other, struct intake *in, char *whose, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!tips_prepare(other, &row, err))
		return false;
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		struct tip tip;
		ok = tip_read(row, &tip) ? intake_tip(in, &tip, err) : export_damaged(other, err);
		if (ok && tip.own)
			memcpy(whose, tip.name, sizeof tip.name);
	}
	return store_done(other, row, err) && ok;
}

static bool take_recipe(struct intake *in, sqlite3_stmt *row, const char *whose, struct error *err)
{
	enum measuring_system system;
	const char *name = (const char *)sqlite3_column_text(row, 0);
	const char *word = (const char *)sqlite3_column_text(row, 1);
	const char *text = (const char *)sqlite3_column_text(row, 2);
	if (!name || !word || !text || strlen(text) != (size_t)sqlite3_column_bytes(row, 2) ||
	    !measuring_system_find(word, &system) || system == SYSTEM_UNSTATED)
		return error_failed(err, "one of its recipes is damaged; use another copy");
	return intake_recipe(in, name, system, text, whose, err);
}

/* The plain ones first: what was put beside them may be what stands here. */
static bool take_recipes(struct household *other, struct intake *in, const char *whose,
			 struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(other, "SELECT name, system, source FROM recipe ORDER BY name", &row,
			  err))
		return false;
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = take_recipe(in, row, whose, err);
	return store_done(other, row, err) && ok;
}

static bool compare_kitchen(struct household *other, struct intake *in, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(other, "SELECT elevation_typed, elevation_mft FROM kitchen", &row, err))
		return false;
	if (sqlite3_step(row) == SQLITE_ROW) {
		char typed[KITCHEN_TYPED_SIZE];
		struct kitchen_said said = {.elevation_mft = sqlite3_column_int64(row, 1)};
		if (store_text(row, 0, typed, sizeof typed))
			said.elevation = typed;
		ok = intake_kitchen(in, &said, false, err);
	}
	return store_done(other, row, err) && ok;
}

static bool take_all(struct household *db, struct household *other, const struct progress *progress,
		     struct intake_report *out, struct error *err)
{
	struct intake *in;
	char whose[KITCHEN_NAME_SIZE] = "other device";
	bool ok = intake_begin(db, out, &in, err) && take_tips(other, in, whose, err) &&
		  compare_kitchen(other, in, err) && take_recipes(other, in, whose, err) &&
		  take_events(other, in, progress, err) && intake_finish(in, err);
	intake_release(in);
	return ok;
}

/* One look at the other file, whatever its owner writes meanwhile. */
static bool merge_open(struct household *db, struct household *other, bool dry,
		       const struct progress *progress, struct intake_report *out,
		       struct error *err)
{
	if (!store_exec(other, "BEGIN", err))
		return false;
	bool ok = log_begin(db, err);
	if (ok) {
		ok = take_all(db, other, progress, out, err) ||
		     error_context(err, "'%s'", other->path);
		bool held = log_end(db, ok && !dry, err);
		ok = ok && (held || dry);
	}
	struct error ignored = {0};
	return store_end(other, true, ok ? err : &ignored) && ok;
}

bool household_merge(struct household *db, const char *path, bool dry,
		     const struct progress *progress, struct intake_report *out, struct error *err)
{
	struct household *other;
	memset(out, 0, sizeof *out);
	if (!backup_check(path, err) || !household_open(path, HOUSEHOLD_READ, &other, err))
		return false;
	bool ok = store_has_log(other)
		      ? merge_open(db, other, dry, progress, out, err)
		      : error_failed(err,
				     "'%s': it is from before the log; let this jarwright "
				     "bring it up to date first: JARWRIGHT_DB=FILE jarwright "
				     "kitchen --units us",
				     path);
	household_close(other);
	return ok;
}
