/* What can be measured out. Vessels and steps: common practice, no source. */
#include <math.h>
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "suites.h"

static void gives(enum measuring_system system, bool mass, struct rational wanted,
		  const char *expected)
{
	struct practical p;
	char words[PRACTICAL_WORDS_SIZE];
	const struct reference_tables *tables = reference_tables_edition();
	ck_assert(mass ? practical_mass(tables, system, wanted, PRACTICAL_NEAREST, &p)
		       : practical_volume(tables, system, wanted, PRACTICAL_NEAREST, &p));
	ck_assert_str_eq(practical_words(words, sizeof words, &p), expected);
	double error = rational_double(p.amount) / rational_double(wanted) - 1;
	ck_assert_double_eq_tol(p.error, error, 1e-12);
}

START_TEST(volumes)
{
	/* 5/8 imperial pint, a third of a US cup, and so on, in mL. */
	gives(SYSTEM_US, false, (struct rational){35516328125, 100000000}, "1 1/2 cups");
	gives(SYSTEM_US, false, (struct rational){473176473, 6000000}, "1/3 cup");
	gives(SYSTEM_US, false, (struct rational){473176473, 500000}, "4 cups");
	gives(SYSTEM_US, false, (struct rational){473176473, 100000}, "5 quarts");
	/* Within 1 % the fewer parts are taken: 5 quarts and a tablespoon. */
	gives(SYSTEM_US, false, (struct rational){4746, 1}, "5 quarts");
	gives(SYSTEM_US, false, (struct rational){20, 1}, "1 tbsp + 1 tsp");
	gives(SYSTEM_US, false, (struct rational){6, 10}, "1/8 tsp");
	gives(SYSTEM_US, false, (struct rational){1, 1000}, "1/8 tsp");
	gives(SYSTEM_IMPERIAL, false, (struct rational){454609, 800}, "1 pint");
	gives(SYSTEM_IMPERIAL, false, (struct rational){454609, 3200}, "1/4 pint");
	gives(SYSTEM_IMPERIAL, false, (struct rational){25, 1}, "1 tbsp + 2 tsp");
	gives(SYSTEM_AUSTRALIA, false, (struct rational){20, 1}, "1 tbsp");
	gives(SYSTEM_NEW_ZEALAND, false, (struct rational){20, 1}, "1 tbsp + 1 tsp");
	gives(SYSTEM_CANADA, false, (struct rational){1500, 1}, "6 cups");
	gives(SYSTEM_METRIC, false, (struct rational){53232353, 100000}, "530 mL");
	gives(SYSTEM_METRIC, false, (struct rational){47, 1}, "47 mL");
	gives(SYSTEM_METRIC, false, (struct rational){123, 100}, "1.2 mL");
	gives(SYSTEM_METRIC, false, (struct rational){1, 1000}, "0.1 mL");
}
END_TEST

START_TEST(masses)
{
	gives(SYSTEM_METRIC, true, (struct rational){495, 1}, "495 g");
	gives(SYSTEM_METRIC, true, (struct rational){47, 10}, "4.7 g");
	gives(SYSTEM_METRIC, true, (struct rational){4954, 10}, "495 g");
	gives(SYSTEM_AUSTRALIA, true, (struct rational){28, 1}, "28 g");
	gives(SYSTEM_US, true, (struct rational){45359237, 100000}, "1 lb");
	gives(SYSTEM_US, true, (struct rational){500, 1}, "1 lb + 1 3/4 oz");
	gives(SYSTEM_IMPERIAL, true, (struct rational){113398, 1000}, "4 oz");
}
END_TEST

/* Never above what the parts allow: a quarter step of the smallest vessel, or 1 %. */
START_TEST(near_everywhere)
{
	const struct reference_tables *tables = reference_tables_edition();
	for (int system = SYSTEM_US; system < SYSTEM_COUNT; system++) {
		for (int64_t ml = 2; ml < 5000; ml++) {
			struct practical p;
			struct rational wanted = {ml, 1};
			ck_assert(practical_volume(tables, (enum measuring_system)system, wanted,
						   PRACTICAL_NEAREST, &p));
			ck_assert_uint_ge(p.parts_n, 1);
			ck_assert_uint_le(p.parts_n, PRACTICAL_PARTS);
			double off = fabs(rational_double(p.amount) - (double)ml);
			double most = fmax(0.025 * (double)ml, 1.3);
			ck_assert_msg(off <= most, "%s, %d mL: %g off",
				      measuring_system_word((enum measuring_system)system), (int)ml,
				      off);
		}
	}
}
END_TEST

/* Never on the other side, and one step of the smallest vessel off at most. */
START_TEST(one_sided)
{
	const struct reference_tables *tables = reference_tables_edition();
	for (int system = SYSTEM_US; system < SYSTEM_COUNT; system++) {
		for (int64_t tenths = 1; tenths < 20000; tenths += 7) {
			struct practical up, down;
			struct rational wanted = {tenths, 10};
			bool mass = tenths % 2 == 0;
			enum measuring_system in = (enum measuring_system)system;
			ck_assert((mass ? practical_mass : practical_volume)(
			    tables, in, wanted, PRACTICAL_AT_LEAST, &up));
			ck_assert_int_ge(rational_compare(up.amount, wanted), 0);
			if (tenths < 40) /* an eighth of an ounce is 3.54 g */
				continue;
			ck_assert((mass ? practical_mass : practical_volume)(
			    tables, in, wanted, PRACTICAL_AT_MOST, &down));
			ck_assert_int_le(rational_compare(down.amount, wanted), 0);
			ck_assert_double_le(up.error - down.error,
					    fmax(0.06, 80.0 / (double)tenths));
		}
	}
	struct practical none;
	ck_assert(!practical_volume(tables, SYSTEM_US, (struct rational){1, 2}, PRACTICAL_AT_MOST,
				    &none));
	ck_assert(!practical_mass(tables, SYSTEM_METRIC, (struct rational){1, 20},
				  PRACTICAL_AT_MOST, &none));
}
END_TEST

START_TEST(what_is_refused)
{
	const struct reference_tables *tables = reference_tables_edition();
	struct practical p;
	ck_assert(!practical_volume(tables, SYSTEM_UNSTATED, (struct rational){1, 1},
				    PRACTICAL_NEAREST, &p));
	ck_assert(!practical_mass(tables, SYSTEM_UNSTATED, (struct rational){1, 1},
				  PRACTICAL_NEAREST, &p));
	ck_assert(
	    !practical_volume(tables, SYSTEM_US, (struct rational){0, 1}, PRACTICAL_NEAREST, &p));
	ck_assert(!practical_mass(tables, SYSTEM_METRIC, (struct rational){-1, 1},
				  PRACTICAL_NEAREST, &p));
	for (int system = SYSTEM_US; system < SYSTEM_COUNT; system++) {
		ck_assert(!practical_volume(tables, (enum measuring_system)system,
					    (struct rational){INT64_MAX, 1}, PRACTICAL_NEAREST,
					    &p));
		ck_assert(!practical_mass(tables, (enum measuring_system)system,
					  (struct rational){INT64_MAX, 1}, PRACTICAL_NEAREST, &p));
	}
}
END_TEST

START_TEST(numbers_as_words)
{
	char words[64];
	ck_assert_str_eq(rational_words(words, sizeof words, (struct rational){3, 2}), "1 1/2");
	ck_assert_str_eq(rational_words(words, sizeof words, (struct rational){1, 8}), "1/8");
	ck_assert_str_eq(rational_words(words, sizeof words, (struct rational){4, 1}), "4");
	ck_assert_str_eq(rational_words(words, sizeof words, (struct rational){-3, 2}), "-1 1/2");
	ck_assert_str_eq(rational_words(words, 3, (struct rational){3, 2}), "1 ");
}
END_TEST

Suite *practical_suite(void)
{
	Suite *suite = suite_create("practical measures");
	TCase *tests = tcase_create("practical");
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, volumes);
	tcase_add_test(tests, masses);
	tcase_add_test(tests, near_everywhere);
	tcase_add_test(tests, one_sided);
	tcase_add_test(tests, what_is_refused);
	tcase_add_test(tests, numbers_as_words);
	suite_add_tcase(suite, tests);
	return suite;
}
