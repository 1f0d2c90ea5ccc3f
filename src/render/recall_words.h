/* Words on touched jars that the recall sources of this folder share. */
#ifndef JARWRIGHT_RENDER_RECALL_WORDS_H
#define JARWRIGHT_RENDER_RECALL_WORDS_H

#include "jarwright/render_recall.h"

#define BATCH_WORDS_SIZE 32
char *batch_words(char buffer[static BATCH_WORDS_SIZE], int year, int number); /* "26-041" */
/* "on the shelf, cellar", "eaten, was given to the neighbours" */
char *place_words(char *buffer, size_t size, const struct touched_jar *jar);
bool same_place(const struct touched_jar *a, const struct touched_jar *b);
json_t *touched_jar_json(const struct touched_jar *jar);
json_t *json_moment(int64_t ms);      /* ISO 8601; null for 0 */
json_t *json_words(const char *text); /* null for "" */

#endif
