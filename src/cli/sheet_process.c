/* The process on the sheet, what must not be changed, the steps and the loads. */
#include <string.h>

#include "sheet.h"

#define TEXT_SIZE 4000

static void add(struct sheet_maker *maker, struct sheet_fixed *list, size_t *n, const char *says,
		const char *source)
{
	if (*n == SHEET_FIXED_MAX) {
		maker->lost = true;
		return;
	}
	list[(*n)++] = (struct sheet_fixed){says, source};
}

/* "[aib539-2015-g6 p. 6-16]": the page is small, and its foot says what that is. */
static const char *short_source(struct sheet_maker *maker, const struct citation *from)
{
	char words[WORDS_BUFFER];
	return from ? sheet_keep(maker, "%s", cite(&maker->cited, words, sizeof words, from)) : "";
}

static void fixed(struct sheet_maker *maker, const char *says, const struct citation *from)
{
	add(maker, maker->fixed, &maker->sheet.fixed_n, says, short_source(maker, from));
}

void sheet_reason(struct sheet_maker *maker, const char *says, const struct citation *from)
{
	add(maker, maker->reasons, &maker->sheet.reasons_n, sheet_keep(maker, "%s", says),
	    short_source(maker, from));
}

void sheet_sources(struct sheet_maker *maker)
{
	char words[WORDS_BUFFER];
	for (size_t i = 0; i < maker->cited.sources_n; i++) {
		const struct source *source = maker->cited.sources[i];
		const struct citation whole = {source, ""};
		maker->sources[maker->sheet.sources_n++] = sheet_keep(
		    maker, "%s: %s", source->id, citation_words(words, sizeof words, &whole));
	}
}

/* --- What must not be changed --- */

/* In one item: many are short, and the page is one. */
static void fixed_limits(struct sheet_maker *maker, const struct food *food)
{
	const char *all = "";
	for (const char *at = food->limits; *at;) {
		size_t n = strcspn(at, "\n");
		all = sheet_keep(maker, "%s%s%.*s", all, *all ? "; " : "", (int)n, at);
		at += n + (at[n] == '\n');
	}
	if (*all)
		fixed(maker, sheet_keep(maker, "As published: %s", all), &food->from);
}

/* The acid of a jar, and what the decision warns of. */
static void fixed_findings(struct sheet_maker *maker, const struct decision *decision)
{
	const struct reference *ref = reference_edition();
	char text[TEXT_SIZE];
	bool first = true;
	for (size_t i = 0; i < decision->findings_n; i++) {
		const struct finding *finding = &decision->findings[i];
		bool dose = finding->rule == RULE_ACID_PER_JAR;
		/* The box of the process says it already. */
		bool said = finding->rule == RULE_VENT;
		if (said || (!dose && finding->level != LEVEL_WARN))
			continue;
		finding_text(ref, finding, text, sizeof text);
		fixed(maker, sheet_keep(maker, "%s%s", dose && !first ? "Or: " : "", text),
		      finding_citation(ref, finding));
		first = first && !dose;
	}
}

static void fixed_rules(struct sheet_maker *maker, const struct decision *decision)
{
	const struct reference *ref = reference_edition();
	const struct food *food = decision->food;
	char words[WORDS_BUFFER];
	fixed_findings(maker, decision);
	if (food->acid_need & ACID_NEED_VINEGAR)
		fixed(maker,
		      sheet_keep(maker, "All of the vinegar in the recipe, of at least %s %%",
				 milli_words(words, sizeof words,
					     ref->rules[RULE_VINEGAR_WEAK].limit_milli)),
		      &ref->rules[RULE_VINEGAR_WEAK].from);
	if (decision->process.sterile_jars)
		fixed(maker, "The empty jars must be sterile",
		      &ref->rules[RULE_JARS_NOT_STERILE].from);
	fixed(maker, "No larger jar: a larger one needs its own tested time",
	      &ref->rules[RULE_JAR_TOO_LARGE].from);
	fixed_limits(maker, food);
}

/* --- The process --- */

static const char *pack_title(enum pack pack)
{
	return pack == PACK_RAW ? "raw pack" : pack == PACK_HOT ? "hot pack" : "";
}

static const char *headspace(struct sheet_maker *maker, const struct food *food)
{
	char words[WORDS_BUFFER];
	if (food->headspace_milli_in == NONE)
		return sheet_keep(maker, "%s", food->headspace_note);
	return sheet_keep(maker, "%s%s%s",
			  inches_words(words, sizeof words, food->headspace_milli_in),
			  *food->headspace_note ? "; " : "", food->headspace_note);
}

static void tested(struct sheet_maker *maker, const struct request *rq, const struct decision *d)
{
	char words[WORDS_BUFFER], band[WORDS_BUFFER];
	const struct process *p = &d->process;
	maker->process = (struct sheet_process){
	    .minutes = p->minutes,
	    .psi = p->psi,
	    .vent = p->vent_minutes,
	    .canner = canner_title(rq->canner),
	    .pack = pack_title(p->table->pack),
	    .jar = sheet_keep(maker, "%s",
			      jar_words(words, sizeof words, reference_edition(), &rq->jar)),
	    .headspace = headspace(maker, d->food),
	    .source = short_source(maker, &p->table->from),
	};
	maker->process.elevation =
	    sheet_keep(maker, "%s (%s)", elevation_words(words, sizeof words, rq->elevation_mft),
		       band_words(band, sizeof band, p->band));
	maker->sheet.process = &maker->process;
	fixed_rules(maker, d);
}

/* The reasons of weight alone: a remark on what is refused is none. */
static void reasons(struct sheet_maker *maker, const struct decision *decision)
{
	const struct reference *ref = reference_edition();
	char text[TEXT_SIZE];
	for (size_t i = 0; i < decision->findings_n; i++) {
		const struct finding *finding = &decision->findings[i];
		bool no = finding->level == LEVEL_REFUSE;
		bool ask = finding->level == LEVEL_ASK && decision->verdict == VERDICT_UNCLEAR;
		if (!no && !ask)
			continue;
		finding_text(ref, finding, text, sizeof text);
		sheet_reason(maker, text, finding_citation(ref, finding));
	}
}

void sheet_decision(struct sheet_maker *maker, const struct request *request,
		    const struct decision *decision)
{
	if (decision->verdict == VERDICT_TESTED) {
		tested(maker, request, decision);
		return;
	}
	maker->sheet.unclear = decision->verdict == VERDICT_UNCLEAR;
	reasons(maker, decision);
}

/* --- Steps and loads --- */

void sheet_plan_steps(struct sheet_maker *maker, const struct plan *plan)
{
	char minutes[64];
	for (size_t i = 0; i < plan->steps_n; i++) {
		const struct plan_step *step = &plan->steps[i];
		struct sheet_step *out = &maker->steps[maker->sheet.steps_n++];
		out->what = stage_words(step->stage);
		if (!step->published)
			out->time = "not published, time your own";
		else if (step->stage == STAGE_DEPRESSURIZE)
			out->time = sheet_keep(
			    maker,
			    "%s minutes in all, the last %d with the weight off before you open",
			    span_words(minutes, sizeof minutes, step->minutes), plan->wait.most);
		else
			out->time = sheet_keep(maker, "%s minutes",
					       span_words(minutes, sizeof minutes, step->minutes));
	}
	maker->steps[maker->sheet.steps_n++] = (struct sheet_step){
	    "jars out, upright and apart, untouched until the seals are tested",
	    sheet_keep(maker, "%s hours", span_words(minutes, sizeof minutes, plan->seal_test))};
}

void sheet_plan_loads(struct sheet_maker *maker, const struct plan *plan, bool timed)
{
	char when[96];
	int first = 1;
	for (int i = 0; i < plan->loads; i++) {
		int jars = i + 1 == plan->loads ? plan->last_load_jars : plan->jars_per_load;
		struct sheet_load *out = &maker->loads[maker->sheet.loads_n++];
		*out = (struct sheet_load){.first = first, .last = first + jars - 1, .outcome = ""};
		out->begins = !timed ? ""
				     : sheet_keep(maker, "%s",
						  clock_span(when, sizeof when, plan->wish.start,
							     plan_begins(plan, i, 0)));
		out->out = !timed || !plan->complete
			       ? ""
			       : sheet_keep(maker, "%s",
					    clock_span(when, sizeof when, plan->wish.start,
						       plan_out(plan, i)));
		/* What no publication times cannot be counted on from. */
		if (timed && !plan->complete && i > 0)
			out->begins = "";
		first += jars;
	}
	maker->sheet.jars = plan->wish.jars;
}
