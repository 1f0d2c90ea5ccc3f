/* The amount an ingredient line begins with, and amounts set beside it. */
#include <string.h>

#include "ingredient_internal.h"
#include "jarwright/kitchen_measure.h"

static const char hedge_words[] =
    "|about|approximately|approx|approx.|around|roughly|circa|ca|generous|scant|heaped|"
    "heaping|level|rounded|good|up to|at least|at most|nearly|almost|just over|just under|"
    "a generous|a scant|a heaped|a heaping|a good|a level|a rounded|an "
    "additional|full|big|fat|plump|";

/* Moves over "about" and its like; where is set to their bytes. */
static size_t hedge_skip(const char **at)
{
	const char *from = *at;
	for (;;) {
		blanks_skip(at);
		size_t n = **at == '~' ? 1 : word_listed(*at, hedge_words);
		/* "about.": the point of the abbreviation. */
		if (n == 0)
			break;
		*at += n;
		if (**at == '.' && (*at)[1] == ' ')
			++*at;
	}
	while (*at > from && (*at)[-1] == ' ')
		--*at;
	size_t length = (size_t)(*at - from);
	blanks_skip(at);
	return length;
}

static void hedges_take(struct line_reader *reader)
{
	const char *from = reader->at;
	blanks_skip(&from);
	size_t length = hedge_skip(&reader->at);
	if (length == 0)
		return;
	note_add(reader, from, strnlen(from, (size_t)(reader->at - from)));
	reader->hedged = true;
}

/* The bytes of what parts the ends of a range: "-", " to ", " or "; 0: no range. */
static size_t range_joint(const char *at)
{
	const char *next = at;
	blanks_skip(&next);
	size_t n = word_listed(next, "|to|or|");
	if (n == 0 && *next == '-')
		n = 1;
	if (n == 0)
		return 0;
	next += n;
	blanks_skip(&next);
	return (size_t)(next - at);
}

static enum reading range_read(const char **at, struct rational *low, struct rational *high,
			       struct error *err)
{
	struct error ignored;
	const char *next = *at;
	if (word_listed(next, "|between|from|"))
		next += word_listed(next, "|between|from|");
	blanks_skip(&next);
	bool between = next != *at && (**at == 'b' || **at == 'B');
	enum reading reading = number_read(&next, low, err);
	if (reading != READ_DONE)
		return reading;
	*high = *low;
	*at = next;
	size_t joint = range_joint(next);
	if (between && joint == 0 && word_listed(next, "| and|"))
		joint = strlen(" and ");
	next += joint;
	/* "1 or a": an article is no end of a range. */
	if (joint == 0 || word_listed(next, "|a|an|") ||
	    number_read(&next, high, &ignored) != READ_DONE) {
		*high = *low;
		return READ_DONE;
	}
	*at = next;
	if (rational_compare(*low, *high) > 0) {
		error_usage(err, "the range falls; write the smaller amount first");
		return READ_FAULT;
	}
	return READ_DONE;
}

/* The unit right behind a number: "150g", "14-ounce", "2 tbsp". */
static const struct line_unit *unit_behind_number(const char **at)
{
	const char *next = *at;
	if (*next == '-' && is_letter(next[1]))
		next++;
	const struct line_unit *unit = unit_read(&next);
	if (unit)
		*at = next;
	return unit;
}

enum reading measured_read(const char **at, struct ingredient_amount *out, enum unit_class *class)
{
	struct error ignored;
	const char *next = *at;
	struct ingredient_amount amount = {.present = true};
	if (range_read(&next, &amount.quantity, &amount.quantity_max, &ignored) != READ_DONE ||
	    amount.quantity.num <= 0)
		return READ_NONE;
	const struct line_unit *unit = unit_behind_number(&next);
	if (!unit)
		return READ_NONE;
	amount.unit = unit->name;
	*class = unit->class;
	*out = amount;
	*at = next;
	return READ_DONE;
}

static bool is_measure(enum unit_class class)
{
	return class == UNIT_MASS || class == UNIT_VOLUME;
}

/* "/5½oz", "or 2 lb", "= 240 ml" behind an amount: the same again in another unit. */
static bool alternative_read(struct line_reader *reader)
{
	const char *next = reader->at;
	struct ingredient_amount amount;
	enum unit_class class;
	blanks_skip(&next);
	size_t joint = *next == '/' || *next == '|' || *next == '=' ? 1 : word_listed(next, "|or|");
	if (joint == 0)
		return false;
	next += joint;
	blanks_skip(&next);
	hedge_skip(&next);
	if (measured_read(&next, &amount, &class) != READ_DONE || !is_measure(class))
		return false;
	if (reader->out->alternative.present || reader->out->pack.present)
		note_add(reader, reader->at + 1, (size_t)(next - reader->at - 1));
	else
		reader->out->alternative = amount;
	reader->at = next;
	return true;
}

/* "plus 2 tbsp", "+ 1 tsp", "and 2 tsp", or the 4 oz of "1 lb 4 oz". */
static bool plus_read(struct line_reader *reader)
{
	const char *next = reader->at;
	struct ingredient_amount amount;
	enum unit_class class;
	blanks_skip(&next);
	size_t joint = *next == '+' || *next == '&' ? 1 : word_listed(next, "|plus|and|");
	next += joint;
	blanks_skip(&next);
	if (measured_read(&next, &amount, &class) != READ_DONE || !is_measure(class) ||
	    !*reader->out->unit || !is_measure(reader->class) || reader->out->plus.present)
		return false;
	reader->out->plus = amount;
	reader->at = next;
	return true;
}

bool plus_aside(struct line_reader *reader, const char *text, size_t length)
{
	char copy[INGREDIENT_LINE_MAX + 1];
	const char *before = reader->at;
	memcpy(copy, text, length);
	copy[length] = '\0';
	reader->at = copy;
	struct ingredient_amount kept = reader->out->plus;
	bool joined = *copy == '+' || *copy == '&' || word_listed(copy, "|plus|and|");
	bool taken = joined && plus_read(reader) && *reader->at == '\0';
	if (!taken)
		reader->out->plus = kept;
	reader->at = before;
	return taken;
}

/* `amount` of one unit in another that is the same to it in every country: kg in g. */
static bool same_measure(const struct ingredient_amount *amount, const char *unit,
			 struct rational *out)
{
	const struct reference_tables *tables = reference_tables_edition();
	enum kitchen_unit from, to;
	enum measuring_system said;
	struct kitchen_measure one, other;
	if (strcmp(amount->unit, unit) == 0) {
		*out = amount->quantity_max;
		return true;
	}
	return kitchen_unit_find(amount->unit, &from, &said) &&
	       kitchen_unit_find(unit, &to, &said) &&
	       kitchen_unit_is_mass(from) == kitchen_unit_is_mass(to) &&
	       kitchen_measure_find(tables, from, SYSTEM_UNSTATED, &one) &&
	       kitchen_measure_find(tables, to, SYSTEM_UNSTATED, &other) &&
	       rational_mul(amount->quantity_max, one.amount, out) &&
	       rational_div(*out, other.amount, out);
}

/* "150g" of "100g-150g", "1 kg" of "500 g to 1 kg": the far end, in the first one's unit. */
static enum reading range_end_read(struct line_reader *reader)
{
	const char *joint = reader->at, *next = reader->at + range_joint(reader->at);
	struct ingredient_amount amount;
	struct rational end;
	enum unit_class class;
	struct ingredient_line *out = reader->out;
	if (next == reader->at || rational_compare(out->quantity, out->quantity_max) != 0 ||
	    measured_read(&next, &amount, &class) != READ_DONE)
		return READ_NONE;
	blanks_skip(&joint);
	bool to = word_listed(joint, "|to|") > 0, same = strcmp(amount.unit, out->unit) == 0;
	/* "1 lb or 500 g": the same amount again. */
	if (!same && word_listed(joint, "|or|"))
		return READ_NONE;
	bool told = same_measure(&amount, out->unit, &end);
	if (told && rational_compare(out->quantity, end) <= 0) {
		out->quantity_max = end;
		reader->at = next;
		return READ_DONE;
	}
	if (!to)
		return READ_NONE;
	/* Read as its near end it would be too little. */
	error_usage(reader->err, "%s; write %s",
		    told ? "the range falls"
			 : "the ends of the range are in units that do not measure the same way "
			   "everywhere",
		    told ? "the smaller amount first" : "both in one unit");
	return READ_FAULT;
}

/* Bytes between the parenthesis at `at` and its partner, which *behind is set past. */
static size_t parenthesis_length(const char *at, const char **behind)
{
	size_t n = strcspn(at + 1, "()");
	*behind = at + 1 + n;
	if (at[1 + n] != ')')
		return 0;
	++*behind;
	return n;
}

/* "(14 oz)" between a number and its thing: what is in each. "(about 1 lb)" is all of them. */
static void pack_in_parenthesis(struct line_reader *reader)
{
	const char *open = reader->at, *behind;
	struct ingredient_amount amount;
	enum unit_class class;
	blanks_skip(&open);
	if (*open != '(')
		return;
	size_t n = parenthesis_length(open, &behind);
	const char *next = open + 1;
	size_t hedge = hedge_skip(&next);
	if (n == 0 || measured_read(&next, &amount, &class) != READ_DONE || next > open + 1 + n)
		return;
	if (hedge > 0 || *next == '/')
		note_add(reader, open + 1, n);
	else if (*next != ')' && !word_listed(next, "| each|"))
		return;
	if (hedge > 0 && !word_listed(next, "| each|"))
		reader->out->alternative = amount;
	else
		reader->out->pack = amount;
	reader->at = behind;
}

/* "x 400g", "14-oz" behind a number: what is in each. */
static void pack_behind_number(struct line_reader *reader)
{
	const char *next = reader->at;
	enum unit_class class;
	blanks_skip(&next);
	if ((*next == 'x' || *next == 'X') && !is_letter(next[1]))
		next++;
	blanks_skip(&next);
	if (next != reader->at && measured_read(&next, &reader->out->pack, &class) == READ_DONE)
		reader->at = next;
}

static void container_behind_pack(struct line_reader *reader)
{
	const char *next = reader->at;
	while (alternative_read(reader))
		next = reader->at;
	if (*next == '-')
		next++;
	const char *size = size_read(&next);
	const struct line_unit *unit = unit_read(&next);
	if (!unit || is_measure(unit->class) || unit->class == UNIT_LENGTH) {
		if (size) {
			reader->out->size = size;
			size_read(&reader->at);
		}
		return;
	}
	if (size)
		reader->out->size = size;
	reader->out->unit = unit->name;
	reader->class = unit->class;
	reader->at = next;
}

/* "400g" of "400g tin", "2 cm" of "2 cm piece": one, of that much. */
static bool measure_of_one(struct line_reader *reader, const struct line_unit *unit)
{
	const char *next = reader->at;
	struct ingredient_line *out = reader->out;
	bool length = unit->class == UNIT_LENGTH;
	while (*next == '/' || *next == '-' || *next == ' ')
		next++;
	/* "400g/14oz tin" */
	struct ingredient_amount other;
	enum unit_class class;
	measured_read(&next, &other, &class);
	size_read(&next);
	if (*next == '-')
		next++;
	const struct line_unit *thing = unit_read(&next);
	bool container =
	    thing && (thing->class == UNIT_CONTAINER ||
		      (length && (thing->class == UNIT_COUNT || thing->class == UNIT_EYE)));
	if (!container && !length)
		return false;
	out->pack = (struct ingredient_amount){true, out->quantity, out->quantity_max, unit->name};
	out->quantity = out->quantity_max = (struct rational){1, 1};
	container_behind_pack(reader);
	return true;
}

/* "A pint and a half": the half behind the unit. */
static void half_behind_unit(struct line_reader *reader)
{
	struct ingredient_line *out = reader->out;
	struct rational half = {0, 1}, sum;
	const char *next = reader->at;
	if (rational_compare(out->quantity, out->quantity_max) == 0 && number_tail(&next, &half) &&
	    next != reader->at && half.num > 0 && rational_add(out->quantity, half, &sum)) {
		out->quantity = out->quantity_max = sum;
		reader->at = next;
	}
}

static void of_skip(struct line_reader *reader)
{
	blanks_skip(&reader->at);
	size_t n = word_listed(reader->at, "|of the|of|");
	reader->at += n;
	blanks_skip(&reader->at);
}

/* Behind the number: size, unit, and the amounts beside it. */
static enum reading unit_and_beside(struct line_reader *reader)
{
	struct ingredient_line *out = reader->out;
	hedges_take(reader);
	const char *size = size_read(&reader->at);
	if (size)
		out->size = size;
	hedges_take(reader);
	const char *before = reader->at;
	const struct line_unit *unit = unit_behind_number(&reader->at);
	const char *rest = reader->at;
	blanks_skip(&rest);
	bool thing = unit && !is_measure(unit->class) && unit->class != UNIT_LENGTH;
	/* "6 cloves": the spice, not a measure of something. */
	if (thing && (*rest == '\0' || *rest == ',' || word_listed(rest, "|or|and|"))) {
		reader->at = before;
		return READ_DONE;
	}
	if (!unit || (!thing && measure_of_one(reader, unit)))
		return READ_DONE;
	out->unit = unit->name;
	reader->class = unit->class;
	if (range_end_read(reader) == READ_FAULT)
		return READ_FAULT;
	half_behind_unit(reader);
	while (alternative_read(reader) || plus_read(reader))
		continue;
	of_skip(reader);
	if (!out->size[0] && thing && (size = size_read(&reader->at)))
		out->size = size;
	return READ_DONE;
}

/* "pinch of salt", "a few sprigs thyme": one, or as many as the cook likes. */
static enum reading unnumbered_read(struct line_reader *reader)
{
	const char *next = reader->at;
	struct ingredient_line *out = reader->out;
	size_t few = word_listed(next, "|a few|few|some|several|a little|a bit of|a lot of|");
	next += few;
	const char *size = size_read(&next);
	const struct line_unit *unit = unit_read(&next);
	blanks_skip(&next);
	bool named = *next != '\0' && *next != ',' && *next != '(';
	if (few == 0 && (!unit || unit->class != UNIT_EYE || !named))
		return READ_NONE;
	if (few > 0)
		note_add(reader, reader->at, few);
	else
		out->has_quantity = true;
	if (few == 0)
		out->quantity = out->quantity_max = (struct rational){1, 1};
	if (!unit || !named || is_measure(unit->class)) {
		reader->at += few;
		blanks_skip(&reader->at);
		return READ_DONE;
	}
	if (size)
		out->size = size;
	out->unit = unit->name;
	reader->class = unit->class;
	reader->hedged = true;
	reader->at = next;
	of_skip(reader);
	return READ_DONE;
}

enum reading head_read(struct line_reader *reader)
{
	struct ingredient_line *out = reader->out;
	const char *from = reader->at;
	hedges_take(reader);
	if (*reader->at == '-' && reader->at == from) {
		const char *next = reader->at + 1;
		struct rational value;
		if (number_read(&next, &value, reader->err) != READ_NONE) {
			error_usage(reader->err,
				    "the amount is negative; write it without the '-'");
			return READ_FAULT;
		}
	}
	enum reading reading =
	    range_read(&reader->at, &out->quantity, &out->quantity_max, reader->err);
	if (reading == READ_FAULT)
		return READ_FAULT;
	if (reading == READ_NONE) {
		out->quantity = out->quantity_max = (struct rational){0, 1};
		return unnumbered_read(reader);
	}
	if (out->quantity.num <= 0) {
		error_usage(reader->err, "the amount is zero; leave the line out, or say how much");
		return READ_FAULT;
	}
	out->has_quantity = true;
	pack_in_parenthesis(reader);
	if (!out->pack.present)
		pack_behind_number(reader);
	if (out->pack.present)
		container_behind_pack(reader);
	else if (unit_and_beside(reader) == READ_FAULT)
		return READ_FAULT;
	of_skip(reader);
	return READ_DONE;
}

/* The place of an amount set aside: what there is of it all, in each, or the same again. */
static bool aside_place(struct line_reader *reader, const struct ingredient_amount *amount,
			enum unit_class class, bool each)
{
	struct ingredient_line *out = reader->out;
	if (!out->has_quantity && !*out->unit) {
		out->has_quantity = true;
		out->quantity = amount->quantity;
		out->quantity_max = amount->quantity_max;
		out->unit = amount->unit;
		reader->class = class;
		return true;
	}
	bool in_each = each || (reader->class == UNIT_CONTAINER && *out->unit);
	struct ingredient_amount *place = in_each ? &out->pack : &out->alternative;
	if (place->present || !is_measure(class))
		return false;
	*place = *amount;
	return true;
}

bool aside_amount(struct line_reader *reader, const char *text, size_t length)
{
	char copy[INGREDIENT_LINE_MAX + 1];
	struct ingredient_amount amount;
	enum unit_class class;
	const char *at = copy;
	memcpy(copy, text, length);
	copy[length] = '\0';
	blanks_skip(&at);
	size_t hedge = hedge_skip(&at);
	size_t joint = word_listed(at, "|or|i.e.|equals|weighing|total|");
	at += joint;
	blanks_skip(&at);
	hedge += hedge_skip(&at);
	if (measured_read(&at, &amount, &class) != READ_DONE)
		return false;
	blanks_skip(&at);
	size_t each = word_listed(at, "|each|");
	at += each ? each : word_listed(at, "|total|in total|in all|in weight|net|");
	blanks_skip(&at);
	if (*at != '\0' && *at != '/')
		return false;
	bool placed = aside_place(reader, &amount, class, each > 0);
	/* What the figure does not tell stays to be read: "about", a second unit. */
	if (placed && (hedge > 0 || *at == '/'))
		note_add(reader, text, length);
	return placed;
}
