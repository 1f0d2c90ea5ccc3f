/* The lines of an export, read one at a time. Used in this folder only. */
#ifndef JARWRIGHT_HOUSEHOLD_IMPORT_LINES_H
#define JARWRIGHT_HOUSEHOLD_IMPORT_LINES_H

#include <stdio.h>

#include "import.h"

/* A recipe has 1 MiB at most, and a character of it at most six bytes as JSON. */
#define IMPORT_LINE_MAX (8 << 20)

struct import_lines {
	FILE *in; /* the caller's */
	int64_t number;
	json_int_t recipes, chains, events; /* as the first line says */
	int64_t recipes_read, chains_read, events_read;
	char *line; /* free() it */
	size_t line_n, line_size;
	size_t at, n;
	char chunk[65536];
};

bool import_next_line(struct import_lines *lines, bool *end, struct error *err);
bool import_header(struct import_lines *lines, struct error *err);
bool import_take_line(struct import_lines *lines, struct intake *in, struct error *err);
/*
 * Reads an event's line up to its body, if it is as the export writes it: all of t but the body.
 * Where the body begins; NULL: it is another line.
 */
const char *event_line_head(const char *line, struct traveller *t);
/* As many of each as the first line says? */
bool import_is_whole(const struct import_lines *lines, struct error *err);

#endif
