/* The household file: made, found, refused, changed, read back. All data is invented. */
#include <sqlite3.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../../src/household/migrations.h"
#include "jarwright/household.h"
#include "jarwright/household_canners.h"
#include "suites.h"

/* Invented: a moment in 2026. */
static const struct instant noon = {INT64_C(1790000000000), 120};
static struct canner_record added;

static struct kitchen kept(void)
{
	struct kitchen kitchen;
	struct household *db = opened(HOUSEHOLD_READ);
	if (!household_kitchen(db, &kitchen, &err))
		ck_abort_msg("%s", err.text);
	household_close(db);
	return kitchen;
}

static void keep_elevation(int32_t mft, const char *typed)
{
	const struct kitchen_change change = {
	    .elevation_stated = true, .elevation_mft = mft, .elevation_typed = typed};
	struct household *db = opened(HOUSEHOLD_WRITE);
	if (!household_change_kitchen(db, &change, &err))
		ck_abort_msg("%s", err.text);
	household_close(db);
}

static void refused(enum household_access access, const char *because)
{
	struct household *db;
	ck_assert(!household_open(path, access, &db, &err));
	ck_assert_ptr_null(db);
	ck_assert_int_eq(err.kind, ERROR_FAILED);
	if (!strstr(err.text, because))
		ck_abort_msg("'%s' does not say '%s'", err.text, because);
	ck_assert_ptr_nonnull(strstr(err.text, "household file '"));
	ck_assert_ptr_nonnull(strchr(err.text, ';'));
}

static int number(const char *sql)
{
	sqlite3 *db;
	sqlite3_stmt *query;
	ck_assert_int_eq(sqlite3_open(path, &db), SQLITE_OK);
	ck_assert_int_eq(sqlite3_prepare_v2(db, sql, -1, &query, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(query), SQLITE_ROW);
	int value = sqlite3_column_int(query, 0);
	sqlite3_finalize(query);
	sqlite3_close(db);
	return value;
}

static void write_file(const char *text)
{
	FILE *file = fopen(path, "w");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_ge(fputs(text, file), 0);
	ck_assert_int_eq(fclose(file), 0);
}

START_TEST(no_file_is_an_empty_kitchen_and_stays_no_file)
{
	struct kitchen kitchen = kept();
	ck_assert(!kitchen.elevation_stated);
	ck_assert_int_eq(kitchen.units, UNITS_UNSTATED);
	ck_assert_uint_eq(kitchen.canners_n, 0);
	ck_assert_int_eq(access(path, F_OK), -1);
}
END_TEST

START_TEST(an_empty_file_is_an_empty_kitchen)
{
	write_file("");
	ck_assert(!kept().elevation_stated);
	keep_elevation(2900000, "2900ft");
	ck_assert_int_eq(kept().elevation_mft, 2900000);
}
END_TEST

START_TEST(first_write_makes_folders)
{
	struct stat is;
	snprintf(path, sizeof path, "%s/a/b/kitchen.db", folder);
	keep_elevation(1, "0.001 ft");
	ck_assert_int_eq(kept().elevation_mft, 1);
	path[strlen(path) - strlen("/kitchen.db")] = '\0';
	ck_assert_int_eq(stat(path, &is), 0);
	ck_assert_int_eq(is.st_mode & 0777, 0700);
}
END_TEST

START_TEST(everything_comes_back)
{
	const struct kitchen_change change = {.elevation_stated = true,
					      .elevation_mft = -500000,
					      .elevation_typed = "-500 ft",
					      .units = UNITS_METRIC};
	const struct kitchen_canner steam = {.name = "Zum Dämpfen", .kind = CANNER_STEAM};
	const struct kitchen_canner dial = {
	    .name = "big dial", .kind = CANNER_DIAL_GAUGE, 7, 16, KITCHEN_HOLDS_MAX};
	struct household *db = opened(HOUSEHOLD_WRITE);
	ck_assert(household_change_kitchen(db, &change, &err));
	ck_assert(household_add_canner(db, &steam, noon, &added, &err));
	ck_assert(household_add_canner(db, &dial, noon, &added, &err));
	household_close(db);

	struct kitchen kitchen = kept();
	ck_assert(kitchen.elevation_stated);
	ck_assert_int_eq(kitchen.elevation_mft, -500000);
	ck_assert_str_eq(kitchen.elevation_typed, "-500 ft");
	ck_assert_int_eq(kitchen.units, UNITS_METRIC);
	ck_assert_uint_eq(kitchen.canners_n, 2);
	ck_assert_str_eq(kitchen.canners[0].name, "big dial");
	ck_assert_int_eq(kitchen.canners[0].kind, CANNER_DIAL_GAUGE);
	ck_assert_int_eq(kitchen.canners[0].holds_quarts, 7);
	ck_assert_int_eq(kitchen.canners[0].holds_pints, 16);
	ck_assert_int_eq(kitchen.canners[0].holds_half_pints, KITCHEN_HOLDS_MAX);
	ck_assert_str_eq(kitchen.canners[1].name, "Zum Dämpfen");
	ck_assert_int_eq(kitchen.canners[1].holds_quarts, 0);
}
END_TEST

START_TEST(what_is_not_stated_stays)
{
	const struct kitchen_change units = {.units = UNITS_US};
	keep_elevation(2887140, "880 m");
	struct household *db = opened(HOUSEHOLD_WRITE);
	ck_assert(household_change_kitchen(db, &units, &err));
	household_close(db);
	ck_assert_int_eq(kept().elevation_mft, 2887140);
	ck_assert_int_eq(kept().units, UNITS_US);
	keep_elevation(0, "0 ft");
	ck_assert(kept().elevation_stated);
	ck_assert_int_eq(kept().elevation_mft, 0);
	ck_assert_int_eq(kept().units, UNITS_US);
}
END_TEST

START_TEST(elevation_limits)
{
	static const struct {
		const char *typed;
		int32_t mft;
		bool ok;
	} cases[] = {{"-16000 ft", -16000000, true}, {"-16000.001 ft", -16000001, false},
		     {"36000 ft", 36000000, true},   {"36000.001 ft", 36000001, false},
		     {"2900", 2900000, false}, /* no unit, and below: other figures */
		     {"2900 m", 2900000, false},     {"880 m", 2887139, false}};
	struct household *db = opened(HOUSEHOLD_WRITE);
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct kitchen_change change = {.elevation_stated = true,
						      .elevation_mft = cases[i].mft,
						      .elevation_typed = cases[i].typed};
		ck_assert_int_eq(household_change_kitchen(db, &change, &err), cases[i].ok);
		if (!cases[i].ok)
			ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
	household_close(db);
	ck_assert_int_eq(kept().elevation_mft, 36000000);
}
END_TEST

START_TEST(canners_are_changed_and_retired_by_name)
{
	static const int none = 0;
	static const enum canner steam = CANNER_STEAM;
	const struct kitchen_canner canner = {.name = "Pot", .kind = CANNER_BOILING_WATER, 7, 9, 0};
	const struct canner_change change = {.kind = &steam, .holds_quarts = &none};
	struct canner_record now;
	struct household *db = opened(HOUSEHOLD_WRITE);
	ck_assert(household_add_canner(db, &canner, noon, &added, &err));
	/* A second one of that name is refused: which one would be meant later? */
	ck_assert(!household_add_canner(db, &canner, noon, &added, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert(household_change_canner(db, "pOT", &change, noon, &now, &err));
	ck_assert_uint_eq(kept().canners_n, 1);
	ck_assert_int_eq(kept().canners[0].kind, CANNER_STEAM);
	ck_assert_int_eq(kept().canners[0].holds_quarts, 0);
	ck_assert_int_eq(kept().canners[0].holds_pints, 9);
	ck_assert(!household_retire_canner(db, "kettle", noon, &now, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert(household_retire_canner(db, "POT", noon, &now, &err));
	ck_assert(now.retired);
	ck_assert_uint_eq(kept().canners_n, 0);
	ck_assert(!household_retire_canner(db, "pot", noon, &now, &err));
	/* Its name is free again. */
	ck_assert(household_add_canner(db, &canner, noon, &added, &err));
	household_close(db);
}
END_TEST

/* Two devices may bring more canners than one may add, and one name twice. */
START_TEST(more_canners_than_can_be_added_are_no_damage)
{
	struct household *db = opened(HOUSEHOLD_WRITE);
	household_close(db);
	tamper("PRAGMA foreign_keys = OFF; WITH n(i) AS (VALUES (1) UNION ALL SELECT i + 1 FROM n "
	       "WHERE i < 40) INSERT INTO canner (id, name, kind, retired) SELECT i, 'pot', "
	       "'steam', 0 FROM n");
	struct kitchen kitchen = kept();
	ck_assert_uint_eq(kitchen.canners_n, KITCHEN_CANNERS_MAX);
	ck_assert_uint_eq(kitchen.canners_more, 40 - KITCHEN_CANNERS_MAX);
}
END_TEST

START_TEST(canners_have_a_limit_and_it_is_said)
{
	struct household *db = opened(HOUSEHOLD_WRITE);
	for (int i = 0; i <= KITCHEN_CANNERS_MAX; i++) {
		struct kitchen_canner canner = {.kind = CANNER_STEAM};
		snprintf(canner.name, sizeof canner.name, "canner %d", i);
		ck_assert_int_eq(household_add_canner(db, &canner, noon, &added, &err),
				 i < KITCHEN_CANNERS_MAX);
	}
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	household_close(db);
	ck_assert_uint_eq(kept().canners_n, KITCHEN_CANNERS_MAX);
}
END_TEST

START_TEST(bad_canners_are_refused)
{
	static const struct kitchen_canner bad[] = {
	    {.name = "", .kind = CANNER_STEAM},
	    {.name = "line\nbreak", .kind = CANNER_STEAM},
	    {.name = "\xff", .kind = CANNER_STEAM},
	    {.name = "a", .kind = CANNER_STEAM, .holds_quarts = KITCHEN_HOLDS_MAX + 1},
	    {.name = "a", .kind = CANNER_STEAM, .holds_pints = -1},
	};
	struct household *db = opened(HOUSEHOLD_WRITE);
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		ck_assert(!household_add_canner(db, &bad[i], noon, &added, &err));
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
	household_close(db);
	ck_assert_uint_eq(kept().canners_n, 0);
}
END_TEST

START_TEST(the_file_is_marked_and_migrated_once)
{
	keep_elevation(1000, "1ft");
	ck_assert_int_eq(number("PRAGMA application_id"), HOUSEHOLD_APPLICATION_ID);
	ck_assert_int_eq(number("PRAGMA user_version"), (int)household_migrations_n);
	ck_assert_int_eq(
	    number("SELECT count(*) FROM pragma_journal_mode WHERE journal_mode = 'wal'"), 1);
	int schema = number("PRAGMA schema_version");
	keep_elevation(2000, "2ft");
	ck_assert_int_eq(number("PRAGMA schema_version"), schema);
	ck_assert_int_eq(number("SELECT count(*) FROM kitchen"), 1);
	ck_assert_int_eq(
	    number("SELECT count(*) FROM pragma_table_list "
		   "WHERE schema = 'main' AND NOT strict AND name NOT LIKE 'sqlite_%'"),
	    0);
}
END_TEST

START_TEST(foreign_files_are_refused_and_left_alone)
{
	tamper("CREATE TABLE notes (a); INSERT INTO notes VALUES (1)");
	int schema = number("PRAGMA schema_version");
	refused(HOUSEHOLD_READ, "another program");
	refused(HOUSEHOLD_WRITE, "another program");
	ck_assert_int_eq(number("PRAGMA schema_version"), schema);
	ck_assert_int_eq(number("PRAGMA application_id"), 0);
	ck_assert_int_eq(
	    number("SELECT count(*) FROM pragma_journal_mode WHERE journal_mode = 'wal'"), 0);
}
END_TEST

START_TEST(another_application_id_is_foreign)
{
	keep_elevation(1000, "1ft");
	tamper("PRAGMA application_id = 17");
	refused(HOUSEHOLD_READ, "another program");
	refused(HOUSEHOLD_WRITE, "another program");
}
END_TEST

START_TEST(newer_versions_are_refused)
{
	char sql[64];
	keep_elevation(1000, "1ft");
	snprintf(sql, sizeof sql, "PRAGMA user_version = %zu", household_migrations_n + 1);
	tamper(sql);
	refused(HOUSEHOLD_READ, "newer jarwright");
	refused(HOUSEHOLD_WRITE, "newer jarwright");
}
END_TEST

START_TEST(a_text_file_is_refused_and_left_alone)
{
	char first[8] = "";
	write_file("shopping list: two dozen lids, and then some more text to make it long\n");
	refused(HOUSEHOLD_READ, "not a household file");
	refused(HOUSEHOLD_WRITE, "not a household file");
	FILE *file = fopen(path, "r");
	ck_assert_ptr_nonnull(file);
	ck_assert_ptr_nonnull(fgets(first, sizeof first, file));
	fclose(file);
	ck_assert_str_eq(first, "shoppin");
}
END_TEST

START_TEST(a_folder_is_refused)
{
	ck_assert_int_eq(mkdir(path, 0700), 0);
	refused(HOUSEHOLD_READ, "not a file");
	refused(HOUSEHOLD_WRITE, "not a file");
}
END_TEST

START_TEST(a_link_is_followed_and_a_link_to_nothing_is_no_empty_kitchen)
{
	char link[sizeof path];
	keep_elevation(2900000, "2900ft");
	snprintf(link, sizeof link, "%s/link.db", folder);
	ck_assert_int_eq(symlink(path, link), 0);
	struct kitchen kitchen;
	struct household *db;
	ck_assert(household_open(link, HOUSEHOLD_READ, &db, &err));
	ck_assert(household_kitchen(db, &kitchen, &err));
	ck_assert_int_eq(kitchen.elevation_mft, 2900000);
	household_close(db);
	ck_assert_int_eq(unlink(path), 0);
	memcpy(path, link, sizeof path);
	refused(HOUSEHOLD_READ, "link");
	refused(HOUSEHOLD_WRITE, "link");
}
END_TEST

/* Without the superuser's rights, which make every file writable. */
static int write_as_nobody(void)
{
	struct household *db;
	if (geteuid() == 0 && setuid(65534) != 0)
		return 2;
	if (household_open(path, HOUSEHOLD_WRITE, &db, &err))
		return 3;
	return strstr(err.text, "may not be written") || strstr(err.text, "permissions") ? 0 : 4;
}

START_TEST(a_file_that_may_not_be_written_is_said_to_be_so)
{
	keep_elevation(2900000, "2900ft");
	ck_assert_int_eq(chmod(path, 0444), 0);
	ck_assert_int_eq(chmod(folder, 0555), 0);
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0)
		_exit(write_as_nobody());
	int status;
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_int_eq(chmod(folder, 0755), 0);
	ck_assert(WIFEXITED(status));
	ck_assert_int_eq(WEXITSTATUS(status), 0);
}
END_TEST

/* A row that no jarwright writes never becomes an elevation. */
START_TEST(damaged_rows_are_refused)
{
	static const char *const damage[] = {
	    "UPDATE kitchen SET elevation_mft = 99000000",
	    "UPDATE kitchen SET elevation_typed = NULL",
	    "UPDATE kitchen SET elevation_mft = 0",
	    "UPDATE kitchen SET elevation_typed = '900 m'",
	    "UPDATE kitchen SET elevation_typed = char(27) || '[2J'",
	    "UPDATE kitchen SET units = 'cubits'",
	    "DELETE FROM kitchen",
	    "INSERT INTO canner (id, name, kind, retired) VALUES (1, 'a', 'oven', 0)",
	    "INSERT INTO canner VALUES (1, 'a', 'steam', NULL, 4000000000, NULL, 0)",
	    "INSERT INTO canner VALUES (1, CAST(x'ff' AS TEXT), 'steam', 1, 1, 1, 0)",
	};
	char sql[256];
	struct household *db;
	struct kitchen kitchen;
	keep_elevation(2900000, "2900ft");
	snprintf(sql, sizeof sql, "PRAGMA ignore_check_constraints = ON; %s", damage[_i]);
	tamper(sql);
	db = opened(HOUSEHOLD_READ);
	ck_assert(!household_kitchen(db, &kitchen, &err));
	household_close(db);
	ck_assert_int_eq(err.kind, ERROR_FAILED);
	ck_assert_ptr_nonnull(strstr(err.text, "damaged"));
}
END_TEST

START_TEST(two_connections_see_each_other)
{
	struct household *reader, *writer = opened(HOUSEHOLD_WRITE);
	const struct kitchen_change change = {
	    .elevation_stated = true, .elevation_mft = 7, .elevation_typed = "0.007ft"};
	struct kitchen kitchen;
	reader = opened(HOUSEHOLD_READ);
	ck_assert(household_kitchen(reader, &kitchen, &err));
	ck_assert(!kitchen.elevation_stated);
	ck_assert(household_change_kitchen(writer, &change, &err));
	ck_assert(household_kitchen(reader, &kitchen, &err));
	ck_assert_int_eq(kitchen.elevation_mft, 7);
	ck_assert(!household_change_kitchen(reader, &change, &err));
	ck_assert_int_eq(err.kind, ERROR_FAILED);
	household_close(reader);
	household_close(writer);
}
END_TEST

/* Several programs make the same file at the same moment; each change is kept. */
START_TEST(programs_started_together_do_not_fail)
{
	enum { PROGRAMS = 8 };
	pid_t children[PROGRAMS];
	for (int i = 0; i < PROGRAMS; i++) {
		children[i] = fork();
		ck_assert_int_ge(children[i], 0);
		if (children[i] != 0)
			continue;
		struct kitchen_canner canner = {.kind = CANNER_STEAM};
		struct household *db;
		snprintf(canner.name, sizeof canner.name, "canner %d", i);
		bool ok = household_open(path, HOUSEHOLD_WRITE, &db, &err) &&
			  household_add_canner(db, &canner, noon, &added, &err);
		if (!ok)
			fprintf(stderr, "%s\n", err.text);
		household_close(db);
		_exit(!ok);
	}
	for (int i = 0; i < PROGRAMS; i++) {
		int status;
		ck_assert_int_eq(waitpid(children[i], &status, 0), children[i]);
		ck_assert_int_eq(status, 0);
	}
	ck_assert_uint_eq(kept().canners_n, PROGRAMS);
}
END_TEST

START_TEST(where_the_file_is)
{
	static const struct {
		const char *own, *data, *home, *path; /* path NULL: refused */
	} cases[] = {
	    {"/a/b.db", "/data", "/home/x", "/a/b.db"},
	    {"b.db", "/data", "/home/x", "./b.db"},
	    {":memory:", "/data", "/home/x", "./:memory:"},
	    {"", "/data", "/home/x", "/data/jarwright/household.db"},
	    {NULL, "data", "/home/x", "/home/x/.local/share/jarwright/household.db"},
	    {NULL, "", "/home/x", "/home/x/.local/share/jarwright/household.db"},
	    {NULL, NULL, "x", NULL},
	    {NULL, NULL, NULL, NULL},
	};
	static const char *const names[] = {"JARWRIGHT_DB", "XDG_DATA_HOME", "HOME"};
	const char *const values[] = {cases[_i].own, cases[_i].data, cases[_i].home};
	char found[HOUSEHOLD_PATH_SIZE], small[8];
	for (size_t i = 0; i < 3; i++)
		ck_assert_int_eq(values[i] ? setenv(names[i], values[i], 1) : unsetenv(names[i]),
				 0);
	ck_assert_int_eq(household_path(found, sizeof found, &err), cases[_i].path != NULL);
	if (cases[_i].path)
		ck_assert_str_eq(found, cases[_i].path);
	ck_assert_int_eq(household_path(small, sizeof small, &err),
			 cases[_i].path && strlen(cases[_i].path) < sizeof small);
}
END_TEST

START_TEST(units_are_words)
{
	enum units units;
	ck_assert(units_parse("us", &units, &err));
	ck_assert_int_eq(units, UNITS_US);
	ck_assert(units_parse("metric", &units, &err));
	ck_assert_int_eq(units, UNITS_METRIC);
	ck_assert(!units_parse("US gallons", &units, &err));
	ck_assert(!units_parse("unstated", &units, &err));
	ck_assert(!units_parse("", &units, &err));
}
END_TEST

static Suite *household_suite(void)
{
	Suite *suite = suite_create("household");
	TCase *tcase = tcase_create("file");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_set_timeout(tcase, 60);
	tcase_add_test(tcase, no_file_is_an_empty_kitchen_and_stays_no_file);
	tcase_add_test(tcase, an_empty_file_is_an_empty_kitchen);
	tcase_add_test(tcase, first_write_makes_folders);
	tcase_add_test(tcase, everything_comes_back);
	tcase_add_test(tcase, what_is_not_stated_stays);
	tcase_add_test(tcase, elevation_limits);
	tcase_add_test(tcase, canners_are_changed_and_retired_by_name);
	tcase_add_test(tcase, more_canners_than_can_be_added_are_no_damage);
	tcase_add_test(tcase, canners_have_a_limit_and_it_is_said);
	tcase_add_test(tcase, bad_canners_are_refused);
	tcase_add_test(tcase, the_file_is_marked_and_migrated_once);
	tcase_add_test(tcase, foreign_files_are_refused_and_left_alone);
	tcase_add_test(tcase, another_application_id_is_foreign);
	tcase_add_test(tcase, newer_versions_are_refused);
	tcase_add_test(tcase, a_text_file_is_refused_and_left_alone);
	tcase_add_test(tcase, a_folder_is_refused);
	tcase_add_test(tcase, a_link_is_followed_and_a_link_to_nothing_is_no_empty_kitchen);
	tcase_add_test(tcase, a_file_that_may_not_be_written_is_said_to_be_so);
	tcase_add_loop_test(tcase, damaged_rows_are_refused, 0, 10);
	tcase_add_test(tcase, two_connections_see_each_other);
	tcase_add_test(tcase, programs_started_together_do_not_fail);
	tcase_add_loop_test(tcase, where_the_file_is, 0, 8);
	tcase_add_test(tcase, units_are_words);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(household_suite(), recipes_suite())
