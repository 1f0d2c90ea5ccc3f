/*
 * Recipes in the household file: name, whose measures, and the text exactly as typed.
 *
 * The text is what is precious; its lines are read from it anew each time, so that a better
 * reader serves old recipes too and nothing can differ from the text. A name is
 * unique but for the case of A to Z. Reading a file that does not exist finds no recipe.
 */
#ifndef JARWRIGHT_HOUSEHOLD_RECIPES_H
#define JARWRIGHT_HOUSEHOLD_RECIPES_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/recipe.h"

#define HOUSEHOLD_RECIPES_MAX 10000

/* An empty one is all zero. */
struct stored_recipe {
	char name[RECIPE_NAME_SIZE]; /* as it was typed when the recipe was added */
	enum measuring_system system;
	char *text; /* as typed, text[length] is NUL; owned */
	size_t length;
};
void stored_recipe_release(struct stored_recipe *recipe);

struct recipe_entry {
	char name[RECIPE_NAME_SIZE];
	enum measuring_system system;
};
struct recipe_list {
	struct recipe_entry *entries; /* by name; entries_n of them; owned */
	size_t entries_n;
};
void recipe_list_release(struct recipe_list *list);

/*
 * Keeps a recipe, whose text recipe_read() must take; nothing is kept of one that it refuses.
 * The same name with the same text and measures changes nothing and sets *already; with any
 * other it is a usage error. One transaction: true means that it survives power loss.
 */
bool household_add_recipe(struct household *db, const char *name, enum measuring_system system,
			  const char *text, size_t length, bool *already, struct error *err);

/* *found: is there one of that name? Only then is *out to be released. */
bool household_find_recipe(struct household *db, const char *name, struct stored_recipe *out,
			   bool *found, struct error *err);
/* A name that is not there is a usage error, as in removing; *out is the caller's to release. */
bool household_recipe(struct household *db, const char *name, struct stored_recipe *out,
		      struct error *err);
bool household_recipes(struct household *db, struct recipe_list *out, struct error *err);
bool household_remove_recipe(struct household *db, const char *name, struct error *err);

#endif
