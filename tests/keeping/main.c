#include "suite.h"
#include "suites.h"

SUITE_MAIN(export_suite(), import_suite(), merge_suite(), copies_suite())
