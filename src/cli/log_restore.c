/* log restore: a copy in the place of the household file. */
#include <jansson.h>

#include "entry.h"
#include "jarwright/text.h"
#include "log_keeping.h"
#include "request.h"

int run_log_restore(struct invocation *inv)
{
	char path[HOUSEHOLD_PATH_SIZE], from[HOUSEHOLD_PATH_SIZE], kept[HOUSEHOLD_PATH_SIZE + 32];
	char shown[512];
	if (!file_operand(inv, inv->operands[1], from) ||
	    !household_path(path, sizeof path, inv->err))
		return command_failed(inv);
	inv->saved = household_restore(path, from, kept, inv->err);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:s?}", "restored", inv->operands[1], "kept",
					     *kept ? kept : NULL),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	text_harmless(inv->operands[1], shown, sizeof shown);
	page_format(&page, "", "the household is as %s has it", shown);
	text_harmless(kept, shown, sizeof shown);
	if (*kept)
		page_format(&page, "", "what was there until now is kept in %s", shown);
	page_text(&page, "",
		  "From here on it writes as a new device; give it a name with 'jarwright log "
		  "device NAME'.");
	return STATUS_DONE;
}
