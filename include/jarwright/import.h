/*
 * A recipe out of a saved web page or a JSON file, as schema.org describes one.
 *
 * Looked for in this order: the whole input as JSON-LD; JSON-LD in <script
 * type="application/ld+json"> of a page; microdata (itemprop recipeIngredient, or the older
 * ingredients). The result is a recipe's text, one ingredient a line, then "Method:", that
 * recipe_read() takes: the words stay as they are written, blanks apart.
 * Nothing is fetched: no link is followed, no file but the one given is read.
 */
#ifndef JARWRIGHT_IMPORT_H
#define JARWRIGHT_IMPORT_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/error.h"

/* Largest input in bytes, deepest nesting of its JSON or HTML: our own limits. */
#define IMPORT_BYTES_MAX 8388608
#define IMPORT_DEPTH_MAX 200

struct imported {
	char *title; /* what the page calls it, one line; "" ; owned */
	char *text;  /* for recipe_read(); owned */
};
void imported_release(struct imported *imported);

/*
 * Reads bytes[0..length), which need no NUL. Refused: too long, empty, a NUL byte, not UTF-8
 * (with the line), nested too deep, JSON that is broken (with line and column), no recipe with
 * ingredients, several different ones. On false *out is empty.
 */
bool import_recipe(const char *bytes, size_t length, struct imported *out, struct error *err);

#endif
