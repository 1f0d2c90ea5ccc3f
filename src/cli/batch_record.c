/* batch record: a recorder's file held against the load that it is of, and kept in the log. */
#include <stdlib.h>
#include <string.h>

#include "batch.h"
#include "jarwright/text.h"
#include "record_file.h"

#define MILLI    1000.0
#define MINUTE_S 60.0

/* What one run of the command works with. */
struct recording {
	struct batch_view view;
	struct load_rules rules;
	struct instant at;
	struct logged_load logged;
	struct load_need need;
	struct record_file file;
	struct record_report report;
	struct record_leaves leaves;
	enum load_outcome outcome; /* of the load from now on */
	char subject[1024];
	char why[2048];
};

/* What the load needs of its canner: its own process, at the elevation that is known today. */
static bool read_need(struct invocation *inv, struct recording *r)
{
	const struct batch_load *load = r->logged.load;
	const struct load_case it = logged_load_case(&r->view, &r->rules, &r->logged, &load->said);
	char why[2048];
	if (!load_case_need(inv, &it, &r->need, why, sizeof why))
		return false;
	if (r->need.uncovered || !r->need.elevation_stated)
		return error_usage(inv->err,
				   "record: nothing published covers load %d of batch %s, so there "
				   "is nothing to hold a record against; 'jarwright batch show %s' "
				   "says what to do",
				   load->number, r->view.record.code, r->view.record.code);
	const struct process process = {
	    .minutes = r->need.minutes, .psi = r->need.psi, .vent_minutes = r->need.vent_minutes};
	struct record_need *need = &r->file.need;
	record_need_make(&process, r->need.canner, r->need.elevation_mft / MILLI, need);
	need->vent_stated = load->said.vent_stated;
	need->vented_minutes = load->said.vent_s / MINUTE_S;
	return true;
}

/* One file is of one load, and given once. */
static bool is_new(struct invocation *inv, const struct recording *r)
{
	char sha256[2 * DIGEST_SIZE + 1];
	hex_text(r->file.sha256, DIGEST_SIZE, sha256);
	for (size_t i = 0; i < r->view.events_n; i++) {
		const struct batch_event *event = &r->view.events[i];
		const char *known = json_string_value(json_object_get(event->body, "sha256"));
		if (!event->undone && known && strcmp(known, sha256) == 0)
			return error_usage(
			    inv->err,
			    "record: %s is in the log already, as the record of load %lld; if that "
			    "is wrong, take it back with 'jarwright undo' first",
			    r->file.name,
			    (long long)json_integer_value(json_object_get(event->body, "number")));
	}
	return true;
}

/* No record shows steam flowing: without her word it would stay unclear for good. */
static bool vent_is_said(struct invocation *inv, const struct recording *r)
{
	const struct record_judgement *j = &r->file.judgement;
	return j->outcome != RECORD_UNCLEAR || !j->reasons[RECORD_VENT_UNSTATED] ||
	       error_usage(inv->err,
			   "record: how long load %d was vented was not said, and no record shows "
			   "it; say it first with 'jarwright batch amend %s --load %d --vented "
			   "10min --why ...', then give the file again",
			   r->logged.load->number, r->view.record.code, r->logged.load->number);
}

static void judge(struct recording *r)
{
	const struct batch_load *load = r->logged.load;
	const struct batch_record *batch = &r->view.record;
	char title[WORDS_BUFFER];
	snprintf(r->subject, sizeof r->subject, "load %d of batch %s: %s, %s jars, %s",
		 load->number, batch->code, text_harmless(batch->title, title, sizeof title),
		 batch->jar, canner_title(r->need.canner));
	r->report = record_file_report(&r->file, r->subject, batch->food, r->need.from);
	record_for_load(&r->file.need, &r->file.judgement, &load->said, &r->leaves);
	record_leaves_words(r->why, sizeof r->why, &r->report, &r->leaves);
	r->outcome = load_outcome_stricter(load->outcome, r->leaves.outcome);
}

/* --- Keeping it --- */

/* The file's own name: those of its folders are nobody's business later. */
static void file_name(const char *path, char name[static TEXT_SHOWN_SIZE])
{
	const char *slash = strrchr(path, '/');
	text_show(slash ? slash + 1 : path, SIZE_MAX, name);
}

static bool save(struct invocation *inv, const struct recording *r)
{
	struct household *db;
	char name[TEXT_SHOWN_SIZE];
	json_t *found = record_json(&r->report);
	struct load_record record = {.at = r->at,
				     .number = r->logged.load->number,
				     .file = name,
				     .rows = r->file.judgement.rows,
				     .shown = record_outcome_word(r->file.judgement.outcome),
				     .outcome = r->leaves.outcome,
				     .why = r->why,
				     .found = found};
	if (!found)
		return error_failed(inv->err,
				    "record: out of memory; close other programs and try again");
	file_name(strcmp(inv->operands[2], "-") == 0 ? r->file.name : inv->operands[2], name);
	memcpy(record.sha256, r->file.sha256, DIGEST_SIZE);
	bool ok = cli_household(HOUSEHOLD_WRITE, &db, inv->err);
	if (ok) {
		ok = household_record_load(db, inv->operands[1], &record, inv->err);
		household_close(db);
	}
	json_decref(found);
	return ok;
}

/* --- The answer --- */

static void tell_load(const struct page *page, const struct recording *r, struct instant now,
		      struct source_list *sources)
{
	const struct batch_load *load = r->logged.load;
	const char *code = r->view.record.code;
	page_blank(page);
	if (r->outcome != load->outcome)
		page_format(page, "", "Load %d of batch %s was %s and is %s now.", load->number,
			    code, load_outcome_word(load->outcome), load_outcome_word(r->outcome));
	else
		page_format(page, "", "Load %d of batch %s stays %s.%s", load->number, code,
			    load_outcome_word(r->outcome),
			    r->outcome == LOAD_PROCESSED ? "" : " A record never makes it better.");
	if (r->outcome == LOAD_PROCESSED)
		return;
	if (r->leaves.break_unsaid || r->leaves.stopped_early)
		page_format(page, "",
			    "If it was kept on until the whole time was over: take this entry back "
			    "with 'jarwright undo', say it with 'jarwright batch amend %s --load "
			    "%d --interrupted HOW-LONG --ended WHEN --why ...', then give the file "
			    "again.",
			    code, load->number);
	if (r->outcome == LOAD_UNCLEAR)
		page_text(page, "", "Until it is clear, take these jars for wrongly processed:");
	wrong_text(page, &r->rules, load->out, now, sources);
	load_away_text(page, &r->view, load->number);
}

static int tell(struct invocation *inv, const struct recording *r)
{
	int status = load_outcome_status(r->outcome);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:i, s:s, s:s, s:s, s:o}", "batch",
					     r->view.record.code, "load", r->logged.load->number,
					     "was", load_outcome_word(r->logged.load->outcome),
					     "outcome", load_outcome_word(r->outcome), "why",
					     r->why, "record", record_json(&r->report)),
				   status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	record_text(&page, &r->report, &sources);
	if (r->leaves.break_unsaid || r->leaves.stopped_early)
		page_text(&page, "  say     ", r->why);
	tell_load(&page, r, instant_at(inv->now), &sources);
	sources_text(&page, &sources);
	return status;
}

static bool read_all(struct invocation *inv, struct recording *r)
{
	r->file.hashed = true;
	return invocation_when(inv, &r->at) && batch_of_operand(inv, &r->view, &r->rules) &&
	       logged_load_read(inv, &r->view, option(inv, "load"), &r->logged) &&
	       read_need(inv, r) && record_file_read(inv, inv->operands[2], &r->file) &&
	       is_new(inv, r) && vent_is_said(inv, r);
}

int batch_record_command(struct invocation *inv)
{
	struct recording *r = calloc(1, sizeof *r);
	int status;
	if (!r) {
		error_failed(inv->err, "batch: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	bool ok = read_all(inv, r);
	if (ok) {
		judge(r);
		ok = record_file_plot(inv, &r->report, &r->file) && save(inv, r);
	}
	inv->saved = ok;
	status = ok ? tell(inv, r) : command_failed(inv);
	batch_view_release(&r->view);
	free(r);
	return status;
}
