#include "suite.h"
#include "suites.h"

SUITE_MAIN(steps_suite(), machine_suite(), terminal_suite())
