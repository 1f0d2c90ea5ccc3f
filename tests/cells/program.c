/*
 * The same cells by sample through the whole program: its options, its JSON, its exit
 * codes. The program is the one that was built with this suite: BUILD/jarwright beside
 * BUILD/tests/cells.
 */
#include <jansson.h>
#include <limits.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "cells.h"

enum { ARGUMENTS_MAX = 32, ANSWER_MAX = 65536 };

/* The first row of each food and canner: what the program is asked for. */
static size_t *samples; /* indexes of rows */
static size_t samples_n;

struct answer {
	int exit_code; /* -1: killed */
	json_t *json;  /* NULL: not JSON; the caller frees */
};

/* Reads all the program says; it is one line, so a full buffer is a failure. */
static size_t read_all(int fd, char *buffer, size_t size)
{
	size_t used = 0;
	ssize_t got;
	while (used < size && (got = read(fd, buffer + used, size - used)) > 0)
		used += (size_t)got;
	ck_assert_uint_lt(used, size);
	return used;
}

static pid_t start(char *const arguments[], int *out)
{
	/* No kitchen of the person who runs the tests has a say. */
	static char no_kitchen[] = "JARWRIGHT_DB=/nonexistent/household.db";
	char *environment[] = {no_kitchen, NULL};
	posix_spawn_file_actions_t actions;
	int ends[2];
	pid_t pid = -1;
	ck_assert_int_eq(pipe(ends), 0);
	ck_assert_int_eq(posix_spawn_file_actions_init(&actions), 0);
	ck_assert_int_eq(posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO), 0);
	ck_assert_int_eq(posix_spawn_file_actions_addclose(&actions, ends[0]), 0);
	ck_assert_int_eq(posix_spawn_file_actions_addclose(&actions, ends[1]), 0);
	int error = posix_spawn(&pid, arguments[0], &actions, NULL, arguments, environment);
	ck_assert_msg(error == 0, "%s: %s", arguments[0], strerror(error));
	ck_assert_int_eq(posix_spawn_file_actions_destroy(&actions), 0);
	(void)close(ends[1]);
	*out = ends[0];
	return pid;
}

static void program_path(char path[PATH_MAX])
{
	char self[PATH_MAX];
	ssize_t length = readlink("/proc/self/exe", self, sizeof self - 1);
	ck_assert_int_gt(length, 0);
	self[length] = '\0';
	for (int levels = 0; levels < 2; levels++) {
		char *slash = strrchr(self, '/');
		ck_assert_ptr_nonnull(slash);
		*slash = '\0';
	}
	int needed = snprintf(path, PATH_MAX, "%s/jarwright", self);
	ck_assert_int_lt(needed, PATH_MAX);
}

/* line: the arguments, one blank between them; changed. */
static struct answer run(char *line)
{
	char *arguments[ARGUMENTS_MAX] = {NULL};
	char path[PATH_MAX];
	size_t n = 0;
	program_path(path);
	arguments[n++] = path;
	for (char *word; n < ARGUMENTS_MAX - 1 && (word = strsep(&line, " ")) != NULL;)
		arguments[n++] = word;
	ck_assert_ptr_null(line);

	static char text[ANSWER_MAX];
	int out = -1;
	int status = 0;
	pid_t pid = start(arguments, &out);
	size_t used = read_all(out, text, sizeof text);
	(void)close(out);
	ck_assert_int_eq(waitpid(pid, &status, 0), pid);
	return (struct answer){
	    .exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1,
	    .json = json_loadb(text, used, 0, NULL),
	};
}

static bool is_sample(const struct cells *cells, size_t i)
{
	const struct cell_row *row = &cells->rows[i];
	for (size_t j = 0; j < i; j++)
		if (cells->rows[j].canner == row->canner &&
		    strcmp(cells->rows[j].food, row->food) == 0)
			return false;
	return true;
}

static void choose_samples(const struct cells *cells)
{
	samples = calloc(cells->rows_n, sizeof *samples);
	for (size_t i = 0; samples && i < cells->rows_n; i++)
		if (is_sample(cells, i))
			samples[samples_n++] = i;
}

static void request_line(const struct cell_row *row, char *line, size_t size)
{
	char pack[32] = "";
	char psi[32] = "";
	if (row->pack != PACK_UNSTATED)
		(void)snprintf(pack, sizeof pack, " --pack %s", pack_word(row->pack));
	if (row->psi > 0)
		(void)snprintf(psi, sizeof psi, " --psi %d", row->psi);
	(void)snprintf(line, size,
		       "check %s --canner %s --jar %s%s --elevation %dft --vinegar 5%% "
		       "--jars sterile%s --json",
		       row->food, canner_word(row->canner),
		       reference_edition()->jars[row->jar].name, pack, row->from_ft, psi);
}

static const char *text_of(const json_t *json, const char *key)
{
	const char *text = json_string_value(json_object_get(json, key));
	return text ? text : "(none)";
}

START_TEST(program_gives_the_cell)
{
	const struct cell_row *row = &cells_read()->rows[samples[_i]];
	char line[512];
	char shown[512];
	request_line(row, line, sizeof line);
	(void)snprintf(shown, sizeof shown, "%s", line);
	struct answer answer = run(line);
	ck_assert_msg(answer.json != NULL, "no JSON from: %s", shown);
	const json_t *process = json_object_get(answer.json, "process");
	const json_t *psi = json_object_get(process, "psi");
	ck_assert_msg(strcmp(text_of(answer.json, "verdict"), "tested") == 0, "%s: %s",
		      text_of(answer.json, "verdict"), shown);
	ck_assert_msg(answer.exit_code == 0, "exit %d: %s", answer.exit_code, shown);
	ck_assert_msg(json_integer_value(json_object_get(process, "minutes")) == row->minutes,
		      "not %d minutes: %s", row->minutes, shown);
	ck_assert_msg(row->psi ? json_integer_value(psi) == row->psi : json_is_null(psi),
		      "not %d psi: %s", row->psi, shown);
	json_decref(answer.json);
}
END_TEST

static const struct {
	const char *line;
	const char *verdict;
	int exit_code;
	const char *rule; /* of the first finding */
} others[] = {
    /* USDA AIB 539 (2015) guide 4: green beans are canned under pressure only. */
    {"check snap-beans --canner boiling-water --jar pint --pack hot --elevation 500ft --json",
     "refused", 3, "low-acid-needs-pressure"},
    /* USDA AIB 539 (2015) guide 1, p. 1-10: an oven does not prevent spoilage. */
    {"check apple-butter --canner oven --jar pint --pack hot --elevation 500ft --json", "refused",
     3, "method-barred"},
    /* Utah State University Extension: timetables end at 10,000 ft. */
    {"check apple-butter --canner boiling-water --jar pint --pack hot --elevation 10001ft "
     "--jars sterile --json",
     "refused", 3, "elevation-above"},
    /* USDA AIB 539 (2015) guide 6, p. 6-30: no shelf process for this sauce. */
    {"check pickled-horseradish-sauce --canner boiling-water --jar half-pint --pack raw "
     "--elevation 500ft --vinegar 5% --json",
     "untested", 4, "no-process"},
    {"check apple-butter --canner boiling-water --jar pint --pack raw --elevation 500ft "
     "--jars sterile --json",
     "untested", 4, "pack-not-published"},
    /* A word for two foods, canned plain under pressure or pickled, is asked back. */
    {"check green-beans --canner boiling-water --jar pint --pack hot --elevation 500ft --json",
     "unclear", 5, "food-ambiguous"},
    {"check apple-butter --canner boiling-water --jar pint --pack hot --json", "unclear", 5,
     "elevation-missing"},
    {"check pickled-beets --canner boiling-water --jar pint --pack hot --elevation 500ft --json",
     "unclear", 5, "vinegar-missing"},
};

START_TEST(program_says_no)
{
	char line[512];
	(void)snprintf(line, sizeof line, "%s", others[_i].line);
	struct answer answer = run(line);
	ck_assert_msg(answer.json != NULL, "no JSON from: %s", others[_i].line);
	const json_t *findings = json_object_get(answer.json, "findings");
	ck_assert_str_eq(text_of(answer.json, "verdict"), others[_i].verdict);
	ck_assert_int_eq(answer.exit_code, others[_i].exit_code);
	ck_assert_str_eq(text_of(json_array_get(findings, 0), "rule"), others[_i].rule);
	ck_assert(json_is_null(json_object_get(answer.json, "process")));
	json_decref(answer.json);
}
END_TEST

START_TEST(there_are_samples)
{
	ck_assert_uint_gt(samples_n, 0);
}
END_TEST

Suite *program_suite(void)
{
	choose_samples(cells_read());
	Suite *suite = suite_create("cells through the program");
	TCase *tcase = tcase_create("program");
	/* The harness that links engines of its own leaves these out. */
	tcase_set_tags(tcase, "program");
	tcase_add_test(tcase, there_are_samples);
	tcase_add_loop_test(tcase, program_gives_the_cell, 0, (int)samples_n);
	tcase_add_loop_test(tcase, program_says_no, 0, (int)(sizeof others / sizeof *others));
	suite_add_tcase(suite, tcase);
	return suite;
}
