/* A file that appears whole or not at all, and the C text written to it. */
#ifndef REFBUILD_OUTPUT_H
#define REFBUILD_OUTPUT_H

#include "jarwright/error.h"

#include <stdbool.h>
#include <stdio.h>

struct output {
	const char *path; /* borrowed: where it will stand */
	char *temporary;  /* owned: where it stands until then */
	FILE *file;       /* NULL if only the name was wanted */
};

/* Names a temporary file beside path and removes a stale one; opens nothing. */
bool output_name(struct output *output, const char *path, struct error *err);

/* output_name, and opens it for writing. */
bool output_open(struct output *output, const char *path, struct error *err);

/*
 * Closes the file and, if ok, renames it into place; else removes it. False with
 * *err set if it was not ok already (then *err is kept) or a step fails.
 */
bool output_close(struct output *output, bool ok, struct error *err);

/* Writes text as one C string literal: any bytes, no trigraph, ASCII only. */
void output_literal(FILE *file, const char *text);

#endif
