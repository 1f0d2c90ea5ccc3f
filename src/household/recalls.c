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
	"SELECT id, year, number, reason, what, why, opened_ms, coalesce(closed_ms, 0), "          \
	"(SELECT count(*) FROM recall_jar WHERE recall = recall.id), "                             \
	"(SELECT count(*) FROM recall_jar WHERE recall = recall.id AND disposition IS NULL) "      \
	"FROM recall "

static bool read_entry(sqlite3_stmt *row, struct recall_entry *out)
{
	const char *reason = (const char *)sqlite3_column_text(row, 3);
	out->id = sqlite3_column_int64(row, 0);
	recall_code_text(sqlite3_column_int(row, 1), sqlite3_column_int(row, 2), out->code);
	store_cut_text(row, 4, out->what, sizeof out->what);
	store_cut_text(row, 5, out->why, sizeof out->why);
	out->opened_ms = sqlite3_column_int64(row, 6);
	out->closed_ms = sqlite3_column_int64(row, 7);
	out->jars_n = (size_t)sqlite3_column_int64(row, 8);
	out->open_n = (size_t)sqlite3_column_int64(row, 9);
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
	touched_jars_release(&sheet->since);
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

/* Behind the columns of the jar: whether there is one, and what the recall itself has. */
enum { HAS_JAR = TOUCHED_COLUMNS_N, DISPOSITION, NOTE, AT, RECALLED_BATCH, RECALLED_NUMBER };

/* Two devices can bring a recall of a jar whose load the other took back. */
static bool read_missing(sqlite3_stmt *row, struct touched_jar *out)
{
	*out = (struct touched_jar){.batch = sqlite3_column_int64(row, RECALLED_BATCH),
				    .year = sqlite3_column_int(row, 1),
				    .number_of_batch = sqlite3_column_int(row, 2),
				    .number = sqlite3_column_int(row, RECALLED_NUMBER),
				    .missing = true};
	return true;
}

static bool read_recalled(sqlite3_stmt *row, struct recalled_jar *out)
{
	const char *disposition = (const char *)sqlite3_column_text(row, DISPOSITION);
	store_cut_text(row, NOTE, out->note, sizeof out->note);
	out->at_ms = sqlite3_column_int64(row, AT);
	bool there = sqlite3_column_int(row, HAS_JAR) == 1;
	return (there ? touched_jar_read(row, &out->jar) : read_missing(row, &out->jar)) &&
	       disposition_find(disposition ? disposition : "open", &out->disposition);
}

static bool read_sheet_jars(struct household *db, int64_t id, struct recall_sheet *out,
			    struct error *err)
{
	sqlite3_stmt *row;
	size_t n = 0;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT " TOUCHED_COLUMNS ", jar.number IS NOT NULL, "
			  "recall_jar.disposition, recall_jar.note, coalesce(recall_jar.at_ms, 0), "
			  "recall_jar.batch, recall_jar.number FROM recall_jar "
			  "LEFT JOIN jar ON jar.batch = recall_jar.batch AND jar.number = "
			  "recall_jar.number LEFT JOIN batch ON batch.id = recall_jar.batch "
			  "WHERE recall_jar.recall = ?1 ORDER BY recall_jar.batch, "
			  "recall_jar.number",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, id);
	while (ok && n < out->entry.jars_n && sqlite3_step(row) == SQLITE_ROW)
		ok = read_recalled(row, &out->jars[n++]) || damaged(db, err);
	return store_done(db, row, err) && ok && (n == out->entry.jars_n || damaged(db, err)) &&
	       household_given(db, &out->jars[0].jar, n, sizeof *out->jars, err);
}

static bool is_recalled(const struct recall_sheet *sheet, const struct touched_jar *jar)
{
	size_t low = 0, high = sheet->entry.jars_n;
	while (low < high) {
		size_t at = low + (high - low) / 2;
		const struct touched_jar *other = &sheet->jars[at].jar;
		if (other->batch == jar->batch && other->number == jar->number)
			return true;
		if (other->batch < jar->batch ||
		    (other->batch == jar->batch && other->number < jar->number))
			low = at + 1;
		else
			high = at;
	}
	return false;
}

/* What was made with its jars since it was opened: touched, and not under it. */
static bool read_spread(struct household *db, int64_t id, struct recall_sheet *out,
			struct error *err)
{
	const struct fault fault = {.kind = FAULT_RECALL, .subject = id};
	size_t kept = 0;
	if (!touched_walk(db, &fault, &out->since, err))
		return false;
	for (size_t i = 0; i < out->since.jars_n; i++)
		if (!is_recalled(out, &out->since.jars[i]))
			out->since.jars[kept++] = out->since.jars[i];
	out->since.jars_n = kept;
	return true;
}

static bool read_sheet(struct household *db, int64_t id, struct recall_sheet *out,
		       struct error *err)
{
	if (!read_sheet_entry(db, id, &out->entry, err))
		return false;
	out->jars = calloc(out->entry.jars_n + 1, sizeof *out->jars);
	return out->jars ? read_sheet_jars(db, id, out, err) && read_spread(db, id, out, err)
			 : no_memory(err);
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
json_t *recall_batch_item(struct household *db, int64_t batch, const struct jar_set *set,
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
		if (json_array_append_new(list, recall_batch_item(db, batch, &set, err)) != 0) {
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
	if (!store_cached(db, NEXT_NUMBER("recall", "recall-open"), &query, err))
		return false;
	sqlite3_bind_int(query, 1, year);
	*number = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int(query, 0) : 0;
	return store_done(db, query, err);
}

static json_t *open_body(struct household *db, const struct recall_opening *opening, int number,
			 const struct touched_jars *jars, struct error *err)
{
	json_t *list = jar_list(db, jars, err);
	if (!list)
		return NULL;
	return json_pack("{s:i, s:i, s:s, s:s, s:s*, s:o}", "year", instant_date(opening->at).year,
			 "number", number, "reason", recall_reason_word(opening->reason), "what",
			 opening->what, "why", opening->why, "jars", list);
}

static bool append_open(struct household *db, const struct recall_opening *opening,
			char code[static RECALL_CODE_SIZE], struct touched_jars *jars,
			struct error *err)
{
	int number, year = instant_date(opening->at).year;
	if (!touched_walk(db, &opening->fault, jars, err))
		return false;
	if (jars->jars_n == 0)
		return true;
	if (!next_number(db, year, &number, err))
		return false;
	json_t *body = open_body(db, opening, number, jars, err);
	if (!body && err->kind != ERROR_NONE)
		return false;
	recall_code_text(year, number, code);
	return log_append(db, "recall-open", 0, opening->at, body, NULL, err);
}

bool household_recall_open(struct household *db, const struct recall_opening *opening,
			   char code[static RECALL_CODE_SIZE], struct touched_jars *jars,
			   struct error *err)
{
	code[0] = '\0';
	*jars = (struct touched_jars){0};
	if (!log_begin(db, err))
		return false;
	bool ok = log_end(db, append_open(db, opening, code, jars, err), err);
	if (!ok)
		touched_jars_release(jars);
	return ok;
}

bool household_recall_close(struct household *db, int64_t recall, struct instant at,
			    struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, log_append(db, "recall-close", recall, at, json_object(), NULL, err),
		       err);
}
