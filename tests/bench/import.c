/*
 * An export of an invented household taken in by the program, against the sqlite3 shell's own
 * .import of the rows that come of it, into tables with the same keys and indices. The shell checks
 * nothing: constraints and foreign keys are off, and it works out no state and no hash.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../../src/household/log.h"
#include "bench.h"
#include "jarwright/household_keeping.h"

enum { BATCHES = 10000, JARS = 10, RUNS = 3 };

static const char *const tables[] = {"event", "lot", "batch", "batch_lot", "load", "jar"};
#define TABLES (sizeof tables / sizeof *tables)

/* --- The household --- */

static bool add_batch(struct household *db, int number, const char *lot, struct error *err)
{
	const struct instant at = {INT64_C(1790000000000) + number * INT64_C(60000), 120};
	int64_t id;
	return log_append(
		   db, "batch-start", 0, at,
		   json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:s, s:i, s:b, s:[s], s:[]}",
			     "year", 2026, "number", number, "day", "2026-09-21", "title",
			     "Pickled beets", "food", "pickled-beets", "keep", "shelf", "verdict",
			     "tested", "edition", "2026a", "minutes", 35, "elevation_own", 1,
			     "lots", lot, "from"),
		   &id, err) &&
	       log_append(db, "load", id, at,
			  json_pack("{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I}", "number", 1,
				    "first", 1, "jars", "n", (int)JARS, "size", "pint", "facts",
				    "outcome", "processed", "why", "", "out_ms", (json_int_t)at.ms),
			  NULL, err) &&
	       log_append(db, "seal", id, at,
			  json_pack("{s:s, s:b, s:b}", "jars", "1-10", "sealed", 1, "early", 0),
			  NULL, err) &&
	       log_append(
		   db, "jar", id, at,
		   json_pack("{s:s, s:s, s:s}", "jars", "1-9", "to", "shelf", "place", "cellar"),
		   NULL, err);
}

static bool fill(struct household *db, struct error *err)
{
	const struct instant at = {INT64_C(1790000000000), 120};
	int64_t lot;
	uint8_t uuid[UUID_SIZE];
	char text[UUID_TEXT_SIZE];
	bool ok =
	    log_append(db, "lot-add", 0, at,
		       json_pack("{s:s, s:s}", "kind", "lids", "name", "wide lids"), &lot, err) &&
	    event_uuid(db, lot, uuid, err);
	if (ok)
		hex_text(uuid, UUID_SIZE, text);
	for (int number = 1; ok && number <= BATCHES; number++)
		ok = add_batch(db, number, text, err);
	return ok;
}

static bool make_household(const char *folder)
{
	char path[256];
	struct error err = {0};
	struct household *db;
	(void)snprintf(path, sizeof path, "%s/from.db", folder);
	bool ok = household_open(path, HOUSEHOLD_WRITE, &db, &err);
	if (ok) {
		ok = log_begin(db, &err) && log_end(db, fill(db, &err), &err);
		(void)snprintf(path, sizeof path, "%s/from.json", folder);
		ok = ok && household_export_file(db, path, &err);
		household_close(db);
	}
	if (!ok)
		(void)fprintf(stderr, "bench: %s\n", err.text);
	return ok;
}

/* --- The rows for the shell --- */

static bool run(const char *command)
{
	if (system(command) == 0) // NOLINT(cert-env33-c): a bench, in a folder of its own
		return true;
	(void)fprintf(stderr, "bench: this failed: %.200s\n", command);
	return false;
}

static bool write_rows(const char *folder)
{
	char command[1024];
	for (size_t i = 0; i < TABLES; i++) {
		bool event = strcmp(tables[i], "event") == 0;
		(void)snprintf(command, sizeof command,
			       "sqlite3 -readonly -csv '%s/from.db' \"SELECT %s FROM %s\" > "
			       "'%s/%s.csv'",
			       folder,
			       event ? "id, chain, seq, hex(uuid), subject, kind, at_ms, "
				       "offset_min, body, hex(hash)"
				     : "*",
			       tables[i], folder, tables[i]);
		if (!run(command))
			return false;
	}
	/* Typed as CSV types them: STRICT tables would refuse a hash in hexadecimal digits. */
	(void)snprintf(
	    command, sizeof command,
	    "sqlite3 -readonly '%s/from.db' \"SELECT replace(sql, ' STRICT', "
	    "iif(sql LIKE '%%WITHOUT ROWID%%', ' ', '')) || ';' FROM sqlite_schema WHERE "
	    "type IN ('table', 'index') AND sql IS NOT NULL\" | sed "
	    "'s/)  *, WITHOUT/) WITHOUT/' > '%s/schema.sql'",
	    folder, folder);
	return run(command);
}

static bool write_script(const char *folder)
{
	char path[256];
	(void)snprintf(path, sizeof path, "%s/import.sql", folder);
	FILE *out = fopen(path, "we");
	if (!out)
		return false;
	(void)fprintf(out,
		      "PRAGMA journal_mode = WAL;\nPRAGMA synchronous = FULL;\n"
		      "PRAGMA ignore_check_constraints = ON;\n.read %s/schema.sql\n.mode csv\n",
		      folder);
	for (size_t i = 0; i < TABLES; i++)
		(void)fprintf(out, ".import %s/%s.csv %s\n", folder, tables[i], tables[i]);
	return fclose(out) == 0;
}

/* --- The race --- */

static bool race(const char *program, const char *folder, double *ours, double *theirs)
{
	char command[1024];
	for (int i = 0; i < RUNS; i++) {
		(void)snprintf(command, sizeof command, "rm -f '%s'/to.db* '%s'/shell.db*", folder,
			       folder);
		if (!run(command))
			return false;
		double start = bench_seconds();
		(void)snprintf(command, sizeof command,
			       "JARWRIGHT_DB='%s/to.db' '%s' log import '%s/from.json' > /dev/null",
			       folder, program, folder);
		if (!run(command))
			return false;
		double middle = bench_seconds();
		(void)snprintf(command, sizeof command,
			       "sqlite3 '%s/shell.db' < '%s/import.sql' > /dev/null", folder,
			       folder);
		if (!run(command))
			return false;
		double end = bench_seconds();
		if (i == 0 || middle - start < *ours)
			*ours = middle - start;
		if (i == 0 || end - middle < *theirs)
			*theirs = end - middle;
	}
	return true;
}

bool bench_import(const char *program)
{
	char folder[] = "/tmp/jarwright-bench-XXXXXX", command[128];
	double ours = 0, theirs = 0;
	/* Each batch: four events, itself, its lot, its load, its jars. */
	const double rows = 2 + BATCHES * (4.0 + 1 + 1 + 1 + JARS);
	if (!mkdtemp(folder))
		return false;
	bool ok = make_household(folder) && write_rows(folder) && write_script(folder) &&
		  race(program, folder, &ours, &theirs);
	if (ok) {
		printf("import of %d batches, %d jars: %.0f rows, the best of %d in turns\n",
		       BATCHES, BATCHES * JARS, rows, RUNS);
		printf("  jarwright log import %8.0f rows/s\n", rows / ours);
		printf("  sqlite3 .import      %8.0f rows/s\n", rows / theirs);
		printf("  ratio of the times %6.2f          goal <= 2.0\n", ours / theirs);
	}
	(void)snprintf(command, sizeof command, "rm -r '%s'", folder);
	return run(command) && ok;
}
