/* A year of an invented household in figures, and the jars that somebody picks. */
#include <sqlite3.h>
#include <time.h>

#include "../log_fixture.h"
#include "jarwright/household_jars.h"
#include "jarwright/household_report.h"

/* 2026-01-01 and 2027-01-01, 00:00 UTC. */
static const int64_t from = INT64_C(1767225600000), to = INT64_C(1798761600000);
/* 2026-08-14 12:00 UTC. */
static const int64_t august = INT64_C(1786708800000);
static struct log_fixture f;
static struct report_year report;
static struct jar_groups groups;

static void setup(void)
{
	setenv("TZ", "UTC", 1);
	tzset();
	fixture_open(&f);
	report = (struct report_year){0};
	groups = (struct jar_groups){0};
}

static void teardown(void)
{
	report_year_release(&report);
	jar_groups_release(&groups);
	fixture_close(&f);
}

static void look(void)
{
	report_year_release(&report);
	if (!household_report(f.db, 2026, from, to, &report, &f.err))
		ck_abort_msg("%s", f.err.text);
}

static int64_t batch_at(int number, const char *title, const char *food, int64_t at)
{
	return day_start(&f,
			 &(struct day){.number = number, .at = at, .title = title, .food = food});
}

/* The UUID of an event, as bodies have it. */
static void hex_of(int64_t event, char hex[static UUID_TEXT_SIZE])
{
	uint8_t uuid[UUID_SIZE];
	ck_assert(event_uuid(f.db, event, uuid, &f.err));
	for (size_t k = 0; k < UUID_SIZE; k++)
		snprintf(hex + 2 * k, 3, "%02x", uuid[k]);
}

/* A lot of lids, put into a batch. */
static int64_t lids(const char *name, const char *code)
{
	return log_must(&f, "lot-add", 0, from,
			json_pack("{s:s, s:s, s:s}", "kind", "lids", "name", name, "code", code));
}

static void put_lots(int64_t batch, const int64_t *lots, size_t n)
{
	json_t *list = json_array();
	for (size_t i = 0; i < n; i++) {
		char hex[UUID_TEXT_SIZE] = "";
		hex_of(lots[i], hex);
		ck_assert_int_eq(json_array_append_new(list, json_string(hex)), 0);
	}
	log_must(&f, "batch-amend", batch, august,
		 json_pack("{s:o, s:s}", "lots", list, "why", "a test"));
}

/* Load 1 in a canner, from the moment for so many minutes. */
static void canner_load_at(int64_t batch, int64_t canner, int n, int64_t at, int minutes)
{
	char hex[UUID_TEXT_SIZE] = "";
	hex_of(canner, hex);
	log_must(&f, "load", batch, at,
		 json_pack("{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I, s:s}", "number", 1,
			   "first", 1, "jars", "n", n, "size", "pint", "facts", "outcome",
			   "processed", "why", "", "out_ms",
			   (json_int_t)at + minutes * (json_int_t)60000, "canner", hex));
}

static int64_t canner(void)
{
	return log_must(&f, "canner-add", 0, from,
			json_pack("{s:s, s:s}", "name", "big pot", "kind", "boiling-water"));
}

static const struct report_food *food_named(const char *name)
{
	for (size_t i = 0; i < report.foods_n; i++)
		if (strcmp(report.foods[i].food, name) == 0)
			return &report.foods[i];
	ck_abort_msg("no food '%s'", name);
	return NULL;
}

START_TEST(an_empty_file_has_an_empty_year)
{
	look();
	ck_assert_uint_eq(report.foods_n, 0);
	ck_assert_uint_eq(report.lots_n, 0);
	ck_assert_int_eq(report.loads, 0);
	struct household *none;
	ck_assert(household_open("/nonexistent/kitchen.db", HOUSEHOLD_READ, &none, &f.err));
	ck_assert(household_report(none, 2026, from, to, &report, &f.err));
	ck_assert_uint_eq(report.foods_n, 0);
	household_close(none);
}
END_TEST

START_TEST(a_batch_counts_by_its_day_and_a_jar_by_when_it_left)
{
	int64_t last_year = batch_at(1, "Beets", "pickled-beets", from - 1);
	int64_t first = batch_at(1, "Beets", "pickled-beets", from);
	int64_t last = batch_at(2, "My plums", "nothing-known", to - 1);
	int64_t next = batch_at(1, "Beets", "pickled-beets", to);
	day_load(&f, last_year, 7, "pint", "processed", from - 1);
	day_load(&f, first, 6, "pint", "processed", from);
	day_load(&f, last, 5, "quart", "processed", to - 1);
	day_load(&f, next, 4, "pint", "processed", to);
	day_seal(&f, last_year, "1-7", true, from - 1);
	day_seal(&f, first, "1-6", true, from);
	day_move(&f, last_year, "1", "eaten", NULL, from - 1);
	day_move(&f, last_year, "2", "eaten", NULL, from);
	day_move(&f, last_year, "3", "given", "somebody", to - 1);
	day_move(&f, last_year, "4", "eaten", NULL, to);
	day_move(&f, first, "1", "discarded", NULL, august);
	look();
	ck_assert_uint_eq(report.foods_n, 2);
	/* By the title that the tables have, else by the batch's own. */
	const struct report_food *beets = food_named("Pickled beets");
	ck_assert_int_eq(beets->put_up[0], 6);
	ck_assert_int_eq(beets->eaten, 1);
	ck_assert_int_eq(beets->given, 1);
	ck_assert_int_eq(beets->lost, 1);
	/* 4 of last year's, the one eaten after the year among them, and 5 of this one. */
	ck_assert_int_eq(beets->left, 9);
	const struct report_food *plums = food_named("My plums");
	ck_assert_int_eq(plums->put_up[11], 5);
	ck_assert_int_eq(plums->left, 5);
	ck_assert_int_eq(report.batches[0], 1);
	ck_assert_int_eq(report.batches[11], 1);
	ck_assert_uint_eq(report.sizes_n, 2);
	ck_assert_str_eq(report.sizes[0].size, "pint");
	ck_assert_int_eq(report.sizes[0].jars, 6);
	ck_assert_int_eq(report.sizes[1].jars, 5);
}
END_TEST

START_TEST(a_seal_that_failed_once_counts_against_its_lot)
{
	int64_t pot = canner(), a = lids("wide", "A1"), b = lids("narrow", "B2");
	int64_t of_a = batch_at(1, "Beets", NULL, august), none = batch_at(2, "Corn", NULL, august);
	int64_t both = batch_at(3, "Beans", NULL, august);
	canner_load_at(of_a, pot, 7, august, 45);
	canner_load_at(none, pot, 3, august, 45);
	canner_load_at(both, pot, 2, august, 45);
	put_lots(of_a, (const int64_t[]){a}, 1);
	put_lots(both, (const int64_t[]){a, b}, 2);
	day_seal(&f, of_a, "1-5", true, august + 13 * HOUR_MS);
	day_seal(&f, of_a, "6", false, august + 13 * HOUR_MS);
	day_seal(&f, none, "1-3", true, august + 13 * HOUR_MS);
	day_seal(&f, both, "1-2", true, august + 13 * HOUR_MS);
	/* Found open on the shelf; jar 7 was never tested. */
	day_move(&f, of_a, "1", "unsealed", NULL, august + 14 * HOUR_MS);
	look();
	ck_assert_uint_eq(report.lots_n, 3);
	ck_assert_str_eq(report.lots[0].lot, "wide");
	ck_assert_str_eq(report.lots[0].code, "A1");
	ck_assert_int_eq(report.lots[0].failed, 2);
	ck_assert_int_eq(report.lots[0].sealed, 4);
	ck_assert_int_eq(report.lots[1].lids, REPORT_SEVERAL_LOTS);
	ck_assert_int_eq(report.lots[1].sealed, 2);
	ck_assert_int_eq(report.lots[2].lids, REPORT_NO_LOT);
	ck_assert_int_eq(report.lots[2].sealed, 3);
}
END_TEST

START_TEST(a_test_that_was_taken_back_does_not_count)
{
	int64_t pot = canner(), id = batch_at(1, "Beets", NULL, august);
	canner_load_at(id, pot, 2, august, 45);
	int64_t wrong = day_seal(&f, id, "1-2", false, august + 13 * HOUR_MS);
	ck_assert(log_begin(f.db, &f.err));
	ck_assert(
	    log_end(f.db, log_undo(f.db, wrong, (struct instant){august, 0}, &f.err), &f.err));
	look();
	ck_assert_uint_eq(report.lots_n, 1);
	ck_assert_int_eq(report.lots[0].sealed + report.lots[0].failed, 0);
	day_seal(&f, id, "1-2", true, august + 13 * HOUR_MS);
	look();
	ck_assert_int_eq(report.lots[0].sealed, 2);
	ck_assert_int_eq(report.lots[0].failed, 0);
}
END_TEST

START_TEST(a_rate_needs_enough_jars)
{
	double rate = -1;
	struct report_lot lot = {.sealed = REPORT_FEW - 2, .failed = 1};
	ck_assert(!report_failure_rate(&lot, &rate));
	lot.failed = 2;
	ck_assert(report_failure_rate(&lot, &rate));
	ck_assert_double_eq_tol(rate, 100.0 * 2 / 30, 1e-9);
}
END_TEST

START_TEST(what_has_no_end_is_left_out_of_the_hours)
{
	int64_t pot = canner();
	canner_load_at(batch_at(1, "Beets", NULL, august), pot, 7, august, 45);
	canner_load_at(batch_at(2, "Corn", NULL, august), pot, 7, august, 0);
	/* For the cold: no canner, no hours. */
	day_load(&f, batch_at(3, "Pesto", NULL, august), 2, "pint", "cold", august + HOUR_MS);
	look();
	ck_assert_int_eq(report.loads, 2);
	ck_assert_int_eq(report.loads_untimed, 1);
	ck_assert_int_eq(report.minutes[7], 45);
}
END_TEST

static void recall(int64_t batch, int64_t at, bool recorded, bool closed)
{
	char hex[UUID_TEXT_SIZE] = "";
	hex_of(batch, hex);
	int64_t id =
	    log_must(&f, "recall-open", 0, at,
		     json_pack("{s:i, s:i, s:s, s:s, s:[{s:s, s:s}]}", "year", 2026, "number",
			       log_count(&f, "SELECT count(*) + 1 FROM recall"), "reason", "lot",
			       "what", "lot wide", "jars", "batch", hex, "jars", "1-2"));
	if (recorded)
		log_must(&f, "recall-record", id, at,
			 json_pack("{s:s, s:s, s:s}", "batch", hex, "jars", closed ? "1-2" : "1",
				   "disposition", "discarded"));
	if (closed)
		log_must(&f, "recall-close", id, at, json_object());
}

START_TEST(recalls_open_in_the_year_are_told)
{
	int64_t id = batch_at(1, "Beets", NULL, from - 10 * DAY_MS);
	day_load(&f, id, 7, "pint", "processed", from - 10 * DAY_MS);
	recall(id, from - 2 * DAY_MS, true, true); /* over before it */
	recall(id, from - DAY_MS, true, false);    /* still open in it */
	recall(id, august, false, false);
	recall(id, to, false, false); /* after it */
	look();
	ck_assert_uint_eq(report.recalls_n, 2);
	ck_assert_int_eq(report.recalls[0].jars, 2);
	ck_assert_int_eq(report.recalls[0].open, 1);
	ck_assert(!report.recalls[0].closed);
	ck_assert_int_eq(report.recalls[1].open, 2);
	ck_assert_int_eq(report.recalls[1].opened.ms, august);
}
END_TEST

/* --- Picked jars --- */

static bool pick(const char *words)
{
	struct jar_picks picks;
	memset(&f.err, 0, sizeof f.err);
	jar_groups_release(&groups);
	return jar_picks_or_batch_read(&words, 1, &picks, &f.err) &&
	       household_picked_jars(f.db, &picks, &groups, &f.err);
}

static size_t picked(void)
{
	size_t n = 0;
	for (size_t i = 0; i < groups.groups_n; i++)
		n += jar_set_count(&groups.groups[i].jars);
	return n;
}

START_TEST(jars_are_picked_by_batch_by_name_and_by_count)
{
	int64_t id = batch_at(41, "Beets", NULL, august);
	day_load(&f, id, 7, "pint", "processed", august);
	day_seal(&f, id, "1-7", true, august + HOUR_MS);
	day_move(&f, id, "1-2", "eaten", NULL, august + HOUR_MS);
	ck_assert(pick("26-041"));
	ck_assert_uint_eq(picked(), 5);
	ck_assert(pick("26-041 1-3")); /* by name also what has left */
	ck_assert_uint_eq(picked(), 3);
	ck_assert(pick("2 of 26-041"));
	ck_assert_uint_eq(picked(), 2);
	ck_assert(jar_set_has(&groups.groups[0].jars, 3));
	ck_assert(!pick("6 of 26-041"));
	ck_assert_int_eq(f.err.kind, ERROR_USAGE);
	ck_assert(!pick("26-041-08"));
	ck_assert_ptr_nonnull(strstr(f.err.text, "26-041-08"));
	ck_assert(!pick("26-042"));
	ck_assert_int_eq(f.err.kind, ERROR_USAGE);
}
END_TEST

static Suite *report_suite(void)
{
	Suite *suite = suite_create("report");
	TCase *tcase = tcase_create("report");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, an_empty_file_has_an_empty_year);
	tcase_add_test(tcase, a_batch_counts_by_its_day_and_a_jar_by_when_it_left);
	tcase_add_test(tcase, a_seal_that_failed_once_counts_against_its_lot);
	tcase_add_test(tcase, a_test_that_was_taken_back_does_not_count);
	tcase_add_test(tcase, a_rate_needs_enough_jars);
	tcase_add_test(tcase, what_has_no_end_is_left_out_of_the_hours);
	tcase_add_test(tcase, recalls_open_in_the_year_are_told);
	tcase_add_test(tcase, jars_are_picked_by_batch_by_name_and_by_count);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(report_suite())
