#include "units.h"

#include <string.h>

#include "number.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))
#define NO_OFFSET                                                                                  \
	{                                                                                          \
		0, 1                                                                               \
	}

/*
 * Factors, all exact and in lowest terms.
 *
 * NIST Special Publication 811 (2008), Guide for the Use of the SI, appendix B:
 *   foot                  0.3048 m, so a metre is 1250/381 ft
 *   inch                  0.0254 m
 *   avoirdupois pound     0.45359237 kg; an ounce is 1/16 of it
 *   standard gravity      9.80665 m/s2
 *   pound-force           0.45359237 kg x 9.80665 m/s2 = 4.4482216152605 N
 *   psi                   pound-force / (0.0254 m)2, so a kilopascal is
 *                         0.64516 / 4.4482216152605 psi
 *   bar                   100 kPa
 *   degree Celsius        t(F) = 1.8 t(C) + 32
 * NIST Handbook 44, appendix C:
 *   US gallon             231 cubic inches = 3785.411784 mL; 4 quarts, 8 pints, 16 cups,
 *                         128 fluid ounces (29.5735295625 mL)
 *
 * "fl oz" alone is the US one. The imperial fluid ounce is smaller (28.4130625 mL; Weights
 * and Measures Act 1985), so a jar sold in those is taken for a larger jar: the strict side.
 */
static const struct unit lengths[] = {
    {"|ft|foot|feet|'|′|", {1, 1}, NO_OFFSET},
    {"|m|metre|metres|meter|meters|", {1250, 381}, NO_OFFSET},
    {"|km|kilometre|kilometres|kilometer|kilometers|", {1250000, 381}, NO_OFFSET},
};

#define PSI_PER_KPA_NUM 1290320000000
#define PSI_PER_KPA_DEN 8896443230521
static const struct unit pressures[] = {
    {"|psi|psig|lb|lbs|pound|pounds|", {1, 1}, NO_OFFSET},
    {"|kpa|kilopascal|kilopascals|", {PSI_PER_KPA_NUM, PSI_PER_KPA_DEN}, NO_OFFSET},
    {"|bar|bars|", {PSI_PER_KPA_NUM * 100, PSI_PER_KPA_DEN}, NO_OFFSET},
    {"|mbar|millibar|millibars|", {PSI_PER_KPA_NUM / 10, PSI_PER_KPA_DEN}, NO_OFFSET},
};

static const struct unit masses[] = {
    {"|lb|lbs|pound|pounds|", {1, 1}, NO_OFFSET},
    {"|oz|ounce|ounces|", {1, 16}, NO_OFFSET},
    {"|kg|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes|", {100000000, 45359237}, NO_OFFSET},
    {"|g|gram|grams|gramme|grammes|", {100000, 45359237}, NO_OFFSET},
};

static const struct unit volumes[] = {
    {"|ml|cc|millilitre|millilitres|milliliter|milliliters|", {1, 1}, NO_OFFSET},
    {"|dl|decilitre|decilitres|deciliter|deciliters|", {100, 1}, NO_OFFSET},
    {"|l|litre|litres|liter|liters|", {1000, 1}, NO_OFFSET},
    {"|fl oz|floz|fluid ounce|fluid ounces|us fl oz|us fluid ounce|us fluid ounces|",
     {473176473, 16000000},
     NO_OFFSET},
    {"|us cup|us cups|", {473176473, 2000000}, NO_OFFSET},
    {"|us pint|us pints|us pt|", {473176473, 1000000}, NO_OFFSET},
    {"|us quart|us quarts|us qt|", {473176473, 500000}, NO_OFFSET},
    {"|us gallon|us gallons|us gal|", {473176473, 125000}, NO_OFFSET},
};

static const struct unit temperatures[] = {
    {"|f|°f|° f|deg f|degf|degree f|degrees f|fahrenheit|degrees fahrenheit|", {1, 1}, NO_OFFSET},
    {"|c|°c|° c|deg c|degc|degree c|degrees c|celsius|degrees celsius|", {9, 5}, {32, 1}},
};

static const struct unit percents[] = {
    {"|%|percent|per cent|", {1, 1}, NO_OFFSET},
};

static const struct unit durations[] = {
    {"|min|mins|minute|minutes|", {1, 1}, NO_OFFSET},
    {"|h|hr|hrs|hour|hours|", {60, 1}, NO_OFFSET},
};

static const struct unit_family families[] = {
    [DIMENSION_LENGTH] = {"a length", {"ft", "m"}, lengths, COUNT(lengths)},
    [DIMENSION_PRESSURE] = {"a pressure", {"psi", "kPa"}, pressures, COUNT(pressures)},
    [DIMENSION_MASS] = {"a weight", {"lb", "kg"}, masses, COUNT(masses)},
    [DIMENSION_VOLUME] = {"a volume", {"mL", "L"}, volumes, COUNT(volumes)},
    [DIMENSION_TEMPERATURE] = {"a temperature", {"F", "C"}, temperatures, COUNT(temperatures)},
    [DIMENSION_PERCENT] = {"a percentage", {"%", "percent"}, percents, COUNT(percents)},
    [DIMENSION_DURATION] = {"a time", {"min", "h"}, durations, COUNT(durations)},
};

const struct unit_family *unit_family(enum dimension dimension)
{
	return &families[dimension];
}

/* Is there a blank, or the end, after the point at `at`? Then it marks an abbreviation. */
static bool ends_abbreviation(const char *at)
{
	return at[1] == '\0' || number_skip_blanks(at + 1) != at + 1;
}

/* "|fl oz|" of "Fl.  oz. "; false: too long for any unit. */
static bool fold(const char *text, char folded[static UNIT_NAME_MAX + 3])
{
	size_t to = 0;
	folded[to++] = '|';
	for (const char *at = number_skip_blanks(text); *at != '\0';) {
		if (to > UNIT_NAME_MAX)
			return false;
		const char *next = number_skip_blanks(at);
		if (next != at) {
			if (*next != '\0')
				folded[to++] = ' ';
			at = next;
			continue;
		}
		bool upper = *at >= 'A' && *at <= 'Z';
		if (*at != '.' || to == 1 || !ends_abbreviation(at))
			folded[to++] = (char)(upper ? *at - 'A' + 'a' : *at);
		at++;
	}
	folded[to++] = '|';
	folded[to] = '\0';
	/* A bar typed by hand must not match across two names. */
	return strchr(folded + 1, '|') == folded + to - 1;
}

const struct unit *unit_find(const struct unit_family *family, const char *text)
{
	char folded[UNIT_NAME_MAX + 3];
	if (!fold(text, folded))
		return NULL;
	for (size_t i = 0; i < family->units_n; i++)
		if (strstr(family->units[i].names, folded) != NULL)
			return &family->units[i];
	return NULL;
}

bool unit_differs_by_country(const char *text)
{
	static const char names[] = "|c|cup|cups|pt|pint|pints|qt|quart|quarts|gal|gallon|gallons|"
				    "tbsp|tablespoon|tablespoons|tsp|teaspoon|teaspoons|";
	char folded[UNIT_NAME_MAX + 3];
	return fold(text, folded) && strstr(names, folded) != NULL;
}
