/* What the documents say about the program is true of it: rules, commands, edition, exit codes. */
#include "suite.h"

#include <glob.h>
#include <stdio.h>
#include <string.h>

#include "../../src/cli/cli.h"
#include "jarwright/decide.h"
#include "jarwright/reference.h"

enum { LINE_MAX_BYTES = 512 };

static FILE *document(const char *path)
{
	FILE *file = fopen(path, "re");
	ck_assert_msg(file != NULL, "%s cannot be opened; run from the project's folder", path);
	return file;
}

/* The next line without its newline; false at the end. */
static bool next_line(FILE *file, char line[static LINE_MAX_BYTES])
{
	if (!fgets(line, LINE_MAX_BYTES, file))
		return false;
	size_t end = strcspn(line, "\n");
	ck_assert_msg(line[end] == '\n' || feof(file), "too long a line: %s", line);
	line[end] = '\0';
	return true;
}

/* How often the text stands in the document, at most once a line. */
static int lines_with(const char *path, const char *text)
{
	FILE *file = document(path);
	char line[LINE_MAX_BYTES] = "";
	int n = 0;
	while (next_line(file, line))
		n += strstr(line, text) != NULL;
	ck_assert_int_eq(fclose(file), 0);
	return n;
}

static bool begins(const char *line, const char *text)
{
	return strncmp(line, text, strlen(text)) == 0;
}

/* --- Lists that the program has too ---------------------------------------------------- */

/* The first word in the row "| `steam-jar` | ..." or "| `table FOOD` | ...", cut off in place. */
static const char *word_in_row(char *line)
{
	static const char opening[] = "| `";
	if (!begins(line, opening))
		return NULL;
	char *word = line + strlen(opening);
	word[strcspn(word, "` ")] = '\0';
	return word;
}

/*
 * Under the head the document lists the names in their order, each once: one that is missing,
 * one too many and one listed twice all show as a row out of step.
 */
static void check_list(const char *path, const char *head, const char *(*name_of)(size_t), size_t n)
{
	FILE *file = document(path);
	char line[LINE_MAX_BYTES] = "";
	bool inside = false;
	size_t listed = 0;
	while (next_line(file, line)) {
		if (begins(line, "## "))
			inside = strcmp(line, head) == 0;
		const char *word = inside ? word_in_row(line) : NULL;
		if (!word)
			continue;
		ck_assert_msg(listed < n, "%s under \"%s\": %s is one too many", path, head, word);
		ck_assert_msg(strcmp(word, name_of(listed)) == 0,
			      "%s under \"%s\": %s stands where %s must", path, head, word,
			      name_of(listed));
		listed++;
	}
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_msg(listed == n, "%s under \"%s\": %zu rows of %zu", path, head, listed, n);
}

static const char *rule_name(size_t i)
{
	return reference_edition()->rules[i].id;
}

START_TEST(safety_lists_every_rule_in_order)
{
	check_list("SAFETY.md", "## Every rule", rule_name, RULE_COUNT);
}
END_TEST

static const char *command_name(size_t i)
{
	return commands[i]->name;
}

START_TEST(readme_lists_every_command_in_order)
{
	size_t n = 0;
	while (commands[n])
		n++;
	check_list("README.md", "## Commands", command_name, n);
}
END_TEST

/* A table has a cell with the name, between quotes, of every folder that the pattern finds. */
static void check_folders_listed(const char *pattern, const char *quote)
{
	glob_t found = {0};
	ck_assert_int_eq(glob(pattern, 0, NULL, &found), 0);
	for (size_t i = 0; i < found.gl_pathc; i++) {
		char text[LINE_MAX_BYTES], *name = strchr(found.gl_pathv[i], '/') + 1;
		name[strcspn(name, "/")] = '\0';
		snprintf(text, sizeof text, "| %s%s%s |", quote, name, quote);
		if (strcmp(name, "refbuild") != 0 || begins(found.gl_pathv[i], "tests/"))
			ck_assert_msg(lines_with("DEVELOPERS.md", text) > 0,
				      "DEVELOPERS.md has no row with %s", text);
	}
	globfree(&found);
}

/* src/refbuild is the program of the build, and stands on no floor. */
START_TEST(developers_lists_every_module_and_suite)
{
	check_folders_listed("src/*/", "");
	check_folders_listed("tests/*/test_*.c", "`");
}
END_TEST

/* --- README.md ----------------------------------------------------------------------- */

/* Every line "$ jarwright WORD ..." of the documents is a command that there is. */
static void check_typed_commands(const char *path)
{
	static const char prompt[] = "$ jarwright ";
	FILE *file = document(path);
	char line[LINE_MAX_BYTES] = "";
	while (next_line(file, line)) {
		if (!begins(line, prompt))
			continue;
		char *word = line + strlen(prompt);
		word[strcspn(word, " ")] = '\0';
		ck_assert_msg(command_find(word) != NULL, "%s: there is no command %s", path, word);
	}
	ck_assert_int_eq(fclose(file), 0);
}

START_TEST(typed_commands_exist)
{
	ck_assert_int_gt(lines_with("README.md", "$ jarwright "), 0);
	check_typed_commands("README.md");
	check_typed_commands("DEVELOPERS.md");
}
END_TEST

START_TEST(readme_has_no_empty_output)
{
	ck_assert_int_eq(lines_with("README.md", "@@"), 0);
}
END_TEST

/* Both documents have the table of verdicts: "| 3 | `refused` | ..." */
START_TEST(exit_codes_are_the_programs)
{
	static const enum verdict verdicts[] = {VERDICT_TESTED, VERDICT_REFUSED, VERDICT_UNTESTED,
						VERDICT_UNCLEAR};
	for (size_t i = 0; i < sizeof verdicts / sizeof *verdicts; i++) {
		char row[LINE_MAX_BYTES];
		(void)snprintf(row, sizeof row, "| %d | `%s` |", verdict_exit_code(verdicts[i]),
			       verdict_word(verdicts[i]));
		ck_assert_msg(lines_with("README.md", row) == 1, "README.md: no row %s", row);
		ck_assert_msg(lines_with("SAFETY.md", row) == 1, "SAFETY.md: no row %s", row);
	}
}
END_TEST

/* --- NEWS ---------------------------------------------------------------------------- */

static const char *const news_heads[] = {"Briefly", "Changed answers", "New tables", "Code",
					 "Notes"};
enum { NEWS_HEADS = sizeof news_heads / sizeof *news_heads };

static bool is_edition(const char *line)
{
	return begins(line, "Edition ");
}

START_TEST(news_begins_with_this_edition_and_version)
{
	char expected[LINE_MAX_BYTES];
	(void)snprintf(expected, sizeof expected, "Edition %s, jarwright %s",
		       reference_edition()->edition, JARWRIGHT_VERSION);
	FILE *file = document("NEWS");
	char line[LINE_MAX_BYTES] = "";
	while (next_line(file, line) && !is_edition(line))
		;
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_str_eq(line, expected);
}
END_TEST

/* A line at column 0 after the first edition is an edition or the next of its heads. */
START_TEST(news_has_its_heads_in_order)
{
	FILE *file = document("NEWS");
	char line[LINE_MAX_BYTES] = "";
	int editions = 0;
	int next = NEWS_HEADS;
	while (next_line(file, line)) {
		if (is_edition(line)) {
			ck_assert_msg(next == NEWS_HEADS, "NEWS: before \"%s\" there is no \"%s\"",
				      line, news_heads[next % NEWS_HEADS]);
			editions++;
			next = 0;
		} else if (editions > 0 && *line != '\0' && *line != ' ') {
			ck_assert_msg(next < NEWS_HEADS, "NEWS: one head too many: %s", line);
			ck_assert_str_eq(line, news_heads[next]);
			next++;
		}
	}
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_int_gt(editions, 0);
	ck_assert_int_eq(next, NEWS_HEADS);
}
END_TEST

static Suite *docs_suite(void)
{
	Suite *suite = suite_create("docs");
	TCase *tcase = tcase_create("documents");
	tcase_add_test(tcase, safety_lists_every_rule_in_order);
	tcase_add_test(tcase, readme_lists_every_command_in_order);
	tcase_add_test(tcase, developers_lists_every_module_and_suite);
	tcase_add_test(tcase, typed_commands_exist);
	tcase_add_test(tcase, readme_has_no_empty_output);
	tcase_add_test(tcase, exit_codes_are_the_programs);
	tcase_add_test(tcase, news_begins_with_this_edition_and_version);
	tcase_add_test(tcase, news_has_its_heads_in_order);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(docs_suite())
