/*
 * The log as a person sees it: its entries in words, taking one back, and whether it is sound.
 *
 * Entries are named by what they are about (a batch's code, "lot NAME", "canner NAME") or one by
 * one: "#12" is the twelfth of this device, "tablet#12" that of another, 32 hexadecimal digits its
 * UUID.
 */
#ifndef JARWRIGHT_HOUSEHOLD_LOG_PUBLIC_H
#define JARWRIGHT_HOUSEHOLD_LOG_PUBLIC_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"

#define LOG_SUBJECT_SIZE 192
#define LOG_WORDS_SIZE   512

/* Texts in it come from the cook: the one who shows them makes them harmless. */
struct log_entry {
	char device[KITCHEN_NAME_SIZE];
	int64_t number; /* in the device's chain, from 1 */
	char uuid[33];
	char kind[32]; /* "batch-start" */
	struct instant at;
	char subject[LOG_SUBJECT_SIZE]; /* "batch 26-041" */
	char words[LOG_WORDS_SIZE];     /* "jars 1-6 sealed"; cut if longer */
	bool undone;
	char conflict[256]; /* why it makes no sense after those before it; "" */
};

struct log_entries {
	struct log_entry *items; /* in the order of the log; log_entries_release() */
	size_t n;
};

/* What a person named: a subject of several words is given as them, up to 2; none is everything. */
struct log_name {
	const char *words[2]; /* NULL: not said */
};

/* The latest `last` entries (0: all). No file has none. */
bool household_log_entries(struct household *db, const struct log_name *of, size_t last,
			   struct log_entries *out, struct error *err);
void log_entries_release(struct log_entries *entries);

/*
 * Takes back the named entry, or the latest of what is named that is not taken back, or the
 * latest of this device. *out is what it took back. What later entries rest on is refused.
 */
bool household_undo(struct household *db, const struct log_name *of, struct instant at,
		    struct log_entry *out, struct error *err);

/* Gives this device a name, by which others know its entries. */
bool household_name_device(struct household *db, const char *name, struct error *err);

/* Works the state out anew from the events. */
bool household_rebuild(struct household *db, struct error *err);

/* Something wrong. */
struct log_fault {
	bool in_chain;                  /* the next four are of an event */
	char device[KITCHEN_NAME_SIZE]; /* whose chain */
	int64_t number;
	char kind[32];     /* "" it is not there */
	struct instant at; /* only if kind is said */
	char text[256];    /* "its entry was altered after it was written" */
};

#define LOG_FAULTS_MAX 32
struct log_report {
	size_t chains_n, events_n;
	struct log_fault faults[LOG_FAULTS_MAX];
	size_t faults_n; /* more than LOG_FAULTS_MAX: the rest is not kept */
};

/*
 * Looks for the first altered, removed, inserted or reordered event of every chain, whether the
 * state is what a rebuild gives, and whether SQLite finds the file sound. Writes nothing to the
 * file, which may be read-only. False: it could not look. A fault is not false.
 */
bool household_verify(struct household *db, struct log_report *out, struct error *err);

#endif
