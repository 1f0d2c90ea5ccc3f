/*
 * Canning days of an invented household, written straight into the log: a file in a folder of its
 * own, batches started, loaded and sealed at any moment. Every function aborts the test on a
 * failure but for log_try().
 */
#ifndef JARWRIGHT_TESTS_LOG_FIXTURE_H
#define JARWRIGHT_TESTS_LOG_FIXTURE_H

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "../src/household/log.h"
#include "jarwright/household.h"
#include "suite.h"

#define HOUR_MS INT64_C(3600000)
#define DAY_MS  (24 * HOUR_MS)

struct log_fixture {
	char folder[64];
	char path[128];
	struct household *db;
	struct error err; /* of the last log_try() */
};

static inline void fixture_open(struct log_fixture *f)
{
	memset(f, 0, sizeof *f);
	snprintf(f->folder, sizeof f->folder, "/tmp/jarwright-test-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(f->folder));
	snprintf(f->path, sizeof f->path, "%s/kitchen.db", f->folder);
	if (!household_open(f->path, HOUSEHOLD_WRITE, &f->db, &f->err))
		ck_abort_msg("%s", f->err.text);
}

static inline void fixture_close(struct log_fixture *f)
{
	char command[128];
	household_close(f->db);
	snprintf(command, sizeof command, "rm -rf '%s'", f->folder);
	ck_assert_int_eq(system(command), 0);
}

/* One event in a transaction of its own; its id, or 0 when it was refused. */
static inline int64_t log_try(struct log_fixture *f, const char *kind, int64_t subject, int64_t at,
			      json_t *body)
{
	int64_t id = 0;
	const struct instant when = {at, 0};
	memset(&f->err, 0, sizeof f->err);
	ck_assert(log_begin(f->db, &f->err));
	bool ok = log_append(f->db, kind, subject, when, body, &id, &f->err);
	return log_end(f->db, ok, &f->err) ? id : 0;
}

static inline int64_t log_must(struct log_fixture *f, const char *kind, int64_t subject, int64_t at,
			       json_t *body)
{
	int64_t id = log_try(f, kind, subject, at, body);
	if (!id)
		ck_abort_msg("%s: %s", kind, f->err.text);
	return id;
}

/* What a batch is; what is zero or NULL is as for pickled beets on the shelf. */
struct day {
	int number;
	int64_t at;
	const char *title, *food, *keep, *verdict;
};

/* A batch of the year and date of its moment (UTC). */
static inline int64_t day_start(struct log_fixture *f, const struct day *day)
{
	char date[DATE_SIZE];
	const struct date put_up = instant_date((struct instant){day->at, 0});
	const char *keep = day->keep ? day->keep : "shelf";
	return log_must(f, "batch-start", 0, day->at,
			json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:s, s:i, s:b, s:[], s:[]}",
				  "year", put_up.year, "number", day->number, "day",
				  date_text(put_up, date), "title",
				  day->title ? day->title : "Pickled beets", "food",
				  day->food ? day->food : "pickled-beets", "keep", keep, "verdict",
				  day->verdict ? day->verdict : "tested", "edition", "2026a",
				  "minutes", 35, "elevation_own", 1, "lots", "from"));
}

/* Load 1 of a batch: n jars of the size, out of the canner at that moment. */
static inline int64_t day_load(struct log_fixture *f, int64_t batch, int n, const char *size,
			       const char *outcome, int64_t out_ms)
{
	return log_must(f, "load", batch, out_ms,
			json_pack("{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I}", "number", 1,
				  "first", 1, "jars", "n", n, "size", size, "facts", "outcome",
				  outcome, "why", "", "out_ms", (json_int_t)out_ms));
}

static inline int64_t day_seal(struct log_fixture *f, int64_t batch, const char *jars, bool sealed,
			       int64_t at)
{
	return log_must(f, "seal", batch, at,
			json_pack("{s:s, s:b, s:b}", "jars", jars, "sealed", sealed, "early", 0));
}

/* A jar event; place NULL: none. */
static inline int64_t day_move(struct log_fixture *f, int64_t batch, const char *jars,
			       const char *to, const char *place, int64_t at)
{
	return log_must(f, "jar", batch, at,
			json_pack("{s:s, s:s, s:s*}", "jars", jars, "to", to, "place", place));
}

static inline int log_count(struct log_fixture *f, const char *sql)
{
	int n = -1;
	if (!store_integer(f->db, sql, &n, &f->err))
		ck_abort_msg("%s", f->err.text);
	return n;
}

#endif
