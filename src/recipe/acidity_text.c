/* What is said of an estimate, and with every estimate. */
#include "jarwright/acidity.h"

const char *acidity_reason_text(enum acidity_reason reason)
{
	switch (reason) {
	case ACIDITY_BY_TITRATION:
		return "A published titration of this food was used.";
	case ACIDITY_BY_ACIDS:
		return "No titration of this food is published here; its acids and its published "
		       "pH were used.";
	case ACIDITY_NO_ACIDS:
		return "Only the pH of this food is published here; how strongly it buffers was "
		       "taken from other fresh produce, and the range is wider for it.";
	case ACIDITY_NO_PH:
		return "No pH of this food is published here; the range runs from its acids alone "
		       "to other fresh produce.";
	case ACIDITY_NO_DATA:
		return "Nothing on the acidity of this food is published here; any titrated fresh "
		       "food stood in for it, and the range is wider for it.";
	case ACIDITY_SALT_HIGH:
		return "There is more salt than the correction for salt is good for; it was held "
		       "at "
		       "its limit.";
	case ACIDITY_OUT_OF_RANGE:
		return "An end of the range lies outside pH 2 to 9, where little was titrated.";
	}
	return "";
}

const char *acidity_no_test_text(void)
{
	return "This is an estimate and no test: it decides nothing, and no jar is safe because "
	       "of it. A tested recipe, followed as printed, is.";
}

const char *acidity_meter_text(void)
{
	return "A calibrated meter would add what this batch really is, read in the blended food "
	       "once the acid has reached its middle. It can make an answer stricter, never "
	       "looser.";
}
