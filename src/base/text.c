#include "jarwright/text.h"

#include <string.h>

static bool is_continuation(unsigned char byte)
{
	return (byte & 0xC0) == 0x80;
}

/* Bytes that a sequence beginning with this one has; 0: no sequence begins so. */
static size_t length_from_lead(unsigned char lead)
{
	if (lead < 0x80)
		return 1;
	if (lead >= 0xC2 && lead <= 0xDF)
		return 2;
	if (lead >= 0xE0 && lead <= 0xEF)
		return 3;
	if (lead >= 0xF0 && lead <= 0xF4)
		return 4;
	return 0;
}

/* The second byte rules out overlong forms, surrogates and what lies above U+10FFFF. */
static bool second_byte_allowed(unsigned char lead, unsigned char second)
{
	switch (lead) {
	case 0xE0:
		return second >= 0xA0;
	case 0xED:
		return second <= 0x9F;
	case 0xF0:
		return second >= 0x90;
	case 0xF4:
		return second <= 0x8F;
	default:
		return true;
	}
}

size_t text_utf8_length(const char *at)
{
	const unsigned char *byte = (const unsigned char *)at;
	if (byte[0] == '\0')
		return 0;
	size_t length = length_from_lead(byte[0]);
	/* A text that ends early ends in NUL, which is no continuation. */
	for (size_t i = 1; i < length; i++)
		if (!is_continuation(byte[i]))
			return 0;
	if (length > 1 && !second_byte_allowed(byte[0], byte[1]))
		return 0;
	return length;
}

int text_columns(const char *text, size_t length)
{
	int columns = 0;
	for (size_t i = 0; i < length; i++)
		columns += !is_continuation((unsigned char)text[i]);
	return columns;
}

void text_drop_partial(char *text)
{
	size_t end = strlen(text);
	size_t lead = end;
	while (lead > 0 && end - lead < 3 && is_continuation((unsigned char)text[lead - 1]))
		lead--;
	if (lead == 0)
		return;
	lead--;
	if (length_from_lead((unsigned char)text[lead]) > end - lead)
		text[lead] = '\0';
}

uint32_t text_code_point(const char *at, size_t length)
{
	static const unsigned char lead_mask[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
	uint32_t code = (unsigned char)at[0] & lead_mask[length];
	for (size_t i = 1; i < length; i++)
		code = code << 6 | ((unsigned char)at[i] & 0x3F);
	return code;
}

bool text_is_obeyed(const char *at, size_t length)
{
	uint32_t code = text_code_point(at, length);
	return code < 0x20 || (code >= 0x7F && code <= 0x9F) || code == 0x061C || code == 0x200E ||
	       code == 0x200F || (code >= 0x2028 && code <= 0x202E) ||
	       (code >= 0x2066 && code <= 0x2069);
}

enum plain_text plain_text_check(const char *text)
{
	while (*text) {
		size_t length = text_utf8_length(text);
		if (length == 0)
			return PLAIN_TEXT_NOT_UTF8;
		if (text_is_obeyed(text, length))
			return PLAIN_TEXT_CONTROL;
		text += length;
	}
	return PLAIN_TEXT;
}

void text_show(const char *text, size_t length, char shown[static TEXT_SHOWN_SIZE])
{
	size_t from = 0;
	size_t to = 0;
	for (size_t characters = 0; from < length && text[from] != '\0'; characters++) {
		if (characters == TEXT_SHOWN_CHARACTERS) {
			memcpy(shown + to, "...", sizeof "...");
			return;
		}
		size_t bytes = text_utf8_length(text + from);
		bool whole = bytes > 0 && bytes <= length - from;
		if (whole && !text_is_obeyed(text + from, bytes)) {
			memcpy(shown + to, text + from, bytes);
			to += bytes;
		} else {
			shown[to++] = '?';
		}
		from += whole ? bytes : 1;
	}
	shown[to] = '\0';
}

char *text_harmless(const char *text, char *out, size_t size)
{
	size_t n = 0;
	while (*text && n + 1 < size) {
		size_t length = text_utf8_length(text);
		if (length == 0 || text_is_obeyed(text, length)) {
			out[n++] = '?';
		} else {
			if (n + length >= size)
				break;
			memcpy(out + n, text, length);
			n += length;
		}
		text += length ? length : 1;
	}
	out[n] = '\0';
	return out;
}
