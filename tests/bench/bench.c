/* make bench: bench PROGRAM REFERENCE-DATABASE */
#include "bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

double bench_seconds(void)
{
	struct timespec now;
	(void)clock_gettime(CLOCK_MONOTONIC, &now);
	return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

int main(int argc, char *argv[])
{
	if (argc != 3) {
		(void)fprintf(stderr, "usage: bench PROGRAM REFERENCE-DATABASE\n");
		return EXIT_FAILURE;
	}
	/* All of them, whatever one says. */
	bool ok = bench_program(argv[1], argv[2]);
	ok = bench_memory(argv[2]) && ok;
	ok = bench_recipes() && ok;
	ok = bench_record(argv[1]) && ok;
	ok = bench_import(argv[1]) && ok;
	ok = bench_report(argv[1]) && ok;
	return ok ? EXIT_SUCCESS : EXIT_FAILURE;
}
