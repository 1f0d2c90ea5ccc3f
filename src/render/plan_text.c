/* The plan of a day's canning: what happens when. */
#include <string.h>

#include "jarwright/render.h"

#define HOUR    60
#define DAY     (24 * HOUR)
#define INDENT  "  "
#define CAREFUL "  careful "

/* "14:05", or "02:10 +1 day". */
static void clock_words(char *buffer, size_t size, int minutes)
{
	int days = minutes / DAY, rest = minutes % DAY;
	if (days == 0)
		snprintf(buffer, size, "%02d:%02d", rest / HOUR, rest % HOUR);
	else
		snprintf(buffer, size, "%02d:%02d +%d day%s", rest / HOUR, rest % HOUR, days,
			 days > 1 ? "s" : "");
}

char *clock_span(char *buffer, size_t size, int start, struct span span)
{
	char from[32], to[32];
	clock_words(from, sizeof from, start + span.least);
	clock_words(to, sizeof to, start + span.most);
	if (span.least == span.most)
		snprintf(buffer, size, "%s", from);
	else
		snprintf(buffer, size, "%s to %s", from, to);
	return buffer;
}

char *span_words(char *buffer, size_t size, struct span span)
{
	if (span.least == span.most)
		snprintf(buffer, size, "%d", span.least);
	else
		snprintf(buffer, size, "%d to %d", span.least, span.most);
	return buffer;
}

const char *stage_words(enum stage stage)
{
	static const char *const words[] = {
	    [STAGE_HEAT] = "heat the loaded canner",
	    [STAGE_VENT] = "let steam flow freely (vent)",
	    [STAGE_PRESSURIZE] = "close the vent, let the pressure rise",
	    [STAGE_PROCESS] = "process; the time starts at the full boil, steam or pressure",
	    [STAGE_DEPRESSURIZE] = "heat off; let the pressure fall by itself",
	    [STAGE_REST] = "heat off, lid off; let it stand",
	};
	return words[stage];
}

static void step_line(const struct page *page, const struct plan *plan, int load, size_t step,
		      struct source_list *sources)
{
	char lead[128], when[96], minutes[32], source[WORDS_BUFFER] = "";
	const struct plan_step *s = &plan->steps[step];
	clock_span(when, sizeof when, plan->wish.start, plan_begins(plan, load, step));
	snprintf(lead, sizeof lead, "  %-16s  ", when);
	span_words(minutes, sizeof minutes, s->minutes);
	if (s->minutes.from)
		cite(sources, source, sizeof source, s->minutes.from);
	if (!s->published)
		page_format(page, lead, "%s: not published, time your own", stage_words(s->stage));
	else if (s->stage == STAGE_DEPRESSURIZE)
		page_format(page, lead,
			    "%s, then take the weight off and wait %d minutes before you open it: "
			    "%s minutes in all %s",
			    stage_words(s->stage), plan->wait.most, minutes,
			    load == 0 ? source : "");
	else
		page_format(page, lead, "%s: %s minutes %s", stage_words(s->stage), minutes,
			    load == 0 ? source : "");
}

static void load_lines(const struct page *page, const struct plan *plan, int load,
		       struct source_list *sources)
{
	int jars = load + 1 == plan->loads ? plan->last_load_jars : plan->jars_per_load;
	char lead[128], when[96], hours[32], from[32], to[32];
	page_blank(page);
	page_format(page, "", "Load %d of %d: %d jar%s", load + 1, plan->loads, jars,
		    jars > 1 ? "s" : "");
	for (size_t i = 0; i < plan->steps_n; i++)
		step_line(page, plan, load, i, sources);
	struct span out = plan_out(plan, load);
	clock_span(when, sizeof when, plan->wish.start, out);
	snprintf(lead, sizeof lead, "  %-16s  ", when);
	page_text(page, lead, "jars out; leave them to cool in still air");
	span_words(hours, sizeof hours, plan->seal_test);
	int earliest = plan->wish.start + out.most + plan->seal_test.least * HOUR;
	int latest = plan->wish.start + out.least + plan->seal_test.most * HOUR;
	clock_words(from, sizeof from, earliest);
	clock_words(to, sizeof to, latest);
	if (earliest <= latest)
		page_format(page, "  seal check        ", "%s to %s (%s hours after they are out)",
			    from, to, hours);
	else
		page_format(page, "  seal check        ", "%s hours after they are out", hours);
}

void yield_text(const struct page *page, const struct reference *ref, const struct yield *yield)
{
	char pounds[WORDS_BUFFER];
	page_format(page, INDENT, "Published: %s lb for %d %s jars; the rest in proportion.",
		    milli_words(pounds, sizeof pounds, yield->published_milli_lb),
		    yield->published_jars, ref->jars[yield->published_jar].name);
}

char *left_words(char *buffer, size_t size, const struct yield *yield)
{
	double left_lb = rational_double(yield->left_lb);
	*buffer = '\0';
	if (left_lb >= 0.05) /* less would be "0.0 lb" */
		snprintf(buffer, size, ", %.1f lb left", left_lb);
	return buffer;
}

static void load_line(const struct page *page, const struct plan *plan,
		      const struct plan_subject *subject, struct source_list *sources)
{
	char range[32], source[WORDS_BUFFER];
	if (plan->load_origin == LOAD_STATED) {
		if (subject->canner)
			page_format(page, INDENT, "Your canner '%s' holds %d of them.",
				    subject->canner, plan->jars_per_load);
		return;
	}
	span_words(range, sizeof range, plan->usual_load);
	page_format(page, INDENT, "The usual load is %s%s %s; say --holds-jars if yours differs.",
		    range,
		    plan->load_origin == LOAD_OF_LARGER_JAR
			? " jars of the next larger size; none is published for these"
			: "",
		    cite(sources, source, sizeof source, plan->usual_load.from));
}

/* What would upset the day, before the day is read. */
static void late_lines(const struct page *page, const struct plan *plan)
{
	char until[32] = "midnight", last[32];
	if (!plan->complete)
		page_text(page, CAREFUL,
			  "These times leave out the heating of the steam canner, which no "
			  "publication gives: all later times shift by it.");
	if (!plan->late)
		return;
	if (plan->wish.until != DAY)
		clock_words(until, sizeof until, plan->wish.until);
	if (plan->last_start < 0) {
		page_format(page, CAREFUL, "No load started today is surely out by %s.", until);
		return;
	}
	clock_words(last, sizeof last, plan->last_start);
	page_format(page, CAREFUL,
		    "The last load may not be out by %s: it must be on by %s%s. Make fewer jars "
		    "today, or start earlier; never cut a process short.",
		    until, last, plan->complete ? "" : ", less the time it heats");
}

static void closing_lines(const struct page *page)
{
	page_blank(page);
	page_text(
	    page, "note    ",
	    "Preparing the food and filling the jars is not in the times; a later load starts "
	    "when the one before is out, if its jars are filled by then. If the boil, the "
	    "steam or the pressure is lost, the process time starts again.");
}

/* "20 pint jars, 1.8 lb left, in 3 loads of 8" */
static void heading(const struct page *page, const struct plan *plan,
		    const struct plan_subject *subject)
{
	char last[96], all[32], left[64] = "", loads[32] = "1 load";
	int jars = plan->wish.jars;
	size_t letters = strlen(subject->jars) - (jars == 1); /* "pint jars", without its s */
	clock_span(last, sizeof last, plan->wish.start, plan->all);
	span_words(all, sizeof all, plan->all);
	if (subject->yield)
		left_words(left, sizeof left, subject->yield);
	if (plan->loads > 1)
		snprintf(loads, sizeof loads, "%d loads of %d", plan->loads, plan->jars_per_load);
	page_format(page, "PLAN  ", "%d %.*s%s%s in %s; the last is out %s %s (%s minutes)", jars,
		    (int)letters, subject->jars, left, *left ? "," : "", loads,
		    plan->complete ? "at" : "no sooner than", last, all);
}

void plan_text(const struct page *page, const struct reference *ref, const struct plan *plan,
	       const struct plan_subject *subject)
{
	struct source_list sources = {.sources_n = 0};
	heading(page, plan, subject);
	if (subject->yield)
		yield_text(page, ref, subject->yield);
	load_line(page, plan, subject, &sources);
	late_lines(page, plan);
	for (int load = 0; load < plan->loads; load++)
		load_lines(page, plan, load, &sources);
	closing_lines(page);
	sources_text(page, &sources);
}
