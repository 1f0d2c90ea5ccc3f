#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "check_table.h"
#include "jarwright/physics.h"
#include "suites.h"

/* IAPWS R7-97(2012), tables 35 and 36: nine digits. */
START_TEST(verification_values)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = check_table_read(TEST_DATA "/checks-atmosphere.csv", values);
	size_t pressures = 0;
	size_t temperatures = 0;
	for (size_t i = 0; i < n; i++) {
		const struct check_value *value = &values[i];
		if (strcmp(value->quantity, "iapws-if97-saturation-pressure") == 0) {
			check_value_near(value, physics_saturation_pressure_mpa(value->input),
					 value->half_digit);
			pressures++;
		} else if (strcmp(value->quantity, "iapws-if97-saturation-temperature") == 0) {
			check_value_near(value, physics_saturation_temperature_k(value->input),
					 value->half_digit);
			temperatures++;
		}
	}
	ck_assert_uint_eq(pressures, 3);
	ck_assert_uint_eq(temperatures, 3);
}
END_TEST

/* An independent implementation; how the file was made stands at its head. */
START_TEST(independent_implementation)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = check_table_read(TEST_DATA "/iapws-saturation.csv", values);
	for (size_t i = 0; i < n; i++) {
		const struct check_value *value = &values[i];
		bool pressure = strcmp(value->quantity, "saturation-pressure") == 0;
		ck_assert(pressure || strcmp(value->quantity, "saturation-temperature") == 0);
		double got = pressure ? physics_saturation_pressure_mpa(value->input)
				      : physics_saturation_temperature_k(value->input);
		check_value_near(value, got, 1e-12 * value->value);
	}
	ck_assert_uint_eq(n, 79);
}
END_TEST

/*
 * Steam tables older than the formulation and its temperature scale (ITS-90), so that a
 * few hundredths of a degree are theirs. Sources: in each line of the table.
 */
START_TEST(older_steam_tables)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = check_table_read(TEST_DATA "/checks-steam.csv", values);
	size_t checked = 0;
	for (size_t i = 0; i < n; i++) {
		const struct check_value *value = &values[i];
		if (strcmp(value->quantity, "saturated-steam") != 0)
			continue;
		bool metric = strcmp(value->input_unit, "MPa") == 0;
		double mpa = metric ? value->input : value->input * 6894.757e-6; /* SP 811 */
		double kelvin = physics_saturation_temperature_k(mpa);
		double got = metric ? kelvin - 273.15 : kelvin * 1.8 - 459.67;
		check_value_near(value, got, metric ? 0.02 : 0.06);
		checked++;
	}
	ck_assert_uint_eq(checked, 18);
}
END_TEST

/*
 * Both equations solve one and the same: they agree but for rounding. The lower end of
 * the pressures is printed as 611.213 Pa, a shade above the pressure at 273.15 K.
 */
START_TEST(there_and_back)
{
	for (int centikelvin = 27316; centikelvin < 64700; centikelvin++) {
		double kelvin = centikelvin / 100.0;
		ck_assert_double_eq_tol(
		    physics_saturation_temperature_k(physics_saturation_pressure_mpa(kelvin)),
		    kelvin, 1e-6);
	}
}
END_TEST

START_TEST(edges)
{
	ck_assert_double_eq_tol(physics_saturation_pressure_mpa(273.15), 0.000611213, 5e-10);
	ck_assert_double_eq_tol(physics_saturation_pressure_mpa(647.096), 22.064, 5e-4);
	ck_assert(isnan(physics_saturation_pressure_mpa(nextafter(273.15, 0.0))));
	ck_assert(isnan(physics_saturation_pressure_mpa(nextafter(647.096, INFINITY))));
	ck_assert(isnan(physics_saturation_pressure_mpa(NAN)));
	ck_assert_double_eq_tol(physics_saturation_temperature_k(0.000611213), 273.15, 1e-4);
	ck_assert_double_eq_tol(physics_saturation_temperature_k(22.064), 647.096, 5e-4);
	ck_assert(isnan(physics_saturation_temperature_k(nextafter(0.000611213, 0.0))));
	ck_assert(isnan(physics_saturation_temperature_k(nextafter(22.064, INFINITY))));
	ck_assert(isnan(physics_saturation_temperature_k(0.0)));
	ck_assert(isnan(physics_saturation_temperature_k(-0.1)));
	ck_assert(isnan(physics_saturation_temperature_k(NAN)));
}
END_TEST

Suite *steam_suite(void)
{
	Suite *suite = suite_create("steam");
	TCase *tests = tcase_create("steam");
	tcase_add_test(tests, verification_values);
	tcase_add_test(tests, independent_implementation);
	tcase_add_test(tests, older_steam_tables);
	tcase_add_test(tests, there_and_back);
	tcase_add_test(tests, edges);
	suite_add_tcase(suite, tests);
	return suite;
}
