/*
 * Batches in the household file: what was put up, how it was decided, its loads, its jars and
 * all that was said of it.
 *
 * Each function that writes is one transaction: when it returns true the entry survives power
 * loss, when it returns false nothing changed. What cannot be is a usage error. `code` is a
 * batch as a person types it, "26-041" or "26-041@tablet". What a function gives in *out is
 * the caller's to release, also when it failed.
 */
#ifndef JARWRIGHT_HOUSEHOLD_BATCHES_H
#define JARWRIGHT_HOUSEHOLD_BATCHES_H

#include <jansson.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/digest.h"
#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"
#include "jarwright/jar_state.h"
#include "jarwright/load_judge.h"

#define BATCH_TITLE_SIZE 256
#define BATCH_CODE_MAX   32
#define BATCH_LOTS_MAX   32
#define BATCH_TEXT_MAX   2000 /* bytes of a note or a reason */

/* --- Starting --- */

/* A beginning; the texts are the caller's, NULL where there is none. */
struct batch_start {
	struct instant at;
	struct date day;
	const char *title, *food, *recipe;
	const char *keep;    /* "shelf", "refrigerator" or "freezer" */
	const char *verdict; /* of the decision */
	const char *edition;
	const char *pack, *canner_kind, *jar;
	bool elevation_stated;
	int32_t elevation_mft;
	bool elevation_own;     /* the kitchen's */
	int minutes, psi, vent; /* 0: none */
	const char *meter;      /* what the meter of the request's pH was calibrated with */
	json_t *decision;       /* borrowed */
	const char *lots[BATCH_LOTS_MAX]; /* names or codes */
	size_t lots_n;
	const char *from[BATCH_LOTS_MAX]; /* "26-012-03": jars of earlier batches that go in */
	size_t from_n;
};
/* Gives the batch the next number of its year, and writes its code. */
bool household_start_batch(struct household *db, const struct batch_start *start,
			   char code[static BATCH_CODE_MAX], struct error *err);

/*
 * The strength of the weakest of the named lots of vinegar, thousandths of a percent; 0: none of
 * them is vinegar; -1: one is, and its strength is not known.
 */
bool household_vinegar_lots(struct household *db, const char *const *lots, size_t n,
			    int32_t *milli_percent, struct error *err);

/* --- Canners --- */

struct gauge_record {
	bool tested;
	struct load_gauge gauge;
	struct date on; /* of the newest test by then */
};
struct load_canner {
	int64_t id;
	struct kitchen_canner canner;
	struct gauge_record gauge;
};
/*
 * The canner of this name, and what its gauge was worth on a day: the worse of the last test by
 * then and the first after it.
 */
bool household_load_canner(struct household *db, const char *name, struct date day,
			   struct load_canner *out, struct error *err);
/* The same of the canner with this id, as of a load: its name may have become another's too. */
bool household_canner_of(struct household *db, int64_t id, struct date day, struct load_canner *out,
			 struct error *err);

/* --- Loads --- */

struct load_jars {
	int n;
	char size[32]; /* "pint", "500mL" */
};
#define LOAD_JARS_MAX 8

struct batch_load_entry {
	int number; /* of a load that was running; 0: the next */
	struct instant started, out;
	const char *canner; /* by name; NULL: none, for the cold */
	struct load_jars jars[LOAD_JARS_MAX];
	size_t jars_n;
	struct jar_set again; /* jars that were in an earlier load, processed again; or empty */
	struct load_said said;
	enum load_outcome outcome;
	const char *why; /* "" */
};
/* Writes the load's number and the numbers of its new jars. */
bool household_add_load(struct household *db, const char *code,
			const struct batch_load_entry *entry, int *number, struct jar_set *jars,
			struct error *err);

/* Replaces what was said of a load. out.ms, started_ms 0: it stays as it is. */
struct load_amendment {
	int number;
	int64_t started_ms;
	struct instant at, out;
	struct load_said said;
	enum load_outcome outcome;
	const char *why_outcome, *why; /* why: the reason of the amendment */
};
bool household_amend_load(struct household *db, const char *code,
			  const struct load_amendment *amendment, struct error *err);

/* What a recorder's file showed of a load. */
struct load_record {
	struct instant at;
	int number;       /* of the load */
	const char *file; /* its name without folders */
	uint8_t sha256[DIGEST_SIZE];
	int64_t rows;
	const char *shown;         /* "restarted" */
	enum load_outcome outcome; /* what that leaves of the load; never LOAD_COLD */
	const char *why;           /* "" */
	json_t *found;             /* all of it; borrowed */
};
/* The load becomes that, or stays what it is if that is stricter. */
bool household_record_load(struct household *db, const char *code, const struct load_record *record,
			   struct error *err);

/* --- Seals, notes and the rest --- */

/* Either set may be empty. method: "press", "tap", "look" or NULL. early: before its time. */
struct seal_entry {
	struct instant at;
	struct jar_set sealed, failed;
	const char *method;
	bool early;
};
bool household_seal(struct household *db, const char *code, const struct seal_entry *entry,
		    struct error *err);
bool household_finish_batch(struct household *db, const char *code, struct instant at,
			    struct error *err);
bool household_note_batch(struct household *db, const char *code, struct instant at,
			  const char *text, struct error *err);
/* meter: what it was calibrated with, or NULL. holds false takes the batch off the shelf. */
bool household_ph_batch(struct household *db, const char *code, struct instant at, int32_t ph_milli,
			const char *meter, bool holds, struct error *err);

/* What is NULL, not stated or empty stays as it is. */
struct batch_amendment {
	struct instant at;
	const char *why;
	const char *title;
	bool day_stated, elevation_stated;
	struct date day;
	int32_t elevation_mft;
	bool holds; /* with an elevation: is the process still enough there? */
	const char *lots[BATCH_LOTS_MAX]; /* all of them, anew */
	size_t lots_n;
};
bool household_amend_batch(struct household *db, const char *code,
			   const struct batch_amendment *amendment, struct error *err);

/* --- Reading --- */

/* Texts are "" where there is none, figures 0. */
struct batch_record {
	int64_t id;
	char code[BATCH_CODE_MAX];
	char day[16];
	char title[BATCH_TITLE_SIZE];
	char food[128], recipe[256], keep[16], verdict[16], edition[64], pack[8], canner_kind[32],
	    jar[32];
	bool elevation_stated, elevation_own;
	int32_t elevation_mft;
	int minutes, psi, vent;
	bool held, finished;
	struct instant started;
	int jars[JAR_STATE_COUNT];        /* how many are in each state */
	int jars_n, loads_n, loads_short; /* loads under-processed or unclear */
	int running_n;                    /* loads in a canner now, which no loads_n counts */
};

struct batch_load {
	int number;
	char canner[KITCHEN_NAME_SIZE]; /* "" none */
	int64_t canner_id;
	struct instant started, out;
	enum load_outcome outcome; /* never better than record */
	char why[2048];
	bool recorded; /* a recorder's file was given, and leaves: */
	enum load_outcome record;
	char record_why[2048];
	struct load_said said;
};

struct batch_jar {
	int number, load;
	char size[32];
	enum jar_state state;
	char place[128];
	struct instant since;
};

struct batch_event {
	int64_t id;
	char kind[32];
	struct instant at;
	json_t *body;       /* owned */
	bool undone;        /* taken back by a later entry */
	char conflict[256]; /* why it does not count, or "" */
};

struct batch_view {
	struct batch_record record;
	json_t *decision; /* as it was stored */
	struct batch_load *loads;
	size_t loads_n;
	struct batch_jar *jars;
	size_t jars_n;
	struct batch_event *events; /* in order */
	size_t events_n;
	char **lots; /* in words: "lids 'wide lids, spring' (A17)" */
	size_t lots_n;
	char **from; /* "26-012-03" */
	size_t from_n;
};
bool household_batch(struct household *db, const char *code, struct batch_view *out,
		     struct error *err);
void batch_view_release(struct batch_view *view);

/* Zero or NULL: any. open: not finished. */
struct batch_filter {
	int year;
	const char *food; /* a part of its title, food or recipe */
	bool open;
};
struct batch_list {
	struct batch_record *records; /* newest first */
	size_t records_n;
};
bool household_batch_list(struct household *db, const struct batch_filter *filter,
			  struct batch_list *out, struct error *err);
void batch_list_release(struct batch_list *list);

#endif
