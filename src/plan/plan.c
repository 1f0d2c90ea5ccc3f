/* Loads and their steps, in published minutes. */
#include <string.h>

#include "jarwright/plan.h"

#define MINUTES_A_DAY 1440

/* A step whose minutes a published rule gives. */
struct timed {
	enum stage stage;
	const char *topic, *words;
};

static bool read_rule(const struct reference *ref, const char *topic, const char *unit,
		      const char *words, struct span *out, struct error *err)
{
	const struct published_rule *rule = published_find(ref, topic, unit, words);
	if (rule && published_span(rule, out))
		return true;
	return error_failed(err,
			    "plan: this edition has no figure in %s under '%s' for '%s'; use check "
			    "and time your own canner",
			    unit, topic, words);
}

static void add_span(struct span *sum, struct span more, int times)
{
	sum->least += more.least * times;
	sum->most += more.most * times;
}

static void add_step(struct plan *out, enum stage stage, bool published, struct span minutes)
{
	out->steps[out->steps_n++] =
	    (struct plan_step){.stage = stage, .published = published, .minutes = minutes};
	add_span(&out->load, minutes, 1);
}

static bool add_rule(const struct reference *ref, struct timed step, struct plan *out,
		     struct error *err)
{
	struct span minutes;
	if (!read_rule(ref, step.topic, "min", step.words, &minutes, err))
		return false;
	add_step(out, step.stage, true, minutes);
	return true;
}

static void add_process(const struct process *process, struct plan *out)
{
	struct span minutes = {process->minutes, process->minutes, &process->table->from};
	add_step(out, STAGE_PROCESS, true, minutes);
}

/*
 * The cooling of a pressure canner runs "before jars are taken out": the wait after the
 * pressure is gone lies inside it. The guide's own sum for a load of acid food, 55 to 100
 * minutes (guide 1, p. 1-17), comes out only so.
 */
static bool pressure_steps(const struct reference *ref, const struct process *process,
			   struct plan *out, struct error *err)
{
	static const struct timed heat = {STAGE_HEAT, "canners", "|heating|pressure canner|"};
	static const struct timed rise = {STAGE_PRESSURIZE, "pressure-canner", "|pressurises|"};
	static const struct timed cool = {STAGE_DEPRESSURIZE, "canners", "|cooling|pressure|"};
	struct span vent;
	if (!add_rule(ref, heat, out, err) ||
	    !read_rule(ref, "venting", "min", "|vent|", &vent, err))
		return false;
	/* The decision's own figure: it is the one the cook was given. */
	vent.least = vent.most = process->vent_minutes;
	add_step(out, STAGE_VENT, true, vent);
	if (!add_rule(ref, rise, out, err))
		return false;
	add_process(process, out);
	return add_rule(ref, cool, out, err) &&
	       read_rule(ref, "pressure-canner", "min", "|wait|", &out->wait, err);
}

static bool water_steps(const struct reference *ref, const struct process *process,
			struct plan *out, struct error *err)
{
	static const struct timed heat = {STAGE_HEAT, "canners", "|heating|boiling-water|"};
	static const struct timed rest = {STAGE_REST, "boiling-water-canner", "|wait|"};
	if (!add_rule(ref, heat, out, err))
		return false;
	add_process(process, out);
	return add_rule(ref, rest, out, err);
}

/* No publication says how long a steam canner takes to heat, or to stand afterwards. */
static void steam_steps(const struct process *process, struct plan *out)
{
	static const struct span unknown = {0, 0, NULL};
	add_step(out, STAGE_HEAT, false, unknown);
	add_process(process, out);
	out->complete = false;
}

static bool plan_steps(const struct reference *ref, const struct process *process, bool steam,
		       struct plan *out, struct error *err)
{
	struct span latest = {0, 0, NULL};
	out->complete = true;
	if (steam)
		steam_steps(process, out);
	else if (!(process->psi > 0 ? pressure_steps(ref, process, out, err)
				    : water_steps(ref, process, out, err)))
		return false;
	if (!read_rule(ref, "seal-test", "hours", "|earliest|", &out->seal_test, err) ||
	    !read_rule(ref, "seal-test", "hours", "|latest|", &latest, err))
		return false;
	out->seal_test.most = latest.most;
	return true;
}

static bool plan_loads(const struct reference *ref, const struct jar_choice *jar, struct plan *out,
		       struct error *err)
{
	const struct plan_wish *wish = &out->wish;
	out->jars_per_load = wish->jars_per_load;
	if (wish->jars_per_load == 0) {
		if (!plan_usual_load(ref, jar, &out->usual_load, &out->load_origin))
			return error_usage(
			    err, "plan: no usual load is published for this jar; say with "
				 "--holds-jars how many your canner takes");
		out->jars_per_load = out->usual_load.least;
	}
	out->loads = (wish->jars - 1) / out->jars_per_load + 1;
	out->last_load_jars = wish->jars - (out->loads - 1) * out->jars_per_load;
	return true;
}

static bool check_wish(const struct plan_wish *wish, struct error *err)
{
	if (wish->jars < 1 || wish->jars > PLAN_JARS_MAX)
		return error_usage(err, "plan: that makes %d jars; plan for 1 to %d", wish->jars,
				   PLAN_JARS_MAX);
	if (wish->jars_per_load < 0 || wish->start < 0 || wish->start >= MINUTES_A_DAY ||
	    wish->until < 0 || wish->until > MINUTES_A_DAY)
		return error_usage(err,
				   "plan: the load or a time of day is out of range; type times "
				   "as HH:MM");
	return true;
}

bool plan_make(const struct reference *ref, const struct decision *decision,
	       const struct jar_choice *jar, bool steam, const struct plan_wish *wish,
	       struct plan *out, struct error *err)
{
	memset(out, 0, sizeof *out);
	out->wish = *wish;
	if (decision->verdict != VERDICT_TESTED)
		return error_usage(err, "plan: the process is not tested; ask check what is");
	if (!check_wish(wish, err) || !plan_loads(ref, jar, out, err) ||
	    !plan_steps(ref, &decision->process, steam, out, err))
		return false;
	add_span(&out->all, out->load, out->loads);
	out->last_start = wish->until - out->load.most;
	out->late = wish->start + out->all.most > wish->until;
	return true;
}

struct span plan_begins(const struct plan *plan, int load, size_t step)
{
	struct span begins = {0, 0, NULL};
	add_span(&begins, plan->load, load);
	for (size_t i = 0; i < step && i < plan->steps_n; i++)
		add_span(&begins, plan->steps[i].minutes, 1);
	return begins;
}

struct span plan_out(const struct plan *plan, int load)
{
	return plan_begins(plan, load, plan->steps_n);
}
