/* Which way the amount of a line may be rounded. */
#include <string.h>

#include "compare_internal.h"

enum practical_side recipe_line_side(const struct ingredient_line *line)
{
	static const unsigned sour = IS_VINEGAR | IS_CITRUS_JUICE | IS_CITRIC;
	static const unsigned low = IS_PEPPER | IS_WATER | IS_STARCH | IS_FAT | IS_DAIRY |
				    IS_GRAIN | IS_MEAT | IS_VEGETABLE;
	const char *name = line->ingredient;
	struct item_words words;
	item_words_read(name, line->preparation, line->note, &words);
	bool juice = text_has_word(name, "|juice|") || strcmp(line->unit, "fruit") == 0;
	bool is_sour = (words.is & sour) || text_has_word(name, "|vinegar|") ||
		       (juice && text_has_word(name, "|lemon|lime|"));
	bool is_low = (words.is & low) != 0;
	if (is_sour == is_low)
		return PRACTICAL_NEAREST;
	return is_sour ? PRACTICAL_AT_LEAST : PRACTICAL_AT_MOST;
}
