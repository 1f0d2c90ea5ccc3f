#ifndef JARWRIGHT_TESTS_RECALL_SUITES_H
#define JARWRIGHT_TESTS_RECALL_SUITES_H

#include "suite.h"

Suite *touched_suite(void);
Suite *recalls_suite(void);

#endif
