/*
 * Text from outside that may be shown as it is and kept in a file.
 */
#ifndef JARWRIGHT_PLAIN_TEXT_H
#define JARWRIGHT_PLAIN_TEXT_H

enum plain_text { PLAIN_TEXT, PLAIN_TEXT_NOT_UTF8, PLAIN_TEXT_CONTROL };

/* Is the NUL-terminated text valid UTF-8 without control characters (Unicode C0, DEL, C1)? */
enum plain_text plain_text_check(const char *text);

#endif
