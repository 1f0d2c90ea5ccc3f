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

/* Jars of one batch, numbered from 1. */
#define BATCH_JARS_MAX 999
struct jar_set {
	uint64_t bits[(BATCH_JARS_MAX + 64) / 64];
};
bool jar_set_has(const struct jar_set *set, int number);
void jar_set_add(struct jar_set *set, int number);
size_t jar_set_count(const struct jar_set *set);
/* The next number above `after` (0 to begin); 0: none. */
int jar_set_next(const struct jar_set *set, int after);

/* Reads "1-7,9"; false: it is not that, empty, or out of range. */
bool jar_set_parse(const char *text, struct jar_set *out);
/* Writes "1-7,9". The text is cut at size; JAR_SET_SIZE always suffices. */
#define JAR_SET_SIZE 2048
char *jar_set_text(const struct jar_set *set, char *buffer, size_t size);

#endif
