/* The nearest measure that a kitchen has a vessel for. */
#include <math.h>

#include "jarwright/kitchen_measure.h"

/* Fractions a vessel comes in, besides whole ones: bits over twenty-fourths. */
#define IN(n)        (1U << (n))
#define WHOLE        IN(0)
#define HALVES       (WHOLE | IN(12))
#define QUARTERS     (HALVES | IN(6) | IN(18))
#define CUPS         (QUARTERS | IN(8) | IN(16))
#define FRACTION_DEN 24
#define EIGHTH       3 /* an eighth of a spoon is measured alone, not on top of whole ones */
#define ANY_NUMBER   1e9

/* Common practice, no source: what measuring sets hold, and how far people count. */
struct vessel {
	enum kitchen_unit unit;
	unsigned fractions;
	bool eighth;
	double least, most; /* whole ones that are counted; 0 to begin with the fractions */
};
#define VESSELS_MAX 4
struct vessels {
	struct vessel list[VESSELS_MAX];
	size_t n;
};

static const struct vessels cups_and_quarts = {
    {{UNIT_QUART, WHOLE, false, 2, ANY_NUMBER},
     {UNIT_CUP, CUPS, false, 0, 7},
     {UNIT_TABLESPOON, WHOLE, false, 0, 4},
     {UNIT_TEASPOON, QUARTERS, true, 0, 2}},
    4,
};
static const struct vessels cups = {
    {{UNIT_CUP, CUPS, false, 0, ANY_NUMBER},
     {UNIT_TABLESPOON, WHOLE, false, 0, 4},
     {UNIT_TEASPOON, QUARTERS, true, 0, 3}},
    3,
};
static const struct vessels pints = {
    {{UNIT_PINT, QUARTERS, false, 0, ANY_NUMBER},
     {UNIT_FLUID_OUNCE, HALVES, false, 0, 19},
     {UNIT_TABLESPOON, WHOLE, false, 0, 1},
     {UNIT_TEASPOON, QUARTERS, true, 0, 2}},
    4,
};
static const struct vessels pounds = {
    {{UNIT_POUND, WHOLE, false, 0, ANY_NUMBER}, {UNIT_OUNCE, QUARTERS, true, 0, 15}},
    2,
};

static const struct vessels *volume_vessels(enum measuring_system system)
{
	switch (system) {
	case SYSTEM_US:
		return &cups_and_quarts;
	case SYSTEM_IMPERIAL:
		return &pints;
	default:
		return &cups;
	}
}

#define TOLERANCE 0.01 /* fewer parts are worth an error this small */
#define SLACK     1e-9 /* of the rounding of floating point: an exact fit is one */

struct search {
	const struct vessels *vessels;
	struct kitchen_measure measures[VESSELS_MAX];
	double wanted;
	enum practical_side side;
	struct practical now, best;
	bool found;
};

/*
 * Floating point only picks the candidate; what it comes to is added up exactly, so that
 * the figures given are true whatever was picked.
 */
static double error_of(const struct search *s, const struct practical *p)
{
	double amount = 0;
	for (size_t i = 0; i < p->parts_n; i++)
		amount += rational_double(p->parts[i].count) *
			  rational_double(p->parts[i].measure.amount);
	return (amount - s->wanted) / s->wanted;
}

static bool is_on_side(enum practical_side side, double error)
{
	return side == PRACTICAL_NEAREST ||
	       (side == PRACTICAL_AT_LEAST ? error >= -SLACK : error <= SLACK);
}

static void consider(struct search *s)
{
	struct practical *p = &s->now;
	p->error = error_of(s, p);
	if (!is_on_side(s->side, p->error))
		return;
	double now = fabs(p->error), best = fabs(s->best.error);
	bool near = now <= TOLERANCE, best_near = best <= TOLERANCE;
	bool tie =
	    (near && best_near && p->parts_n != s->best.parts_n) || fabs(now - best) <= SLACK;
	bool better = tie ? p->parts_n < s->best.parts_n : now < best;
	if (!s->found || better)
		s->best = *p;
	s->found = true;
}

/* Twenty-fourths of the vessel: the most that is not above `count`, or the least above it. */
static double step(const struct vessel *vessel, double count, bool up)
{
	double whole = floor(count + SLACK), rest = (count - whole) * FRACTION_DEN;
	double below = 0, above = FRACTION_DEN;
	for (int i = 0; i < FRACTION_DEN; i++) {
		bool has = (vessel->fractions & IN(i)) != 0 ||
			   (vessel->eighth && whole == 0 && i == EIGHTH);
		if (has && i <= rest + SLACK)
			below = i;
		if (has && i > rest + SLACK && i < above)
			above = i;
	}
	return whole * FRACTION_DEN + (up ? above : below);
}

/* Twenty-fourths of the vessel that are measured out of it; 0: it cannot be used so. */
static int64_t fill(const struct vessel *vessel, double count, bool up)
{
	if (count >= ANY_NUMBER)
		return 0;
	double twenty_fourths = step(vessel, count, up);
	double whole = floor(twenty_fourths / FRACTION_DEN);
	return whole < vessel->least || whole > vessel->most ? 0 : (int64_t)twenty_fourths;
}

/* What is done with one vessel: filled just below what is wanted, just above, or left out. */
enum choice { FILL_BELOW, FILL_ABOVE, LEAVE_OUT, CHOICES };

/* Adds the vessel as chosen and takes it from *rest. False: the choice is none. */
static bool choose(struct search *s, size_t at, unsigned choice, double *rest)
{
	if (choice == LEAVE_OUT || *rest <= 0)
		return choice == LEAVE_OUT;
	if (s->now.parts_n == PRACTICAL_PARTS)
		return false;
	double size = rational_double(s->measures[at].amount);
	int64_t filled = fill(&s->vessels->list[at], *rest / size, choice == FILL_ABOVE);
	struct practical_part *part = &s->now.parts[s->now.parts_n];
	if (filled < 1 || !rational_make(filled, FRACTION_DEN, &part->count))
		return false;
	part->measure = s->measures[at];
	s->now.parts_n++;
	*rest -= rational_double(part->count) * size;
	return true;
}

static unsigned choices_of(size_t vessels)
{
	unsigned n = 1;
	while (vessels-- > 0)
		n *= CHOICES;
	return n;
}

/* Every choice for every vessel. Of equals the first stays: the one in the larger vessel. */
static void search_all(struct search *s)
{
	size_t n = s->vessels->n;
	for (unsigned code = 0; code < choices_of(n); code++) {
		double rest = s->wanted;
		bool sound = true;
		s->now = (struct practical){.parts_n = 0};
		for (size_t at = 0; at < n && sound; at++)
			sound = choose(s, at, code / choices_of(n - 1 - at) % CHOICES, &rest);
		if (sound && s->now.parts_n > 0)
			consider(s);
	}
}

static bool add_up(struct practical *p)
{
	struct rational part;
	p->amount = (struct rational){0, 1};
	for (size_t i = 0; i < p->parts_n; i++)
		if (!rational_mul(p->parts[i].count, p->parts[i].measure.amount, &part) ||
		    !rational_add(p->amount, part, &p->amount))
			return false;
	return true;
}

static bool search_vessels(const struct reference_tables *tables, enum measuring_system system,
			   const struct vessels *vessels, double wanted, enum practical_side side,
			   struct practical *out)
{
	struct search s = {.vessels = vessels, .wanted = wanted, .side = side};
	for (size_t i = 0; i < vessels->n; i++)
		if (!kitchen_measure_find(tables, vessels->list[i].unit, system, &s.measures[i]))
			return false;
	search_all(&s);
	*out = s.best;
	return s.found && add_up(out);
}

static double whole_steps(double steps, enum practical_side side)
{
	if (side == PRACTICAL_AT_LEAST)
		return ceil(steps * (1 - SLACK));
	if (side == PRACTICAL_AT_MOST)
		return floor(steps * (1 + SLACK));
	return fmax(round(steps), 1);
}

/* Whole steps of a metric unit, at least one. */
static bool round_metric(const struct reference_tables *tables, enum kitchen_unit unit,
			 struct rational step_size, double wanted, enum practical_side side,
			 struct practical *out)
{
	double steps = whole_steps(wanted / rational_double(step_size), side);
	*out = (struct practical){.parts_n = 1};
	if (!(steps >= 1 && steps < ANY_NUMBER) ||
	    !kitchen_measure_find(tables, unit, SYSTEM_METRIC, &out->parts[0].measure) ||
	    !rational_mul((struct rational){(int64_t)steps, 1}, step_size, &out->parts[0].count) ||
	    !add_up(out))
		return false;
	out->error = (rational_double(out->amount) - wanted) / wanted;
	return true;
}

#define ML_OF_FIVES 100 /* from here on a step of 5 mL is at most 2.5 % off */
#define ML_OF_ONES  5
#define G_OF_ONES   10

static struct rational metric_step(double wanted, bool mass)
{
	static const struct rational tenth = {1, 10}, one = {1, 1}, five = {5, 1};
	if (mass)
		return wanted < G_OF_ONES ? tenth : one;
	if (wanted < ML_OF_ONES)
		return tenth;
	return wanted < ML_OF_FIVES ? one : five;
}

bool practical_volume(const struct reference_tables *tables, enum measuring_system system,
		      struct rational wanted, enum practical_side side, struct practical *out)
{
	double ml = rational_double(wanted);
	if (!(ml > 0) || system == SYSTEM_UNSTATED)
		return false;
	if (system == SYSTEM_METRIC)
		return round_metric(tables, UNIT_MILLILITRE, metric_step(ml, false), ml, side, out);
	return search_vessels(tables, system, volume_vessels(system), ml, side, out);
}

bool practical_mass(const struct reference_tables *tables, enum measuring_system system,
		    struct rational wanted, enum practical_side side, struct practical *out)
{
	double g = rational_double(wanted);
	if (!(g > 0) || system == SYSTEM_UNSTATED)
		return false;
	if (system == SYSTEM_US || system == SYSTEM_IMPERIAL)
		return search_vessels(tables, system, &pounds, g, side, out);
	return round_metric(tables, UNIT_GRAM, metric_step(g, true), g, side, out);
}
