/*
 * Programs at the same file at the same time: no write is lost, and nobody is told that the file
 * is locked; neither while they all make it, nor while they all bring an old one up to date.
 */
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "suites.h"
#include "writers.h"

#define SECONDS 3
#define ROUNDS  10
#define AT_ONCE 8

START_TEST(two_writers_and_a_reader_get_on)
{
	const int seconds = figure("JARWRIGHT_SECONDS", SECONDS);
	const char *const first[] = {"kitchen", "--units", "us", NULL};
	ck_assert_int_eq(program_run(first), 0);
	pid_t groups[WRITERS + 1];
	for (int writer = 0; writer < WRITERS; writer++)
		groups[writer] = writer_start(writer, 0);
	groups[WRITERS] = reader_start();
	sleep((unsigned)seconds);
	ck_assert_msg(groups_kill(groups, WRITERS + 1), "it failed: %s", programs_said());
	ck_assert_str_eq(programs_said(), "");
	writers_check(1, "two writers");
	for (int writer = 0; writer < WRITERS; writer++)
		ck_assert_int_gt(acknowledged(writer), 0);
	printf("two writers and a reader: %d s, %d and %d writes, 0 lost, nobody turned away\n",
	       seconds, acknowledged(0), acknowledged(1));
}
END_TEST

/* So many first writes at one moment; each is another lot. */
static void all_at_once(const char *what)
{
	pid_t pids[AT_ONCE];
	for (int i = 0; i < AT_ONCE; i++) {
		pids[i] = fork();
		ck_assert_int_ge(pids[i], 0);
		if (pids[i] == 0) {
			char name[32];
			snprintf(name, sizeof name, "a-%d", i);
			const char *const add[] = {"lot", "add", name, "--kind", "lids", NULL};
			_exit(program_run(add));
		}
	}
	for (int i = 0; i < AT_ONCE; i++) {
		int status;
		ck_assert_int_eq(waitpid(pids[i], &status, 0), pids[i]);
		ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "%s: %s", what,
			      programs_said());
	}
	ck_assert_msg(written(0) == AT_ONCE, "%s: %d of %d writes are there", what, written(0),
		      AT_ONCE);
	ck_assert_str_eq(programs_said(), "");
	writers_check(AT_ONCE, what);
}

START_TEST(all_make_the_file_at_once)
{
	for (int round = 0; round < ROUNDS; round++) {
		writers_anew(false);
		all_at_once("a new file");
	}
}
END_TEST

START_TEST(all_bring_an_old_file_up_to_date_at_once)
{
	for (int round = 0; round < ROUNDS; round++) {
		writers_anew(true);
		all_at_once("an old file");
	}
}
END_TEST

Suite *two_suite(void)
{
	Suite *suite = suite_create("two");
	TCase *tcase = tcase_create("at once");
	tcase_set_timeout(tcase, 3600);
	tcase_add_checked_fixture(tcase, writers_setup, writers_teardown);
	tcase_add_test(tcase, two_writers_and_a_reader_get_on);
	tcase_add_test(tcase, all_make_the_file_at_once);
	tcase_add_test(tcase, all_bring_an_old_file_up_to_date_at_once);
	suite_add_tcase(suite, tcase);
	return suite;
}
