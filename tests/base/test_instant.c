/* Moments and dates. The calendar's facts are those of ISO 8601 and the Gregorian rule. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/instant.h"
#include "suites.h"

static struct error err;
/* 2026-11-25 12:00 UTC: days by hand, 20,782 days of 86,400 s and half a day. */
static const struct instant now = {INT64_C(1795608000000), 0};

static void zone(const char *name)
{
	ck_assert_int_eq(setenv("TZ", name, 1), 0);
	tzset();
}

/* The last month of the year that has a Gregorian leap day is found by its own rule. */
static int days_in(int year, int month)
{
	static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
	return days[month - 1] + (month == 2 && leap);
}

START_TEST(every_day_from_1970_to_9999_comes_back)
{
	int64_t day = 0;
	for (int year = 1970; year <= 9999; year++)
		for (int month = 1; month <= 12; month++)
			for (int of = 1; of <= days_in(year, month); of++, day++) {
				const struct date date = {year, month, of};
				struct date back = date_from_days(day);
				if (date_days(date) != day || back.year != year ||
				    back.month != month || back.day != of)
					ck_abort_msg("%d-%d-%d", year, month, of);
			}
	/* POSIX: 9999-12-31 23:59:59 is 253402300799 seconds after the Epoch. */
	ck_assert_int_eq(day * 86400 - 1, INT64_C(253402300799));
}
END_TEST

START_TEST(dates_are_read_exactly)
{
	static const char *const good[] = {"1970-01-01", "2024-02-29", "2000-02-29", "9999-12-31"};
	static const char *const bad[] = {"",
					  "1969-12-31",
					  "2023-02-29",
					  "1900-02-29",
					  "2100-02-29",
					  "2026-13-01",
					  "2026-00-10",
					  "2026-04-31",
					  "2026-01-00",
					  "11/12/2026",
					  "12.11.2026",
					  "2026-1-2",
					  "26-01-02",
					  "2026-01-02 ",
					  " 2026-01-02",
					  "2026-01-02T",
					  "+2026-01-02",
					  "10000-01-01",
					  "2026-01-0\xd9\xa1"};
	struct date date = {1, 2, 3};
	char text[DATE_SIZE];
	for (size_t i = 0; i < sizeof good / sizeof *good; i++) {
		ck_assert(date_parse("on", good[i], &date, &err));
		ck_assert_str_eq(date_text(date, text), good[i]);
	}
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		err = (struct error){0};
		if (date_parse("on", bad[i], &date, &err))
			ck_abort_msg("'%s' was taken for a date", bad[i]);
		ck_assert_int_eq(err.kind, ERROR_USAGE);
		ck_assert_ptr_nonnull(strstr(err.text, "on: '"));
	}
}
END_TEST

START_TEST(months_are_added_and_end_on_their_last_day)
{
	static const struct {
		const char *from;
		int months;
		const char *to;
	} cases[] = {
	    {"2026-01-31", 1, "2026-02-28"},  {"2024-01-31", 1, "2024-02-29"},
	    {"2026-01-31", 2, "2026-03-31"},  {"2026-11-25", 12, "2027-11-25"},
	    {"2026-11-25", 1, "2026-12-25"},  {"2026-12-31", 2, "2027-02-28"},
	    {"2026-03-31", -1, "2026-02-28"}, {"2026-01-15", -1, "2025-12-15"},
	    {"2024-02-29", 60, "2029-02-28"}, {"2026-05-05", 0, "2026-05-05"},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct date date;
		char text[DATE_SIZE];
		ck_assert(date_parse("on", cases[i].from, &date, &err));
		ck_assert_str_eq(date_text(date_add_months(date, cases[i].months), text),
				 cases[i].to);
	}
}
END_TEST

/* What is read with an offset is the same in every time zone. */
START_TEST(moments_with_an_offset)
{
	static const struct {
		const char *text, *iso;
	} cases[] = {
	    {"2026-11-25 14:30Z", "2026-11-25T14:30:00.000+00:00"},
	    {"2026-11-25T14:30:59+01:00", "2026-11-25T14:30:59.000+01:00"},
	    {"2026-11-25 14:30-0930", "2026-11-25T14:30:00.000-09:30"},
	    {"1970-01-01 00:00Z", "1970-01-01T00:00:00.000+00:00"},
	    {"9999-12-31 23:59:59Z", "9999-12-31T23:59:59.000+00:00"},
	    {"2024-02-29 23:59+14:00", "2024-02-29T23:59:00.000+14:00"},
	};
	zone("America/Denver");
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct instant at;
		char text[INSTANT_SIZE];
		if (!instant_parse("at", cases[i].text, now, &at, &err))
			ck_abort_msg("%s", err.text);
		ck_assert(instant_in_range(at));
		ck_assert_str_eq(instant_iso(at, text), cases[i].iso);
	}
}
END_TEST

START_TEST(what_is_no_moment_is_refused)
{
	static const char *const bad[] = {
	    "", "noon", "2026-11-25", "2026-11-25  14:30", "2026-11-25 24:00", "2026-11-25 14:60",
	    "2026-11-25 14:30:60", "2026-11-25 14:30+24:00", "2026-11-25 14:30+1",
	    "2026-11-25 14:30 +01:00", "2026-11-25 14:30z", "2026-02-30 14:30", "14:30pm", "2:30",
	    /* outside 1970 to 9999 of UTC */
	    "1970-01-01 00:00+00:01", "9999-12-31 23:59-00:01"};
	zone("UTC");
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct instant at;
		err = (struct error){0};
		if (instant_parse("at", bad[i], now, &at, &err))
			ck_abort_msg("'%s' was taken for a moment", bad[i]);
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
	ck_assert(!instant_in_range((struct instant){-1, 0}));
	ck_assert(!instant_in_range((struct instant){INT64_MAX, 0}));
	ck_assert(!instant_in_range((struct instant){0, 1441}));
}
END_TEST

/* A zone of one rule, so that no file of zones is needed: clocks go forward on 29 March 2026 at
 * 02:00 and back on 25 October at 03:00 (POSIX.1, the TZ variable). */
static const char europe[] = "CET-1CEST,M3.5.0,M10.5.0/3";

START_TEST(local_times_skipped_or_doubled_are_asked_about)
{
	struct instant at;
	char text[INSTANT_SIZE];
	zone(europe);
	ck_assert(instant_parse("at", "2026-03-29 01:59", now, &at, &err));
	ck_assert_str_eq(instant_iso(at, text), "2026-03-29T01:59:00.000+01:00");
	ck_assert(instant_parse("at", "2026-03-29 03:00", now, &at, &err));
	ck_assert_str_eq(instant_iso(at, text), "2026-03-29T03:00:00.000+02:00");
	ck_assert(!instant_parse("at", "2026-03-29 02:30", now, &at, &err));
	ck_assert_ptr_nonnull(strstr(err.text, "skipped"));
	err = (struct error){0};
	ck_assert(!instant_parse("at", "2026-10-25 02:30", now, &at, &err));
	ck_assert_ptr_nonnull(strstr(err.text, "came twice"));
	/* With its offset each of the two is itself. */
	struct instant first, second;
	ck_assert(instant_parse("at", "2026-10-25 02:30+02:00", now, &first, &err));
	ck_assert(instant_parse("at", "2026-10-25 02:30+01:00", now, &second, &err));
	ck_assert_int_eq(second.ms - first.ms, INT64_C(3600000));
	ck_assert(instant_parse("at", "2026-10-25 01:59", now, &at, &err));
	ck_assert(instant_parse("at", "2026-10-25 03:00", now, &at, &err));
	ck_assert_str_eq(instant_iso(at, text), "2026-10-25T03:00:00.000+01:00");
}
END_TEST

/* Moscow left its standard time of UTC+4 for UTC+3 on 26 October 2014 at 02:00: both are winter
 * time (tz database, Europe/Moscow). */
START_TEST(a_change_of_the_standard_time_doubles_times_too)
{
	struct instant at;
	zone("Europe/Moscow");
	if (instant_at(1414274400).offset_min != 180) {
		fprintf(stderr, "skipped: there is no file of that time zone\n");
		return;
	}
	ck_assert(!instant_parse("at", "2014-10-26 01:30", now, &at, &err));
	ck_assert_ptr_nonnull(strstr(err.text, "came twice"));
	ck_assert(instant_parse("at", "2014-10-26 00:30", now, &at, &err));
	ck_assert_int_eq(at.offset_min, 240);
}
END_TEST

START_TEST(a_time_alone_is_todays_and_shown_as_the_wall_showed_it)
{
	struct instant at, local = {now.ms, 60};
	char text[INSTANT_SIZE];
	zone(europe);
	ck_assert(instant_parse("at", "07:05", local, &at, &err));
	ck_assert_str_eq(instant_text(at, text), "2026-11-25 07:05");
	ck_assert_int_eq(instant_at(now.ms / 1000).offset_min, 60);
	/* Before midnight UTC and after it here: the date is the wall's. */
	ck_assert_int_eq(instant_date((struct instant){INT64_C(86400000) - 1, 0}).day, 1);
	ck_assert_int_eq(instant_date((struct instant){INT64_C(86400000) - 1, 60}).day, 2);
	ck_assert_int_eq(instant_date((struct instant){0, -60}).year, 1969);
}
END_TEST

Suite *instant_suite(void)
{
	Suite *suite = suite_create("instant");
	TCase *tcase = tcase_create("calendar");
	tcase_set_timeout(tcase, 60);
	tcase_add_test(tcase, every_day_from_1970_to_9999_comes_back);
	tcase_add_test(tcase, dates_are_read_exactly);
	tcase_add_test(tcase, months_are_added_and_end_on_their_last_day);
	tcase_add_test(tcase, moments_with_an_offset);
	tcase_add_test(tcase, what_is_no_moment_is_refused);
	tcase_add_test(tcase, local_times_skipped_or_doubled_are_asked_about);
	tcase_add_test(tcase, a_change_of_the_standard_time_doubles_times_too);
	tcase_add_test(tcase, a_time_alone_is_todays_and_shown_as_the_wall_showed_it);
	suite_add_tcase(suite, tcase);
	return suite;
}
