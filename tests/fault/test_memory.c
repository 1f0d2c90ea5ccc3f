/*
 * Memory that runs out at every allocation of every command, once or from there on: a message
 * and nothing half-done, or success with everything there; never a crash.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "day.h"
#include "suites.h"

static int survived; /* the allocation was one that the command can do without */

static void one_failure(size_t k, const struct fault *fault)
{
	char what[256];
	struct outcome outcome;
	snprintf(what, sizeof what, "no memory %s allocation %d of '%.120s'",
		 fault->stays ? "from" : "at", fault->n, day_name(k));
	day_restore(k);
	day_run(k, false, fault, &outcome);
	bool worked = outcome.status == day_status(k);
	/* A file that she named and that cannot be read is wrong usage, whatever the reason. */
	bool unread = outcome.status == 2 && strstr(outcome.said, strerror(ENOMEM));
	ck_assert_msg(worked || unread || outcome.status == 1, "%s: exit %d: %s", what,
		      outcome.status, outcome.said);
	ck_assert_msg(worked || strncmp(outcome.said, "jarwright: ", 11) == 0, "%s: said '%s'",
		      what, outcome.said);
	bool done = day_check(worked ? k + 1 : k, k + 1, what);
	survived += worked;
	ck_assert_msg(worked || !done || strstr(outcome.said, "the change was saved"),
		      "%s: done, but it said: %s", what, outcome.said);
	if (done || fault->n % 16 != 1)
		return;
	day_run(k, false, &(struct fault){0}, &outcome);
	ck_assert_msg(outcome.status == day_status(k), "%s: then exit %d: %s", what, outcome.status,
		      outcome.said);
	day_check(k + 1, k + 1, what);
}

START_TEST(memory_that_runs_out_leaves_nothing_half_done)
{
	long points = 0, tried = 0;
	const int stride = day_stride(149);
	for (size_t k = 0; k < day_commands(); k++) {
		struct outcome outcome;
		day_restore(k);
		day_run(k, false, &(struct fault){.kind = FAULT_MEMORY}, &outcome);
		ck_assert_int_eq(outcome.status, day_status(k));
		ck_assert_int_gt((int)outcome.allocations, 100);
		for (int n = 1; n <= (int)outcome.allocations; n++)
			for (int stays = 0; stays < 2; stays++) {
				if (points++ % stride != 0)
					continue;
				const struct fault fault = {
				    .kind = FAULT_MEMORY, .n = n, .stays = stays != 0};
				one_failure(k, &fault);
				tried++;
			}
	}
	printf("memory: %ld of %ld points tried, %d of them did without\n", tried, points,
	       survived);
}
END_TEST

Suite *memory_suite(void)
{
	Suite *suite = suite_create("memory");
	TCase *tcase = tcase_create("allocations");
	tcase_set_timeout(tcase, 3600);
	tcase_add_checked_fixture(tcase, day_setup, day_teardown);
	tcase_add_test(tcase, memory_that_runs_out_leaves_nothing_half_done);
	suite_add_tcase(suite, tcase);
	return suite;
}
