/* record: did this load get its process, by the file of a recorder? */
#include <stdlib.h>

#include "cli.h"
#include "jarwright/measure.h"
#include "record_file.h"
#include "request.h"

static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    {"jars", "sterile|clean", "state of the empty jars"},
    {"vented", "TIME", "how long steam flowed from the vent by your clock: 10min"},
    RECORD_FILE_OPTIONS,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright record load.csv peaches --canner boiling-water --pack hot --jar quart",
     "was it kept at the boil for the whole time?"},
    {"jarwright record load.csv asparagus --canner dial-gauge --jar pint --pack raw --vented 10min "
     "--svg load.svg",
     "a pressure canner, with a plot"},
    {"jarwright record load.csv beets --canner weighted-gauge --jar pint --vented 10min "
     "--temp-column probe1 --temp-unit C",
     "a file whose heading does not say enough"},
    EXAMPLES_END,
};

static bool read_vented(struct invocation *inv, struct record_need *need)
{
	const char *text = option(inv, "vented");
	struct quantity vented;
	if (!text)
		return true;
	if (!need->pressure)
		return error_usage(inv->err,
				   "vented: only a pressure canner is vented; leave it out");
	if (!quantity_parse(DIMENSION_DURATION, "vented", text, &vented, inv->err))
		return false;
	if (vented.amount.num < 0)
		return error_usage(inv->err, "vented: a time cannot be negative; type 10min");
	need->vent_stated = true;
	need->vented_minutes = rational_double(vented.amount);
	return true;
}

static void subject_words(char *buffer, size_t size, const struct asked *asked,
			  const struct decision *decision)
{
	char jar[WORDS_BUFFER], height[WORDS_BUFFER];
	const struct request *rq = &asked->request;
	snprintf(buffer, size, "%s, %s, %s, %s", decision->food->title,
		 jar_words(jar, sizeof jar, reference_edition(), &rq->jar),
		 canner_title(rq->canner),
		 elevation_words(height, sizeof height, rq->elevation_mft));
}

static int outcome_status(enum record_outcome outcome)
{
	if (outcome == RECORD_UNDER_PROCESSED)
		return STATUS_REFUSED;
	return outcome == RECORD_UNCLEAR ? STATUS_UNCLEAR : STATUS_DONE;
}

static int answer(struct invocation *inv, const struct record_report *report)
{
	int status = outcome_status(report->judgement->outcome);
	if (flag(inv, "json"))
		return answer_json(inv, record_json(report), status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	record_text(&page, report, &sources);
	sources_text(&page, &sources);
	return status;
}

#define MILLI_FT 1000.0

static int judge_file(struct invocation *inv, const char *path, const struct asked *asked,
		      const struct decision *decision, const struct load_rules *rules,
		      struct record_file *file)
{
	char subject[4 * WORDS_BUFFER];
	record_need_make(&decision->process, asked->request.canner,
			 asked->request.elevation_mft / MILLI_FT, &file->need);
	if (!read_vented(inv, &file->need) || !record_file_read(inv, path, file))
		return command_failed(inv);
	subject_words(subject, sizeof subject, asked, decision);
	struct record_report report =
	    record_file_report(file, subject, decision->food->slug, &decision->process.table->from);
	report.rules = rules;
	return record_file_plot(inv, &report, file) ? answer(inv, &report) : command_failed(inv);
}

/* What is not tested is not held against anything: the answer is check's. */
static int answer_untested(struct invocation *inv, const struct asked *asked,
			   const struct decision *decision)
{
	const struct reference *ref = reference_edition();
	int status = verdict_exit_code(decision->verdict);
	if (flag(inv, "json"))
		return answer_json(inv, decision_json(ref, &asked->request, decision), status);
	struct page page = answer_page(inv);
	decision_text(&page, ref, &asked->request, decision, asked->elevation.typed);
	return status;
}

/* The first operand is the file; the others are the food's words. */
static bool read_asked(struct invocation *inv, const char **path, struct asked *asked)
{
	if (!operands_between(inv, 2, 32, "FILE FOOD"))
		return false;
	*path = *inv->operands++;
	inv->operands_n--;
	bool ok = asked_read(inv, "jars", asked);
	inv->operands--; /* as it was: the caller's to free */
	inv->operands_n++;
	return ok;
}

static int run(struct invocation *inv)
{
	const char *path = NULL;
	struct asked asked;
	struct decision decision;
	struct load_rules rules;
	if (!load_rules_find(reference_edition(), reference_tables_edition(), &rules, inv->err) ||
	    !read_asked(inv, &path, &asked))
		return command_failed(inv);
	decide(reference_edition(), &asked.request, &decision);
	if (decision.verdict != VERDICT_TESTED)
		return answer_untested(inv, &asked, &decision);
	struct record_file *file = calloc(1, sizeof *file);
	if (!file) {
		error_failed(inv->err, "record: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	int status = judge_file(inv, path, &asked, &decision, &rules, file);
	free(file);
	return status;
}

const struct command command_record = {
    .name = "record",
    .synopsis = "FILE FOOD --canner KIND --jar JAR [--pack P] [--elevation E] [--vented TIME] "
		"[--svg OUT]",
    .summary = "hold a recorder's file (CSV) against what the load needed",
    .description =
	"Decides as check does; only a tested process is ever held against a record. Then says "
	"whether the load was held at what it needs for the whole time: held; restarted, when it "
	"fell below and a whole time followed; under-processed; or unclear, when the record cannot "
	"show it. A reading below is below, by however little. Say your true elevation: a higher "
	"one lets cooler water pass for boiling. For a load that you logged, 'jarwright batch "
	"record "
	"CODE FILE' holds the file against that load's own decision and keeps what it shows. The "
	"exit code is 0 for held and restarted, 3 for "
	"under-processed, 5 for unclear.",
    .options = options,
    .examples = examples,
    .run = run,
};
