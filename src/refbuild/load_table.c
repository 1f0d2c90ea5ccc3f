#include "load_table.h"

#include "number.h"

#include <string.h>

#define BLANKS " \t"

enum { BANDS_MAX = 16 };

struct figure {
	int32_t minutes; /* 0: none printed */
	int32_t psi;     /* 0: none printed */
};

/* The value of a line, taken apart. */
struct line {
	struct figure cells[BANDS_MAX];
	size_t cells_n;
	int32_t readings;
	bool sterile;
	const char *note; /* NULL: none */
};

/* Takes the next word before ';' or the end; false if there is none. */
static bool next_word(const char **at, const char **word, size_t *length)
{
	*at += strspn(*at, BLANKS);
	*word = *at;
	*length = strcspn(*at, BLANKS ";");
	*at += *length;
	return *length > 0;
}

static bool is_word(const char *word, size_t length, const char *expected)
{
	return strlen(expected) == length && memcmp(word, expected, length) == 0;
}

/* "20", "20@11" or "-" */
static bool parse_figure(const char *word, size_t length, struct figure *out)
{
	const char *at = memchr(word, '@', length);
	size_t minutes_length = at ? (size_t)(at - word) : length;

	*out = (struct figure){0};
	if (is_word(word, length, "-"))
		return true;
	if (!number_whole(word, minutes_length, &out->minutes) || out->minutes == 0)
		return false;
	return !at ||
	       (number_whole(at + 1, length - minutes_length - 1, &out->psi) && out->psi > 0);
}

/* "sterile" or "readings=2" */
static bool parse_mark(const char *word, size_t length, struct line *line)
{
	static const char readings[] = "readings=";
	size_t prefix = strlen(readings);

	if (is_word(word, length, "sterile")) {
		line->sterile = true;
		return true;
	}
	return length > prefix && memcmp(word, readings, prefix) == 0 &&
	       number_whole(word + prefix, length - prefix, &line->readings);
}

/* Cells, then marks, then "; note". Says the first fault and returns false. */
static bool parse_line(struct loader *loader, const struct record_field *field, struct line *line)
{
	const char *at = field->value;
	const char *word;
	size_t length;
	bool marks = false;
	struct figure figure;

	*line = (struct line){.readings = 3};
	while (next_word(&at, &word, &length)) {
		if (parse_mark(word, length, line)) {
			marks = true;
		} else if (marks || !parse_figure(word, length, &figure)) {
			problem_at(loader->problems, field->at,
				   "%s: '%.*s' is not a time, a time@pressure, - or a mark",
				   field->name, (int)length, word);
			return false;
		} else if (line->cells_n == BANDS_MAX) {
			problem_at(loader->problems, field->at, "%s: more than %d cells",
				   field->name, BANDS_MAX);
			return false;
		} else {
			line->cells[line->cells_n++] = figure;
		}
	}
	if (*at == ';')
		at += 1 + strspn(at + 1, BLANKS);
	line->note = *at ? at : NULL;
	return true;
}

static bool load_cell(struct loader *loader, struct position at, int64_t line_id, size_t n,
		      const struct figure *figure, struct error *err)
{
	struct insert insert;
	int64_t id;

	insert_begin(&insert, "cell", at);
	insert_number(&insert, "line_id", line_id);
	insert_number(&insert, "n", (int64_t)n);
	if (figure->minutes)
		insert_number(&insert, "minutes", figure->minutes);
	if (figure->psi)
		insert_number(&insert, "psi", figure->psi);
	return insert_run(&insert, loader->db, loader->problems, &id, err);
}

static bool load_line(struct loader *loader, const struct record_field *field, int64_t table_id,
		      size_t bands_n, struct error *err)
{
	struct insert insert;
	struct line line;
	int64_t id;

	if (!parse_line(loader, field, &line))
		return true;
	if (line.cells_n != bands_n) {
		problem_at(loader->problems, field->at, "%s: %zu cells for %zu bands", field->name,
			   line.cells_n, bands_n);
		return true;
	}
	insert_begin(&insert, "process_line", field->at);
	insert_number(&insert, "table_id", table_id);
	insert_text(&insert, "jar", field->name);
	insert_number(&insert, "readings", line.readings);
	insert_number(&insert, "sterile", line.sterile);
	insert_text(&insert, "note", line.note);
	if (!insert_run(&insert, loader->db, loader->problems, &id, err))
		return false;
	for (size_t i = 0; id != 0 && i < line.cells_n; i++)
		if (!load_cell(loader, field->at, id, i + 1, &line.cells[i], err))
			return false;
	return true;
}

/* "0-1000" or "6001-": *to is -1 if the band is open. */
static bool parse_band(const char *word, size_t length, int32_t *from, int32_t *to)
{
	const char *dash = memchr(word, '-', length);

	*to = -1;
	if (!dash || !number_whole(word, (size_t)(dash - word), from))
		return false;
	size_t rest = length - (size_t)(dash - word) - 1;
	return rest == 0 || number_whole(dash + 1, rest, to);
}

/* Inserts the bands and counts them. */
static bool load_bands(struct loader *loader, const struct record_field *field, int64_t table_id,
		       size_t *count, struct error *err)
{
	const char *at = field->value;
	const char *word;
	size_t length;
	int32_t from;
	int32_t to;
	int64_t id;

	for (*count = 0; next_word(&at, &word, &length);) {
		struct insert insert;
		++*count;
		if (!parse_band(word, length, &from, &to)) {
			problem_at(loader->problems, field->at,
				   "bands: '%.*s' is not an elevation band as 0-1000 or 6001-",
				   (int)length, word);
			continue;
		}
		insert_begin(&insert, "band", field->at);
		insert_number(&insert, "table_id", table_id);
		insert_number(&insert, "n", (int64_t)*count);
		insert_number(&insert, "from_ft", from);
		if (to >= 0)
			insert_number(&insert, "to_ft", to);
		if (!insert_run(&insert, loader->db, loader->problems, &id, err))
			return false;
	}
	return true;
}

/* The record's own row, from its key "food pack canner". */
static bool load_head(struct loader *loader, const struct record *record, int64_t *id,
		      struct error *err)
{
	static const char *const columns[] = {"food", "pack", "canner"};
	const char *at = record->key;
	const char *word;
	size_t length;
	struct insert insert;

	*id = 0;
	insert_begin(&insert, "process_table", record->at);
	for (size_t i = 0; i < 3; i++) {
		if (!next_word(&at, &word, &length))
			break;
		insert_text_of(&insert, columns[i], word, length);
	}
	if (!insert_has(&insert, "canner") || *at != '\0') {
		problem_at(loader->problems, record->at, "must read 'table FOOD PACK CANNER'");
		return true;
	}
	for (size_t i = 0; i < record->fields_n; i++) {
		const struct record_field *field = &record->fields[i];
		if (field->format->type == FIELD_SOURCE)
			insert_source(&insert, field->value);
		else if (field->format->type == FIELD_TEXT)
			insert_text(&insert, field->format->column, field->value);
	}
	return insert_run(&insert, loader->db, loader->problems, id, err);
}

bool load_process_table(struct loader *loader, const struct record *record, struct error *err)
{
	const struct record_field *bands = load_field(record, FIELD_BANDS);
	size_t bands_n;
	int64_t id;

	if (!bands) {
		problem_at(loader->problems, record->at, "table %s has no bands", record->key);
		return true;
	}
	if (!load_head(loader, record, &id, err))
		return false;
	if (id == 0)
		return true;
	if (!load_bands(loader, bands, id, &bands_n, err))
		return false;
	for (size_t i = 0; i < record->fields_n; i++)
		if (record->fields[i].format->type == FIELD_LINE &&
		    !load_line(loader, &record->fields[i], id, bands_n, err))
			return false;
	return true;
}
