#include "jarwright/words.h"

#include <string.h>

/* Accented letters that turn up in names of foods, in both cases. */
struct accent {
	const char *bytes;
	char plain;
};
static const struct accent accents[] = {
    {"à", 'a'}, {"á", 'a'}, {"â", 'a'}, {"ã", 'a'}, {"ä", 'a'}, {"å", 'a'}, {"ā", 'a'}, {"ç", 'c'},
    {"è", 'e'}, {"é", 'e'}, {"ê", 'e'}, {"ë", 'e'}, {"ē", 'e'}, {"ì", 'i'}, {"í", 'i'}, {"î", 'i'},
    {"ï", 'i'}, {"ī", 'i'}, {"ñ", 'n'}, {"ò", 'o'}, {"ó", 'o'}, {"ô", 'o'}, {"õ", 'o'}, {"ö", 'o'},
    {"ø", 'o'}, {"ō", 'o'}, {"ù", 'u'}, {"ú", 'u'}, {"û", 'u'}, {"ü", 'u'}, {"ū", 'u'}, {"À", 'a'},
    {"Á", 'a'}, {"Â", 'a'}, {"Ä", 'a'}, {"Å", 'a'}, {"Ç", 'c'}, {"È", 'e'}, {"É", 'e'}, {"Ê", 'e'},
    {"Ñ", 'n'}, {"Ó", 'o'}, {"Ô", 'o'}, {"Ö", 'o'}, {"Ø", 'o'}, {"Ú", 'u'}, {"Ü", 'u'}, {"Ū", 'u'},
};

static bool is_word_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (unsigned char)c >= 0x80;
}

static char lower(char c)
{
	if (c >= 'A' && c <= 'Z')
		return (char)(c - 'A' + 'a');
	return c;
}

/* How many bytes of apostrophe stand here: the straight one or the typographic one. */
static size_t apostrophe(const char *text, size_t left)
{
	if (*text == '\'')
		return 1;
	return left >= 3 && memcmp(text, "\xE2\x80\x99", 3) == 0 ? 3 : 0;
}

/* Reads one letter, *used bytes of text. Anything that is no letter comes back a blank. */
static char plain_letter(const char *text, size_t left, size_t *used)
{
	*used = 1;
	if ((unsigned char)*text < 0x80) {
		char c = lower(*text);
		if (is_word_letter(c))
			return c;
		return ' ';
	}
	for (size_t i = 0; i < sizeof accents / sizeof *accents; i++) {
		size_t n = strlen(accents[i].bytes);
		if (n <= left && memcmp(text, accents[i].bytes, n) == 0) {
			*used = n;
			return accents[i].plain;
		}
	}
	return *text;
}

static bool ends_with(const char *word, size_t length, const char *end)
{
	size_t n = strlen(end);
	return length > n && memcmp(word + length - n, end, n) == 0;
}

/* The length of the word in the singular; may change its last letter (berries: berry). */
static size_t singular(char *word, size_t length)
{
	if (length <= 3 || word[length - 1] != 's')
		return length;
	if (length > 4 && ends_with(word, length, "ies")) {
		word[length - 3] = 'y';
		return length - 2;
	}
	if (length > 4 && (ends_with(word, length, "oes") || ends_with(word, length, "ches") ||
			   ends_with(word, length, "shes") || ends_with(word, length, "sses") ||
			   ends_with(word, length, "xes")))
		return length - 2;
	return ends_with(word, length, "ss") ? length : length - 1;
}

bool words_fold(const char *text, size_t length, char folded[WORDS_SIZE])
{
	size_t n = 0, word = 0; /* bytes written; where the word being written starts */
	for (size_t at = 0, used; at <= length; at += used) {
		char c = ' ';
		used = 1;
		if (at < length) {
			size_t mark = apostrophe(text + at, length - at);
			if (mark) {
				used = mark;
				continue;
			}
			c = plain_letter(text + at, length - at, &used);
		}
		if (n + 5 >= WORDS_SIZE)
			return false;
		if (c != ' ') {
			folded[n++] = c;
		} else if (n > word) {
			n = word + singular(folded + word, n - word);
			folded[n++] = ' ';
			word = n;
		}
		if (at < length && text[at] == '&') {
			memcpy(folded + n, "and ", 4);
			n += 4;
			word = n;
		}
	}
	if (n > 0)
		n--; /* the blank behind the last word */
	folded[n] = '\0';
	return n > 0;
}

bool words_fold_to(const char *text, size_t length, const char *folded)
{
	if (length == 0)
		return false;
	char first = lower(*text);
	bool plain = (first >= 'a' && first <= 'z') || (first >= '0' && first <= '9');
	if (plain && first != *folded)
		return false;
	char mine[WORDS_SIZE];
	return words_fold(text, length, mine) && strcmp(mine, folded) == 0;
}

bool words_same(const char *a, const char *b)
{
	char folded[WORDS_SIZE];
	return words_fold(b, strlen(b), folded) && words_fold_to(a, strlen(a), folded);
}

bool words_have(const char *text, const char *word, size_t length)
{
	while (*text) {
		size_t n = strcspn(text, " ");
		if (n == length && memcmp(text, word, n) == 0)
			return true;
		text += n + (text[n] == ' ');
	}
	return false;
}

bool words_may_have(const char *text, const char *word)
{
	char before = ' ';
	for (; *text; before = *text++) {
		char c = *text;
		if ((unsigned char)c >= 0x80 || c == '\'' || c == '&')
			return true;
		if (lower(c) != word[0] || is_word_letter(lower(before)))
			continue;
		char next = lower(text[1]);
		if (next == word[1] || !is_word_letter(next) || !word[1] || word[1] == ' ')
			return true;
	}
	return false;
}

bool words_all_in(const char *text, const char *words)
{
	while (*words) {
		size_t n = strcspn(words, " ");
		if (!words_have(text, words, n))
			return false;
		words += n + (words[n] == ' ');
	}
	return true;
}

bool words_next(const char **list, const char **item, size_t *length)
{
	while (**list == '|')
		(*list)++;
	*item = *list;
	*length = strcspn(*list, "|");
	*list += *length;
	return *length > 0;
}

bool words_listed(const char *list, const char *folded)
{
	const char *item;
	size_t length;
	while (words_next(&list, &item, &length))
		if (words_fold_to(item, length, folded))
			return true;
	return false;
}
