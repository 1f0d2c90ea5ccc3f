#include "suite.h"
#include "suites.h"

SUITE_MAIN(error_suite(), text_suite(), spelling_suite(), instant_suite(), digest_suite())
