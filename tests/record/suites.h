#ifndef JARWRIGHT_TESTS_RECORD_SUITES_H
#define JARWRIGHT_TESTS_RECORD_SUITES_H

#include <check.h>

Suite *traces_suite(void);
Suite *oracle_suite(void);
Suite *csv_suite(void);
Suite *csv_fuzz_suite(void);
Suite *plot_suite(void);

#endif
