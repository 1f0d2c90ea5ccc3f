/* The subcommands of recipe, each in the source of its subject, and what they share. */
#ifndef JARWRIGHT_CLI_RECIPE_H
#define JARWRIGHT_CLI_RECIPE_H

#include "cli.h"
#include "jarwright/household_recipes.h"
#include "jarwright/recipe.h"
#include "jarwright/render_recipe.h"

/* Operand 0 is the subcommand's own name; each returns a status. */
int recipe_add_command(struct invocation *inv);
int recipe_import_command(struct invocation *inv);
int recipe_list_command(struct invocation *inv);
int recipe_remove_command(struct invocation *inv);
int recipe_show_command(struct invocation *inv);
int recipe_scale_command(struct invocation *inv);
int recipe_export_command(struct invocation *inv);
int recipe_yield_command(struct invocation *inv);
int recipe_compare_command(struct invocation *inv);
int recipe_acid_command(struct invocation *inv);
int recipe_parse_command(struct invocation *inv);

/*
 * The jars a recipe is expected to fill, below its table: by the published yield of the formula it
 * counts as. False, or NULL: inv->err is filled, or out of memory.
 */
bool recipe_expected_text(struct invocation *inv, const struct page *page, struct recipe *recipe);
json_t *recipe_expected_json(struct invocation *inv, struct recipe *recipe);

/* --in, "us,imperial,metric,au", into the view; the recipe's own if it is not given. */
bool recipe_systems_read(struct invocation *inv, struct recipe_view *view);

/* The stored recipe of operand 1. *stored is the caller's to release. */
bool recipe_find_stored(struct invocation *inv, struct stored_recipe *stored);
/* The same, read; *out is the caller's to release. */
bool recipe_find(struct invocation *inv, struct recipe *out);

/* Reads a file, or with "-" standard input, of at most `most` bytes; *out is to be freed. */
bool recipe_input(const char *path, size_t most, char **out, size_t *length, struct error *err);

#endif
