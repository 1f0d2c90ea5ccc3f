#include <stdlib.h>
#include <string.h>

#include "jarwright/recipe.h"
#include "jarwright/text.h"

/* Lines are made room for in steps of this many. */
#define LINES_STEP 32

/* The text and where the reading of it stands; text[length] is NUL. */
struct reader {
	const char *text;
	size_t length, at;
	int number;       /* of the line last taken, from 1 */
	const char *line; /* without blanks at its ends */
	size_t line_length;
};

/* A heading behind ingredients, until one follows; line is NULL: there is none. */
struct heading {
	const char *line;
	size_t length;
	int number;
};

static bool is_blank(char c)
{
	return c == ' ' || c == '\t' || c == '\r';
}

/* The next line, however it ends (LF or CR LF). False: there is none. */
static bool next_line(struct reader *reader)
{
	if (reader->at >= reader->length)
		return false;
	const char *start = reader->text + reader->at;
	const char *end = memchr(start, '\n', reader->length - reader->at);
	size_t length = end ? (size_t)(end - start) : reader->length - reader->at;
	reader->at += length + (end != NULL);
	reader->number++;
	while (length > 0 && is_blank(start[length - 1]))
		length--;
	while (length > 0 && is_blank(*start)) {
		start++;
		length--;
	}
	reader->line = start;
	reader->line_length = length;
	return true;
}

/* Whatever is kept must be fit to be shown: comments and the method too. */
static bool line_is_plain(const struct reader *reader, struct error *err)
{
	const char *at = reader->line, *end = at + reader->line_length;
	if (memchr(at, '\0', reader->line_length))
		return error_usage(err,
				   "line %d: a NUL byte is in it; this is no text file, save it as "
				   "plain text",
				   reader->number);
	while (at < end) {
		size_t n = text_utf8_length(at);
		if (n == 0)
			return error_usage(
			    err, "line %d: it is not valid UTF-8; save the file as UTF-8 text",
			    reader->number);
		if (*at != '\t' && text_is_obeyed(at, n))
			return error_usage(
			    err, "line %d: a control character is in it; type the line anew",
			    reader->number);
		at += n;
	}
	return true;
}

static bool no_memory(struct error *err)
{
	return error_failed(err, "recipe: out of memory; close other programs and try again");
}

static bool room_for_line(struct recipe *recipe, int number, struct error *err)
{
	if (recipe->lines_n == RECIPE_LINES_MAX)
		return error_usage(err,
				   "line %d: more than %d ingredients; a recipe has fewer, check "
				   "that this is one",
				   number, RECIPE_LINES_MAX);
	if (recipe->lines_n % LINES_STEP != 0)
		return true;
	struct recipe_line *more =
	    realloc(recipe->lines, (recipe->lines_n + LINES_STEP) * sizeof *more);
	if (!more)
		return no_memory(err);
	recipe->lines = more;
	return true;
}

static bool add_ingredient(struct recipe *recipe, const struct reader *reader, struct error *err)
{
	if (!room_for_line(recipe, reader->number, err))
		return false;
	struct recipe_line *line = &recipe->lines[recipe->lines_n];
	if (!ingredient_line_parse(reader->line, reader->line_length, &line->read, err))
		return error_context(err, "line %d", reader->number);
	line->number = reader->number;
	memcpy(line->text, reader->line, reader->line_length);
	line->text[reader->line_length] = '\0';
	recipe->lines_n++;
	return true;
}

/* All that is left, once each line of it is known to be plain. */
static bool take_method(struct recipe *recipe, struct reader *reader, struct error *err)
{
	size_t from = reader->at, to = reader->length;
	while (next_line(reader))
		if (!line_is_plain(reader, err))
			return false;
	while (to > from && (is_blank(reader->text[to - 1]) || reader->text[to - 1] == '\n'))
		to--;
	recipe->method = strndup(reader->text + from, to - from);
	return recipe->method || no_memory(err);
}

/*
 * "Corn:" with nothing under it heads nothing: it is an ingredient, and must not be passed over
 * for its last byte. A title above all ingredients is none.
 */
static bool settle_heading(struct recipe *recipe, struct heading *heading, struct error *err)
{
	const struct reader at = {
	    .line = heading->line, .line_length = heading->length, .number = heading->number};
	heading->line = NULL;
	return !at.line || recipe->lines_n == 0 || add_ingredient(recipe, &at, err);
}

static bool take_line(struct recipe *recipe, const struct reader *reader,
		      enum ingredient_line_kind kind, struct heading *heading, struct error *err)
{
	switch (kind) {
	case INGREDIENT_LINE_HEADING:
		if (!settle_heading(recipe, heading, err))
			return false;
		*heading = (struct heading){reader->line, reader->line_length, reader->number};
		return true;
	case INGREDIENT_LINE_INGREDIENT:
		heading->line = NULL;
		return add_ingredient(recipe, reader, err);
	default:
		return true;
	}
}

static bool read_lines(struct recipe *recipe, struct reader *reader, struct error *err)
{
	struct heading heading = {.line = NULL};
	while (next_line(reader)) {
		if (!line_is_plain(reader, err))
			return false;
		const enum ingredient_line_kind kind =
		    ingredient_line_kind(reader->line, reader->line_length);
		if (kind == INGREDIENT_LINE_METHOD)
			return settle_heading(recipe, &heading, err) &&
			       take_method(recipe, reader, err);
		if (!take_line(recipe, reader, kind, &heading, err))
			return false;
	}
	if (!settle_heading(recipe, &heading, err))
		return false;
	recipe->method = strdup("");
	return recipe->method || no_memory(err);
}

static bool has_amounts(const struct recipe *recipe, int lines, struct error *err)
{
	for (size_t i = 0; i < recipe->lines_n; i++)
		if (recipe->lines[i].read.has_quantity)
			return true;
	return error_usage(err,
			   "lines 1 to %d: no ingredient has an amount; write one ingredient a "
			   "line, such as '2 cups sugar'",
			   lines);
}

static bool read_text(struct recipe *recipe, const char *text, size_t length, struct error *err)
{
	static const char byte_order_mark[] = "\xef\xbb\xbf";
	struct reader reader = {.text = text, .length = length};
	if (strncmp(text, byte_order_mark, 3) == 0)
		reader.at = 3;
	return read_lines(recipe, &reader, err) && has_amounts(recipe, reader.number, err);
}

static bool head_is_right(const char *name, enum measuring_system system, size_t length,
			  struct error *err)
{
	if (name[0] == '\0' || plain_text_check(name) != PLAIN_TEXT)
		return error_usage(err, "its name is empty or no plain text; type a name");
	if (strlen(name) >= RECIPE_NAME_SIZE)
		return error_usage(err, "its name is longer than %d bytes; type a shorter one",
				   RECIPE_NAME_SIZE - 1);
	if (system == SYSTEM_UNSTATED)
		return error_usage(err,
				   "nobody said whose cups, pints and spoons these are; say us, "
				   "imperial, canada, australia, new-zealand or metric");
	if (length == 0)
		return error_usage(err, "there is nothing in it; write one ingredient a line");
	if (length > RECIPE_BYTES_MAX)
		return error_usage(err,
				   "it is longer than %d bytes; keep only the ingredients and the "
				   "method",
				   RECIPE_BYTES_MAX);
	return true;
}

static bool read_recipe(const char *name, enum measuring_system system, const char *text,
			size_t length, struct recipe *out, struct error *err)
{
	if (!head_is_right(name, system, length, err))
		return false;
	char *copy = malloc(length + 1); /* text_utf8_length() needs the NUL */
	if (!copy)
		return no_memory(err);
	memcpy(copy, text, length);
	copy[length] = '\0';
	memcpy(out->name, name, strlen(name) + 1);
	out->system = system;
	bool ok = read_text(out, copy, length, err);
	free(copy);
	return ok;
}

bool recipe_read(const char *name, enum measuring_system system, const char *text, size_t length,
		 struct recipe *out, struct error *err)
{
	*out = (struct recipe){0};
	if (read_recipe(name, system, text, length, out, err))
		return true;
	recipe_release(out);
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	return error_context(err, "recipe '%s'", shown);
}
