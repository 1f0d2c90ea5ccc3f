/* Backups and putting them back. */
#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>

#include "devices.h"
#include "suites.h"

static struct log_fixture a;
static char copy[160], kept[HOUSEHOLD_PATH_SIZE + 32];

static void setup(void)
{
	new_device(&a);
	snprintf(copy, sizeof copy, "%s/copy.db", a.folder);
	day_start(&a, &(struct day){.number = 1, .at = NOON_MS});
	if (!household_backup(a.db, copy, &a.err))
		ck_abort_msg("%s", a.err.text);
	day_start(&a, &(struct day){.number = 2, .at = NOON_MS});
}

static void teardown(void)
{
	fixture_close(&a);
}

static void reopen(void)
{
	household_close(a.db);
	a.db = NULL;
	memset(&a.err, 0, sizeof a.err);
	if (!household_open(a.path, HOUSEHOLD_WRITE, &a.db, &a.err))
		ck_abort_msg("%s", a.err.text);
}

static void close_it(void)
{
	household_close(a.db);
	a.db = NULL;
}

static void must_restore(void)
{
	memset(&a.err, 0, sizeof a.err);
	if (!household_restore(a.path, copy, kept, &a.err))
		ck_abort_msg("%s", a.err.text);
	reopen();
}

static void write_bytes(const char *path, const char *bytes)
{
	FILE *out = fopen(path, "w");
	ck_assert_ptr_nonnull(out);
	fputs(bytes, out);
	ck_assert_int_eq(fclose(out), 0);
}

START_TEST(a_backup_is_not_written_over)
{
	ck_assert(!household_backup(a.db, copy, &a.err));
	ck_assert_int_eq((int)a.err.kind, ERROR_USAGE);
	ck_assert(!household_backup(a.db, "/nonexistent/x.db", &a.err));
}
END_TEST

START_TEST(a_backup_comes_back_and_what_was_there_is_kept)
{
	struct household *old;
	struct error err = {0};
	close_it();
	must_restore();
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM batch"), 1);
	must_be_sound(&a);
	ck_assert_str_eq(kept + strlen(a.path), ".before-restore");
	ck_assert(household_open(kept, HOUSEHOLD_READ, &old, &err));
	int n = 0;
	ck_assert(store_integer(old, "SELECT count(*) FROM batch", &n, &err));
	ck_assert_int_eq(n, 2);
	household_close(old);
	/* Again: the name that is taken stays. */
	close_it();
	must_restore();
	ck_assert_str_eq(kept + strlen(a.path), ".before-restore.2");
}
END_TEST

/* A program that has the file open sees what was put back; nothing is mixed. */
START_TEST(a_restore_is_seen_by_who_has_the_file_open)
{
	memset(&a.err, 0, sizeof a.err);
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM batch"), 2);
	ck_assert(household_restore(a.path, copy, kept, &a.err));
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM batch"), 1);
	must_be_sound(&a);
}
END_TEST

START_TEST(what_is_restored_goes_on_as_a_new_device)
{
	close_it();
	must_restore();
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM chain WHERE own = 1"), 0);
	day_start(&a, &(struct day){.number = 3, .at = NOON_MS});
	ck_assert_int_eq(log_count(&a, "SELECT count(DISTINCT device) FROM chain"), 2);
	/* What was kept is merged without a fork. */
	struct intake_report report;
	if (!household_merge(a.db, kept, false, NULL, &report, &a.err))
		ck_abort_msg("%s", a.err.text);
	ck_assert_int_eq(report.events_new, 1);
	ck_assert_uint_eq(report.forks_n, 0);
	must_be_sound(&a);
}
END_TEST

START_TEST(a_restore_replaces_what_is_damaged_and_makes_what_is_not_there)
{
	char command[400];
	close_it();
	write_bytes(a.path, "this was a household once, and is none any more");
	must_restore();
	ck_assert_int_eq(log_count(&a, "SELECT count(*) FROM batch"), 1);
	must_be_sound(&a);
	close_it();
	snprintf(command, sizeof command, "rm -f '%s'*", a.path);
	ck_assert_int_eq(system(command), 0);
	must_restore();
	ck_assert_str_eq(kept, "");
	must_be_sound(&a);
}
END_TEST

/* What belongs to a file that stays must stay beside it. */
START_TEST(where_nothing_can_be_put_aside_all_stays)
{
	char command[600];
	close_it();
	snprintf(command, sizeof command,
		 "cd '%s' && rm -f kitchen.db-* && yes none | head -c 9000 > kitchen.db && "
		 "cp kitchen.db kitchen.db-shm && touch kitchen.db.before-restore && "
		 "for n in $(seq 2 999); do : > kitchen.db.before-restore.$n; done",
		 a.folder);
	ck_assert_int_eq(system(command), 0);
	ck_assert(!household_restore(a.path, copy, kept, &a.err));
	ck_assert_ptr_nonnull(strstr(a.err.text, "too many files"));
	snprintf(command, sizeof command, "cd '%s' && cmp kitchen.db kitchen.db-shm", a.folder);
	ck_assert_int_eq(system(command), 0);
}
END_TEST

static void must_refuse(const char *from)
{
	char *before, *after;
	reopen();
	before = exported(&a);
	memset(&a.err, 0, sizeof a.err);
	ck_assert(!household_restore(a.path, from, kept, &a.err));
	ck_assert_str_ne(a.err.text, "");
	after = exported(&a);
	ck_assert_str_eq(before, after);
	free(before), free(after);
}

static void spoil(const char *sql)
{
	sqlite3 *raw;
	ck_assert_int_eq(sqlite3_open(copy, &raw), SQLITE_OK);
	ck_assert_int_eq(sqlite3_exec(raw, sql, NULL, NULL, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK);
}

START_TEST(what_is_newer_foreign_damaged_or_missing_is_refused)
{
	must_refuse("/nonexistent/x.db");
	spoil("PRAGMA user_version = 999");
	must_refuse(copy);
	spoil("PRAGMA user_version = 3; PRAGMA application_id = 7");
	must_refuse(copy);
	spoil("PRAGMA application_id = 1784768372; UPDATE batch SET title = 'other'");
	must_refuse(copy);
	ck_assert_int_eq(truncate(copy, 6000), 0);
	must_refuse(copy);
	write_bytes(copy, "");
	must_refuse(copy);
	write_bytes(copy, "no database");
	must_refuse(copy);
}
END_TEST

/* Killed after any time, the file holds the old or the new household, whole. */
START_TEST(killed_at_any_moment_one_whole_file_is_there)
{
	int old = 0, new = 0;
	for (int i = 0; i < 60; i++) {
		reopen();
		if (log_count(&a, "SELECT count(*) FROM batch") == 1)
			day_start(&a, &(struct day){.number = 2 + i, .at = NOON_MS});
		close_it();
		pid_t pid = fork();
		if (pid == 0) {
			(void)household_restore(a.path, copy, kept, &a.err);
			_exit(0);
		}
		ck_assert_int_gt(pid, 0);
		usleep((useconds_t)(i * 500));
		(void)kill(pid, SIGKILL);
		ck_assert_int_eq(waitpid(pid, NULL, 0), pid);
		reopen();
		must_be_sound(&a);
		int n = log_count(&a, "SELECT count(*) FROM batch");
		old += n == 2;
		new += n == 1;
	}
	ck_assert_int_eq(old + new, 60);
	ck_assert_int_gt(old, 0);
}
END_TEST

Suite *copies_suite(void)
{
	Suite *suite = suite_create("copies");
	TCase *single = tcase_create("single");
	tcase_set_timeout(single, 120);
	tcase_add_checked_fixture(single, setup, teardown);
	tcase_add_test(single, a_backup_is_not_written_over);
	tcase_add_test(single, a_backup_comes_back_and_what_was_there_is_kept);
	tcase_add_test(single, a_restore_is_seen_by_who_has_the_file_open);
	tcase_add_test(single, what_is_restored_goes_on_as_a_new_device);
	tcase_add_test(single, a_restore_replaces_what_is_damaged_and_makes_what_is_not_there);
	tcase_add_test(single, where_nothing_can_be_put_aside_all_stays);
	tcase_add_test(single, what_is_newer_foreign_damaged_or_missing_is_refused);
	tcase_add_test(single, killed_at_any_moment_one_whole_file_is_there);
	suite_add_tcase(suite, single);
	return suite;
}
