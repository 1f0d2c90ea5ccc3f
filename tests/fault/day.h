/*
 * A canning day of an invented household, as command lines, each run by the whole program in a
 * process of its own under a fault. A snapshot of the file is kept for every moment between two
 * commands, so that any of them can be tried again and again.
 *
 * What the file holds is told by its signature: the kinds of the events in the order of their
 * writing, the kitchen, the recipes and the jars with their states; "" for no file or an empty one.
 */
#ifndef JARWRIGHT_TESTS_FAULT_DAY_H
#define JARWRIGHT_TESTS_FAULT_DAY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define SIGNATURE_SIZE 4096

struct fault {
	enum { FAULT_NONE, FAULT_POWER, FAULT_DISK, FAULT_MEMORY } kind;
	int n;         /* at the n-th point, from 1; 0: count the points only */
	bool after;    /* power: after the sync */
	uint64_t seed; /* power */
	int code;      /* disk: SQLite's */
	bool stays;    /* disk, memory: from there on */
	bool reader;   /* another connection stays open: nothing is made safe by being the last */
};

struct outcome {
	int status;      /* exit code; DISK_POWER_LOST; -1: it was killed by a signal */
	bool acked_last; /* the command before returned (only if it was asked for) */
	int syncs, writes;
	long allocations;
	char said[1024]; /* on standard error */
};

/* The day is run once without a fault; aborts the test if a command fails. */
void day_setup(void);
void day_teardown(void);
size_t day_commands(void);
const char *day_name(size_t k); /* the words of command k */
int day_status(size_t k);       /* how it ends without a fault */
/* Puts the file back to the moment after so many commands. */
void day_restore(size_t n);
/* Runs command k on the file as it is; with_last: command k - 1 before it in the same process. */
void day_run(size_t k, bool with_last, const struct fault *fault, struct outcome *out);
/*
 * Opens the file without a fault, and aborts the test unless SQLite finds it sound, the log
 * verifies and it is as after `least` or `most` commands. Which of them: true for most; where
 * they cannot be told apart, as with a rebuild, the least.
 */
bool day_check(size_t least, size_t most, const char *what);

/* 1: every point; else one point in so many, from the environment's JARWRIGHT_FAULT_STRIDE. */
int day_stride(int otherwise);

#endif
