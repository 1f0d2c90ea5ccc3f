/* What is wrong in the tables: every fault is said, at its file and line, none stops the next. */
#ifndef REFBUILD_PROBLEM_H
#define REFBUILD_PROBLEM_H

#include <stddef.h>

/* Where in the tables something stands. The file's name is borrowed. */
struct position {
	const char *file;
	size_t line; /* from 1 */
};

/* The count of faults said so far; start with {0}. */
struct problems {
	size_t count;
};

/* Prints "FILE:LINE: message" on standard error and counts it. */
void problem_at(struct problems *problems, struct position at, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

#endif
