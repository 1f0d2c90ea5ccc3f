/* canner: the canners of the kitchen, and what the tests of their gauges say. */
#include <jansson.h>
#include <stdio.h>
#include <string.h>

#include "canner_test.h"
#include "jarwright/household_canners.h"
#include "jarwright/text.h"
#include "own_canner.h"
#include "request.h"
#include "subcommand.h"

/* --- What she says of a canner --- */

static bool read_kind(struct invocation *inv, enum canner *out)
{
	const char *word = option(inv, "kind");
	char shown[TEXT_SHOWN_SIZE];
	for (int kind = 0; word && kind < CANNER_COUNT; kind++)
		if (strcmp(word, canner_word((enum canner)kind)) == 0) {
			*out = (enum canner)kind;
			return true;
		}
	text_show(word ? word : "", SIZE_MAX, shown);
	return error_usage(inv->err,
			   "canner: %s%s%s; say --kind boiling-water, steam, dial-gauge or "
			   "weighted-gauge",
			   word ? "there is no kind '" : "its kind is missing", shown,
			   word ? "'" : "");
}

static bool read_holds(struct invocation *inv, const char *name, int *out)
{
	const char *given = option(inv, name);
	return !given || count_parse(name, given, KITCHEN_HOLDS_MAX, out, inv->err);
}

static bool read_all_holds(struct invocation *inv, struct kitchen_canner *out)
{
	return read_holds(inv, "holds-quarts", &out->holds_quarts) &&
	       read_holds(inv, "holds-pints", &out->holds_pints) &&
	       read_holds(inv, "holds-half-pints", &out->holds_half_pints);
}

static bool read_name(struct invocation *inv, struct kitchen_canner *out)
{
	const char *name = inv->operands[1];
	if (strlen(name) >= sizeof out->name)
		return error_usage(inv->err,
				   "canner: the name is longer than %zu bytes; shorten it",
				   sizeof out->name - 1);
	memcpy(out->name, name, strlen(name) + 1);
	return true;
}

/* --- What is answered --- */

static json_t *json_gauge(const struct gauge_test *test)
{
	return json_pack("{s:s, s:o, s:o}", "tested", test->tested, "high_psi",
			 json_milli(test->high_mpsi), "error_psi", json_milli(test->error_mpsi));
}

static json_t *json_record(const struct canner_record *record)
{
	json_t *json = json_canner(&record->canner);
	if (json && json_object_set_new(json, "retired", json_boolean(record->retired)) == 0 &&
	    json_object_set_new(json, "mark", json_string(record->mark)) == 0 &&
	    json_object_set_new(json, "gauge",
				record->tests_n ? json_gauge(&record->last) : json_null()) == 0)
		return json;
	json_decref(json);
	return NULL;
}

static int answer_record(struct invocation *inv, const char *lead,
			 const struct canner_record *record)
{
	if (flag(inv, "json"))
		return answer_json(inv, json_record(record), STATUS_DONE);
	struct page page = answer_page(inv);
	print_canner(&page, lead, &record->canner);
	return STATUS_DONE;
}

static int run_add(struct invocation *inv)
{
	struct kitchen_canner canner = {0};
	struct canner_record now;
	struct household *db;
	struct instant at;
	if (!read_name(inv, &canner) || !read_kind(inv, &canner.kind) ||
	    !read_all_holds(inv, &canner) || !invocation_when(inv, &at) ||
	    !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_add_canner(db, &canner, at, &now, inv->err);
	household_close(db);
	return inv->saved ? answer_record(inv, "added canner ", &now) : command_failed(inv);
}

static bool read_change(struct invocation *inv, struct kitchen_canner *said,
			struct canner_change *out)
{
	if (option(inv, "kind") && !read_kind(inv, &said->kind))
		return false;
	if (!read_all_holds(inv, said))
		return false;
	*out = (struct canner_change){
	    .name = option(inv, "name"),
	    .kind = option(inv, "kind") ? &said->kind : NULL,
	    .holds_quarts = option(inv, "holds-quarts") ? &said->holds_quarts : NULL,
	    .holds_pints = option(inv, "holds-pints") ? &said->holds_pints : NULL,
	    .holds_half_pints = option(inv, "holds-half-pints") ? &said->holds_half_pints : NULL,
	};
	if (out->name || out->kind || out->holds_quarts || out->holds_pints ||
	    out->holds_half_pints)
		return true;
	return error_usage(inv->err,
			   "canner: say what changes: --name, --kind or --holds-quarts N");
}

static int run_change(struct invocation *inv)
{
	struct kitchen_canner said = {0};
	struct canner_change change;
	struct canner_record record;
	struct household *db;
	struct instant at;
	if (!read_change(inv, &said, &change) || !invocation_when(inv, &at) ||
	    !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_change_canner(db, inv->operands[1], &change, at, &record, inv->err);
	household_close(db);
	return inv->saved ? answer_record(inv, "changed canner ", &record) : command_failed(inv);
}

static int run_retire(struct invocation *inv)
{
	struct canner_record record;
	struct household *db;
	struct instant at;
	if (!invocation_when(inv, &at) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_retire_canner(db, inv->operands[1], at, &record, inv->err);
	household_close(db);
	return inv->saved ? answer_record(inv, "no longer in use: ", &record) : command_failed(inv);
}

/* --- Looking --- */

static int print_list(struct invocation *inv, const struct canner_records *records)
{
	struct page page = answer_page(inv);
	if (records->n == 0)
		fputs("no canners; add one with 'jarwright canner add NAME --kind KIND'\n",
		      inv->out);
	for (size_t i = 0; i < records->n; i++) {
		const struct canner_record *record = &records->items[i];
		print_canner(&page, record->retired ? "retired " : "", &record->canner);
	}
	return STATUS_DONE;
}

static int list_to_json(struct invocation *inv, const struct canner_records *records)
{
	json_t *items = json_array();
	for (size_t i = 0; items && i < records->n; i++)
		items = json_append(items, json_record(&records->items[i]));
	return answer_json(inv, json_pack("{s:o}", "canners", items), STATUS_DONE);
}

static int run_list(struct invocation *inv)
{
	struct household *db;
	struct canner_records records;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_canner_records(db, flag(inv, "all"), &records, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = (flag(inv, "json") ? list_to_json : print_list)(inv, &records);
	canner_records_release(&records);
	return status;
}

static int run_show(struct invocation *inv)
{
	struct canner_record record;
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_canner(db, inv->operands[1], &record, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = answer_record(inv, record.retired ? "retired canner " : "canner ", &record);
	if (!flag(inv, "json"))
		print_gauge(inv, &record);
	return status;
}

/* clang-format off */
static const struct option_spec options[] = {
    {"kind", "KIND", "boiling-water, steam, dial-gauge or weighted-gauge"},
    {"name", "NAME", "with change: its new name"},
    {"holds-quarts", "N", "quart jars in one load, 1 to 100"},
    {"holds-pints", "N", "pint jars in one load, 1 to 100"},
    {"holds-half-pints", "N", "half-pint jars in one load, 1 to 100"},
    {"reads", "READING...", "with test: what the gauge read, and the master gauge beside it: "
                            "'12psi at 11psi'; once for each pressure tried"},
    {"on", "DATE", "with test: the date of the test, if not today: 2026-06-01"},
    {"all", NULL, "with list: those no longer in use too"},
    OPTION_AT,
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright canner add \"big kettle\" --kind dial-gauge --holds-quarts 7 --holds-pints 9",
     "keeps a canner and what it holds"},
    {"jarwright canner test \"big kettle\" --reads '12psi at 11psi' --reads '17psi at 15psi'",
     "keeps the test of its gauge, and says what to do about the error"},
    {"jarwright canner show \"big kettle\"", "the canner, and when its gauge was tested last"},
    EXAMPLES_END,
};

static const struct subcommand subcommands[] = {
    {"add",
     "NAME",
     2,
     2,
     {"kind", "holds-quarts", "holds-pints", "holds-half-pints", "at", "json"},
     run_add},
    {"change",
     "NAME",
     2,
     2,
     {"name", "kind", "holds-quarts", "holds-pints", "holds-half-pints", "at", "json"},
     run_change},
    {"retire", "NAME", 2, 2, {"at", "json"}, run_retire},
    {"test", "NAME", 2, 2, {"reads", "on", "at", "json"}, canner_test_command},
    {"list", "", 1, 1, {"all", "json"}, run_list},
    {"show", "NAME", 2, 2, {"json"}, run_show},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run_canner(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

const struct command command_canner = {
    .name = "canner",
    .synopsis = "add|change|retire|test|list|show [NAME] [--kind KIND] [--holds-quarts N]",
    .summary = "your canners: what they hold, and the tests of their gauges",
    .description =
	"Keeps the canners of your kitchen, for planning loads and for the log. A dial gauge is to "
	"be checked before use each year: 'test' keeps what it read beside a master gauge, and "
	"says "
	"by the published rules whether to allow for the error or to replace the gauge. A canner "
	"that is retired stays in the log for the batches it made.",
    .options = options,
    .examples = examples,
    .run = run_canner,
};
