/* recall open: from a fault to a recall of every jar that it touches. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
#include "recall.h"

#define MILLI        1000
#define PSI_HIGH_MAX 30000 /* as a gauge test may say */

/* What one run of the command works with. */
struct opener {
	struct household *db;
	struct recall_opening opening;
	char what[RECALL_TEXT_SIZE], left_out[1024], code[RECALL_CODE_SIZE];
	struct faulty_loads loads;
	struct touched_jars jars;
	struct load_rules rules;
};

struct opening_kind {
	const char *word;
	enum recall_reason reason;
	bool named;                   /* what follows the word is its name */
	const char *needs, *takes[4]; /* options */
	bool (*read)(struct invocation *inv, struct opener *o, const char *name);
};

static bool said(struct invocation *inv, const char *name, const char *example)
{
	return option(inv, name) ||
	       error_usage(inv->err, "recall: --%s is missing; say it, such as --%s %s", name, name,
			   example);
}

/* --- By name --- */

static bool read_lot(struct invocation *inv, struct opener *o, const char *name)
{
	struct fault *fault = &o->opening.fault;
	fault->kind = FAULT_LOT;
	fault_words(o->what, "lot", name, inv);
	return household_find_lot(o->db, name, &fault->subject, inv->err);
}

static bool read_canner(struct invocation *inv, struct opener *o, const char *name)
{
	struct fault *fault = &o->opening.fault;
	fault->kind = FAULT_CANNER;
	fault_words(o->what, "canner", name, inv);
	return said(inv, "since", "2026-08-01") && said(inv, "until", "2026-09-30") &&
	       fault_period(inv, fault) &&
	       household_find_canner(o->db, name, &fault->subject, inv->err);
}

static bool read_batch(struct invocation *inv, struct opener *o, const char *name)
{
	struct fault *fault = &o->opening.fault;
	fault->kind = FAULT_BATCH;
	fault_words(o->what, "batch", name, inv);
	return household_find_batch(o->db, name, &fault->subject, inv->err);
}

static void take_loads(struct opener *o)
{
	o->opening.fault.kind = FAULT_LOADS;
	o->opening.fault.loads = o->loads.loads;
	o->opening.fault.loads_n = o->loads.n;
}

/* --- Gauge --- */

/* Rounded up: a gauge that reads higher is the worse one. */
static bool read_high(struct invocation *inv, int32_t *mpsi)
{
	struct quantity high;
	int64_t milli;
	if (!said(inv, "high", "3psi") ||
	    !quantity_parse(DIMENSION_PRESSURE, "high", option(inv, "high"), &high, inv->err))
		return false;
	if (!rational_ceil(high.amount, MILLI, &milli) || milli < 1 || milli > PSI_HIGH_MAX)
		return error_usage(inv->err, "high: type by how much the gauge reads above the "
					     "true pressure: 3psi");
	*mpsi = (int32_t)milli;
	return true;
}

static bool is_dial(struct invocation *inv, struct opener *o)
{
	struct trace_canner canner;
	bool ok = household_trace_canner(o->db, o->opening.fault.subject, &canner, inv->err);
	bool dial = ok && strcmp(canner.kind, "dial-gauge") == 0;
	trace_canner_release(&canner);
	return ok &&
	       (dial || error_usage(inv->err, "gauge: that canner has no dial gauge; for "
					      "another fault of it say 'recall open canner'"));
}

/* What ran high enough ran by a gauge that was not to be used at all. */
static void say_replace(struct opener *o, int32_t high_mpsi, size_t fine)
{
	size_t n = strlen(o->left_out);
	if (fine > 0 && high_mpsi > o->rules.gauge_psi * MILLI)
		snprintf(
		    o->left_out + n, sizeof o->left_out - n,
		    " But a gauge off by more than %d psi is not to be adjusted for, but replaced: "
		    "what it says of those loads is doubtful too, and 'jarwright review' lists "
		    "them once its test is in the log.",
		    o->rules.gauge_psi);
}

static bool read_gauge(struct invocation *inv, struct opener *o, const char *name)
{
	struct fault *fault = &o->opening.fault;
	char kind[64], psi[WORDS_BUFFER];
	int32_t high = 0;
	if (!read_high(inv, &high) || !said(inv, "since", "2026-08-01") ||
	    !said(inv, "until", "2026-09-30") || !fault_period(inv, fault) ||
	    !household_find_canner(o->db, name, &fault->subject, inv->err) || !is_dial(inv, o) ||
	    !loads_of_gauge(inv, o->db, fault, high, &o->loads))
		return false;
	snprintf(kind, sizeof kind, "gauge %.20s psi high, canner",
		 milli_words(psi, sizeof psi, high));
	fault_words(o->what, kind, name, inv);
	size_t fine = o->loads.looked_at - o->loads.n;
	snprintf(
	    o->left_out, sizeof o->left_out,
	    "%zu of %zu loads in it in that time ran high enough all the same, and stay out.%s",
	    fine, o->loads.looked_at,
	    o->loads.doubtful ? " Loads whose lowest pressure is not in the log count as too "
				"low."
			      : "");
	say_replace(o, high, fine);
	take_loads(o);
	return true;
}

/* --- Elevation --- */

static bool read_elevation(struct invocation *inv, struct opener *o, const char *name)
{
	struct elevation was, is;
	(void)name;
	if (!said(inv, "was", "2900ft") || !said(inv, "is", "4100ft") ||
	    !elevation_parse(option(inv, "was"), &was, inv->err) ||
	    !elevation_parse(option(inv, "is"), &is, inv->err) ||
	    !fault_period(inv, &o->opening.fault) ||
	    !loads_of_elevation(inv, o->db, &o->opening.fault, was.mft, is.mft, &o->loads))
		return false;
	snprintf(
	    o->what, sizeof o->what, "elevation %.60s, not %.60s%s%s%s%s", is.typed, was.typed,
	    option(inv, "since") ? ", from " : "", option(inv, "since") ? option(inv, "since") : "",
	    option(inv, "until") ? ", to " : "", option(inv, "until") ? option(inv, "until") : "");
	snprintf(
	    o->left_out, sizeof o->left_out,
	    "of %zu batches for the shelf that were decided at %.60s in that time, the process of "
	    "%zu is enough at %.60s too: they stay out. Batches decided at another elevation "
	    "were not looked at: 'jarwright review --elevation %.60s' does.",
	    o->loads.looked_at, was.typed, o->loads.looked_at - o->loads.n, is.typed, is.typed);
	take_loads(o);
	return true;
}

/* --- Process --- */

static bool known_word(struct invocation *inv, const char *name, const char *const words[])
{
	const char *value = option(inv, name);
	for (size_t i = 0; value && words[i]; i++)
		if (strcmp(words[i], value) == 0)
			return true;
	return !value || error_usage(inv->err,
				     "%s: there is no such; 'jarwright recall --help' has "
				     "the words",
				     name);
}

static bool read_process(struct invocation *inv, struct opener *o, const char *name)
{
	static const char *const packs[] = {"raw", "hot", NULL};
	static const char *const kinds[] = {"boiling-water", "steam", "dial-gauge",
					    "weighted-gauge", NULL};
	struct fault *fault = &o->opening.fault;
	const char *canner = option(inv, "canner"), *pack = option(inv, "pack"),
		   *edition = option(inv, "edition");
	char kind[256], food[FAULT_NAME_SIZE];
	fault_food(name, food);
	memcpy(fault->name, food, sizeof food);
	snprintf(fault->edition, sizeof fault->edition, "%.*s", FAULT_NAME_SIZE - 1,
		 edition ? edition : "");
	if (!known_word(inv, "canner", kinds) || !known_word(inv, "pack", packs) ||
	    !fault_period(inv, fault) ||
	    !loads_of_process(inv, o->db, fault, canner, pack, &o->loads))
		return false;
	snprintf(kind, sizeof kind, "process%s%s%s%s%s%.60s of", canner ? " " : "",
		 canner ? canner : "", pack ? " " : "", pack ? pack : "", edition ? " " : "",
		 edition ? edition : "");
	fault_words(o->what, kind, food, inv);
	take_loads(o);
	return true;
}

/* --- The command --- */

static const struct opening_kind kinds[] = {
    {"lot", RECALL_LOT, true, "NAME", {NULL}, read_lot},
    {"canner", RECALL_CANNER, true, "NAME", {"since", "until", NULL}, read_canner},
    {"gauge", RECALL_GAUGE, true, "NAME", {"since", "until", "high", NULL}, read_gauge},
    {"elevation", RECALL_ELEVATION, false, "", {"since", "until", "was", "is"}, read_elevation},
    {"process", RECALL_PROCESS, true, "FOOD", {"canner", "pack", "edition", NULL}, read_process},
    {"batch", RECALL_BATCH, true, "26-041", {NULL}, read_batch},
};

static const struct opening_kind *find_kind(struct invocation *inv)
{
	char shown[TEXT_SHOWN_SIZE];
	for (size_t i = 0; inv->operands_n > 1 && i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(kinds[i].word, inv->operands[1]) == 0)
			return &kinds[i];
	text_show(inv->operands_n > 1 ? inv->operands[1] : "", SIZE_MAX, shown);
	error_usage(inv->err,
		    "recall: on what? '%s' is none of: lot NAME, canner NAME, gauge NAME, "
		    "elevation, process FOOD, batch 26-041",
		    shown);
	return NULL;
}

/* An option that goes with another kind of fault would be lost in silence. */
static bool options_fit(struct invocation *inv, const struct opening_kind *kind)
{
	static const char *const all[] = {"since", "until",  "high", "was",
					  "is",    "canner", "pack", "edition"};
	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		bool takes = false;
		for (size_t k = 0; k < 4 && kind->takes[k]; k++)
			takes = takes || strcmp(kind->takes[k], all[i]) == 0;
		if (option(inv, all[i]) && !takes)
			return error_usage(inv->err, "recall: --%s does not go with 'open %s'",
					   all[i], kind->word);
	}
	size_t needed = kind->named ? 3 : 2;
	return inv->operands_n == needed ||
	       error_usage(inv->err,
			   "recall: type 'jarwright recall open %s%s%s', a name of several "
			   "words in quotes",
			   kind->word, *kind->needs ? " " : "", kind->needs);
}

static int answer(struct invocation *inv, const struct opener *o)
{
	const struct opening_view view = {.code = o->code,
					  .dry_run = flag(inv, "dry-run"),
					  .what = o->what,
					  .left_out = o->left_out,
					  .in_question = o->loads.looked_at > 0,
					  .jars = &o->jars,
					  .rules = &o->rules};
	if (flag(inv, "json"))
		return answer_json(inv, opening_json(&view), STATUS_DONE);
	const struct page page = answer_page(inv);
	opening_text(&page, &view);
	return STATUS_DONE;
}

static bool read_why(struct invocation *inv, struct opener *o)
{
	const char *why = option(inv, "why");
	o->opening.why = why;
	return !why || (*why && strlen(why) < RECALL_TEXT_SIZE) ||
	       error_usage(inv->err, "why: it is empty, or longer than %d bytes; shorten it",
			   RECALL_TEXT_SIZE - 1);
}

/* Reading makes no file: what there is to recall is looked for first. */
static bool look(struct invocation *inv, struct opener *o, const struct opening_kind *kind)
{
	o->opening.reason = kind->reason;
	o->opening.what = o->what;
	if (!options_fit(inv, kind) || !read_why(inv, o) || !invocation_when(inv, &o->opening.at) ||
	    !load_rules_find(reference_edition(), reference_tables_edition(), &o->rules,
			     inv->err) ||
	    !cli_household(HOUSEHOLD_READ, &o->db, inv->err))
		return false;
	bool ok =
	    kind->read(inv, o, kind->named ? inv->operands[2] : "") &&
	    household_touched(o->db, &o->opening.fault, &o->jars, inv->err) &&
	    household_given(o->db, o->jars.jars, o->jars.jars_n, sizeof *o->jars.jars, inv->err);
	household_close(o->db);
	return ok;
}

static bool open_it(struct invocation *inv, struct opener *o)
{
	if (flag(inv, "dry-run") || o->jars.jars_n == 0)
		return true;
	touched_jars_release(&o->jars);
	if (!cli_household(HOUSEHOLD_WRITE, &o->db, inv->err))
		return false;
	bool ok = household_recall_open(o->db, &o->opening, o->code, &o->jars, inv->err);
	inv->saved = ok && *o->code;
	ok = ok &&
	     household_given(o->db, o->jars.jars, o->jars.jars_n, sizeof *o->jars.jars, inv->err);
	household_close(o->db);
	return ok;
}

int recall_open_command(struct invocation *inv)
{
	struct opener *o = calloc(1, sizeof *o);
	const struct opening_kind *kind = find_kind(inv);
	if (!o)
		error_failed(inv->err, "recall: out of memory; close other programs and try again");
	if (!o || !kind) {
		free(o);
		return command_failed(inv);
	}
	bool ok = look(inv, o, kind) && open_it(inv, o);
	int status = ok ? answer(inv, o) : command_failed(inv);
	touched_jars_release(&o->jars);
	free(o->loads.loads);
	free(o);
	return status;
}
