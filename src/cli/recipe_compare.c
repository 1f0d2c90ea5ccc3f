/* recipe compare: held against the tested formulas, with the way back inside one. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/compare.h"
#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "recipe.h"
#include "request.h"

/* What the comparison works with, and what comes of it. */
struct compared {
	void *memory;
	struct formula_set *set;
	const struct formula *formula; /* the one asked for, or NULL: all */
	struct compare_facts facts;
	struct comparison comparison;
	struct repair repair;
};

static bool prepare(struct invocation *inv, struct compared *out)
{
	const struct reference *ref = reference_edition();
	size_t size = formula_set_size(ref);
	out->memory = malloc(size);
	if (!out->memory)
		return error_failed(inv->err, "recipe compare: out of memory; close other programs "
					      "and try again");
	out->set =
	    formula_set_prepare(ref, reference_tables_edition(), out->memory, size, inv->err);
	return out->set != NULL;
}

static bool read_facts(struct invocation *inv, struct compare_facts *out)
{
	struct asked asked;
	memset(&asked, 0, sizeof asked);
	if (!asked_vinegar(inv, &asked))
		return false;
	out->vinegar = asked.request.vinegar;
	out->vinegar_milli_percent = asked.request.vinegar_milli_percent;
	return true;
}

/* Words for a formula: a food, found as check finds it. */
static bool read_formula(struct invocation *inv, struct compared *out)
{
	struct food_match match;
	char shown[TEXT_SHOWN_SIZE];
	if (inv->operands_n < 3)
		return true;
	const char *words = inv->operands[2];
	text_show(words, SIZE_MAX, shown);
	reference_find_food(reference_edition(), words, &match);
	if (match.kind != MATCH_ONE)
		return error_usage(
		    inv->err,
		    "recipe compare: '%s' is not one tested formula; leave it out to "
		    "find the nearest, or list them with 'jarwright foods'",
		    shown);
	out->formula = formula_set_find(out->set, match.foods[0], "");
	return out->formula ||
	       error_usage(inv->err,
			   "recipe compare: no formula is published for '%s'; leave it out to find "
			   "the nearest",
			   shown);
}

/* Nothing is to be repaired in what is tested. */
static bool find_repair(struct invocation *inv, const struct recipe *recipe, struct compared *c)
{
	enum verdict verdict = c->comparison.verdict;
	return verdict == VERDICT_TESTED ||
	       recipe_repair(c->set, recipe, &c->facts, c->formula, &c->repair, inv->err);
}

static int answer(struct invocation *inv, const struct compared *c)
{
	int status = verdict_exit_code(c->comparison.verdict);
	if (flag(inv, "json"))
		return answer_json(inv, comparison_json(c->set, &c->comparison, &c->repair),
				   status);
	struct page page = answer_page(inv);
	comparison_text(&page, c->set, &c->comparison, &c->repair);
	return status;
}

static int compare(struct invocation *inv, const struct recipe *recipe, struct compared *c)
{
	if (!prepare(inv, c) || !read_facts(inv, &c->facts) || !read_formula(inv, c))
		return command_failed(inv);
	recipe_compare(c->set, recipe, &c->facts, c->formula, &c->comparison);
	if (!find_repair(inv, recipe, c))
		return command_failed(inv);
	return answer(inv, c);
}

int recipe_compare_command(struct invocation *inv)
{
	struct recipe recipe;
	if (!operands_between(inv, 2, 3, "name") || !recipe_find(inv, &recipe))
		return command_failed(inv);
	struct compared *c = calloc(1, sizeof *c);
	int status;
	if (c) {
		status = compare(inv, &recipe, c);
		recipe_release(&c->repair.recipe);
		free(c->memory);
		free(c);
	} else {
		error_failed(inv->err, "recipe compare: out of memory; close other programs and "
				       "try again");
		status = command_failed(inv);
	}
	recipe_release(&recipe);
	return status;
}
