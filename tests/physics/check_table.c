#include "check_table.h"

#include <check.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static double number(const char *path, const char *field)
{
	char *end;
	double value = strtod(field, &end);
	if (end == field || *end != '\0')
		ck_abort_msg("%s: '%s' is not a number", path, field);
	return value;
}

/* Half a unit of the last place of "9.7204", "212" or "0.353658941e-2". */
static double half_digit(const char *field)
{
	const char *exponent = strpbrk(field, "eE");
	const char *end = exponent != NULL ? exponent : field + strlen(field);
	const char *point = strchr(field, '.');
	long places = point != NULL ? end - point - 1 : 0;
	long power = exponent != NULL ? strtol(exponent + 1, NULL, 10) : 0;
	return 0.5 * pow(10.0, (double)(power - places));
}

static void copy(const char *path, char *to, size_t size, const char *field)
{
	if (strlen(field) >= size)
		ck_abort_msg("%s: '%s' is too long", path, field);
	memcpy(to, field, strlen(field) + 1);
}

static void read_line(const char *path, char *line, struct check_value *value)
{
	char *fields[6];
	size_t fields_n = 0;
	line[strcspn(line, "\n")] = '\0';
	for (char *field; (field = strsep(&line, ",")) != NULL; fields_n++) {
		if (fields_n == 6)
			ck_abort_msg("%s: more than 6 fields at '%s'", path, field);
		fields[fields_n] = field;
	}
	if (fields_n != 6)
		ck_abort_msg("%s: fewer than 6 fields in a line", path);
	copy(path, value->quantity, sizeof value->quantity, fields[0]);
	value->input = number(path, fields[1]);
	copy(path, value->input_unit, sizeof value->input_unit, fields[2]);
	value->value = number(path, fields[3]);
	value->half_digit = half_digit(fields[3]);
	copy(path, value->unit, sizeof value->unit, fields[4]);
	copy(path, value->source, sizeof value->source, fields[5]);
}

size_t check_table_read(const char *path, struct check_value values[static CHECK_VALUES_MAX])
{
	FILE *file = fopen(path, "r");
	if (file == NULL)
		ck_abort_msg("%s: cannot be opened; run the tests from the project's root", path);
	char line[512];
	size_t n = 0;
	while (fgets(line, sizeof line, file) != NULL) {
		if (line[0] == '#' || strncmp(line, "quantity,", 9) == 0)
			continue;
		if (n == CHECK_VALUES_MAX)
			ck_abort_msg("%s: more than %d values", path, CHECK_VALUES_MAX);
		read_line(path, line, &values[n++]);
	}
	ck_assert_int_eq(ferror(file), 0);
	fclose(file);
	return n;
}

void check_value_near(const struct check_value *value, double got, double tolerance)
{
	/* Not "difference > tolerance": NAN must fail. */
	if (!(fabs(got - value->value) <= tolerance))
		ck_abort_msg("%s at %g %s: got %.9g, published %.9g %s, tolerance %.3g (%s)",
			     value->quantity, value->input, value->input_unit, got, value->value,
			     value->unit, tolerance, value->source);
}
