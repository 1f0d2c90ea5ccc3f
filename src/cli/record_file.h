/* A recorder's file, for each command that holds one against a load: its options, its answer. */
#ifndef JARWRIGHT_CLI_RECORD_FILE_H
#define JARWRIGHT_CLI_RECORD_FILE_H

#include "cli.h"
#include "jarwright/digest.h"
#include "jarwright/render_record.h"

/* clang-format off */
#define RECORD_FILE_OPTIONS \
	{"time-column", "NAME", "heading or number of the column with the time"}, \
	{"date-column", "NAME", "heading or number of the date's column, if it has its own"}, \
	{"temp-column", "NAME", "heading or number of the column with the temperature"}, \
	{"pressure-column", "NAME", "heading or number of the column with the pressure"}, \
	{"temp-unit", "C|F|K", "unit of the temperature, where the heading does not say"}, \
	{"pressure-unit", "psi|kPa|hPa|bar", \
	 "unit of the pressure, where the heading does not say"}, \
	{"pressure-zero", "gauge|absolute", \
	 "does the pressure read 0 in the open air, or about 14.7 psi (101 kPa)?"}, \
	{"dates", "day-first|month-first", "what 3/4/2026 means"}, \
	{"time-unit", "s|min", "what a bare number in the time column counts"}, \
	{"svg", "OUT", "write a plot to this new file"}
/* clang-format on */

/* Too large for the stack. */
struct record_file {
	char name[TEXT_SHOWN_SIZE]; /* safe to show */
	struct record_need need;    /* the caller's to make before it is read */
	struct record_csv_found found;
	struct record_judge judge;
	struct record_judgement judgement;
	struct record_outline outline;
	bool begun;
	bool hashed; /* the caller's to ask for before it is read: */
	uint8_t sha256[DIGEST_SIZE];
};

/* Reads the file ("-": standard input) and judges it by out->need. False: inv->err is filled. */
bool record_file_read(struct invocation *inv, const char *path, struct record_file *out);

/* What is to be said of the file; subject is the caller's. */
struct record_report record_file_report(const struct record_file *file, const char *subject,
					const char *food, const struct citation *from);

/* Writes the plot, if --svg asks for one. False: inv->err is filled. */
bool record_file_plot(struct invocation *inv, const struct record_report *report,
		      const struct record_file *file);

#endif
