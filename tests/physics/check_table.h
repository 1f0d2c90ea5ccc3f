/* Published check values from tests/data: one a line, each with its source. */
#ifndef JARWRIGHT_TESTS_PHYSICS_CHECK_TABLE_H
#define JARWRIGHT_TESTS_PHYSICS_CHECK_TABLE_H

#include <stddef.h>

#ifndef TEST_DATA
#define TEST_DATA "tests/data"
#endif

struct check_value {
	char quantity[64];
	double input;
	char input_unit[32];
	double value;
	double half_digit; /* half of the last digit printed: how exact the value is */
	char unit[16];
	char source[160];
};

#define CHECK_VALUES_MAX 128
/* Reads every line of the file or fails the test. Returns how many. */
size_t check_table_read(const char *path, struct check_value values[static CHECK_VALUES_MAX]);

/* Fails the test, naming the line and its source, if got is further off than tolerance. */
void check_value_near(const struct check_value *value, double got, double tolerance);

#endif
