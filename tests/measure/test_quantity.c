#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
#include "suites.h"

static void assert_quantity(enum dimension dimension, const char *text, int64_t num, int64_t den)
{
	struct quantity got = {DIMENSION_LENGTH, {0, 0}};
	struct error err = {ERROR_NONE, ""};
	ck_assert_msg(quantity_parse(dimension, "here", text, &got, &err), "%s", err.text);
	ck_assert_int_eq(got.dimension, dimension);
	ck_assert_msg(got.amount.num == num && got.amount.den == den, "%s: got %lld/%lld", text,
		      (long long)got.amount.num, (long long)got.amount.den);
}

static void assert_refused(enum dimension dimension, const char *text, const char *message)
{
	struct quantity got = {DIMENSION_PERCENT, {7, 3}};
	struct error err = {ERROR_NONE, ""};
	ck_assert_msg(!quantity_parse(dimension, "elevation", text, &got, &err), "%s", text);
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	ck_assert_str_eq(err.text, message);
	ck_assert(got.dimension == DIMENSION_PERCENT && got.amount.num == 7);
}

START_TEST(written_in_many_ways)
{
	static const struct {
		enum dimension dimension;
		const char *text;
		int64_t num, den;
	} cases[] = {{DIMENSION_LENGTH, "2900ft", 2900, 1},
		     {DIMENSION_LENGTH, "2900 ft", 2900, 1},
		     {DIMENSION_LENGTH, "  2900   FT  ", 2900, 1},
		     {DIMENSION_LENGTH, "2900 ft.", 2900, 1},
		     {DIMENSION_LENGTH, "2900 feet", 2900, 1},
		     {DIMENSION_LENGTH, "1 foot", 1, 1},
		     {DIMENSION_LENGTH, "2900'", 2900, 1},
		     {DIMENSION_LENGTH, "2900′", 2900, 1},
		     {DIMENSION_LENGTH, "-500ft", -500, 1},
		     {DIMENSION_LENGTH, "0.3048 m", 1, 1},
		     {DIMENSION_LENGTH, "304.8 metres", 1000, 1},
		     {DIMENSION_LENGTH, "304.8 meters", 1000, 1},
		     {DIMENSION_LENGTH, "3.048km", 10000, 1},
		     {DIMENSION_PRESSURE, "11psi", 11, 1},
		     {DIMENSION_PRESSURE, "10 1/2 psig", 21, 2},
		     {DIMENSION_PRESSURE, "11 lb", 11, 1},
		     {DIMENSION_PRESSURE, "11 pounds", 11, 1},
		     {DIMENSION_MASS, "3½ lb", 7, 2},
		     {DIMENSION_MASS, "3½ lbs.", 7, 2},
		     {DIMENSION_MASS, "20lb", 20, 1},
		     {DIMENSION_MASS, "8 oz.", 1, 2},
		     {DIMENSION_MASS, "0.45359237 kg", 1, 1},
		     {DIMENSION_MASS, "453.59237g", 1, 1},
		     {DIMENSION_VOLUME, "500 mL", 500, 1},
		     {DIMENSION_VOLUME, "500\u00A0ml", 500, 1},
		     {DIMENSION_VOLUME, "500cc", 500, 1},
		     {DIMENSION_VOLUME, "5 dL", 500, 1},
		     {DIMENSION_VOLUME, "½ litre", 500, 1},
		     {DIMENSION_VOLUME, "0.5 liter", 500, 1},
		     {DIMENSION_VOLUME, "1 L", 1000, 1},
		     {DIMENSION_VOLUME, "16 Fl. Oz.", 473176473, 1000000},
		     {DIMENSION_VOLUME, "1 US pint", 473176473, 1000000},
		     {DIMENSION_TEMPERATURE, "202F", 202, 1},
		     {DIMENSION_TEMPERATURE, "202 °F", 202, 1},
		     {DIMENSION_TEMPERATURE, "202° F", 202, 1},
		     {DIMENSION_TEMPERATURE, "202 deg F", 202, 1},
		     {DIMENSION_TEMPERATURE, "100C", 212, 1},
		     {DIMENSION_TEMPERATURE, "94.5 °C", 2021, 10},
		     {DIMENSION_TEMPERATURE, "-40 C", -40, 1},
		     {DIMENSION_PERCENT, "5%", 5, 1},
		     {DIMENSION_PERCENT, "5 %", 5, 1},
		     {DIMENSION_PERCENT, "4.5 percent", 9, 2},
		     {DIMENSION_DURATION, "90 min", 90, 1},
		     {DIMENSION_DURATION, "90 minutes", 90, 1},
		     {DIMENSION_DURATION, "1½ h", 90, 1},
		     {DIMENSION_DURATION, "2 hours", 120, 1}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		assert_quantity(cases[i].dimension, cases[i].text, cases[i].num, cases[i].den);
}
END_TEST

/*
 * Base units in one unit, by an independent program: GNU Units 2.22, run once for each line
 * as units -t -o '%.15g' '1 kPa' psi, and so on. Fifteen digits.
 */
START_TEST(factors_agree_with_a_units_program)
{
	static const struct {
		enum dimension dimension;
		const char *text;
		double base_units;
	} cases[] = {{DIMENSION_LENGTH, "1 ft", 1},
		     {DIMENSION_LENGTH, "1 m", 3.28083989501312},
		     {DIMENSION_LENGTH, "1 km", 3280.83989501312},
		     {DIMENSION_PRESSURE, "1 psi", 1},
		     {DIMENSION_PRESSURE, "1 kPa", 0.145037737730209},
		     {DIMENSION_PRESSURE, "1 bar", 14.5037737730209},
		     {DIMENSION_PRESSURE, "1 mbar", 0.0145037737730209},
		     {DIMENSION_MASS, "1 lb", 1},
		     {DIMENSION_MASS, "1 oz", 0.0625},
		     {DIMENSION_MASS, "1 kg", 2.20462262184878},
		     {DIMENSION_MASS, "1 g", 0.00220462262184878},
		     {DIMENSION_VOLUME, "1 mL", 1},
		     {DIMENSION_VOLUME, "1 dL", 100},
		     {DIMENSION_VOLUME, "1 L", 1000},
		     {DIMENSION_VOLUME, "1 fl oz", 29.5735295625},
		     {DIMENSION_VOLUME, "1 US cup", 236.5882365},
		     {DIMENSION_VOLUME, "1 US pint", 473.176473},
		     {DIMENSION_VOLUME, "1 US quart", 946.352946},
		     {DIMENSION_VOLUME, "1 US gallon", 3785.411784},
		     {DIMENSION_TEMPERATURE, "94.5C", 202.1},
		     {DIMENSION_TEMPERATURE, "-40C", -40},
		     {DIMENSION_DURATION, "1 hour", 60}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct quantity got;
		struct error err;
		ck_assert(quantity_parse(cases[i].dimension, "here", cases[i].text, &got, &err));
		double value = rational_double(got.amount);
		ck_assert_msg(fabs(value - cases[i].base_units) <=
				  5e-15 * fabs(cases[i].base_units),
			      "%s: got %.17g", cases[i].text, value);
	}
}
END_TEST

START_TEST(refusals_are_whole_messages)
{
	assert_refused(DIMENSION_LENGTH, "2900",
		       "elevation: '2900' has no unit; write 2900ft or 2900m");
	assert_refused(DIMENSION_LENGTH, " 3½ ", "elevation: '3½' has no unit; write 3½ft or 3½m");
	assert_refused(DIMENSION_PRESSURE, "11",
		       "elevation: '11' has no unit; write 11psi or 11kPa");
	assert_refused(DIMENSION_LENGTH, "",
		       "elevation: nothing given; write a number and ft or m");
	assert_refused(DIMENSION_LENGTH, "  ",
		       "elevation: nothing given; write a number and ft or m");
	assert_refused(DIMENSION_LENGTH, "2,900 ft",
		       "elevation: '2,900 ft' has a comma; write it without the comma, 1500 for "
		       "thousands, 1.5 for decimals");
	assert_refused(DIMENSION_LENGTH, "1e3ft",
		       "elevation: '1e3ft' has an exponent; write the number out in full, such as "
		       "1000");
	assert_refused(DIMENSION_LENGTH, "nan",
		       "elevation: 'nan' is not a number; write digits, such as 12, 0.25 or 1 1/2");
	assert_refused(DIMENSION_LENGTH, "2900 psi",
		       "elevation: the unit 'psi' of '2900 psi' is not known for a length; give it "
		       "in ft or m");
	assert_refused(DIMENSION_LENGTH, "2900 ft above",
		       "elevation: the unit 'ft above' of '2900 ft above' is not known for a "
		       "length; give it in ft or m");
	assert_refused(DIMENSION_LENGTH, "2900\xFF\x1B[31m",
		       "elevation: the unit '?"
		       "?[31m' of '2900?"
		       "?[31m' is not known for a "
		       "length; give it in ft or m");
	assert_refused(DIMENSION_VOLUME, "2 cups",
		       "elevation: '2 cups' differs from country to country; give it in mL, or as "
		       "US cups, US pints, US quarts or US gallons");
}
END_TEST

START_TEST(refused_whatever_the_dimension)
{
	static const char *const texts[] = {
	    "",        "nan",      "inf",       "1e3",      "1,5",     "5",     "5 |",
	    "5|",      "5 lb|lbs", "5 ft|foot", "ft",       "5 x",     "5 ..",  "5 . ",
	    "1/0 ft",  "5 5 ft",   "5-6 ft",    "5'6\"",    "5 f t",   "5\n",   "\xC2",
	    "5 \xC2",  "5 f\xEF",  "0x5ft",     "5ft5ft",   "5 %%",    "% 5",   "$5",
	    "5 cup",   "5 pint",   "5 quarts",  "5 gallon", "5 tbsp",  "5 tsp", "5 c.c",
	    "5 hecto", "5 lb oz",  "5 us",      "5 fl",     "5 oz lb", "5 deg", "5 °"};
	for (int dimension = DIMENSION_LENGTH; dimension <= DIMENSION_DURATION; dimension++) {
		for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
			struct quantity got;
			struct error err = {ERROR_NONE, ""};
			ck_assert_msg(!quantity_parse((enum dimension)dimension, "here", texts[i],
						      &got, &err),
				      "dimension %d: '%s'", dimension, texts[i]);
			ck_assert_int_eq(err.kind, ERROR_USAGE);
			ck_assert_int_eq(strncmp(err.text, "here: ", 6), 0);
			ck_assert_ptr_nonnull(strstr(err.text, "; "));
		}
	}
}
END_TEST

START_TEST(too_exact_is_refused_not_rounded)
{
	assert_refused(DIMENSION_LENGTH, "9223372036854775807 m",
		       "elevation: '9223372036854775807 m' has more digits than can be held "
		       "exactly; write fewer");
	assert_refused(
	    DIMENSION_PRESSURE, "75.0000000000000001 kPa",
	    "elevation: '75.0000000000000001 kPa' has more digits than can be held exactly; "
	    "write fewer");
	/* What a person reads off a gauge or a barometer fits; expected: Python's fractions. */
	assert_quantity(DIMENSION_PRESSURE, "75.8 kPa", INT64_C(97806256000000),
			INT64_C(8896443230521));
	assert_quantity(DIMENSION_PRESSURE, "1013.25 mbar", INT64_C(18677382000000),
			INT64_C(1270920461503));
}
END_TEST

/* Ten thousand bytes of anything: the message stays short, and is UTF-8. */
START_TEST(long_text_is_not_repeated)
{
	static const char *const fillers[] = {"9", "x", "\xFF", "½", "🍅", " ", "1 ", "'"};
	for (size_t f = 0; f < sizeof fillers / sizeof *fillers; f++) {
		static const char *const starts[] = {"", "5 ", "5 ft"};
		for (size_t s = 0; s < 3; s++) {
			char text[10016];
			size_t used = (size_t)snprintf(text, sizeof text, "%s", starts[s]);
			while (used < 10000)
				used += (size_t)snprintf(text + used, sizeof text - used, "%s",
							 fillers[f]);
			memcpy(text + used, "x", sizeof "x");
			struct quantity got;
			struct error err;
			ck_assert(!quantity_parse(DIMENSION_LENGTH, "here", text, &got, &err));
			ck_assert_uint_lt(strlen(err.text), 450);
			for (const char *at = err.text; *at != '\0'; at += text_utf8_length(at))
				ck_assert_uint_gt(text_utf8_length(at), 0);
		}
	}
}
END_TEST

/* xorshift64 from a fixed seed, so that a failure is the same at every run. */
#define SEED UINT64_C(0x9E3779B97F4A7C15)
static uint64_t next_random(uint64_t *state)
{
	*state ^= *state << 13;
	*state ^= *state >> 7;
	*state ^= *state << 17;
	return *state;
}

static struct rational parsed(enum dimension dimension, const char *text)
{
	struct quantity got;
	struct error err = {ERROR_NONE, ""};
	ck_assert_msg(quantity_parse(dimension, "here", text, &got, &err), "%s", err.text);
	return got.amount;
}

/* Converted there and back, a quantity is what it was, to the last digit. */
START_TEST(there_and_back)
{
	static const struct {
		enum dimension dimension;
		const char *unit;
	} units[] = {
	    {DIMENSION_LENGTH, "m"},     {DIMENSION_LENGTH, "km"},     {DIMENSION_PRESSURE, "kPa"},
	    {DIMENSION_PRESSURE, "bar"}, {DIMENSION_PRESSURE, "mbar"}, {DIMENSION_MASS, "oz"},
	    {DIMENSION_MASS, "kg"},      {DIMENSION_MASS, "g"},        {DIMENSION_VOLUME, "L"},
	    {DIMENSION_VOLUME, "fl oz"}, {DIMENSION_VOLUME, "US cup"}, {DIMENSION_TEMPERATURE, "C"},
	    {DIMENSION_DURATION, "h"}};
	uint64_t state = SEED;
	for (int round = 0; round < 10000; round++) {
		uint64_t before = state;
		size_t u = next_random(&state) % (sizeof units / sizeof *units);
		int64_t hundredths = (int64_t)(next_random(&state) % 2000001) - 1000000;
		char text[64];
		snprintf(text, sizeof text, "%s%lld.%02lld %s", hundredths < 0 ? "-" : "",
			 (long long)(llabs(hundredths) / 100), (long long)(llabs(hundredths) % 100),
			 units[u].unit);
		char zero_text[16];
		char one_text[16];
		snprintf(zero_text, sizeof zero_text, "0 %s", units[u].unit);
		snprintf(one_text, sizeof one_text, "1 %s", units[u].unit);
		struct rational base = parsed(units[u].dimension, text);
		struct rational zero = parsed(units[u].dimension, zero_text);
		struct rational one = parsed(units[u].dimension, one_text);
		struct rational size;
		struct rational back;
		bool sound = rational_add(one, (struct rational){-zero.num, zero.den}, &size) &&
			     rational_add(base, (struct rational){-zero.num, zero.den}, &back) &&
			     rational_div(back, size, &back);
		struct rational typed;
		sound = sound && rational_make(hundredths, 100, &typed) && back.num == typed.num &&
			back.den == typed.den;
		ck_assert_msg(sound, "seed %#llx: '%s'", (unsigned long long)before, text);
	}
}
END_TEST

Suite *quantity_suite(void)
{
	Suite *suite = suite_create("quantity");
	TCase *tests = tcase_create("quantity");
	tcase_add_test(tests, written_in_many_ways);
	tcase_add_test(tests, factors_agree_with_a_units_program);
	tcase_add_test(tests, refusals_are_whole_messages);
	tcase_add_test(tests, refused_whatever_the_dimension);
	tcase_add_test(tests, too_exact_is_refused_not_rounded);
	tcase_add_test(tests, long_text_is_not_repeated);
	tcase_add_test(tests, there_and_back);
	tcase_set_timeout(tests, 60);
	suite_add_tcase(suite, tests);
	return suite;
}
