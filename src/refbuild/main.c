/*
 * refbuild: compiles the text tables of db/ into the reference database, and the
 * database into C. A program of the build; exits 0, or 1 with every fault said.
 */
#include "check.h"
#include "database.h"
#include "emit.h"
#include "input.h"
#include "load.h"
#include "output.h"

#include <getopt.h>
#include <stdlib.h>
#include <string.h>

static const char usage[] =
    "usage: refbuild tables --schema FILE --checks FILE --hash HEX --output DATABASE TABLE...\n"
    "       refbuild rule-ids --database DATABASE --output FILE\n"
    "       refbuild data --database DATABASE --output FILE\n";

struct options {
	const char *schema;
	const char *checks;
	const char *hash;
	const char *database;
	const char *output;
	char **files;
	int files_n;
};

static bool parse_options(int argc, char **argv, struct options *options)
{
	static const struct option names[] = {
	    {"schema", required_argument, NULL, 's'}, {"checks", required_argument, NULL, 'c'},
	    {"hash", required_argument, NULL, 'h'},   {"database", required_argument, NULL, 'd'},
	    {"output", required_argument, NULL, 'o'}, {NULL, 0, NULL, 0},
	};
	int option;

	*options = (struct options){0};
	while ((option = getopt_long(argc, argv, "", names, NULL)) != -1) {
		if (option == 's')
			options->schema = optarg;
		else if (option == 'c')
			options->checks = optarg;
		else if (option == 'h')
			options->hash = optarg;
		else if (option == 'd')
			options->database = optarg;
		else if (option == 'o')
			options->output = optarg;
		else
			return false;
	}
	options->files = argv + optind;
	options->files_n = argc - optind;
	return options->output != NULL;
}

static bool run_schema(sqlite3 *db, const char *path, struct error *err)
{
	struct input input;

	if (!input_open(&input, path, err))
		return false;
	bool ok = database_run(db, input.text, err);
	input_close(&input);
	return ok || error_context(err, "%s", path);
}

static bool store_hash(sqlite3 *db, const char *hash, struct error *err)
{
	sqlite3_stmt *update;

	if (strlen(hash) != 64 || strspn(hash, "0123456789abcdef") != 64)
		return error_failed(err, "--hash: not a SHA-256 in lower-case hex: %s", hash);
	if (!database_prepare(db, "UPDATE edition SET content_hash = ?1", &update, err) ||
	    !database_bound(update, sqlite3_bind_text(update, 1, hash, -1, SQLITE_STATIC), err))
		return false;
	while (database_next(update))
		;
	return database_ended(update, err);
}

/* Reads all files; the checks run only over tables that could all be read. */
static bool fill(sqlite3 *db, const struct options *options, struct error *err)
{
	struct problems problems = {0};
	struct loader loader = {.db = db, .problems = &problems};

	if (!run_schema(db, options->schema, err) || !database_run(db, "BEGIN", err))
		return false;
	for (int i = 0; i < options->files_n; i++)
		if (!load_file(&loader, options->files[i], err))
			return false;
	if (!store_hash(db, options->hash, err) || !database_run(db, "COMMIT", err))
		return false;
	if (problems.count == 0 && (!check_references(db, &problems, err) ||
				    !check_queries(db, options->checks, &problems, err)))
		return false;
	return problems.count == 0 ||
	       error_failed(err, "the tables hold %zu fault%s; nothing was built", problems.count,
			    problems.count == 1 ? "" : "s");
}

/* Writes the database in memory to a file, packed. */
static bool save(sqlite3 *db, const char *path, struct error *err)
{
	struct output output;
	sqlite3_stmt *vacuum;

	if (!output_name(&output, path, err))
		return false;
	bool ok =
	    database_prepare(db, "VACUUM INTO ?1", &vacuum, err) &&
	    database_bound(vacuum,
			   sqlite3_bind_text(vacuum, 1, output.temporary, -1, SQLITE_STATIC), err);
	if (ok) {
		while (database_next(vacuum))
			;
		ok = database_ended(vacuum, err);
	}
	return output_close(&output, ok, err);
}

static bool build_tables(const struct options *options, struct error *err)
{
	sqlite3 *db;

	if (sqlite3_open(":memory:", &db) != SQLITE_OK) {
		sqlite3_close(db);
		return error_failed(err, "out of memory");
	}
	bool ok = fill(db, options, err) && save(db, options->output, err);
	sqlite3_close(db);
	return ok;
}

static bool emit(const struct options *options,
		 bool (*write)(sqlite3 *db, FILE *file, struct error *err), struct error *err)
{
	struct output output;
	sqlite3 *db;

	if (sqlite3_open_v2(options->database, &db, SQLITE_OPEN_READONLY, NULL) != SQLITE_OK) {
		database_failed(db, err, options->database);
		sqlite3_close(db);
		return false;
	}
	bool ok = output_open(&output, options->output, err);
	if (ok)
		ok = output_close(&output, write(db, output.file, err), err);
	sqlite3_close(db);
	return ok;
}

int main(int argc, char **argv)
{
	const char *command = argc > 1 ? argv[1] : "";
	struct options options;
	struct error err = {0};
	bool known = argc > 1 && parse_options(argc - 1, argv + 1, &options);
	bool ok;

	if (known && strcmp(command, "tables") == 0 && options.schema && options.checks &&
	    options.hash && options.files_n > 0) {
		ok = build_tables(&options, &err);
	} else if (known && strcmp(command, "rule-ids") == 0 && options.database &&
		   options.files_n == 0) {
		ok = emit(&options, emit_rule_ids, &err);
	} else if (known && strcmp(command, "data") == 0 && options.database &&
		   options.files_n == 0) {
		ok = emit(&options, emit_data, &err);
	} else {
		fputs(usage, stderr);
		return EXIT_FAILURE;
	}
	if (!ok)
		fprintf(stderr, "refbuild: %s\n", err.text);
	return ok ? EXIT_SUCCESS : EXIT_FAILURE;
}
