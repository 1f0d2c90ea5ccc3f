/*
 * Which jars a fault touches, and where they are: tracing and recalls in the household file.
 *
 * A fault is found on a lot, a canner between two dates, a recipe, a food as an edition had it, a
 * batch or one jar. The jars it touches are those made with it, and the jars of every later batch
 * that such jars went into, as many steps as there are. The answer is in the order of the
 * batches' beginnings and of the jars' numbers.
 */
#ifndef JARWRIGHT_HOUSEHOLD_RECALLS_H
#define JARWRIGHT_HOUSEHOLD_RECALLS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"
#include "jarwright/jar_state.h"

enum fault_kind {
	FAULT_LOT,     /* .subject */
	FAULT_CANNER,  /* .subject, .from_ms to .to_ms */
	FAULT_RECIPE,  /* .name */
	FAULT_FOOD,    /* .name: a slug; and .edition if it is not "" */
	FAULT_EDITION, /* .edition */
	FAULT_BATCH,   /* .subject */
	FAULT_JAR,     /* .subject: its batch; .number */
};

#define FAULT_NAME_SIZE 128

struct fault {
	enum fault_kind kind;
	int64_t subject; /* the lot, canner or batch, as the file numbers them */
	int number;
	char name[FAULT_NAME_SIZE];
	char edition[FAULT_NAME_SIZE];
	/* Loads whose timing began in this time, both ends inside; 0 and INT64_MAX: always. */
	int64_t from_ms, to_ms;
};

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
};
struct touched_jars {
	struct touched_jar *jars; /* jars_n of them; owned */
	size_t jars_n;
};
void touched_jars_release(struct touched_jars *jars);

/* Every jar the fault touches; none is an answer too. *out is the caller's to release. */
bool household_touched(struct household *db, const struct fault *fault, struct touched_jars *out,
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

struct recall_entry {
	int64_t id;
	char code[RECALL_CODE_SIZE]; /* "R26-02" */
	enum recall_reason reason;
	char what[512];               /* in plain words */
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
	char note[1024];
	int64_t at_ms; /* of the disposition; 0 open */
};
struct recall_sheet {
	struct recall_entry entry;
	struct recalled_jar *jars; /* entry.jars_n of them, by batch and number; owned */
};
void recall_sheet_release(struct recall_sheet *sheet);
bool household_recall(struct household *db, int64_t id, struct recall_sheet *out,
		      struct error *err);

/*
 * Opens a recall of these jars; each stays open until a disposition is recorded. One transaction:
 * true means that it survives power loss. No jars is a usage error.
 */
bool household_recall_open(struct household *db, enum recall_reason reason, const char *what,
			   const struct touched_jars *jars, struct instant at, int64_t *id,
			   struct error *err);
/*
 * Records what became of jars of one batch, and moves those that are still here: discarded, eaten,
 * refrigerated or frozen. note: NULL or words.
 */
bool household_recall_record(struct household *db, int64_t recall, int64_t batch,
			     const struct jar_set *jars, enum disposition disposition,
			     const char *note, struct instant at, struct error *err);
/* A usage error while a jar is open under it. */
bool household_recall_close(struct household *db, int64_t recall, struct instant at,
			    struct error *err);

#endif
