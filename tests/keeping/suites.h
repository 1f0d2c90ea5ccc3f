#ifndef JARWRIGHT_TESTS_KEEPING_SUITES_H
#define JARWRIGHT_TESTS_KEEPING_SUITES_H

#include <check.h>

Suite *export_suite(void);
Suite *import_suite(void);
Suite *merge_suite(void);
Suite *copies_suite(void);

#endif
