/* Recorders' files: styles that are read, what is ambiguous, and what is broken. All invented. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "csv_fixture.h"
#include "suites.h"

/* 2026-11-25 14:05:00 UTC in seconds from 1970, by date(1). */
#define MOMENT 1795615500.0

/* One file, and its second row: seconds after the first, temperature, pressure. */
static const struct good {
	const char *name, *text;
	struct record_csv_wish wish;
	double first_s, step_s, fahrenheit, psi;
} goods[] = {
    {"commas, ISO 8601",
     "Time,Temperature (°F)\n2026-11-25T14:05:00,212\n2026-11-25T14:05:05,212.5\n",
     {0},
     MOMENT,
     5,
     212.5,
     NAN},
    {"semicolons, decimal comma",
     "Zeit;x\n\nDate;Time;Temp [°C];Pressure kPa (gauge)\n25.11.2026;14:05:00;99,5;0,0\n"
     "25.11.2026;14:05:02,5;100,0;68,94757293168361\n",
     {0},
     MOMENT,
     2.5,
     212,
     10},
    {"tabs, CRLF, BOM, quotes",
     "\xEF\xBB\xBF\"Date/Time\"\t\"Temp, C\"\r\n\"25/11/2026 14:05:00\"\t\"100\"\r\n"
     "\"25/11/2026 14:05:01\"\t\"100.0\"\r\n",
     {0},
     MOMENT,
     1,
     212,
     NAN},
    {"month first by itself",
     "Time,temp f\n11/25/2026 2:05:00 PM,1\n11/25/2026 2:05:00 pm,2\n",
     {0},
     MOMENT,
     0,
     2,
     NAN},
    {"month first as said",
     "Time,temp f\n11/12/2026 12:00:00 AM,1\n11/12/2026 12:00:01 AM,2\n",
     {.dates = CSV_MONTH_FIRST},
     1794441600.0,
     1,
     2,
     NAN},
    {"two digits of the year, as said",
     "Time,temp f\n25/11/26 14:05:00,1\n25/11/26 14:06:00,2\n",
     {.dates = CSV_DAY_FIRST},
     MOMENT,
     60,
     2,
     NAN},
    {"over midnight",
     "Time,temp f\n2026-12-31 23:59:59,1\n2027-01-01 00:00:01,2\n",
     {0},
     1798761599.0,
     2,
     2,
     NAN},
    {"a leap day",
     "Time,temp f\n2028-02-28 23:59:59,1\n2028-02-29 00:00:00,2\n",
     {0},
     1835395199.0,
     1,
     2,
     NAN},
    {"zones",
     "Time,temp f\n2026-11-25T09:05:00-05:00,1\n2026-11-25T14:05:05Z,2\n",
     {0},
     MOMENT,
     5,
     2,
     NAN},
    {"unix seconds", "timestamp,degF\n1795615500,1\n1795615500.25,2\n", {0}, MOMENT, 0.25, 2, NAN},
    {"elapsed seconds", "Elapsed (s),Temp K\n0,373.15\n7,373.15\n", {0}, 0, 7, 212, NAN},
    {"elapsed minutes", "Elapsed (min),Temp F\n0,1\n0.5,2\n", {0}, 0, 30, 2, NAN},
    {"elapsed, unit as said",
     "Elapsed,Temp F\n0,1\n0.5,2\n",
     {.clock = CSV_MINUTES},
     0,
     30,
     2,
     NAN},
    {"h:mm:ss", "Time,Temp F\n0:00:59,1\n100:01:00,2\n", {0}, 59, 360001, 2, NAN},
    {"absolute kPa",
     "Time (s),Pressure kPa abs\n0,101.325\n1,108.219757293168361\n",
     {.air_psi = 14.695948775513},
     0,
     1,
     NAN,
     1},
    {"bar and hPa", "Time (s),bara\n0,1\n1,2\n", {.air_psi = 14.5}, 0, 1, NAN, 14.507547546},
    {"units as said",
     "Time (s),Temp,Pressure\n0,1,1\n1,100,10\n",
     {.temperature = CSV_CELSIUS, .pressure = CSV_PSI, .zero = CSV_GAUGE},
     0,
     1,
     212,
     10},
    {"columns by heading",
     "when,probe A (C),probe B (C)\n0:00:00,1,2\n0:00:01,3,100\n",
     {.time = "WHEN", .value = {"Probe B (C)"}},
     0,
     1,
     212,
     NAN},
    {"columns by number, no heading",
     "x;0:00:00;5\nx;0:00:01;100\n",
     {.time = "2", .value = {"3", NULL}, .temperature = CSV_CELSIUS},
     0,
     1,
     212,
     NAN},
    {"a unit is enough of a name", "Time (s),psig\n0,1\n1,2\n", {0}, 0, 1, NAN, 2},
    {"no reading", "Time (s),Temp F\n0,1\n1,\n\n2,---\n", {0}, 0, 1, NAN, NAN},
    {"no end of the last line", "Time (s),Temp F\n0,1\n1,2", {0}, 0, 1, 2, NAN},
    {"blanks", "Time (s) , Temp F \n 0 , 1 \n 1 , -2.50 \n", {0}, 0, 1, -2.5, NAN},
    {"a quote in quotes", "Time (s),\"Temp \"\"F\"\"\"\n0,1\n1,2\n", {0}, 0, 1, 2, NAN},
};

static void same(const char *name, double got, double want)
{
	bool is = isnan(want) ? isnan(got) : fabs(got - want) <= 1e-6;
	ck_assert_msg(is, "%s: %.9g, not %.9g", name, got, want);
}

START_TEST(read_styles)
{
	const struct good *g = &goods[_i];
	struct csv_rows rows;
	ck_assert_msg(read_csv(g->text, g->wish, &rows), "%s: %s", g->name, rows.err.text);
	ck_assert_uint_ge(rows.n, 2);
	same(g->name, rows.rows[0].time_s, g->first_s);
	same(g->name, rows.rows[1].time_s - rows.rows[0].time_s, g->step_s);
	same(g->name, rows.rows[1].value[RECORD_TEMPERATURE], g->fahrenheit);
	same(g->name, rows.rows[1].value[RECORD_PRESSURE], g->psi);
}
END_TEST

#define HEAD "Time (s),Temp F\n"

/* One file, and the beginning of its message. */
static const struct bad {
	const char *text, *says;
	struct record_csv_wish wish;
} bads[] = {
    {"", "log.csv: the file is empty", {0}},
    {HEAD, "log.csv: a heading and no readings", {0}},
    {HEAD "\n,\n", "log.csv: a heading and no readings", {0}},
    {"a,b\n1,2\n", "log.csv: no heading with a time and a temperature or pressure column", {0}},
    {"Time,Temp\n1,2\n",
     "log.csv:1: unit of the temperature: it is not said; say --temp-unit",
     {0}},
    {"Time,psi\n1,2\n", "log.csv:1: gauge or absolute pressure: it is not said", {0}},
    {"Time,Pressure gauge\n1,2\n", "log.csv:1: unit of the pressure: it is not said", {0}},
    {"Time,Temp °C\n1,2\n",
     "log.csv:1: unit of the temperature: the heading says another",
     {.temperature = CSV_FAHRENHEIT}},
    {"Time,Temp °C (F)\n1,2\n",
     "log.csv:1: unit of the temperature: the heading says another",
     {0}},
    {"Time,Temp 1 F,Temp 2 F\n1,2,3\n",
     "log.csv:1: several columns may be the temperature, 'Temp 1 F' and 'Temp 2 F'; name it with "
     "--temp-column",
     {0}},
    {"Time,Time,Temp F\n1,2,3\n", "log.csv:1: several columns may be the time", {0}},
    {"Time,Temp F\n1,2\n",
     "log.csv:2: time '1': seconds or minutes is not said; say --time-unit",
     {0}},
    {"Time,Temp F\n03/04/2026 12:00:00,2\n",
     "log.csv:2: time '03/04/2026 12:00:00': day first or month first is not clear; say --dates",
     {0}},
    {"Time,Temp F\n25/11/26 12:00:00,2\n",
     "log.csv:2: time '25/11/26 12:00:00': a year of two",
     {0}},
    {"Time,Temp F\n25/11/2026 12:00:00,2\n11/25/2026 12:00:00,3\n",
     "log.csv:3: time '11/25/2026",
     {0}},
    {"Time,Temp F\n2026-02-29 12:00:00,2\n",
     "log.csv:2: time '2026-02-29 12:00:00': not a time",
     {0}},
    {"Time,Temp F\n2026-11-25 24:00:00,2\n",
     "log.csv:2: time '2026-11-25 24:00:00': not a time",
     {0}},
    {"Time,Temp F\n2026-11-25,2\n",
     "log.csv:2: time '2026-11-25': a date without the time of day",
     {0}},
    {"Time,Temp F\n14:05,2\n",
     "log.csv:2: time '14:05': hours and minutes or minutes and seconds",
     {0}},
    {"Time,Temp F\n2026-11-25 14:05,2\n",
     "log.csv:2: time '2026-11-25 14:05': it has no seconds; export",
     {0}},
    {"Time,Temp F\n0:60:00,2\n", "log.csv:2: time '0:60:00': not a time", {0}},
    {"Time,Temp F\n0:00:01,2\n2026-11-25 12:00:00,2\n",
     "log.csv:3: time '2026-11-25 12:00:00': written otherwise",
     {0}},
    {"Time,Temp F\n2026-11-25T12:00:00Z,2\n2026-11-25T12:00:01,2\n",
     "log.csv:3: time '2026-11-25T12:00:01': written otherwise",
     {0}},
    {HEAD "yesterday,2\n", "log.csv:2: time 'yesterday': not a time that is understood", {0}},
    {HEAD "0,hot\n", "log.csv:2: temperature: 'hot' is no number", {0}},
    {HEAD "0,1e3\n", "log.csv:2: temperature: '1e3' is no number", {0}},
    {HEAD "0,1.\n", "log.csv:2: temperature: '1.' is no number", {0}},
    {HEAD "0,inf\n", "log.csv:2: temperature: 'inf' is no number", {0}},
    {HEAD "0,0x10\n", "log.csv:2: temperature: '0x10' is no number", {0}},
    {HEAD "0,1234567890123456\n", "log.csv:2: temperature: '1234567890123456' is no number", {0}},
    {HEAD "0\n", "log.csv:2: 1 columns where 2 are needed", {0}},
    {HEAD "0,\"1\n", "log.csv:2: a quote is opened and not closed", {0}},
    {HEAD "0,\"1\"2\n", "log.csv:2: text after a closing quote", {0}},
    {HEAD "0,1\xE9\n", "log.csv:2: not valid UTF-8", {0}},
    {"\xFF\xFEt", "log.csv:1: the file is UTF-16", {0}},
    {"a,b\n1,2\n", "log.csv: no heading with the columns you named", {.time = "c", .value = {"b"}}},
    {"1,2\n3,4\n",
     "log.csv:1: unit of the temperature: it is not said",
     {.time = "1", .value = {"2"}}},
};

START_TEST(refuse)
{
	const struct bad *b = &bads[_i];
	struct csv_rows rows;
	ck_assert_msg(!read_csv(b->text, b->wish, &rows), "taken: %s", b->text);
	ck_assert_msg(strncmp(rows.err.text, b->says, strlen(b->says)) == 0, "'%s' is not '%s'",
		      rows.err.text, b->says);
	ck_assert_int_eq(rows.err.kind, ERROR_USAGE);
}
END_TEST

START_TEST(nul_bytes)
{
	struct csv_rows rows;
	static const char text[] = HEAD "0,1\n1\0,2\n";
	ck_assert(!read_bytes(text, sizeof text - 1, (struct record_csv_wish){0}, &rows));
	ck_assert_str_eq(rows.err.text,
			 "log.csv:3: a NUL byte, so this is no text; export the record as CSV");
}
END_TEST

/* A gigantic line is refused when the limit is reached, wherever it stands. */
START_TEST(long_lines)
{
	enum { LENGTH = 1000000 };
	struct csv_rows read;
	char *text = malloc(LENGTH);
	ck_assert_ptr_nonnull(text);
	memset(text, 'x', LENGTH);
	ck_assert(!read_bytes(text, LENGTH, (struct record_csv_wish){0}, &read));
	ck_assert_ptr_nonnull(strstr(read.err.text, "log.csv:1: longer than 8192 bytes"));
	static const char rows[] = HEAD "0,1\n";
	for (size_t at = 0; rows[at]; at++)
		text[at] = rows[at];
	ck_assert(!read_bytes(text, LENGTH, (struct record_csv_wish){0}, &read));
	ck_assert_ptr_nonnull(strstr(read.err.text, "log.csv:3: longer than 8192 bytes"));
	free(text);
}
END_TEST

START_TEST(many_columns)
{
	struct csv_rows rows;
	char text[512];
	int n = snprintf(text, sizeof text, "Time (s),Temp F");
	for (int i = 0; i < 63; i++)
		n += snprintf(text + n, sizeof text - (size_t)n, ",x");
	ck_assert(!read_csv(text, (struct record_csv_wish){0}, &rows));
	ck_assert_ptr_nonnull(strstr(rows.err.text, "log.csv:1: more than 64 columns"));
}
END_TEST

/* Rows cross the reader's buffer many times and none is lost or torn. */
START_TEST(many_rows)
{
	enum { MANY = 50000 };
	struct csv_rows rows;
	char *text = malloc((size_t)MANY * 20);
	ck_assert_ptr_nonnull(text);
	size_t n = (size_t)sprintf(text, HEAD);
	for (int i = 0; i < MANY; i++)
		n += (size_t)sprintf(text + n, "%d,%d.%d\n", i, 200 + i % 13, i % 10);
	ck_assert_msg(read_bytes(text, n, (struct record_csv_wish){0}, &rows), "%s", rows.err.text);
	ck_assert_uint_eq(rows.n, MANY);
	ck_assert_int_eq(rows.found.lines, MANY + 1);
	free(text);
}
END_TEST

START_TEST(what_was_found_is_told)
{
	struct csv_rows rows;
	ck_assert(read_csv("Time,Temp F,Pressure psig\n12:00:00,1,2\n", (struct record_csv_wish){0},
			   &rows));
	ck_assert(rows.found.of_day && rows.found.has[0] && rows.found.has[1]);
	ck_assert_str_eq(rows.found.heading[RECORD_PRESSURE], "Pressure psig");
	ck_assert(read_csv("Elapsed s,Temp F\n12,1\n", (struct record_csv_wish){0}, &rows));
	ck_assert(!rows.found.of_day && !rows.found.has[RECORD_PRESSURE]);
	ck_assert(read_csv("Time,Temp F\n2026-11-25T12:00:00-05:00,1\n",
			   (struct record_csv_wish){0}, &rows));
	ck_assert_double_eq(rows.found.zone_s, -18000);
}
END_TEST

Suite *csv_suite(void)
{
	Suite *suite = suite_create("csv");
	TCase *tests = tcase_create("csv");
	tcase_add_loop_test(tests, read_styles, 0, (int)(sizeof goods / sizeof *goods));
	tcase_add_loop_test(tests, refuse, 0, (int)(sizeof bads / sizeof *bads));
	tcase_add_test(tests, nul_bytes);
	tcase_add_test(tests, long_lines);
	tcase_add_test(tests, many_columns);
	tcase_add_test(tests, many_rows);
	tcase_add_test(tests, what_was_found_is_told);
	suite_add_tcase(suite, tests);
	return suite;
}
