/* Units and sizes, in the words of kitchens that write English. */
#include <string.h>
#include <strings.h>

#include "ingredient_internal.h"

static const struct line_unit units[] = {
    {"tsp", UNIT_VOLUME, "|tsp|teaspoon|teaspoonful|teasp|ts|tspn|teaspoonsful|"},
    {"tbsp", UNIT_VOLUME,
     "|tbsp|tablespoon|tablespoonful|tbs|tblsp|tbl|tblspn|tbspn|tablesp|tablespoonsful|"},
    {"dessertspoon", UNIT_VOLUME, "|dessertspoon|dessertspoonful|dsp|dstsp|dessert spoon|"},
    {"cup", UNIT_VOLUME, "|cup|cupful|cupsful|"},
    {"fl oz", UNIT_VOLUME, "|fl oz|fl. oz|floz|fluid ounce|fluid oz|fl ounce|fl.oz|"},
    {"pint", UNIT_VOLUME, "|pint|pt|"},
    {"quart", UNIT_VOLUME, "|quart|qt|"},
    {"gallon", UNIT_VOLUME, "|gallon|gal|"},
    {"gill", UNIT_VOLUME, "|gill|"},
    {"peck", UNIT_VOLUME, "|peck|pk|"},
    {"bushel", UNIT_VOLUME, "|bushel|bu|"},
    {"ml", UNIT_VOLUME, "|ml|millilitre|milliliter|mil|cc|"},
    {"cl", UNIT_VOLUME, "|cl|centilitre|centiliter|"},
    {"dl", UNIT_VOLUME, "|dl|decilitre|deciliter|"},
    {"l", UNIT_VOLUME, "|l|litre|liter|lt|ltr|"},
    {"mg", UNIT_MASS, "|mg|milligram|milligramme|"},
    {"g", UNIT_MASS, "|g|gram|gramme|gm|gr|grm|"},
    {"kg", UNIT_MASS, "|kg|kilo|kilogram|kilogramme|kgm|"},
    {"oz", UNIT_MASS, "|oz|ounce|"},
    {"lb", UNIT_MASS, "|lb|pound|"},
    {"inch", UNIT_LENGTH, "|inch|"},
    {"cm", UNIT_LENGTH, "|cm|centimetre|centimeter|"},
    {"mm", UNIT_LENGTH, "|mm|millimetre|millimeter|"},
    {"can", UNIT_CONTAINER, "|can|tin|"},
    {"jar", UNIT_CONTAINER, "|jar|"},
    {"bottle", UNIT_CONTAINER, "|bottle|btl|"},
    {"package", UNIT_CONTAINER, "|package|packet|pkg|pkge|pack|pkt|sachet|pouch|envelope|"},
    {"bag", UNIT_CONTAINER, "|bag|"},
    {"box", UNIT_CONTAINER, "|box|"},
    {"carton", UNIT_CONTAINER, "|carton|"},
    {"punnet", UNIT_CONTAINER, "|punnet|"},
    {"tub", UNIT_CONTAINER, "|tub|"},
    {"tube", UNIT_CONTAINER, "|tube|"},
    {"clove", UNIT_COUNT, "|clove|"},
    {"head", UNIT_COUNT, "|head|"},
    {"bulb", UNIT_COUNT, "|bulb|"},
    {"bunch", UNIT_COUNT, "|bunch|"},
    {"sprig", UNIT_COUNT, "|sprig|"},
    {"stalk", UNIT_COUNT, "|stalk|stem|"},
    {"rib", UNIT_COUNT, "|rib|"},
    {"stick", UNIT_COUNT, "|stick|"},
    {"ear", UNIT_COUNT, "|ear|cob|"},
    {"leaf", UNIT_COUNT, "|leaf|leave|"},
    {"slice", UNIT_COUNT, "|slice|rasher|"},
    {"piece", UNIT_COUNT, "|piece|pc|chunk|"},
    {"strip", UNIT_COUNT, "|strip|"},
    {"cube", UNIT_COUNT, "|cube|"},
    {"pinch", UNIT_EYE, "|pinch|"},
    {"dash", UNIT_EYE, "|dash|"},
    {"splash", UNIT_EYE, "|splash|glug|"},
    {"drizzle", UNIT_EYE, "|drizzle|"},
    {"drop", UNIT_EYE, "|drop|"},
    {"handful", UNIT_EYE, "|handful|"},
    {"knob", UNIT_EYE, "|knob|thumb|"},
    /* No table that is read says how large these are; they are measures all the same. */
    {"breakfast cup", UNIT_EYE, "|breakfast cup|breakfast-cup|breakfastcup|breakfast cupful|"},
    {"teacup", UNIT_EYE, "|teacup|tea cup|tea-cup|teacupful|"},
    {"coffee cup", UNIT_EYE, "|coffee cup|coffee-cup|coffeecup|"},
    {"wineglass", UNIT_EYE, "|wineglass|wine glass|wine-glass|wineglassful|"},
    {"glass", UNIT_EYE, "|glass|glassful|tumbler|"},
    {"mug", UNIT_EYE, "|mug|mugful|"},
};

/* One letter, where the case tells the tea from the table spoon. */
static const char *letter_unit(char c)
{
	switch (c) {
	case 'T':
		return "tbsp";
	case 't':
		return "tsp";
	case 'c':
	case 'C':
		return "cup";
	default:
		return NULL;
	}
}

static const struct line_unit *unit_named(const char *name)
{
	for (size_t i = 0; i < sizeof units / sizeof *units; i++)
		if (strcmp(units[i].name, name) == 0)
			return &units[i];
	return NULL;
}

/* Bytes of `item` at `at`, in the plural too; 0: another word. */
static size_t item_length(const char *at, const char *item, size_t n)
{
	static const char *const endings[] = {"es", "s", ""};
	if (strncasecmp(at, item, n) != 0)
		return 0;
	for (size_t i = 0; i < sizeof endings / sizeof *endings; i++) {
		size_t more = strlen(endings[i]);
		if (strncasecmp(at + n, endings[i], more) == 0 && !is_letter(at[n + more]) &&
		    at[n + more] != '\'' && !(at[n + more] == '-' && is_letter(at[n + more + 1])))
			return n + more;
	}
	return 0;
}

static size_t unit_length(const char *at, const struct line_unit *unit)
{
	size_t longest = 0;
	for (const char *item = unit->words; item[1]; item += strcspn(item, "|")) {
		item++;
		size_t n = item_length(at, item, strcspn(item, "|"));
		if (n > longest)
			longest = n;
	}
	return longest;
}

const struct line_unit *unit_read(const char **at)
{
	const char *from = *at;
	const struct line_unit *found = NULL;
	size_t longest = 0;
	blanks_skip(&from);
	if (*from == '"' || *from == '#') {
		found = unit_named(*from == '"' ? "inch" : "lb");
		longest = 1;
	}
	/* Without its point "in" is a word of another kind. */
	if (strncasecmp(from, "in.", 3) == 0) {
		found = unit_named("inch");
		longest = 2;
	}
	for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
		size_t n = unit_length(from, &units[i]);
		if (n > longest) {
			longest = n;
			found = &units[i];
		}
	}
	const char *letter = letter_unit(*from);
	if (!found && letter && word_length(from) == 1 && from[1] != '-' && from[1] != '\'') {
		longest = 1;
		found = unit_named(letter);
	}
	if (!found)
		return NULL;
	*at = from + longest;
	if (**at == '.')
		++*at;
	return found;
}

const char *size_read(const char **at)
{
	static const struct {
		const char *name, *words;
	} sizes[] = {
	    {"extra-large", "|extra-large|extra large|very large|jumbo|"},
	    {"large", "|large|lg|lge|big|"},
	    {"medium", "|medium-sized|medium sized|medium-size|medium size|medium|med|"},
	    {"small", "|small|sm|very small|"},
	};
	const char *from = *at;
	blanks_skip(&from);
	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		size_t n = word_listed(from, sizes[i].words);
		if (n == 0 || from[n] == '-' || word_listed(from + n, "| or| to|"))
			continue;
		*at = from + n;
		if (**at == '.')
			++*at;
		return sizes[i].name;
	}
	return NULL;
}
