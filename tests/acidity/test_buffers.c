/* The solver alone: buffers of known pH, and the titrations that the models were fitted to. */
#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "acidity_help.h"

/*
 * pK at zero ionic strength: acetic, citric and phosphoric from the relation dissociation
 * (libretexts-e5, ars-acids textbook values, polyprotic); phthalic 2.950 and 5.408 from memory.
 */
static const struct {
	const char *name;
	struct acidity_buffer buffer;
	double cations; /* mol/L of strong cations */
	double ionic;   /* mol/L, of the buffer itself */
	double ph;      /* published, 25 C */
	double within;
} BUFFERS[] = {
    /* A general textbook exercise: 2.88 (Ka 1.8e-5, no activities). */
    {"acetic acid 0.1 mol/L", {0.1, {4.757}, 1, false}, 0, 0, 2.88, 0.005},
    /* 4.65, standard acetate; from memory. */
    {"acetic acid and acetate, 0.1 each", {0.2, {4.757}, 1, false}, 0.1, 0.1, 4.65, 0.01},
    /* J. Res. NBS 73A:37 (1969), Two new standards for the pH scale: 3.776. */
    {"potassium dihydrogen citrate 0.05",
     {0.05, {3.128, 4.761, 6.396}, 3, false},
     0.05,
     0.053,
     3.776,
     0.03},
    /* 6.86 for the equimolal phosphate standard (a pharmacopoeia procedure). */
    {"phosphates 0.025 each", {0.05, {2.148, 7.206, 12.342}, 3, false}, 0.075, 0.1, 6.86, 0.03},
    /* J. Res. NBS 36:47 (1946), RP1690: 4.005. */
    {"potassium hydrogen phthalate 0.05",
     {0.05, {2.950, 5.408}, 2, false},
     0.05,
     0.053,
     4.005,
     0.03},
};

START_TEST(published_buffers)
{
	puts("buffer                               published  solver  error");
	for (size_t i = 0; i < sizeof BUFFERS / sizeof *BUFFERS; i++) {
		struct acidity_charge charge = {
		    .buffers = {BUFFERS[i].buffer}, .buffers_n = 1, .offset = -BUFFERS[i].cations};
		double ph = textbook(&charge, BUFFERS[i].ionic);
		printf("%-36s %9.3f %7.3f %+6.3f\n", BUFFERS[i].name, BUFFERS[i].ph, ph,
		       ph - BUFFERS[i].ph);
		ck_assert_double_eq_tol(ph, BUFFERS[i].ph, BUFFERS[i].within);
	}
}
END_TEST

/* Neutral water, and strong acid and alkali of 0.01 mol/L: by definition of pH and Kw. */
START_TEST(strong_ions)
{
	struct acidity_charge none = {0};
	ck_assert_double_eq_tol(acidity_solve(&none, 1), 7, 1e-9);
	struct acidity_charge strong = {.offset = 0.01};
	ck_assert_double_eq_tol(acidity_solve(&strong, 1), 2, 1e-9);
	strong.offset = -0.01;
	ck_assert_double_eq_tol(acidity_solve(&strong, 1), 12, 1e-9);
	strong.offset = 100;
	ck_assert_double_eq_tol(acidity_solve(&strong, 1), 0, 1e-9);
	strong.offset = -100;
	ck_assert_double_eq_tol(acidity_solve(&strong, 1), 14, 1e-9);
}
END_TEST

/*
 * The source gives the acetic constant at zero ionic strength and at 0.342 mol/L: 4.757 and
 * 4.4876 (libretexts-e5, ars-acids), both ions corrected. A meter sees one of them.
 */
START_TEST(davies_at_two_percent)
{
	ck_assert_double_eq_tol(2 * acidity_davies(0.342, 0), 4.4876 - 4.757, 0.003);
	ck_assert_double_eq(acidity_davies(0, -2), 0);
	ck_assert_double_eq_tol(acidity_davies(0.1, -1), 3 * acidity_davies(0.1, 0), 1e-12);
	ck_assert_double_eq_tol(acidity_davies(0.1, 1), -acidity_davies(0.1, 0), 1e-12);
}
END_TEST

/*
 * What the rounding of the printed figures can do to the pH: half of the last digit of every
 * concentration (1e-5 mol/L) and of the offset (1e-6), over the buffer capacity at that pH.
 */
static double rounding(const struct buffer_row *row, double ph)
{
	double h = pow(10, -ph);
	double capacity = h + 1e-14 / h;
	double charge = 5e-7;
	const char *text = row->buffers;
	while (*text != '\0') {
		char *end;
		double mol = strtod(text, &end);
		ck_assert_int_eq(*end, '@');
		double k = pow(10, -strtod(end + 1, &end));
		ck_assert(*end == 'a' || *end == 'b');
		capacity += mol * k * h / ((k + h) * (k + h));
		charge += 5e-6;
		text = end + 1 + strspn(end + 1, " ;");
	}
	return charge / (log(10) * capacity);
}

/* ars-buffer: each model gives back the pH stored with it, within 0.015 and the
   rounding of its figures. Where that is more than 0.1 there is next to no buffer to test. */
START_TEST(stored_ph_of_every_titration)
{
	const struct reference_tables *tables = reference_tables_edition();
	double worst = 0;
	int rows = 0;
	for (size_t i = 0; i < tables->buffer_n; i++) {
		const struct buffer_row *row = &tables->buffer[i];
		if (row->buffers[0] == '\0' || row->ph_model[0] == '\0')
			continue;
		/* In a litre, at the salt it was titrated in. */
		double grams = 10 * number(row->conc_pct[0] ? row->conc_pct : "100");
		double nacl = 10 * number(row->nacl_pct[0] ? row->nacl_pct : "2");
		struct acidity_part parts[] = {
		    {.kind = ACIDITY_TITRATED, .row = row, .grams = grams},
		    salt(nacl),
		    water(fmax(0, 1000 - grams - nacl)),
		};
		double error = estimate(parts, 3).best - number(row->ph_model);
		double rounded = rounding(row, number(row->ph_model));
		ck_assert_msg(fabs(error) <= 0.015 + rounded, "%s: off by %.4f", row->ingredient,
			      error);
		if (rounded > 0.1) {
			printf("hardly a buffer: %s, error %+.4f\n", row->ingredient, error);
			continue;
		}
		worst = fmax(worst, fabs(error));
		rows++;
	}
	printf("stored pH of %d titrations: greatest error %.4f\n", rows, worst);
	ck_assert_int_ge(rows, 45);
	ck_assert_double_lt(worst, 0.06);
}
END_TEST

Suite *buffers_suite(void)
{
	Suite *suite = suite_create("acidity: buffers");
	TCase *tests = tcase_create("buffers");
	tcase_add_test(tests, published_buffers);
	tcase_add_test(tests, strong_ions);
	tcase_add_test(tests, davies_at_two_percent);
	tcase_add_test(tests, stored_ph_of_every_titration);
	suite_add_tcase(suite, tests);
	return suite;
}
