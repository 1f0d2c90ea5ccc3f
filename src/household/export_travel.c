#include <string.h>

#include "export.h"

bool export_damaged(const struct household *db, struct error *err)
{
	return error_failed(
	    err, "household file '%s': its log is damaged; run 'jarwright log verify'", db->path);
}

/*
 * UUIDs go up along each chain and from what an event is about to the event, because each is made
 * later than all that its file knew: so in their order nothing comes before what it rests on.
 */
bool travellers_prepare(struct household *db, sqlite3_stmt **out, struct error *err)
{
	return store_cached(
	    db,
	    "SELECT " EVENT_COLUMNS ", chain.device, coalesce("
	    "(SELECT before.hash FROM event AS before WHERE before.chain = event.chain "
	    "AND before.seq = event.seq - 1), "
	    "(SELECT before.hash FROM event AS before WHERE before.chain = chain.parent "
	    "AND before.seq = event.seq - 1), zeroblob(32)), "
	    "(SELECT first.uuid FROM event AS first WHERE first.id = event.subject) "
	    "FROM event JOIN chain ON chain.id = event.chain ORDER BY event.uuid",
	    out, err);
}

bool traveller_read(sqlite3_stmt *row, struct traveller *out)
{
	return event_read(row, &out->event) && store_blob(row, 10, out->device, UUID_SIZE) &&
	       store_blob(row, 11, out->before, DIGEST_SIZE) &&
	       store_blob(row, 12, out->subject, UUID_SIZE);
}

bool tips_prepare(struct household *db, sqlite3_stmt **out, struct error *err)
{
	return store_cached(db,
			    "SELECT device, name, last_seq, last_hash, own FROM chain "
			    "ORDER BY device, last_seq, last_hash",
			    out, err);
}

bool tip_read(sqlite3_stmt *row, struct tip *out)
{
	out->last_seq = sqlite3_column_int64(row, 2);
	out->own = sqlite3_column_int(row, 4) == 1;
	return store_blob(row, 0, out->device, UUID_SIZE) &&
	       store_text(row, 1, out->name, sizeof out->name) && out->last_seq >= 0 &&
	       store_blob(row, 3, out->last_hash, DIGEST_SIZE);
}
