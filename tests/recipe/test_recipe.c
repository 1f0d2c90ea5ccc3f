/* Recipes: read, refused, scaled, weighed, added up. All recipes are invented. */
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/recipe.h"
#include "jarwright/recipe_yield.h"
#include "suite.h"

static struct recipe recipe;
static struct error err;

static void setup(void)
{
	memset(&recipe, 0, sizeof recipe);
	memset(&err, 0, sizeof err);
}

static void teardown(void)
{
	recipe_release(&recipe);
}

static void read_as(enum measuring_system system, const char *text)
{
	if (!recipe_read("test", system, text, strlen(text), &recipe, &err))
		ck_abort_msg("%s", err.text);
}

static void refused(const char *text, size_t length, const char *because)
{
	ck_assert(!recipe_read("test", SYSTEM_US, text, length, &recipe, &err));
	ck_assert_ptr_null(recipe.lines);
	ck_assert_ptr_null(recipe.method);
	ck_assert_uint_eq(recipe.lines_n, 0);
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	if (!strstr(err.text, because))
		ck_abort_msg("'%s' does not say '%s'", err.text, because);
	memset(&err, 0, sizeof err);
}

START_TEST(headings_comments_and_the_method_are_no_ingredients)
{
	read_as(SYSTEM_IMPERIAL,
		"\xef\xbb\xbf# from a friend\r\nIngredients:\r\n\r\n"
		"  2 lb plums  \r\n1 pint vinegar\r\nMethod:\r\n\r\nBoil.\r\nFill.\r\n\r\n");
	ck_assert_uint_eq(recipe.lines_n, 2);
	ck_assert_str_eq(recipe.lines[0].text, "2 lb plums");
	ck_assert_int_eq(recipe.lines[0].number, 4);
	ck_assert_str_eq(recipe.lines[1].text, "1 pint vinegar");
	ck_assert_int_eq(recipe.lines[1].number, 5);
	ck_assert_str_eq(recipe.method, "\r\nBoil.\r\nFill.");
	ck_assert_int_eq(recipe.system, SYSTEM_IMPERIAL);
}
END_TEST

START_TEST(without_a_method_it_is_empty)
{
	read_as(SYSTEM_US, "2 cups sugar");
	ck_assert_str_eq(recipe.method, "");
	ck_assert_uint_eq(recipe.lines_n, 1);
}
END_TEST

/* What a bad file has in it, and what of the message matters: the line above all. */
static const struct {
	const char *text;
	const char *because;
} bad[] = {
    {"1 cup sugar\n0 cups vinegar", "line 2"},
    {"1 cup sugar\n\n-1 cup vinegar", "line 3"},
    {"1 cup sugar\n1,5 kg plums", "line 2"},
    {"1 cup sugar\nplums \xff", "line 2: it is not valid UTF-8"},
    {"# \xc3\x28\n1 cup sugar", "line 1: it is not valid UTF-8"},
    {"1 cup sugar\nMethod:\nboil \x80", "line 3: it is not valid UTF-8"},
    {"1 cup sugar\n# \x1b[31m", "line 2: a control character"},
    {"sugar\nplums\nvinegar", "lines 1 to 3: no ingredient has an amount"},
    {"# nothing\n", "no ingredient has an amount"},
    {"", "there is nothing in it"},
};

START_TEST(bad_text_is_refused_with_its_line)
{
	refused(bad[_i].text, strlen(bad[_i].text), bad[_i].because);
}
END_TEST

START_TEST(a_nul_byte_is_refused_with_its_line)
{
	static const char text[] = "1 cup sugar\n2 cups\0 plums\n";
	refused(text, sizeof text - 1, "line 2: a NUL byte");
}
END_TEST

START_TEST(ten_thousand_lines_are_refused_at_the_first_too_many)
{
	static char text[10000 * 12 + 1];
	for (size_t i = 0; i < 10000; i++)
		stpcpy(text + i * 12, "1 cup plums\n");
	refused(text, sizeof text - 1, "line 501: more than 500 ingredients");
	/* The most that there may be. */
	ck_assert(
	    recipe_read("test", SYSTEM_US, text, (size_t)RECIPE_LINES_MAX * 12, &recipe, &err));
	ck_assert_uint_eq(recipe.lines_n, RECIPE_LINES_MAX);
}
END_TEST

START_TEST(a_text_above_the_limit_is_refused)
{
	char *text = malloc(RECIPE_BYTES_MAX + 2);
	memset(text, '\n', RECIPE_BYTES_MAX + 1);
	static const char line[] = {'1', ' ', 'c', 'u', 'p', ' ', 'f', 'i', 'g', 's'};
	memcpy(text, line, sizeof line);
	refused(text, RECIPE_BYTES_MAX + 1, "longer than 1048576 bytes");
	ck_assert(recipe_read("test", SYSTEM_US, text, RECIPE_BYTES_MAX, &recipe, &err));
	free(text);
}
END_TEST

START_TEST(name_and_measures_must_be_said)
{
	static const char text[] = "1 cup plums";
	char name[RECIPE_NAME_SIZE + 1];
	memset(name, 'a', sizeof name);
	name[RECIPE_NAME_SIZE] = '\0';
	ck_assert(!recipe_read("", SYSTEM_US, text, strlen(text), &recipe, &err));
	ck_assert(!recipe_read("a\tb\x01", SYSTEM_US, text, strlen(text), &recipe, &err));
	ck_assert(!recipe_read(name, SYSTEM_US, text, strlen(text), &recipe, &err));
	name[RECIPE_NAME_SIZE - 1] = '\0';
	ck_assert(recipe_read(name, SYSTEM_US, text, strlen(text), &recipe, &err));
	recipe_release(&recipe);
	memset(&err, 0, sizeof err);
	ck_assert(!recipe_read("test", SYSTEM_UNSTATED, text, strlen(text), &recipe, &err));
	ck_assert_ptr_nonnull(strstr(err.text, "whose cups"));
}
END_TEST

static const char mixed[] =
    "2 1/4 cups sugar\n5/8 pint vinegar\n2-3 onions\n2 x 400 g tins tomatoes\n"
    "1 cup plus 2 tbsp water\n1.7 kg plums\nsalt, to taste\n";

static void same(struct rational a, struct rational b)
{
	ck_assert_int_eq(a.num, b.num);
	ck_assert_int_eq(a.den, b.den);
}

/* Property: there and back loses nothing, at every factor n/d with n and d from 1 to 60. */
START_TEST(scaling_there_and_back_loses_nothing)
{
	struct recipe written;
	ck_assert(recipe_read("test", SYSTEM_IMPERIAL, mixed, strlen(mixed), &written, &err));
	read_as(SYSTEM_IMPERIAL, mixed);
	for (int n = 1; n <= 60; n++)
		for (int d = 1; d <= 60; d++) {
			struct rational factor, back;
			ck_assert(rational_make(n, d, &factor) && rational_make(d, n, &back));
			ck_assert(recipe_scale(&recipe, factor, &err));
			if (n == 2 * d)
				same(recipe.lines[0].read.quantity, (struct rational){9, 2});
			ck_assert(recipe_scale(&recipe, back, &err));
			for (size_t i = 0; i < written.lines_n; i++) {
				const struct ingredient_line *a = &written.lines[i].read;
				const struct ingredient_line *b = &recipe.lines[i].read;
				same(a->quantity, b->quantity);
				same(a->quantity_max, b->quantity_max);
				same(a->pack.quantity, b->pack.quantity);
				same(a->plus.quantity, b->plus.quantity);
			}
		}
	recipe_release(&written);
}
END_TEST

/* Property: grams scale with the recipe, exactly. */
START_TEST(grams_scale_exactly)
{
	const struct reference_tables *tables = reference_tables_edition();
	read_as(SYSTEM_AUSTRALIA, mixed);
	struct rational least[RECIPE_LINES_MAX], most[RECIPE_LINES_MAX], a, b;
	bool known[RECIPE_LINES_MAX] = {false};
	const struct rational factor = {7, 9};
	for (size_t i = 0; i < recipe.lines_n; i++)
		known[i] = recipe_line_grams(tables, &recipe, i, &least[i], &most[i]);
	ck_assert(known[0] && known[2] && known[3] && known[5]);
	ck_assert(!known[6]); /* salt, to taste */
	ck_assert(recipe_scale(&recipe, factor, &err));
	for (size_t i = 0; i < recipe.lines_n; i++) {
		ck_assert(recipe_line_grams(tables, &recipe, i, &a, &b) == known[i]);
		if (!known[i])
			continue;
		ck_assert(rational_mul(least[i], factor, &least[i]));
		ck_assert(rational_mul(most[i], factor, &most[i]));
		same(a, least[i]);
		same(b, most[i]);
	}
}
END_TEST

START_TEST(a_factor_that_does_not_fit_changes_nothing)
{
	read_as(SYSTEM_US, "1 kg plums\n9000000000000000000 kg sugar\n");
	ck_assert(!recipe_scale(&recipe, (struct rational){3, 1}, &err));
	ck_assert_ptr_nonnull(strstr(err.text, "line 2"));
	same(recipe.lines[0].read.quantity, (struct rational){1, 1});
	memset(&err, 0, sizeof err);
	ck_assert(!recipe_scale(&recipe, (struct rational){0, 1}, &err));
	ck_assert(!recipe_scale(&recipe, (struct rational){-1, 2}, &err));
}
END_TEST

static double grams(size_t line)
{
	struct rational least, most;
	if (!recipe_line_grams(reference_tables_edition(), &recipe, line, &least, &most))
		ck_abort_msg("line %zu has no weight", line + 1);
	same(least, most);
	return rational_double(least);
}

START_TEST(lines_weigh_what_is_published)
{
	struct rational least, most;
	const struct reference_tables *tables = reference_tables_edition();
	read_as(SYSTEM_US, "2 lb plums\n1 cup white granulated sugar\n2 x 400 g tins tomatoes\n"
			   "1 cup (250 g) plums\n2 breakfast cups plums\n1 handful mint\n"
			   "juice of 2 lemons\n2-3 kg plums\n");
	/* NIST Handbook 44: the avoirdupois pound, 453.59237 g */
	ck_assert_double_eq_tol(grams(0), 907.18474, 1e-9);
	/* USDA SR28, NDB 19335: 1 cup = 200 g */
	ck_assert_double_eq_tol(grams(1), 200, 1e-9);
	ck_assert_double_eq_tol(grams(2), 800, 1e-9);
	/* The cook's own weighing goes before a density. */
	ck_assert_double_eq_tol(grams(3), 250, 1e-9);
	/* No table has a breakfast cup: it is not two plums. */
	ck_assert(!recipe_line_grams(tables, &recipe, 4, &least, &most));
	ck_assert(!recipe_line_grams(tables, &recipe, 5, &least, &most));
	/* USDA SR28, NDB 09152: 1 lemon yields 48 g of juice */
	ck_assert_double_eq_tol(grams(6), 96, 1e-9);
	ck_assert(recipe_line_grams(tables, &recipe, 7, &least, &most));
	ck_assert_double_eq_tol(rational_double(least), 2000, 1e-9);
	ck_assert_double_eq_tol(rational_double(most), 3000, 1e-9);
}
END_TEST

START_TEST(the_same_words_weigh_more_in_larger_cups)
{
	/* db/measures.txt: the US cup is 236.5882365 mL, the Australian one 250 mL */
	read_as(SYSTEM_US, "1 cup white granulated sugar");
	double us = grams(0);
	recipe_release(&recipe);
	read_as(SYSTEM_AUSTRALIA, "1 cup white granulated sugar");
	ck_assert_double_eq_tol(grams(0) / us, 250 / 236.5882365, 1e-9);
}
END_TEST

START_TEST(a_total_says_what_is_not_in_it)
{
	struct recipe_total total;
	read_as(SYSTEM_METRIC, "1 kg plums\n1 handful mint\n0.5 kg sugar\n");
	ck_assert(recipe_total(reference_tables_edition(), &recipe, &total, &err));
	ck_assert_int_eq(total.least_mg, 1500000);
	ck_assert_int_eq(total.most_mg, 1500000);
	ck_assert_uint_eq(total.weighed_n, 2);
	ck_assert(!total.left_out[0] && total.left_out[1] && !total.left_out[2]);
}
END_TEST

START_TEST(jars_are_whole_and_the_rest_is_left)
{
	struct recipe_jars jars;
	ck_assert(recipe_jars((struct rational){1250, 1}, 500000000, &jars));
	ck_assert_int_eq(jars.full, 2);
	same(jars.left_ml, (struct rational){250, 1});
	ck_assert(recipe_jars((struct rational){499, 1}, 500000000, &jars));
	ck_assert_int_eq(jars.full, 0);
	same(jars.left_ml, (struct rational){499, 1});
}
END_TEST

START_TEST(jam_and_jelly_batches_are_known)
{
	const struct reference_tables *tables = reference_tables_edition();
	static const char plain[] = "1 kg plums",
			  pectin[] = "1 kg plums\n1 package powdered pectin";
	ck_assert(recipe_read("Plum jams", SYSTEM_US, plain, strlen(plain), &recipe, &err));
	/* Michigan State, 1997: jam or jelly batch doubled, unsafe */
	ck_assert_ptr_nonnull(recipe_batch_rule(tables, &recipe));
	recipe_release(&recipe);
	ck_assert(recipe_read("Plum sauce", SYSTEM_US, plain, strlen(plain), &recipe, &err));
	ck_assert_ptr_null(recipe_batch_rule(tables, &recipe));
	recipe_release(&recipe);
	ck_assert(recipe_read("Plum sauce", SYSTEM_US, pectin, strlen(pectin), &recipe, &err));
	ck_assert_ptr_nonnull(recipe_batch_rule(tables, &recipe));
}
END_TEST

/* A pint is 473.176473 mL (NIST Handbook 44), which the tables keep to the nanolitre. */
START_TEST(a_published_yield_is_so_many_jars)
{
	const struct reference *ref = reference_edition();
	const struct formula_line pints = {.quantity = "8", .unit = "pt"};
	const struct formula_line each = {.quantity = "7", .unit = "each"};
	const struct formula_line nothing = {.quantity = "", .unit = "pt"};
	struct rational ml;
	ck_assert(recipe_yield_volume(ref, &pints, 0.5, &ml));
	ck_assert_double_eq_tol(rational_double(ml), 4 * 473.176473, 1e-3);
	ck_assert(!recipe_yield_volume(ref, &pints, 0, &ml));
	ck_assert(!recipe_yield_volume(ref, &pints, 1e300, &ml));
	ck_assert(!recipe_yield_volume(ref, &each, 1, &ml));
	ck_assert(!recipe_yield_volume(ref, &nothing, 1, &ml));
}
END_TEST

/* By words alone; lime for pickling is no acid. Common practice, no source. */
static const struct {
	const char *line;
	enum practical_side side;
} sides[] = {
    {"2 cups vinegar", PRACTICAL_AT_LEAST},
    {"2 cups rice vinegar", PRACTICAL_AT_LEAST},
    {"1 cup strong pickling vinegar (5 %)", PRACTICAL_AT_LEAST},
    {"3 tbsp bottled lemon juice", PRACTICAL_AT_LEAST},
    {"1 tsp citric acid", PRACTICAL_AT_LEAST},
    {"juice of 2 lemons", PRACTICAL_AT_LEAST},
    {"3 lb onions, sliced", PRACTICAL_AT_MOST},
    {"2 green peppers", PRACTICAL_AT_MOST},
    {"1 cup water", PRACTICAL_AT_MOST},
    {"1 tbsp olive oil", PRACTICAL_AT_MOST},
    {"1 cup pickling lime", PRACTICAL_NEAREST},
    {"2 tsp celery seed", PRACTICAL_NEAREST},
    {"3 cups sugar", PRACTICAL_NEAREST},
    {"1 cup onions in vinegar", PRACTICAL_NEAREST},
};

START_TEST(what_is_sour_is_not_rounded_down)
{
	struct ingredient_line line;
	ck_assert(ingredient_line_parse(sides[_i].line, strlen(sides[_i].line), &line, &err));
	ck_assert_msg(recipe_line_side(&line) == sides[_i].side, "%s", sides[_i].line);
}
END_TEST

static Suite *recipe_suite(void)
{
	Suite *suite = suite_create("recipe");
	TCase *tcase = tcase_create("recipe");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_set_timeout(tcase, 60);
	tcase_add_test(tcase, headings_comments_and_the_method_are_no_ingredients);
	tcase_add_test(tcase, without_a_method_it_is_empty);
	tcase_add_loop_test(tcase, bad_text_is_refused_with_its_line, 0,
			    (int)(sizeof bad / sizeof *bad));
	tcase_add_test(tcase, a_nul_byte_is_refused_with_its_line);
	tcase_add_test(tcase, ten_thousand_lines_are_refused_at_the_first_too_many);
	tcase_add_test(tcase, a_text_above_the_limit_is_refused);
	tcase_add_test(tcase, name_and_measures_must_be_said);
	tcase_add_test(tcase, scaling_there_and_back_loses_nothing);
	tcase_add_test(tcase, grams_scale_exactly);
	tcase_add_loop_test(tcase, what_is_sour_is_not_rounded_down, 0,
			    (int)(sizeof sides / sizeof *sides));
	tcase_add_test(tcase, a_factor_that_does_not_fit_changes_nothing);
	tcase_add_test(tcase, lines_weigh_what_is_published);
	tcase_add_test(tcase, the_same_words_weigh_more_in_larger_cups);
	tcase_add_test(tcase, a_total_says_what_is_not_in_it);
	tcase_add_test(tcase, jars_are_whole_and_the_rest_is_left);
	tcase_add_test(tcase, jam_and_jelly_batches_are_known);
	tcase_add_test(tcase, a_published_yield_is_so_many_jars);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(recipe_suite())
