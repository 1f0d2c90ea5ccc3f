/* plan: check, then jars, loads and hours. */
#include <string.h>

#include "cli.h"
#include "jarwright/plan.h"
#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "own_recipe.h"
#include "plan_wish.h"
#include "request.h"

static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    OWN_RECIPE_OPTIONS,
    {"empty-jars", "sterile|clean", "state of the empty jars"},
    PLAN_AMOUNT_OPTIONS,
    {"start", "HH:MM", "when the first load goes on; now if not said"},
    {"until", "HH:MM", "when the last load should be out; midnight if not said"},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright plan applesauce --canner steam --jar pint --jars 20 --elevation 880m",
     "the loads for 20 jars, hour by hour from now"},
    {"jarwright plan beets --canner dial-gauge --jar pint --have 9kg --elevation 0ft",
     "how many jars 9 kg make, and what is left over"},
    EXAMPLES_END,
};

static bool read_times(struct invocation *inv, struct plan_wish *wish)
{
	const char *until = option(inv, "until");
	wish->until = CLOCK_MIDNIGHT;
	if ((until && !clock_parse("until", until, &wish->until, inv->err)) ||
	    !plan_start_read(inv, wish))
		return false;
	if (wish->until > wish->start)
		return true;
	return error_usage(inv->err,
			   "until: %02d:%02d is not after the start at %02d:%02d; type a later "
			   "time of the same day, at most 24:00",
			   wish->until / 60, wish->until % 60, wish->start / 60, wish->start % 60);
}

static bool read_jars(struct invocation *inv, struct plan_wish *wish)
{
	const char *jars = option(inv, "jars"), *have = option(inv, "have");
	if ((jars != NULL) == (have != NULL))
		return error_usage(inv->err,
				   "plan: how much is there to put up? say either --jars N or "
				   "--have WEIGHT");
	return !jars || count_parse("jars", jars, PLAN_JARS_MAX, &wish->jars, inv->err);
}

/* Her canner by its name, if it is what says how many jars a load has. */
static const char *load_of(struct invocation *inv, const struct asked *asked)
{
	return asked->own_canner && !option(inv, "holds") && !option(inv, "holds-jars")
		   ? asked->kitchen_canner.name
		   : NULL;
}

/* plan: NULL if the verdict is not tested. yield: NULL if she said how many jars. */
static int answer(struct invocation *inv, const struct asked *asked, const struct own_recipe *own,
		  const struct decision *decision, const struct plan *plan,
		  const struct yield *yield)
{
	const struct reference *ref = reference_edition();
	const struct request *rq = &asked->request;
	int status = verdict_exit_code(decision->verdict);
	if (flag(inv, "json")) {
		json_t *json = with_own_recipe(decision_json(ref, rq, decision), own);
		return answer_json(
		    inv, with_member(json, "plan", plan ? plan_json(plan, yield) : json_null()),
		    status);
	}
	struct page page = answer_page(inv);
	decision_text(&page, ref, rq, decision, asked->elevation.typed);
	if (own->held.comparison)
		checked_recipe_text(&page, own->name, own->held.comparison);
	if (!plan)
		return status;
	char jars[WORDS_BUFFER];
	const struct plan_subject subject = {.jars = jar_words(jars, sizeof jars, ref, &rq->jar),
					     .canner = load_of(inv, asked),
					     .yield = yield};
	page_blank(&page);
	plan_text(&page, ref, plan, &subject);
	return status;
}

static int make_plan(struct invocation *inv, const struct asked *asked,
		     const struct own_recipe *own, struct plan_wish *wish)
{
	const struct reference *ref = reference_edition();
	struct decision decision;
	struct plan plan;
	struct yield yield;
	decide(ref, &asked->request, &decision);
	if (decision.verdict != VERDICT_TESTED)
		return answer(inv, asked, own, &decision, NULL, NULL);
	if (!plan_have_read(inv, asked, &yield))
		return command_failed(inv);
	if (yield.jars > 0)
		wish->jars = yield.jars;
	bool steam = asked->request.canner == CANNER_STEAM;
	if (!plan_make(ref, &decision, &asked->request.jar, steam, wish, &plan, inv->err))
		return command_failed(inv);
	return answer(inv, asked, own, &decision, &plan, yield.jars > 0 ? &yield : NULL);
}

static int run(struct invocation *inv)
{
	struct asked asked;
	struct own_recipe own;
	struct plan_wish wish = {.jars = 0};
	if (!asked_read(inv, "empty-jars", &asked) || !read_times(inv, &wish) ||
	    !read_jars(inv, &wish) || !plan_canner_settle(inv, &asked) ||
	    !plan_load_read(inv, &asked, &wish))
		return command_failed(inv);
	int status = !own_recipe_find(inv, &asked, &own) ? command_failed(inv)
		     : own_recipe_stops(&own)            ? own_recipe_answer(inv, &asked, &own)
							 : make_plan(inv, &asked, &own, &wish);
	own_recipe_release(&own);
	return status;
}

const struct command command_plan = {
    .name = "plan",
    .synopsis = "FOOD --jars N|--have WEIGHT --canner KIND --jar JAR [OPTION...]",
    .summary = "jars, canner loads and hours, until the seal check",
    .description =
	"First checks, as the command check does, a recipe of your own too; where there is no "
	"tested process there is no "
	"plan, and the answer and exit code are those of check. Then gives loads and a timetable. "
	"Every duration is a published one; what is not published is left out, and said.",
    .options = options,
    .examples = examples,
    .run = run,
};
