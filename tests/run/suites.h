#ifndef JARWRIGHT_TESTS_RUN_SUITES_H
#define JARWRIGHT_TESTS_RUN_SUITES_H

#include <check.h>

Suite *steps_suite(void);    /* the steps of each canner, against the published rules */
Suite *machine_suite(void);  /* what events and time do, as examples and as properties */
Suite *terminal_suite(void); /* the command in a terminal of its own, by a clock of the test */

#endif
