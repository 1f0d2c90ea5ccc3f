/* The line of an event, as the export writes it. */
#include <string.h>

#include "import_lines.h"

#define DIGITS_MAX 17 /* more could not be held, and are no honest number */

/* Each moves *at past what it read; NULL after something else. */
static void past(const char **at, const char *words)
{
	size_t n = strlen(words);
	if (*at)
		*at = strncmp(*at, words, n) == 0 ? *at + n : NULL;
}

static void past_hex(const char **at, uint8_t *out, size_t n)
{
	char digits[2 * DIGEST_SIZE + 1];
	if (!*at || strnlen(*at, 2 * n) < 2 * n) {
		*at = NULL;
		return;
	}
	memcpy(digits, *at, 2 * n);
	digits[2 * n] = '\0';
	*at = hex_parse(digits, out, n) ? *at + 2 * n : NULL;
}

static void past_integer(const char **at, int64_t *out)
{
	*out = 0;
	if (!*at)
		return;
	bool minus = **at == '-';
	const char *digit = *at + minus;
	size_t n = strspn(digit, "0123456789");
	if (n < 1 || n > DIGITS_MAX || (*digit == '0' && (n > 1 || minus))) {
		*at = NULL; /* not as the export writes it */
		return;
	}
	for (*at = digit + n; digit < *at; digit++)
		*out = *out * 10 + (*digit - '0');
	*out = minus ? -*out : *out;
}

static void past_kind(const char **at, char kind[KIND_SIZE])
{
	size_t n = *at ? strspn(*at, "abcdefghijklmnopqrstuvwxyz-") : 0;
	if (n < 1 || n >= KIND_SIZE) {
		*at = NULL;
		return;
	}
	memcpy(kind, *at, n);
	kind[n] = '\0';
	*at += n;
}

const char *event_line_head(const char *line, struct traveller *t)
{
	const char *at = line;
	int64_t offset;
	memset(t, 0, sizeof *t);
	past(&at, "{\"type\":\"event\",\"device\":\"");
	past_hex(&at, t->device, UUID_SIZE);
	past(&at, "\",\"number\":");
	past_integer(&at, &t->event.seq);
	past(&at, ",\"before\":\"");
	past_hex(&at, t->before, DIGEST_SIZE);
	past(&at, "\",\"uuid\":\"");
	past_hex(&at, t->event.uuid, UUID_SIZE);
	past(&at, "\",\"subject\":\"");
	past_hex(&at, t->subject, UUID_SIZE);
	past(&at, "\",\"kind\":\"");
	past_kind(&at, t->event.kind);
	past(&at, "\",\"at_ms\":");
	past_integer(&at, &t->event.at.ms);
	past(&at, ",\"offset_min\":");
	past_integer(&at, &offset);
	past(&at, ",\"hash\":\"");
	past_hex(&at, t->event.hash, DIGEST_SIZE);
	past(&at, "\",\"body\":");
	if (!at || offset < -1440 || offset > 1440)
		return NULL;
	t->event.at.offset_min = (int)offset;
	return at;
}
