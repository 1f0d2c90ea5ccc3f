/* The outcome: the worst of what the time, the venting and the recorder itself come to. */
#include <math.h>

#include "record_internal.h"

#define SECONDS_PER_MINUTE 60.0

/* From best to worst, where several hold: being sure that it failed outweighs a doubt. */
static int rank(enum record_outcome outcome)
{
	static const int ranks[] = {
	    [RECORD_HELD] = 0,
	    [RECORD_RESTARTED] = 1,
	    [RECORD_UNCLEAR] = 2,
	    [RECORD_UNDER_PROCESSED] = 3,
	};
	return ranks[outcome];
}

static void because(struct record_judgement *out, enum record_reason reason,
		    enum record_outcome outcome)
{
	out->reasons[reason] = true;
	if (rank(outcome) > rank(out->outcome))
		out->outcome = outcome;
}

static void conclude_time(struct record_judge *j)
{
	struct record_judgement *out = &j->so_far;
	if (out->complete) {
		out->outcome = out->dips_n > 0 ? RECORD_RESTARTED : RECORD_HELD;
		return;
	}
	if (!j->any) {
		because(out, RECORD_NO_READING, RECORD_UNCLEAR);
		return;
	}
	bool hidden = j->longest_lenient_s >= j->need.minutes * SECONDS_PER_MINUTE;
	if (hidden && j->finest_s > RECORD_GAP_S)
		because(out, RECORD_COARSE, RECORD_UNCLEAR);
	else if (hidden)
		because(out, RECORD_GAPS, RECORD_UNCLEAR);
	else if (j->lenient.open)
		because(out, RECORD_ENDS_EARLY, RECORD_UNCLEAR);
	else if (out->started)
		because(out, RECORD_TOO_SHORT, RECORD_UNDER_PROCESSED);
	else
		because(out, RECORD_NEVER_REACHED, RECORD_UNDER_PROCESSED);
}

/*
 * No recorder sees steam flow from a vent. The cook says for how long it did, and the record
 * must not speak against it: between boiling here and the pressure there must be that time.
 */
static void conclude_venting(struct record_judge *j)
{
	struct record_judgement *out = &j->so_far;
	const struct record_need *need = &j->need;
	double wanted_s = need->vent_minutes * SECONDS_PER_MINUTE;
	if (!need->pressure || !out->started)
		return;
	bool seen = !isnan(need->least[RECORD_TEMPERATURE]);
	bool said_short = need->vent_stated && need->vented_minutes < need->vent_minutes;
	bool shown_short = seen && j->boiling_seen && out->vent_room_s < wanted_s;
	if (said_short || shown_short)
		because(out, RECORD_VENT_SHORT, RECORD_UNDER_PROCESSED);
	else if (seen && j->vent_room_strict_s < wanted_s)
		because(out, RECORD_VENT_NOT_SHOWN, RECORD_UNCLEAR);
	else if (!need->vent_stated)
		because(out, RECORD_VENT_UNSTATED, RECORD_UNCLEAR);
}

/*
 * A sensor that stopped moving shows a canner that holds. It counts only if it is seen to
 * move once more, at the earliest as long before the end as a gap may be.
 */
static bool stuck(const struct record_judge *j)
{
	for (int c = 0; c < RECORD_CHANNELS; c++)
		if (!isnan(j->need.least[c]) && j->changed_s[c] < j->end_s - RECORD_GAP_S)
			return true;
	return false;
}

void record_conclude(struct record_judge *j)
{
	struct record_judgement *out = &j->so_far;
	if (out->backwards_line != 0) {
		because(out, RECORD_BACKWARDS, RECORD_UNCLEAR);
		return;
	}
	conclude_time(j);
	conclude_venting(j);
	if (!out->complete)
		return;
	if (j->need.pressure && j->cooled)
		because(out, RECORD_COOLED, RECORD_UNCLEAR);
	if (stuck(j))
		because(out, RECORD_STUCK, RECORD_UNCLEAR);
}

const char *record_outcome_word(enum record_outcome outcome)
{
	switch (outcome) {
	case RECORD_HELD:
		return "held";
	case RECORD_RESTARTED:
		return "restarted";
	case RECORD_UNDER_PROCESSED:
		return "under-processed";
	case RECORD_UNCLEAR:
		break;
	}
	return "unclear";
}
