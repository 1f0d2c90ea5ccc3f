/* The recipe on the sheet: her own, or the published one, in her measures. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "recipe_scale.h"
#include "sheet.h"

/* Rounding above this is said: one part in a hundred. */
#define ROUNDING_SAID 0.01

/* --in, else the measures of her kitchen, else those the recipe is written in. */
static bool read_measures(struct invocation *inv, struct recipe_view *view)
{
	struct kitchen kitchen;
	if (option(inv, "in"))
		return recipe_systems_read(inv, view);
	if (!invocation_kitchen(inv, &kitchen))
		return false;
	view->in_n = 1;
	view->in[0] = kitchen.units == UNITS_US       ? SYSTEM_US
		      : kitchen.units == UNITS_METRIC ? SYSTEM_METRIC
						      : view->recipe->system;
	return true;
}

/* "2 cups = 475 mL": one line in all the measures. */
static const char *amount_words(struct sheet_maker *maker, const struct recipe_view *view,
				size_t line, double *rounding)
{
	struct recipe_cell cell;
	const char *words = "", *last = "";
	for (size_t i = 0; i < view->in_n; i++) {
		recipe_cell_make(view, line, view->in[i], &cell);
		*rounding = fmax(*rounding, cell.error);
		/* A count is the same everywhere. */
		if (strcmp(cell.words, "-") == 0 || strcmp(cell.words, last) == 0)
			continue;
		last = sheet_keep(maker, "%s", cell.words);
		words = *words ? sheet_keep(maker, "%s = %s", words, last) : last;
	}
	return words;
}

static void put_line(struct sheet_maker *maker, const struct recipe_view *view, size_t line,
		     double *rounding)
{
	const struct ingredient_line *read = &view->recipe->lines[line].read;
	struct sheet_ingredient *out = &maker->ingredients[maker->sheet.ingredients_n++];
	out->amount = amount_words(maker, view, line, rounding);
	out->what = sheet_keep(maker, "%s%s%s%s%s%s", read->ingredient,
			       *read->preparation ? ", " : "", read->preparation,
			       *read->note ? " (" : "", read->note, *read->note ? ")" : "");
}

static const char *note_words(struct sheet_maker *maker, const struct recipe_view *view,
			      double rounding)
{
	static const struct rational as_written = {1, 1};
	char factor[WORDS_BUFFER], said[160] = "";
	const struct change_rule_row *rule = recipe_batch_rule(view->tables, view->recipe);
	int order = rational_compare(view->factor, as_written);
	if (rounding > ROUNDING_SAID)
		snprintf(said, sizeof said,
			 " Rounded to what can be measured, by up to %.1f %%: what is sour never "
			 "down, what is low in acid never up.",
			 rounding * 100);
	return sheet_keep(maker, "%s%s%s%s%s", order == 0 ? "" : "The recipe times ",
			  order == 0 ? "" : rational_words(factor, sizeof factor, view->factor),
			  order == 0 ? "" : ".", said,
			  order > 0 && rule
			      ? " Careful: do not make a jam or jelly in more than one "
				"batch's amount at once; it may stay soft."
			      : "");
}

static bool put_recipe(struct invocation *inv, struct recipe *recipe, struct sheet_maker *maker)
{
	struct recipe_view view = {.tables = reference_tables_edition(), .recipe = recipe};
	double rounding = 0;
	if (!factor_option(inv, "scale", &view.factor) ||
	    !recipe_scale(recipe, view.factor, inv->err) || !read_measures(inv, &view))
		return false;
	for (size_t i = 0; i < recipe->lines_n && i < RECIPE_LINES_MAX; i++)
		put_line(maker, &view, i, &rounding);
	maker->sheet.note = note_words(maker, &view, rounding);
	return true;
}

bool sheet_own_recipe(struct invocation *inv, const char *name, struct sheet_maker *maker,
		      bool *found)
{
	struct stored_recipe stored = {.text = NULL};
	struct recipe recipe;
	struct household *db;
	*found = false;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_find_recipe(db, name, &stored, found, inv->err);
	household_close(db);
	if (!ok || !*found)
		return ok;
	ok = recipe_read(stored.name, stored.system, stored.text, stored.length, &recipe, inv->err);
	stored_recipe_release(&stored);
	if (!ok)
		return false;
	ok = put_recipe(inv, &recipe, maker);
	recipe_release(&recipe);
	return ok;
}

/* The formula as a cook would write it, a line an ingredient; NULL: no memory. To be freed. */
static char *formula_text(const struct formula_set *set, const struct formula *formula, size_t *n)
{
	char *text = NULL, line[INGREDIENT_LINE_MAX + 1];
	FILE *out = open_memstream(&text, n);
	if (!out)
		return NULL;
	for (size_t i = 0; i < formula->lines_n; i++)
		if (formula_line_words(set, formula, i, line, sizeof line))
			fprintf(out, "%s\n", line);
	if (fclose(out) == 0)
		return text;
	free(text);
	return NULL;
}

/* A formula without any amount cannot be read as a recipe, and need not be: it is shown as it is.
 */
static void put_words(const struct formula_set *set, const struct formula *formula,
		      struct sheet_maker *maker)
{
	char line[INGREDIENT_LINE_MAX + 1];
	for (size_t i = 0; i < formula->lines_n && i < RECIPE_LINES_MAX; i++)
		if (formula_line_words(set, formula, i, line, sizeof line))
			maker->ingredients[maker->sheet.ingredients_n++] =
			    (struct sheet_ingredient){"", sheet_keep(maker, "%s", line)};
}

/*
 * Of a food without a formula: how it is made ready, and how much a load takes. Without a process
 * there is nothing to make it ready for.
 */
static bool put_directions(struct invocation *inv, const struct food *food,
			   struct sheet_maker *maker)
{
	char quarts[WORDS_BUFFER];
	if (option(inv, "scale"))
		return error_usage(inv->err,
				   "scale: there is no recipe for %s in the tables to be "
				   "scaled; leave it out",
				   food->slug);
	for (const char *at = maker->sheet.process ? food->steps : ""; *at;) {
		size_t n = strcspn(at, "\n");
		if (maker->sheet.directions_n == SHEET_DIRECTIONS_MAX) {
			maker->lost = true;
			return true;
		}
		maker->directions[maker->sheet.directions_n++] =
		    sheet_keep(maker, "%.*s", (int)n, at);
		at += n + (at[n] == '\n');
	}
	if (maker->sheet.process && food->lb_per_7qt_milli != NONE)
		maker->sheet.note =
		    sheet_keep(maker, "Published: %s lb for 7 quarts.",
			       milli_words(quarts, sizeof quarts, food->lb_per_7qt_milli));
	return true;
}

static bool put_formula(struct invocation *inv, const struct formula_set *set,
			const struct food *food, struct sheet_maker *maker)
{
	const struct formula *formula = formula_set_find(set, food, "");
	struct recipe recipe;
	size_t n = 0;
	if (!formula)
		return put_directions(inv, food, maker);
	char *text = formula_text(set, formula, &n);
	if (!text)
		return error_failed(inv->err, "sheet: out of memory; close other programs and try "
					      "again");
	struct error unread = {.kind = ERROR_NONE};
	bool ok = recipe_read(food->title, SYSTEM_US, text, n, &recipe, &unread);
	free(text);
	if (!ok && option(inv, "scale"))
		return error_usage(inv->err,
				   "scale: the recipe for %s gives no amounts to be "
				   "scaled; leave it out",
				   food->slug);
	if (!ok) {
		put_words(set, formula, maker);
		return true;
	}
	ok = put_recipe(inv, &recipe, maker);
	recipe_release(&recipe);
	if (ok && *formula->variant)
		maker->sheet.note = sheet_keep(maker, "%s%sAs printed for: %s.", maker->sheet.note,
					       *maker->sheet.note ? " " : "", formula->variant);
	return ok;
}

bool sheet_formula(struct invocation *inv, const struct food *food, struct sheet_maker *maker)
{
	size_t size = formula_set_size(reference_edition());
	void *memory = malloc(size);
	if (!memory)
		return error_failed(inv->err, "sheet: out of memory; close other programs and try "
					      "again");
	const struct formula_set *set = formula_set_prepare(
	    reference_edition(), reference_tables_edition(), memory, size, inv->err);
	bool ok = set && put_formula(inv, set, food, maker);
	free(memory);
	return ok;
}
