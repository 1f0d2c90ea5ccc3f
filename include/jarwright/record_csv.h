/*
 * A data logger's file, read row by row in a fixed amount of memory.
 *
 * Comma, semicolon or tab between the columns; a decimal comma only where the columns are not
 * parted by commas. Lines before the heading are passed over. Columns and units are found by
 * the words of the heading, or named. What can be read in two ways is refused with the option
 * that settles it, never guessed: the order of day and month, gauge or absolute pressure, the
 * unit of a temperature. So are times cut to their minutes, which could hide a minute too few.
 * A fault stops the reading with the file and line.
 */
#ifndef JARWRIGHT_RECORD_CSV_H
#define JARWRIGHT_RECORD_CSV_H

#include <stdbool.h>
#include <stdio.h>

#include "jarwright/error.h"
#include "jarwright/record.h"
#include "jarwright/text.h"

enum csv_temperature { CSV_TEMPERATURE_UNSAID, CSV_CELSIUS, CSV_FAHRENHEIT, CSV_KELVIN };
enum csv_pressure { CSV_PRESSURE_UNSAID, CSV_PSI, CSV_KPA, CSV_HPA, CSV_BAR };
enum csv_zero { CSV_ZERO_UNSAID, CSV_GAUGE, CSV_ABSOLUTE };
enum csv_dates { CSV_DATES_UNSAID, CSV_DAY_FIRST, CSV_MONTH_FIRST };
enum csv_clock { CSV_CLOCK_UNSAID, CSV_SECONDS, CSV_MINUTES };

/* What the cook said of the file; zeroed, nothing. Texts are the caller's. */
struct record_csv_wish {
	const char *name;                   /* of the file, for messages */
	const char *time, *date;            /* columns by heading or number from 1; NULL */
	const char *value[RECORD_CHANNELS]; /* likewise */
	bool wanted[RECORD_CHANNELS];       /* false: the column is not looked at */
	enum csv_temperature temperature;
	enum csv_pressure pressure;
	enum csv_zero zero;
	enum csv_dates dates;
	enum csv_clock clock; /* what a bare number in the time column counts */
	double air_psi;       /* the air's pressure, taken from an absolute one */
};

/* What was found. */
struct record_csv_found {
	bool has[RECORD_CHANNELS];
	char heading[RECORD_CHANNELS][TEXT_SHOWN_SIZE]; /* of its column, safe to show; "" */
	bool of_day;                                    /* times of day are known: */
	double zone_s; /* local time is time_s + zone_s, since midnight of some day */
	long lines;
};

/*
 * Takes one row. False stops the reading; it has filled *err.
 * *found is filled before the first call but for its lines.
 */
typedef bool record_csv_taker(void *context, const struct record_csv_found *found,
			      const struct record_sample *sample, struct error *err);

/* Longest line in bytes, most columns, lines searched for the heading: our own limits. */
#define RECORD_CSV_LINE_MAX    8192
#define RECORD_CSV_COLUMNS_MAX 64
#define RECORD_CSV_HEADING_MAX 100

/* Reads the stream to its end, which stays open. */
bool record_csv_read(FILE *file, const struct record_csv_wish *wish, record_csv_taker *take,
		     void *context, struct record_csv_found *found, struct error *err);

#endif
