#include "suites.h"

SUITE_MAIN(power_suite(), disk_suite(), memory_suite())
