/* recipe compare: held against the tested formulas, with the way back inside one. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_recipe.h"
#include "own_recipe.h"

/* What the comparison works with, and what comes of it. */
struct compared {
	struct held held;
	const struct food *food; /* whose formula is asked for, or NULL: all */
	struct compare_facts facts;
	struct repair repair;
};

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
static bool read_formula(struct invocation *inv, const struct food **out)
{
	*out = NULL;
	return inv->operands_n < 3 || formula_find(inv->operands[2], out, inv->err);
}

/* Nothing is to be repaired in what is tested. */
static bool find_repair(struct invocation *inv, const struct recipe *recipe, struct compared *c)
{
	const struct formula *formula = c->food ? formula_set_find(c->held.set, c->food, "") : NULL;
	return c->held.comparison->verdict == VERDICT_TESTED ||
	       recipe_repair(c->held.set, recipe, &c->facts, formula, &c->repair, inv->err);
}

static int answer(struct invocation *inv, const struct compared *c)
{
	int status = verdict_exit_code(c->held.comparison->verdict);
	if (flag(inv, "json"))
		return answer_json(
		    inv, comparison_json(c->held.set, c->held.comparison, &c->repair), status);
	struct page page = answer_page(inv);
	comparison_text(&page, c->held.set, c->held.comparison, &c->repair);
	return status;
}

static int compare(struct invocation *inv, const struct recipe *recipe, struct compared *c)
{
	if (!read_facts(inv, &c->facts) || !read_formula(inv, &c->food) ||
	    !recipe_hold(recipe, &c->facts, c->food, &c->held, inv->err) ||
	    !find_repair(inv, recipe, c))
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
		held_release(&c->held);
		free(c);
	} else {
		error_failed(inv->err, "recipe compare: out of memory; close other programs and "
				       "try again");
		status = command_failed(inv);
	}
	recipe_release(&recipe);
	return status;
}
