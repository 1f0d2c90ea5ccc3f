/*
 * A recorder's trace of one load, held against what the load needs.
 *
 * Pure: readings come in one by one, nothing is kept of them but what the answer says, so a
 * record of any length takes the same memory. Times are in seconds, temperatures in degrees
 * Fahrenheit, pressures in psi above the air's.
 *
 * There is no tolerance: a reading below the requirement is below it, by however little,
 * because no publication allows one. What the record does not show does not count. Lethality
 * is worked out for information and never changes the outcome.
 */
#ifndef JARWRIGHT_RECORD_H
#define JARWRIGHT_RECORD_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/decide.h"
#include "jarwright/load_judge.h"

/* What a recorder measures. */
enum record_channel { RECORD_TEMPERATURE, RECORD_PRESSURE, RECORD_CHANNELS };

/* One row of the record. NAN: no reading. */
struct record_sample {
	double time_s; /* from any fixed moment */
	double value[RECORD_CHANNELS];
	long line; /* of the file, for messages */
};

/*
 * Longest time between two readings that may count as held. Ours and no publication's: a
 * minute, since every published process is in whole minutes.
 */
#define RECORD_GAP_S 60.0
/*
 * Readings above these pressures, or the temperature of steam at them, are faults of the
 * recorder and count as no reading. Ours: an open canner is at the air's pressure, which no
 * weather raises by 2 psi; and 15 psi is the highest published process.
 */
#define RECORD_OPEN_PSI_MOST   2.0
#define RECORD_CLOSED_PSI_MOST 30.0

/* What the load needs. */
struct record_need {
	enum canner canner;
	bool pressure; /* a pressure canner, to be vented */
	double elevation_ft;
	int minutes;
	int psi;                       /* 0: open canner */
	int vent_minutes;              /* 0: open canner */
	double boiling_f;              /* boiling point of water here */
	double least[RECORD_CHANNELS]; /* NAN: not judged by this channel */
	double most[RECORD_CHANNELS];  /* above it a reading is a fault */
	bool vent_stated;              /* the cook timed the venting: */
	double vented_minutes;
};

/*
 * The need of a tested process in this canner (a steam canner's process is of a boiling-water
 * table). An open canner is judged by its temperature: the boiling point here. A pressure
 * canner is judged by its pressure, and by its temperature: that of pure steam at the
 * pressure, since air left in a canner makes it cooler than its gauge says (USDA AIB 539,
 * 2015, guide 1, p. 1-20). The channels that the record has are the caller's to keep:
 * record_need_without().
 */
void record_need_make(const struct process *process, enum canner canner, double elevation_ft,
		      struct record_need *out);
/* The record does not have this channel. */
void record_need_without(struct record_need *need, enum record_channel channel);

enum record_outcome {
	RECORD_HELD,      /* at or above the requirement for the whole time, from the first start */
	RECORD_RESTARTED, /* interrupted, then a whole uninterrupted process: counts from there */
	RECORD_UNDER_PROCESSED,
	RECORD_UNCLEAR, /* the record cannot show it; counts as not held */
};
const char *record_outcome_word(enum record_outcome outcome); /* "under-processed" */

/* Why it is not held; several may be. */
enum record_reason {
	RECORD_NO_READING,     /* no usable reading at all */
	RECORD_NEVER_REACHED,  /* no reading at or above the requirement */
	RECORD_TOO_SHORT,      /* the longest uninterrupted time is too short */
	RECORD_VENT_SHORT,     /* vented too short, by the cook's word or by the trace */
	RECORD_VENT_UNSTATED,  /* steam flowing from a vent is in no record: the cook must say */
	RECORD_VENT_NOT_SHOWN, /* the record does not show enough time at boiling before it */
	RECORD_COOLED,         /* after the first start it lost all pressure: air came back */
	RECORD_GAPS,           /* readings too far apart hide whether it was held */
	RECORD_COARSE,         /* all readings are too far apart */
	RECORD_BACKWARDS,      /* the time goes backwards */
	RECORD_ENDS_EARLY,     /* the record ends before the process */
	RECORD_STUCK,          /* a reading that never changes again before the end */
	RECORD_REASONS
};

/* A time below the requirement after the start, or without readings. */
struct record_dip {
	double from_s; /* first reading below; of a gap: last reading before it */
	double to_s;   /* first reading at or above again; if !ended: last reading below */
	bool ended;
	bool gap;                       /* no readings, rather than low ones */
	double lowest[RECORD_CHANNELS]; /* of a dip; NAN: never below in this channel */
	long line;                      /* of its first reading */
};
#define RECORD_DIPS_MAX 64

struct record_judgement {
	enum record_outcome outcome;
	bool reasons[RECORD_REASONS];
	long rows;               /* of the record */
	long no_reading;         /* rows without a usable reading */
	double from_s, to_s;     /* first and last row */
	bool started;            /* the requirement was reached: */
	double first_start_s;    /* first time */
	bool complete;           /* an uninterrupted time of the whole process: */
	double start_s, until_s; /* it; else the longest uninterrupted time, if started */
	double uninterrupted_s;  /* its length, seconds */
	struct record_dip dips[RECORD_DIPS_MAX]; /* the first, before the process was complete */
	size_t dips_n;                           /* all there were; may be more than are kept */
	double lowest[RECORD_CHANNELS];  /* between first start and the end of the process */
	double highest[RECORD_CHANNELS]; /* of the record; NAN: no reading */
	bool boiled;                     /* boiling here was reached before the start: */
	double boiling_s;                /* when */
	double vent_room_s;              /* from then to the start: venting was no longer */
	double widest_gap_s;             /* between two usable readings */
	double widest_gap_from_s;
	long backwards_line; /* where the time first goes backwards */
	bool again;          /* reached once more after the end: a second load, not judged */
	double again_s;
	bool lethality_known;     /* there are temperatures */
	double lethality_minutes; /* F0 in the canner over the whole record, gaps left out */
};

/* An uninterrupted time at or above a limit. */
struct record_span {
	bool open;
	double from_s, to_s;
};

/* The state between readings; only record_judge_...() look inside. */
struct record_judge {
	struct record_need need;
	struct record_judgement so_far;
	bool any; /* a usable reading came */
	double usable_s;
	double finest_s;            /* shortest step between two usable readings */
	struct record_span strict;  /* held; a gap ends it */
	struct record_span lenient; /* held; gaps count as held */
	double longest_lenient_s;
	struct record_span hot, hot_lenient; /* at or above boiling */
	bool cold_seen;                      /* below boiling, before it was hot */
	bool at_pressure;                    /* reached since it last was at boiling */
	bool cooled;
	double vent_room_strict_s;
	bool boiling_seen; /* the moment it began to boil is in the record */
	bool dipping;
	double fell_s; /* after the end: first reading below; NAN: none */
	double last[RECORD_CHANNELS], changed_s[RECORD_CHANNELS];
	double warm_f, warm_s; /* last temperature, for the lethality */
	double end_s;          /* when the process was complete */
};

void record_judge_start(struct record_judge *judge, const struct record_need *need);
void record_judge_add(struct record_judge *judge, const struct record_sample *sample);
void record_judge_end(struct record_judge *judge, struct record_judgement *out);

/* What the record leaves of a load of which the cook said something too. */
struct record_leaves {
	enum load_outcome outcome; /* never LOAD_COLD; what she said is judged apart */
	bool break_unsaid;         /* it shows a break, and she said none */
	bool stopped_early;        /* she timed less than it took with the break: */
	double whole_s;            /* from first reaching the requirement to the end */
};
/*
 * Held leaves it processed. So does a whole time held again after a break, if she knew of a break
 * and her timing is as long as that took: else the jars may have come out before the whole time
 * was over. It stays unclear then.
 */
void record_for_load(const struct record_need *need, const struct record_judgement *judgement,
		     const struct load_said *said, struct record_leaves *out);

/*
 * The trace made small enough to draw: time in equal steps, and of each the lowest and highest
 * reading, so that the shortest dip still shows. The steps widen as the record grows.
 */
#define RECORD_STEPS 1024
struct record_step {
	bool gap; /* readings stopped for longer than RECORD_GAP_S before it */
	double least[RECORD_CHANNELS], most[RECORD_CHANNELS]; /* NAN: none */
};
struct record_outline {
	bool any;
	double from_s, last_s;
	double step_s;
	size_t steps_n; /* used */
	struct record_step steps[RECORD_STEPS];
};
void record_outline_start(struct record_outline *outline);
/* A sample before the first one is left out. Readings above need->most count as none. */
void record_outline_add(struct record_outline *outline, const struct record_need *need,
			const struct record_sample *sample);

#endif
