/* Times as recorders write them, and what in them can be read in two ways. */
#include <math.h>
#include <stdint.h>
#include <string.h>
#include <strings.h>

#include "record_internal.h"

#define MINUTE_S 60
#define HOUR_S   3600
#define DAY_S    86400.0
/* A bare number as large as this counts from 1970: no record lasts 30 years. */
#define UNIX_LEAST 1e9
#define UNIX_MOST  1e10

static const char no_time[] =
    "not a time that is understood; write 2026-11-25 14:05:00, 25/11/2026 14:05:00, 0:15:30, or "
    "seconds";

/* Digits at *at, at most `most`, as a number; how many there were. */
static int digits(const char **at, int most, int *out)
{
	int n = 0;
	for (*out = 0; n < most && **at >= '0' && **at <= '9'; n++, (*at)++)
		*out = *out * 10 + (**at - '0');
	return n;
}

static bool take(const char **at, char wanted)
{
	if (**at != wanted)
		return false;
	(*at)++;
	return true;
}

/* Days since 1970-01-01 in the Gregorian calendar; years are counted from March. */
static int64_t days_of(int year, int month, int day)
{
	int64_t y = month > 2 ? year : year - 1;
	int64_t shifted = (month + 9) % 12;
	return 365 * y + y / 4 - y / 100 + y / 400 + (153 * shifted + 2) / 5 + day - 719469;
}

static bool is_date(int year, int month, int day)
{
	static const int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	if (month < 1 || month > 12 || day < 1)
		return false;
	bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
	return day <= lengths[month - 1] + (month == 2 && leap);
}

/* Day and month of "a/b/year": by what was said, else by what can only be one. */
static bool settle_order(struct record_time_style *style, int a, int b, const char **why)
{
	if (style->dates != CSV_DATES_UNSAID || a == b)
		return true;
	if (a <= 12 && b <= 12) {
		*why = "day first or month first is not clear; say --dates day-first or "
		       "month-first";
		return false;
	}
	style->dates = a > 12 ? CSV_DAY_FIRST : CSV_MONTH_FIRST;
	return true;
}

/* "2026-11-25", "25.11.2026", "11/25/26" */
static bool read_date(struct record_time_style *style, const char **at, int64_t *days,
		      const char **why)
{
	int a, b, c;
	int length = digits(at, 4, &a);
	char mark = **at;
	*why = no_time;
	if (length == 0 || !strchr("-/.", mark) || !take(at, mark) || digits(at, 2, &b) == 0 ||
	    !take(at, mark))
		return false;
	int last = digits(at, 4, &c);
	int year = a, month = b, day = c;
	if (length != 4) {
		if (last == 2 && style->dates == CSV_DATES_UNSAID) {
			*why = "a year of two digits can be read in several ways; export the date "
			       "as 2026-11-25, or say --dates day-first or month-first";
			return false;
		}
		if (length > 2 || (last != 4 && last != 2) || !settle_order(style, a, b, why))
			return false;
		year = last == 2 ? 2000 + c : c;
		month = style->dates == CSV_MONTH_FIRST ? a : b;
		day = style->dates == CSV_MONTH_FIRST ? b : a;
	} else if (last == 0 || last > 2) {
		return false;
	}
	*days = days_of(year, month, day);
	return is_date(year, month, day);
}

/* A part of a second after its mark, if there is one. */
static bool read_fraction(const char **at, char mark, double *out)
{
	*out = 0;
	if (**at != '.' && **at != mark)
		return true;
	double place = 1;
	(*at)++;
	if (**at < '0' || **at > '9')
		return false;
	for (; **at >= '0' && **at <= '9'; (*at)++) {
		place /= 10;
		*out += place * (**at - '0');
	}
	return true;
}

/* "14:05:00", "2:05:00.5 PM". A time cut to its minute could hide a minute too few. */
static bool read_clock(const struct record_time_style *style, const char **at, bool dated,
		       double *out, const char **why)
{
	int hour, minute, second = 0;
	double part = 0;
	*why = no_time;
	if (digits(at, dated ? 2 : 5, &hour) == 0 || !take(at, ':') ||
	    digits(at, 2, &minute) != 2 || minute >= MINUTE_S)
		return false;
	if (!take(at, ':')) {
		*why = dated ? "it has no seconds; export the time with them, as 14:05:00"
			     : "hours and minutes or minutes and seconds is not clear; export the "
			       "time as h:mm:ss";
		return false;
	}
	if (digits(at, 2, &second) != 2 || second >= MINUTE_S ||
	    !read_fraction(at, style->mark, &part))
		return false;
	const char *blank = *at + strspn(*at, " ");
	bool am = strncasecmp(blank, "AM", 2) == 0, pm = strncasecmp(blank, "PM", 2) == 0;
	if (am || pm) {
		*at = blank + 2;
		if (hour < 1 || hour > 12)
			return false;
		hour = hour % 12 + (pm ? 12 : 0);
	}
	*out = hour * HOUR_S + minute * MINUTE_S + second + part;
	return !dated || hour < 24;
}

/* "Z", "+01:00", "-0500" */
static bool read_zone(const char **at, bool *given, double *out)
{
	int hour = 0, minute = 0;
	*out = 0;
	*given = take(at, 'Z');
	if (*given || (**at != '+' && **at != '-'))
		return true;
	double sign = **at == '-' ? -1 : 1;
	(*at)++;
	*given = true;
	if (digits(at, 2, &hour) != 2)
		return false;
	take(at, ':');
	if (**at && digits(at, 2, &minute) != 2)
		return false;
	*out = sign * (hour * HOUR_S + minute * MINUTE_S);
	return hour < 24 && minute < MINUTE_S;
}

/* The style of the first row is the style of all. */
static bool same_kind(struct record_time_style *style, enum record_time_kind kind, double zone_s,
		      const char **why)
{
	if (style->kind == TIME_UNKNOWN) {
		style->kind = kind;
		style->zone_s = zone_s;
	}
	*why = "written otherwise than the times before it; export the record in one style";
	return style->kind == kind;
}

static bool read_dated(struct record_time_style *style, const char *text, double *out,
		       const char **why)
{
	int64_t days;
	double clock = 0, zone_s = 0;
	bool zoned = false;
	if (!read_date(style, &text, &days, why))
		return false;
	if (*text == '\0') {
		*why = "a date without the time of day; export the time too";
		return false;
	}
	if (*text == 'T' || *text == ',')
		text++;
	text += strspn(text, " ");
	if (!read_clock(style, &text, true, &clock, why))
		return false;
	text += strspn(text, " ");
	*why = no_time;
	if (!read_zone(&text, &zoned, &zone_s) || *text != '\0')
		return false;
	*out = (double)days * DAY_S + clock - zone_s;
	return same_kind(style, zoned ? TIME_DATE_ZONE : TIME_DATE, zone_s, why);
}

static bool read_number(struct record_time_style *style, double number, double *out,
			const char **why)
{
	if (number >= UNIX_LEAST && number < UNIX_MOST) {
		*out = number;
		return same_kind(style, TIME_UNIX, 0, why);
	}
	if (style->clock == CSV_CLOCK_UNSAID) {
		*why = "seconds or minutes is not said; say --time-unit s or min";
		return false;
	}
	*out = number * (style->clock == CSV_MINUTES ? MINUTE_S : 1);
	return same_kind(style, TIME_NUMBER, 0, why);
}

bool record_time(struct record_time_style *style, const char *text, double *out, const char **why)
{
	double number;
	if (record_number(text, style->mark, &number))
		return read_number(style, number, out, why);
	size_t leading = strspn(text, "0123456789");
	if (text[leading] != ':')
		return read_dated(style, text, out, why);
	if (!read_clock(style, &text, false, out, why))
		return false;
	*why = no_time;
	return *text == '\0' && same_kind(style, TIME_CLOCK, 0, why);
}
