/*
 * The whole command behind a pseudo-terminal, by the test's clock; the household is invented.
 * Applesauce, pints, at sea level: 15 minutes (AIB 539 (2015) guide 2, p. 2-8).
 */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <termios.h>
#include <unistd.h>

#include "suites.h"
#include "terminal.h"

static struct terminal t;
static const char *const first[] = {"26-001", "--canner", "pot", "--jars", "7 pints", NULL};
static const char *const again[] = {"26-001", NULL};

static void set_up(void)
{
	kitchen_open();
	memset(&t, 0, sizeof t);
	kitchen_must("kitchen --elevation 0ft");
	kitchen_must("canner add pot --kind boiling-water");
	kitchen_must("canner add dial --kind dial-gauge");
	kitchen_must("batch start applesauce --canner pot --jar pint --at '2026-01-05 09:00'");
}

static void start(const char *const *words)
{
	terminal_start(&t, 80, 24, words);
}

/* The head of the page names the step. */
static void see_step(const char *word)
{
	char head[32];
	snprintf(head, sizeof head, "  %s  ", word);
	terminal_see(&t, head);
}

/* Enter, until the clock stands at this step. */
static void done(const char *next)
{
	terminal_key(&t, "\r");
	see_step(next);
}

static void to_process(void)
{
	start(first);
	see_step("preheat");
	done("fill");
	done("heat");
	terminal_pass(&t, 60);
	done("process");
}

static void to_end(const char *says, int status)
{
	done("rest");
	terminal_pass(&t, 300);
	done("unload");
	terminal_key(&t, "\r");
	terminal_see(&t, says);
	ck_assert_int_eq(terminal_end(&t), status);
}

static void check_log(const char *load)
{
	char line[512];
	kitchen_answer("log verify", line, sizeof line);
	ck_assert_ptr_nonnull(strstr(line, "the log is sound"));
	kitchen_answer("batch show 26-001 | grep '^load'", line, sizeof line);
	if (!strstr(line, load))
		ck_abort_msg("'%s' is not '%s'", line, load);
}

START_TEST(whole_load)
{
	to_process();
	terminal_pass(&t, 899);
	terminal_see(&t, "wait");
	terminal_key(&t, "\r");
	terminal_see(&t, "Not yet: 00:01 still to go");
	ck_assert_int_eq(t.bells, 0);
	terminal_pass(&t, 1);
	terminal_see(&t, "TIME IS UP");
	/* Rings until somebody answers, and no more often than every ten seconds. */
	terminal_pass(&t, 60);
	ck_assert_int_ge(t.bells, 3);
	ck_assert_int_le(t.bells, 7);
	to_end("PROCESSED", 0);
	check_log("load 1:   processed");
	ck_assert(!t.colour);
	ck_assert(!t.alternate);
	/* Taken back, the load is as it was before it was logged: out of the canner. */
	kitchen_must("undo 26-001");
	start(again);
	terminal_see(&t, "PROCESSED");
	ck_assert_int_eq(terminal_end(&t), 0);
	check_log("load 1:   processed");
}
END_TEST

START_TEST(lost_a_second_before_the_end)
{
	char facts[128];
	to_process();
	terminal_pass(&t, 14 * 60 + 59);
	terminal_key(&t, "b");
	terminal_see(&t, "The whole time starts again");
	see_step("heat");
	terminal_pass(&t, 120);
	done("process");
	terminal_pass(&t, 14 * 60 + 59);
	terminal_key(&t, "\r");
	terminal_see(&t, "Not yet: 00:01 still to go");
	terminal_pass(&t, 1);
	to_end("PROCESSED", 0);
	check_log("load 1:   processed");
	kitchen_answer("batch show 26-001 --json | grep -o '\"at_s\":899,\"length_s\":120'", facts,
		       sizeof facts);
	ck_assert_str_eq(facts, "\"at_s\":899,\"length_s\":120\n");
}
END_TEST

/* Killed and taken up again in every step. */
START_TEST(killed_at_each_step)
{
	static const char *const steps[] = {"preheat", "fill", "heat"};
	start(first);
	for (size_t i = 0; i < 3; i++) {
		see_step(steps[i]);
		terminal_kill(&t, SIGKILL);
		terminal_jump(&t, 600);
		start(again);
		see_step(steps[i]);
		terminal_see(&t, "Nobody watched for 10:00");
		terminal_key(&t, "\r");
	}
	see_step("process");
	terminal_pass(&t, 600);
	terminal_kill(&t, SIGKILL);
	terminal_jump(&t, 600);
	start(again);
	/* What it last knew of is the step's beginning. */
	terminal_see(&t, "Nobody watched for 20:00");
	terminal_key(&t, "\r");
	terminal_see(&t, "Did it hold");
	terminal_key(&t, "n");
	see_step("heat");
	done("process");
	terminal_pass(&t, 900);
	done("rest");
	terminal_kill(&t, SIGKILL);
	start(again);
	see_step("rest");
	terminal_pass(&t, 300);
	done("unload");
	terminal_kill(&t, SIGKILL);
	start(again);
	see_step("unload");
	terminal_key(&t, "\r");
	terminal_see(&t, "PROCESSED");
	ck_assert_int_eq(terminal_end(&t), 0);
	check_log("load 1:   processed");
}
END_TEST

START_TEST(sleeps_for_an_hour)
{
	to_process();
	terminal_pass(&t, 60);
	terminal_jump(&t, 3600);
	terminal_see(&t, "Did it hold all that time?");
	terminal_see(&t, "Nobody watched for 1:00:00");
	terminal_key(&t, "\r");
	terminal_pass(&t, 2);
	ck_assert(!terminal_has(&t, "rest"));
	terminal_key(&t, "b"); /* not sure */
	terminal_see(&t, "The whole time starts again");
	done("process");
	terminal_pass(&t, 60);
	terminal_jump(&t, 3600);
	terminal_see(&t, "Did it hold all that time?");
	terminal_key(&t, "y");
	terminal_see(&t, "on your word");
	to_end("on your word", 0);
	check_log("load 1:   processed");
}
END_TEST

START_TEST(wall_clock_is_set)
{
	to_process();
	terminal_pass(&t, 300);
	t.clock->wall_ms += INT64_C(86400000);
	terminal_pass(&t, 300);
	terminal_key(&t, "\r");
	terminal_see(&t, "Not yet: 05:00 still to go");
	t.clock->wall_ms -= INT64_C(2) * 86400000;
	terminal_pass(&t, 299);
	terminal_key(&t, "\r");
	terminal_see(&t, "Not yet: 00:01 still to go");
	terminal_pass(&t, 1);
	to_end("PROCESSED", 0);
	check_log("load 1:   processed");
}
END_TEST

START_TEST(machine_starts_anew)
{
	to_process();
	terminal_pass(&t, 800);
	terminal_kill(&t, SIGKILL);
	/* The clock of the new start has gone on further than the old one. */
	snprintf(t.clock->boot, sizeof t.clock->boot, "second");
	t.clock->now_ns *= 10;
	start(again);
	terminal_see(&t, "The machine was started anew");
	see_step("heat");
	done("process");
	terminal_key(&t, "\r");
	terminal_see(&t, "Not yet: 15:00 still to go");
	terminal_pass(&t, 900);
	to_end("PROCESSED", 0);
	check_log("load 1:   processed");
}
END_TEST

START_TEST(two_watches_of_one_load)
{
	struct terminal other = {0};
	to_process();
	other.clock = t.clock;
	terminal_start(&other, 80, 24, again);
	terminal_see(&other, "watched by another jarwright already");
	ck_assert_int_eq(terminal_end(&other), 2);
	terminal_start(&other, 80, 24, first);
	terminal_see(&other, "leave --canner out");
	ck_assert_int_eq(terminal_end(&other), 2);
	/* Another load in another canner is no other watch of this one. */
	kitchen_must("canner add kettle --kind boiling-water");
	static const char *const second[] = {"26-001", "--load", "2",       "--canner",
					     "kettle", "--jars", "3 pints", NULL};
	terminal_start(&other, 80, 24, second);
	terminal_see(&other, "load 2");
	terminal_key(&other, "q");
	ck_assert_int_eq(terminal_end(&other), 5);
	terminal_pass(&t, 900);
	to_end("PROCESSED", 0);
	check_log("load 1:   processed");
}
END_TEST

/* Nothing is wider than the terminal, and the figures are there. */
static void check_size(int columns, int rows, bool big)
{
	struct winsize size = {.ws_col = (unsigned short)columns, .ws_row = (unsigned short)rows};
	memset(t.screen, ' ', sizeof t.screen);
	t.columns = columns;
	t.rows = rows;
	ck_assert_int_eq(ioctl(t.master, TIOCSWINSZ, &size), 0);
	terminal_pass(&t, 1);
	terminal_see(&t, "lost");
	terminal_see(&t, "leave");
	ck_assert_int_eq(terminal_has(&t, "######"), big);
	for (int row = rows; row < SCREEN_ROWS; row++)
		for (int column = 0; column < SCREEN_COLUMNS; column++)
			ck_assert_int_eq(t.screen[row][column], ' ');
}

START_TEST(sizes)
{
	to_process();
	check_size(40, 24, true);
	check_size(200, 50, true);
	ck_assert(terminal_has(&t, "##########################")); /* larger where there is room */
	check_size(40, 10, false);
	check_size(80, 24, true);
	terminal_key(&t, "?");
	terminal_see(&t, "watch the canner");
	terminal_key(&t, "?");
	terminal_see(&t, "STILL TO GO");
	terminal_key(&t, "q");
	ck_assert_int_eq(terminal_end(&t), 5);
	ck_assert(!t.colour);
}
END_TEST

/* Whatever ends it, the terminal is as it was, and nothing is lost. */
START_TEST(ends)
{
	static const int signals[] = {SIGINT, SIGTERM, SIGHUP, SIGQUIT};
	struct termios before, after;
	start(first);
	see_step("preheat");
	for (size_t i = 0; i < 4; i++) {
		terminal_key(&t, "q");
		terminal_see(&t, "goes on counting");
		ck_assert_int_eq(terminal_end(&t), 5);
		start(again);
		ck_assert_int_eq(tcgetattr(t.master, &before), 0);
		see_step("preheat");
		int slave = dup(t.master);
		if (signals[i] == SIGINT)
			terminal_key(&t, "\003");
		else
			kill(t.child, signals[i]);
		ck_assert_int_eq(terminal_end(&t), 5);
		ck_assert(!t.alternate);
		ck_assert_int_eq(tcgetattr(slave, &after), 0);
		ck_assert_uint_ne(after.c_lflag & (tcflag_t)ICANON, 0);
		ck_assert_uint_ne(after.c_lflag & (tcflag_t)ECHO, 0);
		close(slave);
		start(again);
		see_step("preheat");
	}
	terminal_key(&t, "q");
	ck_assert_int_eq(terminal_end(&t), 5);
}
END_TEST

/* The disk fails for a while: the count goes on, and all of it is saved in the end. */
START_TEST(cannot_save_for_a_while)
{
	char away[160];
	const char *path = getenv("JARWRIGHT_DB");
	ck_assert_ptr_nonnull(path);
	if (!path) /* asserted: said for the analyzer */
		return;
	snprintf(away, sizeof away, "%s.away", path);
	to_process();
	terminal_pass(&t, 600);
	ck_assert_int_eq(rename(path, away), 0);
	ck_assert_int_eq(mkdir(path, 0700), 0);
	terminal_key(&t, "b");
	terminal_see(&t, "NOT SAVED YET");
	done("process");
	terminal_see(&t, "NOT SAVED YET");
	terminal_pass(&t, 450);
	ck_assert_int_eq(rmdir(path), 0);
	ck_assert_int_eq(rename(away, path), 0);
	terminal_pass(&t, 450);
	to_end("PROCESSED", 0);
	check_log("load 1:   processed");
	kitchen_answer("batch show 26-001 | grep -c 'what: lost'", away, sizeof away);
	ck_assert_str_eq(away, "1\n");
}
END_TEST

/* A dial is read, and what she did not see stays unclear. */
START_TEST(pressure_is_asked)
{
	static const char *const words[] = {"26-002", "--canner", "dial",
					    "--jars", "9 pints",  NULL};
	kitchen_must("batch start asparagus --canner dial --jar pint --pack raw");
	terminal_start(&t, 80, 50, words);
	see_step("fill");
	done("heat");
	done("vent");
	terminal_pass(&t, 590);
	terminal_key(&t, "b"); /* the steam stopped: vented anew */
	see_step("heat");
	done("vent");
	terminal_pass(&t, 600);
	done("pressurize");
	done("process");
	terminal_pass(&t, 1800);
	done("depressurize");
	terminal_key(&t, "<");
	terminal_see(&t, "once more");
	terminal_pass(&t, 600);
	done("open");
	terminal_pass(&t, 600);
	done("unload");
	terminal_key(&t, "\r");
	terminal_see(&t, "Lowest reading of the gauge");
	terminal_key(&t, "eleven\n");
	terminal_see(&t, "low-psi");
	terminal_key(&t, "\n");
	terminal_see(&t, "CLEAR  load 1 of batch 26-002");
	ck_assert_int_eq(terminal_end(&t), 5);
}
END_TEST

START_TEST(plain_lines)
{
	static const char *const words[] = {"26-001",  "--canner", "pot", "--jars",
					    "7 pints", "--plain",  NULL};
	start(words);
	terminal_see(&t, "step 1 of 7");
	terminal_key(&t, "done\n");
	terminal_see(&t, "step 2 of 7");
	terminal_key(&t, "done\ndone\n");
	terminal_see(&t, "step 4 of 7");
	terminal_pass(&t, 900);
	terminal_see(&t, "the time is up");
	terminal_key(&t, "done\n");
	terminal_see(&t, "step 5 of 7");
	terminal_pass(&t, 300);
	terminal_key(&t, "done\ndone\n");
	terminal_see(&t, "PROCESSED");
	ck_assert_int_eq(terminal_end(&t), 0);
	/* The line discipline writes the returns; the program no control character at all. */
	for (size_t i = 0; i < t.raw_n; i++)
		ck_assert(t.raw[i] == '\r' || t.raw[i] == '\n' || t.raw[i] == '\t' ||
			  (unsigned char)t.raw[i] >= ' ');
	check_log("load 1:   processed");
}
END_TEST

Suite *terminal_suite(void)
{
	Suite *suite = suite_create("run: terminal");
	TCase *tests = tcase_create("terminal");
	tcase_set_timeout(tests, 120);
	tcase_add_checked_fixture(tests, set_up, kitchen_close);
	tcase_add_test(tests, whole_load);
	tcase_add_test(tests, lost_a_second_before_the_end);
	tcase_add_test(tests, killed_at_each_step);
	tcase_add_test(tests, sleeps_for_an_hour);
	tcase_add_test(tests, wall_clock_is_set);
	tcase_add_test(tests, machine_starts_anew);
	tcase_add_test(tests, two_watches_of_one_load);
	tcase_add_test(tests, sizes);
	tcase_add_test(tests, ends);
	tcase_add_test(tests, cannot_save_for_a_while);
	tcase_add_test(tests, pressure_is_asked);
	tcase_add_test(tests, plain_lines);
	suite_add_tcase(suite, tests);
	return suite;
}
