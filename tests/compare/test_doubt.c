/*
 * Ways in which a recipe could look like a formula and not be one. The recipes are invented;
 * the formulas are those of the tables, the rules those of db/changes.txt.
 */
#include <stdio.h>
#include <string.h>

#include "compare_fixture.h"

static struct comparison compare(const struct recipe *recipe, const struct formula *formula)
{
	static struct comparison out;
	recipe_compare(fixture_formulas(), recipe, &fixture_facts, formula, &out);
	return out;
}

static const struct formula *formula_of(const char *food)
{
	const struct formula *formula =
	    formula_set_find(fixture_formulas(), reference_food(reference_edition(), food), "");
	ck_assert_ptr_nonnull(formula);
	return formula;
}

/* --- One salsa, spoilt in one line --- */

/* Chile salsa: 5 lb tomatoes, 2 lb chile peppers, 1 lb onions, 1 cup vinegar (AIB 539 guide 3). */
static const char *const salsa[] = {"5 lb tomatoes, chopped", "2 lb chile peppers, chopped",
				    "1 lb onions", "1 cup vinegar"};
enum { TOMATOES, PEPPERS, ONIONS, VINEGAR, SALSA_LINES, ADDED = SALSA_LINES };

static const struct {
	int line; /* which is replaced, or ADDED */
	const char *text, *rule;
} spoilt[] = {
    /* Something more on the shelf than was tested, however it is written. */
    {ADDED, "1 cup corn (optional)", "low-acid-added"},
    {ADDED, "corn, to taste", "low-acid-added"},
    {ADDED, "corn", "low-acid-added"},
    {ADDED, "1 cup corn:", "low-acid-added"},
    {ADDED, "1 cup corn or beans", "low-acid-added"},
    {ADDED, "2 heads garlic, chopped", "low-acid-added"},
    {ADDED, "1 lb dried chiles", "low-acid-added"},
    {ADDED, "1 packet taco seasoning", "not-in-formula"},
    {ADDED, "1 breakfast cup plums", "unknown-measure"},
    {ADDED, "2 cups ground cumin", "spice-much"},
    {ADDED, "1 lb ground cumin", "spice-much"},
    {ADDED, "1 tsp oregano", "herb-unsure"},
    {ADDED, "1 tsp ground cumin (and 2 cups corn)", "line-unsure"},
    /* Hidden behind a line that is the formula's. */
    {TOMATOES, "5 lb tomatoes, chopped, with 2 cups corn", "line-unsure"},
    {ONIONS, "1 lb onions, with 2 cups carrots", "line-unsure"},
    {ONIONS, "1 lb onions, fried in butter", "line-unsure"},
    {TOMATOES, "5 lb tomatoes, with 3 cups sugar", "line-unsure"},
    /* How much is it? */
    {ONIONS, "1 lb (2 kg) onions", "two-amounts"},
    {ONIONS, "at least 1 lb onions", "amount-unsure"},
    {ONIONS, "a good 1 lb onions", "amount-unsure"},
    {ONIONS, "1 lb onions, or more to taste", "amount-unsure"},
    {ONIONS, "1-2 lb onions", "amount-unsure"},
    {ONIONS, "onions", "amount-missing"},
    {ONIONS, "1 lb leeks", "low-acid-added"},
    {ONIONS, "1 lb onions or garlic", NULL},
    {ONIONS, "1 lb dried onions", NULL},
    {VINEGAR, "1 cup vinegar (optional)", "optional-line"},
    {VINEGAR, "vinegar, to taste", "amount-missing"},
    {VINEGAR, "1 cup vinegar plus more as needed", "amount-unsure"},
    {VINEGAR, "1/2 to 1 cup vinegar", "amount-unsure"},
    {VINEGAR, "1 cup (100 ml) vinegar", "two-amounts"},
    {VINEGAR, "1 splash vinegar", "amount-missing"},
    {VINEGAR, "1 teacup vinegar", "unknown-measure"},
    {PEPPERS, "2 breakfast cups chile peppers", "unknown-measure"},
    /* What is it? */
    {VINEGAR, "1 cup vinegar, 4-5%", "vinegar-weak"},
    {VINEGAR, "1 cup vinegar, 4 to 5 %", "vinegar-weak"},
    {VINEGAR, "1 cup vinegar (4 percent acidity)", "vinegar-weak"},
    {VINEGAR, "1 cup vinegar (5%, or 4% if you like)", "vinegar-weak"},
    {VINEGAR, "1 cup vinegar (40 grain)", "vinegar-missing"},
    {VINEGAR, "1 cup vinegar (5%), diluted with 1 cup water", "vinegar-diluted"},
    {VINEGAR, "1 cup vinegar and water, mixed", NULL},
    {VINEGAR, "1 cup vinegar or lemon juice", "less-acid"},
    {VINEGAR, "1 cup vinegar (home made)", "vinegar-home-made"},
    {VINEGAR, "1 cup vinegar, from wine", "vinegar-wine"},
    {VINEGAR, "1 cup rice vinegar", "vinegar-kind"},
    {VINEGAR, "1 cup lemon juice", "fresh-juice"},
    {VINEGAR, "1 cup fresh lemon juice", "fresh-juice"},
    {VINEGAR, "juice of 6 lemons", "fresh-juice"},
    {TOMATOES, "5 lb tomatoes, blended until smooth", "pureed"},
    {TOMATOES, "5 lb tomatoes, put through a food processor", "pureed"},
    {TOMATOES, "5 lb tomatoes, crushed", "form-changed"},
    {TOMATOES, "5 lb canned tomatoes", NULL},
    {TOMATOES, "5 lb tomatoes or tomatillos", NULL},
};

START_TEST(a_spoilt_salsa_is_never_tested)
{
	const struct formula *formula = formula_of("chile-salsa");
	char text[2000];
	struct recipe recipe;
	size_t n = 0;
	for (int i = 0; i < SALSA_LINES; i++)
		n += (size_t)snprintf(text + n, sizeof text - n, "%s\n",
				      i == spoilt[_i].line ? spoilt[_i].text : salsa[i]);
	if (spoilt[_i].line == ADDED)
		snprintf(text + n, sizeof text - n, "%s\n", spoilt[_i].text);
	fixture_recipe(text, &recipe);
	struct comparison out = compare(&recipe, formula);
	ck_assert_msg(out.verdict != VERDICT_TESTED, "%s", spoilt[_i].text);
	ck_assert_msg(!spoilt[_i].rule || fixture_speaks(&out, spoilt[_i].rule), "%s: %s is silent",
		      spoilt[_i].text, spoilt[_i].rule);
	ck_assert_msg(fixture_verdict(&recipe, NULL) != VERDICT_TESTED, "%s, any", spoilt[_i].text);
	recipe_release(&recipe);
}
END_TEST

/* The same lines in ways that change nothing, so that the test above can fail. */
START_TEST(a_harmless_way_of_writing_is_tested)
{
	static const struct {
		int line;
		const char *text;
	} harmless[] = {
	    {VINEGAR, "1 cup vinegar, divided"},
	    {VINEGAR, "1 cup (237 mL) vinegar"},
	    {VINEGAR, "1 cup white vinegar (5 percent)"},
	    {VINEGAR, "1 cup bottled lemon juice"},
	    {VINEGAR, "1/2 cup vinegar\n1/2 cup cider vinegar"},
	    {ONIONS, "1 lb yellow onions, finely chopped"},
	    {ONIONS, "1 lb onions:"},
	    {ADDED, "2 tbsp ground cumin"},
	    {ADDED, "1 tsp dried oregano"},
	    {ADDED, "# a remark about corn"},
	    {ADDED, "Method:\nPeel and chop. Boil 10 minutes, then fill the jars."},
	};
	for (size_t k = 0; k < sizeof harmless / sizeof *harmless; k++) {
		char text[2000];
		struct recipe recipe;
		size_t n = 0;
		for (int i = 0; i < SALSA_LINES; i++)
			n += (size_t)snprintf(text + n, sizeof text - n, "%s\n",
					      i == harmless[k].line ? harmless[k].text : salsa[i]);
		if (harmless[k].line == ADDED)
			snprintf(text + n, sizeof text - n, "%s\n", harmless[k].text);
		fixture_recipe(text, &recipe);
		struct comparison out = compare(&recipe, formula_of("chile-salsa"));
		ck_assert_msg(out.verdict == VERDICT_TESTED, "%s: %s", harmless[k].text,
			      out.findings_n ? out.findings[0].text : "");
		recipe_release(&recipe);
	}
}
END_TEST

/* Sections are one recipe, and what stands behind the method is not lost. */
START_TEST(no_section_is_passed_over)
{
	static const char *const texts[] = {
	    "For the salsa:\n5 lb tomatoes\n2 lb chile peppers\n1 lb onions\n1 cup vinegar\n"
	    "For the topping:\n1 cup corn\n",
	    "5 lb tomatoes\n2 lb chile peppers\n1 lb onions\n1 cup vinegar\nMethod:\nBoil.\n"
	    "For the topping:\n1 cup cornstarch\n",
	    "5 lb tomatoes\n2 lb chile peppers\n1 lb onions\n1 cup vinegar\nMethod:\nBlend it.\n",
	    "5 lb tomatoes\n2 lb chile peppers\n1 lb onions\n1 cup vinegar\nMethod:\nThicken with "
	    "flour.\n",
	    "Onions first:\n1/2 lb onions\nthe rest:\n5 lb tomatoes\n2 lb chile peppers\n1 lb "
	    "onions\n1 cup vinegar\n",
	};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		struct recipe recipe;
		fixture_recipe(texts[i], &recipe);
		ck_assert_msg(fixture_verdict(&recipe, NULL) != VERDICT_TESTED, "%s", texts[i]);
		recipe_release(&recipe);
	}
}
END_TEST

/* The bottle at hand counts as well as the recipe's words: the weaker of them. */
START_TEST(the_label_and_the_recipe_must_both_do)
{
	static const struct compare_facts weak = {VINEGAR_LABELLED, 4000};
	static const struct compare_facts unknown = {VINEGAR_UNKNOWN, 0};
	struct recipe recipe;
	static struct comparison out;
	fixture_recipe("5 lb tomatoes\n2 lb chile peppers\n1 lb onions\n1 cup vinegar, 5 %\n",
		       &recipe);
	recipe_compare(fixture_formulas(), &recipe, &weak, NULL, &out);
	ck_assert_int_eq(out.verdict, VERDICT_REFUSED);
	recipe_compare(fixture_formulas(), &recipe, &unknown, NULL, &out);
	ck_assert_int_eq(out.verdict, VERDICT_REFUSED);
	recipe_release(&recipe);
}
END_TEST

/* uw-ext: any change of salt amount or kind in sauerkraut or fermented pickles. */
START_TEST(the_salt_of_a_ferment_is_its_very_kind)
{
	static const struct {
		const char *salt;
		enum verdict verdict;
	} salts[] = {
	    {"3/4 cup canning salt", VERDICT_TESTED},    {"3/4 cup pickling salt", VERDICT_TESTED},
	    {"3/4 cup salt", VERDICT_UNCLEAR},           {"3/4 cup kosher salt", VERDICT_REFUSED},
	    {"3/4 cup sea salt", VERDICT_REFUSED},       {"3/4 cup flake salt", VERDICT_REFUSED},
	    {"0.675 cup canning salt", VERDICT_REFUSED}, {"1 cup canning salt", VERDICT_REFUSED},
	};
	for (size_t i = 0; i < sizeof salts / sizeof *salts; i++) {
		char text[200];
		struct recipe recipe;
		snprintf(text, sizeof text, "25 lb cabbage, shredded\n%s\n", salts[i].salt);
		fixture_recipe(text, &recipe);
		ck_assert_msg(fixture_verdict(&recipe, formula_of("sauerkraut")) ==
				  salts[i].verdict,
			      "%s", salts[i].salt);
		recipe_release(&recipe);
	}
}
END_TEST

/* No tenth hides in a very small or very large recipe. */
START_TEST(any_size_is_judged_alike)
{
	static const struct rational sizes[] = {{1, 1000}, {1000, 1}};
	const struct formula *formula = formula_of("chile-salsa");
	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		struct recipe recipe;
		struct error err;
		fixture_recipe_of(formula, &recipe);
		ck_assert(recipe_scale(&recipe, sizes[i], &err));
		ck_assert_int_eq(fixture_verdict(&recipe, formula), VERDICT_TESTED);
		for (size_t k = 0; k < recipe.lines_n; k++)
			if (strstr(recipe.lines[k].text, "vinegar"))
				fixture_scale_line(&recipe, k, 9, 10);
		ck_assert_int_eq(fixture_verdict(&recipe, formula), VERDICT_REFUSED);
		recipe_release(&recipe);
	}
}
END_TEST

/* --- Every formula, with one line more or one acid line spoilt --- */

START_TEST(nothing_added_to_any_formula_is_tested)
{
	static const char *const added[] = {"1 cup corn (optional)",
					    "2 tbsp cornstarch",
					    "1 cup cream",
					    "1 cup olive oil",
					    "1 cup rice",
					    "1 lb chicken",
					    "2 heads garlic",
					    "corn, to taste",
					    "1 breakfast cup leeks",
					    "1 cup zorblax",
					    "1 lb mushrooms, sliced"};
	const struct formula_set *set = fixture_formulas();
	size_t checks = 0;
	for (size_t i = 0; i < formula_set_count(set); i++) {
		const struct formula *formula = formula_set_at(set, i);
		struct recipe recipe;
		if (!fixture_is_measured(formula))
			continue;
		fixture_recipe_of(formula, &recipe);
		fixture_add_line(&recipe, added[0]);
		for (size_t k = 0; k < sizeof added / sizeof *added; k++) {
			fixture_set_line(&recipe, recipe.lines_n - 1, added[k]);
			ck_assert_msg(fixture_verdict(&recipe, formula) != VERDICT_TESTED,
				      "%s %s: %s", formula->food->slug, formula->variant, added[k]);
			ck_assert_msg(fixture_verdict(&recipe, NULL) != VERDICT_TESTED,
				      "%s %s, any: %s", formula->food->slug, formula->variant,
				      added[k]);
			checks++;
		}
		recipe_release(&recipe);
	}
	ck_assert_uint_gt(checks, 1500);
}
END_TEST

static void check_acid_line(const struct formula *formula, struct recipe *recipe, size_t line)
{
	static const char *const spoil[] = {" (optional)", ", or less to taste",
					    ", diluted with water"};
	char text[INGREDIENT_LINE_MAX + 1], spoilt_text[2 * INGREDIENT_LINE_MAX];
	snprintf(text, sizeof text, "%s", recipe->lines[line].text);
	for (size_t k = 0; k < sizeof spoil / sizeof *spoil; k++) {
		snprintf(spoilt_text, sizeof spoilt_text, "%s%s", text, spoil[k]);
		fixture_set_line(recipe, line, spoilt_text);
		ck_assert_msg(fixture_verdict(recipe, formula) != VERDICT_TESTED, "%s %s: %s",
			      formula->food->slug, formula->variant, spoilt_text);
		ck_assert_msg(fixture_verdict(recipe, NULL) != VERDICT_TESTED, "%s %s, any: %s",
			      formula->food->slug, formula->variant, spoilt_text);
	}
	fixture_set_line(recipe, line, text);
}

START_TEST(no_spoilt_acid_of_any_formula_is_tested)
{
	const struct formula_set *set = fixture_formulas();
	size_t checks = 0;
	for (size_t i = 0; i < formula_set_count(set); i++) {
		const struct formula *formula = formula_set_at(set, i);
		struct fixture_lines lines;
		struct recipe recipe;
		if (!fixture_is_measured(formula))
			continue;
		fixture_lines_of(formula, &lines);
		fixture_recipe_of(formula, &recipe);
		for (size_t k = 0; k < lines.n; k++) {
			const char *role = lines.line[k]->role;
			bool acid = strcmp(role, "vinegar") == 0 || strcmp(role, "lemon-lime") == 0;
			if (!acid || strstr(lines.line[k]->note, "optional"))
				continue;
			check_acid_line(formula, &recipe, k);
			checks++;
		}
		recipe_release(&recipe);
	}
	ck_assert_uint_gt(checks, 80);
}
END_TEST

/* --- Names and sentences --- */

/* Whatever refuses or asks says what to do, and its name and source can be looked up. */
START_TEST(each_difference_is_explained)
{
	const struct reference_tables *tables = reference_tables_edition();
	const struct compare_rule *rule;
	size_t n = 0;
	for (; (rule = compare_rule_at(n)) != NULL; n++) {
		const struct change_rule_row *row = compare_rule_published(tables, rule, 0);
		ck_assert_uint_gt(strlen(rule->says), 10);
		ck_assert_msg(row != NULL, "%s", rule->slug);
		for (size_t i = 0; (row = compare_rule_published(tables, rule, i)) != NULL; i++)
			ck_assert_ptr_nonnull(row->from.source);
		for (size_t i = 0; i < n; i++)
			ck_assert_str_ne(compare_rule_at(i)->slug, rule->slug);
	}
	ck_assert_uint_gt(n, 40);
}
END_TEST

static const struct compare_rule *rule_of(const char *slug)
{
	const struct compare_rule *rule;
	for (size_t i = 0; (rule = compare_rule_at(i)) != NULL; i++)
		if (strcmp(rule->slug, slug) == 0)
			return rule;
	return NULL;
}

static bool is_cited(const struct compare_rule *rule, const struct citation *from)
{
	const struct change_rule_row *row;
	for (size_t i = 0;
	     (row = compare_rule_published(reference_tables_edition(), rule, i)) != NULL; i++)
		if (&row->from == from)
			return true;
	return false;
}

START_TEST(a_finding_cites_what_its_rule_rests_on)
{
	char text[2000];
	struct recipe recipe;
	size_t n = 0;
	for (int i = 0; i < SALSA_LINES; i++)
		n += (size_t)snprintf(text + n, sizeof text - n, "%s\n",
				      i == spoilt[_i].line ? spoilt[_i].text : salsa[i]);
	if (spoilt[_i].line == ADDED)
		snprintf(text + n, sizeof text - n, "%s\n", spoilt[_i].text);
	fixture_recipe(text, &recipe);
	struct comparison out = compare(&recipe, formula_of("chile-salsa"));
	for (size_t i = 0; i < out.findings_n; i++) {
		const struct compare_finding *f = &out.findings[i];
		const struct compare_rule *rule = rule_of(f->rule);
		if (strncmp(f->rule, "vinegar-", 8) == 0 && !rule)
			continue; /* a rule of the engine, db/rules.txt */
		ck_assert_msg(rule != NULL, "%s", f->rule);
		ck_assert_msg(is_cited(rule, f->from), "%s", f->rule);
		ck_assert_msg(f->level < LEVEL_ASK ||
				  (*rule->instead && strstr(f->text, rule->instead)),
			      "%s: %s", f->rule, f->text);
	}
	recipe_release(&recipe);
}
END_TEST

Suite *doubt_suite(void)
{
	const int spoilt_n = (int)(sizeof spoilt / sizeof *spoilt);
	Suite *suite = suite_create("doubt");
	TCase *tests = tcase_create("doubt");
	tcase_set_timeout(tests, 900);
	tcase_add_loop_test(tests, a_spoilt_salsa_is_never_tested, 0, spoilt_n);
	tcase_add_loop_test(tests, a_finding_cites_what_its_rule_rests_on, 0, spoilt_n);
	tcase_add_test(tests, a_harmless_way_of_writing_is_tested);
	tcase_add_test(tests, no_section_is_passed_over);
	tcase_add_test(tests, the_label_and_the_recipe_must_both_do);
	tcase_add_test(tests, the_salt_of_a_ferment_is_its_very_kind);
	tcase_add_test(tests, any_size_is_judged_alike);
	tcase_add_test(tests, nothing_added_to_any_formula_is_tested);
	tcase_add_test(tests, no_spoilt_acid_of_any_formula_is_tested);
	tcase_add_test(tests, each_difference_is_explained);
	suite_add_tcase(suite, tests);
	return suite;
}
