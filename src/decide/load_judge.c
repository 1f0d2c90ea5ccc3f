#include "jarwright/load_judge.h"

#include <math.h>
#include <string.h>

#include "jarwright/physics.h"

#define MILLI      1000
#define SECONDS    60
#define MINUTES_AT 10000 /* no process is longer: keeps the seconds in range */

static const char *const words[] = {
    [LOAD_PROCESSED] = "processed",
    [LOAD_UNDER_PROCESSED] = "under-processed",
    [LOAD_UNCLEAR] = "unclear",
    [LOAD_COLD] = "cold",
};

const char *load_outcome_word(enum load_outcome outcome)
{
	return words[outcome];
}

bool load_outcome_find(const char *word, enum load_outcome *out)
{
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strcmp(words[i], word) == 0) {
			*out = (enum load_outcome)i;
			return true;
		}
	return false;
}

enum load_outcome load_outcome_stricter(enum load_outcome a, enum load_outcome b)
{
	if (a == LOAD_UNDER_PROCESSED || b == LOAD_UNDER_PROCESSED)
		return LOAD_UNDER_PROCESSED;
	return a == LOAD_UNCLEAR || b == LOAD_UNCLEAR ? LOAD_UNCLEAR : a;
}

/* What one judgement is made of. */
struct judging {
	const struct load_rules *rules;
	const struct load_need *need;
	const struct load_said *said;
	struct load_judgement *out;
};

static struct load_finding *add(struct judging *j, enum load_fact fact, bool missing,
				const struct citation *from)
{
	struct load_judgement *out = j->out;
	size_t at = out->findings_n++;
	/* Shortfalls stand before what is missing. */
	for (; !missing && at > 0 && out->findings[at - 1].missing; at--)
		out->findings[at] = out->findings[at - 1];
	out->findings[at] = (struct load_finding){.fact = fact, .missing = missing, .from = from};
	if (!missing)
		out->outcome = LOAD_UNDER_PROCESSED;
	else if (out->outcome == LOAD_PROCESSED)
		out->outcome = LOAD_UNCLEAR;
	return &out->findings[at];
}

static struct load_finding *fall_short(struct judging *j, enum load_fact fact, int32_t need,
				       int32_t had, const struct citation *from)
{
	struct load_finding *finding = add(j, fact, false, from);
	finding->need = need;
	finding->had = had;
	return finding;
}

static bool is_pressure(const struct load_need *need)
{
	return need->canner == CANNER_DIAL_GAUGE || need->canner == CANNER_WEIGHTED_GAUGE;
}

/* The unbroken time at the end: after a break the whole time starts again. */
static int32_t counted(const struct load_said *said)
{
	int64_t from = 0;
	for (size_t i = 0; i < said->list_n; i++) {
		int64_t end = (int64_t)said->list[i].at_s + said->list[i].length_s;
		if (end > from)
			from = end;
	}
	return from >= said->process_s ? 0 : (int32_t)(said->process_s - from);
}

static void judge_time(struct judging *j)
{
	const struct load_said *said = j->said;
	bool decided = j->need->minutes > 0 && j->need->minutes <= MINUTES_AT;
	int32_t need = decided ? j->need->minutes * SECONDS : 0;
	if (!said->process_stated || !decided) {
		add(j, FACT_MINUTES, true, j->need->from);
		return;
	}
	j->out->counted_s = counted(said);
	if (j->out->counted_s < need)
		fall_short(j, FACT_MINUTES, need, j->out->counted_s, j->need->from)->broken =
		    said->list_n > 0;
}

static void judge_breaks(struct judging *j)
{
	const struct published_rule *rule =
	    is_pressure(j->need) ? j->rules->lost_pressure : j->rules->lost_boil;
	/* Said to be broken, but not when, is not said. */
	if (j->said->breaks == BREAKS_UNSAID ||
	    (j->said->breaks == BREAKS_SOME && j->said->list_n == 0))
		add(j, FACT_BREAKS, true, &rule->from);
}

static void judge_vent(struct judging *j)
{
	int32_t need = j->need->vent_minutes * SECONDS;
	if (!j->said->vent_stated || need <= 0)
		add(j, FACT_VENT, true, &j->rules->vent->from);
	else if (j->said->vent_s < need)
		fall_short(j, FACT_VENT, need, j->said->vent_s, &j->rules->vent->from);
}

/* A gauge that reads high shows more than there is; one that reads low is no merit. */
static int32_t gauge_high(const struct judging *j)
{
	const struct load_gauge *gauge = &j->said->gauge;
	bool counts = j->need->canner == CANNER_DIAL_GAUGE && gauge->known;
	return counts && gauge->high_mpsi > 0 ? gauge->high_mpsi : 0;
}

static void judge_pressure(struct judging *j)
{
	int32_t need = j->need->psi * MILLI, high = gauge_high(j);
	if (!j->said->psi_stated || need <= 0) {
		add(j, FACT_PSI, true, j->need->from);
		return;
	}
	if (j->said->low_mpsi - high >= need)
		return;
	struct load_finding *finding =
	    add(j, FACT_PSI, false, high ? &j->rules->gauge_high->from : j->need->from);
	finding->need = need;
	finding->had = j->said->low_mpsi;
	finding->gauge_high_mpsi = high;
}

static void judge_gauge(struct judging *j)
{
	const struct load_gauge *gauge = &j->said->gauge;
	int32_t most = j->rules->gauge_psi * MILLI;
	if (j->need->canner == CANNER_DIAL_GAUGE && gauge->known && gauge->error_mpsi > most)
		fall_short(j, FACT_GAUGE, most, gauge->error_mpsi, &j->rules->gauge_limit->from);
}

/* Steam at the boiling temperature of the elevation; in boiling water if she measured it. */
static void judge_temperature(struct judging *j)
{
	const struct citation *from = &j->rules->steam_held->from;
	bool steam = j->need->canner == CANNER_STEAM;
	if (!j->said->temperature_stated) {
		if (steam)
			add(j, FACT_TEMPERATURE, true, from);
		return;
	}
	double boils =
	    j->need->elevation_stated
		? ceil(physics_boiling_point((double)j->need->elevation_mft / MILLI) * MILLI)
		: NAN;
	if (isnan(boils))
		add(j, FACT_ELEVATION, true, from);
	else if (j->said->low_mf < (int32_t)boils)
		fall_short(j, FACT_TEMPERATURE, (int32_t)boils, j->said->low_mf,
			   steam ? from : &j->rules->lost_boil->from);
}

void load_judge(const struct load_rules *rules, const struct load_need *need,
		const struct load_said *said, struct load_judgement *out)
{
	memset(out, 0, sizeof *out);
	out->outcome = LOAD_PROCESSED;
	struct judging j = {rules, need, said, out};
	if (need->uncovered)
		add(&j, FACT_COVER, false, need->from);
	judge_time(&j);
	judge_breaks(&j);
	if (is_pressure(need)) {
		judge_vent(&j);
		judge_pressure(&j);
		judge_gauge(&j);
	} else {
		judge_temperature(&j);
	}
}
