#include "suites.h"

SUITE_MAIN(states_suite(), moves_suite(), shelf_suite(), due_suite())
