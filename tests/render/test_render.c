/* The stable JSON of check, and the text that stands beside it. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/render.h"
#include "jarwright/text.h"
#include "suite.h"

/* Pickled beets in a steam canner, hot pack, half-pints, 2,900 ft: 35 min (guide 6, p. 6-16). */
static struct request beets(void)
{
	const struct food *food = reference_food(reference_edition(), "pickled-beets");
	ck_assert_ptr_nonnull(food);
	return (struct request){
	    .food = {.kind = MATCH_ONE, .foods = {food}, .foods_n = 1},
	    .canner_choice = CHOICE_CANNER,
	    .canner = CANNER_STEAM,
	    .pack = PACK_HOT,
	    .jar = {.stated = true, .jar = JAR_HALF_PINT},
	    .elevation_stated = true,
	    .elevation_mft = 2900 * 1000,
	    .vinegar = VINEGAR_LABELLED,
	    .vinegar_milli_percent = 5000,
	};
}

/* As it is printed; to be freed. */
static char *written(const json_t *json)
{
	char *text = NULL;
	size_t n;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	ck_assert(json_write(out, json));
	ck_assert_int_eq(fclose(out), 0);
	return text;
}

static char *dump(const struct request *rq)
{
	struct decision decision;
	decide(reference_edition(), rq, &decision);
	json_t *json = decision_json(reference_edition(), rq, &decision);
	ck_assert_ptr_nonnull(json);
	char *text = written(json);
	json_decref(json);
	return text;
}

static void assert_holds(const char *text, const char *part)
{
	ck_assert_msg(strstr(text, part) != NULL, "no %s in %s", part, text);
}

/* All characters up to U+3000, and some of each part above: a terminal obeys none of what is
 * written, and a program reads all. */
START_TEST(json_is_harmless_and_exact)
{
	for (uint32_t code = 1; code <= 0x10FFFF; code += code < 0x3000 ? 1 : 251) {
		char in[8];
		size_t n = 0;
		if (code >= 0xD800 && code <= 0xDFFF)
			continue;
		if (code < 0x80) {
			in[n++] = (char)code;
		} else {
			int more = code < 0x800 ? 1 : code < 0x10000 ? 2 : 3;
			in[n++] = (char)(0xF0 << (3 - more) | code >> (6 * more));
			while (more-- > 0)
				in[n++] = (char)(0x80 | (code >> (6 * more) & 0x3F));
		}
		in[n] = '\0';
		json_t *string = json_string(in);
		ck_assert_ptr_nonnull(string);
		json_t *list = json_pack("[o]", string);
		char *text = written(list);
		bool raw = strstr(text, in) != NULL;
		if (plain_text_check(text) != PLAIN_TEXT ||
		    (code >= 0x80 && raw == text_is_obeyed(in, n)))
			ck_abort_msg("U+%04X is written as %s", (unsigned)code, text);
		json_t *back = json_loads(text, 0, NULL);
		ck_assert(json_equal(back, list));
		json_decref(back);
		json_decref(list);
		free(text);
	}
}
END_TEST

START_TEST(keys_stand_in_the_stable_order)
{
	struct request rq = beets();
	char *text = dump(&rq);
	static const char start[] =
	    "{\"verdict\":\"tested\",\"food\":\"pickled-beets\",\"edition\":\"";
	ck_assert_int_eq(strncmp(text, start, sizeof start - 1), 0);
	assert_holds(text, "\"request\":{\"canner\":\"steam\",\"jar\":\"half-pint\",\"jar_ml\":237,"
			   "\"pack\":\"hot\",\"elevation_ft\":2900,");
	assert_holds(text, "\"process\":{\"minutes\":35,\"psi\":null,\"table_jar\":\"pint\","
			   "\"band_ft\":[1001,3000],\"headspace_in\":0.5,\"vent_minutes\":null,"
			   "\"source\":\"");
	assert_holds(text, "\"instead\":[{\"canner\":\"");
	static const char *const keys[] = {
	    "\"verdict\":", "\"food\":",     "\"edition\":", "\"request\":",
	    "\"process\":", "\"findings\":", "\"instead\":", "\"candidates\":"};
	const char *at = text;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		at = strstr(at, keys[i]);
		ck_assert_msg(at != NULL, "%s is not in its place", keys[i]);
	}
	free(text);
}
END_TEST

START_TEST(same_request_same_bytes)
{
	struct request rq = beets();
	char *first = dump(&rq), *second = dump(&rq);
	ck_assert_str_eq(first, second);
	free(first);
	free(second);
}
END_TEST

START_TEST(an_open_band_has_no_upper_end)
{
	struct request rq = beets();
	rq.elevation_mft = 6500 * 1000; /* above 6,000 ft: 45 min, p. 6-16 */
	char *text = dump(&rq);
	assert_holds(text, "\"minutes\":45,");
	assert_holds(text, "\"band_ft\":[6001,null]");
	free(text);
}
END_TEST

START_TEST(pressure_has_psi_and_venting)
{
	struct request rq = beets();
	rq.food.foods[0] = reference_food(reference_edition(), "carrots");
	rq.canner = CANNER_DIAL_GAUGE;
	rq.jar.jar = JAR_QUART;
	rq.elevation_mft = 2001 * 1000; /* 30 min at 12 psi (guide 4, p. 4-10) */
	char *text = dump(&rq);
	assert_holds(text, "\"process\":{\"minutes\":30,\"psi\":12,");
	assert_holds(text, "\"vent_minutes\":10,"); /* guide 1, p. 1-20 */
	free(text);
}
END_TEST

START_TEST(no_process_without_a_tested_verdict)
{
	struct request rq = beets();
	rq.elevation_stated = false;
	char *text = dump(&rq);
	assert_holds(text, "{\"verdict\":\"unclear\"");
	assert_holds(text, "\"elevation_ft\":null");
	assert_holds(text, "\"process\":null");
	assert_holds(text, "\"level\":\"ask\"");
	free(text);
	rq = beets();
	rq.vinegar_milli_percent = 4000;
	text = dump(&rq);
	assert_holds(text, "{\"verdict\":\"refused\"");
	assert_holds(text, "\"process\":null");
	free(text);
}
END_TEST

START_TEST(candidates_are_listed)
{
	struct request rq = beets();
	reference_find_food(reference_edition(), "chutney", &rq.food);
	char *text = dump(&rq);
	assert_holds(text, "\"food\":null");
	assert_holds(text, "\"candidates\":[{\"food\":\"apple-chutney\",\"title\":\"");
	free(text);
}
END_TEST

START_TEST(metric_jars_keep_their_volume)
{
	struct request rq = beets();
	rq.jar = (struct jar_choice){.stated = true, .by_volume = true, .volume_nl = 250000000};
	char *text = dump(&rq);
	assert_holds(text, "\"jar\":null,\"jar_ml\":250,");
	free(text);
}
END_TEST

/* Every verdict over the foods renders, and no line is wider than the page. */
START_TEST(text_is_wrapped_by_characters)
{
	static const struct {
		const char *lead, *text;
		int width;
		const char *lines;
	} cases[] = {
	    {"", "", 10, "\n"},
	    {"", "one two three", 7, "one two\nthree\n"},
	    {"  ", "one two three", 7, "  one\n  two\n  three\n"},
	    {"\xc2\xbd ", "one two three", 9, "\xc2\xbd one two\n  three\n"},
	    {"", " one\n two  ", 10, "one two\n"},
	    {"", "verylongword a", 5, "verylongword\na\n"},
	    {"", "\xc2\xbd \xc2\xbd \xc2\xbd", 3, "\xc2\xbd \xc2\xbd\n\xc2\xbd\n"},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char *text = NULL;
		size_t n = 0;
		FILE *out = open_memstream(&text, &n);
		ck_assert_ptr_nonnull(out);
		const struct page page = {.out = out, .width = cases[i].width};
		page_text(&page, cases[i].lead, cases[i].text);
		ck_assert_int_eq(fclose(out), 0);
		ck_assert_str_eq(text, cases[i].lines);
		free(text);
	}
}
END_TEST

START_TEST(text_fits_the_page)
{
	const struct reference *ref = reference_edition();
	for (size_t i = 0; i < ref->foods_n; i++) {
		struct request rq = beets();
		struct decision decision;
		char *text = NULL;
		size_t size = 0;
		rq.food.foods[0] = &ref->foods[i];
		decide(ref, &rq, &decision);
		FILE *out = open_memstream(&text, &size);
		ck_assert_ptr_nonnull(out);
		struct page page = {.out = out, .width = PAGE_WIDTH};
		decision_text(&page, ref, &rq, &decision, "2900ft");
		fclose(out);
		static const char *const words[] = {"TESTED", "REFUSED", "UNTESTED", "UNCLEAR"};
		const char *word = words[decision.verdict];
		ck_assert_int_eq(strncmp(text, word, strlen(word)), 0);
		for (char *line = strtok(text, "\n"); line; line = strtok(NULL, "\n"))
			ck_assert_msg(strlen(line) <= PAGE_WIDTH + 8, "%s", line); /* UTF-8 */
		free(text);
	}
}
END_TEST

START_TEST(figures_read_as_printed)
{
	char words[WORDS_BUFFER];
	struct band open = {6001, BAND_OPEN}, closed = {1001, 3000};
	ck_assert_str_eq(band_words(words, sizeof words, &open), "above 6,000 ft");
	ck_assert_str_eq(band_words(words, sizeof words, &closed), "1,001 to 3,000 ft");
	ck_assert_str_eq(inches_words(words, sizeof words, 500), "1/2 inch");
	ck_assert_str_eq(inches_words(words, sizeof words, 1250), "1 1/4 inches");
	ck_assert_str_eq(inches_words(words, sizeof words, 1000), "1 inch");
	ck_assert_str_eq(elevation_words(words, sizeof words, 3000001), "3,001 ft");
	ck_assert_str_eq(elevation_words(words, sizeof words, -200500), "-200 ft");
	ck_assert_str_eq(milli_words(words, sizeof words, 4600), "4.6");
	ck_assert_str_eq(milli_words(words, sizeof words, 45000), "45");
}
END_TEST

START_TEST(the_column_of_an_elevation)
{
	const struct reference *ref = reference_edition();
	const struct process_table *table =
	    reference_table(reference_food(ref, "pickled-beets"), CANNER_BOILING_WATER, PACK_HOT);
	ck_assert_ptr_nonnull(table);
	ck_assert_int_eq(table_band(ref, table, -100), 0);
	ck_assert_int_eq(table_band(ref, table, 1000000), 0);
	ck_assert_int_eq(table_band(ref, table, 1000001), 1); /* a fraction above a border */
	ck_assert_int_eq(table_band(ref, table, 10000000), 3);
	ck_assert_int_eq(table_band(ref, table, 10000001), -1); /* no timetable goes higher */
}
END_TEST

static Suite *render_suite(void)
{
	Suite *suite = suite_create("render");
	TCase *tests = tcase_create("render");
	tcase_add_test(tests, json_is_harmless_and_exact);
	tcase_add_test(tests, keys_stand_in_the_stable_order);
	tcase_add_test(tests, same_request_same_bytes);
	tcase_add_test(tests, an_open_band_has_no_upper_end);
	tcase_add_test(tests, pressure_has_psi_and_venting);
	tcase_add_test(tests, no_process_without_a_tested_verdict);
	tcase_add_test(tests, candidates_are_listed);
	tcase_add_test(tests, metric_jars_keep_their_volume);
	tcase_add_test(tests, text_is_wrapped_by_characters);
	tcase_add_test(tests, text_fits_the_page);
	tcase_add_test(tests, figures_read_as_printed);
	tcase_add_test(tests, the_column_of_an_elevation);
	suite_add_tcase(suite, tests);
	return suite;
}

SUITE_MAIN(render_suite())
