#include "suite.h"
#include "suites.h"

SUITE_MAIN(atmosphere_suite(), steam_suite(), canner_suite(), lethality_suite())
