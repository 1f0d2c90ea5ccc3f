/*
 * Jars, the shelf and what is due, as text, as JSON and as a calendar. As in render.h: decides
 * nothing, knows no SQL, a JSON value is the caller's or NULL.
 */
#ifndef JARWRIGHT_RENDER_SHELF_H
#define JARWRIGHT_RENDER_SHELF_H

#include "jarwright/render.h"
#include "jarwright/shelf.h"

void shelf_text(const struct page *page, const struct shelf_list *list);
json_t *shelf_json(const struct shelf_list *list);

/* line: what the jar comes to now. */
void jar_history_text(const struct page *page, const struct jar_history *history,
		      const struct shelf_line *line);
json_t *jar_history_json(const struct jar_history *history, const struct shelf_line *line);

void jars_moved_text(const struct page *page, const struct jars_moved *moved,
		     const struct jar_move *move);
json_t *jars_moved_json(const struct jars_moved *moved, const struct jar_move *move);

void due_text(const struct page *page, const struct due_list *list, struct instant now, int days);
json_t *due_json(const struct due_list *list, struct instant now);
/* RFC 5545; the UIDs are the same whenever the same thing is due. */
void due_calendar(FILE *out, const struct due_list *list, struct instant now);

/* What is to be done, in a few words: "eat or freeze 26-041-07, opened: Pickled beets". */
char *due_words(const struct due *due, char *buffer, size_t size);
const char *due_kind_word(enum due_kind kind); /* "seal-check" */

#endif
