/* A record of a million rows, read, judged and plotted by the program. The rows are invented. */
#include <fcntl.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "bench.h"

enum { ROWS = 1000000, ROWS_A_SECOND = 100, RUNS = 5, PATH_SIZE = 64 };

/* A pressure canner: heating, venting, the pressure, 2 hours of process with one dip, cooling. */
static void row_of(int row, double *fahrenheit, double *psi)
{
	double s = (double)row / ROWS_A_SECOND;
	*psi = 0;
	if (s < 900) {
		*fahrenheit = 60 + s * 152 / 900;
	} else if (s < 1560) {
		*fahrenheit = 212.2;
	} else if (s < 1800) {
		*fahrenheit = 212.2 + (s - 1560) * 31 / 240;
		*psi = (s - 1560) * 11.5 / 240;
	} else if (s < 9000) {
		*fahrenheit = 243.2 + 0.1 * (row % 7) - (row == ROWS / 5 ? 6 : 0);
		*psi = 11.5;
	} else {
		*fahrenheit = 243 - (s - 9000) * 0.06;
	}
}

static bool write_record(const char *path)
{
	FILE *file = fopen(path, "we");
	if (!file)
		return false;
	(void)fputs("Time,Temp (F),Pressure (psig)\n", file);
	for (int row = 0; row < ROWS; row++) {
		double fahrenheit;
		double psi;
		int s = row / ROWS_A_SECOND;
		row_of(row, &fahrenheit, &psi);
		(void)fprintf(file, "2026-11-25 %02d:%02d:%02d.%02d,%.2f,%.2f\n", s / 3600,
			      s / 60 % 60, s % 60, row % ROWS_A_SECOND, fahrenheit, psi);
	}
	bool lost = ferror(file) != 0;
	return fclose(file) == 0 && !lost;
}

/* Runs it once, its answer thrown away. False: it gave none, or not that of a held load. */
static bool run_once(char *const arguments[], double *seconds, long *peak_kib)
{
	posix_spawn_file_actions_t actions;
	struct rusage usage;
	int status = 0;
	pid_t pid = -1;
	if (posix_spawn_file_actions_init(&actions) != 0)
		return false;
	(void)posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
	double start = bench_seconds();
	bool ran = posix_spawnp(&pid, arguments[0], &actions, NULL, arguments, environ) == 0 &&
		   wait4(pid, &status, 0, &usage) == pid && WIFEXITED(status) &&
		   WEXITSTATUS(status) == 0;
	double took = bench_seconds() - start;
	(void)posix_spawn_file_actions_destroy(&actions);
	if (!ran)
		return false;
	if (took > *seconds)
		*seconds = took;
	if (usage.ru_maxrss > *peak_kib)
		*peak_kib = usage.ru_maxrss;
	return true;
}

static bool measure(const char *program, const char *record, const char *plot)
{
	char line[512];
	char *arguments[24] = {NULL};
	double seconds = 0;
	long peak_kib = 0;
	struct stat drawn;
	(void)snprintf(line, sizeof line,
		       "%s record %s asparagus --canner dial-gauge --jar pint --pack raw "
		       "--elevation 0ft --vented 10min --svg %s",
		       program, record, plot);
	size_t n = 0;
	char *rest = NULL;
	for (char *word = strtok_r(line, " ", &rest); word; word = strtok_r(NULL, " ", &rest))
		arguments[n++] = word;
	if (n == 0)
		return false;
	for (int run = 0; run < RUNS; run++) {
		(void)unlink(plot);
		if (!run_once(arguments, &seconds, &peak_kib) || stat(plot, &drawn) != 0)
			return false;
	}
	printf("a record of %d rows, read, judged and plotted, worst of %d runs\n", ROWS, RUNS);
	printf("  time               %6.2f s        goal < 2 s\n", seconds);
	printf("  peak memory        %6.2f MiB      goal < 64 MiB\n", (double)peak_kib / 1024);
	printf("  plot               %6.1f KiB\n", (double)drawn.st_size / 1024);
	return true;
}

bool bench_record(const char *program)
{
	char folder[] = "/tmp/bench-record-XXXXXX";
	char record[PATH_SIZE];
	char plot[PATH_SIZE];
	if (!mkdtemp(folder))
		return false;
	(void)snprintf(record, sizeof record, "%s/million.csv", folder);
	(void)snprintf(plot, sizeof plot, "%s/million.svg", folder);
	bool ok = write_record(record) && measure(program, record, plot);
	if (!ok)
		(void)fprintf(stderr, "bench: the record gave no answer\n");
	(void)unlink(record);
	(void)unlink(plot);
	(void)rmdir(folder);
	return ok;
}
