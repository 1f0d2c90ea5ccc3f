/* Loads and seals written. */
#include <string.h>

#include "batch_internal.h"

static json_t *jars_json(const struct batch_load_entry *entry)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < entry->jars_n; i++) {
		json_t *one =
		    json_pack("{s:i, s:s}", "n", entry->jars[i].n, "size", entry->jars[i].size);
		if (json_array_append_new(list, one) != 0) {
			json_decref(list);
			return NULL;
		}
	}
	return list;
}

static bool set_again(json_t *body, const struct jar_set *again)
{
	char text[JAR_SET_SIZE];
	return jar_set_count(again) == 0 ||
	       json_object_set_new(body, "again",
				   json_string(jar_set_text(again, text, sizeof text))) == 0;
}

/* first: the number of its first new jar. canner: borrowed, or NULL. */
static json_t *load_body(const struct batch_load_entry *entry, int number, int first,
			 json_t *canner)
{
	json_t *body =
	    json_pack("{s:i, s:i, s:o, s:o, s:s, s:s, s:I}", "number", number, "first", first,
		      "jars", jars_json(entry), "facts", load_said_json(&entry->said), "outcome",
		      load_outcome_word(entry->outcome), "why", entry->why, "out_ms",
		      (json_int_t)entry->out.ms);
	if (body && set_again(body, &entry->again) &&
	    (!canner || json_object_set(body, "canner", canner) == 0))
		return body;
	json_decref(body);
	return NULL;
}

/* The highest number of a load, or of a jar, of the batch. */
static bool highest(struct household *db, const char *text, int64_t batch, int *number,
		    struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, text, &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	*number = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int(query, 0) : 0;
	return store_done(db, query, err);
}

static json_t *canner_json(struct household *db, const char *name, struct error *err)
{
	int64_t id;
	return find_canner(db, name, &id, err) ? batch_uuid_json(db, id, err) : NULL;
}

static void number_jars(const struct batch_load_entry *entry, int last, struct jar_set *jars)
{
	memset(jars, 0, sizeof *jars);
	for (size_t i = 0; i < entry->jars_n; i++)
		for (int n = 0; n < entry->jars[i].n; n++)
			jar_set_add(jars, ++last);
}

static bool add_load(struct household *db, const char *code, const struct batch_load_entry *entry,
		     int *number, struct jar_set *jars, struct error *err)
{
	int64_t id;
	int last, last_jar;
	json_t *canner = NULL;
	if (!find_batch(db, code, &id, err) ||
	    !highest(db,
		     "SELECT max(number) FROM (SELECT number FROM load WHERE batch = ?1 UNION ALL "
		     "SELECT number FROM run WHERE batch = ?1)",
		     id, &last, err) ||
	    !highest(db, "SELECT max(number) FROM jar WHERE batch = ?1", id, &last_jar, err))
		return false;
	if (entry->canner && !(canner = canner_json(db, entry->canner, err)))
		return false;
	*number = entry->number ? entry->number : last + 1;
	number_jars(entry, last_jar, jars);
	bool ok = log_append(db, "load", id, entry->started,
			     load_body(entry, *number, last_jar + 1, canner), NULL, err);
	json_decref(canner);
	return ok;
}

bool household_add_load(struct household *db, const char *code,
			const struct batch_load_entry *entry, int *number, struct jar_set *jars,
			struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, add_load(db, code, entry, number, jars, err), err);
}

bool household_amend_load(struct household *db, const char *code, const struct load_amendment *a,
			  struct error *err)
{
	json_t *body = json_pack("{s:i, s:o, s:s, s:s, s:s}", "number", a->number, "facts",
				 load_said_json(&a->said), "outcome", load_outcome_word(a->outcome),
				 "why", a->why_outcome, "because", a->why);
	if (body &&
	    ((a->out.ms && json_object_set_new(body, "out_ms", json_integer(a->out.ms)) != 0) ||
	     (a->started_ms &&
	      json_object_set_new(body, "started_ms", json_integer(a->started_ms)) != 0))) {
		json_decref(body);
		body = NULL;
	}
	return batch_append(db, code, "load-amend", a->at, body, err);
}

bool household_record_load(struct household *db, const char *code, const struct load_record *record,
			   struct error *err)
{
	char sha256[2 * DIGEST_SIZE + 1];
	hex_text(record->sha256, DIGEST_SIZE, sha256);
	return batch_append(db, code, "load-record", record->at,
			    json_pack("{s:i, s:s, s:s, s:I, s:s, s:s, s:s, s:O}", "number",
				      record->number, "file", record->file, "sha256", sha256,
				      "rows", (json_int_t)record->rows, "shown", record->shown,
				      "outcome", load_outcome_word(record->outcome), "why",
				      record->why, "found", record->found),
			    err);
}

/* --- Seals --- */

static json_t *seal_body(const struct seal_entry *entry, const struct jar_set *jars, bool sealed)
{
	char text[JAR_SET_SIZE];
	json_t *body = json_pack("{s:s, s:b, s:b}", "jars", jar_set_text(jars, text, sizeof text),
				 "sealed", (int)sealed, "early", (int)entry->early);
	if (body && (!entry->method ||
		     json_object_set_new(body, "method", json_string(entry->method)) == 0))
		return body;
	json_decref(body);
	return NULL;
}

static bool seal(struct household *db, const char *code, const struct seal_entry *entry,
		 struct error *err)
{
	int64_t id;
	return find_batch(db, code, &id, err) &&
	       (jar_set_count(&entry->sealed) == 0 ||
		log_append(db, "seal", id, entry->at, seal_body(entry, &entry->sealed, true), NULL,
			   err)) &&
	       (jar_set_count(&entry->failed) == 0 ||
		log_append(db, "seal", id, entry->at, seal_body(entry, &entry->failed, false), NULL,
			   err));
}

bool household_seal(struct household *db, const char *code, const struct seal_entry *entry,
		    struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, seal(db, code, entry, err), err);
}
