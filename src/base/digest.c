#include "jarwright/digest.h"

#include <nettle/sha2.h>
#include <stdlib.h>

#include "jarwright/library.h"

/* The functions and the size of their state belong to this soname. */
#define LIBRARY "libnettle.so.8"

static struct {
	void (*init)(struct sha256_ctx *ctx);
	void (*update)(struct sha256_ctx *ctx, size_t length, const uint8_t *data);
	void (*digest)(struct sha256_ctx *ctx, size_t length, uint8_t *digest);
} sha256;

static bool open_library(struct error *err)
{
	const struct library_function functions[] = {
	    {"nettle_sha256_init", &sha256.init},
	    {"nettle_sha256_update", &sha256.update},
	    {"nettle_sha256_digest", &sha256.digest},
	};
	static bool opened;
	if (!opened)
		opened = library_open(LIBRARY, functions, sizeof functions / sizeof *functions);
	return opened ||
	       error_failed(err, "SHA-256: the library Nettle cannot be loaded; install the "
				 "package libnettle8");
}

bool digest_make(const struct bytes *parts, size_t n, uint8_t out[DIGEST_SIZE], struct error *err)
{
	struct sha256_ctx ctx;
	if (!open_library(err))
		return false;
	sha256.init(&ctx);
	for (size_t i = 0; i < n; i++)
		sha256.update(&ctx, parts[i].n, parts[i].at);
	sha256.digest(&ctx, DIGEST_SIZE, out);
	return true;
}

struct digest {
	struct sha256_ctx ctx;
};

struct digest *digest_begin(struct error *err)
{
	if (!open_library(err))
		return NULL;
	struct digest *digest = malloc(sizeof *digest);
	if (digest)
		sha256.init(&digest->ctx);
	else
		error_failed(err, "SHA-256: out of memory; close other programs and try again");
	return digest;
}

void digest_add(struct digest *digest, const void *bytes, size_t n)
{
	sha256.update(&digest->ctx, n, bytes);
}

void digest_end(struct digest *digest, uint8_t *out)
{
	if (digest && out)
		sha256.digest(&digest->ctx, DIGEST_SIZE, out);
	free(digest);
}

void hex_text(const uint8_t *bytes, size_t n, char *out)
{
	static const char hex[] = "0123456789abcdef";
	for (size_t i = 0; i < n; i++) {
		*out++ = hex[bytes[i] >> 4];
		*out++ = hex[bytes[i] & 15];
	}
	*out = '\0';
}

static int hex_digit(char c)
{
	if (c >= '0' && c <= '9')
		return c - '0';
	return c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
}

bool hex_parse(const char *text, uint8_t *out, size_t n)
{
	for (size_t i = 0; i < n; i++, text += 2) {
		int high = hex_digit(text[0]);
		int low = high < 0 ? -1 : hex_digit(text[1]);
		if (low < 0)
			return false;
		out[i] = (uint8_t)(high * 16 + low);
	}
	return *text == '\0';
}
