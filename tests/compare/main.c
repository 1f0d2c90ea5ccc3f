#include "compare_fixture.h"

SUITE_MAIN(compare_suite(), doubt_suite(), hostile_suite(), repair_suite())
