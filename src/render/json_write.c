/* JSON as it is printed. */
#include <stdlib.h>

#include "jarwright/render.h"
#include "jarwright/text.h"

#define FLAGS (JSON_COMPACT | JSON_PRESERVE_ORDER | JSON_REAL_PRECISION(10))

/* Outside of strings JSON is printable ASCII, and all that is obeyed is within four digits. */
static void write_escaped(FILE *out, const char *text)
{
	const char *run = text; /* what may stand as it is */
	size_t length;
	for (; (length = text_utf8_length(text)) > 0; text += length) {
		if (!text_is_obeyed(text, length))
			continue;
		fwrite(run, 1, (size_t)(text - run), out);
		fprintf(out, "\\u%04x", (unsigned)text_code_point(text, length));
		run = text + length;
	}
	fwrite(run, 1, (size_t)(text - run), out);
}

bool json_write(FILE *out, const json_t *json)
{
	char *text = json_dumps(json, FLAGS);
	if (!text)
		return false;
	write_escaped(out, text);
	free(text);
	return true;
}
