/*
 * Power loss at every sync of a canning day, before it and after it, and at the end of each
 * command: what was acknowledged is there, whole, and the file goes on working.
 */
#include <stdio.h>

#include "day.h"
#include "disk.h"
#include "suites.h"

#define SEEDS 6

/* With every other seed. */
static bool has_reader(uint64_t seed)
{
	return seed % 2 == 0;
}

static void one_loss(size_t k, bool with_last, int n, bool after, uint64_t seed)
{
	char what[256];
	struct outcome outcome;
	const struct fault fault = {
	    .kind = FAULT_POWER, .n = n, .after = after, .seed = seed, .reader = has_reader(seed)};
	snprintf(what, sizeof what, "power lost %s sync %d of '%.120s', seed %d",
		 after ? "after" : "before", n, day_name(k), (int)seed);
	day_restore(with_last ? k - 1 : k);
	day_run(k, with_last, &fault, &outcome);
	ck_assert_msg(outcome.status == DISK_POWER_LOST, "%s: exit %d: %s", what, outcome.status,
		      outcome.said);
	bool returned = n > outcome.syncs && outcome.syncs > 0;
	bool done = day_check(returned ? k + 1 : k, k + 1, what);
	if (done && k + 1 == day_commands())
		return;
	day_run(done ? k + 1 : k, false, &(struct fault){0}, &outcome);
	ck_assert_msg(outcome.status == day_status(done ? k + 1 : k), "%s: then exit %d: %s", what,
		      outcome.status, outcome.said);
	day_check(done ? k + 2 : k + 1, done ? k + 2 : k + 1, what);
}

static int count_syncs(size_t k, bool with_last, bool reader)
{
	struct outcome outcome;
	day_restore(with_last ? k - 1 : k);
	day_run(k, with_last, &(struct fault){.reader = reader}, &outcome);
	ck_assert_msg(outcome.status == day_status(k), "%s: exit %d: %s", day_name(k),
		      outcome.status, outcome.said);
	return outcome.syncs;
}

START_TEST(power_lost_at_any_sync_loses_nothing_acknowledged)
{
	int points = 0, tried = 0;
	const int stride = day_stride(7);
	for (size_t k = 0; k < day_commands(); k++) {
		const int syncs[] = {count_syncs(k, k > 0, false), count_syncs(k, k > 0, true)};
		ck_assert_msg(syncs[0] > 0 && syncs[1] > 0, "%s: writes nothing", day_name(k));
		for (uint64_t seed = 1; seed <= SEEDS; seed++)
			/* The last point is after the command has returned. */
			for (int n = 1; n <= syncs[has_reader(seed)] + 1; n++)
				for (int after = 0; after < 2; after++) {
					if (points++ % stride != 0)
						continue;
					one_loss(k, k > 0, n, after, seed);
					tried++;
				}
	}
	printf("power loss: %d of %d points tried, each sync before and after with %d seeds, half "
	       "of them beside a reader\n",
	       tried, points, SEEDS);
}
END_TEST

Suite *power_suite(void)
{
	Suite *suite = suite_create("power");
	TCase *tcase = tcase_create("syncs");
	tcase_set_timeout(tcase, 3600);
	tcase_add_checked_fixture(tcase, day_setup, day_teardown);
	tcase_add_test(tcase, power_lost_at_any_sync_loses_nothing_acknowledged);
	suite_add_tcase(suite, tcase);
	return suite;
}
