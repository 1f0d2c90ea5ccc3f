/*
 * What a shelf's jars come to on a day: what to do at once, what to use first, what is due. Pure:
 * works on what household_shelf() and household_gauges() read.
 */
#ifndef JARWRIGHT_SHELF_H
#define JARWRIGHT_SHELF_H

#include "jarwright/household_jars.h"
#include "jarwright/keeping.h"

enum shelf_section {
	SHELF_ACT,     /* not for the shelf: something is to be done */
	SHELF_COOLING, /* out of the canner, the seal not tested yet, in time */
	SHELF_OPENED,
	SHELF_CHILLED,
	SHELF_FROZEN,
	SHELF_GOOD, /* sealed, processed as decided */
	SHELF_GONE,
	SHELF_SECTIONS
};

enum shelf_act {
	ACT_NONE,
	ACT_RECALLED,  /* keep it apart; the recall says what to do */
	ACT_DISCARD,   /* it stood too long */
	ACT_CHILL,     /* refrigerate, freeze or process again before .deadline_ms */
	ACT_FACTS,     /* the same, unless the missing facts of its load are given */
	ACT_TEST_SEAL, /* the time for testing is over */
};

struct shelf_line {
	const struct jar_group *group;
	enum shelf_section section;
	enum shelf_act act;
	int64_t from_ms, deadline_ms; /* of COOLING, CHILL, FACTS; from_ms 0: at once */
	bool past;                    /* .until is over */
	bool dated;                   /* .until is there */
	struct date until;            /* best before, or use by */
	bool borrowed; /* nothing is published for such a jar: the strictest near it counts */
	struct keeping_limit limit; /* what the time rests on; .from NULL: nothing */
};
struct shelf_list {
	struct shelf_line *lines; /* by section, act, date; owned */
	size_t lines_n;
};
/*
 * now: as the clock has it. The groups must outlive the list. False: no memory, *err is filled.
 */
bool shelf_list_make(const struct jar_groups *groups, struct instant now, struct shelf_list *out,
		     struct error *err);
void shelf_list_release(struct shelf_list *list);

/* The hours of struct jar_hold, as published; 0 where nothing is. */
struct jar_hold shelf_hold(void);

/* --- What is due --- */

enum due_kind {
	DUE_CHILL, /* before .until_ms */
	DUE_SEAL,  /* from .from_ms to .until_ms */
	DUE_EAT,   /* opened or chilled: the last day */
	DUE_BEST,  /* the best-quality date */
	DUE_GAUGE, /* the day by which the gauge is to be tested */
};
struct due {
	enum due_kind kind;
	const struct shelf_line *line; /* one of those it stands for; NULL for a gauge */
	struct jar_set jars;           /* of all of them */
	const struct gauge_due *gauge; /* else NULL */
	int64_t from_ms, until_ms;     /* of CHILL and SEAL */
	bool now;                      /* a gauge that was never tested */
	struct date day;               /* of .until_ms, or the day itself */
};
/* One entry a kind and load, or a kind, batch and day. */
struct due_list {
	struct due *items; /* by day and kind; owned */
	size_t items_n;
};
/* What is due within so many days from now, and all that is overdue. */
bool due_list_make(const struct shelf_list *shelf, const struct gauges_due *gauges,
		   struct instant now, int days, struct due_list *out, struct error *err);
void due_list_release(struct due_list *list);

#endif
