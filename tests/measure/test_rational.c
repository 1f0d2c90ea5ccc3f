#include <math.h>
#include <stdint.h>

#include "jarwright/measure.h"
#include "suites.h"

static const struct rational zero = {0, 1};
static const struct rational largest = {INT64_MAX, 1};
static const struct rational smallest = {INT64_MIN, 1};

static void assert_rational(struct rational got, int64_t num, int64_t den)
{
	ck_assert_msg(got.num == num && got.den == den, "got %lld/%lld, expected %lld/%lld",
		      (long long)got.num, (long long)got.den, (long long)num, (long long)den);
}

START_TEST(make_reduces)
{
	static const struct {
		int64_t num, den;
		struct rational expected;
	} cases[] = {{6, 4, {3, 2}},
		     {6, -4, {-3, 2}},
		     {-6, -4, {3, 2}},
		     {0, -7, {0, 1}},
		     {INT64_MIN, 2, {INT64_MIN / 2, 1}},
		     {INT64_MIN, INT64_MIN, {1, 1}},
		     {INT64_MAX, INT64_MIN + 1, {-1, 1}},
		     {INT64_MIN, 1, {INT64_MIN, 1}},
		     {2, INT64_MIN, {-1, -(INT64_MIN / 2)}}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct rational got;
		ck_assert(rational_make(cases[i].num, cases[i].den, &got));
		assert_rational(got, cases[i].expected.num, cases[i].expected.den);
	}
}
END_TEST

START_TEST(what_does_not_fit_is_refused)
{
	struct rational out = {7, 3};
	struct rational tiny = {1, INT64_MAX};
	ck_assert(!rational_make(1, 0, &out));
	ck_assert(!rational_make(0, 0, &out));
	ck_assert(!rational_make(INT64_MIN, -1, &out));
	ck_assert(!rational_make(1, INT64_MIN, &out));
	ck_assert(!rational_add(largest, (struct rational){1, 1}, &out));
	ck_assert(!rational_add(smallest, (struct rational){-1, 1}, &out));
	ck_assert(!rational_add(smallest, smallest, &out));
	ck_assert(!rational_add(tiny, (struct rational){1, INT64_MAX - 1}, &out));
	ck_assert(!rational_mul(largest, (struct rational){2, 1}, &out));
	ck_assert(!rational_mul(smallest, (struct rational){-1, 1}, &out));
	ck_assert(!rational_mul(tiny, (struct rational){1, 2}, &out));
	ck_assert(!rational_div(largest, zero, &out));
	ck_assert(!rational_div(zero, zero, &out));
	ck_assert(!rational_div(largest, tiny, &out));
	assert_rational(out, 7, 3); /* and leaves what was there */
}
END_TEST

START_TEST(what_just_fits_is_exact)
{
	struct rational out;
	ck_assert(rational_add(largest, smallest, &out));
	assert_rational(out, -1, 1);
	ck_assert(rational_add((struct rational){INT64_MAX - 1, 1}, (struct rational){1, 1}, &out));
	assert_rational(out, INT64_MAX, 1);
	ck_assert(rational_mul(largest, (struct rational){1, INT64_MAX}, &out));
	assert_rational(out, 1, 1);
	ck_assert(rational_div(smallest, smallest, &out));
	assert_rational(out, 1, 1);
	ck_assert(rational_div((struct rational){1, 2}, (struct rational){-3, 4}, &out));
	assert_rational(out, -2, 3);
}
END_TEST

START_TEST(compare_is_exact)
{
	/* Too close for a double to tell apart. */
	struct rational a = {INT64_MAX, INT64_MAX - 1};
	struct rational b = {INT64_MAX - 1, INT64_MAX - 2};
	ck_assert_int_eq(rational_compare(a, b), -1);
	ck_assert_int_eq(rational_compare(b, a), 1);
	ck_assert_int_eq(rational_compare(a, a), 0);
	ck_assert_int_eq(rational_compare(smallest, largest), -1);
	ck_assert_int_eq(rational_compare((struct rational){-1, 2}, (struct rational){1, 3}), -1);
}
END_TEST

START_TEST(ceil_and_floor)
{
	static const struct {
		struct rational a;
		int64_t scale, ceil, floor;
	} cases[] = {{{5, 2}, 1, 3, 2},
		     {{-5, 2}, 1, -2, -3},
		     {{4, 2}, 1, 2, 2},
		     {{0, 1}, 1000, 0, 0},
		     {{1, 3}, 1000, 334, 333},
		     {{-1, 3}, 1000, -333, -334},
		     {{5, 2}, -1, -2, -3},
		     {{INT64_MAX, 1000}, 1000, INT64_MAX, INT64_MAX},
		     {{INT64_MIN, 1}, 1, INT64_MIN, INT64_MIN}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		int64_t up;
		int64_t down;
		ck_assert(rational_ceil(cases[i].a, cases[i].scale, &up));
		ck_assert(rational_floor(cases[i].a, cases[i].scale, &down));
		ck_assert_int_eq(up, cases[i].ceil);
		ck_assert_int_eq(down, cases[i].floor);
	}
	int64_t out = 7;
	ck_assert(!rational_ceil(largest, 2, &out));
	ck_assert(!rational_floor(smallest, 2, &out));
	ck_assert(!rational_ceil(smallest, -1, &out));
	ck_assert_int_eq(out, 7);
}
END_TEST

START_TEST(doubles)
{
	ck_assert_double_eq(rational_double((struct rational){1, 4}), 0.25);
	ck_assert_double_eq(rational_double((struct rational){-5, 2}), -2.5);
	ck_assert_double_eq(rational_double(zero), 0.0);
	ck_assert_double_eq(rational_double(smallest), -ldexp(1.0, 63));
}
END_TEST

/* xorshift64: a fixed seed, so that a failure is the same at every run. */
#define SEED UINT64_C(0x2545F4914F6CDD1D)
static uint64_t next_random(uint64_t *state)
{
	*state ^= *state << 13;
	*state ^= *state >> 7;
	*state ^= *state << 17;
	return *state;
}

static struct rational random_rational(uint64_t *state, uint64_t span)
{
	struct rational out;
	int64_t num = (int64_t)(next_random(state) % (2 * span)) - (int64_t)span;
	int64_t den = (int64_t)(next_random(state) % span) + 1;
	ck_assert(rational_make(num, den, &out));
	return out;
}

/* The laws of arithmetic, on numbers small enough for every result to fit. */
START_TEST(laws_of_arithmetic)
{
	uint64_t state = SEED;
	for (int round = 0; round < 20000; round++) {
		uint64_t before = state;
		struct rational a = random_rational(&state, 40000);
		struct rational b = random_rational(&state, 40000);
		struct rational sum;
		struct rational product;
		struct rational back;
		struct rational minus_b = {-b.num, b.den};
		bool sound = rational_add(a, b, &sum) && rational_add(sum, minus_b, &back) &&
			     rational_compare(back, a) == 0 && back.den == a.den;
		sound = sound && rational_compare(sum, a) == (b.num > 0) - (b.num < 0);
		sound = sound && rational_mul(a, b, &product);
		if (b.num != 0)
			sound = sound && rational_div(product, b, &back) && back.num == a.num &&
				back.den == a.den;
		int64_t up = 0;
		int64_t down = 0;
		sound = sound && rational_ceil(a, 1, &up) && rational_floor(a, 1, &down) &&
			rational_compare((struct rational){up, 1}, a) >= 0 &&
			rational_compare((struct rational){down, 1}, a) <= 0 &&
			up - down == (a.den != 1);
		ck_assert_msg(sound, "seed %#llx: %lld/%lld and %lld/%lld",
			      (unsigned long long)before, (long long)a.num, (long long)a.den,
			      (long long)b.num, (long long)b.den);
	}
}
END_TEST

/* On numbers of any size a result is either refused or, taken back, gives what was there. */
START_TEST(large_results_are_exact_or_refused)
{
	uint64_t state = SEED;
	int fitted = 0;
	int refused = 0;
	for (int round = 0; round < 20000; round++) {
		uint64_t before = state;
		uint64_t span = UINT64_C(1) << (next_random(&state) % 62 + 1);
		struct rational a = random_rational(&state, span);
		struct rational b = random_rational(&state, span);
		struct rational result;
		struct rational back;
		bool sound = true;
		if (b.num != 0 && rational_mul(a, b, &result)) {
			sound = rational_div(result, b, &back) && rational_compare(back, a) == 0;
			fitted++;
		} else {
			refused++;
		}
		if (rational_add(a, b, &result))
			sound = sound &&
				rational_add(result, (struct rational){-b.num, b.den}, &back) &&
				rational_compare(back, a) == 0;
		ck_assert_msg(sound, "seed %#llx: %lld/%lld and %lld/%lld",
			      (unsigned long long)before, (long long)a.num, (long long)a.den,
			      (long long)b.num, (long long)b.den);
	}
	ck_assert_int_gt(fitted, 1000);
	ck_assert_int_gt(refused, 1000);
}
END_TEST

Suite *rational_suite(void)
{
	Suite *suite = suite_create("rational");
	TCase *tests = tcase_create("rational");
	tcase_add_test(tests, make_reduces);
	tcase_add_test(tests, what_does_not_fit_is_refused);
	tcase_add_test(tests, what_just_fits_is_exact);
	tcase_add_test(tests, compare_is_exact);
	tcase_add_test(tests, ceil_and_floor);
	tcase_add_test(tests, doubles);
	tcase_add_test(tests, laws_of_arithmetic);
	tcase_add_test(tests, large_results_are_exact_or_refused);
	tcase_set_timeout(tests, 60);
	suite_add_tcase(suite, tests);
	return suite;
}
