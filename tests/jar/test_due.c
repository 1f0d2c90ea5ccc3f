/* What is due, and its calendar read by another program's parser: libical. Invented data. */
#include <libical/ical.h>
#include <time.h>

#include "../log_fixture.h"
#include "jarwright/library.h"
#include "jarwright/render_shelf.h"
#include "suites.h"

/* 2026-09-21 14:13 UTC. */
static const int64_t noon = INT64_C(1790000000000) / 60000 * 60000;
static struct log_fixture f;
static struct jar_groups groups;
static struct gauges_due gauges;
static struct shelf_list shelf;
static struct due_list due;

static void setup(void)
{
	setenv("TZ", "UTC", 1);
	tzset();
	fixture_open(&f);
	groups = (struct jar_groups){0};
	shelf = (struct shelf_list){0};
	due = (struct due_list){0};
}

static void look_away(void)
{
	due_list_release(&due);
	shelf_list_release(&shelf);
	jar_groups_release(&groups);
}

static void teardown(void)
{
	look_away();
	fixture_close(&f);
}

static void look(int64_t now, int days)
{
	const struct shelf_filter any = {.before_day = INT64_MAX};
	const struct instant at = {now, 0};
	look_away();
	if (!household_shelf(f.db, &any, &groups, &f.err) ||
	    !household_gauges(f.db, &gauges, &f.err) ||
	    !shelf_list_make(&groups, at, &shelf, &f.err) ||
	    !due_list_make(&shelf, &gauges, at, days, &due, &f.err))
		ck_abort_msg("%s", f.err.text);
}

static const struct due *only(enum due_kind kind)
{
	const struct due *found = NULL;
	for (size_t i = 0; i < due.items_n; i++)
		if (due.items[i].kind == kind) {
			ck_assert_msg(!found, "two of kind %d", (int)kind);
			found = &due.items[i];
		}
	ck_assert_msg(found != NULL, "none of kind %d", (int)kind);
	return found;
}

static int64_t canner(const char *tested)
{
	int64_t id = log_must(&f, "canner-add", 0, noon,
			      json_pack("{s:s, s:s}", "name", "the big one", "kind", "dial-gauge"));
	if (tested)
		log_must(&f, "gauge-test", id, noon,
			 json_pack("{s:s, s:[{s:i, s:i}]}", "tested", tested, "readings",
				   "gauge_mpsi", 10000, "master_mpsi", 10000));
	return id;
}

START_TEST(a_gauge_is_due_a_year_after_its_test)
{
	/* USDA AIB 539 (2015) guide 1 p. 1-20: check dial gauges before use each year. */
	char day[DATE_SIZE];
	canner("2025-10-21");
	look(noon, 30);
	ck_assert_str_eq(date_text(only(DUE_GAUGE)->day, day), "2026-10-21");
	look(noon, 29);
	ck_assert_uint_eq(due.items_n, 0);
}
END_TEST

START_TEST(a_gauge_never_tested_is_due_at_once)
{
	canner(NULL);
	log_must(&f, "canner-add", 0, noon,
		 json_pack("{s:s, s:s}", "name", "pot", "kind", "weighted-gauge"));
	look(noon, 1);
	ck_assert(only(DUE_GAUGE)->now);
	ck_assert_uint_eq(due.items_n, 1);
}
END_TEST

static int64_t mixed_batch(const char *title)
{
	int64_t id = day_start(&f, &(struct day){.number = 41, .at = noon, .title = title});
	day_load(&f, id, 7, "pint", "processed", noon);
	day_seal(&f, id, "1-4", true, noon + 13 * HOUR_MS);
	day_seal(&f, id, "5", false, noon + 13 * HOUR_MS);
	day_move(&f, id, "1", "opened", NULL, noon + 14 * HOUR_MS);
	day_move(&f, id, "2", "shelf", "cellar", noon + 14 * HOUR_MS);
	return id;
}

START_TEST(each_kind_is_due_when_published)
{
	char text[64];
	mixed_batch("Beets");
	canner(NULL);
	look(noon + 15 * HOUR_MS, 400);
	ck_assert_uint_eq(due.items_n, 5);
	/* AIB 539 (2015) guide 1 p. 1-25 and 1-26: seals 12 to 24 hours after, unsealed jars 24. */
	ck_assert_int_eq(only(DUE_SEAL)->from_ms, noon + 12 * HOUR_MS);
	ck_assert_int_eq(only(DUE_SEAL)->until_ms, noon + 24 * HOUR_MS);
	ck_assert_int_eq(only(DUE_CHILL)->until_ms, noon + 24 * HOUR_MS);
	/* Opened on the 22nd: 3 days (USDA FSIS). Put up on the 21st: 12 months. */
	ck_assert_str_eq(date_text(only(DUE_EAT)->day, text), "2026-09-25");
	ck_assert_str_eq(date_text(only(DUE_BEST)->day, text), "2027-09-21");
	/* Jars in different places are one entry. */
	ck_assert_str_eq(jar_set_text(&only(DUE_BEST)->jars, text, sizeof text), "2-4");
	for (size_t i = 1; i < due.items_n; i++)
		ck_assert(date_days(due.items[i - 1].day) <= date_days(due.items[i].day));
}
END_TEST

/* --- The calendar --- */

static struct {
	icalcomponent *(*parse)(const char *text);
	int (*errors)(icalcomponent *component);
	icalcomponent *(*first)(icalcomponent *component, icalcomponent_kind kind);
	icalcomponent *(*next)(icalcomponent *component, icalcomponent_kind kind);
	const char *(*uid)(icalcomponent *component);
	const char *(*summary)(icalcomponent *component);
	struct icaltimetype (*start)(icalcomponent *component);
	struct icaltimetype (*end)(icalcomponent *component);
	time_t (*seconds)(const struct icaltimetype time);
	bool (*valid)(icalcomponent *component);
	void (*release)(icalcomponent *component);
} ical;

static void open_ical(void)
{
	const struct library_function functions[] = {
	    {"icalparser_parse_string", &ical.parse},
	    {"icalcomponent_count_errors", &ical.errors},
	    {"icalcomponent_get_first_component", &ical.first},
	    {"icalcomponent_get_next_component", &ical.next},
	    {"icalcomponent_get_uid", &ical.uid},
	    {"icalcomponent_get_summary", &ical.summary},
	    {"icalcomponent_get_dtstart", &ical.start},
	    {"icalcomponent_get_dtend", &ical.end},
	    {"icaltime_as_timet", &ical.seconds},
	    {"icalrestriction_check", &ical.valid},
	    {"icalcomponent_free", &ical.release},
	};
	ck_assert_msg(library_open("libical.so.3", functions, sizeof functions / sizeof *functions),
		      "libical.so.3 is missing; 'make deps' installs it");
}

static char *calendar(int64_t now)
{
	char *text = NULL;
	size_t n;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	due_calendar(out, &due, (struct instant){now, 0});
	ck_assert_int_eq(fclose(out), 0);
	return text;
}

/* RFC 5545 3.1: lines of at most 75 octets, each ended by CR LF. */
static void check_lines(const char *text)
{
	while (*text) {
		size_t n = strcspn(text, "\r\n");
		ck_assert_uint_le(n, 75);
		ck_assert(text[n] == '\r' && text[n + 1] == '\n');
		text += n + 2;
	}
}

START_TEST(another_parser_reads_the_calendar)
{
	static const char title[] =
	    "Beets; \"red\", from C:\\garden, \xe2\x80\xae\xe2\x80\xac\x1b[31m"
	    "R\xc3\xbc"
	    "ben R\xc3\xbc"
	    "ben R\xc3\xbc"
	    "ben R\xc3\xbc"
	    "ben R\xc3\xbc"
	    "ben R\xc3\xbc"
	    "ben R\xc3\xbc"
	    "ben";
	open_ical();
	mixed_batch(title);
	canner(NULL);
	look(noon + 15 * HOUR_MS, 400);
	char *text = calendar(noon + 15 * HOUR_MS);
	check_lines(text);
	icalcomponent *root = ical.parse(text);
	ck_assert_ptr_nonnull(root);
	ck_assert_int_eq(ical.errors(root), 0);
	ck_assert(ical.valid(root));
	int n = 0;
	for (icalcomponent *event = ical.first(root, ICAL_VEVENT_COMPONENT); event;
	     event = ical.next(root, ICAL_VEVENT_COMPONENT), n++) {
		const struct due *item = &due.items[n];
		char words[2048];
		ck_assert_str_eq(ical.summary(event), due_words(item, words, sizeof words));
		const struct icaltimetype start = ical.start(event);
		ck_assert_int_eq(start.is_date, item->until_ms == 0);
		if (item->kind == DUE_SEAL) {
			ck_assert_int_eq(ical.seconds(start), item->from_ms / 1000);
			ck_assert_int_eq(ical.seconds(ical.end(event)), item->until_ms / 1000);
		}
		if (!item->until_ms)
			ck_assert_int_eq(start.year * 10000 + start.month * 100 + start.day,
					 item->day.year * 10000 + item->day.month * 100 +
					     item->day.day);
	}
	ck_assert_int_eq(n, (int)due.items_n);
	ck_assert_ptr_nonnull(strstr(text, "SUMMARY:"));
	ck_assert_ptr_null(strchr(text, '\x1b'));
	ical.release(root);
	free(text);
}
END_TEST

/* The UIDs in their order, one a line. */
static void uids(const char *text, char *out, size_t size)
{
	*out = '\0';
	for (const char *at = strstr(text, "\r\nUID:"); at; at = strstr(at + 1, "\r\nUID:")) {
		size_t n = strlen(out);
		/* A folded UID goes on in the next line. */
		const char *end = strstr(at + 2, "\r\nDTSTAMP");
		ck_assert_ptr_nonnull(end);
		snprintf(out + n, size - n, "%.*s\n", (int)(end - at - 6), at + 6);
	}
}

START_TEST(uids_stay_and_differ)
{
	char before[2048], after[2048];
	int64_t id = mixed_batch("Beets");
	canner(NULL);
	look(noon + 15 * HOUR_MS, 400);
	char *text = calendar(noon + 15 * HOUR_MS);
	uids(text, before, sizeof before);
	free(text);
	/* Another jar moves, a note is made, time goes by, the state is worked out anew. */
	day_move(&f, id, "3", "shelf", "attic", noon + 16 * HOUR_MS);
	ck_assert(log_begin(f.db, &f.err));
	ck_assert(log_end(f.db, state_rebuild(f.db, &f.err), &f.err));
	look(noon + 17 * HOUR_MS, 400);
	text = calendar(noon + 17 * HOUR_MS);
	uids(text, after, sizeof after);
	free(text);
	ck_assert_str_eq(before, after);
	ck_assert_int_gt((int)strlen(before), 100);
	for (const char *line = before; *line; line = strchr(line, '\n') + 1) {
		size_t n = strcspn(line, "\n") + 1;
		ck_assert_ptr_null(memmem(line + n, strlen(line + n), line, n));
	}
}
END_TEST

Suite *due_suite(void)
{
	Suite *suite = suite_create("due");
	TCase *tcase = tcase_create("due");
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_test(tcase, a_gauge_is_due_a_year_after_its_test);
	tcase_add_test(tcase, a_gauge_never_tested_is_due_at_once);
	tcase_add_test(tcase, each_kind_is_due_when_published);
	tcase_add_test(tcase, another_parser_reads_the_calendar);
	tcase_add_test(tcase, uids_stay_and_differ);
	suite_add_tcase(suite, tcase);
	return suite;
}
