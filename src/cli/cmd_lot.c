/* lot: cartons of lids, jugs of vinegar, crates of produce, and the batches they went into. */
#include <jansson.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/household_lots.h"
#include "jarwright/measure.h"
#include "jarwright/plan.h"
#include "jarwright/text.h"
#include "request.h"
#include "subcommand.h"

/* --- What she says of a lot --- */

static bool read_kind(struct invocation *inv, const char **out)
{
	const char *word = option(inv, "kind");
	char shown[TEXT_SHOWN_SIZE];
	*out = word ? lot_kind_find(word) : NULL;
	if (*out)
		return true;
	text_show(word ? word : "", SIZE_MAX, shown);
	return error_usage(
	    inv->err,
	    "lot: %s%s%s; say --kind lids, vinegar, produce, salt, sugar, pectin, jars "
	    "or other",
	    word ? "there is no kind '" : "its kind is missing", shown, word ? "'" : "");
}

/* Rounded down: a weaker vinegar than the label says is the worse one. */
static bool read_strength(struct invocation *inv, int32_t *out)
{
	const char *text = option(inv, "strength");
	struct quantity strength;
	int64_t milli;
	char shown[TEXT_SHOWN_SIZE];
	if (!text)
		return true;
	if (!quantity_parse(DIMENSION_PERCENT, "strength", text, &strength, inv->err))
		return false;
	text_show(text, SIZE_MAX, shown);
	if (!rational_floor(strength.amount, 1000, &milli) || milli < 1 || milli > 100000)
		return error_usage(inv->err,
				   "strength: '%s' is no strength of vinegar; type the acidity on "
				   "the label, such as 5%%",
				   shown);
	*out = (int32_t)milli;
	return true;
}

static bool read_dated(struct invocation *inv, const char **out)
{
	struct date date, today = instant_date(instant_at(inv->now));
	*out = option(inv, "dated");
	if (!*out)
		return true;
	if (!date_parse("dated", *out, &date, inv->err))
		return false;
	return date_days(date) <= date_days(today) ||
	       error_usage(inv->err,
			   "dated: '%s' is still to come; type the date it was made or bought, not "
			   "the one it keeps until",
			   *out);
}

/* What is given, checked; what is not is NULL or 0. */
static bool read_given(struct invocation *inv, struct lot_change *out)
{
	*out =
	    (struct lot_change){.supplier = option(inv, "supplier"), .code = option(inv, "code")};
	return read_dated(inv, &out->dated) && read_strength(inv, &out->strength_mpct);
}

static bool put_text(struct invocation *inv, const char *what, const char *text, char *out,
		     size_t size)
{
	if (!text)
		return true;
	if (strlen(text) >= size)
		return error_usage(inv->err, "lot: the %s is longer than %zu bytes; shorten it",
				   what, size - 1);
	memcpy(out, text, strlen(text) + 1);
	return true;
}

/* --- What is published about it --- */

/* Whole years of lids after which a gasket may fail, as published. */
static const struct published_rule *old_lids(int *years)
{
	const struct published_rule *rule =
	    published_find(reference_edition(), "lids", "years", "|gaskets of unused lids|");
	struct span span;
	*years = rule && published_span(rule, &span) ? span.least : 0;
	return rule;
}

/* Is the lot one of lids past that age today? */
static bool is_old(const struct invocation *inv, const struct lot *lot,
		   const struct published_rule **rule)
{
	struct date dated;
	struct error ignored = {0};
	int years;
	*rule = old_lids(&years);
	if (strcmp(lot->kind, "lids") != 0 || lot->finished || !*lot->dated ||
	    !date_parse("dated", lot->dated, &dated, &ignored))
		return false;
	struct date end = date_add_months(dated, years * 12);
	return date_days(end) < date_days(instant_date(instant_at(inv->now)));
}

static void print_warnings(struct invocation *inv, const struct page *page, const struct lot *lot)
{
	const struct published_rule *rule;
	if (strcmp(lot->kind, "vinegar") == 0 && lot->strength_mpct == 0)
		page_text(
		    page, "  ask:    ",
		    "how strong is it? say --strength as on the label, such as 5%; without it "
		    "nothing made with it can be tested");
	if (is_old(inv, lot, &rule))
		page_format(
		    page, "  warn:   ",
		    "these lids are over %s %s old; their gaskets may fail to seal%s%s%s%s%s",
		    rule ? rule->value : "some", rule ? rule->unit : "years", rule ? " [" : "",
		    rule ? rule->from.source->title : "", rule ? ", " : "",
		    rule ? rule->from.place : "", rule ? "]" : "");
	if (strcmp(lot->kind, "lids") == 0 && !*lot->dated)
		page_text(
		    page, "  ask:    ",
		    "how old are they? say --dated, the date on the carton or of buying them");
}

/* --- What is answered --- */

static json_t *json_lot(const struct invocation *inv, const struct lot *lot)
{
	const struct published_rule *rule;
	return json_pack("{s:s, s:s, s:s?, s:s?, s:s?, s:o, s:b, s:b, s:s, s:I}", "name", lot->name,
			 "kind", lot->kind, "supplier", *lot->supplier ? lot->supplier : NULL,
			 "code", *lot->code ? lot->code : NULL, "dated",
			 *lot->dated ? lot->dated : NULL, "strength_percent",
			 lot->strength_mpct ? json_milli(lot->strength_mpct) : json_null(),
			 "finished", lot->finished, "old", is_old(inv, lot, &rule), "mark",
			 lot->mark, "batches", (json_int_t)lot->batches_n);
}

static void print_lot(struct invocation *inv, const char *lead, const struct lot *lot)
{
	struct page page = answer_page(inv);
	char strength[WORDS_BUFFER], more[4 * (LOT_TEXT_MAX + 16)] = "";
	size_t n = 0;
	const struct {
		const char *lead, *text;
	} parts[] = {{", from ", lot->supplier}, {", code ", lot->code}, {", dated ", lot->dated}};
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
		if (*parts[i].text)
			n += (size_t)snprintf(more + n, sizeof more - n, "%s%s", parts[i].lead,
					      parts[i].text);
	if (lot->strength_mpct)
		snprintf(more + n, sizeof more - n, ", %s %%",
			 milli_words(strength, sizeof strength, lot->strength_mpct));
	page_format(&page, lead, "'%s' (%s%s)%s", lot->name, lot->kind, more,
		    lot->finished ? ", used up" : "");
	print_warnings(inv, &page, lot);
}

static int answer_lot(struct invocation *inv, const char *lead, const struct lot *lot)
{
	if (flag(inv, "json"))
		return answer_json(inv, json_lot(inv, lot), STATUS_DONE);
	print_lot(inv, lead, lot);
	return STATUS_DONE;
}

static bool read_new(struct invocation *inv, struct lot *out)
{
	struct lot_change given;
	if (!read_kind(inv, &out->kind) || !read_given(inv, &given))
		return false;
	out->strength_mpct = given.strength_mpct;
	return put_text(inv, "name", inv->operands[1], out->name, sizeof out->name) &&
	       put_text(inv, "supplier", given.supplier, out->supplier, sizeof out->supplier) &&
	       put_text(inv, "code", given.code, out->code, sizeof out->code) &&
	       put_text(inv, "date", given.dated, out->dated, sizeof out->dated);
}

static int run_add(struct invocation *inv)
{
	struct lot lot = {0}, now;
	struct household *db;
	struct instant at;
	if (!read_new(inv, &lot) || !invocation_when(inv, &at) ||
	    !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_add_lot(db, &lot, at, &now, inv->err);
	household_close(db);
	return inv->saved ? answer_lot(inv, "added lot ", &now) : command_failed(inv);
}

static bool read_change(struct invocation *inv, struct lot_change *out)
{
	if (!read_given(inv, out))
		return false;
	if (option(inv, "kind") && !read_kind(inv, &out->kind))
		return false;
	out->name = option(inv, "name");
	if (out->kind || out->name || out->supplier || out->code || out->dated ||
	    out->strength_mpct)
		return true;
	return error_usage(inv->err, "lot: say what changes: --name, --kind, --supplier, --code, "
				     "--dated or --strength");
}

static int run_change(struct invocation *inv)
{
	struct lot_change change;
	struct lot lot;
	struct household *db;
	struct instant at;
	if (!read_change(inv, &change) || !invocation_when(inv, &at) ||
	    !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_change_lot(db, inv->operands[1], &change, at, &lot, inv->err);
	household_close(db);
	return inv->saved ? answer_lot(inv, "changed lot ", &lot) : command_failed(inv);
}

static int run_finish(struct invocation *inv)
{
	struct lot lot;
	struct household *db;
	struct instant at;
	if (!invocation_when(inv, &at) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_finish_lot(db, inv->operands[1], at, &lot, inv->err);
	household_close(db);
	return inv->saved ? answer_lot(inv, "lot ", &lot) : command_failed(inv);
}

/* --- Looking --- */

static int print_list(struct invocation *inv, const struct lots *lots)
{
	if (lots->n == 0)
		fputs("no lots; add one with 'jarwright lot add NAME --kind KIND'\n", inv->out);
	for (size_t i = 0; i < lots->n; i++)
		print_lot(inv, "", &lots->items[i]);
	return STATUS_DONE;
}

static int list_to_json(struct invocation *inv, const struct lots *lots)
{
	json_t *items = json_array();
	for (size_t i = 0; items && i < lots->n; i++)
		items = json_append(items, json_lot(inv, &lots->items[i]));
	return answer_json(inv, json_pack("{s:o}", "lots", items), STATUS_DONE);
}

static int run_list(struct invocation *inv)
{
	struct household *db;
	struct lots lots;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_lots(db, flag(inv, "all"), &lots, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = (flag(inv, "json") ? list_to_json : print_list)(inv, &lots);
	lots_release(&lots);
	return status;
}

static json_t *json_batches(const struct lot_batches *batches)
{
	json_t *items = json_array();
	for (size_t i = 0; items && i < batches->n; i++) {
		const struct lot_batch *batch = &batches->items[i];
		items = json_append(items, json_pack("{s:s, s:s, s:s, s:i}", "batch", batch->code,
						     "day", batch->day, "title", batch->title,
						     "jars", batch->jars));
	}
	return items;
}

static int show_as_json(struct invocation *inv, const struct lot *lot,
			const struct lot_batches *batches)
{
	json_t *json = json_lot(inv, lot);
	if (json && json_object_set_new(json, "batches", json_batches(batches)) != 0) {
		json_decref(json);
		json = NULL;
	}
	return answer_json(inv, json, STATUS_DONE);
}

static int show_as_text(struct invocation *inv, const struct lot *lot,
			const struct lot_batches *batches)
{
	struct page page = answer_page(inv);
	print_lot(inv, "lot ", lot);
	if (batches->n == 0)
		fputs("went into no batch\n", inv->out);
	for (size_t i = 0; i < batches->n; i++) {
		const struct lot_batch *batch = &batches->items[i];
		char title[TEXT_SHOWN_SIZE];
		text_show(batch->title, SIZE_MAX, title);
		page_format(&page, "went into ", "batch %s, %s, %s, %d jar%s", batch->code,
			    batch->day, title, batch->jars, batch->jars == 1 ? "" : "s");
	}
	return STATUS_DONE;
}

static int run_show(struct invocation *inv)
{
	struct household *db;
	struct lot lot;
	struct lot_batches batches;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_lot(db, inv->operands[1], &lot, &batches, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = (flag(inv, "json") ? show_as_json : show_as_text)(inv, &lot, &batches);
	lot_batches_release(&batches);
	return status;
}

static const struct option_spec options[] = {
    {"kind", "KIND", "lids, vinegar, produce, salt, sugar, pectin, jars or other"},
    {"name", "NAME", "with change: its new name"},
    {"supplier", "NAME", "where it comes from"},
    {"code", "CODE", "what is printed on it: the maker's code"},
    {"dated", "DATE", "when it was made, picked or bought: 2026-06-01"},
    {"strength", "STRENGTH", "of vinegar: the acidity on the label, 5%"},
    {"all", NULL, "with list: those that are used up too"},
    OPTION_AT,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright lot add \"wide lids, spring\" --kind lids --code L-2231 --dated 2026-03-02",
     "keeps a carton of lids, so that its jars can be found again"},
    {"jarwright lot add \"cider vinegar\" --kind vinegar --strength 5%",
     "keeps a jug of vinegar and what its label says"},
    {"jarwright lot show \"wide lids, spring\"", "the batches it went into"},
    EXAMPLES_END,
};

static const struct subcommand subcommands[] = {
    {"add", "NAME", 2, 2, {"kind", "supplier", "code", "dated", "strength", "at", "json"}, run_add},
    {"change",
     "NAME",
     2,
     2,
     {"name", "kind", "supplier", "code", "dated", "strength", "at", "json"},
     run_change},
    {"finish", "NAME", 2, 2, {"at", "json"}, run_finish},
    {"list", "", 1, 1, {"all", "json"}, run_list},
    {"show", "NAME", 2, 2, {"json"}, run_show},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run_lot(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

const struct command command_lot = {
    .name = "lot",
    .synopsis = "add|change|finish|list|show [NAME] [--kind KIND] [--code C] [--dated DATE]",
    .summary = "cartons of lids, jugs of vinegar, crates of produce, for finding their jars again",
    .description =
	"Keeps what a supplier's code identifies. Name the lots that go into a batch when you "
	"start "
	"it: when a carton of lids turns out bad, the log finds every jar it closed. Lids past "
	"their published age are warned of; vinegar without a strength is asked about. A lot is "
	"found by its name or by the code on the pack.",
    .options = options,
    .examples = examples,
    .run = run_lot,
};
