/* What stands where, judged on a day, and how it is shown. All data is invented. */
#include <sqlite3.h>
#include <time.h>

#include "../../src/household/shelf.h"
#include "../log_fixture.h"
#include "jarwright/render_shelf.h"
#include "suites.h"

/* 2026-09-21 14:13 UTC. */
static const int64_t noon = INT64_C(1790000000000) / 60000 * 60000;
static const struct shelf_filter any = {.before_day = INT64_MAX};
static struct log_fixture f;
static struct jar_groups groups;
static struct shelf_list list;
static char *shown;
static size_t shown_n;

static void setup(void)
{
	setenv("TZ", "UTC", 1);
	tzset();
	fixture_open(&f);
	groups = (struct jar_groups){0};
	list = (struct shelf_list){0};
	shown = NULL;
}

static void look_away(void)
{
	shelf_list_release(&list);
	jar_groups_release(&groups);
	free(shown);
	shown = NULL;
}

static void teardown(void)
{
	look_away();
	fixture_close(&f);
}

/* Fills groups, list and shown. */
static void look(const struct shelf_filter *filter, int64_t now)
{
	look_away();
	if (!household_shelf(f.db, filter, &groups, &f.err) ||
	    !shelf_list_make(&groups, (struct instant){now, 0}, &list, &f.err))
		ck_abort_msg("%s", f.err.text);
	FILE *out = open_memstream(&shown, &shown_n);
	ck_assert_ptr_nonnull(out);
	const struct page page = {out, 200, false};
	shelf_text(&page, &list);
	ck_assert_int_eq(fclose(out), 0);
}

static void shows(const char *words)
{
	ck_assert_msg(strstr(shown, words) != NULL, "no '%s' in:\n%s", words, shown);
}

static void shows_not(const char *words)
{
	ck_assert_msg(strstr(shown, words) == NULL, "'%s' in:\n%s", words, shown);
}

static int64_t batch(int number, const char *title, const char *food, const char *outcome,
		     int64_t out)
{
	int64_t id =
	    day_start(&f, &(struct day){.number = number, .at = out, .title = title, .food = food});
	day_load(&f, id, 7, "pint", outcome, out);
	return id;
}

START_TEST(an_empty_kitchen_has_no_jars)
{
	look(&any, noon);
	ck_assert_str_eq(shown, "No jars here.\n");
}
END_TEST

START_TEST(the_oldest_best_quality_date_comes_first)
{
	int64_t younger = batch(2, "Beets", NULL, "processed", noon);
	int64_t older = batch(1, "Plums", "plums", "processed", noon - 10 * DAY_MS);
	day_seal(&f, younger, "1-7", true, noon + 13 * HOUR_MS);
	day_seal(&f, older, "1-7", true, noon + 13 * HOUR_MS);
	day_move(&f, younger, "1-3", "shelf", "cellar", noon + 14 * HOUR_MS);
	day_move(&f, younger, "4", "eaten", NULL, noon + 14 * HOUR_MS);
	look(&any, noon + 2 * DAY_MS);
	ck_assert_uint_eq(list.lines_n, 3);
	ck_assert_str_eq(list.lines[0].group->title, "Plums");
	/* 12 months (USDA FSIS) from 2026-09-11 and 2026-09-21. */
	shows("Plums: 7 pint jars (26-001: 1-7), not put away yet; best before 2027-09-11");
	shows("Beets: 3 pint jars (26-002: 1-3), cellar; best before 2027-09-21");
	shows("Beets: 3 pint jars (26-002: 5-7), not put away yet; best before 2027-09-21");
	shows_not("eaten");
	const struct shelf_filter all = {.before_day = INT64_MAX, .gone_too = true};
	look(&all, noon + 2 * DAY_MS);
	shows("Beets: 1 pint jar (26-002: 4), eaten");
}
END_TEST

START_TEST(what_is_not_for_the_shelf_is_on_top_with_what_to_do)
{
	int64_t good = batch(1, "Beets", NULL, "processed", noon);
	batch(2, "Beans", "green-beans", "under-processed", noon);
	batch(3, "Corn", "corn", "unclear", noon);
	day_seal(&f, good, "1-5", true, noon + HOUR_MS);
	day_seal(&f, good, "6-7", false, noon + HOUR_MS);
	look(&any, noon + HOUR_MS);
	ck_assert_int_eq(strncmp(shown, "NOT FOR THE SHELF: do this\n", 27), 0);
	/* University of Nebraska Extension: 2 hours. AIB 539 (2015) guide 1 p. 1-26: 24 hours. */
	shows("Beans: 7 pint jars (26-002: 1-7); not processed as decided: refrigerate, freeze or "
	      "process "
	      "again before 2026-09-21 16:13; after that, discard");
	shows("Beets: 2 pint jars (26-001: 6-7); unsealed: refrigerate, freeze or process again "
	      "before "
	      "2026-09-22 14:13");
	shows("Corn: 7 pint jars (26-003: 1-7); not known to be processed as decided: give the "
	      "missing");
	look(&any, noon + 3 * HOUR_MS);
	shows("Beans: 7 pint jars (26-002: 1-7); DISCARD, do not taste");
	shows("Beets: 2 pint jars (26-001: 6-7); unsealed: refrigerate");
	look(&any, noon + 25 * HOUR_MS);
	shows("Beets: 2 pint jars (26-001: 6-7); DISCARD, do not taste");
}
END_TEST

START_TEST(cold_goods_are_never_on_the_shelf)
{
	int64_t cold = day_start(&f, &(struct day){.number = 5,
						   .at = noon,
						   .title = "Pesto",
						   .keep = "refrigerator",
						   .verdict = "refused"});
	day_load(&f, cold, 4, "half-pint", "cold", noon);
	day_move(&f, cold, "3-4", "frozen", "chest", noon);
	look(&any, noon + HOUR_MS);
	for (size_t i = 0; i < list.lines_n; i++)
		ck_assert_int_ne(list.lines[i].section, SHELF_GOOD);
	/* Nothing is published for it: 3 days, as for what is opened (USDA FSIS). */
	shows("Pesto: 2 half-pint jars (26-005: 1-2); use by 2026-09-24 (no time is published");
	shows("In the freezer");
}
END_TEST

START_TEST(opened_and_chilled_jars_have_their_limits)
{
	int64_t id = batch(1, "Beets", NULL, "processed", noon);
	day_seal(&f, id, "1-6", true, noon + 13 * HOUR_MS);
	day_seal(&f, id, "7", false, noon + 13 * HOUR_MS);
	day_move(&f, id, "1", "opened", NULL, noon + DAY_MS);
	day_move(&f, id, "2", "refrigerated", NULL, noon + DAY_MS);
	day_move(&f, id, "7", "refrigerated", NULL, noon + 14 * HOUR_MS);
	look(&any, noon + 2 * DAY_MS);
	/* Opened on the 22nd, 3 days (USDA FSIS); chilled on the 22nd at 04:13 unsealed, 1 week
	 * (Kansas State Extension); sealed and chilled, 12 months as on the shelf. */
	shows("Beets: 1 pint jar (26-001: 1); use by 2026-09-25");
	shows("Beets: 1 pint jar (26-001: 7); use by 2026-09-29");
	shows("Beets: 1 pint jar (26-001: 2); best before 2027-09-21");
	look(&any, noon + 4 * DAY_MS);
	shows_not("PAST");
	look(&any, noon + 5 * DAY_MS);
	shows("Beets: 1 pint jar (26-001: 1); PAST: use by 2026-09-25");
}
END_TEST

START_TEST(a_ph_learned_later_takes_jars_off_the_shelf)
{
	int64_t id = batch(1, "Beets", NULL, "processed", noon);
	day_seal(&f, id, "1-7", true, noon + 13 * HOUR_MS);
	day_move(&f, id, "1-7", "shelf", "cellar", noon + 14 * HOUR_MS);
	look(&any, noon + 2 * DAY_MS);
	shows("On the shelf");
	log_must(&f, "batch-ph", id, noon + 2 * DAY_MS,
		 json_pack("{s:i, s:b}", "ph_milli", 4700, "holds", 0));
	look(&any, noon + 2 * DAY_MS);
	shows_not("On the shelf");
	shows("DISCARD, do not taste");
}
END_TEST

START_TEST(a_seal_that_was_not_tested_in_time_is_on_top)
{
	batch(1, "Beets", NULL, "processed", noon);
	look(&any, noon + 24 * HOUR_MS);
	shows("Cooling: test the seals");
	shows("from 2026-09-22 02:13 to 2026-09-22 14:13");
	look(&any, noon + 24 * HOUR_MS + 1);
	shows("TEST THE SEAL now");
}
END_TEST

START_TEST(filters_narrow)
{
	int64_t id = batch(1, "Beets", NULL, "processed", noon);
	int64_t plums = batch(2, "Grandmother's plums", "plums", "processed", noon - 400 * DAY_MS);
	day_seal(&f, id, "1-7", true, noon + 13 * HOUR_MS);
	day_move(&f, id, "1-2", "shelf", "Cellar, left", noon + 14 * HOUR_MS);
	day_seal(&f, plums, "1-7", true, noon);
	const struct shelf_filter food = {.words = "PLUM", .before_day = INT64_MAX};
	look(&food, noon + DAY_MS);
	ck_assert_uint_eq(list.lines_n, 1);
	const struct shelf_filter slug = {
	    .words = "x", .food = "pickled-beets", .before_day = INT64_MAX};
	look(&slug, noon + DAY_MS);
	ck_assert_uint_eq(list.lines_n, 2);
	const struct shelf_filter place = {.place = "cellar", .before_day = INT64_MAX};
	look(&place, noon + DAY_MS);
	ck_assert_uint_eq(list.lines_n, 1);
	const struct date day = instant_date((struct instant){noon - 400 * DAY_MS, 0});
	const struct shelf_filter age = {.before_day = date_days(day)};
	look(&age, noon + DAY_MS);
	ck_assert_uint_eq(list.lines_n, 1);
	const struct shelf_filter older = {.before_day = date_days(day) - 1};
	look(&older, noon + DAY_MS);
	ck_assert_uint_eq(list.lines_n, 0);
}
END_TEST

/* Terminal escape, SQL, right-to-left override, line break. */
static const char nasty[] = "a\x1b[2J'; DROP TABLE jar; --\n\xe2\x80\xae"
			    "b\xe2\x80\xac \xc2\x9b";

START_TEST(text_from_outside_is_kept_exactly_and_shown_harmlessly)
{
	int64_t id = batch(1, nasty, NULL, "processed", noon);
	day_seal(&f, id, "1-7", true, noon + 13 * HOUR_MS);
	day_move(&f, id, "1-7", "shelf", nasty, noon + 14 * HOUR_MS);
	look(&any, noon + DAY_MS);
	ck_assert_str_eq(groups.groups[0].title, nasty);
	ck_assert_str_eq(groups.groups[0].place, nasty);
	shows("a?[2J'; DROP TABLE jar; --??b? ?");
	for (const char *c = shown; *c; c++)
		ck_assert(*c == '\n' || (unsigned char)*c >= ' ');
	shows_not("\xe2\x80");
	json_t *json = shelf_json(&list);
	ck_assert_str_eq(json_string_value(json_object_get(
			     json_array_get(json_object_get(json, "lines"), 0), "place")),
			 nasty);
	json_decref(json);
}
END_TEST

/* --- The plan of the query --- */

static void plan_of(const char *sql, char *plan, size_t size)
{
	char explain[1024];
	sqlite3_stmt *query;
	snprintf(explain, sizeof explain, "EXPLAIN QUERY PLAN %s", sql);
	ck_assert_int_eq(sqlite3_prepare_v2(f.db->sql, explain, -1, &query, NULL), SQLITE_OK);
	*plan = '\0';
	while (sqlite3_step(query) == SQLITE_ROW) {
		size_t n = strlen(plan);
		snprintf(plan + n, size - n, "%s\n", (const char *)sqlite3_column_text(query, 3));
	}
	sqlite3_finalize(query);
}

/* Copies of one batch and its jars by plain SQL; every hundredth has a jar that is here. */
static void fill(int batches)
{
	char sql[1024];
	int64_t id = batch(1, "Beets", NULL, "processed", noon);
	day_seal(&f, id, "1-7", true, noon);
	day_move(&f, id, "1-7", "eaten", NULL, noon);
	snprintf(
	    sql, sizeof sql,
	    "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d) "
	    "INSERT INTO jar SELECT 1000 + i, k, 'pint', 1, iif(i %% 100 = 0 AND k = 1, 'shelf', "
	    "'eaten'), 'cellar', %lld, NOT (i %% 100 = 0 AND k = 1), 1, 0 FROM n, (SELECT 1 AS k "
	    "UNION SELECT 2 UNION SELECT 3)",
	    batches, (long long)noon);
	sqlite3 *raw;
	ck_assert_int_eq(sqlite3_open(f.path, &raw), SQLITE_OK);
	if (sqlite3_exec(raw, sql, NULL, NULL, NULL) != SQLITE_OK)
		ck_abort_msg("%s", sqlite3_errmsg(raw));
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK);
}

START_TEST(the_query_reads_only_what_is_here)
{
	char plan[1024];
	fill(5000);
	plan_of(SHELF_HERE, plan, sizeof plan);
	ck_assert_msg(strstr(plan, "USING INDEX jar_here") != NULL ||
			  strstr(plan, "USING COVERING INDEX jar_here") != NULL,
		      "%s", plan);
	ck_assert_msg(strstr(plan, "TEMP B-TREE") == NULL, "%s", plan);
	/* Rows that are gone cost no step: the virtual machine's steps say so. */
	sqlite3_stmt *query;
	ck_assert_int_eq(sqlite3_prepare_v2(f.db->sql, SHELF_HERE, -1, &query, NULL), SQLITE_OK);
	int rows = 0;
	while (sqlite3_step(query) == SQLITE_ROW)
		rows++;
	ck_assert_int_eq(rows, 50);
	ck_assert_int_lt(sqlite3_stmt_status(query, SQLITE_STMTSTATUS_VM_STEP, 0), 2000);
	sqlite3_finalize(query);
}
END_TEST

Suite *shelf_suite(void)
{
	Suite *suite = suite_create("shelf");
	TCase *tcase = tcase_create("shelf");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, an_empty_kitchen_has_no_jars);
	tcase_add_test(tcase, the_oldest_best_quality_date_comes_first);
	tcase_add_test(tcase, what_is_not_for_the_shelf_is_on_top_with_what_to_do);
	tcase_add_test(tcase, cold_goods_are_never_on_the_shelf);
	tcase_add_test(tcase, opened_and_chilled_jars_have_their_limits);
	tcase_add_test(tcase, a_ph_learned_later_takes_jars_off_the_shelf);
	tcase_add_test(tcase, a_seal_that_was_not_tested_in_time_is_on_top);
	tcase_add_test(tcase, filters_narrow);
	tcase_add_test(tcase, text_from_outside_is_kept_exactly_and_shown_harmlessly);
	tcase_add_test(tcase, the_query_reads_only_what_is_here);
	suite_add_tcase(suite, tcase);
	return suite;
}
