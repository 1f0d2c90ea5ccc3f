#include <stdio.h>
#include <string.h>

#include "jarwright/household_log.h"
#include "jarwright/text.h"
#include "log.h"

static bool read_own(struct household *db, bool *found, struct chain_head *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT id, device, last_seq, last_hash FROM chain WHERE own = 1",
			  &query, err))
		return false;
	*found = sqlite3_step(query) == SQLITE_ROW && sqlite3_column_bytes(query, 1) == UUID_SIZE &&
		 sqlite3_column_bytes(query, 3) == DIGEST_SIZE;
	if (*found) {
		out->chain = sqlite3_column_int64(query, 0);
		memcpy(out->device, sqlite3_column_blob(query, 1), UUID_SIZE);
		out->last_seq = sqlite3_column_int64(query, 2);
		memcpy(out->last_hash, sqlite3_column_blob(query, 3), DIGEST_SIZE);
	}
	return store_done(db, query, err);
}

/* A new device, called by the start of its UUID until she names it. */
static bool make_own(struct household *db, struct error *err)
{
	uint8_t device[UUID_SIZE];
	char name[UUID_TEXT_SIZE];
	sqlite3_stmt *add;
	if (!uuid_make(NULL, device, err) ||
	    !store_cached(db,
			  "INSERT INTO chain (device, name, own, last_seq, last_hash) "
			  "VALUES (?1, ?2, 1, 0, zeroblob(32))",
			  &add, err))
		return false;
	/* Its last digits: the first ones are the time. */
	hex_text(device + UUID_SIZE - 3, 3, name);
	sqlite3_bind_blob(add, 1, device, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_text(add, 2, name, -1, SQLITE_STATIC);
	return store_run(db, add, err);
}

bool chain_own(struct household *db, struct chain_head *out, struct error *err)
{
	bool found;
	if (!read_own(db, &found, out, err))
		return false;
	if (found)
		return true;
	return make_own(db, err) && read_own(db, &found, out, err) &&
	       (found ||
		error_failed(err, "household file '%s': its log is damaged; put back a backup",
			     db->path));
}

static bool rename_own(struct household *db, const char *name, struct error *err)
{
	sqlite3_stmt *update;
	struct chain_head own;
	bool taken;
	if (!chain_own(db, &own, err) ||
	    !store_cached(db, "SELECT 1 FROM chain WHERE name = ?1 COLLATE NOCASE AND own = 0",
			  &update, err))
		return false;
	sqlite3_bind_text(update, 1, name, -1, SQLITE_STATIC);
	taken = sqlite3_step(update) == SQLITE_ROW;
	if (!store_done(db, update, err))
		return false;
	if (taken)
		return error_usage(err,
				   "log: another device is called '%s'; give this one another "
				   "name",
				   name);
	if (!store_cached(db, "UPDATE chain SET name = ?1 WHERE own = 1", &update, err))
		return false;
	sqlite3_bind_text(update, 1, name, -1, SQLITE_STATIC);
	return store_run(db, update, err);
}

bool household_name_device(struct household *db, const char *name, struct error *err)
{
	if (!*name || strlen(name) >= KITCHEN_NAME_SIZE || plain_text_check(name) != PLAIN_TEXT ||
	    strpbrk(name, "#@"))
		return error_usage(
		    err,
		    "log: a device's name has 1 to %d bytes of plain text, without # "
		    "and @; type another",
		    KITCHEN_NAME_SIZE - 1);
	return log_begin(db, err) && log_end(db, rename_own(db, name, err), err);
}

bool chain_advance(struct household *db, int64_t chain, int64_t seq, const uint8_t *hash,
		   struct error *err)
{
	sqlite3_stmt *update;
	if (!store_cached(db, "UPDATE chain SET last_seq = ?2, last_hash = ?3 WHERE id = ?1",
			  &update, err))
		return false;
	sqlite3_bind_int64(update, 1, chain);
	sqlite3_bind_int64(update, 2, seq);
	sqlite3_bind_blob(update, 3, hash, DIGEST_SIZE, SQLITE_STATIC);
	if (!store_run(db, update, err))
		return false;
	return sqlite3_changes(db->sql) == 1 ||
	       error_failed(err, "household file '%s': its log is damaged; put back a backup",
			    db->path);
}

/* Eight bytes, the highest first, so that the hash is the same on every machine. */
static void put64(uint8_t out[8], int64_t value)
{
	uint64_t bits = (uint64_t)value;
	for (int i = 7; i >= 0; i--, bits >>= 8)
		out[i] = (uint8_t)bits;
}

bool event_hash(const struct event *event, const uint8_t *before, const uint8_t *device,
		const uint8_t *subject, uint8_t out[DIGEST_SIZE], struct error *err)
{
	static const char begins[] = "jarwright event 1";
	uint8_t numbers[3][8];
	put64(numbers[0], event->seq);
	put64(numbers[1], event->at.ms);
	put64(numbers[2], event->at.offset_min);
	/* Every part but the last has a fixed length or ends with a NUL: none can flow into the
	 * next. */
	const struct bytes parts[] = {
	    {begins, sizeof begins},
	    {before, DIGEST_SIZE},
	    {device, UUID_SIZE},
	    {numbers, sizeof numbers},
	    {event->uuid, UUID_SIZE},
	    {subject, UUID_SIZE},
	    {event->kind, strlen(event->kind) + 1},
	    {event->body, event->body_length},
	};
	return digest_make(parts, sizeof parts / sizeof *parts, out, err);
}
