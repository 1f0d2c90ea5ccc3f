/* The steps of a load. Figures: AIB 539 (2015) guide 1, pages as said; steam: as said. */
#include <string.h>

#include "jarwright/run.h"
#include "suites.h"

#define MINUTES(n) (INT64_C(60) * (n))
#define HOURS(n)   (INT64_C(3600) * (n))

static struct run_plan plan;

static const struct run_step *make(const struct load_need *need, int32_t high, const char *pack)
{
	struct error err = {0};
	struct load_need whole = *need;
	whole.from = &reference_edition()->published[0].from;
	if (!run_plan_make(reference_edition(), &whole, high, pack, &plan, &err))
		ck_abort_msg("%s", err.text);
	return plan.steps;
}

static void check_stages(const enum run_stage *stages, size_t n)
{
	ck_assert_uint_eq(plan.steps_n, n);
	for (size_t i = 0; i < n; i++) {
		ck_assert_int_eq(plan.steps[i].stage, stages[i]);
		ck_assert_ptr_nonnull(plan.steps[i].from);
		ck_assert(*plan.steps[i].watch);
		/* Nothing was cut. */
		ck_assert_uint_lt(strlen(plan.steps[i].watch), sizeof plan.steps[i].watch - 1);
		ck_assert_int_eq(plan.steps[i].least_s > 0, plan.steps[i].timed != NULL);
	}
}

START_TEST(boiling_water)
{
	static const enum run_stage stages[] = {RUN_PREHEAT, RUN_FILL,   RUN_HEAT, RUN_PROCESS,
						RUN_REST,    RUN_UNLOAD, RUN_COOL};
	const struct load_need need = {.canner = CANNER_BOILING_WATER, .minutes = 30};
	const struct run_step *steps = make(&need, 0, "hot");
	check_stages(stages, 7);
	ck_assert_ptr_nonnull(strstr(steps[0].watch, "180 F"));         /* p. 1-18, step 2 */
	ck_assert_ptr_nonnull(strstr(steps[1].watch, "at least 1 in")); /* step 4 */
	ck_assert_int_eq(steps[2].least_s, MINUTES(20));                /* p. 1-17 */
	ck_assert_int_eq(steps[2].most_s, MINUTES(30));
	ck_assert(!steps[2].unbroken);
	ck_assert_int_eq(steps[3].least_s, MINUTES(30));
	ck_assert(steps[3].unbroken);
	ck_assert_uint_eq(steps[3].again, 2);           /* p. 1-18, step 7 */
	ck_assert_int_eq(steps[4].least_s, MINUTES(5)); /* step 9 */
	ck_assert_int_eq(steps[6].least_s, HOURS(12));  /* p. 1-25 */
	ck_assert_int_eq(steps[6].most_s, HOURS(24));
}
END_TEST

START_TEST(boiling_water_over_thirty_minutes)
{
	const struct load_need need = {.canner = CANNER_BOILING_WATER, .minutes = 31};
	const struct run_step *steps = make(&need, 0, "raw");
	ck_assert_ptr_nonnull(strstr(steps[0].watch, "140 F"));
	ck_assert_ptr_nonnull(strstr(steps[1].watch, "at least 2 in"));
	steps = make(&need, 0, "");
	ck_assert_ptr_nonnull(strstr(steps[0].watch, "140 F"));
	ck_assert_ptr_nonnull(strstr(steps[0].watch, "180 F"));
}
END_TEST

START_TEST(steam)
{
	static const enum run_stage stages[] = {RUN_PREHEAT, RUN_FILL,   RUN_VENT,
						RUN_PROCESS, RUN_UNLOAD, RUN_COOL};
	const struct load_need need = {.canner = CANNER_STEAM,
				       .minutes = 20,
				       .elevation_stated = true,
				       .elevation_mft = 2900000};
	const struct run_step *steps = make(&need, 0, "hot");
	check_stages(stages, 6);
	ck_assert_int_eq(steps[2].least_s, 0); /* no publication gives a time */
	ck_assert_ptr_nonnull(strstr(steps[2].watch, "8 in"));
	/* Boils at 206.665 F there: rounded up, never down. */
	ck_assert_ptr_nonnull(strstr(steps[2].watch, "206.7 F"));
	ck_assert_uint_eq(steps[3].again, 2);
}
END_TEST

START_TEST(pressure)
{
	static const enum run_stage stages[] = {RUN_FILL,       RUN_HEAT,    RUN_VENT,
						RUN_PRESSURIZE, RUN_PROCESS, RUN_DEPRESSURIZE,
						RUN_OPEN,       RUN_UNLOAD,  RUN_COOL};
	struct load_need need = {
	    .canner = CANNER_DIAL_GAUGE, .minutes = 30, .psi = 12, .vent_minutes = 10};
	const struct run_step *steps = make(&need, 0, "raw");
	check_stages(stages, 9);
	ck_assert_ptr_nonnull(strstr(steps[0].watch, "2 to 3 in")); /* p. 1-21 */
	ck_assert_int_eq(steps[1].least_s, MINUTES(12));            /* p. 1-17 */
	ck_assert_int_eq(steps[2].least_s, MINUTES(10));            /* p. 1-20 */
	ck_assert(steps[2].unbroken);
	ck_assert_uint_eq(steps[2].again, 1);
	ck_assert_int_eq(steps[3].least_s, MINUTES(3)); /* p. 1-22 */
	ck_assert_ptr_nonnull(strstr(steps[3].watch, "12 psi"));
	ck_assert_uint_eq(steps[4].again, 3);
	ck_assert_int_eq(steps[5].least_s, MINUTES(20)); /* p. 1-17 */
	ck_assert_int_eq(steps[6].least_s, MINUTES(10)); /* p. 1-22 */
	/* A dial that reads 1.42 psi high must show so much more; a weight does not care. */
	steps = make(&need, 1420, "raw");
	ck_assert_ptr_nonnull(strstr(steps[3].watch, "13.5 psi"));
	ck_assert_ptr_nonnull(strstr(steps[4].watch, "13.5 psi"));
	need.canner = CANNER_WEIGHTED_GAUGE;
	need.psi = 15;
	steps = make(&need, 1500, "raw");
	ck_assert_ptr_nonnull(strstr(steps[4].watch, "15 psi weight"));
}
END_TEST

START_TEST(nothing_to_count)
{
	struct error err = {0};
	struct load_need need = {.canner = CANNER_BOILING_WATER,
				 .minutes = 30,
				 .uncovered = true,
				 .from = &reference_edition()->published[0].from};
	ck_assert(!run_plan_make(reference_edition(), &need, 0, "", &plan, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	need.uncovered = false;
	need.minutes = 0;
	ck_assert(!run_plan_make(reference_edition(), &need, 0, "", &plan, &err));
	need.minutes = 30;
	need.canner = CANNER_WEIGHTED_GAUGE; /* no psi, no vent */
	ck_assert(!run_plan_make(reference_edition(), &need, 0, "", &plan, &err));
}
END_TEST

Suite *steps_suite(void)
{
	Suite *suite = suite_create("run: steps");
	TCase *tests = tcase_create("steps");
	tcase_add_test(tests, boiling_water);
	tcase_add_test(tests, boiling_water_over_thirty_minutes);
	tcase_add_test(tests, steam);
	tcase_add_test(tests, pressure);
	tcase_add_test(tests, nothing_to_count);
	suite_add_tcase(suite, tests);
	return suite;
}
