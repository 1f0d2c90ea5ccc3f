/* A year of a busy kitchen, read and drawn. The household is invented. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../../src/household/log.h"
#include "bench.h"
#include "jarwright/household_report.h"
#include "jarwright/render_paper.h"

enum { BATCHES = 120, LOTS = 8, RUNS = 5, YEAR = 2026, PATH_SIZE = 64, COMMAND_SIZE = 512 };
#define HOUR_MS INT64_C(3600000)
#define DAY_MS  (24 * HOUR_MS)
/* 2026-01-01 and 2027-01-01, 00:00 UTC. */
static const int64_t from = INT64_C(1767225600000);
static const int64_t to = INT64_C(1798761600000);

static void hex_of(const uint8_t uuid[UUID_SIZE], char hex[UUID_TEXT_SIZE])
{
	for (int i = 0; i < UUID_SIZE; i++)
		(void)snprintf(hex + (ptrdiff_t)2 * i, 3, "%02x", uuid[i]);
}

static bool add(struct household *db, const char *kind, int64_t subject, int64_t at, json_t *body,
		int64_t *id, struct error *err)
{
	return log_append(db, kind, subject, (struct instant){at, 0}, body, id, err);
}

/* What begins a batch or a load is named by the UUID of the event that began it. */
static bool begin(struct household *db, const char *kind, json_t *body, char hex[UUID_TEXT_SIZE],
		  struct error *err)
{
	int64_t id = 0;
	uint8_t uuid[UUID_SIZE];
	if (!add(db, kind, 0, from, body, &id, err) || !event_uuid(db, id, uuid, err))
		return false;
	hex_of(uuid, hex);
	return true;
}

static bool start_batch(struct household *db, int i, const char *lot, int64_t at, int64_t *id,
			struct error *err)
{
	static const char *const foods[] = {"pickled-beets", "carrots", "applesauce", "peaches",
					    "tomatoes-whole-in-water"};
	char day[DATE_SIZE];
	char title[32];
	(void)snprintf(title, sizeof title, "Of the garden %d", i % 40);
	return add(db, "batch-start", 0, at,
		   json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:s, s:i, s:b, s:[s], s:[]}",
			     "year", YEAR, "number", i + 1, "day",
			     date_text(instant_date((struct instant){at, 0}), day), "title", title,
			     "food", foods[i % 5], "keep", "shelf", "verdict", "tested", "edition",
			     "2026a", "minutes", 35, "elevation_own", 1, "lots", lot, "from"),
		   id, err);
}

/* 11 or 12 jars, one in nine of which fails; every second one is eaten within the year. */
static bool write_batch(struct household *db, int i, const char *lot, const char *canner,
			struct error *err)
{
	int64_t id = 0;
	int64_t at = from + 3 * DAY_MS * i;
	int jars = 11 + (i % 3 != 0);
	char sealed[16];
	char failed[16];
	(void)snprintf(sealed, sizeof sealed, "1-%d", jars - 1);
	(void)snprintf(failed, sizeof failed, "%d", jars);
	bool ok =
	    start_batch(db, i, lot, at, &id, err) &&
	    add(db, "load", id, at,
		json_pack("{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I, s:s}", "number", 1,
			  "first", 1, "jars", "n", jars, "size", i % 4 ? "pint" : "quart", "facts",
			  "outcome", "processed", "why", "", "out_ms", (json_int_t)at + HOUR_MS,
			  "canner", canner),
		NULL, err) &&
	    add(db, "seal", id, at + DAY_MS,
		json_pack("{s:s, s:b, s:b}", "jars", sealed, "sealed", 1, "early", 0), NULL, err) &&
	    add(db, "seal", id, at + DAY_MS,
		json_pack("{s:s, s:b, s:b}", "jars", failed, "sealed", i % 9 != 0, "early", 0),
		NULL, err);
	for (int jar = 1; jar < jars && ok; jar += 2) {
		(void)snprintf(sealed, sizeof sealed, "%d", jar);
		ok = add(db, "jar", id, at + (2 + jar) * DAY_MS,
			 json_pack("{s:s, s:s}", "jars", sealed, "to", "eaten"), NULL, err);
	}
	return ok;
}

static bool write_year(struct household *db, struct error *err)
{
	char lots[LOTS][UUID_TEXT_SIZE];
	char canner[UUID_TEXT_SIZE];
	char name[32];
	if (!log_begin(db, err))
		return false;
	bool ok =
	    begin(db, "canner-add",
		  json_pack("{s:s, s:s}", "name", "big pot", "kind", "boiling-water"), canner, err);
	for (int i = 0; i < LOTS && ok; i++) {
		(void)snprintf(name, sizeof name, "carton %d", i);
		ok = begin(db, "lot-add", json_pack("{s:s, s:s}", "kind", "lids", "name", name),
			   lots[i], err);
	}
	for (int i = 0; i < BATCHES && ok; i++)
		ok = write_batch(db, i, lots[i % LOTS], canner, err);
	return log_end(db, ok, err);
}

static int jars_of(const struct report_year *report)
{
	int jars = 0;
	for (size_t i = 0; i < report->sizes_n; i++)
		jars += report->sizes[i].jars;
	return jars;
}

/* The file opened, the year read, its page written. */
static bool read_year(const char *path, int *jars, struct error *err)
{
	struct household *db = NULL;
	struct report_year report;
	FILE *page = fopen("/dev/null", "we");
	if (!page || !household_open(path, HOUSEHOLD_READ, &db, err)) {
		if (page)
			(void)fclose(page);
		return false;
	}
	bool ok = household_report(db, YEAR, from, to, &report, err);
	household_close(db);
	if (ok) {
		report.edition = "2026a";
		report_html(page, &report);
		*jars = jars_of(&report);
		report_year_release(&report);
	}
	return fclose(page) == 0 && ok;
}

static bool measure(const char *program, const char *path, struct error *err)
{
	char command[COMMAND_SIZE];
	double inside = 0;
	double whole = 0;
	int jars = 0;
	(void)snprintf(command, sizeof command,
		       "JARWRIGHT_DB=%s %s report %d --out /dev/null > /dev/null", path, program,
		       YEAR);
	for (int run = 0; run < RUNS; run++) {
		double start = bench_seconds();
		if (!read_year(path, &jars, err))
			return false;
		double middle = bench_seconds();
		// NOLINTNEXTLINE(cert-env33-c): a fixed line, of a program that was just built
		if (system(command) != 0)
			return false;
		double end = bench_seconds();
		inside = middle - start > inside ? middle - start : inside;
		whole = end - middle > whole ? end - middle : whole;
	}
	printf("a year's report, %d batches, %d jars, worst of %d runs\n", BATCHES, jars, RUNS);
	printf("  read and drawn     %6.1f ms\n", inside * 1e3);
	printf("  by the program     %6.1f ms       goal < 100 ms\n", whole * 1e3);
	return true;
}

bool bench_report(const char *program)
{
	char folder[] = "/tmp/bench-report-XXXXXX";
	char path[PATH_SIZE];
	char remove[COMMAND_SIZE];
	struct household *db = NULL;
	struct error err = {0};
	if (!mkdtemp(folder))
		return false;
	(void)snprintf(path, sizeof path, "%s/kitchen.db", folder);
	bool ok = household_open(path, HOUSEHOLD_WRITE, &db, &err) && write_year(db, &err);
	household_close(db);
	ok = ok && measure(program, path, &err);
	if (!ok)
		(void)fprintf(stderr, "bench: the report gave no answer: %s\n", err.text);
	(void)snprintf(remove, sizeof remove, "rm -rf '%s'", folder);
	// NOLINTNEXTLINE(cert-env33-c): the folder made above
	return system(remove) == 0 && ok;
}
