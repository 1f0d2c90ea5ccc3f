#include "canner_test.h"

#include <jansson.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/plan.h"
#include "jarwright/render.h"
#include "jarwright/text.h"
#include "request.h"

/* --- Reading the readings --- */

/* What cannot be measured exactly is taken for the worse: the gauge up, the master down. */
static bool read_pressure(const char *what, const char *text, bool up, int32_t *out,
			  struct error *err)
{
	struct quantity quantity;
	int64_t mpsi = 0;
	char shown[TEXT_SHOWN_SIZE];
	if (!quantity_parse(DIMENSION_PRESSURE, what, text, &quantity, err))
		return false;
	text_show(text, SIZE_MAX, shown);
	if (!(up ? rational_ceil : rational_floor)(quantity.amount, 1000, &mpsi) || mpsi < 0 ||
	    mpsi > GAUGE_READING_MAX)
		return error_usage(err,
				   "%s: '%s' is outside 0 to %d psi; check the number and the "
				   "unit",
				   what, shown, GAUGE_READING_MAX / 1000);
	*out = (int32_t)mpsi;
	return true;
}

/* "12psi at 11psi": the gauge, then the master. */
static bool read_reading(const char *text, struct gauge_reading *out, struct error *err)
{
	static const char between[] = " at ";
	char gauge[64], shown[TEXT_SHOWN_SIZE];
	const char *at = strstr(text, between);
	text_show(text, SIZE_MAX, shown);
	if (!at || (size_t)(at - text) >= sizeof gauge)
		return error_usage(err,
				   "reads: '%s' is no pair of readings; type what the gauge read, "
				   "then the master: '12psi at 11psi'",
				   shown);
	memcpy(gauge, text, (size_t)(at - text));
	gauge[at - text] = '\0';
	return read_pressure("reads", gauge, true, &out->gauge_mpsi, err) &&
	       read_pressure("reads", at + strlen(between), false, &out->master_mpsi, err);
}

static bool read_readings(struct invocation *inv, struct gauge_reading *out, size_t *n)
{
	const char *given[GAUGE_READINGS_MAX + 1];
	*n = option_values(inv, "reads", given, GAUGE_READINGS_MAX + 1);
	if (*n == 0)
		return error_usage(inv->err,
				   "canner: what did the gauge read, and the master beside it? say "
				   "--reads '12psi at 11psi'");
	if (*n > GAUGE_READINGS_MAX)
		return error_usage(inv->err, "canner: more than %d readings; leave some out",
				   GAUGE_READINGS_MAX);
	for (size_t i = 0; i < *n; i++)
		if (!read_reading(given[i], &out[i], inv->err))
			return false;
	return true;
}

static bool read_day(struct invocation *inv, struct date *out)
{
	const char *given = option(inv, "on");
	struct date today = instant_date(instant_at(inv->now));
	*out = today;
	if (!given)
		return true;
	if (!date_parse("on", given, out, inv->err))
		return false;
	return date_days(*out) <= date_days(today) ||
	       error_usage(inv->err, "on: '%s' is still to come; log the test when it is made",
			   given);
}

/* --- What to do, as published --- */

enum advice { ADVICE_NONE, ADVICE_ADJUST_OPTIONAL, ADVICE_ADJUST, ADVICE_REPLACE };

static const char *const advice_words[] = {
    [ADVICE_NONE] = "accurate",
    [ADVICE_ADJUST_OPTIONAL] = "reads-low",
    [ADVICE_ADJUST] = "adjust",
    [ADVICE_REPLACE] = "replace",
};

/* The error that may still be allowed for, in thousandths of a psi; not published: none. */
static const struct published_rule *limit_rule(int32_t *mpsi)
{
	const struct published_rule *rule =
	    published_find(reference_edition(), "gauge", "psi", "|replace a gauge|");
	struct span span;
	*mpsi = rule && published_span(rule, &span) ? span.least * 1000 : 0;
	return rule;
}

/* What to do about the error, and the rule that says so. */
static enum advice advise(const struct gauge_test *test, const struct published_rule **rule)
{
	int32_t limit;
	*rule = limit_rule(&limit);
	if (test->error_mpsi > limit)
		return ADVICE_REPLACE;
	if (test->high_mpsi > 0) {
		*rule = published_find(reference_edition(), "gauge", "", "|reads high|");
		return ADVICE_ADJUST;
	}
	if (test->error_mpsi > 0) {
		*rule = published_find(reference_edition(), "gauge", "", "|reads low|");
		return ADVICE_ADJUST_OPTIONAL;
	}
	return ADVICE_NONE;
}

static void print_advice(const struct page *page, const struct gauge_test *test)
{
	char error[WORDS_BUFFER], high[WORDS_BUFFER];
	const struct published_rule *rule;
	enum advice advice = advise(test, &rule);
	milli_words(error, sizeof error, test->error_mpsi);
	milli_words(high, sizeof high, test->high_mpsi);
	if (advice == ADVICE_NONE)
		page_text(page, "do:     ", "nothing: it read what the master read");
	if (advice == ADVICE_REPLACE)
		page_format(page, "do:     ",
			    "replace the gauge before the next batch: it is off by %s psi, more "
			    "than may be allowed for",
			    error);
	if (advice == ADVICE_ADJUST)
		page_format(page, "do:     ",
			    "it reads up to %s psi too high, so food gets less heat than it shows: "
			    "hold it %s psi above the pressure of the table, or replace it",
			    high, high);
	if (advice == ADVICE_ADJUST_OPTIONAL)
		page_format(page, "do:     ",
			    "it reads low, up to %s psi: food gets more heat than it shows, which "
			    "is safe; allowing for it is up to you",
			    error);
	if (test->high_mpsi > 0)
		page_text(page, "then:   ",
			  "what this canner processed since its last good test may be "
			  "under-processed; do not taste or use it before you have looked at each "
			  "batch: 'jarwright review' lists them");
	if (rule)
		page_format(page, "source: ", "%s, %s", rule->from.source->title, rule->from.place);
}

/* A gauge that reads too low at one pressure and too high at another is both. */
static void print_error(const struct page *page, const struct gauge_test *test)
{
	char error[WORDS_BUFFER];
	milli_words(error, sizeof error, test->error_mpsi);
	if (test->error_mpsi == 0)
		page_format(page, "gauge:  ", "tested %s, exact", test->tested);
	else
		page_format(page, "gauge:  ", "tested %s, off by %s psi at worst%s", test->tested,
			    error,
			    test->high_mpsi > 0   ? " (it reads high)"
			    : test->high_mpsi < 0 ? " (it reads low)"
						  : "");
}

void print_gauge(struct invocation *inv, const struct canner_record *record)
{
	struct page page = answer_page(inv);
	const struct published_rule *rule;
	if (record->canner.kind == CANNER_WEIGHTED_GAUGE) {
		rule = published_find(reference_edition(), "gauge", "", "|weighted gauge needs|");
		if (rule)
			page_format(&page, "gauge:  ", "a weighted gauge needs no test [%s, %s]",
				    rule->from.source->title, rule->from.place);
		return;
	}
	if (record->canner.kind != CANNER_DIAL_GAUGE)
		return;
	if (record->tests_n == 0) {
		rule =
		    published_find(reference_edition(), "gauge", "times per year", "|check dial|");
		page_format(
		    &page, "gauge:  ",
		    "never tested; a dial gauge is to be checked before use each year: 'jarwright "
		    "canner test NAME --reads ...'%s%s%s%s%s",
		    rule ? " [" : "", rule ? rule->from.source->title : "", rule ? ", " : "",
		    rule ? rule->from.place : "", rule ? "]" : "");
		return;
	}
	print_error(&page, &record->last);
	print_advice(&page, &record->last);
}

/* --- The test --- */

static json_t *json_readings(const struct gauge_reading *readings, size_t n)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < n; i++)
		list = json_append(list, json_pack("{s:o, s:o}", "gauge_psi",
						   json_milli(readings[i].gauge_mpsi), "master_psi",
						   json_milli(readings[i].master_mpsi)));
	return list;
}

/* The test just made, which need not be the latest by its date. */
static struct gauge_test worst_of(const struct gauge_reading *readings, size_t n, struct date day)
{
	struct gauge_test test = {.high_mpsi = -GAUGE_READING_MAX};
	for (size_t i = 0; i < n; i++) {
		int32_t off = readings[i].gauge_mpsi - readings[i].master_mpsi;
		int32_t far = off < 0 ? -off : off;
		test.high_mpsi = off > test.high_mpsi ? off : test.high_mpsi;
		test.error_mpsi = far > test.error_mpsi ? far : test.error_mpsi;
	}
	date_text(day, test.tested);
	return test;
}

static json_t *json_test(const struct canner_record *record, const struct gauge_test *test,
			 const struct gauge_reading *readings, size_t n)
{
	const struct published_rule *rule;
	enum advice advice = advise(test, &rule);
	return json_pack("{s:s, s:s, s:o, s:o, s:o, s:s, s:o}", "canner", record->canner.name,
			 "tested", test->tested, "readings", json_readings(readings, n), "high_psi",
			 json_milli(test->high_mpsi), "error_psi", json_milli(test->error_mpsi),
			 "do", advice_words[advice], "source",
			 rule ? json_citation(&rule->from) : json_null());
}

int canner_test_command(struct invocation *inv)
{
	struct gauge_reading readings[GAUGE_READINGS_MAX] = {0};
	struct canner_record record;
	struct household *db;
	struct instant at;
	struct date day;
	size_t n;
	if (!read_readings(inv, readings, &n) || !read_day(inv, &day) ||
	    !invocation_when(inv, &at) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved =
	    household_test_gauge(db, inv->operands[1], day, readings, n, at, &record, inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	struct gauge_test test = worst_of(readings, n, day);
	if (flag(inv, "json"))
		return answer_json(inv, json_test(&record, &test, readings, n), STATUS_DONE);
	struct page page = answer_page(inv);
	page_format(&page, "canner: ", "%s", record.canner.name);
	print_error(&page, &test);
	print_advice(&page, &test);
	return STATUS_DONE;
}
