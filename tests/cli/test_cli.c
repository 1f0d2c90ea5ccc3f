#include "suites.h"

SUITE_MAIN(options_suite(), help_suite(), program_suite())
