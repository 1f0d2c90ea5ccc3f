/*
 * How many jars and canner loads a process makes, and what happens when.
 *
 * Pure: no clock, no file. Every duration is read from a published rule of the edition;
 * what no publication gives (filling the jars, heating a steam canner) is left out of
 * the sums and marked so. Times are whole minutes, as a range from least to most.
 */
#ifndef JARWRIGHT_PLAN_H
#define JARWRIGHT_PLAN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/decide.h"
#include "jarwright/error.h"
#include "jarwright/measure.h"
#include "jarwright/reference.h"

/* A range and where it is published. */
struct span {
	int least, most;
	const struct citation *from; /* NULL: the publication of the process itself */
};

enum stage {
	STAGE_HEAT,         /* until the water boils or steam escapes */
	STAGE_VENT,         /* pressure: steam flows freely */
	STAGE_PRESSURIZE,   /* pressure: until the gauge shows the pressure */
	STAGE_PROCESS,      /* the process time */
	STAGE_DEPRESSURIZE, /* pressure: until the jars come out, the wait after it included */
	STAGE_REST,         /* boiling water: heat and lid off, before the jars come out */
};

struct plan_step {
	enum stage stage;
	bool published; /* false: no publication gives a time; 0 in the sums */
	struct span minutes;
};
#define PLAN_STEPS_MAX 6

/* Where the number of jars in a load comes from. */
enum load_origin { LOAD_STATED, LOAD_PUBLISHED, LOAD_OF_LARGER_JAR };

struct plan_wish {
	int jars;          /* > 0 */
	int jars_per_load; /* 0: the published usual load */
	int start;         /* minutes since midnight, 0 to 1439 */
	int until;         /* minutes since midnight: the last load should be out by then */
};

struct plan {
	struct plan_wish wish;
	int jars_per_load;
	enum load_origin load_origin;
	struct span usual_load; /* jars; only if not LOAD_STATED */
	int loads;
	int last_load_jars;
	struct plan_step steps[PLAN_STEPS_MAX]; /* of one load, in order */
	size_t steps_n;
	struct span load; /* minutes of one load, all published steps */
	struct span all;  /* minutes of all loads, one after the other */
	struct span wait; /* minutes of STAGE_DEPRESSURIZE after the pressure is gone; else 0 */
	struct span seal_test; /* hours after a load is out */
	bool complete;         /* every step of a load has a published time */
	bool late;             /* the last load may end after wish.until */
	int last_start; /* minutes since midnight by which the last load must start; may be < 0 */
};

/*
 * Plans a tested decision; steam: by steam canner. False: the edition lacks a rule the plan needs,
 * the wish is out of range, or no usual load is published for the jar (say jars_per_load then).
 */
bool plan_make(const struct reference *ref, const struct decision *decision,
	       const struct jar_choice *jar, bool steam, const struct plan_wish *wish,
	       struct plan *out, struct error *err);

/* When a step of a load (both counted from 0) begins, in minutes after the start. */
struct span plan_begins(const struct plan *plan, int load, size_t step);

/* When a load is out of the canner, in minutes after the start. */
struct span plan_out(const struct plan *plan, int load);

/* What a harvest makes, from the published pounds for a canner load. */
struct yield {
	int jars;                   /* whole jars, rounded down */
	struct rational left_lb;    /* what is left over, in pounds */
	int32_t published_milli_lb; /* the published pounds ... */
	int published_jars;         /* ... for this many jars ... */
	enum jar published_jar;     /* ... of this size */
};
/*
 * False: nothing is published for the food, or a number does not fit. Scales in
 * proportion to pounds and to the jar's volume.
 */
bool plan_yield(const struct reference *ref, const struct food *food, const struct jar_choice *jar,
		struct rational have_lb, struct yield *out);

/* The published usual number of jars in a load, or false: nothing covers this jar. */
bool plan_usual_load(const struct reference *ref, const struct jar_choice *jar, struct span *out,
		     enum load_origin *origin);

#define PLAN_JARS_MAX 1000

/*
 * A published rule by topic and unit, the first that speaks of all of the words (between
 * bars, in `says` or `applies_to`); or NULL.
 */
const struct published_rule *published_find(const struct reference *ref, const char *topic,
					    const char *unit, const char *words);
/* Its value as whole numbers: "10" or "20-30". False: it is neither. */
bool published_span(const struct published_rule *rule, struct span *out);

#endif
