/* The engine against SQLite, both in this process, on the same mix of requests. */
#include <sqlite3.h>
#include <stdint.h>
#include <stdio.h>

#include "bench.h"
#include "prove/favourable.h"

enum { REQUESTS = 1024 };

/* Which requests are asked over and over. */
enum mix {
	MIX_ANY,    /* whatever comes; most have no cell, which an empty look-up finds at once */
	MIX_TESTED, /* those that have a published cell, which both must find */
};

static struct request requests[REQUESTS];
/* The jar whose line answers the request: the look-up is told it, the engine finds it. */
static enum jar covering[REQUESTS];
/* What both came to, so that no work is left out. */
static volatile uint64_t minutes_sum;

/* A fixed sequence (Numerical Recipes' constants): the same mix in every run. */
static uint32_t next_random(uint32_t below)
{
	static uint32_t state = 1;
	state = state * 1664525U + 1013904223U;
	return (uint32_t)(((uint64_t)state * below) >> 32);
}

static struct request any_request(const struct reference *ref)
{
	const struct food *food = &ref->foods[next_random((uint32_t)ref->foods_n)];
	enum pack pack = (enum pack)next_random(PACK_COUNT);
	enum canner canner = (enum canner)next_random(CANNER_COUNT);
	enum jar jar = (enum jar)next_random(JAR_COUNT);
	struct request request = favourable_request(food, pack, canner, jar);
	favourable_at(&request, (int32_t)next_random(12001));
	return request;
}

static void make_requests(const struct reference *ref, enum mix mix)
{
	struct decision decision;
	for (int i = 0; i < REQUESTS;) {
		requests[i] = any_request(ref);
		decide(ref, &requests[i], &decision);
		bool tested = decision.verdict == VERDICT_TESTED;
		covering[i] = tested ? decision.process.line->jar : requests[i].jar.jar;
		if (tested || mix == MIX_ANY)
			i++;
	}
}

static void decide_all(void)
{
	const struct reference *ref = reference_edition();
	struct decision decision;
	for (int i = 0; i < REQUESTS; i++) {
		decide(ref, &requests[i], &decision);
		minutes_sum += (uint64_t)decision.process.minutes;
	}
}

static bool look_up(sqlite3_stmt *statement, int i)
{
	const struct request *request = &requests[i];
	enum canner canner =
	    request->canner == CANNER_STEAM ? CANNER_BOILING_WATER : request->canner;
	const char *words[] = {request->food.foods[0]->slug, pack_word(request->pack),
			       canner_word(canner), reference_edition()->jars[covering[i]].name};
	bool ok = true;
	for (int w = 0; w < 4; w++)
		ok = ok &&
		     sqlite3_bind_text(statement, w + 1, words[w], -1, SQLITE_STATIC) == SQLITE_OK;
	ok = ok && sqlite3_bind_int(statement, 5, request->elevation_mft / 1000) == SQLITE_OK;
	int step;
	while (ok && (step = sqlite3_step(statement)) != SQLITE_DONE) {
		ok = step == SQLITE_ROW;
		minutes_sum += (uint64_t)sqlite3_column_int(statement, 0);
	}
	return sqlite3_reset(statement) == SQLITE_OK && ok;
}

static bool look_up_all(sqlite3_stmt *statement)
{
	bool ok = true;
	for (int i = 0; i < REQUESTS && ok; i++)
		ok = look_up(statement, i);
	return ok;
}

/* Calls a second. Whole passes for at least a second, after one to warm up. */
static double decide_rate(void)
{
	decide_all();
	double start = bench_seconds();
	double took;
	int passes = 0;
	do {
		decide_all();
		passes++;
		took = bench_seconds() - start;
	} while (took < 1);
	return passes * (double)REQUESTS / took;
}

/* 0: a look-up failed. */
static double look_up_rate(sqlite3_stmt *statement)
{
	bool ok = look_up_all(statement);
	double start = bench_seconds();
	double took;
	int passes = 0;
	do {
		ok = ok && look_up_all(statement);
		passes++;
		took = bench_seconds() - start;
	} while (ok && took < 1);
	return ok ? passes * (double)REQUESTS / took : 0;
}

/* SQLite at its best: read-only, one transaction for all look-ups, statement prepared once. */
static double database_rate(const char *path)
{
	sqlite3 *database = NULL;
	sqlite3_stmt *statement = NULL;
	double rate = 0;
	if (sqlite3_open_v2(path, &database, SQLITE_OPEN_READONLY, NULL) == SQLITE_OK &&
	    sqlite3_exec(database, "BEGIN", NULL, NULL, NULL) == SQLITE_OK &&
	    sqlite3_prepare_v2(database,
			       "SELECT minutes, psi FROM process WHERE food = ?1 AND pack = ?2 AND "
			       "canner = ?3 AND jar = ?4 AND from_ft <= ?5 AND (to_ft IS NULL OR "
			       "to_ft >= ?5)",
			       -1, &statement, NULL) == SQLITE_OK)
		rate = look_up_rate(statement);
	if (rate <= 0)
		(void)fprintf(stderr, "bench: %s: %s\n", path, sqlite3_errmsg(database));
	(void)sqlite3_finalize(statement);
	(void)sqlite3_close(database);
	return rate;
}

static bool compare(const char *database, enum mix mix)
{
	make_requests(reference_edition(), mix);
	double look_ups = database_rate(database);
	if (look_ups <= 0)
		return false;
	double decisions = decide_rate();
	printf("in memory, one core, %d requests over and over, %s\n", REQUESTS,
	       mix == MIX_TESTED ? "each with a published cell" : "of any kind");
	printf("  decide()           %6.2f million/s  goal >= 3\n", decisions / 1e6);
	printf("  SQLite look-up     %6.2f million/s\n", look_ups / 1e6);
	printf("  ratio              %6.1f x        goal >= 20 x\n", decisions / look_ups);
	return true;
}

bool bench_memory(const char *database)
{
	return compare(database, MIX_TESTED) && compare(database, MIX_ANY);
}
