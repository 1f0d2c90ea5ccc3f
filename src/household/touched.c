/*
 * From a fault to every jar it touches: a walk over batches, breadth first. A batch that was made
 * with a touched jar is touched whole; so each batch enters the walk at most twice, with the jars
 * that were made with the fault and with the rest, and no number of steps is too many.
 */
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_recalls.h"
#include "log.h"
#include "touched.h"

void touched_jars_release(struct touched_jars *jars)
{
	free(jars->jars);
	free(jars->unfilled);
	*jars = (struct touched_jars){0};
}

static bool no_memory(struct error *err)
{
	return error_failed(err, "recall: out of memory; close other programs and try again");
}

/* --- The batches that the walk has reached --- */

struct reached {
	int64_t batch;
	struct jar_set made; /* with the fault itself: step 0 */
	struct jar_set jars; /* all that are touched */
	int step;            /* of those that are not in `made`; 0: it was not reached so */
};

/* Jars that are touched, and what was made with them not yet looked at. */
struct front {
	size_t at; /* in the list of the reached */
	struct jar_set jars;
	int step;
};

struct walk {
	struct household *db;
	struct error *err;
	struct reached *list;
	size_t n, room;
	size_t *slots;  /* hashed by batch: one more than a place in the list, 0: free */
	size_t slots_n; /* a power of two above twice n */
	struct front *fronts;
	size_t fronts_n, fronts_room;
};

static void walk_release(struct walk *w)
{
	free(w->list);
	free(w->slots);
	free(w->fronts);
}

static size_t *slot_of(const struct walk *w, int64_t batch)
{
	size_t at = (size_t)((uint64_t)batch * UINT64_C(0x9E3779B97F4A7C15) >> 17);
	for (at &= w->slots_n - 1; w->slots[at]; at = (at + 1) & (w->slots_n - 1))
		if (w->list[w->slots[at] - 1].batch == batch)
			break;
	return &w->slots[at];
}

/* Makes room for one more batch. */
static bool grow_list(struct walk *w)
{
	if (w->n < w->room)
		return true;
	size_t room = w->room ? w->room * 2 : 16;
	struct reached *list = realloc(w->list, room * sizeof *list);
	if (list)
		w->list = list;
	size_t *slots = list ? calloc(room * 4, sizeof *slots) : NULL;
	if (!slots)
		return no_memory(w->err);
	free(w->slots);
	w->slots = slots;
	w->slots_n = room * 4;
	w->room = room;
	for (size_t i = 0; i < w->n; i++)
		*slot_of(w, w->list[i].batch) = i + 1;
	return true;
}

static bool find_reached(struct walk *w, int64_t batch, size_t *at)
{
	if (!grow_list(w))
		return false;
	size_t *slot = slot_of(w, batch);
	if (!*slot) {
		w->list[w->n] = (struct reached){.batch = batch};
		*slot = ++w->n;
	}
	*at = *slot - 1;
	return true;
}

static bool push(struct walk *w, size_t at, const struct jar_set *jars, int step)
{
	if (w->fronts_n == w->fronts_room) {
		size_t room = w->fronts_room ? w->fronts_room * 2 : 16;
		struct front *fronts = realloc(w->fronts, room * sizeof *fronts);
		if (!fronts)
			return no_memory(w->err);
		w->fronts = fronts;
		w->fronts_room = room;
	}
	w->fronts[w->fronts_n++] = (struct front){at, *jars, step};
	return true;
}

/* --- Made with the fault --- */

/* A batch without jars gives one row without a number. */
static const char *const seeds[FAULT_KIND_COUNT] = {
    [FAULT_LOT] = "SELECT batch_lot.batch, jar.number FROM batch_lot LEFT JOIN jar ON "
		  "jar.batch = batch_lot.batch WHERE batch_lot.lot = ?1",
    [FAULT_CANNER] = "SELECT jar.batch, jar.number FROM load JOIN jar ON jar.batch = load.batch "
		     "AND jar.load = load.number WHERE load.canner = ?1 AND load.started_ms "
		     "BETWEEN ?5 AND ?6",
    [FAULT_RECIPE] = "SELECT batch.id, jar.number FROM batch LEFT JOIN jar ON jar.batch = batch.id "
		     "WHERE batch.recipe IS NOT NULL AND batch.recipe = ?3 COLLATE NOCASE",
    [FAULT_FOOD] = "SELECT batch.id, jar.number FROM batch LEFT JOIN jar ON jar.batch = batch.id "
		   "WHERE batch.food = ?3 AND (?4 = '' OR batch.edition = ?4)",
    [FAULT_EDITION] =
	"SELECT batch.id, jar.number FROM batch LEFT JOIN jar ON jar.batch = batch.id "
	"WHERE batch.edition = ?4",
    [FAULT_BATCH] = "SELECT batch.id, jar.number FROM batch LEFT JOIN jar ON jar.batch = batch.id "
		    "WHERE batch.id = ?1",
    [FAULT_JAR] = "SELECT batch, number FROM jar WHERE batch = ?1 AND number = ?2",
    [FAULT_RECALL] = "SELECT batch, number FROM recall_jar WHERE recall = ?1 AND disposition IS "
		     "NOT 'cleared'",
    [FAULT_LOADS] = "SELECT batch.id, jar.number FROM batch LEFT JOIN jar ON jar.batch = batch.id "
		    "WHERE batch.id = ?1 AND (?2 = 0 OR jar.load = ?2)",
};

const char *touched_seed(enum fault_kind kind)
{
	return seeds[kind];
}

/* Binds what the statement has a place for. */
static void bind(sqlite3_stmt *query, const struct fault *fault)
{
	int places = sqlite3_bind_parameter_count(query);
	sqlite3_bind_int64(query, 1, fault->subject);
	if (places >= 2)
		sqlite3_bind_int(query, 2, fault->number);
	if (places >= 3)
		sqlite3_bind_text(query, 3, fault->name, -1, SQLITE_STATIC);
	if (places >= 4)
		sqlite3_bind_text(query, 4, fault->edition, -1, SQLITE_STATIC);
	if (places >= 6) {
		sqlite3_bind_int64(query, 5, fault->from_ms);
		sqlite3_bind_int64(query, 6, fault->to_ms);
	}
}

static bool seed_rows(struct walk *w, const struct fault *fault)
{
	sqlite3_stmt *query;
	size_t at = 0;
	bool ok = true;
	if (!store_cached(w->db, seeds[fault->kind], &query, w->err))
		return false;
	bind(query, fault);
	while (ok && sqlite3_step(query) == SQLITE_ROW) {
		int64_t batch = sqlite3_column_int64(query, 0);
		/* The jars of a batch stand together, mostly. */
		if (w->n == 0 || w->list[at].batch != batch)
			ok = find_reached(w, batch, &at);
		if (ok)
			jar_set_add(&w->list[at].made, sqlite3_column_int(query, 1));
	}
	return store_done(w->db, query, w->err) && ok;
}

static bool seed(struct walk *w, const struct fault *fault)
{
	bool ok = true;
	struct fault one = *fault;
	if (fault->kind != FAULT_LOADS)
		ok = seed_rows(w, fault);
	for (size_t i = 0; fault->kind == FAULT_LOADS && i < fault->loads_n && ok; i++) {
		one.subject = fault->loads[i].batch;
		one.number = fault->loads[i].number;
		ok = seed_rows(w, &one);
	}
	for (size_t i = 0; i < w->n && ok; i++) {
		w->list[i].jars = w->list[i].made;
		ok = push(w, i, &w->list[i].made, 0);
	}
	return ok;
}

/* --- What was made with those --- */

/* All jars of the batch. */
static bool read_all_jars(struct walk *w, int64_t batch, struct jar_set *out)
{
	sqlite3_stmt *query;
	memset(out, 0, sizeof *out);
	if (!store_cached(w->db, "SELECT number FROM jar WHERE batch = ?1", &query, w->err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	while (sqlite3_step(query) == SQLITE_ROW)
		jar_set_add(out, sqlite3_column_int(query, 0));
	return store_done(w->db, query, w->err);
}

/* The batch was made with touched jars: the rest of it is touched too. */
static bool reach(struct walk *w, int64_t batch, int step)
{
	size_t at;
	struct jar_set all, more = {.bits = {0}};
	if (!find_reached(w, batch, &at))
		return false;
	if (w->list[at].step > 0)
		return true;
	w->list[at].step = step;
	if (!read_all_jars(w, batch, &all))
		return false;
	for (int n = jar_set_next(&all, 0); n; n = jar_set_next(&all, n))
		if (!jar_set_has(&w->list[at].jars, n))
			jar_set_add(&more, n);
	jar_set_join(&w->list[at].jars, &more);
	return push(w, at, &more, step);
}

/* A growing list of later batches: the query is over before the walk goes on with them. */
struct later {
	int64_t *batches;
	size_t n, room;
};

static bool add_later(struct walk *w, struct later *later, int64_t batch)
{
	if (later->n > 0 && later->batches[later->n - 1] == batch)
		return true;
	if (later->n == later->room) {
		size_t room = later->room ? later->room * 2 : 16;
		int64_t *batches = realloc(later->batches, room * sizeof *batches);
		if (!batches)
			return no_memory(w->err);
		later->batches = batches;
		later->room = room;
	}
	later->batches[later->n++] = batch;
	return true;
}

static bool read_later(struct walk *w, const struct front *front, struct later *later)
{
	sqlite3_stmt *query;
	bool ok = true;
	later->n = 0;
	if (!store_cached(w->db, TOUCHED_LATER, &query, w->err))
		return false;
	sqlite3_bind_int64(query, 1, w->list[front->at].batch);
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		if (jar_set_has(&front->jars, sqlite3_column_int(query, 1)))
			ok = add_later(w, later, sqlite3_column_int64(query, 0));
	return store_done(w->db, query, w->err) && ok;
}

static bool spread(struct walk *w)
{
	struct later later = {0};
	bool ok = true;
	for (size_t i = 0; i < w->fronts_n && ok; i++) {
		const struct front front = w->fronts[i];
		ok = read_later(w, &front, &later);
		for (size_t k = 0; k < later.n && ok; k++)
			ok = reach(w, later.batches[k], front.step + 1);
	}
	free(later.batches);
	return ok;
}

/* --- The jars as they are now --- */

bool touched_jar_read(sqlite3_stmt *row, struct touched_jar *out)
{
	const char *state = (const char *)sqlite3_column_text(row, 7);
	memset(out, 0, sizeof *out);
	out->batch = sqlite3_column_int64(row, 0);
	out->year = sqlite3_column_int(row, 1);
	out->number_of_batch = sqlite3_column_int(row, 2);
	out->number = sqlite3_column_int(row, 3);
	store_cut_text(row, 4, out->title, sizeof out->title);
	store_cut_text(row, 5, out->day, sizeof out->day);
	store_cut_text(row, 6, out->size, sizeof out->size);
	store_cut_text(row, 8, out->place, sizeof out->place);
	out->since_ms = sqlite3_column_int64(row, 9);
	return state && jar_state_find(state, &out->state);
}

static bool damaged(const struct household *db, struct error *err)
{
	return error_failed(
	    err, "household file '%s': a jar in it is damaged; run 'jarwright log verify'",
	    db->path);
}

static bool read_unfilled(struct walk *w, int64_t batch, struct touched_jars *out)
{
	sqlite3_stmt *row;
	if (!store_cached(w->db, "SELECT year, number, title, day FROM batch WHERE id = ?1", &row,
			  w->err))
		return false;
	sqlite3_bind_int64(row, 1, batch);
	if (sqlite3_step(row) == SQLITE_ROW) {
		struct unfilled_batch *one = &out->unfilled[out->unfilled_n++];
		*one = (struct unfilled_batch){.batch = batch,
					       .year = sqlite3_column_int(row, 0),
					       .number = sqlite3_column_int(row, 1)};
		store_cut_text(row, 2, one->title, sizeof one->title);
		store_cut_text(row, 3, one->day, sizeof one->day);
	}
	return store_done(w->db, row, w->err);
}

static bool read_batch(struct walk *w, const struct reached *reached, struct touched_jars *out)
{
	sqlite3_stmt *row;
	bool ok = true, filled = false;
	if (!store_cached(w->db,
			  "SELECT " TOUCHED_COLUMNS " FROM batch JOIN jar ON jar.batch = batch.id "
			  "WHERE batch.id = ?1 ORDER BY jar.number",
			  &row, w->err))
		return false;
	sqlite3_bind_int64(row, 1, reached->batch);
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		int number = sqlite3_column_int(row, 3);
		filled = true;
		if (!jar_set_has(&reached->jars, number))
			continue;
		struct touched_jar *jar = &out->jars[out->jars_n++];
		ok = touched_jar_read(row, jar) || damaged(w->db, w->err);
		jar->step = jar_set_has(&reached->made, number) ? 0 : reached->step;
	}
	ok = store_done(w->db, row, w->err) && ok;
	return ok && (filled || read_unfilled(w, reached->batch, out));
}

static int by_batch(const void *a, const void *b)
{
	int64_t one = ((const struct reached *)a)->batch,
		other = ((const struct reached *)b)->batch;
	return (one > other) - (one < other);
}

static bool read_jars(struct walk *w, struct touched_jars *out)
{
	size_t most = 0;
	bool ok = true;
	for (size_t i = 0; i < w->n; i++)
		most += jar_set_count(&w->list[i].jars);
	if (w->n == 0)
		return true;
	out->jars = malloc((most + 1) * sizeof *out->jars);
	out->unfilled = malloc(w->n * sizeof *out->unfilled);
	if (!out->jars || !out->unfilled)
		return no_memory(w->err);
	qsort(w->list, w->n, sizeof *w->list, by_batch);
	for (size_t i = 0; i < w->n && ok; i++)
		ok = read_batch(w, &w->list[i], out);
	return ok;
}

bool touched_walk(struct household *db, const struct fault *fault, struct touched_jars *out,
		  struct error *err)
{
	struct walk w = {.db = db, .err = err};
	*out = (struct touched_jars){0};
	bool ok = seed(&w, fault) && spread(&w) && read_jars(&w, out);
	walk_release(&w);
	return ok;
}

bool household_touched(struct household *db, const struct fault *fault, struct touched_jars *out,
		       struct error *err)
{
	*out = (struct touched_jars){0};
	if (!store_has_log(db))
		return true;
	/* One transaction, so that no other program's entry falls between. */
	if (!store_exec(db, "BEGIN", err))
		return false;
	bool ok = store_end(db, touched_walk(db, fault, out, err), err);
	if (!ok)
		touched_jars_release(out);
	return ok;
}
