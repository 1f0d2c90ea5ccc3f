/*
 * A good file, broken at random from fixed seeds: it is read or refused with a message, and the
 * judge takes whatever rows come. Meant to run under the sanitizers too.
 */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "csv_fixture.h"
#include "jarwright/text.h"
#include "suites.h"
#include "trace.h"

enum { RUNS = 6000, LENGTH_MAX = 4096 };

static uint32_t state;

/* A fixed sequence (Numerical Recipes' constants). */
static uint32_t next_random(uint32_t below)
{
	state = state * 1664525U + 1013904223U;
	return (uint32_t)(((uint64_t)state * below) >> 32);
}

static const char *const seeds[] = {
    "Recorder 7\n\nTime,Temp (F),Pressure (psig)\n2026-11-25 14:05:00,212.5,11.2\n"
    "2026-11-25 14:05:05,212.6,11.3\n2026-11-25 14:05:10,,11.1\n",
    "Date;Time;Temp °C;Pressure kPa abs\n25.11.2026;14:05:00;99,5;177,2\n"
    "25.11.2026;14:05:02,5;100,0;177,1\n",
    "\"Elapsed (s)\"\t\"Temp \"\"K\"\"\"\r\n0\t373.15\r\n7.5\t373.2\r\n",
    "timestamp,degF\n1795615500,1\n1795615500.25,2\n",
};

/* Bytes that mean something to the reader come up more often than others. */
static char any_byte(void)
{
	static const char bytes[] = "\",;\t\n\r.:-+/ 0123456789TZAPM\0\xC2\xB0\xFF";
	unsigned char any = (unsigned char)next_random(256);
	char byte = bytes[next_random((uint32_t)sizeof bytes)];
	if (next_random(4) == 0)
		memcpy(&byte, &any, 1);
	return byte;
}

/* Changes, takes out, puts in or doubles a byte or a stretch of bytes. */
static size_t mutate(char *text, size_t n)
{
	if (n == 0)
		return n;
	size_t at = next_random((uint32_t)n), length = 1 + next_random(8);
	if (length > n - at)
		length = n - at;
	switch (next_random(4)) {
	case 0:
		text[at] = any_byte();
		return n;
	case 1:
		memmove(text + at, text + at + length, n - at - length);
		return n - length;
	case 2:
		if (n + 1 > LENGTH_MAX)
			return n;
		memmove(text + at + 1, text + at, n - at);
		text[at] = any_byte();
		return n + 1;
	default:
		if (n + length > LENGTH_MAX)
			return n;
		memmove(text + at + length, text + at, n - at);
		return n + length;
	}
}

static void judge_rows(const struct csv_rows *rows)
{
	struct record_need need = closed_need(1);
	struct record_judge judge;
	struct record_judgement got;
	record_judge_start(&judge, &need);
	for (size_t i = 0; i < rows->n && i < ROWS_MAX; i++)
		record_judge_add(&judge, &rows->rows[i]);
	record_judge_end(&judge, &got);
	/* Three rows are no process of a minute with a vent that nobody spoke of. */
	ck_assert_int_ne(got.outcome, RECORD_HELD);
}

START_TEST(mutations)
{
	static struct csv_rows rows;
	int taken = 0;
	for (uint32_t run = 1; run <= RUNS; run++) {
		char text[LENGTH_MAX];
		const char *seed = seeds[run % (sizeof seeds / sizeof *seeds)];
		size_t n = (size_t)snprintf(text, sizeof text, "%s", seed);
		state = run;
		for (uint32_t i = next_random(6); i > 0; i--)
			n = mutate(text, n);
		if (read_bytes(text, n, (struct record_csv_wish){.air_psi = 14.7}, &rows)) {
			taken++;
			ck_assert_uint_gt(rows.n, 0);
			judge_rows(&rows);
			continue;
		}
		ck_assert_ptr_eq(strstr(rows.err.text, "log.csv:"), rows.err.text);
		ck_assert_int_eq(plain_text_check(rows.err.text), PLAIN_TEXT);
	}
	ck_assert_int_gt(taken, RUNS / 10);
	ck_assert_int_lt(taken, RUNS * 9 / 10);
}
END_TEST

Suite *csv_fuzz_suite(void)
{
	Suite *suite = suite_create("csv fuzz");
	TCase *tests = tcase_create("csv fuzz");
	tcase_set_timeout(tests, 120);
	tcase_add_test(tests, mutations);
	suite_add_tcase(suite, tests);
	return suite;
}
