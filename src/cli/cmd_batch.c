/* batch: the table of its subcommands, and which options go with which. */
#include "batch.h"
#include "own_recipe.h"
#include "record_file.h"
#include "subcommand.h"

/* clang-format off */
static const struct option_spec options[] = {
    REQUEST_OPTIONS,
    OWN_RECIPE_OPTIONS,
    {"empty-jars", "sterile|clean", "start: state of the empty jars"},
    {"keep", "shelf|refrigerator|freezer", "start: where the jars will be kept; shelf if not said"},
    {"title", "TITLE", "start, amend: what the batch is called"},
    {"lot", "LOT...", "start, amend: a lot that went in, by name or code; several times for several"},
    {"from", "JARS...", "start: jars of an earlier batch that went in: 26-012-03"},
    {"meter-calibrated", "PH,PH", "with --ph, and ph: what the meter was calibrated with: 4.0,7.0"},
    {"jars", "JARS", "load: how many of which size: '7 pints', '4 quarts, 3 pints'"},
    {"started", "WHEN", "load: when timing began: 14:05"},
    {"ended", "WHEN", "load: when timing ended: 14:40"},
    {"minutes", "N", "load: how long it was processed, instead of --ended"},
    {"vented", "MINUTES", "load: how long the pressure canner was vented: 10min"},
    {"low-psi", "PSI", "load: lowest reading of the gauge while the time counted"},
    {"low-temp", "T", "load: lowest temperature of the steam while the time counted: 208F, 98C"},
    {"uninterrupted", NULL, "load: the boil or the pressure was never lost"},
    {"interrupted", "HOW-LONG...", "load: the boil or the pressure was lost: '2 min at 14:20'"},
    {"out", "WHEN", "load: when the jars came out; the end of the process if not said"},
    {"again", "JARS", "load: jars of this batch that were processed again"},
    {"failed", "JARS", "seal: jars whose seal failed"},
    {"method", "press|tap|look", "seal: how the seals were tested"},
    {"early", NULL, "seal: log it although it is early; test again later"},
    {"day", "DATE", "amend: the day it was put up: 2026-09-14"},
    {"load", "N", "amend: a load, with what is to be said of it anew; record: the load it is of"},
    {"why", "TEXT", "amend: the reason, kept with the correction"},
    {"year", "YEAR", "list: only this year's"},
    {"food", "WORDS", "list: only those with this in their title, food or recipe"},
    {"open", NULL, "list: only those that are not finished"},
    RECORD_FILE_OPTIONS,
    OPTION_AT,
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright batch start pickled-beets --canner 'big pot' --jar pint --vinegar 5%",
     "decides first, as check does; then gives the batch its code"},
    {"jarwright batch start 'garlic in oil' --keep refrigerator",
     "logged as refrigerated goods, never for the shelf"},
    {"jarwright batch load 26-041 --canner 'big pot' --jars '7 pints' --started 14:05 --ended "
     "14:40 --uninterrupted",
     "one filling of one canner, held against what was decided"},
    {"jarwright batch load 26-042 --canner dial --jars '9 pints' --vented 10min --minutes 25 "
     "--low-psi 12 --interrupted '2 min at 14:20' --started 14:05",
     "after a lost pressure the whole time starts again"},
    {"jarwright batch seal 26-041 1-6 --failed 7 --method press",
     "12 to 24 hours after they came out"},
    {"jarwright batch record 26-042 load.csv --svg load.svg",
     "a data logger's file held against the load; it can only make it stricter"},
    {"jarwright batch ph 26-041 3.9 --meter-calibrated 4.0,7.0",
     "a reading can only take a batch off the shelf"},
    {"jarwright batch amend 26-041 --load 1 --minutes 30 --why 'clock read wrong'",
     "corrected by a new entry; nothing is deleted"},
    {"jarwright batch show 26-041", "everything that is known of it"},
    EXAMPLES_END,
};

#define FACTS                                                                                      \
	"started", "ended", "minutes", "vented", "low-psi", "low-temp", "uninterrupted",           \
	    "interrupted", "out"

static const struct subcommand subcommands[] = {
    {"start",
     "FOOD|RECIPE",
     2,
     33,
     {"canner",
      "jar",
      "pack",
      "elevation",
      "vinegar",
      "acid",
      "ph",
      "psi",
      "holds",
      "closure",
      "container",
      "as",
      "formula",
      "empty-jars",
      "keep",
      "title",
      "lot",
      "from",
      "meter-calibrated",
      "at",
      "json"},
     batch_start_command},
    {"load", "CODE", 2, 2, {"canner", "jars", "again", FACTS, "at", "json"}, batch_load_command},
    {"seal", "CODE [JARS]", 2, 3, {"failed", "method", "early", "at", "json"}, batch_seal_command},
    {"finish", "CODE", 2, 2, {"at", "json"}, batch_finish_command},
    {"note", "CODE TEXT", 3, 3, {"at", "json"}, batch_note_command},
    {"ph", "CODE PH", 3, 3, {"meter-calibrated", "at", "json"}, batch_ph_command},
    {"amend",
     "CODE",
     2,
     2,
     {"day", "title", "lot", "elevation", "load", FACTS, "why", "at", "json"},
     batch_amend_command},
    {"record",
     "CODE FILE",
     3,
     3,
     {"load", "time-column", "date-column", "temp-column", "pressure-column", "temp-unit",
      "pressure-unit", "pressure-zero", "dates", "time-unit", "svg", "at", "json"},
     batch_record_command},
    {"list", "", 1, 1, {"year", "food", "open", "json"}, batch_list_command},
    {"show", "CODE", 2, 2, {"json"}, batch_show_command},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

bool batch_of_operand(struct invocation *inv, struct batch_view *view, struct load_rules *rules)
{
	struct household *db;
	*view = (struct batch_view){0};
	if (!load_rules_find(reference_edition(), reference_tables_edition(), rules, inv->err) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_batch(db, inv->operands[1], view, inv->err);
	household_close(db);
	return ok;
}

const struct command command_batch = {
    .name = "batch",
    .synopsis =
	"start FOOD|RECIPE | load|seal|finish|note|ph|amend|show CODE | record CODE FILE | list",
    .summary = "the log of what you put up: decided first, then its loads, seals and jars",
    .description =
	"Logs batches. start decides as check does, and only what is tested is logged for the "
	"shelf; anything else only as refrigerated or frozen goods. load holds what you say of a "
	"load against that decision: a fact that falls short makes it under-processed, a fact not "
	"said leaves it unclear, and it says what the sources then allow. record holds a "
	"recorder's file (CSV) against one load and keeps what "
	"it shows, not its rows; it can only make the load stricter. Nothing is deleted: a "
	"mistake is corrected by a new entry. start exits as check does; load, amend and record "
	"exit with "
	"0 for processed, 3 under-processed, 5 unclear.",
    .options = options,
    .examples = examples,
    .run = run,
};
