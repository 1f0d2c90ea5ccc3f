/* Events as they travel between files. Used in this folder only. */
#ifndef JARWRIGHT_HOUSEHOLD_EXPORT_H
#define JARWRIGHT_HOUSEHOLD_EXPORT_H

#include "log.h"

#define EXPORT_FORMAT  "jarwright-household"
#define EXPORT_VERSION 1

/*
 * An event without anything that is of one file only: what stands before it in its device's log is
 * named by its hash, so that a fork looks the same whichever file found it.
 */
struct traveller {
	struct event event; /* id, chain and subject are not set; body is the source's */
	uint8_t device[UUID_SIZE];
	uint8_t before[DIGEST_SIZE]; /* zeros: it is the device's first */
	uint8_t subject[UUID_SIZE];
};

/* The end of a chain: of several with one device, each is a branch of a fork. */
struct tip {
	uint8_t device[UUID_SIZE];
	char name[KITCHEN_NAME_SIZE];
	int64_t last_seq;
	uint8_t last_hash[DIGEST_SIZE];
	bool own;
};

/* Every event in the order of the log; traveller_read() of a row. False: no jarwright wrote it. */
bool travellers_prepare(struct household *db, sqlite3_stmt **out, struct error *err);
bool traveller_read(sqlite3_stmt *row, struct traveller *out);

/* Every chain, in an order that is the same in every file. */
bool tips_prepare(struct household *db, sqlite3_stmt **out, struct error *err);
bool tip_read(sqlite3_stmt *row, struct tip *out);

/* The message for a row that no jarwright wrote; returns false. */
bool export_damaged(const struct household *db, struct error *err);

#endif
