/* run: one load watched live, from filling the jars to their coming out. */
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "jarwright/text.h"
#include "run_live.h"
#include "run_signals.h"

#define LOADS_MAX 999

/* --- What there is: the batch, and a load of it that runs --- */

static bool read_file(struct live *live, struct household *db, bool *found)
{
	struct invocation *inv = live->inv;
	const char *text = option(inv, "load");
	int number = 0;
	if (text && !count_parse("load", text, LOADS_MAX, &number, inv->err))
		return false;
	if (!household_batch(db, inv->operands[0], &live->view, inv->err) ||
	    !household_running(db, inv->operands[0], number, found, &live->load, inv->err))
		return false;
	for (size_t i = 0; i < live->view.loads_n; i++)
		if (!*found && live->view.loads[i].number == live->load.number)
			return error_usage(inv->err,
					   "run: load %d of batch %s is logged already; leave "
					   "--load out for the next one",
					   live->load.number, live->view.record.code);
	return true;
}

/* Is there something to count for this batch? */
static bool can_run(const struct live *live)
{
	const struct batch_record *record = &live->view.record;
	struct error *err = live->inv->err;
	if (strcmp(record->keep, "shelf") != 0)
		return error_usage(
		    err,
		    "run: batch %s is kept cold; it goes through no canner, so log it "
		    "with 'jarwright batch load'",
		    record->code);
	if (record->held)
		return error_usage(err,
				   "run: something learned since takes batch %s off the shelf; see "
				   "'jarwright batch show %s'",
				   record->code, record->code);
	return !record->finished ||
	       error_usage(err, "run: batch %s is finished; start another one", record->code);
}

/* --- The canner and the jars --- */

static bool jars_again(struct live *live)
{
	const struct running_load *load = &live->load;
	for (size_t i = 0; i < load->jars_n; i++)
		if (!jar_parse(load->jars[i].size, &live->choices[i], live->inv->err))
			return false;
	return true;
}

/* Of a load that begins, from the options. */
static bool jars_said(struct live *live)
{
	struct batch_load_entry entry = {.number = 0};
	struct invocation *inv = live->inv;
	const char *canner = option(inv, "canner");
	if (!canner || !option(inv, "jars"))
		return error_usage(
		    inv->err,
		    "run: load %d of batch %s has not begun; say in which canner, and "
		    "which jars: --canner NAME --jars '7 pints'",
		    live->load.number, live->view.record.code);
	if (!load_jars_read(inv, &entry, live->choices))
		return false;
	memcpy(live->load.jars, entry.jars, sizeof entry.jars);
	live->load.jars_n = entry.jars_n;
	if (strlen(canner) >= sizeof live->load.canner)
		return error_usage(inv->err,
				   "canner: that is no name of one; see 'jarwright canner "
				   "list'");
	snprintf(live->load.canner, sizeof live->load.canner, "%s", canner);
	return true;
}

static bool nothing_new(struct live *live)
{
	const char *const fixed[] = {"canner", "jars"};
	for (size_t i = 0; i < sizeof fixed / sizeof *fixed; i++)
		if (option(live->inv, fixed[i]))
			return error_usage(live->inv->err,
					   "run: load %d of batch %s has begun; leave --%s out to "
					   "go on with it, or say --load N for another canner at "
					   "the same time",
					   live->load.number, live->view.record.code, fixed[i]);
	return true;
}

static bool read_canner(struct live *live, struct household *db, bool found)
{
	struct invocation *inv = live->inv;
	struct batch_load_entry entry = {.jars_n = live->load.jars_n};
	memcpy(entry.jars, live->load.jars, sizeof entry.jars);
	if (!household_load_canner(db, live->load.canner,
				   instant_date(live->clock->wall(live->clock->self)),
				   &live->canner, inv->err))
		return false;
	return found || load_jars_fit(inv, &entry, live->choices, &live->canner.canner);
}

/* A gauge that reads high shows more than there is, and one that is far off shows nothing. */
static bool gauge_psi(struct live *live, int32_t *high_mpsi)
{
	const struct gauge_record *record = &live->canner.gauge;
	const struct gauge_view gauge = {.dial = live->canner.canner.kind == CANNER_DIAL_GAUGE,
					 .canner = live->canner.canner.name,
					 .record = record};
	*high_mpsi = 0;
	if (!gauge.dial)
		return true;
	if (gauge_is_unfit(&live->rules, &gauge))
		return error_usage(
		    live->inv->err,
		    "canner: the gauge of '%s' is off by more than %d psi, so no load "
		    "in it counts; have it replaced",
		    live->canner.canner.name, live->rules.gauge_psi);
	if (record->gauge.known && record->gauge.high_mpsi > 0)
		*high_mpsi = record->gauge.high_mpsi;
	if (!record->tested)
		snprintf(live->message, sizeof live->message,
			 "Careful: the dial gauge of this canner has no test on record.");
	return true;
}

static bool make_plan(struct live *live)
{
	char why[2048], text[512];
	struct load_need need;
	int32_t high_mpsi;
	const struct load_case load = {.record = &live->view.record,
				       .decision = live->view.decision,
				       .rules = &live->rules,
				       .canner = &live->canner,
				       .jars = live->choices,
				       .jars_n = live->load.jars_n};
	if (!load_case_need(live->inv, &load, &need, why, sizeof why) ||
	    !gauge_psi(live, &high_mpsi))
		return false;
	snprintf(text, sizeof text, "%s  %s, load %d, '%s'", live->view.record.code,
		 live->view.record.title, live->load.number, live->canner.canner.name);
	text_harmless(text, live->title, sizeof live->title);
	return run_plan_make(reference_edition(), &need, high_mpsi, live->view.record.pack,
			     &live->plan, live->inv->err);
}

/* --- Beginning and going on --- */

static bool begin(struct live *live, struct household *db)
{
	struct run_moment first = {.at = live->clock->wall(live->clock->self),
				   .entry = {.event = RUN_BEGIN,
					     .stage = live->plan.steps[0].stage,
					     .now_ns = live_now(live),
					     .seen_ns = -1}};
	memcpy(first.entry.boot, live->boot, sizeof first.entry.boot);
	run_begin(&live->plan, first.entry.now_ns, &live->run);
	live->inv->saved =
	    household_run_begin(db, live->inv->operands[0], &live->load, &first, live->inv->err);
	return live->inv->saved;
}

static bool lock(struct live *live, struct household *db)
{
	live->lock =
	    household_run_lock(db, live->inv->operands[0], live->load.number, live->inv->err);
	return live->lock >= 0;
}

static bool has_clock(struct live *live)
{
	live->clock->boot(live->clock->self, live->boot);
	return live->clock->now_ns(live->clock->self) >= 0 ||
	       error_failed(live->inv->err, "run: this machine has no clock that goes on while it "
					    "sleeps; use a clock on the wall, and log the load "
					    "with 'jarwright batch load'");
}

/* What was read before the lock may be old: another watch may have ended meanwhile. */
static bool read_again(struct live *live, struct household *db, bool *found)
{
	int number = live->load.number;
	running_load_release(&live->load);
	return household_running(db, live->inv->operands[0], number, found, &live->load,
				 live->inv->err);
}

static bool set_up(struct live *live, struct household *db)
{
	bool found;
	if (!has_clock(live) || !read_file(live, db, &found) || !can_run(live))
		return false;
	if (!found)
		return jars_said(live) && read_canner(live, db, false) && make_plan(live) &&
		       lock(live, db) && begin(live, db);
	if (!nothing_new(live) || !lock(live, db) || !read_again(live, db, &found))
		return false;
	if (!found)
		return error_usage(
		    live->inv->err,
		    "run: load %d of batch %s is over meanwhile; see 'jarwright batch "
		    "show'",
		    live->load.number, live->view.record.code);
	return jars_again(live) && read_canner(live, db, true) && make_plan(live);
}

/* --- Giving up --- */

static bool give_up(struct live *live, struct household *db)
{
	bool found;
	struct run_moment last = {.at = live->clock->wall(live->clock->self),
				  .entry = {.event = RUN_ABANDON, .seen_ns = -1}};
	if (!has_clock(live) || !read_file(live, db, &found))
		return false;
	if (!found)
		return error_usage(live->inv->err, "run: no load of batch %s is running",
				   live->view.record.code);
	if (!lock(live, db))
		return false;
	last.entry.stage = live->load.moments[live->load.moments_n - 1].entry.stage;
	last.entry.now_ns = live_now(live);
	memcpy(last.entry.boot, live->boot, sizeof last.entry.boot);
	live->inv->saved = household_run_step(db, live->inv->operands[0], live->load.number, &last,
					      live->inv->err);
	return live->inv->saved;
}

static int abandon(struct live *live)
{
	struct household *db;
	struct invocation *inv = live->inv;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	bool ok = give_up(live, db);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:i, s:s}", "batch", live->view.record.code,
					     "load", live->load.number, "state", "abandoned"),
				   STATUS_DONE);
	const struct page page = answer_page(inv);
	page_format(&page, "",
		    "Load %d of batch %s is given up: no jar of it is on record. If jars came out, "
		    "log them with 'jarwright batch load'.",
		    live->load.number, live->view.record.code);
	return STATUS_DONE;
}

/* --- The command --- */

static bool in_lines(const struct invocation *inv)
{
	const char *term = getenv("TERM");
	return flag(inv, "plain") || flag(inv, "json") || !isatty(STDIN_FILENO) ||
	       !isatty(STDOUT_FILENO) || !term || strcmp(term, "dumb") == 0;
}

static int left(struct live *live)
{
	struct invocation *inv = live->inv;
	const char *stage = run_stage_word(live->plan.steps[live->run.at].stage);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:i, s:s, s:s}", "batch",
					     live->view.record.code, "load", live->load.number,
					     "state", "running", "step", stage),
				   STATUS_UNCLEAR);
	const struct page page = answer_page(inv);
	page_format(&page, "",
		    "Load %d of batch %s is not over (step: %s). The clock goes on counting, but "
		    "nobody watches: 'jarwright run %s' goes on.",
		    live->load.number, live->view.record.code, stage, inv->operands[0]);
	return STATUS_UNCLEAR;
}

static bool start(struct live *live)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_WRITE, &db, live->inv->err))
		return false;
	bool ok = set_up(live, db);
	household_close(db);
	return ok;
}

/* --held, if that is the question. */
static bool answer_held(struct live *live)
{
	const char *held = option(live->inv, "held");
	return !held || !live->run.asks ||
	       live_take(live, strcmp(held, "yes") == 0 ? RUN_HELD : RUN_DOUBT, NULL);
}

static int watch(struct live *live)
{
	struct invocation *inv = live->inv;
	if (!start(live))
		return command_failed(inv);
	run_signals_begin();
	bool ok = (live->load.moments_n == 0 || live_replay(live)) && answer_held(live);
	ok = ok && (in_lines(inv) ? run_in_lines(live) : run_on_screen(live));
	run_signals_end();
	if (!ok)
		return command_failed(inv);
	live->failed = false; /* once more, now */
	if (!live_save(live)) {
		if (inv->err->kind == ERROR_NONE)
			error_failed(inv->err, "run: the last steps of load %d are in no log. %s",
				     live->load.number, live->trouble);
		return command_failed(inv);
	}
	return live->run.at + 1 == live->plan.steps_n ? run_finish(live) : left(live);
}

static bool options_fit(struct invocation *inv)
{
	struct load_said unused = {.list_n = 0};
	const char *held = option(inv, "held");
	if (held && strcmp(held, "yes") != 0 && strcmp(held, "no") != 0)
		return error_usage(inv->err,
				   "held: say yes if nothing was lost while nobody watched, no if "
				   "it was or you are not sure");
	/* They are needed at the end, and what is wrong with them is said now. */
	return load_pressure_read(option(inv, "low-psi"), &unused, inv->err) &&
	       load_temperature_read(option(inv, "low-temp"), &unused, inv->err);
}

int run_command_with(struct invocation *inv, const struct run_clock *clock)
{
	struct live *live = calloc(1, sizeof *live);
	if (!live) {
		error_failed(inv->err, "run: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	live->inv = inv;
	live->clock = clock;
	live->lock = -1;
	live->out = flag(inv, "json") ? STDERR_FILENO : STDOUT_FILENO;
	bool ok = operands_between(inv, 1, 1, "CODE") && options_fit(inv) &&
		  load_rules_find(reference_edition(), reference_tables_edition(), &live->rules,
				  inv->err);
	int status;
	if (ok)
		status = flag(inv, "abandon") ? abandon(live) : watch(live);
	else
		status = command_failed(inv);
	if (live->lock >= 0)
		close(live->lock);
	running_load_release(&live->load);
	batch_view_release(&live->view);
	free(live);
	return status;
}

static int run_run(struct invocation *inv)
{
	return run_command_with(inv, &run_clock_real);
}

/* clang-format off */
static const struct option_spec options[] = {
    {"canner", "NAME", "a load that begins: which of your canners"},
    {"jars", "JARS", "a load that begins: how many of which size: '7 pints'"},
    {"load", "N", "which load of the batch, if two are in two canners at the same time"},
    {"held", "yes|no", "going on: was nothing lost while nobody watched? no if you are not sure"},
    {"low-psi", "PSI", "lowest reading of the gauge while the time counted; else it is asked"},
    {"low-temp", "T", "lowest temperature of the steam then, 208F or 98C; else it is asked"},
    {"plain", NULL, "one line a step; read done, lost, back, held yes, held no, quit, a line each"},
    {"abandon", NULL, "give up a load that is running; what was seen of it stays in the log"},
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright run 26-041 --canner 'big pot' --jars '7 pints'",
     "the next load of the batch, from its first step"},
    {"jarwright run 26-041", "go on with it, after a closed terminal or an empty battery"},
    {"jarwright run 26-041 --plain --held yes", "without a screen; the boil was never lost"},
    {"jarwright run 26-042 --load 2 --canner dial --jars '9 pints'",
     "a second load at the same time, in another terminal"},
    EXAMPLES_END,
};

const struct command command_run = {
    .name = "run",
    .synopsis = "CODE [--canner NAME --jars JARS]",
    .summary = "a live clock for one load: each step, its time, and what to watch",
    .description =
	"Shows the steps that the sources give for this canner, one after the other, and counts. "
	"Enter says that a step is done; b that the boil, the steam or the pressure was lost: the "
	"whole time then starts again; ? shows all keys. Every step is logged as it happens: "
	"leave or lose the terminal, and the same command goes on. Neither a sleeping machine nor "
	"a "
	"clock that is set makes a process shorter, and a time that nobody watched counts only on "
	"your word. There is no pause. When the jars are out the load is logged and judged. A "
	"clock sees no water and no gauge: watch the canner. Exits with 0 for processed, 3 "
	"under-processed, 5 unclear or not over.",
    .options = options,
    .examples = examples,
    .run = run_run,
};
