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
	const struct batch_load *load;
	struct load_amendment amendment;
	struct load_canner canner;
	struct load_judgement judgement;
	char reasons[2048];
	struct jar_set jars; /* in it */
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

static bool find_load(struct invocation *inv, struct amending *a)
{
	int number;
	if (!count_parse("load", option(inv, "load"), BATCH_JARS_MAX, &number, inv->err))
		return false;
	for (size_t i = 0; i < a->view.loads_n; i++)
		if (a->view.loads[i].number == number)
			a->load = &a->view.loads[i];
	if (!a->load)
		return error_usage(inv->err, "load: batch %s has no load %d", a->view.record.code,
				   number);
	if (a->load->outcome == LOAD_COLD)
		return error_usage(inv->err,
				   "load: load %d went through no canner; nothing is judged of it",
				   number);
	a->amendment.number = number;
	return true;
}

/* Another beginning moves what was said by the clock: that is said anew with it. */
static bool start_is_whole(struct invocation *inv, const struct amending *a)
{
	bool end = option(inv, "minutes") || option(inv, "ended");
	bool breaks = flag(inv, "uninterrupted") || option(inv, "interrupted");
	return !option(inv, "started") || (end && (breaks || a->load->said.list_n == 0)) ||
	       error_usage(inv->err,
			   "started: say the end anew too, with --ended or --minutes, and any "
			   "interruption");
}

static bool read_load(struct invocation *inv, struct amending *a)
{
	struct instant started = a->load->started;
	struct load_said *said = &a->amendment.said;
	*said = a->load->said;
	if (!start_is_whole(inv, a))
		return false;
	if (option(inv, "started") &&
	    !instant_parse("started", option(inv, "started"), a->load->started, &started, inv->err))
		return false;
	if (started.ms > instant_at(inv->now).ms)
		return error_usage(inv->err, "started: that is still to come");
	a->amendment.started_ms = option(inv, "started") ? started.ms : 0;
	if (!load_facts_read(inv, started, said))
		return false;
	struct instant out = a->load->out, ended = started;
	ended.ms += (int64_t)said->process_s * MS;
	if (option(inv, "out") && !load_out_read(inv, started, said, &out))
		return false;
	if (said->process_stated && ended.ms > out.ms)
		out = ended;
	a->amendment.out = out;
	return true;
}

/* Its canner, with what is known of the gauge today, and its jars. */
static bool read_its_canner(struct invocation *inv, struct amending *a)
{
	struct household *db;
	for (size_t i = 0; i < a->view.jars_n; i++)
		if (a->view.jars[i].load == a->load->number)
			jar_set_add(&a->jars, a->view.jars[i].number);
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_load_canner(db, a->load->canner, instant_date(a->load->started),
					&a->canner, inv->err);
	household_close(db);
	a->amendment.said.gauge = a->canner.gauge.gauge;
	return ok;
}

static bool judge(struct invocation *inv, struct amending *a)
{
	struct jar_choice sizes[BATCH_JARS_MAX];
	struct load_case load = {.record = &a->view.record,
				 .decision = a->view.decision,
				 .rules = &a->rules,
				 .canner = &a->canner,
				 .jars = sizes,
				 .said = &a->amendment.said};
	for (size_t i = 0; i < a->view.jars_n && load.jars_n < BATCH_JARS_MAX; i++)
		if (a->view.jars[i].load == a->load->number &&
		    !jar_parse(a->view.jars[i].size, &sizes[load.jars_n++], inv->err))
			return false;
	if (!load_case_judge(inv, &load, &a->judgement, a->reasons, sizeof a->reasons))
		return false;
	a->amendment.outcome = a->judgement.outcome;
	a->amendment.why_outcome = a->reasons;
	return true;
}

/* Jars of it that stand on a shelf, or were given away, when it turns out to fall short. */
static void away_text(const struct page *page, const struct amending *a)
{
	struct jar_set away = {.bits = {0}};
	char codes[2048];
	if (a->amendment.outcome == LOAD_PROCESSED)
		return;
	for (size_t i = 0; i < a->view.jars_n; i++) {
		const struct batch_jar *jar = &a->view.jars[i];
		if (jar->load == a->load->number &&
		    (jar->state == JAR_SHELF || jar->state == JAR_GIVEN))
			jar_set_add(&away, jar->number);
	}
	if (jar_set_count(&away) > 0)
		page_format(page, "no        ", "On the shelf or given away, to be taken back: %s.",
			    jar_codes(codes, sizeof codes, a->view.record.code, &away));
}

static int tell_load(struct invocation *inv, const struct amending *a)
{
	const struct load_view view = {.code = a->view.record.code,
				       .number = a->load->number,
				       .jars = a->jars,
				       .out = a->amendment.out,
				       .now = instant_at(inv->now),
				       .outcome = a->amendment.outcome,
				       .judgement = &a->judgement,
				       .why = a->reasons,
				       .held = a->view.record.held};
	int status = STATUS_DONE;
	if (view.outcome != LOAD_PROCESSED)
		status = view.outcome == LOAD_UNCLEAR ? STATUS_UNCLEAR : STATUS_REFUSED;
	if (flag(inv, "json"))
		return answer_json(inv, load_json(&view), status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	load_text(&page, &a->rules, &view, &sources);
	away_text(&page, a);
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
	if (!find_load(inv, a) || !read_load(inv, a) || !read_its_canner(inv, a) ||
	    !judge(inv, a) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
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
	       decision->process.minutes <= record->minutes && decision->process.psi <= record->psi;
}

static bool read_batch(struct invocation *inv, struct batch_amendment *out)
{
	const char *day = option(inv, "day"), *values[BATCH_LOTS_MAX];
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
	out->lots_n = option_values(inv, "lot", values, BATCH_LOTS_MAX);
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
	bool ok = operands_between(inv, 2, 2, "code of a batch") && invocation_when(inv, &a->at) &&
		  read_why(inv, a) && batch_of_operand(inv, &a->view, &a->rules);
	int status;
	if (!ok)
		status = command_failed(inv);
	else
		status = option(inv, "load") ? amend_load(inv, a) : amend_batch(inv, a);
	batch_view_release(&a->view);
	free(a);
	return status;
}
