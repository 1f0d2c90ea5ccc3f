/* Reading the command line. */
#include <signal.h>
#include <string.h>

#include "../../src/cli/cli.h"
#include "suites.h"

#define WORDS_MAX 16

static int no_run(struct invocation *inv)
{
	return command_failed(inv);
}

static const struct option_spec options[] = {
    OPTION_ELEVATION, {"jar", "JAR", "jar"}, {"json", NULL, "json"}, OPTIONS_END};
static const struct command command = {
    .name = "try", .synopsis = "FOOD --jar JAR", .options = options, .run = no_run};

static struct error err;
static const char *operands[WORDS_MAX + 1];
static struct invocation inv;

/* Parses words that end with NULL. They are copied: argv is not const. */
static bool parse(const char *const *words)
{
	static char copies[WORDS_MAX][64];
	char *argv[WORDS_MAX + 1];
	int n = 0;
	for (; words[n]; n++) {
		ck_assert_int_lt(n, WORDS_MAX);
		ck_assert_uint_lt(strlen(words[n]), sizeof copies[n]);
		argv[n] = memcpy(copies[n], words[n], strlen(words[n]) + 1);
	}
	argv[n] = NULL;
	err = (struct error){0};
	inv = (struct invocation){.command = &command, .operands = operands, .err = &err};
	return options_parse(n, argv, &inv);
}
#define PARSE(...) parse((const char *const[]){"try", __VA_ARGS__, NULL})

START_TEST(options_and_operands_in_any_order)
{
	ck_assert(PARSE("dill", "--jar", "pint", "beans", "--json", "--elevation=880m"));
	ck_assert_str_eq(option(&inv, "jar"), "pint");
	ck_assert_str_eq(option(&inv, "elevation"), "880m");
	ck_assert(flag(&inv, "json"));
	ck_assert(!flag(&inv, "no-color"));
	ck_assert_uint_eq(inv.operands_n, 2);
	ck_assert_str_eq(inv.operands[0], "dill");
	ck_assert_str_eq(inv.operands[1], "beans");
	ck_assert_ptr_null(inv.operands[2]);
}
END_TEST

START_TEST(order_does_not_hang_on_the_environment)
{
	ck_assert_int_eq(setenv("POSIXLY_CORRECT", "1", 1), 0);
	ck_assert(PARSE("dill", "--jar", "pint"));
	ck_assert_int_eq(unsetenv("POSIXLY_CORRECT"), 0);
	ck_assert_str_eq(option(&inv, "jar"), "pint");
	ck_assert_uint_eq(inv.operands_n, 1);
}
END_TEST

START_TEST(two_dashes_end_the_options)
{
	ck_assert(PARSE("--json", "--", "--jar", "-x"));
	ck_assert(flag(&inv, "json"));
	ck_assert_ptr_null(option(&inv, "jar"));
	ck_assert_uint_eq(inv.operands_n, 2);
	ck_assert_str_eq(inv.operands[0], "--jar");
}
END_TEST

START_TEST(values_may_be_negative_or_empty)
{
	ck_assert(PARSE("--elevation", "-500ft", "--jar="));
	ck_assert_str_eq(option(&inv, "elevation"), "-500ft");
	ck_assert_str_eq(option(&inv, "jar"), "");
	ck_assert(PARSE("--elevation=--500ft"));
	ck_assert_str_eq(option(&inv, "elevation"), "--500ft");
}
END_TEST

START_TEST(flags_may_be_repeated_and_a_lone_dash_is_a_word)
{
	ck_assert(PARSE("--json", "-", "--json"));
	ck_assert_uint_eq(inv.given_n, 1);
	ck_assert_str_eq(inv.operands[0], "-");
}
END_TEST

static const struct {
	const char *words[6];
	const char *says;
} wrong[] = {
    {{"try", "--elevaton", "5ft"}, "try: no option '--elevaton'; did you mean --elevation?"},
    {{"try", "--elevaton=5ft"}, "try: no option '--elevaton'; did you mean --elevation?"},
    {{"try", "--elev", "5ft"}, "try: no option '--elev'; did you mean --elevation?"},
    {{"try", "--jso"}, "try: no option '--jso'; did you mean --json?"},
    {{"try", "--no-col"}, "try: no option '--no-col'; did you mean --no-color?"},
    {{"try", "--furlong"}, "try: no option '--furlong'; 'jarwright try --help' lists them"},
    {{"try", "--=x"}, "try: no option '--'; 'jarwright try --help' lists them"},
    {{"try", "--j", "x"}, "try: no option '--j'; did you mean --jar?"},
    {{"try", "--elev"}, "try: no option '--elev'; did you mean --elevation?"},
    {{"try", "--jar"}, "try: --jar has no value; type --jar JAR"},
    {{"try", "--jar", "--json"}, "try: --jar has no value before '--json'; type --jar JAR"},
    {{"try", "--jar", "--"}, "try: --jar has no value before '--'; type --jar JAR"},
    {{"try", "--json=yes"}, "try: --json takes no value; leave out '=' and what follows"},
    {{"try", "--jar", "pint", "--jar", "quart"}, "try: --jar is given twice; give it once"},
    {{"try", "-j"},
     "try: no option '-j'; options are whole words after two dashes, and '--' goes before a "
     "word that begins with a dash"},
    {{"try", "beans", "-jx", "more"},
     "try: no option '-jx'; options are whole words after two dashes, and '--' goes before a "
     "word that begins with a dash"},
    {{"try", "-\xc3\xa9"},
     "try: no option '-\xc3\xa9'; options are whole words after two dashes, and '--' goes "
     "before a word that begins with a dash"},
};

START_TEST(wrong_options_say_what_to_type)
{
	const char *words[7] = {0};
	for (size_t i = 0; i < 6; i++)
		words[i] = wrong[_i].words[i];
	ck_assert(!parse(words));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert_str_eq(err.text, wrong[_i].says);
	ck_assert_int_eq(command_failed(&inv), STATUS_USAGE);
}
END_TEST

START_TEST(arguments_are_plain_short_text)
{
	static char longest[ARGUMENT_MAX + 2];
	char name[] = "jarwright", beets[] = "Rote Bete \xc3\xa4\xf0\x9f\xa5\x95";
	char latin[] = "caf\xe9", surrogate[] = "\xed\xa0\x80", overlong[] = "\xc0\xaf";
	char escape[] = "\x1b[2J", c1[] = "\xc2\x9b", line[] = "a\nb", del[] = "\x7f";
	char *bad[] = {latin, surrogate, overlong, escape, c1, line, del};
	struct error error = {0};
	memset(longest, 'a', ARGUMENT_MAX);
	ck_assert(arguments_check(3, (char *[]){name, beets, longest}, &error));
	longest[ARGUMENT_MAX] = 'a';
	ck_assert(!arguments_check(3, (char *[]){name, beets, longest}, &error));
	ck_assert_str_eq(error.text, "argument 2: it is longer than 4096 bytes; shorten it");
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		error = (struct error){0};
		ck_assert(!arguments_check(2, (char *[]){name, bad[i]}, &error));
		ck_assert_int_eq(error.kind, ERROR_USAGE);
		ck_assert_ptr_null(strstr(error.text, bad[i]));
	}
}
END_TEST

START_TEST(operands_are_counted)
{
	ck_assert(PARSE("a", "b"));
	ck_assert(operands_between(&inv, 1, 2, "FOOD"));
	ck_assert(!operands_between(&inv, 1, 1, "FOOD"));
	ck_assert_str_eq(err.text,
			 "try: too many words, from 'b' on; type 'jarwright try FOOD --jar JAR'");
	err = (struct error){0};
	ck_assert(!operands_between(&inv, 3, 3, "FOOD"));
	ck_assert_str_eq(err.text, "try: no FOOD given; type 'jarwright try FOOD --jar JAR'");
}
END_TEST

START_TEST(asking_for_an_undeclared_option_is_a_bug)
{
	ck_assert(PARSE("a"));
	option(&inv, "vinegar");
}
END_TEST

Suite *options_suite(void)
{
	Suite *suite = suite_create("options");
	TCase *tcase = tcase_create("parse");
	tcase_add_test(tcase, options_and_operands_in_any_order);
	tcase_add_test(tcase, order_does_not_hang_on_the_environment);
	tcase_add_test(tcase, two_dashes_end_the_options);
	tcase_add_test(tcase, values_may_be_negative_or_empty);
	tcase_add_test(tcase, flags_may_be_repeated_and_a_lone_dash_is_a_word);
	tcase_add_loop_test(tcase, wrong_options_say_what_to_type, 0,
			    (int)(sizeof wrong / sizeof *wrong));
	tcase_add_test(tcase, arguments_are_plain_short_text);
	tcase_add_test(tcase, operands_are_counted);
	/* It ends the process, so it needs one of its own. */
	const char *forks = getenv("CK_FORK");
	if (!forks || strcmp(forks, "no") != 0)
		tcase_add_test_raise_signal(tcase, asking_for_an_undeclared_option_is_a_bug,
					    SIGABRT);
	suite_add_tcase(suite, tcase);
	return suite;
}
