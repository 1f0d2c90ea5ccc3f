/* record: did this load get its process, by the file of a recorder? */
#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>

#include "cli.h"
#include "jarwright/measure.h"
#include "jarwright/physics.h"
#include "jarwright/render_record.h"
#include "jarwright/text.h"
#include "request.h"

static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    {"jars", "sterile|clean", "state of the empty jars"},
    {"vented", "TIME", "how long steam flowed from the vent by your clock: 10min"},
    {"time-column", "NAME", "heading or number of the column with the time"},
    {"date-column", "NAME", "heading or number of the date's column, if it has its own"},
    {"temp-column", "NAME", "heading or number of the column with the temperature"},
    {"pressure-column", "NAME", "heading or number of the column with the pressure"},
    {"temp-unit", "C|F|K", "unit of the temperature, where the heading does not say"},
    {"pressure-unit", "psi|kPa|hPa|bar", "unit of the pressure, where the heading does not say"},
    {"pressure-zero", "gauge|absolute",
     "does the pressure read 0 in the open air, or about 14.7 "
     "psi (101 kPa)?"},
    {"dates", "day-first|month-first", "what 3/4/2026 means"},
    {"time-unit", "s|min", "what a bare number in the time column counts"},
    {"svg", "OUT", "write a plot to this new file"},
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

/* A word of an option and what it stands for; the order is that of the option's argument. */
struct word {
	const char *word;
	int value;
};
static const struct word temp_units[] = {
    {"C", CSV_CELSIUS}, {"F", CSV_FAHRENHEIT}, {"K", CSV_KELVIN}, {NULL, 0}};
static const struct word pressure_units[] = {
    {"psi", CSV_PSI}, {"kPa", CSV_KPA}, {"hPa", CSV_HPA}, {"bar", CSV_BAR}, {NULL, 0}};
static const struct word zeros[] = {{"gauge", CSV_GAUGE}, {"absolute", CSV_ABSOLUTE}, {NULL, 0}};
static const struct word date_orders[] = {
    {"day-first", CSV_DAY_FIRST}, {"month-first", CSV_MONTH_FIRST}, {NULL, 0}};
static const struct word time_units[] = {{"s", CSV_SECONDS}, {"min", CSV_MINUTES}, {NULL, 0}};

static bool word_option(struct invocation *inv, const char *name, const struct word *words,
			int *out)
{
	const char *text = option(inv, name);
	char shown[TEXT_SHOWN_SIZE];
	*out = 0;
	if (!text)
		return true;
	for (; words->word; words++) {
		*out = words->value;
		if (strcasecmp(words->word, text) == 0)
			return true;
	}
	text_show(text, SIZE_MAX, shown);
	return error_usage(inv->err, "%s: '%s' is not known; type %s", name, shown,
			   command_option(inv->command, name)->argument);
}

static bool read_wish(struct invocation *inv, struct record_csv_wish *wish)
{
	int temperature, pressure, zero, dates, clock;
	if (!word_option(inv, "temp-unit", temp_units, &temperature) ||
	    !word_option(inv, "pressure-unit", pressure_units, &pressure) ||
	    !word_option(inv, "pressure-zero", zeros, &zero) ||
	    !word_option(inv, "dates", date_orders, &dates) ||
	    !word_option(inv, "time-unit", time_units, &clock))
		return false;
	*wish = (struct record_csv_wish){
	    .time = option(inv, "time-column"),
	    .date = option(inv, "date-column"),
	    .value = {option(inv, "temp-column"), option(inv, "pressure-column")},
	    .temperature = (enum csv_temperature)temperature,
	    .pressure = (enum csv_pressure)pressure,
	    .zero = (enum csv_zero)zero,
	    .dates = (enum csv_dates)dates,
	    .clock = (enum csv_clock)clock,
	};
	return true;
}

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

/* What the rows go through. */
struct trace {
	struct record_need need;
	bool begun;
	struct record_judge judge;
	struct record_outline outline;
};

static bool take_row(void *context, const struct record_csv_found *found,
		     const struct record_sample *sample, struct error *err)
{
	struct trace *trace = context;
	(void)err;
	if (!trace->begun) {
		for (int c = 0; c < RECORD_CHANNELS; c++)
			if (!found->has[c])
				record_need_without(&trace->need, (enum record_channel)c);
		record_judge_start(&trace->judge, &trace->need);
		record_outline_start(&trace->outline);
		trace->begun = true;
	}
	record_judge_add(&trace->judge, sample);
	record_outline_add(&trace->outline, &trace->need, sample);
	return true;
}

static bool read_file(struct invocation *inv, const char *path, struct record_csv_wish *wish,
		      struct trace *trace, struct record_csv_found *found)
{
	struct stat is;
	bool standard = strcmp(path, "-") == 0;
	FILE *file = standard ? stdin : fopen(path, "re");
	if (!file)
		return error_usage(inv->err, "%s: %s; check the name", wish->name, strerror(errno));
	bool ok = true;
	if (fstat(fileno(file), &is) == 0 && S_ISDIR(is.st_mode))
		ok = error_usage(inv->err, "%s: it is a folder; name a file", wish->name);
	ok = ok && record_csv_read(file, wish, take_row, trace, found, inv->err);
	if (!standard)
		(void)fclose(file); /* it was only read */
	return ok;
}

/* A new file, so that no record and no older plot is ever overwritten. */
static bool write_plot(struct invocation *inv, const char *path, const struct record_report *report,
		       const struct record_outline *outline)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(path, SIZE_MAX, shown);
	FILE *file = fopen(path, "wxe");
	if (!file && errno == EEXIST)
		return error_usage(
		    inv->err, "svg: '%s' is there already; name another file, or remove it", shown);
	if (!file)
		return error_failed(inv->err, "svg: '%s': %s; name another place", shown,
				    strerror(errno));
	record_svg(file, report, outline);
	bool lost = ferror(file) != 0;
	lost = fclose(file) != 0 || lost;
	if (lost)
		(void)remove(path); /* half a plot is none */
	return !lost ||
	       error_failed(inv->err, "svg: '%s' could not be written; free some space", shown);
}

static int outcome_status(enum record_outcome outcome)
{
	if (outcome == RECORD_UNDER_PROCESSED)
		return STATUS_REFUSED;
	return outcome == RECORD_UNCLEAR ? STATUS_UNCLEAR : STATUS_DONE;
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

static int answer_trace(struct invocation *inv, const struct record_report *report,
			const struct record_outline *outline)
{
	const char *plot = option(inv, "svg");
	int status = outcome_status(report->judgement->outcome);
	if (plot && !write_plot(inv, plot, report, outline))
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, record_json(report), status);
	struct page page = answer_page(inv);
	record_text(&page, report);
	return status;
}

#define MILLI_FT 1000.0

static int judge_file(struct invocation *inv, const char *path, const struct asked *asked,
		      const struct decision *decision, struct trace *trace)
{
	struct record_csv_wish wish;
	struct record_csv_found found;
	struct record_judgement judgement;
	char name[TEXT_SHOWN_SIZE], subject[4 * WORDS_BUFFER];
	double elevation_ft = asked->request.elevation_mft / MILLI_FT;
	record_need_make(&decision->process, asked->request.canner, elevation_ft, &trace->need);
	if (!read_wish(inv, &wish) || !read_vented(inv, &trace->need))
		return command_failed(inv);
	text_show(strcmp(path, "-") == 0 ? "standard input" : path, SIZE_MAX, name);
	wish.name = name;
	wish.wanted[RECORD_TEMPERATURE] = true;
	wish.wanted[RECORD_PRESSURE] = trace->need.pressure;
	wish.air_psi = physics_air_pressure(elevation_ft);
	if (!read_file(inv, path, &wish, trace, &found))
		return command_failed(inv);
	record_judge_end(&trace->judge, &judgement);
	subject_words(subject, sizeof subject, asked, decision);
	struct record_report report = {.file = name,
				       .subject = subject,
				       .decision = decision,
				       .need = &trace->need,
				       .judgement = &judgement,
				       .found = &found};
	return answer_trace(inv, &report, &trace->outline);
}

static int run(struct invocation *inv)
{
	const struct reference *ref = reference_edition();
	struct asked asked;
	struct decision decision;
	if (!operands_between(inv, 2, 32, "FILE FOOD"))
		return command_failed(inv);
	const char *path = *inv->operands++;
	inv->operands_n--;
	bool ok = asked_read(inv, "jars", &asked);
	inv->operands--; /* as it was: the caller's to free */
	inv->operands_n++;
	if (!ok)
		return command_failed(inv);
	decide(ref, &asked.request, &decision);
	if (decision.verdict != VERDICT_TESTED) {
		int status = verdict_exit_code(decision.verdict);
		if (flag(inv, "json"))
			return answer_json(inv, decision_json(ref, &asked.request, &decision),
					   status);
		struct page page = answer_page(inv);
		decision_text(&page, ref, &asked.request, &decision, asked.elevation.typed);
		return status;
	}
	struct trace *trace = calloc(1, sizeof *trace);
	if (!trace) {
		error_failed(inv->err, "record: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	int status = judge_file(inv, path, &asked, &decision, trace);
	free(trace);
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
	"one lets cooler water pass for boiling. The exit code is 0 for held and restarted, 3 for "
	"under-processed, 5 for unclear.",
    .options = options,
    .examples = examples,
    .run = run,
};
