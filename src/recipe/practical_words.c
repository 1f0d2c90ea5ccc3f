/* Practical measures and their numbers as people read them. */
#include <inttypes.h>
#include <stdio.h>

#include "jarwright/kitchen_measure.h"

#define CAN_BE_TENTHS 10

/* Metric amounts are whole or in tenths, and are written with a point. */
static char *metric_number(char *buffer, size_t size, struct rational a)
{
	int64_t tenths;
	if (CAN_BE_TENTHS % a.den != 0 || a.den == 1 || !rational_floor(a, CAN_BE_TENTHS, &tenths))
		return rational_words(buffer, size, a);
	snprintf(buffer, size, "%" PRId64 ".%" PRId64, tenths / CAN_BE_TENTHS,
		 tenths % CAN_BE_TENTHS);
	return buffer;
}

char *rational_words(char *buffer, size_t size, struct rational a)
{
	int64_t whole = a.num / a.den, rest = a.num % a.den;
	if (rest == 0)
		snprintf(buffer, size, "%" PRId64, whole);
	else if (whole == 0)
		snprintf(buffer, size, "%" PRId64 "/%" PRId64, rest, a.den);
	else
		snprintf(buffer, size, "%" PRId64 " %" PRId64 "/%" PRId64, whole,
			 rest < 0 ? -rest : rest, a.den);
	return buffer;
}

char *practical_words(char *buffer, size_t size, const struct practical *p)
{
	static const struct rational one = {1, 1};
	size_t n = 0;
	*buffer = '\0';
	for (size_t i = 0; i < p->parts_n && n < size; i++) {
		const struct practical_part *part = &p->parts[i];
		enum kitchen_unit unit = part->measure.unit;
		bool metric = unit == UNIT_MILLILITRE || unit == UNIT_GRAM;
		char number[64];
		if (metric)
			metric_number(number, sizeof number, part->count);
		else
			rational_words(number, sizeof number, part->count);
		n += (size_t)snprintf(
		    buffer + n, size - n, "%s%s %s", i > 0 ? " + " : "", number,
		    kitchen_unit_name(unit, rational_compare(part->count, one) > 0));
	}
	return buffer;
}
