#include "compare_fixture.h"

SUITE_MAIN(compare_suite(), repair_suite())
