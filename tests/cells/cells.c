/*
 * Reads tests/data/processes.csv: nine plain fields a line, no quotes. The last names the
 * publication, guide and page that a reader of a failure goes to; the test does not use it.
 */
#include "cells.h"

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "tests/data/processes.csv"

enum { FIELDS = 9 };
enum field { FOOD, PACK, METHOD, JAR, ALT_MIN, ALT_MAX, MINUTES, PSI, SOURCE };

_Noreturn static void stop(int line, const char *what)
{
	(void)fprintf(stderr, PATH ":%d: %s\n", line, what);
	exit(EXIT_FAILURE);
}

/* An empty field is `empty`; anything but digits ends the program. */
static int number(const char *field, int empty, int line)
{
	int value = 0;
	if (*field == '\0')
		return empty;
	for (; *field; field++) {
		if (*field < '0' || *field > '9' || value > 99999)
			stop(line, "not a whole number");
		value = value * 10 + (*field - '0');
	}
	return value;
}

static enum pack pack(const char *field, int line)
{
	if (strcmp(field, "-") == 0)
		return PACK_UNSTATED;
	if (strcmp(field, "raw") == 0)
		return PACK_RAW;
	if (strcmp(field, "hot") != 0)
		stop(line, "unknown pack");
	return PACK_HOT;
}

static enum canner canner(const char *field, int line)
{
	if (strcmp(field, "boiling-water") == 0)
		return CANNER_BOILING_WATER;
	if (strcmp(field, "pressure-dial") == 0)
		return CANNER_DIAL_GAUGE;
	if (strcmp(field, "pressure-weighted") != 0)
		stop(line, "unknown method");
	return CANNER_WEIGHTED_GAUGE;
}

static enum jar jar(const char *field, int line)
{
	static const struct {
		const char *word;
		enum jar jar;
	} jars[] = {
	    {"half-pint", JAR_HALF_PINT}, {"12-oz", JAR_12_OUNCE},          {"pint", JAR_PINT},
	    {"quart", JAR_QUART},         {"half-gallon", JAR_HALF_GALLON},
	};
	for (size_t i = 0; i < sizeof jars / sizeof *jars; i++)
		if (strcmp(field, jars[i].word) == 0)
			return jars[i].jar;
	stop(line, "unknown jar");
}

static void read_row(char *text, int line, struct cell_row *row)
{
	const char *fields[FIELDS] = {NULL};
	int n = 0;
	text[strcspn(text, "\r\n")] = '\0';
	for (char *field; n < FIELDS && (field = strsep(&text, ",")) != NULL;)
		fields[n++] = field;
	if (n != FIELDS || text || strlen(fields[FOOD]) >= CELL_FOOD_MAX)
		stop(line, "not nine fields");
	memset(row, 0, sizeof *row);
	row->line = line;
	memcpy(row->food, fields[FOOD], strlen(fields[FOOD]) + 1);
	row->pack = pack(fields[PACK], line);
	row->canner = canner(fields[METHOD], line);
	row->jar = jar(fields[JAR], line);
	row->from_ft = number(fields[ALT_MIN], 0, line);
	row->to_ft = number(fields[ALT_MAX], CELL_OPEN, line);
	row->minutes = number(fields[MINUTES], 0, line);
	row->psi = number(fields[PSI], 0, line);
	if (row->minutes == 0)
		stop(line, "no minutes");
	if (*fields[SOURCE] == '\0')
		stop(line, "no source");
}

static bool same_line(const struct cell_row *a, const struct cell_row *b)
{
	return strcmp(a->food, b->food) == 0 && a->pack == b->pack && a->canner == b->canner &&
	       a->jar == b->jar && a->psi == b->psi;
}

static void fill_first_minutes(struct cells *cells)
{
	for (size_t i = 0; i < cells->rows_n; i++) {
		struct cell_row *row = &cells->rows[i];
		row->first_minutes = row->minutes;
		for (size_t j = 0; j < cells->rows_n; j++)
			if (cells->rows[j].from_ft == 0 && same_line(row, &cells->rows[j]))
				row->first_minutes = cells->rows[j].minutes;
	}
}

static bool listed(const char *const *foods, size_t foods_n, const char *food)
{
	for (size_t i = 0; i < foods_n; i++)
		if (strcmp(foods[i], food) == 0)
			return true;
	return false;
}

static void list_foods(struct cells *cells)
{
	const char **foods = calloc(cells->rows_n, sizeof *foods);
	size_t foods_n = 0;
	if (!foods)
		stop(0, "out of memory");
	for (size_t i = 0; i < cells->rows_n; i++)
		if (!listed(foods, foods_n, cells->rows[i].food))
			foods[foods_n++] = cells->rows[i].food;
	cells->foods = foods;
	cells->foods_n = foods_n;
}

static void read_file(struct cells *out)
{
	FILE *file = fopen(PATH, "re");
	char *text = NULL;
	size_t size = 0;
	if (!file)
		stop(0, "cannot be opened; run from the project's folder");
	for (int line = 1; getline(&text, &size, file) >= 0; line++) {
		if (line == 1) /* the names of the columns */
			continue;
		struct cell_row *rows = realloc(out->rows, (out->rows_n + 1) * sizeof *rows);
		if (!rows)
			stop(line, "out of memory");
		out->rows = rows;
		read_row(text, line, &out->rows[out->rows_n++]);
	}
	free(text);
	(void)fclose(file);
	if (out->rows_n == 0)
		stop(1, "no rows");
}

const struct cells *cells_read(void)
{
	static struct cells cells;
	if (cells.rows_n == 0) {
		read_file(&cells);
		fill_first_minutes(&cells);
		list_foods(&cells);
	}
	return &cells;
}
