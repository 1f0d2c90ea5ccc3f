/* A recipe of the cook's own where a food may stand: found, compared, and then decided on. */
#include "own_recipe.h"

#include <stdlib.h>
#include <string.h>

#include "jarwright/render_recipe.h"
#include "jarwright/text.h"

enum meant { MEANT_UNSAID, MEANT_FOOD, MEANT_RECIPE };

static bool read_meant(struct invocation *inv, enum meant *out)
{
	const char *as = option(inv, "as");
	char shown[TEXT_SHOWN_SIZE];
	*out = option(inv, "formula") ? MEANT_RECIPE : MEANT_UNSAID;
	if (!as)
		return true;
	if (strcmp(as, "recipe") == 0) {
		*out = MEANT_RECIPE;
		return true;
	}
	text_show(as, SIZE_MAX, shown);
	if (strcmp(as, "food") != 0)
		return error_usage(inv->err, "as: '%s' is not known; type food or recipe", shown);
	if (*out == MEANT_RECIPE)
		return error_usage(inv->err, "formula: it goes with a recipe of yours; leave out "
					     "--formula, or say --as recipe");
	*out = MEANT_FOOD;
	return true;
}

bool formula_find(const char *words, const struct food **out, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	struct food_match match;
	text_show(words, SIZE_MAX, shown);
	reference_find_food(reference_edition(), words, &match);
	if (match.kind != MATCH_ONE)
		return error_usage(err,
				   "formula: '%s' is not one food of the tables; 'jarwright foods' "
				   "lists them",
				   shown);
	*out = match.foods[0];
	return true;
}

bool formula_option(struct invocation *inv, const struct food **out)
{
	const char *given = option(inv, "formula");
	*out = NULL;
	return !given || formula_find(given, out, inv->err);
}

static bool prepare(struct held *out, struct error *err)
{
	const struct reference *ref = reference_edition();
	size_t size = formula_set_size(ref);
	out->memory = malloc(size);
	out->comparison = calloc(1, sizeof *out->comparison);
	if (!out->memory || !out->comparison)
		return error_failed(err, "formulas: out of memory; close other programs and try "
					 "again");
	out->set = formula_set_prepare(ref, reference_tables_edition(), out->memory, size, err);
	return out->set != NULL;
}

bool recipe_hold(const struct recipe *recipe, const struct compare_facts *facts,
		 const struct food *food, struct held *out, struct error *err)
{
	*out = (struct held){.comparison = NULL};
	if (!prepare(out, err))
		return false;
	const struct formula *formula = food ? formula_set_find(out->set, food, "") : NULL;
	if (food && !formula)
		return error_usage(
		    err, "formula: none is published for %s; leave it out to find the nearest",
		    food->slug);
	recipe_compare(out->set, recipe, facts, formula, out->comparison);
	return true;
}

void held_release(struct held *held)
{
	free(held->comparison);
	free(held->memory);
	*held = (struct held){.comparison = NULL};
}

/*
 * The request becomes one for the formula's food. Tested without a word on the vinegar, each
 * line of it says a strength that is enough: at least the published one.
 */
static void ask_for_formula(struct request *rq, const struct formula *formula)
{
	rq->food = (struct food_match){.kind = MATCH_ONE, .foods = {formula->food}, .foods_n = 1};
	if (rq->vinegar == VINEGAR_UNSTATED && (formula->food->acid_need & ACID_NEED_VINEGAR)) {
		rq->vinegar = VINEGAR_LABELLED;
		rq->vinegar_milli_percent =
		    reference_edition()->rules[RULE_VINEGAR_WEAK].limit_milli;
	}
}

static bool compare(struct invocation *inv, const struct stored_recipe *stored, struct asked *asked,
		    struct own_recipe *out)
{
	const struct compare_facts facts = {asked->request.vinegar,
					    asked->request.vinegar_milli_percent};
	const struct food *food;
	struct recipe recipe;
	if (!formula_option(inv, &food) || !recipe_read(stored->name, stored->system, stored->text,
							stored->length, &recipe, inv->err))
		return false;
	bool ok = recipe_hold(&recipe, &facts, food, &out->held, inv->err);
	recipe_release(&recipe);
	if (!ok)
		return false;
	const struct comparison *c = out->held.comparison;
	if (c->verdict == VERDICT_TESTED && c->formula)
		ask_for_formula(&asked->request, c->formula);
	return true;
}

static bool look_up(struct invocation *inv, const char *name, enum meant meant,
		    struct stored_recipe *stored, bool *found)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	*found = true;
	bool ok = meant == MEANT_RECIPE ? household_recipe(db, name, stored, inv->err)
					: household_find_recipe(db, name, stored, found, inv->err);
	household_close(db);
	return ok;
}

/* What is refused by its name stays so until she says that she means the recipe. */
static bool settle(struct invocation *inv, enum meant meant, const struct stored_recipe *stored,
		   struct asked *asked, struct own_recipe *out)
{
	enum match_kind kind = asked->request.food.kind;
	memcpy(out->name, stored->name, sizeof out->name);
	if (meant == MEANT_RECIPE || kind == MATCH_NONE)
		return compare(inv, stored, asked, out);
	asked->request.recipe = out->name;
	return true;
}

bool own_recipe_find(struct invocation *inv, struct asked *asked, struct own_recipe *out)
{
	char name[ARGUMENT_MAX];
	enum meant meant;
	struct stored_recipe stored = {0};
	bool found;
	*out = (struct own_recipe){.name = ""};
	if (!read_meant(inv, &meant) || !operand_words(inv, name, sizeof name))
		return false;
	if (meant == MEANT_FOOD)
		return true;
	if (!look_up(inv, name, meant, &stored, &found))
		return false;
	bool ok = !found || settle(inv, meant, &stored, asked, out);
	stored_recipe_release(&stored);
	return ok;
}

void own_recipe_release(struct own_recipe *own)
{
	held_release(&own->held);
}

bool own_recipe_stops(const struct own_recipe *own)
{
	return own->held.comparison && own->held.comparison->verdict != VERDICT_TESTED;
}

json_t *with_own_recipe(json_t *answer, const struct own_recipe *own)
{
	json_t *member = *own->name
			     ? checked_recipe_json(own->held.set, own->name, own->held.comparison)
			     : json_null();
	return with_member(answer, "recipe", member);
}

int own_recipe_answer(struct invocation *inv, const struct asked *asked,
		      const struct own_recipe *own)
{
	int status = verdict_exit_code(own->held.comparison->verdict);
	if (flag(inv, "json"))
		return answer_json(
		    inv,
		    with_own_recipe(uncovered_recipe_json(reference_edition(), own->held.set,
							  &asked->request, own->held.comparison),
				    own),
		    status);
	struct page page = answer_page(inv);
	uncovered_recipe_text(&page, own->held.set, own->name, own->held.comparison);
	return status;
}
