#ifndef JARWRIGHT_TESTS_LOG_SUITES_H
#define JARWRIGHT_TESTS_LOG_SUITES_H

#include <check.h>

Suite *log_suite(void);
Suite *sound_suite(void);
Suite *hostile_suite(void);
Suite *migrate_suite(void);

#endif
