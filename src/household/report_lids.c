/* Which lids sealed: the tests of a year's jars, by the lot of their lids. */
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/jar_state.h"
#include "report.h"

/* Jars of one batch whose seal was tested, and those of them that failed once. */
struct tested {
	struct jar_set all, failed;
};

static bool unreadable(struct error *err)
{
	return error_failed(err, "report: an entry of the log cannot be read; run 'jarwright log "
				 "verify'");
}

/* A seal's test, or a jar found unsealed later. */
static bool take_event(sqlite3_stmt *row, struct tested *out, struct error *err)
{
	const char *kind = (const char *)sqlite3_column_text(row, 0);
	const char *text = (const char *)sqlite3_column_text(row, 1);
	json_t *body = text ? json_loads(text, JSON_REJECT_DUPLICATES, NULL) : NULL;
	const char *jars = json_string_value(json_object_get(body, "jars"));
	const char *to = json_string_value(json_object_get(body, "to"));
	struct jar_set set;
	bool ok = kind && jars && jar_set_parse(jars, &set);
	bool seal = ok && strcmp(kind, "seal") == 0;
	if (seal || (ok && to && strcmp(to, "unsealed") == 0)) {
		jar_set_join(&out->all, &set);
		if (!seal || !json_is_true(json_object_get(body, "sealed")))
			jar_set_join(&out->failed, &set);
	}
	json_decref(body);
	return ok || unreadable(err);
}

static bool read_tested(struct household *db, int64_t batch, struct tested *out, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	*out = (struct tested){.all = {{0}}};
	if (!store_cached(
		db,
		"SELECT kind, body FROM event INDEXED BY event_subject WHERE subject = ?1 "
		"AND (kind = 'seal' OR (kind = 'jar' AND instr(body, '\"unsealed\"') > "
		"0)) AND NOT EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id) "
		"AND NOT EXISTS (SELECT 1 FROM conflict WHERE conflict.event = event.id)",
		&query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		ok = take_event(query, out, err);
	return store_done(db, query, err) && ok;
}

static struct report_lot *lot_of(struct report_year *out, enum report_lids lids, int64_t id,
				 struct error *err)
{
	for (size_t i = 0; i < out->lots_n; i++)
		if (out->lots[i].lids == lids && out->lots[i].id == id)
			return &out->lots[i];
	void *list = out->lots;
	struct report_lot *lot = report_more(&list, &out->lots_n, sizeof *lot, err);
	out->lots = list;
	if (lot) {
		lot->lids = lids;
		lot->id = id;
	}
	return lot;
}

/* The lot of the batch's lids, or the row for several or none. */
static struct report_lot *lot_of_batch(struct household *db, int64_t batch, struct report_year *out,
				       struct error *err)
{
	sqlite3_stmt *query;
	struct report_lot found = {.lids = REPORT_NO_LOT};
	if (!store_cached(db,
			  "SELECT lot.id, lot.name, lot.code, lot.supplier FROM batch_lot JOIN lot "
			  "ON lot.id = batch_lot.lot WHERE batch_lot.batch = ?1 AND lot.kind = "
			  "'lids'",
			  &query, err))
		return NULL;
	sqlite3_bind_int64(query, 1, batch);
	while (sqlite3_step(query) == SQLITE_ROW) {
		if (found.lids != REPORT_NO_LOT) {
			found = (struct report_lot){.lids = REPORT_SEVERAL_LOTS};
			continue;
		}
		found.lids = REPORT_ONE_LOT;
		found.id = sqlite3_column_int64(query, 0);
		store_cut_text(query, 1, found.lot, sizeof found.lot);
		store_cut_text(query, 2, found.code, sizeof found.code);
		store_cut_text(query, 3, found.maker, sizeof found.maker);
	}
	struct report_lot *lot =
	    store_done(db, query, err) ? lot_of(out, found.lids, found.id, err) : NULL;
	if (!lot)
		return NULL;
	found.sealed = lot->sealed;
	found.failed = lot->failed;
	*lot = found;
	return lot;
}

static bool add_batch(struct household *db, int64_t batch, struct report_year *out,
		      struct error *err)
{
	struct tested tested;
	struct report_lot *lot = lot_of_batch(db, batch, out, err);
	if (!lot || !read_tested(db, batch, &tested, err))
		return false;
	int failed = (int)jar_set_count(&tested.failed);
	lot->failed += failed;
	lot->sealed += (int)jar_set_count(&tested.all) - failed;
	return true;
}

static int by_lot(const void *left, const void *right)
{
	const struct report_lot *a = left, *b = right;
	if (a->lids != b->lids)
		return a->lids < b->lids ? -1 : 1;
	int order = strcmp(a->lot, b->lot);
	return order ? order : (a->id > b->id) - (a->id < b->id);
}

/* A batch without a jar, or for the cold, has no seals to speak of. */
bool report_lids(struct household *db, const struct report_span *span, struct report_year *out,
		 struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	if (!store_cached(
		db,
		"SELECT batch.id FROM batch INDEXED BY batch_day WHERE batch.day BETWEEN "
		"?1 AND ?2 AND EXISTS (SELECT 1 FROM load WHERE load.batch = batch.id AND "
		"load.canner IS NOT NULL)",
		&query, err))
		return false;
	sqlite3_bind_text(query, 1, span->first, -1, SQLITE_STATIC);
	sqlite3_bind_text(query, 2, span->last, -1, SQLITE_STATIC);
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		ok = add_batch(db, sqlite3_column_int64(query, 0), out, err);
	ok = store_done(db, query, err) && ok;
	if (ok && out->lots_n > 0)
		qsort(out->lots, out->lots_n, sizeof *out->lots, by_lot);
	return ok;
}
