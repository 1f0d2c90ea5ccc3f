/*
 * What can become of a filled jar: its states, which may follow which, and sets of jars of one
 * batch as people name them. Pure.
 */
#ifndef JARWRIGHT_JAR_STATE_H
#define JARWRIGHT_JAR_STATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum jar_state {
	JAR_FILLED,      /* in or out of the canner, its seal not tested yet */
	JAR_SEALED,      /* tested, not yet put anywhere */
	JAR_UNSEALED,    /* the seal failed */
	JAR_REPROCESSED, /* in a canner for the second time, its seal not tested yet */
	JAR_SHELF,
	JAR_REFRIGERATED,
	JAR_FROZEN,
	JAR_OPENED,
	JAR_EATEN,
	JAR_GIVEN,
	JAR_DISCARDED,
	JAR_STATE_COUNT
};

const char *jar_state_word(enum jar_state state); /* "filled" ... */
bool jar_state_find(const char *word, enum jar_state *out);
/* Eaten, given away or discarded: no longer hers to use. */
bool jar_state_gone(enum jar_state state);

/*
 * May a jar go from one state to the other? `shelf_stable`: its load was processed as decided
 * and nothing learned since speaks against it; without that a jar never comes to the shelf
 * and is never given away.
 */
bool jar_state_may(enum jar_state from, enum jar_state to, bool shelf_stable);

/*
 * Can it be so, although it ought not to? What has happened must go into the log: the jar was
 * opened, eaten, given away, chilled or thrown away whatever was advised. Nothing brings a jar
 * to the shelf that may not stand there, and what is eaten or thrown away stays so.
 */
bool jar_state_possible(enum jar_state from, enum jar_state to);

/* What is known of a jar when somebody wants to move it. */
struct jar_standing {
	enum jar_state state;
	bool shelf_stable; /* as above, and it never stood too long */
	bool processed;    /* its load was, as decided, and nothing learned since speaks against */
	bool late;         /* it stood too long before it was chilled */
	bool overdue;      /* it stands so now: jar_hold() hours since it came out */
};
enum jar_advice {
	JAR_FINE,
	JAR_TEST_SEAL,      /* not before its seal is tested */
	JAR_STOOD_TOO_LONG, /* not to be tasted, and no longer worth chilling: discard it */
	JAR_NOT_STABLE,     /* not processed as decided: not for giving away */
	JAR_SENSELESS,      /* that cannot follow */
};
/* What to say to a move. All but JAR_SENSELESS can still have happened: jar_state_possible(). */
enum jar_advice jar_advise(const struct jar_standing *jar, enum jar_state to);
/* Does the jar depend on being chilled, frozen or processed again in time? */
bool jar_is_waiting(const struct jar_standing *jar);

/* Jars of one batch, numbered from 1. */
#define BATCH_JARS_MAX 999
struct jar_set {
	uint64_t bits[(BATCH_JARS_MAX + 64) / 64];
};
bool jar_set_has(const struct jar_set *set, int number);
void jar_set_add(struct jar_set *set, int number);
void jar_set_join(struct jar_set *set, const struct jar_set *more);
size_t jar_set_count(const struct jar_set *set);
/* The next number above `after` (0 to begin); 0: none. */
int jar_set_next(const struct jar_set *set, int after);

/* Reads "1-7,9"; false: it is not that, empty, or out of range. */
bool jar_set_parse(const char *text, struct jar_set *out);
/* Writes "1-7,9". The text is cut at size; JAR_SET_SIZE always suffices. */
#define JAR_SET_SIZE 2048
char *jar_set_text(const struct jar_set *set, char *buffer, size_t size);

#endif
