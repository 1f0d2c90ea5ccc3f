#include "jarwright/instant.h"

#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"

#define MS_PER_SECOND   INT64_C(1000)
#define SECONDS_PER_DAY INT64_C(86400)

static int64_t floor_div(int64_t a, int64_t b)
{
	return a / b - (a % b < 0);
}

/* --- Dates: the Gregorian calendar counted from the first of March --- */

#define DAYS_400_YEARS 146097
#define DAYS_TO_EPOCH  719468 /* from 0000-03-01 to 1970-01-01 */

int64_t date_days(struct date date)
{
	int64_t year = date.year - (date.month <= 2);
	int64_t era = floor_div(year, 400);
	int64_t of_era = year - era * 400;
	int64_t day = (153 * (date.month + (date.month > 2 ? -3 : 9)) + 2) / 5 + date.day - 1;
	return era * DAYS_400_YEARS + of_era * 365 + of_era / 4 - of_era / 100 + day -
	       DAYS_TO_EPOCH;
}

struct date date_from_days(int64_t days)
{
	int64_t z = days + DAYS_TO_EPOCH;
	int64_t era = floor_div(z, DAYS_400_YEARS);
	int64_t of_era = z - era * DAYS_400_YEARS;
	int64_t year =
	    (of_era - of_era / 1460 + of_era / 36524 - of_era / (DAYS_400_YEARS - 1)) / 365;
	int64_t of_year = of_era - (365 * year + year / 4 - year / 100);
	int64_t month = (5 * of_year + 2) / 153;
	int64_t day = of_year - (153 * month + 2) / 5 + 1;
	month += month < 10 ? 3 : -9;
	return (struct date){(int)(year + era * 400 + (month <= 2)), (int)month, (int)day};
}

static int month_days(int year, int month)
{
	struct date first = {year, month, 1};
	struct date next = {month == 12 ? year + 1 : year, month == 12 ? 1 : month + 1, 1};
	return (int)(date_days(next) - date_days(first));
}

struct date date_add_months(struct date date, int months)
{
	int64_t all = (int64_t)date.year * 12 + date.month - 1 + months;
	struct date out = {(int)floor_div(all, 12), (int)(all - floor_div(all, 12) * 12) + 1,
			   date.day};
	int last = month_days(out.year, out.month);
	if (out.day > last)
		out.day = last;
	return out;
}

char *date_text(struct date date, char buffer[static DATE_SIZE])
{
	snprintf(buffer, DATE_SIZE, "%04d-%02d-%02d", date.year, date.month, date.day);
	return buffer;
}

/* --- Reading --- */

/* Takes exactly n digits. */
static bool digits(const char **at, int n, int *out)
{
	*out = 0;
	for (int i = 0; i < n; i++, (*at)++) {
		if (**at < '0' || **at > '9')
			return false;
		*out = *out * 10 + (**at - '0');
	}
	return true;
}

static bool take(const char **at, char c)
{
	if (**at != c)
		return false;
	(*at)++;
	return true;
}

static bool take_date(const char **at, struct date *out)
{
	return digits(at, 4, &out->year) && take(at, '-') && digits(at, 2, &out->month) &&
	       take(at, '-') && digits(at, 2, &out->day) && out->year >= 1970 && out->month >= 1 &&
	       out->month <= 12 && out->day >= 1 && out->day <= month_days(out->year, out->month);
}

bool date_parse(const char *what, const char *text, struct date *out, struct error *err)
{
	const char *at = text;
	struct date date;
	char shown[TEXT_SHOWN_SIZE];
	if (take_date(&at, &date) && *at == '\0') {
		*out = date;
		return true;
	}
	text_show(text, SIZE_MAX, shown);
	return error_usage(err, "%s: '%s' is no date; type year, month and day: 2026-09-14", what,
			   shown);
}

struct clock {
	int hour, minute, second;
};

static bool take_clock(const char **at, struct clock *out)
{
	out->second = 0;
	return digits(at, 2, &out->hour) && take(at, ':') && digits(at, 2, &out->minute) &&
	       (!take(at, ':') || digits(at, 2, &out->second)) && out->hour < 24 &&
	       out->minute < 60 && out->second < 60;
}

/* An offset, or nothing: *stated says which. */
static bool take_offset(const char **at, bool *stated, int *minutes)
{
	*stated = **at != '\0';
	*minutes = 0;
	if (!*stated || take(at, 'Z'))
		return true;
	int sign = **at == '-' ? -1 : 1, hours = 0, rest = 0;
	if ((**at != '+' && **at != '-') || (++*at, !digits(at, 2, &hours)))
		return false;
	(void)take(at, ':');
	if (!digits(at, 2, &rest) || hours > 23 || rest > 59)
		return false;
	*minutes = sign * (hours * 60 + rest);
	return true;
}

static int64_t seconds_of(struct date date, struct clock clock)
{
	return date_days(date) * SECONDS_PER_DAY + INT64_C(3600) * clock.hour +
	       INT64_C(60) * clock.minute + clock.second;
}

/*
 * The moments at which a clock on the wall shows this: none where it is skipped, two where it comes
 * twice. The offsets that may hold are those of the day before and the day after, so that a change
 * of the standard time is seen as well as summer time.
 */
static size_t wall_moments(struct date date, struct clock clock, time_t out[2])
{
	int64_t wall = seconds_of(date, clock);
	size_t n = 0;
	for (int day = -1; day <= 1; day += 2) {
		struct tm local;
		time_t near = (time_t)(wall + day * SECONDS_PER_DAY);
		if (!localtime_r(&near, &local))
			continue;
		time_t at = (time_t)(wall - local.tm_gmtoff);
		if (!localtime_r(&at, &local) || wall - local.tm_gmtoff != at)
			continue;
		if (n == 0 || out[0] != at)
			out[n++] = at;
	}
	return n;
}

static bool local_instant(const char *what, const char *shown, struct date date, struct clock clock,
			  struct instant *out, struct error *err)
{
	time_t moments[2] = {0, 0};
	size_t n = wall_moments(date, clock, moments);
	if (n == 0)
		return error_usage(err,
				   "%s: '%s' was skipped when the clocks changed; type the time "
				   "with its offset: 02:30+01:00",
				   what, shown);
	if (n > 1)
		return error_usage(err,
				   "%s: '%s' came twice when the clocks changed; type the time "
				   "with its offset: 02:30+01:00",
				   what, shown);
	*out = instant_at(moments[0]);
	return true;
}

/* "14:30" or a date and a time; the day of a time alone is `today`. */
static bool take_moment(const char **at, struct date today, struct date *date, struct clock *clock)
{
	const char *start = *at;
	*date = today;
	if (take_clock(at, clock))
		return true;
	*at = start;
	return take_date(at, date) && (take(at, ' ') || take(at, 'T')) && take_clock(at, clock);
}

bool instant_in_range(struct instant at)
{
	static const struct date end = {10000, 1, 1};
	return at.ms >= 0 && at.ms < date_days(end) * SECONDS_PER_DAY * MS_PER_SECOND &&
	       at.offset_min >= -24 * 60 && at.offset_min <= 24 * 60;
}

bool instant_parse(const char *what, const char *text, struct instant now, struct instant *out,
		   struct error *err)
{
	struct date date;
	struct clock clock;
	const char *at = text;
	bool stated;
	int offset;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	if (!take_moment(&at, instant_date(now), &date, &clock) ||
	    !take_offset(&at, &stated, &offset) || *at != '\0')
		return error_usage(
		    err, "%s: '%s' is no date and time; type 2026-09-14 15:30, or 15:30 for today",
		    what, shown);
	if (!stated && !local_instant(what, shown, date, clock, out, err))
		return false;
	if (stated)
		*out = (struct instant){
		    (seconds_of(date, clock) - INT64_C(60) * offset) * MS_PER_SECOND, offset};
	return instant_in_range(*out) ||
	       error_usage(err, "%s: '%s' is outside the years 1970 to 9999", what, shown);
}

/* --- Showing --- */

struct instant instant_at(time_t seconds)
{
	struct tm local;
	struct instant at = {(int64_t)seconds * MS_PER_SECOND, 0};
	if (localtime_r(&seconds, &local))
		at.offset_min = (int)(local.tm_gmtoff / 60);
	return at;
}

/* Seconds since 1970 as the cook's clock counted them. */
static int64_t wall_seconds(struct instant at)
{
	return floor_div(at.ms, MS_PER_SECOND) + (int64_t)at.offset_min * 60;
}

struct date instant_date(struct instant at)
{
	return date_from_days(floor_div(wall_seconds(at), SECONDS_PER_DAY));
}

static struct clock instant_clock(struct instant at)
{
	int64_t wall = wall_seconds(at);
	int second = (int)(wall - floor_div(wall, SECONDS_PER_DAY) * SECONDS_PER_DAY);
	return (struct clock){second / 3600, second / 60 % 60, second % 60};
}

char *instant_text(struct instant at, char buffer[static INSTANT_SIZE])
{
	char date[DATE_SIZE];
	struct clock clock = instant_clock(at);
	snprintf(buffer, INSTANT_SIZE, "%s %02d:%02d", date_text(instant_date(at), date),
		 clock.hour, clock.minute);
	return buffer;
}

char *instant_iso(struct instant at, char buffer[static INSTANT_SIZE])
{
	char date[DATE_SIZE];
	struct clock clock = instant_clock(at);
	int ms = (int)(at.ms - floor_div(at.ms, MS_PER_SECOND) * MS_PER_SECOND);
	int ahead = at.offset_min < 0 ? -at.offset_min : at.offset_min;
	snprintf(buffer, INSTANT_SIZE, "%sT%02d:%02d:%02d.%03d%c%02d:%02d",
		 date_text(instant_date(at), date), clock.hour, clock.minute, clock.second, ms,
		 at.offset_min < 0 ? '-' : '+', ahead / 60, ahead % 60);
	return buffer;
}
