/*
 * Was this load processed as it was decided?
 *
 * load_judge() holds what the cook says of one load against the process that was decided for
 * it. It is pure. A fact that was not said is never taken for good: it is asked for, and the
 * load stays unclear; a fact that falls short makes the load under-processed, and no other
 * fact makes up for it.
 *
 * What the facts are held against is published: the whole time starts again after a lost boil
 * or a lost pressure; a pressure canner is vented; a dial gauge that reads high shows more
 * than there is; steam stays at the boiling temperature of the elevation.
 */
#ifndef JARWRIGHT_LOAD_JUDGE_H
#define JARWRIGHT_LOAD_JUDGE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/reference.h"
#include "jarwright/reference_tables.h"

enum load_outcome { LOAD_PROCESSED, LOAD_UNDER_PROCESSED, LOAD_UNCLEAR, LOAD_COLD };
const char *load_outcome_word(enum load_outcome outcome); /* "under-processed" ... */
bool load_outcome_find(const char *word, enum load_outcome *out);
/* Under-processed before unclear before the others; of those the first. */
enum load_outcome load_outcome_stricter(enum load_outcome a, enum load_outcome b);

/* The published rules on loads, seals and gauges; constant data of the edition. */
struct load_rules {
	int gauge_psi; /* a gauge that is off by more is to be replaced */
	const struct published_rule *gauge_limit, *gauge_yearly, *gauge_high;
	int seal_earliest_h, seal_latest_h; /* hours after a load is out */
	const struct published_rule *seal_earliest, *seal_latest;
	int reprocess_h; /* an unsealed jar may be processed again within so many hours */
	const struct published_rule *reprocess, *reprocess_time, *freeze, *chill;
	const struct published_rule *lost_boil, *lost_pressure, *vent, *steam_held;
	int wrong_h; /* a jar that was wrongly processed, likewise: the shorter time */
	const struct keeping_row *wrong;
	const struct keeping_row *dense;   /* what is not to be processed again at all */
	const struct keeping_row *late;    /* an unsealed jar found later than that */
	const struct change_rule_row *own; /* what is done with what nothing published covers */
};
/* False: the edition lacks one of them. */
bool load_rules_find(const struct reference *ref, const struct reference_tables *tables,
		     struct load_rules *out, struct error *err);

/* The process that was decided. */
struct load_need {
	enum canner canner;
	int minutes;      /* > 0 */
	int psi;          /* of a pressure canner, > 0 */
	int vent_minutes; /* of a pressure canner, > 0 */
	bool elevation_stated;
	int32_t elevation_mft;       /* thousandths of a foot */
	bool uncovered;              /* nothing published covers it: never processed */
	const struct citation *from; /* the table of the process, or why it is uncovered */
};

/* What is known of the dial gauge; unknown: it was never tested. */
struct load_gauge {
	bool known;
	int32_t high_mpsi;  /* thousandths of a psi above a master gauge, at worst; may be < 0 */
	int32_t error_mpsi; /* the greatest error either way, >= 0 */
};

/* A time in which the boil or the pressure was lost, in seconds after timing began. */
struct load_break {
	int32_t at_s, length_s; /* >= 0 */
};
#define LOAD_BREAKS_MAX 16

enum breaks_said { BREAKS_UNSAID, BREAKS_NONE, BREAKS_SOME };

/* What the cook says. Zero means "not said" in every member. */
struct load_said {
	bool process_stated;
	int32_t process_s; /* seconds from the beginning of timing to its end, rounded down */
	bool vent_stated;
	int32_t vent_s;
	bool psi_stated;
	int32_t low_mpsi; /* lowest reading while the time counted, rounded down */
	bool temperature_stated;
	int32_t low_mf; /* lowest temperature then, thousandths of a degree F, rounded down */
	enum breaks_said breaks;
	struct load_break list[LOAD_BREAKS_MAX];
	size_t list_n;
	struct load_gauge gauge; /* of the canner, from its tests */
};

enum load_fact {
	FACT_MINUTES,
	FACT_BREAKS,
	FACT_VENT,
	FACT_PSI,
	FACT_GAUGE,
	FACT_TEMPERATURE,
	FACT_ELEVATION,
	FACT_COVER, /* nothing published covers these jars in this canner at this elevation */
};

/* A fact that falls short, or is missing. */
struct load_finding {
	enum load_fact fact;
	bool missing;
	/* Seconds, thousandths of a psi or of a degree F, by the fact; 0 if missing. */
	int32_t need, had;
	int32_t gauge_high_mpsi;     /* FACT_PSI: what was taken off the reading */
	bool broken;                 /* FACT_MINUTES: there was a break, and `had` is after it */
	const struct citation *from; /* never NULL */
};
#define LOAD_FINDINGS_MAX 8

struct load_judgement {
	enum load_outcome outcome; /* never LOAD_COLD */
	int32_t counted_s;         /* the unbroken time after the last break */
	struct load_finding findings[LOAD_FINDINGS_MAX]; /* shortfalls first */
	size_t findings_n;
};

void load_judge(const struct load_rules *rules, const struct load_need *need,
		const struct load_said *said, struct load_judgement *out);

/* Writes one plain sentence without a full stop; cut to fit. Returns buffer. */
char *load_finding_text(const struct load_finding *finding, char *buffer, size_t size);

#endif
