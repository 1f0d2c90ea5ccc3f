/*
 * Moments and dates.
 *
 * A moment is kept in UTC with the offset that local time had, so that it can be shown as the
 * cook's clock showed it and compared with any other. A date is a date, without a time zone.
 * The years are 1970 to 9999 of the Gregorian calendar. Formats are those of ISO 8601; a
 * format that reads differently in different countries (11/12/2026) is refused.
 */
#ifndef JARWRIGHT_INSTANT_H
#define JARWRIGHT_INSTANT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <time.h>

#include "jarwright/error.h"

struct instant {
	int64_t ms;     /* milliseconds since 1970-01-01 00:00 UTC, leap seconds not counted */
	int offset_min; /* minutes that local time is ahead of UTC, -1440 to 1440 */
};

struct date {
	int year, month, day; /* month 1 to 12, day 1 to 31 */
};

#define INSTANT_SIZE 64 /* bytes of a moment as text, the NUL included */
#define DATE_SIZE    32 /* of a date, likewise */

/* The moment of a clock, with the offset that the time zone of the program has then. */
struct instant instant_at(time_t seconds);

/* Is it within the years 1970 to 9999 of UTC, with an offset that a place can have? */
bool instant_in_range(struct instant at);

/*
 * Reads "2026-11-25 14:30", the same with seconds, with T for the blank, with Z or an
 * offset ("+01:00") behind it; or "14:30", which is today's. Without an offset it is the time
 * zone of the program, and a time that is skipped there or comes twice is refused. `what`
 * opens the message.
 */
bool instant_parse(const char *what, const char *text, struct instant now, struct instant *out,
		   struct error *err);

/* Each writes at most INSTANT_SIZE bytes and returns buffer. */
char *instant_text(struct instant at, char buffer[static INSTANT_SIZE]); /* "2026-11-25 14:30" */
/* "2026-11-25T14:30:00.000+01:00" */
char *instant_iso(struct instant at, char buffer[static INSTANT_SIZE]);

/* The date that a calendar on the cook's wall showed. */
struct date instant_date(struct instant at);

/* Reads "2026-11-25". */
bool date_parse(const char *what, const char *text, struct date *out, struct error *err);
char *date_text(struct date date, char buffer[static DATE_SIZE]);
/* Days since 1970-01-01. */
int64_t date_days(struct date date);
struct date date_from_days(int64_t days);
/* The same day of the month so many months later, or the last day of that month. */
struct date date_add_months(struct date date, int months);

#endif
