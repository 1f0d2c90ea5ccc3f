/* Lots, as the log keeps them. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_lots.h"
#include "jarwright/text.h"
#include "log.h"

const char *const lot_kinds[] = {"lids",   "vinegar", "produce", "salt", "sugar",
				 "pectin", "jars",    "other",   NULL};

const char *lot_kind_find(const char *word)
{
	for (size_t i = 0; lot_kinds[i]; i++)
		if (strcmp(lot_kinds[i], word) == 0)
			return lot_kinds[i];
	return NULL;
}

/* --- Reading --- */

#define LOT_COLUMNS                                                                                \
	"lot.kind, lot.name, lot.supplier, lot.code, lot.dated, lot.strength_mpct, "               \
	"lot.finished, '@' || lower(substr(hex(event.uuid), -6)), "                                \
	"(SELECT count(*) FROM batch_lot WHERE batch_lot.lot = lot.id) "                           \
	"FROM lot CROSS JOIN event ON event.id = lot.id"

static bool damaged(const struct household *db, struct error *err)
{
	return error_failed(
	    err, "household file '%s': its list of lots is damaged; run 'jarwright log verify'",
	    db->path);
}

/* "" for NULL. */
static bool optional_text(sqlite3_stmt *row, int column, char *buffer, size_t size)
{
	*buffer = '\0';
	return sqlite3_column_type(row, column) == SQLITE_NULL ||
	       store_text(row, column, buffer, size);
}

static bool read_lot(sqlite3_stmt *row, struct lot *out)
{
	char kind[16];
	memset(out, 0, sizeof *out);
	out->strength_mpct = sqlite3_column_int(row, 5);
	out->finished = sqlite3_column_int(row, 6) != 0;
	out->batches_n = (size_t)sqlite3_column_int64(row, 8);
	out->kind = store_text(row, 0, kind, sizeof kind) ? lot_kind_find(kind) : NULL;
	return out->kind && store_text(row, 1, out->name, sizeof out->name) &&
	       optional_text(row, 2, out->supplier, sizeof out->supplier) &&
	       optional_text(row, 3, out->code, sizeof out->code) &&
	       optional_text(row, 4, out->dated, sizeof out->dated) &&
	       store_text(row, 7, out->mark, sizeof out->mark);
}

static bool out_of_memory(struct error *err)
{
	return error_failed(err, "lot: out of memory; close other programs and try again");
}

static bool add_row(struct household *db, sqlite3_stmt *row, struct lots *out, struct error *err)
{
	struct lot *more = realloc(out->items, (out->n + 1) * sizeof *more);
	if (!more)
		return out_of_memory(err);
	out->items = more;
	return read_lot(row, &out->items[out->n++]) || damaged(db, err);
}

bool household_lots(struct household *db, bool all, struct lots *out, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	memset(out, 0, sizeof *out);
	if (!store_has_log(db))
		return !db->sql || store_too_old(db, err);
	if (!store_cached(db,
			  "SELECT " LOT_COLUMNS
			  " WHERE lot.finished <= ?1 ORDER BY lot.kind, lot.name, lot.id",
			  &row, err))
		return false;
	sqlite3_bind_int(row, 1, all);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_row(db, row, out, err);
	if (store_done(db, row, err) && ok)
		return true;
	lots_release(out);
	return false;
}

void lots_release(struct lots *lots)
{
	free(lots->items);
	memset(lots, 0, sizeof *lots);
}

static bool read_one(struct household *db, int64_t id, struct lot *out, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, "SELECT " LOT_COLUMNS " WHERE lot.id = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	bool read = sqlite3_step(row) == SQLITE_ROW && read_lot(row, out);
	return store_done(db, row, err) && (read || damaged(db, err));
}

static bool add_batch(sqlite3_stmt *row, struct lot_batches *out, struct error *err)
{
	struct lot_batch *more = realloc(out->items, (out->n + 1) * sizeof *more);
	if (!more)
		return out_of_memory(err);
	out->items = more;
	struct lot_batch *one = &out->items[out->n++];
	memset(one, 0, sizeof *one);
	batch_code_text(sqlite3_column_int(row, 0), sqlite3_column_int(row, 1), one->code);
	one->jars = sqlite3_column_int(row, 4);
	if (!optional_text(row, 2, one->day, sizeof one->day))
		*one->day = '\0';
	/* A title may hold anything; the one who shows it makes it harmless. */
	store_cut_text(row, 3, one->title, sizeof one->title);
	return true;
}

static bool read_batches(struct household *db, int64_t id, struct lot_batches *out,
			 struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	memset(out, 0, sizeof *out);
	if (!store_cached(
		db,
		"SELECT batch.year, batch.number, batch.day, batch.title, (SELECT count(*) "
		"FROM jar WHERE jar.batch = batch.id) FROM batch_lot JOIN batch ON "
		"batch.id = batch_lot.batch WHERE batch_lot.lot = ?1 "
		"ORDER BY batch.day, batch.year, batch.number",
		&row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_batch(row, out, err);
	if (store_done(db, row, err) && ok)
		return true;
	lot_batches_release(out);
	return false;
}

void lot_batches_release(struct lot_batches *batches)
{
	free(batches->items);
	memset(batches, 0, sizeof *batches);
}

bool household_lot(struct household *db, const char *name, struct lot *out,
		   struct lot_batches *batches, struct error *err)
{
	int64_t id;
	memset(batches, 0, sizeof *batches);
	if (!store_has_log(db))
		return db->sql ? store_too_old(db, err)
			       : error_usage(err, "lot: there is none yet; add one with 'jarwright "
						  "lot add NAME --kind KIND'");
	return find_lot(db, name, &id, err) && read_one(db, id, out, err) &&
	       read_batches(db, id, batches, err);
}

/* --- Writing --- */

static const char *said(const char *text)
{
	return *text ? text : NULL;
}

static json_t *lot_body(const struct lot *lot)
{
	json_t *body = json_pack("{s:s, s:s}", "kind", lot->kind, "name", lot->name);
	if (body && body_set_text(body, "supplier", said(lot->supplier)) &&
	    body_set_text(body, "code", said(lot->code)) &&
	    body_set_text(body, "dated", said(lot->dated)) &&
	    body_set_integer(body, "strength_mpct", lot->strength_mpct > 0, lot->strength_mpct))
		return body;
	json_decref(body);
	return NULL;
}

static bool lot_check(const struct lot *lot, struct error *err)
{
	if (!*lot->name)
		return error_usage(err, "lot: its name is empty; type a name");
	if (*lot->name == '@')
		return error_usage(err, "lot: a name cannot begin with @; type another");
	if (lot->strength_mpct != 0 && strcmp(lot->kind, "vinegar") != 0)
		return error_usage(err,
				   "lot '%s': only vinegar has a strength; leave it out, or say "
				   "--kind vinegar",
				   lot->name);
	return true;
}

static bool name_is_free(struct household *db, const char *name, int64_t but, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT 1 FROM lot WHERE name = ?1 AND finished = 0 AND id <> ?2",
			  &query, err))
		return false;
	sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	sqlite3_bind_int64(query, 2, but);
	bool taken = sqlite3_step(query) == SQLITE_ROW;
	if (!store_done(db, query, err))
		return false;
	return !taken || error_usage(err,
				     "lot '%s': there is one of that name in use; finish it with "
				     "'jarwright lot finish', or give this one another name",
				     name);
}

static bool add_lot(struct household *db, const struct lot *lot, struct instant at, struct lot *now,
		    struct error *err)
{
	int64_t id;
	return name_is_free(db, lot->name, 0, err) &&
	       log_append(db, "lot-add", 0, at, lot_body(lot), &id, err) &&
	       read_one(db, id, now, err);
}

bool household_add_lot(struct household *db, const struct lot *lot, struct instant at,
		       struct lot *now, struct error *err)
{
	if (!lot_check(lot, err) || !log_begin(db, err))
		return false;
	return log_end(db, add_lot(db, lot, at, now, err), err);
}

static bool take(char *into, size_t size, const char *text, const char *what, struct error *err)
{
	if (!text)
		return true;
	if (strlen(text) >= size)
		return error_usage(err, "lot: the %s is longer than %zu bytes; shorten it", what,
				   size - 1);
	memcpy(into, text, strlen(text) + 1);
	return true;
}

static bool merge_change(struct lot *lot, const struct lot_change *change, struct error *err)
{
	if (change->kind)
		lot->kind = change->kind;
	if (change->strength_mpct)
		lot->strength_mpct = change->strength_mpct;
	return take(lot->name, sizeof lot->name, change->name, "name", err) &&
	       take(lot->supplier, sizeof lot->supplier, change->supplier, "supplier", err) &&
	       take(lot->code, sizeof lot->code, change->code, "code", err) &&
	       take(lot->dated, sizeof lot->dated, change->dated, "date", err) &&
	       lot_check(lot, err);
}

static bool change_lot(struct household *db, const char *name, const struct lot_change *change,
		       struct instant at, struct lot *now, struct error *err)
{
	int64_t id;
	return find_lot(db, name, &id, err) && read_one(db, id, now, err) &&
	       merge_change(now, change, err) &&
	       (now->finished || name_is_free(db, now->name, id, err)) &&
	       log_append(db, "lot-change", id, at, lot_body(now), NULL, err) &&
	       read_one(db, id, now, err);
}

bool household_change_lot(struct household *db, const char *name, const struct lot_change *change,
			  struct instant at, struct lot *now, struct error *err)
{
	return log_begin(db, err) && log_end(db, change_lot(db, name, change, at, now, err), err);
}

static bool finish_lot(struct household *db, const char *name, struct instant at, struct lot *now,
		       struct error *err)
{
	int64_t id;
	return find_lot(db, name, &id, err) &&
	       log_append(db, "lot-finish", id, at, json_object(), NULL, err) &&
	       read_one(db, id, now, err);
}

bool household_finish_lot(struct household *db, const char *name, struct instant at,
			  struct lot *now, struct error *err)
{
	return log_begin(db, err) && log_end(db, finish_lot(db, name, at, now, err), err);
}
