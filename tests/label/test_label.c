/* What a label says of a jar in each state; sheets of labels as people say them. Invented jars. */
#include <string.h>
#include <time.h>

#include "../../src/cli/label_sheet.h"
#include "../../src/cli/label_words.h"
#include "../suite.h"

/* 2026-09-21 14:13 UTC. */
#define OUT_MS INT64_C(1790000000000)

static struct jar_group group;
static struct shelf_line line;
static struct label_words *words;
static struct error err;

static void setup(void)
{
	setenv("TZ", "UTC", 1);
	tzset();
	memset(&group, 0, sizeof group);
	memset(&err, 0, sizeof err);
	snprintf(group.code, sizeof group.code, "26-041");
	snprintf(group.title, sizeof group.title, "Pickled beets");
	group.day = (struct date){2026, 9, 21};
	group.sealed = group.processed = true;
	jar_set_add(&group.jars, 7);
	line = (struct shelf_line){.group = &group,
				   .section = SHELF_GOOD,
				   .deadline_ms = OUT_MS,
				   .dated = true,
				   .until = {2027, 9, 21}};
	words = NULL;
}

static void teardown(void)
{
	free(words);
}

/* Is there a label? It is then words[0]. */
static bool made(void)
{
	size_t n = 0;
	struct jar_groups groups = {&group, 1, 1};
	struct shelf_list list = {&line, 1};
	free(words);
	return label_words_make(&groups, &list, &words, &n, &err) && n == 1;
}

static void says(const char *best_before, const char *keep)
{
	ck_assert(made());
	ck_assert_str_eq(words->label.code, "26-041-07");
	ck_assert_str_eq(words->label.put_up, "2026-09-21");
	ck_assert_str_eq(words->label.best_before, best_before);
	ck_assert_str_eq(words->label.keep, keep);
}

START_TEST(only_a_jar_for_the_shelf_is_silent_on_where_it_stands)
{
	says("2027-09-21", "");
	line.section = SHELF_FROZEN;
	says("2027-09-21", "keep frozen");
	line.section = SHELF_CHILLED;
	says("2027-09-21", "keep refrigerated");
	/* What was not sealed, or not processed as decided, has a last day, not a best one. */
	group.sealed = false;
	says("", "keep refrigerated, use by 2027-09-21");
	group.sealed = true;
	group.processed = false;
	says("", "keep refrigerated, use by 2027-09-21");
	line.section = SHELF_OPENED;
	says("", "opened: keep refrigerated, use by 2027-09-21");
	line.dated = false;
	says("", "opened: keep refrigerated");
}
END_TEST

START_TEST(what_is_not_for_the_shelf_has_no_date_of_the_shelf)
{
	line.section = SHELF_ACT;
	line.act = ACT_RECALLED;
	says("", "RECALLED: do not eat");
	line.act = ACT_DISCARD;
	says("", "DISCARD: do not taste");
	line.act = ACT_CHILL;
	says("", "NOT FOR THE SHELF: chill before 2026-09-21 14:13");
	line.act = ACT_FACTS;
	says("", "NOT FOR THE SHELF: its process is not known");
}
END_TEST

START_TEST(there_is_no_label_before_the_seal_is_tested_or_when_the_jar_has_left)
{
	line.section = SHELF_COOLING;
	line.from_ms = OUT_MS;
	ck_assert(!made());
	ck_assert_ptr_nonnull(strstr(err.text, "from 2026-09-21 14:13 on"));
	memset(&err, 0, sizeof err);
	line.section = SHELF_ACT;
	line.act = ACT_TEST_SEAL;
	ck_assert(!made());
	ck_assert_ptr_nonnull(strstr(err.text, "test the seals now"));
	memset(&err, 0, sizeof err);
	line.section = SHELF_GONE;
	group.state = JAR_GIVEN;
	ck_assert(!made());
	ck_assert_ptr_nonnull(strstr(err.text, "it is given"));
}
END_TEST

START_TEST(every_sheet_that_is_sold_fits_its_paper)
{
	static const char *const sizes[] = {NULL, "70x37mm", "63.5x38.1", "38.1x21.2mm",
					    "66.7x25.4mm"};
	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		struct label_sheet s;
		ck_assert(label_sheet_parse(sizes[i], &s, &err));
		ck_assert_int_le(s.margin_left + s.columns * s.label_width +
				     (s.columns - 1) * s.gap_across,
				 s.paper_width);
		ck_assert_int_le(s.margin_top + s.rows * s.label_height + (s.rows - 1) * s.gap_down,
				 s.paper_height);
	}
}
END_TEST

START_TEST(a_measured_sheet_is_taken_to_the_thousandth)
{
	struct label_sheet s;
	ck_assert(label_sheet_parse("70.125x37mm,2x7,gap=1.5x0,margin=3x4,paper=letter", &s, &err));
	ck_assert_int_eq(s.label_width, 70125);
	ck_assert_int_eq(s.rows, 7);
	ck_assert_int_eq(s.gap_across, 1500);
	ck_assert_int_eq(s.margin_top, 4000);
	ck_assert_int_eq(s.paper_width, 215900);
	/* In the middle: (210 - 2 x 100) / 2 and (297 - 5 x 50) / 2 mm. */
	ck_assert(label_sheet_parse("100x50mm,2x5", &s, &err));
	ck_assert_int_eq(s.margin_left, 5000);
	ck_assert_int_eq(s.margin_top, 23500);
}
END_TEST

START_TEST(what_is_no_sheet_is_refused)
{
	static const char *const bad[] = {"",
					  "70",
					  "70x",
					  "x37",
					  "70x37cm",
					  "70x37mm,",
					  "70x37mm,3",
					  "70x37mm,3x8x",
					  "70x37mm,gap=1",
					  "70x37mm,paper=",
					  "1e2x37mm",
					  "70,5x37mm",
					  "70x37mm,3x8,margin=-1x0",
					  "70.0001x37mm",
					  "71x37mm",
					  "2000.001x37mm,1x1",
					  "70x37mm,99999999999999999999x8",
					  "..x37"};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct label_sheet s;
		memset(&err, 0, sizeof err);
		ck_assert_msg(!label_sheet_parse(bad[i], &s, &err), "'%s' is taken", bad[i]);
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
}
END_TEST

static Suite *label_suite(void)
{
	Suite *suite = suite_create("label");
	TCase *tcase = tcase_create("label");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, only_a_jar_for_the_shelf_is_silent_on_where_it_stands);
	tcase_add_test(tcase, what_is_not_for_the_shelf_has_no_date_of_the_shelf);
	tcase_add_test(tcase, there_is_no_label_before_the_seal_is_tested_or_when_the_jar_has_left);
	tcase_add_test(tcase, every_sheet_that_is_sold_fits_its_paper);
	tcase_add_test(tcase, a_measured_sheet_is_taken_to_the_thousandth);
	tcase_add_test(tcase, what_is_no_sheet_is_refused);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(label_suite())
