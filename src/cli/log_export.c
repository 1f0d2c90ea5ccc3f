/* log export: the whole household as JSON, or its tables for spreadsheets. */
#include <errno.h>
#include <jansson.h>
#include <stdint.h>
#include <string.h>
#include <unistd.h>

#include "entry.h"
#include "jarwright/text.h"
#include "log_keeping.h"
#include "request.h"

static bool wants_csv(struct invocation *inv, bool *csv)
{
	char shown[TEXT_SHOWN_SIZE];
	const char *format = option(inv, "format");
	*csv = format && strcmp(format, "csv") == 0;
	if (*csv && !option(inv, "out"))
		return error_usage(inv->err,
				   "export: csv is several files; say where: --out FOLDER");
	if (!format || *csv || strcmp(format, "json") == 0)
		return true;
	text_show(format, SIZE_MAX, shown);
	return error_usage(inv->err, "export: no format '%s'; say json or csv", shown);
}

/*
 * Past the stream of the answer, which would hold all of it in memory: its first line says how
 * much it has, so that a half of it is not taken for the whole.
 */
static bool export_here(struct invocation *inv, struct household *db)
{
	int fd = dup(STDOUT_FILENO);
	FILE *out = fd >= 0 ? fdopen(fd, "w") : NULL;
	if (!out) {
		if (fd >= 0)
			(void)close(fd); /* nothing was written */
		return error_failed(inv->err, "standard output: %s; leave it open",
				    strerror(errno));
	}
	bool ok = household_export_json(db, out, "standard output", inv->err);
	if (fclose(out) != 0 && ok)
		ok = error_failed(inv->err, "standard output: %s; write somewhere else",
				  strerror(errno));
	return ok;
}

static bool export_to(struct invocation *inv, struct household *db, bool csv)
{
	char path[HOUSEHOLD_PATH_SIZE];
	const char *out = option(inv, "out");
	if (!out)
		return export_here(inv, db);
	return file_operand(inv, out, path) &&
	       (csv ? household_export_csv : household_export_file)(db, path, inv->err);
}

static int say_where(struct invocation *inv, bool csv)
{
	const char *out = option(inv, "out");
	char shown[512];
	if (!out)
		return STATUS_DONE;
	if (flag(inv, "json"))
		return answer_json(
		    inv, json_pack("{s:s, s:s}", "format", csv ? "csv" : "json", "out", out),
		    STATUS_DONE);
	text_harmless(out, shown, sizeof shown);
	struct page page = answer_page(inv);
	page_format(&page, "",
		    csv ? "the tables are in the folder %s" : "the whole household is in %s",
		    shown);
	return STATUS_DONE;
}

int run_log_export(struct invocation *inv)
{
	struct household *db;
	bool csv;
	if (!wants_csv(inv, &csv) || !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = export_to(inv, db, csv);
	household_close(db);
	return ok ? say_where(inv, csv) : command_failed(inv);
}
