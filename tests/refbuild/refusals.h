/* One fault each, made by one edit of the good sample, and what must be said of it. */
#ifndef TESTS_REFBUILD_REFUSALS_H
#define TESTS_REFBUILD_REFUSALS_H

#include <stddef.h>

struct refusal {
	const char *from;    /* stands once in the good sample */
	const char *to;      /* what is put there */
	const char *at;      /* the faulted line holds this; the first such line counts */
	const char *message; /* said of that line */
};

extern const struct refusal refusals[];
extern const size_t refusals_n;

#endif
