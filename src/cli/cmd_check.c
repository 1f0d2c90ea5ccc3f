/* check: may this food be processed so? */
#include "cli.h"
#include "jarwright/render_recipe.h"
#include "own_recipe.h"
#include "request.h"

static const struct option_spec options[] = {
    REQUEST_OPTIONS, OWN_RECIPE_OPTIONS, {"jars", "sterile|clean", "state of the empty jars"},
    OPTION_JSON,     OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright check applesauce --canner steam --jar pint --elevation 880m",
     "the process, or why there is none"},
    {"jarwright check pickled-beets --canner steam --jar pint --vinegar 5%",
     "with the strength of the vinegar, at the elevation of your kitchen"},
    {"jarwright check courgettes --canner boiling-water",
     "a food by its everyday name; here refused, with what is allowed instead"},
    {"jarwright check peaches --canner oven", "why an oven is no canner"},
    {"jarwright check 'plum chutney' --canner boiling-water --jar pint --vinegar 5%",
     "a recipe of your own, by the process of the formula it is inside of"},
    EXAMPLES_END,
};

static int answer(struct invocation *inv, const struct asked *asked, const struct own_recipe *own)
{
	const struct reference *ref = reference_edition();
	struct decision decision;
	decide(ref, &asked->request, &decision);
	int status = verdict_exit_code(decision.verdict);
	if (flag(inv, "json"))
		return answer_json(
		    inv, with_own_recipe(decision_json(ref, &asked->request, &decision), own),
		    status);
	struct page page = answer_page(inv);
	decision_text(&page, ref, &asked->request, &decision, asked->elevation.typed);
	if (own->held.comparison)
		checked_recipe_text(&page, own->name, own->held.comparison);
	return status;
}

static int run(struct invocation *inv)
{
	struct asked asked;
	struct own_recipe own;
	if (!asked_read(inv, "jars", &asked))
		return command_failed(inv);
	int status = !own_recipe_find(inv, &asked, &own) ? command_failed(inv)
		     : own_recipe_stops(&own)            ? own_recipe_answer(inv, &asked, &own)
							 : answer(inv, &asked, &own);
	own_recipe_release(&own);
	return status;
}

const struct command command_check = {
    .name = "check",
    .synopsis = "FOOD --canner KIND --jar JAR [--pack P] [--elevation E] [--vinegar STRENGTH]",
    .summary = "may this food be processed so, and how long",
    .description =
	"Gives exactly one verdict with all its reasons: tested (and then the published process), "
	"refused, untested or unclear. A recipe of your own gets its formula's process only if the "
	"comparison with the tested formulas finds it inside one. Whatever is not said and decides "
	"is asked for; nothing is "
	"assumed. The exit code is 0 for tested, 3 refused, 4 untested, 5 unclear.",
    .options = options,
    .examples = examples,
    .run = run,
};
