/* recipe parse: ingredient lines from standard input, one JSON object a line. */
#include <jansson.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"
#include "jarwright/ingredient.h"
#include "jarwright/render.h"
#include "recipe.h"

#define LINES_MAX 10000

struct input {
	FILE *from;
	size_t line;                    /* number of the line read, from 1 */
	char text[INGREDIENT_LINE_MAX]; /* need not end in NUL */
	size_t length;
};

/* Reads the next line. False: there is none, or it is not fit to read on: then *err is filled. */
static bool next_line(struct input *input, struct error *err)
{
	int c = getc(input->from);
	if (c == EOF) {
		if (ferror(input->from))
			error_failed(err, "recipe parse: cannot read standard input; try again");
		return false;
	}
	if (++input->line > LINES_MAX)
		return error_usage(err,
				   "recipe parse: line %zu: there are more than %d lines; "
				   "give them in parts",
				   input->line, LINES_MAX);
	for (input->length = 0; c != EOF && c != '\n'; c = getc(input->from)) {
		if (input->length == sizeof input->text)
			return error_usage(err,
					   "recipe parse: line %zu: it has more than %d bytes; "
					   "break it up",
					   input->line, INGREDIENT_LINE_MAX);
		input->text[input->length++] = (char)c;
	}
	if (input->length > 0 && input->text[input->length - 1] == '\r')
		input->length--;
	return true;
}

/* An exact number: "2", "3/2"; null where the line has none. */
static json_t *number_json(bool present, struct rational value)
{
	if (!present)
		return json_null();
	if (value.den == 1)
		return json_sprintf("%lld", (long long)value.num);
	return json_sprintf("%lld/%lld", (long long)value.num, (long long)value.den);
}

static bool is_range(struct rational low, struct rational high)
{
	return rational_compare(low, high) != 0;
}

static json_t *amount_json(const struct ingredient_amount *amount)
{
	if (!amount->present)
		return json_null();
	return json_pack(
	    "{s:o, s:o, s:s}", "quantity", number_json(true, amount->quantity), "quantity_max",
	    number_json(is_range(amount->quantity, amount->quantity_max), amount->quantity_max),
	    "unit", amount->unit);
}

static json_t *line_json(size_t number, const struct ingredient_line *line)
{
	bool range = line->has_quantity && is_range(line->quantity, line->quantity_max);
	return json_pack(
	    "{s:I, s:o, s:o, s:s, s:s, s:s?, s:s, s:s, s:s, s:s, s:o, s:o, s:o, s:b, s:b}", "line",
	    (json_int_t)number, "quantity", number_json(line->has_quantity, line->quantity),
	    "quantity_max", number_json(range, line->quantity_max), "unit", line->unit,
	    "ingredient", line->ingredient, "matched", line->matched, "preparation",
	    line->preparation, "note", line->note, "sure", ingredient_sure_word(line->sure), "size",
	    line->size, "plus", amount_json(&line->plus), "pack", amount_json(&line->pack),
	    "alternative", amount_json(&line->alternative), "optional", (int)line->optional,
	    "to_taste", (int)line->to_taste);
}

static bool print_line(struct invocation *inv, size_t number, const struct ingredient_line *line)
{
	json_t *json = line_json(number, line);
	bool printed = json && json_write(inv->out, json) && fputc('\n', inv->out) != EOF;
	json_decref(json);
	return printed || error_failed(inv->err, "recipe parse: out of memory; give fewer lines");
}

/* Reads on behind a line that is refused, to say how many more are; the first is told whole. */
struct refused {
	struct error first;
	size_t more;
};

static void refuse(struct refused *refused, size_t number, struct error *err)
{
	if (refused->first.kind != ERROR_NONE) {
		refused->more++;
		return;
	}
	error_context(err, "recipe parse: line %zu", number);
	refused->first = *err;
}

static int end(struct invocation *inv, const struct refused *refused, size_t printed)
{
	if (refused->first.kind != ERROR_NONE) {
		*inv->err = refused->first;
		size_t n = strlen(inv->err->text);
		if (refused->more > 0)
			snprintf(inv->err->text + n, sizeof inv->err->text - n,
				 "; lines refused besides it: %zu", refused->more);
	} else if (inv->err->kind == ERROR_NONE && printed == 0) {
		error_usage(inv->err, "recipe parse: there is no ingredient line; give one a line "
				      "on standard input");
	}
	return inv->err->kind == ERROR_NONE ? STATUS_DONE : command_failed(inv);
}

/* Operands: "parse" and "-". Blank lines, comments and headings are passed over. */
int recipe_parse_command(struct invocation *inv)
{
	struct input input = {.from = stdin};
	struct refused refused = {.more = 0};
	struct ingredient_line line;
	size_t printed = 0;
	if (strcmp(inv->operands[1], "-") != 0) {
		error_usage(inv->err, "recipe parse: lines are read from standard input only; type "
				      "'jarwright recipe parse - < FILE'");
		return command_failed(inv);
	}
	while (next_line(&input, inv->err)) {
		struct error err = {.kind = ERROR_NONE};
		enum ingredient_line_kind kind = ingredient_line_kind(input.text, input.length);
		if (kind == INGREDIENT_LINE_METHOD)
			break;
		if (kind != INGREDIENT_LINE_INGREDIENT)
			continue;
		if (!ingredient_line_parse(input.text, input.length, &line, &err))
			refuse(&refused, input.line, &err);
		else if (refused.first.kind == ERROR_NONE && !print_line(inv, input.line, &line))
			return command_failed(inv);
		else
			printed++;
	}
	return end(inv, &refused, printed);
}
