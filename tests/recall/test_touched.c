/*
 * From a fault to the jars it touches: by hand on small kitchens, on random ones against a second
 * search that is written apart from the first, and the indexes it goes by. All data is invented.
 */
#include "../../src/household/touched.h"
#include "jarwright/household_trace.h"
#include "recall_fixture.h"
#include "suites.h"

static struct log_fixture f;
static struct touched_jars jars;

static void setup(void)
{
	fixture_open(&f);
	jars = (struct touched_jars){0};
}

static void teardown(void)
{
	touched_jars_release(&jars);
	fixture_close(&f);
}

static void touch(const struct fault *fault)
{
	touched_jars_release(&jars);
	if (!household_touched(f.db, fault, &jars, &f.err))
		ck_abort_msg("%s", f.err.text);
}

static void expect(size_t i, int64_t batch, int number, int step)
{
	ck_assert_uint_lt(i, jars.jars_n);
	ck_assert_int_eq(jars.jars[i].batch, batch);
	ck_assert_int_eq(jars.jars[i].number, number);
	ck_assert_int_eq(jars.jars[i].step, step);
}

START_TEST(a_lot_goes_on_through_a_later_batch)
{
	int64_t lot = add_lot(&f, "wide lids"), other = add_lot(&f, "other lids");
	int64_t first = start(&f, 1, json_pack("[o]", uuid_of(&f, lot)), NULL);
	load_in(&f, first, 1, 0, 2, noon);
	int64_t second = start(&f, 2, json_pack("[o]", uuid_of(&f, other)),
			       json_pack("[o]", from_jars(&f, first, "2")));
	load_in(&f, second, 1, 0, 2, noon);
	int64_t third = start(&f, 3, NULL, json_pack("[o]", from_jars(&f, second, "1")));
	load_in(&f, third, 1, 0, 1, noon);
	int64_t apart = start(&f, 4, NULL, NULL);
	load_in(&f, apart, 1, 0, 3, noon);
	touch(&(struct fault){.kind = FAULT_LOT, .subject = lot});
	ck_assert_uint_eq(jars.jars_n, 5);
	expect(0, first, 1, 0);
	expect(1, first, 2, 0);
	expect(2, second, 1, 1);
	expect(3, second, 2, 1);
	expect(4, third, 1, 2);
	/* The one jar that went nowhere. */
	touch(&(struct fault){.kind = FAULT_JAR, .subject = first, .number = 1});
	ck_assert_uint_eq(jars.jars_n, 1);
	touch(&(struct fault){.kind = FAULT_LOT, .subject = other});
	ck_assert_uint_eq(jars.jars_n, 3);
}
END_TEST

START_TEST(what_is_still_in_the_pot_is_told)
{
	int64_t lot = add_lot(&f, "wide lids");
	int64_t batch = start(&f, 1, json_pack("[o]", uuid_of(&f, lot)), NULL);
	touch(&(struct fault){.kind = FAULT_LOT, .subject = lot});
	ck_assert_uint_eq(jars.jars_n, 0);
	ck_assert_uint_eq(jars.unfilled_n, 1);
	ck_assert_int_eq(jars.unfilled[0].batch, batch);
	ck_assert_int_eq(jars.unfilled[0].number, 1);
	load_in(&f, batch, 1, 0, 1, noon);
	int64_t later = start(&f, 2, NULL, json_pack("[o]", from_jars(&f, batch, "1")));
	touch(&(struct fault){.kind = FAULT_LOT, .subject = lot});
	ck_assert_uint_eq(jars.jars_n, 1);
	ck_assert_uint_eq(jars.unfilled_n, 1);
	ck_assert_int_eq(jars.unfilled[0].batch, later);
}
END_TEST

START_TEST(a_canner_counts_between_two_moments_with_the_last_load)
{
	int64_t bad = add_canner(&f, "old", "dial-gauge"),
		good = add_canner(&f, "new", "dial-gauge");
	int64_t batch = start(&f, 1, NULL, NULL);
	load_in(&f, batch, 1, bad, 2, noon);
	load_in(&f, batch, 2, bad, 1, noon + DAY_MS);
	load_in(&f, batch, 3, good, 1, noon);
	/* Jar 2 is processed again, in the other canner. */
	log_must(&f, "load", batch, noon + 2 * HOUR_MS,
		 json_pack("{s:i, s:o, s:[], s:s, s:{}, s:s, s:s, s:I}", "number", 4, "canner",
			   uuid_of(&f, good), "jars", "again", "2", "facts", "outcome", "processed",
			   "why", "", "out_ms", (json_int_t)noon + 3 * (json_int_t)HOUR_MS));
	struct fault fault = {
	    .kind = FAULT_CANNER, .subject = bad, .from_ms = noon, .to_ms = noon + DAY_MS};
	touch(&fault);
	ck_assert_uint_eq(jars.jars_n, 2);
	expect(0, batch, 1, 0);
	expect(1, batch, 3, 0);
	fault.to_ms = noon + DAY_MS - 1;
	touch(&fault);
	ck_assert_uint_eq(jars.jars_n, 1);
	fault.from_ms = noon + 1;
	touch(&fault);
	ck_assert_uint_eq(jars.jars_n, 0);
}
END_TEST

START_TEST(loads_of_batches)
{
	int64_t batch = start(&f, 1, NULL, NULL), other = start(&f, 2, NULL, NULL);
	load_in(&f, batch, 1, 0, 2, noon);
	load_in(&f, batch, 2, 0, 2, noon);
	load_in(&f, other, 1, 0, 1, noon);
	const struct fault_load loads[] = {{other, 0}, {batch, 2}};
	touch(&(struct fault){.kind = FAULT_LOADS, .loads = loads, .loads_n = 2});
	ck_assert_uint_eq(jars.jars_n, 3);
	expect(0, batch, 3, 0);
	expect(1, batch, 4, 0);
	expect(2, other, 1, 0);
	touch(&(struct fault){.kind = FAULT_LOADS, .loads = loads, .loads_n = 0});
	ck_assert_uint_eq(jars.jars_n, 0);
}
END_TEST

/* Two devices may give out one code. */
START_TEST(batches_of_one_code_are_traced_apart)
{
	struct trace trace;
	int64_t one = start(&f, 7, NULL, NULL), other = start(&f, 7, NULL, NULL);
	load_in(&f, one, 1, 0, 3, noon);
	load_in(&f, other, 1, 0, 3, noon);
	int64_t later = start(
	    &f, 8, NULL, json_pack("[o, o]", from_jars(&f, one, "1"), from_jars(&f, other, "2")));
	ck_assert(household_trace(f.db, later, 0, &trace, &f.err));
	ck_assert_uint_eq(trace.batches_n, 3);
	ck_assert_uint_eq(trace.batches[0].from_n, 2);
	ck_assert_int_eq(trace.batches[0].from[1].batch, other);
	ck_assert(!jar_set_has(&trace.batches[0].from[1].jars, 1));
	ck_assert(jar_set_has(&trace.batches[0].from[1].jars, 2));
	trace_release(&trace);
}
END_TEST

START_TEST(no_number_of_steps_is_too_many)
{
	int64_t batch = 0, first = 0;
	for (int i = 1; i <= 300; i++) {
		json_t *from = batch ? json_pack("[o]", from_jars(&f, batch, "1")) : NULL;
		batch = start(&f, i, NULL, from);
		load_in(&f, batch, 1, 0, 1, noon);
		first = first ? first : batch;
	}
	touch(&(struct fault){.kind = FAULT_BATCH, .subject = first});
	ck_assert_uint_eq(jars.jars_n, 300);
	expect(299, batch, 1, 299);
}
END_TEST

/* --- Against a slow search --- */

enum { BATCHES = 24, JARS = 4, KITCHENS = 60 };

/* xorshift; the seed is the number of the kitchen. */
static uint32_t noise;
static int below(int n)
{
	noise ^= noise << 13;
	noise ^= noise >> 17;
	noise ^= noise << 5;
	return (int)(noise % (uint32_t)n);
}

/* An amendment may name later batches too, so two can go into each other. */
static void random_kitchen(int64_t lot, int64_t ids[BATCHES])
{
	for (int i = 0; i < BATCHES; i++) {
		ids[i] = start(&f, i + 1, below(8) == 0 ? json_pack("[o]", uuid_of(&f, lot)) : NULL,
			       NULL);
		for (int n = below(JARS + 1), load = 1; load <= n; load++)
			load_in(&f, ids[i], load, 0, 1, noon);
	}
	for (int i = 0; i < BATCHES; i++) {
		json_t *from = json_array();
		for (int k = below(3); k > 0; k--) {
			char number[16];
			int other = below(BATCHES);
			snprintf(number, sizeof number, "%d", 1 + below(JARS));
			if (other != i && json_array_size(from) == 0)
				json_array_append_new(from, from_jars(&f, ids[other], number));
		}
		log_must(&f, "batch-amend", ids[i], noon,
			 json_pack("{s:s, s:o}", "why", "test", "from", from));
	}
}

/* The raw rows of the tables, one array each. */
struct raw {
	int64_t jar[BATCHES * JARS][2], from[BATCHES * 4][3], lot[BATCHES][2];
	size_t jar_n, from_n, lot_n;
};

static size_t read_raw(const char *sql, int columns, int64_t *out)
{
	sqlite3_stmt *row;
	size_t n = 0;
	ck_assert(store_prepare(f.db, sql, &row, &f.err));
	for (; sqlite3_step(row) == SQLITE_ROW; n++)
		for (int i = 0; i < columns; i++)
			*out++ = sqlite3_column_int64(row, i);
	sqlite3_finalize(row);
	return n;
}

static size_t jar_at(const struct raw *raw, int64_t batch, int64_t number)
{
	size_t i = 0;
	while (i < raw->jar_n && (raw->jar[i][0] != batch || raw->jar[i][1] != number))
		i++;
	return i;
}

/* Steps of every jar, -1: not touched; one jar at a time off a queue. */
static void slow_search(const struct raw *raw, int64_t lot, int step[])
{
	size_t queue[BATCHES * JARS], n = 0;
	for (size_t i = 0; i < raw->jar_n; i++) {
		step[i] = -1;
		for (size_t k = 0; k < raw->lot_n; k++)
			if (raw->lot[k][0] == raw->jar[i][0] && raw->lot[k][1] == lot)
				step[i] = 0;
		if (step[i] == 0)
			queue[n++] = i;
	}
	for (size_t at = 0; at < n; at++)
		for (size_t k = 0; k < raw->from_n; k++) {
			if (jar_at(raw, raw->from[k][1], raw->from[k][2]) != queue[at])
				continue;
			for (size_t i = 0; i < raw->jar_n; i++)
				if (raw->jar[i][0] == raw->from[k][0] && step[i] < 0) {
					step[i] = step[queue[at]] + 1;
					queue[n++] = i;
				}
		}
}

START_TEST(a_slow_search_finds_the_same)
{
	static struct raw raw;
	int step[BATCHES * JARS];
	int64_t ids[BATCHES];
	noise = (uint32_t)_i * 2654435761U + 1;
	int64_t lot = add_lot(&f, "wide lids");
	random_kitchen(lot, ids);
	raw.jar_n = read_raw("SELECT batch, number FROM jar ORDER BY batch, number", 2, *raw.jar);
	raw.from_n =
	    read_raw("SELECT batch, from_batch, from_number FROM batch_from", 3, *raw.from);
	raw.lot_n = read_raw("SELECT batch, lot FROM batch_lot", 2, *raw.lot);
	slow_search(&raw, lot, step);
	touch(&(struct fault){.kind = FAULT_LOT, .subject = lot});
	size_t found = 0;
	for (size_t i = 0; i < raw.jar_n; i++)
		if (step[i] >= 0)
			expect(found++, raw.jar[i][0], (int)raw.jar[i][1], step[i]);
	ck_assert_uint_eq(found, jars.jars_n);
}
END_TEST

/* --- By the indexes --- */

/* Does the plan walk a whole table? */
static bool scans(const char *sql)
{
	char explain[1024];
	sqlite3_stmt *row;
	bool found = false;
	snprintf(explain, sizeof explain, "EXPLAIN QUERY PLAN %s", sql);
	ck_assert(store_prepare(f.db, explain, &row, &f.err));
	while (sqlite3_step(row) == SQLITE_ROW) {
		const char *detail = (const char *)sqlite3_column_text(row, 3);
		found = found || strncmp(detail, "SCAN", 4) == 0;
	}
	sqlite3_finalize(row);
	return found;
}

START_TEST(the_walk_goes_by_indexes)
{
	static const enum fault_kind indexed[] = {FAULT_LOT, FAULT_CANNER, FAULT_FOOD, FAULT_BATCH,
						  FAULT_JAR, FAULT_RECALL, FAULT_LOADS};
	for (size_t i = 0; i < sizeof indexed / sizeof *indexed; i++)
		ck_assert_msg(!scans(touched_seed(indexed[i])), "%s", touched_seed(indexed[i]));
	ck_assert(!scans(TOUCHED_LATER));
	/* There is no index by edition: the check can fail. */
	ck_assert(scans(touched_seed(FAULT_EDITION)));
}
END_TEST

Suite *touched_suite(void)
{
	Suite *suite = suite_create("touched");
	TCase *tests = tcase_create("touched");
	tcase_add_checked_fixture(tests, setup, teardown);
	tcase_set_timeout(tests, 120);
	tcase_add_test(tests, a_lot_goes_on_through_a_later_batch);
	tcase_add_test(tests, what_is_still_in_the_pot_is_told);
	tcase_add_test(tests, a_canner_counts_between_two_moments_with_the_last_load);
	tcase_add_test(tests, loads_of_batches);
	tcase_add_test(tests, batches_of_one_code_are_traced_apart);
	tcase_add_test(tests, no_number_of_steps_is_too_many);
	tcase_add_loop_test(tests, a_slow_search_finds_the_same, 0, KITCHENS);
	tcase_add_test(tests, the_walk_goes_by_indexes);
	suite_add_tcase(suite, tests);
	return suite;
}
