/*
 * Every answer of the edition as text, one line for each food, pack, canner and jar:
 *
 *   apple-butter hot boiling-water pint | 0-1000 5 | 1001-6000 10 | 10001- refused:elevation-above
 *
 * A segment says over which whole feet (0 to 12,000) the answer stands, then the minutes
 * (minutes@psi under pressure), or the verdict with the rule of its first finding. A line
 * with a single answer that is no process says "all" in place of the feet.
 */
#ifndef JARWRIGHT_TESTS_GOLDEN_H
#define JARWRIGHT_TESTS_GOLDEN_H

#include <stdio.h>

#define GOLDEN_PATH "tests/golden/answers.txt"

/* Writes all lines; the caller checks the stream. */
void golden_write(FILE *out);

#endif
