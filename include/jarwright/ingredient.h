/*
 * Ingredient lines as people and web sites write them: "1½ cups sugar", "2–3 cloves garlic,
 * crushed", "2 x 400g tins tomatoes", "juice of 2 lemons", "salt, to taste".
 *
 * Numbers are exact. What has two readings ("1,5 kg") is refused, never guessed; words that
 * are not understood stay in the ingredient or the note, never dropped. Pure: no I/O, no
 * allocation, no state; every text is the caller's struct or constant data.
 */
#ifndef JARWRIGHT_INGREDIENT_H
#define JARWRIGHT_INGREDIENT_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/error.h"
#include "jarwright/measure.h"

/* Longest line in bytes. A field can hold all of it, and a separator between its parts. */
#define INGREDIENT_LINE_MAX   400
#define INGREDIENT_FIELD_SIZE 640

/* How sure the reading is; unsure must be shown to the cook before it is computed with. */
enum ingredient_sure {
	INGREDIENT_UNSURE,  /* no amount, no match, or words that may belong elsewhere */
	INGREDIENT_LIKELY,  /* matched but for a word, or an amount the cook judges by eye */
	INGREDIENT_CERTAIN, /* amount and ingredient both found as written */
};

/*
 * An amount. Units, canonical words: "tsp" "tbsp" "dessertspoon" "cup" "fl oz" "pint" "quart"
 * "gallon" "ml" "cl" "dl" "l" "mg" "g" "kg" "oz" "lb" "inch" "cm", then "bunch" "can" "clove"
 * "head" "sprig" "stick" "piece" "slice" "pinch" "dash" "drop" "handful" "package" "jar" ...;
 * "fruit" is a fruit that only the juice or zest is taken of; "" is a plain count (or none).
 * Spoons, cups, pints and fl oz differ by country: the system is the recipe's to state.
 */
struct ingredient_amount {
	bool present;
	struct rational quantity;     /* > 0 */
	struct rational quantity_max; /* of a range "2–3"; else equal to quantity */
	const char *unit;             /* constant data; never NULL */
};

struct ingredient_line {
	bool has_quantity;            /* false: "salt", "salt, to taste" */
	struct rational quantity;     /* > 0; 0/1 without quantity */
	struct rational quantity_max; /* >= quantity; equal if the line gives no range */
	const char *unit;             /* as above; never NULL. May be given without a quantity */

	struct ingredient_amount plus; /* to be added: "1 cup plus 2 tbsp" */
	struct ingredient_amount pack; /* in each: "2 x 400 g tins": quantity 2 can, pack 400 g */
	struct ingredient_amount
	    alternative; /* the same amount again: "150g/5½oz", "1 cup (240 ml)" */

	const char *size;    /* "small" "medium" "large" "extra-large" or "" */
	bool optional;       /* "(optional)" */
	bool to_taste;       /* "to taste", "as needed": the cook decides */
	bool alternatives;   /* "lemon or lime juice", "salt and pepper": several things */
	const char *matched; /* name in the reference, constant data; NULL: unmatched */
	enum ingredient_sure sure;

	char ingredient[INGREDIENT_FIELD_SIZE];  /* as written, blanks tidied: "ripe tomatoes" */
	char preparation[INGREDIENT_FIELD_SIZE]; /* "peeled, finely chopped"; "" */
	char note[INGREDIENT_FIELD_SIZE];        /* parentheses, "to taste", "for serving"; "" */
};

/* What a line of a recipe is. */
enum ingredient_line_kind {
	INGREDIENT_LINE_BLANK,
	INGREDIENT_LINE_COMMENT, /* begins with '#' */
	INGREDIENT_LINE_HEADING, /* "Ingredients:", "For the brine:" */
	INGREDIENT_LINE_METHOD,  /* the heading of the method: "Method:", "Directions", "Steps" */
	INGREDIENT_LINE_INGREDIENT, /* all else */
};

/*
 * Says what a line is, by its own words alone; the first `length` bytes. Everything behind
 * INGREDIENT_LINE_METHOD is the method, which is for the reader of the recipe to remember.
 */
enum ingredient_line_kind ingredient_line_kind(const char *line, size_t length);

/*
 * Reads one ingredient line, its first `length` bytes, without the end of line. Refused, with
 * the reason in *err (add the line's number with error_context): a blank line, a line above
 * INGREDIENT_LINE_MAX, bytes that are not UTF-8, NUL and control characters, a comma inside a
 * number, a zero or negative amount, a range that falls, a number that does not fit, and a
 * line that names nothing. On false *out is not to be used.
 */
bool ingredient_line_parse(const char *line, size_t length, struct ingredient_line *out,
			   struct error *err);

/*
 * The name in the reference that words for an ingredient come to, or NULL. Tables in order:
 * densities, composition, acids, buffers, formulas; by whole words, folded; case, plurals and
 * the order of words do not matter, and a word that changes the food ("dried", "paste") must
 * stand in both. *exact (may be NULL): every word on both sides was used.
 */
const char *ingredient_match(const char *words, bool *exact);

const char *ingredient_sure_word(enum ingredient_sure sure); /* "certain" "likely" "unsure" */

#endif
