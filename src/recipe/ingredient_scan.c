/* Letters, words and numbers of an ingredient line. */
#include <stdint.h>
#include <string.h>
#include <strings.h>

#include "ingredient_internal.h"
#include "jarwright/text.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

/* Signs of print and their plain form; what stands for nothing becomes a blank. */
static const struct {
	const char *sign;
	const char *plain;
} signs[] = {
    {"\t", " "},
    {"\xC2\xA0", " "},
    {"\xE2\x80\x89", " "},
    {"\xE2\x80\xAF", " "},
    {"\xE2\x80\x8B", " "},
    {"\xE2\x80\x90", "-"},
    {"\xE2\x80\x91", "-"},
    {"\xE2\x80\x92", "-"},
    {"\xE2\x80\x93", "-"},
    {"\xE2\x80\x94", "-"},
    {"\xE2\x88\x92", "-"},
    {"\xE2\x81\x84", "/"},
    {"\xE2\x80\x99", "'"},
    {"×", "x"},
    {"\xE2\x80\xB3", "\""},
    {"\xE2\x80\x9D", "\""},
    {"•", "*"},
    {"·", "*"},
    {"▢", "*"},
    {"☐", "*"},
    {"□", "*"},
    {"◦", "*"},
    {"▪", "*"},
    {"\xEF\xBB\xBF", " "},
};

/* The plain form of the character of `used` bytes at `at`, or NULL: it is plain itself. */
static const char *plain_form(const char *at, size_t used)
{
	for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
		if (strlen(signs[i].sign) == used && memcmp(at, signs[i].sign, used) == 0)
			return signs[i].plain;
	return NULL;
}

static bool refuse_byte(const char *line, size_t length, size_t place, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(line, length, shown);
	if (line[place] == '\0')
		return error_usage(err, "'%s': byte %zu is NUL; save the list as plain text", shown,
				   place + 1);
	if ((unsigned char)line[place] < 0x80)
		return error_usage(err, "'%s': byte %zu is a control character; take it out", shown,
				   place + 1);
	return error_usage(err, "'%s': byte %zu is not UTF-8; save the list as UTF-8 text", shown,
			   place + 1);
}

/* Bytes of the character at line[place], or 0: it cannot stand in a line. */
static size_t character_length(const char *line, size_t length, size_t place)
{
	/* The line need not end in NUL, so a last character is looked at in a copy. */
	char copy[5] = "";
	memcpy(copy, line + place, length - place < 4 ? length - place : 4);
	size_t used = text_utf8_length(copy);
	bool control = ((unsigned char)*copy < 0x20 && *copy != '\t') || *copy == 0x7F ||
		       ((unsigned char)copy[0] == 0xC2 && (unsigned char)copy[1] < 0xA0);
	return control ? 0 : used;
}

/* Takes off "- ", "* ", "[ ] " before the line; "-1 cup" keeps its sign, to be refused. */
static const char *behind_bullet(const char *text)
{
	for (;;) {
		blanks_skip(&text);
		if (*text == '*' || ((*text == '-' || *text == '+') && text[1] == ' '))
			text++;
		else if (strncmp(text, "[ ]", 3) == 0 || strncasecmp(text, "[x]", 3) == 0)
			text += 3;
		else
			return text;
	}
}

bool line_tidy(const char *line, size_t length, char *text, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	size_t n = 0;
	if (length > INGREDIENT_LINE_MAX) {
		text_show(line, length, shown);
		return error_usage(err, "'%s' has %zu bytes, and a line at most %d; break it up",
				   shown, length, INGREDIENT_LINE_MAX);
	}
	for (size_t at = 0, used; at < length; at += used) {
		used = character_length(line, length, at);
		if (used == 0)
			return refuse_byte(line, length, at, err);
		const char *plain = plain_form(line + at, used);
		if (plain && *plain == ' ' && (n == 0 || text[n - 1] == ' '))
			continue;
		if (!plain && line[at] == ' ' && (n == 0 || text[n - 1] == ' '))
			continue;
		if (plain)
			text[n++] = *plain;
		else
			for (size_t i = 0; i < used; i++)
				text[n++] = line[at + i];
	}
	while (n > 0 && text[n - 1] == ' ')
		n--;
	text[n] = '\0';
	const char *start = behind_bullet(text);
	memmove(text, start, strlen(start) + 1);
	return true;
}

void blanks_skip(const char **at)
{
	while (**at == ' ')
		++*at;
}

size_t word_length(const char *at)
{
	size_t n = 0;
	while (is_letter(at[n]) || is_digit(at[n]) ||
	       (n > 0 && at[n] == '\'' && is_letter(at[n + 1])))
		n++;
	return n;
}

size_t word_listed(const char *at, const char *list)
{
	size_t longest = 0;
	for (const char *item = list; *item == '|' && item[1]; item += strcspn(item, "|")) {
		item++;
		size_t n = strcspn(item, "|");
		if (n > longest && strncasecmp(at, item, n) == 0 && !is_letter(at[n]) &&
		    !is_digit(at[n]))
			longest = n;
	}
	return longest;
}

/* --- Numbers --- */

static const char *const vulgar_signs[] = {"½", "¼", "¾", "⅓", "⅔", "⅛", "⅜", "⅝", "⅞",
					   "⅕", "⅖", "⅗", "⅘", "⅙", "⅚", "⅐", "⅑", "⅒"};

static size_t vulgar_length(const char *at)
{
	for (size_t i = 0; i < sizeof vulgar_signs / sizeof *vulgar_signs; i++)
		if (strncmp(at, vulgar_signs[i], strlen(vulgar_signs[i])) == 0)
			return strlen(vulgar_signs[i]);
	return 0;
}

static size_t digits_length(const char *at)
{
	size_t n = 0;
	while (is_digit(at[n]))
		n++;
	return n;
}

/* Bytes of "½" or "1/2" at `at`. */
static size_t fraction_length(const char *at)
{
	size_t n = vulgar_length(at);
	if (n > 0)
		return n;
	n = digits_length(at);
	if (n == 0 || at[n] != '/')
		return 0;
	size_t under = digits_length(at + n + 1);
	return under > 0 ? n + 1 + under : 0;
}

/* Bytes of a number in one piece: "12", "0.25", ".5", "1/2", "½". */
static size_t plain_length(const char *at)
{
	size_t n = fraction_length(at);
	if (n > 0)
		return n;
	n = digits_length(at);
	size_t decimals = at[n] == '.' ? digits_length(at + n + 1) : 0;
	return decimals > 0 ? n + 1 + decimals : n;
}

static bool piece_value(const char *at, size_t length, struct rational *out, struct error *err)
{
	char piece[INGREDIENT_LINE_MAX + 1];
	memcpy(piece, at, length);
	piece[length] = '\0';
	return rational_parse(piece, out, err);
}

/* Where the fraction of a mixed number begins: "1½", "1 1/2", "1-1/2", "1 and 1/2"; or NULL. */
static const char *mixed_fraction(const char *at)
{
	static const char *const joints[] = {"", " ", "-", " and ", " & "};
	for (size_t i = 0; i < sizeof joints / sizeof *joints; i++) {
		size_t n = strlen(joints[i]);
		if (strncasecmp(at, joints[i], n) != 0 || fraction_length(at + n) == 0)
			continue;
		return *joints[i] || vulgar_length(at) ? at + n : NULL;
	}
	return NULL;
}

static enum reading digits_read(const char **at, struct rational *out, struct error *err)
{
	size_t n = plain_length(*at);
	if (n == 0)
		return READ_NONE;
	if (!piece_value(*at, n, out, err))
		return READ_FAULT;
	bool whole = digits_length(*at) == n;
	*at += n;
	const char *fraction = whole ? mixed_fraction(*at) : NULL;
	if (!fraction)
		return READ_DONE;
	struct rational part;
	n = fraction_length(fraction);
	if (!piece_value(fraction, n, &part, err))
		return READ_FAULT;
	*at = fraction + n;
	if (!rational_add(*out, part, out)) {
		error_usage(err, "a number has more digits than fit; write it shorter");
		return READ_FAULT;
	}
	return READ_DONE;
}

static const struct {
	const char *words;
	struct rational value;
} number_words[] = {
    {"|one|", {1, 1}},
    {"|two|", {2, 1}},
    {"|three|", {3, 1}},
    {"|four|", {4, 1}},
    {"|five|", {5, 1}},
    {"|six|", {6, 1}},
    {"|seven|", {7, 1}},
    {"|eight|", {8, 1}},
    {"|nine|", {9, 1}},
    {"|ten|", {10, 1}},
    {"|eleven|", {11, 1}},
    {"|twelve|", {12, 1}},
    {"|a couple of|a couple|", {2, 1}},
    {"|twenty|", {20, 1}},
    {"|a half|one half|one-half|half an|half a|half of a|half|", {1, 2}},
    {"|a quarter of a|a quarter|one quarter|one-quarter|quarter of a|quarter|", {1, 4}},
    {"|three quarters of a|three-quarters of a|three quarters|three-quarters|three "
     "fourths|three-fourths|",
     {3, 4}},
    {"|a third of a|a third|one third|one-third|", {1, 3}},
    {"|two thirds of a|two-thirds of a|two thirds|two-thirds|", {2, 3}},
    {"|a|an|", {1, 1}},
};

/* The longest of the words at `at`: "one half" before "one". */
static size_t number_word(const char *at, struct rational *out)
{
	size_t longest = 0;
	if (word_listed(at, "|a few|a little|a bit|a lot|"))
		return 0;
	for (size_t i = 0; i < sizeof number_words / sizeof *number_words; i++) {
		size_t n = word_listed(at, number_words[i].words);
		if (n > longest) {
			longest = n;
			*out = number_words[i].value;
		}
	}
	return longest;
}

bool number_tail(const char **at, struct rational *value)
{
	const char *next = *at;
	struct rational part;
	blanks_skip(&next);
	size_t joint = word_listed(next, "|and|");
	if (joint) {
		const char *fraction = next + joint;
		blanks_skip(&fraction);
		size_t n = word_listed(fraction, "|a half|one half|half a|half|a quarter|a third|");
		if (n && number_word(fraction, &part)) {
			*at = fraction + n;
			return rational_add(*value, part, value);
		}
	}
	size_t n = word_listed(next, "|dozen|doz|");
	if (n) {
		*at = next + n;
		if (**at == '.')
			++*at;
		return rational_mul(*value, (struct rational){12, 1}, value);
	}
	return true;
}

enum reading number_read(const char **at, struct rational *out, struct error *err)
{
	const char *from = *at;
	enum reading reading = digits_read(at, out, err);
	if (reading == READ_NONE) {
		size_t n = number_word(*at, out);
		*at += n;
		reading = n ? READ_DONE : READ_NONE;
		/* "a" belongs to a thing that follows. */
		if (n && **at != ' ' && **at != '-' && **at != '(')
			reading = READ_NONE;
	}
	if (reading == READ_DONE && !number_tail(at, out)) {
		error_usage(err, "a number has more digits than fit; write it shorter");
		return READ_FAULT;
	}
	if (reading == READ_DONE && (**at == '%' || strncmp(*at, "°", 2) == 0))
		reading = READ_NONE;
	if (reading == READ_NONE)
		*at = from;
	return reading;
}
