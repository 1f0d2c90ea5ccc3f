/* Is the log sound? Properties over random logs; all data is invented. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "days.h"
#include "jarwright/household_log.h"
#include "suites.h"

static char folder[64];
static char path[128];
static struct error err;
static struct household *db;

static void open_for(enum household_access access)
{
	memset(&err, 0, sizeof err);
	if (!household_open(path, access, &db, &err))
		ck_abort_msg("%s", err.text);
}

static void setup(void)
{
	/* Thousands of writes, each synced: in memory where there is a place for that. */
	snprintf(folder, sizeof folder, "%s/jarwright-sound-XXXXXX",
		 access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	open_for(HOUSEHOLD_WRITE);
}

static void teardown(void)
{
	char command[128];
	household_close(db);
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

static void holds_no_fault(int seed)
{
	struct log_report report;
	if (!household_verify(db, &report, &err))
		ck_abort_msg("%s", err.text);
	if (report.faults_n != 0)
		ck_abort_msg("seed %d: %s#%lld: %s", seed, report.faults[0].device,
			     (long long)report.faults[0].number, report.faults[0].text);
}

/* What the entries gave one by one is what they give when worked out anew. */
static void rebuilding_changes_nothing(int seed, unsigned undo_in)
{
	uint64_t state = (uint64_t)seed * 0x9e3779b97f4a7c15 + 1;
	int taken = log_days(db, &state, 400, undo_in);
	ck_assert_int_gt(taken, 60);
	char *live = state_text(db);
	if (!household_rebuild(db, &err))
		ck_abort_msg("%s", err.text);
	char *rebuilt = state_text(db);
	if (strcmp(live, rebuilt) != 0) {
		size_t at = 0;
		while (live[at] == rebuilt[at])
			at++;
		while (at > 0 && live[at - 1] != '\n')
			at--;
		ck_abort_msg("seed %d:\n%.200s\nrebuilt:\n%.200s", seed, live + at, rebuilt + at);
	}
	free(live);
	free(rebuilt);
	holds_no_fault(seed);
}

START_TEST(a_rebuild_gives_the_same_state)
{
	rebuilding_changes_nothing(_i, 0);
}
END_TEST

START_TEST(a_rebuild_gives_the_same_state_with_undos)
{
	rebuilding_changes_nothing(_i + 1000, 6);
}
END_TEST

/* --- What was tampered with is found and named --- */

static sqlite3 *raw;

static void raw_open(void)
{
	ck_assert_int_eq(sqlite3_open(path, &raw), SQLITE_OK);
	ck_assert_int_eq(
	    sqlite3_exec(raw,
			 "PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = "
			 "ON; DROP TRIGGER event_stays; DROP TRIGGER event_unchanged",
			 NULL, NULL, NULL),
	    SQLITE_OK);
}

static void raw_close(void)
{
	ck_assert_int_eq(
	    sqlite3_exec(
		raw,
		"CREATE TRIGGER event_stays BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT,"
		" 'events are never removed'); END;"
		"CREATE TRIGGER event_unchanged BEFORE UPDATE ON event BEGIN SELECT "
		"RAISE(ABORT, 'events are never changed'); END",
		NULL, NULL, NULL),
	    SQLITE_OK);
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK);
}

/* %1$d is the entry's number, from 1 to %2$d; its id is the same here. */
static const struct {
	const char *what, *sql;
	int named; /* number named, from the entry's; END: the one after the last */
	int or_named;
} edits[] = {
#define END 1000
    {"uuid", "UPDATE event SET uuid = randomblob(16) WHERE id = %1$d", 0, 0},
    {"subject", "UPDATE event SET subject = (subject %% %2$d) + 1 WHERE id = %1$d", 0, 0},
    {"subject to nothing", "UPDATE event SET subject = %2$d + 7 WHERE id = %1$d", 0, 0},
    {"kind", "UPDATE event SET kind = kind || 's' WHERE id = %1$d", 0, 0},
    {"kind too long", "UPDATE event SET kind = hex(zeroblob(40)) WHERE id = %1$d", 0, 0},
    {"moment", "UPDATE event SET at_ms = at_ms + 1 WHERE id = %1$d", 0, 0},
    {"moment of no year", "UPDATE event SET at_ms = -9223372036854775807 WHERE id = %1$d", 0, 0},
    {"offset", "UPDATE event SET offset_min = offset_min - 60 WHERE id = %1$d", 0, 0},
    {"body", "UPDATE event SET body = body || ' ' WHERE id = %1$d", 0, 0},
    {"body emptied", "UPDATE event SET body = '' WHERE id = %1$d", 0, 0},
    {"hash", "UPDATE event SET hash = randomblob(32) WHERE id = %1$d", 0, 0},
    {"hash cut", "UPDATE event SET hash = substr(hash, 1, 31) WHERE id = %1$d", 0, 0},
    {"number", "UPDATE event SET seq = %2$d + 5 WHERE id = %1$d", 0, 0},
    {"number below", "UPDATE event SET seq = -3 WHERE id = %1$d", 0, -END},
    {"id above", "UPDATE event SET id = %2$d + 5 WHERE id = %1$d", 0, 0},
    {"id below", "UPDATE event SET id = -5 WHERE id = %1$d", 0, 0},
    {"chain",
     "INSERT INTO chain (id, device, name, own, last_seq, last_hash) VALUES (9, randomblob(16), "
     "'x', 0, 0, zeroblob(32)); UPDATE event SET chain = 9 WHERE id = %1$d",
     0, 0},
    {"removed", "DELETE FROM event WHERE id = %1$d", 0, 0},
    {"inserted at the end",
     "INSERT INTO event SELECT %2$d + 1, chain, %2$d + 1, randomblob(16), subject, kind, at_ms, "
     "offset_min, body, hash FROM event WHERE id = %1$d",
     END, END},
    {"inserted here",
     "UPDATE event SET seq = -seq WHERE seq >= %1$d; UPDATE event SET seq = 1 - seq WHERE seq < 0;"
     "INSERT INTO event SELECT %2$d + 1, chain, %1$d, randomblob(16), subject, kind, at_ms, "
     "offset_min, body, hash FROM event WHERE id = %1$d",
     0, 0},
    {"reordered",
     "UPDATE event SET seq = -1 WHERE id = %1$d; UPDATE event SET seq = %1$d WHERE id = %1$d + 1; "
     "UPDATE event SET seq = %1$d + 1 WHERE id = %1$d",
     0, 0},
    {"ids swapped",
     "UPDATE event SET id = -1 WHERE id = %1$d; UPDATE event SET id = %1$d WHERE id = %1$d + 1; "
     "UPDATE event SET id = %1$d + 1 WHERE id = -1",
     0, 1},
};
enum { EDITS = sizeof edits / sizeof *edits };

static void copy(const char *from, const char *to)
{
	char command[300];
	snprintf(command, sizeof command, "cp '%s' '%s'", from, to);
	ck_assert_int_eq(system(command), 0);
}

static void edit(const char *sql, int number, int last)
{
	char text[1024];
	char *message = NULL;
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
	snprintf(text, sizeof text, sql, number, last);
#pragma GCC diagnostic pop
	raw_open();
	if (sqlite3_exec(raw, text, NULL, NULL, &message) != SQLITE_OK)
		ck_abort_msg("%s: %s", text, message);
	raw_close();
}

static const struct log_fault *first_named(const struct log_report *report)
{
	for (size_t i = 0; i < report->faults_n && i < LOG_FAULTS_MAX; i++)
		if (report->faults[i].in_chain)
			return &report->faults[i];
	return NULL;
}

static void finds(size_t which, int number, int last)
{
	struct log_report report;
	open_for(HOUSEHOLD_READ);
	if (!household_verify(db, &report, &err))
		ck_abort_msg("%s of %d: %s", edits[which].what, number, err.text);
	const struct log_fault *fault = first_named(&report);
	if (!fault)
		ck_abort_msg("%s of %d of %d is not found (%zu faults: %s)", edits[which].what,
			     number, last, report.faults_n, report.faults[0].text);
	int named = edits[which].named == END ? last + 1 : number + edits[which].named;
	int other = edits[which].or_named == END    ? last + 1
		    : edits[which].or_named == -END ? -3
						    : number + edits[which].or_named;
	if (fault->number != named && fault->number != other)
		ck_abort_msg("%s of %d of %d: named %lld (%s)", edits[which].what, number, last,
			     (long long)fault->number, fault->text);
	household_close(db);
	db = NULL;
}

START_TEST(one_altered_removed_inserted_or_reordered_entry_is_named)
{
	uint64_t state = (uint64_t)_i * 77 + 5;
	char whole[160];
	int last = log_days(db, &state, 60, 9);
	household_close(db);
	db = NULL;
	snprintf(whole, sizeof whole, "%s.whole", path);
	copy(path, whole);
	for (size_t i = 0; i < EDITS; i++)
		for (int n = 0; n < 3; n++) {
			int number = n == 0 ? 1 : 1 + (int)pick(&state, (unsigned)last - 1);
			copy(whole, path);
			edit(edits[i].sql, number, last);
			finds(i, number, last);
		}
	/* The last one too. */
	copy(whole, path);
	edit("DELETE FROM event WHERE id = %1$d", last, last);
	finds(EDITS - 5, last, last);
}
END_TEST

START_TEST(a_state_that_the_entries_do_not_give_is_found_and_mended)
{
	static const char *const lies[] = {
	    "UPDATE canner SET holds_quarts = 3",
	    "UPDATE jar SET state = 'shelf'",
	    "DELETE FROM jar WHERE number = 1",
	    "UPDATE load SET outcome = 'processed', why = 'x' WHERE record IS NULL",
	    "UPDATE batch SET held = 1 - held",
	    "INSERT INTO conflict VALUES (1, 'x')",
	};
	uint64_t state = 99;
	struct log_report report;
	log_days(db, &state, 300, 8);
	char *live = state_text(db);
	household_close(db);
	raw_open();
	ck_assert_int_eq(sqlite3_exec(raw, lies[_i], NULL, NULL, NULL), SQLITE_OK);
	ck_assert_int_gt(sqlite3_changes(raw), 0);
	raw_close();
	open_for(HOUSEHOLD_WRITE);
	ck_assert(household_verify(db, &report, &err));
	ck_assert_uint_eq(report.faults_n, 1);
	ck_assert_ptr_nonnull(strstr(report.faults[0].text, "log rebuild"));
	ck_assert(household_rebuild(db, &err));
	char *mended = state_text(db);
	ck_assert_str_eq(live, mended);
	free(live);
	free(mended);
	holds_no_fault(99);
}
END_TEST

START_TEST(what_is_left_open_to_change_is_said)
{
	struct log_report report;
	uint64_t state = 3;
	log_days(db, &state, 40, 0);
	household_close(db);
	raw_open();
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK); /* the triggers stay dropped */
	open_for(HOUSEHOLD_READ);
	ck_assert(household_verify(db, &report, &err));
	ck_assert_uint_eq(report.faults_n, 1);
	ck_assert_ptr_nonnull(strstr(report.faults[0].text, "taken out"));
}
END_TEST

/* A fork: another chain of the same device, which leaves its parent after entry 3. */
static void add_fork(bool sound)
{
	sqlite3_stmt *row;
	uint8_t device[UUID_SIZE], before[DIGEST_SIZE], hash[DIGEST_SIZE];
	struct event event = {.chain = 2, .seq = 4, .kind = "lot-add", .at = {1790000000000, 60}};
	event.body = "{\"kind\":\"lids\",\"name\":\"of the fork\"}";
	event.body_length = strlen(event.body);
	ck_assert(store_prepare(db,
				"SELECT chain.device, event.hash, (SELECT max(id) FROM event) FROM "
				"chain JOIN event ON event.chain = chain.id WHERE event.seq = 3",
				&row, &err));
	ck_assert_int_eq(sqlite3_step(row), SQLITE_ROW);
	memcpy(device, sqlite3_column_blob(row, 0), UUID_SIZE);
	memcpy(before, sqlite3_column_blob(row, 1), DIGEST_SIZE);
	event.id = event.subject = sqlite3_column_int64(row, 2) + 1;
	sqlite3_finalize(row);
	ck_assert(uuid_make(NULL, event.uuid, &err));
	ck_assert(event_hash(&event, before, device, event.uuid, hash, &err));
	hash[0] ^= !sound;
	memcpy(event.hash, hash, DIGEST_SIZE);
	ck_assert(log_begin(db, &err));
	ck_assert(store_prepare(db,
				"INSERT INTO chain (id, device, name, parent, parent_seq, own, "
				"last_seq, last_hash) VALUES (2, ?1, 'fork', 1, 3, 0, 4, ?2)",
				&row, &err));
	sqlite3_bind_blob(row, 1, device, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_blob(row, 2, hash, DIGEST_SIZE, SQLITE_STATIC);
	ck_assert(store_finish(db, row, &err));
	ck_assert(event_insert(db, &event, &err));
	ck_assert(state_rebuild(db, &err));
	ck_assert(log_end(db, true, &err));
}

START_TEST(a_fork_goes_on_from_its_parent)
{
	struct log_report report;
	uint64_t state = 11;
	log_days(db, &state, 60, 0);
	add_fork(_i == 0);
	ck_assert(household_verify(db, &report, &err));
	ck_assert_uint_eq(report.chains_n, 2);
	ck_assert_uint_eq(report.faults_n, (size_t)_i);
	if (_i == 1) {
		ck_assert_str_eq(report.faults[0].device, "fork");
		ck_assert_int_eq(report.faults[0].number, 4);
		ck_assert_str_eq(report.faults[0].kind, "lot-add");
	}
}
END_TEST

/* --- Only what makes sense is taken --- */

static bool taken_about(int64_t subject, const char *kind, const char *body)
{
	struct instant at = {INT64_C(1790000000000), 120};
	memset(&err, 0, sizeof err);
	ck_assert(log_begin(db, &err));
	return log_end(db, log_append(db, kind, subject, at, json_loads(body, 0, NULL), NULL, &err),
		       &err);
}

static bool taken(const char *kind, const char *body)
{
	return taken_about(0, kind, body);
}

START_TEST(bodies_that_make_no_sense_are_refused)
{
	static const struct {
		const char *kind, *body;
	} bad[] = {
	    {"canner-add", "{}"},
	    {"canner-add", "[]"},
	    {"canner-add", "{\"name\":5,\"kind\":\"steam\"}"},
	    {"canner-add", "{\"name\":\"\",\"kind\":\"steam\"}"},
	    {"canner-add", "{\"name\":\"a\\u001b[2J\",\"kind\":\"steam\"}"},
	    {"canner-add", "{\"name\":\"a\\u202eb\",\"kind\":\"steam\"}"},
	    {"canner-add", "{\"name\":\"a\",\"kind\":\"oven\"}"},
	    {"canner-add", "{\"name\":\"a\",\"kind\":\"steam\",\"quarts\":\"7\"}"},
	    {"canner-add", "{\"name\":\"a\",\"kind\":\"steam\",\"quarts\":7.5}"},
	    {"canner-add", "{\"name\":\"a\",\"kind\":\"steam\",\"quarts\":101}"},
	    {"canner-add", "{\"name\":\"a\",\"kind\":\"steam\",\"quarts\":-9223372036854775808}"},
	    {"lot-add", "{\"name\":\"a\",\"kind\":\"lids\",\"dated\":\"2026-02-30\"}"},
	    {"lot-add", "{\"name\":\"a\",\"kind\":\"lids\",\"supplier\":7}"},
	    {"lot-add", "{\"name\":\"a\",\"kind\":\"lids\",\"strength_mpct\":5000}"},
	    {"lot-add", "{\"name\":\"a\",\"kind\":\"vinegar\",\"strength_mpct\":0}"},
	};
	static const char *const good[] = {
	    "{\"name\":\"a\",\"kind\":\"steam\",\"quarts\":7}",
	    "{\"name\":\"a\",\"kind\":\"steam\"}", /* two devices may give one name */
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		if (taken(bad[i].kind, bad[i].body))
			ck_abort_msg("%s %s was taken", bad[i].kind, bad[i].body);
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
	for (size_t i = 0; i < sizeof good / sizeof *good; i++)
		ck_assert(taken("canner-add", good[i]));
	holds_no_fault(0);
}
END_TEST

/* Want of memory is no fault of the file. */
START_TEST(without_memory_nothing_is_called_a_fault)
{
	static struct log_report report;
	uint64_t state = 5;
	int looked = 0, could_not = 0;
	log_days(db, &state, 120, 9);
	for (sqlite3_int64 limit = 100000; limit < 3000000; limit += 20000) {
		household_close(db);
		open_for(HOUSEHOLD_READ);
		memset(&err, 0, sizeof err);
		sqlite3_hard_heap_limit64(limit);
		bool could = household_verify(db, &report, &err);
		sqlite3_hard_heap_limit64(0);
		if (could && report.faults_n > 0)
			ck_abort_msg("limit %lld: %s", limit, report.faults[0].text);
		looked += could;
		could_not += !could;
	}
	ck_assert_int_gt(looked, 0);
	ck_assert_int_gt(could_not, 0);
}
END_TEST

START_TEST(batches_have_a_day_and_figures_that_can_be)
{
	static const struct {
		const char *number, *day, *elevation;
		bool good;
	} tries[] = {
	    {"1", "2026-08-14", "1500000", true},
	    {"99999999", "2026-08-14", "-200000", true},
	    {"100000000", "2026-08-14", "1500000", false},
	    {"1", "2026-02-30", "1500000", false},
	    {"1", "yesterday!", "1500000", false},
	    {"1", "2026-08-14", "4294967296", false}, /* not sea level */
	    {"1", "2026-08-14", "\"1500000\"", false},
	};
	for (size_t i = 0; i < sizeof tries / sizeof *tries; i++) {
		char body[512];
		snprintf(body, sizeof body,
			 "{\"year\":2026,\"number\":%s,\"day\":\"%s\",\"title\":\"a\","
			 "\"keep\":\"freezer\",\"verdict\":\"untested\",\"edition\":\"2026a\","
			 "\"elevation_own\":true,\"elevation_mft\":%s}",
			 tries[i].number, tries[i].day, tries[i].elevation);
		if (taken("batch-start", body) != tries[i].good)
			ck_abort_msg("%s: %s", body, err.text);
	}
	holds_no_fault(0);
}
END_TEST

/* A reading is multiplied later on. */
START_TEST(a_clock_of_a_machine_has_a_range)
{
	static const struct {
		const char *seen, *why;
	} tries[] = {
	    {"-1", "nothing that can happen"},
	    {"1000000000001", "nothing that can happen"},
	    {"9223372036854775807", "nothing that can happen"},
	    {"2", "is not running"},
	};
	int batch;
	ck_assert(taken("batch-start",
			"{\"year\":2026,\"number\":1,\"day\":\"2026-08-14\",\"title\":\"a\","
			"\"keep\":\"freezer\",\"verdict\":\"untested\",\"edition\":\"2026a\"}"));
	ck_assert(store_integer(db, "SELECT min(id) FROM batch", &batch, &err));
	for (size_t i = 0; i < sizeof tries / sizeof *tries; i++) {
		char body[512];
		snprintf(body, sizeof body,
			 "{\"number\":1,\"what\":\"return\",\"stage\":\"process\","
			 "\"clock_ms\":1,\"boot\":\"b\",\"seen_ms\":%s}",
			 tries[i].seen);
		ck_assert(!taken_about(batch, "run-step", body));
		ck_assert_ptr_nonnull(strstr(err.text, tries[i].why));
	}
}
END_TEST

START_TEST(moments_that_no_clock_shows_are_refused)
{
	static const struct instant bad[] = {{-1, 0},        {INT64_MAX, 0},
					     {INT64_MIN, 0}, {0, 1441},
					     {0, -1441},     {INT64_C(253402300800000), 0}};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		memset(&err, 0, sizeof err);
		ck_assert(log_begin(db, &err));
		ck_assert(!log_end(db,
				   log_append(db, "canner-add", 0, bad[i],
					      json_pack("{s:s, s:s}", "name", "a", "kind", "steam"),
					      NULL, &err),
				   &err));
		ck_assert_ptr_nonnull(strstr(err.text, "1970 to 9999"));
	}
}
END_TEST

/* A gauge far off either way, and figures that would not fit. */
START_TEST(gauge_readings_have_a_range)
{
	static const char *const bad[] = {
	    "{\"tested\":\"2026-06-01\",\"readings\":[]}",
	    "{\"tested\":\"2026-06-01\"}",
	    "{\"tested\":\"2026-06-01\",\"readings\":[{\"gauge_mpsi\":30001,\"master_mpsi\":1}]}",
	    "{\"tested\":\"2026-06-01\",\"readings\":[{\"gauge_mpsi\":9223372036854775807}]}",
	    "{\"tested\":\"2026-06-01\",\"readings\":[{\"gauge_mpsi\":1,\"master_mpsi\":-1}]}",
	    "{\"tested\":\"June\",\"readings\":[{\"gauge_mpsi\":1,\"master_mpsi\":1}]}",
	};
	struct instant at = {INT64_C(1790000000000), 120};
	ck_assert(taken("canner-add", "{\"name\":\"a\",\"kind\":\"dial-gauge\"}"));
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		memset(&err, 0, sizeof err);
		ck_assert(log_begin(db, &err));
		ck_assert(!log_end(
		    db,
		    log_append(db, "gauge-test", 1, at, json_loads(bad[i], 0, NULL), NULL, &err),
		    &err));
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
}
END_TEST

START_TEST(nothing_but_the_log_writes_the_log)
{
	static const char *const writes[] = {
	    "INSERT INTO lot (id, kind, name, finished) VALUES (1, 'lids', 'a', 0)",
	    "UPDATE chain SET last_seq = 0",
	    "DELETE FROM event",
	    "DROP TABLE event",
	    "PRAGMA writable_schema = ON",
	    "ATTACH ':memory:' AS a",
	    "CREATE TABLE a (b)"};
	ck_assert(taken("canner-add", "{\"name\":\"a\",\"kind\":\"steam\"}"));
	for (size_t i = 0; i < sizeof writes / sizeof *writes; i++)
		ck_assert(!store_exec(db, writes[i], &err));
	/* While the log writes, its events still stay as they are. */
	ck_assert(log_begin(db, &err));
	ck_assert(!store_exec(db, "DELETE FROM event", &err));
	ck_assert(!store_exec(db, "UPDATE event SET body = '{}'", &err));
	ck_assert(!log_end(db, false, &err));
	holds_no_fault(0);
}
END_TEST

Suite *sound_suite(void)
{
	Suite *suite = suite_create("sound");
	TCase *tcase = tcase_create("properties");
	tcase_set_timeout(tcase, 120);
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_loop_test(tcase, a_rebuild_gives_the_same_state, 0, 4);
	tcase_add_loop_test(tcase, a_rebuild_gives_the_same_state_with_undos, 0, 6);
	tcase_add_loop_test(tcase, one_altered_removed_inserted_or_reordered_entry_is_named, 0, 3);
	tcase_add_loop_test(tcase, a_state_that_the_entries_do_not_give_is_found_and_mended, 0, 6);
	tcase_add_loop_test(tcase, a_fork_goes_on_from_its_parent, 0, 2);
	tcase_add_test(tcase, what_is_left_open_to_change_is_said);
	tcase_add_test(tcase, bodies_that_make_no_sense_are_refused);
	tcase_add_test(tcase, without_memory_nothing_is_called_a_fault);
	tcase_add_test(tcase, batches_have_a_day_and_figures_that_can_be);
	tcase_add_test(tcase, a_clock_of_a_machine_has_a_range);
	tcase_add_test(tcase, moments_that_no_clock_shows_are_refused);
	tcase_add_test(tcase, gauge_readings_have_a_range);
	tcase_add_test(tcase, nothing_but_the_log_writes_the_log);
	suite_add_tcase(suite, tcase);
	return suite;
}
