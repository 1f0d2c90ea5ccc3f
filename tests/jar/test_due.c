#include "suites.h"
Suite *due_suite(void)
{
	return suite_create("due");
}
