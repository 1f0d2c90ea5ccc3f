/* What a record leaves of a load of which the cook said something too. */
#include "jarwright/record.h"

#define SECONDS_PER_MINUTE 60

static void after_a_break(const struct record_need *need, const struct record_judgement *judgement,
			  const struct load_said *said, struct record_leaves *out)
{
	out->whole_s = judgement->start_s - judgement->first_start_s +
		       (double)need->minutes * SECONDS_PER_MINUTE;
	out->break_unsaid = said->breaks != BREAKS_SOME;
	out->stopped_early = !said->process_stated || said->process_s < out->whole_s;
	if (out->break_unsaid || out->stopped_early)
		out->outcome = LOAD_UNCLEAR;
}

void record_for_load(const struct record_need *need, const struct record_judgement *judgement,
		     const struct load_said *said, struct record_leaves *out)
{
	static const enum load_outcome outcomes[] = {
	    [RECORD_HELD] = LOAD_PROCESSED,
	    [RECORD_RESTARTED] = LOAD_PROCESSED,
	    [RECORD_UNDER_PROCESSED] = LOAD_UNDER_PROCESSED,
	    [RECORD_UNCLEAR] = LOAD_UNCLEAR,
	};
	*out = (struct record_leaves){.outcome = outcomes[judgement->outcome]};
	if (judgement->outcome == RECORD_RESTARTED)
		after_a_break(need, judgement, said, out);
}
