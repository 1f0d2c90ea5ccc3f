#include "suites.h"

SUITE_MAIN(kill_suite(), two_suite())
