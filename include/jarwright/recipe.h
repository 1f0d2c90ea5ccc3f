/*
 * A recipe as its owner wrote it: name, whose measures, ingredient lines in order.
 *
 * The lines keep their own words beside what was read from them, so that nothing a cook
 * wrote is lost and every figure can be traced to its line. Amounts are exact; scaling
 * multiplies them exactly and keeps the words.
 */
#ifndef JARWRIGHT_RECIPE_H
#define JARWRIGHT_RECIPE_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/error.h"
#include "jarwright/ingredient.h"
#include "jarwright/kitchen_measure.h"

#define RECIPE_NAME_SIZE 128     /* bytes, the NUL included */
#define RECIPE_LINES_MAX 500     /* of one recipe */
#define RECIPE_BYTES_MAX 1048576 /* of one recipe's text */

struct recipe_line {
	int number;                         /* in the text it came from, from 1 */
	char text[INGREDIENT_LINE_MAX + 1]; /* as written */
	struct ingredient_line read;
};

struct recipe {
	char name[RECIPE_NAME_SIZE];
	enum measuring_system system; /* whose cups and pints; never SYSTEM_UNSTATED once stored */
	struct recipe_line *lines;    /* lines_n of them, owned by the recipe */
	size_t lines_n;
	char *method; /* what followed the ingredients, as written; "" ; owned */
};

/* An empty recipe is all zero. */
void recipe_release(struct recipe *recipe);

/*
 * Reads a recipe's text: one ingredient a line; blank lines, '#' comments and headings are
 * passed over; what follows a method's heading is the method. Every bad line is an error with
 * its number ("line 12: ..."), the first one given; then *out is empty. length in bytes.
 */
bool recipe_read(const char *name, enum measuring_system system, const char *text, size_t length,
		 struct recipe *out, struct error *err);

/* Multiplies every amount by an exact factor above 0. False: an amount does not fit. */
bool recipe_scale(struct recipe *recipe, struct rational factor, struct error *err);

/*
 * Grams of one line, through its unit in the recipe's system and the ingredient's density or
 * weight by count: exact bounds. False: nothing published says (an uncounted "handful").
 */
bool recipe_line_grams(const struct reference_tables *tables, const struct recipe *recipe,
		       size_t line, struct rational *least, struct rational *most);

/*
 * On which side an amount may be rounded so that the jar gets no less acid than is written: what
 * is sour at least, what is low in acid or thins the acid at most. By the line's words; where they
 * do not tell, PRACTICAL_NEAREST.
 */
enum practical_side recipe_line_side(const struct ingredient_line *line);

#endif
