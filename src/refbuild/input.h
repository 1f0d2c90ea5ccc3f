/* A text file in memory, handed out line by line. */
#ifndef REFBUILD_INPUT_H
#define REFBUILD_INPUT_H

#include "jarwright/error.h"

#include <stdbool.h>
#include <stddef.h>

/* The whole file; text is owned, changed in place as lines are taken, freed by input_close. */
struct input {
	const char *path; /* borrowed */
	char *text;       /* length bytes and a NUL */
	size_t length;
	size_t next; /* where the next line begins */
	size_t line; /* number of the line taken last */
};

/* Reads the file whole. False with *err set if it cannot be read. */
bool input_open(struct input *input, const char *path, struct error *err);
void input_close(struct input *input);

/*
 * Takes the next line: NUL-terminated in place, without its newline; *length is
 * its bytes, which may hold NULs. False at the end. Lines live until input_close.
 */
bool input_line(struct input *input, char **line, size_t *length);

/* Whether the bytes, of a line taken, are UTF-8 in which a terminal obeys nothing but a tab. */
bool input_is_clean(const char *bytes, size_t length);

#endif
