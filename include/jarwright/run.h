/*
 * One load, live: which steps the sources give for this canner, how long each takes, and what an
 * event does to the count.
 *
 * Pure: no clock, no file, no memory of its own. Time comes in as nanoseconds of a clock that
 * never stops and counts sleep; nothing here knows the time of day. A process, or a venting, is
 * over only when the whole of its published time lies behind it unbroken: a lost boil or pressure
 * starts it again, and so does every doubt: a clock that went back or began anew, or a time in
 * which nobody watched unless she says that nothing was lost in it. There is no pause.
 */
#ifndef JARWRIGHT_RUN_H
#define JARWRIGHT_RUN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/load_judge.h"
#include "jarwright/reference.h"

#define RUN_SECOND INT64_C(1000000000) /* nanoseconds */
/* Longer than this between two looks at the clock, and nobody watched. A choice of ours, not a
 * published figure; the program looks several times a second. */
#define RUN_UNWATCHED (30 * RUN_SECOND)

/* --- The steps --- */

enum run_stage {
	RUN_PREHEAT,      /* boiling water, steam: the water, before the jars */
	RUN_FILL,         /* fill and close the jars, load the canner */
	RUN_HEAT,         /* until the water boils, or steam escapes */
	RUN_VENT,         /* pressure: for its time; steam: until it is pure */
	RUN_PRESSURIZE,   /* pressure: until the gauge shows it */
	RUN_PROCESS,      /* the process time */
	RUN_REST,         /* boiling water: heat and lid off */
	RUN_DEPRESSURIZE, /* pressure: by itself */
	RUN_OPEN,         /* pressure: weight off, before the lid */
	RUN_UNLOAD,       /* the jars come out */
	RUN_COOL,         /* always the last: the load is over */
	RUN_STAGE_COUNT
};
const char *run_stage_word(enum run_stage stage); /* "preheat" ... */
bool run_stage_find(const char *word, enum run_stage *out);

struct run_step {
	enum run_stage stage;
	int32_t least_s, most_s;      /* published, in seconds; 0: no time is, and she says when */
	bool unbroken;                /* least_s must pass without a break */
	size_t again;                 /* unbroken: the step at which to begin again after a break */
	char watch[224];              /* what to do and to look for, one line */
	const struct citation *from;  /* of what to do; never NULL */
	const struct citation *timed; /* of the time; NULL: none */
};
#define RUN_STEPS_MAX 10

struct run_plan {
	enum canner canner;
	struct run_step steps[RUN_STEPS_MAX];
	size_t steps_n; /* the last one is RUN_COOL */
};

/*
 * The steps of a load with this need; pack "raw", "hot" or "". high_mpsi: by how many thousandths
 * of a psi a dial gauge reads high, >= 0; it must show so much more. False: nothing published
 * covers the load, or the edition lacks a rule.
 */
bool run_plan_make(const struct reference *ref, const struct load_need *need, int32_t high_mpsi,
		   const char *pack, struct run_plan *out, struct error *err);

/* --- Events --- */

enum run_event {
	RUN_BEGIN,   /* the first of a load */
	RUN_TICK,    /* somebody watches; never logged */
	RUN_DONE,    /* she says that the step is done */
	RUN_LOST,    /* the boil stopped, the pressure or the steam fell */
	RUN_BACK,    /* back to the step before */
	RUN_LEAVE,   /* the watch ends */
	RUN_RETURN,  /* it begins again, on the same clock */
	RUN_REBOOT,  /* it begins again, and the clock did too: no time before is known */
	RUN_HELD,    /* she says that nothing was lost while nobody watched */
	RUN_DOUBT,   /* she does not know, or it was lost then */
	RUN_ABANDON, /* the load is given up; only the log knows this one */
	RUN_EVENT_COUNT
};
const char *run_event_word(enum run_event event); /* "begin" ... */
bool run_event_find(const char *word, enum run_event *out);

/* What came of an event. */
enum run_answer {
	RUN_TAKEN,         /* as said */
	RUN_EARLY,         /* as said, and before the published time of a wait was over */
	RUN_STARTED_AGAIN, /* after a break: the step to be done again is the current one */
	RUN_NOT_YET,       /* refused: the unbroken time is not over */
	RUN_ASKS,          /* refused, or found out: did it hold while nobody watched? */
	RUN_NOTHING,       /* it means nothing here, and nothing changed */
};

struct run {
	const struct run_plan *plan; /* the caller's */
	size_t at;                   /* the current step */
	int64_t seen_ns;             /* the last moment that somebody watched */
	bool known;                  /* is it known since when the step runs? */
	int64_t since_ns;            /* known: that moment */
	bool asks;                   /* nobody watched an unbroken step, and she has not said */
	int64_t unseen_ns;           /* asks: since then */
	/* Of the process, in whole seconds since its timing first began. */
	bool based;
	int64_t base_ns;
	bool broken; /* a break goes on */
	int32_t broken_s;
	struct load_break breaks[LOAD_BREAKS_MAX];
	size_t breaks_n;
	/* What is behind it. */
	bool vented, processed;
	int32_t vent_s, process_s;
	bool told; /* some of it was not watched, and she said that it held */
};

void run_begin(const struct run_plan *plan, int64_t now_ns, struct run *out);
enum run_answer run_take(struct run *run, enum run_event event, int64_t now_ns);

/* An event as the log keeps it. */
#define RUN_BOOT_SIZE 64
struct run_entry {
	enum run_event event;
	enum run_stage stage;     /* the step it happened in */
	int64_t now_ns;           /* the clock's reading */
	int64_t seen_ns;          /* RUN_RETURN: until when somebody had watched; -1: not known */
	char boot[RUN_BOOT_SIZE]; /* which run of the clock that is of; "": not known */
};
/*
 * Takes an event from the log, in which the times between entries count as watched. before: the
 * boot of the entry before. What does not fit starts an unbroken step again.
 */
void run_replay(struct run *run, const struct run_entry *entry, const char *before);

/* --- What stands on the clock --- */

struct run_face {
	const struct run_step *step;
	size_t number, of; /* step 4 of 7 */
	bool known;        /* is elapsed_s? */
	int32_t elapsed_s; /* in this step, since it last began */
	int32_t left_s;    /* until least_s is over, rounded up; 0: it is, or there is none */
	int percent;       /* of least_s, rounded down, 0 to 100; -1: no time is published */
	bool asks, over;
	int32_t unseen_s; /* asks: how long nobody watched */
};
void run_look(const struct run *run, int64_t now_ns, struct run_face *out);

/* What was seen of the load, for load_judge(); only what a clock can see. */
void run_said(const struct run *run, struct load_said *out);

#endif
