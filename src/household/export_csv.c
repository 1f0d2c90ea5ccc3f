/*
 * The state as tables for spreadsheets: RFC 4180, one file a table, the first line the headers.
 *
 * Each statement gives one file: its columns are the headers. Whatever in a text would be taken for
 * a formula or obeyed by a terminal is made harmless: exact texts are in the JSON. Rows stand in
 * the order of the log, which is the same in every file that knows the same entries.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "backup.h"
#include "jarwright/household_keeping.h"
#include "jarwright/text.h"
#include "store.h"

/* Codes as in find.c; none where the batch was taken back. */
/* clang-format off */
#define CODE(of) \
	"CASE WHEN " of ".year IS NULL THEN NULL " \
	"WHEN " of ".year BETWEEN 2000 AND 2099 " \
	"THEN printf('%02d-%03d', " of ".year - 2000, " of ".number) " \
	"ELSE printf('%d-%03d', " of ".year, " of ".number) END"
#define RECALL_CODE \
	"CASE WHEN recall.year BETWEEN 2000 AND 2099 " \
	"THEN printf('R%02d-%02d', recall.year - 2000, recall.number) " \
	"ELSE printf('R%d-%02d', recall.year, recall.number) END"
#define UUID(event) "(SELECT uuid FROM event WHERE event.id = " event ")"
#define ID(event) "lower(hex(" UUID(event) "))"
#define DEVICE(event) \
	"(SELECT chain.name FROM event JOIN chain ON chain.id = event.chain " \
	"WHERE event.id = " event ")"
#define MOMENT(ms) "strftime('%Y-%m-%dT%H:%M:%SZ', " ms " / 1000, 'unixepoch')"

static const struct table {
	const char *file, *rows;
} tables[] = {
    {"batches.csv",
     "SELECT " CODE("batch") " AS batch, " ID("batch.id") " AS batch_id, "
     DEVICE("batch.id") " AS device, day, title, food, recipe, keep, verdict, edition, pack, "
     "canner_kind, jar, elevation_mft, elevation_own, minutes, psi, vent, held, "
     MOMENT("finished_ms") " AS finished "
     "FROM batch ORDER BY " UUID("batch.id")},
    {"loads.csv",
     "SELECT " CODE("batch") " AS batch, " ID("load.batch") " AS batch_id, load.number AS load, "
     "canner.name AS canner, " ID("load.canner") " AS canner_id, "
     MOMENT("started_ms") " AS started, " MOMENT("out_ms") " AS out, outcome, why "
     "FROM load JOIN batch ON batch.id = load.batch "
     "LEFT JOIN canner ON canner.id = load.canner "
     "ORDER BY " UUID("load.batch") ", load.number"},
    {"jars.csv",
     "SELECT " CODE("batch") " || printf('-%02d', jar.number) AS jar, " CODE("batch") " AS batch, "
     ID("jar.batch") " AS batch_id, jar.number AS number, size, load, state, place, "
     MOMENT("since_ms") " AS since, gone, sealed, late "
     "FROM jar JOIN batch ON batch.id = jar.batch "
     "ORDER BY " UUID("jar.batch") ", jar.number"},
    {"lots.csv",
     "SELECT " ID("lot.id") " AS lot_id, " DEVICE("lot.id") " AS device, kind, name, supplier, "
     "code, dated, strength_mpct, finished "
     "FROM lot ORDER BY " UUID("lot.id")},
    {"canners.csv",
     "SELECT " ID("canner.id") " AS canner_id, " DEVICE("canner.id") " AS device, name, kind, "
     "holds_quarts, holds_pints, holds_half_pints, retired "
     "FROM canner ORDER BY " UUID("canner.id")},
    {"gauge-tests.csv",
     "SELECT canner.name AS canner, " ID("gauge_test.canner") " AS canner_id, tested, high_mpsi, "
     "error_mpsi "
     "FROM gauge_test LEFT JOIN canner ON canner.id = gauge_test.canner "
     "ORDER BY " UUID("gauge_test.id")},
    {"recalls.csv",
     "SELECT " RECALL_CODE " AS recall, " ID("recall.id") " AS recall_id, "
     DEVICE("recall.id") " AS device, reason, what, " MOMENT("opened_ms") " AS opened, "
     MOMENT("closed_ms") " AS closed "
     "FROM recall ORDER BY " UUID("recall.id")},
    {"recalled-jars.csv",
     "SELECT " RECALL_CODE " AS recall, " ID("recall_jar.recall") " AS recall_id, "
     CODE("batch") " AS batch, " ID("recall_jar.batch") " AS batch_id, "
     "recall_jar.number AS number, disposition, note, " MOMENT("at_ms") " AS recorded "
     "FROM recall_jar JOIN recall ON recall.id = recall_jar.recall "
     "LEFT JOIN batch ON batch.id = recall_jar.batch "
     "ORDER BY " UUID("recall_jar.recall") ", " UUID("recall_jar.batch") ", recall_jar.number"},
    {"batch-lots.csv",
     "SELECT " CODE("batch") " AS batch, " ID("batch_lot.batch") " AS batch_id, lot.name AS lot, "
     ID("batch_lot.lot") " AS lot_id "
     "FROM batch_lot JOIN batch ON batch.id = batch_lot.batch "
     "LEFT JOIN lot ON lot.id = batch_lot.lot "
     "ORDER BY " UUID("batch_lot.batch") ", " UUID("batch_lot.lot")},
    {"batch-from.csv",
     "SELECT " CODE("batch") " AS batch, " ID("batch_from.batch") " AS batch_id, "
     CODE("source") " AS from_batch, " ID("batch_from.from_batch") " AS from_batch_id, "
     "from_number "
     "FROM batch_from JOIN batch ON batch.id = batch_from.batch "
     "LEFT JOIN batch AS source ON source.id = batch_from.from_batch "
     "ORDER BY " UUID("batch_from.batch") ", " UUID("batch_from.from_batch") ", from_number"},
};
/* clang-format on */
#define TABLES (sizeof tables / sizeof *tables)

const char *export_csv_file(size_t i)
{
	return i < TABLES ? tables[i].file : NULL;
}

/* --- Cells --- */

/* Characters that a spreadsheet takes for the beginning of a formula, full-width ones too. */
static bool begins_formula(const char *text)
{
	static const char *const starts[] = {
	    "=", "+", "-", "@", "\xef\xbc\x9d", "\xef\xbc\x8b", "\xef\xbc\x8d", "\xef\xbc\xa0"};
	while (*text == ' ' || *text == '\t' || *text == '\r' || *text == '\n')
		text++;
	for (size_t i = 0; i < sizeof starts / sizeof *starts; i++)
		if (strncmp(text, starts[i], strlen(starts[i])) == 0)
			return true;
	return false;
}

static bool needs_quotes(const char *text)
{
	return strpbrk(text, ",\"\n\r\t ") != NULL || begins_formula(text);
}

/* One character; its length. */
static size_t put_character(FILE *out, const char *at)
{
	size_t length = text_utf8_length(at);
	if (length == 0)
		length = 1, fputc('?', out);
	else if (*at == '\n' || *at == '\r' || *at == '\t')
		fputc(' ', out);
	else if (text_is_obeyed(at, length))
		fputc('?', out);
	else if (*at == '"')
		fputs("\"\"", out);
	else
		fwrite(at, 1, length, out);
	return length;
}

static void put_text(FILE *out, const char *text)
{
	bool quotes = needs_quotes(text);
	if (quotes)
		fputc('"', out);
	if (begins_formula(text))
		fputc('\'', out);
	while (*text)
		text += put_character(out, text);
	if (quotes)
		fputc('"', out);
}

/* Numbers are ours and stay numbers; a missing value is an empty cell. */
static void put_cell(FILE *out, sqlite3_stmt *row, int column)
{
	const char *text = (const char *)sqlite3_column_text(row, column);
	if (sqlite3_column_type(row, column) == SQLITE_INTEGER)
		fprintf(out, "%lld", (long long)sqlite3_column_int64(row, column));
	else if (text)
		put_text(out, text);
}

static void put_row(FILE *out, sqlite3_stmt *row, bool header)
{
	for (int i = 0; i < sqlite3_column_count(row); i++) {
		if (i > 0)
			fputc(',', out);
		if (header)
			fputs(sqlite3_column_name(row, i), out);
		else
			put_cell(out, row, i);
	}
	fputs("\r\n", out);
}

/* --- Files --- */

static bool write_failed(const char *path, struct error *err)
{
	return error_failed(err, "'%s': %s; free some space or write somewhere else", path,
			    strerror(errno));
}

static bool write_table(struct household *db, const struct table *table, FILE *out,
			struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, table->rows, &row, err))
		return false;
	put_row(out, row, true);
	while (sqlite3_step(row) == SQLITE_ROW)
		put_row(out, row, false);
	return store_done(db, row, err);
}

static bool write_file(struct household *db, const char *folder, const struct table *table,
		       bool *made, struct error *err)
{
	char path[BACKUP_NAME_SIZE];
	snprintf(path, sizeof path, "%s/%s", folder, table->file);
	FILE *out = fopen(path, "wxe");
	if (!out)
		return write_failed(path, err);
	*made = true;
	bool ok = write_table(db, table, out, err);
	if (ok && (fflush(out) != 0 || ferror(out) || fsync(fileno(out)) != 0))
		ok = write_failed(path, err);
	if (fclose(out) != 0 && ok)
		ok = write_failed(path, err);
	return ok;
}

static void remove_files(const char *folder, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		char path[BACKUP_NAME_SIZE];
		snprintf(path, sizeof path, "%s/%s", folder, tables[i].file);
		(void)unlink(path); /* what cannot be removed is at least not whole: it was said */
	}
}

static bool write_files(struct household *db, const char *folder, struct error *err)
{
	size_t n = 0;
	bool ok = true, made = false;
	while (ok && n < TABLES) {
		made = false;
		ok = write_file(db, folder, &tables[n], &made, err);
		n += ok || made;
	}
	if (!ok)
		remove_files(folder, n);
	return ok;
}

static bool make_folder(const char *folder, struct error *err)
{
	if (!*folder || strlen(folder) >= HOUSEHOLD_PATH_SIZE)
		return error_usage(err, "'%.200s': that is no name for a folder; type another",
				   folder);
	if (mkdir(folder, 0700) != 0 && errno != EEXIST)
		return error_failed(err, "folder '%s': %s; name another", folder, strerror(errno));
	for (size_t i = 0; i < TABLES; i++) {
		struct stat is;
		char path[BACKUP_NAME_SIZE];
		snprintf(path, sizeof path, "%s/%s", folder, tables[i].file);
		if (lstat(path, &is) == 0)
			return error_usage(err,
					   "'%s': it is there already and is not written "
					   "over; name another folder",
					   path);
	}
	return true;
}

bool household_export_csv(struct household *db, const char *folder, struct error *err)
{
	if (!store_has_log(db))
		return db->sql ? store_too_old(db, err)
			       : error_failed(err,
					      "household file '%s': there is none yet, so there is "
					      "nothing to export",
					      db->path);
	if (!make_folder(folder, err) || !store_exec(db, "BEGIN", err) ||
	    !store_end(db, write_files(db, folder, err), err))
		return false;
	return backup_sync(folder, O_DIRECTORY) || write_failed(folder, err);
}
