/* Recipes in a page: JSON-LD in its scripts, else microdata. */
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "import_internal.h"

/* An attribute's value, or "": it belongs to the tree. */
static const char *attribute(const xmlNode *node, const char *name)
{
	if (node->type != XML_ELEMENT_NODE)
		return "";
	for (const xmlAttr *a = node->properties; a; a = a->next)
		if (strcasecmp((const char *)a->name, name) == 0)
			return a->children && a->children->content
				   ? (const char *)a->children->content
				   : "";
	return "";
}

static bool has_attribute(const xmlNode *node, const char *name)
{
	if (node->type != XML_ELEMENT_NODE)
		return false;
	for (const xmlAttr *a = node->properties; a; a = a->next)
		if (strcasecmp((const char *)a->name, name) == 0)
			return true;
	return false;
}

/* Is the word among those of the list, which has blanks between them? */
static bool has_word(const char *list, const char *word)
{
	size_t length = strlen(word);
	for (const char *at = list; *at;) {
		size_t n = strcspn(at, " \t\r\n");
		if (n == length && strncasecmp(at, word, n) == 0)
			return true;
		at += n;
		at += strspn(at, " \t\r\n");
	}
	return false;
}

static bool is_element(const xmlNode *node, const char *name)
{
	return node->type == XML_ELEMENT_NODE && strcasecmp((const char *)node->name, name) == 0;
}

static bool find_in_scripts(xmlNodePtr root, struct finding_place *place, struct error *err)
{
	int number = 0;
	for (xmlNodePtr node = root; node; node = next_node(root, node)) {
		if (!is_element(node, "script") ||
		    strncasecmp(attribute(node, "type"), "application/ld+json", 19) != 0)
			continue;
		char where[64];
		snprintf(where, sizeof where, "the page's JSON-LD script %d", ++number);
		char *json = html_script(node);
		if (!json)
			return import_no_memory(err);
		bool ok = find_in_json(where, json, strlen(json), place, err);
		free(json);
		if (!ok)
			return false;
	}
	return true;
}

static bool is_recipe(const xmlNode *node)
{
	return has_word(attribute(node, "itemtype"), "https://schema.org/Recipe") ||
	       has_word(attribute(node, "itemtype"), "http://schema.org/Recipe");
}

/* The thing that a property belongs to. */
static const xmlNode *owner(const xmlNode *node)
{
	for (node = node->parent; node; node = node->parent)
		if (has_attribute(node, "itemscope") || is_recipe(node))
			return node;
	return NULL;
}

static bool put_property(FILE *out, xmlNodePtr node, bool as_one_line)
{
	const char *content = attribute(node, "content");
	char *text = *content ? strdup(content) : node_text(node);
	if (!text)
		return false;
	(as_one_line ? put_line : put_lines)(out, text);
	free(text);
	return true;
}

/* What of a recipe is looked for: the property, its older name or NULL. */
struct property {
	const char *name, *older;
	bool one_line, first_only;
};

static bool collect(xmlNodePtr recipe, const struct property *property, char **out,
		    struct error *err)
{
	size_t size;
	FILE *stream = open_memstream(out, &size);
	if (!stream)
		return import_no_memory(err);
	bool ok = true, found = false;
	for (xmlNodePtr node = recipe; ok && node; node = next_node(recipe, node)) {
		const char *name = attribute(node, "itemprop");
		if ((!has_word(name, property->name) &&
		     !(property->older && has_word(name, property->older))) ||
		    owner(node) != recipe || (found && property->first_only))
			continue;
		ok = put_property(stream, node, property->one_line);
		found = true;
	}
	ok = ok && ferror(stream) == 0;
	if (fclose(stream) != 0 || !ok)
		return import_no_memory(err);
	return true;
}

static bool read_recipe(xmlNodePtr node, struct finding_place *place, struct error *err)
{
	static const struct property title = {"name", NULL, true, true};
	static const struct property yield = {"recipeYield", "yield", true, true};
	static const struct property ingredients = {"recipeIngredient", "ingredients", false,
						    false};
	static const struct property steps = {"recipeInstructions", "instructions", false, false};
	struct page_recipe recipe = {0};
	if (collect(node, &title, &recipe.title, err) &&
	    collect(node, &yield, &recipe.yield, err) &&
	    collect(node, &ingredients, &recipe.ingredients, err) &&
	    collect(node, &steps, &recipe.steps, err)) {
		if (*recipe.ingredients)
			return take_recipe(place, &recipe, err);
		page_recipe_release(&recipe);
		return true;
	}
	page_recipe_release(&recipe);
	return false;
}

static bool find_in_microdata(xmlNodePtr root, struct finding_place *place, struct error *err)
{
	for (xmlNodePtr node = root; node; node = next_node(root, node))
		if (is_recipe(node) && !read_recipe(node, place, err))
			return false;
	return true;
}

bool find_in_html(const char *bytes, size_t length, struct finding_place *place, struct error *err)
{
	xmlDocPtr doc;
	if (!parse_html(bytes, length, &doc, err))
		return false;
	xmlNodePtr root = html_root(doc);
	bool ok = !root || (find_in_scripts(root, place, err) &&
			    (place->found || find_in_microdata(root, place, err)));
	html_release(doc);
	return ok;
}
