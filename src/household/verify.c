/* Is the log sound? Every chain of hashes, the order of the file, SQLite's own checks. */
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"
#include "verify.h"

/* --- What is wrong --- */

static struct log_fault *next_fault(struct log_report *report)
{
	static struct log_fault rest; /* counted, not kept */
	struct log_fault *fault =
	    report->faults_n < LOG_FAULTS_MAX ? &report->faults[report->faults_n] : &rest;
	report->faults_n++;
	memset(fault, 0, sizeof *fault);
	return fault;
}

void verify_fault(struct log_report *report, const char *format, ...)
{
	va_list arguments;
	struct log_fault *fault = next_fault(report);
	va_start(arguments, format);
	vsnprintf(fault->text, sizeof fault->text, format, arguments);
	va_end(arguments);
	text_drop_partial(fault->text);
}

/* Of an event; NULL: of one that is not there. */
static void fault_in(struct log_report *report, const char *device, int64_t number,
		     const struct event *event, const char *text)
{
	struct log_fault *fault = next_fault(report);
	fault->in_chain = true;
	snprintf(fault->device, sizeof fault->device, "%s", device);
	fault->number = number;
	if (event) {
		memcpy(fault->kind, event->kind, sizeof fault->kind);
		fault->at = event->at;
	}
	snprintf(fault->text, sizeof fault->text, "%s", text);
}

/* --- The chains --- */

struct chain {
	int64_t id, parent, parent_seq, last_seq;
	uint8_t device[UUID_SIZE], last_hash[DIGEST_SIZE];
	char name[KITCHEN_NAME_SIZE];
};

static bool read_chain(sqlite3_stmt *row, struct chain *out)
{
	out->id = sqlite3_column_int64(row, 0);
	out->parent = sqlite3_column_int64(row, 3);
	out->parent_seq = sqlite3_column_int64(row, 4);
	out->last_seq = sqlite3_column_int64(row, 5);
	return store_blob(row, 1, out->device, UUID_SIZE) &&
	       store_text(row, 2, out->name, sizeof out->name) &&
	       store_blob(row, 6, out->last_hash, DIGEST_SIZE);
}

/* The hash that a chain begins after: of its parent's event, or zeros. */
static bool first_hash(struct household *db, const struct chain *chain, uint8_t out[DIGEST_SIZE],
		       struct error *err)
{
	sqlite3_stmt *query;
	memset(out, 0, DIGEST_SIZE);
	if (!store_cached(db, "SELECT hash FROM event WHERE chain = ?1 AND seq = ?2", &query, err))
		return false;
	sqlite3_bind_int64(query, 1, chain->parent);
	sqlite3_bind_int64(query, 2, chain->parent_seq);
	if (sqlite3_step(query) == SQLITE_ROW)
		(void)store_blob(query, 0, out, DIGEST_SIZE); /* else the first event is at fault */
	return store_done(db, query, err);
}

/* What is wrong with an event that comes after `before`, number `seq`; NULL: nothing. */
static const char *judge(const struct chain *chain, const struct event *event,
			 const uint8_t *subject, int64_t seq, const uint8_t *before, bool *failed,
			 struct error *err)
{
	uint8_t hash[DIGEST_SIZE];
	if (event->seq < seq || event->seq > chain->last_seq)
		return "it was inserted: the log ends before it";
	if (!subject)
		return "it was altered: what it is about is not there";
	if (!event_hash(event, before, chain->device, subject, hash, err)) {
		*failed = true;
		return NULL;
	}
	if (memcmp(hash, event->hash, DIGEST_SIZE) != 0)
		return "it, or its place, was altered after it was written";
	return NULL;
}

/* One event of the walk; *on: it is sound. */
static bool check_row(const struct chain *chain, sqlite3_stmt *row, int64_t seq,
		      uint8_t before[DIGEST_SIZE], struct log_report *report, bool *on,
		      struct error *err)
{
	struct event event;
	bool failed = false;
	uint8_t subject[UUID_SIZE];
	*on = false;
	if (!event_read(row, &event)) {
		fault_in(report, chain->name, seq, NULL, "it was altered: it cannot be read");
		return true;
	}
	if (event.seq > seq && seq <= chain->last_seq) {
		fault_in(report, chain->name, seq, NULL, "it was removed");
		return true;
	}
	const char *wrong =
	    judge(chain, &event, store_blob(row, 10, subject, UUID_SIZE) ? subject : NULL, seq,
		  before, &failed, err);
	if (wrong)
		fault_in(report, chain->name, event.seq, &event, wrong);
	*on = !wrong && !failed;
	memcpy(before, event.hash, DIGEST_SIZE);
	return !failed;
}

/* The end of a walk that found nothing wrong: is it the end that was written? */
static void check_end(const struct chain *chain, int64_t seq, const uint8_t last[DIGEST_SIZE],
		      struct log_report *report)
{
	if (seq <= chain->last_seq)
		fault_in(report, chain->name, seq, NULL, "it was removed");
	else if (memcmp(last, chain->last_hash, DIGEST_SIZE) != 0 && chain->last_seq > 0)
		fault_in(report, chain->name, chain->last_seq, NULL,
			 "the log no longer ends with what was written last");
}

static bool walk_chain(struct household *db, const struct chain *chain, struct log_report *report,
		       struct error *err)
{
	sqlite3_stmt *row;
	uint8_t before[DIGEST_SIZE];
	int64_t seq = chain->parent ? chain->parent_seq + 1 : 1;
	bool ok = true, on = true;
	if (!first_hash(db, chain, before, err) ||
	    !store_cached(db,
			  "SELECT " EVENT_COLUMNS
			  ", (SELECT uuid FROM event AS first WHERE first.id "
			  "= event.subject) FROM event WHERE chain = ?1 ORDER BY seq",
			  &row, err))
		return false;
	sqlite3_bind_int64(row, 1, chain->id);
	for (; ok && on && sqlite3_step(row) == SQLITE_ROW; seq++, report->events_n++)
		ok = check_row(chain, row, seq, before, report, &on, err);
	if (!store_done(db, row, err) || !ok)
		return false;
	if (on)
		check_end(chain, seq, before, report);
	return true;
}

static bool check_chains(struct household *db, struct log_report *report, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(db,
			  "SELECT id, device, name, parent, parent_seq, last_seq, last_hash FROM "
			  "chain ORDER BY id",
			  &row, err))
		return false;
	for (; ok && sqlite3_step(row) == SQLITE_ROW; report->chains_n++) {
		struct chain chain;
		if (read_chain(row, &chain))
			ok = walk_chain(db, &chain, report, err);
		else
			verify_fault(report, "the device of chain %lld cannot be read",
				     (long long)sqlite3_column_int64(row, 0));
	}
	return store_done(db, row, err) && ok;
}

/*
 * The ids of this file are no part of the hashes: they go up from 1 without a gap, and in each
 * chain with its numbers.
 */
static bool check_order(struct household *db, struct log_report *report, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(
		db,
		"SELECT " EVENT_COLUMNS ", chain.name FROM event JOIN chain ON chain.id = "
		"event.chain WHERE event.id < 1 OR event.id > (SELECT count(*) FROM event) "
		"OR EXISTS (SELECT 1 FROM event AS next WHERE next.chain = event.chain AND "
		"next.seq = event.seq + 1 AND next.id < event.id) "
		"ORDER BY event.id < 1 OR event.id > (SELECT count(*) FROM event) DESC, "
		"event.seq LIMIT 1",
		&row, err))
		return false;
	if (sqlite3_step(row) == SQLITE_ROW) {
		struct event event;
		char name[KITCHEN_NAME_SIZE];
		if (event_read(row, &event) && store_text(row, 10, name, sizeof name))
			fault_in(report, name, event.seq, &event,
				 "its place in the file was altered");
	}
	return store_done(db, row, err);
}

/* --- SQLite's own checks --- */

static bool check_integrity(struct household *db, struct log_report *report, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_prepare(db, "PRAGMA integrity_check(8)", &row, err))
		return false;
	while (sqlite3_step(row) == SQLITE_ROW) {
		const char *text = (const char *)sqlite3_column_text(row, 0);
		if (!text || strcmp(text, "ok") != 0)
			verify_fault(report, "the file is damaged: %s", text ? text : "?");
	}
	bool ok = store_done(db, row, err);
	sqlite3_finalize(row);
	return ok;
}

static bool check_references(struct household *db, struct log_report *report, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_prepare(db, "PRAGMA foreign_key_check", &row, err))
		return false;
	for (int n = 0; n < 8 && sqlite3_step(row) == SQLITE_ROW; n++)
		verify_fault(report, "a row of the table '%s' names one of '%s' that is not there",
			     (const char *)sqlite3_column_text(row, 0),
			     (const char *)sqlite3_column_text(row, 2));
	bool ok = store_done(db, row, err);
	sqlite3_finalize(row);
	return ok;
}

/* Every event stays and is unchanged only as long as these are there. */
static bool check_triggers(struct household *db, struct log_report *report, struct error *err)
{
	int n;
	if (!store_integer(
		db,
		"SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = "
		"'event' AND name IN ('event_stays', 'event_unchanged') AND "
		"instr(sql, 'RAISE(ABORT') > 0",
		&n, err))
		return false;
	if (n != 2)
		verify_fault(report,
			     "what keeps entries from being changed was taken out of the file");
	return true;
}

static bool check_log(struct household *db, struct log_report *report, struct error *err)
{
	if (!check_triggers(db, report, err) || !check_chains(db, report, err))
		return false;
	bool chains_sound = true;
	for (size_t i = 0; i < report->faults_n && i < LOG_FAULTS_MAX; i++)
		chains_sound = chains_sound && !report->faults[i].in_chain;
	return !chains_sound || (check_order(db, report, err) && verify_state(db, report, err));
}

static bool check_all(struct household *db, struct log_report *report, struct error *err)
{
	if (!check_integrity(db, report, err) || !check_references(db, report, err))
		return false;
	struct error damage = {0};
	if (!store_has_log(db) || check_log(db, report, &damage))
		return true;
	/* In a damaged file, not being able to look further is no news. */
	if (report->faults_n > 0)
		return true;
	*err = damage;
	return false;
}

bool household_verify(struct household *db, struct log_report *out, struct error *err)
{
	memset(out, 0, sizeof *out);
	if (!db->sql)
		return true;
	/* One transaction: what another program writes meanwhile is not seen. */
	return store_exec(db, "BEGIN", err) && store_end(db, check_all(db, out, err), err);
}
