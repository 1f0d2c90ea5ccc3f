/* The parts of the kill suite, one a file. */
#ifndef JARWRIGHT_TESTS_KILL_SUITES_H
#define JARWRIGHT_TESTS_KILL_SUITES_H

#include "suite.h"

Suite *kill_suite(void);
Suite *two_suite(void);

#endif
