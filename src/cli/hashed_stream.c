#include "hashed_stream.h"

#include <stdlib.h>

struct hashed {
	FILE *inner;
	struct digest *digest;
};

static ssize_t hashed_read(void *cookie, char *buffer, size_t size)
{
	struct hashed *hashed = cookie;
	size_t n = fread(buffer, 1, size, hashed->inner);
	digest_add(hashed->digest, buffer, n);
	return n == 0 && ferror(hashed->inner) ? -1 : (ssize_t)n;
}

static int hashed_close(void *cookie)
{
	free(cookie);
	return 0;
}

FILE *hashed_stream_open(FILE *inner, struct digest *digest, struct error *err)
{
	const cookie_io_functions_t functions = {.read = hashed_read, .close = hashed_close};
	struct hashed *hashed = malloc(sizeof *hashed);
	if (hashed)
		*hashed = (struct hashed){inner, digest};
	FILE *stream = hashed ? fopencookie(hashed, "r", functions) : NULL;
	if (!stream) {
		free(hashed);
		error_failed(err, "record: out of memory; close other programs and try again");
	}
	return stream;
}
