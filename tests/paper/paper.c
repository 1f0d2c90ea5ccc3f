#include "paper.h"

#include <ctype.h>
#include <string.h>

#include "jarwright/text.h"

// NOLINTNEXTLINE(misc-misleading-bidirectional): it must not turn the page
const char hostile[] = "</title></style><script>alert('x')</script>\" onload=\"y\" &amp; <b>"
		       "\x1b[2J\a\r\n\t\xE2\x80\xAE\xE2\x81\xA6\xFF\xC0\x80\xEF\xBF\xBE ]]><!-- "
		       "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D Donaudampfschifffahrtsgesellschaft";

void collect(struct collector *c)
{
	c->out = open_memstream(&c->text, &c->size);
	ck_assert_ptr_nonnull(c->out);
}

char *collected(struct collector *c)
{
	ck_assert_int_eq(ferror(c->out), 0);
	ck_assert_int_eq(fclose(c->out), 0);
	return c->text;
}

void assert_holds(const char *text, const char *part)
{
	ck_assert_msg(strstr(text, part) != NULL, "no '%s'", part);
}

void assert_lacks(const char *text, const char *part)
{
	ck_assert_msg(strstr(text, part) == NULL, "'%s' is there", part);
}

int count_of(const char *text, const char *part)
{
	int n = 0;
	while ((text = strstr(text, part)) != NULL) {
		n++;
		text += strlen(part);
	}
	return n;
}

#define DEPTH_MAX 32
#define NAME_MAX  16

/* The name behind '<' or '</'; returns its length. */
static size_t tag_name(const char *at, char name[static NAME_MAX])
{
	size_t n = 0;
	while (isalnum((unsigned char)at[n]) && n + 1 < NAME_MAX) {
		name[n] = at[n];
		n++;
	}
	name[n] = '\0';
	return n;
}

static bool is_void(const char *name, const char *end)
{
	return strcmp(name, "meta") == 0 || end[-1] == '/';
}

static void assert_balanced(const char *html)
{
	char open[DEPTH_MAX][NAME_MAX], name[NAME_MAX];
	size_t depth = 0;
	for (const char *at = html; (at = strchr(at, '<')) != NULL; at++) {
		const char *end = strchr(at, '>');
		if (!end)
			ck_abort_msg("a tag is open at the end");
		if (at[1] == '!')
			continue;
		if (at[1] != '/') {
			if (tag_name(at + 1, name) == 0 || depth == DEPTH_MAX)
				ck_abort_msg("no tag, or too deep, at %.20s", at);
			if (is_void(name, end))
				continue;
			memcpy(open[depth++], name, NAME_MAX);
			continue;
		}
		tag_name(at + 2, name);
		if (depth == 0 || strcmp(open[--depth], name) != 0)
			ck_abort_msg("</%s> closes what is not open", name);
	}
	ck_assert_uint_eq(depth, 0);
}

void assert_page(const char *html)
{
	static const char *const none[] = {"<script", "<link",  "<img", "<iframe",
					   " src=",   " href=", "url(", "@import"};
	for (const char *at = html; *at;) {
		size_t length = text_utf8_length(at);
		if (length == 0 || (*at != '\n' && text_is_obeyed(at, length)))
			ck_abort_msg("byte %02x", (unsigned char)*at);
		at += length;
	}
	assert_balanced(html);
	for (size_t i = 0; i < sizeof none / sizeof *none; i++)
		assert_lacks(html, none[i]);
	ck_assert_int_eq(strncmp(html, "<!DOCTYPE html>\n<html lang=\"en\">", 31), 0);
	assert_holds(html, "<meta charset=\"utf-8\">");
	ck_assert_int_eq(count_of(html, "<title>"), 1);
	ck_assert_int_eq(count_of(html, "<h1"), 1);
	ck_assert_int_eq(count_of(html, "<table"), count_of(html, "<caption>"));
	ck_assert_int_eq(count_of(html, "<th"), count_of(html, "<thead>") +
						    count_of(html, "scope=\"col\"") +
						    count_of(html, "scope=\"row\""));
}
