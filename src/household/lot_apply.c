/* What the events of a lot do to the state. */
#include "jarwright/household_lots.h"
#include "log.h"

static bool lot_is_sound(struct applying *a)
{
	return body_is(a, "kind", JSON_STRING) && body_plain_text(a, "name", LOT_TEXT_MAX, true) &&
	       body_plain_text(a, "supplier", LOT_TEXT_MAX, false) &&
	       body_plain_text(a, "code", LOT_TEXT_MAX, false) && body_date(a, "dated", false) &&
	       body_is(a, "strength_mpct", JSON_INTEGER);
}

static enum applied write_lot(struct applying *a, const char *text)
{
	sqlite3_stmt *write;
	if (!lot_is_sound(a))
		return SENSELESS;
	if (!store_cached(a->db, text, &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	bind_text(write, 2, a->body, "kind");
	bind_text(write, 3, a->body, "name");
	bind_text(write, 4, a->body, "supplier");
	bind_text(write, 5, a->body, "code");
	bind_text(write, 6, a->body, "dated");
	bind_integer(write, 7, a->body, "strength_mpct");
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "lot: it is not in the log");
	return how;
}

enum applied apply_lot_add(struct applying *a)
{
	return write_lot(a, "INSERT INTO lot (id, kind, name, supplier, code, dated, "
			    "strength_mpct, finished) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, 0)");
}

enum applied apply_lot_change(struct applying *a)
{
	return write_lot(a, "UPDATE lot SET kind = ?2, name = ?3, supplier = ?4, code = ?5, "
			    "dated = ?6, strength_mpct = ?7 WHERE id = ?1");
}

enum applied apply_lot_finish(struct applying *a)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db, "UPDATE lot SET finished = 1 WHERE id = ?1 AND finished = 0",
			  &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "lot: it is used up already");
	return how;
}
