#include "jarwright/plain_text.h"

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/text.h"

/* C1, U+0080 to U+009F, is C2 80 to C2 9F in UTF-8. */
static bool is_control(const unsigned char *at)
{
	return at[0] < 0x20 || at[0] == 0x7f || (at[0] == 0xc2 && at[1] < 0xa0);
}

enum plain_text plain_text_check(const char *text)
{
	while (*text) {
		size_t length = text_utf8_length(text);
		if (length == 0)
			return PLAIN_TEXT_NOT_UTF8;
		if (is_control((const unsigned char *)text))
			return PLAIN_TEXT_CONTROL;
		text += length;
	}
	return PLAIN_TEXT;
}
