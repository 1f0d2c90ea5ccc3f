/* A conversion, worked out by convert and shown by convert_answer.c. */
#ifndef JARWRIGHT_CLI_CONVERT_H
#define JARWRIGHT_CLI_CONVERT_H

#include "cli.h"
#include "jarwright/kitchen_measure.h"

/* An amount from least to most, exactly, and what can be measured out for each end. */
struct converted {
	bool known;
	struct rational least, most; /* millilitres or grams */
	struct practical least_practical, most_practical;
};

struct conversion {
	const char *typed; /* the quantity, as the cook typed it */
	const char *of;    /* the ingredient, or NULL */
	enum measuring_system to;
	struct rational number;
	bool count; /* a number of things; else: */
	struct kitchen_measure from;
	struct mass_rows rows; /* with an ingredient */
	struct converted volume, mass;
};

int conversion_answer(struct invocation *inv, const struct conversion *c);

/* The unit means different amounts: which, and how to say whose it is. */
int ambiguity_answer(struct invocation *inv, enum kitchen_unit unit, struct rational number);

#endif
