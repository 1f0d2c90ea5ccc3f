/* SHA-256 (FIPS 180-4), by the library Nettle. */
#ifndef JARWRIGHT_DIGEST_H
#define JARWRIGHT_DIGEST_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"

#define DIGEST_SIZE 32

struct bytes {
	const void *at;
	size_t n;
};

/*
 * The digest of the parts, one after the other. False: the library, which is opened at the
 * first call, is not there.
 */
bool digest_make(const struct bytes *parts, size_t n, uint8_t out[DIGEST_SIZE], struct error *err);

/* The same of bytes that come one by one. NULL: as above, or out of memory. */
struct digest;
struct digest *digest_begin(struct error *err);
void digest_add(struct digest *digest, const void *bytes, size_t n);
/* Frees it; out may be NULL. */
void digest_end(struct digest *digest, uint8_t *out);

/* Writes 2 * n hexadecimal digits, lower case, and a NUL. */
void hex_text(const uint8_t *bytes, size_t n, char *out);
/* Reads exactly 2 * n hexadecimal digits, the whole text. */
bool hex_parse(const char *text, uint8_t *out, size_t n);

#endif
