#include <string.h>

#include "jarwright/text.h"
#include "number.h"

/* The vulgar fractions of the Unicode Standard: Latin-1 Supplement and Number Forms. */
static const struct {
	const char *sign;
	struct rational value;
} vulgar_fractions[] = {
    {"½", {1, 2}}, {"¼", {1, 4}}, {"¾", {3, 4}}, {"⅓", {1, 3}}, {"⅔", {2, 3}}, {"⅛", {1, 8}},
    {"⅜", {3, 8}}, {"⅝", {5, 8}}, {"⅞", {7, 8}}, {"⅕", {1, 5}}, {"⅖", {2, 5}}, {"⅗", {3, 5}},
    {"⅘", {4, 5}}, {"⅙", {1, 6}}, {"⅚", {5, 6}}, {"⅐", {1, 7}}, {"⅑", {1, 9}}, {"⅒", {1, 10}},
};

static bool starts_with(const char *at, const char *with)
{
	return strncmp(at, with, strlen(with)) == 0;
}

/* Bytes of the first of these texts (a NULL ends them) that stands at `at`; 0: none. */
static size_t length_of_any(const char *at, const char *const *texts)
{
	for (; *texts != NULL; texts++)
		if (starts_with(at, *texts))
			return strlen(*texts);
	return 0;
}

const char *number_skip_blanks(const char *at)
{
	/* U+00A0 no-break space, U+2009 thin space, U+202F narrow no-break space */
	static const char *const blanks[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF",
					     NULL};
	for (size_t length; (length = length_of_any(at, blanks)) > 0;)
		at += length;
	return at;
}

static size_t slash_length(const char *at)
{
	/* U+2044 is the fraction slash of print. */
	static const char *const slashes[] = {"/", "\xE2\x81\x84", NULL};
	return length_of_any(at, slashes);
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool scan_vulgar(const char **at, struct rational *out)
{
	for (size_t i = 0; i < sizeof vulgar_fractions / sizeof *vulgar_fractions; i++) {
		if (starts_with(*at, vulgar_fractions[i].sign)) {
			*at += strlen(vulgar_fractions[i].sign);
			*out = vulgar_fractions[i].value;
			return true;
		}
	}
	return false;
}

/* Carries *value on with the digits at *at, if any; false: it no longer fits. */
static bool scan_digits(const char **at, int64_t *value)
{
	for (; is_digit(**at); ++*at)
		if (__builtin_mul_overflow(*value, 10, value) ||
		    __builtin_add_overflow(*value, **at - '0', value))
			return false;
	return true;
}

/* "25" of "0.25": what follows the point, the whole part being known. */
static enum number_fault scan_decimals(const char **at, int64_t whole, struct rational *out)
{
	const char *first = *at;
	int64_t num = whole;
	if (!scan_digits(at, &num))
		return NUMBER_TOO_LONG;
	if (*at == first)
		return NUMBER_POINT;
	int64_t den = 1;
	for (const char *digit = first; digit < *at; digit++)
		if (__builtin_mul_overflow(den, 10, &den))
			return NUMBER_TOO_LONG;
	return rational_make(num, den, out) ? NUMBER_SOUND : NUMBER_TOO_LONG;
}

/* "/2" of "1/2", the digits before it being known. */
static enum number_fault scan_denominator(const char **at, int64_t num, struct rational *out)
{
	*at += slash_length(*at);
	int64_t den = 0;
	if (!scan_digits(at, &den))
		return NUMBER_TOO_LONG;
	if (den == 0)
		return NUMBER_ZERO_DENOMINATOR;
	return rational_make(num, den, out) ? NUMBER_SOUND : NUMBER_TOO_LONG;
}

static bool denominator_follows(const char *at)
{
	size_t slash = slash_length(at);
	return slash > 0 && is_digit(at[slash]);
}

/* Adds the fraction of a mixed number, "1/2" of "1 1/2", if there is one. */
static enum number_fault scan_mixed(const char **at, int64_t whole, struct rational *out)
{
	static const struct rational one = {1, 1};
	struct rational fraction;
	const char *from = *at;
	const char *next = *from == '-' ? from + 1 : number_skip_blanks(from);
	*out = (struct rational){whole, 1};
	if (!scan_vulgar(&next, &fraction)) {
		const char *digits = next;
		int64_t num = 0;
		if (!scan_digits(&next, &num))
			return NUMBER_TOO_LONG;
		if (next == digits || !denominator_follows(next))
			return NUMBER_SOUND; /* a whole number; *at stays behind it */
		enum number_fault fault = scan_denominator(&next, num, &fraction);
		if (fault != NUMBER_SOUND)
			return fault;
		/* "1 3/2" is a slip; nobody can tell of what. */
		if (rational_compare(fraction, one) >= 0)
			return NUMBER_MIXED;
	}
	*at = next;
	return rational_add(*out, fraction, out) ? NUMBER_SOUND : NUMBER_TOO_LONG;
}

static enum number_fault scan_unsigned(const char **at, struct rational *out)
{
	if (scan_vulgar(at, out))
		return NUMBER_SOUND;
	if (**at == ',')
		return NUMBER_COMMA;
	bool begins_with_point = **at == '.' && is_digit((*at)[1]);
	if (!is_digit(**at) && !begins_with_point)
		return NUMBER_ABSENT;
	int64_t whole = 0;
	if (!scan_digits(at, &whole))
		return NUMBER_TOO_LONG;
	if (**at == '.') {
		++*at;
		return scan_decimals(at, whole, out);
	}
	if (denominator_follows(*at))
		return scan_denominator(at, whole, out);
	return scan_mixed(at, whole, out);
}

/* A number can be spoilt by what stands behind it. */
static enum number_fault fault_behind(const char *at)
{
	bool exponent = *at == 'e' || *at == 'E';
	if (exponent && (is_digit(at[1]) || ((at[1] == '-' || at[1] == '+') && is_digit(at[2]))))
		return NUMBER_EXPONENT;
	const char *next = number_skip_blanks(at);
	if (*next == ',')
		return NUMBER_COMMA;
	struct rational ignored;
	const char *second = *next == '-' || *next == '.' ? next + 1 : next;
	if (is_digit(*second) || slash_length(next) > 0 || scan_vulgar(&second, &ignored))
		return NUMBER_SEVERAL;
	return NUMBER_SOUND;
}

enum number_fault number_scan(const char **at, struct rational *out)
{
	const char *next = *at;
	bool negative = *next == '-';
	if (negative)
		next++;
	struct rational value;
	enum number_fault fault = scan_unsigned(&next, &value);
	if (fault == NUMBER_SOUND)
		fault = fault_behind(next);
	if (fault != NUMBER_SOUND)
		return fault;
	/* Digits never reach INT64_MIN, so that a negative always fits. */
	*out = (struct rational){negative ? -value.num : value.num, value.den};
	*at = next;
	return NUMBER_SOUND;
}

const char *number_fault_text(enum number_fault fault)
{
	switch (fault) {
	case NUMBER_ABSENT:
		return "is not a number; write digits, such as 12, 0.25 or 1 1/2";
	case NUMBER_COMMA:
		return "has a comma; write it without the comma, 1500 for thousands, 1.5 for "
		       "decimals";
	case NUMBER_EXPONENT:
		return "has an exponent; write the number out in full, such as 1000";
	case NUMBER_POINT:
		return "ends in a point; write the digits that follow it, or leave it out";
	case NUMBER_MIXED:
		return "adds a fraction of 1 or more to a whole number; write it as 2 1/2 or 5/2";
	case NUMBER_SEVERAL:
		return "holds more than one number; write a single one, such as 2900 or 1 1/2";
	case NUMBER_ZERO_DENOMINATOR:
		return "divides by zero; correct the fraction";
	case NUMBER_TOO_LONG:
		return "has more digits than can be held exactly; write fewer";
	case NUMBER_SOUND:
		break;
	}
	return "";
}

bool rational_parse(const char *text, struct rational *out, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	const char *at = number_skip_blanks(text);
	if (*at == '\0')
		return error_usage(err, "no number given; write one, such as 12, 0.25 or 1 1/2");
	struct rational value;
	enum number_fault fault = number_scan(&at, &value);
	if (fault != NUMBER_SOUND)
		return error_usage(err, "'%s' %s", shown, number_fault_text(fault));
	if (*number_skip_blanks(at) != '\0')
		return error_usage(err, "'%s' goes on after the number; write the number alone",
				   shown);
	*out = value;
	return true;
}
