/* Recalls: opened on jars, each followed to what became of it. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_recalls.h"
#include "log.h"
#include "touched.h"

const char *recall_reason_word(enum recall_reason reason)
{
	static const char *const words[RECALL_REASON_COUNT] = {
	    "lot", "canner", "gauge", "elevation", "process", "batch",
	};
	return words[reason];
}

static const char *const disposition_words[DISPOSITION_COUNT] = {
    [DISPOSITION_OPEN] = "open",         [DISPOSITION_DISCARDED] = "discarded",
    [DISPOSITION_RETURNED] = "returned", [DISPOSITION_EATEN] = "eaten",
    [DISPOSITION_TOLD] = "told",         [DISPOSITION_REFRIGERATED] = "refrigerated",
    [DISPOSITION_FROZEN] = "frozen",     [DISPOSITION_CLEARED] = "cleared",
    [DISPOSITION_LOST] = "lost",
};

const char *disposition_word(enum disposition disposition)
{
	return disposition_words[disposition];
}

bool disposition_find(const char *word, enum disposition *out)
{
	for (int i = 0; i < DISPOSITION_COUNT; i++)
		if (strcmp(disposition_words[i], word) == 0) {
			*out = (enum disposition)i;
			return true;
		}
	return false;
}

static bool no_memory(struct error *err)
{
	return error_failed(err, "recall: out of memory; close other programs and try again");
}

static bool damaged(const struct household *db, struct error *err)
{
	return error_failed(err,
			    "household file '%s': a recall in it is damaged; run 'jarwright log "
			    "verify'",
			    db->path);
}

/* --- Listing --- */

void recall_list_release(struct recall_list *list)
{
	free(list->entries);
	*list = (struct recall_list){0};
}

#define ENTRY_QUERY                                                                                \
	"SELECT id, year, number, reason, what, opened_ms, coalesce(closed_ms, 0), "               \
	"(SELECT count(*) FROM recall_jar WHERE recall = recall.id), "                             \
	"(SELECT count(*) FROM recall_jar WHERE recall = recall.id AND disposition IS NULL) "      \
	"FROM recall "

static bool read_entry(sqlite3_stmt *row, struct recall_entry *out)
{
	const char *reason = (const char *)sqlite3_column_text(row, 3);
	const char *what = (const char *)sqlite3_column_text(row, 4);
	out->id = sqlite3_column_int64(row, 0);
	recall_code_text(sqlite3_column_int(row, 1), sqlite3_column_int(row, 2), out->code);
	sqlite3_snprintf(sizeof out->what, out->what, "%s", what ? what : "");
	out->opened_ms = sqlite3_column_int64(row, 5);
	out->closed_ms = sqlite3_column_int64(row, 6);
	out->jars_n = (size_t)sqlite3_column_int64(row, 7);
	out->open_n = (size_t)sqlite3_column_int64(row, 8);
	for (int i = 0; reason && i < RECALL_REASON_COUNT; i++)
		if (strcmp(reason, recall_reason_word((enum recall_reason)i)) == 0) {
			out->reason = (enum recall_reason)i;
			return true;
		}
	return false;
}

static bool read_list(struct household *db, sqlite3_stmt *row, struct recall_list *out,
		      struct error *err)
{
	int code;
	while ((code = sqlite3_step(row)) == SQLITE_ROW) {
		struct recall_entry *more =
		    realloc(out->entries, (out->entries_n + 1) * sizeof *out->entries);
		if (!more)
			return no_memory(err);
		out->entries = more;
		if (!read_entry(row, &out->entries[out->entries_n]))
			return damaged(db, err);
		out->entries_n++;
	}
	return code == SQLITE_DONE || store_failed(db, err);
}

bool household_recalls(struct household *db, struct recall_list *out, struct error *err)
{
	sqlite3_stmt *row;
	*out = (struct recall_list){0};
	if (!store_has_log(db))
		return true;
	if (!store_cached(db, ENTRY_QUERY "ORDER BY opened_ms DESC, id DESC", &row, err))
		return false;
	bool ok = read_list(db, row, out, err);
	sqlite3_reset(row);
	if (!ok)
		recall_list_release(out);
	return ok;
}

bool household_recall_find(struct household *db, const char *code, int64_t *id, struct error *err)
{
	if (!store_has_log(db))
		return error_usage(err, "recall: none was ever opened");
	return find_recall(db, code, id, err);
}

/* --- One recall --- */

void recall_sheet_release(struct recall_sheet *sheet)
{
	free(sheet->jars);
	*sheet = (struct recall_sheet){0};
}

static bool read_sheet_entry(struct household *db, int64_t id, struct recall_entry *out,
			     struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, ENTRY_QUERY "WHERE id = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	bool found = sqlite3_step(row) == SQLITE_ROW && read_entry(row, out);
	return store_done(db, row, err) && (found || damaged(db, err));
}

static bool read_recalled(sqlite3_stmt *row, struct recalled_jar *out)
{
	const char *disposition = (const char *)sqlite3_column_text(row, TOUCHED_COLUMNS_N);
	const char *note = (const char *)sqlite3_column_text(row, TOUCHED_COLUMNS_N + 1);
	sqlite3_snprintf(sizeof out->note, out->note, "%s", note ? note : "");
	out->at_ms = sqlite3_column_int64(row, TOUCHED_COLUMNS_N + 2);
	return touched_jar_read(row, &out->jar) &&
	       disposition_find(disposition ? disposition : "open", &out->disposition);
}

static bool read_sheet_jars(struct household *db, int64_t id, struct recall_sheet *out,
			    struct error *err)
{
	sqlite3_stmt *row;
	size_t n = 0;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT " TOUCHED_COLUMNS ", 0, recall_jar.disposition, recall_jar.note, "
			  "coalesce(recall_jar.at_ms, 0) FROM recall_jar "
			  "JOIN jar ON jar.batch = recall_jar.batch AND jar.number = "
			  "recall_jar.number JOIN batch ON batch.id = jar.batch "
			  "WHERE recall_jar.recall = ?1 ORDER BY jar.batch, jar.number",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	while (ok && n < out->entry.jars_n && sqlite3_step(row) == SQLITE_ROW)
		ok = read_recalled(row, &out->jars[n++]) || damaged(db, err);
	return store_done(db, row, err) && ok && (n == out->entry.jars_n || damaged(db, err));
}

static bool read_sheet(struct household *db, int64_t id, struct recall_sheet *out,
		       struct error *err)
{
	if (!read_sheet_entry(db, id, &out->entry, err))
		return false;
	out->jars = calloc(out->entry.jars_n + 1, sizeof *out->jars);
	return out->jars ? read_sheet_jars(db, id, out, err) : no_memory(err);
}

bool household_recall(struct household *db, int64_t id, struct recall_sheet *out, struct error *err)
{
	*out = (struct recall_sheet){0};
	/* One transaction, so that the jars are those of the entry. */
	if (!store_exec(db, "BEGIN", err))
		return false;
	bool ok = store_end(db, read_sheet(db, id, out, err), err);
	if (!ok)
		recall_sheet_release(out);
	return ok;
}

/* --- Opening --- */

/* {"batch": UUID, "jars": "1-7"} */
static json_t *batch_item(struct household *db, int64_t batch, const struct jar_set *set,
			  struct error *err)
{
	uint8_t uuid[UUID_SIZE];
	char text[UUID_TEXT_SIZE], jars[JAR_SET_SIZE];
	if (!event_uuid(db, batch, uuid, err))
		return NULL;
	hex_text(uuid, UUID_SIZE, text);
	return json_pack("{s:s, s:s}", "batch", text, "jars", jar_set_text(set, jars, sizeof jars));
}

/* The jars, which are in the order of their batches, by batch. */
static json_t *jar_list(struct household *db, const struct touched_jars *jars, struct error *err)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < jars->jars_n;) {
		struct jar_set set = {{0}};
		int64_t batch = jars->jars[i].batch;
		for (; i < jars->jars_n && jars->jars[i].batch == batch; i++)
			jar_set_add(&set, jars->jars[i].number);
		if (json_array_append_new(list, batch_item(db, batch, &set, err)) != 0) {
			json_decref(list);
			list = NULL;
		}
	}
	if (!list && err->kind == ERROR_NONE)
		no_memory(err);
	return list;
}

static bool next_number(struct household *db, int year, int *number, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db, "SELECT max(number) FROM recall WHERE year = ?1", &query, err))
		return false;
	sqlite3_bind_int(query, 1, year);
	*number = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int(query, 0) + 1 : 1;
	return store_done(db, query, err);
}

static bool append_open(struct household *db, enum recall_reason reason, const char *what,
			const struct touched_jars *jars, struct instant at, int64_t *id,
			struct error *err)
{
	int year = instant_date(at).year, number;
	if (!next_number(db, year, &number, err))
		return false;
	json_t *list = jar_list(db, jars, err);
	if (!list)
		return false;
	json_t *body = json_pack("{s:i, s:i, s:s, s:s, s:o}", "year", year, "number", number,
				 "reason", recall_reason_word(reason), "what", what, "jars", list);
	return log_append(db, "recall-open", 0, at, body, id, err);
}

bool household_recall_open(struct household *db, enum recall_reason reason, const char *what,
			   const struct touched_jars *jars, struct instant at, int64_t *id,
			   struct error *err)
{
	if (jars->jars_n == 0)
		return error_usage(err, "recall: no jar is touched, so there is nothing to recall");
	if (!log_begin(db, err))
		return false;
	return log_end(db, append_open(db, reason, what, jars, at, id, err), err);
}

/* --- Recording --- */

/* Where a jar goes by its disposition; false: it stays where it is. */
static bool moves_to(enum disposition disposition, enum jar_state *to)
{
	switch (disposition) {
	case DISPOSITION_DISCARDED:
		*to = JAR_DISCARDED;
		return true;
	case DISPOSITION_EATEN:
		*to = JAR_EATEN;
		return true;
	case DISPOSITION_REFRIGERATED:
		*to = JAR_REFRIGERATED;
		return true;
	case DISPOSITION_FROZEN:
		*to = JAR_FROZEN;
		return true;
	default:
		return false;
	}
}

/* Those of the jars that are not there already and may come there. */
static bool movable(struct household *db, int64_t batch, const struct jar_set *jars,
		    enum jar_state to, struct jar_set *out, struct error *err)
{
	sqlite3_stmt *row;
	memset(out, 0, sizeof *out);
	if (!store_cached(db, "SELECT number, state FROM jar WHERE batch = ?1", &row, err))
		return false;
	sqlite3_bind_int64(row, 1, batch);
	while (sqlite3_step(row) == SQLITE_ROW) {
		enum jar_state from;
		const char *state = (const char *)sqlite3_column_text(row, 1);
		if (state && jar_state_find(state, &from) &&
		    jar_set_has(jars, sqlite3_column_int(row, 0)) && jar_state_may(from, to, false))
			jar_set_add(out, sqlite3_column_int(row, 0));
	}
	return store_done(db, row, err);
}

static bool move_jars(struct household *db, int64_t batch, const struct jar_set *jars,
		      enum disposition disposition, struct instant at, struct error *err)
{
	enum jar_state to;
	struct jar_set set;
	char text[JAR_SET_SIZE];
	if (!moves_to(disposition, &to))
		return true;
	if (!movable(db, batch, jars, to, &set, err))
		return false;
	if (jar_set_count(&set) == 0)
		return true;
	jar_set_text(&set, text, sizeof text);
	return log_append(
	    db, "jar", batch, at,
	    json_pack("{s:s, s:s, s:s}", "jars", text, "to", jar_state_word(to), "why", "recall"),
	    NULL, err);
}

static bool append_record(struct household *db, int64_t recall, int64_t batch,
			  const struct jar_set *jars, enum disposition disposition,
			  const char *note, struct instant at, struct error *err)
{
	json_t *body = batch_item(db, batch, jars, err);
	if (!body && err->kind != ERROR_NONE)
		return false;
	bool ok = body && json_object_set_new(body, "disposition",
					      json_string(disposition_word(disposition))) == 0;
	if (ok && note)
		ok = json_object_set_new(body, "note", json_string(note)) == 0;
	if (!ok) {
		json_decref(body);
		return no_memory(err);
	}
	return log_append(db, "recall-record", recall, at, body, NULL, err) &&
	       move_jars(db, batch, jars, disposition, at, err);
}

bool household_recall_record(struct household *db, int64_t recall, int64_t batch,
			     const struct jar_set *jars, enum disposition disposition,
			     const char *note, struct instant at, struct error *err)
{
	if (disposition == DISPOSITION_OPEN || jar_set_count(jars) == 0)
		return error_usage(err, "recall: say what became of which jars");
	if (!log_begin(db, err))
		return false;
	return log_end(db, append_record(db, recall, batch, jars, disposition, note, at, err), err);
}

bool household_recall_close(struct household *db, int64_t recall, struct instant at,
			    struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, log_append(db, "recall-close", recall, at, json_object(), NULL, err),
		       err);
}
