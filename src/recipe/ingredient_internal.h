/* The parts of reading an ingredient line. Used in this folder only. */
#ifndef JARWRIGHT_RECIPE_INGREDIENT_INTERNAL_H
#define JARWRIGHT_RECIPE_INGREDIENT_INTERNAL_H

#include "jarwright/ingredient.h"

enum unit_class {
	UNIT_MASS,
	UNIT_VOLUME,
	UNIT_LENGTH,
	UNIT_CONTAINER, /* holds an amount that its label states: can, jar, package */
	UNIT_COUNT,     /* a piece of the thing: clove, sprig, head */
	UNIT_EYE,       /* judged by eye, and one if no number is given: pinch, handful */
};

struct line_unit {
	const char *name;
	enum unit_class class;
	const char *words; /* "|tsp|teaspoon|": lower case, singular */
};

/* One line on its way: `at` walks a tidied copy of it. */
struct line_reader {
	const char *at;
	struct ingredient_line *out;
	struct error *err;
	enum unit_class class; /* of out->unit, if it has one */
	bool hedged;           /* "about", "heaped": the amount is not exact */
	bool doubtful;         /* something was kept as a note that may be an amount */
	bool overflow;         /* a field ran out of room */
};

enum reading { READ_NONE, READ_DONE, READ_FAULT };

/* --- ingredient_scan.c: letters, words and numbers --- */

/*
 * Copies a line with its blanks, dashes and bullets made plain. False: *err says why.
 * `text` holds INGREDIENT_LINE_MAX + 1 bytes.
 */
bool line_tidy(const char *line, size_t length, char *text, struct error *err);
/* Is c an ASCII letter, or part of one beyond ASCII? */
bool is_letter(char c);
/* Bytes of the word at `at`: letters, digits and inner apostrophes; 0: none. */
size_t word_length(const char *at);
/* Does the word at `at` stand in the list "|one|two|", in any case? The longest entry's bytes. */
size_t word_listed(const char *at, const char *list);
/* The number at *at; READ_NONE leaves *at and *err alone. */
enum reading number_read(const char **at, struct rational *out, struct error *err);
/* Takes "and a half" and "dozen" behind a number into *value. False: it no longer fits. */
bool number_tail(const char **at, struct rational *value);
void blanks_skip(const char **at);

/* --- ingredient_units.c --- */

/* The unit at *at, or NULL; on success *at stands behind it. */
const struct line_unit *unit_read(const char **at);
const char *size_read(const char **at);

/* --- ingredient_amount.c --- */

/* A number or range and its unit; READ_NONE without both, or with a fault. */
enum reading measured_read(const char **at, struct ingredient_amount *out, enum unit_class *class);
/* The amount a line begins with: fills quantity, unit, size, pack, plus, alternative. */
enum reading head_read(struct line_reader *reader);
/* A text in parentheses, or between commas: as an amount if it is one and nothing else. */
bool aside_amount(struct line_reader *reader, const char *text, size_t length);
/* "+ 2 tbsp", "plus 1 tsp" set behind the name, and nothing else: adds it. */
bool plus_aside(struct line_reader *reader, const char *text, size_t length);

/* --- ingredient_fields.c: what is not an amount --- */

/* Adds to a field, with "; " or ", " between. */
void note_add(struct line_reader *reader, const char *text, size_t length);
void preparation_add(struct line_reader *reader, const char *text, size_t length);
/* Splits the rest of the line into ingredient, preparation and note. */
void rest_file(struct line_reader *reader);

#endif
