/* What the sources that read a recorder's file share. */
#ifndef JARWRIGHT_IMPORT_RECORD_INTERNAL_H
#define JARWRIGHT_IMPORT_RECORD_INTERNAL_H

#include <stddef.h>

#include "jarwright/record_csv.h"

/* --- Lines: record_lines.c --- */

struct record_lines {
	FILE *file;
	const char *name; /* safe to show */
	long line;        /* number of the last line given */
	bool at_end;
	size_t begin, end;                     /* unread bytes of the buffer */
	char buffer[RECORD_CSV_LINE_MAX * 16]; /* a multiple, so that few bytes are moved */
};
/*
 * The next line, NUL-terminated, without its line end and without a mark of the byte order;
 * *text is NULL at the end. Refuses NUL bytes, bytes that are no UTF-8, too long a line.
 */
bool record_next_line(struct record_lines *lines, char **text, struct error *err);
/* "NAME:LINE: " in front of a message; returns false. */
bool record_line_error(const struct record_lines *lines, struct error *err, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* Cuts the line, in place, into fields without the blanks and quotes around them. */
bool record_split(const struct record_lines *lines, char *text, char separator,
		  char *fields[static RECORD_CSV_COLUMNS_MAX], size_t *n, struct error *err);
/* Tab, semicolon or comma, whichever the line has, in this order; 0: none. */
char record_separator(const char *text);

/* --- Numbers: record_number.c --- */

/* A plain decimal number, the whole text, with a point or the other mark. False: it is none. */
bool record_number(const char *text, char mark, double *out);

/* --- The heading: record_heading.c --- */

#define NO_COLUMN RECORD_CSV_COLUMNS_MAX
struct record_columns {
	char separator, mark;                      /* the decimal mark besides the point */
	bool headless;                             /* the line is the first row, not a heading */
	size_t time, date, value[RECORD_CHANNELS]; /* or NO_COLUMN */
	enum csv_temperature temperature;
	enum csv_pressure pressure;
	enum csv_zero zero;
	enum csv_clock clock;
};
/* Is this line the heading, or with numbered columns the first row? *is says so. */
bool record_heading(const struct record_lines *lines, const struct record_csv_wish *wish,
		    char *const *fields, size_t n, struct record_columns *columns, bool *is,
		    struct error *err);

/* --- Times: record_time.c --- */

enum record_time_kind {
	TIME_UNKNOWN,
	TIME_DATE,
	TIME_DATE_ZONE,
	TIME_CLOCK,
	TIME_NUMBER,
	TIME_UNIX
};
/* How the times of this file are written; zeroed but for the first three, nothing is known. */
struct record_time_style {
	enum csv_dates dates;
	enum csv_clock clock;
	char mark;
	enum record_time_kind kind;
	double zone_s; /* of the first row */
};
/* Seconds of a time. On false *why is a reason with what to do. */
bool record_time(struct record_time_style *style, const char *text, double *out, const char **why);

#endif
