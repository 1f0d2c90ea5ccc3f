/* Recipes of tests/data/hostile-recipes.tsv: each has the verdict that it must have, and why. */
#include <stdio.h>
#include <string.h>

#include "compare_fixture.h"
#include "jarwright/decide.h"

/* Chile salsa: AIB 539 (2015), guide 3, p. 3-21. */
static const char *const salsa[] = {"5 lb tomatoes, chopped", "2 lb chile peppers, chopped",
				    "1 lb onions", "1 cup vinegar"};
#define SALSA_LINES 4
static const char places[] = "TPOV+";

enum column { PLACE, TEXT, VERDICT, RULE, WHY, COLUMNS };

static bool split(char *row, char *column[COLUMNS])
{
	row[strcspn(row, "\n")] = '\0';
	for (int i = 0; i < COLUMNS; i++)
		if (!(column[i] = strsep(&row, "\t")))
			return false;
	return row == NULL;
}

static void write_recipe(const char *place, const char *text, char *out, size_t size)
{
	const size_t at = (size_t)(strchr(places, *place) - places);
	size_t n = 0;
	for (size_t i = 0; i < SALSA_LINES + (at == SALSA_LINES); i++)
		n += (size_t)snprintf(out + n, size - n, "%s\n", i == at ? text : salsa[i]);
	for (char *c = out; *c; c++)
		if (*c == '~')
			*c = '\n';
}

static void check_row(char *column[COLUMNS])
{
	static struct comparison out;
	char text[2000];
	struct recipe recipe;
	write_recipe(column[PLACE], column[TEXT], text, sizeof text);
	fixture_recipe(text, &recipe);
	const struct formula *formula = formula_set_find(
	    fixture_formulas(), reference_food(reference_edition(), "chile-salsa"), "");
	recipe_compare(fixture_formulas(), &recipe, &fixture_facts, formula, &out);
	ck_assert_msg(strcmp(verdict_word(out.verdict), column[VERDICT]) == 0,
		      "%s: %s, not %s (%s): %s", column[TEXT], verdict_word(out.verdict),
		      column[VERDICT], column[WHY], out.findings_n ? out.findings[0].text : "");
	ck_assert_msg(!*column[RULE] || fixture_speaks(&out, column[RULE]), "%s: %s is silent",
		      column[TEXT], column[RULE]);
	/* Nor may it pass for another formula. */
	const enum verdict any = fixture_verdict(&recipe, NULL);
	ck_assert_msg((any == VERDICT_TESTED) == (out.verdict == VERDICT_TESTED), "%s: %s of any",
		      column[TEXT], verdict_word(any));
	recipe_release(&recipe);
}

START_TEST(each_recipe_has_its_verdict)
{
	char row[1000], *column[COLUMNS];
	int rows = 0;
	FILE *file = fopen("tests/data/hostile-recipes.tsv", "r");
	ck_assert_ptr_nonnull(file);
	while (fgets(row, sizeof row, file)) {
		if (*row == '#')
			continue;
		ck_assert_msg(split(row, column), "row %d", rows + 1);
		check_row(column);
		rows++;
	}
	fclose(file);
	ck_assert_int_ge(rows, 70);
}
END_TEST

Suite *hostile_suite(void)
{
	Suite *suite = suite_create("hostile");
	TCase *tc = tcase_create("hostile");
	tcase_add_test(tc, each_recipe_has_its_verdict);
	suite_add_tcase(suite, tc);
	return suite;
}
