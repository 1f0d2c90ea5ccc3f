/* What may follow what, the published times it rests on, and jars as people name them. */
#include <string.h>

#include "jarwright/household_jars.h"
#include "jarwright/keeping.h"
#include "suites.h"

static struct keeping_limit find(enum keeping_case which, const char *food)
{
	struct keeping_limit limit;
	ck_assert(
	    keeping_find(reference_edition(), reference_tables_edition(), which, food, &limit));
	ck_assert_ptr_nonnull(limit.from);
	return limit;
}

static void limit_is(enum keeping_case which, const char *food, const char *words)
{
	char buffer[KEEPING_WORDS_SIZE];
	const struct keeping_limit limit = find(which, food);
	ck_assert_str_eq(keeping_words(&limit, buffer), words);
}

START_TEST(limits_are_the_published_ones_the_shorter_where_they_differ)
{
	/* USDA FSIS shelf-stable table: 12 months; USDA AIB 539 (2015) guide 1 p. 1-12: 1 year. */
	limit_is(KEEPING_SHELF, "pickled-beets", "12 months");
	limit_is(KEEPING_SHELF, NULL, "12 months");
	/* AIB 539 guide 2 p. 2-17: 4 to 6 months; the lower end counts. */
	ck_assert_int_eq(find(KEEPING_SHELF, "mango-sauce").least, 4);
	/* USDA FSIS shelf-stable table. */
	limit_is(KEEPING_OPENED, "pickled-beets", "3-4 days");
	limit_is(KEEPING_BOIL, NULL, "20 minutes");
	/* AIB 539 guide 1 p. 1-25 and 1-26. */
	limit_is(KEEPING_COOLING, NULL, "12-24 hours");
	limit_is(KEEPING_FAILED_HOURS, NULL, "24 hours");
	/* University of Nebraska Extension: wrongly processed, within 2 hours. */
	limit_is(KEEPING_WRONG_HOURS, NULL, "2 hours");
	/* Kansas State Extension: 1 week, where others say "several days". */
	limit_is(KEEPING_LID_FAILED, NULL, "1 week");
	/* NCHFP, So Easy to Preserve, 6th ed.: fruits and vegetables 8-12, fish 3-6 months. */
	limit_is(KEEPING_FROZEN, "pickled-beets", "8-12 months");
	ck_assert_int_eq(find(KEEPING_FROZEN, NULL).least, 3);
}
END_TEST

START_TEST(a_limit_ends_on_a_day)
{
	char text[DATE_SIZE];
	struct keeping_limit limit = find(KEEPING_SHELF, NULL);
	const struct date leap = {2028, 2, 29};
	ck_assert_str_eq(date_text(keeping_until(&limit, leap), text), "2029-02-28");
	limit = find(KEEPING_OPENED, NULL);
	ck_assert_str_eq(date_text(keeping_until(&limit, leap), text), "2028-03-03");
}
END_TEST

/* A jar processed as decided, in time. */
static enum jar_advice advise(enum jar_state state, enum jar_state to, bool processed, bool overdue,
			      bool late)
{
	const struct jar_standing jar = {.state = state,
					 .processed = processed,
					 .shelf_stable = processed && !late,
					 .late = late,
					 .overdue = overdue};
	return jar_advise(&jar, to);
}

START_TEST(an_unsealed_jar_is_chilled_in_time_or_discarded)
{
	/* AIB 539 guide 1 p. 1-26: within 24 hours; North Carolina State: older, discard. */
	ck_assert_int_eq(advise(JAR_UNSEALED, JAR_REFRIGERATED, true, false, false), JAR_FINE);
	ck_assert_int_eq(advise(JAR_UNSEALED, JAR_FROZEN, true, false, false), JAR_FINE);
	ck_assert_int_eq(advise(JAR_UNSEALED, JAR_OPENED, true, false, false), JAR_FINE);
	for (enum jar_state to = JAR_REFRIGERATED; to <= JAR_GIVEN; to++)
		ck_assert_int_eq(advise(JAR_UNSEALED, to, true, true, false), JAR_STOOD_TOO_LONG);
	ck_assert_int_eq(advise(JAR_UNSEALED, JAR_DISCARDED, true, true, false), JAR_FINE);
	ck_assert_int_eq(advise(JAR_UNSEALED, JAR_SHELF, true, false, false), JAR_SENSELESS);
	ck_assert_int_eq(advise(JAR_UNSEALED, JAR_GIVEN, true, false, false), JAR_NOT_STABLE);
}
END_TEST

START_TEST(a_jar_that_stood_too_long_is_never_eaten_from_the_cold)
{
	ck_assert_int_eq(advise(JAR_REFRIGERATED, JAR_FROZEN, true, true, true), JAR_FINE);
	for (enum jar_state to = JAR_OPENED; to <= JAR_GIVEN; to++)
		ck_assert_int_eq(advise(JAR_REFRIGERATED, to, true, true, true),
				 JAR_STOOD_TOO_LONG);
	ck_assert_int_eq(advise(JAR_OPENED, JAR_EATEN, true, true, true), JAR_STOOD_TOO_LONG);
	ck_assert_int_eq(advise(JAR_REFRIGERATED, JAR_EATEN, true, true, false), JAR_FINE);
}
END_TEST

START_TEST(what_was_not_processed_as_decided_is_for_the_cold)
{
	/* A sealed jar of an under-processed load looks like any other: that is the danger. */
	ck_assert_int_eq(advise(JAR_SEALED, JAR_SHELF, false, false, false), JAR_NOT_STABLE);
	ck_assert_int_eq(advise(JAR_SEALED, JAR_GIVEN, false, false, false), JAR_NOT_STABLE);
	ck_assert_int_eq(advise(JAR_SEALED, JAR_REFRIGERATED, false, false, false), JAR_FINE);
	for (enum jar_state to = JAR_REFRIGERATED; to <= JAR_GIVEN; to++)
		ck_assert_int_eq(advise(JAR_SEALED, to, false, true, false), JAR_STOOD_TOO_LONG);
	/* On the shelf when something was learned. */
	ck_assert_int_eq(advise(JAR_SHELF, JAR_OPENED, false, true, false), JAR_STOOD_TOO_LONG);
	ck_assert(!jar_state_possible(JAR_SEALED, JAR_SHELF));
}
END_TEST

START_TEST(a_seal_is_tested_before_a_jar_is_used)
{
	ck_assert_int_eq(advise(JAR_FILLED, JAR_SHELF, true, false, false), JAR_TEST_SEAL);
	ck_assert_int_eq(advise(JAR_FILLED, JAR_OPENED, true, false, false), JAR_TEST_SEAL);
	ck_assert_int_eq(advise(JAR_FILLED, JAR_REFRIGERATED, true, false, false), JAR_FINE);
	ck_assert_int_eq(advise(JAR_FILLED, JAR_REFRIGERATED, true, true, false), JAR_TEST_SEAL);
	ck_assert_int_eq(advise(JAR_SEALED, JAR_SHELF, true, true, false), JAR_FINE);
	ck_assert_int_eq(advise(JAR_SHELF, JAR_OPENED, true, true, false), JAR_FINE);
}
END_TEST

START_TEST(what_is_eaten_or_discarded_stays_so)
{
	for (enum jar_state to = JAR_FILLED; to < JAR_STATE_COUNT; to++) {
		ck_assert_int_eq(advise(JAR_EATEN, to, true, false, false), JAR_SENSELESS);
		ck_assert_int_eq(advise(JAR_DISCARDED, to, true, false, false), JAR_SENSELESS);
		ck_assert(!jar_state_possible(JAR_EATEN, to));
		ck_assert(!jar_state_possible(JAR_DISCARDED, to));
	}
	ck_assert_int_eq(advise(JAR_REFRIGERATED, JAR_SHELF, true, false, false), JAR_SENSELESS);
}
END_TEST

START_TEST(every_jar_can_be_discarded_and_none_comes_to_the_shelf_by_force)
{
	for (enum jar_state from = JAR_FILLED; from < JAR_EATEN; from++) {
		ck_assert_int_eq(advise(from, JAR_DISCARDED, false, true, true), JAR_FINE);
		ck_assert(!jar_state_possible(from, JAR_SEALED));
		if (from != JAR_SHELF && from != JAR_SEALED)
			ck_assert_int_ne(advise(from, JAR_SHELF, true, false, false), JAR_FINE);
		ck_assert_int_ne(advise(from, JAR_SHELF, false, false, false), JAR_FINE);
		ck_assert_int_ne(advise(from, JAR_SHELF, true, false, true), JAR_FINE);
	}
}
END_TEST

/* --- Jars as people name them --- */

static bool read(const char *const *words, size_t n, struct jar_picks *out)
{
	struct error err = {0};
	bool ok = jar_picks_read(words, n, out, &err);
	ck_assert_int_eq(ok, err.kind == ERROR_NONE);
	return ok;
}

static void reads(const char *words, int year, int number, int count, const char *set)
{
	struct jar_picks picks;
	char text[JAR_SET_SIZE];
	ck_assert_msg(read(&words, 1, &picks), "%s", words);
	ck_assert_uint_eq(picks.picks_n, 1);
	ck_assert_int_eq(picks.picks[0].year, year);
	ck_assert_int_eq(picks.picks[0].number, number);
	ck_assert_int_eq(picks.picks[0].count, count);
	ck_assert_str_eq(jar_set_text(&picks.picks[0].jars, text, sizeof text), set);
}

START_TEST(jars_are_read_as_they_are_typed)
{
	reads("26-041-07", 2026, 41, 0, "7");
	reads("26-041-01..12", 2026, 41, 0, "1-12");
	reads("26-041-1,3,5-7", 2026, 41, 0, "1,3,5-7");
	reads("26-041 1-6", 2026, 41, 0, "1-6");
	reads("2026-041-999", 2026, 41, 0, "999");
	reads("3 of 26-041", 2026, 41, 3, "");
	struct jar_picks picks;
	const char *const several[] = {"26-041",           "2-3",           "1", "of", "26-042",
				       "26-043-01@tablet", "26-044@tablet", "9"};
	ck_assert(read(several, 8, &picks));
	ck_assert_uint_eq(picks.picks_n, 4);
	ck_assert_str_eq(picks.picks[2].device, "tablet");
	ck_assert_str_eq(picks.picks[3].device, "tablet");
	ck_assert(jar_set_has(&picks.picks[3].jars, 9));
}
END_TEST

START_TEST(what_is_no_jar_is_refused)
{
	static const char *const wrong[] = {
	    "",      "26-041",    "26-041-",    "26-041-0",    "26-041-1000",   "26-041-7-3",
	    "3",     "3 of",      "3 of x",     "0 of 26-041", "26-041-07x",    "26-0-1",
	    "26",    "-1",        "26-041-1..", "26-041 x",    "3 of 26-041-7", "26-041-1,,2",
	    "26--1", "26-041-\t1"};
	for (size_t i = 1; i < sizeof wrong / sizeof *wrong; i++) {
		struct jar_picks picks;
		ck_assert_msg(!read(&wrong[i], 1, &picks), "'%s' was read", wrong[i]);
	}
}
END_TEST

Suite *states_suite(void)
{
	Suite *suite = suite_create("jar-states");
	TCase *tcase = tcase_create("states");
	tcase_add_test(tcase, limits_are_the_published_ones_the_shorter_where_they_differ);
	tcase_add_test(tcase, a_limit_ends_on_a_day);
	tcase_add_test(tcase, an_unsealed_jar_is_chilled_in_time_or_discarded);
	tcase_add_test(tcase, a_jar_that_stood_too_long_is_never_eaten_from_the_cold);
	tcase_add_test(tcase, what_was_not_processed_as_decided_is_for_the_cold);
	tcase_add_test(tcase, a_seal_is_tested_before_a_jar_is_used);
	tcase_add_test(tcase, what_is_eaten_or_discarded_stays_so);
	tcase_add_test(tcase, every_jar_can_be_discarded_and_none_comes_to_the_shelf_by_force);
	tcase_add_test(tcase, jars_are_read_as_they_are_typed);
	tcase_add_test(tcase, what_is_no_jar_is_refused);
	suite_add_tcase(suite, tcase);
	return suite;
}
