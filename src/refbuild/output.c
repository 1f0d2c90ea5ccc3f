#include "output.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

static const char suffix[] = ".part";

bool output_name(struct output *output, const char *path, struct error *err)
{
	size_t length = strlen(path);

	*output = (struct output){.path = path, .temporary = malloc(length + sizeof suffix)};
	if (!output->temporary)
		return error_failed(err, "out of memory");
	memcpy(output->temporary, path, length);
	memcpy(output->temporary + length, suffix, sizeof suffix);
	if (remove(output->temporary) != 0 && errno != ENOENT) {
		error_failed(err, "%s: cannot be removed: %s", output->temporary, strerror(errno));
		free(output->temporary);
		return false;
	}
	return true;
}

bool output_open(struct output *output, const char *path, struct error *err)
{
	if (!output_name(output, path, err))
		return false;
	output->file = fopen(output->temporary, "wb");
	if (!output->file) {
		error_failed(err, "%s: cannot be written: %s", output->temporary, strerror(errno));
		free(output->temporary);
		return false;
	}
	return true;
}

bool output_close(struct output *output, bool ok, struct error *err)
{
	if (output->file) {
		bool written = !ferror(output->file);
		written = fclose(output->file) == 0 && written;
		if (ok && !written)
			ok = error_failed(err, "%s: cannot be written: %s", output->temporary,
					  strerror(errno));
	}
	if (ok && rename(output->temporary, output->path) != 0)
		ok = error_failed(err, "%s: cannot be put in place: %s", output->path,
				  strerror(errno));
	if (!ok)
		remove(output->temporary);
	free(output->temporary);
	return ok;
}

void output_literal(FILE *file, const char *text)
{
	fputc('"', file);
	for (; *text; text++) {
		unsigned char byte = (unsigned char)*text;
		if (byte == '\n')
			fputs("\\n", file);
		else if (byte == '"' || byte == '\\' || byte == '?')
			fprintf(file, "\\%c", byte);
		else if (byte < 0x20 || byte > 0x7E)
			fprintf(file, "\\%03o", (unsigned)byte);
		else
			fputc(byte, file);
	}
	fputc('"', file);
}
