/* What the events of a canner do to the state. */
#include <string.h>

#include "jarwright/household_canners.h"
#include "log.h"

static bool canner_is_sound(struct applying *a)
{
	return body_plain_text(a, "name", KITCHEN_NAME_SIZE - 1, true) &&
	       body_is(a, "kind", JSON_STRING) && body_is(a, "quarts", JSON_INTEGER) &&
	       body_is(a, "pints", JSON_INTEGER) && body_is(a, "half_pints", JSON_INTEGER);
}

static enum applied write_canner(struct applying *a, const char *text)
{
	sqlite3_stmt *write;
	if (!canner_is_sound(a))
		return SENSELESS;
	if (!store_cached(a->db, text, &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	bind_text(write, 2, a->body, "name");
	bind_text(write, 3, a->body, "kind");
	bind_integer(write, 4, a->body, "quarts");
	bind_integer(write, 5, a->body, "pints");
	bind_integer(write, 6, a->body, "half_pints");
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "canner: it is not in use any more");
	return how;
}

enum applied apply_canner_add(struct applying *a)
{
	return write_canner(a, "INSERT INTO canner (id, name, kind, holds_quarts, holds_pints, "
			       "holds_half_pints, retired) VALUES (?1, ?2, ?3, ?4, ?5, ?6, 0)");
}

enum applied apply_canner_change(struct applying *a)
{
	return write_canner(
	    a, "UPDATE canner SET name = ?2, kind = ?3, holds_quarts = ?4, "
	       "holds_pints = ?5, holds_half_pints = ?6 WHERE id = ?1 AND retired = 0");
}

enum applied apply_canner_retire(struct applying *a)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db, "UPDATE canner SET retired = 1 WHERE id = ?1 AND retired = 0",
			  &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "canner: it is not in use any more");
	return how;
}

/* A reading in thousandths of a psi; home canners have none above 30 psi. */
static bool take_reading(const json_t *reading, const char *key, int64_t *out)
{
	const json_t *value = json_object_get(reading, key);
	*out = json_integer_value(value);
	return json_is_integer(value) && *out >= 0 && *out <= GAUGE_READING_MAX;
}

/* The worst of the readings: how far above the master, and how far off at all. */
static bool read_error(struct applying *a, int64_t *high, int64_t *error)
{
	const json_t *readings = json_object_get(a->body, "readings");
	size_t n = json_array_size(readings);
	for (size_t i = 0; i < n; i++) {
		const json_t *one = json_array_get(readings, i);
		int64_t gauge, master;
		if (!take_reading(one, "gauge_mpsi", &gauge) ||
		    !take_reading(one, "master_mpsi", &master))
			return false;
		int64_t off = gauge - master;
		int64_t far = off < 0 ? -off : off;
		if (i == 0 || off > *high)
			*high = off;
		if (i == 0 || far > *error)
			*error = far;
	}
	return n > 0;
}

enum applied apply_gauge_test(struct applying *a)
{
	int64_t high = 0, error = 0;
	sqlite3_stmt *add;
	if (!read_error(a, &high, &error))
		return senseless(a, "gauge: the test has no readings from 0 to %d psi",
				 GAUGE_READING_MAX / 1000);
	if (!body_date(a, "tested", true))
		return SENSELESS;
	if (!store_cached(a->db,
			  "INSERT INTO gauge_test (id, canner, tested, high_mpsi, error_mpsi) "
			  "SELECT ?1, ?2, ?3, ?4, ?5 WHERE EXISTS "
			  "(SELECT 1 FROM canner WHERE id = ?2 AND kind = 'dial-gauge')",
			  &add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->id);
	sqlite3_bind_int64(add, 2, a->event->subject);
	bind_text(add, 3, a->body, "tested");
	sqlite3_bind_int64(add, 4, high);
	sqlite3_bind_int64(add, 5, error);
	enum applied how = apply_run(a, add);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "gauge: only a canner with a dial gauge has one to test");
	return how;
}
