/* A load watched live: every event is taken by the machine of steps, then logged. */
#include <errno.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "jarwright/text.h"
#include "run_live.h"

#define MS_NS INT64_C(1000000)

int64_t live_now(const struct live *live)
{
	return live->clock->now_ns(live->clock->self) / MS_NS * MS_NS;
}

/* --- Saving --- */

static bool save_all(struct live *live, struct household *db, struct error *err)
{
	while (live->unsaved_n > 0) {
		if (!household_run_step(db, live->inv->operands[0], live->load.number,
					&live->unsaved[0], err))
			return false;
		live->unsaved_n--;
		memmove(live->unsaved, live->unsaved + 1, live->unsaved_n * sizeof *live->unsaved);
		live->inv->saved = true;
	}
	return true;
}

#define RETRY_EVERY (5 * RUN_SECOND)

bool live_save(struct live *live)
{
	struct household *db;
	struct error err = {0};
	int64_t now = live_now(live);
	if (live->unsaved_n == 0)
		return true;
	if (live->failed && now - live->tried_ns < RETRY_EVERY && now >= live->tried_ns)
		return false;
	live->tried_ns = now;
	bool ok = cli_household(HOUSEHOLD_WRITE, &db, &err);
	if (ok) {
		ok = save_all(live, db, &err);
		household_close(db);
	}
	live->failed = !ok;
	if (!ok && err.kind == ERROR_USAGE)
		*live->inv->err = err; /* it no longer runs: somebody logged it, or gave it up */
	live->trouble[0] = '\0';
	if (!ok && err.kind != ERROR_USAGE)
		snprintf(live->trouble, sizeof live->trouble, "%.500s", err.text);
	return ok;
}

static bool log_event(struct live *live, const struct run_entry *entry)
{
	if (live->unsaved_n == UNSAVED_MAX)
		return error_failed(live->inv->err,
				    "run: nothing can be saved any more; go on with "
				    "a clock on the wall, and log the load "
				    "with 'jarwright batch load'");
	struct run_moment *moment = &live->unsaved[live->unsaved_n];
	moment->entry = *entry;
	moment->at = live->clock->wall(live->clock->self);
	memcpy(moment->entry.boot, live->boot, sizeof moment->entry.boot);
	live->unsaved_n++;
	live_save(live);
	return live->inv->err->kind == ERROR_NONE;
}

/* --- What there is to say --- */

static const char *lost_now(const struct live *live)
{
	struct run_sight sight;
	live_look(live, &sight);
	return run_lost_word(&sight);
}

static void say(struct live *live, const struct run_entry *entry, enum run_answer answer)
{
	char time[32];
	struct run_face face;
	run_look(&live->run, entry->now_ns, &face);
	live->message[0] = '\0';
	if (entry->event == RUN_REBOOT)
		snprintf(live->message, sizeof live->message,
			 "The machine was started anew since: what happened meanwhile, and for how "
			 "long, is not known.%s",
			 answer == RUN_STARTED_AGAIN ? " The whole time starts again." : "");
	else if (answer == RUN_STARTED_AGAIN)
		snprintf(live->message, sizeof live->message,
			 "The whole time starts again, as published: first bring back %s.",
			 lost_now(live));
	else if (answer == RUN_NOT_YET)
		snprintf(live->message, sizeof live->message,
			 "Not yet: %s still to go. The time cannot be made shorter.",
			 run_time_words(time, sizeof time, face.left_s));
	else if (answer == RUN_ASKS)
		snprintf(live->message, sizeof live->message,
			 "Nobody watched for %s. Was %s never lost in that time?",
			 run_time_words(time, sizeof time, face.unseen_s), lost_now(live));
	else if (answer == RUN_EARLY)
		snprintf(live->message, sizeof live->message,
			 "That was before the published wait was over.");
	else if (entry->event == RUN_HELD && answer == RUN_TAKEN)
		snprintf(live->message, sizeof live->message, "Counted as unbroken, on your word.");
	else if (entry->event == RUN_RETURN && entry->now_ns - entry->seen_ns >= RUN_SECOND)
		snprintf(live->message, sizeof live->message, "Nobody watched for %s before this.",
			 run_time_words(time, sizeof time,
					(int32_t)((entry->now_ns - entry->seen_ns) / RUN_SECOND)));
}

/* --- Events --- */

/* Did it change anything that the log must know? */
static bool counts(enum run_event event, enum run_answer answer)
{
	if (event == RUN_TICK)
		return false;
	if (event == RUN_LEAVE || event == RUN_RETURN || event == RUN_REBOOT)
		return true;
	return answer == RUN_TAKEN || answer == RUN_EARLY || answer == RUN_STARTED_AGAIN;
}

static void keep_moments(struct live *live, const struct run_entry *entry, struct instant at)
{
	if (entry->event == RUN_DONE && entry->stage == RUN_PROCESS && live->run.processed)
		live->processed_at = at;
	/* The first jar comes out then: the earliest, so that no limit is too long. */
	if (entry->event == RUN_DONE && live->plan.steps[live->run.at].stage == RUN_UNLOAD)
		live->out_at = at;
}

bool live_take(struct live *live, enum run_event event, enum run_answer *out)
{
	struct run *run = &live->run;
	struct run_entry entry = {.event = event,
				  .stage = live->plan.steps[run->at].stage,
				  .now_ns = live_now(live),
				  .seen_ns = run->seen_ns};
	bool asked = run->asks;
	if (entry.now_ns < run->seen_ns)
		entry.event = RUN_REBOOT;
	enum run_answer answer = run_take(run, entry.event, entry.now_ns);
	if (out)
		*out = answer;
	if (!asked && run->asks) {
		entry.event = RUN_RETURN; /* found out just now */
		entry.seen_ns = run->unseen_ns;
	}
	if (entry.event != RUN_TICK)
		say(live, &entry, answer);
	if (!counts(entry.event, answer))
		return true;
	keep_moments(live, &entry, live->clock->wall(live->clock->self));
	return log_event(live, &entry);
}

bool live_replay(struct live *live)
{
	const struct running_load *load = &live->load;
	const char *before = load->moments[0].entry.boot;
	run_begin(&live->plan, load->moments[0].entry.now_ns, &live->run);
	for (size_t i = 1; i < load->moments_n; i++) {
		const struct run_moment *moment = &load->moments[i];
		run_replay(&live->run, &moment->entry, before);
		keep_moments(live, &moment->entry, moment->at);
		before = moment->entry.boot;
	}
	bool same = *live->boot && strcmp(before, live->boot) == 0;
	return live_take(live, same ? RUN_RETURN : RUN_REBOOT, NULL);
}

void live_look(const struct live *live, struct run_sight *out)
{
	*out = (struct run_sight){.title = live->title,
				  .pressure = live->plan.canner == CANNER_DIAL_GAUGE ||
					      live->plan.canner == CANNER_WEIGHTED_GAUGE,
				  .steam = live->plan.canner == CANNER_STEAM,
				  .message = live->message,
				  .trouble = live->trouble};
	run_look(&live->run, live_now(live), &out->face);
}

/* --- Reading and writing, past stdio: its buffers would hide what poll() asks for --- */

void live_put(const struct live *live, const char *text, size_t length)
{
	while (length > 0) {
		ssize_t n = write(live->out, text, length);
		if (n < 0 && errno == EINTR)
			continue;
		if (n <= 0)
			return;
		text += n;
		length -= (size_t)n;
	}
}

/* A line that is longer than any answer is cut. */
static bool take_line(struct live *live, char *line, size_t size)
{
	char *end = memchr(live->typed, '\n', live->typed_n);
	size_t length = end ? (size_t)(end - live->typed) : live->typed_n;
	if (!end && !(live->typed_end && length > 0) && length < sizeof live->typed)
		return false;
	snprintf(line, size, "%.*s", (int)length, live->typed);
	size_t taken = end ? length + 1 : length;
	live->typed_n -= taken;
	memmove(live->typed, live->typed + taken, live->typed_n);
	return true;
}

enum typed live_line(struct live *live, int ms, char *line, size_t size)
{
	struct pollfd in = {.fd = STDIN_FILENO, .events = POLLIN};
	for (;;) {
		if (take_line(live, line, size))
			return TYPED_LINE;
		if (live->typed_end)
			return TYPED_END;
		int ready = poll(&in, 1, ms);
		if (ready <= 0)
			return TYPED_NOTHING; /* a signal too: the caller looks */
		ssize_t n = read(STDIN_FILENO, live->typed + live->typed_n,
				 sizeof live->typed - live->typed_n);
		if (n <= 0 && !(n < 0 && errno == EINTR))
			live->typed_end = true;
		else if (n > 0)
			live->typed_n += (size_t)n;
	}
}
