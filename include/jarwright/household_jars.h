/*
 * Jars in the household file: moving them, the history of one, what stands where, and what is
 * due. Reading a file that does not exist finds none. Moments are milliseconds since 1970 UTC.
 */
#ifndef JARWRIGHT_HOUSEHOLD_JARS_H
#define JARWRIGHT_HOUSEHOLD_JARS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"
#include "jarwright/jar_state.h"

/* --- Which jars --- */

/* Some jars of one batch as a cook names them. */
struct jar_pick {
	int year, number;               /* of the batch's code */
	char device[KITCHEN_NAME_SIZE]; /* of two batches with one code; "" not said */
	struct jar_set jars;
	int count; /* above 0: so many, whichever may; jars is then empty */
};
#define JAR_PICKS_MAX 32
struct jar_picks {
	struct jar_pick picks[JAR_PICKS_MAX];
	size_t picks_n;
};

/*
 * Reads "26-041-07", "26-041-01..12", "26-041-1,3,5", "26-041 1-6", "3 of 26-041", and several
 * of them. Words may have blanks in them.
 */
bool jar_picks_read(const char *const *words, size_t words_n, struct jar_picks *out,
		    struct error *err);
/* The same, or "26-041" alone: a pick without jars and count, all of that batch that are here. */
bool jar_picks_or_batch_read(const char *const *words, size_t words_n, struct jar_picks *out,
			     struct error *err);

/* --- Moving --- */

/* Hours that a jar may stand from the canner to the cold or to the canner again. */
struct jar_hold {
	int failed_hours; /* its lid failed */
	int wrong_hours;  /* it was processed wrongly, or it is not known whether rightly */
};

struct jar_move {
	enum jar_state to;
	const char *place; /* where, or to whom; NULL: not said */
	const char *why;   /* NULL: not said */
	bool happened;     /* it is so already, whatever is advised */
	struct instant at;
	struct jar_hold hold;
};

#define JAR_CODE_SIZE  48
#define JAR_TITLE_SIZE 256
#define JAR_PLACE_SIZE 128

/* Jars of one batch that were moved, and what there is to say of them. */
struct moved {
	char code[JAR_CODE_SIZE]; /* "26-041" */
	char title[JAR_TITLE_SIZE];
	char food[64]; /* slug; "" none */
	struct jar_set jars;
	struct jar_set advised_against; /* those that moved although they ought not */
	enum jar_advice advice;         /* why they ought not */
	bool waiting;                   /* some were unsealed, untested, or as below, but in time */
	bool wrong;                     /* some of those were not processed as decided */
};
struct jars_moved {
	struct moved batches[JAR_PICKS_MAX];
	size_t batches_n;
};

/* A batch that is not there is a usage error; asked before a file is made to write in. */
bool household_jars_known(struct household *db, const struct jar_picks *picks, struct error *err);

/*
 * Moves them all in one transaction, or none. What is advised against is a usage error that says
 * why, unless it has happened; jars under an open recall are never opened, eaten or given.
 */
bool household_move_jars(struct household *db, const struct jar_picks *picks,
			 const struct jar_move *move, struct jars_moved *out, struct error *err);

/* --- What stands where --- */

/* Jars of one batch that are alike. */
struct jar_group {
	int64_t batch;
	uint8_t uuid[16]; /* of the batch, the same on every device */
	char code[JAR_CODE_SIZE];
	char title[JAR_TITLE_SIZE];
	char food[64]; /* slug; "" none */
	struct date day;
	int load;
	char size[32];
	enum jar_state state;
	char place[JAR_PLACE_SIZE]; /* or to whom; "" not said */
	int64_t out_ms;             /* when its load came out */
	int64_t since_ms;           /* in this state; of several jars the earliest */
	bool sealed;                /* its seal was tested */
	bool late;                  /* it stood too long before it was chilled */
	bool processed;             /* as decided, and nothing learned since speaks against it */
	bool for_shelf;             /* decided for the shelf, and not taken off it */
	bool unclear;               /* a fact of its load is missing */
	bool recalled;              /* an open recall names it */
	struct jar_set jars;
};
struct jar_groups {
	struct jar_group *groups; /* by batch, in the order of their codes' events; owned */
	size_t groups_n, room;
};
void jar_groups_release(struct jar_groups *groups);

struct shelf_filter {
	bool gone_too;      /* also what is eaten, given or discarded */
	const char *words;  /* of the food; NULL: any. A part of the title, whatever its case */
	const char *food;   /* slug that the words mean; NULL: none */
	const char *place;  /* a part of the place; NULL: any */
	int64_t before_day; /* put up on this day or earlier, days since 1970; INT64_MAX: any */
};
/* What there is. The time grows with the jars that are here, not with those gone. */
bool household_shelf(struct household *db, const struct shelf_filter *filter,
		     struct jar_groups *out, struct error *err);
/*
 * The picked jars, the groups of a batch side by side in the order of the picks. A jar that is not
 * there is a usage error, and so are fewer jars here than are counted; none of a whole batch is
 * not.
 */
bool household_picked_jars(struct household *db, const struct jar_picks *picks,
			   struct jar_groups *out, struct error *err);
/* What stands with the jar, from jar_advise()'s side. now_ms: when that is asked. */
struct jar_standing jar_group_standing(const struct jar_group *group, const struct jar_hold *hold,
				       int64_t now_ms);

/* --- The history of one jar --- */

struct jar_entry {
	struct instant at;
	char kind[32]; /* of the event: "load" */
	char *words;   /* in plain words; may hold what was typed, as typed; owned */
	bool undone, conflict;
};
struct jar_history {
	struct jar_group now; /* of this one jar */
	struct jar_entry *entries;
	size_t entries_n;
};
void jar_history_release(struct jar_history *history);
bool household_jar_history(struct household *db, const struct jar_pick *pick,
			   struct jar_history *out, struct error *err);

/* --- Gauges --- */

struct gauge_due {
	char canner[KITCHEN_NAME_SIZE];
	uint8_t uuid[16];
	bool tested;
	struct date last; /* if it was */
};
struct gauges_due {
	struct gauge_due gauges[KITCHEN_CANNERS_MAX * 4];
	size_t gauges_n;
};
/* The dial gauges in use, each with its last test. */
bool household_gauges(struct household *db, struct gauges_due *out, struct error *err);

#endif
