/* The steps that the sources give for a canner, with their times. */
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/physics.h"
#include "jarwright/plan.h"
#include "jarwright/run.h"

#define MILLI        1000
#define MINUTE       60
#define HOUR         3600
#define LONG_MINUTES 30 /* "process up to 30 min", "process over 30 min": the rules on water */

/* A plan being made. */
struct making {
	const struct reference *ref;
	const struct load_need *need;
	int32_t high_mpsi; /* of the dial */
	struct run_plan *out;
	struct error *err;
	bool failed;
};

static const struct published_rule *rule_of(struct making *m, const char *topic, const char *unit,
					    const char *words)
{
	const struct published_rule *rule = published_find(m->ref, topic, unit, words);
	if (!rule && !m->failed) {
		m->failed = true;
		error_failed(m->err,
			     "run: edition %s has no rule on '%s' for '%s'; use the tables that "
			     "came with this jarwright",
			     m->ref->edition, topic, words);
	}
	return rule;
}

/* The printed figure of a rule. */
static const char *figure(struct making *m, const char *topic, const char *unit, const char *words)
{
	const struct published_rule *rule = rule_of(m, topic, unit, words);
	return rule ? rule->value : "?";
}

/* Adds a step that a published rule without a time describes. */
static struct run_step *add(struct making *m, enum run_stage stage,
			    const struct published_rule *rule, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
static struct run_step *add(struct making *m, enum run_stage stage,
			    const struct published_rule *rule, const char *format, ...)
{
	struct run_step *step = &m->out->steps[m->out->steps_n++];
	va_list arguments;
	*step = (struct run_step){.stage = stage, .from = rule ? &rule->from : NULL};
	va_start(arguments, format);
	vsnprintf(step->watch, sizeof step->watch, format, arguments);
	va_end(arguments);
	return step;
}

/* The published time of a step. */
static void takes(struct making *m, struct run_step *step, const struct published_rule *rule,
		  int unit_s)
{
	struct span span;
	if (!rule)
		return;
	if (!published_span(rule, &span)) {
		m->failed = true;
		error_failed(m->err,
			     "run: edition %s has no figure for '%s'; use the tables that "
			     "came with this jarwright",
			     m->ref->edition, rule->says);
		return;
	}
	step->least_s = span.least * unit_s;
	step->most_s = span.most * unit_s;
	step->timed = &rule->from;
}

/* Its whole time without a break; after one it begins at the step before. */
static void never_broken(struct making *m, struct run_step *step)
{
	step->unbroken = true;
	step->again = m->out->steps_n - 2;
}

static void add_process(struct making *m, const struct published_rule *rule, const char *watch)
{
	struct run_step *step = add(m, RUN_PROCESS, rule, "%s", watch);
	step->least_s = step->most_s = m->need->minutes * MINUTE;
	step->timed = m->need->from;
	never_broken(m, step);
}

/* The last two of every canner. */
static void add_end(struct making *m, const char *topic)
{
	add(m, RUN_UNLOAD, rule_of(m, topic, "in", "|jars on a towel|"),
	    "Lift the jars out upright onto a towel, at least %s inch apart. Do not tighten "
	    "the bands.",
	    figure(m, topic, "in", "|jars on a towel|"));
	const struct published_rule *shortest = rule_of(m, "cooling", "hours", "|shortest|");
	struct run_step *step =
	    add(m, RUN_COOL, shortest,
		"Leave them at room temperature; then take the bands off and test the "
		"seals.");
	takes(m, step, shortest, HOUR);
	takes(m, step, rule_of(m, "cooling", "hours", "|longest|"), HOUR);
	struct span least;
	if (shortest && published_span(shortest, &least))
		step->least_s = least.least * HOUR;
}

/* --- Boiling water --- */

static void water_steps(struct making *m, const char *pack)
{
	static const char topic[] = "boiling-water-canner";
	const char *raw = "|raw pack|", *hot = "|hot pack|";
	const char *level =
	    m->need->minutes > LONG_MINUTES ? "|process over 30 min|" : "|process up to 30 min|";
	bool is_raw = strcmp(pack, "raw") == 0, is_hot = strcmp(pack, "hot") == 0;
	if (is_raw || is_hot)
		add(m, RUN_PREHEAT, rule_of(m, topic, "degF", is_raw ? raw : hot),
		    "Fill the canner with water and warm it to %s F for the %s pack.",
		    figure(m, topic, "degF", is_raw ? raw : hot), pack);
	else
		add(m, RUN_PREHEAT, rule_of(m, topic, "degF", raw),
		    "Fill the canner with water and warm it: %s F for a raw pack, %s F for a hot "
		    "one.",
		    figure(m, topic, "degF", raw), figure(m, topic, "degF", hot));
	add(m, RUN_FILL, rule_of(m, topic, "in", level),
	    "Fill and close the jars, load them upright, water at least %s in above them.",
	    figure(m, topic, "in", level));
	struct run_step *heat =
	    add(m, RUN_HEAT, rule_of(m, topic, "", "|until water boils vigorously|"),
		"Highest heat, lid on, until the water boils vigorously. Only then is it done.");
	takes(m, heat, rule_of(m, "canners", "min", "|heating|boiling-water|"), MINUTE);
	add_process(m, rule_of(m, topic, "", "|keep covered and boiling|"),
		    "Keep it covered and at a full boil; add boiling water if the level falls.");
	struct run_step *rest = add(m, RUN_REST, rule_of(m, topic, "min", "|wait|"),
				    "Turn the heat off and take the lid off; leave the jars in.");
	takes(m, rest, rule_of(m, topic, "min", "|wait|"), MINUTE);
	add_end(m, topic);
}

/* --- Steam --- */

/* Rounded up, as the judge of a load has it. */
static void steam_heat(const struct load_need *need, char *buffer, size_t size)
{
	double boils = need->elevation_stated
			   ? physics_boiling_point((double)need->elevation_mft / MILLI)
			   : (double)NAN;
	if (isnan(boils))
		snprintf(buffer, size, "the boiling temperature of your elevation");
	else
		snprintf(buffer, size, "%.1f F", ceil(boils * 10) / 10);
}

static void steam_steps(struct making *m)
{
	char hot[64], watch[sizeof m->out->steps[0].watch];
	steam_heat(m->need, hot, sizeof hot);
	add(m, RUN_PREHEAT, rule_of(m, "steam-water", "qt", "|amount in the base|"),
	    "About %s quarts of water in the base, and warm it.",
	    figure(m, "steam-water", "qt", "|amount in the base|"));
	add(m, RUN_FILL, rule_of(m, "steam-jar", "", "|jars must be hot|"),
	    "Fill the hot jars with hot food or hot liquid, close and load them, lid on.");
	/* The upper figure of one source is the lower one of the stricter. */
	add(m, RUN_VENT, rule_of(m, "steam-start", "", "|pure steam|"),
	    "Until a full column of steam, %s in or more, flows and the steam is at %s or hotter.",
	    figure(m, "steam-vent", "in", "|upper figure|"), hot);
	snprintf(watch, sizeof watch,
		 "Keep the column of steam, at %s or hotter the whole time. Never open the lid.",
		 hot);
	add_process(m, rule_of(m, "steam-vent", "", "|through the whole process|"), watch);
	/* No publication read gives a wait before the jars come out. */
	add_end(m, "boiling-water-canner");
}

/* --- Pressure --- */

static void pressure_end(struct making *m)
{
	static const char topic[] = "pressure-canner";
	struct run_step *down = add(m, RUN_DEPRESSURIZE, rule_of(m, topic, "", "|by itself|"),
				    "Heat off; let the pressure fall by itself. Never cool the "
				    "canner, never lift the weight or open the vent.");
	takes(m, down, rule_of(m, "canners", "min", "|cooling|pressure|"), MINUTE);
	struct run_step *open =
	    add(m, RUN_OPEN, rule_of(m, topic, "min", "|wait|"),
		"The pressure is gone: take the weight off or open the petcock, "
		"and wait. Then lift the lid away from your face.");
	takes(m, open, rule_of(m, topic, "min", "|wait|"), MINUTE);
	add_end(m, topic);
}

/* What the gauge must show: a dial that reads high, so much more. */
static void shown_psi(const struct making *m, bool dial, char *buffer, size_t size)
{
	int32_t mpsi = m->need->psi * MILLI + (dial ? m->high_mpsi : 0);
	/* Rounded up to tenths, as no dial shows more. */
	int32_t tenths = (mpsi + 99) / 100;
	if (tenths % 10 == 0)
		snprintf(buffer, size, "%d psi", (int)(tenths / 10));
	else
		snprintf(buffer, size, "%d.%d psi", (int)(tenths / 10), (int)(tenths % 10));
}

static void pressure_steps(struct making *m)
{
	static const char topic[] = "pressure-canner";
	bool dial = m->need->canner == CANNER_DIAL_GAUGE;
	char watch[sizeof m->out->steps[0].watch], psi[64];
	add(m, RUN_FILL, rule_of(m, topic, "in", "|hot water in the canner, least|"),
	    "%s to %s in of hot water in the canner; fill, close and load the jars; fasten the "
	    "lid.",
	    figure(m, topic, "in", "|hot water in the canner, least|"),
	    figure(m, topic, "in", "|hot water in the canner, most|"));
	struct run_step *heat =
	    add(m, RUN_HEAT, rule_of(m, topic, "", "|until steam flows freely|"),
		"Weight off or petcock open, highest heat, until steam flows freely.");
	takes(m, heat, rule_of(m, "canners", "min", "|heating|pressure canner|"), MINUTE);
	struct run_step *vent =
	    add(m, RUN_VENT, rule_of(m, "venting", "min", "|vent every kind|"),
		"Steam flows without a break at high heat: it drives the air out.");
	vent->least_s = vent->most_s = m->need->vent_minutes * MINUTE;
	vent->timed = vent->from;
	never_broken(m, vent);
	shown_psi(m, dial, psi, sizeof psi);
	struct run_step *rise = add(
	    m, RUN_PRESSURIZE,
	    rule_of(m, topic, "", dial ? "|pressure-dial|" : "|pressure-weighted|"),
	    dial ? "Weight on or petcock closed, until the dial shows %s. Only then is it done."
		 : "The %s weight on, until it jiggles or rocks as its maker says. Only then is "
		   "it done.",
	    psi);
	takes(m, rise, rule_of(m, topic, "min", "|pressurises|"), MINUTE);
	snprintf(watch, sizeof watch,
		 dial ? "The dial at %s or slightly above, never below. Watch it."
		      : "The %s weight keeps jiggling or rocking as its maker says. Watch it.",
		 psi);
	add_process(m, rule_of(m, topic, "", "|keep the pressure at|"), watch);
	pressure_end(m);
}

static bool is_whole(const struct load_need *need, bool pressure, struct error *err)
{
	bool whole = !need->uncovered && need->from && need->minutes > 0 &&
		     (!pressure || (need->psi > 0 && need->vent_minutes > 0));
	return whole || error_usage(err, "run: nothing published covers these jars in this canner "
					 "at this elevation, so there is no time to count; ask "
					 "'jarwright check' what is");
}

bool run_plan_make(const struct reference *ref, const struct load_need *need, int32_t high_mpsi,
		   const char *pack, struct run_plan *out, struct error *err)
{
	struct making m = {
	    .ref = ref, .need = need, .high_mpsi = high_mpsi, .out = out, .err = err};
	bool pressure = need->canner == CANNER_DIAL_GAUGE || need->canner == CANNER_WEIGHTED_GAUGE;
	*out = (struct run_plan){.canner = need->canner};
	if (!is_whole(need, pressure, err))
		return false;
	if (pressure)
		pressure_steps(&m);
	else if (need->canner == CANNER_STEAM)
		steam_steps(&m);
	else
		water_steps(&m, pack);
	return !m.failed;
}
