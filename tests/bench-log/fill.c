#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "bench_log.h"
#include "jarwright/error.h"

#define STEP     20000 /* batches a transaction */
#define SHOWN    200000
#define FIRST_MS INT64_C(1700000000000)
#define FOODS    20
#define PER_YEAR 1000

struct filler {
	sqlite3 *db;
	sqlite3_stmt *event, *lot, *batch, *batch_lot, *load, *jar;
	int batches;
};

static void run(sqlite3_stmt *statement)
{
	if (sqlite3_step(statement) != SQLITE_DONE)
		bench_abort("fill", sqlite3_errmsg(sqlite3_db_handle(statement)));
	sqlite3_reset(statement);
}

static void add_event(struct filler *f, int64_t id, int64_t subject, const char *kind,
		      const char *body)
{
	unsigned char uuid[16] = {0}, hash[32] = {0};
	for (int i = 0; i < 8; i++)
		uuid[7 - i] = (unsigned char)(id >> 8 * i);
	sqlite3_bind_int64(f->event, 1, id);
	sqlite3_bind_blob(f->event, 2, uuid, sizeof uuid, SQLITE_STATIC);
	sqlite3_bind_int64(f->event, 3, subject);
	sqlite3_bind_text(f->event, 4, kind, -1, SQLITE_STATIC);
	sqlite3_bind_int64(f->event, 5, FIRST_MS + id * 60000);
	sqlite3_bind_text(f->event, 6, body, -1, SQLITE_STATIC);
	sqlite3_bind_blob(f->event, 7, hash, sizeof hash, SQLITE_STATIC);
	run(f->event);
}

static void add_lots(struct filler *f)
{
	for (int i = 1; i <= LOTS; i++) {
		char name[32];
		snprintf(name, sizeof name, "lids %d", i);
		add_event(f, i, i, "lot-add", "{}");
		sqlite3_bind_int(f->lot, 1, i);
		sqlite3_bind_text(f->lot, 2, name, -1, SQLITE_STATIC);
		run(f->lot);
	}
	add_event(f, CANNER_EVENT, CANNER_EVENT, "canner-add", "{}");
	bench_exec(f->db,
		   "INSERT INTO canner VALUES (101, 'blue pot', 'boiling-water', 7, 9, 12, 0)");
}

/* Every so many batches, LOT_BATCHES in all, are of the one lot. */
static int lot_of(const struct filler *f, int batch)
{
	if (batch % (f->batches / LOT_BATCHES) == 0 &&
	    batch / (f->batches / LOT_BATCHES) <= LOT_BATCHES)
		return LOT_EVENT;
	return 2 + batch % (LOTS - 1);
}

static void add_jars(struct filler *f, int64_t id, bool here)
{
	for (int number = 1; number <= JARS_A_BATCH; number++) {
		sqlite3_bind_int64(f->jar, 1, id);
		sqlite3_bind_int(f->jar, 2, number);
		sqlite3_bind_text(f->jar, 3, here ? "shelf" : "eaten", -1, SQLITE_STATIC);
		if (here)
			sqlite3_bind_text(f->jar, 4, "cellar, left", -1, SQLITE_STATIC);
		else
			sqlite3_bind_null(f->jar, 4);
		sqlite3_bind_int64(f->jar, 5, FIRST_MS + id * 60000);
		sqlite3_bind_int(f->jar, 6, !here);
		run(f->jar);
	}
}

static void add_batch(struct filler *f, int batch)
{
	int64_t id = BATCH_EVENT(batch);
	char day[16], food[32];
	snprintf(day, sizeof day, "%04d-%02d-%02d", 2024 + batch / PER_YEAR, 1 + batch % 12,
		 1 + batch % 28);
	snprintf(food, sizeof food, "food-%d", batch % FOODS);
	add_event(f, id, id, "batch-start",
		  "{\"title\":\"Something put up\",\"verdict\":\"tested\",\"minutes\":35}");
	sqlite3_bind_int64(f->batch, 1, id);
	sqlite3_bind_int(f->batch, 2, 2024 + batch / PER_YEAR);
	sqlite3_bind_int(f->batch, 3, 1 + batch % PER_YEAR);
	sqlite3_bind_text(f->batch, 4, day, -1, SQLITE_STATIC);
	sqlite3_bind_text(f->batch, 5, food, -1, SQLITE_STATIC);
	sqlite3_bind_int64(f->batch, 6, FIRST_MS + id * 60000);
	run(f->batch);
	sqlite3_bind_int64(f->batch_lot, 1, id);
	sqlite3_bind_int(f->batch_lot, 2, lot_of(f, batch));
	run(f->batch_lot);
	add_event(f, id + 1, id, "load", "{\"number\":1,\"outcome\":\"processed\"}");
	sqlite3_bind_int64(f->load, 1, id);
	sqlite3_bind_int64(f->load, 2, FIRST_MS + id * 60000);
	run(f->load);
	add_event(f, id + 2, id, "seal", "{\"jars\":\"1-10\",\"sealed\":true}");
	int spread = f->batches / (JARS_HERE / JARS_A_BATCH);
	add_jars(f, id, batch % spread == 0);
}

static void prepare(struct filler *f)
{
	f->event = bench_prepare(f->db, "INSERT INTO event VALUES (?1, 1, ?1, ?2, ?3, ?4, ?5, 0, "
					"?6, ?7)");
	f->lot = bench_prepare(f->db, "INSERT INTO lot VALUES (?1, 'lids', ?2, NULL, NULL, NULL, "
				      "NULL, 0)");
	f->batch =
	    bench_prepare(f->db, "INSERT INTO batch VALUES (?1, ?2, ?3, ?4, 'Something put up', "
				 "?5, NULL, 'shelf', 'tested', '2026a', 'hot', 'boiling-water', "
				 "'pint', 2900000, 1, 35, 0, 0, 0, ?6)");
	f->batch_lot = bench_prepare(f->db, "INSERT INTO batch_lot VALUES (?1, ?2)");
	f->load = bench_prepare(f->db, "INSERT INTO load VALUES (?1, 1, 101, ?2, ?2 + 2100000, "
				       "'processed', '', NULL, NULL, NULL)");
	f->jar = bench_prepare(f->db, "INSERT INTO jar VALUES (?1, ?2, 'pint', 1, ?3, ?4, ?5, ?6, "
				      "1, 0)");
}

static void finish(struct filler *f)
{
	sqlite3_stmt *const all[] = {f->event, f->lot, f->batch, f->batch_lot, f->load, f->jar};
	for (size_t i = 0; i < 6; i++)
		sqlite3_finalize(all[i]);
	char head[128];
	snprintf(head, sizeof head, "UPDATE chain SET last_seq = %lld WHERE own = 1",
		 (long long)BATCH_EVENT(f->batches) + 2);
	bench_exec(f->db, head);
	bench_exec(f->db, "PRAGMA journal_mode = WAL");
	sqlite3_close(f->db);
}

/* The program makes the tables; what is in them does not need to be safe. */
static void make_empty(const char *path)
{
	struct household *db;
	struct error err = {0};
	char name[512];
	const char *const endings[] = {"", "-wal", "-shm"};
	for (size_t i = 0; i < sizeof endings / sizeof *endings; i++) {
		snprintf(name, sizeof name, "%s%s", path, endings[i]);
		(void)unlink(name);
	}
	if (!household_open(path, HOUSEHOLD_WRITE, &db, &err))
		bench_abort("file", err.text);
	household_close(db);
}

void bench_fill(const char *path, int batches)
{
	struct filler f = {.batches = batches};
	double start = bench_seconds();
	make_empty(path);
	if (sqlite3_open(path, &f.db) != SQLITE_OK)
		bench_abort("file", path);
	bench_exec(f.db, "PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA cache_size = "
			 "-400000; PRAGMA foreign_keys = OFF; INSERT INTO chain (id, device, name, "
			 "own, last_seq, last_hash) VALUES (1, randomblob(16), 'bench', 1, 0, "
			 "zeroblob(32)); BEGIN");
	prepare(&f);
	add_lots(&f);
	for (int batch = 1; batch <= batches; batch++) {
		add_batch(&f, batch);
		if (batch % STEP == 0)
			bench_exec(f.db, "COMMIT; BEGIN");
		if (batch % SHOWN == 0) {
			printf("  %d batches, %.0f s\n", batch, bench_seconds() - start);
			fflush(stdout);
		}
	}
	bench_exec(f.db, "COMMIT");
	finish(&f);
	printf("made %d batches and %d jars in %.1f s\n", batches, batches * JARS_A_BATCH,
	       bench_seconds() - start);
}
