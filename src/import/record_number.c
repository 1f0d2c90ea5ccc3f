/* Decimal numbers of a recorder, quickly and without the locale. */
#include <stdint.h>

#include "record_internal.h"

#define DIGITS_MAX 15 /* exact in a double, and so is the power of ten below */

bool record_number(const char *text, char mark, double *out)
{
	static const double tens[DIGITS_MAX + 1] = {1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
						    1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
	bool negative = *text == '-';
	bool point = false;
	int64_t number = 0;
	int digits = 0, places = 0;
	text += *text == '-' || *text == '+';
	for (; *text; text++) {
		if (!point && (*text == '.' || *text == mark)) {
			point = true;
			continue;
		}
		if (*text < '0' || *text > '9')
			return false;
		if (point && (digits == DIGITS_MAX || places == DIGITS_MAX))
			continue; /* finer than any sensor: cut, toward nothing */
		number = number * 10 + (*text - '0');
		digits += number > 0;
		places += point;
		if (digits > DIGITS_MAX)
			return false;
	}
	if (text[-1] < '0' || text[-1] > '9')
		return false; /* empty, a bare sign or mark, "5." */
	*out = (double)(negative ? -number : number) / tens[places];
	return true;
}
