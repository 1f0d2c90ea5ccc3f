/* Recipes out of pages and JSON. All pages are invented. */
#include <stdio.h>
#include <string.h>

#include "jarwright/import.h"
#include "jarwright/recipe.h"
#include "suite.h"

static struct imported imported;
static struct error err;

static void setup(void)
{
	memset(&imported, 0, sizeof imported);
	memset(&err, 0, sizeof err);
}

static void teardown(void)
{
	imported_release(&imported);
}

static void refused(const char *bytes, size_t length, const char *because)
{
	ck_assert(!import_recipe(bytes, length, &imported, &err));
	ck_assert_ptr_null(imported.text);
	ck_assert_ptr_null(imported.title);
	if (!strstr(err.text, because))
		ck_abort_msg("'%s' does not say '%s'", err.text, because);
	memset(&err, 0, sizeof err);
}

/* What comes out must be a recipe's text, too. */
static void comes_to(const char *page, const char *text)
{
	struct recipe recipe;
	if (!import_recipe(page, strlen(page), &imported, &err))
		ck_abort_msg("%s", err.text);
	ck_assert_str_eq(imported.text, text);
	if (!recipe_read("test", SYSTEM_US, imported.text, strlen(imported.text), &recipe, &err))
		ck_abort_msg("%s", err.text);
	recipe_release(&recipe);
	imported_release(&imported);
}

#define RELISH                                                                                     \
	"{\"@context\":\"https://schema.org\",\"@type\":\"Recipe\",\"name\":\"Green &amp; good\"," \
	"\"recipeYield\":\"4 pints\",\"recipeIngredient\":[\"2 cups\\u00a0 peppers\","             \
	"\"&frac12; cup vinegar, "                                                                 \
	"<b>5%</b>\"],\"recipeInstructions\":[{\"@type\":\"HowToSection\","                        \
	"\"itemListElement\":[{\"@type\":\"HowToStep\",\"text\":\"Chop.\"},\"Boil.\"]}]}"
#define RELISH_TEXT                                                                                \
	"# Green & good\n# makes 4 pints\nIngredients:\n2 cups peppers\n½ cup vinegar, 5%\n\n"    \
	"Method:\nChop.\nBoil.\n"

START_TEST(json_alone)
{
	comes_to(RELISH, RELISH_TEXT);
	comes_to("\n [" RELISH "]", RELISH_TEXT);
}
END_TEST

START_TEST(json_in_a_graph_and_in_other_things)
{
	comes_to("{\"@graph\":[{\"@type\":\"WebPage\"},{\"mainEntity\":" RELISH "}]}", RELISH_TEXT);
}
END_TEST

START_TEST(json_in_the_script_of_a_page)
{
	comes_to("<!doctype html><html><head><script type=\"text/javascript\">var a = {};</script>"
		 "<script type=\"application/ld+json\">" RELISH "</script></head><body>"
		 "<p>1 cup of something else</p></body></html>",
		 RELISH_TEXT);
}
END_TEST

START_TEST(the_same_recipe_twice_is_one)
{
	comes_to("[" RELISH "," RELISH "]", RELISH_TEXT);
}
END_TEST

START_TEST(types_and_older_names)
{
	static const char text[] = "Ingredients:\n1 cup plums\n2 cups sugar\n";
	comes_to("{\"@type\":[\"Thing\",\"http://schema.org/Recipe\"],"
		 "\"ingredients\":\"1 cup plums\\n\\n  2 cups\\tsugar\"}",
		 text);
}
END_TEST

START_TEST(microdata)
{
	comes_to("<html><body><h1 itemprop=name>Not this one</h1>"
		 "<div itemscope itemtype=\"http://schema.org/Recipe\"><h2 "
		 "itemprop=\"name\">Plum\n sauce</h2>"
		 "<span itemprop=author itemscope itemtype=\"http://schema.org/Person\">"
		 "<b itemprop=name>Nobody</b></span>"
		 "<ul><li itemprop=\"recipeIngredient\">2 <b>lb</b>\n plums</li>"
		 "<li itemprop=\"ingredients\">1 cup sugar</ul>"
		 "<meta itemprop=recipeYield content=\"3 pints\">"
		 "<ol itemprop=recipeInstructions><li>Chop.<li>Boil.</ol></div></body></html>",
		 "# Plum sauce\n# makes 3 pints\nIngredients:\n2 lb plums\n1 cup "
		 "sugar\n\nMethod:\nChop.\n"
		 "Boil.\n");
}
END_TEST

START_TEST(json_goes_before_microdata)
{
	comes_to("<script type='application/ld+json'>" RELISH "</script><div itemscope "
		 "itemtype='https://schema.org/Recipe'><p itemprop=ingredients>1 cup salt</div>",
		 RELISH_TEXT);
}
END_TEST

static const struct {
	const char *page;
	const char *because;
} bad[] = {
    {"<html><body>1 cup sugar</body></html>", "no recipe of schema.org"},
    {"{\"@type\":\"Recipe\",\"name\":\"empty\"}", "no recipe of schema.org"},
    {"{\"@type\":\"Recipe\"\n\"a\":1}", "line 2"},
    {"<script type='application/ld+json'>{\"a\":</script>", "script 1, line 1"},
    {"{\"@type\":\"Recipe\",\"recipeIngredient\":[\"1 cup plums\",7]}", "ingredient 2"},
    {"{\"@type\":\"Recipe\",\"recipeIngredient\":[\"1 cup plums\",\"#10 can beans\"]}",
     "ingredient 2, '#10 can beans'"},
    {"{\"@type\":\"Recipe\",\"recipeIngredient\":[\"Method\",\"1 cup plums\"]}", "ingredient 1"},
    {"[{\"@type\":\"Recipe\",\"name\":\"A\",\"recipeIngredient\":[\"1 cup plums\"]},"
     "{\"@type\":\"Recipe\",\"name\":\"B\",\"recipeIngredient\":[\"2 cups plums\"]}]",
     "'A' and 'B'"},
    {"<p>\n\xff</p>", "line 2: it is not valid UTF-8"},
    {"{\"a\":\"\n\n\xc3(\"}", "line 3: it is not valid UTF-8"},
    {"", "nothing in it"},
};

START_TEST(bad_pages_are_refused)
{
	refused(bad[_i].page, strlen(bad[_i].page), bad[_i].because);
}
END_TEST

START_TEST(a_nul_byte_is_refused_with_its_line)
{
	static const char page[] = "<html>\n<p>1 cup\0sugar";
	refused(page, sizeof page - 1, "line 2: a NUL byte");
	static const char escaped[] =
	    "{\"@type\":\"Recipe\",\"recipeIngredient\":[\"1 cup\\u0000\"]}";
	refused(escaped, sizeof escaped - 1, "line 1");
}
END_TEST

START_TEST(fifty_megabytes_are_refused)
{
	size_t length = 50000000;
	char *page = malloc(length);
	memset(page, 'a', length);
	refused(page, length, "longer than 8388608 bytes");
	free(page);
}
END_TEST

static void nested(const char *open, size_t times, const char *because)
{
	size_t n = strlen(open);
	char *page = malloc(n * times + 1);
	for (size_t i = 0; i < times; i++)
		memcpy(page + n * i, open, n);
	page[n * times] = '\0';
	refused(page, n * times, because);
	free(page);
}

START_TEST(deep_nesting_is_refused)
{
	nested("[", 1000000, "nested more than 200 deep");
	nested("{\"a\":", 500000, "nested more than 200 deep");
	nested("<div>", 500000, "nested more than 200 deep");
	nested("<b>", 500000, "nested more than 200 deep");
}
END_TEST

/* Whole JSON, deeper than our limit and within the parser's. */
START_TEST(depth_counts_from_both_sides)
{
	char page[2048];
	for (int depth = 198; depth <= 202; depth++) {
		size_t n = 0;
		memset(page, '[', (size_t)depth);
		n += (size_t)depth;
		memset(page + n, ']', (size_t)depth);
		n += (size_t)depth;
		/* The outermost list is at depth 0. */
		refused(page, n,
			depth > IMPORT_DEPTH_MAX + 1 ? "nested more than 200" : "no recipe");
	}
}
END_TEST

static Suite *import_suite(void)
{
	Suite *suite = suite_create("import");
	TCase *tcase = tcase_create("import");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_set_timeout(tcase, 60);
	tcase_add_test(tcase, json_alone);
	tcase_add_test(tcase, json_in_a_graph_and_in_other_things);
	tcase_add_test(tcase, json_in_the_script_of_a_page);
	tcase_add_test(tcase, the_same_recipe_twice_is_one);
	tcase_add_test(tcase, types_and_older_names);
	tcase_add_test(tcase, microdata);
	tcase_add_test(tcase, json_goes_before_microdata);
	tcase_add_loop_test(tcase, bad_pages_are_refused, 0, (int)(sizeof bad / sizeof *bad));
	tcase_add_test(tcase, a_nul_byte_is_refused_with_its_line);
	tcase_add_test(tcase, fifty_megabytes_are_refused);
	tcase_add_test(tcase, deep_nesting_is_refused);
	tcase_add_test(tcase, depth_counts_from_both_sides);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(import_suite())
