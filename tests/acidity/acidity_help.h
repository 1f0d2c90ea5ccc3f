/* Short ways to write a mixture, for the suites of the acidity estimate. */
#ifndef JARWRIGHT_TESTS_ACIDITY_HELP_H
#define JARWRIGHT_TESTS_ACIDITY_HELP_H

#include <check.h>

#include "jarwright/acidity.h"

struct acidity_part food(const char *name, double grams);
struct acidity_part acid(const char *name, double grams);
struct acidity_part vinegar(double ml, double strength_pct);
struct acidity_part salt(double grams);
struct acidity_part water(double grams);
/* A row of buffer that is so named and has buffers; fails the test if there is none. */
struct acidity_part titrated(const char *ingredient, double grams);

/* The estimate; fails the test with the message if there is none. */
struct acidity estimate(const struct acidity_part *parts, size_t n);

/* The pH by the solver alone; buffers of zero ionic strength are moved to `ionic`. */
double textbook(const struct acidity_charge *zero, double ionic);

double number(const char *text);

Suite *buffers_suite(void);
Suite *mixtures_suite(void);
Suite *properties_suite(void);

#endif
