/* What a line of a recipe is: blank, comment, heading, or ingredient. */
#include <string.h>

#include "ingredient_internal.h"

static const char method_words[] = "|method|directions|direction|instructions|procedure|steps|"
				   "preparation|to make|how to make|";

/* "½ cup corn:" is no heading: an ingredient must not be passed over for its last byte. */
static bool is_counted(const char *line, size_t length)
{
	struct ingredient_line read;
	struct error err = {.kind = ERROR_NONE};
	return (*line >= '0' && *line <= '9') ||
	       (ingredient_line_parse(line, length, &read, &err) && read.has_quantity);
}

enum ingredient_line_kind ingredient_line_kind(const char *line, size_t length)
{
	while (length > 0 && strchr(" \t\r\n", line[length - 1]) && line[length - 1])
		length--;
	while (length > 0 && (*line == ' ' || *line == '\t')) {
		line++;
		length--;
	}
	if (length == 0)
		return INGREDIENT_LINE_BLANK;
	if (*line == '#')
		return INGREDIENT_LINE_COMMENT;
	bool colon = line[length - 1] == ':';
	char words[32] = "";
	size_t named = length - (colon ? 1 : 0);
	if (named < sizeof words)
		memcpy(words, line, named);
	size_t n = named < sizeof words ? word_listed(words, method_words) : 0;
	if (n > 0 && n == named)
		return INGREDIENT_LINE_METHOD;
	n = named < sizeof words ? word_listed(words, "|ingredients|ingredient|you will need|") : 0;
	return (colon && !is_counted(line, length)) || (n > 0 && n == named)
		   ? INGREDIENT_LINE_HEADING
		   : INGREDIENT_LINE_INGREDIENT;
}
