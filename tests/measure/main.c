#include "suite.h"
#include "suites.h"

SUITE_MAIN(rational_suite(), rational_parse_suite(), quantity_suite())
