/* run --plain: one line a step, and lines to answer with; for a pipe, a log, a screen reader. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"
#include "run_live.h"
#include "run_signals.h"

/* One line, with the time of day in front as a label. */
static void put_line(struct live *live, const char *text)
{
	char at[INSTANT_SIZE], line[1024];
	int n = snprintf(line, sizeof line, "%s  %s\n",
			 instant_text(live->clock->wall(live->clock->self), at), text);
	live_put(live, line, n < (int)sizeof line ? (size_t)n : sizeof line - 1);
}

static void put_step(struct live *live)
{
	char *text = NULL;
	size_t n = 0;
	struct run_sight sight;
	FILE *out = open_memstream(&text, &n);
	live_look(live, &sight);
	if (!out)
		return;
	run_step_line(out, &sight.face);
	if (fclose(out) == 0)
		put_line(live, text);
	free(text);
}

static void put_trouble(struct live *live)
{
	char line[640], shown[640];
	snprintf(line, sizeof line, "not saved yet, it is tried again: %s", live->trouble);
	put_line(live, text_harmless(line, shown, sizeof shown));
}

static void put_message(struct live *live)
{
	char shown[512];
	if (*live->trouble && !live->trouble_told)
		put_trouble(live);
	live->trouble_told = *live->trouble != '\0';
	if (*live->message)
		put_line(live, text_harmless(live->message, shown, sizeof shown));
	live->message[0] = '\0';
}

static const struct {
	const char *word;
	enum run_event event;
} words[] = {
    {"done", RUN_DONE},  {"lost", RUN_LOST},     {"back", RUN_BACK},
    {"quit", RUN_LEAVE}, {"held yes", RUN_HELD}, {"held no", RUN_DOUBT},
};

/* What a line means; RUN_TICK: nothing. */
static enum run_event event_of(struct live *live, const char *line)
{
	char shown[TEXT_SHOWN_SIZE];
	line += strspn(line, " \t\r");
	size_t length = strlen(line);
	while (length > 0 && strchr(" \t\r", line[length - 1]))
		length--;
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strlen(words[i].word) == length && strncmp(words[i].word, line, length) == 0)
			return words[i].event;
	text_show(line, length, shown);
	if (length > 0)
		snprintf(live->message, sizeof live->message,
			 "'%s' means nothing here; say done, lost, back, held yes, held no or quit",
			 shown);
	return RUN_TICK;
}

/* Says once that a time is up. */
static void tell_time(struct live *live, bool *told)
{
	struct run_sight sight;
	char line[96];
	live_look(live, &sight);
	const struct run_step *step = sight.face.step;
	bool timed = step->unbroken || step->stage == RUN_REST || step->stage == RUN_OPEN;
	if (*told || !timed || !sight.face.known || sight.face.asks || sight.face.left_s > 0)
		return;
	*told = true;
	snprintf(line, sizeof line, "%s: the time is up; say done", run_stage_word(step->stage));
	put_line(live, line);
}

/* How to answer what was just asked. */
static void say_how(struct live *live)
{
	size_t n = strlen(live->message);
	if (n > 0 && live->run.asks)
		snprintf(live->message + n, sizeof live->message - n,
			 " Say held yes, or held no if you are not sure.");
}

static bool one_event(struct live *live, enum run_event event, bool *told)
{
	enum run_answer answer;
	size_t at = live->run.at;
	int64_t since = live->run.since_ns;
	if (!live_take(live, event, &answer))
		return false;
	if (event != RUN_TICK && answer == RUN_NOTHING)
		snprintf(live->message, sizeof live->message, "that means nothing in this step");
	if (answer == RUN_ASKS)
		say_how(live);
	put_message(live);
	if (at != live->run.at || since != live->run.since_ns) {
		*told = false;
		put_step(live);
	}
	return true;
}

bool run_in_lines(struct live *live)
{
	char line[256];
	bool told = false;
	say_how(live);
	put_message(live);
	put_step(live);
	for (;;) {
		enum run_event event = RUN_TICK;
		struct run_sight sight;
		live_look(live, &sight);
		if (sight.face.over)
			return true;
		enum typed typed = live_line(live, live->clock->look_ms, line, sizeof line);
		if (typed == TYPED_END || run_signal_leave())
			event = RUN_LEAVE;
		else if (typed == TYPED_LINE)
			event = event_of(live, line);
		live_save(live);
		if (live->inv->err->kind != ERROR_NONE || !one_event(live, event, &told))
			return false;
		if (event == RUN_LEAVE)
			return true;
		tell_time(live, &told);
	}
}
