/*
 * How far apart two spellings are, for suggestions ("did you mean ...").
 */
#ifndef JARWRIGHT_SPELLING_H
#define JARWRIGHT_SPELLING_H

#include <stddef.h>

/* Longest word compared, in bytes. */
#define SPELLING_MAX 64

/*
 * The fewest insertions, deletions, substitutions and swaps of two neighbours that turn
 * a into b, no place being edited twice (Damerau-Levenshtein distance, optimal string
 * alignment). Counts bytes and minds case. SIZE_MAX if a word is longer than SPELLING_MAX.
 */
size_t spelling_distance(const char *a, const char *b);

#endif
