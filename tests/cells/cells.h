/* The published cells of tests/data/processes.csv, and the two suites that ask for them. */
#ifndef JARWRIGHT_TESTS_CELLS_H
#define JARWRIGHT_TESTS_CELLS_H

#include <check.h>
#include <stddef.h>

#include "jarwright/reference.h"

enum { CELL_FOOD_MAX = 64, CELL_OPEN = -1 };

struct cell_row {
	int line; /* in the file */
	char food[CELL_FOOD_MAX];
	enum pack pack;
	enum canner canner;
	enum jar jar;
	int from_ft;
	int to_ft; /* or CELL_OPEN */
	int minutes;
	int psi;           /* 0: none */
	int first_minutes; /* of the lowest band of the same table, jar and pressure choice */
};

struct cells {
	struct cell_row *rows; /* in file order */
	size_t rows_n;
	const char **foods; /* each once; points into rows */
	size_t foods_n;
};

/*
 * The cells, read at the first call. On failure prints why and ends the program: there is
 * nothing to test.
 */
const struct cells *cells_read(void);

Suite *program_suite(void);

#endif
