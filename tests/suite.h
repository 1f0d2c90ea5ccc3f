/* One Check program a folder under tests/: define the suite, then SUITE_MAIN(suite). */
#ifndef JARWRIGHT_TESTS_SUITE_H
#define JARWRIGHT_TESTS_SUITE_H

#include <check.h>
#include <stdlib.h>

/* Runs the suites and prints Check's closing line; CK_FORK=no runs them in one process. */
#define SUITE_MAIN(...)                                                                            \
	int main(void)                                                                             \
	{                                                                                          \
		Suite *suites[] = {__VA_ARGS__, NULL};                                             \
		SRunner *runner = srunner_create(suites[0]);                                       \
		for (size_t i = 1; suites[i]; i++)                                                 \
			srunner_add_suite(runner, suites[i]);                                      \
		srunner_run_all(runner, CK_ENV);                                                   \
		int failed = srunner_ntests_failed(runner);                                        \
		srunner_free(runner);                                                              \
		return failed ? EXIT_FAILURE : EXIT_SUCCESS;                                       \
	}

#endif
