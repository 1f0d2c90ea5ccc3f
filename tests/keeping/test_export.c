/* The exports: everything in the JSON exactly, nothing in the tables that does harm. */
#include "devices.h"
#include "jarwright/household_recipes.h"
#include "jarwright/text.h"
#include "suites.h"

static struct log_fixture a, b;

static void setup(void)
{
	new_device(&a);
	new_device(&b);
}

static void teardown(void)
{
	fixture_close(&a);
	fixture_close(&b);
}

static void import_text(struct log_fixture *f, const char *text, struct intake_report *report)
{
	/* Only read. */ // NOLINTNEXTLINE(performance-no-int-to-ptr)
	FILE *in = fmemopen((void *)(uintptr_t)text, strlen(text), "r");
	ck_assert_ptr_nonnull(in);
	memset(&f->err, 0, sizeof f->err);
	if (!household_import(f->db, in, "x.json", false, NULL, report, &f->err))
		ck_abort_msg("%s", f->err.text);
	ck_assert_int_eq(fclose(in), 0);
}

START_TEST(there_and_back_gives_the_same_bytes)
{
	uint32_t seed = (uint32_t)_i + 7;
	struct intake_report report;
	bool already;
	static const char recipe[] = "1 cup plums, \"ripe\"\n# \\ and \t tab\n";
	ck_assert(household_add_recipe(a.db, "Röster", SYSTEM_US, recipe, sizeof recipe - 1,
				       &already, &a.err));
	const struct kitchen_change here = {true, 3000000, "3000 ft", UNITS_METRIC};
	ck_assert(household_change_kitchen(a.db, &here, &a.err));
	ck_assert(household_name_device(a.db, "phone", &a.err));
	random_days(&a, &seed, 60);
	char *first = exported(&a), *tables = tables_of(&a);
	import_text(&b, first, &report);
	ck_assert_int_gt(report.events_new, 20);
	char *second = exported(&b), *tables_there = tables_of(&b);
	ck_assert_str_eq(first, second);
	ck_assert_str_eq(tables, tables_there);
	must_be_sound(&b);
	/* Once more: all of it is known. */
	int64_t n = report.events_new;
	import_text(&b, first, &report);
	ck_assert_int_eq(report.events_new, 0);
	ck_assert_int_eq(report.events_known, n);
	ck_assert_int_eq(report.recipes_known, 1);
	char *third = exported(&b);
	ck_assert_str_eq(first, third);
	free(first), free(second), free(third), free(tables), free(tables_there);
}
END_TEST

/* Nothing that a terminal obeys but the ends of lines; tables have CR LF. */
static void must_be_harmless(const char *text, const char *allowed)
{
	for (size_t n; *text; text += n) {
		n = text_utf8_length(text);
		ck_assert_uint_gt(n, 0);
		ck_assert_msg(!text_is_obeyed(text, n) || strchr(allowed, *text), "%.20s", text);
	}
}

START_TEST(what_is_nasty_is_kept_and_shown_harmlessly)
{
	char uuid[UUID_TEXT_SIZE];
	uint8_t bytes[UUID_SIZE];
	struct intake_report report;
	int64_t batch = day_start(&a, &(struct day){.number = 1, .at = NOON_MS});
	ck_assert(event_uuid(a.db, batch, bytes, &a.err));
	hex_text(bytes, UUID_SIZE, uuid);
	day_load(&a, batch, 20, "pint", "processed", NOON_MS);
	int64_t recall = log_must(&a, "recall-open", 0, NOON_MS,
				  json_pack("{s:i, s:i, s:s, s:s, s:[{s:s, s:s}]}", "year", 2026,
					    "number", 1, "reason", "batch", "what", "=1+1", "jars",
					    "batch", uuid, "jars", "1-20"));
	for (size_t i = 0; i < nasty_n; i++) {
		char jar[8];
		snprintf(jar, sizeof jar, "%zu", i + 1);
		log_must(&a, "batch-note", batch, NOON_MS, json_pack("{s:s}", "text", nasty[i]));
		log_must(&a, "recall-record", recall, NOON_MS,
			 json_pack("{s:s, s:s, s:s, s:s}", "batch", uuid, "jars", jar,
				   "disposition", "told", "note", nasty[i]));
	}
	char *json = exported(&a), *tables = tables_of(&a);
	must_be_harmless(json, "\n");
	must_be_harmless(tables, "\r\n");
	for (const char *at = tables; *at; at++)
		if (at > tables && (at[-1] == ',' || at[-1] == '\n' || at[-1] == '"'))
			ck_assert_msg(!strchr("=+@", *at) && (*at != '-' || at[1] != '2'), "%.20s",
				      at);
	ck_assert_ptr_nonnull(strstr(tables, "\"'=HYPERLINK(\"\"http"));
	ck_assert_ptr_nonnull(strstr(tables, ",'-2+3") ? tables : strstr(tables, "\"'-2+3\""));
	import_text(&b, json, &report);
	for (size_t i = 0; i < nasty_n; i++) {
		sqlite3_stmt *query;
		ck_assert(store_prepare(
		    b.db, "SELECT count(*) FROM recall_jar WHERE note = ?1 AND number = ?2", &query,
		    &b.err));
		sqlite3_bind_text(query, 1, nasty[i], -1, SQLITE_STATIC);
		sqlite3_bind_int(query, 2, (int)i + 1);
		ck_assert_int_eq(sqlite3_step(query), SQLITE_ROW);
		ck_assert_int_eq(sqlite3_column_int(query, 0), 1);
		sqlite3_finalize(query);
	}
	free(json), free(tables);
}
END_TEST

START_TEST(a_file_is_not_written_over)
{
	char path[160];
	day_start(&a, &(struct day){.number = 1, .at = NOON_MS});
	snprintf(path, sizeof path, "%s/all.json", a.folder);
	ck_assert(household_export_file(a.db, path, &a.err));
	ck_assert(!household_export_file(a.db, path, &a.err));
	ck_assert_int_eq((int)a.err.kind, ERROR_USAGE);
	snprintf(path, sizeof path, "%s/tables", a.folder);
	ck_assert(household_export_csv(a.db, path, &a.err));
	ck_assert(!household_export_csv(a.db, path, &a.err));
}
END_TEST

Suite *export_suite(void)
{
	Suite *suite = suite_create("export");
	TCase *single = tcase_create("single");
	tcase_set_timeout(single, 120);
	tcase_add_checked_fixture(single, setup, teardown);
	tcase_add_loop_test(single, there_and_back_gives_the_same_bytes, 0, 6);
	tcase_add_test(single, what_is_nasty_is_kept_and_shown_harmlessly);
	tcase_add_test(single, a_file_is_not_written_over);
	suite_add_tcase(suite, single);
	return suite;
}
