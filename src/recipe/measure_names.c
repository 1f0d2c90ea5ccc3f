/* The names of kitchen measures and of the systems they belong to. */
#include <stdint.h>
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "jarwright/text.h"
#include "jarwright/words.h"

struct system_names {
	const char *word;
	const char *title;
	const char *names; /* folded, between bars */
};
static const struct system_names systems[SYSTEM_COUNT] = {
    [SYSTEM_UNSTATED] = {"unstated", "", ""},
    [SYSTEM_US] = {"us", "US", "|us|u s|usa|american|us customary|"},
    [SYSTEM_IMPERIAL] = {"imperial", "imperial", "|imperial|imp|uk|u k|british|"},
    [SYSTEM_CANADA] = {"canada", "Canadian", "|canada|canadian|"},
    [SYSTEM_AUSTRALIA] = {"australia", "Australian", "|australia|australian|au|"},
    [SYSTEM_NEW_ZEALAND] = {"new-zealand", "New Zealand", "|new zealand|nz|"},
    [SYSTEM_METRIC] = {"metric", "metric", "|metric|si|"},
};

struct unit_names {
	const char *one, *many;
	const char *names; /* other ways to write it, folded */
};
static const struct unit_names units[KITCHEN_UNIT_COUNT] = {
    [UNIT_GALLON] = {"gallon", "gallons", "|gallon|gal|"},
    [UNIT_QUART] = {"quart", "quarts", "|quart|qt|qts|liquid quart|"},
    [UNIT_PINT] = {"pint", "pints", "|pint|pt|pts|liquid pint|"},
    [UNIT_CUP] = {"cup", "cups", "|cup|c|measuring cup|"},
    [UNIT_GILL] = {"gill", "gills", "|gill|"},
    [UNIT_FLUID_OUNCE] = {"fl oz", "fl oz", "|fl oz|floz|fluid oz|fluid ounce|fl ounce|"},
    [UNIT_TABLESPOON] = {"tbsp", "tbsp", "|tbsp|tbs|tbl|tb|tblsp|tablespoon|tablespoonful|"},
    [UNIT_DESSERTSPOON] = {"dessertspoon", "dessertspoons", "|dessertspoon|dsp|dstspn|"},
    [UNIT_TEASPOON] = {"tsp", "tsp", "|tsp|teaspoon|teaspoonful|"},
    [UNIT_BUSHEL] = {"bushel", "bushels", "|bushel|bu|"},
    [UNIT_PECK] = {"peck", "pecks", "|peck|pk|"},
    [UNIT_DRY_QUART] = {"dry quart", "dry quarts", "|dry quart|dry qt|"},
    [UNIT_DRY_PINT] = {"dry pint", "dry pints", "|dry pint|dry pt|"},
    [UNIT_LITRE] = {"L", "L", "|l|litre|liter|"},
    [UNIT_DECILITRE] = {"dL", "dL", "|dl|decilitre|deciliter|"},
    [UNIT_CENTILITRE] = {"cL", "cL", "|cl|centilitre|centiliter|"},
    [UNIT_MILLILITRE] = {"mL", "mL", "|ml|millilitre|milliliter|cc|"},
    [UNIT_POUND] = {"lb", "lb", "|lb|lbs|pound|"},
    [UNIT_OUNCE] = {"oz", "oz", "|oz|ozs|ounce|"},
    [UNIT_STICK_OF_BUTTER] = {"stick of butter", "sticks of butter",
			      "|stick of butter|butter stick|"},
    [UNIT_KILOGRAM] = {"kg", "kg", "|kg|kgs|kilo|kilogram|kilogramme|"},
    [UNIT_GRAM] = {"g", "g", "|g|gm|gms|gr|gram|gramme|"},
};

const char *measuring_system_word(enum measuring_system system)
{
	return systems[system].word;
}

const char *measuring_system_title(enum measuring_system system)
{
	return systems[system].title;
}

static bool is_in(const char *names, const char *folded, size_t length)
{
	const char *item;
	size_t n;
	while (words_next(&names, &item, &n))
		if (n == length && memcmp(item, folded, n) == 0)
			return true;
	return false;
}

bool measuring_system_find(const char *words, enum measuring_system *out)
{
	char folded[WORDS_SIZE];
	if (!words_fold(words, strlen(words), folded))
		return false;
	for (int i = SYSTEM_UNSTATED + 1; i < SYSTEM_COUNT; i++) {
		if (is_in(systems[i].names, folded, strlen(folded))) {
			*out = (enum measuring_system)i;
			return true;
		}
	}
	return false;
}

bool kitchen_unit_is_mass(enum kitchen_unit unit)
{
	return unit >= UNIT_POUND;
}

const char *kitchen_unit_name(enum kitchen_unit unit, bool plural)
{
	return plural ? units[unit].many : units[unit].one;
}

static bool find_folded(const char *folded, enum kitchen_unit *out)
{
	for (int i = 0; i < KITCHEN_UNIT_COUNT; i++) {
		if (is_in(units[i].names, folded, strlen(folded))) {
			*out = (enum kitchen_unit)i;
			return true;
		}
	}
	return false;
}

/* What follows the name of the system at the start of the words, or NULL. */
static const char *behind_system(const char *folded, const char *names)
{
	const char *item;
	size_t n;
	while (words_next(&names, &item, &n))
		if (strncmp(folded, item, n) == 0 && folded[n] == ' ')
			return folded + n + 1;
	return NULL;
}

/* The one letter that is two spoons: a capital T is the larger. */
static bool find_letter(const char *words, enum kitchen_unit *unit)
{
	bool alone = words[0] != '\0' && (words[1] == '\0' || strcmp(words + 1, ".") == 0);
	if (!alone || (*words != 'T' && *words != 't'))
		return false;
	*unit = *words == 'T' ? UNIT_TABLESPOON : UNIT_TEASPOON;
	return true;
}

bool kitchen_unit_find(const char *words, enum kitchen_unit *unit, enum measuring_system *system)
{
	char folded[WORDS_SIZE];
	*system = SYSTEM_UNSTATED;
	words += strspn(words, " ");
	if (find_letter(words, unit))
		return true;
	if (!words_fold(words, strlen(words), folded))
		return false;
	if (find_folded(folded, unit))
		return true;
	for (int i = SYSTEM_UNSTATED + 1; i < SYSTEM_COUNT; i++) {
		const char *rest = behind_system(folded, systems[i].names);
		if (rest != NULL && find_folded(rest, unit)) {
			*system = (enum measuring_system)i;
			return true;
		}
	}
	return false;
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool kitchen_quantity_split(const char *what, const char *text, struct rational *number,
			    const char **unit_words, struct error *err)
{
	char digits[64], shown[TEXT_SHOWN_SIZE];
	static const struct rational zero = {0, 1};
	size_t length = 0;
	while (text[length] != '\0' && !is_letter(text[length]))
		length++;
	text_show(text, SIZE_MAX, shown);
	if (length >= sizeof digits)
		return error_usage(err, "%s: '%s' has a number too long to read; write it shorter",
				   what, shown);
	size_t written = length;
	while (written > 0 && text[written - 1] == ' ')
		written--; /* a message quotes it */
	memcpy(digits, text, written);
	digits[written] = '\0';
	if (!rational_parse(digits, number, err))
		return error_context(err, "%s", what);
	if (rational_compare(*number, zero) <= 0)
		return error_usage(err, "%s: '%s' is not above zero; write how much there is", what,
				   shown);
	*unit_words = text + length;
	return true;
}
