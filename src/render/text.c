/* Paragraphs on a page. */
#include <stdarg.h>
#include <string.h>

#include "jarwright/render.h"
#include "jarwright/text.h"

void page_flow(const struct page *page, const char *text, int at, int indent)
{
	bool first = true;
	while (*text) {
		text += strspn(text, " \n");
		size_t n = strcspn(text, " \n");
		if (n == 0)
			break;
		int wide = text_columns(text, n);
		if (!first && at + 1 + wide > page->width) {
			fprintf(page->out, "\n%*s", indent, "");
			at = indent;
		} else if (!first) {
			fputc(' ', page->out);
			at++;
		}
		fwrite(text, 1, n, page->out);
		at += wide;
		text += n;
		first = false;
	}
	fputc('\n', page->out);
}

void page_text(const struct page *page, const char *lead, const char *text)
{
	int indent = text_columns(lead, strlen(lead));
	fputs(lead, page->out);
	page_flow(page, text, indent, indent);
}

void page_format(const struct page *page, const char *lead, const char *format, ...)
{
	char text[4000];
	va_list args;
	va_start(args, format);
	vsnprintf(text, sizeof text, format, args);
	va_end(args);
	page_text(page, lead, text);
}

void page_headline(const struct page *page, const char *word, const char *rest)
{
	int indent = text_columns(word, strlen(word)) + 2;
	fprintf(page->out, page->bold ? "\033[1m%s\033[0m  " : "%s  ", word);
	page_flow(page, rest, indent, indent);
}

void page_blank(const struct page *page)
{
	fputc('\n', page->out);
}
