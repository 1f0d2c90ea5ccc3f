/* Batches in the household file, and decisions read back. All data is invented. */
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "../../src/household/log.h"
#include "jarwright/household_batches.h"
#include "jarwright/household_log.h"
#include "jarwright/render_batch.h"
#include "jarwright/text.h"
#include "suite.h"

static char folder[64];
static char path[128];
static struct error err;
static struct household *db;
static const struct instant noon = {INT64_C(1790000000000), 120}; /* 2026-09-21 */
static const struct date day = {2026, 9, 21};

static void setup(void)
{
	snprintf(folder, sizeof folder, "/tmp/jarwright-batch-XXXXXX");
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

static int64_t append(const char *kind, int64_t subject, json_t *body)
{
	int64_t id = 0;
	memset(&err, 0, sizeof err);
	ck_assert(log_begin(db, &err));
	if (!log_end(db, log_append(db, kind, subject, noon, body, &id, &err), &err))
		ck_abort_msg("%s", err.text);
	return id;
}

static int64_t add_canner(const char *name)
{
	return append(
	    "canner-add", 0,
	    json_pack("{s:s, s:s, s:i}", "name", name, "kind", "dial-gauge", "quarts", 7));
}

static void test_gauge(int64_t canner, const char *tested, int gauge, int master)
{
	append("gauge-test", canner,
	       json_pack("{s:s, s:[{s:i, s:i}]}", "tested", tested, "readings", "gauge_mpsi", gauge,
			 "master_mpsi", master));
}

static void add_lot(const char *kind, const char *name, int strength)
{
	json_t *body = json_pack("{s:s, s:s}", "kind", kind, "name", name);
	if (strength)
		json_object_set_new(body, "strength_mpct", json_integer(strength));
	append("lot-add", 0, body);
}

static struct batch_start beginning(void)
{
	return (struct batch_start){.at = noon,
				    .day = day,
				    .title = "Pickled beets",
				    .food = "pickled-beets",
				    .keep = "shelf",
				    .verdict = "tested",
				    .edition = "2026a",
				    .pack = "hot",
				    .canner_kind = "dial-gauge",
				    .jar = "pint",
				    .elevation_stated = true,
				    .elevation_mft = 2900000,
				    .minutes = 35,
				    .decision = json_pack("{s:s}", "verdict", "tested")};
}

static void start(struct batch_start *batch, char code[BATCH_CODE_MAX])
{
	memset(&err, 0, sizeof err);
	if (!household_start_batch(db, batch, code, &err))
		ck_abort_msg("%s", err.text);
	json_decref(batch->decision);
}

static void start_one(char code[BATCH_CODE_MAX])
{
	struct batch_start batch = beginning();
	start(&batch, code);
}

static struct batch_load_entry seven_pints(enum load_outcome outcome)
{
	return (struct batch_load_entry){
	    .started = noon,
	    .out = {noon.ms + 3600000, noon.offset_min},
	    .jars = {{7, "pint"}},
	    .jars_n = 1,
	    .said = {.process_stated = true, .process_s = 2100, .breaks = BREAKS_NONE},
	    .outcome = outcome,
	    .why = ""};
}

static struct batch_view view_of(const char *code)
{
	struct batch_view view;
	memset(&err, 0, sizeof err);
	if (!household_batch(db, code, &view, &err))
		ck_abort_msg("%s", err.text);
	return view;
}

START_TEST(codes_count_up_within_a_year)
{
	char code[BATCH_CODE_MAX];
	start_one(code);
	ck_assert_str_eq(code, "26-001");
	start_one(code);
	ck_assert_str_eq(code, "26-002");
	struct batch_start next = beginning();
	next.day.year = 2027;
	start(&next, code);
	ck_assert_str_eq(code, "27-001");
}
END_TEST

/* The code of a start that was taken back may stand on lids already. */
START_TEST(a_code_is_never_given_out_again)
{
	char code[BATCH_CODE_MAX];
	start_one(code);
	start_one(code);
	ck_assert_str_eq(code, "26-002");
	struct batch_view view = view_of(code);
	int64_t id = view.record.id;
	batch_view_release(&view);
	ck_assert(log_begin(db, &err));
	ck_assert(log_end(db, log_undo(db, id, noon, &err), &err));
	ck_assert(!household_batch(db, "26-002", &view, &err));
	start_one(code);
	ck_assert_str_eq(code, "26-003");
	ck_assert(household_rebuild(db, &err));
	start_one(code);
	ck_assert_str_eq(code, "26-004");
	/* Another year counts by itself. */
	struct batch_start other = beginning();
	other.day.year = 2025;
	start(&other, code);
	ck_assert_str_eq(code, "25-001");
}
END_TEST

START_TEST(what_is_not_tested_is_not_started_for_the_shelf)
{
	char code[BATCH_CODE_MAX];
	struct batch_start batch = beginning();
	batch.verdict = "refused";
	ck_assert(!household_start_batch(db, &batch, code, &err));
	batch.verdict = "tested";
	batch.minutes = 0;
	memset(&err, 0, sizeof err);
	ck_assert(!household_start_batch(db, &batch, code, &err));
	batch.verdict = "refused";
	batch.keep = "refrigerator";
	start(&batch, code);
	ck_assert_str_eq(code, "26-001");
}
END_TEST

START_TEST(a_batch_is_shown_as_it_was_logged)
{
	char code[BATCH_CODE_MAX];
	int number;
	struct jar_set jars;
	add_canner("dial");
	add_lot("lids", "wide lids, spring", 0);
	struct batch_start batch = beginning();
	batch.lots[0] = batch.lots[1] = "wide lids, spring"; /* said twice, it is one */
	batch.lots_n = 2;
	start(&batch, code);
	struct batch_load_entry entry = seven_pints(LOAD_PROCESSED);
	entry.canner = "DIAL";
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	ck_assert_int_eq(number, 1);
	ck_assert_uint_eq(jar_set_count(&jars), 7);
	entry.jars[0].n = 2;
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	ck_assert_int_eq(number, 2);
	ck_assert(!jar_set_has(&jars, 7) && jar_set_has(&jars, 8) && jar_set_has(&jars, 9));
	ck_assert(household_note_batch(db, code, noon, "fine \x1b[31m =1+1", &err));
	struct batch_view view = view_of(code);
	ck_assert_str_eq(view.record.title, "Pickled beets");
	ck_assert_int_eq(view.record.jars[JAR_FILLED], 9);
	ck_assert_uint_eq(view.loads_n, 2);
	ck_assert_str_eq(view.loads[0].canner, "dial");
	ck_assert_int_eq(view.loads[0].said.process_s, 2100);
	ck_assert_int_eq(view.loads[0].said.breaks, BREAKS_NONE);
	ck_assert_uint_eq(view.jars_n, 9);
	ck_assert_uint_eq(view.lots_n, 1);
	ck_assert_str_eq(view.lots[0], "lids 'wide lids, spring'");
	ck_assert_uint_eq(view.events_n, 4);
	/* Kept exactly, control characters and all. */
	ck_assert_str_eq(json_string_value(json_object_get(view.events[3].body, "text")),
			 "fine \x1b[31m =1+1");
	batch_view_release(&view);
}
END_TEST

START_TEST(an_amended_load_is_judged_and_both_entries_stay)
{
	char code[BATCH_CODE_MAX];
	int number;
	struct jar_set jars;
	start_one(code);
	struct batch_load_entry entry = seven_pints(LOAD_PROCESSED);
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	struct load_amendment amendment = {.number = 1,
					   .at = noon,
					   .said = entry.said,
					   .outcome = LOAD_UNDER_PROCESSED,
					   .why_outcome = "too short",
					   .why = "clock"};
	amendment.said.process_s = 60;
	ck_assert(household_amend_load(db, code, &amendment, &err));
	struct batch_view view = view_of(code);
	ck_assert_int_eq(view.loads[0].outcome, LOAD_UNDER_PROCESSED);
	ck_assert_str_eq(view.loads[0].why, "too short");
	ck_assert_int_eq(view.loads[0].said.process_s, 60);
	ck_assert_int_eq(view.loads[0].out.ms, entry.out.ms);
	ck_assert_int_eq(view.record.loads_short, 1);
	ck_assert_uint_eq(view.events_n, 3);
	int64_t correction = view.events[2].id;
	batch_view_release(&view);
	/* Taken back, the load is as it was, and the correction is shown as taken back. */
	ck_assert(log_begin(db, &err));
	ck_assert(log_end(db, log_undo(db, correction, noon, &err), &err));
	view = view_of(code);
	ck_assert_int_eq(view.loads[0].outcome, LOAD_PROCESSED);
	ck_assert_int_eq(view.loads[0].said.process_s, 2100);
	ck_assert(view.events[2].undone);
	ck_assert(!view.events[1].undone);
	batch_view_release(&view);
	amendment.number = 9;
	ck_assert(!household_amend_load(db, code, &amendment, &err));
}
END_TEST

/* What the file of a recorder leaves of load 1. */
static void record(const char *code, enum load_outcome leaves, const char *why)
{
	json_t *found = json_pack("{s:s}", "outcome", why);
	const struct load_record record = {.at = noon,
					   .number = 1,
					   .file = "load.csv",
					   .rows = 800,
					   .shown = "held",
					   .outcome = leaves,
					   .why = why,
					   .found = found};
	ck_assert(household_record_load(db, code, &record, &err));
	json_decref(found);
}

/* From every state of a load, with every record before, a record leaves nothing better. */
START_TEST(a_record_only_makes_a_load_stricter)
{
	static const enum load_outcome all[] = {LOAD_PROCESSED, LOAD_UNCLEAR, LOAD_UNDER_PROCESSED};
	const int said = _i % 3, first = _i / 3 % 3, second = _i / 9 % 3, amended = _i / 27;
	int number, worst = first > second ? first : second;
	char code[BATCH_CODE_MAX];
	struct jar_set jars;
	start_one(code);
	struct batch_load_entry entry = seven_pints(all[said]);
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	record(code, all[first], "first");
	record(code, all[second], "second");
	struct batch_view view = view_of(code);
	ck_assert_int_eq(view.loads[0].outcome, all[said > worst ? said : worst]);
	ck_assert(view.loads[0].recorded);
	ck_assert_int_eq(view.loads[0].record, all[worst]);
	ck_assert_str_eq(view.loads[0].record_why, second > first ? "second" : "first");
	/* What was said of the load is still there. */
	ck_assert_int_eq(view.loads[0].said.process_s, entry.said.process_s);
	batch_view_release(&view);
	const struct load_amendment amendment = {.number = 1,
						 .at = noon,
						 .said = entry.said,
						 .outcome = all[amended],
						 .why_outcome = "",
						 .why = "clock"};
	ck_assert(household_amend_load(db, code, &amendment, &err));
	ck_assert(household_rebuild(db, &err));
	view = view_of(code);
	ck_assert_int_eq(view.loads[0].outcome, all[amended > worst ? amended : worst]);
	batch_view_release(&view);
}
END_TEST

START_TEST(a_record_is_of_a_load_that_was_heated)
{
	char code[BATCH_CODE_MAX];
	int number;
	struct jar_set jars;
	struct batch_start cold = beginning();
	cold.keep = "freezer";
	start(&cold, code);
	struct batch_load_entry entry = seven_pints(LOAD_COLD);
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	json_t *found = json_object();
	struct load_record record = {
	    .at = noon, .number = 1, .file = "a", .shown = "held", .why = "", .found = found};
	ck_assert(!household_record_load(db, code, &record, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	record.number = 2;
	ck_assert(!household_record_load(db, code, &record, &err));
	json_decref(found);
}
END_TEST

START_TEST(what_speaks_against_a_batch_holds_it_and_nothing_frees_it)
{
	char code[BATCH_CODE_MAX];
	start_one(code);
	ck_assert(household_ph_batch(db, code, noon, 3900, "4.0,7.0", true, &err));
	struct batch_view view = view_of(code);
	ck_assert(!view.record.held);
	batch_view_release(&view);
	ck_assert(household_ph_batch(db, code, noon, 4700, NULL, false, &err));
	ck_assert(household_ph_batch(db, code, noon, 3900, "4.0,7.0", true, &err));
	view = view_of(code);
	ck_assert(view.record.held);
	batch_view_release(&view);
	start_one(code);
	struct batch_amendment amendment = {.at = noon,
					    .why = "measured again",
					    .elevation_stated = true,
					    .elevation_mft = 7000000,
					    .holds = false};
	ck_assert(household_amend_batch(db, code, &amendment, &err));
	view = view_of(code);
	ck_assert(view.record.held);
	ck_assert_int_eq(view.record.elevation_mft, 7000000);
	ck_assert_str_eq(view.record.title, "Pickled beets");
	batch_view_release(&view);
}
END_TEST

START_TEST(seals_of_both_sorts_are_one_entry_or_none)
{
	char code[BATCH_CODE_MAX];
	int number;
	struct jar_set jars;
	start_one(code);
	struct batch_load_entry entry = seven_pints(LOAD_PROCESSED);
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	struct seal_entry seal = {.at = noon, .method = "press"};
	ck_assert(jar_set_parse("1-6", &seal.sealed) && jar_set_parse("8", &seal.failed));
	ck_assert(!household_seal(db, code, &seal, &err)); /* there is no jar 8 */
	struct batch_view view = view_of(code);
	ck_assert_int_eq(view.record.jars[JAR_FILLED], 7);
	batch_view_release(&view);
	ck_assert(jar_set_parse("7", &seal.failed));
	memset(&err, 0, sizeof err);
	ck_assert(household_seal(db, code, &seal, &err));
	view = view_of(code);
	ck_assert_int_eq(view.record.jars[JAR_SEALED], 6);
	ck_assert_int_eq(view.record.jars[JAR_UNSEALED], 1);
	batch_view_release(&view);
}
END_TEST

START_TEST(jars_of_an_earlier_batch_go_in_if_they_are_there)
{
	char first[BATCH_CODE_MAX], code[BATCH_CODE_MAX];
	int number;
	struct jar_set jars;
	start_one(first);
	struct batch_load_entry entry = seven_pints(LOAD_PROCESSED);
	ck_assert(household_add_load(db, first, &entry, &number, &jars, &err));
	static const char *const wrong[] = {"26-001",    "26-001-08", "26-001-x",
					    "26-009-01", "-",         ""};
	struct batch_start next = beginning();
	next.from_n = 1;
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
		next.from[0] = wrong[i];
		memset(&err, 0, sizeof err);
		ck_assert(!household_start_batch(db, &next, code, &err));
		ck_assert_int_eq((int)err.kind, ERROR_USAGE);
	}
	next.from[0] = "26-001-1-2";
	start(&next, code);
	struct batch_view view = view_of(code);
	ck_assert_uint_eq(view.from_n, 2);
	ck_assert_str_eq(view.from[1], "26-001-02");
	batch_view_release(&view);
}
END_TEST

START_TEST(the_weakest_vinegar_counts)
{
	int32_t strength;
	static const char *const lots[] = {"lids", "strong", "weak", "unsaid"};
	add_lot("lids", "lids", 0);
	add_lot("vinegar", "strong", 6000);
	add_lot("vinegar", "weak", 5000);
	add_lot("vinegar", "unsaid", 0);
	ck_assert(household_vinegar_lots(db, lots, 1, &strength, &err));
	ck_assert_int_eq(strength, 0);
	ck_assert(household_vinegar_lots(db, lots, 3, &strength, &err));
	ck_assert_int_eq(strength, 5000);
	ck_assert(household_vinegar_lots(db, lots, 4, &strength, &err));
	ck_assert_int_eq(strength, -1);
	static const char *const missing[] = {"none"};
	ck_assert(!household_vinegar_lots(db, missing, 1, &strength, &err));
}
END_TEST

/* Between two tests a gauge was at worst as the worse of them shows. */
START_TEST(a_gauge_is_as_bad_as_the_tests_around_a_day)
{
	struct load_canner canner;
	int64_t id = add_canner("dial");
	ck_assert(household_load_canner(db, "dial", day, &canner, &err));
	ck_assert(!canner.gauge.tested && !canner.gauge.gauge.known);
	ck_assert_int_eq(canner.canner.holds_quarts, 7);
	test_gauge(id, "2025-05-01", 11000, 11500);
	ck_assert(household_load_canner(db, "dial", day, &canner, &err));
	ck_assert(canner.gauge.tested);
	ck_assert_int_eq(canner.gauge.on.year, 2025);
	ck_assert_int_eq(canner.gauge.gauge.high_mpsi, -500);
	ck_assert_int_eq(canner.gauge.gauge.error_mpsi, 500);
	test_gauge(id, "2026-10-01", 14000, 11000);
	ck_assert(household_load_canner(db, "dial", day, &canner, &err));
	ck_assert_int_eq(canner.gauge.on.year, 2025);
	ck_assert_int_eq(canner.gauge.gauge.high_mpsi, 3000);
	ck_assert_int_eq(canner.gauge.gauge.error_mpsi, 3000);
	const struct date before = {2025, 1, 1};
	ck_assert(household_load_canner(db, "dial", before, &canner, &err));
	ck_assert(!canner.gauge.tested && canner.gauge.gauge.known);
	ck_assert(!household_load_canner(db, "other", day, &canner, &err));
}
END_TEST

START_TEST(the_list_is_filtered)
{
	char code[BATCH_CODE_MAX];
	struct batch_list list;
	start_one(code);
	struct batch_start other = beginning();
	other.title = "Plums";
	other.food = NULL;
	other.day.year = 2025;
	start(&other, code);
	ck_assert(household_finish_batch(db, code, noon, &err));
	ck_assert(!household_finish_batch(db, code, noon, &err));
	memset(&err, 0, sizeof err);
	static const struct {
		struct batch_filter filter;
		size_t n;
	} cases[] = {{{0, NULL, false}, 2},   {{2025, NULL, false}, 1}, {{2024, NULL, false}, 0},
		     {{0, "BEET", false}, 1}, {{0, NULL, true}, 1},     {{2025, NULL, true}, 0}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		ck_assert(household_batch_list(db, &cases[i].filter, &list, &err));
		ck_assert_uint_eq(list.records_n, cases[i].n);
		batch_list_release(&list);
	}
}
END_TEST

START_TEST(reading_makes_no_file)
{
	char none[160];
	struct household *empty;
	struct batch_view view;
	struct batch_list list;
	const struct batch_filter all = {0, NULL, false};
	snprintf(none, sizeof none, "%s/none.db", folder);
	ck_assert(household_open(none, HOUSEHOLD_READ, &empty, &err));
	ck_assert(!household_batch(empty, "26-001", &view, &err));
	ck_assert_int_eq((int)err.kind, ERROR_USAGE);
	ck_assert(household_batch_list(empty, &all, &list, &err));
	ck_assert_uint_eq(list.records_n, 0);
	household_close(empty);
	ck_assert_int_ne(access(none, F_OK), 0);
}
END_TEST

/* Rebuilding from the events gives the same state. */
START_TEST(a_rebuilt_log_shows_the_same)
{
	char code[BATCH_CODE_MAX];
	int number;
	struct jar_set jars;
	start_one(code);
	struct batch_load_entry entry = seven_pints(LOAD_PROCESSED);
	ck_assert(household_add_load(db, code, &entry, &number, &jars, &err));
	struct load_amendment amendment = {.number = 1,
					   .at = noon,
					   .started_ms = noon.ms - 60000,
					   .said = entry.said,
					   .outcome = LOAD_UNCLEAR,
					   .why_outcome = "x",
					   .why = "y"};
	ck_assert(household_amend_load(db, code, &amendment, &err));
	ck_assert(household_ph_batch(db, code, noon, 4700, NULL, false, &err));
	ck_assert(log_begin(db, &err));
	ck_assert(log_end(db, state_rebuild(db, &err), &err));
	struct batch_view view = view_of(code);
	ck_assert(view.record.held);
	ck_assert_int_eq(view.loads[0].outcome, LOAD_UNCLEAR);
	ck_assert_int_eq(view.loads[0].started.ms, noon.ms - 60000);
	ck_assert_int_eq(view.record.jars[JAR_FILLED], 7);
	batch_view_release(&view);
}
END_TEST

/* --- What a cook reads --- */

static char *gauge_words(const struct gauge_view *gauge)
{
	static char text[4096];
	struct load_rules rules;
	struct source_list sources = {.sources_n = 0};
	memset(text, 0, sizeof text);
	ck_assert(load_rules_find(reference_edition(), reference_tables_edition(), &rules, &err));
	FILE *out = fmemopen(text, sizeof text, "w");
	ck_assert_ptr_nonnull(out);
	const struct page page = {.out = out, .width = 1000};
	gauge_text(&page, &rules, gauge, &sources);
	ck_assert_int_eq(fclose(out), 0);
	ck_assert_int_eq(gauge_is_unfit(&rules, gauge),
			 gauge->dial && gauge->record->gauge.error_mpsi > 2000);
	return text;
}

/* AIB 539 (2015) guide 1, p. 1-20: tested each year, adjusted for up to 2 psi, else replaced. */
START_TEST(a_gauge_that_is_off_is_told_of)
{
	struct gauge_record record = {
	    .tested = true, .on = {2025, 9, 21}, .gauge = {true, 1500, 1500}};
	struct gauge_view gauge = {
	    .dial = true, .canner = "dial", .record = &record, .today = day, .psi = 11};
	const char *text = gauge_words(&gauge);
	ck_assert_ptr_nonnull(strstr(text, "reads 1.5 psi high: hold it at 12.5 psi or more"));
	ck_assert_ptr_null(strstr(text, "over a year ago"));
	record.on.day = 20; /* a year and a day */
	ck_assert_ptr_nonnull(
	    strstr(gauge_words(&gauge), "last tested on 2025-09-20, over a year"));
	record.gauge = (struct load_gauge){true, -2000, 2000};
	ck_assert_ptr_null(strstr(gauge_words(&gauge), "high"));
	record.gauge = (struct load_gauge){true, -2001, 2001};
	ck_assert_ptr_nonnull(strstr(gauge_words(&gauge), "have the gauge replaced"));
	record = (struct gauge_record){.tested = false};
	ck_assert_ptr_nonnull(strstr(gauge_words(&gauge), "has no test on record"));
	gauge.dial = false;
	ck_assert_str_eq(gauge_words(&gauge), "");
}
END_TEST

START_TEST(what_came_from_outside_is_shown_harmlessly)
{
	char shown[64], small[8];
	ck_assert_str_eq(text_harmless("a\x1b[31mb", shown, sizeof shown), "a?[31mb");
	/* A mark that turns the writing direction, U+202E, byte by byte. */
	static const char turned[] = {(char)0xe2, (char)0x80, (char)0xae, 'x', '\0'};
	ck_assert_str_eq(text_harmless(turned, shown, sizeof shown), "?x");
	ck_assert_str_eq(text_harmless("\xff", shown, sizeof shown), "?");
	ck_assert_str_eq(text_harmless("\xc3\xa9 fine", shown, sizeof shown), "\xc3\xa9 fine");
	ck_assert_str_eq(text_harmless("abcdefghij", small, sizeof small), "abcdefg");
	struct jar_set jars;
	ck_assert(jar_set_parse("1-3,7", &jars));
	ck_assert_str_eq(jar_codes(shown, sizeof shown, "26-041", &jars),
			 "26-041-01 to 26-041-03, 26-041-07");
}
END_TEST

/* --- Decisions read back --- */

static void same_again(const struct request *rq)
{
	const struct reference *ref = reference_edition();
	struct decision first, second;
	struct request back;
	decide(ref, rq, &first);
	json_t *json = decision_json(ref, rq, &first);
	char *text = json_dumps(json, JSON_COMPACT | JSON_SORT_KEYS);
	json_t *stored = json_loads(text, 0, NULL);
	ck_assert(decision_request(ref, stored, &back));
	decide(ref, &back, &second);
	json_t *again = decision_json(ref, &back, &second);
	/* What to choose from belongs to the words typed, which are not kept. */
	json_object_del(json, "candidates");
	json_object_del(again, "candidates");
	if (rq->food.kind == MATCH_ONE)
		ck_assert(json_equal(json, again));
	free(text);
	json_decref(stored);
	json_decref(json);
	json_decref(again);
}

START_TEST(a_decision_read_back_is_decided_the_same)
{
	const struct reference *ref = reference_edition();
	for (size_t i = 0; i < ref->foods_n; i++)
		for (int canner = 0; canner < CANNER_COUNT; canner++)
			for (int variant = 0; variant < 5; variant++) {
				struct request rq = {
				    .food = {.kind = MATCH_ONE,
					     .foods = {&ref->foods[i]},
					     .foods_n = 1},
				    .canner_choice = CHOICE_CANNER,
				    .canner = (enum canner)canner,
				    .jar = {.stated = true, .jar = (enum jar)(variant + 1)},
				    .pack = variant % 2 ? PACK_HOT : PACK_RAW,
				    .elevation_stated = true,
				    .elevation_mft = 2887140 + variant,
				    .vinegar = (enum vinegar_choice)variant,
				    .vinegar_milli_percent = 5000 + variant,
				    .acid = (enum acid)(variant + 1),
				    .ph_stated = variant > 2,
				    .ph_milli = 3900 + variant,
				    .jars = (enum jars_choice)(variant % 3),
				    .holds_quarts = variant,
				};
				if (rq.vinegar != VINEGAR_LABELLED)
					rq.vinegar_milli_percent = 0;
				if (variant == 4)
					rq.jar = (struct jar_choice){.stated = true,
								     .by_volume = true,
								     .volume_nl = 488000001};
				same_again(&rq);
			}
}
END_TEST

START_TEST(what_is_no_decision_is_refused)
{
	struct request rq;
	json_t *empty = json_object();
	ck_assert(!decision_request(reference_edition(), empty, &rq));
	ck_assert(!decision_request(reference_edition(), NULL, &rq));
	json_decref(empty);
}
END_TEST

static Suite *batch_suite(void)
{
	Suite *suite = suite_create("batch");
	TCase *tcase = tcase_create("household");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, codes_count_up_within_a_year);
	tcase_add_test(tcase, a_code_is_never_given_out_again);
	tcase_add_test(tcase, what_is_not_tested_is_not_started_for_the_shelf);
	tcase_add_test(tcase, a_batch_is_shown_as_it_was_logged);
	tcase_add_test(tcase, an_amended_load_is_judged_and_both_entries_stay);
	tcase_add_loop_test(tcase, a_record_only_makes_a_load_stricter, 0, 81);
	tcase_add_test(tcase, a_record_is_of_a_load_that_was_heated);
	tcase_add_test(tcase, what_speaks_against_a_batch_holds_it_and_nothing_frees_it);
	tcase_add_test(tcase, seals_of_both_sorts_are_one_entry_or_none);
	tcase_add_test(tcase, jars_of_an_earlier_batch_go_in_if_they_are_there);
	tcase_add_test(tcase, the_weakest_vinegar_counts);
	tcase_add_test(tcase, a_gauge_is_as_bad_as_the_tests_around_a_day);
	tcase_add_test(tcase, the_list_is_filtered);
	tcase_add_test(tcase, reading_makes_no_file);
	tcase_add_test(tcase, a_rebuilt_log_shows_the_same);
	suite_add_tcase(suite, tcase);
	TCase *words = tcase_create("words");
	tcase_add_test(words, a_gauge_that_is_off_is_told_of);
	tcase_add_test(words, what_came_from_outside_is_shown_harmlessly);
	suite_add_tcase(suite, words);
	TCase *decisions = tcase_create("decisions");
	tcase_add_test(decisions, a_decision_read_back_is_decided_the_same);
	tcase_add_test(decisions, what_is_no_decision_is_refused);
	suite_add_tcase(suite, decisions);
	return suite;
}

SUITE_MAIN(batch_suite())
