/* The charges that the tables give a part of the mixture, and the food's rows in them. */
#ifndef JARWRIGHT_RECIPE_ACIDITY_INTERNAL_H
#define JARWRIGHT_RECIPE_ACIDITY_INTERNAL_H

#include "jarwright/acidity.h"

/* Charges that one part may have, by the publications read. */
#define CHARGES_MAX 24
struct part_charges {
	struct acidity_charge charges[CHARGES_MAX];
	double weights[CHARGES_MAX]; /* in the best case; their sum is 1 */
	size_t n;
	unsigned reasons;
	bool titrated;
};

/* What is the same for all parts. */
struct mixture {
	const struct reference_tables *tables;
	double ionic;  /* mol/L, of the salt; at most ACIDITY_IONIC_MAX */
	double litres; /* of the whole, at 1 g = 1 mL */
};

/* The constants of an acid at the salt of the mixture, over all publications. */
struct acid_constants {
	double low[3], best[3], high[3]; /* pK */
	int steps;
	double molar_mass; /* g/mol */
};
/* False: the acid has no constants or no molar mass (*found false), or a figure is unreadable. */
bool acid_constants(const struct mixture *mix, const char *acid, struct acid_constants *out,
		    bool *found, struct error *err);

/* All charges of a part. False: as acidity_estimate(). */
bool part_charges(const struct mixture *mix, const struct acidity_part *part,
		  struct part_charges *out, struct error *err);

/* Charges of a food by its name; `out` is empty but for zeroes. */
bool food_charges(const struct mixture *mix, const struct acidity_part *part,
		  struct part_charges *out, struct error *err);

/* Adds the charge of so many grams of a titrated food. */
bool titrated_charge(const struct mixture *mix, const struct buffer_row *row, double grams,
		     struct part_charges *out, struct error *err);

/*
 * Is a row about this food? The same words, with more in brackets; or the same before the
 * first comma, with nothing after it that says dried, canned, pickled, cooked or pressed.
 */
bool food_named(const char *row, const char *name);

/* Reads a printed figure of a table. False: it is none, with the table in the message. */
bool figure(const char *table, const char *text, double *out, struct error *err);

#endif
