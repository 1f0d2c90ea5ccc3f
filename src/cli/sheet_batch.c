/* The sheet of a batch in the log: as it was decided, with its loads as they were. */
#include <string.h>

#include "sheet.h"

/* The decision as it is today, if that is still the batch's own process; else it is not tested. */
static void decide_again(const struct batch_view *view, struct request *rq,
			 struct decision *decision)
{
	const struct batch_record *r = &view->record;
	decision->verdict = VERDICT_UNCLEAR;
	if (!decision_request(reference_edition(), view->decision, rq))
		return;
	rq->elevation_stated = r->elevation_stated;
	rq->elevation_mft = r->elevation_mft;
	decide(reference_edition(), rq, decision);
	if (decision->verdict == VERDICT_TESTED &&
	    (decision->process.minutes != r->minutes || decision->process.psi != r->psi ||
	     decision->process.vent_minutes != r->vent))
		decision->verdict = VERDICT_UNCLEAR;
}

/* As it was stored: the engine's own words then. */
static void stored_reasons(const struct batch_view *view, struct sheet_maker *maker)
{
	size_t i;
	json_t *finding;
	json_array_foreach(json_object_get(view->decision, "findings"), i, finding)
	{
		const char *level = json_string_value(json_object_get(finding, "level"));
		const char *text = json_string_value(json_object_get(finding, "text"));
		if (level && text && (strcmp(level, "refuse") == 0 || strcmp(level, "ask") == 0))
			sheet_reason(maker, text, NULL);
	}
	if (maker->sheet.reasons_n == 0)
		sheet_reason(maker, "It was put up for the cold, not for the shelf.", NULL);
}

static void load_row(const struct batch_view *view, const struct batch_load *load,
		     struct sheet_maker *maker)
{
	char begins[INSTANT_SIZE], out[INSTANT_SIZE];
	int first = 0, last = 0;
	for (size_t i = 0; i < view->jars_n; i++) {
		int number = view->jars[i].number;
		if (view->jars[i].load != load->number)
			continue;
		first = first == 0 || number < first ? number : first;
		last = number > last ? number : last;
	}
	/* Nothing of it is left in this load when all of it was processed again. */
	if (first == 0 || maker->sheet.loads_n == PLAN_JARS_MAX)
		return;
	maker->loads[maker->sheet.loads_n++] = (struct sheet_load){
	    .first = first,
	    .last = last,
	    .begins = sheet_keep(maker, "%s", instant_text(load->started, begins)),
	    .out = sheet_keep(maker, "%s", instant_text(load->out, out)),
	    .outcome = load_outcome_word(load->outcome)};
}

static bool put_recipe(struct invocation *inv, const struct batch_record *r,
		       struct sheet_maker *maker)
{
	bool found = false;
	const struct food *food = *r->food ? reference_food(reference_edition(), r->food) : NULL;
	if (*r->recipe && !sheet_own_recipe(inv, r->recipe, maker, &found))
		return false;
	if (*r->recipe && !found)
		maker->sheet.note = "Your recipe of this batch is no longer kept.";
	return *r->recipe || !food || sheet_formula(inv, food, maker);
}

static bool put_steps(struct invocation *inv, const struct request *rq,
		      const struct decision *decision, struct sheet_maker *maker)
{
	struct plan plan;
	const struct plan_wish wish = {.jars = 1, .jars_per_load = 1, .until = CLOCK_MIDNIGHT};
	if (!plan_make(reference_edition(), decision, &rq->jar, rq->canner == CANNER_STEAM, &wish,
		       &plan, inv->err))
		return false;
	sheet_plan_steps(maker, &plan);
	return true;
}

static bool put_process(struct invocation *inv, const struct batch_view *view,
			struct sheet_maker *maker)
{
	const struct batch_record *r = &view->record;
	struct decision decision = {.food = NULL};
	struct request rq = {.recipe = NULL};
	if (strcmp(r->keep, "shelf") != 0 || r->minutes < 1) {
		stored_reasons(view, maker);
		return true;
	}
	if (r->held) {
		sheet_reason(maker,
			     "Something learned since it was put up, such as its pH or the true "
			     "elevation, takes this batch off the shelf; 'jarwright batch show' "
			     "says what.",
			     NULL);
		return true;
	}
	decide_again(view, &rq, &decision);
	if (decision.verdict != VERDICT_TESTED) {
		sheet_reason(maker,
			     "The process this batch was decided with is not that of today's "
			     "tables at its elevation. Do not process by it: ask check.",
			     NULL);
		return true;
	}
	sheet_decision(maker, &rq, &decision);
	return put_steps(inv, &rq, &decision, maker);
}

static bool put_batch(struct invocation *inv, const struct batch_view *view,
		      struct sheet_maker *maker)
{
	const struct batch_record *r = &view->record;
	const char *jars = option(inv, "jars");
	maker->sheet.title = sheet_keep(maker, "%s", r->title);
	maker->sheet.batch = sheet_keep(maker, "%s", r->code);
	maker->sheet.day = sheet_keep(maker, "%s", r->day);
	maker->sheet.jars = r->jars_n;
	if (jars && !count_parse("jars", jars, PLAN_JARS_MAX, &maker->sheet.jars, inv->err))
		return false;
	if (r->jars_n > 0)
		maker->sheet.makes = sheet_keep(maker, "%d jars", r->jars_n);
	for (size_t i = 0; i < view->loads_n; i++)
		load_row(view, &view->loads[i], maker);
	return put_process(inv, view, maker) && put_recipe(inv, r, maker);
}

bool sheet_batch(struct invocation *inv, struct sheet_maker *maker)
{
	struct batch_view view = {.decision = NULL};
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_batch(db, inv->operands[0], &view, inv->err);
	household_close(db);
	ok = ok && put_batch(inv, &view, maker);
	batch_view_release(&view);
	return ok;
}
