#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "check_table.h"
#include "jarwright/physics.h"
#include "suites.h"

/* NIST SP 811 (2008), appendix B, as printed there to seven digits. */
#define PASCALS_PER_PSI               6894.757
#define METRES_PER_FOOT               0.3048
#define SQUARE_INCHES_PER_SQUARE_FOOT 144.0

/* Effective radius of the earth, U.S. Standard Atmosphere, 1976. */
#define EARTH_RADIUS_M 6356766.0

static double geometric_feet(const struct check_value *value)
{
	if (strcmp(value->input_unit, "ft geopotential") == 0) {
		double geopotential = value->input * METRES_PER_FOOT;
		return EARTH_RADIUS_M * geopotential / (EARTH_RADIUS_M - geopotential) /
		       METRES_PER_FOOT;
	}
	if (value->input_unit[0] == 'm')
		return value->input / METRES_PER_FOOT;
	ck_assert(strncmp(value->input_unit, "ft", 2) == 0);
	return value->input;
}

/* Factor from psi to the unit of a published pressure. */
static double per_psi(const char *unit)
{
	if (strcmp(unit, "Pa") == 0)
		return PASCALS_PER_PSI;
	if (strcmp(unit, "lbf/ft2") == 0)
		return SQUARE_INCHES_PER_SQUARE_FOOT;
	ck_assert_str_eq(unit, "psia");
	return 1.0;
}

/* How a table gives a pressure: what it may stand for is middle - reach to middle + reach. */
struct printed {
	double middle, reach;
};

/*
 * A printed value is rounded, half its last digit off at most, but for the table in whole
 * pascals. That one is cut: 84559 stands for 84559.65. Its program reckons in single
 * precision and with an earth of 6,369 km, not the standard's 6,356.766 km, which makes up
 * to 0.06 Pa here; its 107477 at -500 m was 107477.98, where the standard gives 107478.00.
 */
static struct printed as_printed(const struct check_value *value)
{
	bool cut = strcmp(value->quantity, "std-atmosphere-pressure") == 0 &&
		   strcmp(value->unit, "Pa") == 0;
	if (cut)
		return (struct printed){value->value + 0.5, 0.5 + 0.06};
	return (struct printed){value->value, value->half_digit};
}

/* Sources: in each line of the table. */
START_TEST(published_tables)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = check_table_read(TEST_DATA "/checks-atmosphere.csv", values);
	size_t checked = 0;
	for (size_t i = 0; i < n; i++) {
		struct check_value value = values[i];
		if (strncmp(value.quantity, "std-atmosphere", 14) != 0)
			continue;
		struct printed printed = as_printed(&value);
		double elevation = geometric_feet(&value);
		double factor = per_psi(value.unit);
		value.value = printed.middle;
		check_value_near(&value, physics_air_pressure(elevation) * factor, printed.reach);

		/* The inverse, as exactly as the digits printed tell the elevation. */
		double per_foot = factor * (physics_air_pressure(elevation - 0.5) -
					    physics_air_pressure(elevation + 0.5));
		double inverse = physics_elevation_of_pressure(printed.middle / factor);
		ck_assert_double_le(fabs(inverse - elevation), printed.reach / per_foot * 1.001);
		checked++;
	}
	ck_assert_uint_eq(checked, 49);
}
END_TEST

START_TEST(there_and_back)
{
	for (int ft = -15999; ft < 36000; ft++)
		ck_assert_double_eq_tol(physics_elevation_of_pressure(physics_air_pressure(ft)), ft,
					1e-7);
}
END_TEST

START_TEST(pressure_falls_with_elevation)
{
	for (int ft = -16000; ft < 36000; ft++)
		ck_assert_double_gt(physics_air_pressure(ft), physics_air_pressure(ft + 1));
}
END_TEST

START_TEST(edges)
{
	double highest = physics_air_pressure(-16000.0);
	double lowest = physics_air_pressure(36000.0);
	ck_assert(!isnan(highest) && !isnan(lowest));
	ck_assert(isnan(physics_air_pressure(nextafter(-16000.0, -INFINITY))));
	ck_assert(isnan(physics_air_pressure(nextafter(36000.0, INFINITY))));
	ck_assert(isnan(physics_air_pressure(NAN)));
	ck_assert(isnan(physics_air_pressure(INFINITY)));
	ck_assert_double_eq_tol(physics_elevation_of_pressure(highest), -16000.0, 1e-6);
	ck_assert_double_eq_tol(physics_elevation_of_pressure(lowest), 36000.0, 1e-6);
	ck_assert(isnan(physics_elevation_of_pressure(highest * (1.0 + 1e-9))));
	ck_assert(isnan(physics_elevation_of_pressure(lowest * (1.0 - 1e-9))));
	ck_assert(isnan(physics_elevation_of_pressure(0.0)));
	ck_assert(isnan(physics_elevation_of_pressure(INFINITY)));
	ck_assert(isnan(physics_elevation_of_pressure(-1.0)));
	ck_assert(isnan(physics_elevation_of_pressure(NAN)));
}
END_TEST

Suite *atmosphere_suite(void)
{
	Suite *suite = suite_create("atmosphere");
	TCase *tests = tcase_create("atmosphere");
	tcase_add_test(tests, published_tables);
	tcase_add_test(tests, there_and_back);
	tcase_add_test(tests, pressure_falls_with_elevation);
	tcase_add_test(tests, edges);
	suite_add_tcase(suite, tests);
	return suite;
}
