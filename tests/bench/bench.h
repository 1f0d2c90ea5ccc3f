/* The benches. Each prints its ratios beside the goals; times are never asserted. */
#ifndef JARWRIGHT_TESTS_BENCH_H
#define JARWRIGHT_TESTS_BENCH_H

#include <stdbool.h>

/* Seconds of a clock that only goes forward. */
double bench_seconds(void);

/*
 * One answer through the whole program against one look-up through the sqlite3 shell,
 * started in turns. False after a message on stderr: one of them did not run.
 */
bool bench_program(const char *program, const char *database);

/* decide() against one prepared SQLite look-up of the same cell, in one process. */
bool bench_memory(const char *database);

/* Recipes a second through parse, mass and comparison with all formulas. */
bool bench_recipes(void);
/* A record of a million rows through the whole program: its time and its memory. */
bool bench_record(const char *program);
/* "log import" of an export against the sqlite3 shell's .import of the same rows. */
bool bench_import(const char *program);
/* The report of a year of a busy kitchen: read and drawn, and through the whole program. */
bool bench_report(const char *program);

#endif
