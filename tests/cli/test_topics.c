/* What "help TOPIC" teaches, against the tables, the engine's rules and the program. */
#include <ctype.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>

#include "../../src/cli/cli.h"
#include "../../src/cli/topics.h"
#include "jarwright/reference.h"
#include "jarwright/words.h"
#include "suites.h"

START_TEST(topics_have_names_of_their_own)
{
	ck_assert_uint_gt(topics_n, 0);
	for (size_t i = 0; i < topics_n; i++) {
		ck_assert_ptr_eq(topic_find(topics[i].name), &topics[i]);
		ck_assert_msg(!command_find(topics[i].name), "%s is a command too", topics[i].name);
		ck_assert_str_ne(topics[i].name, "topics"); /* the manual page of all of them */
		ck_assert_uint_gt(topics[i].lines_n, 1);
	}
	ck_assert_ptr_null(topic_find("no-such-topic"));
	ck_assert_str_eq(nearest_topic("vinegr"), "vinegar");
	ck_assert_ptr_null(nearest_topic("quicksilver"));
}
END_TEST

static bool is_source(const char *id, size_t n)
{
	const struct reference *ref = reference_edition();
	for (size_t i = 0; i < ref->sources_n; i++)
		if (strlen(ref->sources[i].id) == n && memcmp(ref->sources[i].id, id, n) == 0)
			return true;
	return false;
}

START_TEST(every_source_is_one_of_the_tables)
{
	size_t cited = 0, n;
	for (size_t i = 0; i < topics_n; i++) {
		for (size_t j = 0; j < topics[i].lines_n; j++) {
			const char *at = topics[i].lines[j].text;
			for (; (at = topic_citation(at, &n)) != NULL; cited++)
				if (!is_source(at, n))
					ck_abort_msg("%s: no source %.*s", topics[i].name, (int)n,
						     at);
		}
	}
	ck_assert_uint_gt(cited, 20);
}
END_TEST

static const struct rule *rule_named(const char *id, size_t n)
{
	const struct reference *ref = reference_edition();
	for (int i = 0; i < RULE_COUNT; i++)
		if (strlen(ref->rules[i].id) == n && memcmp(ref->rules[i].id, id, n) == 0)
			return &ref->rules[i];
	return NULL;
}

/* Is the number in the text, and not as a part of a longer one? A comma parts thousands. */
static bool has_number(const char *text, const char *number)
{
	char plain[2000];
	size_t n = 0;
	for (; *text && n + 1 < sizeof plain; text++)
		if (*text != ',')
			plain[n++] = *text;
	plain[n] = '\0';
	for (const char *at = plain; (at = strstr(at, number)) != NULL; at++) {
		const char *end = at + strlen(number);
		end += strncmp(end, ".0", 2) == 0 ? 2 : 0;
		bool starts = at == plain || (!isdigit((unsigned char)at[-1]) && at[-1] != '.');
		bool ends = !isdigit((unsigned char)*end) &&
			    !(*end == '.' && isdigit((unsigned char)end[1]));
		if (starts && ends)
			return true;
	}
	return false;
}

START_TEST(numbers_are_found_whole)
{
	ck_assert(has_number("above 10,000 ft", "10000"));
	ck_assert(has_number("at pH 4.6.", "4.6"));
	ck_assert(has_number("between 4.0 and 4.6", "4"));
	ck_assert(!has_number("145 minutes", "45"));
	ck_assert(!has_number("4.65", "4.6"));
	ck_assert(!has_number("5.4", "4"));
	ck_assert(!has_number("5.4", "5"));
}
END_TEST

static int check_rules_in(const struct topic *topic, const char *text)
{
	int named = 0;
	static const char opening[] = "(rule ";
	const char *at = text;
	for (; (at = strstr(at, opening)) != NULL; named++) {
		char figure[WORDS_BUFFER];
		at += strlen(opening);
		size_t n = strcspn(at, ")");
		const struct rule *rule = rule_named(at, n);
		if (!rule)
			ck_abort_msg("%s: no rule %.*s", topic->name, (int)n, at);
		if (rule->limit_milli == NONE)
			continue;
		milli_words(figure, sizeof figure, rule->limit_milli);
		if (!has_number(text, figure))
			ck_abort_msg("%s: %s turns on %s, which is not in: %s", topic->name,
				     rule->id, figure, text);
	}
	return named;
}

/* The figures come from db/rules.txt, where each has its source. */
START_TEST(every_rule_is_there_with_its_figure)
{
	int named = 0;
	for (size_t i = 0; i < topics_n; i++)
		for (size_t j = 0; j < topics[i].lines_n; j++)
			named += check_rules_in(&topics[i], topics[i].lines[j].text);
	ck_assert_int_gt(named, 20);
}
END_TEST

/* Every line to be typed is taken, in an empty folder with no household file. */
START_TEST(every_line_to_type_is_taken)
{
	const char *program = getenv("JARWRIGHT_PROGRAM");
	int run = 0;
	for (size_t i = 0; i < topics_n; i++) {
		for (size_t j = 0; j < topics[i].lines_n; j++) {
			const struct topic_line *line = &topics[i].lines[j];
			char *script = NULL;
			if (line->kind != TOPIC_TYPED)
				continue;
			ck_assert_uint_le(strlen(line->text), 76); /* a page, less its indent */
			ck_assert_int_gt(
			    asprintf(
				&script,
				"program=$(realpath %s); folder=$(mktemp -d); cd \"$folder\"; "
				"export JARWRIGHT_DB=kitchen.db; "
				"jarwright() { \"$program\" \"$@\"; }; %s >/dev/null; code=$?; "
				"rm -rf \"$folder\"; exit $code",
				program ? program : "build/jarwright", line->text),
			    0);
			int status = system(script);
			free(script);
			ck_assert(WIFEXITED(status));
			ck_assert_msg(WEXITSTATUS(status) == STATUS_DONE, "%s: exit code %d: %s",
				      topics[i].name, WEXITSTATUS(status), line->text);
			run++;
		}
	}
	ck_assert_int_gt(run, 8);
}
END_TEST

Suite *topics_suite(void)
{
	Suite *suite = suite_create("topics");
	TCase *tcase = tcase_create("topics");
	tcase_set_timeout(tcase, 60);
	tcase_add_test(tcase, topics_have_names_of_their_own);
	tcase_add_test(tcase, every_source_is_one_of_the_tables);
	tcase_add_test(tcase, numbers_are_found_whole);
	tcase_add_test(tcase, every_rule_is_there_with_its_figure);
	tcase_add_test(tcase, every_line_to_type_is_taken);
	suite_add_tcase(suite, tcase);
	return suite;
}
