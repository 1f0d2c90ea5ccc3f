/* log backup: a checked copy of the household file. */
#include <jansson.h>

#include "entry.h"
#include "jarwright/text.h"
#include "log_keeping.h"
#include "request.h"

int run_log_backup(struct invocation *inv)
{
	struct household *db;
	char path[HOUSEHOLD_PATH_SIZE], shown[512];
	if (!file_operand(inv, inv->operands[1], path) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_backup(db, path, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:s}", "backup", inv->operands[1]),
				   STATUS_DONE);
	text_harmless(inv->operands[1], shown, sizeof shown);
	struct page page = answer_page(inv);
	page_format(&page, "", "%s is a copy of the household, checked and on disk", shown);
	page_text(&page, "", "Keep it on another disk or device.");
	return STATUS_DONE;
}
