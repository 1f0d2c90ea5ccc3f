/* Faults that are worked out load by load: a gauge that read high, a wrong elevation, a process. */
#include <stdlib.h>
#include <string.h>

#include "recall.h"

#define MILLI 1000

struct searching {
	const struct fault *fault;
	int32_t high_mpsi, was_mft, is_mft;
	const char *canner, *pack;
	struct faulty_loads *out;
};

static bool add(struct faulty_loads *out, int64_t batch, int number, struct error *err)
{
	struct fault_load *loads = realloc(out->loads, (out->n + 1) * sizeof *loads);
	if (!loads)
		return error_failed(err,
				    "recall: out of memory; close other programs and try again");
	out->loads = loads;
	out->loads[out->n++] = (struct fault_load){batch, number};
	return true;
}

static bool in_period(const struct fault *fault, int64_t ms)
{
	return ms >= fault->from_ms && ms <= fault->to_ms;
}

/* --- Gauge --- */

/* A pressure that was not said, or not decided, is none. */
static bool fell_short(const struct batch_record *record, const struct review_load *load,
		       int32_t high_mpsi, bool *doubtful)
{
	*doubtful = !load->said.psi_stated || record->psi <= 0;
	return *doubtful || (int64_t)load->said.low_mpsi - high_mpsi < (int64_t)record->psi * MILLI;
}

static bool gauge_case(void *context, const struct review_case *batch, struct error *err)
{
	struct searching *s = context;
	for (size_t i = 0; i < batch->loads_n; i++) {
		const struct review_load *load = &batch->loads[i];
		bool doubtful;
		if (load->canner != s->fault->subject || !in_period(s->fault, load->started.ms))
			continue;
		s->out->looked_at++;
		if (!fell_short(&batch->record, load, s->high_mpsi, &doubtful))
			continue;
		s->out->doubtful += doubtful;
		if (!add(s->out, batch->record.id, load->number, err))
			return false;
	}
	return true;
}

bool loads_of_gauge(struct invocation *inv, struct household *db, const struct fault *canner,
		    int32_t high_mpsi, struct faulty_loads *out)
{
	struct searching s = {.fault = canner, .high_mpsi = high_mpsi, .out = out};
	const struct review_filter filter = {.all = true, .canner = canner->subject};
	return household_review(db, &filter, gauge_case, &s, inv->err);
}

/* --- Elevation --- */

/* Is the process that was decided one of those published, or more than one of them? */
static bool is_enough(const struct process *process, const struct batch_record *record)
{
	for (size_t i = 0; i < process->choices_n; i++)
		if (record->minutes >= process->choices[i].minutes &&
		    record->psi >= process->choices[i].psi && record->vent >= process->vent_minutes)
			return true;
	return record->minutes >= process->minutes && record->psi >= process->psi &&
	       record->vent >= process->vent_minutes;
}

static void say_needs(const struct decision *d, const struct batch_record *record, char *why,
		      size_t size)
{
	char needs[WORDS_BUFFER], had[WORDS_BUFFER];
	process_words(needs, sizeof needs, d->process.minutes, d->process.psi);
	process_words(had, sizeof had, record->minutes, record->psi);
	snprintf(why, size, "it needs %s, and was decided as %s", needs, had);
}

bool batch_holds(const struct review_case *batch, int32_t mft, char *why, size_t size)
{
	const struct reference *ref = reference_edition();
	struct request rq;
	struct decision d;
	if (!batch->decision || !decision_request(ref, batch->decision, &rq)) {
		snprintf(why, size, "its decision cannot be read from the log");
		return false;
	}
	rq.elevation_stated = true;
	rq.elevation_mft = mft;
	decide(ref, &rq, &d);
	if (d.verdict == VERDICT_TESTED && is_enough(&d.process, &batch->record))
		return true;
	if (d.verdict == VERDICT_TESTED)
		say_needs(&d, &batch->record, why, size);
	else if (d.findings_n > 0)
		finding_text(ref, &d.findings[0], why, size);
	else
		snprintf(why, size, "nothing published covers it");
	return false;
}

static bool elevation_case(void *context, const struct review_case *batch, struct error *err)
{
	struct searching *s = context;
	const struct batch_record *record = &batch->record;
	char why[1024];
	bool before = !in_period(s->fault, record->started.ms);
	/* What was decided at no elevation, or one that was mended since, is not of this fault. */
	if (before || !record->elevation_stated || record->elevation_mft != s->was_mft)
		return true;
	s->out->looked_at++;
	return batch_holds(batch, s->is_mft, why, sizeof why) || add(s->out, record->id, 0, err);
}

bool loads_of_elevation(struct invocation *inv, struct household *db, const struct fault *period,
			int32_t was_mft, int32_t is_mft, struct faulty_loads *out)
{
	struct searching s = {.fault = period, .was_mft = was_mft, .is_mft = is_mft, .out = out};
	const struct review_filter filter = {.all = true};
	return household_review(db, &filter, elevation_case, &s, inv->err);
}

/* --- Process --- */

/* What was not said may be the one that is meant. */
static bool may_be(const char *said, const char *wanted)
{
	return !wanted || !*said || strcmp(said, wanted) == 0;
}

static bool process_case(void *context, const struct review_case *batch, struct error *err)
{
	struct searching *s = context;
	const struct batch_record *record = &batch->record;
	if (!may_be(record->canner_kind, s->canner) || !may_be(record->pack, s->pack) ||
	    !may_be(record->edition, *s->fault->edition ? s->fault->edition : NULL) ||
	    !in_period(s->fault, record->started.ms))
		return true;
	s->out->looked_at++;
	return add(s->out, record->id, 0, err);
}

bool loads_of_process(struct invocation *inv, struct household *db, const struct fault *food,
		      const char *canner, const char *pack, struct faulty_loads *out)
{
	struct searching s = {.fault = food, .canner = canner, .pack = pack, .out = out};
	const struct review_filter filter = {.all = true, .food = food->name};
	return household_review(db, &filter, process_case, &s, inv->err);
}
