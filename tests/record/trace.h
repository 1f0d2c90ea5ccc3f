/* Invented traces, made of legs. */
#ifndef JARWRIGHT_TESTS_RECORD_TRACE_H
#define JARWRIGHT_TESTS_RECORD_TRACE_H

#include "jarwright/record.h"

enum leg_kind {
	LEG_END,
	LEG_LINE, /* from one value to the other, evenly; the last value is the next leg's */
	LEG_TURN, /* one value and the other in turns */
	LEG_NONE, /* rows without a reading */
	LEG_SKIP, /* no rows: time passes; negative: the clock is set back */
};
struct leg {
	enum leg_kind kind;
	int seconds;
	double from_f, to_f;
	double from_psi, to_psi;
};

/* An open canner at sea level, and one of 11 psi; vent of 10 minutes. Both are invented. */
struct record_need open_need(int minutes);
struct record_need closed_need(int minutes);

/* Gives the rows of the legs, one every step_s seconds, to the judge. */
void judge_legs(const struct record_need *need, const struct leg *legs, int step_s,
		struct record_judgement *out);

#endif
