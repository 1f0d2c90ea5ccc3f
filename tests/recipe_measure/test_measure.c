/* Kitchen measures: their names, their rows, whose they are. */
#include <inttypes.h>
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "suites.h"

static struct kitchen_measure find(enum kitchen_unit unit, enum measuring_system system)
{
	struct kitchen_measure m;
	if (!kitchen_measure_find(reference_tables_edition(), unit, system, &m))
		ck_abort_msg("no %s %s", measuring_system_word(system),
			     kitchen_unit_name(unit, false));
	return m;
}

static void check_unit(const char *words, enum kitchen_unit unit, enum measuring_system system)
{
	enum kitchen_unit found;
	enum measuring_system of;
	if (!kitchen_unit_find(words, &found, &of))
		ck_abort_msg("'%s' is not understood", words);
	ck_assert_msg(found == unit && of == system, "'%s' is taken for %s %s", words,
		      measuring_system_word(of), kitchen_unit_name(found, false));
}

/* Spellings: common practice, no source. */
START_TEST(units_as_written)
{
	static const struct {
		const char *words;
		enum kitchen_unit unit;
		enum measuring_system system;
	} cases[] = {
	    {"cup", UNIT_CUP, SYSTEM_UNSTATED},
	    {"Cups", UNIT_CUP, SYSTEM_UNSTATED},
	    {"c.", UNIT_CUP, SYSTEM_UNSTATED},
	    {"T", UNIT_TABLESPOON, SYSTEM_UNSTATED},
	    {"t", UNIT_TEASPOON, SYSTEM_UNSTATED},
	    {"t.", UNIT_TEASPOON, SYSTEM_UNSTATED},
	    {"Tbsp.", UNIT_TABLESPOON, SYSTEM_UNSTATED},
	    {"tablespoons", UNIT_TABLESPOON, SYSTEM_UNSTATED},
	    {"tsps", UNIT_TEASPOON, SYSTEM_UNSTATED},
	    {"dessertspoon", UNIT_DESSERTSPOON, SYSTEM_UNSTATED},
	    {"fl. oz.", UNIT_FLUID_OUNCE, SYSTEM_UNSTATED},
	    {"fluid ounces", UNIT_FLUID_OUNCE, SYSTEM_UNSTATED},
	    {"pts", UNIT_PINT, SYSTEM_UNSTATED},
	    {"qt", UNIT_QUART, SYSTEM_UNSTATED},
	    {"gal", UNIT_GALLON, SYSTEM_UNSTATED},
	    {"gills", UNIT_GILL, SYSTEM_UNSTATED},
	    {"mL", UNIT_MILLILITRE, SYSTEM_UNSTATED},
	    {"litres", UNIT_LITRE, SYSTEM_UNSTATED},
	    {"dl", UNIT_DECILITRE, SYSTEM_UNSTATED},
	    {"oz", UNIT_OUNCE, SYSTEM_UNSTATED},
	    {"lbs", UNIT_POUND, SYSTEM_UNSTATED},
	    {"grams", UNIT_GRAM, SYSTEM_UNSTATED},
	    {"kg", UNIT_KILOGRAM, SYSTEM_UNSTATED},
	    {"sticks of butter", UNIT_STICK_OF_BUTTER, SYSTEM_UNSTATED},
	    {"imperial pint", UNIT_PINT, SYSTEM_IMPERIAL},
	    {"UK pints", UNIT_PINT, SYSTEM_IMPERIAL},
	    {"US cups", UNIT_CUP, SYSTEM_US},
	    {"U.S. dry quart", UNIT_DRY_QUART, SYSTEM_US},
	    {"New Zealand cup", UNIT_CUP, SYSTEM_NEW_ZEALAND},
	    {"Australian tablespoon", UNIT_TABLESPOON, SYSTEM_AUSTRALIA},
	    {"metric cup", UNIT_CUP, SYSTEM_METRIC},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		check_unit(cases[i].words, cases[i].unit, cases[i].system);
}
END_TEST

START_TEST(what_is_no_unit)
{
	static const char *const cases[] = {"",  " ",     "onion",  "cup of", "us",    "TT",
					    "|", "pinch", "medium", "stick",  "us us", "é"};
	enum kitchen_unit unit;
	enum measuring_system system;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		ck_assert_msg(!kitchen_unit_find(cases[i], &unit, &system), "'%s'", cases[i]);
	char lengthy[4000];
	memset(lengthy, 'c', sizeof lengthy - 1);
	lengthy[sizeof lengthy - 1] = '\0';
	ck_assert(!kitchen_unit_find(lengthy, &unit, &system));
}
END_TEST

/* Every name that is shown is read again. */
START_TEST(names_are_read_again)
{
	for (int i = 0; i < KITCHEN_UNIT_COUNT; i++) {
		check_unit(kitchen_unit_name((enum kitchen_unit)i, false), (enum kitchen_unit)i,
			   SYSTEM_UNSTATED);
		check_unit(kitchen_unit_name((enum kitchen_unit)i, true), (enum kitchen_unit)i,
			   SYSTEM_UNSTATED);
	}
	for (int i = SYSTEM_UNSTATED + 1; i < SYSTEM_COUNT; i++) {
		enum measuring_system found;
		ck_assert(
		    measuring_system_find(measuring_system_word((enum measuring_system)i), &found));
		ck_assert_int_eq(found, i);
	}
}
END_TEST

START_TEST(amounts)
{
	/* Sources: NIST Handbook 44 appendix C; Weights and Measures Act 1985; NSW Health;
	 * New Zealand Standard 8541; Safe Food for Canadians Regulations s. 241(3). */
	static const struct {
		enum kitchen_unit unit;
		enum measuring_system system;
		struct rational amount;
		bool exact;
	} cases[] = {
	    {UNIT_CUP, SYSTEM_US, {473176473, 2000000}, true},
	    {UNIT_CUP, SYSTEM_IMPERIAL, {454609, 1600}, true},
	    {UNIT_CUP, SYSTEM_CANADA, {250, 1}, true},
	    {UNIT_CUP, SYSTEM_AUSTRALIA, {250, 1}, true},
	    {UNIT_CUP, SYSTEM_NEW_ZEALAND, {250, 1}, true},
	    {UNIT_CUP, SYSTEM_METRIC, {250, 1}, false},
	    {UNIT_TABLESPOON, SYSTEM_AUSTRALIA, {20, 1}, true},
	    {UNIT_TABLESPOON, SYSTEM_NEW_ZEALAND, {15, 1}, false},
	    {UNIT_TEASPOON, SYSTEM_CANADA, {5, 1}, false},
	    {UNIT_PINT, SYSTEM_IMPERIAL, {454609, 800}, true},
	    {UNIT_PINT, SYSTEM_CANADA, {454609, 800}, true},
	    {UNIT_DESSERTSPOON, SYSTEM_UNSTATED, {10, 1}, false},
	    {UNIT_MILLILITRE, SYSTEM_UNSTATED, {1, 1}, true},
	    {UNIT_LITRE, SYSTEM_US, {1000, 1}, true},
	    {UNIT_POUND, SYSTEM_UNSTATED, {45359237, 100000}, true},
	    {UNIT_POUND, SYSTEM_AUSTRALIA, {45359237, 100000}, true},
	    {UNIT_KILOGRAM, SYSTEM_UNSTATED, {1000, 1}, true},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct kitchen_measure m = find(cases[i].unit, cases[i].system);
		ck_assert_msg(rational_compare(m.amount, cases[i].amount) == 0, "case %zu: %g", i,
			      rational_double(m.amount));
		ck_assert_int_eq(m.exact, cases[i].exact);
	}
}
END_TEST

START_TEST(what_no_row_has)
{
	static const struct {
		enum kitchen_unit unit;
		enum measuring_system system;
	} cases[] = {
	    {UNIT_PINT, SYSTEM_AUSTRALIA},    {UNIT_PINT, SYSTEM_METRIC},
	    {UNIT_QUART, SYSTEM_NEW_ZEALAND}, {UNIT_DESSERTSPOON, SYSTEM_US},
	    {UNIT_POUND, SYSTEM_METRIC},      {UNIT_STICK_OF_BUTTER, SYSTEM_IMPERIAL},
	    {UNIT_CUP, SYSTEM_UNSTATED},      {UNIT_PINT, SYSTEM_UNSTATED},
	    {UNIT_TEASPOON, SYSTEM_UNSTATED},
	};
	struct kitchen_measure m;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		ck_assert_msg(!kitchen_measure_find(reference_tables_edition(), cases[i].unit,
						    cases[i].system, &m),
			      "case %zu", i);
}
END_TEST

START_TEST(ambiguity)
{
	struct kitchen_measure all[SYSTEM_COUNT];
	bool differ;
	const struct reference_tables *tables = reference_tables_edition();
	ck_assert_uint_eq(kitchen_measure_all(tables, UNIT_CUP, all, &differ), 6);
	ck_assert(differ);
	ck_assert_uint_eq(kitchen_measure_all(tables, UNIT_PINT, all, &differ), 3);
	ck_assert(differ);
	ck_assert_int_eq(all[0].system, SYSTEM_US);
	ck_assert_int_eq(all[2].system, SYSTEM_CANADA);
	ck_assert_uint_gt(kitchen_measure_all(tables, UNIT_GRAM, all, &differ), 0);
	ck_assert(!differ);
	ck_assert_uint_gt(kitchen_measure_all(tables, UNIT_OUNCE, all, &differ), 0);
	ck_assert(!differ);
	ck_assert_uint_eq(kitchen_measure_all(tables, UNIT_DRY_PINT, all, &differ), 1);
	ck_assert(!differ);
}
END_TEST

/* Each measure but those of the SI base names its publication; none comes from the rounded table.
 */
START_TEST(every_measure_has_a_source)
{
	struct kitchen_measure all[SYSTEM_COUNT];
	bool differ;
	size_t seen = 0;
	for (int i = 0; i < KITCHEN_UNIT_COUNT; i++) {
		size_t n = kitchen_measure_all(reference_tables_edition(), (enum kitchen_unit)i,
					       all, &differ);
		ck_assert_uint_gt(n, 0);
		for (size_t j = 0; j < n; j++) {
			if (i == UNIT_GRAM || i == UNIT_KILOGRAM)
				continue;
			const struct measure_row *row = all[j].row;
			ck_assert_ptr_nonnull(row);
			ck_assert_uint_gt(strlen(row->from.source->title), 0);
			ck_assert_str_ne(row->from.source->id, "nist-kitchen");
			ck_assert_ptr_null(strstr(row->system, "label)"));
			ck_assert_str_ne(row->system, "US nutrition label");
			seen++;
		}
	}
	ck_assert_uint_gt(seen, 60);
}
END_TEST

/* A fixed sequence (a linear congruence), so that a failure comes again. */
static uint32_t next_number(uint32_t *state)
{
	*state = *state * 1664525U + 1013904223U;
	return *state >> 16;
}

/* There and back loses nothing: every pair of measures, some amounts of each. */
START_TEST(there_and_back)
{
	uint32_t state = 1;
	size_t pairs = 0;
	struct kitchen_measure all[KITCHEN_UNIT_COUNT * SYSTEM_COUNT];
	size_t n = 0;
	bool differ;
	for (int i = 0; i < KITCHEN_UNIT_COUNT; i++)
		n += kitchen_measure_all(reference_tables_edition(), (enum kitchen_unit)i, all + n,
					 &differ);
	for (size_t i = 0; i < n * n; i++) {
		struct kitchen_measure a = all[i / n], b = all[i % n];
		if (kitchen_unit_is_mass(a.unit) != kitchen_unit_is_mass(b.unit))
			continue;
		for (int k = 0; k < 8; k++) {
			struct rational x, base, there, back;
			ck_assert(rational_make(next_number(&state) % 1000 + 1,
						next_number(&state) % 24 + 1, &x));
			ck_assert(rational_mul(x, a.amount, &base));
			ck_assert(rational_div(base, b.amount, &there));
			ck_assert(rational_mul(there, b.amount, &base));
			ck_assert(rational_div(base, a.amount, &back));
			ck_assert_int_eq(rational_compare(x, back), 0);
		}
		pairs++;
	}
	ck_assert_uint_gt(pairs, 2000);
}
END_TEST

START_TEST(quantities_are_parted)
{
	static const struct {
		const char *text;
		struct rational number;
		const char *words;
	} cases[] = {
	    {"2 1/4 cups", {9, 4}, "cups"}, {"5/8 pint", {5, 8}, "pint"}, {"½cup", {1, 2}, "cup"},
	    {"1½ cups", {3, 2}, "cups"},    {"250mL", {250, 1}, "mL"},    {"3", {3, 1}, ""},
	    {"1-1/2 lb", {3, 2}, "lb"},     {".5 oz", {1, 2}, "oz"},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct error err = {.kind = ERROR_NONE};
		struct rational number;
		const char *words;
		ck_assert_msg(
		    kitchen_quantity_split("convert", cases[i].text, &number, &words, &err), "%s",
		    err.text);
		ck_assert_int_eq(rational_compare(number, cases[i].number), 0);
		ck_assert_str_eq(words, cases[i].words);
	}
}
END_TEST

START_TEST(quantities_are_refused)
{
	static const char *const cases[] = {
	    "",
	    "cups",
	    "0 cups",
	    "-1 cup",
	    "1,5 cups",
	    "1/0 cup",
	    "1 2 cups",
	    "1 to 2 cups x 3",
	    "99999999999999999999 cups",
	    "1111111111 1111111111 1111111111 1111111111 1111111111 1111111111 1111111111 cups"};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct error err = {.kind = ERROR_NONE};
		struct rational number;
		const char *words = "";
		bool read = kitchen_quantity_split("convert", cases[i], &number, &words, &err);
		if (i == 7) { /* the number is sound; what follows is no unit */
			enum kitchen_unit unit;
			enum measuring_system system;
			ck_assert(read && !kitchen_unit_find(words, &unit, &system));
			continue;
		}
		ck_assert_msg(!read, "'%s'", cases[i]);
		ck_assert_int_eq(err.kind, ERROR_USAGE);
		ck_assert_int_eq(strncmp(err.text, "convert: ", 9), 0);
	}
}
END_TEST

Suite *measure_suite(void)
{
	Suite *suite = suite_create("kitchen measures");
	TCase *tests = tcase_create("measures");
	tcase_add_test(tests, units_as_written);
	tcase_add_test(tests, what_is_no_unit);
	tcase_add_test(tests, names_are_read_again);
	tcase_add_test(tests, amounts);
	tcase_add_test(tests, what_no_row_has);
	tcase_add_test(tests, ambiguity);
	tcase_add_test(tests, every_measure_has_a_source);
	tcase_add_test(tests, there_and_back);
	tcase_add_test(tests, quantities_are_parted);
	tcase_add_test(tests, quantities_are_refused);
	suite_add_tcase(suite, tests);
	return suite;
}
