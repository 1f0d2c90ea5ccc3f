/*
 * Durable writes of one batch, against bare inserts of the same rows with the same sync: three
 * transactions each, a start, a load of ten jars and their seals. The bare ones know their ids and
 * look nothing up.
 */
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "bench_log.h"
#include "jarwright/household_batches.h"

#define RUNS    150
#define WORDS   "something that a decision says of a rule, its reason and its source"
#define FINDING "{\"level\":\"note\",\"rule\":\"a-rule\",\"text\":\"" WORDS "\"}"
#define DECISION                                                                                   \
	"{\"findings\":[" FINDING "," FINDING "," FINDING "," FINDING "," FINDING "," FINDING      \
	"],\"process\":{\"minutes\":35,\"table_jar\":\"pint\"},\"verdict\":\"tested\"}"
/* As long as what the program writes for the same batch. */
#define BODY                                                                                       \
	"{\"canner_kind\":\"boiling-water\",\"day\":\"2026-09-14\",\"decision\":" DECISION         \
	",\"edition\":\"2026a\",\"elevation_mft\":2900000,\"elevation_own\":true,\"food\":\""      \
	"pickled-beets\",\"from\":[],\"jar\":\"pint\",\"keep\":\"shelf\",\"lots\":[\""             \
	"00000000000000020000000000000000\"],\"minutes\":35,\"number\":1,\"pack\":\"hot\","        \
	"\"title\":\"Pickled beets\",\"verdict\":\"tested\",\"year\":2026}"

static const struct instant noon = {INT64_C(1789387200000), 0};

static void ours(struct household *db, json_t *decision)
{
	char code[BATCH_CODE_MAX];
	struct error err = {0};
	int number;
	struct jar_set jars;
	const struct batch_start start = {.at = noon,
					  .day = {2026, 9, 14},
					  .title = "Pickled beets",
					  .food = "pickled-beets",
					  .keep = "shelf",
					  .verdict = "tested",
					  .edition = "2026a",
					  .pack = "hot",
					  .canner_kind = "boiling-water",
					  .jar = "pint",
					  .elevation_stated = true,
					  .elevation_mft = 2900000,
					  .elevation_own = true,
					  .minutes = 35,
					  .decision = decision,
					  .lots = {"lids 2"},
					  .lots_n = 1};
	const struct batch_load_entry load = {.started = noon,
					      .out = {noon.ms + 2100000, 0},
					      .canner = "blue pot",
					      .jars = {{JARS_A_BATCH, "pint"}},
					      .jars_n = 1,
					      .said = {.process_stated = true, .process_s = 2100},
					      .outcome = LOAD_PROCESSED,
					      .why = ""};
	if (!household_start_batch(db, &start, code, &err) ||
	    !household_add_load(db, code, &load, &number, &jars, &err))
		bench_abort("write", err.text);
	const struct seal_entry seal = {
	    .at = {noon.ms + 60000000, 0}, .sealed = jars, .method = "press"};
	if (!household_seal(db, code, &seal, &err))
		bench_abort("write", err.text);
}

struct bare {
	sqlite3 *db;
	sqlite3_stmt *begin, *commit, *event, *chain, *batch, *lot, *load, *jar, *seal;
	int64_t next;
	int number;
};

static void run(sqlite3_stmt *statement)
{
	if (sqlite3_step(statement) != SQLITE_DONE)
		bench_abort("bare write", sqlite3_errmsg(sqlite3_db_handle(statement)));
	sqlite3_reset(statement);
}

static void prepare(struct bare *b)
{
	bench_exec(b->db,
		   "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys "
		   "= ON");
	b->begin = bench_prepare(b->db, "BEGIN IMMEDIATE");
	b->commit = bench_prepare(b->db, "COMMIT");
	b->event =
	    bench_prepare(b->db, "INSERT INTO event VALUES (?1, 1, ?1, ?2, ?3, ?4, ?5, 0, ?6, "
				 "?7)");
	b->chain =
	    bench_prepare(b->db, "UPDATE chain SET last_seq = ?1, last_hash = ?2 WHERE id = 1");
	b->batch =
	    bench_prepare(b->db, "INSERT INTO batch VALUES (?1, 2026, ?2, '2026-09-14', 'Pickled "
				 "beets', 'pickled-beets', NULL, 'shelf', 'tested', '2026a', "
				 "'hot', 'boiling-water', 'pint', 2900000, 1, 35, NULL, NULL, 0, "
				 "NULL)");
	b->lot = bench_prepare(b->db, "INSERT INTO batch_lot VALUES (?1, 2)");
	b->load = bench_prepare(b->db, "INSERT INTO load VALUES (?1, 1, 101, ?2, ?2 + 2100000, "
				       "'processed', '', NULL, NULL, NULL)");
	b->jar = bench_prepare(b->db, "INSERT INTO jar VALUES (?1, ?2, 'pint', 1, 'filled', NULL, "
				      "?3, 0, 0, 0)");
	b->seal = bench_prepare(b->db, "UPDATE jar SET state = 'sealed', since_ms = ?3, sealed = 1 "
				       "WHERE batch = ?1 AND number = ?2");
	sqlite3_stmt *last = bench_prepare(b->db, "SELECT max(id) FROM event");
	if (sqlite3_step(last) != SQLITE_ROW)
		bench_abort("bare write", sqlite3_errmsg(b->db));
	b->next = sqlite3_column_int64(last, 0) + 1;
	sqlite3_finalize(last);
	b->number = 5000;
}

static void bare_event(struct bare *b, int64_t subject, const char *kind, const char *body)
{
	unsigned char uuid[16] = {0}, hash[32] = {0};
	for (int i = 0; i < 8; i++)
		uuid[7 - i] = (unsigned char)(b->next >> 8 * i);
	sqlite3_bind_int64(b->event, 1, b->next);
	sqlite3_bind_blob(b->event, 2, uuid, sizeof uuid, SQLITE_STATIC);
	sqlite3_bind_int64(b->event, 3, subject);
	sqlite3_bind_text(b->event, 4, kind, -1, SQLITE_STATIC);
	sqlite3_bind_int64(b->event, 5, noon.ms);
	sqlite3_bind_text(b->event, 6, body, -1, SQLITE_STATIC);
	sqlite3_bind_blob(b->event, 7, hash, sizeof hash, SQLITE_STATIC);
	run(b->event);
	sqlite3_bind_int64(b->chain, 1, b->next++);
	sqlite3_bind_blob(b->chain, 2, hash, sizeof hash, SQLITE_STATIC);
	run(b->chain);
}

static void bare_jars(sqlite3_stmt *statement, int64_t batch)
{
	for (int number = 1; number <= JARS_A_BATCH; number++) {
		sqlite3_bind_int64(statement, 1, batch);
		sqlite3_bind_int(statement, 2, number);
		sqlite3_bind_int64(statement, 3, noon.ms);
		run(statement);
	}
}

static void theirs(struct bare *b)
{
	int64_t batch = b->next;
	run(b->begin);
	bare_event(b, batch, "batch-start", BODY);
	sqlite3_bind_int64(b->batch, 1, batch);
	sqlite3_bind_int(b->batch, 2, b->number++);
	run(b->batch);
	sqlite3_bind_int64(b->lot, 1, batch);
	run(b->lot);
	run(b->commit);
	run(b->begin);
	bare_event(
	    b, batch, "load",
	    "{\"canner\":\"00000000000000650000000000000000\",\"facts\":{\"process_s\":2100},"
	    "\"jars\":[{\"n\":10,\"size\":\"pint\"}],\"number\":1,\"out_ms\":1789389300000,"
	    "\"outcome\":\"processed\",\"why\":\"\"}");
	sqlite3_bind_int64(b->load, 1, batch);
	sqlite3_bind_int64(b->load, 2, noon.ms);
	run(b->load);
	bare_jars(b->jar, batch);
	run(b->commit);
	run(b->begin);
	bare_event(b, batch, "seal",
		   "{\"early\":false,\"jars\":\"1-10\",\"method\":\"press\",\"sealed\":true}");
	bare_jars(b->seal, batch);
	run(b->commit);
}

static void finish(struct bare *b)
{
	sqlite3_stmt *const all[] = {b->begin, b->commit, b->event, b->chain, b->batch,
				     b->lot,   b->load,   b->jar,   b->seal};
	for (size_t i = 0; i < 9; i++)
		sqlite3_finalize(all[i]);
}

struct bench_pair bench_writes(struct household *db, sqlite3 *bare)
{
	double mine[RUNS], other[RUNS];
	struct bare b = {.db = bare};
	json_t *decision = json_loads(DECISION, 0, NULL);
	if (!decision)
		bench_abort("write", "the decision is no JSON");
	prepare(&b);
	for (int i = 0; i < RUNS; i++) {
		double start = bench_seconds();
		ours(db, decision);
		mine[i] = bench_seconds() - start;
		start = bench_seconds();
		theirs(&b);
		other[i] = bench_seconds() - start;
	}
	finish(&b);
	json_decref(decision);
	return (struct bench_pair){bench_median(mine, RUNS), bench_median(other, RUNS)};
}
