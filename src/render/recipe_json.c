/* A recipe as JSON: exact amounts as fractions in text, which no reader rounds. */
#include <inttypes.h>
#include <string.h>

#include "jarwright/render_recipe.h"

#define MG_PER_G 1000.0

static json_t *fraction(struct rational a)
{
	char text[64];
	if (a.den == 1)
		snprintf(text, sizeof text, "%" PRId64, a.num);
	else
		snprintf(text, sizeof text, "%" PRId64 "/%" PRId64, a.num, a.den);
	return json_string(text);
}

static json_t *amount_json(const struct ingredient_amount *amount)
{
	if (!amount->present)
		return json_null();
	return json_pack("{s:o, s:o, s:s}", "quantity", fraction(amount->quantity), "quantity_max",
			 fraction(amount->quantity_max), "unit", amount->unit);
}

static json_t *grams_json(const struct recipe_view *view, size_t line)
{
	struct rational least, most;
	if (!recipe_line_grams(view->tables, view->recipe, line, &least, &most))
		return json_null();
	return json_pack("[f, f]", rational_double(least), rational_double(most));
}

static json_t *cells_json(const struct recipe_view *view, size_t line)
{
	json_t *cells = json_object();
	for (size_t s = 0; cells && s < view->in_n; s++) {
		struct recipe_cell cell;
		recipe_cell_make(view, line, view->in[s], &cell);
		if (json_object_set_new(cells, measuring_system_word(view->in[s]),
					json_pack("{s:s, s:f}", "measure", cell.words, "rounding",
						  cell.error)) != 0) {
			json_decref(cells);
			cells = NULL;
		}
	}
	return cells;
}

static json_t *line_json(const struct recipe_view *view, size_t i)
{
	const struct recipe_line *line = &view->recipe->lines[i];
	const struct ingredient_line *read = &line->read;
	const struct ingredient_amount own = {read->has_quantity, read->quantity,
					      read->quantity_max, read->unit};
	return json_pack("{s:i, s:s, s:o, s:o, s:o, s:s, s:s, s:s?, s:s, s:s, s:s, s:o, s:o}",
			 "line", line->number, "text", line->text, "amount", amount_json(&own),
			 "plus", amount_json(&read->plus), "pack", amount_json(&read->pack), "size",
			 read->size, "ingredient", read->ingredient, "matched", read->matched,
			 "preparation", read->preparation, "note", read->note, "sure",
			 ingredient_sure_word(read->sure), "grams", grams_json(view, i), "in",
			 cells_json(view, i));
}

json_t *recipe_total_json(const struct recipe *recipe, const struct recipe_total *total)
{
	json_t *left_out = json_array();
	for (size_t i = 0; left_out && i < recipe->lines_n; i++)
		if (total->left_out[i])
			left_out = json_append(left_out, json_integer(recipe->lines[i].number));
	return json_pack("{s:f, s:f, s:o}", "least_g", (double)total->least_mg / MG_PER_G, "most_g",
			 (double)total->most_mg / MG_PER_G, "lines_left_out", left_out);
}

static json_t *batch_json(const struct recipe_view *view)
{
	static const struct rational as_written = {1, 1};
	const struct change_rule_row *rule = recipe_batch_rule(view->tables, view->recipe);
	if (!rule || rational_compare(view->factor, as_written) <= 0)
		return json_null();
	return json_pack("{s:s, s:s, s:o}", "change", rule->change, "condition", rule->condition,
			 "source", json_citation(&rule->from));
}

json_t *recipe_view_json(const struct recipe_view *view)
{
	json_t *lines = json_array();
	for (size_t i = 0; lines && i < view->recipe->lines_n; i++)
		lines = json_append(lines, line_json(view, i));
	return json_pack("{s:s, s:s, s:o, s:o, s:o, s:o, s:s}", "name", view->recipe->name,
			 "measures", measuring_system_word(view->recipe->system), "factor",
			 fraction(view->factor), "lines", lines, "total",
			 recipe_total_json(view->recipe, view->total), "batch_warning",
			 batch_json(view), "method", view->recipe->method);
}

static json_t *steps_json(const char *method)
{
	json_t *steps = json_array();
	for (const char *at = method; steps && *at;) {
		size_t n = strcspn(at, "\r\n");
		if (n > 0)
			steps = json_append(
			    steps, json_pack("{s:s, s:s%}", "@type", "HowToStep", "text", at, n));
		at += n;
		at += strspn(at, "\r\n");
	}
	return steps;
}

json_t *recipe_jsonld(const struct recipe *recipe)
{
	char whose[128];
	json_t *lines = json_array();
	for (size_t i = 0; lines && i < recipe->lines_n; i++)
		lines = json_append(lines, json_string(recipe->lines[i].text));
	/* schema.org has no place for whose cups they are, and a reader must know. */
	snprintf(whose, sizeof whose, "Measures: %s. Not a tested process.",
		 measuring_system_title(recipe->system));
	return json_pack("{s:s, s:s, s:s, s:s, s:o, s:o}", "@context", "https://schema.org",
			 "@type", "Recipe", "name", recipe->name, "description", whose,
			 "recipeIngredient", lines, "recipeInstructions",
			 steps_json(recipe->method));
}
