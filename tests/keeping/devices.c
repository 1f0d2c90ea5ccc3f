#include "devices.h"

#include <sys/stat.h>

const char *const nasty[] = {
    "plain",
    "bell \a and escape \x1b[31mred\x1b[0m, \x1b]0;title\a",
    "'; DROP TABLE event; --",
    "=HYPERLINK(\"http://example.invalid\",\"click\")",
    "+1+cmd|' /C calc'!A0",
    "-2+3",
    "@SUM(A1:A9)",
    "\t=1",
    "two\r\nlines, \"quoted\"",
    "right \xe2\x80\xae"
    "tfel\xe2\x80\xac, \xe2\x81\xa6isolated\xe2\x81\xa9, \xd8\x9c",
    "\xc2\x9b"
    "31m C1, \x7f delete",
    "Zwetschgenröster \xf0\x9f\xab\x99",
    "\xef\xbc\x9d"
    "1+1",
};
const size_t nasty_n = sizeof nasty / sizeof *nasty;

uint32_t chance(uint32_t *seed, uint32_t below)
{
	/* Numerical Recipes' linear congruential generator, from memory; its upper bits. */
	*seed = *seed * 1664525U + 1013904223U;
	return (*seed >> 16) % below;
}

/* Any subject of this kind of beginning; 0: there is none. */
static int64_t any_subject(struct log_fixture *f, uint32_t *seed, const char *kind)
{
	char text[160];
	snprintf(text, sizeof text, "SELECT count(*) FROM event WHERE kind = '%s'", kind);
	int n = log_count(f, text);
	if (n == 0)
		return 0;
	snprintf(text, sizeof text,
		 "SELECT id FROM event WHERE kind = '%s' ORDER BY uuid LIMIT 1 OFFSET %u", kind,
		 chance(seed, (uint32_t)n));
	return log_count(f, text);
}

static void uuid_text(struct log_fixture *f, int64_t id, char text[UUID_TEXT_SIZE])
{
	uint8_t uuid[UUID_SIZE];
	ck_assert(event_uuid(f->db, id, uuid, &f->err));
	hex_text(uuid, UUID_SIZE, text);
}

static void start(struct log_fixture *f, uint32_t *seed, int64_t at)
{
	char lot[UUID_TEXT_SIZE], batch[UUID_TEXT_SIZE];
	int64_t some_lot = any_subject(f, seed, "lot-add");
	int64_t earlier = any_subject(f, seed, "batch-start");
	json_t *lots = json_array(), *from = json_array();
	if (some_lot && chance(seed, 2)) {
		uuid_text(f, some_lot, lot);
		json_array_append_new(lots, json_string(lot));
	}
	if (earlier && chance(seed, 3) == 0) {
		uuid_text(f, earlier, batch);
		json_array_append_new(from, json_pack("{s:s, s:s}", "batch", batch, "jars", "1"));
	}
	log_try(f, "batch-start", 0, at,
		json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:s, s:i, s:b, s:o, s:o}", "year",
			  2026, "number", 1 + (int)chance(seed, 40), "day", "2026-09-21", "title",
			  nasty[chance(seed, 2) ? 0 : 11], "food", "pickled-beets", "keep", "shelf",
			  "verdict", "tested", "edition", "2026a", "minutes", 35, "elevation_own",
			  1, "lots", lots, "from", from));
}

static void do_with_jars(struct log_fixture *f, uint32_t *seed, int64_t batch, int64_t at)
{
	static const char *const states[] = {"shelf", "refrigerated", "opened", "eaten", "given"};
	static const char *const jars[] = {"1", "2-3", "1-4", "5"};
	const char *which = jars[chance(seed, 4)];
	if (chance(seed, 2))
		log_try(f, "seal", batch, at,
			json_pack("{s:s, s:b, s:b}", "jars", which, "sealed", chance(seed, 4) != 0,
				  "early", 0));
	else
		log_try(f, "jar", batch, at,
			json_pack("{s:s, s:s, s:s}", "jars", which, "to", states[chance(seed, 5)],
				  "place", "cellar"));
}

static void load(struct log_fixture *f, uint32_t *seed, int64_t batch, int64_t at)
{
	char canner[UUID_TEXT_SIZE];
	int number = 1 + (int)chance(seed, 2);
	int64_t some = any_subject(f, seed, "canner-add");
	if (some)
		uuid_text(f, some, canner);
	log_try(f, "load", batch, at,
		json_pack("{s:i, s:i, s:s*, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I}", "number", number,
			  "first", number * 6 - 5, "canner", some ? canner : NULL, "jars", "n",
			  (int)chance(seed, 6) + 1, "size", "pint", "facts", "outcome",
			  chance(seed, 5) ? "processed" : "under-processed", "why", "", "out_ms",
			  (json_int_t)at));
}

static void recall(struct log_fixture *f, uint32_t *seed, int64_t batch, int64_t at)
{
	char uuid[UUID_TEXT_SIZE];
	int64_t open = any_subject(f, seed, "recall-open");
	uuid_text(f, batch, uuid);
	if (!open || chance(seed, 2))
		log_try(f, "recall-open", 0, at,
			json_pack("{s:i, s:i, s:s, s:s, s:[{s:s, s:s}]}", "year", 2026, "number",
				  1 + (int)chance(seed, 9), "reason", "batch", "what", "batch",
				  "jars", "batch", uuid, "jars", "1-2"));
	else
		log_try(f, "recall-record", open, at,
			json_pack("{s:s, s:s, s:s, s:s}", "batch", uuid, "jars", "1", "disposition",
				  "discarded", "note", nasty[chance(seed, (uint32_t)nasty_n)]));
}

static void undo(struct log_fixture *f, uint32_t *seed, int64_t at)
{
	int n = log_count(f, "SELECT count(*) FROM event");
	if (n == 0)
		return;
	memset(&f->err, 0, sizeof f->err);
	ck_assert(log_begin(f->db, &f->err));
	bool ok = log_undo(f->db, 1 + (int64_t)chance(seed, (uint32_t)n), (struct instant){at, 0},
			   &f->err);
	(void)log_end(f->db, ok, &f->err); /* often refused */
}

static void random_entry(struct log_fixture *f, uint32_t *seed)
{
	int64_t at = NOON_MS + (int64_t)chance(seed, 1000) * 60000;
	int64_t batch = any_subject(f, seed, "batch-start");
	uint32_t what = chance(seed, 12);
	if (what == 0)
		log_try(f, "canner-add", 0, at,
			json_pack("{s:s, s:s}", "name", "big", "kind", "boiling-water"));
	else if (what == 1)
		log_try(f, "lot-add", 0, at,
			json_pack("{s:s, s:s}", "name", "wide lids", "kind", "lids"));
	else if (what == 2 || !batch)
		start(f, seed, at);
	else if (what <= 4)
		load(f, seed, batch, at);
	else if (what <= 7)
		do_with_jars(f, seed, batch, at);
	else if (what == 8)
		log_try(f, "batch-note", batch, at,
			json_pack("{s:s}", "text", nasty[chance(seed, (uint32_t)nasty_n)]));
	else if (what == 9)
		log_try(f, "batch-finish", batch, at, json_object());
	else if (what == 10)
		recall(f, seed, batch, at);
	else
		undo(f, seed, at);
}

void random_days(struct log_fixture *f, uint32_t *seed, int n)
{
	for (int i = 0; i < n; i++)
		random_entry(f, seed);
}

char *exported(struct log_fixture *f)
{
	char *text = NULL;
	size_t n;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	if (!household_export_json(f->db, out, "memory", &f->err))
		ck_abort_msg("%s", f->err.text);
	ck_assert_int_eq(fclose(out), 0);
	return text;
}

char *tables_of(struct log_fixture *f)
{
	char folder[160], command[400], *text = NULL;
	size_t n;
	snprintf(folder, sizeof folder, "%s/tables", f->folder);
	if (!household_export_csv(f->db, folder, &f->err))
		ck_abort_msg("%s", f->err.text);
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	for (size_t i = 0; export_csv_file(i); i++) {
		char path[300], bytes[4096];
		snprintf(path, sizeof path, "%s/%s", folder, export_csv_file(i));
		FILE *in = fopen(path, "r");
		ck_assert_ptr_nonnull(in);
		for (size_t got; (got = fread(bytes, 1, sizeof bytes, in)) > 0;)
			fwrite(bytes, 1, got, out);
		ck_assert_int_eq(fclose(in), 0);
	}
	ck_assert_int_eq(fclose(out), 0);
	snprintf(command, sizeof command, "rm -r '%s'", folder);
	ck_assert_int_eq(system(command), 0);
	return text;
}

void must_be_sound(struct log_fixture *f)
{
	struct log_report report;
	if (!household_verify(f->db, &report, &f->err))
		ck_abort_msg("%s", f->err.text);
	if (report.faults_n)
		ck_abort_msg("%s#%lld: %s", report.faults[0].device,
			     (long long)report.faults[0].number, report.faults[0].text);
}

int64_t must_merge(struct log_fixture *a, const struct log_fixture *b)
{
	struct intake_report report;
	memset(&a->err, 0, sizeof a->err);
	if (!household_merge(a->db, b->path, false, NULL, &report, &a->err))
		ck_abort_msg("%s", a->err.text);
	return report.events_new;
}

void copy_device(struct log_fixture *from, struct log_fixture *to)
{
	memset(to, 0, sizeof *to);
	snprintf(to->folder, sizeof to->folder, "/tmp/jarwright-test-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(to->folder));
	snprintf(to->path, sizeof to->path, "%s/kitchen.db", to->folder);
	if (!household_backup(from->db, to->path, &to->err) ||
	    !household_open(to->path, HOUSEHOLD_WRITE, &to->db, &to->err))
		ck_abort_msg("%s", to->err.text);
}

void new_device(struct log_fixture *f)
{
	fixture_open(f);
}
