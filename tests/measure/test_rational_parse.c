#include <string.h>

#include "jarwright/measure.h"
#include "suites.h"

START_TEST(numbers_as_people_write_them)
{
	static const struct {
		const char *text;
		struct rational value;
	} cases[] = {{"12", {12, 1}},
		     {"-3", {-3, 1}},
		     {"0", {0, 1}},
		     {"-0", {0, 1}},
		     {"007", {7, 1}},
		     {"0.25", {1, 4}},
		     {".5", {1, 2}},
		     {"-.5", {-1, 2}},
		     {"2.50", {5, 2}},
		     {"1/2", {1, 2}},
		     {"-1/2", {-1, 2}},
		     {"3/2", {3, 2}},
		     {"1 1/2", {3, 2}},
		     {"1-1/2", {3, 2}},
		     {"-1 1/2", {-3, 2}},
		     {"1  3/4", {7, 4}},
		     {"1⁄2", {1, 2}}, /* U+2044, fraction slash */
		     {"1 1⁄2", {3, 2}},
		     {"½", {1, 2}},
		     {"3½", {7, 2}},
		     {"-3½", {-7, 2}},
		     {"3 ½", {7, 2}},
		     {"1\u00A0½", {3, 2}}, /* no-break space */
		     {"¼", {1, 4}},
		     {"¾", {3, 4}},
		     {"⅓", {1, 3}},
		     {"⅔", {2, 3}},
		     {"⅕", {1, 5}},
		     {"⅖", {2, 5}},
		     {"⅗", {3, 5}},
		     {"⅘", {4, 5}},
		     {"⅙", {1, 6}},
		     {"⅚", {5, 6}},
		     {"⅐", {1, 7}},
		     {"⅛", {1, 8}},
		     {"⅜", {3, 8}},
		     {"⅝", {5, 8}},
		     {"⅞", {7, 8}},
		     {"⅑", {1, 9}},
		     {"⅒", {1, 10}},
		     {" 12 ", {12, 1}},
		     {"9223372036854775807", {INT64_MAX, 1}},
		     {"-9223372036854775807", {-INT64_MAX, 1}},
		     {"0.000000000000000001", {1, 1000000000000000000}}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rational got = {7, 3};
		struct error err = {ERROR_NONE, ""};
		ck_assert_msg(rational_parse(cases[i].text, &got, &err), "%s: %s", cases[i].text,
			      err.text);
		ck_assert_msg(got.num == cases[i].value.num && got.den == cases[i].value.den,
			      "%s: got %lld/%lld", cases[i].text, (long long)got.num,
			      (long long)got.den);
	}
}
END_TEST

START_TEST(refusals_say_why)
{
	static const struct {
		const char *text, *why;
	} cases[] = {{"", "no number given"},
		     {"  ", "no number given"},
		     {"nan", "is not a number"},
		     {"inf", "is not a number"},
		     {"-", "is not a number"},
		     {"+5", "is not a number"},
		     {"--5", "is not a number"},
		     {"- 5", "is not a number"},
		     {".", "is not a number"},
		     {"x12", "is not a number"},
		     {"１２", "is not a number"}, /* full-width digits */
		     {"1,5", "without the comma"},
		     {"2,900", "without the comma"},
		     {",5", "without the comma"},
		     {"1 1/2,", "without the comma"},
		     {"1e3", "has an exponent"},
		     {"1E+3", "has an exponent"},
		     {"1.5e-3", "has an exponent"},
		     {"1/0", "divides by zero"},
		     {"1 1/0", "divides by zero"},
		     {"0/0", "divides by zero"},
		     {"12.", "ends in a point"},
		     {"1 3/2", "fraction of 1 or more"},
		     {"1 2/2", "fraction of 1 or more"},
		     {"1 2", "more than one number"},
		     {"1 2.5", "more than one number"},
		     {"1/2/3", "more than one number"},
		     {"1/", "more than one number"},
		     {"½½", "more than one number"},
		     {"0.5½", "more than one number"},
		     {"1.2.3", "more than one number"},
		     {"5-6", "more than one number"},
		     {"12abc", "goes on after the number"},
		     {"0x10", "goes on after the number"},
		     {"12%", "goes on after the number"},
		     {"9223372036854775808", "more digits"},
		     {"0.0000000000000000001", "more digits"},
		     {"1/9223372036854775808", "more digits"},
		     {"1 99999999999999999999/2", "more digits"},
		     {"9223372036854775807½", "more digits"}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rational got = {7, 3};
		struct error err = {ERROR_NONE, ""};
		ck_assert_msg(!rational_parse(cases[i].text, &got, &err), "%s", cases[i].text);
		ck_assert_int_eq(err.kind, ERROR_USAGE);
		ck_assert_msg(strstr(err.text, cases[i].why) != NULL, "%s: %s", cases[i].text,
			      err.text);
		ck_assert_ptr_nonnull(strstr(err.text, "; ")); /* and what to do */
		ck_assert(got.num == 7 && got.den == 3);
	}
}
END_TEST

Suite *rational_parse_suite(void)
{
	Suite *suite = suite_create("rational_parse");
	TCase *tests = tcase_create("rational_parse");
	tcase_add_test(tests, numbers_as_people_write_them);
	tcase_add_test(tests, refusals_say_why);
	suite_add_tcase(suite, tests);
	return suite;
}
