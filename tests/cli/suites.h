/* The parts of this folder's suite. */
#ifndef JARWRIGHT_TESTS_CLI_SUITES_H
#define JARWRIGHT_TESTS_CLI_SUITES_H

#include "suite.h"

Suite *options_suite(void);
Suite *help_suite(void);
Suite *topics_suite(void);
Suite *completion_suite(void);
Suite *program_suite(void);

#endif
