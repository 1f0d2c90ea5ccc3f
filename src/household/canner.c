/* The canners of the kitchen, as the log keeps them. */
#include "jarwright/household_canners.h"

#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"
#include "log.h"

/* --- Reading --- */

#define CANNER_COLUMNS                                                                             \
	"canner.name, canner.kind, canner.holds_quarts, canner.holds_pints, "                      \
	"canner.holds_half_pints, canner.retired, '@' || lower(substr(hex(event.uuid), -6)), "     \
	"(SELECT count(*) FROM gauge_test WHERE canner = canner.id), last.tested, "                \
	"last.high_mpsi, last.error_mpsi FROM canner CROSS JOIN event ON event.id = canner.id "    \
	"LEFT JOIN gauge_test AS last ON last.id = (SELECT id FROM gauge_test WHERE "              \
	"gauge_test.canner = canner.id ORDER BY tested DESC, id DESC LIMIT 1)"

static bool damaged(const struct household *db, struct error *err)
{
	return error_failed(
	    err,
	    "household file '%s': its list of canners is damaged; run 'jarwright log "
	    "verify'",
	    db->path);
}

static bool read_record(sqlite3_stmt *row, struct canner_record *out)
{
	memset(out, 0, sizeof *out);
	out->retired = sqlite3_column_int(row, 5) != 0;
	out->tests_n = (size_t)sqlite3_column_int64(row, 7);
	out->last.high_mpsi = sqlite3_column_int(row, 9);
	out->last.error_mpsi = sqlite3_column_int(row, 10);
	return household_canner_row(row, &out->canner) &&
	       store_text(row, 6, out->mark, sizeof out->mark) &&
	       (out->tests_n == 0 || store_text(row, 8, out->last.tested, sizeof out->last.tested));
}

static bool add_record(struct household *db, sqlite3_stmt *row, struct canner_records *out,
		       struct error *err)
{
	struct canner_record *more = realloc(out->items, (out->n + 1) * sizeof *more);
	if (!more)
		return error_failed(err,
				    "canner: out of memory; close other programs and try again");
	out->items = more;
	return read_record(row, &out->items[out->n++]) || damaged(db, err);
}

bool household_canner_records(struct household *db, bool all, struct canner_records *out,
			      struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	memset(out, 0, sizeof *out);
	if (!store_has_log(db))
		return !db->sql || store_too_old(db, err);
	if (!store_cached(db,
			  "SELECT " CANNER_COLUMNS
			  " WHERE canner.retired <= ?1 ORDER BY canner.name, canner.id",
			  &row, err))
		return false;
	sqlite3_bind_int(row, 1, all);
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = add_record(db, row, out, err);
	if (store_done(db, row, err) && ok)
		return true;
	canner_records_release(out);
	return false;
}

void canner_records_release(struct canner_records *records)
{
	free(records->items);
	memset(records, 0, sizeof *records);
}

static bool read_one(struct household *db, int64_t id, struct canner_record *out, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, "SELECT " CANNER_COLUMNS " WHERE canner.id = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	bool read = sqlite3_step(row) == SQLITE_ROW && read_record(row, out);
	return store_done(db, row, err) && (read || damaged(db, err));
}

bool household_canner(struct household *db, const char *name, struct canner_record *out,
		      struct error *err)
{
	int64_t id;
	if (!store_has_log(db))
		return db->sql
			   ? store_too_old(db, err)
			   : error_usage(err, "canner: there is none yet; add one with 'jarwright "
					      "canner add NAME --kind KIND'");
	return find_canner(db, name, &id, err) && read_one(db, id, out, err);
}

/* --- Writing --- */

static json_t *canner_body(const struct kitchen_canner *canner)
{
	json_t *body =
	    json_pack("{s:s, s:s}", "name", canner->name, "kind", canner_word(canner->kind));
	if (body &&
	    body_set_integer(body, "quarts", canner->holds_quarts > 0, canner->holds_quarts) &&
	    body_set_integer(body, "pints", canner->holds_pints > 0, canner->holds_pints) &&
	    body_set_integer(body, "half_pints", canner->holds_half_pints > 0,
			     canner->holds_half_pints))
		return body;
	json_decref(body);
	return NULL;
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
	if (canner->name[0] == '@')
		return error_usage(err, "canner: a name cannot begin with @; type another");
	return holds_check(canner->holds_quarts, "quarts", err) &&
	       holds_check(canner->holds_pints, "pints", err) &&
	       holds_check(canner->holds_half_pints, "half-pints", err);
}

/* A second canner in use by this name would make every later "--canner NAME" a question. */
static bool name_is_free(struct household *db, const char *name, int64_t but, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT 1 FROM canner WHERE name = ?1 AND retired = 0 AND id <> ?2",
			  &query, err))
		return false;
	sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	sqlite3_bind_int64(query, 2, but);
	bool taken = sqlite3_step(query) == SQLITE_ROW;
	if (!store_done(db, query, err))
		return false;
	return !taken || error_usage(err,
				     "canner '%s': there is one of that name; change it with "
				     "'jarwright canner change', or give this one another name",
				     name);
}

static bool add_canner(struct household *db, const struct kitchen_canner *canner, struct instant at,
		       struct canner_record *now, struct error *err)
{
	int n;
	int64_t id;
	if (!name_is_free(db, canner->name, 0, err) ||
	    !store_integer(db, "SELECT count(*) FROM canner WHERE retired = 0", &n, err))
		return false;
	if (n >= KITCHEN_CANNERS_MAX)
		return error_usage(err,
				   "canner '%s': there are %d already; retire one with 'jarwright "
				   "canner retire NAME'",
				   canner->name, n);
	return log_append(db, "canner-add", 0, at, canner_body(canner), &id, err) &&
	       read_one(db, id, now, err);
}

bool household_add_canner(struct household *db, const struct kitchen_canner *canner,
			  struct instant at, struct canner_record *now, struct error *err)
{
	if (!canner_check(canner, err) || !log_begin(db, err))
		return false;
	return log_end(db, add_canner(db, canner, at, now, err), err);
}

static bool merge_change(struct kitchen_canner *canner, const struct canner_change *change,
			 struct error *err)
{
	if (change->name) {
		if (strlen(change->name) >= sizeof canner->name)
			return error_usage(err,
					   "canner: the name is longer than %zu bytes; shorten it",
					   sizeof canner->name - 1);
		memcpy(canner->name, change->name, strlen(change->name) + 1);
	}
	if (change->kind)
		canner->kind = *change->kind;
	if (change->holds_quarts)
		canner->holds_quarts = *change->holds_quarts;
	if (change->holds_pints)
		canner->holds_pints = *change->holds_pints;
	if (change->holds_half_pints)
		canner->holds_half_pints = *change->holds_half_pints;
	return canner_check(canner, err);
}

static bool change_canner(struct household *db, const char *name,
			  const struct canner_change *change, struct instant at,
			  struct canner_record *now, struct error *err)
{
	int64_t id;
	return find_canner(db, name, &id, err) && read_one(db, id, now, err) &&
	       merge_change(&now->canner, change, err) &&
	       name_is_free(db, now->canner.name, id, err) &&
	       log_append(db, "canner-change", id, at, canner_body(&now->canner), NULL, err) &&
	       read_one(db, id, now, err);
}

bool household_change_canner(struct household *db, const char *name,
			     const struct canner_change *change, struct instant at,
			     struct canner_record *now, struct error *err)
{
	return log_begin(db, err) &&
	       log_end(db, change_canner(db, name, change, at, now, err), err);
}

static bool retire_canner(struct household *db, const char *name, struct instant at,
			  struct canner_record *now, struct error *err)
{
	int64_t id;
	return find_canner(db, name, &id, err) &&
	       log_append(db, "canner-retire", id, at, json_object(), NULL, err) &&
	       read_one(db, id, now, err);
}

bool household_retire_canner(struct household *db, const char *name, struct instant at,
			     struct canner_record *now, struct error *err)
{
	return log_begin(db, err) && log_end(db, retire_canner(db, name, at, now, err), err);
}

/* --- The gauge --- */

static json_t *test_body(struct date tested, const struct gauge_reading *readings, size_t n)
{
	char day[DATE_SIZE];
	json_t *list = json_array();
	bool ok = list != NULL;
	for (size_t i = 0; i < n && ok; i++)
		ok = json_array_append_new(
			 list, json_pack("{s:i, s:i}", "gauge_mpsi", (int)readings[i].gauge_mpsi,
					 "master_mpsi", (int)readings[i].master_mpsi)) == 0;
	if (ok) /* takes the list, whatever happens */
		return json_pack("{s:s, s:o}", "tested", date_text(tested, day), "readings", list);
	json_decref(list);
	return NULL;
}

static bool test_gauge(struct household *db, const char *name, json_t *body, struct instant at,
		       struct canner_record *now, struct error *err)
{
	int64_t id;
	if (!find_canner(db, name, &id, err)) {
		json_decref(body);
		return false;
	}
	return log_append(db, "gauge-test", id, at, body, NULL, err) && read_one(db, id, now, err);
}

bool household_test_gauge(struct household *db, const char *name, struct date tested,
			  const struct gauge_reading *readings, size_t readings_n,
			  struct instant at, struct canner_record *now, struct error *err)
{
	return log_begin(db, err) &&
	       log_end(db,
		       test_gauge(db, name, test_body(tested, readings, readings_n), at, now, err),
		       err);
}
