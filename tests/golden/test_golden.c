/* The answers of today against the answers on record, line by line. */
#include "suite.h"

#include <stdio.h>
#include <string.h>

#include "golden.h"

enum { DIFFERENCES_SHOWN = 10 };

static char *read_record(size_t *size)
{
	FILE *file = fopen(GOLDEN_PATH, "re");
	ck_assert_msg(file != NULL, GOLDEN_PATH " cannot be opened; run from the project's folder");
	char *text = NULL;
	size_t room = 0;
	ssize_t got = getdelim(&text, &room, '\0', file);
	ck_assert_int_gt(got, 0);
	*size = (size_t)got;
	(void)fclose(file);
	return text;
}

static char *answers_now(size_t *size)
{
	char *text = NULL;
	FILE *out = open_memstream(&text, size);
	ck_assert_ptr_nonnull(out);
	golden_write(out);
	ck_assert_int_eq(fclose(out), 0);
	return text;
}

/* Cuts off and returns the next line; NULL after the last. */
static char *next_line(char **rest)
{
	return *rest && **rest ? strsep(rest, "\n") : NULL;
}

/*
 * Both in step: a line more or less shows as the differences from there on, of which the
 * first is the one to look at.
 */
static size_t show_differences(FILE *out, char *record, char *now)
{
	size_t differences = 0;
	for (int line = 1;; line++) {
		const char *was = next_line(&record);
		const char *is = next_line(&now);
		if (!was && !is)
			return differences;
		if (was && is && strcmp(was, is) == 0)
			continue;
		if (++differences <= DIFFERENCES_SHOWN)
			(void)fprintf(out, "\n line %d\n  was %s\n  is  %s", line,
				      was ? was : "(nothing)", is ? is : "(nothing)");
	}
}

START_TEST(answers_are_as_recorded)
{
	size_t record_size = 0;
	size_t now_size = 0;
	size_t shown_size = 0;
	char *record = read_record(&record_size);
	char *now = answers_now(&now_size);
	char *shown = NULL;
	FILE *out = open_memstream(&shown, &shown_size);
	ck_assert_ptr_nonnull(out);
	size_t differences = show_differences(out, record, now);
	ck_assert_int_eq(fclose(out), 0);
	ck_assert_msg(differences == 0 && record_size == now_size,
		      "%zu lines differ from " GOLDEN_PATH
		      "; if that is meant, make golden-update:%s",
		      differences, shown);
	free(shown);
	free(record);
	free(now);
}
END_TEST

static Suite *golden_suite(void)
{
	Suite *suite = suite_create("golden");
	TCase *tcase = tcase_create("answers");
	tcase_set_timeout(tcase, 120);
	tcase_add_test(tcase, answers_are_as_recorded);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(golden_suite())
