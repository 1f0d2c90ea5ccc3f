/* The whole story of one jar: the events of its batch and of its recalls that touch it. */
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_jars.h"
#include "log.h"
#include "shelf.h"

void jar_history_release(struct jar_history *history)
{
	for (size_t i = 0; i < history->entries_n; i++)
		free(history->entries[i].words);
	free(history->entries);
	*history = (struct jar_history){0};
}

/* --- One event in plain words --- */

/* A jar followed through the events of its batch. */
struct story {
	char batch[UUID_TEXT_SIZE]; /* of the jar, as recalls name it */
	int number;                 /* of the jar */
	int load;                   /* the jar's; 0: not filled yet */
	char *words;
	size_t words_n;
	FILE *out;
};

static const char *text_of(const json_t *body, const char *key)
{
	return json_string_value(json_object_get(body, key));
}

static void put(struct story *s, const char *before, const json_t *body, const char *key,
		const char *after)
{
	const char *text = text_of(body, key);
	if (text && *text)
		fprintf(s->out, "%s%s%s", before, text, after);
}

static bool names_jar(const struct story *s, const json_t *body, const char *key)
{
	struct jar_set jars;
	const char *text = text_of(body, key);
	return text && jar_set_parse(text, &jars) && jar_set_has(&jars, s->number);
}

static void tell_start(struct story *s, const json_t *body)
{
	json_int_t minutes = json_integer_value(json_object_get(body, "minutes"));
	json_int_t psi = json_integer_value(json_object_get(body, "psi"));
	put(s, "decided ", body, "verdict", "");
	const char *keep = text_of(body, "keep");
	if (keep)
		fprintf(s->out, ", to keep %s the %s", strcmp(keep, "shelf") == 0 ? "on" : "in",
			keep);
	put(s, ": ", body, "title", "");
	put(s, ", ", body, "pack", " pack");
	put(s, ", ", body, "canner_kind", "");
	if (minutes > 0)
		fprintf(s->out, ", %d minutes", (int)minutes);
	if (psi > 0)
		fprintf(s->out, " at %d psi", (int)psi);
	put(s, " (edition ", body, "edition", ")");
}

/* Does the load bring the jar, anew or again? An entry that never counted may say anything. */
static bool is_loaded(const struct story *s, const json_t *body, const char **size)
{
	const json_t *some = json_object_get(body, "jars");
	json_int_t first = json_integer_value(json_object_get(body, "first"));
	bool here = names_jar(s, body, "again");
	for (size_t i = 0; i < json_array_size(some) && first >= 1 && first <= s->number; i++) {
		const json_t *item = json_array_get(some, i);
		json_int_t n = json_integer_value(json_object_get(item, "n"));
		if (n < 1 || n > BATCH_JARS_MAX)
			break;
		if (s->number < first + n) {
			here = true;
			*size = text_of(item, "size");
		}
		first += n;
	}
	return here;
}

static bool tell_load(struct story *s, const json_t *body)
{
	const char *size = NULL;
	if (!is_loaded(s, body, &size))
		return false;
	s->load = (int)json_integer_value(json_object_get(body, "number"));
	fprintf(s->out, "%s in load %d", size ? "filled" : "processed again", s->load);
	if (size)
		fprintf(s->out, " (%s jar)", size);
	put(s, ": ", body, "outcome", "");
	put(s, "; ", body, "why", "");
	return true;
}

static bool tell_load_change(struct story *s, const json_t *body)
{
	if (json_integer_value(json_object_get(body, "number")) != s->load)
		return false;
	fprintf(s->out, "corrected: load %d is", s->load);
	put(s, " ", body, "outcome", "");
	put(s, "; ", body, "why", "");
	return true;
}

static bool tell_record(struct story *s, const json_t *body)
{
	if (json_integer_value(json_object_get(body, "number")) != s->load)
		return false;
	fprintf(s->out, "the record of load %d", s->load);
	put(s, ", '", body, "file", "'");
	put(s, ": ", body, "shown", "");
	put(s, "; ", body, "why", "");
	return true;
}

static bool tell_seal(struct story *s, const json_t *body)
{
	if (!names_jar(s, body, "jars"))
		return false;
	fputs(json_is_true(json_object_get(body, "sealed")) ? "seal tested: sealed"
							    : "seal tested: not sealed",
	      s->out);
	put(s, ", by ", body, "method", "");
	if (json_is_true(json_object_get(body, "early")))
		fputs(", earlier than published", s->out);
	return true;
}

static bool tell_move(struct story *s, const json_t *body)
{
	enum jar_state to;
	const char *word = text_of(body, "to");
	if (!names_jar(s, body, "jars") || !word || !jar_state_find(word, &to))
		return false;
	fputs(to == JAR_SHELF ? "put on the shelf" : word, s->out);
	put(s, to == JAR_GIVEN ? " to " : ", place: ", body, "place", "");
	put(s, "; why: ", body, "why", "");
	if (json_is_true(json_object_get(body, "late")))
		fputs("; it had stood too long", s->out);
	if (json_is_true(json_object_get(body, "happened")))
		fputs("; against the advice", s->out);
	return true;
}

/* What became of the jar under a recall. */
static bool tell_recalled(struct story *s, const json_t *body)
{
	const char *batch = text_of(body, "batch");
	if (!batch || strcmp(batch, s->batch) != 0 || !names_jar(s, body, "jars"))
		return false;
	put(s, "under the recall: ", body, "disposition", "");
	put(s, " (", body, "note", ")");
	return true;
}

/* Writes what the event says of the jar; false: nothing. */
static bool tell(struct story *s, const char *kind, const json_t *body)
{
	if (strcmp(kind, "load") == 0)
		return tell_load(s, body);
	if (strcmp(kind, "load-amend") == 0)
		return tell_load_change(s, body);
	if (strcmp(kind, "load-record") == 0)
		return tell_record(s, body);
	if (strcmp(kind, "seal") == 0)
		return tell_seal(s, body);
	if (strcmp(kind, "jar") == 0)
		return tell_move(s, body);
	if (strcmp(kind, "recall-record") == 0)
		return tell_recalled(s, body);
	if (strcmp(kind, "batch-start") == 0)
		tell_start(s, body);
	else if (strcmp(kind, "batch-note") == 0)
		put(s, "note on the batch: ", body, "text", "");
	else if (strcmp(kind, "batch-ph") == 0)
		fprintf(s->out, "pH measured in the batch: %.3f%s",
			(double)json_integer_value(json_object_get(body, "ph_milli")) / 1000.0,
			json_is_true(json_object_get(body, "holds"))
			    ? ""
			    : "; that takes the batch off the shelf");
	else if (strcmp(kind, "batch-amend") == 0) {
		fputs("the batch was corrected", s->out);
		put(s, "; why: ", body, "why", "");
	} else if (strcmp(kind, "batch-finish") == 0)
		fputs("the batch was finished", s->out);
	else if (strcmp(kind, "recall-open") == 0)
		put(s, "recalled: ", body, "what", "");
	else if (strcmp(kind, "recall-close") == 0)
		fputs("the recall was closed", s->out);
	else
		return false;
	return true;
}

/* --- Collecting --- */

static bool out_of_memory(struct error *err)
{
	return error_failed(err, "jar: out of memory; close other programs and try again");
}

static struct jar_entry *new_entry(struct jar_history *out, struct error *err)
{
	struct jar_entry *more = realloc(out->entries, (out->entries_n + 1) * sizeof *out->entries);
	if (!more) {
		out_of_memory(err);
		return NULL;
	}
	out->entries = more;
	more[out->entries_n] = (struct jar_entry){0};
	return &more[out->entries_n++];
}

/* columns: EVENT_COLUMNS, undone, conflict */
static bool add_event(sqlite3_stmt *row, struct story *s, struct jar_history *out,
		      struct error *err)
{
	struct event event;
	if (!event_read(row, &event))
		return error_failed(err, "jar: an entry of the log is unreadable; see 'jarwright "
					 "log verify'");
	json_t *body = json_loadb(event.body, event.body_length, 0, NULL);
	s->words = NULL;
	s->out = open_memstream(&s->words, &s->words_n);
	bool told = s->out && tell(s, event.kind, body);
	bool written = s->out && fclose(s->out) == 0;
	struct jar_entry *entry = told && written ? new_entry(out, err) : NULL;
	json_decref(body);
	if (!entry) {
		free(s->words);
		return written ? !told : out_of_memory(err);
	}
	entry->at = event.at;
	memcpy(entry->kind, event.kind, sizeof entry->kind);
	entry->words = s->words;
	entry->undone = sqlite3_column_int(row, 10) == 1;
	entry->conflict = sqlite3_column_int(row, 11) == 1;
	return true;
}

static bool read_events(struct household *db, int64_t batch, int number, struct jar_history *out,
			struct error *err)
{
	sqlite3_stmt *query;
	uint8_t uuid[UUID_SIZE];
	struct story story = {.number = number};
	bool ok = true;
	if (!event_uuid(db, batch, uuid, err))
		return false;
	hex_text(uuid, UUID_SIZE, story.batch);
	if (!store_cached(db,
			  "SELECT " EVENT_COLUMNS
			  ", EXISTS (SELECT 1 FROM undone WHERE undone.event = event.id), "
			  "EXISTS (SELECT 1 FROM conflict WHERE conflict.event = event.id) "
			  "FROM event WHERE subject = ?1 OR subject IN (SELECT recall FROM "
			  "recall_jar WHERE batch = ?1 AND number = ?2) ORDER BY uuid",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	sqlite3_bind_int(query, 2, number);
	while (ok && sqlite3_step(query) == SQLITE_ROW)
		ok = add_event(query, &story, out, err);
	return store_done(db, query, err) && ok;
}

static bool read_now(struct household *db, int64_t batch, int number, struct jar_group *out,
		     struct error *err)
{
	sqlite3_stmt *query;
	struct shelf_batch facts;
	struct jar_groups one = {0};
	if (!shelf_batch_read(db, batch, &facts, err) ||
	    !store_cached(db, "SELECT " SHELF_COLUMNS " FROM jar WHERE batch = ?1 AND number = ?2",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	sqlite3_bind_int(query, 2, number);
	bool ok =
	    sqlite3_step(query) != SQLITE_ROW || shelf_add_row(db, query, &facts, 0, &one, err);
	ok = store_done(db, query, err) && ok;
	if (ok && one.groups_n == 0)
		ok = error_usage(err, "jar %s-%02d: there is no such jar in the batch", facts.code,
				 number);
	if (ok && one.groups_n > 0)
		*out = one.groups[0];
	jar_groups_release(&one);
	return ok;
}

bool household_jar_history(struct household *db, const struct jar_pick *pick,
			   struct jar_history *out, struct error *err)
{
	int64_t batch;
	int number = jar_set_next(&pick->jars, 0);
	*out = (struct jar_history){0};
	bool ok = shelf_find_pick(db, pick, &batch, err) &&
		  read_now(db, batch, number, &out->now, err) &&
		  read_events(db, batch, number, out, err);
	if (!ok)
		jar_history_release(out);
	return ok;
}
