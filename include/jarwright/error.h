/*
 * Errors as values with context.
 *
 * A function that can fail returns false and fills the caller's struct error
 * with one complete message of the form "<what>: <why>; <what to do>", without
 * the program's name and without a full stop. The first failure wins: nobody
 * overwrites a message on the way up, callers only add context in front.
 */
#ifndef JARWRIGHT_ERROR_H
#define JARWRIGHT_ERROR_H

#include <stdbool.h>
#include <stddef.h>

/* What went wrong, as the program's exit code will say it. */
enum error_kind {
	ERROR_NONE = 0,
	ERROR_USAGE,  /* the caller's words: a bad option, quantity or name */
	ERROR_FAILED, /* the world: a file, the database, memory, the disk */
};

struct error {
	enum error_kind kind;
	char text[1024]; /* NUL-terminated UTF-8; cut, never overrun */
};

/*
 * Fills *err and returns false, so that a caller can write
 * "return error_usage(err, ...)". err may not be NULL.
 */
bool error_usage(struct error *err, const char *format, ...) __attribute__((format(printf, 2, 3)));
bool error_failed(struct error *err, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Puts "context: " in front of a message already set; always returns false. */
bool error_context(struct error *err, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

#endif
