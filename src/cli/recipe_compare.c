/* recipe compare: held against the tested formulas, with the way back inside one. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_recipe.h"
#include "own_recipe.h"

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
static bool find_repair(const struct recipe *recipe, const struct compare_facts *facts,
			const struct food *food, const struct held *held, struct repair *out,
			struct error *err)
{
	const struct formula *formula = food ? formula_set_find(held->set, food, "") : NULL;
	return held->comparison->verdict == VERDICT_TESTED ||
	       recipe_repair(held->set, recipe, facts, formula, out, err);
}

static int answer(struct invocation *inv, const struct held *held, const struct repair *repair)
{
	int status = verdict_exit_code(held->comparison->verdict);
	if (flag(inv, "json"))
		return answer_json(inv, comparison_json(held->set, held->comparison, repair),
				   status);
	struct page page = answer_page(inv);
	comparison_text(&page, held->set, held->comparison, repair);
	return status;
}

static int compare(struct invocation *inv, const struct recipe *recipe, struct repair *repair)
{
	struct compare_facts facts;
	const struct food *food;
	struct held held;
	if (!read_facts(inv, &facts) || !read_formula(inv, &food))
		return command_failed(inv);
	bool ok = recipe_hold(recipe, &facts, food, &held, inv->err) &&
		  find_repair(recipe, &facts, food, &held, repair, inv->err);
	int status = ok ? answer(inv, &held, repair) : command_failed(inv);
	held_release(&held);
	return status;
}

static int out_of_memory(struct invocation *inv)
{
	error_failed(inv->err, "recipe compare: out of memory; close other programs and try again");
	return command_failed(inv);
}

int recipe_compare_command(struct invocation *inv)
{
	struct recipe recipe;
	if (!recipe_find(inv, &recipe))
		return command_failed(inv);
	struct repair *repair = calloc(1, sizeof *repair);
	int status = repair ? compare(inv, &recipe, repair) : out_of_memory(inv);
	if (repair)
		recipe_release(&repair->recipe);
	free(repair);
	recipe_release(&recipe);
	return status;
}
