#include "suites.h"

SUITE_MAIN(touched_suite(), recalls_suite())
