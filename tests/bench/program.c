/* One question asked of the program and of the sqlite3 shell, run in turns. */
#include <fcntl.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "bench.h"

enum { RUNS = 300 };

static char query[] =
    "SELECT minutes, psi FROM process WHERE food = 'tomatoes-crushed' AND pack = 'hot' "
    "AND canner = 'dial-gauge' AND jar = 'pint' AND from_ft <= 2900 "
    "AND (to_ft IS NULL OR to_ft >= 2900)";

struct contestant {
	char *const *arguments;
	double seconds[RUNS];
	long peak_kib;
};

/* Starts it with its output thrown away. False: it did not start or did not answer. */
static bool run_once(struct contestant *contestant, int run)
{
	posix_spawn_file_actions_t actions;
	struct rusage usage;
	int status = 0;
	pid_t pid = -1;
	if (posix_spawn_file_actions_init(&actions) != 0)
		return false;
	(void)posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
	double start = bench_seconds();
	int error = posix_spawnp(&pid, contestant->arguments[0], &actions, NULL,
				 contestant->arguments, environ);
	bool answered = error == 0 && wait4(pid, &status, 0, &usage) == pid && WIFEXITED(status) &&
			WEXITSTATUS(status) == 0;
	contestant->seconds[run] = bench_seconds() - start;
	(void)posix_spawn_file_actions_destroy(&actions);
	if (!answered)
		(void)fprintf(stderr, "bench: %s gave no answer\n", contestant->arguments[0]);
	else if (usage.ru_maxrss > contestant->peak_kib)
		contestant->peak_kib = usage.ru_maxrss;
	return answered;
}

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a;
	double y = *(const double *)b;
	return (x > y) - (x < y);
}

static double median(struct contestant *contestant)
{
	qsort(contestant->seconds, RUNS, sizeof *contestant->seconds, by_size);
	return (contestant->seconds[RUNS / 2 - 1] + contestant->seconds[RUNS / 2]) / 2;
}

bool bench_program(const char *program, const char *database)
{
	char program_path[256];
	char database_path[256];
	(void)snprintf(program_path, sizeof program_path, "%s", program);
	(void)snprintf(database_path, sizeof database_path, "%s", database);
	char words[][24] = {"check",  "tomatoes-crushed", "--canner", "dial-gauge",  "--jar",
			    "pint",   "--pack",           "hot",      "--elevation", "2900ft",
			    "sqlite3"};
	char *const check[] = {program_path, words[0], words[1], words[2], words[3], words[4],
			       words[5],     words[6], words[7], words[8], words[9], NULL};
	char *const look_up[] = {words[10], database_path, query, NULL};
	struct contestant ours = {.arguments = check};
	struct contestant shell = {.arguments = look_up};
	for (int run = 0; run < RUNS; run++)
		if (!run_once(&ours, run) || !run_once(&shell, run))
			return false;
	double our_median = median(&ours);
	double shell_median = median(&shell);
	printf("one answer, %d runs of each in turns\n", RUNS);
	printf("  jarwright check    %6.2f ms median\n", our_median * 1e3);
	printf("  sqlite3 look-up    %6.2f ms median\n", shell_median * 1e3);
	printf("  ratio              %6.2f          goal <= 1.0\n", our_median / shell_median);
	printf("  peak memory        %6.2f MiB      goal < 10 MiB\n", (double)ours.peak_kib / 1024);
	return true;
}
