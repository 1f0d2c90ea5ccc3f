#include "import.h"

#include <stdlib.h>

#include "import_lines.h"

#define TOLD_EVERY 1000

static void tell(const struct progress *progress, int64_t done, int64_t total)
{
	if (progress && done % TOLD_EVERY == 0)
		progress->tell(progress->context, done, total);
}

static bool read_lines(struct import_lines *lines, struct intake *in,
		       const struct progress *progress, struct error *err)
{
	bool end;
	if (!import_next_line(lines, &end, err) || !import_header(lines, err))
		return false;
	for (;;) {
		if (!import_next_line(lines, &end, err))
			return false;
		if (end)
			return true;
		if (!import_take_line(lines, in, err))
			return false;
		tell(progress, lines->events_read, lines->events);
	}
}

static bool take_all(struct household *db, struct import_lines *lines,
		     const struct progress *progress, struct intake_report *out, struct error *err)
{
	struct intake *in;
	bool ok = intake_begin(db, out, &in, err) && read_lines(lines, in, progress, err) &&
		  import_is_whole(lines, err) && intake_finish(in, err);
	intake_release(in);
	return ok;
}

bool household_import(struct household *db, FILE *in, const char *name, bool dry,
		      const struct progress *progress, struct intake_report *out, struct error *err)
{
	struct import_lines *lines = calloc(1, sizeof *lines);
	if (!lines)
		return error_failed(err, "import: out of memory; close other programs and try "
					 "again");
	lines->in = in;
	bool ok = log_begin(db, err);
	if (ok) {
		ok = take_all(db, lines, progress, out, err);
		if (!ok)
			error_context(err, "%s:%lld", name, (long long)lines->number);
		bool held = log_end(db, ok && !dry, err);
		ok = ok && (held || dry);
	}
	free(lines->line);
	free(lines);
	return ok;
}
