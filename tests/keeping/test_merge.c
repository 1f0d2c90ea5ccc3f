/* Files of several devices, merged in any order: nothing lost, and one state. */
#include "devices.h"
#include "jarwright/household_recipes.h"
#include "suites.h"

enum { SEEDS = 12 };

static void must_equal(char *a, char *b, const char *what, uint32_t seed)
{
	if (strcmp(a, b) != 0)
		ck_abort_msg("seed %u: %s differ", seed, what);
	free(a);
	free(b);
}

static void must_agree(struct log_fixture *a, struct log_fixture *b, uint32_t seed)
{
	must_equal(exported(a), exported(b), "the exports", seed);
	must_equal(tables_of(a), tables_of(b), "the states", seed);
}

START_TEST(two_devices_end_with_the_same)
{
	struct log_fixture a, b;
	uint32_t seed = (uint32_t)_i + 1;
	new_device(&a);
	new_device(&b);
	for (int round = 0; round < 3; round++) {
		random_days(&a, &seed, 25);
		random_days(&b, &seed, 25);
		if (round == 1)
			must_merge(&a, &b);
	}
	must_merge(&a, &b);
	must_merge(&b, &a);
	must_agree(&a, &b, (uint32_t)_i + 1);
	must_be_sound(&a);
	must_be_sound(&b);
	char *before = exported(&a);
	ck_assert_int_eq(must_merge(&a, &b), 0);
	must_equal(before, exported(&a), "a second merge and the first", (uint32_t)_i + 1);
	fixture_close(&a);
	fixture_close(&b);
}
END_TEST

/* Three devices, of which one may have begun as a copy of another: its chain then forks. */
START_TEST(any_order_of_merging_ends_with_the_same)
{
	static const int orders[][3] = {{0, 1, 2}, {2, 1, 0}, {1, 0, 2}, {1, 2, 0}};
	struct log_fixture device[3], sum[4];
	uint32_t seed = (uint32_t)_i + 100;
	new_device(&device[0]);
	new_device(&device[1]);
	random_days(&device[0], &seed, 15);
	if (_i % 2)
		copy_device(&device[0], &device[2]);
	else
		new_device(&device[2]);
	for (int round = 0; round < 3; round++) {
		for (int i = 0; i < 3; i++)
			random_days(&device[i], &seed, 12);
		if (round == 0)
			must_merge(&device[chance(&seed, 2)], &device[2]);
	}
	for (int i = 0; i < 4; i++) {
		new_device(&sum[i]);
		for (int k = 0; k < 3; k++)
			must_merge(&sum[i], &device[orders[i][k]]);
		must_be_sound(&sum[i]);
		if (i > 0)
			must_agree(&sum[0], &sum[i], (uint32_t)_i + 100);
	}
	/* And each with each, twice round. */
	for (int round = 0; round < 2; round++)
		for (int i = 0; i < 3; i++)
			must_merge(&device[i], &device[(i + 1) % 3]);
	for (int i = 0; i < 3; i++) {
		must_be_sound(&device[i]);
		must_agree(&sum[0], &device[i], (uint32_t)_i + 100);
	}
	for (int i = 0; i < 3; i++)
		fixture_close(&device[i]);
	for (int i = 0; i < 4; i++)
		fixture_close(&sum[i]);
}
END_TEST

static struct log_fixture a, b;
static struct intake_report report;

static void setup(void)
{
	new_device(&a);
	new_device(&b);
}

static void teardown(void)
{
	fixture_close(&a);
	fixture_close(&b);
}

static void merge_b(bool dry)
{
	memset(&a.err, 0, sizeof a.err);
	if (!household_merge(a.db, b.path, dry, NULL, &report, &a.err))
		ck_abort_msg("%s", a.err.text);
}

START_TEST(a_code_given_out_twice_is_reported)
{
	const struct day day = {.number = 41, .at = NOON_MS};
	day_start(&a, &day);
	day_start(&b, &day);
	ck_assert(household_name_device(a.db, "phone", &a.err));
	ck_assert(household_name_device(b.db, "tablet", &b.err));
	merge_b(false);
	ck_assert_uint_eq(report.twins_n, 1);
	ck_assert_str_eq(report.twins[0].code, "26-041");
	ck_assert_str_eq(report.twins[0].devices[0], "phone");
	ck_assert_str_eq(report.twins[0].devices[1], "tablet");
}
END_TEST

START_TEST(a_dry_run_keeps_nothing)
{
	day_start(&b, &(struct day){.number = 1, .at = NOON_MS});
	merge_b(true);
	ck_assert_int_eq(report.events_new, 1);
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM event"), 0);
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM chain"), 0);
}
END_TEST

START_TEST(a_copied_file_forks_and_goes_on_as_a_new_device)
{
	struct log_fixture copy;
	int64_t batch = day_start(&a, &(struct day){.number = 1, .at = NOON_MS});
	copy_device(&a, &copy);
	day_load(&a, batch, 3, "pint", "processed", NOON_MS);
	day_load(&copy, batch, 5, "pint", "processed", NOON_MS);
	household_close(b.db);
	b.db = copy.db;
	memcpy(b.path, copy.path, sizeof b.path);
	merge_b(false);
	ck_assert_uint_eq(report.forks_n, 1);
	ck_assert_int_eq(report.forks[0].after, 1);
	ck_assert(report.new_device);
	/* Both loads say that they are the first: the later one does not fit, and is kept. */
	ck_assert_uint_eq(report.conflicts_n, 1);
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM event WHERE kind = 'load'"), 2);
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM chain WHERE own = 1"), 0);
	day_start(&a, &(struct day){.number = 2, .at = NOON_MS});
	ck_assert_int_eq(log_count(&a, "SELECT count(DISTINCT device) FROM chain"), 2);
	must_be_sound(&a);
	merge_b(false);
	ck_assert_int_eq(report.events_new, 0);
	ck_assert(!report.new_device);
	ck_assert_uint_eq(report.forks_n, 0);
	char command[160];
	snprintf(command, sizeof command, "rm -r '%s'", copy.folder);
	ck_assert_int_eq(system(command), 0);
}
END_TEST

START_TEST(recipes_stand_beside_each_other)
{
	static const char ours[] = "1 cup plums\n", theirs[] = "2 cups plums\n";
	bool already;
	ck_assert(household_add_recipe(a.db, "chutney", SYSTEM_US, ours, sizeof ours - 1, &already,
				       &a.err));
	ck_assert(household_add_recipe(b.db, "chutney", SYSTEM_US, theirs, sizeof theirs - 1,
				       &already, &b.err));
	day_start(&b, &(struct day){.number = 1, .at = NOON_MS});
	ck_assert(household_name_device(b.db, "tablet", &b.err));
	merge_b(false);
	ck_assert_int_eq(report.recipes_beside, 1);
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM recipe WHERE name = 'chutney "
				       "(tablet)' AND source LIKE '2 cups%'"),
			 1);
	/* There and back, and again: nothing more comes. */
	must_merge(&b, &a);
	for (int i = 0; i < 2; i++) {
		merge_b(false);
		ck_assert_int_eq(report.recipes_new, 0);
		must_merge(&b, &a);
	}
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM recipe"), 2);
	ck_assert_int_eq(log_count(&b, "SELECT count(*) FROM recipe"), 2);
}
END_TEST

START_TEST(an_elevation_is_never_taken_over)
{
	struct kitchen kitchen;
	const struct kitchen_change high = {true, 3000000, "3000 ft", UNITS_UNSTATED};
	ck_assert(household_change_kitchen(b.db, &high, &b.err));
	merge_b(false);
	ck_assert(report.elevation_differs);
	ck_assert_str_eq(report.elevation_there, "3000 ft");
	ck_assert(household_kitchen(a.db, &kitchen, &a.err));
	ck_assert(!kitchen.elevation_stated);
}
END_TEST

static void damage(const char *sql)
{
	sqlite3 *raw;
	household_close(b.db);
	b.db = NULL;
	ck_assert_int_eq(sqlite3_open(b.path, &raw), SQLITE_OK);
	ck_assert_int_eq(sqlite3_exec(raw, sql, NULL, NULL, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK);
}

START_TEST(an_altered_file_is_refused)
{
	day_start(&b, &(struct day){.number = 1, .at = NOON_MS});
	day_start(&b, &(struct day){.number = 2, .at = NOON_MS});
	damage("DROP TRIGGER event_unchanged; UPDATE event SET at_ms = at_ms + 1 WHERE id = 1");
	memset(&a.err, 0, sizeof a.err);
	ck_assert(!household_merge(a.db, b.path, false, NULL, &report, &a.err));
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM event"), 0);
}
END_TEST

START_TEST(a_missing_file_is_no_empty_household)
{
	memset(&a.err, 0, sizeof a.err);
	ck_assert(!household_merge(a.db, "/nonexistent/x.db", false, NULL, &report, &a.err));
	ck_assert_ptr_nonnull(strstr(a.err.text, "/nonexistent/x.db"));
}
END_TEST

Suite *merge_suite(void)
{
	Suite *suite = suite_create("merge");
	TCase *random = tcase_create("random");
	tcase_set_timeout(random, 300);
	tcase_add_loop_test(random, two_devices_end_with_the_same, 0, SEEDS);
	tcase_add_loop_test(random, any_order_of_merging_ends_with_the_same, 0, SEEDS);
	suite_add_tcase(suite, random);
	TCase *single = tcase_create("single");
	tcase_add_checked_fixture(single, setup, teardown);
	tcase_add_test(single, a_code_given_out_twice_is_reported);
	tcase_add_test(single, a_dry_run_keeps_nothing);
	tcase_add_test(single, a_copied_file_forks_and_goes_on_as_a_new_device);
	tcase_add_test(single, recipes_stand_beside_each_other);
	tcase_add_test(single, an_elevation_is_never_taken_over);
	tcase_add_test(single, an_altered_file_is_refused);
	tcase_add_test(single, a_missing_file_is_no_empty_household);
	suite_add_tcase(suite, single);
	return suite;
}
