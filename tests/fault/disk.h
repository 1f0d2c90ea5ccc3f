/*
 * A disk that fails: an SQLite VFS over the real one, made the default, which can lose power at
 * a sync or refuse a write. What was written and not synced when the power goes may be there,
 * in part, in any order, or not at all.
 */
#ifndef JARWRIGHT_TESTS_FAULT_DISK_H
#define JARWRIGHT_TESTS_FAULT_DISK_H

#include <stdbool.h>
#include <stdint.h>

/* Makes the failing disk SQLite's default. Until a fault is set it only counts. */
void disk_install(void);

/* Operations since disk_install() or the last setting of a fault. */
int disk_syncs(void);
int disk_writes(void); /* writes, truncations, growing a shared index and syncs: what can fail */

/*
 * The power goes at the n-th sync, counted from 1, before (or, with after, behind) what it makes
 * safe: the files are left as a disk could leave them, by the seed, and the process ends with
 * DISK_POWER_LOST.
 */
#define DISK_POWER_LOST 77
void disk_lose_power(int n, bool after, uint64_t seed);
/* The same at once: for the moment after the last sync, with a seed set by disk_lose_power(). */
void disk_cut_power(void);

/* The n-th write, truncation or sync fails with this SQLite code; with stays, all later ones too.
 */
void disk_refuse(int n, int code, bool stays);
/* No fault any more. */
void disk_heal(void);

#endif
