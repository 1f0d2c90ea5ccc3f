/*
 * A load held against its process. The figures that are asked for come from the published rules
 * named beside the checks; the loads themselves are invented.
 */
#include <math.h>
#include <string.h>

#include "jarwright/load_judge.h"
#include "jarwright/physics.h"
#include "suite.h"

static struct load_rules rules;
static const struct citation nowhere;

static void setup(void)
{
	struct error err = {0};
	if (!load_rules_find(reference_edition(), reference_tables_edition(), &rules, &err))
		ck_abort_msg("%s", err.text);
}

/* 35 minutes at 11 psi in a canner, vented for 10: the process of these tests, invented. */
static struct load_need need_of(enum canner canner)
{
	return (struct load_need){.canner = canner,
				  .minutes = 35,
				  .psi = 11,
				  .vent_minutes = 10,
				  .elevation_stated = true,
				  .elevation_mft = 2900000,
				  .from = &nowhere};
}

/* Everything just good enough. */
static struct load_said said_of(enum canner canner)
{
	double boils = physics_boiling_point(2900);
	struct load_said said = {
	    .process_stated = true, .process_s = 35 * 60, .breaks = BREAKS_NONE};
	if (canner == CANNER_STEAM || canner == CANNER_BOILING_WATER) {
		said.temperature_stated = true;
		said.low_mf = (int32_t)ceil(boils * 1000);
		return said;
	}
	said.vent_stated = said.psi_stated = true;
	said.vent_s = 10 * 60;
	said.low_mpsi = 11000;
	return said;
}

static enum load_outcome judge(const struct load_need *need, const struct load_said *said)
{
	struct load_judgement out;
	load_judge(&rules, need, said, &out);
	for (size_t i = 0; i < out.findings_n; i++) {
		char text[512];
		ck_assert_ptr_nonnull(out.findings[i].from);
		ck_assert_uint_gt(strlen(load_finding_text(&out.findings[i], text, sizeof text)),
				  10);
		/* Shortfalls first. */
		ck_assert(i == 0 || out.findings[i].missing || !out.findings[i - 1].missing);
	}
	ck_assert_int_eq(out.findings_n == 0, out.outcome == LOAD_PROCESSED);
	return out.outcome;
}

START_TEST(the_rules_are_those_published)
{
	/* USDA AIB 539 (2015) guide 1, p. 1-20, 1-25, 1-26. */
	ck_assert_int_eq(rules.gauge_psi, 2);
	ck_assert_int_eq(rules.seal_earliest_h, 12);
	ck_assert_int_eq(rules.seal_latest_h, 24);
	ck_assert_int_eq(rules.reprocess_h, 24);
	ck_assert_str_eq(rules.freeze->value, "1.5");
	ck_assert_str_eq(rules.vent->value, "10");
	/* University of Nebraska Extension: the time for what was wrongly processed. */
	ck_assert_int_eq(rules.wrong_h, 2);
	ck_assert_str_eq(rules.wrong->from.source->id, "unl-ext");
	ck_assert_str_eq(rules.dense->from.source->id, "unl-ext");
}
END_TEST

START_TEST(just_enough_is_processed)
{
	struct load_need need = need_of((enum canner)_i);
	struct load_said said = said_of((enum canner)_i);
	ck_assert_int_eq(judge(&need, &said), LOAD_PROCESSED);
}
END_TEST

START_TEST(what_is_not_said_is_asked_for)
{
	enum canner canner = (enum canner)_i;
	struct load_need need = need_of(canner);
	struct load_said nothing = {.process_stated = false};
	ck_assert_int_eq(judge(&need, &nothing), LOAD_UNCLEAR);
	struct load_said said = said_of(canner);
	said.process_stated = false;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	said = said_of(canner);
	said.breaks = BREAKS_UNSAID;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	said.breaks = BREAKS_SOME; /* but not when */
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	said = said_of(canner);
	said.vent_stated = said.psi_stated = said.temperature_stated = false;
	/* In boiling water the boil is seen; no thermometer is asked for. */
	ck_assert_int_eq(judge(&need, &said),
			 canner == CANNER_BOILING_WATER ? LOAD_PROCESSED : LOAD_UNCLEAR);
}
END_TEST

/* Each fact one step short, alone. */
START_TEST(one_step_short_is_under_processed)
{
	enum canner canner = (enum canner)_i;
	struct load_need need = need_of(canner);
	struct load_said said = said_of(canner);
	said.process_s--;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNDER_PROCESSED);
	said = said_of(canner);
	if (said.temperature_stated) {
		said.low_mf--;
		ck_assert_int_eq(judge(&need, &said), LOAD_UNDER_PROCESSED);
		return;
	}
	said.vent_s--;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNDER_PROCESSED);
	said = said_of(canner);
	said.low_mpsi--;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNDER_PROCESSED);
}
END_TEST

/* A shortfall is never excused by what was not said. */
START_TEST(short_weighs_more_than_missing)
{
	struct load_need need = need_of((enum canner)_i);
	struct load_said said = {.process_stated = true, .process_s = 60};
	ck_assert_int_eq(judge(&need, &said), LOAD_UNDER_PROCESSED);
}
END_TEST

/* AIB 539 (2015) guide 1, p. 1-18 and 1-22: after a break the whole time starts again. */
START_TEST(only_the_time_after_the_last_break_counts)
{
	struct load_need need = need_of((enum canner)_i);
	for (int32_t at = 0; at <= 80; at++)
		for (int32_t length = 0; length <= 3; length++)
			for (int32_t whole = 33; whole <= 80; whole++) {
				struct load_said said = said_of((enum canner)_i);
				struct load_judgement out;
				said.process_s = whole * 60;
				said.breaks = BREAKS_SOME;
				/* An earlier one too, named last: the order says nothing. */
				said.list[0] = (struct load_break){at * 60, length * 60};
				said.list[1] = (struct load_break){0, 60};
				said.list_n = 2;
				int32_t end = at + length > 1 ? at + length : 1;
				load_judge(&rules, &need, &said, &out);
				ck_assert_int_eq(out.outcome, whole - end >= 35
								  ? LOAD_PROCESSED
								  : LOAD_UNDER_PROCESSED);
			}
}
END_TEST

/* Over the border of every fact at once: processed if and only if each is enough. */
START_TEST(no_combination_short_of_the_process_is_processed)
{
	struct load_need need = need_of(CANNER_DIAL_GAUGE);
	for (int minutes = 33; minutes <= 37; minutes++)
		for (int vent = 8; vent <= 12; vent++)
			for (int32_t psi = 9000; psi <= 15000; psi += 500)
				for (int32_t high = -3000; high <= 3000; high += 500) {
					struct load_said said = said_of(CANNER_DIAL_GAUGE);
					said.process_s = minutes * 60;
					said.vent_s = vent * 60;
					said.low_mpsi = psi;
					said.gauge = (struct load_gauge){true, high,
									 high < 0 ? -high : high};
					/* Guide 1, p. 1-20: reads high, so there is less; above
					 * 2 psi it is replaced, not adjusted for. */
					bool enough = minutes >= 35 && vent >= 10 &&
						      psi - (high > 0 ? high : 0) >= 11000 &&
						      high <= 2000 && high >= -2000;
					ck_assert_int_eq(judge(&need, &said) == LOAD_PROCESSED,
							 enough);
				}
}
END_TEST

/* More of a good thing never makes it worse, more of a bad one never better. */
START_TEST(each_fact_is_monotone)
{
	static const int rank[] = {
	    [LOAD_PROCESSED] = 2, [LOAD_UNCLEAR] = 1, [LOAD_UNDER_PROCESSED] = 0};
	struct load_need need = need_of(CANNER_DIAL_GAUGE);
	int before_minutes = 0, before_need = 2, before_high = 2, before_psi = 0;
	for (int step = 0; step <= 8; step++) {
		struct load_said said = said_of(CANNER_DIAL_GAUGE);
		said.process_s = (31 + step) * 60;
		int now = rank[judge(&need, &said)];
		ck_assert_int_ge(now, before_minutes);
		before_minutes = now;
		said = said_of(CANNER_DIAL_GAUGE);
		said.low_mpsi = 9000 + step * 500;
		now = rank[judge(&need, &said)];
		ck_assert_int_ge(now, before_psi);
		before_psi = now;
		said = said_of(CANNER_DIAL_GAUGE);
		said.low_mpsi = 12000;
		said.gauge = (struct load_gauge){true, step * 400, step * 400};
		now = rank[judge(&need, &said)];
		ck_assert_int_le(now, before_high);
		before_high = now;
		struct load_need more = need;
		more.minutes = 31 + step;
		said = said_of(CANNER_DIAL_GAUGE);
		now = rank[judge(&more, &said)];
		ck_assert_int_le(now, before_need);
		before_need = now;
	}
	ck_assert_int_eq(before_minutes, 2);
	ck_assert_int_eq(before_psi, 2);
	ck_assert_int_eq(before_need, 0);
	ck_assert_int_eq(before_high, 0);
}
END_TEST

/* A weight is no gauge to be off: AIB 539 (2015) guide 1, p. 1-20. */
START_TEST(a_gauge_counts_only_for_the_dial)
{
	struct load_need need = need_of(CANNER_WEIGHTED_GAUGE);
	struct load_said said = said_of(CANNER_WEIGHTED_GAUGE);
	said.gauge = (struct load_gauge){true, 3000, 3000};
	ck_assert_int_eq(judge(&need, &said), LOAD_PROCESSED);
}
END_TEST

START_TEST(what_nothing_covers_is_never_processed)
{
	struct load_need need = need_of((enum canner)_i);
	struct load_said said = said_of((enum canner)_i);
	need.uncovered = true;
	said.process_s = 10 * 3600;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNDER_PROCESSED);
}
END_TEST

START_TEST(a_process_that_is_not_known_is_never_reached)
{
	struct load_need need = need_of(CANNER_DIAL_GAUGE);
	struct load_said said = said_of(CANNER_DIAL_GAUGE);
	need.minutes = 0;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	need = need_of(CANNER_DIAL_GAUGE);
	need.psi = 0;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	need = need_of(CANNER_DIAL_GAUGE);
	need.vent_minutes = 0;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	need = need_of(CANNER_STEAM);
	need.elevation_stated = false;
	said = said_of(CANNER_STEAM);
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
	/* Far outside the standard atmosphere there is no boiling point. */
	need.elevation_stated = true;
	need.elevation_mft = 100000000;
	ck_assert_int_eq(judge(&need, &said), LOAD_UNCLEAR);
}
END_TEST

START_TEST(outcomes_have_words)
{
	for (int i = LOAD_PROCESSED; i <= LOAD_COLD; i++) {
		enum load_outcome found;
		ck_assert(load_outcome_find(load_outcome_word((enum load_outcome)i), &found));
		ck_assert_int_eq(found, i);
	}
	enum load_outcome found;
	ck_assert(!load_outcome_find("fine", &found));
}
END_TEST

static Suite *load_suite(void)
{
	Suite *suite = suite_create("load");
	TCase *tcase = tcase_create("judge");
	tcase_add_checked_fixture(tcase, setup, NULL);
	tcase_add_test(tcase, the_rules_are_those_published);
	tcase_add_loop_test(tcase, just_enough_is_processed, 0, CANNER_COUNT);
	tcase_add_loop_test(tcase, what_is_not_said_is_asked_for, 0, CANNER_COUNT);
	tcase_add_loop_test(tcase, one_step_short_is_under_processed, 0, CANNER_COUNT);
	tcase_add_loop_test(tcase, short_weighs_more_than_missing, 0, CANNER_COUNT);
	tcase_add_loop_test(tcase, only_the_time_after_the_last_break_counts, 0, CANNER_COUNT);
	tcase_add_test(tcase, no_combination_short_of_the_process_is_processed);
	tcase_add_test(tcase, each_fact_is_monotone);
	tcase_add_test(tcase, a_gauge_counts_only_for_the_dial);
	tcase_add_loop_test(tcase, what_nothing_covers_is_never_processed, 0, CANNER_COUNT);
	tcase_add_test(tcase, a_process_that_is_not_known_is_never_reached);
	tcase_add_test(tcase, outcomes_have_words);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(load_suite())
