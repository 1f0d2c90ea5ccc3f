#ifndef JARWRIGHT_TESTS_MEASURE_SUITES_H
#define JARWRIGHT_TESTS_MEASURE_SUITES_H

#include <check.h>

Suite *rational_suite(void);
Suite *rational_parse_suite(void);
Suite *quantity_suite(void);

#endif
