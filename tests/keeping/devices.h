/*
 * Devices of an invented household, each with a file of its own, on which random things are logged
 * that may happen in a kitchen, sensible or not. The same seed gives the same day.
 */
#ifndef JARWRIGHT_TESTS_KEEPING_DEVICES_H
#define JARWRIGHT_TESTS_KEEPING_DEVICES_H

#include "../log_fixture.h"
#include "jarwright/household_keeping.h"
#include "jarwright/household_log.h"

#define NOON_MS INT64_C(1790000000000)

/* What a note, a name and a code may be, to the worst of it. */
extern const char *const nasty[];
extern const size_t nasty_n;

uint32_t chance(uint32_t *seed, uint32_t below);
/* n random entries, of which some are refused. */
void random_days(struct log_fixture *f, uint32_t *seed, int n);

/* The whole export; free() it. */
char *exported(struct log_fixture *f);
/* All tables, one after the other; free() it. */
char *tables_of(struct log_fixture *f);
void must_be_sound(struct log_fixture *f);
/* a takes in what b has; how much was new. */
int64_t must_merge(struct log_fixture *a, const struct log_fixture *b);
/* A device with a new file; fixture_close() it. */
void new_device(struct log_fixture *f);
/* Another device with a copy of the file, as somebody makes it who copies it by hand. */
void copy_device(struct log_fixture *from, struct log_fixture *to);

#endif
