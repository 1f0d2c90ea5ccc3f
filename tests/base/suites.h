#ifndef JARWRIGHT_TESTS_BASE_SUITES_H
#define JARWRIGHT_TESTS_BASE_SUITES_H

#include <check.h>

Suite *error_suite(void);
Suite *text_suite(void);
Suite *spelling_suite(void);
Suite *instant_suite(void);
Suite *digest_suite(void);

#endif
