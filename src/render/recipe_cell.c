/* One line of a recipe in one country's measures. */
#include <math.h>
#include <string.h>

#include "jarwright/render_recipe.h"

#define FRACTION_MOST 8 /* an eighth is the finest that is written as a fraction */

#define SLACK 1e-9 /* of floating point: an exact hundredth is one */

static const struct rational one = {1, 1};

/* Where a cell is written, and for whom. */
struct cell_writer {
	const struct recipe_view *view;
	enum measuring_system system;
	enum practical_side side;
	struct recipe_cell *cell;
};

static void put(struct recipe_cell *cell, const char *text)
{
	size_t n = strlen(cell->words);
	snprintf(cell->words + n, sizeof cell->words - n, "%s", text);
}

static double hundredths(double number, enum practical_side side)
{
	double n = number * 100;
	return (side == PRACTICAL_AT_LEAST  ? ceil(n - SLACK)
		: side == PRACTICAL_AT_MOST ? floor(n + SLACK)
					    : round(n)) /
	       100;
}

/* A fraction that a kitchen has, else about so much: a scaled count is rarely whole. */
static void put_number(struct cell_writer *w, struct rational number)
{
	char words[64];
	double about = hundredths(rational_double(number), w->side);
	if (number.den <= FRACTION_MOST || about <= 0)
		rational_words(words, sizeof words, number);
	else
		snprintf(words, sizeof words, "about %.2f", about);
	put(w->cell, words);
}

/* The nearest that can be measured out and leaves the jar no less acid. False: it cannot be
 * converted. */
static bool put_practical(struct cell_writer *w, enum kitchen_unit unit, struct rational quantity)
{
	struct kitchen_measure measure;
	struct rational wanted;
	struct practical practical = {.parts_n = 0};
	char words[PRACTICAL_WORDS_SIZE];
	const struct reference_tables *tables = w->view->tables;
	if (!kitchen_measure_find(tables, unit, w->view->recipe->system, &measure) ||
	    !rational_mul(quantity, measure.amount, &wanted))
		return false;
	bool ok = kitchen_unit_is_mass(unit)
		      ? practical_mass(tables, w->system, wanted, w->side, &practical)
		      : practical_volume(tables, w->system, wanted, w->side, &practical);
	if (!ok)
		return false;
	put(w->cell, practical_words(words, sizeof words, &practical));
	w->cell->error = fmax(w->cell->error, fabs(practical.error));
	return true;
}

/* As the cook wrote it, in her own measures. */
static void put_as_written(struct cell_writer *w, const struct ingredient_amount *amount)
{
	bool range = rational_compare(amount->quantity, amount->quantity_max) != 0;
	enum kitchen_unit unit;
	enum measuring_system said;
	put_number(w, amount->quantity);
	if (range) {
		put(w->cell, " to ");
		put_number(w, amount->quantity_max);
	}
	if (!*amount->unit)
		return;
	put(w->cell, " ");
	put(w->cell, kitchen_unit_find(amount->unit, &unit, &said)
			 ? kitchen_unit_name(unit, rational_compare(amount->quantity_max, one) > 0)
			 : amount->unit);
}

static void put_converted(struct cell_writer *w, enum kitchen_unit unit,
			  const struct ingredient_amount *amount)
{
	struct recipe_cell before = *w->cell;
	bool range = rational_compare(amount->quantity, amount->quantity_max) != 0;
	bool ok = put_practical(w, unit, amount->quantity);
	if (ok && range) {
		put(w->cell, " to ");
		ok = put_practical(w, unit, amount->quantity_max);
	}
	if (ok)
		return;
	/* What has no counterpart there keeps its own measure, and says whose. */
	*w->cell = before;
	put_as_written(w, amount);
	put(w->cell, " (");
	put(w->cell, measuring_system_title(w->view->recipe->system));
	put(w->cell, ")");
}

static void put_amount(struct cell_writer *w, const struct ingredient_amount *amount)
{
	enum kitchen_unit unit;
	enum measuring_system said;
	bool own =
	    w->system == w->view->recipe->system && rational_compare(w->view->factor, one) == 0;
	if (own || !*amount->unit || !kitchen_unit_find(amount->unit, &unit, &said))
		put_as_written(w, amount);
	else
		put_converted(w, unit, amount);
}

void recipe_cell_make(const struct recipe_view *view, size_t line, enum measuring_system system,
		      struct recipe_cell *out)
{
	const struct ingredient_line *read = &view->recipe->lines[line].read;
	const struct ingredient_amount own = {read->has_quantity, read->quantity,
					      read->quantity_max, read->unit};
	*out = (struct recipe_cell){0};
	struct cell_writer w = {view, system, recipe_line_side(read), out};
	if (!own.present) {
		put(out, read->to_taste ? "to taste" : "-");
		out->exact = true;
		return;
	}
	if (read->pack.present) {
		put_number(&w, own.quantity);
		put(out, " x ");
		/* A tin is bought as it is sold, whatever the country. */
		put_as_written(&w, &read->pack);
		if (*own.unit) {
			put(out, " ");
			put(out, own.unit);
		}
	} else {
		put_amount(&w, &own);
		if (*read->size) {
			put(out, " ");
			put(out, read->size);
		}
	}
	if (read->plus.present) {
		put(out, " + ");
		put_amount(&w, &read->plus);
	}
	out->exact = out->error < 1e-12;
}
