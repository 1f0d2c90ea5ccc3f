/*
 * A disk that is full or fails at every write, truncation and sync of every command: a clear
 * message and nothing half-done, or success with everything there; then the command works.
 */
#include <sqlite3.h>
#include <stdio.h>
#include <string.h>

#include "day.h"
#include "suites.h"

static int unsure; /* failed, and found done all the same */

static void one_refusal(size_t k, const struct fault *fault)
{
	char what[256];
	struct outcome outcome;
	snprintf(what, sizeof what, "%s %s at write %d of '%.120s'",
		 fault->code == SQLITE_FULL ? "full" : "failing", fault->stays ? "from" : "once",
		 fault->n, day_name(k));
	day_restore(k);
	day_run(k, false, fault, &outcome);
	bool worked = outcome.status == day_status(k);
	ck_assert_msg(worked || outcome.status == 1, "%s: exit %d: %s", what, outcome.status,
		      outcome.said);
	ck_assert_msg(worked || strncmp(outcome.said, "jarwright: ", 11) == 0, "%s: said '%s'",
		      what, outcome.said);
	bool done = day_check(worked ? k + 1 : k, k + 1, what);
	if (worked)
		return;
	unsure += done;
	ck_assert_msg(!done || !strstr(outcome.said, "nothing was changed"), "%s: it was: %s", what,
		      outcome.said);
	if (done)
		return;
	day_run(k, false, &(struct fault){0}, &outcome);
	ck_assert_msg(outcome.status == day_status(k), "%s: then exit %d: %s", what, outcome.status,
		      outcome.said);
	day_check(k + 1, k + 1, what);
}

START_TEST(a_refused_write_leaves_nothing_half_done)
{
	int points = 0, tried = 0;
	const int stride = day_stride(7);
	for (size_t k = 0; k < day_commands(); k++) {
		struct outcome outcome;
		day_restore(k);
		day_run(k, false, &(struct fault){0}, &outcome);
		ck_assert_int_gt(outcome.writes, 0);
		for (int n = 1; n <= outcome.writes; n++)
			for (int way = 0; way < 4; way++) {
				if (points++ % stride != 0)
					continue;
				const struct fault fault = {.kind = FAULT_DISK,
							    .n = n,
							    .code = way & 1 ? SQLITE_FULL
									    : SQLITE_IOERR,
							    .stays = way & 2};
				one_refusal(k, &fault);
				tried++;
			}
	}
	printf("refused writes: %d of %d points tried; %d failed at the last moment and were found "
	       "done\n",
	       tried, points, unsure);
}
END_TEST

Suite *disk_suite(void)
{
	Suite *suite = suite_create("disk");
	TCase *tcase = tcase_create("writes");
	tcase_set_timeout(tcase, 3600);
	tcase_add_checked_fixture(tcase, day_setup, day_teardown);
	tcase_add_test(tcase, a_refused_write_leaves_nothing_half_done);
	suite_add_tcase(suite, tcase);
	return suite;
}
