/* The log: events, what follows from them, and taking them back. All data is invented. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../../src/household/log.h"
#include "jarwright/household.h"
#include "suites.h"

static char folder[64];
static char path[128];
static struct error err;
static struct household *db;
static const struct instant noon = {INT64_C(1790000000000), 120};

static void setup(void)
{
	snprintf(folder, sizeof folder, "/tmp/jarwright-log-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	memset(&err, 0, sizeof err);
	if (!household_open(path, HOUSEHOLD_WRITE, &db, &err))
		ck_abort_msg("%s", err.text);
}

static void teardown(void)
{
	char command[128];
	household_close(db);
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

/* One event in a transaction of its own; its id, or 0 when it was refused. */
static int64_t append(const char *kind, int64_t subject, json_t *body)
{
	int64_t id = 0;
	memset(&err, 0, sizeof err);
	ck_assert(log_begin(db, &err));
	bool ok = log_append(db, kind, subject, noon, body, &id, &err);
	return log_end(db, ok, &err) ? id : 0;
}

static int count(const char *sql)
{
	int n = -1;
	if (!store_integer(db, sql, &n, &err))
		ck_abort_msg("%s", err.text);
	return n;
}

static int64_t start_batch(void)
{
	int64_t id = append(
	    "batch-start", 0,
	    json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:s, s:i, s:b, s:[], s:[]}", "year",
		      2026, "number", 41, "day", "2026-09-21", "title", "Pickled beets", "food",
		      "pickled-beets", "keep", "shelf", "verdict", "tested", "edition", "2026a",
		      "minutes", 35, "elevation_own", 1, "lots", "from"));
	if (!id)
		ck_abort_msg("%s", err.text);
	return id;
}

static int64_t load_batch(int64_t batch, const char *outcome)
{
	int64_t id =
	    append("load", batch,
		   json_pack("{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I}", "number", 1,
			     "first", 1, "jars", "n", 7, "size", "pint", "facts", "outcome",
			     outcome, "why", "", "out_ms", (json_int_t)noon.ms));
	if (!id)
		ck_abort_msg("%s", err.text);
	return id;
}

static json_t *jars(const char *which, const char *to)
{
	return json_pack("{s:s, s:s}", "jars", which, "to", to);
}

static json_t *seal(const char *which)
{
	return json_pack("{s:s, s:b, s:b}", "jars", which, "sealed", 1, "early", 0);
}

START_TEST(a_day_in_the_log_makes_its_jars)
{
	int64_t batch = start_batch();
	load_batch(batch, "processed");
	ck_assert(append("seal", batch, seal("1-6")));
	ck_assert(append("jar", batch, jars("1-3", "shelf")));
	ck_assert_int_eq(count("SELECT count(*) FROM jar"), 7);
	ck_assert_int_eq(count("SELECT count(*) FROM jar WHERE state = 'shelf'"), 3);
	ck_assert_int_eq(count("SELECT count(*) FROM jar WHERE state = 'sealed'"), 3);
	ck_assert_int_eq(count("SELECT count(*) FROM jar WHERE state = 'filled'"), 1);
	ck_assert_int_eq(count("SELECT max(seq) = count(*) FROM event"), 1);
}
END_TEST

START_TEST(what_makes_no_sense_is_refused_whole)
{
	int64_t batch = start_batch();
	load_batch(batch, "processed");
	/* Jar 8 is not there, so jar 7 is not sealed either. */
	ck_assert_int_eq(append("seal", batch, seal("7-8")), 0);
	ck_assert_int_eq((int)err.kind, ERROR_USAGE);
	ck_assert_int_eq(append("jar", batch, jars("1", "shelf")), 0);
	ck_assert_int_eq(count("SELECT count(*) FROM jar WHERE state = 'filled'"), 7);
	ck_assert_int_eq(count("SELECT count(*) FROM event"), 2);
}
END_TEST

START_TEST(an_under_processed_load_never_comes_to_the_shelf)
{
	int64_t batch = start_batch();
	load_batch(batch, "under-processed");
	ck_assert(append("seal", batch, seal("1-7")));
	ck_assert_int_eq(append("jar", batch, jars("1", "shelf")), 0);
	ck_assert_ptr_nonnull(strstr(err.text, "not processed as decided"));
	ck_assert_int_eq(append("jar", batch, jars("1", "given")), 0);
	ck_assert(append("jar", batch, jars("1", "refrigerated")));
}
END_TEST

START_TEST(what_is_not_tested_never_starts_for_the_shelf)
{
	ck_assert_int_eq(append("batch-start", 0,
				json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:b, s:[], s:[]}",
					  "year", 2026, "number", 1, "day", "2026-09-21", "title",
					  "Plums", "keep", "shelf", "verdict", "untested",
					  "edition", "2026a", "elevation_own", 0, "lots", "from")),
			 0);
	ck_assert_int_eq(count("SELECT count(*) FROM event"), 0);
}
END_TEST

START_TEST(an_event_is_taken_back_only_if_nothing_rests_on_it)
{
	int64_t batch = start_batch();
	int64_t load = load_batch(batch, "processed");
	int64_t sealed = append("seal", batch, seal("1-7"));
	ck_assert(log_begin(db, &err));
	ck_assert(!log_end(db, log_undo(db, load, noon, &err), &err));
	ck_assert_ptr_nonnull(strstr(err.text, "later entries rest on that one"));
	ck_assert_int_eq(count("SELECT count(*) FROM jar WHERE state = 'sealed'"), 7);
	err = (struct error){0};
	ck_assert(log_begin(db, &err));
	ck_assert(log_end(db, log_undo(db, sealed, noon, &err), &err));
	ck_assert_int_eq(count("SELECT count(*) FROM jar WHERE state = 'filled'"), 7);
	ck_assert(log_begin(db, &err));
	ck_assert(log_end(db, log_undo(db, load, noon, &err), &err));
	ck_assert_int_eq(count("SELECT count(*) FROM jar"), 0);
	ck_assert_int_eq(count("SELECT count(*) FROM batch"), 1);
	ck_assert_int_eq(count("SELECT count(*) FROM event"), 5);
}
END_TEST

/* Also where the event that takes it back comes from another device. */
START_TEST(what_a_clock_counted_is_never_taken_back)
{
	char canner[UUID_TEXT_SIZE], step[UUID_TEXT_SIZE];
	uint8_t uuid[UUID_SIZE];
	int64_t pot = append("canner-add", 0,
			     json_pack("{s:s, s:s}", "name", "pot", "kind", "boiling-water"));
	int64_t batch = start_batch();
	ck_assert(event_uuid(db, pot, uuid, &err));
	hex_text(uuid, UUID_SIZE, canner);
	ck_assert(append("run-step", batch,
			 json_pack("{s:i, s:s, s:s, s:i, s:s, s:s, s:[{s:i, s:s}]}", "number", 1,
				   "what", "begin", "stage", "preheat", "clock_ms", 1000, "boot",
				   "a-boot", "canner", canner, "jars", "n", 7, "size", "pint")));
	int64_t lost = append("run-step", batch,
			      json_pack("{s:i, s:s, s:s, s:i, s:s}", "number", 1, "what", "lost",
					"stage", "process", "clock_ms", 2000, "boot", "a-boot"));
	ck_assert(lost > 0);
	ck_assert(log_begin(db, &err));
	ck_assert(!log_end(db, log_undo(db, lost, noon, &err), &err));
	ck_assert_ptr_nonnull(strstr(err.text, "step by step"));
	ck_assert(event_uuid(db, lost, uuid, &err));
	hex_text(uuid, UUID_SIZE, step);
	ck_assert_int_eq(append("undo", batch, json_pack("{s:s}", "event", step)), 0);
	ck_assert_ptr_nonnull(strstr(err.text, "what a clock counted"));
	ck_assert_int_eq(count("SELECT count(*) FROM undone"), 0);
}
END_TEST

Suite *log_suite(void)
{
	Suite *suite = suite_create("log");
	TCase *tcase = tcase_create("events");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, a_day_in_the_log_makes_its_jars);
	tcase_add_test(tcase, what_makes_no_sense_is_refused_whole);
	tcase_add_test(tcase, an_under_processed_load_never_comes_to_the_shelf);
	tcase_add_test(tcase, what_is_not_tested_never_starts_for_the_shelf);
	tcase_add_test(tcase, an_event_is_taken_back_only_if_nothing_rests_on_it);
	tcase_add_test(tcase, what_a_clock_counted_is_never_taken_back);
	suite_add_tcase(suite, tcase);
	return suite;
}
