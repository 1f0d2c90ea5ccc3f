#include "parse.h"

#include "input.h"

#include <string.h>

#define BLANKS " \t"

enum state {
	OUTSIDE,
	IN_RECORD,
	IN_RELATION,
	SKIPPING, /* the rest of a block whose first line is at fault */
};

struct parser {
	struct position at;
	const struct parse_sink *sink;
	struct problems *problems;
	struct error *err;
	enum state state;
	struct record record;
	struct relation_row row;
	const char *columns[PARSE_COLUMNS_MAX];
};

char *parse_trim(char *text)
{
	text += strspn(text, BLANKS);
	size_t length = strlen(text);
	while (length > 0 && strchr(BLANKS, text[length - 1]))
		length--;
	text[length] = '\0';
	return text;
}

/* Cuts the first word off text in place and returns the trimmed rest, "" if none. */
static char *split_word(char *text)
{
	size_t length = strcspn(text, BLANKS);

	if (text[length] == '\0')
		return text + length;
	text[length] = '\0';
	return parse_trim(text + length + 1);
}

/* Cuts text at its bars in place; returns how many parts there are, storing at most max. */
static size_t split_bars(char *text, const char **parts, size_t max)
{
	size_t n = 0;

	for (char *part = text; part; n++) {
		char *bar = strchr(part, '|');
		if (bar)
			*bar = '\0';
		if (n < max)
			parts[n] = parse_trim(part);
		part = bar ? bar + 1 : NULL;
	}
	return n;
}

/* Hands the record under way, if any, to the sink. */
static bool end_block(struct parser *parser)
{
	enum state state = parser->state;

	parser->state = OUTSIDE;
	if (state != IN_RECORD)
		return true;
	return parser->sink->record(parser->sink->context, &parser->record, parser->err);
}

static void begin_record(struct parser *parser, char *line)
{
	char *key = split_word(line);
	const struct record_format *format = format_record(line);

	parser->state = SKIPPING;
	if (!format) {
		problem_at(parser->problems, parser->at, "unknown kind of record '%s'", line);
		return;
	}
	if (*key == '\0') {
		problem_at(parser->problems, parser->at, "%s: its name is missing", line);
		return;
	}
	parser->record.format = format;
	parser->record.key = key;
	parser->record.at = parser->at;
	parser->record.fields_n = 0;
	parser->state = IN_RECORD;
}

/* rest: what follows the word "relation". */
static void begin_relation(struct parser *parser, char *rest)
{
	char *colon = strchr(rest, ':');

	parser->state = SKIPPING;
	if (!colon) {
		problem_at(parser->problems, parser->at,
			   "a relation line must read 'relation NAME: column | column'");
		return;
	}
	*colon = '\0';
	rest = parse_trim(rest);
	if (!format_is_relation(rest)) {
		problem_at(parser->problems, parser->at, "unknown relation '%s'", rest);
		return;
	}
	size_t n = split_bars(colon + 1, parser->columns, PARSE_COLUMNS_MAX);
	if (n > PARSE_COLUMNS_MAX) {
		problem_at(parser->problems, parser->at, "more than %d columns", PARSE_COLUMNS_MAX);
		return;
	}
	parser->row = (struct relation_row){
	    .relation = rest, .columns = parser->columns, .n = n, .header = parser->at};
	parser->state = IN_RELATION;
}

static bool begin_block(struct parser *parser, char *line)
{
	static const char word[] = "relation";
	size_t length = strlen(word);

	if (!end_block(parser))
		return false;
	if (strncmp(line, word, length) == 0 && line[length] && strchr(BLANKS, line[length]))
		begin_relation(parser, line + length);
	else
		begin_record(parser, line);
	return true;
}

static bool is_repeated(const struct record *record, const char *name)
{
	for (size_t i = 0; i < record->fields_n; i++)
		if (strcmp(record->fields[i].name, name) == 0)
			return true;
	return false;
}

static void take_field(struct parser *parser, char *name)
{
	struct record *record = &parser->record;
	char *value = split_word(name);
	const struct field_format *format = format_field(record->format, name);

	if (!format)
		problem_at(parser->problems, parser->at, "unknown field '%s' in %s %s", name,
			   record->format->kind, record->key);
	else if (*value == '\0')
		problem_at(parser->problems, parser->at, "field '%s' has no value", name);
	else if (!format_repeatable(format->type) && is_repeated(record, name))
		problem_at(parser->problems, parser->at, "field '%s' is given twice in %s %s", name,
			   record->format->kind, record->key);
	else if (record->fields_n == PARSE_FIELDS_MAX)
		problem_at(parser->problems, parser->at, "more than %d fields in %s %s",
			   PARSE_FIELDS_MAX, record->format->kind, record->key);
	else
		record->fields[record->fields_n++] =
		    (struct record_field){format, name, value, parser->at};
}

static bool take_row(struct parser *parser, char *line)
{
	struct relation_row *row = &parser->row;
	size_t n = split_bars(line, row->values, PARSE_COLUMNS_MAX);

	if (n != row->n) {
		problem_at(parser->problems, parser->at, "%zu values for the %zu columns of %s", n,
			   row->n, row->relation);
		return true;
	}
	for (size_t i = 0; i < n; i++)
		if (row->values[i][0] == '\0')
			row->values[i] = NULL;
	row->at = parser->at;
	return parser->sink->row(parser->sink->context, row, parser->err);
}

static bool take_line(struct parser *parser, char *line)
{
	bool indented = strchr(BLANKS, line[0]) != NULL;
	char *text = parse_trim(line);

	if (*text == '\0')
		return end_block(parser);
	if (*text == '#')
		return true;
	if (parser->state == IN_RELATION)
		return take_row(parser, text);
	if (!indented)
		return parser->state == SKIPPING && strchr(text, '|') ? true
								      : begin_block(parser, text);
	if (parser->state == IN_RECORD)
		take_field(parser, text);
	else if (parser->state == OUTSIDE)
		problem_at(parser->problems, parser->at, "a field outside of any record");
	return true;
}

/* Says what makes the line unfit to read; true if nothing does. */
static bool check_line(struct parser *parser, const char *line, size_t length)
{
	if (length > PARSE_LINE_MAX)
		problem_at(parser->problems, parser->at, "line of %zu bytes; at most %d are read",
			   length, PARSE_LINE_MAX);
	else if (!input_is_clean(line, length))
		problem_at(parser->problems, parser->at,
			   "not plain text: a control character, or not UTF-8");
	else
		return true;
	return false;
}

bool parse_file(const char *path, const struct parse_sink *sink, struct problems *problems,
		struct error *err)
{
	struct parser parser = {.at = {path, 0}, .sink = sink, .problems = problems, .err = err};
	struct input input;
	char *line;
	size_t length;
	bool ok = true;

	if (!input_open(&input, path, err))
		return false;
	while (ok && input_line(&input, &line, &length)) {
		parser.at.line = input.line;
		if (check_line(&parser, line, length))
			ok = take_line(&parser, line);
	}
	if (ok)
		ok = end_block(&parser);
	input_close(&input);
	return ok;
}
