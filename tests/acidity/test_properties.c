/* What must hold of every estimate, and what is refused. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "acidity_help.h"

/* A ratio of everything leaves the pH as it is: charge and volume scale alike. */
START_TEST(scaling_changes_nothing)
{
	struct acidity_part parts[] = {food("tomato", 900), food("onion", 200), food("pepper", 100),
				       vinegar(100, 5), salt(12)};
	struct acidity one = estimate(parts, 5);
	for (int i = 0; i < 5; i++) {
		parts[i].grams *= 37;
		parts[i].ml *= 37;
	}
	struct acidity more = estimate(parts, 5);
	ck_assert_double_eq_tol(one.low, more.low, 1e-9);
	ck_assert_double_eq_tol(one.best, more.best, 1e-9);
	ck_assert_double_eq_tol(one.high, more.high, 1e-9);
	ck_assert_double_eq_tol(one.titrated, more.titrated, 1e-9);
	ck_assert_uint_eq(one.dominant, more.dominant);
}
END_TEST

static const char *const FOODS[] = {"tomato", "onion",  "pepper", "cucumber juice",  "cabbage",
				    "garlic", "carrot", "beet",   "nothing so named"};

START_TEST(more_vinegar_never_raises_the_ph)
{
	double salts[] = {0, 5, 20, 60};
	for (size_t s = 0; s < 4; s++) {
		struct acidity last = {.low = 14, .best = 14, .high = 14};
		for (int ml = 0; ml <= 1000; ml += 20) {
			struct acidity_part parts[] = {food(FOODS[_i], 600), salt(salts[s]),
						       vinegar(ml, 5)};
			struct acidity now = estimate(parts, 3);
			ck_assert_double_le(now.low, last.low);
			ck_assert_double_le(now.best, last.best);
			ck_assert_double_le(now.high, last.high);
			last = now;
		}
		/* And it does lower it. */
		ck_assert_double_lt(last.best, 4.6);
	}
}
END_TEST

static void sound(const struct acidity *out)
{
	ck_assert(out->low >= 0 && out->low <= out->best && out->best <= out->high &&
		  out->high <= 14);
	ck_assert(out->titrated >= 0 && out->titrated <= 1);
	double sum = 0;
	for (size_t i = 0; i < out->parts_n; i++) {
		ck_assert(out->parts[i].buffering >= 0 && out->parts[i].buffering <= 1);
		sum += out->parts[i].buffering;
	}
	ck_assert(sum < 1 + 1e-9);
	ck_assert_uint_lt(out->dominant, out->parts_n);
}

/* Every food of the tables, alone and with each thing, from nothing to the most. */
START_TEST(every_food_is_sound)
{
	const struct reference_tables *tables = reference_tables_edition();
	const double amounts[] = {0, 1e-6, 1, ACIDITY_GRAMS_MAX};
	for (size_t i = 0; i < tables->ph_n + tables->buffer_n + tables->acid_content_n; i++) {
		const char *name =
		    i < tables->ph_n ? tables->ph[i].food
		    : i < tables->ph_n + tables->buffer_n
			? tables->buffer[i - tables->ph_n].ingredient
			: tables->acid_content[i - tables->ph_n - tables->buffer_n].food;
		for (size_t a = 0; a < 4; a++) {
			struct acidity_part parts[] = {food(name, amounts[a]), salt(amounts[3 - a]),
						       vinegar(amounts[a], 100), water(1)};
			struct acidity out = estimate(parts, 4);
			sound(&out);
		}
	}
}
END_TEST

static void refused(const struct acidity_part *parts, size_t n, const char *word)
{
	struct acidity out;
	struct error err = {0};
	ck_assert(!acidity_estimate(reference_tables_edition(), parts, n, &out, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert_msg(strstr(err.text, word) != NULL, "%s", err.text);
}

START_TEST(what_is_no_mixture_is_refused)
{
	struct acidity_part many[ACIDITY_PARTS_MAX + 1];
	for (size_t i = 0; i <= ACIDITY_PARTS_MAX; i++)
		many[i] = water(1);
	refused(many, 0, "nothing");
	refused(many, ACIDITY_PARTS_MAX + 1, "parts");
	estimate(many, ACIDITY_PARTS_MAX);
	refused((struct acidity_part[]){salt(5)}, 1, "no food");
	refused((struct acidity_part[]){water(0)}, 1, "no food");
	refused((struct acidity_part[]){water(-1)}, 1, "amount");
	refused((struct acidity_part[]){water(NAN)}, 1, "amount");
	refused((struct acidity_part[]){water(INFINITY)}, 1, "amount");
	refused((struct acidity_part[]){vinegar(10, 0)}, 1, "strength");
	refused((struct acidity_part[]){vinegar(10, 101)}, 1, "strength");
	refused((struct acidity_part[]){vinegar(10, NAN)}, 1, "strength");
	refused((struct acidity_part[]){food("", 10)}, 1, "name");
	refused((struct acidity_part[]){acid(NULL, 10)}, 1, "name");
	refused((struct acidity_part[]){acid("moon", 10)}, 1, "moon");
	/* Its constants are in no publication read (relation dissociation). */
	refused((struct acidity_part[]){acid("quinic", 10)}, 1, "quinic");
}
END_TEST

START_TEST(reasons_and_shares)
{
	struct acidity_part parts[] = {food("honey", 300), food("tomato", 50),
				       food("nothing so named", 50), water(200), salt(100)};
	struct acidity out = estimate(parts, 5);
	ck_assert_uint_eq(out.parts[0].reasons, ACIDITY_BY_TITRATION);
	ck_assert_uint_eq(out.parts[1].reasons, ACIDITY_BY_ACIDS);
	ck_assert_uint_eq(out.parts[2].reasons, ACIDITY_NO_DATA);
	ck_assert(out.reasons & ACIDITY_SALT_HIGH);
	ck_assert_double_eq_tol(out.titrated, 0.75, 1e-12);
	ck_assert_double_eq(out.parts[3].buffering, 0);
	/* A food that nobody knows widens the range. */
	parts[2] = water(50);
	struct acidity known = estimate(parts, 5);
	ck_assert_double_gt(out.high - out.low, known.high - known.low);
	ck_assert(!(known.reasons & ACIDITY_WIDENED));
	for (unsigned bit = 0; bit <= 6; bit++)
		ck_assert_uint_gt(strlen(acidity_reason_text((enum acidity_reason)(1u << bit))),
				  20);
	ck_assert(strstr(acidity_no_test_text(), "no test"));
	ck_assert(strstr(acidity_meter_text(), "calibrated"));
}
END_TEST

/*
 * A food alone has its published pH: tomato 3.70 to 5.20 over all lists (relation ph), and 0.11
 * for the error of the model.
 */
START_TEST(a_food_alone_has_its_ph)
{
	struct acidity_part parts[] = {food("tomato", 500)};
	struct acidity out = estimate(parts, 1);
	ck_assert_double_eq_tol(out.low, 3.70 - 0.11, 1e-6);
	ck_assert_double_eq_tol(out.best, 5.20, 1e-6);
	ck_assert_double_eq_tol(out.high, 5.20 + 0.11, 1e-6);
}
END_TEST

Suite *properties_suite(void)
{
	Suite *suite = suite_create("acidity: properties");
	TCase *tests = tcase_create("properties");
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, scaling_changes_nothing);
	tcase_add_loop_test(tests, more_vinegar_never_raises_the_ph, 0,
			    sizeof FOODS / sizeof *FOODS);
	tcase_add_test(tests, every_food_is_sound);
	tcase_add_test(tests, what_is_no_mixture_is_refused);
	tcase_add_test(tests, reasons_and_shares);
	tcase_add_test(tests, a_food_alone_has_its_ph);
	suite_add_tcase(suite, tests);
	return suite;
}
