#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

/* What is to be done with the recipe, for one formula and one scale. */
struct plan {
	struct judge judge;
	double scale;
	size_t changes;
};

/* Everything a repair is worked out from. */
struct bench {
	const struct formula_set *set;
	const struct recipe *recipe;
	const struct compare_facts *facts;
	struct items items;
	struct pairing pairing;
	const struct formula *formula;
};

static bool no_memory(struct error *err)
{
	return error_failed(err, "repair: out of memory; close other programs and try again");
}

/* The first line of the recipe that is this line of the formula, or COMPARE_NO_LINE. */
static size_t first_line(const struct judge *j, size_t printed)
{
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		if (j->pairing->to[i] == (int)printed)
			return i;
	return COMPARE_NO_LINE;
}

static bool must_change(const struct plan *plan, size_t printed)
{
	const struct judge *j = &plan->judge;
	const struct item *item = &j->printed[printed];
	if (item->gone)
		return false;
	if (j->bad_printed[printed])
		return true;
	for (size_t i = 0; i < j->items->recipe->lines_n; i++)
		if (j->pairing->to[i] == (int)printed && j->bad_line[i])
			return true;
	return false;
}

/* Does this line of the recipe go, or give way to a new one? */
static bool must_go(const struct plan *plan, size_t line)
{
	const int at = plan->judge.pairing->to[line];
	return at < 0 ? plan->judge.bad_line[line] : must_change(plan, (size_t)at);
}

static size_t count_changes(const struct plan *plan)
{
	size_t n = 0;
	for (size_t f = 0; f < plan->judge.formula->lines_n; f++)
		if (must_change(plan, f) && first_line(&plan->judge, f) == COMPARE_NO_LINE)
			n++;
	for (size_t i = 0; i < plan->judge.items->recipe->lines_n; i++)
		n += must_go(plan, i);
	return n;
}

static void plan_make(const struct bench *b, double scale, struct plan *out)
{
	out->judge = (struct judge){.set = b->set,
				    .items = &b->items,
				    .facts = b->facts,
				    .formula = b->formula,
				    .pairing = &b->pairing,
				    .scale = {true, scale, scale}};
	out->scale = scale;
	judge_all(&out->judge);
	out->changes = count_changes(out);
}

/* Takes the plan for this scale if it is the first (*any) or has fewer changes. */
static void plan_try(const struct bench *b, struct span span, bool *any, struct plan *best)
{
	struct plan plan;
	double scale = (span.least + span.most) / 2;
	if (!span.known || !(scale > 1e-6 && scale < 1e6))
		return;
	plan_make(b, scale, &plan);
	if (!*any || plan.changes < best->changes)
		*best = plan;
	*any = true;
}

/*
 * The size of formula that leaves most of the recipe as it is: that of its main produce, or
 * of any other line; the produce's where there is no difference, and the formula as printed
 * where nothing tells.
 */
static void best_plan(const struct bench *b, struct plan *best)
{
	const struct item *printed = formula_items(b->set, b->formula);
	bool any = false;
	plan_make(b, 1, best);
	plan_try(b, pairing_scale(b->set, &b->items, b->formula, &b->pairing), &any, best);
	for (size_t f = 0; f < b->formula->lines_n; f++)
		if (printed[f].role <= ROLE_SUGAR && !printed[f].gone)
			plan_try(b, span_of(&b->items, b->pairing.to, (int)f, &printed[f]), &any,
				 best);
}

/*
 * Is it still the cook's recipe? Further off, the honest answer is the formula itself.
 * Ours, not published: more of its foods must stay (in whatever amount) than come and go, the
 * main produce among them, and that in no other size.
 */
#define NEAR_DISTANCE 0.5
#define RESIZE_MOST   2.0

/* Does the plan leave about as much of the main produce as the cook has? */
static bool keeps_size(const struct bench *b, const struct plan *plan)
{
	const struct span own = pairing_scale(b->set, &b->items, b->formula, &b->pairing);
	return !own.known ||
	       (plan->scale <= own.most * RESIZE_MOST && plan->scale * RESIZE_MOST >= own.least);
}

static bool is_near(const struct bench *b, const struct plan *plan)
{
	const struct judge *j = &plan->judge;
	size_t stay = 0, come_or_go = 0;
	bool produce = false;
	for (size_t i = 0; i < b->recipe->lines_n; i++) {
		const int at = b->pairing.to[i];
		if (b->items.item[i].words.is & IS_DRY_SPICE)
			continue;
		if (at < 0) {
			come_or_go += j->bad_line[i];
			continue;
		}
		stay++;
		produce |= j->printed[at].role == ROLE_MAIN || j->printed[at].role == ROLE_LOW_ACID;
	}
	for (size_t f = 0; f < b->formula->lines_n; f++)
		come_or_go += must_change(plan, f) && first_line(j, f) == COMPARE_NO_LINE;
	return produce && stay > come_or_go && keeps_size(b, plan) &&
	       b->pairing.distance <= NEAR_DISTANCE;
}

/* --- The changed recipe --- */

static struct repair_step *add_step(struct repair *out, size_t line, const char *ingredient)
{
	if (out->steps_n == REPAIR_STEPS_MAX)
		return NULL;
	struct repair_step *step = &out->steps[out->steps_n++];
	*step = (struct repair_step){.line = line};
	size_t length = strnlen(ingredient, sizeof step->ingredient - 1);
	memcpy(step->ingredient, ingredient, length);
	step->ingredient[length] = '\0';
	text_drop_partial(step->ingredient);
	return step;
}

static void old_grams(const struct bench *b, size_t line, struct repair_step *step)
{
	const struct grams *grams = item_grams(&b->items, line);
	step->from_known = grams->known;
	step->from_g = grams->known ? (grams->least + grams->most) / 2 : 0;
}

static void new_grams(const struct bench *b, const struct repair *out, struct repair_step *step)
{
	struct rational least, most;
	step->to_known =
	    recipe_line_grams(b->set->tables, &out->recipe, out->recipe.lines_n - 1, &least, &most);
	if (step->to_known)
		step->to_g = (rational_double(least) + rational_double(most)) / 2;
}

static bool step_drop(const struct bench *b, size_t line, struct repair *out)
{
	struct repair_step *step = add_step(out, line, b->items.item[line].name);
	char shown[TEXT_SHOWN_SIZE];
	if (!step)
		return false;
	old_grams(b, line, step);
	step->to_known = true;
	text_show(b->recipe->lines[line].text, (size_t)-1, shown);
	snprintf(step->text, sizeof step->text, "Leave out: %s.", shown);
	return true;
}

/* The cook's words, but for acid and for words that will not do. */
static bool may_keep_words(const struct plan *plan, size_t line, const struct item *printed)
{
	return printed->role != ROLE_VINEGAR && printed->role != ROLE_CITRUS &&
	       !plan->judge.bad_words[line];
}

/* "Use 1 cup vinegar, 5 %, in place of: 1 pint vinegar." */
static void step_words(const struct new_line *made, const struct recipe_line *old,
		       struct repair_step *step)
{
	const char *words = made->line.text + strlen(made->amount);
	char shown[TEXT_SHOWN_SIZE];
	text_show(old ? old->text : "", (size_t)-1, shown);
	const size_t n = strlen(shown);
	const bool ended = n > 0 && shown[n - 1] == '.';
	snprintf(step->text, sizeof step->text, "%s %s%s%s%s%s%s%s%s", old ? "Use" : "Add",
		 made->amount, *made->about ? " (" : "", made->about, *made->about ? ")" : "",
		 words, old ? ", in place of: " : "", shown, ended ? "" : ".");
}

/* Puts a new line of the formula's where `line` stood, or at the end. */
static bool step_set(const struct bench *b, const struct plan *plan, size_t printed, size_t line,
		     struct repair *out)
{
	const struct item *item = &plan->judge.printed[printed];
	const struct recipe_line *old = line == COMPARE_NO_LINE ? NULL : &b->recipe->lines[line];
	bool keep = old && may_keep_words(plan, line, item);
	struct repair_step *step = add_step(out, line, old ? old->read.ingredient : item->name);
	struct new_line made;
	if (!step ||
	    !new_line_make(&plan->judge, (int)printed, keep ? old : NULL, plan->scale, &made))
		return false;
	made.line.number = old ? old->number : (int)out->recipe.lines_n + 1;
	out->recipe.lines[out->recipe.lines_n++] = made.line;
	if (old)
		old_grams(b, line, step);
	else
		step->from_known = true;
	new_grams(b, out, step);
	step_words(&made, old, step);
	return true;
}

/* A method that adds or purees is not the formula's. */
static bool step_method(struct repair *out)
{
	struct repair_step *step = add_step(out, COMPARE_NO_LINE, "method");
	if (!step)
		return false;
	out->recipe.method[0] = '\0';
	snprintf(step->text, sizeof step->text,
		 "Make it by the formula's own steps, not by the method you have.");
	return true;
}

/* The steps and the recipe they make. False: one of them cannot be written. */
static bool carry_out(const struct bench *b, const struct plan *plan, struct repair *out)
{
	bool done[FORMULA_LINES_MAX] = {false};
	for (size_t i = 0; i < b->recipe->lines_n; i++) {
		const int at = b->pairing.to[i];
		bool set = at >= 0 && !done[at] && must_change(plan, (size_t)at);
		if (!must_go(plan, i)) {
			out->recipe.lines[out->recipe.lines_n++] = b->recipe->lines[i];
			continue;
		}
		if (set ? !step_set(b, plan, (size_t)at, i, out) : !step_drop(b, i, out))
			return false;
		if (set)
			done[at] = true;
	}
	for (size_t f = 0; f < b->formula->lines_n; f++)
		if (must_change(plan, f) && first_line(&plan->judge, f) == COMPARE_NO_LINE &&
		    !step_set(b, plan, f, COMPARE_NO_LINE, out))
			return false;
	return !plan->judge.bad_method || step_method(out);
}

/* The vinegar that the changed recipe asks for. */
static struct compare_facts facts_after(const struct bench *b)
{
	const struct rule *rules = b->set->ref->rules;
	const int32_t least = rules[RULE_VINEGAR_WEAK].limit_milli;
	if (b->facts->vinegar == VINEGAR_LABELLED && b->facts->vinegar_milli_percent >= least &&
	    b->facts->vinegar_milli_percent < rules[RULE_VINEGAR_STRONG].limit_milli)
		return *b->facts;
	return (struct compare_facts){VINEGAR_LABELLED, least};
}

/* An empty recipe of the same name, with room for the old lines and the formula's. */
static bool recipe_begin(const struct bench *b, struct repair *out, struct error *err)
{
	struct recipe *recipe = &out->recipe;
	const char *method = b->recipe->method ? b->recipe->method : "";
	recipe->lines = calloc(b->recipe->lines_n + b->formula->lines_n + 1, sizeof *recipe->lines);
	recipe->method = malloc(strlen(method) + 1);
	if (!recipe->lines || !recipe->method) {
		recipe_release(recipe);
		return no_memory(err);
	}
	memcpy(recipe->name, b->recipe->name, sizeof recipe->name);
	memcpy(recipe->method, method, strlen(method) + 1);
	recipe->system = b->recipe->system;
	return true;
}

static bool is_tested(const struct bench *b, const struct repair *out)
{
	struct comparison again;
	if (out->recipe.lines_n == 0 || out->recipe.lines_n > RECIPE_LINES_MAX)
		return false;
	recipe_compare(b->set, &out->recipe, &out->facts, b->formula, &again);
	return again.verdict == VERDICT_TESTED;
}

/* Carries a plan out and checks it. False: out of memory. */
static bool attempt(const struct bench *b, const struct plan *plan, struct repair *out,
		    struct error *err)
{
	*out = (struct repair){.formula = b->formula, .facts = facts_after(b)};
	if (!recipe_begin(b, out, err))
		return false;
	out->found = carry_out(b, plan, out) && is_tested(b, out);
	if (out->found)
		return true;
	recipe_release(&out->recipe);
	*out = (struct repair){.found = false};
	return true;
}

/* Inside one formula: the fewest changes, if they leave it the cook's recipe. */
static bool repair_for(struct bench *b, const struct formula *formula, struct repair *out,
		       struct error *err)
{
	struct plan plan;
	*out = (struct repair){.found = false};
	b->formula = formula;
	pairing_make(b->set, &b->items, formula, &b->pairing);
	best_plan(b, &plan);
	return !is_near(b, &plan) || attempt(b, &plan, out, err);
}

/* Whichever of the nearest takes fewest changes; of equals the nearer. */
static bool repair_nearest(struct bench *b, const struct comparison *found, struct repair *out,
			   struct error *err)
{
	for (size_t i = 0; i < found->nearest_n; i++) {
		struct repair other;
		if (!repair_for(b, found->nearest[i].formula, &other, err)) {
			recipe_release(&out->recipe);
			*out = (struct repair){.found = false};
			return false;
		}
		if (other.found && (!out->found || other.steps_n < out->steps_n)) {
			recipe_release(&out->recipe);
			*out = other;
		} else {
			recipe_release(&other.recipe);
		}
	}
	return true;
}

bool recipe_repair(const struct formula_set *set, const struct recipe *recipe,
		   const struct compare_facts *facts, const struct formula *formula,
		   struct repair *out, struct error *err)
{
	struct item item[RECIPE_LINES_MAX];
	struct bench b = {.set = set, .recipe = recipe, .facts = facts, .items = {.item = item}};
	struct comparison found;
	*out = (struct repair){.found = false};
	items_make(set, recipe, &b.items);
	if (formula)
		return repair_for(&b, formula, out, err);
	recipe_compare(set, recipe, facts, NULL, &found);
	if (found.verdict == VERDICT_TESTED)
		return repair_for(&b, found.formula, out, err);
	return repair_nearest(&b, &found, out, err);
}
