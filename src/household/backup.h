/* A copy of the household file beside it, before it is changed in a way that has no way back. */
#ifndef JARWRIGHT_HOUSEHOLD_BACKUP_H
#define JARWRIGHT_HOUSEHOLD_BACKUP_H

#include "store.h"

/*
 * Copies what the file holds to "FILE.before-N", or "FILE.before-N.2" and so on where that is
 * taken: an older backup is never written over. The copy is whole and on disk when this returns
 * true. The caller holds the write lock and has written nothing yet.
 */
bool backup_before(struct household *db, int version, struct error *err);

#endif
