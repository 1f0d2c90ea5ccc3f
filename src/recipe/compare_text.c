/* Words of a text, and of lists written "|one|two|". */
#include <string.h>

#include "compare_internal.h"

bool word_in_list(const char *list, const char *word, size_t length)
{
	for (const char *at = list; (at = strstr(at, word)) != NULL; at++)
		if (at[-1] == '|' && at[length] == '|')
			return true;
	return false;
}

/* What words are made of; bytes above ASCII are parts of letters. */
static bool is_of_word(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
	       c == '\'' || (c & 0x80);
}

bool text_next_word(const char **text, char folded[WORDS_SIZE])
{
	for (;;) {
		size_t n = 0;
		while (**text && !is_of_word(**text))
			++*text;
		if (!**text)
			return false;
		while (is_of_word((*text)[n]))
			n++;
		const char *word = *text;
		*text += n;
		if (words_fold(word, n, folded))
			return true;
	}
}

bool text_has_word(const char *text, const char *list)
{
	char word[WORDS_SIZE];
	while (text_next_word(&text, word))
		if (word_in_list(list, word, strlen(word)))
			return true;
	return false;
}
