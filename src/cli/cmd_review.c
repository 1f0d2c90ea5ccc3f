/*
 * review: every batch for the shelf decided again, each of its loads judged again, with what is
 * known today. What the engine does not call tested, or the judge processed, is listed.
 */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "batch.h"
#include "jarwright/measure.h"
#include "recall.h"

struct reviewer {
	struct invocation *inv;
	struct load_rules rules;
	bool all;
	struct elevation here;
	struct review_finding *findings;
	size_t n, room, batches_n, questions_n;
	/* All that is not covered, whether or not jars of it are left: they may be in later ones.
	 */
	struct fault_load *faulty;
	size_t faulty_n;
};

/* --- Jars at stake --- */

/*
 * Would somebody eat of it, trusting it? What was known not to be processed and went into the
 * cold in time was rightly dealt with.
 */
static bool at_stake(const struct reviewer *r, const struct review_jar *jar, bool known)
{
	if (jar->state == JAR_DISCARDED || (jar->state == JAR_EATEN && !r->all))
		return false;
	bool cold = jar->state == JAR_REFRIGERATED || jar->state == JAR_FROZEN;
	return !(known && cold && !jar->late);
}

/* load 0: of all loads. */
static void take_jars(const struct reviewer *r, const struct review_case *batch, int load,
		      bool known, struct review_finding *out)
{
	for (size_t i = 0; i < batch->jars_n; i++) {
		const struct review_jar *jar = &batch->jars[i];
		if ((load && jar->load != load) || !at_stake(r, jar, known))
			continue;
		jar_set_add(&out->jars, jar->number);
		out->recalled_n += jar->recalled;
	}
}

/* --- Findings --- */

/* 'the big one', as a shell takes it. */
static void quoted(const char *name, char *buffer, size_t size)
{
	size_t n = 0;
	buffer[n++] = '\'';
	for (; *name && n + 6 < size; name++) {
		if (*name == '\'') {
			memcpy(buffer + n, "'\\'", 3);
			n += 3;
		}
		buffer[n++] = *name;
	}
	buffer[n++] = '\'';
	buffer[n] = '\0';
}

static bool no_memory(struct error *err)
{
	return error_failed(err, "review: out of memory; close other programs and try again");
}

static bool add_faulty(struct reviewer *r, int64_t batch, int load, struct error *err)
{
	struct fault_load *faulty = realloc(r->faulty, (r->faulty_n + 1) * sizeof *faulty);
	if (!faulty)
		return no_memory(err);
	r->faulty = faulty;
	r->faulty[r->faulty_n++] = (struct fault_load){batch, load};
	return true;
}

/* A zeroed finding behind the last one; it counts once it is kept. */
static struct review_finding *new_finding(struct reviewer *r, struct error *err)
{
	if (r->n == r->room) {
		size_t room = r->room ? r->room * 2 : 16;
		struct review_finding *findings = realloc(r->findings, room * sizeof *findings);
		if (!findings) {
			no_memory(err);
			return NULL;
		}
		r->findings = findings;
		r->room = room;
	}
	r->findings[r->n] = (struct review_finding){.load = 0};
	return &r->findings[r->n];
}

static struct review_finding *add(struct reviewer *r, const struct review_case *batch, int load,
				  bool known, struct error *err)
{
	struct review_finding *finding = new_finding(r, err);
	if (!finding)
		return NULL;
	finding->load = load;
	take_jars(r, batch, load, known, finding);
	snprintf(finding->code, sizeof finding->code, "%s", batch->record.code);
	snprintf(finding->title, sizeof finding->title, "%s", batch->record.title);
	snprintf(finding->day, sizeof finding->day, "%s", batch->record.day);
	snprintf(finding->line, sizeof finding->line, "jarwright recall open batch %s",
		 batch->record.code);
	return finding;
}

/* Kept only if a jar is at stake. */
static void keep(struct reviewer *r, const struct review_finding *finding)
{
	if (jar_set_count(&finding->jars) == 0)
		return;
	r->n++;
	r->questions_n += finding->question;
}

/* --- The batch as a whole --- */

static bool is_covered(const struct review_case *batch, char *why, size_t size)
{
	const struct batch_record *record = &batch->record;
	if (record->held) {
		snprintf(why, size,
			 "what was learned after it was decided, a pH or its elevation, "
			 "takes it off the shelf");
		return false;
	}
	if (!record->elevation_stated) {
		snprintf(why, size, "its elevation is not known");
		return false;
	}
	if (!batch_holds(batch, record->elevation_mft, why, size))
		return false;
	if (*record->recipe && strcmp(record->edition, reference_edition()->edition) != 0) {
		snprintf(why, size,
			 "its recipe was compared under edition %s, and was not since: hold "
			 "it against the formulas again with 'jarwright recipe compare'",
			 record->edition);
		return false;
	}
	return true;
}

/* --- A load --- */

static bool known_size(const struct review_case *batch, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (batch->jars[k].load == batch->jars[i].load &&
		    strcmp(batch->jars[k].size, batch->jars[i].size) == 0)
			return true;
	return false;
}

static bool read_sizes(const struct review_case *batch, int load,
		       struct jar_choice sizes[BATCH_JARS_MAX], size_t *n, struct error *err)
{
	*n = 0;
	for (size_t i = 0; i < batch->jars_n && *n < BATCH_JARS_MAX; i++)
		if (batch->jars[i].load == load && !known_size(batch, i) &&
		    !jar_parse(batch->jars[i].size, &sizes[(*n)++], err))
			return false;
	return true;
}

/* Judged as it would be today. What cannot be judged is not covered. */
static bool is_processed(struct reviewer *r, const struct review_case *batch,
			 const struct review_load *load, struct load_judgement *out, char *why,
			 size_t size)
{
	struct jar_choice sizes[BATCH_JARS_MAX];
	struct error reason = {.kind = ERROR_NONE};
	struct invocation inv = *r->inv;
	struct load_said said = load->said;
	struct load_canner canner = {.id = load->canner, .canner = load->kind};
	struct load_case one = {.record = &batch->record,
				.decision = batch->decision,
				.rules = &r->rules,
				.canner = &canner,
				.jars = sizes,
				.said = &said};
	/* The test of that day stays, if it was worse than what is in the log now. */
	if (load->gauge.known &&
	    (!said.gauge.known || load->gauge.high_mpsi > said.gauge.high_mpsi))
		said.gauge.high_mpsi = load->gauge.high_mpsi;
	if (load->gauge.known &&
	    (!said.gauge.known || load->gauge.error_mpsi > said.gauge.error_mpsi))
		said.gauge.error_mpsi = load->gauge.error_mpsi;
	said.gauge.known = said.gauge.known || load->gauge.known;
	canner.gauge.gauge = said.gauge;
	inv.err = &reason;
	*out = (struct load_judgement){.outcome = LOAD_UNCLEAR};
	if (!load->canner) {
		snprintf(why, size, "the log does not say which canner it was in");
		return false;
	}
	if (!read_sizes(batch, load->number, sizes, &one.jars_n, &reason) ||
	    !load_case_judge(&inv, &one, out, why, size)) {
		snprintf(why, size, "%s", reason.text);
		return false;
	}
	return out->outcome == LOAD_PROCESSED;
}

/* Did the pressure fall short for a gauge that read high, and for nothing else? */
static int32_t gauge_was_high(const struct load_judgement *judgement)
{
	if (judgement->findings_n == 0 || judgement->findings[0].fact != FACT_PSI ||
	    judgement->findings[0].missing)
		return 0;
	for (size_t i = 1; i < judgement->findings_n; i++)
		if (judgement->findings[i].fact != FACT_GAUGE)
			return 0;
	return judgement->findings[0].gauge_high_mpsi;
}

static void say_line(struct review_finding *finding, const struct review_load *load, int32_t high)
{
	char day[DATE_SIZE], name[KITCHEN_NAME_SIZE * 4], psi[WORDS_BUFFER];
	if (high <= 0)
		return;
	date_text(instant_date(load->started), day);
	quoted(load->canner_name, name, sizeof name);
	snprintf(finding->line, sizeof finding->line,
		 "jarwright recall open gauge %s --high %.20spsi --since %s --until %s", name,
		 milli_words(psi, sizeof psi, high), day, day);
}

static bool review_loads(struct reviewer *r, const struct review_case *batch, struct error *err)
{
	for (size_t i = 0; i < batch->loads_n; i++) {
		const struct review_load *load = &batch->loads[i];
		struct load_judgement judgement;
		char why[2048] = "";
		bool known = load->outcome != LOAD_PROCESSED;
		if (load->outcome == LOAD_COLD)
			continue;
		bool processed = is_processed(r, batch, load, &judgement, why, sizeof why);
		if (processed && !known)
			continue;
		struct review_finding *finding = add(r, batch, load->number, known, err);
		if (!finding || !add_faulty(r, batch->record.id, load->number, err))
			return false;
		snprintf(finding->why, sizeof finding->why, "%s",
			 *why ? why : "it was logged as not processed as decided");
		say_line(finding, load, gauge_was_high(&judgement));
		keep(r, finding);
	}
	return true;
}

/* --- A batch --- */

static bool ask_elevation(struct reviewer *r, const struct review_case *batch, struct error *err)
{
	const struct batch_record *record = &batch->record;
	char why[1024], was[WORDS_BUFFER], is[WORDS_BUFFER];
	bool own = record->elevation_own || option(r->inv, "elevation");
	if (!r->here.stated || !own || r->here.mft == record->elevation_mft ||
	    batch_holds(batch, r->here.mft, why, sizeof why))
		return true;
	struct review_finding *finding = add(r, batch, 0, false, err);
	if (!finding)
		return false;
	finding->question = true;
	snprintf(finding->why, sizeof finding->why, "decided at %s: %s",
		 elevation_words(was, sizeof was, record->elevation_mft), why);
	snprintf(finding->line, sizeof finding->line,
		 "jarwright recall open elevation --was %.20sft --is %.20sft",
		 milli_words(was, sizeof was, record->elevation_mft),
		 milli_words(is, sizeof is, r->here.mft));
	keep(r, finding);
	return true;
}

static bool review_one(void *context, const struct review_case *batch, struct error *err)
{
	struct reviewer *r = context;
	char why[2048];
	r->batches_n++;
	if (is_covered(batch, why, sizeof why))
		return review_loads(r, batch, err) && ask_elevation(r, batch, err);
	struct review_finding *finding = add(r, batch, 0, batch->record.held, err);
	if (!finding || !add_faulty(r, batch->record.id, 0, err))
		return false;
	snprintf(finding->why, sizeof finding->why, "%s", why);
	keep(r, finding);
	return true;
}

/* --- Later batches --- */

/* The jars of one batch that was made with what is not covered; *at goes behind them. */
static bool take_later(struct reviewer *r, const struct touched_jars *jars, size_t *at,
		       struct error *err)
{
	const struct touched_jar *first = &jars->jars[*at];
	struct review_finding *finding = new_finding(r, err);
	if (!finding)
		return false;
	for (; *at < jars->jars_n && jars->jars[*at].batch == first->batch; ++*at) {
		const struct touched_jar *jar = &jars->jars[*at];
		const struct review_jar now = {.state = jar->state};
		if (jar->step > 0 && at_stake(r, &now, false))
			jar_set_add(&finding->jars, jar->number);
	}
	touched_batch_code(first, finding->code, sizeof finding->code);
	snprintf(finding->title, sizeof finding->title, "%s", first->title);
	snprintf(finding->day, sizeof finding->day, "%s", first->day);
	snprintf(
	    finding->why, sizeof finding->why,
	    "jars of a batch that is not covered went into it; 'jarwright trace batch %s' says "
	    "which",
	    finding->code);
	snprintf(finding->line, sizeof finding->line, "jarwright recall open batch %s",
		 finding->code);
	keep(r, finding);
	return true;
}

static bool review_later(struct reviewer *r, struct household *db, struct error *err)
{
	const struct fault fault = {
	    .kind = FAULT_LOADS, .loads = r->faulty, .loads_n = r->faulty_n};
	struct touched_jars jars;
	if (!household_touched(db, &fault, &jars, err))
		return false;
	bool ok = true;
	for (size_t i = 0; i < jars.jars_n && ok;)
		ok = take_later(r, &jars, &i, err);
	touched_jars_release(&jars);
	return ok;
}

/* --- The command --- */

static int answer(struct invocation *inv, const struct reviewer *r)
{
	char here[WORDS_BUFFER] = "";
	if (r->here.stated)
		elevation_words(here, sizeof here, r->here.mft);
	const struct review_view view = {.edition = reference_edition()->edition,
					 .batches_n = r->batches_n,
					 .unsettled_n = r->n - r->questions_n,
					 .elevation = here,
					 .findings = r->findings,
					 .findings_n = r->n};
	int status = r->n > 0 ? STATUS_REFUSED : STATUS_DONE;
	if (flag(inv, "json"))
		return answer_json(inv, review_json(&view), status);
	const struct page page = answer_page(inv);
	review_text(&page, &view);
	return status;
}

static bool read_filter(struct invocation *inv, struct review_filter *out)
{
	struct date since;
	*out = (struct review_filter){.all = flag(inv, "all"), .since = option(inv, "since")};
	return !out->since || date_parse("since", out->since, &since, inv->err);
}

static int run_review(struct invocation *inv)
{
	struct reviewer r = {.inv = inv, .all = flag(inv, "all")};
	struct review_filter filter;
	struct household *db;
	if (!operands_between(inv, 0, 0, "") || !read_filter(inv, &filter) ||
	    !invocation_elevation(inv, &r.here) ||
	    !load_rules_find(reference_edition(), reference_tables_edition(), &r.rules, inv->err) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_review(db, &filter, review_one, &r, inv->err) &&
		  review_later(&r, db, inv->err);
	household_close(db);
	int status = ok ? answer(inv, &r) : command_failed(inv);
	free(r.findings);
	free(r.faulty);
	return status;
}

/* clang-format off */
static const struct option_spec options[] = {
    OPTION_ELEVATION,
    {"since", "DATE", "batches put up on this day or later: 2026-06-01"},
    {"all", NULL, "also batches of which no jar is left, and jars that were eaten"},
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright review", "what of the shelf is not covered by what is known today"},
    {"jarwright review --elevation 4100ft", "what would not be, if the kitchen were that high"},
    EXAMPLES_END,
};

const struct command command_review = {
    .name = "review",
    .synopsis = "[--elevation E] [--since DATE] [--all]",
    .summary = "decides every batch on the shelf again, with what is known today",
    .description =
	"Decides each batch for the shelf of which jars are left, or were given away, again under "
	"this edition of the tables, and judges its loads again: with the gauge as its tests "
	"show it now, with loads and elevations as amended. What is no longer covered is listed "
	"with the reason and the line that recalls it. A kitchen's elevation that is another now "
	"is asked about. The exit code is 0 if nothing is listed, 3 if something is.",
    .options = options,
    .examples = examples,
    .run = run_review,
};
