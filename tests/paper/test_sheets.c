/* The sheet for the wall and the year's report. All data are invented. */
#include <limits.h>
#include <string.h>

#include "paper.h"

static const struct sheet_process process = {.minutes = 35,
					     .canner = "steam canner",
					     .pack = "hot pack",
					     .jar = "half-pint jars",
					     .elevation = "2,900 ft",
					     .headspace = "1/2 inch",
					     .source = "a publication, p. 1"};

static struct paper_sheet beets(void)
{
	return (struct paper_sheet){.title = "Pickled beets",
				    .batch = "26-041",
				    .day = "2026-08-14",
				    .makes = "about 9 half-pints",
				    .note = "",
				    .process = &process,
				    .jars = 9,
				    .edition = "2026x"};
}

static char *sheet_made(const struct paper_sheet *sheet)
{
	struct collector c;
	collect(&c);
	sheet_html(c.out, sheet);
	char *html = collected(&c);
	assert_page(html);
	return html;
}

static char *report_made(const struct report_year *report)
{
	struct collector c;
	collect(&c);
	report_html(c.out, report);
	char *html = collected(&c);
	assert_page(html);
	return html;
}

START_TEST(a_tested_process_is_the_largest_thing)
{
	struct paper_sheet sheet = beets();
	char *html = sheet_made(&sheet);
	assert_holds(html, "<p class=\"big\">35 <small>minutes</small></p>");
	assert_holds(html, "batch 26-041 · 2026-08-14");
	assert_holds(html, "<dt>headspace</dt><dd>1/2 inch</dd>");
	assert_holds(html, "start the whole time again");
	assert_holds(html, "a publication, p. 1");
	assert_lacks(html, "Not for the shelf");
	assert_lacks(html, "<small>psi");
	ck_assert_int_eq(count_of(html, "<li><span></span>"), 9);
	free(html);
	struct sheet_process pressure = process;
	pressure.psi = 12;
	pressure.vent = 10;
	sheet.process = &pressure;
	html = sheet_made(&sheet);
	assert_holds(html, ">35 <small>min at</small> 12 <small>psi</small></p>");
	assert_holds(html, "Vent 10 minutes first.");
	free(html);
}
END_TEST

/* Without a process, or with one that cannot be, nothing on the page looks like one. */
START_TEST(what_is_not_tested_is_not_for_the_shelf)
{
	struct paper_sheet sheet = beets();
	struct sheet_process broken = process;
	broken.minutes = 0;
	const struct sheet_process *const none[] = {NULL, &broken};
	for (size_t i = 0; i < 2; i++) {
		sheet.process = none[i];
		char *html = sheet_made(&sheet);
		assert_holds(html, "Not for the shelf");
		assert_holds(html, "refrigerator, or freeze it");
		assert_lacks(html, "<small>minutes</small>");
		assert_lacks(html, "<h2>Seals</h2>");
		free(html);
	}
}
END_TEST

START_TEST(boxes_are_as_many_as_jars)
{
	static const struct {
		int jars, boxes;
	} cases[] = {{-1, 0}, {0, 0}, {1, 1}, {1000, 1000}, {1001, 0}, {INT_MAX, 0}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct paper_sheet sheet = beets();
		sheet.jars = cases[i].jars;
		char *html = sheet_made(&sheet);
		ck_assert_int_eq(count_of(html, "<li><span></span>"), cases[i].boxes);
		free(html);
	}
}
END_TEST

START_TEST(hostile_sheets_are_pages_all_the_same)
{
	const struct sheet_ingredient line = {hostile, hostile};
	const struct sheet_step step = {hostile, hostile};
	const struct sheet_load load = {1, 2, hostile, hostile, hostile};
	const struct sheet_fixed fixed = {hostile, hostile};
	struct sheet_process p = process;
	p.canner = p.pack = p.jar = p.elevation = p.headspace = p.source = hostile;
	struct paper_sheet sheet = {.title = hostile,
				    .batch = hostile,
				    .day = hostile,
				    .makes = hostile,
				    .note = "",
				    .ingredients = &line,
				    .ingredients_n = 1,
				    .process = &p,
				    .steps = &step,
				    .steps_n = 1,
				    .loads = &load,
				    .loads_n = 1,
				    .fixed = &fixed,
				    .fixed_n = 1,
				    .jars = 3,
				    .edition = hostile};
	char *html = sheet_made(&sheet);
	/* The browser's title, the heading, and every text of the structs: each is there, escaped.
	 */
	ck_assert_int_eq(count_of(html, "&lt;script&gt;"), 21);
	free(html);
}
END_TEST

START_TEST(the_report_adds_up)
{
	static struct report_food foods[] = {
	    {"Plums", {0, 0, 0, 0, 0, 0, 0, 31, 42, 0, 0, 0}, 30, 6, 1, 36},
	    {"Beets", {0, 0, 0, 0, 0, 0, 0, 18, 0, 0, 0, 0}, 5, 0, 0, 13}};
	static struct report_size sizes[] = {{"pint", 60}, {"quart", 31}};
	static struct report_lot lots[] = {
	    {REPORT_ONE_LOT, "wide", "A1", "maker", 118, 17, 1},
	    {REPORT_ONE_LOT, "gift", "B2", "", 0, 0, 2},
	    {REPORT_NO_LOT, "", "", "", REPORT_FEW - 2, 1, 0},
	};
	static struct report_recall recalls[] = {
	    {"lot wide", {INT64_C(1790000000000), 0}, false, 135, 7}};
	const struct report_year year = {.year = 2026,
					 .foods = foods,
					 .foods_n = 2,
					 .lots = lots,
					 .lots_n = 3,
					 .sizes = sizes,
					 .sizes_n = 2,
					 .recalls = recalls,
					 .recalls_n = 1,
					 .loads = 9,
					 .loads_untimed = 2,
					 .batches = {0, 0, 0, 0, 0, 0, 0, 2, 1, 0, 0, 0},
					 .minutes = {0, 0, 0, 0, 0, 0, 0, 425, 130, 0, 0, 0},
					 .edition = "2026x"};
	char *html = report_made(&year);
	assert_holds(html, "Jars put up: 91. Batches: 3. Hours at the canner: 9.2.");
	assert_holds(html, "<td>49</td><td>42</td>"); /* August and September, the last row */
	assert_holds(html, "<td>91</td></tr>");
	assert_holds(html, "<td>135</td><td>17</td><td>12.6</td>"); /* 17 of 135 */
	assert_holds(html, "wide (A1)");
	assert_holds(html, "none tested");
	/* A rate of few jars is none. */
	assert_holds(html, "<td>29</td><td>1</td><td>too few jars</td><td class=\"plotted\"></td>");
	assert_holds(html, "Of 9 loads, 2 have no end on record");
	assert_holds(html, "lot wide</th><td>2026-09-21</td><td>135</td><td>7</td>");
	assert_holds(html, "<td>7.0</td><td>2.1</td>"); /* 425 and 130 minutes, rounded down */
	free(html);
}
END_TEST

START_TEST(an_empty_year_says_so)
{
	const struct report_year year = {.year = 2031, .edition = "2026x"};
	char *html = report_made(&year);
	assert_holds(html, "Nothing is on record for this year.");
	assert_lacks(html, "<table");
	free(html);
}
END_TEST

START_TEST(the_largest_counts_do_not_overflow)
{
	struct report_food food = {.eaten = INT_MAX, .left = INT_MAX};
	snprintf(food.food, sizeof food.food, "%s", hostile);
	struct report_year year = {.year = INT_MAX, .edition = hostile};
	for (int m = 0; m < REPORT_MONTHS; m++)
		food.put_up[m] = year.batches[m] = year.minutes[m] = INT_MAX;
	struct report_lot lot = {.sealed = INT_MAX, .failed = INT_MAX};
	snprintf(lot.lot, sizeof lot.lot, "%s", hostile);
	year.foods = &food;
	year.lots = &lot;
	year.foods_n = year.lots_n = 1;
	char *html = report_made(&year);
	assert_holds(html, "Jars put up: 25769803764."); /* 12 x 2,147,483,647 */
	assert_holds(html, "<td>4294967294</td>");
	assert_lacks(html, ">-");
	free(html);
}
END_TEST

Suite *sheet_suite(void)
{
	Suite *suite = suite_create("paper: sheet and report");
	TCase *tcase = tcase_create("sheets");
	tcase_add_test(tcase, a_tested_process_is_the_largest_thing);
	tcase_add_test(tcase, what_is_not_tested_is_not_for_the_shelf);
	tcase_add_test(tcase, boxes_are_as_many_as_jars);
	tcase_add_test(tcase, hostile_sheets_are_pages_all_the_same);
	tcase_add_test(tcase, the_report_adds_up);
	tcase_add_test(tcase, an_empty_year_says_so);
	tcase_add_test(tcase, the_largest_counts_do_not_overflow);
	suite_add_tcase(suite, tcase);
	return suite;
}
