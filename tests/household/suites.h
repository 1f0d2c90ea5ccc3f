/* The parts of this folder's suite. */
#ifndef JARWRIGHT_TESTS_HOUSEHOLD_SUITES_H
#define JARWRIGHT_TESTS_HOUSEHOLD_SUITES_H

#include "jarwright/household.h"
#include "suite.h"

/* What the suites share: a folder of each test's own, and the household file in it. */
extern char folder[64];
extern char path[128];
extern struct error err;
void setup(void);
void teardown(void);
struct household *opened(enum household_access access);
/* Runs SQL on the file as another program would. */
void tamper(const char *sql);

Suite *recipes_suite(void);

#endif
