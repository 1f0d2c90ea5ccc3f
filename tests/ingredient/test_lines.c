/*
 * Ingredient lines one by one: packs, sums, alternatives, refusals. How a line is meant is
 * common practice, no source; the arithmetic of fractions needs none.
 */
#include <string.h>

#include "jarwright/ingredient.h"
#include "suites.h"

static struct ingredient_line line;
static struct error err;

static void read_line(const char *text)
{
	err = (struct error){.kind = ERROR_NONE};
	bool read = ingredient_line_parse(text, strlen(text), &line, &err);
	ck_assert_msg(read, "'%s': %s", text, err.text);
}

static void check_refused(const char *text, size_t length, const char *says)
{
	err = (struct error){.kind = ERROR_NONE};
	ck_assert_msg(!ingredient_line_parse(text, length, &line, &err), "'%s' is read", text);
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert_msg(strstr(err.text, says) != NULL, "'%s' lacks '%s'", err.text, says);
}

static void check_amount(const struct ingredient_amount *amount, int64_t num, int64_t den,
			 const char *unit)
{
	ck_assert(amount->present);
	ck_assert_int_eq(amount->quantity.num, num);
	ck_assert_int_eq(amount->quantity.den, den);
	ck_assert_str_eq(amount->unit, unit);
}

START_TEST(test_both_amounts_are_kept)
{
	read_line("150g/5½oz butter");
	ck_assert_str_eq(line.unit, "g");
	check_amount(&line.alternative, 11, 2, "oz");
	read_line("1 cup (240 ml) water");
	check_amount(&line.alternative, 240, 1, "ml");
	read_line("2 lb or 900 g plums");
	check_amount(&line.alternative, 900, 1, "g");
	read_line("6 large peaches (about 3 lb)");
	check_amount(&line.alternative, 3, 1, "lb");
	ck_assert_str_eq(line.size, "large");
	ck_assert_str_eq(line.note, "about 3 lb");
}
END_TEST

START_TEST(test_packs_say_what_is_in_each)
{
	static const char *const lines[] = {
	    "2 x 400g tins tomatoes", "2 × 400 g tins tomatoes",      "2 (400 g) tins tomatoes",
	    "2 400-g tins tomatoes",  "2 tins tomatoes (400 g each)", "2 tins (400 g) tomatoes",
	};
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		read_line(lines[i]);
		ck_assert_int_eq(line.quantity.num, 2);
		ck_assert_str_eq(line.unit, "can");
		ck_assert_str_eq(line.ingredient, "tomatoes");
		check_amount(&line.pack, 400, 1, "g");
	}
	read_line("14-oz can tomatoes");
	ck_assert_int_eq(line.quantity.num, 1);
	check_amount(&line.pack, 14, 1, "oz");
}
END_TEST

START_TEST(test_sums_keep_both_parts)
{
	read_line("1 cup plus 2 tablespoons sugar");
	ck_assert_str_eq(line.unit, "cup");
	check_amount(&line.plus, 2, 1, "tbsp");
	read_line("1 lb 4 oz strawberries");
	check_amount(&line.plus, 4, 1, "oz");
	ck_assert_str_eq(line.ingredient, "strawberries");
	read_line("1 c. sugar + 2 T.");
	check_amount(&line.plus, 2, 1, "tbsp");
	/* Two things on a line: neither the sum nor the certainty of one. */
	read_line("1 cup sugar + 2 tbsp water");
	ck_assert(!line.plus.present);
	ck_assert_str_eq(line.ingredient, "sugar + 2 tbsp water");
	ck_assert_int_eq(line.sure, INGREDIENT_UNSURE);
}
END_TEST

/* A far end that is lost makes the amount too small. 16 oz are a pound (NIST Handbook 44). */
START_TEST(test_ranges_from_one_unit_to_another)
{
	static const char falls[] = "1 kg to 500 g plums", differs[] = "1 tsp to 1 tbsp ginger";
	static const char other[] = "1 lb to 1 cup sugar";
	read_line("500 g to 1 kg gooseberries");
	ck_assert_int_eq(line.quantity.num, 500);
	ck_assert_int_eq(line.quantity_max.num, 1000);
	ck_assert_str_eq(line.unit, "g");
	ck_assert_str_eq(line.ingredient, "gooseberries");
	ck_assert_int_eq(line.sure, INGREDIENT_CERTAIN);
	read_line("2 lb - 40 oz plums");
	ck_assert_int_eq(line.quantity_max.num, 5);
	ck_assert_int_eq(line.quantity_max.den, 2);
	check_refused(falls, strlen(falls), "the range falls");
	check_refused(differs, strlen(differs), "write both in one unit");
	check_refused(other, strlen(other), "write both in one unit");
}
END_TEST

START_TEST(test_fractions_are_exact)
{
	read_line("1 1/3 cups sugar");
	ck_assert_int_eq(line.quantity.num, 4);
	ck_assert_int_eq(line.quantity.den, 3);
	read_line("0.1 g salt");
	ck_assert_int_eq(line.quantity.num, 1);
	ck_assert_int_eq(line.quantity.den, 10);
}
END_TEST

START_TEST(test_notes_and_flags)
{
	read_line("salt, to taste");
	ck_assert(line.to_taste && !line.has_quantity);
	ck_assert_str_eq(line.note, "to taste");
	ck_assert_int_eq(line.sure, INGREDIENT_UNSURE);
	read_line("1 tsp salt (optional)");
	ck_assert(line.optional);
	read_line("3 tbsp lemon or lime juice");
	ck_assert(line.alternatives);
	ck_assert_int_eq(line.sure, INGREDIENT_UNSURE);
	read_line("2 cups vinegar (5% acidity)");
	ck_assert_str_eq(line.note, "5% acidity");
	read_line("juice of 2 lemons (about 6 tbsp), strained");
	ck_assert_str_eq(line.ingredient, "lemon juice");
	check_amount(&line.alternative, 6, 1, "tbsp");
	ck_assert_str_eq(line.preparation, "strained");
}
END_TEST

START_TEST(test_sure)
{
	read_line("2 cups sugar");
	ck_assert_int_eq(line.sure, INGREDIENT_CERTAIN);
	read_line("about 2 cups sugar");
	ck_assert_int_eq(line.sure, INGREDIENT_LIKELY);
	read_line("2 cups frumenty");
	ck_assert_int_eq(line.sure, INGREDIENT_UNSURE);
	ck_assert_ptr_null(line.matched);
	ck_assert_str_eq(line.ingredient, "frumenty");
}
END_TEST

/* A word that makes another food of it keeps the two apart. */
START_TEST(test_near_names_do_not_match)
{
	static const char *const apart[][2] = {
	    {"kosher salt", "salt, table"}, {"rice vinegar", "vinegar, distilled white"},
	    {"dried apricots", "apricot"},  {"tomato paste", "tomato"},
	    {"garlic powder", "garlic"},    {"homemade vinegar", "vinegar"},
	    {"lemon juice", "lemon"},       {"green tomatoes", "tomato"},
	    {"celery seed", "celery"},      {"pickled beets", "beet"},
	};
	for (size_t i = 0; i < sizeof apart / sizeof *apart; i++) {
		const char *name = ingredient_match(apart[i][0], NULL);
		ck_assert_msg(!name || strcmp(name, apart[i][1]) != 0, "'%s' matched '%s'",
			      apart[i][0], name);
	}
}
END_TEST

START_TEST(test_refused)
{
	static const char *const refused[][2] = {
	    {"1,5 kg tomatoes", "comma"},
	    {"1,000 g sugar", "comma"},
	    {"sugar (0,5 kg)", "comma"},
	    {"0 cups sugar", "zero"},
	    {"0.0 g salt", "zero"},
	    {"0-1 cups sugar", "zero"},
	    {"-1 cup sugar", "negative"},
	    {"-½ cup sugar", "negative"},
	    {"3-2 cups sugar", "falls"},
	    {"1/0 cup sugar", "zero"},
	    {"", "empty"},
	    {"  \t ", "empty"},
	    {"2 cups", "names no ingredient"},
	    {"(optional)", "names no ingredient"},
	    {"99999999999999999999 g salt", ""},
	    {"1 cup \xFFsugar", "UTF-8"},
	    {"1 cup \x1B[31msugar", "control"},
	};
	for (size_t i = 0; i < sizeof refused / sizeof *refused; i++)
		check_refused(refused[i][0], strlen(refused[i][0]), refused[i][1]);
	check_refused("1 cup\0sugar", 11, "NUL");
	check_refused("1 cup sugar\xC2", 12, "UTF-8");
}
END_TEST

START_TEST(test_longest_line)
{
	char text[INGREDIENT_LINE_MAX + 1];
	memset(text, 'a', sizeof text);
	text[0] = '1';
	text[1] = text[3] = ' ';
	text[2] = 'g';
	ck_assert(ingredient_line_parse(text, INGREDIENT_LINE_MAX, &line, &err));
	ck_assert_uint_eq(strlen(line.ingredient), INGREDIENT_LINE_MAX - 4);
	check_refused(text, sizeof text, "401 bytes");
	for (size_t i = 4; i < sizeof text; i++)
		text[i] = i % 2 ? ',' : 'a';
	ck_assert(ingredient_line_parse(text, INGREDIENT_LINE_MAX, &line, &err));
	memset(text + 4, '(', sizeof text - 4);
	check_refused(text, INGREDIENT_LINE_MAX, "names no ingredient");
}
END_TEST

START_TEST(test_kinds)
{
	static const struct {
		const char *text;
		enum ingredient_line_kind kind;
	} kinds[] = {
	    {"", INGREDIENT_LINE_BLANK},
	    {" \t\r", INGREDIENT_LINE_BLANK},
	    {"# a remark", INGREDIENT_LINE_COMMENT},
	    {"Ingredients:", INGREDIENT_LINE_HEADING},
	    {"INGREDIENTS", INGREDIENT_LINE_HEADING},
	    {"For the brine:", INGREDIENT_LINE_HEADING},
	    {"Method:", INGREDIENT_LINE_METHOD},
	    {"Directions", INGREDIENT_LINE_METHOD},
	    {"2 cups sugar", INGREDIENT_LINE_INGREDIENT},
	    {"Salt: 5 g", INGREDIENT_LINE_INGREDIENT},
	};
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		ck_assert_int_eq(ingredient_line_kind(kinds[i].text, strlen(kinds[i].text)),
				 kinds[i].kind);
}
END_TEST

Suite *lines_suite(void)
{
	Suite *suite = suite_create("ingredient: lines");
	TCase *tcase = tcase_create("lines");
	tcase_add_test(tcase, test_both_amounts_are_kept);
	tcase_add_test(tcase, test_packs_say_what_is_in_each);
	tcase_add_test(tcase, test_sums_keep_both_parts);
	tcase_add_test(tcase, test_ranges_from_one_unit_to_another);
	tcase_add_test(tcase, test_fractions_are_exact);
	tcase_add_test(tcase, test_notes_and_flags);
	tcase_add_test(tcase, test_sure);
	tcase_add_test(tcase, test_near_names_do_not_match);
	tcase_add_test(tcase, test_refused);
	tcase_add_test(tcase, test_longest_line);
	tcase_add_test(tcase, test_kinds);
	suite_add_tcase(suite, tcase);
	return suite;
}
