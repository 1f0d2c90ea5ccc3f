#include "number.h"

#include <string.h>

bool number_whole(const char *text, size_t length, int32_t *out)
{
	int32_t value = 0;

	if (length < 1 || length > 9)
		return false;
	for (size_t i = 0; i < length; i++) {
		if (text[i] < '0' || text[i] > '9')
			return false;
		value = value * 10 + (text[i] - '0');
	}
	*out = value;
	return true;
}

bool number_milli(const char *text, size_t length, int32_t *out)
{
	const char *point = memchr(text, '.', length);
	size_t whole_length = point ? (size_t)(point - text) : length;
	size_t places = point ? length - whole_length - 1 : 0;
	int32_t whole;
	int32_t fraction = 0;

	if (!number_whole(text, whole_length, &whole) || whole > 2000000)
		return false;
	if (point && (places > 3 || !number_whole(point + 1, places, &fraction)))
		return false;
	for (size_t i = places; i < 3; i++)
		fraction *= 10;
	*out = whole * 1000 + fraction;
	return true;
}
