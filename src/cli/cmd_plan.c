/* plan: check, then jars, loads and hours. */
#include <string.h>

#include "cli.h"
#include "jarwright/plan.h"
#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "own_recipe.h"
#include "request.h"

#define MIDNIGHT (24 * 60)

static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    OWN_RECIPE_OPTIONS,
    {"empty-jars", "sterile|clean", "state of the empty jars"},
    {"jars", "N", "how many jars to make"},
    {"have", "WEIGHT", "what you have instead, with its unit: 20lb, 9kg"},
    {"holds-jars", "N", "jars of this size that one load of your canner takes"},
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

/* "9:05" or "21:30", also "24:00": minutes since midnight. */
static bool clock_parse(const char *what, const char *text, int *out, struct error *err)
{
	int part[2] = {0, 0};
	size_t n = 0, digits = 0;
	for (const char *c = text; *c; c++) {
		if (*c == ':' && n == 0 && digits > 0) {
			n = 1;
			digits = 0;
		} else if (*c >= '0' && *c <= '9' && digits < 2) {
			part[n] = part[n] * 10 + (*c - '0');
			digits++;
		} else {
			n = 2; /* not a time */
			break;
		}
	}
	*out = part[0] * 60 + part[1];
	if (n == 1 && digits == 2 && part[1] < 60 && *out <= MIDNIGHT)
		return true;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	return error_usage(err, "%s: '%s' is no time of day; type it as 9:00 or 21:30", what,
			   shown);
}

static bool read_start(struct invocation *inv, struct plan_wish *wish)
{
	const char *start = option(inv, "start"), *until = option(inv, "until");
	wish->until = MIDNIGHT;
	if (until && !clock_parse("until", until, &wish->until, inv->err))
		return false;
	if (start)
		return clock_parse("start", start, &wish->start, inv->err) &&
		       (wish->start < MIDNIGHT ||
			error_usage(inv->err, "start: 24:00 is the end of the day; type 0:00"));
	struct tm now;
	if (!localtime_r(&inv->now, &now))
		return error_failed(inv->err, "start: the clock cannot be read; say --start HH:MM");
	wish->start = now.tm_hour * 60 + now.tm_min;
	return true;
}

static bool read_times(struct invocation *inv, struct plan_wish *wish)
{
	if (!read_start(inv, wish))
		return false;
	if (wish->until > wish->start)
		return true;
	return error_usage(inv->err,
			   "until: %02d:%02d is not after the start at %02d:%02d; type a later "
			   "time of the same day, at most 24:00",
			   wish->until / 60, wish->until % 60, wish->start / 60, wish->start % 60);
}

/* --have WEIGHT in jars of the food that was found tested; jars 0 if it was not given. */
static bool read_have(struct invocation *inv, const struct asked *asked, struct yield *yield)
{
	bool given;
	struct rational lb;
	*yield = (struct yield){.jars = 0};
	if (!harvest_weight(inv, &given, &lb))
		return false;
	if (!given)
		return true;
	if (!plan_yield(reference_edition(), asked->request.food.foods[0], &asked->request.jar, lb,
			yield))
		return error_usage(inv->err,
				   "have: no publication says how many jars a weight of this "
				   "food makes; say --jars N instead");
	if (yield->jars < 1)
		return error_usage(inv->err,
				   "have: that is less than one jar; type more, or smaller "
				   "jars");
	return true;
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

/* A kind of canner of which the kitchen has one is that one. */
static bool settle_canner(struct invocation *inv, struct asked *asked)
{
	struct request *rq = &asked->request;
	struct kitchen kitchen;
	if (asked->own_canner || rq->canner_choice != CHOICE_CANNER)
		return true;
	if (!invocation_kitchen(inv, &kitchen))
		return false;
	const struct kitchen_canner *only = only_canner(&kitchen, rq->canner);
	if (!only)
		return true;
	asked->own_canner = true;
	asked->kitchen_canner = *only;
	if (rq->holds_quarts == 0)
		rq->holds_quarts = only->holds_quarts;
	return true;
}

/* Jars in a load: as said, else as the kitchen's canner has it, else the published load. */
static bool read_load(struct invocation *inv, const struct asked *asked, struct plan_wish *wish)
{
	const char *holds = option(inv, "holds-jars");
	const struct request *rq = &asked->request;
	if (holds)
		return count_parse("holds-jars", holds, KITCHEN_HOLDS_MAX, &wish->jars_per_load,
				   inv->err);
	if (rq->jar.by_volume || !rq->jar.stated)
		return true;
	if (rq->jar.jar == JAR_QUART)
		wish->jars_per_load = rq->holds_quarts;
	else if (asked->own_canner)
		wish->jars_per_load = canner_load(&asked->kitchen_canner, rq->jar.jar);
	return true;
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
	if (!read_have(inv, asked, &yield))
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
	    !read_jars(inv, &wish) || !settle_canner(inv, &asked) || !read_load(inv, &asked, &wish))
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
