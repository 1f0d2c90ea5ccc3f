#include "suites.h"
Suite *hostile_suite(void) { return suite_create("hostile"); }
Suite *migrate_suite(void) { return suite_create("migrate"); }
