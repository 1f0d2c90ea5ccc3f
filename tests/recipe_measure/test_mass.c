/* What measures and counts weigh. Figures: USDA Standard Reference 28, the weight file. */
#include <math.h>
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "suites.h"

#define US_CUP_ML 236.5882365 /* NIST Handbook 44, appendix C */
#define US_TSP_ML 4.92892159375

static struct mass_rows by_volume(const char *name, const char *form, enum kitchen_unit unit)
{
	struct mass_rows rows;
	if (!mass_by_volume(reference_tables_edition(), name, form, unit, &rows))
		ck_abort_msg("nothing for '%s', '%s'", name, form);
	return rows;
}

static struct mass_rows by_count(const char *name, const char *form, const char *size)
{
	struct mass_rows rows;
	if (!mass_by_count(reference_tables_edition(), name, form, size, &rows))
		ck_abort_msg("nothing for %s '%s', '%s'", size, name, form);
	return rows;
}

static void spans(const struct mass_rows *rows, double least, double most, double of)
{
	ck_assert_double_eq_tol(rational_double(rows->least) * of, least, 1e-9);
	ck_assert_double_eq_tol(rational_double(rows->most) * of, most, 1e-9);
}

/* NDB 19334: 1 cup packed = 220 g, 1 tsp packed = 4.6 g */
START_TEST(form_in_the_name_or_apart)
{
	static const char *const names[] = {"brown sugar, packed", "packed brown sugar",
					    "Sugar, Brown (packed)"};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		struct mass_rows rows = by_volume(names[i], "", UNIT_CUP);
		spans(&rows, 220, 220, US_CUP_ML);
		ck_assert_uint_eq(rows.foods_n, 1);
		ck_assert(!rows.form_ignored);
	}
	struct mass_rows apart = by_volume("brown sugar", "packed", UNIT_CUP);
	spans(&apart, 220, 220, US_CUP_ML);
	struct mass_rows spoon = by_volume("brown sugar", "packed", UNIT_TEASPOON);
	spans(&spoon, 4.6, 4.6, US_TSP_ML);
	/* No row in pints: the cup, rounded least, stands for them. */
	struct mass_rows pint = by_volume("brown sugar", "packed", UNIT_PINT);
	spans(&pint, 220, 220, US_CUP_ML);
}
END_TEST

/* NDB 11282: 1 cup chopped = 160 g, sliced = 115 g; NDB 11284: dehydrated flakes 56 g */
START_TEST(forms_make_a_range)
{
	struct mass_rows chopped = by_volume("onions", "finely chopped", UNIT_CUP);
	spans(&chopped, 160, 160, US_CUP_ML);
	struct mass_rows any = by_volume("onion", "", UNIT_CUP);
	spans(&any, 56, 160, US_CUP_ML);
	ck_assert_uint_eq(any.foods_n, 1); /* no onion powder, no green onion */
	struct mass_rows odd = by_volume("onion", "grated", UNIT_CUP);
	ck_assert(odd.form_ignored);
	spans(&odd, 56, 160, US_CUP_ML);
	struct mass_rows green = by_volume("green onion, chopped", "", UNIT_CUP);
	spans(&green, 100, 100, US_CUP_ML); /* NDB 11291 */
}
END_TEST

/* NDB 02053 238 g, 02048 and 02068 239 g, 02069 255 g a cup */
START_TEST(several_foods_make_a_range)
{
	struct mass_rows any = by_volume("vinegar", "", UNIT_CUP);
	ck_assert_uint_eq(any.foods_n, 4);
	spans(&any, 238, 255, US_CUP_ML);
	struct mass_rows cider = by_volume("cider vinegar", "", UNIT_CUP);
	ck_assert_uint_eq(cider.foods_n, 1);
	spans(&cider, 239, 239, US_CUP_ML);
}
END_TEST

/* NDB 11282: small 70 g, medium 110 g, large 150 g; NDB 11215: 1 clove = 3 g */
START_TEST(counts)
{
	struct mass_rows medium = by_count("onion", "", "medium");
	spans(&medium, 110, 110, 1);
	struct mass_rows chopped = by_count("onion", "chopped", "medium");
	spans(&chopped, 110, 110, 1);
	ck_assert(chopped.form_ignored);
	struct mass_rows any = by_count("onions", "", "");
	spans(&any, 70, 150, 1);
	struct mass_rows cloves = by_count("garlic", "", "cloves");
	spans(&cloves, 3, 3, 1);
	struct mass_rows named = by_count("cloves of garlic", "minced", "");
	spans(&named, 3, 3, 1);
}
END_TEST

/* NDB 09021: 1 apricot = 35 g; NDB 09032: 1 dried half = 3.5 g */
START_TEST(a_part_is_not_the_whole)
{
	struct mass_rows whole = by_count("apricot", "", "");
	spans(&whole, 35, 35, 1);
	struct mass_rows half = by_count("apricot", "dried", "halves");
	spans(&half, 3.5, 3.5, 1);
	struct mass_rows leaf = by_count("cabbage", "raw", "leaves");
	ck_assert_str_eq(leaf.rows[0].row->volume_unit, "leaf");
}
END_TEST

/* NDB 09316: "1 pint as purchased, yields 357 g"; which pint the box holds is not said. */
START_TEST(a_box_of_berries_is_no_pint)
{
	struct mass_rows rows = by_volume("strawberries", "as purchased", UNIT_PINT);
	ck_assert(rows.form_ignored);
	for (size_t i = 0; i < rows.rows_n; i++)
		ck_assert_str_ne(rows.rows[i].row->volume_unit, "pint");
}
END_TEST

START_TEST(what_nothing_says)
{
	static const char *const names[] = {
	    "", " , ", "unicorn", "tomato chutney", "canning salt", "chopped raw", "cup"};
	const struct reference_tables *tables = reference_tables_edition();
	struct mass_rows rows;
	char lengthy[3000];
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		ck_assert_msg(!mass_by_volume(tables, names[i], "", UNIT_CUP, &rows), "'%s'",
			      names[i]);
		ck_assert_uint_eq(rows.rows_n, 0);
		ck_assert(!mass_by_count(tables, names[i], "", "", &rows));
	}
	memset(lengthy, 'o', sizeof lengthy - 1);
	lengthy[sizeof lengthy - 1] = '\0';
	ck_assert(!mass_by_volume(tables, lengthy, "", UNIT_CUP, &rows));
	ck_assert(!mass_by_volume(tables, "onion", lengthy, UNIT_CUP, &rows));
	ck_assert(!mass_by_count(tables, "onion", "", "humongous", &rows));
}
END_TEST

/* Each food of the table is found by its own name, each row's grams within the range. */
START_TEST(every_row_is_found)
{
	const struct reference_tables *tables = reference_tables_edition();
	size_t found = 0;
	for (size_t i = 0; i < tables->density_n; i++) {
		const struct density_row *row = &tables->density[i];
		enum kitchen_unit unit;
		enum measuring_system ignored;
		struct kitchen_measure measure;
		struct mass_rows rows;
		if (!kitchen_unit_find(row->volume_unit, &unit, &ignored) ||
		    kitchen_unit_is_mass(unit) || unit == UNIT_PINT)
			continue;
		ck_assert_msg(mass_by_volume(tables, row->food, row->form, unit, &rows), "%s; %s",
			      row->food, row->form);
		ck_assert(kitchen_measure_find(tables, unit, SYSTEM_US, &measure));
		double grams = strtod(row->grams, NULL) / rational_double(measure.amount);
		ck_assert_double_le(rational_double(rows.least), grams * (1 + 1e-12));
		ck_assert_double_ge(rational_double(rows.most), grams * (1 - 1e-12));
		found++;
	}
	ck_assert_uint_gt(found, 400);
}
END_TEST

Suite *mass_suite(void)
{
	Suite *suite = suite_create("weights of measures");
	TCase *tests = tcase_create("mass");
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, form_in_the_name_or_apart);
	tcase_add_test(tests, forms_make_a_range);
	tcase_add_test(tests, several_foods_make_a_range);
	tcase_add_test(tests, counts);
	tcase_add_test(tests, a_part_is_not_the_whole);
	tcase_add_test(tests, a_box_of_berries_is_no_pint);
	tcase_add_test(tests, what_nothing_says);
	tcase_add_test(tests, every_row_is_found);
	suite_add_tcase(suite, tests);
	return suite;
}
