#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "check_table.h"
#include "jarwright/physics.h"
#include "suites.h"

static double computed(const struct check_value *value)
{
	double fahrenheit = strcmp(value->input_unit, "psig") == 0
				? physics_canner_temperature(value->input, 0.0)
				: physics_boiling_point(value->input);
	return strcmp(value->unit, "C") == 0 ? (fahrenheit - 32.0) / 1.8 : fahrenheit;
}

/*
 * Boiling points come rounded, and on the old scale on which water boils at exactly
 * 212 F; so half a degree. The range "240 to 250 F for 10 to 15 psig" is rounder still.
 * Sources: in each line of the tables.
 */
START_TEST(published_temperatures)
{
	static const char *const tables[] = {TEST_DATA "/checks-atmosphere.csv",
					     TEST_DATA "/checks-steam.csv"};
	size_t checked = 0;
	for (size_t t = 0; t < 2; t++) {
		struct check_value values[CHECK_VALUES_MAX];
		size_t n = check_table_read(tables[t], values);
		for (size_t i = 0; i < n; i++) {
			bool boiling = strcmp(values[i].quantity, "boiling-point-of-water") == 0;
			bool steam = strncmp(values[i].quantity, "steam-temperature", 17) == 0;
			bool range = strstr(values[i].quantity, "range") != NULL;
			if (!boiling && !steam)
				continue;
			check_value_near(&values[i], computed(&values[i]), range ? 1.0 : 0.5);
			checked++;
		}
	}
	ck_assert_uint_eq(checked, 23 + 4 + 3);
}
END_TEST

/* University of Wyoming Extension: 13 psig at 6,000 ft is as hot as 10 psig at sea level. */
START_TEST(pressure_makes_up_for_elevation)
{
	ck_assert_double_eq_tol(physics_canner_temperature(13.0, 6000.0),
				physics_canner_temperature(10.0, 0.0), 0.5);
}
END_TEST

/*
 * Dial-gauge pressures by elevation: AIB 539 (2015), guide 1, p. 1-24, for the series
 * that begins at 6 psi; the series that begins at 11 is that of the low-acid tables.
 */
static const struct dial_gauge_band {
	int psi, from_ft, to_ft;
	/*
	 * Temperatures at both edges, F, from the Python module iapws 1.5.2 and the equation
	 * of the U.S. Standard Atmosphere, 1976.
	 */
	double from_f, to_f;
} dial_gauge_bands[2][4] = {{{6, 0, 2000, 229.744, 227.020},
			     {7, 2001, 4000, 229.662, 227.096},
			     {8, 4001, 6000, 229.735, 227.324},
			     {9, 6001, 8000, 229.955, 227.698}},
			    {{11, 0, 2000, 241.558, 239.286},
			     {12, 2001, 4000, 241.489, 239.349},
			     {13, 4001, 6000, 241.550, 239.539},
			     {14, 6001, 8000, 241.734, 239.850}}};

START_TEST(dial_gauge_band_edges)
{
	for (size_t series = 0; series < 2; series++) {
		for (size_t i = 0; i < 4; i++) {
			const struct dial_gauge_band *band = &dial_gauge_bands[series][i];
			double from_f = physics_canner_temperature(band->psi, band->from_ft);
			double to_f = physics_canner_temperature(band->psi, band->to_ft);
			ck_assert_double_eq_tol(from_f, band->from_f, 0.001);
			ck_assert_double_eq_tol(to_f, band->to_f, 0.001);
		}
	}
}
END_TEST

/*
 * What the published steps do. The 11-to-14 series is hotter than 240 F where each band
 * begins; it ends up to 0.8 F below, and is coolest at the top of the first band, at
 * 2,000 ft: nowhere do the higher bands ask for less than the lowest does. A pressure kept
 * for one band too many falls short of even that by 1.6 F and more.
 */
START_TEST(dial_gauge_bands_never_cooler_than_the_first)
{
	for (size_t series = 0; series < 2; series++) {
		const struct dial_gauge_band *first = &dial_gauge_bands[series][0];
		double coolest = physics_canner_temperature(first->psi, first->to_ft);
		for (size_t i = 0; i < 4; i++) {
			const struct dial_gauge_band *band = first + i;
			for (int ft = band->from_ft; ft <= band->to_ft; ft++)
				ck_assert_double_ge(physics_canner_temperature(band->psi, ft),
						    coolest);
			double begins = physics_canner_temperature(band->psi, band->from_ft);
			double kept = physics_canner_temperature(band->psi - 1, band->to_ft);
			if (series == 1)
				ck_assert_double_gt(begins, 240.0);
			if (i > 0)
				ck_assert_double_lt(kept, coolest - 1.6);
		}
	}
}
END_TEST

START_TEST(gauge_pressure_is_the_inverse)
{
	for (int ft = -1000; ft <= 12000; ft += 250) {
		for (int half_psi = 0; half_psi <= 40; half_psi++) {
			double psi = half_psi / 2.0;
			double fahrenheit = physics_canner_temperature(psi, ft);
			ck_assert_double_eq_tol(physics_gauge_pressure_for(fahrenheit, ft), psi,
						1e-8);
		}
	}
	/* At its boiling point water needs no gauge pressure. */
	ck_assert_double_eq_tol(physics_gauge_pressure_for(physics_boiling_point(5000.0), 5000.0),
				0.0, 1e-8);
}
END_TEST

/* Rounded up, by less than a foot, and never below the true elevation. */
START_TEST(elevation_of_boiling_point_is_rounded_up)
{
	for (int quarter_ft = -4001; quarter_ft <= 48000; quarter_ft += 2) {
		double ft = quarter_ft / 4.0;
		double got = physics_elevation_of_boiling_point(physics_boiling_point(ft));
		ck_assert_double_eq(got, ceil(ft));
	}
}
END_TEST

START_TEST(colder_boil_means_higher)
{
	double before = physics_elevation_of_boiling_point(213.0);
	ck_assert_double_lt(before, 0.0);
	for (int tenths_f = 2129; tenths_f > 1850; tenths_f--) {
		double elevation = physics_elevation_of_boiling_point(tenths_f / 10.0);
		ck_assert_double_gt(elevation, before);
		before = elevation;
	}
	/* A boil just above that of sea level: 0 ft, and no minus sign before it. */
	double level = physics_elevation_of_boiling_point(physics_boiling_point(-0.5));
	ck_assert_double_eq(level, 0.0);
	ck_assert(!signbit(level));
}
END_TEST

START_TEST(outside_the_range)
{
	ck_assert(isnan(physics_boiling_point(36000.1)));
	ck_assert(isnan(physics_boiling_point(-16000.1)));
	ck_assert(!isnan(physics_boiling_point(36000.0)));
	ck_assert(!isnan(physics_boiling_point(-16000.0)));
	ck_assert(isnan(physics_canner_temperature(11.0, 36000.1)));
	ck_assert(isnan(physics_canner_temperature(NAN, 0.0)));
	ck_assert(isnan(physics_canner_temperature(-14.7, 0.0)));  /* no pressure at all */
	ck_assert(isnan(physics_canner_temperature(3200.0, 0.0))); /* above the critical point */
	ck_assert(isnan(physics_gauge_pressure_for(240.0, 36000.1)));
	ck_assert(isnan(physics_gauge_pressure_for(31.9, 0.0))); /* ice */
	ck_assert(isnan(physics_gauge_pressure_for(NAN, 0.0)));
	ck_assert(isnan(physics_elevation_of_boiling_point(140.0))); /* above 36,000 ft */
	ck_assert(isnan(physics_elevation_of_boiling_point(245.0))); /* below -16,000 ft */
	ck_assert(isnan(physics_elevation_of_boiling_point(NAN)));
}
END_TEST

Suite *canner_suite(void)
{
	Suite *suite = suite_create("canner");
	TCase *tests = tcase_create("canner");
	tcase_add_test(tests, published_temperatures);
	tcase_add_test(tests, pressure_makes_up_for_elevation);
	tcase_add_test(tests, dial_gauge_band_edges);
	tcase_add_test(tests, dial_gauge_bands_never_cooler_than_the_first);
	tcase_add_test(tests, gauge_pressure_is_the_inverse);
	tcase_add_test(tests, elevation_of_boiling_point_is_rounded_up);
	tcase_add_test(tests, colder_boil_means_higher);
	tcase_add_test(tests, outside_the_range);
	suite_add_tcase(suite, tests);
	return suite;
}
