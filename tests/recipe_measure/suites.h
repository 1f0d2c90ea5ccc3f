#ifndef JARWRIGHT_TESTS_RECIPE_MEASURE_SUITES_H
#define JARWRIGHT_TESTS_RECIPE_MEASURE_SUITES_H

#include "suite.h"

Suite *measure_suite(void);
Suite *units_pairs_suite(void);
Suite *mass_suite(void);
Suite *practical_suite(void);

#endif
