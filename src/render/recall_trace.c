/* A trace: what went in, and what came of it. */
#include <string.h>

#include "jarwright/instant.h"
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "recall_words.h"

#define MILLI 1000

static void lot_words(const struct trace_lot *lot, char *buffer, size_t size)
{
	char name[TRACE_TEXT_SIZE], supplier[TRACE_TEXT_SIZE], code[TRACE_TEXT_SIZE];
	snprintf(buffer, size, "%s '%s'%s%s%s%s%s%s%s", lot->kind,
		 text_harmless(lot->name, name, sizeof name), *lot->code ? ", code " : ", no code",
		 text_harmless(lot->code, code, sizeof code), *lot->supplier ? ", from " : "",
		 text_harmless(lot->supplier, supplier, sizeof supplier),
		 *lot->dated ? ", dated " : "", lot->dated, lot->finished ? ", used up" : "");
}

/* "2026-06-01: read 1.5 psi high" */
static void test_words(const struct trace_test *test, char *buffer, size_t size)
{
	char high[WORDS_BUFFER], error[WORDS_BUFFER];
	int32_t off = test->high_mpsi < 0 ? -test->high_mpsi : test->high_mpsi;
	snprintf(buffer, size, "%s: read %s psi %s at worst, off by %s psi at most", test->tested,
		 milli_words(high, sizeof high, off), test->high_mpsi < 0 ? "low" : "high",
		 milli_words(error, sizeof error, test->error_mpsi));
}

static void gauge_text_of(const struct page *page, const struct trace_load *load)
{
	char words[WORDS_BUFFER * 3];
	if (strcmp(load->kind, "dial-gauge") != 0)
		return;
	if (*load->before.tested) {
		test_words(&load->before, words, sizeof words);
		page_format(page, "    gauge: ", "tested before, %s", words);
	} else {
		page_text(page, "    gauge: ", "never tested before this load");
	}
	if (*load->after.tested) {
		test_words(&load->after, words, sizeof words);
		page_format(page, "    gauge: ", "tested after, %s", words);
	}
}

static void load_text_of(const struct page *page, const struct trace_load *load)
{
	char name[KITCHEN_NAME_SIZE], why[WORDS_BUFFER], at[INSTANT_SIZE], set[JAR_SET_SIZE];
	instant_text(instant_at((time_t)(load->started_ms / MILLI)), at);
	text_harmless(load->why, why, sizeof why);
	page_format(page, "  load:    ", "%d, %s%s%s%s, %s: %s%s%s; jars %s", load->number,
		    *load->canner ? "canner '" : "no canner",
		    text_harmless(load->canner, name, sizeof name), *load->canner ? "', " : "",
		    load->kind, at, load->outcome, *why ? ", " : "", why,
		    jar_set_text(&load->jars, set, sizeof set));
	gauge_text_of(page, load);
}

static void decision_words(const struct page *page, const struct batch_record *record)
{
	char elevation[WORDS_BUFFER], process[WORDS_BUFFER] = "no process";
	if (record->minutes > 0)
		process_words(process, sizeof process, record->minutes, record->psi);
	elevation_words(elevation, sizeof elevation, record->elevation_mft);
	page_format(page, "  decided: ", "%s, %s%s%s%s%s%s%s, %s, edition %s, for the %s%s",
		    record->verdict, *record->food ? record->food : "no food of the tables",
		    *record->pack ? ", " : "", record->pack, *record->jar ? ", " : "", record->jar,
		    *record->canner_kind ? ", " : "", record->canner_kind, process, record->edition,
		    record->keep, record->held ? "; taken off the shelf since" : "");
	page_format(page, "           ", "at %s",
		    record->elevation_stated ? elevation : "an elevation that was not stated");
}

static void batch_back(const struct page *page, const struct trace_batch *batch)
{
	const struct batch_record *record = &batch->record;
	char title[BATCH_TITLE_SIZE], words[WORDS_BUFFER * 2], recipe[256], set[JAR_SET_SIZE];
	page_format(page, "", "%s  %s, %s%s", record->code,
		    text_harmless(record->title, title, sizeof title), record->day,
		    batch->step > 0 ? ", whose jars went in" : "");
	if (*record->recipe)
		page_format(page, "  recipe:  ", "%s",
			    text_harmless(record->recipe, recipe, sizeof recipe));
	decision_words(page, record);
	for (size_t i = 0; i < batch->lots_n; i++) {
		lot_words(&batch->lots[i], words, sizeof words);
		page_text(page, "  lot:     ", words);
	}
	if (batch->lots_n == 0)
		page_text(page, "  lot:     ", "none was named");
	for (size_t i = 0; i < batch->loads_n; i++)
		load_text_of(page, &batch->loads[i]);
	for (size_t i = 0; i < batch->from_n; i++)
		page_format(page, "  made of: ", "jars %s of %s",
			    jar_set_text(&batch->from[i].jars, set, sizeof set),
			    batch->from[i].code);
}

static void canner_tests(const struct page *page, const struct trace_canner *canner)
{
	char words[WORDS_BUFFER * 3];
	for (size_t i = 0; i < canner->tests_n; i++) {
		test_words(&canner->tests[i], words, sizeof words);
		page_text(page, "  gauge test ", words);
	}
	if (canner->tests_n == 0 && strcmp(canner->kind, "dial-gauge") == 0)
		page_text(page, "  gauge test ", "none in the log");
}

void trace_text(const struct page *page, const struct trace_view *view)
{
	char words[WORDS_BUFFER * 2];
	if (view->lot)
		lot_words(view->lot, words, sizeof words);
	else
		text_harmless(view->what, words, sizeof words);
	page_headline(page, "TRACE", words);
	if (view->canner)
		canner_tests(page, view->canner);
	if (view->back) {
		page_blank(page);
		page_text(page, "", "What went in:");
		for (size_t i = 0; i < view->back->batches_n; i++)
			batch_back(page, &view->back->batches[i]);
	}
	page_blank(page);
	page_text(page, "", "What came of it:");
	touched_text(page, view->jars, never_used);
}

/* --- JSON --- */

static json_t *lot_json(const struct trace_lot *lot)
{
	return json_pack("{s:s, s:s, s:o, s:o, s:o, s:b}", "kind", lot->kind, "name", lot->name,
			 "supplier", json_words(lot->supplier), "code", json_words(lot->code),
			 "dated", json_words(lot->dated), "used_up", (int)lot->finished);
}

static json_t *test_json(const struct trace_test *test)
{
	if (!*test->tested)
		return json_null();
	return json_pack("{s:s, s:o, s:o}", "tested", test->tested, "high_psi",
			 json_milli(test->high_mpsi), "error_psi", json_milli(test->error_mpsi));
}

static json_t *set_json(const struct jar_set *set)
{
	json_t *list = json_array();
	for (int n = jar_set_next(set, 0); list && n; n = jar_set_next(set, n))
		list = json_append(list, json_integer(n));
	return list;
}

static json_t *loads_json(const struct trace_batch *batch)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < batch->loads_n; i++) {
		const struct trace_load *load = &batch->loads[i];
		list = json_append(
		    list,
		    json_pack("{s:i, s:o, s:o, s:o, s:s, s:o, s:o, s:o, s:o}", "load", load->number,
			      "canner", json_words(load->canner), "kind", json_words(load->kind),
			      "started", json_moment(load->started_ms), "outcome", load->outcome,
			      "why", json_words(load->why), "jars", set_json(&load->jars),
			      "gauge_before", test_json(&load->before), "gauge_after",
			      test_json(&load->after)));
	}
	return list;
}

static json_t *lots_json(const struct trace_batch *batch)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < batch->lots_n; i++)
		list = json_append(list, lot_json(&batch->lots[i]));
	return list;
}

static json_t *from_json(const struct trace_batch *batch)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < batch->from_n; i++)
		list = json_append(list, json_pack("{s:s, s:o}", "batch", batch->from[i].code,
						   "jars", set_json(&batch->from[i].jars)));
	return list;
}

static json_t *batch_json(const struct trace_batch *batch)
{
	const struct batch_record *record = &batch->record;
	return json_pack(
	    "{s:s, s:s, s:s, s:i, s:o, s:o, s:s, s:s, s:s, s:b, s:o, s:o, s:o, s:o, s:o, s:o, s:o, "
	    "s:o, s:o}",
	    "batch", record->code, "title", record->title, "day", record->day, "step", batch->step,
	    "food", json_words(record->food), "recipe", json_words(record->recipe), "verdict",
	    record->verdict, "edition", record->edition, "keep", record->keep, "held",
	    (int)record->held, "pack", json_words(record->pack), "jar", json_words(record->jar),
	    "canner_kind", json_words(record->canner_kind), "elevation_ft",
	    record->elevation_stated ? json_milli(record->elevation_mft) : json_null(), "minutes",
	    json_positive(record->minutes), "psi", json_positive(record->psi), "lots",
	    lots_json(batch), "loads", loads_json(batch), "from", from_json(batch));
}

static json_t *back_json(const struct trace *trace)
{
	json_t *list = json_array();
	for (size_t i = 0; trace && list && i < trace->batches_n; i++)
		list = json_append(list, batch_json(&trace->batches[i]));
	return list;
}

static json_t *canner_json(const struct trace_canner *canner)
{
	json_t *tests = json_array();
	if (!canner) {
		json_decref(tests);
		return json_null();
	}
	for (size_t i = 0; tests && i < canner->tests_n; i++)
		tests = json_append(tests, test_json(&canner->tests[i]));
	return json_pack("{s:s, s:s, s:b, s:o}", "name", canner->name, "kind", canner->kind,
			 "retired", (int)canner->retired, "gauge_tests", tests);
}

json_t *trace_json(const struct trace_view *view)
{
	return json_pack("{s:s, s:o, s:o, s:o, s:o, s:o}", "what", view->what, "lot",
			 view->lot ? lot_json(view->lot) : json_null(), "canner",
			 canner_json(view->canner), "went_in", back_json(view->back), "jars",
			 touched_json(view->jars), "unfilled", unfilled_json(view->jars));
}
