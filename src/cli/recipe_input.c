/* Recipes from outside: a file, or standard input; never more of it than can be one. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "jarwright/text.h"
#include "recipe.h"

#define CHUNK 65536

static bool read_all(FILE *file, const char *shown, size_t most, char **out, size_t *length,
		     struct error *err)
{
	size_t room = 0;
	*length = 0;
	for (;;) {
		if (*length == room) {
			room += CHUNK;
			char *more = realloc(*out, room);
			if (!more)
				return error_failed(
				    err,
				    "file '%s': out of memory; close other programs "
				    "and try again",
				    shown);
			*out = more;
		}
		size_t n = fread(*out + *length, 1, room - *length, file);
		*length += n;
		if (*length > most)
			return error_usage(err,
					   "file '%s': it is longer than %zu bytes; keep only the "
					   "recipe in it",
					   shown, most);
		if (n == 0)
			break;
	}
	return !ferror(file) ||
	       error_failed(err, "file '%s': it cannot be read; check the disk", shown);
}

static bool open_failed(const char *shown, int number, struct error *err)
{
	return error_usage(err, "file '%s': %s; check the name", shown, strerror(number));
}

bool recipe_input(const char *path, size_t most, char **out, size_t *length, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	struct stat is;
	bool standard = strcmp(path, "-") == 0;
	*out = NULL;
	text_show(path, SIZE_MAX, shown);
	FILE *file = standard ? stdin : fopen(path, "re");
	if (!file)
		return open_failed(shown, errno, err);
	bool ok = true;
	if (fstat(fileno(file), &is) == 0 && S_ISDIR(is.st_mode))
		ok = open_failed(shown, EISDIR, err);
	ok = ok && read_all(file, shown, most, out, length, err);
	if (!standard)
		(void)fclose(file); /* it was only read */
	if (!ok) {
		free(*out);
		*out = NULL;
	}
	return ok;
}
