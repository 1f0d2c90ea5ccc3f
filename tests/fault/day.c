#include "day.h"

#include <errno.h>
#include <fcntl.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../../src/cli/cli.h"
#include "disk.h"
#include "jarwright/household.h"
#include "jarwright/household_log.h"
#include "memory.h"
#include "suite.h"

#define WORDS_MAX 32

/* Words are parted by bars; "@" is the file of a recipe. */
/* NOLINTBEGIN(bugprone-suspicious-missing-comma): a line may go over two */
static const char *const day[] = {
    "kitchen|--elevation|2900ft|--units|us",
    "canner|add|big kettle|--kind|dial-gauge|--holds-pints|9|--at|2026-09-01 08:00",
    "canner|add|blue pot|--kind|boiling-water|--holds-pints|9|--at|2026-09-01 08:05",
    "canner|test|big kettle|--reads|12psi at 11psi|--on|2026-09-01|--at|2026-09-01 09:00",
    "recipe|add|plum chutney|@|--measures|imperial",
    "lot|add|wide lids|--kind|lids|--code|L-1|--dated|2026-03-02|--at|2026-09-01 09:05",
    "lot|add|cider vinegar|--kind|vinegar|--strength|5%|--at|2026-09-01 09:10",
    "batch|start|pickled-beets|--canner|blue pot|--jar|pint|--pack|hot|--vinegar|5%|--lot|wide "
    "lids|--lot|cider vinegar|--at|2026-09-14 12:00",
    "batch|load|26-001|--canner|blue pot|--jars|7 pints|--started|2026-09-14 "
    "13:00|--minutes|40|--uninterrupted",
    "batch|note|26-001|=1+1; it is pink|--at|2026-09-14 14:00",
    "batch|ph|26-001|3.9|--meter-calibrated|4.0,7.0|--at|2026-09-14 14:05",
    "batch|seal|26-001|1-6|--failed|7|--method|press|--at|2026-09-15 09:00",
    "jar|26-001-07|refrigerated|--at|2026-09-15 09:05",
    "batch|amend|26-001|--load|1|--minutes|41|--why|clock read wrong|--at|2026-09-15 09:20",
    "batch|finish|26-001|--at|2026-09-15 09:30",
    "jar|26-001|1-5|shelf|--place|cellar, left|--at|2026-09-15 10:00",
    "jar|26-001-06|given|--to|the neighbours|--at|2026-09-15 10:05",
    "undo|--at|2026-09-15 11:00",
    "recipe|remove|plum chutney",
    "batch|start|garlic in oil|--keep|refrigerator|--from|26-001-01|--at|2026-09-16 12:00",
    "recall|open|lot|wide lids|--why|they do not hold|--at|2026-09-17 12:00",
    "recall|record|R26-01|26-001|1-7|discarded|--at|2026-09-17 13:00",
    "recall|close|R26-01|--at|2026-09-17 14:00",
    "log|device|tablet",
    "log|rebuild",
};
/* NOLINTEND(bugprone-suspicious-missing-comma) */
#define DAY_N (sizeof day / sizeof *day)

/* What a child tells. */
struct told {
	bool acked_last;
	int syncs, writes;
	long allocations;
};

static char folder[64], path[96], recipe[96], errors[96];
static struct told *told;
static struct {
	unsigned char *bytes; /* NULL: no file */
	size_t n;
	char signature[SIGNATURE_SIZE];
} moments[DAY_N + 1];
static int statuses[DAY_N];

/* --- The file --- */

static void say_signature(char out[SIGNATURE_SIZE], const char *what)
{
	sqlite3 *db;
	sqlite3_stmt *query;
	struct stat is;
	out[0] = '\0';
	if (stat(path, &is) != 0)
		return;
	if (sqlite3_open(path, &db) != SQLITE_OK)
		ck_abort_msg("%s: cannot be opened", what);
	if (sqlite3_prepare_v2(db, "PRAGMA user_version", -1, &query, NULL) != SQLITE_OK ||
	    sqlite3_step(query) != SQLITE_ROW)
		ck_abort_msg("%s: %s", what, sqlite3_errmsg(db));
	bool empty = sqlite3_column_int(query, 0) == 0;
	sqlite3_finalize(query);
	const char *text =
	    "SELECT format('%s / %s / %s / %s%s%s', "
	    "(SELECT group_concat(kind) FROM (SELECT kind FROM event ORDER BY uuid)), "
	    "(SELECT group_concat(elevation_typed || units) FROM kitchen), "
	    "(SELECT group_concat(name) FROM recipe), "
	    "(SELECT group_concat(number || state) FROM jar), "
	    "(SELECT ' / ' || name FROM chain WHERE name = 'tablet'))";
	if (!empty) {
		if (sqlite3_prepare_v2(db, text, -1, &query, NULL) != SQLITE_OK ||
		    sqlite3_step(query) != SQLITE_ROW)
			ck_abort_msg("%s: %s", what, sqlite3_errmsg(db));
		snprintf(out, SIGNATURE_SIZE, "%s", (const char *)sqlite3_column_text(query, 0));
		/* Made, and nothing in it yet: as good as no file. */
		if (strcmp(out, " /  /  / ") == 0)
			out[0] = '\0';
		sqlite3_finalize(query);
	}
	if (sqlite3_prepare_v2(db, "PRAGMA integrity_check", -1, &query, NULL) != SQLITE_OK ||
	    sqlite3_step(query) != SQLITE_ROW)
		ck_abort_msg("%s: %s", what, sqlite3_errmsg(db));
	ck_assert_msg(strcmp((const char *)sqlite3_column_text(query, 0), "ok") == 0, "%s: %s",
		      what, sqlite3_column_text(query, 0));
	sqlite3_finalize(query);
	sqlite3_close(db);
}

static void remove_beside(const char *ending)
{
	char name[128];
	snprintf(name, sizeof name, "%s%s", path, ending);
	ck_assert_msg(unlink(name) == 0 || errno == ENOENT, "%s", name);
}

/* Closed, the file alone holds everything. */
static void keep_moment(size_t n)
{
	struct stat is;
	char wal[128];
	snprintf(wal, sizeof wal, "%s-wal", path);
	ck_assert_msg(stat(wal, &is) != 0, "a log is left beside the file");
	say_signature(moments[n].signature, "without a fault");
	if (stat(path, &is) != 0)
		return;
	moments[n].n = (size_t)is.st_size;
	moments[n].bytes = malloc(moments[n].n + 1);
	FILE *file = fopen(path, "rb");
	ck_assert(file && moments[n].bytes);
	ck_assert_uint_eq(fread(moments[n].bytes, 1, moments[n].n, file), moments[n].n);
	fclose(file);
}

void day_restore(size_t n)
{
	remove_beside("");
	remove_beside("-wal");
	remove_beside("-shm");
	remove_beside("-journal");
	if (!moments[n].bytes)
		return;
	FILE *file = fopen(path, "wb");
	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fwrite(moments[n].bytes, 1, moments[n].n, file), moments[n].n);
	ck_assert_int_eq(fclose(file), 0);
}

bool day_check(size_t least, size_t most, const char *what)
{
	char is[SIGNATURE_SIZE];
	struct household *db;
	struct error err = {0};
	static struct log_report report;
	say_signature(is, what);
	bool done = strcmp(is, moments[most].signature) == 0;
	bool same = strcmp(is, moments[least].signature) == 0;
	ck_assert_msg(done || same, "%s: it holds\n%s\nnot\n%s\n", what, is,
		      moments[least].signature);
	if (!household_open(path, HOUSEHOLD_READ, &db, &err) ||
	    !household_verify(db, &report, &err))
		ck_abort_msg("%s: %s", what, err.text);
	ck_assert_msg(report.faults_n == 0, "%s: %s", what, report.faults[0].text);
	household_close(db);
	return done && (!same || least == most);
}

/* --- Running --- */

static int run_command(size_t k)
{
	static char line[1024];
	char *words[WORDS_MAX + 1];
	int n = 0;
	snprintf(line, sizeof line, "jarwright|%s", day[k]);
	for (char *word = strtok(line, "|"); word && n < WORDS_MAX; word = strtok(NULL, "|"))
		words[n++] = strcmp(word, "@") == 0 ? recipe : word;
	words[n] = NULL;
	return cli_main(n, words);
}

/* A command closes its standard output when it has told everything. */
static void answer_nowhere(void)
{
	int nowhere = open("/dev/null", O_WRONLY);
	if (nowhere < 0 || dup2(nowhere, 1) < 0)
		_exit(99);
}

static void redirect(void)
{
	int said = open(errors, O_WRONLY | O_CREAT | O_TRUNC, 0600);
	if (said < 0 || dup2(said, 2) < 0)
		_exit(99);
	answer_nowhere();
}

/* Reads, and is never closed. */
static void read_on(void)
{
	sqlite3 *db;
	if (sqlite3_open_v2(path, &db, SQLITE_OPEN_READONLY, NULL) == SQLITE_OK)
		(void)sqlite3_exec(db, "SELECT count(*) FROM sqlite_schema", NULL, NULL, NULL);
}

_Noreturn static void child(size_t k, bool with_last, const struct fault *fault)
{
	redirect();
	if (fault->kind != FAULT_MEMORY)
		disk_install();
	if (fault->reader)
		read_on();
	if (with_last) {
		if (run_command(k - 1) != statuses[k - 1])
			_exit(98);
		told->acked_last = true;
		answer_nowhere();
	}
	disk_heal();
	if (fault->kind == FAULT_POWER)
		disk_lose_power(fault->n, fault->after, fault->seed);
	else if (fault->kind == FAULT_DISK)
		disk_refuse(fault->n, fault->code, fault->stays);
	else if (fault->kind == FAULT_MEMORY)
		memory_refuse(fault->n, fault->stays);
	int status = run_command(k);
	told->allocations = memory_heal();
	told->syncs = disk_syncs();
	told->writes = disk_writes();
	if (fault->kind == FAULT_POWER && fault->n > told->syncs)
		disk_cut_power();
	_exit(status);
}

static void read_errors(char *out, size_t size)
{
	FILE *file = fopen(errors, "rb");
	ck_assert_ptr_nonnull(file);
	out[fread(out, 1, size - 1, file)] = '\0';
	fclose(file);
}

void day_run(size_t k, bool with_last, const struct fault *fault, struct outcome *out)
{
	int status;
	*told = (struct told){0};
	pid_t pid = fork();
	ck_assert_int_ge(pid, 0);
	if (pid == 0)
		child(k, with_last, fault);
	ck_assert_int_eq(waitpid(pid, &status, 0), pid);
	*out = (struct outcome){.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1,
				.acked_last = told->acked_last,
				.syncs = told->syncs,
				.writes = told->writes,
				.allocations = told->allocations};
	read_errors(out->said, sizeof out->said);
}

/* --- The day --- */

size_t day_commands(void)
{
	return DAY_N;
}

const char *day_name(size_t k)
{
	return day[k];
}

int day_status(size_t k)
{
	return statuses[k];
}

int day_stride(int otherwise)
{
	const char *said = getenv("JARWRIGHT_FAULT_STRIDE");
	int stride = said ? (int)strtol(said, NULL, 10) : otherwise;
	return stride >= 1 ? stride : 1;
}

static void make_folder(void)
{
	/* In memory where there is such a folder: the failing disk is the only one that counts. */
	snprintf(folder, sizeof folder, "%s/jarwright-fault-XXXXXX",
		 access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	snprintf(recipe, sizeof recipe, "%s/chutney.txt", folder);
	snprintf(errors, sizeof errors, "%s/errors", folder);
	FILE *file = fopen(recipe, "w");
	ck_assert_ptr_nonnull(file);
	fputs("2 lb plums\n1 onion\n5/8 pint vinegar\n", file);
	ck_assert_int_eq(fclose(file), 0);
	setenv("JARWRIGHT_DB", path, 1);
	setenv("TZ", "UTC", 1);
}

void day_setup(void)
{
	struct outcome outcome;
	memory_install();
	make_folder();
	told = mmap(NULL, sizeof *told, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	ck_assert(told != MAP_FAILED);
	keep_moment(0);
	for (size_t k = 0; k < DAY_N; k++) {
		day_run(k, false, &(struct fault){0}, &outcome);
		statuses[k] = outcome.status;
		/* An answer may be "untested": goods for the refrigerator. */
		ck_assert_msg(outcome.status == 0 || outcome.status >= 3, "%s: %d: %s", day[k],
			      outcome.status, outcome.said);
		ck_assert_msg(outcome.status < 6, "%s: %d: %s", day[k], outcome.status,
			      outcome.said);
		keep_moment(k + 1);
	}
}

void day_teardown(void)
{
	char command[96];
	for (size_t i = 0; i <= DAY_N; i++)
		free(moments[i].bytes);
	memset(moments, 0, sizeof moments);
	munmap(told, sizeof *told);
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}
