#include <string.h>

#include "jarwright/error.h"
#include "jarwright/text.h"
#include "suites.h"

static bool is_utf8(const char *text)
{
	while (*text != '\0') {
		size_t length = text_utf8_length(text);
		if (length == 0)
			return false;
		text += length;
	}
	return true;
}

START_TEST(kinds_and_text)
{
	struct error err;
	ck_assert(!error_usage(&err, "elevation: '%s' has no unit", "2900"));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert_str_eq(err.text, "elevation: '2900' has no unit");
	ck_assert(!error_failed(&err, "%s: no space left", "household.db"));
	ck_assert_int_eq(err.kind, ERROR_FAILED);
	ck_assert_str_eq(err.text, "household.db: no space left");
}
END_TEST

START_TEST(context_goes_in_front_and_keeps_the_kind)
{
	struct error err;
	error_failed(&err, "cannot be read");
	ck_assert(!error_context(&err, "line %d", 7));
	ck_assert(!error_context(&err, "foods.txt"));
	ck_assert_str_eq(err.text, "foods.txt: line 7: cannot be read");
	ck_assert_int_eq(err.kind, ERROR_FAILED);
}
END_TEST

START_TEST(own_text_may_be_an_argument)
{
	struct error err;
	error_failed(&err, "first");
	error_usage(&err, "<%s>", err.text);
	ck_assert_str_eq(err.text, "<first>");
	error_context(&err, "%s", err.text);
	ck_assert_str_eq(err.text, "<first>: <first>");
}
END_TEST

/* Every place a cut can fall at, in sequences of one to four bytes. */
START_TEST(cut_messages_stay_utf8)
{
	static const char *const letters[] = {"x", "é", "½ ", "⅓", "🍅"};
	char word[3000];
	for (size_t letter = 0; letter < sizeof letters / sizeof *letters; letter++) {
		for (size_t shift = 0; shift < 4; shift++) {
			size_t length = strlen(letters[letter]);
			size_t used = shift;
			memset(word, 'a', shift);
			for (; used < 2000; used += length)
				memcpy(word + used, letters[letter], length);
			word[used] = '\0';
			struct error err;
			error_usage(&err, "%s", word);
			ck_assert(is_utf8(err.text));
			ck_assert_uint_lt(strlen(err.text), sizeof err.text);
			ck_assert_uint_ge(strlen(err.text), sizeof err.text - 4);
			ck_assert(strncmp(err.text, word, strlen(err.text)) == 0);
			error_context(&err, "%s", "where it was");
			ck_assert(is_utf8(err.text));
			ck_assert_uint_ge(strlen(err.text), sizeof err.text - 4);
			ck_assert(strncmp(err.text, "where it was: ", 14) == 0);
			error_context(&err, "%s", word);
			ck_assert(is_utf8(err.text));
		}
	}
}
END_TEST

START_TEST(longest_message_that_fits_is_whole)
{
	struct error err;
	char word[sizeof err.text + 1];
	memset(word, 'a', sizeof word);
	word[sizeof err.text - 1] = '\0';
	error_usage(&err, "%s", word);
	ck_assert_str_eq(err.text, word);
	memcpy(word + sizeof err.text - 3, "é", 3); /* the last two bytes that fit */
	error_usage(&err, "%s", word);
	ck_assert_str_eq(err.text, word);
}
END_TEST

Suite *error_suite(void)
{
	Suite *suite = suite_create("error");
	TCase *tests = tcase_create("error");
	tcase_add_test(tests, kinds_and_text);
	tcase_add_test(tests, context_goes_in_front_and_keeps_the_kind);
	tcase_add_test(tests, own_text_may_be_an_argument);
	tcase_add_test(tests, cut_messages_stay_utf8);
	tcase_add_test(tests, longest_message_that_fits_is_whole);
	suite_add_tcase(suite, tests);
	return suite;
}
