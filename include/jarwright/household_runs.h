/*
 * Loads that are in a canner now: what the live clock saw of them, as it happened.
 *
 * Each step is an entry in the batch's log, so that nothing is lost when the program that
 * watches ends. What it read off its clock stands beside it; the time of day is a label only.
 * As for all that writes: true means that the entry survives power loss, false that nothing
 * changed. `code` is a batch as a person types it.
 */
#ifndef JARWRIGHT_HOUSEHOLD_RUNS_H
#define JARWRIGHT_HOUSEHOLD_RUNS_H

#include "jarwright/household_batches.h"
#include "jarwright/run.h"

struct run_moment {
	struct run_entry entry;
	struct instant at; /* what the clock on the wall showed */
};

struct running_load {
	int number; /* of the load, from 1 */
	/* To begin: its name. Of one that runs: the mark by which it is found among any of its
	 * name. */
	char canner[KITCHEN_NAME_SIZE];
	struct load_jars jars[LOAD_JARS_MAX];
	size_t jars_n;
	struct run_moment *moments; /* in order, the beginning first; owned */
	size_t moments_n;
};

/*
 * The load of the batch that is running: number 0 is the only one. *found false: none is, and
 * out->number is the one that the next load will have. To be released if true.
 */
bool household_running(struct household *db, const char *code, int number, bool *found,
		       struct running_load *out, struct error *err);
void running_load_release(struct running_load *load);

/* Logs the beginning of load->number, with its canner and jars; moments are not looked at. */
bool household_run_begin(struct household *db, const char *code, const struct running_load *load,
			 const struct run_moment *first, struct error *err);
/* Logs what happened to a running load; RUN_ABANDON ends it. */
bool household_run_step(struct household *db, const char *code, int number,
			const struct run_moment *moment, struct error *err);

/*
 * Nobody else may watch this load: a lock on a file beside the household file, which ends with the
 * program whatever becomes of it. -1: another program has it, or *err is filled by the disk;
 * else to be closed with close().
 */
int household_run_lock(struct household *db, const char *code, int number, struct error *err);

#endif
