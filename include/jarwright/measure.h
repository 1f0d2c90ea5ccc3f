/*
 * Quantities as people type them, held exactly.
 *
 * A quantity is a rational number of one base unit, so that converting there
 * and back loses nothing. Numbers are read by our own parser, never by the
 * locale's; nothing is clamped, rounded or guessed: "2900" without a unit,
 * "1,5" and "1e3" are refused with a message that says what to type instead.
 */
#ifndef JARWRIGHT_MEASURE_H
#define JARWRIGHT_MEASURE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"

/* num/den in lowest terms, den > 0. Zero is 0/1. */
struct rational {
	int64_t num;
	int64_t den;
};

/* Each returns false when the exact result does not fit (nothing is rounded). */
bool rational_make(int64_t num, int64_t den, struct rational *out);
bool rational_add(struct rational a, struct rational b, struct rational *out);
bool rational_mul(struct rational a, struct rational b, struct rational *out);
bool rational_div(struct rational a, struct rational b, struct rational *out);
/* -1, 0 or 1; exact for every pair. */
int rational_compare(struct rational a, struct rational b);
/* Smallest integer not below, greatest not above a * scale. False: does not fit. */
bool rational_ceil(struct rational a, int64_t scale, int64_t *out);
bool rational_floor(struct rational a, int64_t scale, int64_t *out);
double rational_double(struct rational a);

/*
 * Reads a whole text as one number: "12", "-3", "0.25", ".5", "1/2", "1 1/2",
 * "1-1/2", the vulgar fractions of Unicode ("½", "3½"). Refused, with the
 * reason in *err: empty text, a comma, an exponent, "nan", a zero denominator,
 * anything left over, more digits than fit.
 */
bool rational_parse(const char *text, struct rational *out, struct error *err);

enum dimension {
	DIMENSION_LENGTH,      /* base unit: foot */
	DIMENSION_PRESSURE,    /* base unit: psi */
	DIMENSION_MASS,        /* base unit: pound (avoirdupois) */
	DIMENSION_VOLUME,      /* base unit: millilitre */
	DIMENSION_TEMPERATURE, /* base unit: degree Fahrenheit */
	DIMENSION_PERCENT,     /* base unit: percent */
	DIMENSION_DURATION,    /* base unit: minute */
};

/* A number of the base unit of its dimension. */
struct quantity {
	enum dimension dimension;
	struct rational amount;
};

/*
 * Reads "<number><unit>" with or without a space between, the whole text, in
 * the dimension asked for: "2900ft", "880 m", "2,900 ft" is refused (a comma),
 * "11psi", "75kPa", "3½ lb", "500 mL", "94.5 °C", "202F", "5%", "90 min".
 * Units are understood in either spelling and any common abbreviation. What is
 * being read (for example "elevation") opens the message. A number without a
 * unit is refused by naming the units to choose from.
 */
bool quantity_parse(enum dimension dimension, const char *what, const char *text,
		    struct quantity *out, struct error *err);

#endif
