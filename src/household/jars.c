/* Moving jars: what is advised against is refused, unless it has happened. */
#include <stdio.h>
#include <string.h>

#include "jarwright/household_jars.h"
#include "jarwright/text.h"
#include "log.h"
#include "shelf.h"

#define HOUR_MS   INT64_C(3600000)
#define MINUTE_MS INT64_C(60000)

/* One jar, and the batch it is of. */
struct jar_row {
	bool there;
	struct jar_standing standing;
	int64_t since_ms;
	int64_t recall; /* that is open and names it; 0: none */
	char recalled_for[TEXT_SHOWN_SIZE];
};

static bool read_state(sqlite3_stmt *row, int column, enum jar_state *out)
{
	const char *word = (const char *)sqlite3_column_text(row, column);
	return word && jar_state_find(word, out);
}

static bool read_recall(struct household *db, int64_t batch, int number, struct jar_row *out,
			struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT recall.id, recall.what FROM recall_jar JOIN recall ON recall.id "
			  "= recall_jar.recall WHERE recall_jar.batch = ?1 AND recall_jar.number = "
			  "?2 AND recall_jar.disposition IS NULL AND recall.closed_ms IS NULL "
			  "ORDER BY recall.id LIMIT 1",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	sqlite3_bind_int(query, 2, number);
	out->recall = 0;
	if (sqlite3_step(query) == SQLITE_ROW) {
		const char *what = (const char *)sqlite3_column_text(query, 1);
		out->recall = sqlite3_column_int64(query, 0);
		text_show(what ? what : "?", SIZE_MAX, out->recalled_for);
	}
	return store_done(db, query, err);
}

/* columns: state, late, since_ms, processed as decided, out_ms */
static bool read_jar(struct household *db, int64_t batch, int number, const struct jar_move *move,
		     struct jar_row *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT jar.state, jar.late, jar.since_ms, " SHELF_PROCESSED
			  ", load.out_ms FROM jar JOIN load "
			  "ON load.batch = jar.batch AND load.number = jar.load JOIN batch ON "
			  "batch.id = jar.batch WHERE jar.batch = ?1 AND jar.number = ?2",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	sqlite3_bind_int(query, 2, number);
	sqlite3_bind_int(query, 3, shelf_gauge_limit());
	memset(out, 0, sizeof *out);
	struct jar_standing *standing = &out->standing;
	if (sqlite3_step(query) == SQLITE_ROW) {
		out->there = read_state(query, 0, &standing->state);
		standing->late = sqlite3_column_int(query, 1) == 1;
		out->since_ms = sqlite3_column_int64(query, 2);
		standing->processed = sqlite3_column_int(query, 3) == 1;
		standing->shelf_stable = standing->processed && !standing->late;
		int hours = standing->processed ? move->hold.failed_hours : move->hold.wrong_hours;
		standing->overdue = move->at.ms - sqlite3_column_int64(query, 4) > hours * HOUR_MS;
	}
	return store_done(db, query, err) && read_recall(db, batch, number, out, err);
}

static const char *done_word(enum jar_state to)
{
	return to == JAR_SHELF ? "put on the shelf" : jar_state_word(to);
}

/* Says why a move is advised against; returns false. */
static bool advised_against(const char *code, const struct jar_row *jar, enum jar_advice advice,
			    const struct jar_move *move, struct error *err)
{
	static const char insist[] = "if it has happened all the same, add --happened";
	const char *done = done_word(move->to);
	bool possible = jar_state_possible(jar->standing.state, move->to);
	int hours = jar->standing.processed ? move->hold.failed_hours : move->hold.wrong_hours;
	switch (advice) {
	case JAR_TEST_SEAL:
		return error_usage(
		    err,
		    "jar %s: its seal is not tested yet, so it cannot be %s; test it "
		    "and say so with 'jarwright batch seal'%s%s",
		    code, done, possible ? "; " : "", possible ? insist : "");
	case JAR_STOOD_TOO_LONG:
		return error_usage(err,
				   "jar %s: it stood more than %d hours %s before it was chilled, "
				   "so it cannot be %s; do not taste it, discard it; %s",
				   code, hours,
				   jar->standing.processed ? "unsealed"
							   : "without a process that covers it",
				   done, insist);
	case JAR_NOT_STABLE:
		return error_usage(err,
				   "jar %s: it is unsealed, or was not processed as decided for "
				   "the shelf, so it cannot be %s; chill, freeze or discard it%s%s",
				   code, done, possible ? "; " : "", possible ? insist : "");
	case JAR_FINE:
	case JAR_SENSELESS:
		break;
	}
	return error_usage(err,
			   "jar %s: it is %s, so it cannot be %s; if that is a mistake, take it "
			   "back with 'jarwright undo'",
			   code, jar_state_word(jar->standing.state), done);
}

static bool is_eaten_by_it(enum jar_state to)
{
	return to == JAR_OPENED || to == JAR_EATEN || to == JAR_GIVEN;
}

/* May this jar move? *advice: what was advised, when it may only because it has happened. */
static bool check_jar(const char *code, const struct jar_row *jar, const struct jar_move *move,
		      enum jar_advice *advice, struct error *err)
{
	*advice = jar_advise(&jar->standing, move->to);
	if (!jar->there)
		return error_usage(err, "jar %s: there is no such jar in the batch", code);
	if (jar->recall && is_eaten_by_it(move->to))
		return error_usage(err,
				   "jar %s: it is recalled (%s), so it cannot be %s; say what "
				   "becomes of it with 'jarwright recall record'",
				   code, jar->recalled_for, done_word(move->to));
	/* A moment typed to the minute may lie before one that was logged in the same minute. */
	if (move->at.ms + MINUTE_MS <= jar->since_ms)
		return error_usage(err, "jar %s: the log has it %s later than that; check --at",
				   code, jar_state_word(jar->standing.state));
	if (*advice == JAR_FINE ||
	    (move->happened && jar_state_possible(jar->standing.state, move->to)))
		return true;
	return advised_against(code, jar, *advice, move, err);
}

/* The jars of one batch on their way. */
struct moving {
	int64_t batch;
	const struct jar_move *move;
	struct moved *told;
	struct jar_set fine, late;
};

static char *jar_code(const struct moving *m, int number, char code[static JAR_CODE_SIZE])
{
	snprintf(code, JAR_CODE_SIZE, "%.40s-%02d", m->told->code, number);
	return code;
}

static void take(struct moving *m, int number, const struct jar_row *jar, enum jar_advice advice)
{
	bool late = advice != JAR_FINE && jar->standing.overdue;
	jar_set_add(late ? &m->late : &m->fine, number);
	jar_set_add(&m->told->jars, number);
	bool untested = jar->standing.state == JAR_FILLED || jar->standing.state == JAR_REPROCESSED;
	bool waiting = advice == JAR_FINE && (untested || jar_is_waiting(&jar->standing));
	m->told->waiting |= waiting;
	m->told->wrong |= waiting && !jar->standing.processed;
	if (advice == JAR_FINE)
		return;
	jar_set_add(&m->told->advised_against, number);
	if (m->told->advice != JAR_STOOD_TOO_LONG)
		m->told->advice = advice;
}

static bool take_named(struct household *db, struct moving *m, const struct jar_set *jars,
		       struct error *err)
{
	for (int n = jar_set_next(jars, 0); n; n = jar_set_next(jars, n)) {
		struct jar_row jar;
		enum jar_advice advice;
		char code[JAR_CODE_SIZE];
		if (!read_jar(db, m->batch, n, m->move, &jar, err) ||
		    !check_jar(jar_code(m, n, code), &jar, m->move, &advice, err))
			return false;
		take(m, n, &jar, advice);
	}
	return true;
}

/* The lowest numbers whose jars may; those advised against are never taken unnamed. */
static bool take_counted(struct household *db, struct moving *m, int count, struct error *err)
{
	int taken = 0;
	for (int n = 1; n <= BATCH_JARS_MAX && taken < count; n++) {
		struct jar_row jar;
		struct error reason = {0};
		enum jar_advice advice;
		char code[JAR_CODE_SIZE];
		if (!read_jar(db, m->batch, n, m->move, &jar, err))
			return false;
		/* After two devices were merged there may be gaps. */
		if (!jar.there || jar.standing.state == m->move->to ||
		    !check_jar(jar_code(m, n, code), &jar, m->move, &advice, &reason) ||
		    advice != JAR_FINE)
			continue;
		take(m, n, &jar, advice);
		taken++;
	}
	return taken == count ||
	       error_usage(err, "jar: %d of %s may be %s, not %d; see 'jarwright shelf'", taken,
			   m->told->code, done_word(m->move->to), count);
}

static bool append_move(struct household *db, const struct moving *m, const struct jar_set *jars,
			bool late, struct error *err)
{
	char text[JAR_SET_SIZE];
	const struct jar_move *move = m->move;
	if (jar_set_count(jars) == 0)
		return true;
	json_t *body = json_pack("{s:s, s:s}", "jars", jar_set_text(jars, text, sizeof text), "to",
				 jar_state_word(move->to));
	if (!body || !body_set_text(body, "place", move->place) ||
	    !body_set_text(body, "why", move->why) ||
	    (late && json_object_set_new(body, "late", json_true()) != 0) ||
	    (move->happened && json_object_set_new(body, "happened", json_true()) != 0)) {
		json_decref(body);
		body = NULL;
	}
	return log_append(db, "jar", m->batch, move->at, body, NULL, err);
}

static bool read_batch(struct household *db, int64_t batch, struct moved *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT year, number, title, food FROM batch WHERE id = ?1", &query,
			  err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	if (sqlite3_step(query) == SQLITE_ROW) {
		char code[BATCH_CODE_SIZE];
		snprintf(out->code, sizeof out->code, "%s",
			 batch_code_text(sqlite3_column_int(query, 0), sqlite3_column_int(query, 1),
					 code));
		store_cut_text(query, 2, out->title, sizeof out->title);
		store_cut_text(query, 3, out->food, sizeof out->food);
	}
	return store_done(db, query, err);
}

bool household_jars_known(struct household *db, const struct jar_picks *picks, struct error *err)
{
	int64_t batch;
	for (size_t i = 0; i < picks->picks_n; i++)
		if (!shelf_find_pick(db, &picks->picks[i], &batch, err))
			return false;
	return true;
}

static bool move_pick(struct household *db, const struct jar_pick *pick,
		      const struct jar_move *move, struct moved *told, struct error *err)
{
	struct moving m = {.move = move, .told = told};
	if (!shelf_find_pick(db, pick, &m.batch, err) || !read_batch(db, m.batch, told, err))
		return false;
	bool taken = pick->count ? take_counted(db, &m, pick->count, err)
				 : take_named(db, &m, &pick->jars, err);
	return taken && append_move(db, &m, &m.fine, false, err) &&
	       append_move(db, &m, &m.late, true, err);
}

bool household_move_jars(struct household *db, const struct jar_picks *picks,
			 const struct jar_move *move, struct jars_moved *out, struct error *err)
{
	bool ok = true;
	memset(out, 0, sizeof *out);
	if (!log_begin(db, err))
		return false;
	for (size_t i = 0; i < picks->picks_n && ok; i++)
		ok = move_pick(db, &picks->picks[i], move, &out->batches[out->batches_n++], err);
	return log_end(db, ok, err);
}
