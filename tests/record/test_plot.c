/* The outline of a long trace, and the drawing of it. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_record.h"
#include "suites.h"
#include "trace.h"

enum { ROWS = 1000000 };

/* One row of a million falls, at any place, and the outline has its reading. */
START_TEST(the_shortest_dip_shows)
{
	static struct record_outline outline;
	struct record_need need = open_need(15);
	const int places[] = {1, 7777, 512000, 999998};
	for (size_t p = 0; p < sizeof places / sizeof *places; p++) {
		double least = INFINITY;
		record_outline_start(&outline);
		for (int i = 0; i < ROWS; i++) {
			double value = i == places[p] ? 101.5 : 212.3;
			record_outline_add(
			    &outline, &need,
			    &(struct record_sample){.time_s = 1e9 + i, .value = {value, NAN}});
		}
		for (size_t i = 0; i < outline.steps_n; i++)
			least = fmin(least, outline.steps[i].least[RECORD_TEMPERATURE]);
		ck_assert_double_eq(least, 101.5);
		ck_assert_uint_gt(outline.steps_n, RECORD_STEPS / 2);
		ck_assert_uint_le(outline.steps_n, RECORD_STEPS);
		/* And at its place. */
		size_t at = (size_t)(places[p] / outline.step_s);
		ck_assert_double_eq(outline.steps[at].least[RECORD_TEMPERATURE], 101.5);
	}
}
END_TEST

START_TEST(gaps_and_faults)
{
	static struct record_outline outline;
	struct record_need need = open_need(15);
	const struct record_sample rows[] = {
	    {0, {212, NAN}, 1},   {10, {9999, NAN}, 2}, {20, {212, NAN}, 3},
	    {500, {212, NAN}, 4}, {-5, {212, NAN}, 5},  {501, {NAN, NAN}, 6},
	};
	record_outline_start(&outline);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		record_outline_add(&outline, &need, &rows[i]);
	size_t gaps = 0;
	double most = 0;
	for (size_t i = 0; i < outline.steps_n; i++) {
		gaps += outline.steps[i].gap;
		most = fmax(most, outline.steps[i].most[RECORD_TEMPERATURE]);
	}
	ck_assert_uint_eq(gaps, 1);
	ck_assert_double_eq(most, 212);
	ck_assert_double_eq(outline.last_s, 500);
}
END_TEST

static size_t count(const char *text, const char *part)
{
	size_t n = 0;
	for (; (text = strstr(text, part)) != NULL; text++)
		n++;
	return n;
}

/* A drawing of a trace with two dips; the subject has what XML must have escaped. */
static char *draw(const struct record_need *need)
{
	static struct record_outline outline;
	struct record_judge judge;
	struct record_judgement judgement;
	struct record_csv_found found = {.has = {true, false}};
	struct record_report report = {.file = "a.csv",
				       .subject = "Fish & <chips>",
				       .need = need,
				       .judgement = &judgement,
				       .found = &found};
	char *bytes = NULL;
	size_t n = 0;
	record_judge_start(&judge, need);
	record_outline_start(&outline);
	for (int i = 0; i < 3000; i++) {
		double value = i % 1000 == 999 ? 211 : 212.3;
		struct record_sample row = {.time_s = i, .value = {value, NAN}};
		record_judge_add(&judge, &row);
		record_outline_add(&outline, need, &row);
	}
	record_judge_end(&judge, &judgement);
	FILE *out = open_memstream(&bytes, &n);
	ck_assert_ptr_nonnull(out);
	record_svg(out, &report, &outline);
	ck_assert_int_eq(fclose(out), 0);
	ck_assert_uint_lt(n, 200000);
	return bytes;
}

START_TEST(the_drawing_says_it_in_words)
{
	struct record_need need = open_need(20);
	char *svg = draw(&need);
	ck_assert_uint_eq(
	    count(svg, "<title id=\"title\">UNDER-PROCESSED: Fish &amp; &lt;chips&gt;"), 1);
	ck_assert_uint_eq(count(svg, "role=\"img\" aria-labelledby=\"title desc\""), 1);
	ck_assert_uint_eq(count(svg, "<desc id=\"desc\">"), 1);
	ck_assert_uint_eq(count(svg, "needed: 211.95 °F"), 1);
	ck_assert_uint_eq(count(svg, "class=\"dip\""), 3);
	ck_assert_uint_eq(count(svg, "<title>Break 2: below from 0:33:19"), 1);
	ck_assert_uint_eq(count(svg, "nan"), 0);
	ck_assert_uint_eq(count(svg, "inf"), 0);
	free(svg);
}
END_TEST

/* Where the drawing is: xmllint reads it as XML, if it is there. */
START_TEST(the_drawing_is_xml)
{
	struct record_need need = open_need(20);
	char *svg = draw(&need);
	if (system("command -v xmllint >/dev/null 2>&1") == 0) {
		FILE *lint = popen("xmllint --noout -", "w");
		ck_assert_ptr_nonnull(lint);
		ck_assert_int_ge(fputs(svg, lint), 0);
		ck_assert_int_eq(pclose(lint), 0);
	}
	free(svg);
}
END_TEST

Suite *plot_suite(void)
{
	Suite *suite = suite_create("plot");
	TCase *tests = tcase_create("plot");
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, the_shortest_dip_shows);
	tcase_add_test(tests, gaps_and_faults);
	tcase_add_test(tests, the_drawing_says_it_in_words);
	tcase_add_test(tests, the_drawing_is_xml);
	suite_add_tcase(suite, tests);
	return suite;
}
