/*
 * The table compiler, run as the build runs it: the good sample is compiled, and
 * every fault is refused at its file and line. The samples are invented.
 */
#include "refusals.h"
#include "suite.h"

#include <errno.h>
#include <fcntl.h>
#include <spawn.h>
#include <sqlite3.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

enum { TEXT_MAX = 256 * 1024 };

static const char hash[] = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";

static char root[1024];     /* the project's folder: the tests are started there */
static char program[1024];  /* refbuild stands beside the tests' folder */
static char directory[256]; /* of this test; the working directory meanwhile */

static void setup(void)
{
	ssize_t length = readlink("/proc/self/exe", program, sizeof program - 32);

	ck_assert_int_gt(length, 0);
	program[length] = '\0';
	for (int i = 0; i < 2; i++) {
		char *slash = strrchr(program, '/');
		ck_assert_ptr_nonnull(slash);
		*slash = '\0';
	}
	snprintf(program + strlen(program), 32, "/refbuild");
	ck_assert_ptr_nonnull(getcwd(root, sizeof root - 64));
	snprintf(directory, sizeof directory, "/tmp/refbuild-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(directory));
	ck_assert_int_eq(chdir(directory), 0);
}

static void teardown(void)
{
	static const char *const files[] = {
	    "good.txt", "stderr",  "reference.db",      "again.db", "rule_ids.h",
	    "data.c",   "again.c", "reference.db.part", "long.txt", "data.c.part"};

	for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
		remove(files[i]);
	ck_assert_int_eq(chdir(root), 0);
	ck_assert_int_eq(rmdir(directory), 0);
}

static const char *in_root(const char *name)
{
	static char paths[4][2048];
	static size_t next;
	char *path = paths[next++ % 4];

	snprintf(path, sizeof paths[0], "%s/%s", root, name);
	return path;
}

static char *read_text(const char *path)
{
	static char texts[2][TEXT_MAX];
	static size_t next;
	char *text = texts[next++ % 2];
	FILE *file = fopen(path, "rb");

	ck_assert_msg(file != NULL, "%s: %s", path, strerror(errno));
	size_t length = fread(text, 1, TEXT_MAX - 1, file);
	ck_assert_uint_lt(length, TEXT_MAX - 1);
	fclose(file);
	text[length] = '\0';
	return text;
}

static void write_bytes(const char *path, const char *bytes, size_t length)
{
	FILE *file = fopen(path, "wb");

	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fwrite(bytes, 1, length, file), length);
	ck_assert_int_eq(fclose(file), 0);
}

static bool exists(const char *path)
{
	struct stat status;

	return stat(path, &status) == 0;
}

/* Runs refbuild with the arguments, up to a NULL; its exit code. Standard error goes to "stderr".
 */
static int run_arguments(const char *const *arguments)
{
	posix_spawn_file_actions_t actions;
	pid_t child;
	int status;

	posix_spawn_file_actions_init(&actions);
	posix_spawn_file_actions_addopen(&actions, 2, "stderr", O_WRONLY | O_CREAT | O_TRUNC, 0600);
	int failed =
	    posix_spawn(&child, program, &actions, NULL, (char *const *)arguments, environ);
	posix_spawn_file_actions_destroy(&actions);
	ck_assert_msg(failed == 0, "%s: %s", program, strerror(failed));
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status));
	return WEXITSTATUS(status);
}

#define run(...) run_arguments((const char *const[]){"refbuild", __VA_ARGS__, NULL})

static int run_tables(const char *text, const char *output)
{
	return run("tables", "--schema", in_root("schema/reference.sql"), "--checks",
		   in_root("schema/reference-checks.sql"), "--hash", hash, "--output", output,
		   text);
}

static char *good_text(void)
{
	return read_text(in_root("tests/refbuild/samples/good.txt"));
}

/* Compiles the good sample into reference.db. */
static void build_good(void)
{
	const char *text = good_text();

	write_bytes("good.txt", text, strlen(text));
	int code = run_tables("good.txt", "reference.db");
	ck_assert_str_eq(read_text("stderr"), "");
	ck_assert_int_eq(code, 0);
}

/* The one number that the query gives, or -1 if it gives no row. */
static int ask(const char *path, const char *sql)
{
	sqlite3 *db;
	sqlite3_stmt *row;
	int answer = -1;

	ck_assert_int_eq(sqlite3_open_v2(path, &db, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
	ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &row, NULL) == SQLITE_OK, "%s",
		      sqlite3_errmsg(db));
	if (sqlite3_step(row) == SQLITE_ROW)
		answer = sqlite3_column_int(row, 0);
	sqlite3_finalize(row);
	sqlite3_close(db);
	return answer;
}

START_TEST(a_process_is_found_by_its_band)
{
	build_good();
#define PEARS  "FROM process WHERE food = 'sour-pears' AND pack = 'raw' AND canner = 'boiling-water'"
#define AT(ft) " AND from_ft <= " #ft " AND (to_ft IS NULL OR to_ft >= " #ft ")"
	ck_assert_int_eq(ask("reference.db", "SELECT minutes " PEARS " AND jar = 'quart'" AT(1000)),
			 20);
	ck_assert_int_eq(ask("reference.db", "SELECT minutes " PEARS " AND jar = 'quart'" AT(1001)),
			 25);
	ck_assert_int_eq(ask("reference.db", "SELECT minutes " PEARS " AND jar = 'quart'" AT(9000)),
			 30);
	ck_assert_int_eq(
	    ask("reference.db", "SELECT psi IS NULL " PEARS " AND jar = 'quart'" AT(0)), 1);
	ck_assert_int_eq(ask("reference.db", "SELECT minutes " PEARS " AND jar = 'pint'" AT(9000)),
			 -1);
	ck_assert_int_eq(
	    ask("reference.db", "SELECT readings " PEARS " AND jar = 'half-pint'" AT(0)), 1);
	ck_assert_int_eq(ask("reference.db", "SELECT sterile " PEARS " AND jar = 'quart'" AT(0)),
			 1);
	ck_assert_int_eq(ask("reference.db", "SELECT count(*) FROM process WHERE food = 'beans'"
					     " AND jar = 'pint' AND from_ft = 2001"),
			 2);
}
END_TEST

START_TEST(the_lookup_is_by_index)
{
	build_good();
	ck_assert_int_eq(
	    ask("reference.db", "SELECT count(*) FROM sqlite_schema WHERE name = 'process'"), 1);
	sqlite3 *db;
	sqlite3_stmt *plan;
	ck_assert_int_eq(sqlite3_open_v2("reference.db", &db, SQLITE_OPEN_READONLY, NULL),
			 SQLITE_OK);
	ck_assert_int_eq(sqlite3_prepare_v2(db,
					    "EXPLAIN QUERY PLAN SELECT minutes " PEARS
					    " AND jar = 'quart'" AT(500),
					    -1, &plan, NULL),
			 SQLITE_OK);
	int steps = 0;
	for (; sqlite3_step(plan) == SQLITE_ROW; steps++) {
		const char *step = (const char *)sqlite3_column_text(plan, 3);
		ck_assert_msg(strncmp(step, "SEARCH ", 7) == 0, "not by index: %s", step);
	}
	ck_assert_int_eq(steps, 4);
	sqlite3_finalize(plan);
	sqlite3_close(db);
}
END_TEST

START_TEST(rows_keep_their_place_and_values)
{
	build_good();
	ck_assert_int_eq(ask("reference.db", "SELECT file_line FROM process_table WHERE file = "
					     "'good.txt' AND food = 'beans'"),
			 79);
	ck_assert_int_eq(ask("reference.db", "SELECT headspace_milli_in FROM food WHERE slug = "
					     "'sour-pears'"),
			 500);
	ck_assert_int_eq(ask("reference.db", "SELECT note = 'first note' || char(10) || "
					     "'second note, \303\274ber' FROM food WHERE slug = "
					     "'sour-pears'"),
			 1);
	ck_assert_int_eq(ask("reference.db", "SELECT words = '|8 oz jar|small jar|jelly jar|' FROM "
					     "jar WHERE name = 'half-pint'"),
			 1);
	ck_assert_int_eq(ask("reference.db", "SELECT limit_milli FROM rule WHERE unit = 'pH'"),
			 4600);
	ck_assert_int_eq(ask("reference.db",
			     "SELECT source_place = 'p. 9' FROM process_table WHERE "
			     "source_id = 'book-two'"),
			 1);
	ck_assert_int_eq(ask("reference.db",
			     "SELECT note = 'only in wide-mouth jars; see p. 4' FROM "
			     "process_line WHERE readings = 2"),
			 1);
	ck_assert_int_eq(ask("reference.db", "SELECT adjc_mol_l = '-0.01' FROM buffer"), 1);
}
END_TEST

START_TEST(the_same_text_gives_the_same_bytes)
{
	build_good();
	ck_assert_int_eq(run_tables("good.txt", "again.db"), 0);
	ck_assert_int_eq(run("data", "--database", "reference.db", "--output", "data.c"), 0);
	ck_assert_int_eq(run("data", "--database", "again.db", "--output", "again.c"), 0);
	ck_assert_str_eq(read_text("data.c"), read_text("again.c"));
	/* A database is no text, so it is compared byte by byte. */
	FILE *one = fopen("reference.db", "rb");
	FILE *two = fopen("again.db", "rb");
	ck_assert(one && two);
	for (int byte = 0; byte != EOF;) {
		byte = getc(one);
		ck_assert_int_eq(byte, getc(two));
	}
	fclose(one);
	fclose(two);
}
END_TEST

START_TEST(rules_are_numbered_in_the_order_of_the_text)
{
	build_good();
	ck_assert_int_eq(run("rule-ids", "--database", "reference.db", "--output", "rule_ids.h"),
			 0);
	ck_assert_str_eq(read_text("rule_ids.h"),
			 "/* Generated from the rules in db/; do not edit. */\n"
			 "#ifndef JARWRIGHT_RULE_IDS_H\n"
			 "#define JARWRIGHT_RULE_IDS_H\n\n"
			 "/* The rules of the engine, in the order of the tables. */\n"
			 "enum rule_id {\n"
			 "\tRULE_FIRST_RULE,\n"
			 "\tRULE_A_SECOND_RULE,\n"
			 "\tRULE_COUNT\n"
			 "};\n\n"
			 "#endif\n");
}
END_TEST

/* The text must hold the parts in this order. */
static void assert_in_order(const char *text, const char *const *parts, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		text = strstr(text, parts[i]);
		ck_assert_msg(text != NULL, "not there, or not in its place: %s", parts[i]);
		text += strlen(parts[i]);
	}
}

START_TEST(data_is_escaped_and_sorted)
{
	/* A quart is 32 US fluid ounces of 29.5735295625 mL (NIST Handbook 44, appendix C). */
	static const char *const parts[] = {
	    ".title = \"The Invented Book of \\\"Jars\\\" \\\\ volume 1\"",
	    ".words = \"|8 oz jar|small jar|jelly jar|\"",
	    ".volume_nl = INT64_C(946352946), .namesake_ml = NONE",
	    "{.minutes = 15, .psi = 0},\n\t{.minutes = 20, .psi = 0},\n\t{.minutes = 0, .psi = 0},",
	    ".jar = JAR_HALF_PINT, .readings = 1, .marks = 0",
	    ".jar = JAR_PINT, .readings = 3, .marks = 0",
	    ".jar = JAR_QUART, .readings = 2, .marks = LINE_STERILE_JARS",
	    ".slug = \"beans\"",
	    ".slug = \"plain-curd\"",
	    ".acid_class = ACID_CLASS_UNSTATED, .acid_need = 0, .doses = NULL, .doses_n = 0",
	    ".slug = \"sour-pears\"",
	    "ACID_NEED_VINEGAR | ACID_NEED_PER_JAR | ACID_MAY_BE_JUICE",
	    ".note = \"first note\\nsecond note, \\303\\274ber\"",
	    ".steps = \"peel\\?\\?/\"",
	    "{.word = \"bean\", .food = &food_rows[0]}",
	    "{.word = \"bean\", .food = &food_rows[2]}",
	    "{.word = \"green bean\", .food = &food_rows[0]}",
	    ".facet = FACET_CONTAINER, .slug = \"shoebox\", .words = \"|shoebox|shoe box|\"",
	    ".refused = true",
	    ".id = \"first-rule\"",
	    ".limit_milli = 4600, .unit = \"pH\"",
	    ".limit_milli = NONE, .unit = \"\"",
	    ".topic = \"cooling\"",
	    ".topic = \"wiping\"",
	    ".strength = \"light\", .percent_sugar = \"20\", .water_cups_9pt = \"5.75\"",
	    ".edition = \"sample\"",
	    hash,
	};

	build_good();
	ck_assert_int_eq(run("data", "--database", "reference.db", "--output", "data.c"), 0);
	assert_in_order(read_text("data.c"), parts, sizeof parts / sizeof parts[0]);
}
END_TEST

static size_t line_of(const char *text, const char *part)
{
	const char *found = strstr(text, part);
	size_t line = 1;

	ck_assert_msg(found != NULL, "not in the sample: %s", part);
	for (const char *at = text; at < found; at++)
		line += *at == '\n';
	return line;
}

/* Writes the good sample with one edit to good.txt, and returns it. */
static const char *write_edited(const char *from, const char *to)
{
	static char bad[TEXT_MAX];
	const char *good = good_text();
	const char *at = strstr(good, from);

	ck_assert_msg(at != NULL, "not in the sample: %s", from);
	ck_assert_msg(strstr(at + 1, from) == NULL, "twice in the sample: %s", from);
	snprintf(bad, sizeof bad, "%.*s%s%s", (int)(at - good), good, to, at + strlen(from));
	write_bytes("good.txt", bad, strlen(bad));
	return bad;
}

START_TEST(a_fault_is_refused_at_its_line)
{
	const struct refusal *refusal = &refusals[_i];
	static char expected[2048];
	const char *bad = write_edited(refusal->from, refusal->to);
	int code = run_tables("good.txt", "reference.db");

	snprintf(expected, sizeof expected,
		 "good.txt:%zu: %s\nrefbuild: the tables hold 1 fault; nothing was built\n",
		 line_of(bad, refusal->at), refusal->message);
	ck_assert_str_eq(read_text("stderr"), expected);
	ck_assert_int_eq(code, 1);
	ck_assert(!exists("reference.db"));
	ck_assert(!exists("reference.db.part"));
}
END_TEST

START_TEST(jars_out_of_order_are_refused)
{
	write_edited("jar 12-ounce\n  fl-oz     12\n  source    book-one p. 1\njar pint\n",
		     "jar pint\n  fl-oz     12\n  source    book-one p. 1\njar 12-ounce\n");
	ck_assert_int_eq(run_tables("good.txt", "reference.db"), 1);
	ck_assert_str_eq(
	    read_text("stderr"),
	    "good.txt:26: jar pint stands where jar 12-ounce must: all eight, smallest first\n"
	    "good.txt:29: jar 12-ounce stands where jar pint must: all eight, smallest first\n"
	    "refbuild: the tables hold 2 faults; nothing was built\n");
}
END_TEST

START_TEST(a_nul_or_an_over_long_line_is_refused)
{
	static char text[4003];

	write_bytes("long.txt", "edition a\n  note b\0c\n", 21);
	ck_assert_int_eq(run_tables("long.txt", "reference.db"), 1);
	ck_assert_ptr_nonnull(
	    strstr(read_text("stderr"),
		   "long.txt:2: not plain text: a control character, or not UTF-8\n"));
	memset(text, '#', sizeof text);
	text[4001] = '\n';
	write_bytes("long.txt", text, 4002);
	ck_assert_int_eq(run_tables("long.txt", "reference.db"), 1);
	ck_assert_ptr_nonnull(
	    strstr(read_text("stderr"), "long.txt:1: line of 4001 bytes; at most 4000 are read\n"));
}
END_TEST

START_TEST(every_fault_is_said)
{
	static const char text[] = "edition a\n  colour red\n  size 3\nfood x\n";

	write_bytes("long.txt", text, strlen(text));
	ck_assert_int_eq(run_tables("long.txt", "reference.db"), 1);
	ck_assert_str_eq(read_text("stderr"),
			 "long.txt:2: unknown field 'colour' in edition a\n"
			 "long.txt:3: unknown field 'size' in edition a\n"
			 "long.txt:4: food x has no source\n"
			 "refbuild: the tables hold 3 faults; nothing was built\n");
}
END_TEST

START_TEST(a_failure_leaves_the_output_before_it)
{
	build_good();
	write_bytes("data.c", "before", 6);
	write_bytes("long.txt", "not a database", 14);
	ck_assert_int_eq(run("data", "--database", "long.txt", "--output", "data.c"), 1);
	ck_assert_str_eq(read_text("data.c"), "before");
	ck_assert(!exists("data.c.part"));
	ck_assert_int_eq(run("data", "--database", "missing.db", "--output", "data.c"), 1);
	ck_assert_int_eq(run("data", "--database", "reference.db", "--output", "none/data.c"), 1);
	ck_assert_str_eq(
	    read_text("stderr"),
	    "refbuild: none/data.c.part: cannot be written: No such file or directory\n");
	ck_assert_int_eq(run_tables("missing.txt", "reference.db"), 1);
	ck_assert_str_eq(read_text("stderr"),
			 "refbuild: missing.txt: cannot be opened: No such file or directory\n");
	ck_assert_int_eq(ask("reference.db", "SELECT count(*) FROM edition"), 1);
}
END_TEST

START_TEST(wrong_usage_is_refused)
{
	ck_assert_int_eq(run("tables", "--output", "reference.db"), 1);
	ck_assert_int_eq(strncmp(read_text("stderr"), "usage: refbuild ", 16), 0);
	ck_assert_int_eq(run("bake", "--database", "x", "--output", "y"), 1);
	ck_assert_int_eq(strncmp(read_text("stderr"), "usage: refbuild ", 16), 0);
	ck_assert_int_eq(run(""), 1);
	ck_assert_int_eq(strncmp(read_text("stderr"), "usage: refbuild ", 16), 0);
}
END_TEST

static Suite *refbuild_suite(void)
{
	Suite *suite = suite_create("refbuild");
	TCase *good = tcase_create("good");
	TCase *bad = tcase_create("bad");

	tcase_add_checked_fixture(good, setup, teardown);
	tcase_add_test(good, a_process_is_found_by_its_band);
	tcase_add_test(good, the_lookup_is_by_index);
	tcase_add_test(good, rows_keep_their_place_and_values);
	tcase_add_test(good, the_same_text_gives_the_same_bytes);
	tcase_add_test(good, rules_are_numbered_in_the_order_of_the_text);
	tcase_add_test(good, data_is_escaped_and_sorted);
	suite_add_tcase(suite, good);
	tcase_add_checked_fixture(bad, setup, teardown);
	tcase_add_loop_test(bad, a_fault_is_refused_at_its_line, 0, (int)refusals_n);
	tcase_add_test(bad, jars_out_of_order_are_refused);
	tcase_add_test(bad, a_nul_or_an_over_long_line_is_refused);
	tcase_add_test(bad, every_fault_is_said);
	tcase_add_test(bad, a_failure_leaves_the_output_before_it);
	tcase_add_test(bad, wrong_usage_is_refused);
	suite_add_tcase(suite, bad);
	return suite;
}

SUITE_MAIN(refbuild_suite())
