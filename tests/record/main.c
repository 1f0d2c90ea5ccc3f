#include "suite.h"
#include "suites.h"

SUITE_MAIN(traces_suite(), oracle_suite(), csv_suite(), csv_fuzz_suite(), plot_suite())
