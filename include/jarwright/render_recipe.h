/*
 * Recipes as a table in several countries' measures, as JSON, and as a schema.org Recipe.
 * As in render.h: decides nothing, knows no SQL, a JSON value is the caller's or NULL.
 */
#ifndef JARWRIGHT_RENDER_RECIPE_H
#define JARWRIGHT_RENDER_RECIPE_H

#include "jarwright/compare.h"
#include "jarwright/recipe.h"
#include "jarwright/recipe_yield.h"
#include "jarwright/render.h"

struct recipe_view {
	const struct reference_tables *tables;
	const struct recipe *recipe; /* scaled already */
	struct rational factor;      /* by which it was; 1: as written */
	enum measuring_system in[SYSTEM_COUNT];
	size_t in_n;
	const struct recipe_total *total;
};

/* What one line takes in one system: exactly as written, or the nearest that can be measured. */
#define RECIPE_CELL_SIZE 512
struct recipe_cell {
	char words[RECIPE_CELL_SIZE]; /* "1 1/2 cups"; "-" without an amount */
	double error;                 /* greatest rounding in it, as a fraction; 0: exact */
	bool exact;                   /* the words are the exact amount */
};
void recipe_cell_make(const struct recipe_view *view, size_t line, enum measuring_system system,
		      struct recipe_cell *out);

void recipe_view_text(const struct page *page, const struct recipe_view *view);
json_t *recipe_view_json(const struct recipe_view *view);
/* As written, unscaled. */
json_t *recipe_jsonld(const struct recipe *recipe);
json_t *recipe_total_json(const struct recipe *recipe, const struct recipe_total *total);
void recipe_total_text(const struct page *page, const struct recipe *recipe,
		       const struct recipe_total *total);

/* repair may be NULL: none was looked for. */
void comparison_text(const struct page *page, const struct formula_set *set,
		     const struct comparison *comparison, const struct repair *repair);
json_t *comparison_json(const struct formula_set *set, const struct comparison *comparison,
			const struct repair *repair);

/* Beside check's answer: as which formula a recipe of the cook's own counts, and how it differs. */
void checked_recipe_text(const struct page *page, const char *name,
			 const struct comparison *comparison);
/* {"name", "comparison"}; comparison NULL, then null: it is asked whether the recipe is meant. */
json_t *checked_recipe_json(const struct formula_set *set, const char *name,
			    const struct comparison *comparison);
/* Instead of check's answer: the recipe is inside no formula, so there is nothing to decide. */
void uncovered_recipe_text(const struct page *page, const struct formula_set *set, const char *name,
			   const struct comparison *comparison);
/* With the members of decision_json(). */
json_t *uncovered_recipe_json(const struct reference *ref, const struct formula_set *set,
			      const struct request *request, const struct comparison *comparison);

#endif
