/* recall: open, list, show, record, close. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"
#include "recall.h"
#include "subcommand.h"

static bool find_rules(struct invocation *inv, struct load_rules *rules)
{
	return load_rules_find(reference_edition(), reference_tables_edition(), rules, inv->err);
}

static int run_list(struct invocation *inv)
{
	struct household *db;
	struct recall_list list;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_recalls(db, &list, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = STATUS_DONE;
	const struct page page = answer_page(inv);
	if (flag(inv, "json"))
		status = answer_json(inv, recall_list_json(&list), STATUS_DONE);
	else
		recall_list_text(&page, &list);
	recall_list_release(&list);
	return status;
}

static bool read_sheet(struct invocation *inv, struct recall_sheet *sheet)
{
	struct household *db;
	int64_t id;
	*sheet = (struct recall_sheet){0};
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_recall_find(db, inv->operands[1], &id, inv->err) &&
		  household_recall(db, id, sheet, inv->err);
	household_close(db);
	return ok;
}

/* --- show --- */

static bool put_sheet(struct invocation *inv, const struct recall_sheet *sheet)
{
	const struct page page = answer_page(inv);
	const char *to = option(inv, "to");
	char shown[TEXT_SHOWN_SIZE];
	if (recall_sheet_text(&page, sheet, to) > 0)
		return true;
	if (to) {
		text_show(to, SIZE_MAX, shown);
		return error_usage(inv->err,
				   "to: no jar of this recall went to '%s'; type the words "
				   "of 'jarwright recall show %s --all'",
				   shown, sheet->entry.code);
	}
	page_format(&page, "",
		    "No jar of recall %s was given away, so there is nobody to tell. "
		    "'jarwright recall show %s --all' lists its jars.",
		    sheet->entry.code, sheet->entry.code);
	return true;
}

static int run_show(struct invocation *inv)
{
	struct recall_sheet sheet;
	struct load_rules rules;
	int status = STATUS_DONE;
	if (flag(inv, "all") && option(inv, "to"))
		error_usage(inv->err, "recall: --all is for you, --to for a sheet; leave one out");
	if (inv->err->kind || !find_rules(inv, &rules) || !read_sheet(inv, &sheet))
		return command_failed(inv);
	const struct page page = answer_page(inv);
	if (flag(inv, "json"))
		status = answer_json(inv, recall_json(&sheet), STATUS_DONE);
	else if (flag(inv, "all"))
		recall_jars_text(&page, &sheet, &rules);
	else if (!put_sheet(inv, &sheet))
		status = command_failed(inv);
	recall_sheet_release(&sheet);
	return status;
}

/* --- record --- */

static bool read_record(struct invocation *inv, struct jar_picks *picks, struct recall_record *out)
{
	struct load_rules rules;
	const char *word = inv->operands[inv->operands_n - 1], *note = option(inv, "note");
	char shown[TEXT_SHOWN_SIZE];
	text_show(word, SIZE_MAX, shown);
	if (!disposition_find(word, &out->disposition) || out->disposition == DISPOSITION_OPEN)
		return error_usage(
		    inv->err,
		    "recall: '%s' does not say what became of the jars; the last "
		    "word is discarded, returned, eaten, told, refrigerated, frozen, "
		    "cleared or lost",
		    shown);
	if (note && (!*note || strlen(note) >= RECALL_NOTE_SIZE))
		return error_usage(inv->err,
				   "note: it is empty, or longer than %d bytes; shorten it",
				   RECALL_NOTE_SIZE - 1);
	out->note = note;
	if (!find_rules(inv, &rules))
		return false;
	out->hold_hours = rules.wrong_h;
	return invocation_when(inv, &out->at) &&
	       jar_picks_read(inv->operands + 2, inv->operands_n - 3, picks, inv->err);
}

static bool save_record(struct invocation *inv, const struct jar_picks *picks,
			const struct recall_record *record, size_t *n, struct recall_sheet *sheet)
{
	struct household *db;
	int64_t id;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return false;
	bool ok = household_recall_find(db, inv->operands[1], &id, inv->err) &&
		  household_recall_record(db, id, picks, record, n, inv->err);
	inv->saved = ok;
	ok = ok && household_recall(db, id, sheet, inv->err);
	household_close(db);
	return ok;
}

static void tell_record(struct invocation *inv, const struct recall_record *record, size_t n,
			const struct recall_sheet *sheet)
{
	const struct page page = answer_page(inv);
	const char *code = sheet->entry.code;
	page_format(&page, "", "Recall %s: %zu jar%s %s.", code, n, n == 1 ? "" : "s",
		    disposition_word(record->disposition));
	if (record->disposition == DISPOSITION_EATEN)
		page_text(&page, "eaten     ", eaten_advice);
	if (record->disposition == DISPOSITION_RETURNED)
		page_format(&page, "careful   ",
			    "Keep them apart, untasted, until you say what became "
			    "of them: 'jarwright recall record %s JARS "
			    "discarded'.",
			    code);
	if (sheet->entry.open_n > 0)
		page_format(&page, "", "Still open: %zu of %zu.", sheet->entry.open_n,
			    sheet->entry.jars_n);
	else
		page_format(&page, "",
			    "None is open any more: 'jarwright recall close %s' ends it.", code);
}

static int run_record(struct invocation *inv)
{
	struct jar_picks picks;
	struct recall_record record = {.disposition = DISPOSITION_OPEN};
	struct recall_sheet sheet = {0};
	size_t n = 0;
	int status = STATUS_DONE;
	if (!read_record(inv, &picks, &record) || !save_record(inv, &picks, &record, &n, &sheet))
		status = command_failed(inv);
	else if (flag(inv, "json"))
		status = answer_json(inv,
				     json_pack("{s:s, s:s, s:I, s:I}", "recall", sheet.entry.code,
					       "disposition", disposition_word(record.disposition),
					       "recorded", (json_int_t)n, "open_n",
					       (json_int_t)sheet.entry.open_n),
				     STATUS_DONE);
	else
		tell_record(inv, &record, n, &sheet);
	recall_sheet_release(&sheet);
	return status;
}

/* --- close --- */

static bool save_close(struct invocation *inv, struct instant at, struct recall_sheet *sheet)
{
	struct household *db;
	int64_t id;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return false;
	bool ok = household_recall_find(db, inv->operands[1], &id, inv->err) &&
		  household_recall(db, id, sheet, inv->err);
	if (ok && sheet->entry.open_n > 0 && !sheet->entry.closed_ms)
		ok = error_usage(inv->err,
				 "recall %s: %zu jar%s still open under it; say what became of "
				 "them first: 'jarwright recall show %s --all' lists them",
				 sheet->entry.code, sheet->entry.open_n,
				 sheet->entry.open_n == 1 ? " is" : "s are", sheet->entry.code);
	inv->saved = ok && household_recall_close(db, id, at, inv->err);
	household_close(db);
	return inv->saved;
}

static int run_close(struct invocation *inv)
{
	struct recall_sheet sheet = {0};
	struct instant at;
	int status = STATUS_DONE;
	const struct page page = answer_page(inv);
	if (!invocation_when(inv, &at) || !save_close(inv, at, &sheet)) {
		status = command_failed(inv);
	} else if (flag(inv, "json")) {
		status = answer_json(
		    inv, json_pack("{s:s, s:b}", "recall", sheet.entry.code, "closed", 1),
		    STATUS_DONE);
	} else {
		page_format(&page, "", "Recall %s is closed; it stays in the log.",
			    sheet.entry.code);
		if (sheet.since.jars_n > 0)
			page_format(
			    &page, "careful   ",
			    "%zu jars were made with jars of it since it was opened, and are "
			    "under no recall: 'jarwright recall show %s --all'.",
			    sheet.since.jars_n, sheet.entry.code);
	}
	recall_sheet_release(&sheet);
	return status;
}

/* clang-format off */
static const struct option_spec options[] = {
    {"since", "DATE", "with open: the first day of the fault, 2026-08-01"},
    {"until", "DATE", "with open: its last day"},
    {"high", "PRESSURE", "with open gauge: by how much it read above the true pressure: 3psi"},
    {"was", "E", "with open elevation: what was taken for the elevation: 2900ft"},
    {"is", "E", "with open elevation: what it is: 4100ft"},
    {"canner", "KIND", "with open process: boiling-water, steam, dial-gauge or weighted-gauge"},
    {"pack", "raw|hot", "with open process: of this pack alone"},
    {"edition", "EDITION", "with open process: as this edition of the tables had it: 2026a"},
    {"why", "TEXT", "with open: why, kept with it, and not shown on the sheet"},
    {"dry-run", NULL, "with open: show what would be recalled, and log nothing"},
    {"all", NULL, "with show: every jar and what became of it, for yourself"},
    {"to", "WHOM", "with show: the sheet for this one alone, in the words of the log"},
    {"note", "TEXT", "with record: kept with the jars"},
    OPTION_AT,
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright recall open lot \"wide lids, spring\" --why \"they do not hold\"",
     "recalls every jar that this carton closed, and what was made with those"},
    {"jarwright recall open gauge \"the big one\" --high 3psi --since 2026-09-01 --until "
     "2026-09-30",
     "those loads that were too low for a gauge 3 psi high"},
    {"jarwright recall show R26-01 --to \"the neighbours\"", "the sheet to hand to them"},
    {"jarwright recall record R26-01 26-041 1-4 discarded", "says what became of four jars"},
    EXAMPLES_END,
};

static const struct subcommand subcommands[] = {
    {"open",
     "lot|canner|gauge|elevation|process|batch NAME",
     2,
     3,
     {"since", "until", "high", "was", "is", "canner", "pack", "edition", "why", "dry-run", "at",
      "json"},
     recall_open_command},
    {"list", "", 1, 1, {"json"}, run_list},
    {"show", "R26-01", 2, 2, {"all", "to", "json"}, run_show},
    {"record", "R26-01 JARS discarded", 4, 64, {"note", "at", "json"}, run_record},
    {"close", "R26-01", 2, 2, {"at", "json"}, run_close},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run_recall(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

const struct command command_recall = {
    .name = "recall",
    .synopsis = "open|list|show|record|close [lot|canner|gauge|elevation|process|batch NAME] "
		"[--since D] [--until D]",
    .summary = "every jar that a fault touches: whom to tell, what to do, what became of it",
    .description =
	"Finds every jar that a bad lot, a canner, a gauge that read high, a wrong elevation, a "
	"withdrawn process or a batch touches, also through jars that went into later batches, "
	"and says what to do with each. 'show' prints a sheet for those who were given jars; "
	"'record' says what became of each jar, 'close' ends it when none is open. While a jar is "
	"open under a recall it cannot be logged as opened, eaten or given. If it touches no jar, "
	"nothing is opened.",
    .options = options,
    .examples = examples,
    .run = run_recall,
};
