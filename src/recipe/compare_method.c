/*
 * What a method in the cook's own words may add to the lines above it. It is read for words
 * only, and what is found is asked about; a method that says nothing of the kind proves nothing.
 */
#include <string.h>

#include "compare_internal.h"

/* One line of a method: does it begin as an ingredient does? */
static bool begins_with_amount(const char *line, size_t length)
{
	struct ingredient_line read;
	struct error err = {.kind = ERROR_NONE};
	enum kitchen_unit unit;
	enum measuring_system said;
	return length > 0 && length <= INGREDIENT_LINE_MAX &&
	       ingredient_line_parse(line, length, &read, &err) && read.has_quantity &&
	       kitchen_unit_find(read.unit, &unit, &said);
}

static bool has_line_of_amount(const char *method)
{
	while (*method) {
		size_t n = strcspn(method, "\r\n");
		if (begins_with_amount(method, n))
			return true;
		method += n;
		method += strspn(method, "\r\n");
	}
	return false;
}

static bool is_number(const char *word)
{
	static const char words[] = "|a|an|one|two|three|four|five|six|seven|eight|nine|ten|half|"
				    "quarter|third|another|few|some|more|";
	return (*word >= '0' && *word <= '9') || word_in_list(words, word, strlen(word));
}

/* "1 cup", or "250ml" in one word: *unit is where the unit is. */
static bool is_unit(const char *word)
{
	enum kitchen_unit unit;
	enum measuring_system said;
	return *word && kitchen_unit_find(word + strspn(word, "0123456789"), &unit, &said);
}

/* "Add 2 cups of water": an amount, and of no vessel, pressure or time. */
static bool has_amount_of(const char *method)
{
	static const char others[] =
	    "|jar|pot|pan|saucepan|stockpot|kettle|canner|cooker|bowl|crock|jug|container|bottle|"
	    "measure|measuring|pressure|psi|psig|head|headspace|size|sized|mark|capacity|batch|for|"
	    "at|in|on|and|or|per|if|until|when|is|are|remain|to|";
	char word[WORDS_SIZE];
	bool number = false, unit = false;
	while (text_next_word(&method, word)) {
		const size_t n = strlen(word);
		if (unit && word_in_list("|of|the|cold|hot|warm|boiling|more|", word, n))
			continue;
		if (unit && !is_number(word) && !is_unit(word) && !word_in_list(others, word, n))
			return true;
		unit = (number && is_unit(word)) ||
		       (*word >= '1' && *word <= '9' && word[strspn(word, "0123456789")] &&
			is_unit(word));
		number = is_number(word);
	}
	return false;
}

/* Is the folded word on one of the lines, under this name or another country's? */
static bool is_on_a_line(const struct recipe *recipe, const char *word)
{
	char other[WORDS_SIZE];
	for (size_t i = 0; i < recipe->lines_n; i++)
		for (const char *at = recipe->lines[i].text; text_next_word(&at, other);)
			if (strcmp(word_at_home(other), word_at_home(word)) == 0)
				return true;
	return false;
}

static bool adds_food(const struct recipe *recipe)
{
	/* "A kettle with a fat spout", "the fish slice", "an egg timer" are asked about too. */
	const char *at = recipe->method;
	char word[WORDS_SIZE];
	while (text_next_word(&at, word))
		if (word_is_food(word) && !is_on_a_line(recipe, word))
			return true;
	return false;
}

/* "Drain off the vinegar": what keeps the food does not go into the jar. */
#define POUR_WORDS 4
static bool pours_acid_off(const char *method)
{
	char word[WORDS_SIZE];
	int left = 0;
	while (text_next_word(&method, word)) {
		if (left > 0 && word_in_list("|vinegar|juice|lemon|lime|acid|", word, strlen(word)))
			return true;
		if (word_in_list("|drain|discard|pour|tip|rinse|strain|leave|without|less|", word,
				 strlen(word)))
			left = POUR_WORDS;
		else
			left--;
	}
	return false;
}

unsigned method_read(const struct recipe *recipe)
{
	const char *method = recipe->method;
	unsigned in = 0;
	if (!method || !*method)
		return 0;
	if (text_has_word(method,
			  "|puree|pureed|liquidise|liquidised|liquidize|liquidized|liquefy|"
			  "liquefied|blend|blended|blender|blitz|blitzed|mash|mashed|whizz|whizzed|"
			  "whiz|processor|mill|mouli|sieve|sieved|pulverise|pulverize|"))
		in |= METHOD_PUREES;
	if (text_has_word(method,
			  "|thicken|thickened|thickener|cornflour|cornstarch|flour|starch|"))
		in |= METHOD_THICKENS;
	if (text_has_word(method, "|dilute|diluted|omit|omitted|replace|replaced|substitute|"
				  "substituted|swap|instead|") ||
	    pours_acid_off(method))
		in |= METHOD_CHANGES;
	if (has_line_of_amount(method) || has_amount_of(method))
		in |= METHOD_HAS_AMOUNTS;
	if (adds_food(recipe))
		in |= METHOD_ADDS;
	return in;
}
