#include <stdbool.h>
#include <stdint.h>
#include <string.h>

#include "jarwright/text.h"
#include "suites.h"

/* Well-formed sequences are those of The Unicode Standard, table 3-7: both ends of each. */
START_TEST(well_formed_sequences)
{
	static const char *const sound[] = {"\x01",
					    "\x7F",
					    "\xC2\x80",
					    "\xDF\xBF",
					    "\xE0\xA0\x80",
					    "\xE0\xBF\xBF",
					    "\xE1\x80\x80",
					    "\xEC\xBF\xBF",
					    "\xED\x80\x80",
					    "\xED\x9F\xBF",
					    "\xEE\x80\x80",
					    "\xEF\xBF\xBF",
					    "\xF0\x90\x80\x80",
					    "\xF0\xBF\xBF\xBF",
					    "\xF1\x80\x80\x80",
					    "\xF4\x80\x80\x80",
					    "\xF4\x8F\xBF\xBF"};
	for (size_t i = 0; i < sizeof sound / sizeof *sound; i++)
		ck_assert_uint_eq(text_utf8_length(sound[i]), strlen(sound[i]));
}
END_TEST

START_TEST(ill_formed_sequences)
{
	static const char *const broken[] = {"",
					     "\x80",
					     "\xBF",
					     "\xC0\x80",
					     "\xC1\xBF",
					     "\xC2",
					     "\xC2x",
					     "\xE0\x9F\xBF",
					     "\xE1\x80",
					     "\xED\xA0\x80",
					     "\xE2\x82",
					     "\xF0\x8F\xBF\xBF",
					     "\xF1\x80\x80",
					     "\xF4\x90\x80\x80",
					     "\xF5\x80\x80\x80",
					     "\xFF"};
	for (size_t i = 0; i < sizeof broken / sizeof *broken; i++)
		ck_assert_uint_eq(text_utf8_length(broken[i]), 0);
}
END_TEST

START_TEST(partial_end_is_dropped)
{
	static const struct {
		const char *before, *after;
	} cases[] = {{"", ""},
		     {"ab", "ab"},
		     {"ab\xC3", "ab"},
		     {"ab\xC3\xA9", "ab\xC3\xA9"},
		     {"ab\xE2\x85", "ab"},
		     {"ab\xF0\x9F\x8D", "ab"},
		     {"\xF0\x9F", ""},
		     {"\xF0\x9F\x8D\x85", "\xF0\x9F\x8D\x85"}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[16];
		memcpy(text, cases[i].before, strlen(cases[i].before) + 1);
		text_drop_partial(text);
		ck_assert_str_eq(text, cases[i].after);
	}
}
END_TEST

START_TEST(shown_safely)
{
	static const struct {
		const char *text, *shown;
	} cases[] = {{"", ""},
		     {"3½ lb", "3½ lb"},
		     {"a\nb\tc", "a?b?c"},
		     {"\x1B[31mred", "?[31mred"},
		     {"\x7F", "?"},
		     {"\xC2\x9B"
		      "1m",
		      "?1m"}, /* U+009B, a terminal's other escape */
		     {"\xFF\xFEx", "??x"},
		     {"x\xC3", "x?"}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char shown[TEXT_SHOWN_SIZE];
		text_show(cases[i].text, SIZE_MAX, shown);
		ck_assert_str_eq(shown, cases[i].shown);
	}
}
END_TEST

/* The first and last of each range that a terminal obeys, and their neighbours. */
START_TEST(obeyed_characters_are_hidden)
{
	static const struct {
		char text[4];
		bool hidden;
	} cases[] = {{{'\x01'}, true},
		     {{'\x1F'}, true},
		     {{' '}, false},
		     {{'~'}, false},
		     {{'\x7F'}, true},
		     {{'\xC2', '\x80'}, true},
		     {{'\xC2', '\x9F'}, true},
		     {{'\xC2', '\xA0'}, false},
		     {{'\xD8', '\x9B'}, false},
		     {{'\xD8', '\x9C'}, true}, /* U+061C */
		     {{'\xE2', '\x80', '\x8D'}, false},
		     {{'\xE2', '\x80', '\x8E'}, true}, /* U+200E, U+200F */
		     {{'\xE2', '\x80', '\x8F'}, true},
		     {{'\xE2', '\x80', '\x90'}, false},
		     {{'\xE2', '\x80', '\xA7'}, false},
		     {{'\xE2', '\x80', '\xA8'}, true}, /* U+2028 to U+202E */
		     {{'\xE2', '\x80', '\xAE'}, true},
		     {{'\xE2', '\x80', '\xAF'}, false},
		     {{'\xE2', '\x81', '\xA5'}, false},
		     {{'\xE2', '\x81', '\xA6'}, true}, /* U+2066 to U+2069 */
		     {{'\xE2', '\x81', '\xA9'}, true},
		     {{'\xE2', '\x81', '\xAA'}, false}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char shown[TEXT_SHOWN_SIZE];
		text_show(cases[i].text, SIZE_MAX, shown);
		ck_assert_str_eq(shown, cases[i].hidden ? "?" : cases[i].text);
		ck_assert_int_eq(plain_text_check(cases[i].text),
				 cases[i].hidden ? PLAIN_TEXT_CONTROL : PLAIN_TEXT);
	}
}
END_TEST

START_TEST(plain_text_is_told_from_other)
{
	ck_assert_int_eq(plain_text_check(""), PLAIN_TEXT);
	ck_assert_int_eq(plain_text_check("3½ lb of 🍅"), PLAIN_TEXT);
	ck_assert_int_eq(plain_text_check("lb\n"), PLAIN_TEXT_CONTROL);
	ck_assert_int_eq(plain_text_check("3\xC2"), PLAIN_TEXT_NOT_UTF8);
}
END_TEST

START_TEST(columns_are_characters)
{
	ck_assert_int_eq(text_columns("3½ lb", strlen("3½ lb")), 5);
	ck_assert_int_eq(text_columns("3½ lb", 3), 2);
	ck_assert_int_eq(text_columns("", 0), 0);
}
END_TEST

START_TEST(shown_only_as_far_as_asked)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show("2900ft", 4, shown);
	ck_assert_str_eq(shown, "2900");
	text_show("3½", 2, shown); /* within the two bytes of ½ */
	ck_assert_str_eq(shown, "3?");
	text_show("29", 0, shown);
	ck_assert_str_eq(shown, "");
}
END_TEST

START_TEST(long_text_is_cut)
{
	char text[10001] = "";
	char shown[TEXT_SHOWN_SIZE];
	memset(text, 'x', TEXT_SHOWN_CHARACTERS);
	text_show(text, SIZE_MAX, shown);
	ck_assert_str_eq(shown, text); /* just short enough */
	memset(text, 'x', sizeof text - 1);
	text_show(text, SIZE_MAX, shown);
	ck_assert_uint_eq(strlen(shown), TEXT_SHOWN_CHARACTERS + 3);
	ck_assert_str_eq(shown + TEXT_SHOWN_CHARACTERS, "...");

	static const char tomato[4] = "🍅"; /* four bytes, the most a character has */
	for (size_t at = 0; at + sizeof tomato < sizeof text; at += sizeof tomato)
		memcpy(text + at, tomato, sizeof tomato);
	text_show(text, SIZE_MAX, shown);
	ck_assert_uint_eq(strlen(shown), TEXT_SHOWN_SIZE - 1);
}
END_TEST

Suite *text_suite(void)
{
	Suite *suite = suite_create("text");
	TCase *tests = tcase_create("text");
	tcase_add_test(tests, well_formed_sequences);
	tcase_add_test(tests, ill_formed_sequences);
	tcase_add_test(tests, partial_end_is_dropped);
	tcase_add_test(tests, shown_safely);
	tcase_add_test(tests, obeyed_characters_are_hidden);
	tcase_add_test(tests, plain_text_is_told_from_other);
	tcase_add_test(tests, columns_are_characters);
	tcase_add_test(tests, shown_only_as_far_as_asked);
	tcase_add_test(tests, long_text_is_cut);
	suite_add_tcase(suite, tests);
	return suite;
}
