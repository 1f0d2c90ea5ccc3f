/* Plain decimal numbers as the tables print them: digits and a point, no sign, no blank. */
#ifndef REFBUILD_NUMBER_H
#define REFBUILD_NUMBER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Reads length bytes as a whole number of 1 to 9 digits; false if they are anything else. */
bool number_whole(const char *text, size_t length, int32_t *out);

/*
 * Reads a decimal as thousandths: "0.125" gives 125. False if it is not a
 * decimal, has more than three places, or exceeds 2,000,000.
 */
bool number_milli(const char *text, size_t length, int32_t *out);

#endif
