/* What the sources of this module share. */
#ifndef JARWRIGHT_IMPORT_INTERNAL_H
#define JARWRIGHT_IMPORT_INTERNAL_H

#include <libxml/tree.h>
#include <stdio.h>

#include "jarwright/import.h"

/* A recipe as the page has it; texts are owned, NULL or without words where it has none. */
struct page_recipe {
	char *title, *yield;
	char *ingredients, *steps; /* one a line, each ended by a line feed */
};
void page_recipe_release(struct page_recipe *recipe);

/* What was found so far. */
struct finding_place {
	struct page_recipe recipe;
	bool found;
};
/*
 * Takes the recipe over, whatever happens. The same ingredients once more are passed over,
 * others are an error that names both.
 */
bool take_recipe(struct finding_place *place, struct page_recipe *recipe, struct error *err);

bool import_no_memory(struct error *err);
bool import_too_deep(struct error *err);

/* Recipes in JSON; `where` ("the JSON", "script 2") opens the message about broken JSON. */
bool find_in_json(const char *where, const char *bytes, size_t length, struct finding_place *place,
		  struct error *err);
/* Recipes in a page: its JSON-LD, and only if there is none its microdata. */
bool find_in_html(const char *bytes, size_t length, struct finding_place *place, struct error *err);

/* *out is to be released with html_release(). No page is fetched from anywhere. */
bool parse_html(const char *bytes, size_t length, xmlDocPtr *out, struct error *err);
xmlNodePtr html_root(xmlDocPtr doc); /* NULL: an empty page */
void html_release(xmlDocPtr doc);
/* What a <script> holds, as it is. To be freed; NULL: out of memory. */
char *html_script(xmlNodePtr node);
/* The node that follows in the order of the text, within root; NULL at the end. */
xmlNodePtr next_node(xmlNodePtr root, xmlNodePtr node);
/* The text of a node; <li> and <br> begin a line. To be freed; NULL: out of memory. */
char *node_text(xmlNodePtr node);

/*
 * Writes the lines of text, blanks of all kinds tidied, empty lines left out, each ended by
 * a line feed. As one line: line ends count as blanks.
 */
void put_lines(FILE *out, const char *text);
void put_line(FILE *out, const char *text);
/* The same for text that may have HTML in it ("&frac12; cup"). */
bool put_marked_up(FILE *out, const char *text, bool as_one_line, struct error *err);

#endif
