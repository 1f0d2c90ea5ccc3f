/* batch amend: a mistake corrected by a new entry; a load is judged anew. */
#include <stdlib.h>
#include <string.h>

#include "batch.h"
#include "jarwright/text.h"

#define MS 1000

/* What one run of the command works with. */
struct amending {
	struct batch_view view;
	struct load_rules rules;
	struct instant at;
	const char *why;
	/* A load. */
	struct logged_load logged;
	struct load_amendment amendment;
	struct load_judgement judgement;
	char reasons[2048];
	enum load_outcome outcome; /* with the record */
};

static bool read_why(struct invocation *inv, struct amending *a)
{
	a->why = option(inv, "why");
	if (!a->why || !*a->why || strlen(a->why) > BATCH_TEXT_MAX)
		return error_usage(inv->err,
				   "amend: why? say --why 'clock read wrong'; it is kept with the "
				   "correction");
	return true;
}

/* --- A load --- */

/* Another beginning moves what was said by the clock: that is said anew with it. */
static bool start_is_whole(struct invocation *inv, const struct amending *a)
{
	bool end = option(inv, "minutes") || option(inv, "ended");
	bool breaks = flag(inv, "uninterrupted") || option(inv, "interrupted");
	return !option(inv, "started") || (end && (breaks || a->logged.load->said.list_n == 0)) ||
	       error_usage(inv->err,
			   "started: say the end anew too, with --ended or --minutes, and any "
			   "interruption");
}

static bool read_load(struct invocation *inv, struct amending *a)
{
	struct instant started = a->logged.load->started;
	struct load_said *said = &a->amendment.said;
	*said = a->logged.load->said;
	if (!start_is_whole(inv, a))
		return false;
	if (option(inv, "started") && !instant_parse("started", option(inv, "started"),
						     a->logged.load->started, &started, inv->err))
		return false;
	if (started.ms > instant_at(inv->now).ms)
		return error_usage(inv->err, "started: that is still to come");
	a->amendment.started_ms = option(inv, "started") ? started.ms : 0;
	if (!load_facts_read(inv, started, said))
		return false;
	struct instant out = a->logged.load->out, ended = started;
	ended.ms += (int64_t)said->process_s * MS;
	if (option(inv, "out") && !load_out_read(inv, started, said, &out))
		return false;
	if (said->process_stated && ended.ms > out.ms)
		out = ended;
	a->amendment.out = out;
	return true;
}

/* A recorder's file that was given keeps the load from being better than it leaves it. */
static bool judge(struct invocation *inv, struct amending *a)
{
	const struct batch_load *load = a->logged.load;
	a->amendment.said.gauge = a->logged.canner.gauge.gauge; /* as it is known today */
	const struct load_case it =
	    logged_load_case(&a->view, &a->rules, &a->logged, &a->amendment.said);
	if (!load_case_judge(inv, &it, &a->judgement, a->reasons, sizeof a->reasons))
		return false;
	a->amendment.number = load->number;
	a->amendment.outcome = a->judgement.outcome;
	a->amendment.why_outcome = a->reasons;
	a->outcome = load->recorded ? load_outcome_stricter(a->judgement.outcome, load->record)
				    : a->judgement.outcome;
	return true;
}

static int tell_load(struct invocation *inv, const struct amending *a)
{
	const struct load_view view = {.code = a->view.record.code,
				       .number = a->logged.load->number,
				       .jars = a->logged.jars,
				       .out = a->amendment.out,
				       .now = instant_at(inv->now),
				       .outcome = a->outcome,
				       .judgement = &a->judgement,
				       .why = a->reasons,
				       .record_why = a->logged.load->record_why,
				       .held = a->view.record.held};
	int status = load_outcome_status(view.outcome);
	if (flag(inv, "json"))
		return answer_json(inv, load_json(&view), status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	load_text(&page, &a->rules, &view, &sources);
	if (a->outcome != LOAD_PROCESSED)
		load_away_text(&page, &a->view, view.number);
	sources_text(&page, &sources);
	return status;
}

static int amend_load(struct invocation *inv, struct amending *a)
{
	struct household *db;
	static const char *const others[] = {"day", "title", "lot", "elevation"};
	for (size_t i = 0; i < sizeof others / sizeof *others; i++)
		if (option(inv, others[i])) {
			error_usage(inv->err, "amend: --%s does not go with --load; amend twice",
				    others[i]);
			return command_failed(inv);
		}
	if (!logged_load_read(inv, &a->view, option(inv, "load"), &a->logged) ||
	    !read_load(inv, a) || !judge(inv, a) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	a->amendment.at = a->at;
	a->amendment.why = a->why;
	inv->saved = household_amend_load(db, inv->operands[1], &a->amendment, inv->err);
	household_close(db);
	return inv->saved ? tell_load(inv, a) : command_failed(inv);
}

/* --- The batch --- */

/* At another elevation the process may no longer be enough. */
static bool still_holds(const struct batch_view *view, int32_t mft, struct request *rq,
			struct decision *decision)
{
	const struct batch_record *record = &view->record;
	if (strcmp(record->keep, "shelf") != 0)
		return true;
	if (!decision_request(reference_edition(), view->decision, rq))
		return false;
	rq->elevation_stated = true;
	rq->elevation_mft = mft;
	decide(reference_edition(), rq, decision);
	return decision->verdict == VERDICT_TESTED &&
	       decision->process.minutes <= record->minutes &&
	       decision->process.psi <= record->psi &&
	       decision->process.vent_minutes <= record->vent;
}

static bool read_batch(struct invocation *inv, struct batch_amendment *out)
{
	const char *day = option(inv, "day"), *values[BATCH_LOTS_MAX + 1];
	const char *elevation = option(inv, "elevation");
	struct elevation read;
	out->title = option(inv, "title");
	if (out->title && (!*out->title || strlen(out->title) >= BATCH_TITLE_SIZE))
		return error_usage(inv->err, "title: it is empty or too long");
	if (day && !date_parse("day", day, &out->day, inv->err))
		return false;
	if (elevation && !elevation_parse(elevation, &read, inv->err))
		return false;
	out->day_stated = day != NULL;
	out->elevation_stated = elevation != NULL;
	out->elevation_mft = elevation ? read.mft : 0;
	out->lots_n = option_values(inv, "lot", values, BATCH_LOTS_MAX + 1);
	if (out->lots_n > BATCH_LOTS_MAX)
		return error_usage(inv->err, "lot: more than %d", BATCH_LOTS_MAX);
	memcpy(out->lots, values, out->lots_n * sizeof *values);
	return day || elevation || out->title || out->lots_n > 0 ||
	       error_usage(inv->err,
			   "amend: what? say --day, --title, --lot, --elevation or --load");
}

static int amend_batch(struct invocation *inv, struct amending *a)
{
	struct batch_amendment amendment = {.at = a->at, .why = a->why, .holds = true};
	struct request rq;
	struct decision decision;
	struct household *db;
	const char *code = a->view.record.code;
	memset(&rq, 0, sizeof rq);
	memset(&decision, 0, sizeof decision);
	if (!read_batch(inv, &amendment))
		return command_failed(inv);
	if (amendment.elevation_stated)
		amendment.holds = still_holds(&a->view, amendment.elevation_mft, &rq, &decision);
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_amend_batch(db, inv->operands[1], &amendment, inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	int status = amendment.holds ? STATUS_DONE : STATUS_REFUSED;
	if (flag(inv, "json"))
		return answer_json(
		    inv, json_pack("{s:s, s:b}", "batch", code, "holds", (int)amendment.holds),
		    status);
	struct page page = answer_page(inv);
	page_format(&page, "", "Batch %s is corrected; the entry and the reason are kept.", code);
	if (!amendment.holds) {
		page_format(&page, "no        ",
			    "At this elevation its process is not enough: batch %s is off the "
			    "shelf, all its jars. Chill, freeze or discard them. What it needed:",
			    code);
		page_blank(&page);
		decision_text(&page, reference_edition(), &rq, &decision, "");
	}
	return status;
}

int batch_amend_command(struct invocation *inv)
{
	struct amending *a = calloc(1, sizeof *a);
	if (!a) {
		error_failed(inv->err, "batch: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	bool ok = invocation_when(inv, &a->at) && read_why(inv, a) &&
		  batch_of_operand(inv, &a->view, &a->rules);
	int status;
	if (!ok)
		status = command_failed(inv);
	else
		status = option(inv, "load") ? amend_load(inv, a) : amend_batch(inv, a);
	batch_view_release(&a->view);
	free(a);
	return status;
}
