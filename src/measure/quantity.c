#include "jarwright/text.h"
#include "number.h"
#include "units.h"

static bool refuse_unit(const struct unit_family *family, const char *what, const char *shown,
			const char *unit_text, struct error *err)
{
	char unit_shown[TEXT_SHOWN_SIZE];
	text_show(unit_text, SIZE_MAX, unit_shown);
	if (family == unit_family(DIMENSION_VOLUME) && unit_differs_by_country(unit_text))
		return error_usage(err,
				   "%s: '%s' differs from country to country; give it in mL, or as "
				   "US cups, US pints, US quarts or US gallons",
				   what, shown);
	return error_usage(
	    err, "%s: the unit '%s' of '%s' is not known for %s; give it in %s or %s", what,
	    unit_shown, shown, family->noun, family->suffix[0], family->suffix[1]);
}

static bool refuse_bare(const struct unit_family *family, const char *what, const char *number,
			size_t length, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(number, length, shown);
	return error_usage(err, "%s: '%s' has no unit; write %s%s or %s%s", what, shown, shown,
			   family->suffix[0], shown, family->suffix[1]);
}

bool quantity_parse(enum dimension dimension, const char *what, const char *text,
		    struct quantity *out, struct error *err)
{
	const struct unit_family *family = unit_family(dimension);
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);

	const char *number = number_skip_blanks(text);
	if (*number == '\0')
		return error_usage(err, "%s: nothing given; write a number and %s or %s", what,
				   family->suffix[0], family->suffix[1]);
	const char *at = number;
	struct rational value;
	enum number_fault fault = number_scan(&at, &value);
	if (fault != NUMBER_SOUND)
		return error_usage(err, "%s: '%s' %s", what, shown, number_fault_text(fault));

	const char *unit_text = number_skip_blanks(at);
	if (*unit_text == '\0')
		return refuse_bare(family, what, number, (size_t)(at - number), err);
	const struct unit *unit = unit_find(family, unit_text);
	if (unit == NULL)
		return refuse_unit(family, what, shown, unit_text, err);

	struct rational amount;
	if (!rational_mul(value, unit->factor, &amount) ||
	    !rational_add(amount, unit->offset, &amount))
		return error_usage(err, "%s: '%s' %s", what, shown,
				   number_fault_text(NUMBER_TOO_LONG));
	*out = (struct quantity){dimension, amount};
	return true;
}
