#include "input.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { CHUNK = 64 * 1024 };

static bool read_all(struct input *input, FILE *file, struct error *err)
{
	size_t room = 0;

	for (;;) {
		if (input->length + CHUNK + 1 > room) {
			room = room * 2 + CHUNK + 1;
			char *grown = realloc(input->text, room);
			if (!grown)
				return error_failed(err, "%s: out of memory", input->path);
			input->text = grown;
		}
		size_t got = fread(input->text + input->length, 1, CHUNK, file);
		input->length += got;
		if (got < CHUNK)
			break;
	}
	if (ferror(file))
		return error_failed(err, "%s: cannot be read: %s", input->path, strerror(errno));
	input->text[input->length] = '\0';
	return true;
}

bool input_open(struct input *input, const char *path, struct error *err)
{
	FILE *file = fopen(path, "rb");

	*input = (struct input){.path = path};
	if (!file)
		return error_failed(err, "%s: cannot be opened: %s", path, strerror(errno));
	bool ok = read_all(input, file, err);
	fclose(file);
	if (!ok)
		input_close(input);
	return ok;
}

void input_close(struct input *input)
{
	free(input->text);
	*input = (struct input){0};
}

bool input_line(struct input *input, char **line, size_t *length)
{
	if (input->next >= input->length)
		return false;
	char *start = input->text + input->next;
	char *end = memchr(start, '\n', input->length - input->next);
	if (!end)
		end = input->text + input->length;
	*end = '\0';
	*line = start;
	*length = (size_t)(end - start);
	input->next += *length + 1;
	input->line++;
	return true;
}

/* Length of the well-formed UTF-8 sequence at bytes, or 0 (Unicode, table 3-7). */
static size_t sequence_length(const unsigned char *bytes, size_t left)
{
	unsigned char first = bytes[0];
	unsigned char low = 0x80;
	unsigned char high = 0xBF;
	size_t length;

	if (first < 0x80)
		return 1;
	if (first < 0xC2 || first > 0xF4)
		return 0;
	length = first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
	if (first == 0xE0)
		low = 0xA0;
	else if (first == 0xED)
		high = 0x9F;
	else if (first == 0xF0)
		low = 0x90;
	else if (first == 0xF4)
		high = 0x8F;
	if (left < length || bytes[1] < low || bytes[1] > high)
		return 0;
	for (size_t i = 2; i < length; i++)
		if (bytes[i] < 0x80 || bytes[i] > 0xBF)
			return 0;
	return length;
}

bool input_is_clean(const char *bytes, size_t length)
{
	const unsigned char *at = (const unsigned char *)bytes;

	for (size_t i = 0; i < length;) {
		size_t step = sequence_length(at + i, length - i);
		if (step == 0 || (at[i] < 0x20 && at[i] != '\t') || at[i] == 0x7F)
			return false;
		i += step;
	}
	return true;
}
