#include "suite.h"

#include "acidity_help.h"

SUITE_MAIN(buffers_suite(), mixtures_suite(), properties_suite())
