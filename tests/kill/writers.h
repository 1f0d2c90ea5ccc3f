/*
 * Programs that write to one household file as fast as they can, each acknowledged write noted
 * in a file of its own. A writer adds a lot and finishes it, by turns: "a-0" is added by its write
 * 0 and finished by its write 1. All data is invented.
 */
#ifndef JARWRIGHT_TESTS_KILL_WRITERS_H
#define JARWRIGHT_TESTS_KILL_WRITERS_H

#include <stdbool.h>
#include <stddef.h>
#include <sys/types.h>

#define WRITERS 2

/* A folder of its own and JARWRIGHT_DB in it; every function aborts the test on a failure. */
void writers_setup(void);
void writers_teardown(void);
/* No file any more; with old, one from before the log with a canner in it. */
void writers_anew(bool old);

/* A process group that runs writes from, from + 1 ... of this writer until it is killed or one
 * fails. */
pid_t writer_start(int writer, int from);
/* One that only reads, until it is killed or fails. */
pid_t reader_start(void);
/* Kills all the groups at once and waits. True: all were still at work. */
bool groups_kill(const pid_t *groups, int n);

/* How many writes are acknowledged since writers_anew(). */
int acknowledged(int writer);
/*
 * Aborts the test unless the file is sound, the log verifies, and every acknowledged write of
 * each writer is there, with `unacked` at most that are not acknowledged. How many of those.
 */
int writers_check(int unacked, const char *what);
/* How many writes of the writer are there. */
int written(int writer);
/* What the programs said on standard error. */
const char *programs_said(void);
/* Runs the program once; its exit code. */
int program_run(const char *const *words);

/* A figure of the environment, or else this. */
int figure(const char *name, int otherwise);

#endif
