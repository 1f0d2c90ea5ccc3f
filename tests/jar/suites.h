#ifndef JARWRIGHT_TESTS_JAR_SUITES_H
#define JARWRIGHT_TESTS_JAR_SUITES_H

#include "suite.h"

Suite *states_suite(void);
Suite *moves_suite(void);
Suite *shelf_suite(void);
Suite *due_suite(void);

#endif
