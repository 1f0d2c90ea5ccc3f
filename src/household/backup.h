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

/* --- What every copy is made with --- */

/* Copies what the file `from` holds to `to`, one whole file, through SQLite. An SQLite code. */
int backup_pages(const char *from, const char *to);
/* To disk: a file, or with O_DIRECTORY a folder; the folder that a file is in. errno says why. */
bool backup_sync(const char *path, int flags);
bool backup_sync_folder(const char *path);
/* Gives a file a name that is free; EEXIST: it is not. */
bool backup_move(const char *part, const char *name);

/* --- backup_make.c --- */

#define BACKUP_NAME_SIZE (HOUSEHOLD_PATH_SIZE + 32)

/* The name of a new file while it is written; "" and false: `path` is taken, or cannot be. */
bool backup_part(const char *path, char part[static BACKUP_NAME_SIZE], struct error *err);
/* The part becomes the file, on disk; what fails leaves neither. */
bool backup_give(const char *part, const char *path, struct error *err);
/* Is it a household file, sound as far as can be told? Older ones are. */
bool backup_check(const char *path, struct error *err);

#endif
