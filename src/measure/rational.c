#include "jarwright/measure.h"

/*
 * Two 64-bit numbers multiplied, and two such products added, fit in 128 bits: every
 * operation below is exact, and only its reduced result may be too large.
 */
__extension__ typedef __int128 wide;
__extension__ typedef unsigned __int128 wide_magnitude;

static wide_magnitude magnitude(wide n)
{
	return n < 0 ? -(wide_magnitude)n : (wide_magnitude)n;
}

static wide_magnitude common_divisor(wide_magnitude a, wide_magnitude b)
{
	while (b != 0) {
		wide_magnitude rest = a % b;
		a = b;
		b = rest;
	}
	return a;
}

static bool narrow(wide n, int64_t *out)
{
	if (n < INT64_MIN || n > INT64_MAX)
		return false;
	*out = (int64_t)n;
	return true;
}

static bool reduce(wide num, wide den, struct rational *out)
{
	if (den == 0)
		return false;
	wide divisor = (wide)common_divisor(magnitude(num), magnitude(den));
	if (den < 0)
		divisor = -divisor;
	struct rational reduced;
	if (!narrow(num / divisor, &reduced.num) || !narrow(den / divisor, &reduced.den))
		return false;
	*out = reduced;
	return true;
}

bool rational_make(int64_t num, int64_t den, struct rational *out)
{
	return reduce(num, den, out);
}

bool rational_add(struct rational a, struct rational b, struct rational *out)
{
	return reduce((wide)a.num * b.den + (wide)b.num * a.den, (wide)a.den * b.den, out);
}

bool rational_mul(struct rational a, struct rational b, struct rational *out)
{
	return reduce((wide)a.num * b.num, (wide)a.den * b.den, out);
}

bool rational_div(struct rational a, struct rational b, struct rational *out)
{
	return reduce((wide)a.num * b.den, (wide)a.den * b.num, out);
}

int rational_compare(struct rational a, struct rational b)
{
	wide left = (wide)a.num * b.den;
	wide right = (wide)b.num * a.den;
	return (left > right) - (left < right);
}

bool rational_ceil(struct rational a, int64_t scale, int64_t *out)
{
	wide scaled = (wide)a.num * scale;
	return narrow(scaled / a.den + (scaled % a.den > 0), out);
}

bool rational_floor(struct rational a, int64_t scale, int64_t *out)
{
	wide scaled = (wide)a.num * scale;
	return narrow(scaled / a.den - (scaled % a.den < 0), out);
}

double rational_double(struct rational a)
{
	return (double)a.num / (double)a.den;
}
