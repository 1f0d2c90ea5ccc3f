/* Readings one by one against what the load needs. */
#include <math.h>

#include "jarwright/physics.h"
#include "record_internal.h"

#define SECONDS_PER_MINUTE 60.0

void record_judge_start(struct record_judge *judge, const struct record_need *need)
{
	*judge = (struct record_judge){
	    .need = *need,
	    .finest_s = INFINITY,
	    .fell_s = NAN,
	    .warm_f = NAN,
	};
	for (int c = 0; c < RECORD_CHANNELS; c++)
		judge->so_far.lowest[c] = judge->so_far.highest[c] = judge->last[c] = NAN;
}

/* What one row says of the requirement. One channel below is below, whatever the other says. */
enum reading { READING_NONE, READING_BELOW, READING_HELD };

static enum reading read_sample(const struct record_need *need, const struct record_sample *sample)
{
	enum reading reading = READING_HELD;
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		double value = sample->value[c];
		if (isnan(need->least[c]))
			continue;
		if (value < need->least[c])
			return READING_BELOW;
		if (!(value <= need->most[c]))
			reading = READING_NONE;
	}
	return reading;
}

/* Highest readings, when each last changed, and the heat so far. */
static void note_values(struct record_judge *j, const struct record_sample *sample)
{
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		double value = sample->value[c];
		if (!(value <= j->need.most[c]))
			continue;
		j->so_far.highest[c] = fmax(j->so_far.highest[c], value);
		if (value != j->last[c])
			j->changed_s[c] = sample->time_s;
		j->last[c] = value;
	}
	double now_f = sample->value[RECORD_TEMPERATURE];
	if (!(now_f <= j->need.most[RECORD_TEMPERATURE]))
		return;
	double passed_s = sample->time_s - j->warm_s;
	if (!isnan(j->warm_f) && passed_s <= RECORD_GAP_S)
		j->so_far.lethality_minutes +=
		    physics_lethality(j->warm_f, now_f, passed_s / SECONDS_PER_MINUTE,
				      PHYSICS_F0_REFERENCE_F, PHYSICS_F0_Z_F);
	j->so_far.lethality_known = true;
	j->warm_f = now_f;
	j->warm_s = sample->time_s;
}

static void extend(struct record_span *span, double time_s)
{
	if (!span->open)
		*span = (struct record_span){.open = true, .from_s = time_s};
	span->to_s = time_s;
}

/* Has the canner been at the boiling point without a break? A pressure shows no boiling. */
static void follow_boiling(struct record_judge *j, const struct record_sample *sample, bool gap)
{
	double now_f = sample->value[RECORD_TEMPERATURE];
	bool thermometer = !isnan(j->need.least[RECORD_TEMPERATURE]);
	/* Without a thermometer, no pressure at all is what shows that the canner went cold. */
	bool cold = thermometer ? now_f < j->need.boiling_f : sample->value[RECORD_PRESSURE] <= 0;
	if (cold) {
		j->hot.open = j->hot_lenient.open = false;
		j->cold_seen = true;
		j->cooled = j->cooled || (j->so_far.started && !j->so_far.complete);
		j->at_pressure = false;
		return;
	}
	if (gap || (thermometer && isnan(now_f)))
		j->hot.open = false;
	bool boils = !j->hot_lenient.open;
	extend(&j->hot, sample->time_s);
	extend(&j->hot_lenient, sample->time_s);
	if (boils)
		j->boiling_seen = j->cold_seen;
}

/* The requirement is reached for the first time since it last boiled: venting is over. */
static void reach(struct record_judge *j, double time_s)
{
	struct record_judgement *so_far = &j->so_far;
	if (!so_far->started) {
		so_far->started = true;
		so_far->first_start_s = time_s;
	}
	if (j->at_pressure)
		return;
	j->at_pressure = true;
	so_far->boiled = j->hot_lenient.open && !isnan(j->need.least[RECORD_TEMPERATURE]);
	so_far->boiling_s = j->hot_lenient.from_s;
	so_far->vent_room_s = time_s - j->hot_lenient.from_s;
	j->vent_room_strict_s = time_s - j->hot.from_s;
}

/* The dip that is being added, or NULL: more than are kept. */
static struct record_dip *last_dip(struct record_judgement *so_far)
{
	return so_far->dips_n <= RECORD_DIPS_MAX ? &so_far->dips[so_far->dips_n - 1] : NULL;
}

static void add_dip(struct record_judge *j, double from_s, long line, bool gap)
{
	j->so_far.dips_n++;
	struct record_dip *dip = last_dip(&j->so_far);
	if (dip)
		*dip = (struct record_dip){
		    .from_s = from_s, .gap = gap, .lowest = {NAN, NAN}, .line = line};
}

static void end_dip(struct record_judge *j, double time_s)
{
	struct record_dip *dip = last_dip(&j->so_far);
	if (!dip)
		return;
	dip->to_s = time_s;
	dip->ended = true;
}

/* A reading below, between the first start and the end of the process. */
static void deepen_dip(struct record_judge *j, const struct record_sample *sample)
{
	if (!j->dipping)
		add_dip(j, sample->time_s, sample->line, false);
	j->dipping = true;
	struct record_dip *dip = last_dip(&j->so_far);
	if (dip)
		dip->to_s = sample->time_s;
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		double value = sample->value[c];
		if (!(value < j->need.least[c]))
			continue;
		j->so_far.lowest[c] = fmin(j->so_far.lowest[c], value);
		if (dip)
			dip->lowest[c] = fmin(dip->lowest[c], value);
	}
}

static void below(struct record_judge *j, const struct record_sample *sample)
{
	j->strict.open = j->lenient.open = false;
	if (j->so_far.complete && isnan(j->fell_s))
		j->fell_s = sample->time_s;
	if (j->so_far.started && !j->so_far.complete)
		deepen_dip(j, sample);
}

/* Held after the end: the same process going on, or a second load. */
static void after_end(struct record_judge *j, double time_s)
{
	struct record_judgement *so_far = &j->so_far;
	if (isnan(j->fell_s)) {
		so_far->until_s = time_s;
		so_far->uninterrupted_s = time_s - so_far->start_s;
	} else if (time_s - j->fell_s > RECORD_GAP_S && !so_far->again) {
		so_far->again = true;
		so_far->again_s = time_s;
	} else {
		j->fell_s = NAN; /* a moment below after the end is no new load */
	}
}

static void held(struct record_judge *j, const struct record_sample *sample, bool gap)
{
	struct record_judgement *so_far = &j->so_far;
	double now_s = sample->time_s;
	if (so_far->complete) {
		after_end(j, now_s);
		return;
	}
	if (gap && j->strict.open) {
		add_dip(j, j->usable_s, sample->line, true);
		end_dip(j, now_s);
		j->strict.open = false;
	}
	if (j->dipping)
		end_dip(j, now_s);
	j->dipping = false;
	reach(j, now_s);
	extend(&j->strict, now_s);
	extend(&j->lenient, now_s);
	j->longest_lenient_s = fmax(j->longest_lenient_s, now_s - j->lenient.from_s);
	double length_s = now_s - j->strict.from_s;
	if (length_s >= so_far->uninterrupted_s) {
		so_far->uninterrupted_s = length_s;
		so_far->start_s = j->strict.from_s;
		so_far->until_s = now_s;
	}
	if (length_s < j->need.minutes * SECONDS_PER_MINUTE)
		return;
	so_far->complete = true;
	j->end_s = j->strict.from_s + j->need.minutes * SECONDS_PER_MINUTE;
}

/* False: the clock goes backwards here, and nothing after it can be placed. */
static bool follow_time(struct record_judge *j, const struct record_sample *sample)
{
	struct record_judgement *so_far = &j->so_far;
	if (so_far->rows++ == 0)
		so_far->from_s = so_far->to_s = sample->time_s;
	if (so_far->backwards_line == 0 && !(sample->time_s >= so_far->to_s))
		so_far->backwards_line = sample->line;
	if (so_far->backwards_line != 0)
		return false;
	so_far->to_s = sample->time_s;
	return true;
}

/* Is this usable reading too far from the one before? */
static bool follow_gap(struct record_judge *j, double time_s)
{
	double passed_s = j->any ? time_s - j->usable_s : 0;
	if (passed_s > 0)
		j->finest_s = fmin(j->finest_s, passed_s);
	if (passed_s > j->so_far.widest_gap_s) {
		j->so_far.widest_gap_s = passed_s;
		j->so_far.widest_gap_from_s = j->usable_s;
	}
	return passed_s > RECORD_GAP_S;
}

void record_judge_add(struct record_judge *j, const struct record_sample *sample)
{
	if (!follow_time(j, sample))
		return;
	note_values(j, sample);
	enum reading reading = read_sample(&j->need, sample);
	if (reading == READING_NONE) {
		j->so_far.no_reading++;
		return;
	}
	bool gap = follow_gap(j, sample->time_s);
	follow_boiling(j, sample, gap);
	if (reading == READING_BELOW)
		below(j, sample);
	else
		held(j, sample, gap);
	j->any = true;
	j->usable_s = sample->time_s;
}

void record_judge_end(struct record_judge *j, struct record_judgement *out)
{
	record_conclude(j);
	*out = j->so_far;
}
