/* The words by which the log knows steps and events. */
#include <string.h>

#include "jarwright/run.h"

static const char *const stages[RUN_STAGE_COUNT] = {
    [RUN_PREHEAT] = "preheat",
    [RUN_FILL] = "fill",
    [RUN_HEAT] = "heat",
    [RUN_VENT] = "vent",
    [RUN_PRESSURIZE] = "pressurize",
    [RUN_PROCESS] = "process",
    [RUN_REST] = "rest",
    [RUN_DEPRESSURIZE] = "depressurize",
    [RUN_OPEN] = "open",
    [RUN_UNLOAD] = "unload",
    [RUN_COOL] = "cool",
};

static const char *const events[RUN_EVENT_COUNT] = {
    [RUN_BEGIN] = "begin",   [RUN_TICK] = "tick",       [RUN_DONE] = "done",
    [RUN_LOST] = "lost",     [RUN_BACK] = "back",       [RUN_LEAVE] = "leave",
    [RUN_RETURN] = "return", [RUN_REBOOT] = "reboot",   [RUN_HELD] = "held",
    [RUN_DOUBT] = "doubt",   [RUN_ABANDON] = "abandon",
};

static bool find(const char *const *words, size_t n, const char *word, size_t *out)
{
	for (*out = 0; *out < n; (*out)++)
		if (strcmp(words[*out], word) == 0)
			return true;
	return false;
}

const char *run_stage_word(enum run_stage stage)
{
	return stages[stage];
}

bool run_stage_find(const char *word, enum run_stage *out)
{
	size_t at;
	bool found = find(stages, RUN_STAGE_COUNT, word, &at);
	if (found)
		*out = (enum run_stage)at;
	return found;
}

const char *run_event_word(enum run_event event)
{
	return events[event];
}

bool run_event_find(const char *word, enum run_event *out)
{
	size_t at;
	bool found = find(events, RUN_EVENT_COUNT, word, &at);
	if (found)
		*out = (enum run_event)at;
	return found;
}
