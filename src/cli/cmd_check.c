/* check: may this food be processed so? */
#include "cli.h"
#include "request.h"

static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    {"jars", "sterile|clean", "state of the empty jars"},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright check applesauce --canner steam --jar pint --elevation 880m",
     "the process, or why there is none"},
    {"jarwright check pickled-beets --canner steam --jar pint --vinegar 5%",
     "with the strength of the vinegar, at the elevation of your kitchen"},
    {"jarwright check courgettes --canner boiling-water",
     "a food by its everyday name; here refused, with what is allowed instead"},
    {"jarwright check peaches --canner oven", "why an oven is no canner"},
    EXAMPLES_END,
};

static int run(struct invocation *inv)
{
	const struct reference *ref = reference_edition();
	struct asked asked;
	struct decision decision;
	if (!asked_read(inv, "jars", &asked))
		return command_failed(inv);
	decide(ref, &asked.request, &decision);
	int status = verdict_exit_code(decision.verdict);
	if (flag(inv, "json"))
		return answer_json(inv, decision_json(ref, &asked.request, &decision), status);
	struct page page = answer_page(inv);
	decision_text(&page, ref, &asked.request, &decision, asked.elevation.typed);
	return status;
}

const struct command command_check = {
    .name = "check",
    .synopsis = "FOOD --canner KIND --jar JAR [--pack P] [--elevation E] [--vinegar STRENGTH]",
    .summary = "may this food be processed so, and how long",
    .description =
	"Gives exactly one verdict with all its reasons: tested (and then the published process), "
	"refused, untested or unclear. Whatever is not said and decides is asked for; nothing is "
	"assumed. The exit code is 0 for tested, 3 refused, 4 untested, 5 unclear.",
    .options = options,
    .examples = examples,
    .run = run,
};
