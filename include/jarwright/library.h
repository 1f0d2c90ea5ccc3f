/*
 * Libraries opened at run time, when first needed: linked, they would slow the start of every
 * command that does without them.
 */
#ifndef JARWRIGHT_LIBRARY_H
#define JARWRIGHT_LIBRARY_H

#include <stdbool.h>
#include <stddef.h>

/* A function of the library, and the address of the pointer to put it in. */
struct library_function {
	const char *name;
	void *slot;
};

/* Opens the library (by soname) and finds every function. False: it or one of them is missing. */
bool library_open(const char *soname, const struct library_function *functions, size_t n);

#endif
