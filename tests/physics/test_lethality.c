#include <math.h>
#include <string.h>

#include "check_table.h"
#include "jarwright/physics.h"
#include "suites.h"

#define F0_REFERENCE PHYSICS_F0_REFERENCE_F
#define F0_Z         PHYSICS_F0_Z_F

static size_t read_values(struct check_value values[static CHECK_VALUES_MAX])
{
	return check_table_read(TEST_DATA "/checks-lethality.csv", values);
}

/*
 * USDA-ARS 2014, table 4: 40 times for five logs between 141 and 180 F, from a fit with F(160 F)
 * of 5.6 minutes and z of 16.7 F; their own rounding of the fit leaves 2 %.
 */
START_TEST(table_of_times)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = read_values(values), checked = 0;
	for (size_t i = 0; i < n; i++) {
		const struct check_value *value = &values[i];
		if (strcmp(value->quantity, "five-log-time") != 0)
			continue;
		double minutes = 5.6 / physics_lethal_rate(value->input, 160, 16.7);
		check_value_near(value, minutes, 0.02 * value->value + value->half_digit);
		/* The other way round: held that long, it comes to the printed F. */
		double f = physics_lethality(value->input, value->input, minutes, 160, 16.7);
		ck_assert_double_eq_tol(f, 5.6, 1e-9);
		checked++;
	}
	ck_assert_uint_eq(checked, 40);
}
END_TEST

/*
 * FAO 285 prints sums of lethal rates read every 5 minutes; its temperatures could not be read.
 * A temperature whose rate is the mean of such a sum, held as long, must come to the F0 printed.
 * The print cuts 14.625 and 8.65 down to one decimal.
 */
START_TEST(sums_of_rates)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = read_values(values), checked = 0;
	for (size_t i = 0; i < n; i++) {
		const struct check_value *value = &values[i];
		if (strcmp(value->quantity, "sum-of-rates") != 0)
			continue;
		double steps = 12;
		double temperature = F0_REFERENCE + F0_Z * log10(value->input / steps);
		double f0 =
		    physics_lethality(temperature, temperature, 5 * steps, F0_REFERENCE, F0_Z);
		check_value_near(value, f0, 2 * value->half_digit);
		ck_assert_double_eq_tol(f0, 5 * value->input, 1e-9);
		checked++;
	}
	ck_assert_uint_eq(checked, 2);
}
END_TEST

/* 10 C is a factor of ten: the definition of z; values in the table. */
START_TEST(decades)
{
	struct check_value values[CHECK_VALUES_MAX];
	size_t n = read_values(values), checked = 0;
	for (size_t i = 0; i < n; i++) {
		if (strcmp(values[i].quantity, "rate") != 0)
			continue;
		double rate = physics_lethal_rate(values[i].input, F0_REFERENCE, F0_Z);
		check_value_near(&values[i], rate, 1e-12 * values[i].value);
		checked++;
	}
	ck_assert_uint_eq(checked, 5);
}
END_TEST

/* A constant temperature: rate times time. */
START_TEST(constant)
{
	ck_assert_double_eq_tol(physics_lethality(250, 250, 3, F0_REFERENCE, F0_Z), 3, 1e-12);
	ck_assert_double_eq_tol(physics_lethality(240, 240, 20, F0_REFERENCE, F0_Z),
				20 * pow(10, -10 / 18.0), 1e-12);
}
END_TEST

/*
 * A ramp from a to b in t minutes: t z / (ln 10 (b - a)) (rate(b) - rate(a)), by integrating
 * the definition. Cut into any pieces it is the same, up and down alike.
 */
START_TEST(ramp)
{
	double whole = physics_lethality(212, 250, 10, F0_REFERENCE, F0_Z);
	double rate_a = pow(10, (212 - 250) / 18.0), rate_b = 1;
	double known = 10 * 18 / (log(10) * 38) * (rate_b - rate_a);
	ck_assert_double_eq_tol(whole, known, 1e-6 * known);
	ck_assert_double_eq_tol(physics_lethality(250, 212, 10, F0_REFERENCE, F0_Z), known,
				1e-6 * known);
	for (int pieces = 1; pieces <= 100000; pieces *= 10) {
		double sum = 0;
		for (int i = 0; i < pieces; i++)
			sum += physics_lethality(212 + 38.0 * i / pieces,
						 212 + 38.0 * (i + 1) / pieces, 10.0 / pieces,
						 F0_REFERENCE, F0_Z);
		ck_assert_double_eq_tol(sum, known, 1e-9 * known);
	}
}
END_TEST

/* Simpson's rule on a fine grid, written apart, agrees on a ramp that crosses 40 degrees. */
START_TEST(against_simpson)
{
	enum { N = 2000 };
	double sum = 0;
	for (int i = 0; i <= N; i++) {
		double weight = i == 0 || i == N ? 1 : i % 2 ? 4 : 2;
		sum += weight * pow(10, (205 + 40.0 * i / N - 250) / 18.0);
	}
	double simpson = sum * 7.5 / N / 3;
	ck_assert_double_eq_tol(physics_lethality(205, 245, 7.5, F0_REFERENCE, F0_Z), simpson,
				1e-6 * simpson);
}
END_TEST

START_TEST(edges)
{
	ck_assert(isnan(physics_lethal_rate(240, 250, 0)));
	ck_assert(isnan(physics_lethal_rate(240, 250, -18)));
	ck_assert(isnan(physics_lethal_rate(240, 250, NAN)));
	ck_assert(isnan(physics_lethal_rate(NAN, 250, 18)));
	ck_assert(isnan(physics_lethality(240, 240, -1, 250, 18)));
	ck_assert(isnan(physics_lethality(240, NAN, 1, 250, 18)));
	ck_assert_double_eq(physics_lethality(240, 250, 0, 250, 18), 0);
	/* A hair of a change does not lose its digits. */
	ck_assert_double_eq_tol(physics_lethality(250, 250 + 1e-12, 1, 250, 18), 1, 1e-12);
}
END_TEST

Suite *lethality_suite(void)
{
	Suite *suite = suite_create("lethality");
	TCase *tests = tcase_create("lethality");
	tcase_add_test(tests, table_of_times);
	tcase_add_test(tests, sums_of_rates);
	tcase_add_test(tests, decades);
	tcase_add_test(tests, constant);
	tcase_add_test(tests, ramp);
	tcase_add_test(tests, against_simpson);
	tcase_add_test(tests, edges);
	suite_add_tcase(suite, tests);
	return suite;
}
