/* Jars moved through the log, and their histories. All data is invented. */
#include "../log_fixture.h"
#include "jarwright/household_jars.h"
#include "jarwright/shelf.h"
#include "suites.h"

/* 2026-09-21 14:13 UTC. */
static const int64_t noon = INT64_C(1790000000000) / 60000 * 60000;
static struct log_fixture f;
static struct jars_moved moved;

static void setup(void)
{
	fixture_open(&f);
}

static void teardown(void)
{
	fixture_close(&f);
}

static bool move_at(const char *which, enum jar_state to, int64_t at, bool happened)
{
	struct jar_picks picks;
	memset(&f.err, 0, sizeof f.err);
	ck_assert(jar_picks_read(&which, 1, &picks, &f.err));
	const struct jar_move move = {.to = to,
				      .at = {at, 0},
				      .happened = happened,
				      .place = to == JAR_GIVEN ? "the neighbours" : NULL,
				      .hold = shelf_hold()};
	return household_move_jars(f.db, &picks, &move, &moved, &f.err);
}

static int64_t batch_of(const char *outcome, const char *sealed, const char *unsealed)
{
	int64_t batch = day_start(&f, &(struct day){.number = 41, .at = noon});
	day_load(&f, batch, 7, "pint", outcome, noon);
	if (sealed)
		day_seal(&f, batch, sealed, true, noon + 13 * HOUR_MS);
	if (unsealed)
		day_seal(&f, batch, unsealed, false, noon + 13 * HOUR_MS);
	return batch;
}

/* 26-026 is a batch, and not a range of the one jar 26. */
START_TEST(a_batch_of_the_number_of_its_year_is_a_batch)
{
	const char *const words[] = {"26-026", "1-6"};
	struct jar_picks picks;
	if (!jar_picks_read(words, 2, &picks, &f.err))
		ck_abort_msg("%s", f.err.text);
	ck_assert_uint_eq(picks.picks_n, 1);
	ck_assert_int_eq(picks.picks[0].number, 26);
	ck_assert_int_eq(picks.picks[0].count, 0);
	ck_assert_uint_eq(jar_set_count(&picks.picks[0].jars), 6);
}
END_TEST

START_TEST(both_sides_of_24_hours)
{
	batch_of("processed", "1-5", "6-7");
	ck_assert(move_at("26-041-06", JAR_REFRIGERATED, noon + 24 * HOUR_MS, false));
	ck_assert(moved.batches[0].waiting);
	ck_assert(!move_at("26-041-07", JAR_REFRIGERATED, noon + 24 * HOUR_MS + 1, false));
	ck_assert_int_eq(f.err.kind, ERROR_USAGE);
	ck_assert_ptr_nonnull(strstr(f.err.text, "stood more than 24 hours"));
	ck_assert_ptr_nonnull(strstr(f.err.text, "--happened"));
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM jar WHERE late = 1"), 0);
}
END_TEST

START_TEST(what_happened_is_logged_and_remembered)
{
	batch_of("processed", "1-5", "6-7");
	ck_assert(move_at("26-041-07", JAR_REFRIGERATED, noon + 30 * HOUR_MS, true));
	ck_assert_int_eq(moved.batches[0].advice, JAR_STOOD_TOO_LONG);
	ck_assert(jar_set_has(&moved.batches[0].advised_against, 7));
	ck_assert_int_eq(log_count(&f, "SELECT number FROM jar WHERE late = 1"), 7);
	ck_assert(!move_at("26-041-07", JAR_EATEN, noon + 31 * HOUR_MS, false));
	ck_assert(!move_at("26-041-07", JAR_GIVEN, noon + 31 * HOUR_MS, false));
	ck_assert(move_at("26-041-07", JAR_DISCARDED, noon + 31 * HOUR_MS, false));
	/* Worked out anew from the events, it is the same. */
	ck_assert(log_begin(f.db, &f.err));
	ck_assert(log_end(f.db, state_rebuild(f.db, &f.err), &f.err));
	ck_assert_int_eq(log_count(&f, "SELECT number FROM jar WHERE late = 1"), 7);
}
END_TEST

START_TEST(an_under_processed_jar_has_two_hours)
{
	batch_of("under-processed", NULL, NULL);
	ck_assert(move_at("26-041 1", JAR_REFRIGERATED, noon + 2 * HOUR_MS, false));
	ck_assert(!move_at("26-041 2", JAR_REFRIGERATED, noon + 2 * HOUR_MS + 1, false));
	ck_assert_ptr_nonnull(strstr(f.err.text, "more than 2 hours"));
	/* Nothing forces it onto the shelf. */
	ck_assert(!move_at("26-041 2", JAR_SHELF, noon + HOUR_MS, true));
	/* It was given away: the log must know, to tell the neighbours. */
	ck_assert(move_at("26-041 3", JAR_GIVEN, noon + HOUR_MS, true));
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM jar WHERE state = 'given' AND place = "
				       "'the neighbours' AND gone = 1"),
			 1);
}
END_TEST

START_TEST(a_count_takes_the_lowest_that_may)
{
	batch_of("processed", "2-5", "1,6-7");
	ck_assert(move_at("26-041 3", JAR_OPENED, noon + 20 * HOUR_MS, false));
	ck_assert(move_at("3 of 26-041", JAR_GIVEN, noon + 20 * HOUR_MS, false));
	char text[JAR_SET_SIZE];
	ck_assert_str_eq(jar_set_text(&moved.batches[0].jars, text, sizeof text), "2,4-5");
	ck_assert(!move_at("1 of 26-041", JAR_GIVEN, noon + 20 * HOUR_MS, false));
	ck_assert_ptr_nonnull(strstr(f.err.text, "0 of 26-041 may be given, not 1"));
	ck_assert(!move_at("1 of 26-041", JAR_GIVEN, noon + 20 * HOUR_MS, true));
}
END_TEST

START_TEST(all_or_none)
{
	batch_of("processed", "1-6", NULL);
	int events = log_count(&f, "SELECT count(*) FROM event");
	ck_assert(!move_at("26-041 1-8", JAR_SHELF, noon + 20 * HOUR_MS, false));
	ck_assert(!move_at("26-041-01 26-042-01", JAR_SHELF, noon + 20 * HOUR_MS, false));
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM event"), events);
	ck_assert_int_eq(log_count(&f, "SELECT count(*) FROM jar WHERE state = 'shelf'"), 0);
	ck_assert(!move_at("26-041 1", JAR_SHELF, noon + 12 * HOUR_MS, false));
	ck_assert_ptr_nonnull(strstr(f.err.text, "later than that; check --at"));
}
END_TEST

static int64_t recall(int64_t batch)
{
	uint8_t uuid[UUID_SIZE];
	char hex[UUID_TEXT_SIZE];
	ck_assert(event_uuid(f.db, batch, uuid, &f.err));
	hex_text(uuid, UUID_SIZE, hex);
	return log_must(&f, "recall-open", 0, noon + 20 * HOUR_MS,
			json_pack("{s:i, s:i, s:s, s:s, s:[{s:s, s:s}]}", "year", 2026, "number", 1,
				  "reason", "lot", "what", "lot wide lids, spring", "jars", "batch",
				  hex, "jars", "1-3"));
}

START_TEST(a_recalled_jar_is_not_opened_eaten_or_given)
{
	int64_t batch = batch_of("processed", "1-7", NULL);
	recall(batch);
	for (enum jar_state to = JAR_OPENED; to <= JAR_GIVEN; to++) {
		ck_assert(!move_at("26-041-03", to, noon + 21 * HOUR_MS, true));
		ck_assert_ptr_nonnull(strstr(f.err.text, "recalled (lot wide lids, spring)"));
	}
	ck_assert(move_at("26-041-04", JAR_OPENED, noon + 21 * HOUR_MS, false));
	ck_assert(move_at("26-041-03", JAR_DISCARDED, noon + 21 * HOUR_MS, false));
}
END_TEST

static bool tells(const struct jar_history *history, const char *words)
{
	for (size_t i = 0; i < history->entries_n; i++)
		if (strstr(history->entries[i].words, words))
			return true;
	return false;
}

START_TEST(a_history_has_everything_of_its_jar_and_nothing_of_others)
{
	int64_t batch = batch_of("processed", "1-6", "7");
	struct jar_history history;
	const char *word = "26-041-03";
	struct jar_picks picks;
	day_move(&f, batch, "1-3", "shelf", "cellar, left", noon + 14 * HOUR_MS);
	int64_t mistake = day_move(&f, batch, "3", "opened", NULL, noon + 15 * HOUR_MS);
	day_move(&f, batch, "2", "eaten", NULL, noon + 15 * HOUR_MS);
	ck_assert(log_begin(f.db, &f.err));
	ck_assert(log_end(f.db,
			  log_undo(f.db, mistake, (struct instant){noon + 16 * HOUR_MS, 0}, &f.err),
			  &f.err));
	log_must(&f, "batch-note", batch, noon + 16 * HOUR_MS,
		 json_pack("{s:s}", "text", "a note \x1b[31m; DROP TABLE jar"));
	recall(batch);
	ck_assert(jar_picks_read(&word, 1, &picks, &f.err));
	ck_assert(household_jar_history(f.db, &picks.picks[0], &history, &f.err));
	ck_assert(tells(&history, "decided tested"));
	ck_assert(tells(&history, "filled in load 1 (pint jar): processed"));
	ck_assert(tells(&history, "seal tested: sealed"));
	ck_assert(!tells(&history, "not sealed"));
	ck_assert(tells(&history, "put on the shelf, place: cellar, left"));
	ck_assert(!tells(&history, "eaten"));
	ck_assert(tells(&history, "a note \x1b[31m; DROP TABLE jar"));
	ck_assert(tells(&history, "recalled: lot wide lids, spring"));
	for (size_t i = 0; i < history.entries_n; i++)
		ck_assert_int_eq(history.entries[i].undone,
				 strcmp(history.entries[i].words, "opened") == 0);
	ck_assert_int_eq(history.now.state, JAR_SHELF);
	ck_assert(history.now.recalled);
	jar_history_release(&history);
}
END_TEST

/* Where the words stand in the history; -1: nowhere. */
static int place_of(const struct jar_history *history, const char *words)
{
	for (size_t i = 0; i < history->entries_n; i++)
		if (strcmp(history->entries[i].words, words) == 0)
			return (int)i;
	return -1;
}

START_TEST(recalls_stand_where_they_happened)
{
	int64_t batch = batch_of("processed", "1-7", NULL), recalled = recall(batch);
	uint8_t uuid[UUID_SIZE];
	char hex[UUID_TEXT_SIZE];
	const char *word = "26-041-03";
	struct jar_picks picks;
	struct jar_history history;
	ck_assert(event_uuid(f.db, batch, uuid, &f.err));
	hex_text(uuid, UUID_SIZE, hex);
	log_must(&f, "batch-note", batch, noon + 21 * HOUR_MS, json_pack("{s:s}", "text", "asked"));
	log_must(&f, "recall-record", recalled, noon + 22 * HOUR_MS,
		 json_pack("{s:s, s:s, s:s, s:s}", "batch", hex, "jars", "3", "disposition",
			   "cleared", "note", "lid looked at"));
	log_must(
	    &f, "recall-record", recalled, noon + 23 * HOUR_MS,
	    json_pack("{s:s, s:s, s:s}", "batch", hex, "jars", "1-2", "disposition", "discarded"));
	log_must(&f, "recall-close", recalled, noon + 24 * HOUR_MS, json_object());
	ck_assert(jar_picks_read(&word, 1, &picks, &f.err));
	ck_assert(household_jar_history(f.db, &picks.picks[0], &history, &f.err));
	int opened = place_of(&history, "recalled: lot wide lids, spring");
	ck_assert_int_gt(opened, 0);
	ck_assert_int_eq(history.entries[opened].at.ms, noon + 20 * HOUR_MS);
	ck_assert_int_eq(place_of(&history, "note on the batch: asked"), opened + 1);
	ck_assert_int_eq(place_of(&history, "under the recall: cleared (lid looked at)"),
			 opened + 2);
	ck_assert_int_eq(place_of(&history, "the recall was closed"), opened + 3);
	ck_assert_uint_eq(history.entries_n, (size_t)opened + 4);
	jar_history_release(&history);
}
END_TEST

/* Of two devices one took its load back, the other's jars stay as they are on the lids. */
START_TEST(numbers_are_those_on_the_lids_and_may_have_gaps)
{
	const char *word = "26-041-09";
	struct jar_picks picks;
	struct jar_history history;
	char text[JAR_SET_SIZE];
	int64_t batch = day_start(&f, &(struct day){.number = 41, .at = noon});
	log_must(&f, "load", batch, noon,
		 json_pack("{s:i, s:i, s:[{s:i, s:s}, {s:i, s:s}], s:{}, s:s, s:s, s:I}", "number",
			   2, "first", 8, "jars", "n", 1, "size", "quart", "n", 2, "size", "pint",
			   "facts", "outcome", "processed", "why", "", "out_ms", (json_int_t)noon));
	ck_assert(jar_picks_read(&word, 1, &picks, &f.err));
	ck_assert(household_jar_history(f.db, &picks.picks[0], &history, &f.err));
	ck_assert(tells(&history, "filled in load 2 (pint jar): processed"));
	jar_history_release(&history);
	day_seal(&f, batch, "8-10", true, noon + 13 * HOUR_MS);
	ck_assert(move_at("2 of 26-041", JAR_OPENED, noon + 20 * HOUR_MS, false));
	ck_assert_str_eq(jar_set_text(&moved.batches[0].jars, text, sizeof text), "8-9");
}
END_TEST

Suite *moves_suite(void)
{
	Suite *suite = suite_create("jar-moves");
	TCase *tcase = tcase_create("moves");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, a_batch_of_the_number_of_its_year_is_a_batch);
	tcase_add_test(tcase, both_sides_of_24_hours);
	tcase_add_test(tcase, what_happened_is_logged_and_remembered);
	tcase_add_test(tcase, an_under_processed_jar_has_two_hours);
	tcase_add_test(tcase, a_count_takes_the_lowest_that_may);
	tcase_add_test(tcase, all_or_none);
	tcase_add_test(tcase, recalls_stand_where_they_happened);
	tcase_add_test(tcase, a_recalled_jar_is_not_opened_eaten_or_given);
	tcase_add_test(tcase, a_history_has_everything_of_its_jar_and_nothing_of_others);
	tcase_add_test(tcase, numbers_are_those_on_the_lids_and_may_have_gaps);
	suite_add_tcase(suite, tcase);
	return suite;
}
