/* Files of earlier versions: backed up, then brought up to date with all that was in them. All data
 * is invented. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../../src/household/log.h"
#include "../../src/household/migrations.h"
#include "jarwright/household_log.h"
#include "suites.h"

static char folder[64];
static char path[128];
static struct error err;

static void setup(void)
{
	snprintf(folder, sizeof folder, "/tmp/jarwright-migrate-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	memset(&err, 0, sizeof err);
}

static void teardown(void)
{
	char command[160];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

static void run(sqlite3 *raw, const char *sql)
{
	char *message = NULL;
	if (sqlite3_exec(raw, sql, NULL, NULL, &message) != SQLITE_OK)
		ck_abort_msg("%s: %s", sql, message);
}

/* A file as that version left it, with rows. */
static void make_version(int version)
{
	sqlite3 *raw;
	char text[64];
	ck_assert_int_eq(sqlite3_open(path, &raw), SQLITE_OK);
	for (int i = 0; i < version; i++)
		run(raw, household_migrations[i]);
	run(raw,
	    "UPDATE kitchen SET elevation_mft = 2900000, elevation_typed = '2900ft';"
	    "INSERT INTO canner (name, kind, holds_quarts) VALUES ('big pot', 'boiling-water', "
	    "7); INSERT INTO canner (name, kind) VALUES ('dial', 'dial-gauge')");
	if (version >= 2)
		run(raw, "INSERT INTO recipe (name, system, source) VALUES ('plum chutney', 'us', "
			 "'2 cups plums')");
	sqlite3_snprintf(sizeof text, text, "PRAGMA application_id = %d", HOUSEHOLD_APPLICATION_ID);
	run(raw, text);
	sqlite3_snprintf(sizeof text, text, "PRAGMA user_version = %d", version);
	run(raw, text);
	run(raw, "PRAGMA journal_mode = WAL");
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK);
}

static int number_in(const char *file, const char *sql)
{
	sqlite3 *raw;
	sqlite3_stmt *query;
	ck_assert_int_eq(sqlite3_open(file, &raw), SQLITE_OK);
	ck_assert_int_eq(sqlite3_prepare_v2(raw, sql, -1, &query, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(query), SQLITE_ROW);
	int n = sqlite3_column_int(query, 0);
	sqlite3_finalize(query);
	sqlite3_close(raw);
	return n;
}

static bool exists(const char *ending)
{
	char name[200];
	snprintf(name, sizeof name, "%s%s", path, ending);
	return access(name, F_OK) == 0;
}

static void write_opens(void)
{
	struct household *db;
	if (!household_open(path, HOUSEHOLD_WRITE, &db, &err))
		ck_abort_msg("%s", err.text);
	household_close(db);
}

static void all_is_there(int version)
{
	struct household *db;
	struct kitchen kitchen;
	static struct log_report report;
	ck_assert(household_open(path, HOUSEHOLD_READ, &db, &err));
	ck_assert(household_kitchen(db, &kitchen, &err));
	ck_assert_int_eq(kitchen.elevation_mft, 2900000);
	ck_assert_uint_eq(kitchen.canners_n, 2);
	ck_assert_str_eq(kitchen.canners[0].name, "big pot");
	ck_assert_int_eq(kitchen.canners[0].holds_quarts, 7);
	ck_assert(household_verify(db, &report, &err));
	ck_assert_uint_eq(report.faults_n, 0);
	ck_assert_uint_eq(report.events_n, 2);
	household_close(db);
	ck_assert_int_eq(number_in(path, "SELECT count(*) FROM recipe"), version >= 2);
	ck_assert_int_eq(number_in(path, "PRAGMA user_version"), (int)household_migrations_n);
}

START_TEST(an_older_file_is_backed_up_and_brought_up_to_date)
{
	char backup[200];
	make_version(_i);
	write_opens();
	all_is_there(_i);
	/* One backup before each step, each what the file was then, and whole. */
	for (int next = _i + 1; (size_t)next <= household_migrations_n; next++) {
		snprintf(backup, sizeof backup, "%s.before-%d", path, next);
		ck_assert_int_eq(number_in(backup, "PRAGMA user_version"), next - 1);
		ck_assert_int_eq(number_in(backup, "SELECT integrity_check = 'ok' FROM "
						   "pragma_integrity_check"),
				 1);
		ck_assert_int_eq(number_in(backup, "SELECT count(*) FROM canner"), 2);
	}
	ck_assert(!exists(".before-3.part"));
	/* It is done once. */
	write_opens();
	ck_assert(!exists(".before-3.2"));
}
END_TEST

START_TEST(reading_an_older_file_leaves_it_as_it_is)
{
	struct household *db;
	struct kitchen kitchen;
	make_version(_i);
	ck_assert(household_open(path, HOUSEHOLD_READ, &db, &err));
	ck_assert(household_kitchen(db, &kitchen, &err));
	ck_assert_uint_eq(kitchen.canners_n, 2);
	household_close(db);
	ck_assert_int_eq(number_in(path, "PRAGMA user_version"), _i);
	ck_assert(!exists(".before-3"));
}
END_TEST

START_TEST(a_new_file_needs_no_backup)
{
	write_opens();
	ck_assert(!exists(".before-1"));
	ck_assert(!exists(".before-2"));
	ck_assert(!exists(".before-3"));
}
END_TEST

START_TEST(an_older_backup_is_never_written_over)
{
	char name[200], line[16] = "";
	make_version(2);
	snprintf(name, sizeof name, "%s.before-3", path);
	FILE *file = fopen(name, "w");
	ck_assert_ptr_nonnull(file);
	fputs("hers", file);
	ck_assert_int_eq(fclose(file), 0);
	write_opens();
	all_is_there(2);
	file = fopen(name, "r");
	ck_assert_ptr_nonnull(file);
	ck_assert_ptr_nonnull(fgets(line, sizeof line, file));
	fclose(file);
	ck_assert_str_eq(line, "hers");
	snprintf(name, sizeof name, "%s.before-3.2", path);
	ck_assert_int_eq(number_in(name, "PRAGMA user_version"), 2);
}
END_TEST

START_TEST(without_a_backup_nothing_is_changed)
{
	struct household *db;
	char name[200];
	make_version(2);
	/* A folder with something in it stands where the copy is to be made. */
	snprintf(name, sizeof name, "%s.before-3.part", path);
	ck_assert_int_eq(mkdir(name, 0700), 0);
	ck_assert(!household_open(path, HOUSEHOLD_WRITE, &db, &err));
	ck_assert_int_eq(err.kind, ERROR_FAILED);
	ck_assert_ptr_nonnull(strstr(err.text, "no backup could be made"));
	ck_assert_int_eq(number_in(path, "PRAGMA user_version"), 2);
	ck_assert_int_eq(number_in(path, "SELECT count(*) FROM sqlite_schema WHERE name = 'event'"),
			 0);
	ck_assert(!exists(".before-3"));
	ck_assert_int_eq(rmdir(name), 0);
	write_opens();
	all_is_there(2);
}
END_TEST

Suite *migrate_suite(void)
{
	Suite *suite = suite_create("migrate");
	TCase *tcase = tcase_create("versions");
	tcase_set_timeout(tcase, 60);
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_loop_test(tcase, an_older_file_is_backed_up_and_brought_up_to_date, 1, 3);
	tcase_add_loop_test(tcase, reading_an_older_file_leaves_it_as_it_is, 1, 3);
	tcase_add_test(tcase, a_new_file_needs_no_backup);
	tcase_add_test(tcase, an_older_backup_is_never_written_over);
	tcase_add_test(tcase, without_a_backup_nothing_is_changed);
	suite_add_tcase(suite, tcase);
	return suite;
}
