/*
 * Answers as text for a cook and as JSON for other programs.
 *
 * Knows no SQL and decides nothing. Text goes to a stream; a failing stream is the
 * caller's to notice (it is memory). A JSON function returns a new value that the caller
 * owns, or NULL when there is no memory for it.
 */
#ifndef JARWRIGHT_RENDER_H
#define JARWRIGHT_RENDER_H

#include <jansson.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "jarwright/decide.h"
#include "jarwright/plan.h"
#include "jarwright/reference.h"

#define PAGE_WIDTH 80

struct page {
	FILE *out;
	int width; /* columns to wrap at, > 0 */
	bool bold; /* may the verdict be printed bold? */
};

/* `lead`, then text wrapped behind it, the later lines indented as far as `lead` is wide. */
void page_text(const struct page *page, const char *lead, const char *text);
/* Goes on in a line that has reached column `at`; the later lines are indented so far. */
void page_flow(const struct page *page, const char *text, int at, int indent);
/* page_text() with a format. Text is cut at 4,000 bytes. */
void page_format(const struct page *page, const char *lead, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* A word in bold, if there is bold, and the rest of its paragraph. */
void page_headline(const struct page *page, const char *word, const char *rest);
void page_blank(const struct page *page);

/*
 * Writes the value on one line, without its end. What a terminal would obey and JSON allows as it
 * is (DEL, the C1 controls, marks that turn the writing direction, line separators) is escaped as
 * \uXXXX: a program reads the same text, a terminal does nothing, and accents stay readable. False:
 * out of memory.
 */
bool json_write(FILE *out, const json_t *json);

/* Each writes into buffer, at most size bytes, and returns it. */
char *feet_words(char *buffer, size_t size, int32_t feet);            /* "2,900" */
char *elevation_words(char *buffer, size_t size, int32_t mft);        /* "2,900 ft" */
char *inches_words(char *buffer, size_t size, int32_t milli_in);      /* "1/2 inch" */
char *milli_words(char *buffer, size_t size, int32_t milli);          /* "4.6" */
char *band_words(char *buffer, size_t size, const struct band *band); /* "above 6,000 ft" */
char *citation_words(char *buffer, size_t size, const struct citation *citation);
/* Sources cited on a page, in the order of their first use; zeroed, it is empty. */
#define SOURCES_MAX 64
struct source_list {
	const struct source *sources[SOURCES_MAX];
	size_t sources_n;
};
/* "[aib539-2015-g1 p. 1-23]": the source's short name, kept for sources_text(), and place. */
char *cite(struct source_list *list, char *buffer, size_t size, const struct citation *citation);
/* What the short names stand for. */
void sources_text(const struct page *page, const struct source_list *list);
char *process_words(char *buffer, size_t size, int minutes, int psi); /* "35 minutes at 11 psi" */
char *jar_words(char *buffer, size_t size, const struct reference *ref,
		const struct jar_choice *jar);
const char *canner_title(enum canner canner); /* "dial-gauge pressure canner" */

#define WORDS_BUFFER 512 /* enough for each of them */

/* list with value, which it takes, at its end; NULL, both released, if either is or gets lost. */
json_t *json_append(json_t *list, json_t *value);
json_t *json_milli(int32_t milli);                      /* null for NONE */
json_t *json_tenth(double number);                      /* to one decimal */
json_t *json_positive(int number);                      /* null for 0 */
json_t *json_citation(const struct citation *citation); /* a string */
json_t *json_band(const struct band *band);             /* [from, to or null] */
json_t *json_foods(const struct food_match *match);     /* slug and title of each */

/* The answer of check; elevation_typed as the cook typed it, or "". */
void decision_text(const struct page *page, const struct reference *ref,
		   const struct request *request, const struct decision *decision,
		   const char *elevation_typed);
json_t *decision_json(const struct reference *ref, const struct request *request,
		      const struct decision *decision);
/* The words of that answer for what the cook said; NULL: not said. */
const char *vinegar_word(enum vinegar_choice vinegar);
const char *acid_word(enum acid acid);
/*
 * The request that such an answer was given to, so that it can be decided anew. Of a food that
 * was not one, or is no longer in the tables, nothing is found. False: no such answer.
 */
bool decision_request(const struct reference *ref, const json_t *decision, struct request *out);

/* One printed table; the column of the elevation, if it is stated, is marked. */
struct elevation_mark {
	bool stated;
	int32_t mft;
};
void table_text(const struct page *page, const struct reference *ref,
		const struct process_table *table, struct elevation_mark here,
		struct source_list *sources);
json_t *table_json(const struct reference *ref, const struct process_table *table,
		   struct elevation_mark here);

/* The column that counts at this elevation, or -1: above the table. */
int table_band(const struct reference *ref, const struct process_table *table, int32_t mft);

/* What a plan is for. */
struct plan_subject {
	const char *jars;          /* what they are called, "pint jars" */
	const char *canner;        /* the cook's own whose load it is, or NULL */
	const struct yield *yield; /* of the weight she has, or NULL: she said how many jars */
};
void plan_text(const struct page *page, const struct reference *ref, const struct plan *plan,
	       const struct plan_subject *subject);
/* What is done in a step: "let steam flow freely (vent)". */
const char *stage_words(enum stage stage);
/* Each writes into buffer, at most size bytes, and returns it. */
char *span_words(char *buffer, size_t size, struct span span); /* "5 to 10" */
/* So many minutes after `start`, in minutes since midnight: "14:05 to 14:10". */
char *clock_span(char *buffer, size_t size, int start, struct span span);
/* yield: as in struct plan_subject. */
json_t *plan_json(const struct plan *plan, const struct yield *yield);
/* "Published: 17.5 lb for 7 quart jars; the rest in proportion." */
void yield_text(const struct page *page, const struct reference *ref, const struct yield *yield);
/* ", 1.8 lb left", or nothing if it is less than a kitchen scale shows. */
char *left_words(char *buffer, size_t size, const struct yield *yield);

#endif
