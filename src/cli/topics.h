/* What "help TOPIC" teaches. The text is in topics.txt, compiled into the program. */
#ifndef JARWRIGHT_CLI_TOPICS_H
#define JARWRIGHT_CLI_TOPICS_H

#include <stddef.h>
#include <stdio.h>

#include "jarwright/render.h"

enum topic_line_kind {
	TOPIC_TEXT,  /* a paragraph */
	TOPIC_ITEM,  /* an entry of a list */
	TOPIC_TYPED, /* a line to type, never wrapped */
};

struct topic_line {
	enum topic_line_kind kind;
	const char *text; /* sources stand in brackets: "[aib539-2015-g1 p. 1-8]" */
};

struct topic {
	const char *name;  /* "steam" */
	const char *title; /* one line, no full stop */
	const struct topic_line *lines;
	size_t lines_n;
};

/* In the order of topics.txt. */
extern const struct topic topics[];
extern const size_t topics_n;

/* The topic of this name, or NULL. */
const struct topic *topic_find(const char *name);
/* The nearest topic in spelling, or NULL if none is near. */
const char *nearest_topic(const char *name);

/* The id in the next "[id place]" at or after `at`, and its length; NULL when there is none. */
const char *topic_citation(const char *at, size_t *id_n);

/* The topic as a page of help. */
void help_topic(const struct page *page, const struct topic *topic);

#endif
