/*
 * The whole program, as a shell runs it. Each tests/cli/NAME.t is a script of blocks:
 *
 *	# a remark
 *	$ jarwright kitchen --units us | cat
 *	what comes out on standard output, line by line
 *	! what comes out on standard error
 *	= 0
 *
 * A blank line ends a block. A line "..." (or "! ...") stands for any lines, none too. The line
 * "= N" gives the exit code; without it, 0 is expected. The blocks of a file run one after
 * another in one new, empty folder, with the household file kitchen.db in it.
 * JARWRIGHT_PROGRAM names the program; without it, it is build/jarwright.
 */
#include <glob.h>
#include <limits.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "suites.h"

#define LINES_MAX 200

struct lines {
	char *line[LINES_MAX];
	size_t n;
};

struct block {
	int number; /* of the line with the command */
	char *command;
	struct lines out, err;
	int status;
};

static glob_t scripts;
static bool scripts_found;
static char folder[64];

static void add_line(struct lines *lines, const char *text)
{
	ck_assert_uint_lt(lines->n, LINES_MAX);
	lines->line[lines->n] = strdup(text);
	ck_assert_ptr_nonnull(lines->line[lines->n++]);
}

static void clear_lines(struct lines *lines)
{
	while (lines->n > 0)
		free(lines->line[--lines->n]);
}

static void clear_block(struct block *block)
{
	free(block->command);
	clear_lines(&block->out);
	clear_lines(&block->err);
	memset(block, 0, sizeof *block);
}

static bool is_any(const struct lines *pattern, size_t p)
{
	return p < pattern->n && strcmp(pattern->line[p], "...") == 0;
}

/* Do the lines match? A "..." first takes no line, then, each time it fails, one more. */
static bool match(const struct lines *pattern, const struct lines *lines)
{
	size_t p = 0, l = 0, after_any = 0, taken = 0;
	for (;;) {
		bool any = is_any(pattern, p);
		if (!any && l == lines->n)
			return p == pattern->n;
		if (any) {
			after_any = ++p;
			taken = l;
		} else if (p < pattern->n && strcmp(pattern->line[p], lines->line[l]) == 0) {
			p++;
			l++;
		} else if (after_any > 0) {
			p = after_any;
			l = ++taken;
		} else {
			return false;
		}
	}
}

static void read_lines(const char *name, struct lines *out)
{
	char path[128], line[8192];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *file = fopen(path, "r");
	ck_assert_ptr_nonnull(file);
	while (fgets(line, sizeof line, file)) {
		line[strcspn(line, "\n")] = '\0';
		add_line(out, line);
	}
	fclose(file);
}

static void print_lines(const char *title, const struct lines *lines)
{
	fprintf(stderr, "%s\n", title);
	for (size_t i = 0; i < lines->n; i++)
		fprintf(stderr, "  |%s\n", lines->line[i]);
}

static int run_shell(const char *command)
{
	char *script = NULL;
	ck_assert_int_ge(
	    asprintf(&script, "cd %s && { %s\n} >.out 2>.err </dev/null", folder, command), 0);
	int status = system(script);
	free(script);
	ck_assert(WIFEXITED(status));
	return WEXITSTATUS(status);
}

static void run_block(const char *script, const struct block *block)
{
	struct lines out = {0}, err = {0};
	int status = run_shell(block->command);
	read_lines(".out", &out);
	read_lines(".err", &err);
	bool good = status == block->status && match(&block->out, &out) && match(&block->err, &err);
	if (!good) {
		fprintf(stderr, "%s:%d: $ %s\n", script, block->number, block->command);
		print_lines("expected output:", &block->out);
		print_lines("output:", &out);
		print_lines("expected errors:", &block->err);
		print_lines("errors:", &err);
	}
	clear_lines(&out);
	clear_lines(&err);
	if (!good)
		ck_abort_msg("%s:%d: exit code %d, expected %d, or other lines", script,
			     block->number, status, block->status);
}

static void take_line(const char *script, int number, const char *line, struct block *block)
{
	if (strncmp(line, "$ ", 2) == 0) {
		if (block->command)
			ck_abort_msg("%s:%d: no blank line before the command", script, number);
		block->command = strdup(line + 2);
		block->number = number;
	} else if (!block->command) {
		if (*line != '#')
			ck_abort_msg("%s:%d: a line before the command", script, number);
	} else if (strncmp(line, "! ", 2) == 0) {
		add_line(&block->err, line + 2);
	} else if (strncmp(line, "= ", 2) == 0) {
		block->status = (int)strtol(line + 2, NULL, 10);
	} else {
		add_line(&block->out, line);
	}
}

/* Returns how many blocks there were. */
static int run_script(const char *script)
{
	FILE *file = fopen(script, "r");
	char line[8192];
	int number = 0, blocks = 0;
	struct block block = {0};
	ck_assert_ptr_nonnull(file);
	for (bool more = true; more;) {
		more = fgets(line, sizeof line, file) != NULL;
		number++;
		line[more ? strcspn(line, "\n") : 0] = '\0';
		if (*line) {
			take_line(script, number, line, &block);
		} else if (block.command) {
			run_block(script, &block);
			clear_block(&block);
			blocks++;
		}
	}
	fclose(file);
	return blocks;
}

static const char *program_named(void)
{
	const char *named = getenv("JARWRIGHT_PROGRAM");
	return named ? named : "build/jarwright";
}

/* Puts the program's folder in front of PATH, so that a script says "jarwright". */
static void find_program(void)
{
	const char *old = getenv("PATH");
	char program[PATH_MAX], *path = NULL;
	if (!realpath(program_named(), program))
		ck_abort_msg("there is no program to test; build it or set JARWRIGHT_PROGRAM");
	*strrchr(program, '/') = '\0';
	ck_assert_int_ge(asprintf(&path, "%s:%s", program, old ? old : "/usr/bin:/bin"), 0);
	ck_assert_int_eq(setenv("PATH", path, 1), 0);
	free(path);
}

static void setup(void)
{
	find_program();
	snprintf(folder, sizeof folder, "/tmp/jarwright-cli-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	ck_assert_int_eq(setenv("HOME", folder, 1), 0);
	ck_assert_int_eq(setenv("JARWRIGHT_DB", "kitchen.db", 1), 0);
	ck_assert_int_eq(setenv("LC_ALL", "C", 1), 0);
	ck_assert_int_eq(setenv("TZ", "UTC", 1), 0);
	ck_assert_int_eq(unsetenv("NO_COLOR"), 0);
	ck_assert_int_eq(unsetenv("XDG_DATA_HOME"), 0);
}

static void teardown(void)
{
	char command[128];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

START_TEST(script_holds)
{
	ck_assert_int_gt(run_script(scripts.gl_pathv[_i]), 0);
}
END_TEST

/* The comparison must be able to fail. */
START_TEST(lines_are_compared)
{
	static const struct {
		const char *pattern[4], *lines[4];
		bool matches;
	} cases[] = {
	    {{NULL}, {NULL}, true},
	    {{NULL}, {"a"}, false},
	    {{"a"}, {NULL}, false},
	    {{"a"}, {"a"}, true},
	    {{"a"}, {"a", "b"}, false},
	    {{"a", "b"}, {"a"}, false},
	    {{"..."}, {NULL}, true},
	    {{"..."}, {"a", "b"}, true},
	    {{"...", "b"}, {"a", "b"}, true},
	    {{"...", "b"}, {"a", "b", "b"}, true},
	    {{"...", "b"}, {"a", "b", "c"}, false},
	    {{"a", "...", "c"}, {"a", "c"}, true},
	    {{"a", "...", "c"}, {"a", "b"}, false},
	    {{"...", "b", "..."}, {"a", "c"}, false},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct lines pattern = {0}, lines = {0};
		for (size_t j = 0; j < 4 && cases[i].pattern[j]; j++)
			add_line(&pattern, cases[i].pattern[j]);
		for (size_t j = 0; j < 4 && cases[i].lines[j]; j++)
			add_line(&lines, cases[i].lines[j]);
		ck_assert_int_eq(match(&pattern, &lines), cases[i].matches);
		clear_lines(&pattern);
		clear_lines(&lines);
	}
}
END_TEST

START_TEST(there_are_scripts)
{
	ck_assert(scripts_found);
}
END_TEST

Suite *program_suite(void)
{
	Suite *suite = suite_create("program");
	TCase *tcase = tcase_create("scripts");
	char readme[PATH_MAX];
	/* The README's tour is a script too: the makefile puts it beside the program. */
	const char *program = program_named(), *slash = strrchr(program, '/');
	snprintf(readme, sizeof readme, "%.*s/readme.t", slash ? (int)(slash - program) : 0,
		 program);
	scripts_found = glob("tests/cli/*.t", 0, NULL, &scripts) == 0 &&
			glob(readme, GLOB_APPEND, NULL, &scripts) == 0;
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_set_timeout(tcase, 120);
	tcase_add_test(tcase, lines_are_compared);
	tcase_add_test(tcase, there_are_scripts);
	tcase_add_loop_test(tcase, script_holds, 0, (int)scripts.gl_pathc);
	suite_add_tcase(suite, tcase);
	return suite;
}
