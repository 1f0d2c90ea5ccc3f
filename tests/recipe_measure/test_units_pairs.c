/* Every conversion against an independent program: see the head of the file of pairs. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "suites.h"

#define PATH      "tests/data/units-pairs.csv"
#define TOLERANCE 1e-9
#define PAIRS     942 /* lines of the file */

static struct kitchen_measure read_measure(const char *line, const char *system, const char *unit)
{
	enum kitchen_unit found;
	enum measuring_system ignored, of;
	struct kitchen_measure m;
	if (!measuring_system_find(system, &of) || !kitchen_unit_find(unit, &found, &ignored) ||
	    !kitchen_measure_find(reference_tables_edition(), found, of, &m))
		ck_abort_msg("not known: %s", line);
	return m;
}

static void check_pair(char *line)
{
	char copy[256], *save = NULL, *field[5];
	snprintf(copy, sizeof copy, "%s", line);
	for (int i = 0; i < 5; i++) {
		field[i] = strtok_r(i == 0 ? line : NULL, ",\n", &save);
		ck_assert_ptr_nonnull(field[i]);
	}
	struct kitchen_measure from = read_measure(copy, field[0], field[1]);
	struct kitchen_measure to = read_measure(copy, field[2], field[3]);
	struct rational factor;
	char *end;
	double expected = strtod(field[4], &end);
	ck_assert(*end == '\0' && expected > 0);
	ck_assert(rational_div(from.amount, to.amount, &factor));
	ck_assert_msg(fabs(rational_double(factor) / expected - 1) <= TOLERANCE, "%s", copy);
}

START_TEST(every_pair_agrees)
{
	char line[256];
	size_t pairs = 0;
	FILE *file = fopen(PATH, "r");
	ck_assert_ptr_nonnull(file);
	while (fgets(line, sizeof line, file)) {
		if (*line == '#' || strncmp(line, "from_system", 11) == 0)
			continue;
		check_pair(line);
		pairs++;
	}
	fclose(file);
	ck_assert_uint_eq(pairs, PAIRS);
}
END_TEST

Suite *units_pairs_suite(void)
{
	Suite *suite = suite_create("kitchen measures against units");
	TCase *tests = tcase_create("pairs");
	tcase_add_test(tests, every_pair_agrees);
	suite_add_tcase(suite, tests);
	return suite;
}
