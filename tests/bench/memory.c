/* The engine against SQLite, both in this process, on the same mix of requests. */
#include <sqlite3.h>
#include <stdint.h>
#include <stdio.h>

#include "bench.h"
#include "prove/favourable.h"

enum { REQUESTS = 1024, ROUNDS = 10 };
#define ROUND_SECONDS 0.1

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

/* The best rate, in calls a second, of the rounds so far. */
struct rates {
	double decide;
	double look_up;
};

static void keep_best(double *best, int passes, double took)
{
	double rate = passes * (double)REQUESTS / took;
	if (rate > *best)
		*best = rate;
}

static void decide_round(struct rates *rates)
{
	double start = bench_seconds();
	double took;
	int passes = 0;
	do {
		decide_all();
		passes++;
		took = bench_seconds() - start;
	} while (took < ROUND_SECONDS);
	keep_best(&rates->decide, passes, took);
}

static bool look_up_round(sqlite3_stmt *statement, struct rates *rates)
{
	double start = bench_seconds();
	double took;
	int passes = 0;
	do {
		if (!look_up_all(statement))
			return false;
		passes++;
		took = bench_seconds() - start;
	} while (took < ROUND_SECONDS);
	keep_best(&rates->look_up, passes, took);
	return true;
}

/* In turns, so that whatever else the machine does falls on both. */
static bool all_rounds(sqlite3_stmt *statement, struct rates *rates)
{
	for (int round = 0; round < ROUNDS; round++) {
		decide_round(rates);
		if (!look_up_round(statement, rates))
			return false;
	}
	return true;
}

/* SQLite at its best: read-only, one transaction for all look-ups, statement prepared once. */
static bool measure(const char *path, struct rates *rates)
{
	sqlite3 *database = NULL;
	sqlite3_stmt *statement = NULL;
	bool ok =
	    sqlite3_open_v2(path, &database, SQLITE_OPEN_READONLY, NULL) == SQLITE_OK &&
	    sqlite3_exec(database, "BEGIN", NULL, NULL, NULL) == SQLITE_OK &&
	    sqlite3_prepare_v2(database,
			       "SELECT minutes, psi FROM process WHERE food = ?1 AND pack = ?2 AND "
			       "canner = ?3 AND jar = ?4 AND from_ft <= ?5 AND (to_ft IS NULL OR "
			       "to_ft >= ?5)",
			       -1, &statement, NULL) == SQLITE_OK &&
	    all_rounds(statement, rates);
	if (!ok)
		(void)fprintf(stderr, "bench: %s: %s\n", path, sqlite3_errmsg(database));
	(void)sqlite3_finalize(statement);
	(void)sqlite3_close(database);
	return ok;
}

static bool compare(const char *database, enum mix mix)
{
	struct rates rates = {0};
	make_requests(reference_edition(), mix);
	if (!measure(database, &rates))
		return false;
	printf("in memory, one core, %d requests over and over, %s\n", REQUESTS,
	       mix == MIX_TESTED ? "each with a published cell" : "of any kind");
	printf("  decide()           %6.2f million/s  goal >= 3\n", rates.decide / 1e6);
	printf("  SQLite look-up     %6.2f million/s\n", rates.look_up / 1e6);
	printf("  ratio              %6.1f x        goal >= 20 x\n", rates.decide / rates.look_up);
	return true;
}

bool bench_memory(const char *database)
{
	return compare(database, MIX_TESTED) && compare(database, MIX_ANY);
}
