/*
 * Bodies of events to and from text. Jansson lets a buffer fail to grow here and there, and goes on
 * without the byte or the key: so it is watched for a lack of memory while it parses.
 */
#include <stdlib.h>

#include "log.h"

static json_malloc_t allocate;
static bool refused;

static void *watch(size_t n)
{
	void *memory = allocate(n);
	refused = refused || !memory;
	return memory;
}

static void begin_watching(void)
{
	json_free_t release;
	if (!allocate) {
		json_get_alloc_funcs(&allocate, &release);
		json_set_alloc_funcs(watch, release);
	}
	refused = false;
}

bool body_read(const char *text, size_t n, json_t **out, struct error *err)
{
	begin_watching();
	*out = json_loadb(text, n, JSON_REJECT_DUPLICATES, NULL);
	if (!refused)
		return true;
	json_decref(*out);
	*out = NULL;
	return error_failed(err, "log: out of memory; close other programs and try again");
}

/* Measured first, then written into room of that size, which does not have to grow. */
char *body_write(const json_t *body)
{
	const size_t flags = JSON_COMPACT | JSON_SORT_KEYS;
	size_t n = body ? json_dumpb(body, NULL, 0, flags) : 0;
	char *text = n ? malloc(n + 1) : NULL;
	if (!text)
		return NULL;
	if (json_dumpb(body, text, n, flags) == n) {
		text[n] = '\0';
		return text;
	}
	free(text);
	return NULL;
}
