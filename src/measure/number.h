/* The number at the start of a text, as people write numbers. Used in this folder only. */
#ifndef JARWRIGHT_MEASURE_NUMBER_H
#define JARWRIGHT_MEASURE_NUMBER_H

#include "jarwright/measure.h"

enum number_fault {
	NUMBER_SOUND,
	NUMBER_ABSENT,
	NUMBER_COMMA,
	NUMBER_EXPONENT,
	NUMBER_POINT,
	NUMBER_MIXED,
	NUMBER_SEVERAL,
	NUMBER_ZERO_DENOMINATOR,
	NUMBER_TOO_LONG,
};

/*
 * Reads the longest number at *at and moves *at behind it. A fault, whether in the number
 * or in what stands right behind it (a comma, an exponent, a second number), leaves *at.
 */
enum number_fault number_scan(const char **at, struct rational *out);

/* What is wrong and what to do, to follow the quoted text: "has a comma; write ...". */
const char *number_fault_text(enum number_fault fault);

/* The next byte that is no blank: space, tab, the no-break and thin spaces of print. */
const char *number_skip_blanks(const char *at);

#endif
