#include "trace.h"

#include <math.h>

static struct record_need make_need(enum canner canner, int minutes, int psi, int vent)
{
	struct process process = {.minutes = minutes, .psi = psi, .vent_minutes = vent};
	struct record_need need;
	record_need_make(&process, canner, 0, &need);
	return need;
}

struct record_need open_need(int minutes)
{
	return make_need(CANNER_BOILING_WATER, minutes, 0, 0);
}

struct record_need closed_need(int minutes)
{
	return make_need(CANNER_DIAL_GAUGE, minutes, 11, 10);
}

static double between(double from, double to, enum leg_kind kind, int i, int seconds, int step_s)
{
	if (kind == LEG_NONE)
		return NAN;
	if (kind == LEG_TURN)
		return i % 2 ? to : from;
	return from + (to - from) * i * step_s / seconds;
}

void judge_legs(const struct record_need *need, const struct leg *legs, int step_s,
		struct record_judgement *out)
{
	struct record_judge judge;
	struct record_sample sample = {.time_s = 50000, .line = 1};
	record_judge_start(&judge, need);
	for (; legs->kind != LEG_END; legs++) {
		if (legs->kind == LEG_SKIP) {
			sample.time_s += legs->seconds;
			continue;
		}
		for (int i = 0; i * step_s < legs->seconds; i++) {
			sample.line++;
			sample.value[RECORD_TEMPERATURE] =
			    between(legs->from_f, legs->to_f, legs->kind, i, legs->seconds, step_s);
			sample.value[RECORD_PRESSURE] = between(
			    legs->from_psi, legs->to_psi, legs->kind, i, legs->seconds, step_s);
			record_judge_add(&judge, &sample);
			sample.time_s += step_s;
		}
	}
	record_judge_end(&judge, out);
}
