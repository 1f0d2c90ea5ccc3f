#include "suites.h"

SUITE_MAIN(options_suite(), help_suite(), topics_suite(), completion_suite(), program_suite())
