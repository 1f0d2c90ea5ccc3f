/* A load held against what was decided for its batch. */
#include <stdio.h>
#include <string.h>

#include "batch.h"

/* The named jar that covers this one. */
static enum jar covering(const struct jar_choice *jar)
{
	enum jar named = jar->jar;
	bool namesake;
	if (jar->by_volume)
		reference_jar_for(reference_edition(), jar->volume_nl, &named, &namesake);
	return named;
}

static bool is_larger(const struct jar_choice *jar, const struct jar_choice *decided)
{
	if (jar->by_volume && decided->by_volume)
		return jar->volume_nl > decided->volume_nl;
	return covering(jar) > covering(decided);
}

/* Fewer minutes than decided never count, nor fewer than this jar needs. */
static void take_process(const struct process *process, struct load_need *need)
{
	if (process->minutes > need->minutes)
		need->minutes = process->minutes;
	if (process->psi > need->psi)
		need->psi = process->psi;
	if (process->vent_minutes > need->vent_minutes)
		need->vent_minutes = process->vent_minutes;
	need->from = &process->table->from;
}

/* The batch as it is known today: an amended elevation, this canner, this jar. */
static bool todays_request(struct invocation *inv, const struct load_case *load,
			   const struct jar_choice *jar, struct request *rq)
{
	if (!decision_request(reference_edition(), load->decision, rq))
		return error_failed(inv->err,
				    "batch %s: its decision cannot be read; run "
				    "'jarwright log verify'",
				    load->record->code);
	if (jar && is_larger(jar, &rq->jar)) {
		char words[32];
		jar_size_text(jar, words, sizeof words);
		return error_usage(inv->err,
				   "jars: batch %s was decided for %s jars, and %s is larger; a "
				   "larger jar needs its own decision: start another batch for it",
				   load->record->code, load->record->jar, words);
	}
	if (jar)
		rq->jar = *jar;
	rq->elevation_stated = load->record->elevation_stated;
	rq->elevation_mft = load->record->elevation_mft;
	if (load->canner->canner.holds_quarts > 0)
		rq->holds_quarts = load->canner->canner.holds_quarts;
	return true;
}

/* Joins reasons with "; ". */
static void add_why(char *why, size_t size, const char *reason)
{
	size_t n = strlen(why);
	if (n + 1 < size)
		snprintf(why + n, size - n, "%s%s", n ? "; " : "", reason);
}

/* What the jar needs; uncovered, with the reason, if nothing published covers it. */
static bool need_of_jar(struct invocation *inv, const struct load_case *load,
			const struct jar_choice *jar, struct load_need *need, char *why,
			size_t size)
{
	struct request rq;
	struct decision d;
	char text[1024];
	if (!todays_request(inv, load, jar, &rq))
		return false;
	decide(reference_edition(), &rq, &d);
	if (d.verdict == VERDICT_TESTED) {
		take_process(&d.process, need);
		return true;
	}
	need->uncovered = true;
	if (d.findings_n > 0) {
		finding_text(reference_edition(), &d.findings[0], text, sizeof text);
		need->from = finding_citation(reference_edition(), &d.findings[0]);
		add_why(why, size, text);
	}
	return true;
}

static bool same_kind(struct invocation *inv, const struct load_case *load)
{
	const char *kind = canner_word(load->canner->canner.kind);
	return strcmp(kind, load->record->canner_kind) == 0 ||
	       error_usage(inv->err,
			   "canner: batch %s was decided for a %s canner, and '%s' is a %s "
			   "canner; start another batch for it",
			   load->record->code, load->record->canner_kind, load->canner->canner.name,
			   kind);
}

bool load_case_need(struct invocation *inv, const struct load_case *load, struct load_need *out,
		    char *why, size_t size)
{
	const struct batch_record *record = load->record;
	*out = (struct load_need){.canner = load->canner->canner.kind,
				  .minutes = record->minutes,
				  .psi = record->psi,
				  .vent_minutes = record->vent,
				  .elevation_stated = record->elevation_stated,
				  .elevation_mft = record->elevation_mft};
	*why = '\0';
	if (!same_kind(inv, load))
		return false;
	for (size_t i = 0; i < load->jars_n || i == 0; i++)
		if (!need_of_jar(inv, load, load->jars_n ? &load->jars[i] : NULL, out, why, size))
			return false;
	if (!out->from) /* nothing covers it: cited for what a process is */
		out->from = &load->rules->reprocess_time->from;
	return true;
}

bool load_case_judge(struct invocation *inv, const struct load_case *load,
		     struct load_judgement *out, char *why, size_t size)
{
	struct load_need need;
	char text[512];
	if (!load_case_need(inv, load, &need, why, size))
		return false;
	load_judge(load->rules, &need, load->said, out);
	for (size_t i = 0; i < out->findings_n; i++)
		add_why(why, size, load_finding_text(&out->findings[i], text, sizeof text));
	return true;
}

int load_outcome_status(enum load_outcome outcome)
{
	if (outcome == LOAD_UNDER_PROCESSED)
		return STATUS_REFUSED;
	return outcome == LOAD_UNCLEAR ? STATUS_UNCLEAR : STATUS_DONE;
}
