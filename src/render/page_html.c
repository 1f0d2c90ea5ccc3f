/* Markup: the one escaper, the frame of a page. */
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_page.h"
#include "jarwright/text.h"
#include "page_style.h"

/* U+FDD0 to U+FDEF and the last two of each plane: code points that HTML does not allow. */
static bool is_noncharacter(const char *at, size_t length)
{
	const unsigned char *b = (const unsigned char *)at;
	if (length == 3 && b[0] == 0xEF && b[1] == 0xB7)
		return b[2] >= 0x90 && b[2] <= 0xAF;
	bool ends_so = length >= 3 && b[length - 2] == 0xBF && b[length - 1] >= 0xBE;
	if (length == 3)
		return ends_so && b[0] == 0xEF;
	return ends_so && (b[1] & 0x0F) == 0x0F;
}

static const char *entity(char c)
{
	switch (c) {
	case '&':
		return "&amp;";
	case '<':
		return "&lt;";
	case '>':
		return "&gt;";
	case '"':
		return "&quot;";
	case '\'':
		return "&#39;";
	case '\n':
	case '\r':
	case '\t':
		return " ";
	default:
		return NULL;
	}
}

void html_text(FILE *out, const char *text)
{
	while (*text) {
		size_t length = text_utf8_length(text);
		const char *instead = entity(*text);
		if (instead)
			fputs(instead, out);
		else if (length == 0 || text_is_obeyed(text, length) ||
			 is_noncharacter(text, length))
			fputc('?', out);
		else
			fwrite(text, 1, length, out);
		text += length > 0 ? length : 1;
	}
}

void html_print(FILE *out, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	for (const char *at = format; *at; at++) {
		if (*at != '%') {
			fputc(*at, out);
			continue;
		}
		switch (*++at) {
		case 's':
			html_text(out, va_arg(args, const char *));
			break;
		case 'd':
			fprintf(out, "%d", va_arg(args, int));
			break;
		case '%':
			fputc('%', out);
			break;
		default: /* a bug: a value that would not be escaped */
			abort();
		}
	}
	va_end(args);
}

/* The policy lets nothing be loaded and no script run, whatever stands in the page. */
static void head(FILE *out, const char *title)
{
	html_print(out,
		   "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
		   "<meta http-equiv=\"Content-Security-Policy\" "
		   "content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
		   "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
		   "<title>%s</title>\n<style>\n",
		   title);
}

void html_begin(FILE *out, const char *title, const char *kicker, const char *style)
{
	head(out, title);
	fputs(page_style, out);
	fputs(style, out);
	fputs("</style>\n</head>\n<body>\n<main>\n<header>\n", out);
	if (*kicker)
		html_print(out, "<p class=\"kicker\">%s</p>\n", kicker);
	html_print(out, "<h1>%s</h1>\n</header>\n", title);
}

void html_end(FILE *out, const char *edition)
{
	html_print(out,
		   "</main>\n<footer>\n<p>Tables of edition %s. Follow the publication to the "
		   "letter; where your extension service or local code asks for more, do that. Any "
		   "doubt about a jar: do not taste it.</p>\n</footer>\n</body>\n</html>\n",
		   edition);
}

void html_begin_bare(FILE *out, const char *title)
{
	head(out, title);
}

void html_heading_bare(FILE *out, const char *title)
{
	html_print(out, "</style>\n</head>\n<body>\n<main>\n<h1 class=\"unseen\">%s</h1>\n", title);
}

void html_end_bare(FILE *out)
{
	fputs("</main>\n</body>\n</html>\n", out);
}

void html_source(FILE *out, const char *lead, const struct citation *citation)
{
	char words[WORDS_BUFFER];
	html_print(out, "<p class=\"source\"><b>%s</b> %s</p>\n", lead,
		   citation_words(words, sizeof words, citation));
}
