#include "input.h"

#include "jarwright/text.h"

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

bool input_is_clean(const char *bytes, size_t length)
{
	for (size_t i = 0; i < length;) {
		size_t step = text_utf8_length(bytes + i);
		if (step == 0 || (bytes[i] != '\t' && text_is_obeyed(bytes + i, step)))
			return false;
		i += step;
	}
	return true;
}
