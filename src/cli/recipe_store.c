/* recipe add, import, list, remove: the recipes in the household file. */
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/import.h"
#include "jarwright/text.h"
#include "recipe.h"
#include "request.h"

bool recipe_find_stored(struct invocation *inv, struct stored_recipe *stored)
{
	struct household *db;
	*stored = (struct stored_recipe){0};
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_recipe(db, inv->operands[1], stored, inv->err);
	household_close(db);
	return ok;
}

bool recipe_find(struct invocation *inv, struct recipe *out)
{
	struct stored_recipe stored;
	*out = (struct recipe){0};
	if (!recipe_find_stored(inv, &stored))
		return false;
	bool ok =
	    recipe_read(stored.name, stored.system, stored.text, stored.length, out, inv->err);
	stored_recipe_release(&stored);
	return ok;
}

static bool read_measures(struct invocation *inv, enum measuring_system *out)
{
	static const char choices[] = "us, imperial, canada, australia, new-zealand or metric";
	const char *given = option(inv, "measures");
	char shown[TEXT_SHOWN_SIZE];
	if (!given)
		return error_usage(inv->err,
				   "recipe: whose cups, pints and spoons are these? they differ; "
				   "say --measures %s",
				   choices);
	if (measuring_system_find(given, out) && *out != SYSTEM_UNSTATED)
		return true;
	text_show(given, SIZE_MAX, shown);
	return error_usage(inv->err, "recipe: no measures '%s'; say --measures %s", shown, choices);
}

/* Lines that the reader was not sure of are shown at once, while the page is at hand. */
static void tell_unsure(struct invocation *inv, const struct recipe *recipe)
{
	bool first = true;
	for (size_t i = 0; i < recipe->lines_n; i++) {
		const struct recipe_line *line = &recipe->lines[i];
		if (line->read.sure != INGREDIENT_UNSURE)
			continue;
		if (first)
			fputs("Not understood for sure; look whether they say what you mean:\n",
			      inv->out);
		first = false;
		fprintf(inv->out, "  line %d: %s\n", line->number, line->text);
	}
}

static int tell_added(struct invocation *inv, const char *name, enum measuring_system system,
		      const char *text, size_t length, bool already)
{
	struct recipe recipe;
	if (!recipe_read(name, system, text, length, &recipe, inv->err))
		return command_failed(inv);
	int status = STATUS_DONE;
	if (flag(inv, "json")) {
		status = answer_json(inv,
				     json_pack("{s:s, s:s, s:I, s:b}", "name", name, "measures",
					       measuring_system_word(system), "ingredients",
					       (json_int_t)recipe.lines_n, "already", already),
				     STATUS_DONE);
	} else {
		fprintf(inv->out, "%s recipe '%s': %zu ingredient%s, %s measures\n",
			already ? "already there:" : "added", name, recipe.lines_n,
			recipe.lines_n == 1 ? "" : "s", measuring_system_title(system));
		tell_unsure(inv, &recipe);
	}
	recipe_release(&recipe);
	return status;
}

static int keep(struct invocation *inv, enum measuring_system system, const char *text,
		size_t length)
{
	const char *name = inv->operands[1];
	struct household *db;
	struct recipe recipe;
	bool already;
	/* Before the file is made: a recipe that is refused leaves nothing behind. */
	if (!recipe_read(name, system, text, length, &recipe, inv->err))
		return command_failed(inv);
	recipe_release(&recipe);
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	bool ok = household_add_recipe(db, name, system, text, length, &already, inv->err);
	household_close(db);
	inv->saved = ok && !already;
	return ok ? tell_added(inv, name, system, text, length, already) : command_failed(inv);
}

int recipe_add_command(struct invocation *inv)
{
	enum measuring_system system = SYSTEM_UNSTATED;
	char *text;
	size_t length;
	if (!read_measures(inv, &system) ||
	    !recipe_input(inv->operands[2], RECIPE_BYTES_MAX, &text, &length, inv->err))
		return command_failed(inv);
	int status = keep(inv, system, text, length);
	free(text);
	return status;
}

int recipe_import_command(struct invocation *inv)
{
	enum measuring_system system = SYSTEM_UNSTATED;
	char *page;
	size_t length;
	struct imported imported;
	if (!read_measures(inv, &system) ||
	    !recipe_input(inv->operands[2], IMPORT_BYTES_MAX, &page, &length, inv->err))
		return command_failed(inv);
	bool ok = import_recipe(page, length, &imported, inv->err);
	free(page);
	if (!ok)
		return command_failed(inv);
	int status = keep(inv, system, imported.text, strlen(imported.text));
	imported_release(&imported);
	return status;
}

static int print_list(struct invocation *inv, const struct recipe_list *list)
{
	if (list->entries_n == 0)
		fputs("no recipes; add one with 'jarwright recipe add NAME FILE --measures us'\n",
		      inv->out);
	for (size_t i = 0; i < list->entries_n; i++)
		fprintf(inv->out, "%s (%s)\n", list->entries[i].name,
			measuring_system_word(list->entries[i].system));
	return STATUS_DONE;
}

static int list_to_json(struct invocation *inv, const struct recipe_list *list)
{
	json_t *items = json_array();
	for (size_t i = 0; items && i < list->entries_n; i++)
		items = json_append(
		    items, json_pack("{s:s, s:s}", "name", list->entries[i].name, "measures",
				     measuring_system_word(list->entries[i].system)));
	return answer_json(inv, json_pack("{s:o}", "recipes", items), STATUS_DONE);
}

int recipe_list_command(struct invocation *inv)
{
	struct household *db;
	struct recipe_list list;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_recipes(db, &list, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = (flag(inv, "json") ? list_to_json : print_list)(inv, &list);
	recipe_list_release(&list);
	return status;
}

int recipe_remove_command(struct invocation *inv)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_remove_recipe(db, inv->operands[1], inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:s}", "removed", inv->operands[1]),
				   STATUS_DONE);
	fprintf(inv->out, "removed recipe '%s'\n", inv->operands[1]);
	return STATUS_DONE;
}
