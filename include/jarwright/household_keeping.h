/*
 * Keeping the household file: written out for other programs, taken in from a file or another
 * device, copied, and put back. The formats are described in the topic "export" of
 * src/cli/topics.txt.
 */
#ifndef JARWRIGHT_HOUSEHOLD_KEEPING_H
#define JARWRIGHT_HOUSEHOLD_KEEPING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"

/* --- Out --- */

/*
 * Writes the whole household as lines of JSON, one snapshot, in the order of the log. Two files
 * with the same content give the same bytes. `name` is the stream's, for messages.
 */
bool household_export_json(struct household *db, FILE *out, const char *name, struct error *err);
/* The same into a new file, whole and on disk when it returns true; a name that is taken is
 * refused. */
bool household_export_file(struct household *db, const char *path, struct error *err);
/*
 * Writes the state as tables for spreadsheets into a folder, which is made if it is not there;
 * a file that is there already is refused before anything is written.
 */
bool household_export_csv(struct household *db, const char *folder, struct error *err);
/* The files of household_export_csv(), in the order of the writing; NULL: no more. */
const char *export_csv_file(size_t i);

/* --- In --- */

/* Called now and then in long work; total 0: not known. */
struct progress {
	void (*tell)(const void *context, int64_t done, int64_t total);
	const void *context;
};

/* An entry that makes no sense after those before it, as two devices may write them. */
struct intake_conflict {
	char device[KITCHEN_NAME_SIZE];
	int64_t number;
	char kind[32];
	struct instant at;
	char why[256];
};

/* A code that several devices gave out. */
struct intake_twin {
	char code[32];
	char devices[2][KITCHEN_NAME_SIZE]; /* the first two */
	char titles[2][128];                /* cut if longer */
};

/* A chain that both files went on writing, from a file that was copied. */
struct intake_fork {
	char device[KITCHEN_NAME_SIZE];
	int64_t after; /* the last entry that both have */
};

#define INTAKE_LISTED_MAX 100

/* Texts in it come from the other file: the one who shows them makes them harmless. */
struct intake_report {
	int64_t events_new, events_known;
	int64_t recipes_new, recipes_known;
	int64_t
	    recipes_beside; /* of recipes_new: under a name of their own, since theirs is taken */
	bool kitchen_taken; /* what was not said here was taken over */
	bool elevation_differs; /* and was left as it is */
	char elevation_here[KITCHEN_TYPED_SIZE], elevation_there[KITCHEN_TYPED_SIZE];
	/* Another copy of this file wrote as this device: from now on this one writes as a new one.
	 */
	bool new_device;
	/* Each list has at most INTAKE_LISTED_MAX; the count may be more. */
	struct intake_conflict conflicts[INTAKE_LISTED_MAX];
	size_t conflicts_n;
	struct intake_twin twins[INTAKE_LISTED_MAX];
	size_t twins_n;
	struct intake_fork forks[INTAKE_LISTED_MAX];
	size_t forks_n;
};

/*
 * Takes in what household_export_json() wrote, in one transaction: what is there already is
 * passed over, and nothing is kept if any line is wrong ("name:line: ..."). Every hash is checked
 * before its entry is written. dry: it is all tried, and nothing kept. progress may be NULL.
 */
bool household_import(struct household *db, FILE *in, const char *name, bool dry,
		      const struct progress *progress, struct intake_report *out,
		      struct error *err);

/*
 * Adds what another household file has and this one has not, in one transaction. The other is
 * only read, and verified first; both hold the same entries after each took in the other. Neither
 * kitchen's elevation nor units are taken over.
 */
bool household_merge(struct household *db, const char *path, bool dry,
		     const struct progress *progress, struct intake_report *out, struct error *err);

/* --- Copies --- */

/*
 * Copies the household file to a new file, through SQLite, so that it may be in use; checks the
 * copy. A name that is taken is refused. The copy is whole and on disk when it returns true.
 */
bool household_backup(struct household *db, const char *to, struct error *err);

/*
 * Puts a copy in the place of the household file at `path`, after checking it. What was there is
 * kept beside it: its name goes to kept (HOUSEHOLD_PATH_SIZE + 32 bytes; "" when there was none).
 * At every moment the file at `path` is whole: the old one or the new one.
 */
bool household_restore(const char *path, const char *from, char *kept, struct error *err);

#endif
