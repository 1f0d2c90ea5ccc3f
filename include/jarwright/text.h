/*
 * Text that came from outside: read safely, kept safely, shown safely.
 *
 * All text is UTF-8. What a person typed goes into a message only through
 * text_show(), so that a message is always valid UTF-8, short, and free of
 * anything that a terminal would obey.
 */
#ifndef JARWRIGHT_TEXT_H
#define JARWRIGHT_TEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Characters of a foreign text that a message shows, and the bytes they may take. */
#define TEXT_SHOWN_CHARACTERS 40
#define TEXT_SHOWN_SIZE       (TEXT_SHOWN_CHARACTERS * (size_t)4 + sizeof "...")

/*
 * Bytes of the UTF-8 sequence at `at`, 1 to 4; 0 at the end of the text and where the
 * bytes are not UTF-8 (overlong, surrogate, above U+10FFFF, broken off).
 */
size_t text_utf8_length(const char *at);

/* The code point of the character of `length` bytes at `at`, valid UTF-8. */
uint32_t text_code_point(const char *at, size_t length);

/* Columns that the first `length` bytes take: every character one. */
int text_columns(const char *text, size_t length);

/*
 * Would a terminal obey the character of `length` bytes at `at`, valid UTF-8, and not show
 * it? Control characters, marks that turn the writing direction, line separators.
 */
bool text_is_obeyed(const char *at, size_t length);

/* May the NUL-terminated text be kept in a file and shown as it is? */
enum plain_text { PLAIN_TEXT, PLAIN_TEXT_NOT_UTF8, PLAIN_TEXT_CONTROL };
enum plain_text plain_text_check(const char *text);

/* Takes away a sequence that was broken off at the end of text, where a cut fell. */
void text_drop_partial(char *text);

/*
 * Copies at most `length` bytes of text (SIZE_MAX: all of it) for showing: the first 40
 * characters, then "..." if there are more; '?' stands for what a terminal would obey and
 * for a byte that is not UTF-8.
 */
void text_show(const char *text, size_t length, char shown[static TEXT_SHOWN_SIZE]);

/*
 * The whole text for showing, where text_show() is too short: what a terminal would obey and
 * bytes that are not UTF-8 become "?". Cut at size bytes, never within a character. Returns out.
 */
char *text_harmless(const char *text, char *out, size_t size);

#endif
