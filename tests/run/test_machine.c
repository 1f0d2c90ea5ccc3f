/*
 * What events and time do to a load. The rule behind it all is published: when the boil or the
 * pressure is lost the whole time starts again (AIB 539 (2015) guide 1, p. 1-18 step 7, p. 1-22).
 */
#include <stdio.h>
#include <string.h>

#include "jarwright/run.h"
#include "suites.h"

#define MS     INT64_C(1000000)
#define S      RUN_SECOND
#define MINUTE (60 * S)

static struct run_plan plan;
static struct run run;
static int64_t now;

/* A load of an invented kitchen. */
static void make_plan(enum canner canner, int minutes)
{
	struct error err = {0};
	const struct load_need need = {.canner = canner,
				       .minutes = minutes,
				       .psi = 10,
				       .vent_minutes = 10,
				       .elevation_stated = true,
				       .from = &reference_edition()->published[0].from};
	if (!run_plan_make(reference_edition(), &need, 0, "hot", &plan, &err))
		ck_abort_msg("%s", err.text);
}

static enum run_stage stage(void)
{
	return plan.steps[run.at].stage;
}

/* Watched time passes. */
static void pass(int64_t ns)
{
	for (int64_t end = now + ns; now < end;) {
		now += end - now < 20 * S ? end - now : 20 * S;
		run_take(&run, RUN_TICK, now);
	}
}

static void begin_process(enum canner canner, int minutes)
{
	make_plan(canner, minutes);
	now = 1000 * S;
	run_begin(&plan, now, &run);
	while (stage() != RUN_PROCESS) {
		pass(plan.steps[run.at].unbroken ? plan.steps[run.at].least_s * S : 5 * S);
		ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	}
}

START_TEST(whole_time)
{
	struct load_said said;
	begin_process(CANNER_BOILING_WATER, 15);
	pass(15 * MINUTE - MS);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_NOT_YET);
	pass(MS);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	ck_assert_int_eq(stage(), RUN_REST);
	run_said(&run, &said);
	ck_assert(said.process_stated);
	ck_assert_int_eq(said.process_s, 900);
	ck_assert_int_eq(said.breaks, BREAKS_NONE);
	ck_assert(!said.vent_stated && !said.psi_stated && !said.temperature_stated);
}
END_TEST

START_TEST(lost_a_second_before_the_end)
{
	struct load_said said;
	begin_process(CANNER_BOILING_WATER, 15);
	pass(15 * MINUTE - S);
	ck_assert_int_eq(run_take(&run, RUN_LOST, now), RUN_STARTED_AGAIN);
	ck_assert_int_eq(stage(), RUN_HEAT);
	pass(4 * MINUTE);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	pass(15 * MINUTE - S);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_NOT_YET);
	pass(S);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	run_said(&run, &said);
	ck_assert_int_eq(said.process_s, 899 + 240 + 900);
	ck_assert_uint_eq(said.list_n, 1);
	ck_assert_int_eq(said.list[0].at_s, 899);
	ck_assert_int_eq(said.list[0].length_s, 240);
}
END_TEST

/* After the time is up and before she says so, a loss still counts. */
START_TEST(lost_before_it_is_said_done)
{
	begin_process(CANNER_DIAL_GAUGE, 15);
	pass(20 * MINUTE);
	ck_assert_int_eq(run_take(&run, RUN_LOST, now), RUN_STARTED_AGAIN);
	ck_assert_int_eq(stage(), RUN_PRESSURIZE);
}
END_TEST

START_TEST(not_watched)
{
	begin_process(CANNER_BOILING_WATER, 15);
	pass(MINUTE);
	now += 60 * MINUTE; /* the machine slept */
	ck_assert_int_eq(run_take(&run, RUN_TICK, now), RUN_ASKS);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_ASKS);
	ck_assert_int_eq(run_take(&run, RUN_HELD, now), RUN_TAKEN);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	ck_assert(run.told);
}
END_TEST

START_TEST(not_watched_and_not_sure)
{
	struct load_said said;
	begin_process(CANNER_BOILING_WATER, 15);
	pass(MINUTE);
	now += 60 * MINUTE;
	/* The doubt itself is what looks first: the gap is not forgotten by that. */
	ck_assert_int_eq(run_take(&run, RUN_DOUBT, now), RUN_ASKS);
	ck_assert_int_eq(run_take(&run, RUN_DOUBT, now), RUN_STARTED_AGAIN);
	pass(2 * S);
	run_take(&run, RUN_DONE, now);
	pass(15 * MINUTE);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	run_said(&run, &said);
	/* The break begins where nobody watched any more. */
	ck_assert_int_eq(said.list[0].at_s, 60);
	ck_assert_int_eq(said.list[0].length_s, 3602);
	ck_assert(!run.told);
}
END_TEST

START_TEST(the_clock_began_anew)
{
	begin_process(CANNER_BOILING_WATER, 15);
	pass(14 * MINUTE);
	now = 3 * S;
	ck_assert_int_eq(run_take(&run, RUN_REBOOT, now), RUN_STARTED_AGAIN);
	ck_assert_int_eq(stage(), RUN_HEAT);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	pass(14 * MINUTE);
	now -= S; /* a clock that goes back, though it never should */
	ck_assert_int_eq(run_take(&run, RUN_TICK, now), RUN_STARTED_AGAIN);
}
END_TEST

START_TEST(back_over_the_process)
{
	begin_process(CANNER_BOILING_WATER, 15);
	pass(15 * MINUTE);
	run_take(&run, RUN_DONE, now);
	ck_assert_int_eq(run_take(&run, RUN_BACK, now), RUN_STARTED_AGAIN);
	ck_assert_int_eq(stage(), RUN_HEAT);
	ck_assert(!run.processed);
	run_take(&run, RUN_DONE, now);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_NOT_YET);
}
END_TEST

START_TEST(waits)
{
	begin_process(CANNER_BOILING_WATER, 15);
	pass(15 * MINUTE);
	run_take(&run, RUN_DONE, now);
	ck_assert_int_eq(run_take(&run, RUN_LOST, now), RUN_NOTHING);
	pass(MINUTE);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_EARLY);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	ck_assert_int_eq(stage(), RUN_COOL);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_NOTHING);
	ck_assert_int_eq(run_take(&run, RUN_BACK, now), RUN_NOTHING);
}
END_TEST

/* More breaks than a load can list: what counts stays the time after the last one. */
START_TEST(many_breaks)
{
	struct load_said said;
	begin_process(CANNER_BOILING_WATER, 15);
	for (int i = 0; i < 3 * LOAD_BREAKS_MAX; i++) {
		pass(7 * S);
		run_take(&run, RUN_LOST, now);
		pass(3 * S);
		run_take(&run, RUN_DONE, now);
	}
	pass(15 * MINUTE);
	ck_assert_int_eq(run_take(&run, RUN_DONE, now), RUN_TAKEN);
	run_said(&run, &said);
	ck_assert_uint_eq(said.list_n, LOAD_BREAKS_MAX);
	const struct load_break *last = &said.list[said.list_n - 1];
	ck_assert_int_eq(said.process_s - last->at_s - last->length_s, 900);
}
END_TEST

/* --- Properties --- */

static uint64_t seed;

static unsigned pick(unsigned n)
{
	seed ^= seed << 13;
	seed ^= seed >> 7;
	seed ^= seed << 17;
	return (unsigned)((seed >> 20) % n);
}

/* What a bystander knows of the unbroken step that runs: nothing of how it is counted. */
struct bystander {
	bool runs;   /* since .since_ns nothing was lost that anybody said */
	bool doubts; /* nobody watched, and she has not said that it held */
	int64_t since_ns, seen_ns;
};

static void watch_event(struct bystander *b, enum run_event event)
{
	bool lost =
	    event == RUN_REBOOT || now < b->seen_ns || event == RUN_LOST || event == RUN_BACK;
	bool gap = event == RUN_RETURN || now - b->seen_ns > RUN_UNWATCHED;
	if (lost || (!gap && event == RUN_DOUBT && b->doubts))
		b->runs = false;
	else if (gap)
		b->doubts = true;
	else if (event == RUN_HELD)
		b->doubts = false;
	b->seen_ns = now;
}

static int64_t random_step(void)
{
	switch (pick(12)) {
	case 0:
		return (int64_t)pick(4000) * S; /* nobody watches */
	case 1:
		return -(int64_t)pick(100) * S; /* cannot be; must not matter */
	case 2:
		return pick(3) * MS; /* two keys at once */
	case 3:
		return RUN_UNWATCHED + ((int64_t)pick(3) - 1) * MS; /* the border */
	default:
		return (int64_t)pick(30000) * MS;
	}
}

static enum run_event random_event(void)
{
	static const enum run_event rare[] = {RUN_LOST,  RUN_BACK,   RUN_RETURN, RUN_REBOOT,
					      RUN_HELD,  RUN_DOUBT,  RUN_LEAVE,  RUN_HELD,
					      RUN_BEGIN, RUN_ABANDON};
	unsigned n = pick(60);
	if (n < 10)
		return rare[n];
	return n < 20 ? RUN_DONE : n < 23 ? RUN_HELD : RUN_TICK;
}

struct record {
	struct run_entry entries[4000];
	size_t n;
	int boots;
};

/* As the program logs it. */
static void log_entry(struct record *r, enum run_event event, enum run_stage in, bool asked,
		      enum run_answer answer)
{
	struct run_entry *entry = &r->entries[r->n];
	*entry = (struct run_entry){.event = event, .stage = in, .now_ns = now, .seen_ns = -1};
	if (!asked && run.asks) {
		entry->event = RUN_RETURN;
		entry->seen_ns = run.unseen_ns;
	}
	if (entry->event == RUN_TICK ||
	    (answer != RUN_TAKEN && answer != RUN_EARLY && answer != RUN_STARTED_AGAIN &&
	     entry->event != RUN_RETURN && entry->event != RUN_LEAVE))
		return;
	r->boots += entry->event == RUN_REBOOT;
	snprintf(entry->boot, sizeof entry->boot, "boot %d", r->boots);
	r->n++;
}

/* A load read back from its log is where it was, and knows what it knew. */
static void check_replay(const struct record *r, int64_t began)
{
	struct run again;
	const char *before = "boot 0";
	struct load_said one, other;
	run_begin(&plan, began, &again);
	for (size_t i = 0; i < r->n; i++) {
		run_replay(&again, &r->entries[i], before);
		before = r->entries[i].boot;
	}
	ck_assert_uint_eq(again.at, run.at);
	ck_assert_int_eq(again.asks, run.asks);
	ck_assert_int_eq(again.since_ns, run.since_ns);
	ck_assert_int_eq(again.told, run.told);
	run_said(&run, &one);
	run_said(&again, &other);
	ck_assert_int_eq(one.process_stated, other.process_stated);
	ck_assert_int_eq(one.process_s, other.process_s);
	ck_assert_int_eq(one.vent_stated, other.vent_stated);
	ck_assert_int_eq(one.vent_s, other.vent_s);
	ck_assert_int_eq(one.breaks, other.breaks);
	ck_assert_uint_eq(one.list_n, other.list_n);
	for (size_t i = 0; i < one.list_n; i++) {
		ck_assert_int_eq(one.list[i].at_s, other.list[i].at_s);
		ck_assert_int_eq(one.list[i].length_s, other.list[i].length_s);
	}
}

/* The time that the judge of loads counts is not more than what a bystander saw. */
static void check_said(const struct bystander *b, int minutes)
{
	struct load_said said;
	int64_t ended = 0;
	run_said(&run, &said);
	ck_assert(said.process_stated);
	for (size_t i = 0; i < said.list_n; i++) {
		ck_assert_int_ge(said.list[i].length_s, 0);
		if (said.list[i].at_s + said.list[i].length_s > ended)
			ended = said.list[i].at_s + said.list[i].length_s;
	}
	ck_assert_int_ge(said.process_s - ended, (int64_t)minutes * 60);
	ck_assert_int_le((said.process_s - ended) * S, now - b->since_ns);
}

static void random_load(enum canner canner, int minutes, unsigned *over, struct record *r)
{
	struct bystander b = {.seen_ns = now};
	make_plan(canner, minutes);
	now = (int64_t)pick(100000) * S;
	int64_t began = now;
	run_begin(&plan, now, &run);
	b.seen_ns = now;
	*r = (struct record){.n = 0};
	for (int i = 0; i < 600; i++) {
		enum run_event event = random_event();
		const struct run_step *before = &plan.steps[run.at];
		bool asked = run.asks;
		now += random_step();
		if (now < 0)
			now = 0;
		if (event != RUN_REBOOT && now < run.seen_ns)
			event = RUN_REBOOT;
		watch_event(&b, event);
		enum run_answer answer = run_take(&run, event, now);
		const struct run_step *after = &plan.steps[run.at];
		log_entry(r, event, before->stage, asked, answer);
		if (before->unbroken && after > before) {
			ck_assert(b.runs && !b.doubts);
			ck_assert_int_ge(now - b.since_ns, before->least_s * S);
			if (before->stage == RUN_PROCESS) {
				check_said(&b, minutes);
				++*over;
			}
		}
		if (after->unbroken && after != before)
			b = (struct bystander){.runs = true, .since_ns = now, .seen_ns = now};
	}
	check_replay(r, began);
}

/* Never complete unless an unbroken run of the whole time lies behind it. */
START_TEST(never_short)
{
	static struct record record;
	unsigned over = 0;
	for (unsigned i = 1; i <= 4000; i++) {
		seed = UINT64_C(0x9e3779b97f4a7c15) * i;
		enum canner canner = (enum canner)pick(CANNER_COUNT);
		random_load(canner, 1 + (int)pick(6), &over, &record);
	}
	/* The loads do come to their end: the test can fail. */
	ck_assert_uint_gt(over, 500);
}
END_TEST

Suite *machine_suite(void)
{
	Suite *suite = suite_create("run: machine");
	TCase *tests = tcase_create("machine");
	tcase_set_timeout(tests, 120);
	tcase_add_test(tests, whole_time);
	tcase_add_test(tests, lost_a_second_before_the_end);
	tcase_add_test(tests, lost_before_it_is_said_done);
	tcase_add_test(tests, not_watched);
	tcase_add_test(tests, not_watched_and_not_sure);
	tcase_add_test(tests, the_clock_began_anew);
	tcase_add_test(tests, back_over_the_process);
	tcase_add_test(tests, waits);
	tcase_add_test(tests, many_breaks);
	tcase_add_test(tests, never_short);
	suite_add_tcase(suite, tests);
	return suite;
}
