/* What the events of loads and jars do to the state of their batch. */
#include <limits.h>
#include <string.h>

#include "jarwright/jar_state.h"
#include "log.h"

/* --- The batch as its loads and jars see it --- */

struct batch_facts {
	bool there;
	bool for_shelf; /* decided for the shelf, and nothing learned since speaks against it */
	enum jar_state first; /* what a jar without a canner becomes */
};

static bool read_batch(struct applying *a, struct batch_facts *out)
{
	sqlite3_stmt *query;
	if (!store_cached(a->db, "SELECT keep, held FROM batch WHERE id = ?1", &query, a->err))
		return false;
	sqlite3_bind_int64(query, 1, a->event->subject);
	*out = (struct batch_facts){0};
	if (sqlite3_step(query) == SQLITE_ROW) {
		const char *keep = (const char *)sqlite3_column_text(query, 0);
		out->there = keep != NULL;
		out->for_shelf =
		    keep && strcmp(keep, "shelf") == 0 && sqlite3_column_int(query, 1) == 0;
		out->first = keep && strcmp(keep, "freezer") == 0 ? JAR_FROZEN : JAR_REFRIGERATED;
	}
	return store_done(a->db, query, a->err);
}

/* --- Loads --- */

/* In SQL: the stricter of two outcomes, of which only the second may be NULL. */
#define STRICTER(a, b)                                                                             \
	"CASE WHEN 'under-processed' IN (" a ", " b ") THEN 'under-processed' "                    \
	"WHEN 'unclear' IN (" a ", " b ") THEN 'unclear' ELSE " a " END"

/* Writes the load; a canner that the log does not know makes no sense. */
static enum applied write_load(struct applying *a, const char *text)
{
	sqlite3_stmt *write;
	const json_t *canner = json_object_get(a->body, "canner");
	int64_t id = 0, number;
	if (!body_integer(a, "number", &number))
		return SENSELESS;
	if (canner && !body_uuid_id(a, canner, "canner-add", &id))
		return senseless(a, "load: the canner it names is not in the log");
	if (!store_cached(a->db, text, &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, number);
	if (id)
		sqlite3_bind_int64(write, 3, id);
	sqlite3_bind_int64(write, 4, a->event->at.ms);
	bind_integer(write, 5, a->body, "out_ms");
	bind_text(write, 6, a->body, "outcome");
	bind_text(write, 7, a->body, "why");
	bind_integer(write, 8, a->body, "started_ms"); /* of an amendment */
	bind_integer(write, 9, json_object_get(a->body, "facts"), "low_mpsi");
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "load: the batch has no load %lld", (long long)number);
	return how;
}

static bool last_jar(struct applying *a, int *number)
{
	sqlite3_stmt *query;
	if (!store_cached(a->db, "SELECT max(number) FROM jar WHERE batch = ?1", &query, a->err))
		return false;
	sqlite3_bind_int64(query, 1, a->event->subject);
	*number = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int(query, 0) : 0;
	return store_done(a->db, query, a->err);
}

static enum applied insert_jar(struct applying *a, int number, const char *size, int64_t load,
			       enum jar_state state)
{
	sqlite3_stmt *add;
	if (!store_cached(
		a->db,
		"INSERT INTO jar (batch, number, size, load, state, place, since_ms, gone, "
		"sealed, late) VALUES (?1, ?2, ?3, ?4, ?5, NULL, ?6, 0, 0, 0)",
		&add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->subject);
	sqlite3_bind_int(add, 2, number);
	sqlite3_bind_text(add, 3, size, -1, SQLITE_STATIC);
	sqlite3_bind_int64(add, 4, load);
	sqlite3_bind_text(add, 5, jar_state_word(state), -1, SQLITE_STATIC);
	sqlite3_bind_int64(add, 6, a->event->at.ms);
	return apply_run(a, add);
}

/* The number before that of the load's first jar; as on the lids, whatever came in between. */
static enum applied number_before(struct applying *a, int *number)
{
	int64_t first;
	int last;
	if (!body_integer(a, "first", &first))
		return SENSELESS;
	if (!last_jar(a, &last))
		return APPLY_FAILED;
	if (first <= last || first > BATCH_JARS_MAX)
		return senseless(a,
				 "load: its jars would begin at %lld, and jar %d is there already",
				 (long long)first, last);
	*number = (int)first - 1;
	return APPLIED;
}

/* New jars, numbered in the order of the body. */
static enum applied insert_jars(struct applying *a, int64_t load, enum jar_state state)
{
	const json_t *jars = json_object_get(a->body, "jars");
	int number = 0;
	enum applied how = json_array_size(jars) ? number_before(a, &number) : APPLIED;
	for (size_t i = 0; i < json_array_size(jars) && how == APPLIED; i++) {
		const json_t *some = json_array_get(jars, i);
		const char *size = json_string_value(json_object_get(some, "size"));
		json_int_t n = json_integer_value(json_object_get(some, "n"));
		if (!size || n < 1 || n > BATCH_JARS_MAX - number)
			return senseless(a, "load: a batch has from 1 to %d jars", BATCH_JARS_MAX);
		for (; n > 0 && how == APPLIED; n--)
			how = insert_jar(a, ++number, size, load, state);
	}
	return how;
}

/* --- Jars --- */

struct jar_facts {
	bool there;
	enum jar_state state;
	bool processed; /* its load was */
	bool late;      /* stood too long: never shelf-stable again */
};

/* Of a row of state, outcome, late. */
static void read_jar(sqlite3_stmt *row, struct jar_facts *out)
{
	const char *state = (const char *)sqlite3_column_text(row, 0);
	const char *outcome = (const char *)sqlite3_column_text(row, 1);
	out->there = state && outcome && jar_state_find(state, &out->state);
	out->processed = outcome && strcmp(outcome, "processed") == 0;
	out->late = sqlite3_column_int(row, 2) == 1;
}

/* A move of jars. */
struct move {
	enum jar_state to;
	int64_t load; /* 0: the same */
	bool for_shelf;
	bool happened; /* it is so, whatever was advised */
	bool stays;    /* it must make sense, and changes nothing */
};

/* Does a seal that was tested still hold after the move? */
static bool stays_sealed(enum jar_state to)
{
	return to != JAR_UNSEALED && to != JAR_REPROCESSED && to != JAR_OPENED;
}

#define MOVE(also)                                                                                 \
	"UPDATE jar SET state = ?3, place = ?4, since_ms = ?5, load = coalesce(?6, load), "        \
	"sealed = max(?7, min(sealed, ?8)), late = late OR ?9" also                                \
	" WHERE batch = ?1 AND number BETWEEN ?2 AND ?10"

static enum applied write_jars(struct applying *a, int first, int last, const struct move *move)
{
	static const char stays[] = MOVE(""), goes[] = MOVE(", gone = 1");
	sqlite3_stmt *write;
	/* What is gone never comes back; where nothing goes, the index of what is here stays as it
	 * is. */
	if (!store_cached(a->db, jar_state_gone(move->to) ? goes : stays, &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int(write, 2, first);
	sqlite3_bind_text(write, 3, jar_state_word(move->to), -1, SQLITE_STATIC);
	bind_text(write, 4, a->body, "place");
	sqlite3_bind_int64(write, 5, a->event->at.ms);
	if (move->load)
		sqlite3_bind_int64(write, 6, move->load);
	sqlite3_bind_int(write, 7, move->to == JAR_SEALED);
	sqlite3_bind_int(write, 8, stays_sealed(move->to));
	sqlite3_bind_int(write, 9, json_is_true(json_object_get(a->body, "late")));
	sqlite3_bind_int(write, 10, last);
	return apply_run(a, write);
}

static enum applied check_jar(struct applying *a, int number, const struct jar_facts *jar,
			      const struct move *move)
{
	if (!jar->there)
		return senseless(a, "jar: the batch has no jar %d", number);
	bool stable = move->for_shelf && jar->processed && !jar->late;
	if (jar_state_may(jar->state, move->to, stable) ||
	    (move->happened && jar_state_possible(jar->state, move->to)))
		return APPLIED;
	if (jar_state_may(jar->state, move->to, true))
		return senseless(a,
				 "jar: jar %d was not processed as decided for the shelf, "
				 "so it cannot be %s; chill, freeze or discard it",
				 number, jar_state_word(move->to));
	return senseless(a, "jar: jar %d is %s, so it cannot be %s", number,
			 jar_state_word(jar->state), jar_state_word(move->to));
}

/* May each of first..last move? Looked up as one range: a batch moves by dozens. */
static enum applied check_jars(struct applying *a, int first, int last, const struct move *move)
{
	sqlite3_stmt *row;
	enum applied how = APPLIED;
	if (!store_cached(a->db,
			  "SELECT jar.state, load.outcome, jar.late, jar.number FROM "
			  "jar JOIN load ON load.batch = jar.batch AND load.number = jar.load "
			  "WHERE jar.batch = ?1 AND jar.number BETWEEN ?2 AND ?3 ORDER BY "
			  "jar.number",
			  &row, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(row, 1, a->event->subject);
	sqlite3_bind_int(row, 2, first);
	sqlite3_bind_int(row, 3, last);
	for (int number = first; number <= last && how == APPLIED; number++) {
		struct jar_facts jar = {0};
		if (sqlite3_step(row) == SQLITE_ROW && sqlite3_column_int(row, 3) == number)
			read_jar(row, &jar);
		how = check_jar(a, number, &jar, move);
	}
	return store_done(a->db, row, a->err) ? how : APPLY_FAILED;
}

static enum applied move_jars(struct applying *a, const char *key, const struct move *move)
{
	struct jar_set jars;
	const char *text;
	enum applied how = APPLIED;
	if (!body_text(a, key, &text))
		return SENSELESS;
	if (!jar_set_parse(text, &jars))
		return senseless(a, "jar: '%.40s' are no jars", text);
	for (int n = jar_set_next(&jars, 0), last; n && how == APPLIED;
	     n = jar_set_next(&jars, last)) {
		for (last = n; jar_set_has(&jars, last + 1);)
			last++;
		how = check_jars(a, n, last, move);
		if (how == APPLIED && !move->stays)
			how = write_jars(a, n, last, move);
	}
	return how;
}

enum applied apply_seal(struct applying *a)
{
	struct batch_facts batch;
	bool sealed;
	if (!body_flag(a, "sealed", &sealed))
		return SENSELESS;
	if (!read_batch(a, &batch))
		return APPLY_FAILED;
	/* A lid that holds while it is hot may still let go: such a test does not count. */
	const bool early = json_is_true(json_object_get(a->body, "early"));
	const struct move move = {.to = sealed ? JAR_SEALED : JAR_UNSEALED,
				  .for_shelf = batch.for_shelf,
				  .stays = sealed && early};
	return move_jars(a, "jars", &move);
}

enum applied apply_jar(struct applying *a)
{
	struct batch_facts batch;
	const char *to;
	struct move move = {.load = 0};
	if (!body_text(a, "to", &to))
		return SENSELESS;
	if (!jar_state_find(to, &move.to) || move.to == JAR_FILLED || move.to == JAR_REPROCESSED ||
	    move.to == JAR_SEALED)
		return senseless(a, "jar: a jar cannot be made '%.20s' by hand", to);
	if (!read_batch(a, &batch))
		return APPLY_FAILED;
	move.for_shelf = batch.for_shelf;
	move.happened = json_is_true(json_object_get(a->body, "happened"));
	return move_jars(a, "jars", &move);
}

enum applied apply_load(struct applying *a)
{
	struct batch_facts batch;
	int64_t load;
	if (!body_integer(a, "number", &load))
		return SENSELESS;
	if (!read_batch(a, &batch))
		return APPLY_FAILED;
	if (!batch.there)
		return senseless(a, "batch: its start was taken back");
	enum applied how =
	    write_load(a, "INSERT INTO load (batch, number, canner, started_ms, out_ms, outcome, "
			  "why, low_mpsi) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?9)");
	const char *outcome = json_string_value(json_object_get(a->body, "outcome"));
	bool cold = outcome && strcmp(outcome, "cold") == 0;
	if (how == APPLIED)
		how = insert_jars(a, load, cold ? batch.first : JAR_FILLED);
	if (how == APPLIED)
		how = apply_run_over(a, load);
	if (how == APPLIED && json_object_get(a->body, "again")) {
		const struct move again = {
		    .to = JAR_REPROCESSED, .load = load, .for_shelf = batch.for_shelf};
		how = move_jars(a, "again", &again);
	}
	return how;
}

/* A load corrected; its jars stay where they are, and review tells if one may not. */
enum applied apply_load_amend(struct applying *a)
{
	return write_load(
	    a,
	    "UPDATE load SET out_ms = coalesce(?5, out_ms), outcome = " STRICTER(
		"?6", "record") ", why = ?7, started_ms = coalesce(?8, started_ms), low_mpsi = ?9 "
				"WHERE batch = ?1 AND number = ?2");
}

/* What a recorder's file leaves of a load; of several files the worst. */
enum applied apply_load_record(struct applying *a)
{
	sqlite3_stmt *write;
	int64_t number, rows;
	const char *outcome, *why;
	if (!body_integer(a, "number", &number) || !body_integer(a, "rows", &rows) ||
	    !body_text(a, "outcome", &outcome) || !body_text(a, "why", &why) ||
	    !body_plain_text(a, "file", NAME_MAX, true) ||
	    !body_plain_text(a, "sha256", (size_t)2 * DIGEST_SIZE, true) ||
	    !body_plain_text(a, "shown", KIND_SIZE, true) || !body_is(a, "found", JSON_OBJECT))
		return SENSELESS;
	if (!store_cached(
		a->db,
		"UPDATE load SET outcome = " STRICTER("outcome", "?3") ", record = " STRICTER(
		    "?3",
		    "record") ", record_why = CASE WHEN " STRICTER("?3",
								   "record") " IS record THEN "
									     "record_why ELSE ?4 "
									     "END "
									     "WHERE batch = ?1 AND "
									     "number = ?2 AND "
									     "outcome <> 'cold'",
		&write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, number);
	sqlite3_bind_text(write, 3, outcome, -1, SQLITE_STATIC);
	sqlite3_bind_text(write, 4, why, -1, SQLITE_STATIC);
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "load: the batch has no load %lld that went through a canner",
				 (long long)number);
	return how;
}
