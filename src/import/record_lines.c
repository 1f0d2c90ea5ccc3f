/* Lines and fields of a recorder's file. */
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"
#include "record_internal.h"

bool record_line_error(const struct record_lines *lines, struct error *err, const char *format, ...)
{
	char text[sizeof err->text];
	va_list args;
	va_start(args, format);
	vsnprintf(text, sizeof text, format, args);
	va_end(args);
	return error_usage(err, "%s:%ld: %s", lines->name, lines->line, text);
}

/* Moves the unread bytes to the front and reads behind them. */
static bool refill(struct record_lines *lines, struct error *err)
{
	size_t left = lines->end - lines->begin;
	memmove(lines->buffer, lines->buffer + lines->begin, left);
	lines->begin = 0;
	size_t room = sizeof lines->buffer - 1 - left; /* one for the NUL of a last line */
	size_t n = fread(lines->buffer + left, 1, room, lines->file);
	lines->end = left + n;
	lines->at_end = n < room;
	return !ferror(lines->file) ||
	       error_failed(err, "%s: it cannot be read; check the disk", lines->name);
}

static bool is_utf8(const char *text, size_t n)
{
	unsigned char any = 0;
	for (size_t i = 0; i < n; i++)
		any |= (unsigned char)text[i];
	if (any < 0x80)
		return true;
	for (size_t length; *text; text += length)
		if ((length = text_utf8_length(text)) == 0)
			return false;
	return true;
}

static bool check_line(struct record_lines *lines, char **text, size_t n, struct error *err)
{
	static const char utf8_mark[] = "\xEF\xBB\xBF";
	bool first = lines->line == 1;
	if (first && n >= 2 &&
	    (memcmp(*text, "\xFF\xFE", 2) == 0 || memcmp(*text, "\xFE\xFF", 2) == 0))
		return record_line_error(
		    lines, err, "the file is UTF-16; save it as CSV in UTF-8 and try again");
	if (memchr(*text, '\0', n))
		return record_line_error(
		    lines, err, "a NUL byte, so this is no text; export the record as CSV");
	if (!is_utf8(*text, n))
		return record_line_error(lines, err,
					 "not valid UTF-8; save the file as UTF-8 and try again");
	if (first && strncmp(*text, utf8_mark, strlen(utf8_mark)) == 0)
		*text += strlen(utf8_mark);
	return true;
}

bool record_next_line(struct record_lines *lines, char **text, struct error *err)
{
	*text = NULL;
	char *begin = lines->buffer + lines->begin;
	char *end = memchr(begin, '\n', lines->end - lines->begin);
	if (!end && !lines->at_end) {
		if (!refill(lines, err))
			return false;
		begin = lines->buffer;
		end = memchr(begin, '\n', lines->end);
	}
	if (!end && lines->begin == lines->end)
		return true;
	lines->line++;
	size_t n = end ? (size_t)(end - begin) : lines->end - lines->begin;
	if (n > RECORD_CSV_LINE_MAX)
		return record_line_error(lines, err,
					 "longer than %d bytes, so this is no record; export it "
					 "as CSV, one reading a line",
					 RECORD_CSV_LINE_MAX);
	lines->begin += n + (end != NULL);
	if (n > 0 && begin[n - 1] == '\r')
		n--;
	begin[n] = '\0';
	*text = begin;
	return check_line(lines, text, n, err);
}

char record_separator(const char *text)
{
	static const char separators[] = "\t;,";
	size_t count[sizeof separators] = {0};
	bool quoted = false;
	for (; *text; text++) {
		quoted ^= *text == '"';
		const char *found = quoted ? NULL : strchr(separators, *text);
		if (found)
			count[found - separators]++;
	}
	for (size_t i = 0; separators[i]; i++)
		if (count[i] > 0)
			return separators[i];
	return '\0';
}

/* Takes the quotes of a field away in place. Where it ends, or NULL: it does not. */
static char *unquote(char *text)
{
	char *to = text;
	for (char *from = text + 1; *from; from++) {
		if (*from == '"' && from[1] != '"') {
			*to = '\0';
			return from + 1;
		}
		from += *from == '"';
		*to++ = *from;
	}
	return NULL;
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\t';
}

/* Ends the field at its separator, blanks before it cut off. The separator, or the end. */
static char *end_field(char *field, char separator)
{
	char *end = strchr(field, separator);
	if (!end)
		end = field + strlen(field);
	return end;
}

static void trim(char *field, char *end)
{
	while (end > field && is_blank(end[-1]))
		end--;
	*end = '\0';
}

bool record_split(const struct record_lines *lines, char *text, char separator,
		  char *fields[static RECORD_CSV_COLUMNS_MAX], size_t *n, struct error *err)
{
	for (*n = 0;; text++) {
		if (*n == RECORD_CSV_COLUMNS_MAX)
			return record_line_error(lines, err,
						 "more than %d columns; export fewer of them",
						 RECORD_CSV_COLUMNS_MAX);
		while (*text != separator && is_blank(*text))
			text++;
		fields[(*n)++] = text;
		char *after = *text == '"' ? unquote(text) : text;
		if (!after)
			return record_line_error(
			    lines, err,
			    "a quote is opened and not closed; close it in the same line");
		char *end = end_field(after, separator);
		bool last = *end == '\0';
		if (after == text)
			trim(text, end);
		else if (strspn(after, " \t\r") < (size_t)(end - after))
			return record_line_error(lines, err,
						 "text after a closing quote; write \"\" for a "
						 "quote inside a field");
		if (last)
			return true;
		text = end;
	}
}
