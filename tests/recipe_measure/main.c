#include "suites.h"

SUITE_MAIN(measure_suite(), units_pairs_suite(), mass_suite(), practical_suite())
