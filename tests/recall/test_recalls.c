/* Recalls opened, recorded and closed in the log. All data is invented. */
#include "jarwright/household_jars.h"
#include "recall_fixture.h"
#include "suites.h"

static struct log_fixture f;
static struct touched_jars jars;
static struct recall_sheet sheet;
static char code[RECALL_CODE_SIZE];
static int64_t lot, batch, recall;

enum { HOLD_HOURS = 24 };

/* Batch 26-041 of five jars: two on the shelf, one given and then eaten, one given, one chilled. */
static void setup(void)
{
	fixture_open(&f);
	jars = (struct touched_jars){0};
	sheet = (struct recall_sheet){0};
	lot = add_lot(&f, "wide lids");
	batch = start(&f, 41, json_pack("[o]", uuid_of(&f, lot)), NULL);
	load_in(&f, batch, 1, 0, 5, noon);
	day_seal(&f, batch, "1-5", true, noon + 13 * HOUR_MS);
	day_move(&f, batch, "1-2", "shelf", "cellar", noon + 14 * HOUR_MS);
	day_move(&f, batch, "3", "given", "the neighbours", noon + 15 * HOUR_MS);
	day_move(&f, batch, "3", "eaten", NULL, noon + 16 * HOUR_MS);
	day_move(&f, batch, "4", "given", "the choir", noon + 15 * HOUR_MS);
	day_move(&f, batch, "5", "refrigerated", NULL, noon + 14 * HOUR_MS);
}

static void teardown(void)
{
	touched_jars_release(&jars);
	recall_sheet_release(&sheet);
	fixture_close(&f);
}

static void open_recall(void)
{
	const struct recall_opening opening = {.reason = RECALL_LOT,
					       .what = "lot 'wide lids'",
					       .why = "lids do not hold",
					       .fault = {.kind = FAULT_LOT, .subject = lot},
					       .at = {noon + DAY_MS, 0}};
	touched_jars_release(&jars);
	if (!household_recall_open(f.db, &opening, code, &jars, &f.err))
		ck_abort_msg("%s", f.err.text);
	if (*code)
		ck_assert(household_recall_find(f.db, code, &recall, &f.err));
}

static void read_again(void)
{
	recall_sheet_release(&sheet);
	if (!household_recall(f.db, recall, &sheet, &f.err))
		ck_abort_msg("%s", f.err.text);
}

static bool record(const char *which, enum disposition disposition, int64_t at)
{
	struct jar_picks picks;
	size_t n;
	const struct recall_record what = {
	    .disposition = disposition, .at = {at, 0}, .hold_hours = HOLD_HOURS};
	memset(&f.err, 0, sizeof f.err);
	ck_assert(jar_picks_read(&which, 1, &picks, &f.err));
	return household_recall_record(f.db, recall, &picks, &what, &n, &f.err);
}

START_TEST(it_lists_every_jar_and_whom_it_went_to)
{
	open_recall();
	ck_assert_str_eq(code, "R26-01");
	ck_assert_uint_eq(jars.jars_n, 5);
	read_again();
	ck_assert_str_eq(sheet.entry.why, "lids do not hold");
	ck_assert_uint_eq(sheet.entry.jars_n, 5);
	ck_assert_uint_eq(sheet.entry.open_n, 5);
	ck_assert_int_eq(sheet.jars[0].jar.state, JAR_SHELF);
	ck_assert_str_eq(sheet.jars[0].jar.place, "cellar");
	ck_assert_str_eq(sheet.jars[0].jar.given_to, "");
	/* It was eaten, but they must be told all the same. */
	ck_assert_int_eq(sheet.jars[2].jar.state, JAR_EATEN);
	ck_assert_str_eq(sheet.jars[2].jar.given_to, "the neighbours");
	ck_assert_str_eq(sheet.jars[3].jar.given_to, "the choir");
	ck_assert_uint_eq(sheet.since.jars_n, 0);
}
END_TEST

START_TEST(nothing_touched_opens_nothing)
{
	lot = add_lot(&f, "never used");
	open_recall();
	ck_assert_str_eq(code, "");
	ck_assert_uint_eq(jars.jars_n, 0);
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM recall"), 0);
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM event WHERE kind LIKE 'recall%'"), 0);
}
END_TEST

START_TEST(it_closes_only_when_none_is_open)
{
	open_recall();
	ck_assert(record("26-041 1-2", DISPOSITION_DISCARDED, noon + 2 * DAY_MS));
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM jar WHERE state = 'discarded'"), 2);
	ck_assert(
	    !household_recall_close(f.db, recall, (struct instant){noon + 2 * DAY_MS, 0}, &f.err));
	ck_assert_int_eq(f.err.kind, ERROR_USAGE);
	ck_assert(record("26-041-03", DISPOSITION_EATEN, noon + 2 * DAY_MS));
	ck_assert(record("26-041-04", DISPOSITION_TOLD, noon + 2 * DAY_MS));
	ck_assert(record("26-041-05", DISPOSITION_CLEARED, noon + 2 * DAY_MS));
	ck_assert(
	    household_recall_close(f.db, recall, (struct instant){noon + 2 * DAY_MS, 0}, &f.err));
	read_again();
	ck_assert_int_eq(sheet.entry.closed_ms, noon + 2 * DAY_MS);
	ck_assert(!record("26-041-05", DISPOSITION_LOST, noon + 3 * DAY_MS));
}
END_TEST

START_TEST(what_cannot_be_is_refused_and_nothing_stays)
{
	open_recall();
	ck_assert(!record("26-041 1-3", DISPOSITION_DISCARDED, noon + 2 * DAY_MS));
	ck_assert_ptr_nonnull(strstr(f.err.text, "26-041-03: it is eaten"));
	ck_assert(!record("26-041-04", DISPOSITION_FROZEN, noon + 2 * DAY_MS));
	ck_assert_ptr_nonnull(strstr(f.err.text, "told"));
	ck_assert(!record("26-041-09", DISPOSITION_LOST, noon + 2 * DAY_MS));
	ck_assert(!record("6 of 26-041", DISPOSITION_LOST, noon + 2 * DAY_MS));
	read_again();
	ck_assert_uint_eq(sheet.entry.open_n, 5);
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM jar WHERE state = 'discarded'"), 0);
}
END_TEST

/* Cold does not mend what stood warm for too long: it is not to be eaten after the recall. */
START_TEST(chilled_too_late_stays_marked)
{
	open_recall();
	int64_t out = noon + HOUR_MS;
	ck_assert(record("26-041-01", DISPOSITION_REFRIGERATED, out + HOLD_HOURS * HOUR_MS));
	ck_assert(record("26-041-02", DISPOSITION_FROZEN, out + HOLD_HOURS * HOUR_MS + 1));
	ck_assert(record("26-041-05", DISPOSITION_REFRIGERATED, noon + 9 * DAY_MS));
	ck_assert_int_eq(log_count(&f, "SELECT late FROM jar WHERE number = 1"), 0);
	ck_assert_int_eq(log_count(&f, "SELECT late FROM jar WHERE number = 2"), 1);
	ck_assert_int_eq(log_count(&f, "SELECT late FROM jar WHERE number = 5"), 0);
}
END_TEST

START_TEST(a_count_takes_open_ones)
{
	open_recall();
	ck_assert(record("2 of 26-041", DISPOSITION_LOST, noon + 2 * DAY_MS));
	ck_assert(record("3 of 26-041", DISPOSITION_TOLD, noon + 2 * DAY_MS));
	read_again();
	ck_assert_int_eq(sheet.jars[1].disposition, DISPOSITION_LOST);
	ck_assert_int_eq(sheet.jars[2].disposition, DISPOSITION_TOLD);
	ck_assert_uint_eq(sheet.entry.open_n, 0);
}
END_TEST

START_TEST(a_batch_made_with_its_jars_later_is_told)
{
	open_recall();
	int64_t later = start(&f, 42, NULL, json_pack("[o]", from_jars(&f, batch, "5")));
	load_in(&f, later, 1, 0, 2, noon + 2 * DAY_MS);
	read_again();
	ck_assert_uint_eq(sheet.since.jars_n, 2);
	ck_assert_int_eq(sheet.since.jars[0].batch, later);
	ck_assert(record("26-041-05", DISPOSITION_CLEARED, noon + 3 * DAY_MS));
	read_again();
	ck_assert_uint_eq(sheet.since.jars_n, 0);
}
END_TEST

/* As a merge of two devices may leave it: the jar is not there. */
START_TEST(a_jar_that_is_not_there_is_shown_so)
{
	log_must(&f, "recall-open", 0, noon + DAY_MS,
		 json_pack("{s:i, s:i, s:s, s:s, s:[o]}", "year", 2026, "number", 7, "reason",
			   "batch", "what", "batch 26-041", "jars", from_jars(&f, batch, "5-6")));
	ck_assert(household_recall_find(f.db, "R26-07", &recall, &f.err));
	read_again();
	ck_assert_uint_eq(sheet.entry.jars_n, 2);
	ck_assert(!sheet.jars[0].jar.missing);
	ck_assert(sheet.jars[1].jar.missing);
	ck_assert_int_eq(sheet.jars[1].jar.number, 6);
	ck_assert_int_eq(sheet.jars[1].jar.number_of_batch, 41);
	ck_assert(record("26-041-06", DISPOSITION_LOST, noon + 2 * DAY_MS));
}
END_TEST

/* The code may stand in a message already. */
START_TEST(a_code_is_not_given_out_again)
{
	open_recall();
	ck_assert_str_eq(code, "R26-01");
	ck_assert(log_begin(f.db, &f.err));
	ck_assert(log_end(
	    f.db, log_undo(f.db, recall, (struct instant){noon + 2 * DAY_MS, 0}, &f.err), &f.err));
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM recall"), 0);
	open_recall();
	ck_assert_str_eq(code, "R26-02");
}
END_TEST

START_TEST(names_that_two_have_are_asked_about)
{
	int64_t id;
	log_must(&f, "lot-finish", lot, noon, json_object());
	ck_assert(household_find_lot(f.db, "WIDE lids", &id, &f.err));
	ck_assert_int_eq(id, lot);
	add_lot(&f, "wide lids");
	ck_assert(!household_find_lot(f.db, "wide lids", &id, &f.err));
	ck_assert_int_eq(f.err.kind, ERROR_USAGE);
	ck_assert_ptr_nonnull(strstr(f.err.text, "used up"));
	memset(&f.err, 0, sizeof f.err);
	ck_assert(!household_find_lot(f.db, "narrow lids", &id, &f.err));
}
END_TEST

Suite *recalls_suite(void)
{
	Suite *suite = suite_create("recalls");
	TCase *tests = tcase_create("recalls");
	tcase_add_checked_fixture(tests, setup, teardown);
	tcase_add_test(tests, it_lists_every_jar_and_whom_it_went_to);
	tcase_add_test(tests, nothing_touched_opens_nothing);
	tcase_add_test(tests, it_closes_only_when_none_is_open);
	tcase_add_test(tests, what_cannot_be_is_refused_and_nothing_stays);
	tcase_add_test(tests, chilled_too_late_stays_marked);
	tcase_add_test(tests, a_count_takes_open_ones);
	tcase_add_test(tests, a_batch_made_with_its_jars_later_is_told);
	tcase_add_test(tests, a_jar_that_is_not_there_is_shown_so);
	tcase_add_test(tests, a_code_is_not_given_out_again);
	tcase_add_test(tests, names_that_two_have_are_asked_about);
	suite_add_tcase(suite, tests);
	return suite;
}
