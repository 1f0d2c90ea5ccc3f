/* A trace of any length in a fixed number of steps. */
#include <math.h>

#include "jarwright/record.h"

#define FIRST_STEP_S 0.125

static void clear(struct record_step *step)
{
	step->gap = false;
	for (int c = 0; c < RECORD_CHANNELS; c++)
		step->least[c] = step->most[c] = NAN;
}

/* fmin() and fmax() pass over a NAN. */
static void join(struct record_step *to, const struct record_step *from)
{
	to->gap = to->gap || from->gap;
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		to->least[c] = fmin(to->least[c], from->least[c]);
		to->most[c] = fmax(to->most[c], from->most[c]);
	}
}

static void halve(struct record_outline *outline)
{
	struct record_step *steps = outline->steps;
	for (size_t i = 0; i < RECORD_STEPS / 2; i++) {
		struct record_step both = steps[2 * i];
		join(&both, &steps[2 * i + 1]);
		steps[i] = both;
	}
	for (size_t i = RECORD_STEPS / 2; i < RECORD_STEPS; i++)
		clear(&steps[i]);
	outline->step_s *= 2;
	outline->steps_n = (outline->steps_n + 1) / 2;
}

void record_outline_start(struct record_outline *outline)
{
	*outline = (struct record_outline){.step_s = FIRST_STEP_S};
	for (size_t i = 0; i < RECORD_STEPS; i++)
		clear(&outline->steps[i]);
}

/* The reading, or NAN if it is a fault. */
static double usable(const struct record_need *need, const struct record_sample *sample, int c)
{
	return sample->value[c] <= need->most[c] ? sample->value[c] : NAN;
}

void record_outline_add(struct record_outline *outline, const struct record_need *need,
			const struct record_sample *sample)
{
	struct record_step one = {.gap = false};
	bool none = true;
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		one.least[c] = one.most[c] = usable(need, sample, c);
		none = none && isnan(one.least[c]);
	}
	if (none || (outline->any && sample->time_s < outline->from_s))
		return;
	if (!outline->any)
		outline->from_s = outline->last_s = sample->time_s;
	outline->any = true;
	one.gap = sample->time_s - outline->last_s > RECORD_GAP_S;
	outline->last_s = sample->time_s;
	double after = sample->time_s - outline->from_s;
	while (after >= outline->step_s * RECORD_STEPS)
		halve(outline);
	size_t at = (size_t)(after / outline->step_s);
	join(&outline->steps[at], &one);
	if (at >= outline->steps_n)
		outline->steps_n = at + 1;
}
