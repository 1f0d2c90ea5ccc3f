#include "load_record.h"

#include "number.h"

#include <ctype.h>
#include <string.h>

#define BLANKS " \t"

/* The words of a food's needs and the columns they set. */
static const struct {
	const char *word;
	const char *column;
} needs[] = {
    {"vinegar", "need_vinegar"},
    {"bottled-juice", "need_bottled_juice"},
    {"per-jar", "need_per_jar"},
    {"juice-for-vinegar", "may_be_juice"},
};

static const char *need_column(const char *word, size_t length)
{
	for (size_t i = 0; i < sizeof needs / sizeof needs[0]; i++)
		if (strlen(needs[i].word) == length && memcmp(needs[i].word, word, length) == 0)
			return needs[i].column;
	return NULL;
}

static void add_needs(struct loader *loader, struct insert *insert,
		      const struct record_field *field)
{
	const char *at = field->value;

	while (*at) {
		size_t length = strcspn(at, BLANKS);
		const char *column = need_column(at, length);
		if (!column)
			problem_at(loader->problems, field->at,
				   "needs: '%.*s' is not vinegar, bottled-juice, per-jar or "
				   "juice-for-vinegar",
				   (int)length, at);
		else if (!insert_has(insert, column))
			insert_number(insert, column, 1);
		at += length;
		at += strspn(at, BLANKS);
	}
}

static void add_milli(struct loader *loader, struct insert *insert,
		      const struct record_field *field, size_t length)
{
	int32_t milli;

	if (number_milli(field->value, length, &milli))
		insert_number(insert, field->format->column, milli);
	else
		problem_at(loader->problems, field->at,
			   "%s: '%.*s' is not a decimal number of at most three places",
			   field->name, (int)length, field->value);
}

static void add_whole(struct loader *loader, struct insert *insert,
		      const struct record_field *field)
{
	int32_t whole;

	if (number_whole(field->value, strlen(field->value), &whole))
		insert_number(insert, field->format->column, whole);
	else
		problem_at(loader->problems, field->at, "%s: '%s' is not a whole number",
			   field->name, field->value);
}

static void add_figure(struct loader *loader, struct insert *insert,
		       const struct record_field *field)
{
	size_t length = strcspn(field->value, BLANKS);
	const char *unit = field->value + length + strspn(field->value + length, BLANKS);

	add_milli(loader, insert, field, length);
	insert_text(insert, "unit", *unit ? unit : NULL);
}

/* A value under construction in the loader's scratch. */
struct joined {
	char *text;
	size_t length;
	size_t room;
};

static void append(struct joined *joined, const char *text, size_t length)
{
	if (joined->length + length > joined->room) {
		joined->length = joined->room + 1; /* too long for good */
		return;
	}
	memcpy(joined->text + joined->length, text, length);
	joined->length += length;
}

/* Appends "a | b" as "a|b|" in lower case. */
static void append_words(struct loader *loader, struct joined *joined,
			 const struct record_field *field)
{
	const char *at = field->value;

	for (;;) {
		at += strspn(at, BLANKS);
		size_t part = strcspn(at, "|");
		size_t length = part;
		while (length > 0 && strchr(BLANKS, at[length - 1]))
			length--;
		if (length == 0)
			problem_at(loader->problems, field->at, "%s: a word is empty", field->name);
		for (size_t i = 0; i < length; i++) {
			char low = (char)tolower((unsigned char)at[i]);
			append(joined, &low, 1);
		}
		append(joined, "|", 1);
		if (at[part] == '\0')
			return;
		at += part + 1;
	}
}

/* Joins every field of the name of fields[first], in order, into one column. */
static void add_joined(struct loader *loader, struct insert *insert, const struct record *record,
		       size_t first)
{
	const struct record_field *field = &record->fields[first];
	bool words = field->format->type == FIELD_WORDS;
	struct joined joined = {.text = loader->scratch + loader->scratch_used,
				.room = PARSE_LINE_MAX};

	if (insert_has(insert, field->format->column))
		return;
	if (words)
		append(&joined, "|", 1);
	for (size_t i = first; i < record->fields_n; i++) {
		const struct record_field *next = &record->fields[i];
		if (next->format != field->format)
			continue;
		if (words) {
			append_words(loader, &joined, next);
			continue;
		}
		if (i != first)
			append(&joined, "\n", 1);
		append(&joined, next->value, strlen(next->value));
	}
	if (joined.length > joined.room) {
		problem_at(loader->problems, field->at, "%s: more than %d bytes in all",
			   field->name, PARSE_LINE_MAX);
		joined.length = 0;
	}
	loader->scratch_used += joined.length;
	insert_text_of(insert, field->format->column, joined.text, joined.length);
}

static void add_field(struct loader *loader, struct insert *insert, const struct record *record,
		      size_t n)
{
	const struct record_field *field = &record->fields[n];

	switch (field->format->type) {
	case FIELD_TEXT:
		insert_text(insert, field->format->column, field->value);
		break;
	case FIELD_LINES:
	case FIELD_WORDS:
		add_joined(loader, insert, record, n);
		break;
	case FIELD_MILLI:
		add_milli(loader, insert, field, strlen(field->value));
		break;
	case FIELD_WHOLE:
		add_whole(loader, insert, field);
		break;
	case FIELD_FIGURE:
		add_figure(loader, insert, field);
		break;
	case FIELD_NEEDS:
		add_needs(loader, insert, field);
		break;
	case FIELD_SOURCE:
		insert_source(insert, field->value);
		break;
	case FIELD_DOSE:
	case FIELD_BANDS:
	case FIELD_LINE:
		break; /* rows of their own */
	}
}

/* "bottled-juice pint 1 tbsp ; aib539-2015-g3 p. 3-5" */
static bool load_dose(struct loader *loader, const char *food, const struct record_field *field,
		      struct error *err)
{
	const char *acid = field->value;
	size_t acid_length = strcspn(acid, BLANKS);
	const char *jar = acid + acid_length + strspn(acid + acid_length, BLANKS);
	size_t jar_length = strcspn(jar, BLANKS);
	const char *amount = jar + jar_length + strspn(jar + jar_length, BLANKS);
	size_t amount_length = strcspn(amount, ";");
	const char *source = amount + amount_length;
	struct insert insert;
	int64_t id;

	if (*source == ';')
		source += 1 + strspn(source + 1, BLANKS);
	while (amount_length > 0 && strchr(BLANKS, amount[amount_length - 1]))
		amount_length--;
	if (amount_length == 0 || *source == '\0') {
		problem_at(loader->problems, field->at,
			   "dose: must read 'acid jar amount ; source place'");
		return true;
	}
	insert_begin(&insert, "acid_dose", field->at);
	insert_text(&insert, "food", food);
	insert_text_of(&insert, "acid", acid, acid_length);
	insert_text_of(&insert, "jar", jar, jar_length);
	insert_text_of(&insert, "amount", amount, amount_length);
	insert_source(&insert, source);
	return insert_run(&insert, loader->db, loader->problems, &id, err);
}

bool load_record(struct loader *loader, const struct record *record, struct error *err)
{
	size_t before = loader->problems->count;
	struct insert insert;
	int64_t id;

	loader->scratch_used = 0;
	insert_begin(&insert, record->format->table, record->at);
	insert_text(&insert, record->format->key_column, record->key);
	for (size_t i = 0; i < record->fields_n; i++)
		add_field(loader, &insert, record, i);
	if (loader->problems->count == before &&
	    !insert_run(&insert, loader->db, loader->problems, &id, err))
		return false;
	for (size_t i = 0; i < record->fields_n; i++)
		if (record->fields[i].format->type == FIELD_DOSE &&
		    !load_dose(loader, record->key, &record->fields[i], err))
			return false;
	return true;
}
