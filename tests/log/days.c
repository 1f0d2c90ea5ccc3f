#include "days.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

unsigned pick(uint64_t *state, unsigned n)
{
	*state ^= *state << 13;
	*state ^= *state >> 7;
	*state ^= *state << 17;
	return (unsigned)((*state >> 20) % n);
}

/* A random subject that an event of this kind began; 0: there is none. */
static int64_t some(struct household *db, uint64_t *state, const char *kind)
{
	sqlite3_stmt *query;
	struct error err = {0};
	int64_t id = 0;
	ck_assert(store_prepare(db,
				"SELECT id FROM event WHERE kind = ?1 ORDER BY id LIMIT 1 OFFSET "
				"?2 % max(1, (SELECT count(*) FROM event WHERE kind = ?1))",
				&query, &err));
	sqlite3_bind_text(query, 1, kind, -1, SQLITE_STATIC);
	sqlite3_bind_int(query, 2, (int)pick(state, 1000));
	if (sqlite3_step(query) == SQLITE_ROW)
		id = sqlite3_column_int64(query, 0);
	sqlite3_finalize(query);
	return id;
}

static json_t *uuid_of(struct household *db, int64_t id)
{
	uint8_t uuid[UUID_SIZE];
	char text[UUID_TEXT_SIZE];
	struct error err = {0};
	if (!id || !event_uuid(db, id, uuid, &err))
		return json_string("00");
	hex_text(uuid, UUID_SIZE, text);
	return json_string(text);
}

static const char *some_jars(uint64_t *state)
{
	static const char *const jars[] = {"1", "1-3", "2,4", "1-7", "5", "8-9", "3-4,6"};
	return jars[pick(state, 7)];
}

static const char *name_of(uint64_t *state)
{
	static const char *const names[] = {"pot",          "Kettle",         "Zum D\xc3\xa4mpfen",
					    "lids, spring", "a 'quoted' one", "=1+1"};
	return names[pick(state, 6)];
}

/* --- A body of each kind; mostly right --- */

static json_t *canner_body(struct household *db, uint64_t *state)
{
	static const char *const kinds[] = {"dial-gauge", "steam", "boiling-water", "dial-gauge"};
	(void)db;
	return json_pack("{s:s, s:s, s:i}", "name", name_of(state), "kind", kinds[pick(state, 4)],
			 "quarts", (int)pick(state, 12));
}

static json_t *gauge_body(struct household *db, uint64_t *state)
{
	(void)db;
	return json_pack("{s:s, s:[{s:i, s:i}, {s:i, s:i}]}", "tested",
			 pick(state, 9) ? "2026-06-01" : "2026-06-31", "readings", "gauge_mpsi",
			 (int)pick(state, 16000), "master_mpsi", (int)pick(state, 16000),
			 "gauge_mpsi", 11000, "master_mpsi", 11000);
}

static json_t *lot_body(struct household *db, uint64_t *state)
{
	static const char *const kinds[] = {"lids", "vinegar", "other"};
	(void)db;
	return json_pack("{s:s, s:s, s:s, s:s}", "kind", kinds[pick(state, 3)], "name",
			 name_of(state), "code", "L-1", "dated", "2026-03-02");
}

static json_t *batch_body(struct household *db, uint64_t *state)
{
	bool shelf = pick(state, 4) != 0;
	int64_t lot = some(db, state, "lot-add"), from = some(db, state, "batch-start");
	json_t *body =
	    json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:i, s:b}", "year", 2026, "number",
		      1 + (int)pick(state, 50), "day", "2026-09-21", "title", name_of(state),
		      "keep", shelf ? "shelf" : "freezer", "verdict", shelf ? "tested" : "untested",
		      "edition", "2026a", "minutes", 35, "elevation_own", 1);
	if (lot && pick(state, 2))
		json_object_set_new(body, "lots", json_pack("[o]", uuid_of(db, lot)));
	if (from && pick(state, 4) == 0)
		json_object_set_new(body, "from",
				    json_pack("[{s:o, s:s}]", "batch", uuid_of(db, from), "jars",
					      some_jars(state)));
	return body;
}

static json_t *amend_body(struct household *db, uint64_t *state)
{
	json_t *body = json_pack("{s:s, s:s}", "title", name_of(state), "why", "typed wrong");
	int64_t lot = some(db, state, "lot-add");
	if (lot && pick(state, 2))
		json_object_set_new(body, "lots", json_pack("[o]", uuid_of(db, lot)));
	return body;
}

static json_t *note_body(struct household *db, uint64_t *state)
{
	(void)db, (void)state;
	return json_pack("{s:s}", "text", "\x1b[2J'; DROP TABLE jar; --\t=1+1");
}

static json_t *ph_body(struct household *db, uint64_t *state)
{
	(void)db;
	return json_pack("{s:i, s:b}", "ph_milli", 3900, "holds", pick(state, 5) != 0);
}

static json_t *load_body(struct household *db, uint64_t *state)
{
	static const char *const outcomes[] = {"processed", "processed", "under-processed", "cold"};
	int64_t canner = some(db, state, "canner-add");
	int number = 1 + (int)pick(state, 3);
	json_t *body = json_pack(
	    "{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I}", "number", number, "first",
	    number * 7 - 6, "jars", "n", 1 + (int)pick(state, 7), "size", "pint", "facts",
	    "outcome", outcomes[pick(state, 4)], "why", "", "out_ms", (json_int_t)1790003000000);
	if (canner && pick(state, 2))
		json_object_set_new(body, "canner", uuid_of(db, canner));
	if (pick(state, 5) == 0)
		json_object_set_new(body, "again", json_string(some_jars(state)));
	return body;
}

static json_t *run_body(struct household *db, uint64_t *state)
{
	static const char *const events[] = {"begin",  "begin",   "done", "lost",
					     "return", "abandon", "tick"};
	static const char *const stages[] = {"preheat", "process", "cool", "sideways"};
	int64_t canner = some(db, state, "canner-add");
	json_t *body = json_pack("{s:i, s:s, s:s, s:I, s:s}", "number", 1 + (int)pick(state, 3),
				 "what", events[pick(state, 7)], "stage", stages[pick(state, 4)],
				 "clock_ms", (json_int_t)pick(state, 1000000), "boot", "a-boot");
	if (canner)
		json_object_set_new(body, "canner", uuid_of(db, canner));
	return body;
}

static json_t *load_amend_body(struct household *db, uint64_t *state)
{
	(void)db;
	return json_pack("{s:i, s:{}, s:s, s:s}", "number", 1 + (int)pick(state, 3), "facts",
			 "outcome", "under-processed", "why", "the time fell short");
}

static json_t *load_record_body(struct household *db, uint64_t *state)
{
	static const char *const outcomes[] = {"processed", "unclear", "under-processed"};
	const char *outcome = outcomes[pick(state, 3)];
	(void)db;
	return json_pack("{s:i, s:s, s:s, s:i, s:s, s:s, s:s, s:{}}", "number",
			 1 + (int)pick(state, 3), "file", "load.csv", "sha256", "00", "rows", 7,
			 "shown", "restarted", "outcome", outcome, "why", outcome, "found");
}

static json_t *seal_body(struct household *db, uint64_t *state)
{
	(void)db;
	return json_pack("{s:s, s:b, s:b}", "jars", some_jars(state), "sealed", pick(state, 6) != 0,
			 "early", 0);
}

static json_t *jar_body(struct household *db, uint64_t *state)
{
	static const char *const to[] = {"shelf", "refrigerated", "opened",
					 "eaten", "given",        "discarded"};
	(void)db;
	return json_pack("{s:s, s:s, s:s}", "jars", some_jars(state), "to", to[pick(state, 6)],
			 "place", "cellar");
}

static json_t *recall_body(struct household *db, uint64_t *state)
{
	return json_pack("{s:s, s:s, s:[{s:o, s:s}]}", "reason", "lot", "what", "lids", "jars",
			 "batch", uuid_of(db, some(db, state, "batch-start")), "jars",
			 some_jars(state));
}

static json_t *record_body(struct household *db, uint64_t *state)
{
	return json_pack("{s:o, s:s, s:s}", "batch", uuid_of(db, some(db, state, "batch-start")),
			 "jars", some_jars(state), "disposition", "discarded");
}

static json_t *empty_body(struct household *db, uint64_t *state)
{
	(void)db, (void)state;
	return json_object();
}

static const struct {
	const char *kind, *of;
	json_t *(*body)(struct household *db, uint64_t *state);
} kinds[] = {
    {"canner-add", NULL, canner_body},
    {"canner-change", "canner-add", canner_body},
    {"canner-retire", "canner-add", empty_body},
    {"gauge-test", "canner-add", gauge_body},
    {"lot-add", NULL, lot_body},
    {"lot-change", "lot-add", lot_body},
    {"lot-finish", "lot-add", empty_body},
    {"batch-start", NULL, batch_body},
    {"batch-start", NULL, batch_body},
    {"batch-amend", "batch-start", amend_body},
    {"batch-note", "batch-start", note_body},
    {"batch-ph", "batch-start", ph_body},
    {"batch-finish", "batch-start", empty_body},
    {"load", "batch-start", load_body},
    {"load", "batch-start", load_body},
    {"load", "batch-start", load_body},
    {"load-amend", "batch-start", load_amend_body},
    {"load-record", "batch-start", load_record_body},
    {"run-step", "batch-start", run_body},
    {"run-step", "batch-start", run_body},
    {"seal", "batch-start", seal_body},
    {"seal", "batch-start", seal_body},
    {"seal", "batch-start", seal_body},
    {"jar", "batch-start", jar_body},
    {"jar", "batch-start", jar_body},
    {"jar", "batch-start", jar_body},
    {"recall-open", NULL, recall_body},
    {"recall-record", "recall-open", record_body},
    {"recall-close", "recall-open", empty_body},
};

static int64_t some_event(struct household *db, uint64_t *state)
{
	int n = 0;
	struct error err = {0};
	ck_assert(store_integer(db, "SELECT count(*) FROM event", &n, &err));
	return n ? 1 + (int64_t)pick(state, (unsigned)n) : 0;
}

static bool log_one(struct household *db, uint64_t *state, struct instant at, bool undo,
		    struct error *err)
{
	if (undo)
		return log_undo(db, some_event(db, state), at, err);
	size_t k = pick(state, sizeof kinds / sizeof *kinds);
	int64_t of = kinds[k].of ? some(db, state, kinds[k].of) : 0;
	if (kinds[k].of && !of)
		return error_usage(err, "nothing to log it of");
	return log_append(db, kinds[k].kind, of, at, kinds[k].body(db, state), NULL, err);
}

int log_days(struct household *db, uint64_t *state, int tries, unsigned undo_in)
{
	int taken = 0;
	struct instant at = {INT64_C(1790000000000), 120};
	for (int i = 0; i < tries; i++, at.ms += 60000) {
		struct error err = {0};
		bool undo = undo_in > 0 && pick(state, undo_in) == 0;
		ck_assert(log_begin(db, &err));
		bool ok = log_end(db, log_one(db, state, at, undo, &err), &err);
		taken += ok;
		/* Nothing of this may fail for another reason than its making no sense. */
		if (!ok && err.kind != ERROR_USAGE && !strstr(err.text, "event 0 is not"))
			ck_abort_msg("%s", err.text);
	}
	return taken;
}

static void add_rows(struct household *db, FILE *out, const char *rows)
{
	sqlite3_stmt *row;
	struct error err = {0};
	ck_assert(store_prepare(db, rows, &row, &err));
	fprintf(out, "%s\n", rows);
	while (sqlite3_step(row) == SQLITE_ROW) {
		for (int i = 0; i < sqlite3_column_count(row); i++) {
			const char *value = (const char *)sqlite3_column_text(row, i);
			fprintf(out, "%d:%s|", sqlite3_column_type(row, i), value ? value : "");
		}
		fputc('\n', out);
	}
	ck_assert_int_eq(sqlite3_finalize(row), SQLITE_OK);
}

char *state_text(struct household *db)
{
	static const char *const rows[] = {
	    "SELECT * FROM undone ORDER BY 1",       "SELECT * FROM conflict ORDER BY 1",
	    "SELECT * FROM canner ORDER BY 1",       "SELECT * FROM gauge_test ORDER BY 1",
	    "SELECT * FROM lot ORDER BY 1",          "SELECT * FROM batch ORDER BY 1",
	    "SELECT * FROM batch_lot ORDER BY 1, 2", "SELECT * FROM batch_from ORDER BY 1, 2, 3",
	    "SELECT * FROM load ORDER BY 1, 2",      "SELECT * FROM jar ORDER BY 1, 2",
	    "SELECT * FROM recall ORDER BY 1",       "SELECT * FROM recall_jar ORDER BY 1, 2, 3",
	};
	char *text = NULL;
	size_t n = 0;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		add_rows(db, out, rows[i]);
	ck_assert_int_eq(fclose(out), 0);
	return text;
}
