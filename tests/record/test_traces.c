/*
 * Every outcome by invented traces. The rules they rest on: boiling or pressure lost, the whole
 * time starts again (USDA AIB 539, 2015, guide 1, p. 1-18, 1-22); 10 minutes of venting
 * (p. 1-20); the gap of 60 s is the project's own.
 */
#include <math.h>
#include <string.h>

#include "jarwright/physics.h"
#include "suites.h"
#include "trace.h"

#define LEGS_MAX    14
#define BIT(reason) (1U << (reason))

/* clang-format off */
/* Legs of an open canner: minutes to the boil, a boil of s seconds, cooling. */
#define HEAT       {LEG_LINE, 600, 60, 211, 0, 0}
#define BOIL(s)    {LEG_LINE, s, 212.4, 212.6, 0, 0}
#define FLAT(s)    {LEG_LINE, s, 212.4, 212.4, 0, 0}
#define LOW(s)     {LEG_LINE, s, 205, 205, 0, 0}
#define COOL       {LEG_LINE, 600, 211, 120, 0, 0}
#define SKIP(s)    {LEG_SKIP, s, 0, 0, 0, 0}
#define NOTHING(s) {LEG_NONE, s, 0, 0, 0, 0}
/* Of a pressure canner: to the boil, venting, to the pressure, the process, cooling. */
#define P_HEAT    {LEG_LINE, 900, 60, 211, 0, 0}
#define P_VENT(s) {LEG_LINE, s, 212.2, 212.4, 0.1, 0.2}
#define P_RISE    {LEG_LINE, 200, 212.4, 242, 0.2, 10.99}
#define P_HOLD(s) {LEG_LINE, s, 243, 243.5, 11.2, 11.4}
#define P_LOW(s)  {LEG_LINE, s, 239, 239, 10, 10}
#define P_COOL    {LEG_LINE, 900, 240, 180, 10, 0}

enum judged { OPEN, BOTH, ONLY_TEMPERATURE, ONLY_PRESSURE };
#define UNSTATED (-1)

static const struct trace_case {
	const char *name;
	enum judged judged;
	double vented; /* minutes; UNSTATED */
	int step_s;
	enum record_outcome outcome;
	unsigned reasons, dips_n;
	struct leg legs[LEGS_MAX];
} cases[] = {
    {"clean", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(1200), COOL}},
    {"15:00 to the second", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(901), COOL}},
    {"lost at 14:59 of 15:00", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_TOO_SHORT), 1,
     {HEAT, BOIL(900), COOL}},
    {"dip at 14:59, then the whole time", OPEN, UNSTATED, 1, RECORD_RESTARTED, 0, 1,
     {HEAT, BOIL(900), LOW(1), BOIL(901), COOL}},
    {"dip at 14:59, then 14:59", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_TOO_SHORT), 2,
     {HEAT, BOIL(900), LOW(1), BOIL(900), COOL}},
    {"dip at the start", OPEN, UNSTATED, 1, RECORD_RESTARTED, 0, 1,
     {HEAT, BOIL(2), LOW(5), BOIL(1000), COOL}},
    {"two dips, then the whole time", OPEN, UNSTATED, 1, RECORD_RESTARTED, 0, 2,
     {HEAT, BOIL(300), LOW(20), BOIL(500), LOW(1), BOIL(1000), COOL}},
    {"two dips and never the whole time", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_TOO_SHORT), 3,
     {HEAT, BOIL(600), LOW(20), BOIL(600), LOW(1), BOIL(600), COOL}},
    {"noise across the border", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_TOO_SHORT), 600,
     {HEAT, {LEG_TURN, 1200, 212.1, 211.8, 0, 0}, COOL}},
    {"noise on the way up", OPEN, UNSTATED, 1, RECORD_RESTARTED, 0, 10,
     {HEAT, {LEG_TURN, 20, 212.1, 211.8, 0, 0}, BOIL(1000), COOL}},
    {"noise above the border", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, {LEG_TURN, 1200, 212.1, 212.5, 0, 0}, COOL}},
    {"a hair below", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_NEVER_REACHED), 0,
     {HEAT, {LEG_LINE, 1200, 211.95, 211.95, 0, 0}, COOL}},
    {"never near", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_NEVER_REACHED), 0,
     {HEAT, LOW(1200), COOL}},
    {"gap of 60 s", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(400), SKIP(59), BOIL(500), COOL}},
    {"gap of 61 s", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_GAPS), 2,
     {HEAT, BOIL(400), SKIP(60), BOIL(500), COOL}},
    {"gap, then the whole time", OPEN, UNSTATED, 1, RECORD_RESTARTED, 0, 1,
     {HEAT, BOIL(400), SKIP(300), BOIL(901), COOL}},
    {"a gap does not mend a short process", OPEN, UNSTATED, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_TOO_SHORT), 2,
     {HEAT, BOIL(200), SKIP(200), BOIL(200), COOL}},
    {"one reading a minute", OPEN, UNSTATED, 60, RECORD_HELD, 0, 0,
     {HEAT, FLAT(1200), COOL}},
    {"one reading in two minutes", OPEN, UNSTATED, 120, RECORD_UNCLEAR, BIT(RECORD_COARSE), 10,
     {HEAT, FLAT(1200), COOL}},
    {"clock set back an hour", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_BACKWARDS), 0,
     {HEAT, BOIL(500), SKIP(-3600), BOIL(1000), COOL}},
    {"clock set back after the end", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_BACKWARDS), 0,
     {HEAT, BOIL(1000), SKIP(-3600), COOL}},
    {"one row out of order", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_BACKWARDS), 0,
     {HEAT, BOIL(500), SKIP(-2), BOIL(1000), COOL}},
    {"one time twice", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(500), SKIP(-1), BOIL(1000), COOL}},
    {"sensor stuck after it boiled", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_STUCK), 0,
     {HEAT, BOIL(100), FLAT(2000)}},
    {"level, but seen to cool", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, FLAT(1200), COOL}},
    {"one value from end to end", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_STUCK), 0,
     {FLAT(2000)}},
    {"ends at 12 of 15 minutes", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_ENDS_EARLY), 0,
     {HEAT, BOIL(720)}},
    {"begins at the boil", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {BOIL(901), COOL}},
    {"slow heating", OPEN, UNSTATED, 30, RECORD_HELD, 0, 0,
     {{LEG_LINE, 14400, 40, 211, 0, 0}, BOIL(1200), COOL}},
    {"no reading for 10 s", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(400), NOTHING(10), BOIL(600), COOL}},
    {"no reading for 70 s", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_GAPS), 2,
     {HEAT, BOIL(400), NOTHING(70), BOIL(500), COOL}},
    {"a fault far above counts as nothing", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(400), {LEG_LINE, 1, 9999, 9999, 0, 0}, BOIL(600), COOL}},
    {"a fault far above is no process", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_NO_READING), 0,
     {{LEG_LINE, 2000, 9999, 9999, 0, 0}}},
    {"hotter than an open canner can be", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_GAPS), 2,
     {HEAT, BOIL(10), {LEG_LINE, 1200, 230, 240, 0, 0}, BOIL(10), COOL}},
    {"a fault far below is a dip", OPEN, UNSTATED, 1, RECORD_RESTARTED, 0, 1,
     {HEAT, BOIL(400), {LEG_LINE, 1, -196, -196, 0, 0}, BOIL(1000), COOL}},
    {"a second load", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(1000), COOL, HEAT, BOIL(300), COOL}},
    {"no rows", OPEN, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_NO_READING), 0,
     {{0}}},
    {"pressure: clean", BOTH, 10, 1, RECORD_HELD, 0, 0,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: slow vent", BOTH, 40, 1, RECORD_HELD, 0, 0,
     {P_HEAT, P_VENT(2400), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: short vent, whatever was said", BOTH, 10, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_VENT_SHORT), 0,
     {P_HEAT, P_VENT(360), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: short vent by the cook's word", BOTH, 8, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_VENT_SHORT), 0,
     {P_HEAT, P_VENT(900), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: vent not said", BOTH, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_VENT_UNSTATED), 0,
     {P_HEAT, P_VENT(900), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: recorder started too late", BOTH, 10, 1, RECORD_UNCLEAR, BIT(RECORD_VENT_NOT_SHOWN), 0,
     {P_VENT(300), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: gap while venting", BOTH, 10, 1, RECORD_UNCLEAR, BIT(RECORD_VENT_NOT_SHOWN), 0,
     {P_HEAT, P_VENT(300), SKIP(90), P_VENT(300), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: fell below boiling while venting", BOTH, 10, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_VENT_SHORT), 0,
     {P_HEAT, P_VENT(600), {LEG_LINE, 10, 210, 210, 0, 0}, P_VENT(300), P_RISE, P_HOLD(1300),
     P_COOL}},
    {"pressure: dip and the whole time again", BOTH, 10, 1, RECORD_RESTARTED, 0, 1,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(600), P_LOW(5), P_HOLD(1300), P_COOL}},
    {"pressure: the gauge alone dips", BOTH, 10, 1, RECORD_RESTARTED, 0, 1,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(600), {LEG_LINE, 5, 243, 243, 10.9, 10.9},
     P_HOLD(1300), P_COOL}},
    {"pressure: air in the canner", BOTH, 10, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_NEVER_REACHED), 0,
     {P_HEAT, P_VENT(660), P_RISE, {LEG_LINE, 1300, 238, 239, 11.2, 11.4}, P_COOL}},
    {"pressure: half a pound low", BOTH, 10, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_NEVER_REACHED), 0,
     {P_HEAT, P_VENT(660), P_RISE, {LEG_LINE, 1300, 243, 243.5, 10.5, 10.9}, P_COOL}},
    {"pressure: by the gauge alone", ONLY_PRESSURE, 10, 1, RECORD_HELD, 0, 0,
     {P_HEAT, P_VENT(60), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: by the gauge alone, vent not said", ONLY_PRESSURE, UNSTATED, 1, RECORD_UNCLEAR, BIT(RECORD_VENT_UNSTATED), 0,
     {P_HEAT, P_VENT(900), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: by the thermometer alone", ONLY_TEMPERATURE, 10, 1, RECORD_HELD, 0, 0,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: cold between two tries", BOTH, 10, 1, RECORD_UNCLEAR, BIT(RECORD_COOLED), 1,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(300), P_COOL, P_VENT(660), P_RISE, P_HOLD(1300),
     P_COOL}},
    {"pressure: gauge at nothing between two tries", ONLY_PRESSURE, 10, 1, RECORD_UNCLEAR, BIT(RECORD_COOLED), 1,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(300), P_COOL, P_HEAT, P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: gauge stuck", BOTH, 10, 1, RECORD_UNCLEAR, BIT(RECORD_STUCK), 0,
     {P_HEAT, P_VENT(660), P_RISE, {LEG_LINE, 3000, 243, 244, 11.5, 11.5}}},
    {"pressure: short vent and short process", BOTH, 10, 1, RECORD_UNDER_PROCESSED, BIT(RECORD_VENT_SHORT) | BIT(RECORD_TOO_SHORT), 1,
     {P_HEAT, P_VENT(60), P_RISE, P_HOLD(600), P_COOL}},
    {"pressure: ends early", BOTH, 10, 1, RECORD_UNCLEAR, BIT(RECORD_ENDS_EARLY), 0,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(600)}},
    {"pressure: thermometer silent while venting", BOTH, 10, 1, RECORD_UNCLEAR,
     BIT(RECORD_VENT_NOT_SHOWN), 0,
     {P_HEAT, P_VENT(300), {LEG_LINE, 5, NAN, NAN, 0.1, 0.1}, P_VENT(300), P_RISE, P_HOLD(1300),
     P_COOL}},
    {"pressure: vented, gone cold, vented too short", BOTH, 10, 1, RECORD_UNDER_PROCESSED,
     BIT(RECORD_VENT_SHORT) | BIT(RECORD_COOLED), 1,
     {P_HEAT, P_VENT(660), P_RISE, P_HOLD(300), P_COOL, P_VENT(60), P_RISE, P_HOLD(1300), P_COOL}},
    {"pressure: surely short vent outweighs a gap", BOTH, 10, 1, RECORD_UNDER_PROCESSED,
     BIT(RECORD_VENT_SHORT) | BIT(RECORD_GAPS), 2,
     {P_HEAT, P_VENT(60), P_RISE, P_HOLD(700), SKIP(90), P_HOLD(700), P_COOL}},
    {"a moment below after the end", OPEN, UNSTATED, 1, RECORD_HELD, 0, 0,
     {HEAT, BOIL(1000), LOW(5), BOIL(100), COOL}},
    {"readings too far apart, and too short anyway", OPEN, UNSTATED, 120, RECORD_UNDER_PROCESSED,
     BIT(RECORD_TOO_SHORT), 4,
     {HEAT, FLAT(480), COOL}},
};
/* clang-format on */
#define CASES (sizeof cases / sizeof *cases)

static struct record_need need_of(const struct trace_case *c)
{
	struct record_need need = c->judged == OPEN ? open_need(15) : closed_need(20);
	if (c->judged == ONLY_TEMPERATURE)
		record_need_without(&need, RECORD_PRESSURE);
	if (c->judged == ONLY_PRESSURE)
		record_need_without(&need, RECORD_TEMPERATURE);
	need.vent_stated = c->vented != UNSTATED;
	need.vented_minutes = c->vented;
	return need;
}

START_TEST(outcome)
{
	const struct trace_case *c = &cases[_i];
	struct record_need need = need_of(c);
	struct record_judgement got;
	unsigned reasons = 0;
	judge_legs(&need, c->legs, c->step_s, &got);
	for (int r = 0; r < RECORD_REASONS; r++)
		reasons |= got.reasons[r] ? BIT(r) : 0;
	ck_assert_msg(got.outcome == c->outcome, "%s: %s, not %s", c->name,
		      record_outcome_word(got.outcome), record_outcome_word(c->outcome));
	ck_assert_msg(reasons == c->reasons, "%s: reasons %x, not %x", c->name, reasons,
		      c->reasons);
	ck_assert_msg(got.dips_n == c->dips_n, "%s: %zu dips, not %u", c->name, got.dips_n,
		      c->dips_n);
}
END_TEST

static struct record_judgement judge_named(const char *name)
{
	struct record_judgement got;
	for (size_t i = 0; i < CASES; i++) {
		if (strcmp(cases[i].name, name) != 0)
			continue;
		struct record_need need = need_of(&cases[i]);
		judge_legs(&need, cases[i].legs, cases[i].step_s, &got);
		return got;
	}
	ck_abort_msg("no trace '%s'", name);
	return got;
}

/* Rows are 1 s apart from 50,000 s; the boil begins after 600 s of heating. */
START_TEST(moments_and_depths)
{
	struct record_judgement got = judge_named("dip at 14:59, then the whole time");
	ck_assert_double_eq(got.from_s, 50000);
	ck_assert_double_eq(got.first_start_s, 50600);
	ck_assert_double_eq(got.dips[0].from_s, 51500);
	ck_assert_double_eq(got.dips[0].to_s, 51501);
	ck_assert(got.dips[0].ended);
	ck_assert_double_eq(got.dips[0].lowest[RECORD_TEMPERATURE], 205);
	ck_assert(isnan(got.dips[0].lowest[RECORD_PRESSURE]));
	ck_assert_double_eq(got.start_s, 51501);
	ck_assert_double_eq(got.until_s, 52401);
	ck_assert_double_eq(got.uninterrupted_s, 900);
	ck_assert_int_eq(got.dips[0].line, 2 + 600 + 900);
}
END_TEST

/* The dip of that trace is at 899 of 900 s and 1 s long: with it the whole takes 1,801 s. */
START_TEST(a_break_counts_only_as_she_told_of_it)
{
	static const struct {
		enum record_outcome shown;
		enum breaks_said breaks;
		bool stated;
		int32_t process_s;
		enum load_outcome leaves;
	} wants[] = {
	    {RECORD_RESTARTED, BREAKS_SOME, true, 1801, LOAD_PROCESSED},
	    {RECORD_RESTARTED, BREAKS_SOME, true, 1800, LOAD_UNCLEAR},
	    {RECORD_RESTARTED, BREAKS_SOME, false, 0, LOAD_UNCLEAR},
	    {RECORD_RESTARTED, BREAKS_NONE, true, 1801, LOAD_UNCLEAR},
	    {RECORD_RESTARTED, BREAKS_UNSAID, true, 1801, LOAD_UNCLEAR},
	    {RECORD_HELD, BREAKS_NONE, true, 900, LOAD_PROCESSED},
	    {RECORD_UNCLEAR, BREAKS_NONE, true, 900, LOAD_UNCLEAR},
	    {RECORD_UNDER_PROCESSED, BREAKS_SOME, true, 1801, LOAD_UNDER_PROCESSED},
	};
	struct record_judgement got = judge_named("dip at 14:59, then the whole time");
	const struct record_need need = open_need(15);
	ck_assert_int_eq(got.outcome, RECORD_RESTARTED);
	for (size_t i = 0; i < sizeof wants / sizeof *wants; i++) {
		const struct load_said said = {.breaks = wants[i].breaks,
					       .process_stated = wants[i].stated,
					       .process_s = wants[i].process_s};
		struct record_leaves leaves;
		got.outcome = wants[i].shown;
		record_for_load(&need, &got, &said, &leaves);
		ck_assert_msg(leaves.outcome == wants[i].leaves, "case %zu: %s", i,
			      load_outcome_word(leaves.outcome));
	}
}
END_TEST

START_TEST(the_second_short)
{
	struct record_judgement got = judge_named("lost at 14:59 of 15:00");
	ck_assert_double_eq(got.uninterrupted_s, 899);
	ck_assert(!got.dips[0].ended);
}
END_TEST

START_TEST(venting_is_found)
{
	struct record_judgement got = judge_named("pressure: clean");
	ck_assert(got.boiled);
	ck_assert_double_eq(got.boiling_s, 50900);
	ck_assert_double_eq(got.vent_room_s, 860);
}
END_TEST

START_TEST(faults_and_gaps_are_counted)
{
	ck_assert_int_eq(judge_named("no reading for 10 s").no_reading, 10);
	ck_assert_int_eq(judge_named("a fault far above counts as nothing").no_reading, 1);
	ck_assert_double_eq(judge_named("gap of 61 s").widest_gap_s, 61);
	ck_assert_int_eq(judge_named("clock set back an hour").backwards_line, 2 + 600 + 500);
}
END_TEST

START_TEST(a_second_load_is_pointed_out)
{
	ck_assert(judge_named("a second load").again);
	ck_assert(!judge_named("clean").again);
	ck_assert(!judge_named("a moment below after the end").again);
}
END_TEST

/* At the very requirement is held, the next number below is not. */
START_TEST(no_tolerance)
{
	struct record_need need = open_need(15);
	double least = need.least[RECORD_TEMPERATURE];
	ck_assert_double_eq(least, physics_boiling_point(0));
	struct record_judgement got;
	struct leg legs[] = {HEAT, {LEG_LINE, 1000, least, least, 0, 0}, COOL, {0}};
	judge_legs(&need, legs, 1, &got);
	ck_assert_int_eq(got.outcome, RECORD_HELD);
	legs[1].from_f = legs[1].to_f = nextafter(least, 0);
	judge_legs(&need, legs, 1, &got);
	ck_assert_int_eq(got.outcome, RECORD_UNDER_PROCESSED);
}
END_TEST

/* A steady 250 F for 20 minutes is an F0 of 20, and heat decides nothing. */
START_TEST(lethality_is_information)
{
	struct record_need need = closed_need(60);
	need.vent_stated = true;
	need.vented_minutes = 10;
	record_need_without(&need, RECORD_PRESSURE);
	struct leg legs[] = {{LEG_LINE, 1201, 250, 250, 0, 0}, {0}};
	struct record_judgement got;
	judge_legs(&need, legs, 1, &got);
	ck_assert_double_eq_tol(got.lethality_minutes, 20, 1e-6);
	ck_assert_int_ne(got.outcome, RECORD_HELD);
	/* A ramp: 15 minutes from 212 to 250 F, known in closed form. */
	struct leg ramp[] = {{LEG_LINE, 900, 212, 250, 0, 0}, {LEG_LINE, 1, 250, 250, 0, 0}, {0}};
	judge_legs(&need, ramp, 1, &got);
	double known = 15 * 18 / (log(10) * 38) * (1 - pow(10, -38 / 18.0));
	ck_assert_double_eq_tol(got.lethality_minutes, known, 1e-6 * known);
	/* What a gap hides is not counted. */
	struct leg gap[] = {
	    {LEG_LINE, 61, 250, 250, 0, 0}, SKIP(600), {LEG_LINE, 61, 250, 250, 0, 0}, {0}};
	judge_legs(&need, gap, 1, &got);
	ck_assert_double_eq_tol(got.lethality_minutes, 2, 1e-6);
}
END_TEST

Suite *traces_suite(void)
{
	Suite *suite = suite_create("traces");
	TCase *tests = tcase_create("traces");
	tcase_add_loop_test(tests, outcome, 0, (int)CASES);
	tcase_add_test(tests, moments_and_depths);
	tcase_add_test(tests, a_break_counts_only_as_she_told_of_it);
	tcase_add_test(tests, the_second_short);
	tcase_add_test(tests, venting_is_found);
	tcase_add_test(tests, faults_and_gaps_are_counted);
	tcase_add_test(tests, a_second_load_is_pointed_out);
	tcase_add_test(tests, no_tolerance);
	tcase_add_test(tests, lethality_is_information);
	suite_add_tcase(suite, tests);
	return suite;
}
