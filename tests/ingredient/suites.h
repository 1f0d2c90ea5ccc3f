/* The suites of this folder. */
#ifndef JARWRIGHT_TESTS_INGREDIENT_SUITES_H
#define JARWRIGHT_TESTS_INGREDIENT_SUITES_H

#include "suite.h"

Suite *labelled_suite(void);
Suite *lines_suite(void);

#endif
