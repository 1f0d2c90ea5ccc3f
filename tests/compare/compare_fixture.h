/* What the tests of comparison share: the formulas, and recipes made of them. */
#ifndef JARWRIGHT_TESTS_COMPARE_FIXTURE_H
#define JARWRIGHT_TESTS_COMPARE_FIXTURE_H

#include "jarwright/compare.h"
#include "suite.h"

/* The formulas of the edition, prepared once. */
const struct formula_set *fixture_formulas(void);

/* The lines of a formula that are in the jar: without the yield and what is printed as 0. */
#define FIXTURE_LINES_MAX 40
struct fixture_lines {
	const struct formula_line *line[FIXTURE_LINES_MAX];
	size_t n;
};
void fixture_lines_of(const struct formula *formula, struct fixture_lines *out);

/* Can it be held against itself? Not where the publication prints no amount of its produce. */
bool fixture_is_measured(const struct formula *formula);

/* The formula as a cook in the United States would write it down. recipe_release() it. */
void fixture_recipe_of(const struct formula *formula, struct recipe *out);
void fixture_recipe(const char *text, struct recipe *out);
/* The same amounts in another country's measures, exactly. */
void fixture_rewrite(struct recipe *recipe, enum measuring_system system);
/* Puts other words in the place of a line. */
void fixture_set_line(struct recipe *recipe, size_t line, const char *text);
/* Puts a line behind the last. */
void fixture_add_line(struct recipe *recipe, const char *text);
void fixture_scale_line(struct recipe *recipe, size_t line, int64_t num, int64_t den);

/* Vinegar labelled 5 %. */
extern const struct compare_facts fixture_facts;

enum verdict fixture_verdict(const struct recipe *recipe, const struct formula *formula);

bool fixture_speaks(const struct comparison *comparison, const char *rule);

Suite *compare_suite(void);
Suite *doubt_suite(void);
Suite *hostile_suite(void);
Suite *repair_suite(void);

#endif
