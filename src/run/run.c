/* What events and time do to a load. */
#include "jarwright/run.h"

#include <string.h>

static const struct run_step *step_of(const struct run *run)
{
	return &run->plan->steps[run->at];
}

/* Sixty-eight years fit: no clock of a kitchen shows more. */
static int32_t whole(int64_t seconds)
{
	return seconds < INT32_MAX ? (int32_t)seconds : INT32_MAX;
}

static int32_t seconds(int64_t ns)
{
	return ns > 0 ? whole(ns / RUN_SECOND) : 0;
}

static int32_t seconds_up(int64_t ns)
{
	return ns > 0 ? whole(ns / RUN_SECOND + (ns % RUN_SECOND != 0)) : 0;
}

void run_begin(const struct run_plan *plan, int64_t now_ns, struct run *out)
{
	*out = (struct run){.plan = plan, .seen_ns = now_ns, .known = true, .since_ns = now_ns};
}

/* --- The process in whole seconds: a break is never shorter, a count never longer than it was ---
 */

/* Two breaks become one when there are too many: what comes after them stays what it is. */
static void join_breaks(struct run *run)
{
	struct load_break *first = &run->breaks[0], *second = &run->breaks[1];
	first->length_s = second->at_s + second->length_s - first->at_s;
	memmove(second, second + 1, (run->breaks_n - 2) * sizeof *second);
	run->breaks_n--;
}

static void begin_process(struct run *run, int64_t now_ns)
{
	if (!run->based) {
		run->based = true;
		run->base_ns = now_ns;
		run->broken = false;
		run->breaks_n = 0;
	} else if (run->broken) {
		int32_t end = seconds_up(now_ns - run->base_ns);
		if (run->breaks_n == LOAD_BREAKS_MAX)
			join_breaks(run);
		run->breaks[run->breaks_n++] =
		    (struct load_break){run->broken_s, end - run->broken_s};
		run->broken = false;
		run->since_ns = run->base_ns + end * RUN_SECOND;
	}
}

/* Nothing of the count before this is worth anything. */
static void break_process(struct run *run, int32_t at_s)
{
	run->processed = false;
	run->broken = run->based;
	run->broken_s = at_s;
}

/* --- Moving --- */

static void enter(struct run *run, size_t at, int64_t now_ns)
{
	run->at = at;
	run->known = true;
	run->since_ns = now_ns;
	run->asks = false;
	if (step_of(run)->stage == RUN_PROCESS)
		begin_process(run, now_ns);
	if (step_of(run)->stage == RUN_VENT)
		run->vented = false;
}

/* After a break in the current, unbroken step. */
static enum run_answer start_again(struct run *run, int64_t now_ns)
{
	if (step_of(run)->stage == RUN_PROCESS)
		break_process(run, seconds((run->asks ? run->unseen_ns : now_ns) - run->base_ns));
	enter(run, step_of(run)->again, now_ns);
	return RUN_STARTED_AGAIN;
}

/* The clock began anew or went back: what came before cannot be placed on it. */
static enum run_answer lose_clock(struct run *run, int64_t now_ns)
{
	enum run_answer answer = RUN_TAKEN;
	run->seen_ns = now_ns;
	if (step_of(run)->unbroken)
		answer = start_again(run, now_ns);
	run->based = run->broken = false;
	run->since_ns = now_ns;
	run->known = answer == RUN_STARTED_AGAIN;
	return answer;
}

static enum run_answer step_done(struct run *run, int64_t now_ns)
{
	const struct run_step *step = step_of(run);
	int64_t ran = now_ns - run->since_ns;
	bool early = !run->known || ran < step->least_s * RUN_SECOND;
	if (step->stage == RUN_COOL)
		return RUN_NOTHING;
	if (run->asks)
		return RUN_ASKS;
	if (step->unbroken && early)
		return RUN_NOT_YET;
	if (step->stage == RUN_VENT) {
		run->vented = step->unbroken;
		run->vent_s = seconds(ran);
	}
	if (step->stage == RUN_PROCESS) {
		run->processed = true;
		run->process_s = seconds(now_ns - run->base_ns);
	}
	enter(run, run->at + 1, now_ns);
	bool wait = step->stage == RUN_REST || step->stage == RUN_OPEN;
	return wait && early ? RUN_EARLY : RUN_TAKEN;
}

/* Back over an unbroken step, or out of it, is a break of it. */
static enum run_answer step_back(struct run *run, int64_t now_ns)
{
	const struct run_step *before = step_of(run) - 1;
	if (run->at == 0 || step_of(run)->stage == RUN_COOL)
		return RUN_NOTHING;
	if (step_of(run)->unbroken)
		return start_again(run, now_ns);
	if (before->stage == RUN_PROCESS)
		break_process(run, run->process_s);
	if (before->stage == RUN_VENT)
		run->vented = false;
	enter(run, before->unbroken ? before->again : run->at - 1, now_ns);
	return before->unbroken ? RUN_STARTED_AGAIN : RUN_TAKEN;
}

static enum run_answer not_watched(struct run *run)
{
	if (!step_of(run)->unbroken)
		return RUN_TAKEN;
	if (!run->asks)
		run->unseen_ns = run->seen_ns;
	run->asks = true;
	return RUN_ASKS;
}

static enum run_answer take(struct run *run, enum run_event event, int64_t now_ns)
{
	switch (event) {
	case RUN_DONE:
		return step_done(run, now_ns);
	case RUN_BACK:
		return step_back(run, now_ns);
	case RUN_LOST:
		return step_of(run)->unbroken ? start_again(run, now_ns) : RUN_NOTHING;
	case RUN_DOUBT:
		return run->asks ? start_again(run, now_ns) : RUN_NOTHING;
	case RUN_HELD:
		run->told = run->told || run->asks;
		if (!run->asks)
			return RUN_NOTHING;
		run->asks = false;
		return RUN_TAKEN;
	case RUN_TICK:
	case RUN_LEAVE:
		return run->asks ? RUN_ASKS : RUN_TAKEN;
	default:
		return RUN_NOTHING;
	}
}

enum run_answer run_take(struct run *run, enum run_event event, int64_t now_ns)
{
	if (event == RUN_REBOOT || now_ns < run->seen_ns)
		return lose_clock(run, now_ns);
	bool unwatched = event == RUN_RETURN || now_ns - run->seen_ns > RUN_UNWATCHED;
	/* What she says of a loss counts as it is; anything else waits for an answer. */
	bool strict = event == RUN_LOST || event == RUN_BACK;
	enum run_answer answer = unwatched && !strict ? not_watched(run) : RUN_TAKEN;
	run->seen_ns = now_ns;
	return answer == RUN_ASKS || event == RUN_RETURN ? answer : take(run, event, now_ns);
}

void run_replay(struct run *run, const struct run_entry *entry, const char *before)
{
	bool same = *entry->boot && strcmp(entry->boot, before) == 0;
	bool fits = entry->stage == step_of(run)->stage;
	if (entry->event == RUN_REBOOT || !same || entry->now_ns < run->seen_ns) {
		lose_clock(run, entry->now_ns);
		return;
	}
	if (!fits) {
		if (step_of(run)->unbroken)
			start_again(run, entry->now_ns);
		run->seen_ns = entry->now_ns;
		return;
	}
	if (entry->event != RUN_RETURN)
		run->seen_ns = entry->now_ns;
	else if (entry->seen_ns > run->seen_ns && entry->seen_ns <= entry->now_ns)
		run->seen_ns = entry->seen_ns;
	run_take(run, entry->event, entry->now_ns);
}

/* --- Looking --- */

static int percent_of(int64_t part_ns, int32_t whole_s)
{
	if (part_ns <= 0)
		return 0;
	int64_t percent = part_ns / RUN_SECOND * 100 / whole_s;
	return percent < 100 ? (int)percent : 100;
}

void run_look(const struct run *run, int64_t now_ns, struct run_face *out)
{
	const struct run_step *step = step_of(run);
	int64_t ran = now_ns - run->since_ns, need = step->least_s * RUN_SECOND;
	*out = (struct run_face){.step = step,
				 .number = run->at + 1,
				 .of = run->plan->steps_n,
				 .known = run->known,
				 .elapsed_s = seconds(ran),
				 .percent = -1,
				 .asks = run->asks,
				 .over = step->stage == RUN_COOL};
	if (run->asks)
		out->unseen_s = seconds(now_ns - run->unseen_ns);
	if (step->least_s > 0 && run->known) {
		/* A count that begins with the next whole second stands still until then. */
		out->left_s = seconds_up(ran > 0 ? need - ran : need);
		out->percent = percent_of(ran, step->least_s);
	}
}

void run_said(const struct run *run, struct load_said *out)
{
	*out = (struct load_said){.process_stated = run->processed,
				  .process_s = run->processed ? run->process_s : 0,
				  .vent_stated = run->vented,
				  .vent_s = run->vented ? run->vent_s : 0};
	if (!run->processed)
		return;
	out->breaks = run->breaks_n ? BREAKS_SOME : BREAKS_NONE;
	out->list_n = run->breaks_n;
	memcpy(out->list, run->breaks, run->breaks_n * sizeof *run->breaks);
}
