/* batch load: one filling of one canner, or jars filled for the cold. */
#include <stdlib.h>
#include <string.h>

#include "batch.h"

#define HOUR_MS INT64_C(3600000)
/* Sizes of new jars and of those that go in again. */
#define SIZES_MAX ((size_t)16)
_Static_assert(SIZES_MAX == 2 * (size_t)LOAD_JARS_MAX, "both");

/* What one run of the command works with. */
struct loading {
	struct batch_view view;
	struct load_rules rules;
	struct batch_load_entry entry;
	struct jar_choice choices[LOAD_JARS_MAX];
	struct load_canner canner;
	struct load_judgement judgement;
	char why[2048];
	bool cold;
};

/* --- The jars --- */

/*
 * Jars that are processed again: of this batch, and not later than published. What was
 * wrongly processed has the shorter time.
 */
static bool load_in_time(struct invocation *inv, const struct loading *l,
			 const struct batch_load *load, int number)
{
	bool right = load->outcome == LOAD_PROCESSED;
	int hours = right ? l->rules.reprocess_h : l->rules.wrong_h;
	if (l->entry.started.ms < load->out.ms)
		return error_usage(inv->err,
				   "again: jar %d was still in load %d then; look at --started",
				   number, load->number);
	return l->entry.started.ms <= load->out.ms + hours * HOUR_MS ||
	       error_usage(inv->err,
			   "again: jar %d came out more than %d hours before, so it may not be "
			   "processed again%s; discard it, or if it was chilled in time log it as "
			   "refrigerated",
			   number, hours, right ? "" : " after a wrong process");
}

static bool jar_in_time(struct invocation *inv, const struct loading *l, int number)
{
	const struct batch_view *view = &l->view;
	for (size_t i = 0; i < view->jars_n; i++)
		for (size_t k = 0; k < view->loads_n; k++)
			if (view->jars[i].number == number &&
			    view->loads[k].number == view->jars[i].load &&
			    !load_in_time(inv, l, &view->loads[k], number))
				return false;
	return true;
}

static bool read_again(struct invocation *inv, struct loading *l)
{
	const char *text = option(inv, "again");
	struct jar_set *again = &l->entry.again;
	if (!text)
		return true;
	if (!batch_jars_parse("again", text, l->view.record.code, again, inv->err))
		return false;
	for (int n = jar_set_next(again, 0); n; n = jar_set_next(again, n))
		if (!jar_in_time(inv, l, n))
			return false;
	return true;
}

static bool same_jar(const struct jar_choice *a, const struct jar_choice *b)
{
	return a->by_volume == b->by_volume &&
	       (a->by_volume ? a->volume_nl == b->volume_nl : a->jar == b->jar);
}

/* Sizes of the jars that go in again are judged too. */
static bool again_sizes(struct invocation *inv, struct loading *l, struct jar_choice all[SIZES_MAX],
			size_t *n)
{
	memcpy(all, l->choices, l->entry.jars_n * sizeof *all);
	*n = l->entry.jars_n;
	for (size_t i = 0; i < l->view.jars_n; i++) {
		struct jar_choice one;
		bool known = false;
		if (!jar_set_has(&l->entry.again, l->view.jars[i].number))
			continue;
		if (!jar_parse(l->view.jars[i].size, &one, inv->err))
			return false;
		for (size_t k = 0; k < *n; k++)
			known = known || same_jar(&all[k], &one);
		if (!known && *n < SIZES_MAX)
			all[(*n)++] = one;
	}
	return true;
}

/* Jars of each size in shares of what the canner holds of it: more than one is asked about. */
bool load_jars_fit(struct invocation *inv, const struct batch_load_entry *entry,
		   const struct jar_choice *choices, const struct kitchen_canner *canner)
{
	double share = 0;
	for (size_t i = 0; i < entry->jars_n; i++) {
		const struct jar_choice *jar = &choices[i];
		int holds = jar->by_volume ? 0 : canner_load(canner, jar->jar);
		if (holds > 0 && entry->jars[i].n > holds)
			return error_usage(inv->err,
					   "jars: '%s' holds %d %s jars, as you said; were %d in "
					   "it? log two loads, or correct the canner with "
					   "'jarwright canner change'",
					   canner->name, holds, entry->jars[i].size,
					   entry->jars[i].n);
		if (holds > 0)
			share += (double)entry->jars[i].n / holds;
	}
	return share <= 1.000001 ||
	       error_usage(inv->err,
			   "jars: these are more than '%s' holds at once, as you said; log two "
			   "loads, or correct the canner with 'jarwright canner change'",
			   canner->name);
}

/* --- Reading --- */

static bool read_canner(struct invocation *inv, struct loading *l)
{
	struct household *db;
	const char *name = option(inv, "canner");
	l->entry.canner = name;
	if (l->cold)
		return !name || error_usage(inv->err,
					    "canner: batch %s is kept cold, so it goes through no "
					    "canner; leave --canner out",
					    l->view.record.code);
	if (!name)
		return error_usage(inv->err,
				   "canner: which one? a batch for the shelf goes through a "
				   "canner; say --canner NAME, one of 'jarwright canner list'");
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok =
	    household_load_canner(db, name, instant_date(l->entry.started), &l->canner, inv->err);
	household_close(db);
	l->entry.said.gauge = l->canner.gauge.gauge;
	return ok;
}

static bool has_facts(const struct load_said *said)
{
	return said->process_stated || said->vent_stated || said->psi_stated ||
	       said->temperature_stated || said->breaks != BREAKS_UNSAID;
}

static bool read_entry(struct invocation *inv, struct loading *l)
{
	struct batch_load_entry *entry = &l->entry;
	l->cold = strcmp(l->view.record.keep, "shelf") != 0;
	if (!load_started_read(inv, &entry->started) ||
	    !load_facts_read(inv, entry->started, &entry->said))
		return false;
	if (l->cold && has_facts(&entry->said))
		return error_usage(inv->err,
				   "load: batch %s is kept cold; say only --jars, and start "
				   "another batch for what is processed",
				   l->view.record.code);
	if (!load_out_read(inv, entry->started, &entry->said, &entry->out) ||
	    !load_jars_read(inv, entry, l->choices) || !read_again(inv, l))
		return false;
	if (entry->jars_n == 0 && jar_set_count(&entry->again) == 0)
		return error_usage(inv->err, "load: which jars? say --jars '7 pints'");
	return read_canner(inv, l) &&
	       (l->cold || load_jars_fit(inv, entry, l->choices, &l->canner.canner));
}

static bool judge(struct invocation *inv, struct loading *l)
{
	struct jar_choice sizes[SIZES_MAX];
	struct load_case load = {.record = &l->view.record,
				 .decision = l->view.decision,
				 .rules = &l->rules,
				 .canner = &l->canner,
				 .jars = sizes,
				 .said = &l->entry.said};
	l->entry.why = l->why;
	l->entry.outcome = LOAD_COLD;
	if (l->cold)
		return true;
	if (!again_sizes(inv, l, sizes, &load.jars_n) ||
	    !load_case_judge(inv, &load, &l->judgement, l->why, sizeof l->why))
		return false;
	l->entry.outcome = l->judgement.outcome;
	return true;
}

static int save(struct invocation *inv, struct loading *l)
{
	struct household *db;
	struct load_view view = {.code = l->view.record.code,
				 .again = l->entry.again,
				 .out = l->entry.out,
				 .now = instant_at(inv->now),
				 .outcome = l->entry.outcome,
				 .judgement = l->cold ? NULL : &l->judgement,
				 .why = l->why,
				 .held = l->view.record.held};
	int status = load_outcome_status(view.outcome);
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved =
	    household_add_load(db, inv->operands[1], &l->entry, &view.number, &view.jars, inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, load_json(&view), status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	const struct gauge_view gauge = {.dial =
					     l->canner.canner.kind == CANNER_DIAL_GAUGE && !l->cold,
					 .canner = l->canner.canner.name,
					 .record = &l->canner.gauge,
					 .today = instant_date(l->entry.started),
					 .psi = l->view.record.psi};
	load_text(&page, &l->rules, &view, &sources);
	if (gauge.dial)
		page_blank(&page);
	gauge_text(&page, &l->rules, &gauge, &sources);
	sources_text(&page, &sources);
	return status;
}

int batch_load_command(struct invocation *inv)
{
	struct loading *l = calloc(1, sizeof *l);
	if (!l) {
		error_failed(inv->err, "batch: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	bool ok = batch_of_operand(inv, &l->view, &l->rules) && read_entry(inv, l) && judge(inv, l);
	int status = ok ? save(inv, l) : command_failed(inv);
	batch_view_release(&l->view);
	free(l);
	return status;
}
