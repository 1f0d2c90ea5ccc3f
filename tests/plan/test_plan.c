/* Plans against the published rows: AIB 539 (2015) guide 1, pages beside each check. */
#include <string.h>

#include "jarwright/plan.h"
#include "suite.h"

static struct request request_for(const char *slug, enum canner canner, enum pack pack,
				  enum jar jar)
{
	const struct reference *ref = reference_edition();
	const struct food *food = reference_food(ref, slug);
	ck_assert_ptr_nonnull(food);
	return (struct request){
	    .food = {.kind = MATCH_ONE, .foods = {food}, .foods_n = 1},
	    .canner_choice = CHOICE_CANNER,
	    .canner = canner,
	    .pack = pack,
	    .jar = {.stated = true, .jar = jar},
	    .elevation_stated = true,
	    .elevation_mft = 500 * 1000,
	    .vinegar = VINEGAR_LABELLED,
	    .vinegar_milli_percent = 5000,
	};
}

static struct plan plan_for(struct request rq, struct plan_wish wish)
{
	const struct reference *ref = reference_edition();
	struct decision decision;
	struct plan plan;
	struct error err = {.kind = ERROR_NONE};
	decide(ref, &rq, &decision);
	ck_assert_int_eq(decision.verdict, VERDICT_TESTED);
	ck_assert_msg(
	    plan_make(ref, &decision, &rq.jar, rq.canner == CANNER_STEAM, &wish, &plan, &err), "%s",
	    err.text);
	return plan;
}

static void assert_step(const struct plan *plan, size_t i, enum stage stage, int least, int most)
{
	ck_assert_uint_lt(i, plan->steps_n);
	ck_assert_int_eq(plan->steps[i].stage, stage);
	ck_assert_int_eq(plan->steps[i].minutes.least, least);
	ck_assert_int_eq(plan->steps[i].minutes.most, most);
}

/* Pickled beets, pints, 0-1,000 ft: 30 min (guide 6, p. 6-16). */
START_TEST(boiling_water_timeline)
{
	struct request rq = request_for("pickled-beets", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT);
	struct plan plan =
	    plan_for(rq, (struct plan_wish){.jars = 17, .start = 540, .until = 1440});
	ck_assert_int_eq(plan.jars_per_load, 8); /* usual load 8-9 pints, p. 1-17 */
	ck_assert_int_eq(plan.loads, 3);
	ck_assert_int_eq(plan.last_load_jars, 1);
	ck_assert_uint_eq(plan.steps_n, 3);
	assert_step(&plan, 0, STAGE_HEAT, 20, 30);    /* p. 1-17 */
	assert_step(&plan, 1, STAGE_PROCESS, 30, 30); /* p. 6-16 */
	assert_step(&plan, 2, STAGE_REST, 5, 5);      /* p. 1-18, step 9 */
	ck_assert_int_eq(plan.load.least, 55);
	ck_assert_int_eq(plan.load.most, 65);
	ck_assert_int_eq(plan_begins(&plan, 1, 1).least, 75);
	ck_assert_int_eq(plan_begins(&plan, 1, 1).most, 95);
	ck_assert_int_eq(plan_out(&plan, 2).least, 165);
	ck_assert_int_eq(plan_out(&plan, 2).most, 195);
	ck_assert_int_eq(plan.seal_test.least, 12); /* p. 1-25 */
	ck_assert_int_eq(plan.seal_test.most, 24);
	ck_assert(plan.complete);
	for (size_t i = 0; i < plan.steps_n; i++)
		ck_assert_ptr_nonnull(plan.steps[i].minutes.from);
}
END_TEST

/* Carrots, raw, quarts, 10 psi at 0-1,000 ft: 30 min (guide 4, p. 4-10). */
START_TEST(pressure_timeline)
{
	struct request rq = request_for("carrots", CANNER_WEIGHTED_GAUGE, PACK_RAW, JAR_QUART);
	struct plan plan = plan_for(rq, (struct plan_wish){.jars = 7, .start = 0, .until = 1440});
	ck_assert_int_eq(plan.jars_per_load, 7); /* usual load 7 quarts, p. 1-17 */
	ck_assert_int_eq(plan.loads, 1);
	ck_assert_uint_eq(plan.steps_n, 5);
	assert_step(&plan, 0, STAGE_HEAT, 12, 15);         /* p. 1-17 */
	assert_step(&plan, 1, STAGE_VENT, 10, 10);         /* p. 1-17, 1-20 */
	assert_step(&plan, 2, STAGE_PRESSURIZE, 3, 5);     /* p. 1-22, step 3 */
	assert_step(&plan, 3, STAGE_PROCESS, 30, 30);      /* p. 4-10 */
	assert_step(&plan, 4, STAGE_DEPRESSURIZE, 20, 60); /* p. 1-17 */
	ck_assert_int_eq(plan.wait.least, 10);             /* p. 1-22, step 7 */
	/* All but the process, with 8 to 10 minutes of process, is 55 to 100 on p. 1-17; that
	   sum takes 5 minutes for the pressure to rise, step 3 on p. 1-22 says 3 to 5. */
	ck_assert_int_eq(plan.load.least - 30 + 8, 55 - 2);
	ck_assert_int_eq(plan.load.most - 30 + 10, 100);
}
END_TEST

START_TEST(steam_heating_is_not_published)
{
	struct request rq = request_for("pickled-beets", CANNER_STEAM, PACK_HOT, JAR_PINT);
	struct plan plan = plan_for(rq, (struct plan_wish){.jars = 8, .until = 1440});
	ck_assert(!plan.complete);
	ck_assert(!plan.steps[0].published);
	ck_assert_int_eq(plan.load.least, 30);
	ck_assert_int_eq(plan.load.most, 30);
}
END_TEST

START_TEST(late_by_the_longest_case)
{
	struct request rq = request_for("pickled-beets", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT);
	struct plan_wish wish = {.jars = 16, .start = 600, .until = 600 + 130};
	struct plan plan = plan_for(rq, wish);
	ck_assert_int_eq(plan.all.most, 130);
	ck_assert(!plan.late);
	wish.until--;
	plan = plan_for(rq, wish);
	ck_assert(plan.late);
	ck_assert_int_eq(plan.last_start, wish.until - 65);
}
END_TEST

START_TEST(a_stated_load_counts)
{
	struct request rq =
	    request_for("pickled-beets", CANNER_BOILING_WATER, PACK_HOT, JAR_HALF_PINT);
	struct plan plan =
	    plan_for(rq, (struct plan_wish){.jars = 24, .jars_per_load = 12, .until = 1440});
	ck_assert_int_eq(plan.loads, 2);
	ck_assert_int_eq(plan.load_origin, LOAD_STATED);
	plan = plan_for(rq, (struct plan_wish){.jars = 24, .until = 1440});
	ck_assert_int_eq(plan.load_origin, LOAD_OF_LARGER_JAR);
	ck_assert_int_eq(plan.jars_per_load, 8);
}
END_TEST

START_TEST(what_is_not_tested_has_no_plan)
{
	const struct reference *ref = reference_edition();
	struct request rq = request_for("carrots", CANNER_BOILING_WATER, PACK_RAW, JAR_PINT);
	struct decision decision;
	struct plan plan;
	struct plan_wish wish = {.jars = 7, .until = 1440};
	struct error err = {.kind = ERROR_NONE};
	decide(ref, &rq, &decision);
	ck_assert_int_ne(decision.verdict, VERDICT_TESTED);
	ck_assert(!plan_make(ref, &decision, &rq.jar, false, &wish, &plan, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
}
END_TEST

START_TEST(wishes_out_of_range_are_refused)
{
	static const struct plan_wish wishes[] = {
	    {.jars = 0, .until = 1440},
	    {.jars = PLAN_JARS_MAX + 1, .until = 1440},
	    {.jars = 7, .start = 1440, .until = 1440},
	    {.jars = 7, .start = -1, .until = 1440},
	    {.jars = 7, .until = 1441},
	    {.jars = 7, .jars_per_load = -1, .until = 1440},
	};
	const struct reference *ref = reference_edition();
	struct request rq = request_for("pickled-beets", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT);
	struct decision decision;
	decide(ref, &rq, &decision);
	for (size_t i = 0; i < sizeof wishes / sizeof *wishes; i++) {
		struct plan plan;
		struct error err = {.kind = ERROR_NONE};
		ck_assert(!plan_make(ref, &decision, &rq.jar, false, &wishes[i], &plan, &err));
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
}
END_TEST

/* Carrots: 17-1/2 lb for 7 quarts, 11 lb for 9 pints (guide 4, p. 4-10). */
START_TEST(jars_from_pounds)
{
	const struct reference *ref = reference_edition();
	const struct food *carrots = reference_food(ref, "carrots");
	struct jar_choice quart = {.stated = true, .jar = JAR_QUART};
	struct jar_choice pint = {.stated = true, .jar = JAR_PINT};
	struct yield yield;
	ck_assert_int_eq(carrots->lb_per_7qt_milli, 17500);
	ck_assert_int_eq(carrots->lb_per_9pt_milli, 11000);
	ck_assert(plan_yield(ref, carrots, &quart, (struct rational){35, 2}, &yield));
	ck_assert_int_eq(yield.jars, 7);
	ck_assert_int_eq(yield.left_lb.num, 0);
	ck_assert(plan_yield(ref, carrots, &quart, (struct rational){20, 1}, &yield));
	ck_assert_int_eq(yield.jars, 8); /* 2.5 lb a quart */
	ck_assert(plan_yield(ref, carrots, &pint, (struct rational){109, 10}, &yield));
	ck_assert_int_eq(yield.jars, 8); /* 1.222 lb a pint: a whisker short of 9 */
	ck_assert(plan_yield(ref, carrots, &pint, (struct rational){11, 1}, &yield));
	ck_assert_int_eq(yield.jars, 9);
	const struct food *beets = reference_food(ref, "pickled-beets");
	ck_assert(!plan_yield(ref, beets, &pint, (struct rational){20, 1}, &yield));
}
END_TEST

START_TEST(spans_are_read_whole)
{
	struct published_rule rule = {.value = "20-30"};
	struct span span;
	ck_assert(published_span(&rule, &span));
	ck_assert_int_eq(span.least, 20);
	ck_assert_int_eq(span.most, 30);
	static const char *const bad[] = {"",      "yes", "5-",   "-5",
					  "30-20", "0.5", "5/10", "99999999999"};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		rule.value = bad[i];
		ck_assert_msg(!published_span(&rule, &span), "%s", bad[i]);
	}
}
END_TEST

static Suite *plan_suite(void)
{
	Suite *suite = suite_create("plan");
	TCase *tests = tcase_create("plan");
	tcase_add_test(tests, boiling_water_timeline);
	tcase_add_test(tests, pressure_timeline);
	tcase_add_test(tests, steam_heating_is_not_published);
	tcase_add_test(tests, late_by_the_longest_case);
	tcase_add_test(tests, a_stated_load_counts);
	tcase_add_test(tests, what_is_not_tested_has_no_plan);
	tcase_add_test(tests, wishes_out_of_range_are_refused);
	tcase_add_test(tests, jars_from_pounds);
	tcase_add_test(tests, spans_are_read_whole);
	suite_add_tcase(suite, tests);
	return suite;
}

SUITE_MAIN(plan_suite())
