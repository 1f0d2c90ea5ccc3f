/* A canner by name, and what its gauge was worth on a day. */
#include <string.h>

#include "batch_internal.h"
#include "jarwright/text.h"

static bool damaged(const struct household *db, struct error *err)
{
	return error_failed(err,
			    "household file '%s': a canner in it is damaged; run 'jarwright log "
			    "rebuild', or put back a backup",
			    db->path);
}

static bool read_canner(struct household *db, struct load_canner *out, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = false;
	if (!store_cached(db,
			  "SELECT name, kind, holds_quarts, holds_pints, holds_half_pints FROM "
			  "canner WHERE id = ?1",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, out->id);
	ok = sqlite3_step(query) == SQLITE_ROW && household_canner_row(query, &out->canner);
	return store_done(db, query, err) && (ok || damaged(db, err));
}

/* A row of a test: its date, how far it reads high, how far it is off. */
static void take_test(sqlite3_stmt *row, struct gauge_record *out)
{
	struct load_gauge *gauge = &out->gauge;
	int32_t high = sqlite3_column_int(row, 1), off = sqlite3_column_int(row, 2);
	if (!gauge->known || high > gauge->high_mpsi)
		gauge->high_mpsi = high;
	if (!gauge->known || off > gauge->error_mpsi)
		gauge->error_mpsi = off;
	gauge->known = true;
}

static bool read_test(struct household *db, sqlite3_stmt *query, int64_t canner, const char *day,
		      struct gauge_record *out, bool by_then, struct error *err)
{
	struct error ignored = {0};
	sqlite3_bind_int64(query, 1, canner);
	sqlite3_bind_text(query, 2, day, -1, SQLITE_STATIC);
	if (sqlite3_step(query) == SQLITE_ROW) {
		const char *on = (const char *)sqlite3_column_text(query, 0);
		take_test(query, out);
		if (by_then)
			out->tested = on && date_parse("gauge", on, &out->on, &ignored);
	}
	return store_done(db, query, err);
}

/* Between two tests a gauge was at worst as the worse of them shows. */
static bool read_gauge(struct household *db, struct date day, struct load_canner *out,
		       struct error *err)
{
	sqlite3_stmt *before, *after;
	char text[DATE_SIZE];
	date_text(day, text);
	return store_cached(db,
			    "SELECT tested, high_mpsi, error_mpsi FROM gauge_test WHERE canner = "
			    "?1 AND tested <= ?2 ORDER BY tested DESC, id DESC LIMIT 1",
			    &before, err) &&
	       read_test(db, before, out->id, text, &out->gauge, true, err) &&
	       store_cached(db,
			    "SELECT tested, high_mpsi, error_mpsi FROM gauge_test WHERE canner = "
			    "?1 AND tested > ?2 ORDER BY tested, id LIMIT 1",
			    &after, err) &&
	       read_test(db, after, out->id, text, &out->gauge, false, err);
}

bool household_load_canner(struct household *db, const char *name, struct date day,
			   struct load_canner *out, struct error *err)
{
	int64_t id;
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	if (!store_has_log(db))
		return error_usage(err,
				   "canner '%s': there is none of that name; add it with "
				   "'jarwright canner add NAME --kind KIND'",
				   shown);
	return find_canner(db, name, &id, err) && household_canner_of(db, id, day, out, err);
}

bool household_canner_of(struct household *db, int64_t id, struct date day, struct load_canner *out,
			 struct error *err)
{
	*out = (struct load_canner){.id = id};
	return read_canner(db, out, err) && read_gauge(db, day, out, err);
}
