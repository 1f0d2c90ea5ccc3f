/* run: a load watched live. What its sources share. */
#ifndef JARWRIGHT_CLI_RUN_LIVE_H
#define JARWRIGHT_CLI_RUN_LIVE_H

#include "batch.h"
#include "jarwright/household_runs.h"
#include "jarwright/render_run.h"

/*
 * The clocks of the machine. A struct of functions, so that the tests bring their own; the
 * program has only the real one, and nothing of its surroundings can change that.
 */
struct run_clock {
	void *self;
	int64_t (*now_ns)(void *self);      /* never stops, counts sleep; < 0: there is none */
	struct instant (*wall)(void *self); /* the time of day: a label only */
	void (*boot)(void *self, char id[static RUN_BOOT_SIZE]); /* "": not known */
	int look_ms; /* how long to wait for a key between two looks */
};
extern const struct run_clock run_clock_real;

/* The whole command, by this clock. */
int run_command_with(struct invocation *inv, const struct run_clock *clock);

#define UNSAVED_MAX 128

struct live {
	struct invocation *inv;
	const struct run_clock *clock;
	struct batch_view view;
	struct load_rules rules;
	struct running_load load;
	struct load_canner canner;
	struct jar_choice choices[LOAD_JARS_MAX];
	char boot[RUN_BOOT_SIZE];
	int lock; /* a file, or -1 */
	int out;  /* where to write: standard output, or with --json standard error */
	struct run_plan plan;
	struct run run;
	/* Entries that the file did not take yet, in order. */
	struct run_moment unsaved[UNSAVED_MAX];
	size_t unsaved_n;
	bool failed; /* the last try to save, at tried_ns */
	int64_t tried_ns;
	/* What the wall showed when the process, and the load, was over. */
	struct instant processed_at, out_at;
	char title[256];
	char message[512]; /* the last thing to say */
	char trouble[512]; /* why it is not saved */
	bool trouble_told; /* as a line */
	/* Lines typed, not yet read. */
	char typed[256];
	size_t typed_n;
	bool typed_end;
};

/* --- run_live.c --- */

/* The clock in whole milliseconds, as the log keeps it: what is read back counts the same. */
int64_t live_now(const struct live *live);

/* What a look at the clock, or a key, comes to; logged if it changed something. *answer may be
 * NULL. False: inv->err is filled and the watch must end. */
bool live_take(struct live *live, enum run_event event, enum run_answer *answer);
/* Goes on with a load from the log. */
bool live_replay(struct live *live);
void live_look(const struct live *live, struct run_sight *out);
/* Tries again what could not be saved; false: there is still some. */
bool live_save(struct live *live);

/* --- Two ways to watch; each returns when the load is over or she leaves. False: inv->err. --- */

bool run_on_screen(struct live *live);
bool run_in_lines(struct live *live);

/* The next line typed, without its end; waits for it, at most ms (-1: as long as it takes). */
enum typed { TYPED_LINE, TYPED_NOTHING, TYPED_END };
enum typed live_line(struct live *live, int ms, char *line, size_t size);
/* Writes at once; a terminal that is gone is no reason to stop counting. */
void live_put(const struct live *live, const char *text, size_t length);

/* --- run_finish.c --- */

/* Asks what the clock cannot see, and logs the load. Returns a status. */
int run_finish(struct live *live);

#endif
