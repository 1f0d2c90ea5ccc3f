/*
 * The exhaustive run: every food, pack, canner, jar and whole foot from 0 to 12,000 is
 * decided and compared with the oracle, and the invariants that need no oracle's answer
 * are checked on the way. Usage: prove db/...txt; exit 1 on any violation.
 */
#include <pthread.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "favourable.h"
#include "oracle.h"

enum {
	FEET = 12001,
	SHOWN = 10,
	TEXT = 256,
	STEAM_MINUTES_MAX = 45, /* Oklahoma State University Extension */
	THREADS_MIN = 2,
	THREADS_MAX = 16,
};

/* What was given in one jar at one foot. minutes 0: nothing. */
struct given {
	int minutes;
	int psi;
};
static const struct given nothing = {0};

/* Written by the one thread that has the food. */
struct tally {
	unsigned long long violations;
	char shown[SHOWN][TEXT];
};

struct run {
	const struct reference *ref;
	const struct oracle *oracle;
	struct tally *tallies; /* one a food */
	atomic_size_t next_food;
	atomic_size_t threads_done;
	atomic_ullong requests;
};

/* One food in one pack, canner and jar, on its way up from 0 ft. */
struct walk {
	const struct food *food;
	struct tally *tally;
	struct request request;
	struct oracle_case which;
	struct given below;                    /* given a foot lower */
	const struct process_line *below_line; /* and from which pressure choice */
	struct given smaller[FEET];            /* given in the next smaller jar */
};

static void violation(struct walk *walk, int foot, const char *what, struct given is,
		      struct given against)
{
	struct tally *tally = walk->tally;
	if (tally->violations < SHOWN)
		(void)snprintf(tally->shown[tally->violations], TEXT,
			       "%s %s %s jar of %d fl oz at %d ft: %s: %d min %d psi, against %d "
			       "min %d psi",
			       walk->food->slug, pack_word(walk->request.pack),
			       canner_word(walk->request.canner), walk->which.jar_fl_oz, foot, what,
			       is.minutes, is.psi, against.minutes, against.psi);
	tally->violations++;
}

/* The engine and the oracle: the same answer, or none (0 min) from both. */
static void check_oracle(struct walk *walk, struct given given, int foot)
{
	struct oracle_answer answer = oracle_answer(&walk->which, foot);
	struct given expected = {answer.minutes, answer.psi};
	if (given.minutes != expected.minutes || given.psi != expected.psi)
		violation(walk, foot, "not the oracle's answer", given, expected);
}

/* Invariants 1, 4 and 5: the covering jar, a band that is published, no less than its cell. */
static void check_cell(struct walk *walk, const struct process *process, struct given given,
		       int foot)
{
	const struct oracle_band *band = oracle_band(&walk->which, foot);
	if (!band || foot > ORACLE_HIGHEST_FT || band->published_n == 0) {
		violation(walk, foot, "no published cell", given, nothing);
		return;
	}
	const struct given first = {band->published[0].minutes, band->published[0].psi};
	bool covered = false;
	for (int i = 0; i < band->published_n; i++)
		covered = covered || (given.minutes >= band->published[i].minutes &&
				      given.psi >= band->published[i].psi);
	if (!covered)
		violation(walk, foot, "below the published cell", given, first);
	if (process->choices_n != (walk->which.pressure ? (size_t)band->published_n : 0))
		violation(walk, foot, "not as many choices as published", given, first);
	if (process->line->jar < walk->request.jar.jar)
		violation(walk, foot, "a smaller jar's line", given, first);
}

/* Invariants 2 and 3: what may not leave a boiling-water or a steam canner. */
static void check_canner(struct walk *walk, const struct process *process, struct given given,
			 int foot)
{
	const enum acid_class acid = walk->food->acid_class;
	if (!walk->which.pressure && acid != ACID_CLASS_HIGH && acid != ACID_CLASS_ACIDIFIED)
		violation(walk, foot, "no pressure for a food not known to be acid", given,
			  nothing);
	if (walk->which.pressure != (given.psi > 0))
		violation(walk, foot, "not the pressure of this canner", given, nothing);
	if (walk->request.canner == CANNER_STEAM &&
	    (given.minutes > STEAM_MINUTES_MAX || walk->request.jar.jar > JAR_QUART ||
	     process->table->canner != CANNER_BOILING_WATER))
		violation(walk, foot, "beyond the limits of steam", given, nothing);
}

/* Invariant 6: higher, or in a larger jar, never less, within one pressure choice. */
static void check_monotone(struct walk *walk, const struct process *process, struct given given,
			   int foot)
{
	const struct given smaller = walk->smaller[foot];
	if (process->line == walk->below_line &&
	    (given.minutes < walk->below.minutes || given.psi < walk->below.psi))
		violation(walk, foot, "less than a foot lower", given, walk->below);
	if (given.psi == smaller.psi && given.minutes < smaller.minutes)
		violation(walk, foot, "less than in the next smaller jar", given, smaller);
}

/* Checks one answer; returns what was given. */
static struct given check(struct walk *walk, const struct decision *decision, int foot)
{
	struct given given = nothing;
	const bool tested = decision->verdict == VERDICT_TESTED;
	if (tested)
		given = (struct given){decision->process.minutes, decision->process.psi};
	check_oracle(walk, given, foot);
	if (tested) {
		check_cell(walk, &decision->process, given, foot);
		check_canner(walk, &decision->process, given, foot);
		check_monotone(walk, &decision->process, given, foot);
	}
	if (tested && given.minutes <= 0)
		violation(walk, foot, "tested without a time", given, nothing);
	return given;
}

/* Every foot for one pack, canner and jar. */
static void walk_up(struct run *run, struct walk *walk)
{
	struct decision decision;
	walk->below = nothing;
	walk->below_line = NULL;
	for (int foot = 0; foot < FEET; foot++) {
		favourable_at(&walk->request, foot);
		decide(run->ref, &walk->request, &decision);
		walk->below = check(walk, &decision, foot);
		walk->below_line =
		    decision.verdict == VERDICT_TESTED ? decision.process.line : NULL;
		walk->smaller[foot] = walk->below;
	}
	atomic_fetch_add(&run->requests, FEET);
}

static void walk_jars(struct run *run, struct walk *walk, enum pack pack, enum canner canner)
{
	memset(walk->smaller, 0, sizeof walk->smaller);
	for (unsigned jar = 0; jar < JAR_COUNT; jar++) {
		walk->request = favourable_request(walk->food, pack, canner, (enum jar)jar);
		if (oracle_find(run->oracle, walk->food->slug, pack_word(pack), canner_word(canner),
				run->ref->jars[jar].name, &walk->which))
			walk_up(run, walk);
		else
			violation(walk, 0, "the oracle read no such food or jar", nothing, nothing);
	}
}

static void *work(void *argument)
{
	struct run *run = argument;
	struct walk *walk = malloc(sizeof *walk);
	if (!walk) {
		(void)fprintf(stderr, "prove: out of memory\n");
		exit(EXIT_FAILURE);
	}
	size_t i;
	while ((i = atomic_fetch_add(&run->next_food, 1)) < run->ref->foods_n) {
		walk->food = &run->ref->foods[i];
		walk->tally = &run->tallies[i];
		for (unsigned pack = 0; pack < PACK_COUNT; pack++)
			for (unsigned canner = 0; canner < CANNER_COUNT; canner++)
				walk_jars(run, walk, (enum pack)pack, (enum canner)canner);
	}
	free(walk);
	atomic_fetch_add(&run->threads_done, 1);
	return NULL;
}

static double seconds_now(void)
{
	struct timespec now;
	(void)clock_gettime(CLOCK_MONOTONIC, &now);
	return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

/* On a terminal one line that is rewritten; elsewhere a line every 5 s. */
static void show_progress(struct run *run, size_t threads, unsigned long long all)
{
	const bool terminal = isatty(STDERR_FILENO);
	const struct timespec pause = {.tv_nsec = 100000000};
	for (int tenths = 1; atomic_load(&run->threads_done) < threads; tenths++) {
		(void)nanosleep(&pause, NULL);
		if (tenths % (terminal ? 2 : 50) == 0)
			(void)fprintf(stderr, "%s%3.0f %% of %.1f million requests%s",
				      terminal ? "\r" : "prove: ",
				      100.0 * (double)atomic_load(&run->requests) / (double)all,
				      (double)all / 1e6, terminal ? "" : "\n");
	}
	if (terminal)
		(void)fprintf(stderr, "\r\033[K");
}

static bool run_threads(struct run *run)
{
	const long processors = sysconf(_SC_NPROCESSORS_ONLN);
	size_t wanted = processors > THREADS_MIN ? (size_t)processors : THREADS_MIN;
	if (wanted > THREADS_MAX)
		wanted = THREADS_MAX;
	pthread_t threads[THREADS_MAX];
	size_t started = 0;
	while (started < wanted && pthread_create(&threads[started], NULL, work, run) == 0)
		started++;
	const unsigned long long all =
	    (unsigned long long)run->ref->foods_n * PACK_COUNT * CANNER_COUNT * JAR_COUNT * FEET;
	show_progress(run, started, all);
	for (size_t i = 0; i < started; i++)
		(void)pthread_join(threads[i], NULL);
	return atomic_load(&run->requests) == all;
}

static unsigned long long show_violations(const struct run *run)
{
	unsigned long long all = 0;
	size_t shown = 0;
	for (size_t i = 0; i < run->ref->foods_n; i++) {
		const struct tally *tally = &run->tallies[i];
		for (size_t v = 0; v < tally->violations && v < SHOWN && shown < SHOWN;
		     v++, shown++)
			printf("violation: %s\n", tally->shown[v]);
		all += tally->violations;
	}
	return all;
}

static int prove(struct run *run)
{
	const double start = seconds_now();
	const bool complete = run_threads(run);
	const double took = seconds_now() - start;
	const unsigned long long violations = show_violations(run);
	const double requests = (double)atomic_load(&run->requests);
	printf("prove: edition %s: %.0f requests, %llu violations, %.1f s, %.2f million/s\n",
	       run->ref->edition, requests, violations, took, requests / took / 1e6);
	if (!complete)
		printf("prove: not every request was decided\n");
	return complete && violations == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

int main(int argc, char *argv[])
{
	struct run run = {.ref = reference_edition()};
	struct oracle *oracle = oracle_read(argv + 1, (size_t)(argc - 1));
	if (!oracle)
		return EXIT_FAILURE;
	int status = EXIT_FAILURE;
	run.oracle = oracle;
	run.tallies = calloc(run.ref->foods_n, sizeof *run.tallies);
	if (oracle_foods(oracle) != run.ref->foods_n)
		(void)fprintf(stderr, "prove: the oracle read %zu foods of %zu\n",
			      oracle_foods(oracle), run.ref->foods_n);
	else if (!run.tallies)
		(void)fprintf(stderr, "prove: out of memory\n");
	else
		status = prove(&run);
	free(run.tallies);
	oracle_free(oracle);
	return status;
}
