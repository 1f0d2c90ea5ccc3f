/* log merge: another device's household file. */
#include <stdlib.h>

#include "log_keeping.h"

static bool take_in(struct invocation *inv, const char *path, struct intake_report *report)
{
	struct household *db;
	if (!open_for_intake(inv, &db))
		return false;
	struct progress progress = progress_line("merging");
	bool dry = flag(inv, "dry-run");
	bool ok = household_merge(db, path, dry, &progress, report, inv->err);
	progress_end(&progress);
	household_close(db);
	inv->saved = ok && !dry;
	return ok;
}

int run_log_merge(struct invocation *inv)
{
	char path[HOUSEHOLD_PATH_SIZE];
	struct intake_report *report = calloc(1, sizeof *report);
	int status;
	if (!report)
		error_failed(inv->err, "log: out of memory; close other programs and try again");
	if (report && file_operand(inv, inv->operands[1], path) && take_in(inv, path, report))
		status = answer_intake(inv, inv->operands[1], report);
	else
		status = command_failed(inv);
	free(report);
	return status;
}
