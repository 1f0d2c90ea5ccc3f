/* Reads the text tables for the oracle: one record a block of lines; relations skipped. */
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oracle.h"
#include "oracle_tables.h"

enum block { BLOCK_NONE, BLOCK_JAR, BLOCK_FOOD, BLOCK_TABLE, BLOCK_OTHER };

struct reader {
	struct oracle *oracle;
	enum block block;
	const char *path;
	int line;
};

static bool complain(const struct reader *reader, const char *what)
{
	(void)fprintf(stderr, "oracle: %s:%d: %s\n", reader->path, reader->line, what);
	return false;
}

/* Takes the next blank-separated word; false at the end of the line or if too long. */
static bool take_word(char **rest, char word[ORACLE_WORD_MAX])
{
	char *from = *rest + strspn(*rest, " \t");
	size_t length = strcspn(from, " \t");
	*rest = from + length;
	if (length == 0 || length >= ORACLE_WORD_MAX)
		return false;
	memcpy(word, from, length);
	word[length] = '\0';
	return true;
}

/* Takes up to six digits; false if there is none. */
static bool take_number(const char **rest, int *out)
{
	int value = 0;
	int digits = 0;
	for (; isdigit((unsigned char)**rest) && digits < 6; digits++)
		value = value * 10 + (*(*rest)++ - '0');
	*out = value;
	return digits > 0 && !isdigit((unsigned char)**rest);
}

/* "1001-6000" or "6001-" */
static bool read_band(const char *word, int *from, int *to)
{
	if (!take_number(&word, from) || *word++ != '-')
		return false;
	*to = ORACLE_OPEN;
	return *word == '\0' || (take_number(&word, to) && *word == '\0');
}

/* "20", "20@11" or "-" */
static bool read_cell(const char *word, struct oracle_answer *out)
{
	out->minutes = out->psi = 0;
	if (strcmp(word, "-") == 0)
		return true;
	if (!take_number(&word, &out->minutes) || out->minutes == 0)
		return false;
	if (*word == '\0')
		return true;
	return *word++ == '@' && take_number(&word, &out->psi) && *word == '\0';
}

static void *grow(void *array, size_t count, size_t size)
{
	void *grown = realloc(array, (count + 1) * size);
	if (!grown) {
		(void)fprintf(stderr, "oracle: out of memory\n");
		exit(EXIT_FAILURE);
	}
	memset((char *)grown + count * size, 0, size);
	return grown;
}

static bool open_jar(struct reader *reader, char *rest)
{
	struct oracle *oracle = reader->oracle;
	reader->block = BLOCK_JAR;
	if (oracle->jars_n == ORACLE_JARS_MAX)
		return complain(reader, "too many jars");
	if (!take_word(&rest, oracle->jars[oracle->jars_n].name))
		return complain(reader, "a jar without a name");
	oracle->jars_n++;
	return true;
}

static bool open_food(struct reader *reader, char *rest)
{
	struct oracle *oracle = reader->oracle;
	reader->block = BLOCK_FOOD;
	oracle->foods = grow(oracle->foods, oracle->foods_n, sizeof *oracle->foods);
	if (!take_word(&rest, oracle->foods[oracle->foods_n++].slug))
		return complain(reader, "a food without a name");
	return true;
}

static bool open_table(struct reader *reader, char *rest)
{
	struct oracle *oracle = reader->oracle;
	reader->block = BLOCK_TABLE;
	oracle->tables = grow(oracle->tables, oracle->tables_n, sizeof *oracle->tables);
	struct oracle_table *table = &oracle->tables[oracle->tables_n++];
	if (!take_word(&rest, table->food) || !take_word(&rest, table->pack) ||
	    !take_word(&rest, table->canner))
		return complain(reader, "a table needs food, pack and canner");
	return true;
}

static bool open_block(struct reader *reader, char *text)
{
	char kind[ORACLE_WORD_MAX];
	if (!take_word(&text, kind))
		return complain(reader, "what kind of block?");
	if (strcmp(kind, "jar") == 0)
		return open_jar(reader, text);
	if (strcmp(kind, "food") == 0)
		return open_food(reader, text);
	if (strcmp(kind, "table") == 0)
		return open_table(reader, text);
	reader->block = BLOCK_OTHER;
	return true;
}

static bool read_jar_field(struct reader *reader, const char *field, char *rest)
{
	if (strcmp(field, "fl-oz") != 0)
		return true;
	char word[ORACLE_WORD_MAX];
	const char *number = word;
	int *fl_oz = &reader->oracle->jars[reader->oracle->jars_n - 1].fl_oz;
	if (!take_word(&rest, word) || !take_number(&number, fl_oz) || *number != '\0')
		return complain(reader, "fl-oz is not a whole number");
	return true;
}

static bool read_food_field(struct reader *reader, const char *field, char *rest)
{
	struct oracle_food *food = &reader->oracle->foods[reader->oracle->foods_n - 1];
	if (strcmp(field, "kind") == 0 && !take_word(&rest, food->kind))
		return complain(reader, "kind is empty");
	if (strcmp(field, "acid") == 0 && !take_word(&rest, food->acid))
		return complain(reader, "acid is empty");
	return true;
}

static bool read_bands(struct reader *reader, struct oracle_table *table, char *rest)
{
	char word[ORACLE_WORD_MAX];
	while (take_word(&rest, word)) {
		int i = table->bands_n;
		if (i == ORACLE_BANDS_MAX)
			return complain(reader, "too many bands");
		if (!read_band(word, &table->from_ft[i], &table->to_ft[i]))
			return complain(reader, "not a band");
		table->bands_n++;
	}
	return table->bands_n > 0 || complain(reader, "no bands");
}

/* After the cells only marks may stand, so that a cell too many is noticed. */
static bool ends_in_marks(char *rest)
{
	char word[ORACLE_WORD_MAX];
	while (take_word(&rest, word)) {
		if (word[0] == ';')
			return true;
		if (strcmp(word, "sterile") != 0 && strncmp(word, "readings=", 9) != 0)
			return false;
	}
	return true;
}

static bool read_cells(struct reader *reader, struct oracle_table *table, const char *jar,
		       char *rest)
{
	if (table->bands_n == 0 || table->lines_n == ORACLE_LINES_MAX)
		return complain(reader, "cells before the bands, or too many lines");
	struct oracle_line *line = &table->lines[table->lines_n++];
	memcpy(line->jar, jar, ORACLE_WORD_MAX);
	char word[ORACLE_WORD_MAX];
	for (int i = 0; i < table->bands_n; i++)
		if (!take_word(&rest, word) || !read_cell(word, &line->cells[i]))
			return complain(reader, "not a cell for every band");
	return ends_in_marks(rest) || complain(reader, "more cells than bands");
}

static bool read_table_field(struct reader *reader, const char *field, char *rest)
{
	struct oracle_table *table = &reader->oracle->tables[reader->oracle->tables_n - 1];
	if (strcmp(field, "source") == 0 || strcmp(field, "note") == 0)
		return true;
	if (strcmp(field, "bands") == 0)
		return read_bands(reader, table, rest);
	return read_cells(reader, table, field, rest);
}

static bool read_field(struct reader *reader, char *text)
{
	char field[ORACLE_WORD_MAX];
	if (reader->block == BLOCK_OTHER)
		return true;
	if (reader->block == BLOCK_NONE || !take_word(&text, field))
		return complain(reader, "a field outside a record");
	if (reader->block == BLOCK_JAR)
		return read_jar_field(reader, field, text);
	if (reader->block == BLOCK_FOOD)
		return read_food_field(reader, field, text);
	return read_table_field(reader, field, text);
}

static bool read_line(struct reader *reader, char *text)
{
	text[strcspn(text, "\r\n")] = '\0';
	const char *first = text + strspn(text, " \t");
	if (*first == '\0') {
		reader->block = BLOCK_NONE;
		return true;
	}
	if (*first == '#')
		return true;
	if (first != text)
		return read_field(reader, text);
	/* The rows of a relation stand at the margin, too. */
	return reader->block == BLOCK_OTHER || open_block(reader, text);
}

static bool read_file(struct oracle *oracle, const char *path)
{
	struct reader reader = {.oracle = oracle, .path = path};
	FILE *file = fopen(path, "re");
	if (!file)
		return complain(&reader, "cannot be opened");
	char *text = NULL;
	size_t size = 0;
	bool ok = true;
	while (ok && getline(&text, &size, file) >= 0) {
		reader.line++;
		ok = read_line(&reader, text);
	}
	ok = ok && (!ferror(file) || complain(&reader, "cannot be read"));
	free(text);
	(void)fclose(file);
	return ok;
}

struct oracle *oracle_read(char *const paths[], size_t paths_n)
{
	struct oracle *oracle = calloc(1, sizeof *oracle);
	if (!oracle)
		return NULL;
	for (size_t i = 0; i < paths_n; i++) {
		if (!read_file(oracle, paths[i])) {
			oracle_free(oracle);
			return NULL;
		}
	}
	return oracle;
}

void oracle_free(struct oracle *oracle)
{
	if (!oracle)
		return;
	free(oracle->foods);
	free(oracle->tables);
	free(oracle);
}
