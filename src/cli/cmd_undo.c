/* undo: takes back an entry of the log, by another entry. */
#include "entry.h"
#include "request.h"

static int run_undo(struct invocation *inv)
{
	struct log_entry entry;
	struct household *db;
	struct instant at;
	if (!operands_between(inv, 0, 2, "") || !invocation_when(inv, &at) ||
	    !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	const struct log_name of = {{inv->operands_n > 0 ? inv->operands[0] : NULL,
				     inv->operands_n > 1 ? inv->operands[1] : NULL}};
	inv->saved = household_undo(db, &of, at, &entry, inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:o}", "took_back", json_entry(&entry)),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	page_text(&page, "", "took back:");
	print_entry(&page, &entry);
	page_text(&page, "", "It stays in the log, marked; nothing is deleted.");
	return STATUS_DONE;
}

static const struct option_spec options[] = {
    OPTION_AT,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright undo", "takes back what this device logged last"},
    {"jarwright undo 26-041", "the last entry of that batch"},
    {"jarwright undo lot \"cider vinegar\"", "the last entry of that lot"},
    {"jarwright undo '#12'", "entry 12 of this device, as 'jarwright log show' numbers them"},
    EXAMPLES_END,
};

const struct command command_undo = {
    .name = "undo",
    .synopsis = "[BATCH | lot NAME | canner NAME | '#N' | DEVICE#N]",
    .summary = "take back the last entry of the log, or one that you name",
    .description =
	"Takes back an entry made by mistake. Nothing is deleted: the entry stays, marked, and the "
	"state is what it would be without it. An entry that later ones rest on is not taken back "
	"before them, and a step that 'jarwright run' counted not at all.",
    .options = options,
    .examples = examples,
    .run = run_undo,
};
