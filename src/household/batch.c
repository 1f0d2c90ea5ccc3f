/* Batches written: their beginning, and what is said of them as a whole. */
#include <stdio.h>
#include <string.h>

#include "batch_internal.h"
#include "jarwright/text.h"

bool batch_out_of_memory(struct error *err)
{
	return error_failed(err, "batch: out of memory; close other programs and try again");
}

bool batch_find(struct household *db, const char *code, int64_t *id, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	if (store_has_log(db))
		return find_batch(db, code, id, err);
	text_show(code, SIZE_MAX, shown);
	return error_usage(err, "batch '%s': there is none yet; see 'jarwright batch list'", shown);
}

bool batch_append(struct household *db, const char *code, const char *kind, struct instant at,
		  json_t *body, struct error *err)
{
	int64_t id;
	if (!log_begin(db, err)) {
		json_decref(body);
		return false;
	}
	bool found = find_batch(db, code, &id, err);
	if (!found)
		json_decref(body);
	return log_end(db, found && log_append(db, kind, id, at, body, NULL, err), err);
}

/* --- Lots and earlier jars --- */

json_t *batch_uuid_json(struct household *db, int64_t id, struct error *err)
{
	uint8_t uuid[UUID_SIZE];
	char text[UUID_TEXT_SIZE];
	if (!event_uuid(db, id, uuid, err))
		return NULL;
	hex_text(uuid, UUID_SIZE, text);
	json_t *json = json_string(text);
	if (!json)
		batch_out_of_memory(err);
	return json;
}

json_t *batch_lot_list(struct household *db, const char *const *names, size_t n, struct error *err)
{
	json_t *list = json_array();
	int64_t ids[BATCH_LOTS_MAX];
	bool ok = (list || batch_out_of_memory(err)) &&
		  (n <= BATCH_LOTS_MAX || error_usage(err, "lot: more than %d", BATCH_LOTS_MAX));
	for (size_t i = 0; i < n && ok; i++) {
		bool twice = false;
		ok = find_lot(db, names[i], &ids[i], err);
		for (size_t k = 0; k < i && ok; k++)
			twice = twice || ids[k] == ids[i];
		json_t *uuid = ok && !twice ? batch_uuid_json(db, ids[i], err) : NULL;
		if (ok && !twice)
			ok = uuid && json_array_append_new(list, uuid) == 0;
	}
	if (ok)
		return list;
	json_decref(list);
	if (err->kind == ERROR_NONE)
		batch_out_of_memory(err);
	return NULL;
}

/* "26-012-03": the code of a batch, and jars of it. */
static bool split_jars(const char *text, char *code, size_t size, struct jar_set *jars,
		       struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	const char *dash = strchr(text, '-');
	dash = dash ? strchr(dash + 1, '-') : NULL;
	if (dash && (size_t)(dash - text) < size && jar_set_parse(dash + 1, jars)) {
		memcpy(code, text, (size_t)(dash - text));
		code[dash - text] = '\0';
		return true;
	}
	text_show(text, SIZE_MAX, shown);
	return error_usage(err,
			   "from: '%s' is no jar of an earlier batch; type its code, such as "
			   "26-012-03, or several: 26-012-1-3",
			   shown);
}

/* Each of the jars must be there, and still hers. */
static bool jars_usable(struct household *db, int64_t batch, const char *code,
			const struct jar_set *jars, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	if (!store_cached(db, "SELECT state FROM jar WHERE batch = ?1 AND number = ?2", &query,
			  err))
		return false;
	for (int n = jar_set_next(jars, 0); n && ok; n = jar_set_next(jars, n)) {
		sqlite3_reset(query);
		sqlite3_bind_int64(query, 1, batch);
		sqlite3_bind_int(query, 2, n);
		const char *state = sqlite3_step(query) == SQLITE_ROW
					? (const char *)sqlite3_column_text(query, 0)
					: NULL;
		if (!state)
			ok = error_usage(err, "from: batch %s has no jar %d", code, n);
		else if (strcmp(state, "given") == 0 || strcmp(state, "discarded") == 0)
			ok = error_usage(err,
					 "from: jar %d of batch %s is %s, so it cannot go into "
					 "another batch",
					 n, code, state);
	}
	return store_done(db, query, err) && ok;
}

static json_t *from_json(struct household *db, const char *text, struct error *err)
{
	char code[BATCH_CODE_SIZE], jars_text[JAR_SET_SIZE];
	struct jar_set jars;
	int64_t id;
	if (!split_jars(text, code, sizeof code, &jars, err) || !find_batch(db, code, &id, err) ||
	    !jars_usable(db, id, code, &jars, err))
		return NULL;
	json_t *uuid = batch_uuid_json(db, id, err);
	return uuid ? json_pack("{s:o, s:s}", "batch", uuid, "jars",
				jar_set_text(&jars, jars_text, sizeof jars_text))
		    : NULL;
}

static json_t *from_list(struct household *db, const struct batch_start *start, struct error *err)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < start->from_n; i++) {
		json_t *one = from_json(db, start->from[i], err);
		if (!one || json_array_append_new(list, one) != 0) {
			json_decref(list);
			list = NULL;
		}
	}
	if (!list && err->kind == ERROR_NONE)
		batch_out_of_memory(err);
	return list;
}

/* --- Starting --- */

static bool next_number(struct household *db, int year, int *number, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, NEXT_NUMBER("batch", "batch-start"), &query, err))
		return false;
	sqlite3_bind_int(query, 1, year);
	*number = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int(query, 0) : 0;
	return store_done(db, query, err);
}

static bool set_facts(json_t *body, const struct batch_start *start)
{
	return body_set_text(body, "food", start->food) &&
	       body_set_text(body, "recipe", start->recipe) &&
	       body_set_text(body, "meter", start->meter) &&
	       body_set_text(body, "pack", start->pack) &&
	       body_set_text(body, "canner_kind", start->canner_kind) &&
	       body_set_text(body, "jar", start->jar) &&
	       body_set_integer(body, "elevation_mft", start->elevation_stated,
				start->elevation_mft) &&
	       body_set_integer(body, "minutes", start->minutes > 0, start->minutes) &&
	       body_set_integer(body, "psi", start->psi > 0, start->psi) &&
	       body_set_integer(body, "vent", start->vent > 0, start->vent) &&
	       json_object_set(body, "decision", start->decision) == 0;
}

static json_t *start_body(const struct batch_start *start, int number, json_t *lots, json_t *from)
{
	char day[DATE_SIZE];
	json_t *body =
	    json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:b, s:o, s:o}", "year", start->day.year,
		      "number", number, "day", date_text(start->day, day), "title", start->title,
		      "keep", start->keep, "verdict", start->verdict, "edition", start->edition,
		      "elevation_own", (int)start->elevation_own, "lots", lots, "from", from);
	if (body && set_facts(body, start))
		return body;
	json_decref(body);
	return NULL;
}

static bool start_batch(struct household *db, const struct batch_start *start, char *code,
			struct error *err)
{
	int number;
	if (!next_number(db, start->day.year, &number, err))
		return false;
	json_t *lots = batch_lot_list(db, start->lots, start->lots_n, err);
	json_t *from = lots ? from_list(db, start, err) : NULL;
	if (!from) {
		json_decref(lots);
		return false;
	}
	batch_code_text(start->day.year, number, code);
	return log_append(db, "batch-start", 0, start->at, start_body(start, number, lots, from),
			  NULL, err);
}

bool household_start_batch(struct household *db, const struct batch_start *start,
			   char code[static BATCH_CODE_MAX], struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, start_batch(db, start, code, err), err);
}

/* One lot of vinegar; the strength of a lot that does not say is not known. */
static bool weaker_vinegar(struct household *db, int64_t lot, int32_t *milli_percent,
			   struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT coalesce(strength_mpct, -1) FROM lot WHERE id = ?1 AND kind = "
			  "'vinegar'",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, lot);
	if (sqlite3_step(query) == SQLITE_ROW) {
		int32_t strength = sqlite3_column_int(query, 0);
		if (*milli_percent == 0 || strength < *milli_percent)
			*milli_percent = strength;
	}
	return store_done(db, query, err);
}

bool household_vinegar_lots(struct household *db, const char *const *lots, size_t n,
			    int32_t *milli_percent, struct error *err)
{
	*milli_percent = 0;
	for (size_t i = 0; i < n; i++) {
		int64_t lot;
		char shown[TEXT_SHOWN_SIZE];
		text_show(lots[i], SIZE_MAX, shown);
		if (!store_has_log(db))
			return error_usage(err, "lot '%s': there is none of that name yet", shown);
		if (!find_lot(db, lots[i], &lot, err) ||
		    !weaker_vinegar(db, lot, milli_percent, err))
			return false;
	}
	return true;
}

/* --- Notes and the rest --- */

bool household_finish_batch(struct household *db, const char *code, struct instant at,
			    struct error *err)
{
	return batch_append(db, code, "batch-finish", at, json_object(), err);
}

bool household_note_batch(struct household *db, const char *code, struct instant at,
			  const char *text, struct error *err)
{
	size_t length = strlen(text);
	if (length == 0 || length > BATCH_TEXT_MAX)
		return error_usage(err, "note: it has %zu bytes; type from 1 to %d", length,
				   BATCH_TEXT_MAX);
	return batch_append(db, code, "batch-note", at, json_pack("{s:s}", "text", text), err);
}

bool household_ph_batch(struct household *db, const char *code, struct instant at, int32_t ph_milli,
			const char *meter, bool holds, struct error *err)
{
	json_t *body = json_pack("{s:i, s:b}", "ph_milli", (int)ph_milli, "holds", (int)holds);
	if (body && !body_set_text(body, "meter", meter)) {
		json_decref(body);
		body = NULL;
	}
	return batch_append(db, code, "batch-ph", at, body, err);
}

static json_t *amend_body(const struct batch_amendment *a, json_t *lots)
{
	char day[DATE_SIZE];
	json_t *body = json_pack("{s:s}", "why", a->why);
	bool ok = body && body_set_text(body, "title", a->title) &&
		  body_set_text(body, "day", a->day_stated ? date_text(a->day, day) : NULL) &&
		  body_set_integer(body, "elevation_mft", a->elevation_stated, a->elevation_mft) &&
		  (!a->elevation_stated ||
		   json_object_set_new(body, "holds", json_boolean(a->holds)) == 0) &&
		  (!lots || json_object_set(body, "lots", lots) == 0);
	json_decref(lots);
	if (ok)
		return body;
	json_decref(body);
	return NULL;
}

static bool amend_batch(struct household *db, const char *code, const struct batch_amendment *a,
			struct error *err)
{
	int64_t id;
	json_t *lots = NULL;
	if (!find_batch(db, code, &id, err))
		return false;
	if (a->lots_n > 0 && !(lots = batch_lot_list(db, a->lots, a->lots_n, err)))
		return false;
	return log_append(db, "batch-amend", id, a->at, amend_body(a, lots), NULL, err);
}

bool household_amend_batch(struct household *db, const char *code,
			   const struct batch_amendment *amendment, struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, amend_batch(db, code, amendment, err), err);
}
