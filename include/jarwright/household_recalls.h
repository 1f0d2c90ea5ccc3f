/*
 * Which jars a fault touches, and where they are: recalls in the household file.
 *
 * A fault is found on a lot, a canner between two dates, a recipe, a food as an edition had it, a
 * batch, loads or one jar. The jars it touches are those made with it, and the jars of every later
 * batch that such jars went into, as many steps as there are. The answer is in the order of the
 * batches' beginnings and of the jars' numbers. Of a canner, a jar counts with the load it was
 * last in: one that was processed again elsewhere is as good as that load.
 */
#ifndef JARWRIGHT_HOUSEHOLD_RECALLS_H
#define JARWRIGHT_HOUSEHOLD_RECALLS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/household_jars.h"
#include "jarwright/instant.h"
#include "jarwright/jar_state.h"

enum fault_kind {
	FAULT_LOT,     /* .subject */
	FAULT_CANNER,  /* .subject, .from_ms to .to_ms */
	FAULT_RECIPE,  /* .name, whatever the case of A to Z */
	FAULT_FOOD,    /* .name: a slug; and .edition if it is not "" */
	FAULT_EDITION, /* .edition */
	FAULT_BATCH,   /* .subject */
	FAULT_JAR,     /* .subject: its batch; .number */
	FAULT_RECALL,  /* .subject: what its jars touch, but for those it cleared */
	FAULT_LOADS,   /* .loads */
	FAULT_KIND_COUNT
};

/* A load of a batch; number 0: all its loads. */
struct fault_load {
	int64_t batch;
	int number;
};

#define FAULT_NAME_SIZE 128

struct fault {
	enum fault_kind kind;
	int64_t subject; /* the lot, canner, batch or recall, as the file numbers them */
	int number;
	char name[FAULT_NAME_SIZE];
	char edition[FAULT_NAME_SIZE];
	/* Loads whose timing began in this time, both ends inside; 0 and INT64_MAX: always. */
	int64_t from_ms, to_ms;
	const struct fault_load *loads; /* borrowed */
	size_t loads_n;
};

/* What a person types, to .subject. Each is a usage error when there is none, or several. */
bool household_find_lot(struct household *db, const char *name, int64_t *id, struct error *err);
bool household_find_canner(struct household *db, const char *name, int64_t *id, struct error *err);
bool household_find_batch(struct household *db, const char *code, int64_t *id, struct error *err);
/* "26-041-07", as struct jar_pick names one; a usage error if the batch has no such jar. */
bool household_find_jar(struct household *db, const struct jar_pick *pick, int64_t *batch,
			struct error *err);

#define TITLE_SIZE 256
#define PLACE_SIZE 128

/* One jar that is touched. */
struct touched_jar {
	int64_t batch;
	int year, number_of_batch; /* its code */
	int number;
	char title[TITLE_SIZE]; /* of its batch */
	char day[16];
	char size[32];
	enum jar_state state;
	char place[PLACE_SIZE]; /* where it is, or to whom it went; "" not said */
	int64_t since_ms;
	int step; /* 0: made with it; 1: made with jars that were; and so on */
	/* To whom it went, also if it was eaten or thrown away since; "" to nobody, or not read. */
	char given_to[PLACE_SIZE];
	bool missing; /* a recall names it, but the log has no such jar any more */
};
/* A batch that is touched, and has no jars in the log yet: what is in the pot. */
struct unfilled_batch {
	int64_t batch;
	int year, number;
	char title[TITLE_SIZE];
	char day[16];
};
struct touched_jars {
	struct touched_jar *jars; /* jars_n of them; owned */
	size_t jars_n;
	struct unfilled_batch *unfilled; /* unfilled_n of them; owned */
	size_t unfilled_n;
};
void touched_jars_release(struct touched_jars *jars);

/* Every jar the fault touches; none is an answer too. *out is the caller's to release. */
bool household_touched(struct household *db, const struct fault *fault, struct touched_jars *out,
		       struct error *err);
/* Fills given_to of n jars, which lie `stride` bytes apart. */
bool household_given(struct household *db, struct touched_jar *jars, size_t n, size_t stride,
		     struct error *err);

/* --- Recalls --- */

enum recall_reason {
	RECALL_LOT,
	RECALL_CANNER,
	RECALL_GAUGE,
	RECALL_ELEVATION,
	RECALL_PROCESS,
	RECALL_BATCH,
	RECALL_REASON_COUNT
};
const char *recall_reason_word(enum recall_reason reason); /* "lot" ... */

/* What became of a jar under a recall. */
enum disposition {
	DISPOSITION_OPEN,
	DISPOSITION_DISCARDED,
	DISPOSITION_RETURNED, /* by the one it was given to */
	DISPOSITION_EATEN,    /* before the fault was known */
	DISPOSITION_TOLD,     /* the one it was given to knows */
	DISPOSITION_REFRIGERATED,
	DISPOSITION_FROZEN,
	DISPOSITION_CLEARED, /* found to be sound after all */
	DISPOSITION_LOST,    /* cannot be found */
	DISPOSITION_COUNT
};
const char *disposition_word(enum disposition disposition); /* "open" ... */
bool disposition_find(const char *word, enum disposition *out);

#define RECALL_CODE_SIZE 32
#define RECALL_TEXT_SIZE 512
#define RECALL_NOTE_SIZE 1001

struct recall_entry {
	int64_t id;
	char code[RECALL_CODE_SIZE]; /* "R26-02" */
	enum recall_reason reason;
	char what[RECALL_TEXT_SIZE];  /* in plain words */
	char why[RECALL_TEXT_SIZE];   /* what she said of it; "" nothing */
	int64_t opened_ms, closed_ms; /* closed 0: it is open */
	size_t jars_n, open_n;
};
struct recall_list {
	struct recall_entry *entries; /* latest first; entries_n of them; owned */
	size_t entries_n;
};
void recall_list_release(struct recall_list *list);
bool household_recalls(struct household *db, struct recall_list *out, struct error *err);
/* Finds a recall by its code. A usage error when there is none. */
bool household_recall_find(struct household *db, const char *code, int64_t *id, struct error *err);

struct recalled_jar {
	struct touched_jar jar;
	enum disposition disposition;
	char note[RECALL_NOTE_SIZE];
	int64_t at_ms; /* of the disposition; 0 open */
};
struct recall_sheet {
	struct recall_entry entry;
	struct recalled_jar *jars; /* entry.jars_n of them, by batch and number; owned */
	/* Made with jars of it since it was opened, so that they are touched but not under it. */
	struct touched_jars since;
};
void recall_sheet_release(struct recall_sheet *sheet);
bool household_recall(struct household *db, int64_t id, struct recall_sheet *out,
		      struct error *err);

/* What a recall is opened with. */
struct recall_opening {
	enum recall_reason reason;
	const char *what; /* in plain words, shorter than RECALL_TEXT_SIZE */
	const char *why;  /* likewise; NULL: not said */
	struct fault fault;
	struct instant at;
};
/*
 * Opens a recall of every jar that the fault touches; each stays open until a disposition is
 * recorded. One transaction: true means that it survives power loss. *jars gets the jars; none
 * touched is no error: then nothing is opened and the code is "".
 */
bool household_recall_open(struct household *db, const struct recall_opening *opening,
			   char code[static RECALL_CODE_SIZE], struct touched_jars *jars,
			   struct error *err);

struct recall_record {
	enum disposition disposition; /* not open */
	const char *note;             /* shorter than RECALL_NOTE_SIZE; NULL: none */
	struct instant at;
	/* Hours from the canner to the cold: a jar that stood longer is marked, and is not to be
	 * eaten even when the recall is over. */
	int hold_hours;
};
/*
 * Records what became of jars, and moves those that are still in the log where the word says:
 * discarded, eaten, refrigerated or frozen. All of it, or nothing. A jar that cannot have come
 * there (eaten, but discarded before) is a usage error, as is one that is not under the recall.
 * A pick's count takes the open jars of the lowest numbers. Writes how many jars it was.
 */
bool household_recall_record(struct household *db, int64_t recall, const struct jar_picks *picks,
			     const struct recall_record *record, size_t *recorded,
			     struct error *err);
/* A usage error while a jar is open under it. */
bool household_recall_close(struct household *db, int64_t recall, struct instant at,
			    struct error *err);

#endif
