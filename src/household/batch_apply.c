/* What the events of a batch as a whole do to the state; load_apply.c has those of its jars. */
#include "jarwright/jar_state.h"
#include "log.h"

static enum applied insert_pair(struct applying *a, const char *text, int64_t other, int number)
{
	sqlite3_stmt *add;
	if (!store_cached(a->db, text, &add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->subject);
	sqlite3_bind_int64(add, 2, other);
	if (number)
		sqlite3_bind_int(add, 3, number);
	return apply_run(a, add);
}

/* The lots that went in; no list is none. */
static enum applied insert_lots(struct applying *a)
{
	const json_t *lots = json_object_get(a->body, "lots");
	enum applied how = APPLIED;
	for (size_t i = 0; i < json_array_size(lots) && how == APPLIED; i++) {
		int64_t lot;
		if (!body_uuid_id(a, json_array_get(lots, i), "lot-add", &lot))
			return senseless(a, "batch: a lot it names is not in the log");
		how = insert_pair(a, "INSERT INTO batch_lot (batch, lot) VALUES (?1, ?2)", lot, 0);
	}
	return how;
}

/* Jars of one earlier batch. */
static enum applied insert_from(struct applying *a, const json_t *source)
{
	int64_t batch;
	struct jar_set jars;
	const char *text = json_string_value(json_object_get(source, "jars"));
	enum applied how = APPLIED;
	if (!body_uuid_id(a, json_object_get(source, "batch"), "batch-start", &batch) ||
	    batch == a->event->subject || !text || !jar_set_parse(text, &jars))
		return senseless(a, "batch: the earlier jars it names are not in the log");
	for (int n = jar_set_next(&jars, 0); n && how == APPLIED; n = jar_set_next(&jars, n))
		how = insert_pair(a,
				  "INSERT INTO batch_from (batch, from_batch, from_number) "
				  "VALUES (?1, ?2, ?3)",
				  batch, n);
	return how;
}

static enum applied insert_sources(struct applying *a)
{
	const json_t *from = json_object_get(a->body, "from");
	enum applied how = APPLIED;
	for (size_t i = 0; i < json_array_size(from) && how == APPLIED; i++)
		how = insert_from(a, json_array_get(from, i));
	return how;
}

/* Figures are read as 32 bits: one with more would be taken for another. */
static bool figures_fit(struct applying *a)
{
	static const char *const keys[] = {"year",    "number", "elevation_mft",
					   "minutes", "psi",    "vent"};
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const json_t *figure = json_object_get(a->body, keys[i]);
		json_int_t value = json_integer_value(figure);
		if (figure &&
		    (!json_is_integer(figure) || value < INT32_MIN || value > INT32_MAX)) {
			senseless(a, "batch: its '%s' is no figure that can be", keys[i]);
			return false;
		}
	}
	return true;
}

static void bind_decision(sqlite3_stmt *add, const json_t *body)
{
	bind_text(add, 8, body, "verdict");
	bind_text(add, 9, body, "edition");
	bind_text(add, 10, body, "pack");
	bind_text(add, 11, body, "canner_kind");
	bind_text(add, 12, body, "jar");
	bind_integer(add, 13, body, "elevation_mft");
	sqlite3_bind_int(add, 14, json_is_true(json_object_get(body, "elevation_own")));
	bind_integer(add, 15, body, "minutes");
	bind_integer(add, 16, body, "psi");
	bind_integer(add, 17, body, "vent");
}

enum applied apply_batch_start(struct applying *a)
{
	sqlite3_stmt *add;
	if (!figures_fit(a) || !body_date(a, "day", true))
		return SENSELESS;
	if (!store_cached(
		a->db,
		"INSERT INTO batch (id, year, number, day, title, food, recipe, keep, verdict, "
		"edition, pack, canner_kind, jar, elevation_mft, elevation_own, minutes, psi, "
		"vent, held, finished_ms) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?18, ?8, ?9, ?10, "
		"?11, ?12, ?13, ?14, ?15, ?16, ?17, 0, NULL)",
		&add, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(add, 1, a->event->subject);
	bind_integer(add, 2, a->body, "year");
	bind_integer(add, 3, a->body, "number");
	bind_text(add, 4, a->body, "day");
	bind_text(add, 5, a->body, "title");
	bind_text(add, 6, a->body, "food");
	bind_text(add, 7, a->body, "recipe");
	bind_decision(add, a->body);
	bind_text(add, 18, a->body, "keep");
	enum applied how = apply_run(a, add);
	if (how == APPLIED)
		how = insert_lots(a);
	return how == APPLIED ? insert_sources(a) : how;
}

/* Is the batch in the state? What follows a beginning that was taken back makes no sense. */
static bool batch_is_there(struct applying *a, bool *there)
{
	sqlite3_stmt *query;
	if (!store_cached(a->db, "SELECT 1 FROM batch WHERE id = ?1", &query, a->err))
		return false;
	sqlite3_bind_int64(query, 1, a->event->subject);
	*there = sqlite3_step(query) == SQLITE_ROW;
	return store_done(a->db, query, a->err);
}

static enum applied need_batch(struct applying *a)
{
	bool there;
	if (!batch_is_there(a, &there))
		return APPLY_FAILED;
	return there ? APPLIED : senseless(a, "batch: its start was taken back");
}

static enum applied run_on_batch(struct applying *a, const char *text, const char *otherwise)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db, text, &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	bind_text(write, 2, a->body, "day");
	bind_text(write, 3, a->body, "title");
	bind_integer(write, 4, a->body, "elevation_mft");
	sqlite3_bind_int(write, 5, json_is_false(json_object_get(a->body, "holds")));
	enum applied how = apply_run(a, write);
	if (how == APPLIED && sqlite3_changes(a->db->sql) == 0)
		return senseless(a, "%s", otherwise);
	return how;
}

/* The lists that the body has are there anew. */
static enum applied replace_list(struct applying *a, const char *key, const char *forget,
				 enum applied (*insert)(struct applying *a))
{
	sqlite3_stmt *remove;
	if (!json_object_get(a->body, key))
		return APPLIED;
	if (!store_cached(a->db, forget, &remove, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(remove, 1, a->event->subject);
	enum applied how = apply_run(a, remove);
	return how == APPLIED ? insert(a) : how;
}

enum applied apply_batch_amend(struct applying *a)
{
	if (!figures_fit(a) || !body_date(a, "day", false))
		return SENSELESS;
	enum applied how =
	    run_on_batch(a,
			 "UPDATE batch SET day = coalesce(?2, day), title = coalesce(?3, title), "
			 "elevation_mft = coalesce(?4, elevation_mft), held = max(held, ?5) "
			 "WHERE id = ?1",
			 "batch: its start was taken back");
	if (how == APPLIED)
		how =
		    replace_list(a, "lots", "DELETE FROM batch_lot WHERE batch = ?1", insert_lots);
	if (how == APPLIED)
		how = replace_list(a, "from", "DELETE FROM batch_from WHERE batch = ?1",
				   insert_sources);
	return how;
}

enum applied apply_batch_note(struct applying *a)
{
	const char *text;
	return body_text(a, "text", &text) ? need_batch(a) : SENSELESS;
}

enum applied apply_batch_ph(struct applying *a)
{
	bool holds;
	int64_t milli;
	if (!body_flag(a, "holds", &holds) || !body_integer(a, "ph_milli", &milli))
		return SENSELESS;
	if (holds)
		return need_batch(a);
	return run_on_batch(a, "UPDATE batch SET held = max(held, ?5) WHERE id = ?1",
			    "batch: its start was taken back");
}

enum applied apply_batch_finish(struct applying *a)
{
	sqlite3_stmt *write;
	if (!store_cached(a->db,
			  "UPDATE batch SET finished_ms = ?2 WHERE id = ?1 AND finished_ms IS NULL",
			  &write, a->err))
		return APPLY_FAILED;
	sqlite3_bind_int64(write, 1, a->event->subject);
	sqlite3_bind_int64(write, 2, a->event->at.ms);
	enum applied how = apply_run(a, write);
	if (how != APPLIED || sqlite3_changes(a->db->sql) == 1)
		return how;
	how = need_batch(a);
	return how == APPLIED ? senseless(a, "batch: it is finished already") : how;
}
