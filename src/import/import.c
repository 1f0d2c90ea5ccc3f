#include "jarwright/import.h"

#include <stdlib.h>
#include <string.h>

#include "import_internal.h"
#include "jarwright/ingredient.h"
#include "jarwright/text.h"

bool import_no_memory(struct error *err)
{
	return error_failed(err, "import: out of memory; close other programs and try again");
}

bool import_too_deep(struct error *err)
{
	return error_usage(err,
			   "import: things in it are nested more than %d deep; no recipe is, copy "
			   "the ingredients into a file and use 'recipe add'",
			   IMPORT_DEPTH_MAX);
}

void imported_release(struct imported *imported)
{
	free(imported->title);
	free(imported->text);
	*imported = (struct imported){0};
}

void page_recipe_release(struct page_recipe *recipe)
{
	free(recipe->title);
	free(recipe->yield);
	free(recipe->ingredients);
	free(recipe->steps);
	*recipe = (struct page_recipe){0};
}

bool take_recipe(struct finding_place *place, struct page_recipe *recipe, struct error *err)
{
	if (!place->found) {
		place->recipe = *recipe;
		place->found = true;
		return true;
	}
	bool same = strcmp(place->recipe.ingredients, recipe->ingredients) == 0;
	char first[TEXT_SHOWN_SIZE], second[TEXT_SHOWN_SIZE];
	text_show(place->recipe.title, strcspn(place->recipe.title, "\n"), first);
	text_show(recipe->title, strcspn(recipe->title, "\n"), second);
	page_recipe_release(recipe);
	return same ||
	       error_usage(
		   err,
		   "import: there are several recipes in it, '%s' and '%s'; save the page of "
		   "the one you want",
		   first, second);
}

/* The number of the line that `at` is in, from 1. */
static int line_of(const char *bytes, const char *at)
{
	int line = 1;
	for (; bytes < at; bytes++)
		line += *bytes == '\n';
	return line;
}

static bool bytes_are_text(const char *bytes, size_t length, struct error *err)
{
	const char *nul = memchr(bytes, '\0', length), *at = bytes;
	if (nul)
		return error_usage(
		    err,
		    "import: line %d: a NUL byte is in it; save the page as HTML, or "
		    "the recipe as JSON",
		    line_of(bytes, nul));
	while (*at) {
		size_t n = text_utf8_length(at);
		if (n == 0)
			return error_usage(
			    err, "import: line %d: it is not valid UTF-8; save the page as UTF-8",
			    line_of(bytes, at));
		at += n;
	}
	return true;
}

/* What would be read as something else than an ingredient must not be lost in silence. */
static bool ingredients_are_lines(const struct page_recipe *recipe, struct error *err)
{
	int number = 0;
	for (const char *at = recipe->ingredients; *at;) {
		size_t n = strcspn(at, "\n");
		enum ingredient_line_kind kind = ingredient_line_kind(at, n);
		number++;
		if (kind != INGREDIENT_LINE_INGREDIENT && kind != INGREDIENT_LINE_HEADING) {
			char shown[TEXT_SHOWN_SIZE];
			text_show(at, n, shown);
			return error_usage(
			    err,
			    "import: ingredient %d, '%s', is none that can be read; copy "
			    "the ingredients into a file and use 'recipe add'",
			    number, shown);
		}
		at += n + (at[n] == '\n');
	}
	return true;
}

static bool write_text(const struct page_recipe *recipe, struct imported *out, struct error *err)
{
	size_t size;
	FILE *stream = open_memstream(&out->text, &size);
	if (!stream)
		return import_no_memory(err);
	if (*recipe->title)
		fprintf(stream, "# %s", recipe->title);
	if (*recipe->yield)
		fprintf(stream, "# makes %s", recipe->yield);
	fprintf(stream, "Ingredients:\n%s", recipe->ingredients);
	if (*recipe->steps)
		fprintf(stream, "\nMethod:\n%s", recipe->steps);
	bool whole = ferror(stream) == 0;
	if (fclose(stream) != 0 || !whole)
		return import_no_memory(err);
	out->title = strndup(recipe->title, strcspn(recipe->title, "\n"));
	return out->title || import_no_memory(err);
}

static bool find(const char *bytes, size_t length, struct finding_place *place, struct error *err)
{
	const char *first = bytes + strspn(bytes, " \t\r\n");
	bool json = *first == '{' || *first == '[';
	if (!(json ? find_in_json("the JSON", first, length - (size_t)(first - bytes), place, err)
		   : find_in_html(bytes, length, place, err)))
		return false;
	return place->found ||
	       error_usage(err,
			   "import: no recipe of schema.org with ingredients is in it; copy the "
			   "ingredients into a file and use 'recipe add'");
}

/* bytes end in a NUL here. */
static bool import_text(const char *bytes, size_t length, struct imported *out, struct error *err)
{
	static const char byte_order_mark[] = "\xef\xbb\xbf";
	struct finding_place place = {0};
	if (!bytes_are_text(bytes, length, err))
		return false;
	if (strncmp(bytes, byte_order_mark, 3) == 0) {
		bytes += 3;
		length -= 3;
	}
	bool ok = find(bytes, length, &place, err) && ingredients_are_lines(&place.recipe, err) &&
		  write_text(&place.recipe, out, err);
	page_recipe_release(&place.recipe);
	return ok;
}

bool import_recipe(const char *bytes, size_t length, struct imported *out, struct error *err)
{
	*out = (struct imported){0};
	if (length == 0)
		return error_usage(err, "import: there is nothing in it; save the page again");
	if (length > IMPORT_BYTES_MAX)
		return error_usage(
		    err,
		    "import: it is longer than %d bytes; save the page without its "
		    "pictures, or copy the ingredients into a file and use 'recipe add'",
		    IMPORT_BYTES_MAX);
	char *copy = malloc(length + 1);
	if (!copy)
		return import_no_memory(err);
	memcpy(copy, bytes, length);
	copy[length] = '\0';
	bool ok = import_text(copy, length, out, err);
	free(copy);
	if (!ok)
		imported_release(out);
	return ok;
}
