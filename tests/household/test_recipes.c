/* Recipes in the household file, and a file from before there were any. All data is invented. */
#include <sqlite3.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "../../src/household/migrations.h"
#include "jarwright/household_recipes.h"
#include "suites.h"

static const char chutney[] = "# from a friend\n2 lb plums\n5/8 pint vinegar\n\nMethod:\nBoil.\n";

static bool already;

static bool add(const char *name, enum measuring_system system, const char *text)
{
	struct household *db = opened(HOUSEHOLD_WRITE);
	memset(&err, 0, sizeof err);
	bool ok = household_add_recipe(db, name, system, text, strlen(text), &already, &err);
	household_close(db);
	return ok;
}

static size_t count(void)
{
	struct recipe_list list;
	struct household *db = opened(HOUSEHOLD_READ);
	if (!household_recipes(db, &list, &err))
		ck_abort_msg("%s", err.text);
	household_close(db);
	size_t n = list.entries_n;
	recipe_list_release(&list);
	return n;
}

static bool find(const char *name, struct stored_recipe *out)
{
	struct household *db = opened(HOUSEHOLD_READ);
	memset(&err, 0, sizeof err);
	bool ok = household_recipe(db, name, out, &err);
	household_close(db);
	return ok;
}

START_TEST(no_file_has_no_recipe_and_stays_no_file)
{
	struct stored_recipe recipe;
	ck_assert_uint_eq(count(), 0);
	ck_assert(!find("chutney", &recipe));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert_int_ne(access(path, F_OK), 0);
}
END_TEST

START_TEST(a_recipe_comes_back_as_typed)
{
	struct stored_recipe recipe;
	ck_assert(add("Plum chutney", SYSTEM_NEW_ZEALAND, chutney));
	ck_assert(!already);
	ck_assert(find("plum CHUTNEY", &recipe));
	ck_assert_str_eq(recipe.name, "Plum chutney");
	ck_assert_int_eq(recipe.system, SYSTEM_NEW_ZEALAND);
	ck_assert_str_eq(recipe.text, chutney);
	ck_assert_uint_eq(recipe.length, strlen(chutney));
	stored_recipe_release(&recipe);
}
END_TEST

START_TEST(the_same_again_is_no_change_and_another_is_refused)
{
	struct stored_recipe recipe;
	ck_assert(add("chutney", SYSTEM_US, chutney));
	ck_assert(add("Chutney", SYSTEM_US, chutney));
	ck_assert(already);
	ck_assert(!add("chutney", SYSTEM_IMPERIAL, chutney));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert(!add("chutney", SYSTEM_US, "3 lb plums\n"));
	ck_assert_uint_eq(count(), 1);
	ck_assert(find("chutney", &recipe));
	ck_assert_str_eq(recipe.text, chutney);
	ck_assert_int_eq(recipe.system, SYSTEM_US);
	stored_recipe_release(&recipe);
}
END_TEST

START_TEST(nothing_of_a_bad_recipe_is_kept)
{
	ck_assert(!add("chutney", SYSTEM_US, "2 lb plums\n0 cups vinegar\n"));
	ck_assert_ptr_nonnull(strstr(err.text, "line 2"));
	ck_assert(!add("chutney", SYSTEM_UNSTATED, chutney));
	ck_assert(!add("", SYSTEM_US, chutney));
	ck_assert_uint_eq(count(), 0);
}
END_TEST

START_TEST(the_list_is_by_name_and_removing_takes_one)
{
	struct recipe_list list;
	static const char *const names[] = {"pears", "Apples", "quinces"};
	for (size_t i = 0; i < 3; i++)
		ck_assert(add(names[i], SYSTEM_METRIC, chutney));
	struct household *db = opened(HOUSEHOLD_WRITE);
	ck_assert(household_remove_recipe(db, "PEARS", &err));
	ck_assert(!household_remove_recipe(db, "pears", &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert(household_recipes(db, &list, &err));
	household_close(db);
	ck_assert_uint_eq(list.entries_n, 2);
	ck_assert_str_eq(list.entries[0].name, "Apples");
	ck_assert_str_eq(list.entries[1].name, "quinces");
	ck_assert_int_eq(list.entries[1].system, SYSTEM_METRIC);
	recipe_list_release(&list);
}
END_TEST

/* Rows that the checks of the table would stop, as a damaged file may have them. */
START_TEST(damaged_rows_are_refused)
{
	static const char *const damage[] = {
	    "UPDATE recipe SET system = 'troy'",
	    "UPDATE recipe SET source = ''",
	    "UPDATE recipe SET name = 'chutney' || char(10)",
	};
	char sql[256];
	struct recipe_list list;
	struct stored_recipe recipe;
	ck_assert(add("chutney", SYSTEM_US, chutney));
	snprintf(sql, sizeof sql, "PRAGMA ignore_check_constraints = ON; %s", damage[_i]);
	tamper(sql);
	struct household *db = opened(HOUSEHOLD_READ);
	bool listed = household_recipes(db, &list, &err);
	recipe_list_release(&list);
	if (listed) /* the list does not read the text */
		ck_assert(!household_recipe(db, "chutney", &recipe, &err));
	household_close(db);
	ck_assert_int_eq(err.kind, ERROR_FAILED);
	ck_assert_ptr_nonnull(strstr(err.text, "damaged"));
}
END_TEST

/* A file of version 1, made as the first migration made it, with rows in it. */
START_TEST(a_file_of_version_1_keeps_its_rows)
{
	struct kitchen kitchen;
	tamper(household_migrations[0]);
	tamper(
	    "PRAGMA application_id = 1784771191; PRAGMA user_version = 1;"
	    "UPDATE kitchen SET elevation_mft = 2900000, elevation_typed = '2900ft', units = 'us';"
	    "INSERT INTO canner (name, kind, holds_quarts) VALUES ('big pot', 'steam', 7)");
	ck_assert_int_eq(HOUSEHOLD_APPLICATION_ID, 1784771191);
	/* It is read as it is, without being altered, and has no recipes. */
	ck_assert_uint_eq(count(), 0);
	ck_assert(add("chutney", SYSTEM_US, chutney));
	struct household *db = opened(HOUSEHOLD_READ);
	ck_assert(household_kitchen(db, &kitchen, &err));
	household_close(db);
	ck_assert_int_eq(kitchen.elevation_mft, 2900000);
	ck_assert_str_eq(kitchen.elevation_typed, "2900ft");
	ck_assert_int_eq(kitchen.units, UNITS_US);
	ck_assert_uint_eq(kitchen.canners_n, 1);
	ck_assert_str_eq(kitchen.canners[0].name, "big pot");
	ck_assert_int_eq(kitchen.canners[0].kind, CANNER_STEAM);
	ck_assert_int_eq(kitchen.canners[0].holds_quarts, 7);
	ck_assert_uint_eq(count(), 1);
}
END_TEST

Suite *recipes_suite(void)
{
	Suite *suite = suite_create("household recipes");
	TCase *tcase = tcase_create("recipes");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_set_timeout(tcase, 60);
	tcase_add_test(tcase, no_file_has_no_recipe_and_stays_no_file);
	tcase_add_test(tcase, a_recipe_comes_back_as_typed);
	tcase_add_test(tcase, the_same_again_is_no_change_and_another_is_refused);
	tcase_add_test(tcase, nothing_of_a_bad_recipe_is_kept);
	tcase_add_test(tcase, the_list_is_by_name_and_removing_takes_one);
	tcase_add_loop_test(tcase, damaged_rows_are_refused, 0, 3);
	tcase_add_test(tcase, a_file_of_version_1_keeps_its_rows);
	suite_add_tcase(suite, tcase);
	return suite;
}
