#include "compare_fixture.h"

SUITE_MAIN(compare_suite(), doubt_suite(), repair_suite())
