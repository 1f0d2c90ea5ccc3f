/*
 * Every published cell, asked for through the engine and, by sample, through the program.
 *
 * tests/data/processes.csv holds the cells as first transcribed, before they were set in
 * the form of db/: USDA Agriculture Information Bulletin No. 539, Complete Guide to Home
 * Canning (2015), guides 1 to 7; and, for foods it does not have, the National Center for
 * Home Food Preservation and So Easy to Preserve (University of Georgia Extension), partly
 * as printed by Missouri and South Dakota extension pages.
 */
#include "suite.h"

#include <stdio.h>
#include <string.h>

#include "cells.h"
#include "prove/favourable.h"

/* An open band ends where extension timetables do (Utah State University Extension). */
enum { HIGHEST_FT = 10000 };

/*
 * USDA AIB 539 (2015) guide 1, p. 1-30: 5 minutes plus 1 per 1,000 ft for sweet spreads,
 * where that is longer than the food's own table. Only lines that start at 5 minutes.
 */
static int expected_minutes(const struct food *food, const struct cell_row *row, int foot)
{
	bool spread = strcmp(food->kind, "jam") == 0 || strcmp(food->kind, "jelly") == 0 ||
		      strcmp(food->kind, "butter") == 0;
	int sweet = 5 + (foot + 999) / 1000;
	if (!spread || row->psi != 0 || row->first_minutes >= 10 || sweet < row->minutes)
		return row->minutes;
	return sweet;
}

/* Asks for the row at this foot; adds a line to *failures if the answer is another. */
static void ask(const struct food *food, const struct cell_row *row, int foot, FILE *failures)
{
	struct request request = favourable_request(food, row->pack, row->canner, row->jar);
	struct decision decision;
	request.psi = row->psi;
	favourable_at(&request, foot);
	decide(reference_edition(), &request, &decision);
	int expected = expected_minutes(food, row, foot);
	if (decision.verdict == VERDICT_TESTED && decision.process.minutes == expected &&
	    decision.process.psi == row->psi)
		return;
	(void)fprintf(
	    failures, "\n  line %d: %s %s %s at %d ft: %s %d min %d psi, not %d min %d psi",
	    row->line, pack_word(row->pack), canner_word(row->canner),
	    reference_edition()->jars[row->jar].name, foot, verdict_word(decision.verdict),
	    decision.process.minutes, decision.process.psi, expected, row->psi);
}

START_TEST(every_cell_is_given)
{
	const struct cells *cells = cells_read();
	const char *slug = cells->foods[_i];
	const struct food *food = reference_food(reference_edition(), slug);
	ck_assert_msg(food != NULL, "%s is not in the edition", slug);
	char *text = NULL;
	size_t size = 0;
	FILE *failures = open_memstream(&text, &size);
	ck_assert_ptr_nonnull(failures);
	for (size_t i = 0; i < cells->rows_n; i++) {
		const struct cell_row *row = &cells->rows[i];
		if (strcmp(row->food, slug) != 0)
			continue;
		ask(food, row, row->from_ft, failures);
		ask(food, row, row->to_ft == CELL_OPEN ? HIGHEST_FT : row->to_ft, failures);
	}
	ck_assert_int_eq(fclose(failures), 0);
	ck_assert_msg(size == 0, "%s:%s", slug, text);
	free(text);
}
END_TEST

/* So that a food cannot leave the edition, or join it, behind the tables' back. */
START_TEST(no_other_food_has_a_table)
{
	const struct reference *ref = reference_edition();
	size_t with_tables = 0;
	for (size_t i = 0; i < ref->foods_n; i++)
		with_tables += ref->foods[i].tables_n > 0;
	ck_assert_uint_eq(with_tables, cells_read()->foods_n);
}
END_TEST

/* And no line of the edition is without its row, counted cell by cell. */
START_TEST(no_other_cell_is_published)
{
	const struct reference *ref = reference_edition();
	size_t given = 0;
	for (size_t f = 0; f < ref->foods_n; f++)
		for (size_t t = 0; t < ref->foods[f].tables_n; t++) {
			const struct process_table *table = &ref->foods[f].tables[t];
			for (size_t i = 0; i < table->lines_n * table->bands_n; i++)
				given += table->lines[i / table->bands_n]
					     .cells[i % table->bands_n]
					     .minutes > 0;
		}
	ck_assert_uint_eq(given, cells_read()->rows_n);
}
END_TEST

static Suite *engine_suite(void)
{
	Suite *suite = suite_create("cells");
	TCase *tcase = tcase_create("engine");
	tcase_add_loop_test(tcase, every_cell_is_given, 0, (int)cells_read()->foods_n);
	tcase_add_test(tcase, no_other_food_has_a_table);
	tcase_add_test(tcase, no_other_cell_is_published);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(engine_suite(), program_suite())
