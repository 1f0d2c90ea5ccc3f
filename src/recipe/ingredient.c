/* An ingredient line, whole. */
#include "jarwright/ingredient.h"

#include <string.h>
#include <strings.h>

#include "ingredient_internal.h"
#include "jarwright/text.h"
#include "jarwright/words.h"

const char *ingredient_sure_word(enum ingredient_sure sure)
{
	switch (sure) {
	case INGREDIENT_CERTAIN:
		return "certain";
	case INGREDIENT_LIKELY:
		return "likely";
	case INGREDIENT_UNSURE:
		break;
	}
	return "unsure";
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* "1,5": one and a half in half of Europe, two things elsewhere. */
static bool comma_in_number(const char *text)
{
	for (const char *at = strchr(text, ','); at; at = strchr(at + 1, ','))
		if (at > text && is_digit(at[-1]) && is_digit(at[1]))
			return true;
	return false;
}

/* "juice of 2 lemons": the bytes up to the fruit's number, and what is taken of it. */
static size_t part_of_fruit(const char *text, const char **part)
{
	static const struct {
		const char *words, *part;
	} parts[] = {
	    {"|juice of|juice from|the juice of|strained juice of|freshly squeezed juice of|"
	     "fresh juice of|juice and zest of|juice and rind of|",
	     " juice"},
	    {"|zest of|grated zest of|finely grated zest of|zest from|the zest of|rind of|"
	     "grated rind of|finely grated rind of|the rind of|zest and juice of|"
	     "grated zest and juice of|finely grated zest and juice of|grated rind and juice of|",
	     " zest"},
	};
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		size_t n = word_listed(text, parts[i].words);
		if (n > 0) {
			*part = parts[i].part;
			return n;
		}
	}
	return 0;
}

/* The fruit's name becomes its juice's: of "2 large lemons", "lemon juice". */
static bool fruit_to_part(struct ingredient_line *out, const char *part)
{
	char folded[WORDS_SIZE];
	if (!words_fold(out->ingredient, strlen(out->ingredient), folded))
		return false;
	memcpy(out->ingredient, folded, strlen(folded) + 1);
	strncat(out->ingredient, part, INGREDIENT_FIELD_SIZE - strlen(out->ingredient) - 1);
	out->unit = "fruit";
	return true;
}

static enum ingredient_sure how_sure(const struct line_reader *reader, bool exact)
{
	const struct ingredient_line *out = reader->out;
	if (!out->matched || !out->has_quantity || reader->doubtful || out->alternatives)
		return INGREDIENT_UNSURE;
	bool unstated = *out->unit && reader->class == UNIT_CONTAINER && !out->pack.present;
	bool by_eye = *out->unit && reader->class == UNIT_EYE;
	if (!exact || reader->hedged || unstated || by_eye || strcmp(out->unit, "fruit") == 0)
		return INGREDIENT_LIKELY;
	return INGREDIENT_CERTAIN;
}

static void match(struct line_reader *reader)
{
	struct ingredient_line *out = reader->out;
	bool exact = false;
	out->matched = ingredient_match(out->ingredient, &exact);
	/* Of two things named, neither is taken for the cook. */
	if (out->alternatives && !exact)
		out->matched = NULL;
	out->sure = how_sure(reader, exact);
}

static bool read_line(struct line_reader *reader)
{
	const char *part = NULL, *start = reader->at;
	struct ingredient_line *out = reader->out;
	size_t n = part_of_fruit(start, &part);
	reader->at += n;
	blanks_skip(&reader->at);
	if (head_read(reader) == READ_FAULT)
		return false;
	rest_file(reader);
	if (part)
		note_add(reader, start, strcspn(start, ",("));
	if (reader->overflow)
		return error_usage(reader->err, "it has too many parts; break it up");
	if (!*out->ingredient || (part && !fruit_to_part(out, part)))
		return error_usage(reader->err, "it names no ingredient; say what it is");
	match(reader);
	return true;
}

bool ingredient_line_parse(const char *line, size_t length, struct ingredient_line *out,
			   struct error *err)
{
	char text[INGREDIENT_LINE_MAX + 1], shown[TEXT_SHOWN_SIZE];
	if (!line_tidy(line, length, text, err))
		return false;
	if (!*text)
		return error_usage(err, "the line is empty; say how much of what");
	text_show(text, strlen(text), shown);
	if (comma_in_number(text))
		return error_usage(err,
				   "'%s' has a comma in a number, which may mark decimals or "
				   "thousands; write a point for decimals (1.5) and nothing for "
				   "thousands (1500)",
				   shown);
	*out = (struct ingredient_line){
	    .unit = "",
	    .size = "",
	    .quantity = {0, 1},
	    .quantity_max = {0, 1},
	    .plus = {.quantity = {0, 1}, .quantity_max = {0, 1}, .unit = ""},
	    .pack = {.quantity = {0, 1}, .quantity_max = {0, 1}, .unit = ""},
	    .alternative = {.quantity = {0, 1}, .quantity_max = {0, 1}, .unit = ""}};
	struct line_reader reader = {.at = text, .out = out, .err = err};
	return read_line(&reader) || error_context(err, "'%s'", shown);
}
