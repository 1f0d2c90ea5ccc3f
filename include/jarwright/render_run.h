/*
 * A load in the canner as a clock on the wall of the kitchen, and as lines of text.
 *
 * Plain characters only: no colour, no control characters; the terminal is somebody else's.
 */
#ifndef JARWRIGHT_RENDER_RUN_H
#define JARWRIGHT_RENDER_RUN_H

#include <stddef.h>
#include <stdio.h>

#include "jarwright/run.h"

struct run_sight {
	const char *title; /* "26-041  Pickled beets, load 1, 'big pot'"; made harmless */
	struct run_face face;
	bool pressure;       /* what is lost: the pressure, or the boil */
	bool steam;          /* or the steam */
	const char *message; /* the last thing to say, or "" */
	const char *trouble; /* why it is not saved, or "" */
	bool help;           /* show what the keys do */
};

/*
 * Writes at most `rows` lines of at most `columns` columns, the last one without its end. columns
 * and rows > 0.
 */
void run_sight_text(FILE *out, const struct run_sight *sight, int columns, int rows);

/* "step 4 of 7: process, 30 minutes: keep it ...", one line without its end. */
void run_step_line(FILE *out, const struct run_face *face);
/* "14:59", "1:00:00". Writes at most size bytes and returns buffer. */
char *run_time_words(char *buffer, size_t size, int32_t seconds);
/* "the boil", "the pressure", "the steam". */
const char *run_lost_word(const struct run_sight *sight);

#endif
