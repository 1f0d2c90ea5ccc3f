/* The charts for the wall: every food's tables, and what water does. */
#include <string.h>

#include "paper.h"

static char *chart_made(const struct food *food, struct elevation_mark here)
{
	struct collector c;
	struct table_chart chart = {.food = food, .here = here};
	for (size_t i = 0; i < food->tables_n; i++)
		chart.tables[chart.tables_n++] = &food->tables[i];
	collect(&c);
	table_chart_html(c.out, reference_edition(), &chart);
	char *html = collected(&c);
	assert_page(html);
	return html;
}

/* Head and cells of one column, in each table that has a column for the elevation. */
static int own_cells(const struct food *food, int32_t mft)
{
	int n = 0;
	for (size_t i = 0; i < food->tables_n; i++)
		if (table_band(reference_edition(), &food->tables[i], mft) >= 0)
			n += 1 + (int)food->tables[i].lines_n;
	return n;
}

START_TEST(every_food_has_a_chart)
{
	const struct reference *ref = reference_edition();
	static const int32_t places[] = {-1000, 0, 1000000, 1000001, 2900000, 9999000, 12000000};
	for (size_t f = 0; f < ref->foods_n; f++)
		for (size_t p = 0; p < sizeof places / sizeof *places; p++) {
			struct elevation_mark here = {true, places[p]};
			char *html = chart_made(&ref->foods[f], here);
			ck_assert_int_eq(count_of(html, "class=\"own\""),
					 own_cells(&ref->foods[f], places[p]));
			ck_assert_int_eq(count_of(html, "<table"), (int)ref->foods[f].tables_n);
			free(html);
		}
}
END_TEST

START_TEST(no_elevation_no_mark)
{
	const struct food *carrots = reference_food(reference_edition(), "carrots");
	ck_assert_ptr_nonnull(carrots);
	char *html = chart_made(carrots, (struct elevation_mark){.stated = false});
	assert_lacks(html, "class=\"own\"");
	assert_lacks(html, "your kitchen");
	free(html);
}
END_TEST

/* Carrots, dial gauge, quarts: 30 minutes at 12 psi from 2,001 ft (guide 4, p. 4-10). */
START_TEST(the_own_column_has_the_published_figures)
{
	const struct food *carrots = reference_food(reference_edition(), "carrots");
	ck_assert_ptr_nonnull(carrots);
	char *html = chart_made(carrots, (struct elevation_mark){true, 2001000});
	const char *quart = strstr(html, "<th scope=\"row\">quart</th>");
	ck_assert_ptr_nonnull(quart);
	const char *own = strstr(quart, "class=\"own\">");
	ck_assert_ptr_nonnull(own);
	static const char cell[] = "class=\"own\">30 <small>min</small> <span class=\"at\">"
				   "<small>at</small> 12 <small>psi</small></span></td>";
	ck_assert_int_eq(strncmp(own, cell, sizeof cell - 1), 0);
	free(html);
}
END_TEST

START_TEST(borders_and_heights_are_remarked)
{
	const struct food *carrots = reference_food(reference_edition(), "carrots");
	ck_assert_ptr_nonnull(carrots);
	static const struct {
		int32_t mft;
		bool near;
	} cases[] = {{1949000, false}, {1950000, true}, {2000000, true}, {2001000, false}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char *html = chart_made(carrots, (struct elevation_mark){true, cases[i].mft});
		/* 50 ft: our own margin, rule elevation-near-border */
		ck_assert_int_eq(strstr(html, "is within 50 ft of the next column") != NULL,
				 cases[i].near);
		free(html);
	}
	char *html = chart_made(carrots, (struct elevation_mark){true, 10001000});
	assert_holds(html, "is above this table");
	free(html);
}
END_TEST

/* Sweet spreads: 5 minutes and 1 for each 1,000 ft may be longer (guide 1, p. 1-30). */
START_TEST(sweet_spreads_are_told_of_the_longer_time)
{
	const struct reference *ref = reference_edition();
	char *jelly = chart_made(reference_food(ref, "apple-jelly-without-pectin"),
				 (struct elevation_mark){true, 2900000});
	assert_holds(jelly, "5 minutes plus 1 for each 1,000 ft");
	assert_holds(jelly, "the empty jars must be sterile");
	char *beets = chart_made(reference_food(ref, "pickled-beets"),
				 (struct elevation_mark){true, 2900000});
	assert_lacks(beets, "plus 1 for each");
	free(jelly);
	free(beets);
}
END_TEST

static char *boil_made(struct elevation_mark here)
{
	struct collector c;
	struct error err = {0};
	const struct boil_chart chart = {.here = here, .edition = "2026x"};
	collect(&c);
	ck_assert_msg(boil_chart_html(c.out, &chart, &err), "%s", err.text);
	char *html = collected(&c);
	assert_page(html);
	assert_holds(html, "<b>Not a process.</b>");
	return html;
}

START_TEST(water_boils_by_elevation)
{
	char *html = boil_made((struct elevation_mark){.stated = false});
	ck_assert_int_eq(count_of(html, "<tr"), 1 + 11);
	/* 212 F at sea level: Colorado State University Extension, as db/published-steam.txt. */
	assert_holds(html, "<tr><th scope=\"row\">0</th><td>0</td><td>212.0</td><td>100.0</td>");
	assert_lacks(html, "your kitchen");
	free(html);
	html = boil_made((struct elevation_mark){true, 2900000});
	ck_assert_int_eq(count_of(html, "<tr"), 1 + 12);
	ck_assert_int_eq(count_of(html, "<tr class=\"own\">"), 1);
	free(html);
	static const int32_t on_the_row_or_beyond[] = {3000000, 10000000, -200000, 11000500};
	for (size_t i = 0; i < 4; i++) {
		html = boil_made((struct elevation_mark){true, on_the_row_or_beyond[i]});
		ck_assert_int_eq(count_of(html, "<tr class=\"own\">"), 1);
		free(html);
	}
}
END_TEST

START_TEST(beyond_the_standard_atmosphere_there_is_no_chart)
{
	struct collector c;
	struct error err = {0};
	const struct boil_chart chart = {.here = {true, 40000000}, .edition = "2026x"};
	collect(&c);
	ck_assert(!boil_chart_html(c.out, &chart, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	free(collected(&c));
}
END_TEST

Suite *chart_suite(void)
{
	Suite *suite = suite_create("paper: charts");
	TCase *tcase = tcase_create("charts");
	tcase_add_test(tcase, every_food_has_a_chart);
	tcase_add_test(tcase, no_elevation_no_mark);
	tcase_add_test(tcase, the_own_column_has_the_published_figures);
	tcase_add_test(tcase, borders_and_heights_are_remarked);
	tcase_add_test(tcase, sweet_spreads_are_told_of_the_longer_time);
	tcase_add_test(tcase, water_boils_by_elevation);
	tcase_add_test(tcase, beyond_the_standard_atmosphere_there_is_no_chart);
	suite_add_tcase(suite, tcase);
	return suite;
}
