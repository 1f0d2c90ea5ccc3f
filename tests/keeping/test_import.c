/* What is no honest export is refused at its line, and nothing of it is kept. */
#include "devices.h"
#include "suites.h"

static struct log_fixture a, b;
static char *good;

static void setup(void)
{
	new_device(&a);
	new_device(&b);
	int64_t batch = day_start(&a, &(struct day){.number = 1, .at = NOON_MS});
	day_load(&a, batch, 3, "pint", "processed", NOON_MS);
	day_seal(&a, batch, "1-2", true, NOON_MS + DAY_MS);
	good = exported(&a);
}

static void teardown(void)
{
	free(good);
	fixture_close(&a);
	fixture_close(&b);
}

static bool import_bytes(const char *text, size_t n)
{
	struct intake_report report;
	/* Only read. */ // NOLINTNEXTLINE(performance-no-int-to-ptr)
	FILE *in = fmemopen((void *)(uintptr_t)text, n, "r");
	ck_assert_ptr_nonnull(in);
	memset(&b.err, 0, sizeof b.err);
	bool ok = household_import(b.db, in, "x.json", false, NULL, &report, &b.err);
	ck_assert_int_eq(fclose(in), 0);
	return ok;
}

static void must_refuse(const char *text, const char *where, const char *why)
{
	ck_assert(!import_bytes(text, strlen(text)));
	ck_assert_msg(strncmp(b.err.text, where, strlen(where)) == 0, "%s", b.err.text);
	ck_assert_msg(strstr(b.err.text, why) != NULL, "%s", b.err.text);
	ck_assert_int_eq(log_count(&b, "SELECT count(*) FROM event"), 0);
	ck_assert_int_eq(log_count(&b, "SELECT count(*) FROM chain"), 0);
	ck_assert_int_eq(log_count(&b, "SELECT count(*) FROM recipe"), 0);
}

/* The good one with the first `old` from line `line` on changed to `new`; free() it. */
static char *changed(int line, const char *old, const char *new)
{
	char *at = good, *text = NULL;
	for (int i = 1; i < line; i++)
		at = strchr(at, '\n') + 1;
	at = strstr(at, old);
	ck_assert_ptr_nonnull(at);
	ck_assert_int_ge(asprintf(&text, "%.*s%s%s", (int)(at - good), good, new, at + strlen(old)),
			 0);
	return text;
}

/* Lines: header, kitchen, chain, start, load, seal. */
static const struct {
	int line;
	const char *old, *new, *where, *why;
} edits[] = {
    {1, "\"version\":1", "\"version\":2", "x.json:1: ", "newer"},
    {1, "jarwright-household", "else", "x.json:1: ", "no household"},
    {1, "\"events\":3", "\"events\":4", "x.json:7: ", "cut off"},
    {2, "\"type\":\"kitchen\"", "\"type\":\"kitchen\",\"elevation\":7", "x.json:2: ", "Expected"},
    {2, "}", ",\"elevation\":\"880 m\",\"elevation_mft\":99999999999}", "x.json:2: ", "range"},
    {2, "}", ",\"elevation\":\"880 m\",\"elevation_mft\":1000}", "x.json:2: ", "differ"},
    {3, "\"last\":3", "\"last\":4", "x.json:7: ", "missing"},
    {3, "\"last\":3", "\"last\":99999999999999999999", "x.json:3: ", "JSON"},
    {3, "\"name\":\"", "\"name\":\"\\u001b", "x.json:3: ", "name"},
    {4, "\"kind\":\"batch-start\"", "\"kind\":\"batch-dream\"", "x.json:4: ", "newer"},
    {4, "\"kind\":\"batch-start\"", "\"kind\":7", "x.json:4: ", "Expected"},
    {4, "\"number\":1", "\"number\":1.5", "x.json:4: ", "Expected"},
    {4, "\"title\":\"Pickled", "\"title\":\"Prickled", "x.json:4: ", "altered"},
    {4, "\"at_ms\":1790000000000", "\"at_ms\":1790000000001", "x.json:4: ", "altered"},
    {4, "\"at_ms\":1790000000000", "\"at_ms\":-1", "x.json:4: ", "range"},
    {4, "\"body\":{", "\"body\":[],\"x\":{", "x.json:4: ", "x"},
    {4, "\"body\":{", "\"body\":{},\"body\":{", "x.json:4: ", "JSON"},
    {4, "{\"type\":\"event\"", "{\"type\":\"even\"", "x.json:4: ", "no kitchen"},
    {5, "{\"type\"", "{\"typ", "x.json:5: ", "JSON"},
    {5, "\"before\":\"", "\"before\":\"0", "x.json:5: ", "no hash"},
    {6, "\"sealed\":true", "\"sealed\":false", "x.json:6: ", "altered"},
};

START_TEST(an_edit_is_refused_at_its_line)
{
	char *text = changed(edits[_i].line, edits[_i].old, edits[_i].new);
	must_refuse(text, edits[_i].where, edits[_i].why);
	free(text);
}
END_TEST

START_TEST(a_removed_or_doubled_or_swapped_line_is_refused)
{
	char *lines[6], *text = NULL;
	char *copy = strdup(good);
	lines[0] = strtok(copy, "\n");
	for (int i = 1; i < 6; i++)
		lines[i] = strtok(NULL, "\n");
	ck_assert_int_ge(asprintf(&text, "%s\n%s\n%s\n%s\n%s\n", lines[0], lines[1], lines[2],
				  lines[3], lines[5]),
			 0);
	must_refuse(text, "x.json:5: ", "is not there");
	free(text);
	ck_assert_int_ge(asprintf(&text, "%s\n%s\n%s\n%s\n%s\n%s\n", lines[0], lines[1], lines[2],
				  lines[3], lines[4], lines[4]),
			 0);
	must_refuse(text, "x.json:6: ", "twice");
	free(text);
	ck_assert_int_ge(asprintf(&text, "%s\n%s\n%s\n%s\n%s\n%s\n", lines[0], lines[1], lines[2],
				  lines[4], lines[3], lines[5]),
			 0);
	must_refuse(text, "x.json:4: ", "is not there");
	free(text);
	free(copy);
}
END_TEST

/* Other programs write JSON with other blanks, and keys in another order. */
START_TEST(the_layout_of_the_lines_does_not_matter)
{
	char *copy = strdup(good), *text = NULL;
	size_t n;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	for (char *line = strtok(copy, "\n"); line; line = strtok(NULL, "\n")) {
		json_t *json = json_loads(line, 0, NULL);
		ck_assert_int_eq(json_dumpf(json, out, JSON_SORT_KEYS | JSON_ENSURE_ASCII), 0);
		fputc('\n', out);
		json_decref(json);
	}
	ck_assert_int_eq(fclose(out), 0);
	ck_assert_ptr_nonnull(strstr(text, "{\"at_ms\": "));
	ck_assert_msg(import_bytes(text, n), "%s", b.err.text);
	char *there = exported(&b);
	ck_assert_str_eq(there, good);
	free(copy), free(text), free(there);
}
END_TEST

/* Cut off anywhere, it is refused: every byte counts but the last line's end. */
START_TEST(a_cut_file_is_refused)
{
	size_t n = strlen(good);
	for (size_t cut = 1; cut < n - 1; cut += 37)
		ck_assert(!import_bytes(good, cut));
	ck_assert_int_eq(log_count(&b, "SELECT count(*) FROM event"), 0);
	ck_assert(import_bytes(good, n - 1));
}
END_TEST

START_TEST(what_is_huge_or_deep_is_refused)
{
	size_t n = (size_t)50 << 20;
	char *text = malloc(n + 1);
	ck_assert_ptr_nonnull(text);
	memset(text, '[', n);
	text[n] = '\0';
	must_refuse(text, "x.json:1: ", "8 MiB");
	text[100000] = '\0';
	must_refuse(text, "x.json:1: ", "no household");
	memset(text, 'x', n);
	for (size_t i = 0; i < n; i += 80)
		text[i] = '\n';
	text[n] = '\0';
	must_refuse(text, "x.json:1: ", "no household");
	free(text);
	char deep[4096];
	memset(deep, '[', sizeof deep - 1);
	deep[sizeof deep - 1] = '\0';
	char *nested = changed(4, "\"body\":{", deep);
	must_refuse(nested, "x.json:4: ", "JSON");
	free(nested);
}
END_TEST

START_TEST(one_uuid_with_two_contents_is_refused)
{
	ck_assert(import_bytes(good, strlen(good)));
	/* Honest in itself, with the UUID of an entry that is here: the household was made up. */
	struct event event = {.seq = 1, .at = {NOON_MS, 0}, .body = "{\"text\":1}"};
	uint8_t before[DIGEST_SIZE] = {0}, device[UUID_SIZE] = {1};
	char uuid[UUID_TEXT_SIZE], id[UUID_TEXT_SIZE], hash[2 * DIGEST_SIZE + 1], *text = NULL;
	event.body_length = strlen(event.body);
	strcpy(event.kind, "lot-add");
	ck_assert(event_uuid(b.db, 1, event.uuid, &b.err));
	ck_assert(event_hash(&event, before, device, event.uuid, event.hash, &b.err));
	hex_text(event.uuid, UUID_SIZE, uuid);
	hex_text(device, UUID_SIZE, id);
	hex_text(event.hash, DIGEST_SIZE, hash);
	ck_assert_int_ge(
	    asprintf(&text,
		     "{\"format\":\"jarwright-household\",\"version\":1,\"recipes\":0,\"chains\":1,"
		     "\"events\":1}\n"
		     "{\"type\":\"chain\",\"device\":\"%s\",\"last\":1,\"hash\":\"%s\",\"name\":"
		     "\"x\"}\n"
		     "{\"type\":\"event\",\"device\":\"%s\",\"number\":1,\"before\":\"%064d\","
		     "\"uuid\":\"%s\",\"subject\":\"%s\",\"kind\":\"lot-add\",\"at_ms\":%lld,"
		     "\"offset_min\":0,\"hash\":\"%s\",\"body\":%s}\n",
		     id, hash, id, 0, uuid, uuid, (long long)NOON_MS, hash, event.body),
	    0);
	ck_assert(!import_bytes(text, strlen(text)));
	ck_assert_ptr_nonnull(strstr(b.err.text, "x.json:3: "));
	ck_assert_ptr_nonnull(strstr(b.err.text, "another content"));
	ck_assert_int_eq(log_count(&b, "SELECT count(*) FROM event"), 3);
	free(text);
}
END_TEST

Suite *import_suite(void)
{
	Suite *suite = suite_create("import");
	TCase *single = tcase_create("single");
	tcase_set_timeout(single, 120);
	tcase_add_checked_fixture(single, setup, teardown);
	tcase_add_loop_test(single, an_edit_is_refused_at_its_line, 0,
			    (int)(sizeof edits / sizeof *edits));
	tcase_add_test(single, a_removed_or_doubled_or_swapped_line_is_refused);
	tcase_add_test(single, the_layout_of_the_lines_does_not_matter);
	tcase_add_test(single, a_cut_file_is_refused);
	tcase_add_test(single, what_is_huge_or_deep_is_refused);
	tcase_add_test(single, one_uuid_with_two_contents_is_refused);
	suite_add_tcase(suite, single);
	return suite;
}
