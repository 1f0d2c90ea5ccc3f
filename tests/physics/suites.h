#ifndef JARWRIGHT_TESTS_PHYSICS_SUITES_H
#define JARWRIGHT_TESTS_PHYSICS_SUITES_H

#include <check.h>

Suite *atmosphere_suite(void);
Suite *steam_suite(void);
Suite *canner_suite(void);
Suite *lethality_suite(void);

#endif
