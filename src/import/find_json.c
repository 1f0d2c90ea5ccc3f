/* Recipes in JSON-LD, wherever in it they are: in @graph, in lists, in other things. */
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "import_internal.h"
#include "jarwright/text.h"

/* "Recipe", "schema:Recipe", "https://schema.org/Recipe". */
static bool names_recipe(const json_t *type)
{
	const char *word = json_string_value(type);
	if (!word)
		return false;
	const char *last = strrchr(word, '/');
	if (!last)
		last = strrchr(word, ':');
	return strcmp(last ? last + 1 : word, "Recipe") == 0;
}

static bool is_recipe(const json_t *object)
{
	const json_t *type = json_object_get(object, "@type"), *one;
	size_t i;
	json_array_foreach(type, i, one)
	{
		if (names_recipe(one))
			return true;
	}
	return names_recipe(type);
}

/* Strings and lists of strings; an ingredient that is neither must not be lost in silence. */
static bool put_ingredients(FILE *out, const json_t *value, struct error *err)
{
	const json_t *one;
	size_t i;
	if (json_is_string(value))
		return put_marked_up(out, json_string_value(value), false, err);
	json_array_foreach(value, i, one)
	{
		if (!json_is_string(one))
			return error_usage(
			    err,
			    "import: ingredient %zu of the recipe is no text; copy the "
			    "ingredients into a file of your own and use 'recipe add'",
			    i + 1);
		if (!put_marked_up(out, json_string_value(one), true, err))
			return false;
	}
	return true;
}

/* A string, or a thing with a text or name; lists of them, sections of steps. */
// NOLINTNEXTLINE(misc-no-recursion): no deeper than IMPORT_DEPTH_MAX
static bool put_steps(FILE *out, const json_t *value, int depth, struct error *err)
{
	const json_t *one;
	size_t i;
	if (depth > IMPORT_DEPTH_MAX)
		return import_too_deep(err);
	if (json_is_string(value))
		return put_marked_up(out, json_string_value(value), false, err);
	json_array_foreach(value, i, one)
	{
		if (!put_steps(out, one, depth + 1, err))
			return false;
	}
	const json_t *items = json_object_get(value, "itemListElement");
	const json_t *text = json_object_get(value, "text");
	const json_t *name = json_object_get(value, "name");
	const json_t *words = json_is_string(text) ? text : name;
	if (json_is_string(words) && !put_marked_up(out, json_string_value(words), false, err))
		return false;
	return !items || put_steps(out, items, depth + 1, err);
}

static bool put_yield(FILE *out, const json_t *value, struct error *err)
{
	if (json_is_array(value))
		value = json_array_get(value, 0);
	if (json_is_integer(value))
		fprintf(out, "%" JSON_INTEGER_FORMAT "\n", json_integer_value(value));
	return !json_is_string(value) || put_marked_up(out, json_string_value(value), true, err);
}

static bool put_title(FILE *out, const json_t *value, struct error *err)
{
	return !json_is_string(value) || put_marked_up(out, json_string_value(value), true, err);
}

static bool put_all_steps(FILE *out, const json_t *value, struct error *err)
{
	return put_steps(out, value, 0, err);
}

/* What `put` writes of a value, as a text of its own. */
static bool collect(bool (*put)(FILE *, const json_t *, struct error *), const json_t *value,
		    char **out, struct error *err)
{
	size_t size;
	FILE *stream = open_memstream(out, &size);
	if (!stream)
		return import_no_memory(err);
	bool ok = put(stream, value, err);
	bool whole = ferror(stream) == 0;
	if (fclose(stream) != 0 || !whole)
		return ok ? import_no_memory(err) : false;
	return ok;
}

static bool read_recipe(const json_t *object, const json_t *ingredients,
			struct finding_place *place, struct error *err)
{
	struct page_recipe recipe = {0};
	if (collect(put_title, json_object_get(object, "name"), &recipe.title, err) &&
	    collect(put_yield, json_object_get(object, "recipeYield"), &recipe.yield, err) &&
	    collect(put_ingredients, ingredients, &recipe.ingredients, err) &&
	    collect(put_all_steps, json_object_get(object, "recipeInstructions"), &recipe.steps,
		    err))
		return take_recipe(place, &recipe, err);
	page_recipe_release(&recipe);
	return false;
}

// NOLINTNEXTLINE(misc-no-recursion): no deeper than IMPORT_DEPTH_MAX
static bool walk(json_t *value, int depth, struct finding_place *place, struct error *err)
{
	json_t *one;
	const char *key;
	size_t i;
	if (depth > IMPORT_DEPTH_MAX)
		return import_too_deep(err);
	json_array_foreach(value, i, one)
	{
		if (!walk(one, depth + 1, place, err))
			return false;
	}
	if (!json_is_object(value))
		return true;
	const json_t *ingredients = json_object_get(value, "recipeIngredient");
	if (!ingredients)
		ingredients = json_object_get(value, "ingredients");
	if (is_recipe(value) && ingredients)
		return read_recipe(value, ingredients, place, err);
	json_object_foreach(value, key, one)
	{
		if (!walk(one, depth + 1, place, err))
			return false;
	}
	return true;
}

static bool broken(const char *where, const json_error_t *why, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	if (json_error_code(why) == json_error_stack_overflow)
		return import_too_deep(err);
	if (json_error_code(why) == json_error_out_of_memory)
		return import_no_memory(err);
	text_show(why->text, SIZE_MAX, shown);
	return error_usage(
	    err,
	    "import: %s, line %d, column %d: it is no JSON (%s); save it anew, or copy "
	    "the ingredients into a file and use 'recipe add'",
	    where, why->line, why->column, shown);
}

bool find_in_json(const char *where, const char *bytes, size_t length, struct finding_place *place,
		  struct error *err)
{
	json_error_t why;
	json_t *json = json_loadb(bytes, length, 0, &why);
	if (!json)
		return broken(where, &why, err);
	bool ok = walk(json, 0, place, err);
	json_decref(json);
	return ok;
}
