#include <stdint.h>
#include <string.h>

#include "jarwright/spelling.h"
#include "suites.h"

START_TEST(distances)
{
	/* Worked by hand from the definition in the header. */
	static const struct {
		const char *a, *b;
		size_t distance;
	} cases[] = {
	    {"", "", 0},
	    {"", "beets", 5},
	    {"beets", "beets", 0},
	    {"beats", "beets", 1},
	    {"beet", "beets", 1},
	    {"bbeets", "beets", 1},
	    {"ebets", "beets", 1},
	    {"beest", "beets", 1},
	    {"Beets", "beets", 1},
	    {"kitten", "sitting", 3},
	    {"abcd", "badc", 2},
	    /* No place is edited twice: alignment gives 3 where free swaps would give 2. */
	    {"ca", "abc", 3}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		ck_assert_uint_eq(spelling_distance(cases[i].a, cases[i].b), cases[i].distance);
		ck_assert_uint_eq(spelling_distance(cases[i].b, cases[i].a), cases[i].distance);
	}
}
END_TEST

START_TEST(length_is_bounded)
{
	char longest[SPELLING_MAX + 1] = "";
	char too_long[SPELLING_MAX + 2] = "";
	memset(longest, 'a', SPELLING_MAX);
	memset(too_long, 'a', SPELLING_MAX + 1);
	ck_assert_uint_eq(spelling_distance(longest, ""), SPELLING_MAX);
	ck_assert_uint_eq(spelling_distance(longest, longest), 0);
	ck_assert_uint_eq(spelling_distance(longest, too_long), SIZE_MAX);
	ck_assert_uint_eq(spelling_distance(too_long, "a"), SIZE_MAX);
}
END_TEST

Suite *spelling_suite(void)
{
	Suite *suite = suite_create("spelling");
	TCase *tests = tcase_create("spelling");
	tcase_add_test(tests, distances);
	tcase_add_test(tests, length_is_bounded);
	suite_add_tcase(suite, tests);
	return suite;
}
