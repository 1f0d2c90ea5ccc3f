/*
 * Random traces of an open canner against a judge written apart: all rows kept, every pair of
 * rows tried. The traces are invented, from fixed seeds.
 */
#include <math.h>
#include <stdint.h>

#include "suites.h"
#include "trace.h"

enum { ROWS = 120, TRACES = 4000, NEED_S = 900 };

static uint32_t state;

/* A fixed sequence (Numerical Recipes' constants). */
static uint32_t next_random(uint32_t below)
{
	state = state * 1664525U + 1013904223U;
	return (uint32_t)(((uint64_t)state * below) >> 32);
}

/* Mostly at the boil and mostly in short steps, so that all outcomes come up. */
static void make_rows(struct record_sample rows[ROWS])
{
	double time_s = 0;
	uint32_t rarity = 2 + next_random(100);
	for (int i = 0; i < ROWS; i++) {
		time_s += next_random(rarity) == 0 ? 30 + next_random(60) : 5 + next_random(30);
		double value = 212.2 + next_random(100) / 100.0;
		if (next_random(rarity) == 0)
			value = next_random(3) == 0 ? NAN : 211.9;
		rows[i] = (struct record_sample){time_s, {value, NAN}, i + 1};
	}
}

static bool is_ok(const struct record_sample *row)
{
	return row->value[RECORD_TEMPERATURE] >= 212;
}

/* Is every usable row from i to j held, and none too far from the one before? */
static bool unbroken(const struct record_sample rows[ROWS], int i, int j, bool gaps_count)
{
	double last_s = rows[i].time_s;
	for (int k = i; k <= j; k++) {
		if (isnan(rows[k].value[RECORD_TEMPERATURE]))
			continue;
		if (!is_ok(&rows[k]) || (gaps_count && rows[k].time_s - last_s > RECORD_GAP_S))
			return false;
		last_s = rows[k].time_s;
	}
	return is_ok(&rows[i]) && is_ok(&rows[j]);
}

/* The first row of the process that is complete first; -1: none is. */
static int complete_from(const struct record_sample rows[ROWS], bool gaps_count)
{
	for (int j = 0; j < ROWS; j++)
		for (int i = 0; i < j; i++)
			if (rows[j].time_s - rows[i].time_s >= NEED_S &&
			    unbroken(rows, i, j, gaps_count))
				return i;
	return -1;
}

static enum record_outcome expected(const struct record_sample rows[ROWS])
{
	int first = 0, last = ROWS - 1;
	while (first < ROWS && !is_ok(&rows[first]))
		first++;
	int from = complete_from(rows, true);
	if (from >= 0)
		return from == first ? RECORD_HELD : RECORD_RESTARTED;
	while (last > 0 && isnan(rows[last].value[RECORD_TEMPERATURE]))
		last--;
	if (complete_from(rows, false) >= 0 || is_ok(&rows[last]))
		return RECORD_UNCLEAR;
	return RECORD_UNDER_PROCESSED;
}

START_TEST(agrees)
{
	struct record_need need = open_need(NEED_S / 60);
	int seen[4] = {0};
	need.least[RECORD_TEMPERATURE] = 212;
	for (uint32_t seed = 1; seed <= TRACES; seed++) {
		struct record_sample rows[ROWS];
		struct record_judge judge;
		struct record_judgement got;
		state = seed;
		make_rows(rows);
		record_judge_start(&judge, &need);
		for (int i = 0; i < ROWS; i++)
			record_judge_add(&judge, &rows[i]);
		record_judge_end(&judge, &got);
		enum record_outcome want = expected(rows);
		ck_assert_msg(got.outcome == want, "seed %u: %s, not %s", seed,
			      record_outcome_word(got.outcome), record_outcome_word(want));
		seen[want]++;
	}
	for (int i = 0; i < 4; i++)
		ck_assert_msg(seen[i] > TRACES / 100, "outcome %d came up %d times", i, seen[i]);
}
END_TEST

Suite *oracle_suite(void)
{
	Suite *suite = suite_create("oracle");
	TCase *tests = tcase_create("oracle");
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, agrees);
	suite_add_tcase(suite, tests);
	return suite;
}
