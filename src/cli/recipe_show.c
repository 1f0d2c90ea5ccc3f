/* recipe show, scale, export, yield. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "recipe.h"
#include "recipe_scale.h"
#include "request.h"

static bool add_system(struct recipe_view *view, enum measuring_system system)
{
	for (size_t i = 0; i < view->in_n; i++)
		if (view->in[i] == system)
			return true;
	view->in[view->in_n++] = system;
	return true;
}

bool recipe_systems_read(struct invocation *inv, struct recipe_view *view)
{
	const char *given = option(inv, "in");
	if (!given)
		return add_system(view, view->recipe->system);
	for (const char *at = given;;) {
		char word[64], shown[TEXT_SHOWN_SIZE];
		enum measuring_system system = SYSTEM_UNSTATED;
		size_t n = strcspn(at, ",");
		snprintf(word, sizeof word, "%.*s", n < sizeof word ? (int)n : 0, at);
		if (!measuring_system_find(word, &system) || system == SYSTEM_UNSTATED) {
			text_show(at, n, shown);
			return error_usage(
			    inv->err,
			    "in: no measures '%s'; say us, imperial, canada, australia, "
			    "new-zealand or metric, with commas between them",
			    shown);
		}
		add_system(view, system);
		if (at[n] == '\0')
			return true;
		at += n + 1;
	}
}

static int answer_view(struct invocation *inv, struct recipe *recipe, struct rational factor)
{
	struct recipe_total total;
	struct recipe_view view = {.tables = reference_tables_edition(),
				   .recipe = recipe,
				   .factor = factor,
				   .total = &total};
	if (!recipe_scale(recipe, factor, inv->err) || !recipe_systems_read(inv, &view) ||
	    !recipe_total(view.tables, recipe, &total, inv->err))
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv,
				   with_member(recipe_view_json(&view), "expected",
					       recipe_expected_json(inv, recipe)),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	recipe_view_text(&page, &view);
	return recipe_expected_text(inv, &page, recipe) ? STATUS_DONE : command_failed(inv);
}

int recipe_show_command(struct invocation *inv)
{
	struct recipe recipe;
	struct rational factor;
	if (!factor_option(inv, "scale", &factor) || !recipe_find(inv, &recipe))
		return command_failed(inv);
	int status = answer_view(inv, &recipe, factor);
	recipe_release(&recipe);
	return status;
}

int recipe_scale_command(struct invocation *inv)
{
	struct recipe recipe;
	struct rational factor;
	if (!recipe_find(inv, &recipe))
		return command_failed(inv);
	int status = factor_wanted(inv, &recipe, &factor) ? answer_view(inv, &recipe, factor)
							  : command_failed(inv);
	recipe_release(&recipe);
	return status;
}

static int export_json(struct invocation *inv, bool linked)
{
	struct recipe recipe;
	struct recipe_total total;
	struct recipe_view view = {.tables = reference_tables_edition(),
				   .recipe = &recipe,
				   .factor = {1, 1},
				   .total = &total};
	if (!recipe_find(inv, &recipe))
		return command_failed(inv);
	int status = STATUS_DONE;
	if (linked)
		status = answer_json(inv, recipe_jsonld(&recipe), STATUS_DONE);
	else if (recipe_systems_read(inv, &view) &&
		 recipe_total(view.tables, &recipe, &total, inv->err))
		status = answer_json(inv, recipe_view_json(&view), STATUS_DONE);
	else
		status = command_failed(inv);
	recipe_release(&recipe);
	return status;
}

static int export_text(struct invocation *inv)
{
	struct stored_recipe stored;
	if (!recipe_find_stored(inv, &stored))
		return command_failed(inv);
	fwrite(stored.text, 1, stored.length, inv->out);
	stored_recipe_release(&stored);
	return STATUS_DONE;
}

int recipe_export_command(struct invocation *inv)
{
	const char *as = option(inv, "as");
	char shown[TEXT_SHOWN_SIZE];
	if (!as || strcmp(as, "text") == 0)
		return export_text(inv);
	if (strcmp(as, "json") == 0 || strcmp(as, "jsonld") == 0)
		return export_json(inv, strcmp(as, "jsonld") == 0);
	text_show(as, SIZE_MAX, shown);
	error_usage(inv->err, "as: no form '%s'; say text, json or jsonld", shown);
	return command_failed(inv);
}
