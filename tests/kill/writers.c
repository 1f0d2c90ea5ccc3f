#include "writers.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/prctl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../../src/household/migrations.h"
#include "jarwright/household.h"
#include "jarwright/household_log.h"
#include "suite.h"

static char folder[64], path[96], said_path[96];

static const char *program(void)
{
	const char *said = getenv("JARWRIGHT_PROGRAM");
	return said ? said : "build/jarwright";
}

int figure(const char *name, int otherwise)
{
	const char *said = getenv(name);
	return said ? (int)strtol(said, NULL, 10) : otherwise;
}

/* --- The file --- */

void writers_setup(void)
{
	snprintf(folder, sizeof folder, "/tmp/jarwright-kill-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	snprintf(said_path, sizeof said_path, "%s/said", folder);
	setenv("JARWRIGHT_DB", path, 1);
	setenv("TZ", "UTC", 1);
	/* What a killed writer was running is waited for here. */
	ck_assert_int_eq(prctl(PR_SET_CHILD_SUBREAPER, 1, 0, 0, 0), 0);
	writers_anew(false);
}

void writers_teardown(void)
{
	char command[96];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

static void must_exec(sqlite3 *db, const char *sql)
{
	ck_assert_msg(sqlite3_exec(db, sql, NULL, NULL, NULL) == SQLITE_OK, "%s",
		      sqlite3_errmsg(db));
}

/* As the program made them before there was a log. */
static void make_old(void)
{
	sqlite3 *db;
	char header[128];
	ck_assert_int_eq(sqlite3_open(path, &db), SQLITE_OK);
	snprintf(header, sizeof header, "PRAGMA application_id = %d; PRAGMA user_version = 2",
		 HOUSEHOLD_APPLICATION_ID);
	must_exec(db, header);
	must_exec(db, household_migrations[0]);
	must_exec(db, household_migrations[1]);
	must_exec(db, "INSERT INTO canner (name, kind) VALUES ('old pot', 'boiling-water')");
	must_exec(db, "PRAGMA journal_mode = WAL");
	sqlite3_close(db);
}

static void acks_name(int writer, char *out, size_t size)
{
	snprintf(out, size, "%s/acks-%d", folder, writer);
}

void writers_anew(bool old)
{
	char command[160];
	snprintf(command, sizeof command, "rm -f '%s'/*", folder);
	ck_assert_int_eq(system(command), 0);
	if (old)
		make_old();
}

/* --- Processes --- */

/* In the child. */
_Noreturn static void become_program(const char *const *words)
{
	const char *all[16] = {"jarwright"};
	int nowhere = open("/dev/null", O_WRONLY);
	int said = open(said_path, O_WRONLY | O_CREAT | O_APPEND, 0600);
	for (size_t i = 0; words[i] && i < 14; i++)
		all[i + 1] = words[i];
	if (nowhere >= 0 && said >= 0 && dup2(nowhere, 1) >= 0 && dup2(said, 2) >= 0)
		execv(program(), (char *const *)(void *)all);
	_exit(127);
}

int program_run(const char *const *words)
{
	int status;
	pid_t pid = fork();
	if (pid == 0)
		become_program(words);
	while (waitpid(pid, &status, 0) < 0)
		if (errno != EINTR)
			return -1;
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static int write_lot(int writer, int n)
{
	char name[32];
	snprintf(name, sizeof name, "%c-%d", 'a' + writer, n / 2);
	const char *const add[] = {"lot", "add", name, "--kind", "lids", NULL};
	const char *const finish[] = {"lot", "finish", name, NULL};
	return program_run(n % 2 ? finish : add);
}

_Noreturn static void write_on(int writer, int n)
{
	char name[96];
	acks_name(writer, name, sizeof name);
	int acks = open(name, O_WRONLY | O_CREAT | O_APPEND, 0600);
	for (; acks >= 0 && write_lot(writer, n) == 0; n++)
		if (write(acks, "+", 1) != 1)
			break;
	_exit(1);
}

_Noreturn static void read_on(void)
{
	const char *const shelf[] = {"lot", "list", NULL};
	const char *const verify[] = {"log", "verify", NULL};
	while (program_run(shelf) == 0 && program_run(verify) == 0)
		;
	_exit(1);
}

/* The group exists before anybody may want to kill it. */
static pid_t group_start(int writer, int from)
{
	pid_t pid = fork();
	ck_assert_int_ge(pid, 0);
	if (pid == 0) {
		setpgid(0, 0);
		if (writer < 0)
			read_on();
		write_on(writer, from);
	}
	setpgid(pid, pid);
	return pid;
}

pid_t writer_start(int writer, int from)
{
	return group_start(writer, from);
}

pid_t reader_start(void)
{
	return group_start(-1, 0);
}

bool groups_kill(const pid_t *groups, int n)
{
	bool at_work = true;
	int status;
	for (int i = 0; i < n; i++)
		ck_assert(kill(-groups[i], SIGKILL) == 0 || errno == ESRCH);
	for (int i = 0; i < n; i++) {
		ck_assert_int_eq(waitpid(groups[i], &status, 0), groups[i]);
		at_work = at_work && WIFSIGNALED(status);
		/* The program that it ran has become a child of this process. */
		while (waitpid(-groups[i], &status, 0) > 0)
			;
	}
	return at_work;
}

/* --- What became of it --- */

int acknowledged(int writer)
{
	struct stat is;
	char name[96];
	acks_name(writer, name, sizeof name);
	return stat(name, &is) == 0 ? (int)is.st_size : 0;
}

static int ask(sqlite3 *db, const char *sql, int writer, int limit)
{
	sqlite3_stmt *query;
	char letter[2] = {(char)('a' + writer), '\0'};
	ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &query, NULL) == SQLITE_OK, "%s",
		      sqlite3_errmsg(db));
	sqlite3_bind_text(query, 1, letter, -1, SQLITE_STATIC);
	sqlite3_bind_int(query, 2, limit);
	ck_assert_msg(sqlite3_step(query) == SQLITE_ROW, "%s", sqlite3_errmsg(db));
	int n = sqlite3_column_int(query, 0);
	sqlite3_finalize(query);
	return n;
}

/* Its writes with numbers below the limit. */
static int count_writes(sqlite3 *db, int writer, int limit)
{
	if (ask(db, "SELECT count(*) FROM sqlite_schema WHERE name = 'lot'", writer, 0) == 0)
		return 0;
	return ask(db,
		   "SELECT count(*) + coalesce(sum(finished AND 2 * substr(name, 3) + 1 < ?2), 0) "
		   "FROM lot WHERE substr(name, 1, 2) = ?1 || '-' AND 2 * substr(name, 3) < ?2",
		   writer, limit);
}

static sqlite3 *look(void)
{
	sqlite3 *db;
	ck_assert_int_eq(sqlite3_open(path, &db), SQLITE_OK);
	sqlite3_busy_timeout(db, 10000);
	return db;
}

int written(int writer)
{
	sqlite3 *db = look();
	int n = count_writes(db, writer, INT32_MAX);
	sqlite3_close(db);
	return n;
}

static void check_log(const char *what)
{
	static struct log_report report;
	struct household *db;
	struct error err = {0};
	if (!household_open(path, HOUSEHOLD_READ, &db, &err) ||
	    !household_verify(db, &report, &err))
		ck_abort_msg("%s: %s", what, err.text);
	ck_assert_msg(report.faults_n == 0, "%s: %s", what, report.faults[0].text);
	household_close(db);
}

int writers_check(int unacked, const char *what)
{
	int more = 0;
	sqlite3 *db = look();
	ck_assert_msg(
	    ask(db, "SELECT 1 FROM pragma_integrity_check WHERE integrity_check = 'ok'", 0, 0) == 1,
	    "%s: the file is damaged", what);
	bool logged = ask(db, "SELECT count(*) FROM sqlite_schema WHERE name = 'event'", 0, 0);
	for (int writer = 0; writer < WRITERS; writer++) {
		int acked = acknowledged(writer);
		int there = count_writes(db, writer, acked),
		    all = count_writes(db, writer, INT32_MAX);
		ck_assert_msg(there == acked, "%s: %d writes acknowledged, %d there", what, acked,
			      there);
		ck_assert_msg(all - acked <= unacked, "%s: %d writes nobody made", what,
			      all - acked - unacked);
		more += all - acked;
	}
	sqlite3_close(db);
	if (logged)
		check_log(what);
	return more;
}

const char *programs_said(void)
{
	static char said[4096];
	FILE *file = fopen(said_path, "rb");
	if (!file)
		return "";
	said[fread(said, 1, sizeof said - 1, file)] = '\0';
	fclose(file);
	return said;
}
