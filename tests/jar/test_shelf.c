#include "suites.h"
Suite *shelf_suite(void)
{
	return suite_create("shelf");
}
