/* sheet: one page for the kitchen wall, of a batch or of what is to be put up. */
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "page_file.h"
#include "sheet.h"

struct sheet_maker *sheet_new(struct invocation *inv)
{
	struct sheet_maker *maker = calloc(1, sizeof *maker);
	if (!maker) {
		error_failed(inv->err, "sheet: out of memory; close other programs and try again");
		return NULL;
	}
	maker->sheet = (struct paper_sheet){.title = "",
					    .batch = "",
					    .day = "",
					    .makes = "",
					    .note = "",
					    .ingredients = maker->ingredients,
					    .reasons = maker->reasons,
					    .fixed = maker->fixed,
					    .steps = maker->steps,
					    .loads = maker->loads,
					    .directions = maker->directions,
					    .sources = maker->sources,
					    .edition = reference_edition()->edition};
	return maker;
}

void sheet_release(struct sheet_maker *maker)
{
	for (size_t i = 0; maker && i < maker->texts_n; i++)
		free(maker->texts[i]);
	free(maker);
}

const char *sheet_keep(struct sheet_maker *maker, const char *format, ...)
{
	va_list args;
	char *text = NULL;
	if (maker->texts_n < SHEET_TEXTS_MAX) {
		va_start(args, format);
		if (vasprintf(&text, format, args) < 0)
			text = NULL;
		va_end(args);
	}
	if (!text) {
		maker->lost = true;
		return "";
	}
	maker->texts[maker->texts_n++] = text;
	return text;
}

/* Is it the code of a batch, "26-041"? No food begins with a figure. */
static bool is_batch(const struct invocation *inv)
{
	const char *word = inv->operands[0];
	size_t year = strspn(word, "0123456789");
	return inv->operands_n == 1 && year > 0 && word[year] == '-' && word[year + 1] >= '0' &&
	       word[year + 1] <= '9';
}

/* A batch has been decided: what would decide anew is refused. */
static bool batch_options(struct invocation *inv)
{
	static const char *const fitting[] = {"in", "scale", "jars", "out", "json"};
	for (size_t i = 0; i < inv->given_n; i++) {
		bool fits = command_option(NULL, inv->given[i].name) != NULL &&
			    (strcmp(inv->given[i].name, "no-color") == 0);
		for (size_t k = 0; k < sizeof fitting / sizeof *fitting && !fits; k++)
			fits = strcmp(inv->given[i].name, fitting[k]) == 0;
		if (!fits)
			return error_usage(inv->err,
					   "%s: batch %s is decided already; leave it out, or name "
					   "the food instead",
					   inv->given[i].name, inv->operands[0]);
	}
	return true;
}

static int answer(struct invocation *inv, struct sheet_maker *maker, int status)
{
	struct page_file file;
	sheet_sources(maker);
	if (maker->lost) {
		error_failed(inv->err, "sheet: it has too much for one page, or there is no memory "
				       "for it; shorten the recipe");
		return command_failed(inv);
	}
	if (flag(inv, "json"))
		return answer_json(inv, sheet_json(&maker->sheet), status);
	if (!page_open(inv, &file))
		return command_failed(inv);
	sheet_html(file.out, &maker->sheet);
	return page_close(inv, &file, true) ? status : command_failed(inv);
}

/* --- What is to be put up --- */

static bool read_wish(struct invocation *inv, const struct asked *asked, struct plan_wish *wish)
{
	const char *jars = option(inv, "jars");
	struct yield yield = {.jars = 0};
	if (jars && option(inv, "have"))
		return error_usage(inv->err,
				   "sheet: --jars and --have say the same; leave one out");
	if (jars && !count_parse("jars", jars, PLAN_JARS_MAX, &wish->jars, inv->err))
		return false;
	if (!plan_have_read(inv, asked, &yield))
		return false;
	if (yield.jars > 0)
		wish->jars = yield.jars;
	wish->until = CLOCK_MIDNIGHT;
	if (option(inv, "start") && !plan_start_read(inv, wish))
		return false;
	return plan_load_read(inv, asked, wish);
}

/* Without a number of jars the steps of one load are all there is to plan. */
static bool put_plan(struct invocation *inv, const struct asked *asked,
		     const struct decision *decision, struct sheet_maker *maker)
{
	struct plan_wish wish = {.jars = 0};
	struct plan plan;
	char words[WORDS_BUFFER];
	const struct jar_choice *jar = &asked->request.jar;
	if (!read_wish(inv, asked, &wish))
		return false;
	bool counted = wish.jars > 0;
	if (!counted)
		wish.jars = wish.jars_per_load = 1;
	if (!plan_make(reference_edition(), decision, jar, asked->request.canner == CANNER_STEAM,
		       &wish, &plan, inv->err))
		return false;
	sheet_plan_steps(maker, &plan);
	if (!counted)
		return true;
	sheet_plan_loads(maker, &plan, option(inv, "start") != NULL);
	maker->sheet.makes = sheet_keep(maker, "%d %s", wish.jars,
					jar_words(words, sizeof words, reference_edition(), jar));
	return true;
}

static void comparison_reasons(struct sheet_maker *maker, const struct comparison *comparison)
{
	maker->sheet.unclear = comparison->verdict == VERDICT_UNCLEAR;
	for (size_t i = 0; i < comparison->findings_n; i++) {
		const struct compare_finding *f = &comparison->findings[i];
		if (f->level == LEVEL_REFUSE || f->level == LEVEL_ASK)
			sheet_reason(maker, f->text, f->from);
	}
}

/* What could be meant, in one item: there may be many. */
static void candidates(struct sheet_maker *maker, const struct food_match *match)
{
	const char *all = "";
	if (match->kind == MATCH_ONE || match->foods_n == 0)
		return;
	for (size_t i = 0; i < match->foods_n; i++)
		all = sheet_keep(maker, "%s%s%s", all, *all ? ", " : "", match->foods[i]->slug);
	sheet_reason(maker, sheet_keep(maker, "Is it one of these? %s", all), NULL);
}

static bool put_recipe(struct invocation *inv, const struct asked *asked,
		       const struct own_recipe *own, struct sheet_maker *maker)
{
	char words[ARGUMENT_MAX];
	bool found;
	const struct food_match *match = &asked->request.food;
	if (own->held.comparison) {
		maker->sheet.title = sheet_keep(maker, "%s", own->name);
		return sheet_own_recipe(inv, own->name, maker, &found);
	}
	if (match->kind == MATCH_ONE) {
		maker->sheet.title = match->foods[0]->title;
		return sheet_formula(inv, match->foods[0], maker);
	}
	maker->sheet.title =
	    operand_words(inv, words, sizeof words) ? sheet_keep(maker, "%s", words) : "";
	return true;
}

static bool put_wanted(struct invocation *inv, const struct asked *asked,
		       const struct own_recipe *own, struct sheet_maker *maker, int *status)
{
	struct decision decision;
	if (own_recipe_stops(own)) {
		comparison_reasons(maker, own->held.comparison);
		*status = verdict_exit_code(own->held.comparison->verdict);
		return put_recipe(inv, asked, own, maker);
	}
	decide(reference_edition(), &asked->request, &decision);
	*status = verdict_exit_code(decision.verdict);
	sheet_decision(maker, &asked->request, &decision);
	candidates(maker, &asked->request.food);
	if (decision.verdict == VERDICT_TESTED && !put_plan(inv, asked, &decision, maker))
		return false;
	return put_recipe(inv, asked, own, maker);
}

static bool sheet_wanted(struct invocation *inv, struct sheet_maker *maker, int *status)
{
	struct asked asked;
	struct own_recipe own;
	if (!asked_read(inv, "empty-jars", &asked) || !plan_canner_settle(inv, &asked))
		return false;
	bool ok =
	    own_recipe_find(inv, &asked, &own) && put_wanted(inv, &asked, &own, maker, status);
	own_recipe_release(&own);
	return ok;
}

static int run(struct invocation *inv)
{
	int status = STATUS_DONE;
	if (!operands_between(inv, 1, 32, "BATCH, FOOD or RECIPE"))
		return command_failed(inv);
	if (flag(inv, "json") && option(inv, "out")) {
		error_usage(inv->err, "sheet: --out is for the page and --json makes a line; say "
				      "one");
		return command_failed(inv);
	}
	struct sheet_maker *maker = sheet_new(inv);
	if (!maker)
		return command_failed(inv);
	bool ok = is_batch(inv) ? batch_options(inv) && sheet_batch(inv, maker)
				: sheet_wanted(inv, maker, &status);
	status = ok ? answer(inv, maker, status) : command_failed(inv);
	sheet_release(maker);
	return status;
}

static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    OWN_RECIPE_OPTIONS,
    {"empty-jars", "sterile|clean", "state of the empty jars"},
    PLAN_AMOUNT_OPTIONS,
    {"start", "HH:MM", "when the first load goes on; without it the sheet has no times of day"},
    {"in", "SYSTEM",
     "the measures of the recipe: us, imperial, canada, australia, new-zealand, "
     "metric, or several of them with commas; those of your kitchen if not said"},
    {"scale", "N", "the recipe times this: 1/2, 3"},
    OPTION_OUT,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright sheet pickled-beets --canner steam --jar pint --vinegar 5% --elevation 880m "
     "--jars 14 --out beets.html",
     "recipe, process, loads and boxes for the seals, on one page"},
    {"jarwright sheet 26-041 --in metric --out sheet.html", "the same of a batch in the log"},
    EXAMPLES_END,
};

const struct command command_sheet = {
    .name = "sheet",
    .synopsis = "BATCH|FOOD [--canner KIND --jar JAR] [--jars N] [--in SYSTEM] [--out FILE]",
    .summary = "one page for the wall: recipe, process, loads, seal check",
    .description =
	"Makes one page of a batch, or of a food or a recipe of your own, decided as the command "
	"check does: the recipe in your measures, the process at your elevation, what must not be "
	"changed, the steps and loads, and boxes for the seal check. Without a tested process the "
	"page says 'not for the shelf' with the reasons, and has no time; the exit code is that "
	"of check.",
    .options = options,
    .examples = examples,
    .run = run,
};
