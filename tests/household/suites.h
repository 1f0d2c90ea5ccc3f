/* The parts of this folder's suite. */
#ifndef JARWRIGHT_TESTS_HOUSEHOLD_SUITES_H
#define JARWRIGHT_TESTS_HOUSEHOLD_SUITES_H

#include "suite.h"

Suite *recipes_suite(void);

#endif
