#include "suites.h"

SUITE_MAIN(lines_suite(), labelled_suite())
