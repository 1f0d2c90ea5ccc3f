/* log: the entries as they stand, and whether they are sound. */
#include <jansson.h>
#include <stdio.h>

#include "entry.h"
#include "jarwright/text.h"
#include "log_keeping.h"
#include "request.h"
#include "subcommand.h"

#define LAST_DEFAULT 20
#define LAST_MAX     1000000

/* --- show --- */

static int print_entries(struct invocation *inv, const struct log_entries *entries)
{
	struct page page = answer_page(inv);
	if (entries->n == 0)
		page_text(&page, "", "the log is empty");
	for (size_t i = 0; i < entries->n; i++)
		print_entry(&page, &entries->items[i]);
	return STATUS_DONE;
}

static int entries_to_json(struct invocation *inv, const struct log_entries *entries)
{
	json_t *items = json_array();
	for (size_t i = 0; items && i < entries->n; i++)
		items = json_append(items, json_entry(&entries->items[i]));
	return answer_json(inv, json_pack("{s:o}", "entries", items), STATUS_DONE);
}

/* Everything of one subject; of all, the last ones. */
static bool read_last(struct invocation *inv, size_t *out)
{
	int last = inv->operands_n > 1 ? 0 : LAST_DEFAULT;
	const char *given = option(inv, "last");
	if (given && !count_parse("last", given, LAST_MAX, &last, inv->err))
		return false;
	*out = (size_t)last;
	return true;
}

static int run_show(struct invocation *inv)
{
	struct household *db;
	struct log_entries entries;
	size_t last;
	if (!read_last(inv, &last) || !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	const struct log_name of = {{inv->operands_n > 1 ? inv->operands[1] : NULL,
				     inv->operands_n > 2 ? inv->operands[2] : NULL}};
	bool ok = household_log_entries(db, &of, last, &entries, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = (flag(inv, "json") ? entries_to_json : print_entries)(inv, &entries);
	log_entries_release(&entries);
	return status;
}

/* --- verify --- */

static void print_fault(const struct page *page, const struct log_fault *fault)
{
	char when[INSTANT_SIZE], text[sizeof fault->text], device[KITCHEN_NAME_SIZE + 8];
	text_harmless(fault->text, text, sizeof text);
	text_harmless(fault->device, device, sizeof device);
	if (!fault->in_chain)
		page_format(page, "wrong: ", "%s", text);
	else if (*fault->kind)
		page_format(page, "wrong: ", "entry %s#%lld (%s, %s): %s", device,
			    (long long)fault->number, fault->kind, instant_text(fault->at, when),
			    text);
	else
		page_format(page, "wrong: ", "entry %s#%lld: %s", device, (long long)fault->number,
			    text);
}

static int print_report(struct invocation *inv, const struct log_report *report)
{
	struct page page = answer_page(inv);
	size_t kept = report->faults_n < LOG_FAULTS_MAX ? report->faults_n : LOG_FAULTS_MAX;
	if (report->faults_n == 0) {
		page_format(
		    &page, "",
		    "the log is sound: %zu entr%s of %zu device%s, the state as they give it",
		    report->events_n, report->events_n == 1 ? "y" : "ies", report->chains_n,
		    report->chains_n == 1 ? "" : "s");
		return STATUS_DONE;
	}
	for (size_t i = 0; i < kept; i++)
		print_fault(&page, &report->faults[i]);
	if (report->faults_n > kept)
		page_format(&page, "wrong: ", "and %zu more", report->faults_n - kept);
	page_text(&page, "",
		  "Put back a backup from before. Do not rely on the log for what stands on the "
		  "shelf until then.");
	return STATUS_FAILED;
}

static json_t *json_fault(const struct log_fault *fault)
{
	char at[INSTANT_SIZE], text[sizeof fault->text];
	text_harmless(fault->text, text, sizeof text); /* SQLite may name what is no UTF-8 */
	return json_pack("{s:s?, s:o, s:s?, s:s?, s:s}", "device",
			 fault->in_chain ? fault->device : NULL, "number",
			 fault->in_chain ? json_integer(fault->number) : json_null(), "kind",
			 *fault->kind ? fault->kind : NULL, "at",
			 *fault->kind ? instant_iso(fault->at, at) : NULL, "says", text);
}

static int report_to_json(struct invocation *inv, const struct log_report *report)
{
	json_t *items = json_array();
	for (size_t i = 0; items && i < report->faults_n && i < LOG_FAULTS_MAX; i++)
		items = json_append(items, json_fault(&report->faults[i]));
	return answer_json(inv,
			   json_pack("{s:b, s:I, s:I, s:I, s:o}", "sound", report->faults_n == 0,
				     "devices", (json_int_t)report->chains_n, "entries",
				     (json_int_t)report->events_n, "wrong_n",
				     (json_int_t)report->faults_n, "wrong", items),
			   report->faults_n == 0 ? STATUS_DONE : STATUS_FAILED);
}

static int run_verify(struct invocation *inv)
{
	struct household *db;
	struct log_report report;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_verify(db, &report, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	return (flag(inv, "json") ? report_to_json : print_report)(inv, &report);
}

/* --- rebuild, device --- */

static int run_rebuild(struct invocation *inv)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_rebuild(db, inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:b}", "rebuilt", 1), STATUS_DONE);
	fputs("the state is worked out anew from the entries\n", inv->out);
	return STATUS_DONE;
}

static int run_device(struct invocation *inv)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_name_device(db, inv->operands[1], inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:s}", "device", inv->operands[1]),
				   STATUS_DONE);
	fprintf(inv->out, "this device is now called '%s'\n", inv->operands[1]);
	return STATUS_DONE;
}

static const struct option_spec options[] = {
    {"last", "N", "with show: only the last N entries"},
    {"format", "json|csv", "with export: all of it as JSON (usual), or tables for spreadsheets"},
    {"out", "FILE", "with export: the new file; with csv the folder, made if need be"},
    {"dry-run", NULL, "with import and merge: say what would be taken in, and keep nothing"},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright log show", "the last entries of all"},
    {"jarwright log show 26-041", "everything logged about a batch"},
    {"jarwright log verify", "whether anything was altered, removed or damaged since"},
    {"jarwright log device tablet", "names this device, as others see it after a merge"},
    {"jarwright log backup /media/stick/household-2026-11-25.db", "a checked copy of everything"},
    {"jarwright log restore /media/stick/household-2026-11-25.db",
     "puts it back, and keeps beside it what was there"},
    {"jarwright log export --format csv --out tables", "tables for a spreadsheet"},
    {"jarwright log merge /media/stick/tablet.db --dry-run",
     "what another device's file would add"},
    EXAMPLES_END,
};

static const struct subcommand subcommands[] = {
    {"show", "[BATCH | lot NAME | canner NAME | '#N']", 1, 3, {"last", "json"}, run_show},
    {"verify", "", 1, 1, {"json"}, run_verify},
    {"rebuild", "", 1, 1, {"json"}, run_rebuild},
    {"device", "NAME", 2, 2, {"json"}, run_device},
    {"export", "", 1, 1, {"format", "out", "json"}, run_log_export},
    {"import", "FILE", 2, 2, {"dry-run", "json"}, run_log_import},
    {"merge", "FILE", 2, 2, {"dry-run", "json"}, run_log_merge},
    {"backup", "FILE", 2, 2, {"json"}, run_log_backup},
    {"restore", "FILE", 2, 2, {"json"}, run_log_restore},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run_log(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

const struct command command_log = {
    .name = "log",
    .synopsis = "show|verify|rebuild|device|export|import|merge|backup|restore "
		"[BATCH | lot NAME | canner NAME | '#N' | FILE]",
    .summary = "what was logged, in order, and whether the log is sound",
    .description =
	"Every change of canners, lots, batches, jars and recalls is an entry that is only ever "
	"added to. verify finds the first entry of each device that was altered, removed, inserted "
	"or put elsewhere, and whether the state is what the entries give; it writes nothing and "
	"exits with 1 if anything is wrong. It finds accidents and careless edits, not somebody "
	"who "
	"works the whole log out anew. rebuild works the state out from the entries. backup makes "
	"a "
	"checked copy, and restore puts one back, keeping what was there. export writes everything "
	"as "
	"JSON, which import takes in, or tables for spreadsheets; merge adds what another device's "
	"file has. 'jarwright help export' describes the formats.",
    .options = options,
    .examples = examples,
    .run = run_log,
};
