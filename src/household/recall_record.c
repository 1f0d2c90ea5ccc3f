/* What became of jars under a recall, and the moves that follow from it. */
#include <string.h>

#include "jarwright/household_recalls.h"
#include "log.h"
#include "touched.h"

#define HOUR_MS INT64_C(3600000)

/* Where a jar goes by its disposition; false: it stays where it is. */
static bool moves_to(enum disposition disposition, enum jar_state *to)
{
	switch (disposition) {
	case DISPOSITION_DISCARDED:
		*to = JAR_DISCARDED;
		return true;
	case DISPOSITION_EATEN:
		*to = JAR_EATEN;
		return true;
	case DISPOSITION_REFRIGERATED:
		*to = JAR_REFRIGERATED;
		return true;
	case DISPOSITION_FROZEN:
		*to = JAR_FROZEN;
		return true;
	default:
		return false;
	}
}

/* The jars of one batch. */
struct recording {
	struct household *db;
	int64_t recall, batch;
	char code[BATCH_CODE_SIZE];
	const struct recall_record *record;
	struct jar_set jars;    /* all that are recorded */
	struct jar_set in_time; /* to be moved */
	struct jar_set late;    /* to be moved, having stood warm too long */
	struct error *err;
};

/* Only what is sealed in a canner stands warm; the log knows when it came out. */
static bool stood_warm(enum jar_state state)
{
	return state != JAR_REFRIGERATED && state != JAR_FROZEN && state != JAR_OPENED;
}

static bool cannot(struct recording *r, int number, enum jar_state from, enum jar_state to)
{
	const char *hint = from == JAR_GIVEN
			       ? "say told, or returned when you have it back"
			       : "say what became of it first, or take a mistake back with "
				 "'jarwright undo'";
	return error_usage(r->err, "jar %s-%02d: it is %s, so it cannot be %s; %s", r->code, number,
			   jar_state_word(from), jar_state_word(to), hint);
}

static bool take_move(struct recording *r, int number, enum jar_state from, int64_t out_ms)
{
	enum jar_state to;
	if (!moves_to(r->record->disposition, &to) || from == to)
		return true;
	if (!jar_state_may(from, to, false) && !jar_state_possible(from, to))
		return cannot(r, number, from, to);
	bool cold = to == JAR_REFRIGERATED || to == JAR_FROZEN;
	bool late =
	    cold && stood_warm(from) && r->record->at.ms - out_ms > r->record->hold_hours * HOUR_MS;
	jar_set_add(late ? &r->late : &r->in_time, number);
	return true;
}

/* Rows of the jars that the recall names: number, state (NULL: none), out_ms, open. */
static bool take_rows(struct recording *r, const struct jar_pick *pick, struct jar_set *unknown,
		      int *taken)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(
		r->db,
		"SELECT recall_jar.number, jar.state, load.out_ms, recall_jar.disposition IS NULL "
		"FROM recall_jar LEFT JOIN jar ON jar.batch = recall_jar.batch AND jar.number = "
		"recall_jar.number LEFT JOIN load ON load.batch = jar.batch AND load.number = "
		"jar.load WHERE recall_jar.recall = ?1 AND recall_jar.batch = ?2 ORDER BY "
		"recall_jar.number",
		&row, r->err))
		return false;
	sqlite3_bind_int64(row, 1, r->recall);
	sqlite3_bind_int64(row, 2, r->batch);
	while (ok && sqlite3_step(row) == SQLITE_ROW) {
		int number = sqlite3_column_int(row, 0);
		const char *word = (const char *)sqlite3_column_text(row, 1);
		enum jar_state from;
		bool counted = *taken < pick->count && sqlite3_column_int(row, 3) == 1;
		if (pick->count ? !counted : !jar_set_has(&pick->jars, number))
			continue;
		jar_set_add(&r->jars, number);
		++*taken;
		if (word && jar_state_find(word, &from))
			ok = take_move(r, number, from, sqlite3_column_int64(row, 2));
	}
	for (int n = jar_set_next(&pick->jars, 0); n; n = jar_set_next(&pick->jars, n))
		if (!jar_set_has(&r->jars, n))
			jar_set_add(unknown, n);
	return store_done(r->db, row, r->err) && ok;
}

static bool take_jars(struct recording *r, const struct jar_pick *pick)
{
	struct jar_set unknown = {.bits = {0}};
	char text[JAR_SET_SIZE];
	int taken = 0;
	if (!take_rows(r, pick, &unknown, &taken))
		return false;
	if (pick->count && taken < pick->count)
		return error_usage(r->err, "recall: %d jars of %s are open under it, not %d", taken,
				   r->code, pick->count);
	return jar_set_count(&unknown) == 0 ||
	       error_usage(r->err, "recall: these jars of %s are not under it: %.200s", r->code,
			   jar_set_text(&unknown, text, sizeof text));
}

static bool append_record(struct recording *r)
{
	json_t *body = recall_batch_item(r->db, r->batch, &r->jars, r->err);
	if (!body && r->err->kind != ERROR_NONE)
		return false;
	const char *word = disposition_word(r->record->disposition), *note = r->record->note;
	if (body && (json_object_set_new(body, "disposition", json_string(word)) != 0 ||
		     (note && json_object_set_new(body, "note", json_string(note)) != 0))) {
		json_decref(body);
		body = NULL;
	}
	return log_append(r->db, "recall-record", r->recall, r->record->at, body, NULL, r->err);
}

/* It has happened, whatever is advised. */
static bool append_move(struct recording *r, const struct jar_set *jars, bool late)
{
	char text[JAR_SET_SIZE];
	enum jar_state to;
	if (jar_set_count(jars) == 0 || !moves_to(r->record->disposition, &to))
		return true;
	json_t *body =
	    json_pack("{s:s, s:s, s:s, s:b}", "jars", jar_set_text(jars, text, sizeof text), "to",
		      jar_state_word(to), "why", "recall", "happened", 1);
	if (body && late && json_object_set_new(body, "late", json_true()) != 0) {
		json_decref(body);
		body = NULL;
	}
	return log_append(r->db, "jar", r->batch, r->record->at, body, NULL, r->err);
}

static bool record_pick(struct household *db, int64_t recall, const struct jar_pick *pick,
			const struct recall_record *record, size_t *recorded, struct error *err)
{
	struct recording r = {.db = db, .recall = recall, .record = record, .err = err};
	struct batch_code code = {.year = pick->year, .number = pick->number};
	memcpy(code.device, pick->device, sizeof code.device);
	batch_code_text(pick->year, pick->number, r.code);
	if (!find_batch_code(db, &code, &r.batch, err) || !take_jars(&r, pick) ||
	    !append_record(&r) || !append_move(&r, &r.in_time, false) ||
	    !append_move(&r, &r.late, true))
		return false;
	*recorded += jar_set_count(&r.jars);
	return true;
}

bool household_recall_record(struct household *db, int64_t recall, const struct jar_picks *picks,
			     const struct recall_record *record, size_t *recorded,
			     struct error *err)
{
	bool ok = true;
	*recorded = 0;
	if (record->disposition == DISPOSITION_OPEN || picks->picks_n == 0)
		return error_usage(err, "recall: say what became of which jars");
	if (!log_begin(db, err))
		return false;
	for (size_t i = 0; i < picks->picks_n && ok; i++)
		ok = record_pick(db, recall, &picks->picks[i], record, recorded, err);
	return log_end(db, ok, err);
}
