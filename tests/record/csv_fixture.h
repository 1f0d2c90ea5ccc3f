/* Text through the reader, its rows collected. */
#ifndef JARWRIGHT_TESTS_RECORD_CSV_FIXTURE_H
#define JARWRIGHT_TESTS_RECORD_CSV_FIXTURE_H

#include "jarwright/record_csv.h"

#define ROWS_MAX 64
struct csv_rows {
	struct record_sample rows[ROWS_MAX]; /* the first */
	size_t n;
	struct record_csv_found found;
	struct error err;
};
/* Reads the bytes as a file named log.csv; both channels are wanted. */
bool read_bytes(const char *bytes, size_t length, struct record_csv_wish wish,
		struct csv_rows *out);
bool read_csv(const char *text, struct record_csv_wish wish, struct csv_rows *out);

#endif
