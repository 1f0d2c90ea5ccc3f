/*
 * The completion scripts in the shells they are for: each shell is started in a terminal of its
 * own, the script is loaded, a line is typed with a tab at its end, and what the shell then runs
 * is looked at. A shell that is not installed is skipped, and that is said.
 */
#include <limits.h>
#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "../../src/cli/completion.h"
#include "suites.h"

enum { PATIENCE_MS = 20000, SEEN_MAX = 1 << 16 };

/* In all of them "jarwright" becomes a function that shows the words it is given. */
/* Each starts in the folder where `init` is kept. */
static const struct terminal_shell {
	const char *name, *start, *init;
} terminal_shells[] = {
    {"bash", "bash --noprofile --rcfile init -i",
     "source <(\"$JARWRIGHT\" completion bash)\n"
     "jarwright() { printf '<%s>' \"$*\"; }\nPS1='READY> '\n"},
    {"zsh", "ZDOTDIR=\"$PWD\" zsh -d -i",
     "autoload -Uz compinit\ncompinit -D -u\nsource <(\"$JARWRIGHT\" completion zsh)\n"
     "jarwright() { printf '<%s>' \"$*\"; }\nPS1='READY> '\n"},
    {"fish", "fish --no-config -i -C \"source init\"",
     "$JARWRIGHT completion fish | source\n"
     "function jarwright; printf '<%s>' \"$argv\"; end\n"
     "function fish_prompt; printf 'READY> '; end\n"},
};
enum { SHELLS = sizeof terminal_shells / sizeof *terminal_shells };

/* A command, an option, values, and the words of two tables; each begins only one word. */
static const struct {
	const char *typed, *completed;
} lines[] = {
    {"chec", "check"},
    {"check --cann", "check --canner"},
    {"check --canner wei", "check --canner weighted-gauge"},
    {"check pickled-bee", "check pickled-beets"},
    {"check --elevation 5ft --jar half-p", "check --elevation 5ft --jar half-pint"},
    {"explain low-a", "explain low-acid-needs-pressure"},
    {"explain ventin", "explain venting"},
    {"help vineg", "help vinegar"},
    {"recipe comp", "recipe compare"},
    {"recipe import page saved-p", "recipe import page saved-page.html"},
    {"completion fi", "completion fish"},
    {"--vers", "--version"},
};
enum { LINES = sizeof lines / sizeof *lines };

static char folder[64], seen[SEEN_MAX];
static size_t seen_n;

static void write_file(const char *name, const char *text)
{
	char path[128];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *file = fopen(path, "w");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_ge(fputs(text, file), 0);
	ck_assert_int_eq(fclose(file), 0);
}

static void setup(void)
{
	const char *named = getenv("JARWRIGHT_PROGRAM");
	char program[PATH_MAX];
	if (!realpath(named ? named : "build/jarwright", program))
		ck_abort_msg("there is no program to test; build it or set JARWRIGHT_PROGRAM");
	ck_assert_int_eq(setenv("JARWRIGHT", program, 1), 0);
	snprintf(folder, sizeof folder, "/tmp/jarwright-shell-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	write_file("saved-page.html", "");
}

static void teardown(void)
{
	char command[128];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

static long long now_ms(void)
{
	struct timespec now;
	ck_assert_int_eq(clock_gettime(CLOCK_MONOTONIC, &now), 0);
	return now.tv_sec * 1000LL + now.tv_nsec / 1000000;
}

/* Reads from the terminal until the text has come since `from`; returns where it stands. */
static const char *wait_for(int terminal, size_t from, const char *text)
{
	long long end = now_ms() + PATIENCE_MS;
	for (;;) {
		seen[seen_n] = '\0';
		const char *found = strstr(seen + from, text);
		if (found)
			return found;
		struct pollfd poll_one = {.fd = terminal, .events = POLLIN};
		if (now_ms() > end || poll(&poll_one, 1, PATIENCE_MS) <= 0)
			break;
		ssize_t n = read(terminal, seen + seen_n, sizeof seen - 1 - seen_n);
		if (n <= 0)
			break;
		for (ssize_t i = 0; i < n; i++) /* a NUL would hide the rest */
			seen_n += seen[seen_n] != '\0';
	}
	ck_abort_msg("'%s' did not come; the terminal shows: %s", text, seen + from);
}

static pid_t start(const struct terminal_shell *shell, int *terminal)
{
	struct winsize size = {.ws_row = 50, .ws_col = 200};
	write_file(strcmp(shell->name, "zsh") == 0 ? ".zshrc" : "init", shell->init);
	pid_t pid = forkpty(terminal, NULL, NULL, &size);
	ck_assert_int_ge(pid, 0);
	if (pid == 0) {
		if (chdir(folder) == 0 && setenv("TERM", "dumb", 1) == 0 &&
		    setenv("HOME", folder, 1) == 0 && unsetenv("XDG_CONFIG_HOME") == 0)
			execl("/bin/sh", "sh", "-c", shell->start, (char *)NULL);
		_exit(127);
	}
	seen_n = 0;
	wait_for(*terminal, 0, "READY> ");
	return pid;
}

/* Types the line and a tab, runs it, and compares the words that came. */
static void check_line(int terminal, const char *typed, const char *completed)
{
	char keys[256], words[256];
	size_t from = seen_n;
	int n = snprintf(keys, sizeof keys, "jarwright %s\t\n", typed);
	ck_assert_int_eq(write(terminal, keys, (size_t)n), n);
	const char *start_of = wait_for(terminal, from, "<");
	const char *end_of = wait_for(terminal, (size_t)(start_of - seen), ">");
	snprintf(words, sizeof words, "%.*s", (int)(end_of - start_of - 1), start_of + 1);
	/* zsh offers an option that takes a value as "--jar=". */
	if (words[0] && words[strlen(words) - 1] == '=')
		words[strlen(words) - 1] = '\0';
	ck_assert_str_eq(words, completed);
	wait_for(terminal, (size_t)(end_of - seen), "READY> ");
}

static bool is_installed(const char *name)
{
	char command[128];
	snprintf(command, sizeof command, "command -v %s >/dev/null", name);
	return system(command) == 0;
}

START_TEST(the_shell_completes)
{
	const struct terminal_shell *shell = &terminal_shells[_i];
	int terminal;
	if (!is_installed(shell->name)) {
		printf("completion: %s is not installed: its %d lines are skipped\n", shell->name,
		       LINES);
		return;
	}
	pid_t pid = start(shell, &terminal);
	for (size_t i = 0; i < LINES; i++)
		check_line(terminal, lines[i].typed, lines[i].completed);
	kill(pid, SIGHUP);
	close(terminal);
	ck_assert_int_eq(waitpid(pid, NULL, 0), pid);
}
END_TEST

START_TEST(operands_are_those_before_the_first_option)
{
	static const struct {
		const char *synopsis, *choice;
	} cases[] = {
	    {"", ""},
	    {"[--elevation E]", ""},
	    {"FOOD --canner KIND", "FOOD"},
	    {"[COMMAND|TOPIC] [--man]", "COMMAND|TOPIC"},
	    {"add|list [NAME] [FILE|-] [--as A]", "add|list|NAME|FILE|-"},
	    {"[add|remove NAME] [--canner KIND]", "add|remove|NAME"},
	    {"[WORD ...]", "WORD"},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct command command = {.synopsis = cases[i].synopsis};
		char choice[OPERANDS_SIZE];
		operand_choice(&command, choice);
		ck_assert_str_eq(choice, cases[i].choice);
	}
}
END_TEST

Suite *completion_suite(void)
{
	Suite *suite = suite_create("completion");
	TCase *tcase = tcase_create("shells");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_set_timeout(tcase, 120);
	tcase_add_test(tcase, operands_are_those_before_the_first_option);
	tcase_add_loop_test(tcase, the_shell_completes, 0, SHELLS);
	suite_add_tcase(suite, tcase);
	return suite;
}
