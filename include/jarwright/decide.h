/*
 * May this food, in this pack, jar and canner, at this elevation, be processed so?
 *
 * decide() is a pure function of the reference edition and the request: no I/O, no
 * allocation, no state. Every rule is run and every finding kept; the verdict
 * follows from the findings. Doubt refuses or asks; nothing overrides a refusal.
 */
#ifndef JARWRIGHT_DECIDE_H
#define JARWRIGHT_DECIDE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/reference.h"

enum verdict { VERDICT_TESTED, VERDICT_REFUSED, VERDICT_UNTESTED, VERDICT_UNCLEAR };

/* How a canner was named. */
enum canner_choice {
	CHOICE_UNSTATED,
	CHOICE_CANNER,            /* .canner */
	CHOICE_PRESSURE_UNSTATED, /* a pressure canner, gauge kind not said */
	CHOICE_BARRED,            /* .method: an oven, a dishwasher ... */
};

/* A jar by name or by volume. */
struct jar_choice {
	bool stated;
	bool by_volume;
	enum jar jar;      /* !by_volume */
	int64_t volume_nl; /* by_volume: nanolitres, rounded up; > 0 */
};

enum vinegar_choice {
	VINEGAR_UNSTATED,
	VINEGAR_LABELLED, /* .vinegar_milli_percent */
	VINEGAR_UNKNOWN,  /* no strength on the label */
	VINEGAR_HOME_MADE,
	VINEGAR_WINE,
};
enum jars_choice { JARS_UNSTATED, JARS_STERILE, JARS_NOT_STERILE };

#define PH_UNSTATED  NONE
#define PSI_UNSTATED 0

/* Everything the cook said. Zero means "not said" in every member. */
struct request {
	struct food_match food; /* from reference_find_food() */
	const char *recipe;     /* the cook's own of that very name, not asked for; or NULL */
	enum canner_choice canner_choice;
	enum canner canner;
	const struct barred *method;
	struct jar_choice jar;
	enum pack pack;
	bool elevation_stated;
	int32_t elevation_mft; /* thousandths of a foot, rounded up; may be negative */
	enum vinegar_choice vinegar;
	int32_t vinegar_milli_percent; /* rounded down */
	enum acid acid;                /* the acid that will be used */
	bool ph_stated;
	int32_t ph_milli; /* rounded up: the stricter side */
	int psi;          /* the published pressure choice wanted, or 0 */
	enum jars_choice jars;
	int holds_quarts;               /* quart jars the pressure canner holds upright, or 0 */
	const struct barred *closure;   /* NULL: two-piece lid, new */
	const struct barred *container; /* NULL: preserving jar */
};

enum level { LEVEL_NOTE, LEVEL_WARN, LEVEL_ASK, LEVEL_REFUSE };

/*
 * One reason. `a`, `b` and `word` fill the rule's template. `uncovered` marks the
 * findings that mean "nothing published covers it" rather than "forbidden".
 */
struct finding {
	enum rule_id rule;
	enum level level;
	bool uncovered;
	const struct barred *barred; /* the thing refused by name, or NULL */
	const struct citation *from; /* where this reason stands, if not the rule's own source */
	int32_t a_milli, b_milli;    /* of an acid dose: the enum acid and the enum jar */
	const char *word;
};
#define FINDINGS_MAX 72 /* more than all rules together can add: asserted in decide.c */

/* One published pressure choice at this jar and elevation, in printed order. */
struct pressure_choice {
	int minutes;
	int psi;
};
#define CHOICES_MAX 4

/* The process: set only when the verdict is VERDICT_TESTED. */
struct process {
	const struct process_table *table;
	const struct process_line *line; /* of the jar that covers the cook's */
	const struct band *band;
	int minutes;
	int psi;          /* 0: no pressure */
	int vent_minutes; /* 0: not vented */
	bool sterile_jars;
	struct pressure_choice choices[CHOICES_MAX]; /* pressure: all of them, this one too */
	size_t choices_n;
};

struct decision {
	enum verdict verdict;
	const struct food *food; /* NULL if not one food */
	struct process process;
	struct finding findings[FINDINGS_MAX]; /* worst first, then in rule order */
	size_t findings_n;
};

void decide(const struct reference *ref, const struct request *request, struct decision *out);

/* A way that is published for the same food at the same elevation. */
struct way {
	enum canner canner;
	enum pack pack;
	enum jar jar; /* the table's jar */
	int minutes;
	int psi;
};
#define WAYS_MAX 32
/*
 * The published ways for the request's food at its elevation other than the one asked for,
 * nearest first: same canner, same pack, same jar. What the cook said of her acid, her pH and
 * her empty jars is kept, so a way listed is one decide() calls tested; vinegar she said
 * nothing of counts as of the published strength here, and is still asked for by decide().
 * Returns how many were written, at most max.
 */
size_t decide_ways(const struct reference *ref, const struct request *request, struct way *out,
		   size_t max);

/* What is put into each jar of a food that needs this acid: "citric acid". */
const char *acid_dose_words(enum acid acid);
/*
 * Writes the finding as one or more plain sentences: what the rule says, what it means
 * here, what to do. Returns the length that the whole text has; cut to fit size.
 */
size_t finding_text(const struct reference *ref, const struct finding *finding, char *buffer,
		    size_t size);
/* The citation to print beside it. */
const struct citation *finding_citation(const struct reference *ref, const struct finding *finding);

const char *verdict_word(enum verdict verdict); /* "tested" ... */
const char *level_word(enum level level);       /* "note" ... */
int verdict_exit_code(enum verdict verdict);    /* 0, 3, 4, 5 */

#endif
