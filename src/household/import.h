/*
 * Taking in what another file holds: the same for lines of JSON and for another household file.
 * Used in this folder only.
 *
 * An event finds its place by the hash of the one before it. Where that is the end of a chain, the
 * chain goes on; where it is not, both this file and the other went on from it, and the event
 * begins a fork. Nothing here looks at what the entries mean: when all are in, the state is
 * worked out anew, and what makes no sense is marked as a conflict.
 */
#ifndef JARWRIGHT_HOUSEHOLD_IMPORT_H
#define JARWRIGHT_HOUSEHOLD_IMPORT_H

#include "export.h"
#include "jarwright/household_keeping.h"
#include "jarwright/household_recipes.h"

#define INTAKE_CHAINS_MAX 4096
#define INTAKE_SUBJECTS   4096 /* a power of 2 */

struct intake_chain {
	int64_t id, last_seq;
	uint8_t device[UUID_SIZE], last_hash[DIGEST_SIZE];
	char name[KITCHEN_NAME_SIZE];
	bool own, changed;
};

/* Between log_begin() and log_end(). */
struct intake {
	struct household *db;
	struct intake_report *report;
	int64_t next_id;
	uint8_t last_uuid[UUID_SIZE];
	uint8_t newest[UUID_SIZE]; /* of this file, before anything came in */
	struct intake_chain *chains;
	size_t chains_n, latest; /* the chain that the last event went into */
	struct tip *tips;        /* of the other file */
	size_t tips_n;
	/* Events that began something, lately seen, by the end of their UUID. */
	struct {
		uint8_t uuid[UUID_SIZE];
		int64_t id;
	} subjects[INTAKE_SUBJECTS];
};

/* intake_release() it whatever happens. */
bool intake_begin(struct household *db, struct intake_report *report, struct intake **out,
		  struct error *err);
void intake_release(struct intake *in);
/* A chain of the other file; before the events. */
bool intake_tip(struct intake *in, const struct tip *tip, struct error *err);
/* The next event in the order of the log. Wrong ones are usage errors. */
bool intake_event(struct intake *in, const struct traveller *t, struct error *err);
/* Checks that every chain came whole, works the state out, fills the lists of the report. */
bool intake_finish(struct intake *in, struct error *err);

/* Takes in a recipe; `whose` stands behind its name where that is taken by another text. */
bool intake_recipe(struct intake *in, const char *name, enum measuring_system system,
		   const char *text, const char *whose, struct error *err);

/* What is there and not here: taken over if `take`, else only compared. NULL and 0: not said. */
struct kitchen_said {
	const char *elevation, *units;
	int64_t elevation_mft;
};
bool intake_kitchen(struct intake *in, const struct kitchen_said *said, bool take,
		    struct error *err);

/* --- import_report.c --- */

bool intake_lists(struct household *db, struct intake_report *out, struct error *err);

#endif
