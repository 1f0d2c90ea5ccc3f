#include "suite.h"
#include "suites.h"

SUITE_MAIN(log_suite(), sound_suite(), hostile_suite(), migrate_suite())
