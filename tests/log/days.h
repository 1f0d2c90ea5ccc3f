/* Random days in the log, all invented: what the properties are tried on. */
#ifndef JARWRIGHT_TESTS_LOG_DAYS_H
#define JARWRIGHT_TESTS_LOG_DAYS_H

#include <stdint.h>

#include "../../src/household/log.h"

/* A number from 0 to n - 1, from a state that is never 0 (xorshift64, Marsaglia 2003). */
unsigned pick(uint64_t *state, unsigned n);

/*
 * Tries to log so many random entries, each in a transaction of its own; those that make no sense
 * are refused. Returns how many were taken. Every `undo_in`th, about, takes one back.
 */
int log_days(struct household *db, uint64_t *state, int tries, unsigned undo_in);

/* Every table of the state as text, row by row; the caller frees it. */
char *state_text(struct household *db);

#endif
