/* log import: what log export wrote. */
#include <errno.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"
#include "log_keeping.h"

static bool take_in(struct invocation *inv, FILE *in, const char *name,
		    struct intake_report *report)
{
	struct household *db;
	if (!open_for_intake(inv, &db))
		return false;
	struct progress progress = progress_line("reading");
	bool dry = flag(inv, "dry-run");
	bool ok = household_import(db, in, name, dry, &progress, report, inv->err);
	progress_end(&progress);
	household_close(db);
	inv->saved = ok && !dry;
	return ok;
}

int run_log_import(struct invocation *inv)
{
	const char *name = inv->operands[1];
	char shown[TEXT_SHOWN_SIZE];
	bool standard = strcmp(name, "-") == 0;
	struct intake_report *report = calloc(1, sizeof *report);
	FILE *in = standard ? stdin : fopen(name, "re");
	int number = errno, status;
	text_show(name, SIZE_MAX, shown);
	if (!report)
		error_failed(inv->err, "log: out of memory; close other programs and try again");
	else if (!in)
		error_usage(inv->err, "'%s': %s; check the name", shown, strerror(number));
	if (report && in && take_in(inv, in, standard ? "standard input" : name, report))
		status = answer_intake(inv, standard ? "standard input" : name, report);
	else
		status = command_failed(inv);
	if (in && !standard)
		(void)fclose(in); /* only read */
	free(report);
	return status;
}
