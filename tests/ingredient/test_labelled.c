/*
 * Two files of hand-made, invented ingredient lines against their labels; what a cook means by
 * them is common practice, no source. The reader was tuned until every line of the first was
 * read as labelled. The second was written and labelled before the reader ever saw it, and is
 * not tuned on: HELD_OUT_FIRST of its lines were read as labelled the first time.
 */
#include <stdio.h>
#include <string.h>

#include "jarwright/ingredient.h"
#include "suites.h"

#define COLUMNS 8
enum column { STYLE, LINE, QUANTITY, QUANTITY_MAX, UNIT, INGREDIENT, PREPARATION, MATCHED };

static const char tuned_path[] = "tests/data/ingredient-lines.tsv";
static const char held_out_path[] = "tests/data/ingredient-lines-held-out.tsv";
#define HELD_OUT_FIRST 54

/* Splits a row at its tabs, in place. False: a comment. */
static bool split(char *row, char *columns[COLUMNS])
{
	row[strcspn(row, "\n")] = '\0';
	if (*row == '#')
		return false;
	for (int i = 0; i < COLUMNS; i++) {
		columns[i] = strsep(&row, "\t");
		ck_assert_msg(columns[i] != NULL, "'%s' has too few columns", columns[0]);
	}
	ck_assert_msg(row == NULL, "'%s' has too many columns", columns[LINE]);
	return true;
}

static void number_text(bool present, struct rational value, char text[64])
{
	if (!present)
		snprintf(text, 64, "-");
	else if (value.den == 1)
		snprintf(text, 64, "%lld", (long long)value.num);
	else
		snprintf(text, 64, "%lld/%lld", (long long)value.num, (long long)value.den);
}

static bool differs(const char *what, const char *line, const char *label, const char *got)
{
	if (strcmp(label, "?") == 0 || strcmp(label, *got ? got : "-") == 0)
		return false;
	fprintf(stderr, "'%s': %s is '%s', not '%s'\n", line, what, got, label);
	return true;
}

/* Says what is read otherwise than labelled. */
static bool row_differs(char *columns[COLUMNS])
{
	struct ingredient_line line;
	struct error err = {.kind = ERROR_NONE};
	char low[64], high[64];
	const char *text = columns[LINE];
	bool read = ingredient_line_parse(text, strlen(text), &line, &err);
	if (!read || strcmp(columns[QUANTITY], "refused") == 0)
		return differs("reading", text, columns[QUANTITY], read ? "read" : "refused");
	number_text(line.has_quantity, line.quantity, low);
	number_text(rational_compare(line.quantity, line.quantity_max) != 0, line.quantity_max,
		    high);
	bool wrong = differs("quantity", text, columns[QUANTITY], low);
	wrong |= differs("quantity_max", text, columns[QUANTITY_MAX], high);
	wrong |= differs("unit", text, columns[UNIT], line.unit);
	wrong |= differs("ingredient", text, columns[INGREDIENT], line.ingredient);
	wrong |= differs("preparation", text, columns[PREPARATION], line.preparation);
	wrong |= differs("matched", text, columns[MATCHED], line.matched ? line.matched : "");
	return wrong;
}

struct labelled {
	int rows, wrong;
};

static struct labelled read_labelled(const char *path)
{
	char row[2048], *columns[COLUMNS];
	struct labelled count = {0, 0};
	FILE *file = fopen(path, "r");
	ck_assert_ptr_nonnull(file);
	while (fgets(row, sizeof row, file)) {
		if (!split(row, columns))
			continue;
		count.rows++;
		count.wrong += row_differs(columns);
	}
	fclose(file);
	return count;
}

START_TEST(test_tuned_lines)
{
	struct labelled count = read_labelled(tuned_path);
	ck_assert_int_ge(count.rows, 300);
	ck_assert_msg(count.wrong == 0, "%d of %d labelled lines are read otherwise", count.wrong,
		      count.rows);
}
END_TEST

START_TEST(test_held_out_lines)
{
	struct labelled count = read_labelled(held_out_path);
	int right = count.rows - count.wrong;
	printf("held-out ingredient lines: %d of %d right; %d the first time\n", right, count.rows,
	       HELD_OUT_FIRST);
	ck_assert_int_eq(count.rows, 60);
	ck_assert_int_ge(right, HELD_OUT_FIRST);
}
END_TEST

/* What holds of any line that is read, however broken. */
static void check_sound(const struct ingredient_line *line)
{
	ck_assert_uint_gt(strlen(line->ingredient), 0);
	ck_assert_ptr_nonnull(line->unit);
	if (line->has_quantity)
		ck_assert_int_gt(line->quantity.num, 0);
	ck_assert_int_le(rational_compare(line->quantity, line->quantity_max), 0);
	if (!line->matched || !line->has_quantity)
		ck_assert_int_eq(line->sure, INGREDIENT_UNSURE);
}

/* Each labelled line cut at each byte, and with each byte turned into another. */
START_TEST(test_broken_lines)
{
	static const char others[] = "0(),-/ 9\xC2";
	char row[2048], *columns[COLUMNS];
	struct ingredient_line line;
	FILE *file = fopen(tuned_path, "r");
	int read = 0, refused = 0;
	ck_assert_ptr_nonnull(file);
	for (int number = 0; fgets(row, sizeof row, file); number++) {
		if (number % 8 != 0 || !split(row, columns))
			continue;
		size_t length = strlen(columns[LINE]);
		for (size_t at = 0; at < length * 2; at++) {
			struct error err = {.kind = ERROR_NONE};
			char byte = columns[LINE][at / 2];
			columns[LINE][at / 2] = others[(at + length) % (sizeof others - 1)];
			size_t n = at % 2 ? length : at / 2 + 1;
			bool sound = ingredient_line_parse(columns[LINE], n, &line, &err);
			columns[LINE][at / 2] = byte;
			if (sound)
				check_sound(&line);
			else
				ck_assert_uint_gt(strlen(err.text), 0);
			read += sound;
			refused += !sound;
		}
	}
	fclose(file);
	ck_assert_int_gt(read, 500);
	ck_assert_int_gt(refused, 100);
}
END_TEST

Suite *labelled_suite(void)
{
	Suite *suite = suite_create("ingredient: labelled lines");
	TCase *tcase = tcase_create("labelled");
	tcase_set_timeout(tcase, 120);
	tcase_add_test(tcase, test_tuned_lines);
	tcase_add_test(tcase, test_held_out_lines);
	tcase_add_test(tcase, test_broken_lines);
	suite_add_tcase(suite, tcase);
	return suite;
}
