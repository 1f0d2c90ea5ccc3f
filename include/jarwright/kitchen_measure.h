/*
 * Kitchen measures of several countries, exactly; and what they weigh.
 *
 * A cup, a pint, a spoon is not the same everywhere. Every amount here is an exact
 * rational of millilitres or grams, taken from a row of db/measures.txt, so that there
 * and back loses nothing; the row says whether the figure is one by definition, and who
 * says so. Volume becomes mass, and a count becomes mass, only through a row of
 * db/density.txt; where several rows fit, the answer is a range, never a mean.
 * Pure: no I/O, nothing allocated.
 */
#ifndef JARWRIGHT_KITCHEN_MEASURE_H
#define JARWRIGHT_KITCHEN_MEASURE_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/error.h"
#include "jarwright/measure.h"
#include "jarwright/reference_tables.h"

enum measuring_system {
	SYSTEM_UNSTATED, /* nobody said; a measure that differs must be asked about */
	SYSTEM_US,
	SYSTEM_IMPERIAL,
	SYSTEM_CANADA,
	SYSTEM_AUSTRALIA,
	SYSTEM_NEW_ZEALAND,
	SYSTEM_METRIC,
	SYSTEM_COUNT
};
/* "us", "new-zealand"; "unstated". */
const char *measuring_system_word(enum measuring_system system);
/* "US", "New Zealand": before the name of a unit. */
const char *measuring_system_title(enum measuring_system system);
/* Reads such a word, folded, and other names of the country ("uk", "nz"). False: none. */
bool measuring_system_find(const char *words, enum measuring_system *out);

enum kitchen_unit {
	UNIT_GALLON,
	UNIT_QUART,
	UNIT_PINT,
	UNIT_CUP,
	UNIT_GILL,
	UNIT_FLUID_OUNCE,
	UNIT_TABLESPOON,
	UNIT_DESSERTSPOON,
	UNIT_TEASPOON,
	UNIT_BUSHEL,
	UNIT_PECK,
	UNIT_DRY_QUART,
	UNIT_DRY_PINT,
	UNIT_LITRE,
	UNIT_DECILITRE,
	UNIT_CENTILITRE,
	UNIT_MILLILITRE,
	UNIT_POUND, /* weights from here on */
	UNIT_OUNCE,
	UNIT_STICK_OF_BUTTER,
	UNIT_KILOGRAM,
	UNIT_GRAM,
	KITCHEN_UNIT_COUNT
};
bool kitchen_unit_is_mass(enum kitchen_unit unit);
/* "cup", "cups"; "tbsp", "tbsp". */
const char *kitchen_unit_name(enum kitchen_unit unit, bool plural);

/*
 * Reads a unit as people write it: "cups", "c", "Tbsp.", "T", "t", "fl oz", "pt", "mL",
 * "imperial pint", "US cup"; only "T" and "t" mind their case. *system is what the words
 * say ("imperial pint"), else SYSTEM_UNSTATED. False: no such unit.
 */
bool kitchen_unit_find(const char *words, enum kitchen_unit *unit, enum measuring_system *system);

/* One unit of one system. */
struct kitchen_measure {
	enum kitchen_unit unit;
	enum measuring_system system; /* the one asked for */
	struct rational amount;       /* of one: millilitres, or grams for a weight */
	bool exact;                   /* by definition; false: custom, rounded or second-hand */
	/* Where it stands; row->system tells the very system. NULL: gram and kilogram, of the SI.
	 */
	const struct measure_row *row;
};

/*
 * The unit in a system. Metric units and weights are the same in all systems. False:
 * no row is published for it there (an Australian pint), or the system is unstated and
 * systems differ. Rows of the rounded kitchen table and of nutrition labels are never used.
 */
bool kitchen_measure_find(const struct reference_tables *tables, enum kitchen_unit unit,
			  enum measuring_system system, struct kitchen_measure *out);

/*
 * Every system that has this unit, in the order of the enum, one each: at most
 * SYSTEM_COUNT. Returns how many; *differ: their amounts are not all equal, so
 * that the unit without a system is ambiguous.
 */
size_t kitchen_measure_all(const struct reference_tables *tables, enum kitchen_unit unit,
			   struct kitchen_measure out[static SYSTEM_COUNT], bool *differ);

/*
 * "2 1/4 cups" parted: the number, and *unit_words into text behind it ("" if there is
 * nothing). The message on failure begins with `what`.
 */
bool kitchen_quantity_split(const char *what, const char *text, struct rational *number,
			    const char **unit_words, struct error *err);

/* --- What it weighs --- */

#define MASS_ROWS_MAX 64
struct mass_row {
	const struct density_row *row;
	/* Grams in a millilitre; or grams in one, for a count. */
	struct rational grams;
};
/* Rows that fit an ingredient, and the range they span. */
struct mass_rows {
	struct mass_row rows[MASS_ROWS_MAX];
	size_t rows_n;               /* 0: nothing published; ask or weigh */
	struct rational least, most; /* grams in a millilitre, or in one; equal if one fits */
	size_t foods_n;              /* how many foods are among the rows: above 1, ask which */
	bool form_ignored;           /* no row says the form: the range is over all forms */
};

/*
 * The rows of an ingredient by volume. `name` holds the food and may hold its form
 * ("brown sugar, packed"); `form` is a preparation apart, or "". Words are folded as in
 * words.h; their order does not matter. A food whose every word is said goes before
 * one that only contains the words said ("onion" is not "onion powder"). Of each form the
 * row in the same unit counts, else the one in the largest measure, which is rounded least.
 * Rows are US measures, as their publication is. False: nothing fits; rows_n is 0.
 */
bool mass_by_volume(const struct reference_tables *tables, const char *name, const char *form,
		    enum kitchen_unit unit, struct mass_rows *out);

/*
 * The rows of an ingredient by count: `size` is "", or what stood where the unit stands
 * ("medium", "cloves", "heads", "large"). False as above.
 */
bool mass_by_count(const struct reference_tables *tables, const char *name, const char *form,
		   const char *size, struct mass_rows *out);

/* --- What can be measured out --- */

#define PRACTICAL_PARTS 3
struct practical_part {
	struct rational count; /* "1 1/2" */
	struct kitchen_measure measure;
};
struct practical {
	struct practical_part parts[PRACTICAL_PARTS]; /* largest unit first */
	size_t parts_n;                               /* at least 1 */
	struct rational amount;                       /* what they come to: millilitres or grams */
	double error;                                 /* (amount - wanted) / wanted */
};
/* On which side of what is wanted the measure may lie. */
enum practical_side { PRACTICAL_NEAREST, PRACTICAL_AT_LEAST, PRACTICAL_AT_MOST };
/*
 * The nearest measure that kitchens have, on that side: quarters and thirds of a cup, whole
 * tablespoons, quarter and eighth teaspoons, whole quarts; pints and half fluid ounces in
 * the imperial system; pounds and quarter ounces; 5 mL steps (1 mL under 100 mL, 1/10 under
 * 5 mL), 1 g steps (1/10 under 10 g). The fewest parts within 1 % are taken, else the
 * nearest of all; never nothing. wanted: millilitres or grams, above 0. False: it does not
 * fit exactly, nothing measurable is at most that little, or the system is unstated.
 */
bool practical_volume(const struct reference_tables *tables, enum measuring_system system,
		      struct rational wanted, enum practical_side side, struct practical *out);
bool practical_mass(const struct reference_tables *tables, enum measuring_system system,
		    struct rational wanted, enum practical_side side, struct practical *out);

/* Each writes at most size bytes into buffer and returns it. */
char *rational_words(char *buffer, size_t size, struct rational a);          /* "1 1/2" */
char *practical_words(char *buffer, size_t size, const struct practical *p); /* "1 1/2 cups" */
#define PRACTICAL_WORDS_SIZE 256

#endif
