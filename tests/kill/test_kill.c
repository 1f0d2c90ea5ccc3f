/*
 * Two writers killed at random moments, also while they make the file or bring an old one up to
 * date: every acknowledged write is there, the log verifies and the file is sound.
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

#include "suites.h"
#include "writers.h"

#define RUNS      20
#define MOMENT_US 250000 /* the latest moment after the start */

/* How far the writers come by then is up to the machine. */
static useconds_t moment(void)
{
	static uint32_t state = 2026;
	state = state * UINT32_C(1664525) + UINT32_C(1013904223);
	return (state >> 8) % MOMENT_US;
}

START_TEST(a_killed_program_loses_nothing_acknowledged)
{
	const int runs = figure("JARWRIGHT_KILLS", RUNS);
	int acked = 0, more = 0;
	for (int run = 0; run < runs; run++) {
		char what[64];
		pid_t groups[WRITERS];
		snprintf(what, sizeof what, "run %d", run + 1);
		writers_anew(run % 2 == 1);
		for (int writer = 0; writer < WRITERS; writer++)
			groups[writer] = writer_start(writer, 0);
		usleep(moment());
		ck_assert_msg(groups_kill(groups, WRITERS), "%s: a write failed: %s", what,
			      programs_said());
		more += writers_check(1, what);
		for (int writer = 0; writer < WRITERS; writer++)
			acked += acknowledged(writer);
	}
	ck_assert_int_gt(acked, 0);
	printf("kill -9: %d runs of %d writers, %d acknowledged writes, 0 lost; %d more were done "
	       "and not acknowledged\n",
	       runs, WRITERS, acked, more);
}
END_TEST

Suite *kill_suite(void)
{
	Suite *suite = suite_create("kill");
	TCase *tcase = tcase_create("moments");
	tcase_set_timeout(tcase, 3600);
	tcase_add_checked_fixture(tcase, writers_setup, writers_teardown);
	tcase_add_test(tcase, a_killed_program_loses_nothing_acknowledged);
	suite_add_tcase(suite, tcase);
	return suite;
}
