/* Files that are not what they should be: refused, or read with a reason, and never written to. */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <unistd.h>

#include "days.h"
#include "jarwright/household_canners.h"
#include "jarwright/household_log.h"
#include "jarwright/household_lots.h"
#include "suites.h"

static char folder[64];
static char path[128];
static struct error err;

/* A sound file with a few days in it, all invented, as one file without a write-ahead log. */
static void setup(void)
{
	uint64_t state = 17;
	struct household *db;
	snprintf(folder, sizeof folder, "%s/jarwright-hostile-XXXXXX",
		 access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	memset(&err, 0, sizeof err);
	if (!household_open(path, HOUSEHOLD_WRITE, &db, &err))
		ck_abort_msg("%s", err.text);
	log_days(db, &state, 60, 9);
	household_close(db);
}

static void teardown(void)
{
	char command[160];
	snprintf(command, sizeof command, "chmod -R u+rwx '%s'; rm -rf '%s'", folder, folder);
	ck_assert_int_eq(system(command), 0);
}

static void shell(const char *command)
{
	char text[512];
	snprintf(text, sizeof text, "cd '%s' && { %s; }", folder, command);
	ck_assert_int_eq(system(text), 0);
}

static void sql(const char *text)
{
	sqlite3 *raw;
	char *message = NULL;
	ck_assert_int_eq(sqlite3_open(path, &raw), SQLITE_OK);
	if (sqlite3_exec(raw, text, NULL, NULL, &message) != SQLITE_OK)
		ck_abort_msg("%s: %s", text, message);
	ck_assert_int_eq(sqlite3_close(raw), SQLITE_OK);
}

/* The bytes of the file, or of what a link leads to; what is no file has none. */
static char *digest(void)
{
	char command[256], *line = calloc(1, 160);
	struct stat is;
	ck_assert_ptr_nonnull(line);
	if (stat(path, &is) != 0 || !S_ISREG(is.st_mode))
		return line;
	snprintf(command, sizeof command, "sha256sum < '%s'", path);
	FILE *pipe = popen(command, "r");
	ck_assert_ptr_nonnull(pipe);
	ck_assert_ptr_nonnull(fgets(line, 160, pipe));
	ck_assert_int_eq(pclose(pipe), 0);
	return line;
}

/* Reads everything there is to read; whatever it answers, it answers. */
static void read_all(struct household *db)
{
	static struct log_report report;
	const struct log_name everything = {{NULL, NULL}};
	struct kitchen kitchen;
	struct canner_records canners;
	struct lots lots;
	struct log_entries entries;
	if (household_kitchen(db, &kitchen, &err))
		ck_assert_uint_le(kitchen.canners_n, KITCHEN_CANNERS_MAX);
	if (household_canner_records(db, true, &canners, &err))
		canner_records_release(&canners);
	if (household_lots(db, true, &lots, &err))
		lots_release(&lots);
	if (household_log_entries(db, &everything, 0, &entries, &err))
		log_entries_release(&entries);
	(void)household_verify(db, &report, &err);
}

/* Opens it; true if it opened. */
static bool try_open(enum household_access access)
{
	struct household *db;
	memset(&err, 0, sizeof err);
	if (!household_open(path, access, &db, &err)) {
		ck_assert_ptr_null(db);
		ck_assert_ptr_nonnull(strstr(err.text, "household file '"));
		ck_assert_ptr_nonnull(strchr(err.text, ';')); /* and what to do */
		return false;
	}
	if (access == HOUSEHOLD_READ)
		read_all(db);
	household_close(db);
	return true;
}

/* --- The files --- */

static void put(const char *name, const void *bytes, size_t n)
{
	char whole[200];
	snprintf(whole, sizeof whole, "%s/%s", folder, name);
	FILE *file = fopen(whole, "w");
	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fwrite(bytes, 1, n, file), n);
	ck_assert_int_eq(fclose(file), 0);
}

static void patch(long at, const void *bytes, size_t n)
{
	FILE *file = fopen(path, "r+");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_eq(fseek(file, at, SEEK_SET), 0);
	ck_assert_uint_eq(fwrite(bytes, 1, n, file), n);
	ck_assert_int_eq(fclose(file), 0);
}

static void make_socket(void)
{
	struct sockaddr_un address = {.sun_family = AF_UNIX};
	int fd = socket(AF_UNIX, SOCK_STREAM, 0);
	ck_assert_int_ge(fd, 0);
	ck_assert_int_eq(unlink(path), 0);
	snprintf(address.sun_path, sizeof address.sun_path, "%s", path);
	ck_assert_int_eq(bind(fd, (struct sockaddr *)&address, sizeof address), 0);
	close(fd);
}

static void make_foreign_wal(void)
{
	shell(
	    "sqlite3 other.db \"PRAGMA journal_mode=WAL; CREATE TABLE a (b); INSERT INTO a VALUES "
	    "(1);\" '.shell cp other.db-wal kitchen.db-wal' >/dev/null");
}

static void make_noise_wal(void)
{
	shell("head -c 40000 /dev/urandom > kitchen.db-wal");
}

static void make_noise_journal(void)
{
	shell("head -c 40000 /dev/urandom > kitchen.db-journal");
}

static void page_size_lie(void)
{
	patch(16, "\x00\x03", 2); /* 3: no power of two */
}

static void format_lie(void)
{
	patch(18, "\x09\x09", 2); /* file formats of the far future */
}

static void no_header(void)
{
	static const char zeros[100];
	patch(0, zeros, sizeof zeros);
}

static void schema_page(void)
{
	static const char noise[64] = "\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff";
	patch(100, noise, sizeof noise);
}

static void text_file(void)
{
	static const char text[] =
	    "a list of what to buy, long enough to be taken for a header: lids, "
	    "vinegar, salt, two dozen jars, and a new rack for the big pot\n";
	put("kitchen.db", text, sizeof text - 1);
}

static const struct {
	const char *what;
	void (*make)(void);
	const char *shell, *sql;
	/* What the message says; NULL: reading it is fine. */
	const char *refused;
	bool reads_only; /* writing to it would be fine too, and is not tried */
} files[] = {
    {"cut in the header", NULL, "truncate -s 60 kitchen.db", NULL, "household file", false},
    {"cut behind it", NULL, "truncate -s 100 kitchen.db", NULL, "damaged", false},
    {"cut in half", NULL, "truncate -s 100000 kitchen.db", NULL, "damaged", false},
    {"without a header", no_header, NULL, NULL, "not a household file", false},
    {"a page size that is none", page_size_lie, NULL, NULL, "not a household file", false},
    {"a format of the future", format_lie, NULL, NULL, "not a household file", false},
    {"noise for a schema", schema_page, NULL, NULL, "damaged", false},
    {"plain text", text_file, NULL, NULL, "not a household file", false},
    {"noise", NULL, "head -c 300000 /dev/urandom > kitchen.db", NULL, "not a household file",
     false},
    {"another program's id", NULL, NULL, "PRAGMA application_id = 7", "another program", false},
    {"another program's tables", NULL, "rm kitchen.db; sqlite3 kitchen.db 'CREATE TABLE a (b)'",
     NULL, "another program", false},
    {"a newer version", NULL, NULL, "PRAGMA user_version = 4000", "newer jarwright", false},
    {"a version below all", NULL, NULL, "PRAGMA user_version = -3", "another program", false},
    {"a trigger added", NULL, NULL,
     "CREATE TRIGGER t AFTER UPDATE ON kitchen BEGIN DELETE FROM recipe; END", "triggers", false},
    {"a view added", NULL, NULL, "CREATE VIEW v AS SELECT * FROM jar", "views", false},
    {"a view for a table", NULL, NULL,
     "PRAGMA foreign_keys = OFF; DROP TABLE recipe; CREATE VIEW recipe AS SELECT 1 AS id, 'a' AS "
     "name, 'us' AS system, 'x' AS source",
     "views", false},
    {"a folder", NULL, "rm kitchen.db; mkdir kitchen.db", NULL, "not a file", false},
    {"a pipe", NULL, "rm kitchen.db; mkfifo kitchen.db", NULL, "not a file", false},
    {"a socket", make_socket, NULL, NULL, "not a file", false},
    {"a device", NULL, "rm kitchen.db; ln -s /dev/zero kitchen.db", NULL, "not a file", false},
    {"a link to nothing", NULL, "rm kitchen.db; ln -s nowhere kitchen.db", NULL, "link", false},
    {"a link to itself", NULL, "rm kitchen.db; ln -s kitchen.db kitchen.db", NULL, "folder", false},
    {"a link to a file", NULL, "mv kitchen.db far.db; ln -s far.db kitchen.db", NULL, NULL, true},
    {"huge and empty behind", NULL, "truncate -s 256M kitchen.db", NULL, NULL, true},
    {"a table less", NULL, NULL, "PRAGMA foreign_keys = OFF; DROP TABLE canner", NULL, true},
    {"columns of other names", NULL, NULL, "ALTER TABLE kitchen RENAME COLUMN units TO u", NULL,
     true},
    {"a column of noise", NULL, NULL, "UPDATE chain SET name = CAST(x'ff' AS TEXT)", NULL, true},
    {"another file's write-ahead log", make_foreign_wal, NULL, NULL, NULL, true},
    {"noise for a write-ahead log", make_noise_wal, NULL, NULL, NULL, true},
    {"noise for a journal", make_noise_journal, NULL, NULL, NULL, true},
    {"nothing in it", NULL, "truncate -s 0 kitchen.db", NULL, NULL, true},
};

START_TEST(refused_or_read_and_never_written_to)
{
	if (files[_i].make)
		files[_i].make();
	if (files[_i].shell)
		shell(files[_i].shell);
	if (files[_i].sql)
		sql(files[_i].sql);
	char *before = digest();
	bool read = try_open(HOUSEHOLD_READ);
	if (files[_i].refused && read)
		ck_abort_msg("%s: was opened", files[_i].what);
	if (files[_i].refused && !strstr(err.text, files[_i].refused))
		ck_abort_msg("%s: '%s'", files[_i].what, err.text);
	if (!files[_i].reads_only && try_open(HOUSEHOLD_WRITE))
		ck_abort_msg("%s: was opened for writing", files[_i].what);
	char *after = digest();
	if (strcmp(before, after) != 0)
		ck_abort_msg("%s: was written to", files[_i].what);
	free(before);
	free(after);
}
END_TEST

/* One bit anywhere: read or refused, never crashed on, never written to. */
START_TEST(one_bit_turned)
{
	uint64_t state = (uint64_t)_i * 31 + 7;
	struct stat is;
	char whole[160], command[400];
	snprintf(whole, sizeof whole, "%s.whole", path);
	snprintf(command, sizeof command, "cp '%s' '%s'", path, whole);
	ck_assert_int_eq(system(command), 0);
	ck_assert_int_eq(stat(path, &is), 0);
	for (int n = 0; n < 40; n++) {
		/* Half of them in the header and the schema. */
		long at = (long)pick(&state, n % 2 ? (unsigned)is.st_size : 4096);
		char byte;
		FILE *file = fopen(path, "r");
		ck_assert_ptr_nonnull(file);
		ck_assert_int_eq(fseek(file, at, SEEK_SET), 0);
		ck_assert_uint_eq(fread(&byte, 1, 1, file), 1);
		fclose(file);
		byte = (char)(byte ^ (1 << pick(&state, 8)));
		patch(at, &byte, 1);
		char *before = digest();
		(void)try_open(HOUSEHOLD_READ);
		char *after = digest();
		ck_assert_str_eq(before, after);
		free(before);
		free(after);
		snprintf(command, sizeof command, "cp '%s' '%s'; rm -f '%s'-*", whole, path, path);
		ck_assert_int_eq(system(command), 0);
	}
}
END_TEST

/* --- What may not be written --- */

/* Runs as nobody, whom permissions bind as they do not bind the superuser. */
static int as_nobody(int (*run)(void))
{
	int status;
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0)
		_exit(geteuid() == 0 && setuid(65534) != 0 ? 77 : run());
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status));
	return WEXITSTATUS(status);
}

static int reads_and_verifies(void)
{
	static struct log_report report;
	char slashed[sizeof path + 1]; /* "//" is the same folder, and no name of a host */
	struct household *db;
	snprintf(slashed, sizeof slashed, "/%s", path);
	if (!household_open(slashed, HOUSEHOLD_READ, &db, &err))
		return 1;
	if (!household_verify(db, &report, &err) || report.faults_n != 0 || report.events_n == 0)
		return 2;
	household_close(db);
	if (household_open(path, HOUSEHOLD_WRITE, &db, &err))
		return 3;
	return strstr(err.text, "permissions") ? 0 : 4;
}

START_TEST(a_file_and_folder_that_may_not_be_written_are_read_and_verified)
{
	static const mode_t modes[][2] = {
	    {0444, 0777}, {0444, 0555}, {0644, 0555}}; /* the file's, the folder's */
	char *before = digest();
	ck_assert_int_eq(chmod(path, modes[_i][0]), 0);
	ck_assert_int_eq(chmod(folder, modes[_i][1]), 0);
	int status = as_nobody(reads_and_verifies);
	if (status == 77)
		fprintf(stderr, "skipped: this user may not become another\n");
	else if (status != 0)
		ck_abort_msg("step %d failed", status);
	ck_assert_int_eq(chmod(folder, 0700), 0);
	char *after = digest();
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

Suite *hostile_suite(void)
{
	Suite *suite = suite_create("hostile");
	TCase *tcase = tcase_create("files");
	tcase_set_timeout(tcase, 120);
	tcase_add_checked_fixture(tcase, setup, teardown);
	tcase_add_loop_test(tcase, refused_or_read_and_never_written_to, 0,
			    sizeof files / sizeof *files);
	tcase_add_loop_test(tcase, one_bit_turned, 0, 3);
	tcase_add_loop_test(tcase, a_file_and_folder_that_may_not_be_written_are_read_and_verified,
			    0, 3);
	suite_add_tcase(suite, tcase);
	return suite;
}
