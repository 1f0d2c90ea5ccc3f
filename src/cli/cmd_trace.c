/* trace: what went into it, and what came of it. */
#include <jansson.h>
#include <string.h>

#include "jarwright/text.h"
#include "recall.h"
#include "subcommand.h"

/* What one run of the command works with. */
struct tracing {
	struct household *db;
	struct fault fault;
	char what[RECALL_TEXT_SIZE];
	struct trace_lot lot;
	struct trace_canner canner;
	struct trace back;
	struct touched_jars jars;
	bool has_lot, has_canner, has_back;
};

static bool trace_lot(struct invocation *inv, struct tracing *t, const char *name)
{
	t->fault.kind = FAULT_LOT;
	t->has_lot = true;
	return household_find_lot(t->db, name, &t->fault.subject, inv->err) &&
	       household_trace_lot(t->db, t->fault.subject, &t->lot, inv->err);
}

static bool trace_canner(struct invocation *inv, struct tracing *t, const char *name)
{
	t->fault.kind = FAULT_CANNER;
	t->has_canner = true;
	return fault_period(inv, &t->fault) &&
	       household_find_canner(t->db, name, &t->fault.subject, inv->err) &&
	       household_trace_canner(t->db, t->fault.subject, &t->canner, inv->err);
}

static bool trace_gauge(struct invocation *inv, struct tracing *t, const char *name)
{
	return trace_canner(inv, t, name) &&
	       (strcmp(t->canner.kind, "dial-gauge") == 0 ||
		error_usage(inv->err, "gauge: that canner has no dial gauge; trace the canner"));
}

static bool fits(struct invocation *inv, const char *name)
{
	return strlen(name) < FAULT_NAME_SIZE ||
	       error_usage(inv->err, "trace: that is too long for a name in the log");
}

static bool trace_recipe(struct invocation *inv, struct tracing *t, const char *name)
{
	t->fault.kind = FAULT_RECIPE;
	if (!fits(inv, name))
		return false;
	memcpy(t->fault.name, name, strlen(name) + 1);
	return true;
}

static bool trace_food(struct invocation *inv, struct tracing *t, const char *name)
{
	const char *edition = option(inv, "edition");
	t->fault.kind = FAULT_FOOD;
	if (!fits(inv, name) || !fits(inv, edition ? edition : ""))
		return false;
	fault_food(name, t->fault.name);
	if (edition)
		memcpy(t->fault.edition, edition, strlen(edition) + 1);
	return true;
}

static bool trace_edition(struct invocation *inv, struct tracing *t, const char *name)
{
	t->fault.kind = FAULT_EDITION;
	if (!fits(inv, name))
		return false;
	memcpy(t->fault.edition, name, strlen(name) + 1);
	return true;
}

static bool trace_batch(struct invocation *inv, struct tracing *t, const char *name)
{
	t->fault.kind = FAULT_BATCH;
	t->has_back = true;
	return household_find_batch(t->db, name, &t->fault.subject, inv->err) &&
	       household_trace(t->db, t->fault.subject, 0, &t->back, inv->err);
}

static bool trace_jar(struct invocation *inv, struct tracing *t, const char *name)
{
	int load;
	t->has_back = true;
	return fault_jar(inv, t->db, name, &t->fault) &&
	       household_load_of_jar(t->db, t->fault.subject, t->fault.number, &load, inv->err) &&
	       household_trace(t->db, t->fault.subject, load, &t->back, inv->err);
}

static int answer(struct invocation *inv, const struct tracing *t)
{
	const struct trace_view view = {.what = t->what,
					.lot = t->has_lot ? &t->lot : NULL,
					.canner = t->has_canner ? &t->canner : NULL,
					.back = t->has_back ? &t->back : NULL,
					.jars = &t->jars};
	if (flag(inv, "json"))
		return answer_json(inv, trace_json(&view), STATUS_DONE);
	const struct page page = answer_page(inv);
	trace_text(&page, &view);
	return STATUS_DONE;
}

typedef bool tracer(struct invocation *inv, struct tracing *t, const char *name);

static void say_what(struct invocation *inv, struct tracing *t)
{
	const char *edition = option(inv, "edition");
	const char *name = t->fault.kind == FAULT_FOOD ? t->fault.name : inv->operands[1];
	fault_words(t->what, inv->operands[0], name, inv);
	size_t n = strlen(t->what);
	if (edition)
		snprintf(t->what + n, sizeof t->what - n, ", edition %.100s", edition);
}

static int trace(struct invocation *inv, tracer *read)
{
	struct tracing t = {.fault = {.kind = FAULT_LOT}};
	if (!cli_household(HOUSEHOLD_READ, &t.db, inv->err))
		return command_failed(inv);
	bool ok = read(inv, &t, inv->operands[1]) &&
		  household_touched(t.db, &t.fault, &t.jars, inv->err) &&
		  household_given(t.db, t.jars.jars, t.jars.jars_n, sizeof *t.jars.jars, inv->err);
	household_close(t.db);
	if (ok)
		say_what(inv, &t);
	int status = ok ? answer(inv, &t) : command_failed(inv);
	trace_release(&t.back);
	trace_canner_release(&t.canner);
	touched_jars_release(&t.jars);
	return status;
}

#define RUN(name)                                                                                  \
	static int run_##name(struct invocation *inv)                                              \
	{                                                                                          \
		return trace(inv, trace_##name);                                                   \
	}
RUN(lot)
RUN(canner)
RUN(gauge)
RUN(recipe)
RUN(food)
RUN(edition)
RUN(batch)
RUN(jar)

static const struct option_spec options[] = {
    {"since", "DATE", "with canner and gauge: loads from this day on, 2026-08-01"},
    {"until", "DATE", "with canner and gauge: loads up to this day"},
    {"edition", "EDITION", "with food: decided with this edition of the tables alone: 2026a"},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright trace lot \"wide lids, spring\"", "every jar that this carton closed"},
    {"jarwright trace canner \"the big one\" --since 2026-09-01 --until 2026-09-30",
     "every jar of its loads in September"},
    {"jarwright trace jar 26-041-07", "what went into one jar, and into what it went"},
    EXAMPLES_END,
};

static const struct subcommand subcommands[] = {
    {"lot", "NAME", 2, 2, {"json"}, run_lot},
    {"canner", "NAME", 2, 2, {"since", "until", "json"}, run_canner},
    {"gauge", "NAME", 2, 2, {"since", "until", "json"}, run_gauge},
    {"recipe", "NAME", 2, 2, {"json"}, run_recipe},
    {"food", "FOOD", 2, 2, {"edition", "json"}, run_food},
    {"edition", "EDITION", 2, 2, {"json"}, run_edition},
    {"batch", "26-041", 2, 2, {"json"}, run_batch},
    {"jar", "26-041-07", 2, 2, {"json"}, run_jar},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run_trace(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

const struct command command_trace = {
    .name = "trace",
    .synopsis = "lot|canner|gauge|recipe|food|edition|batch|jar NAME [--since D] [--until D] "
		"[--edition E]",
    .summary = "what went into a jar, and every jar that came of a lot, canner or recipe",
    .description =
	"Follows the log both ways, as many steps as there are. Of a batch or a jar: the lots with "
	"supplier and code, the canner with the tests of its gauge, recipe, edition and decision, "
	"and the earlier jars that went in, with theirs. Of all: every jar that came of it and "
	"where it is or to whom it went, also through later batches. It changes nothing; 'recall' "
	"acts on it.",
    .options = options,
    .examples = examples,
    .run = run_trace,
};
