/*
 * Words as the matching of names sees them: folded, so that case, accents, hyphens,
 * plurals and surplus blanks do not matter. Pure; nothing is allocated.
 */
#ifndef JARWRIGHT_WORDS_H
#define JARWRIGHT_WORDS_H

#include <stdbool.h>
#include <stddef.h>

/* Bytes of a folded text, its NUL included. */
#define WORDS_SIZE 192

/*
 * Writes the first `length` bytes of text in lower case, without accents, each word in
 * the singular, one blank between words; hyphens and other punctuation count as blanks,
 * apostrophes as nothing and "&" as "and". False: it does not fit, or nothing is left.
 */
bool words_fold(const char *text, size_t length, char folded[WORDS_SIZE]);

/* Does text fold to this? Looks at the first letter before it does the work. */
bool words_fold_to(const char *text, size_t length, const char *folded);

/* Do two texts fold to the same words? */
bool words_same(const char *a, const char *b);

/* Is the word, its first `length` bytes, among those of `text`? Both are folded. */
bool words_have(const char *text, const char *word, size_t length);

/*
 * May the text, not folded, have this folded word? No is sure. Looks at the first two letters of
 * each word, which folding leaves alone, and says yes to any text with an accent, an apostrophe
 * or "&"; so that most texts need not be folded.
 */
bool words_may_have(const char *text, const char *word);

/* Is every word of `words` among the words of `text`? Both are folded. */
bool words_all_in(const char *text, const char *words);

/*
 * Walks "|one|two|": sets *item and *length to the next entry and moves *list behind it.
 * False at the end.
 */
bool words_next(const char **list, const char **item, size_t *length);

/* Does an entry of the list "|one|two|" fold to this? */
bool words_listed(const char *list, const char *folded);

#endif
