/*
 * What is due as an iCalendar file, RFC 5545. Lines end in CR LF and are folded at 75 octets
 * (3.1), text is escaped (3.3.11), each UID names the batch and what is due, so that a calendar
 * that reads the file again finds its entries again (3.8.4.7).
 */
#include <string.h>

#include "jarwright/digest.h"
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"

#define LINE_OCTETS 75

/* A content line, folded; a character is never cut in two. */
static void put_content(FILE *out, const char *name, const char *value)
{
	size_t at = strlen(name);
	fputs(name, out);
	while (*value) {
		size_t length = text_utf8_length(value);
		if (length == 0)
			length = 1;
		if (at + length > LINE_OCTETS) {
			fputs("\r\n ", out);
			at = 1;
		}
		fwrite(value, 1, length, out);
		at += length;
		value += length;
	}
	fputs("\r\n", out);
}

/* A property of text: backslash, semicolon and comma are escaped. */
static void put_text(FILE *out, const char *name, const char *text)
{
	char escaped[4096];
	size_t n = 0;
	for (; *text && n + 2 < sizeof escaped; text++) {
		if (strchr("\\;,", *text))
			escaped[n++] = '\\';
		escaped[n++] = *text;
	}
	escaped[n] = '\0';
	text_drop_partial(escaped);
	put_content(out, name, escaped);
}

/* In UTC: "20261125T143000Z". */
static void put_moment(FILE *out, const char *name, int64_t ms)
{
	char iso[INSTANT_SIZE], value[INSTANT_SIZE];
	size_t n = 0;
	const struct instant utc = {ms, 0};
	instant_iso(utc, iso);
	for (const char *c = iso; *c && *c != '.'; c++)
		if (*c != '-' && *c != ':')
			value[n++] = *c;
	value[n++] = 'Z';
	value[n] = '\0';
	put_content(out, name, value);
}

static void put_day(FILE *out, const char *name, struct date day)
{
	char value[DATE_SIZE];
	snprintf(value, sizeof value, "%04d%02d%02d", day.year, day.month, day.day);
	put_content(out, name, value);
}

/* As a due list has one entry for: a load, or a batch and a day. */
static void put_uid(FILE *out, const struct due *due)
{
	char hex[2 * 16 + 1], uid[128], day[DATE_SIZE];
	hex_text(due->gauge ? due->gauge->uuid : due->line->group->uuid, 16, hex);
	if (due->gauge)
		snprintf(uid, sizeof uid, "gauge-test-%s@jarwright.invalid", hex);
	else if (due->until_ms)
		snprintf(uid, sizeof uid, "%s-%s-%d@jarwright.invalid", due_kind_word(due->kind),
			 hex, due->line->group->load);
	else
		snprintf(uid, sizeof uid, "%s-%s-%s@jarwright.invalid", due_kind_word(due->kind),
			 hex, date_text(due->day, day));
	put_content(out, "UID:", uid);
}

static void put_source(FILE *out, const struct due *due)
{
	char words[WORDS_BUFFER];
	if (due->line && due->line->limit.from)
		put_text(out, "DESCRIPTION:",
			 citation_words(words, sizeof words, due->line->limit.from));
}

static void put_event(FILE *out, const struct due *due, struct instant now)
{
	char words[2048];
	put_content(out, "BEGIN:", "VEVENT");
	put_uid(out, due);
	put_moment(out, "DTSTAMP:", now.ms);
	if (due->until_ms) {
		/* A deadline alone is a moment, without an end. */
		put_moment(out, "DTSTART:", due->from_ms ? due->from_ms : due->until_ms);
		if (due->from_ms)
			put_moment(out, "DTEND:", due->until_ms);
	} else {
		put_day(out, "DTSTART;VALUE=DATE:", due->day);
	}
	put_text(out, "SUMMARY:", due_words(due, words, sizeof words));
	put_source(out, due);
	put_content(out, "TRANSP:", "TRANSPARENT");
	put_content(out, "END:", "VEVENT");
}

void due_calendar(FILE *out, const struct due_list *list, struct instant now)
{
	put_content(out, "BEGIN:", "VCALENDAR");
	put_content(out, "VERSION:", "2.0");
	put_content(out, "PRODID:", "-//jarwright//jarwright " JARWRIGHT_VERSION "//EN");
	for (size_t i = 0; i < list->items_n; i++)
		put_event(out, &list->items[i], now);
	put_content(out, "END:", "VCALENDAR");
}
