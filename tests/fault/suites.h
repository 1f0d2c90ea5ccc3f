/* The parts of the fault suite, one a file. */
#ifndef JARWRIGHT_TESTS_FAULT_SUITES_H
#define JARWRIGHT_TESTS_FAULT_SUITES_H

#include "suite.h"

Suite *power_suite(void);
Suite *disk_suite(void);
Suite *memory_suite(void);

#endif
