/* What the tests of pages share. */
#ifndef JARWRIGHT_TESTS_PAPER_H
#define JARWRIGHT_TESTS_PAPER_H

#include "jarwright/render_page.h"
#include "jarwright/render_paper.h"
#include "suite.h"

/* Invented: markup, control characters, right-to-left marks, bytes that are not UTF-8. */
extern const char hostile[];

/* A stream into memory, and its text, which is the caller's to free. */
struct collector {
	FILE *out;
	char *text;
	size_t size;
};
void collect(struct collector *c);
char *collected(struct collector *c);

void assert_holds(const char *text, const char *part);
void assert_lacks(const char *text, const char *part);
int count_of(const char *text, const char *part);

/*
 * A whole page: every element closed in its order, UTF-8 without control characters, nothing that
 * loads or runs.
 */
void assert_page(const char *html);

Suite *escape_suite(void);
Suite *label_suite(void);
Suite *sheet_suite(void);
Suite *chart_suite(void);

#endif
