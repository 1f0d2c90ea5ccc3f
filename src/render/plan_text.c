/* The plan of a day's canning: what happens when. */
#include "jarwright/render.h"

#define HOUR 60
#define DAY  (24 * HOUR)

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

static void clock_span(char *buffer, size_t size, int start, struct span span)
{
	char from[32], to[32];
	clock_words(from, sizeof from, start + span.least);
	clock_words(to, sizeof to, start + span.most);
	if (span.least == span.most)
		snprintf(buffer, size, "%s", from);
	else
		snprintf(buffer, size, "%s to %s", from, to);
}

static void span_words(char *buffer, size_t size, struct span span)
{
	if (span.least == span.most)
		snprintf(buffer, size, "%d", span.least);
	else
		snprintf(buffer, size, "%d to %d", span.least, span.most);
}

static const char *stage_words(enum stage stage)
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

static void origin_line(const struct page *page, const struct plan *plan,
			struct source_list *sources)
{
	char range[32], source[WORDS_BUFFER];
	if (plan->load_origin == LOAD_STATED)
		return;
	span_words(range, sizeof range, plan->usual_load);
	page_format(page, "  ", "The usual load is %s%s %s; say --holds-jars if yours differs.",
		    range,
		    plan->load_origin == LOAD_OF_LARGER_JAR
			? " jars of the next larger size; none is published for these"
			: "",
		    cite(sources, source, sizeof source, plan->usual_load.from));
}

static void closing_lines(const struct page *page, const struct plan *plan)
{
	char until[32], last[32];
	page_blank(page);
	if (!plan->complete)
		page_text(page, "careful ",
			  "The times above leave out the heating of the steam canner, which no "
			  "publication gives: all later times shift by it.");
	page_text(
	    page, "note    ",
	    "Preparing the food and filling the jars is not in the times; a later load starts "
	    "when the one before is out, if its jars are filled by then. If the boil, the "
	    "steam or the pressure is lost, the process time starts again.");
	if (!plan->late)
		return;
	clock_words(until, sizeof until, plan->wish.until);
	if (plan->last_start < 0) {
		page_format(page, "careful ", "No load started today is surely out by %s.", until);
		return;
	}
	clock_words(last, sizeof last, plan->last_start);
	page_format(
	    page, "careful ",
	    "The last load may not be out by %s: it must be on by %s. Make fewer jars today, or "
	    "start earlier; never cut a process short.",
	    until, last);
}

void plan_text(const struct page *page, const struct plan *plan, const char *jars)
{
	char first[96], all[32];
	clock_span(first, sizeof first, plan->wish.start, plan->all);
	span_words(all, sizeof all, plan->all);
	page_format(page, "PLAN  ", "%d %s in %d load%s of %d; the last is out at %s (%s minutes)",
		    plan->wish.jars, jars, plan->loads, plan->loads > 1 ? "s" : "",
		    plan->jars_per_load, first, all);
	struct source_list sources = {.sources_n = 0};
	origin_line(page, plan, &sources);
	for (int load = 0; load < plan->loads; load++)
		load_lines(page, plan, load, &sources);
	closing_lines(page, plan);
	sources_text(page, &sources);
}
