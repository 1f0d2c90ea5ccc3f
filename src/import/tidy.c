/* Text of a page as lines: blanks tidied, nothing else changed. */
#include <stdlib.h>
#include <string.h>

#include "import_internal.h"

/* Bytes of the blank at `at`, 0 if there is none: those of ASCII, and those that pages use. */
static size_t blank_length(const char *at)
{
	static const char *const blanks[] = {
	    "\xc2\xa0",     /* U+00A0, no break */
	    "\xe2\x80\x82", /* U+2002 to U+200A, of several widths */
	    "\xe2\x80\x83", "\xe2\x80\x84", "\xe2\x80\x85", "\xe2\x80\x86", "\xe2\x80\x87",
	    "\xe2\x80\x88", "\xe2\x80\x89", "\xe2\x80\x8a", "\xe2\x80\xa8", /* U+2028, a line's end
									     */
	    "\xe2\x80\xa9", "\xe2\x80\xaf", "\xe3\x80\x80",
	};
	if (*at && strchr(" \t\r\n\f\v", *at))
		return 1;
	for (size_t i = 0; i < sizeof blanks / sizeof *blanks; i++)
		if (strncmp(at, blanks[i], strlen(blanks[i])) == 0)
			return strlen(blanks[i]);
	return 0;
}

static void tidy(FILE *out, const char *text, bool as_one_line)
{
	bool blank = false, begun = false;
	while (*text) {
		size_t n = blank_length(text);
		if (*text == '\n' && !as_one_line) {
			if (begun)
				fputc('\n', out);
			begun = blank = false;
			text++;
		} else if (n > 0) {
			blank = true;
			text += n;
		} else {
			if (blank && begun)
				fputc(' ', out);
			fputc(*text++, out);
			begun = true;
			blank = false;
		}
	}
	if (begun)
		fputc('\n', out);
}

void put_lines(FILE *out, const char *text)
{
	tidy(out, text, false);
}

void put_line(FILE *out, const char *text)
{
	tidy(out, text, true);
}

bool put_marked_up(FILE *out, const char *text, bool as_one_line, struct error *err)
{
	xmlDocPtr doc;
	if (!strpbrk(text, "&<")) {
		tidy(out, text, as_one_line);
		return true;
	}
	if (!parse_html(text, strlen(text), &doc, err))
		return false;
	xmlNodePtr root = html_root(doc);
	char *plain = root ? node_text(root) : strdup("");
	html_release(doc);
	if (!plain)
		return import_no_memory(err);
	tidy(out, plain, as_one_line);
	free(plain);
	return true;
}
