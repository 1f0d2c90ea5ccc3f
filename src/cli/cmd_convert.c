/* convert: kitchen measures of one country in those of another, and what they weigh. */
#include <stdint.h>
#include <string.h>

#include "convert.h"
#include "jarwright/text.h"
#include "request.h"

static const struct option_spec options[] = {
    {"from", "us|imperial|canada|australia|new-zealand|metric", "whose measure it is"},
    {"to", "us|imperial|canada|australia|new-zealand|metric",
     "the measures you have; left out: those of your kitchen"},
    {"of", "INGREDIENT", "what is measured, with its form: \"onion, chopped\""},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright convert \"5/8 pint\" --from imperial --to us", "in cups and spoons"},
    {"jarwright convert \"2 1/4 US cups\" --of \"brown sugar, packed\" --to metric",
     "what it weighs"},
    {"jarwright convert \"1 medium\" --of onion --to metric", "what a number of things weighs"},
    EXAMPLES_END,
};

/* SYSTEM_UNSTATED if the option is not given. */
static bool read_system(struct invocation *inv, const char *name, enum measuring_system *out)
{
	char shown[TEXT_SHOWN_SIZE];
	const char *value = option(inv, name);
	*out = SYSTEM_UNSTATED;
	if (value == NULL || measuring_system_find(value, out))
		return true;
	text_show(value, SIZE_MAX, shown);
	return error_usage(inv->err,
			   "%s: there are no measures of '%s'; say us, imperial, canada, "
			   "australia, new-zealand or metric",
			   name, shown);
}

static bool read_to(struct invocation *inv, enum measuring_system *to)
{
	struct kitchen kitchen;
	if (!read_system(inv, "to", to))
		return false;
	if (*to != SYSTEM_UNSTATED)
		return true;
	if (!invocation_kitchen(inv, &kitchen))
		return false;
	if (kitchen.units == UNITS_US)
		*to = SYSTEM_US;
	if (kitchen.units == UNITS_METRIC)
		*to = SYSTEM_METRIC;
	return *to != SYSTEM_UNSTATED ||
	       error_usage(inv->err, "convert: your measures are not known; say --to us or "
				     "--to metric, or keep them with 'jarwright kitchen --units'");
}

/* The system from the words or from --from; both may not say different ones. */
static bool read_from(struct invocation *inv, enum measuring_system worded,
		      enum measuring_system *from)
{
	if (!read_system(inv, "from", from))
		return false;
	if (worded == SYSTEM_UNSTATED)
		return true;
	if (*from != SYSTEM_UNSTATED && *from != worded)
		return error_usage(inv->err,
				   "from: the quantity says %s and --from says %s; say "
				   "one of them",
				   measuring_system_word(worded), measuring_system_word(*from));
	*from = worded;
	return true;
}

static bool too_large(struct invocation *inv)
{
	return error_usage(inv->err, "convert: the number cannot be converted exactly; write a "
				     "smaller one, or one with fewer digits");
}

static bool nothing_published(struct invocation *inv, const struct conversion *c)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(c->of, SIZE_MAX, shown);
	return error_usage(inv->err,
			   "of: nothing published says what such a measure of '%s' weighs; name "
			   "the ingredient and its form otherwise, or weigh it",
			   shown);
}

static bool make_practical(struct invocation *inv, enum measuring_system to, bool mass,
			   struct converted *c)
{
	const struct reference_tables *tables = reference_tables_edition();
	bool (*nearest)(const struct reference_tables *, enum measuring_system, struct rational,
			enum practical_side, struct practical *) =
	    mass ? practical_mass : practical_volume;
	c->known = nearest(tables, to, c->least, PRACTICAL_NEAREST, &c->least_practical) &&
		   nearest(tables, to, c->most, PRACTICAL_NEAREST, &c->most_practical);
	return c->known || too_large(inv);
}

/* Grams through the rows: by count, or by volume. */
static bool find_mass(struct invocation *inv, struct conversion *c, struct rational amount)
{
	if (!rational_mul(c->rows.least, amount, &c->mass.least) ||
	    !rational_mul(c->rows.most, amount, &c->mass.most))
		return too_large(inv);
	return make_practical(inv, c->to, true, &c->mass);
}

static bool convert_count(struct invocation *inv, struct conversion *c, const char *size)
{
	char shown[TEXT_SHOWN_SIZE];
	c->count = true;
	text_show(size, SIZE_MAX, shown);
	if (c->of == NULL && *size == '\0')
		return error_usage(inv->err,
				   "convert: '%s' has no unit; write one, such as cups, or say of "
				   "what it is a number with --of",
				   c->typed);
	if (c->of == NULL)
		return error_usage(inv->err,
				   "convert: there is no measure called '%s'; write cups, tbsp, "
				   "tsp, pints, fl oz, mL, lb, oz, g ..., or say of what it is a "
				   "number with --of",
				   shown);
	if (!mass_by_count(reference_tables_edition(), c->of, "", size, &c->rows))
		return nothing_published(inv, c);
	return find_mass(inv, c, c->number);
}

static bool convert_volume(struct invocation *inv, struct conversion *c)
{
	if (!rational_mul(c->number, c->from.amount, &c->volume.least))
		return too_large(inv);
	c->volume.most = c->volume.least;
	if (!make_practical(inv, c->to, false, &c->volume))
		return false;
	if (c->of == NULL)
		return true;
	if (!mass_by_volume(reference_tables_edition(), c->of, "", c->from.unit, &c->rows))
		return nothing_published(inv, c);
	return find_mass(inv, c, c->volume.least);
}

static bool convert_mass(struct invocation *inv, struct conversion *c)
{
	if (!rational_mul(c->number, c->from.amount, &c->mass.least))
		return too_large(inv);
	c->mass.most = c->mass.least;
	if (!make_practical(inv, c->to, true, &c->mass))
		return false;
	if (c->of == NULL)
		return true;
	if (!mass_by_volume(reference_tables_edition(), c->of, "", UNIT_CUP, &c->rows))
		return nothing_published(inv, c);
	/* The densest fills least. */
	if (!rational_div(c->mass.least, c->rows.most, &c->volume.least) ||
	    !rational_div(c->mass.least, c->rows.least, &c->volume.most))
		return too_large(inv);
	return make_practical(inv, c->to, false, &c->volume);
}

static bool no_such_measure(struct invocation *inv, enum kitchen_unit unit,
			    enum measuring_system system)
{
	return error_usage(inv->err,
			   "from: no %s %s is published in the tables; say whose it is, or give "
			   "the amount in mL or g",
			   measuring_system_title(system), kitchen_unit_name(unit, false));
}

static int run(struct invocation *inv)
{
	const struct reference_tables *tables = reference_tables_edition();
	struct conversion c = {.of = option(inv, "of")};
	char typed[ARGUMENT_MAX], shown[TEXT_SHOWN_SIZE];
	const char *words;
	enum kitchen_unit unit;
	enum measuring_system worded, from;
	if (!operands_between(inv, 1, 16, "QUANTITY") || !operand_words(inv, typed, sizeof typed) ||
	    !kitchen_quantity_split("convert", typed, &c.number, &words, inv->err))
		return command_failed(inv);
	text_show(typed, SIZE_MAX, shown);
	c.typed = shown;
	bool measure = kitchen_unit_find(words, &unit, &worded);
	if (!read_from(inv, measure ? worded : SYSTEM_UNSTATED, &from) || !read_to(inv, &c.to))
		return command_failed(inv);
	if (!measure)
		return convert_count(inv, &c, words) ? conversion_answer(inv, &c)
						     : command_failed(inv);
	if (!kitchen_measure_find(tables, unit, from, &c.from)) {
		if (from == SYSTEM_UNSTATED)
			return ambiguity_answer(inv, unit, c.number);
		no_such_measure(inv, unit, from);
		return command_failed(inv);
	}
	bool done = kitchen_unit_is_mass(unit) ? convert_mass(inv, &c) : convert_volume(inv, &c);
	return done ? conversion_answer(inv, &c) : command_failed(inv);
}

const struct command command_convert = {
    .name = "convert",
    .synopsis = "QUANTITY [--from SYSTEM] [--to SYSTEM] [--of INGREDIENT]",
    .summary = "kitchen measures in those of another country, and what they weigh",
    .description = "Gives the nearest amount that can be measured out, and beside it the exact one "
		   "and the rounding. With an ingredient it goes from volume or number to weight "
		   "and back, as published; where several figures fit it gives the range. A "
		   "measure that is not the same everywhere is asked about.",
    .options = options,
    .examples = examples,
    .run = run,
};
