#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
#include "request.h"

bool invocation_kitchen(struct invocation *inv, struct kitchen *out)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_kitchen(db, out, inv->err);
	household_close(db);
	return ok;
}

bool elevation_parse(const char *text, struct elevation *out, struct error *err)
{
	struct quantity quantity;
	int64_t mft;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	if (strlen(text) >= sizeof out->typed)
		return error_usage(err, "elevation: '%s' is longer than %zu bytes; type it shorter",
				   shown, sizeof out->typed - 1);
	if (!quantity_parse(DIMENSION_LENGTH, "elevation", text, &quantity, err))
		return false;
	const struct rational least = {KITCHEN_ELEVATION_MIN_FT, 1};
	const struct rational most = {KITCHEN_ELEVATION_MAX_FT, 1};
	if (rational_compare(quantity.amount, least) < 0 ||
	    rational_compare(quantity.amount, most) > 0 ||
	    !rational_ceil(quantity.amount, 1000, &mft))
		return error_usage(err,
				   "elevation: '%s' is outside %d to %d ft; check the number and "
				   "the unit",
				   shown, KITCHEN_ELEVATION_MIN_FT, KITCHEN_ELEVATION_MAX_FT);
	out->stated = true;
	out->from_kitchen = false;
	out->mft = (int32_t)mft;
	memcpy(out->typed, text, strlen(text) + 1);
	return true;
}

bool invocation_elevation(struct invocation *inv, struct elevation *out)
{
	struct kitchen kitchen;
	*out = (struct elevation){0};
	const char *given = option(inv, "elevation");
	if (given)
		return elevation_parse(given, out, inv->err);
	if (!invocation_kitchen(inv, &kitchen))
		return false;
	out->stated = out->from_kitchen = kitchen.elevation_stated;
	out->mft = kitchen.elevation_mft;
	memcpy(out->typed, kitchen.elevation_typed, sizeof out->typed);
	return true;
}

/* Feet with the thousandths that there are: "2900", "2887.14". */
static void feet_text(int32_t mft, char *buffer, size_t size)
{
	int32_t rest = abs(mft % 1000);
	int digits = 3;
	for (; digits > 0 && rest % 10 == 0; digits--)
		rest /= 10;
	snprintf(buffer, size, "%s%d%s%.*d", mft < 0 ? "-" : "", abs(mft / 1000), digits ? "." : "",
		 digits, (int)rest);
}

/* ", holds 7 quarts", then " or 9 pints"; nothing where she has not said. */
static void holds_words(char *buffer, size_t size, int holds, const char *jars)
{
	size_t n = strlen(buffer);
	if (holds > 0)
		snprintf(buffer + n, size - n, "%s%d %s%s", n == 0 ? ", holds " : " or ", holds,
			 jars, holds == 1 ? "" : "s");
}

static void print_canner(const struct page *page, const char *lead,
			 const struct kitchen_canner *canner)
{
	char holds[WORDS_BUFFER] = "";
	holds_words(holds, sizeof holds, canner->holds_quarts, "quart");
	holds_words(holds, sizeof holds, canner->holds_pints, "pint");
	holds_words(holds, sizeof holds, canner->holds_half_pints, "half-pint");
	page_format(page, lead, "'%s' (%s%s)", canner->name, canner_word(canner->kind), holds);
}

static void print_kitchen(const struct page *page, const char *path, const struct kitchen *kitchen)
{
	char feet[32];
	fprintf(page->out, "file:      %s\n", path);
	if (kitchen->elevation_stated) {
		feet_text(kitchen->elevation_mft, feet, sizeof feet);
		page_format(page, "elevation: ", "%s ft (you said %s)", feet,
			    kitchen->elevation_typed);
	} else {
		page_text(page, "elevation: ",
			  "not stated; say it with 'jarwright kitchen --elevation 2900ft'");
	}
	if (kitchen->units == UNITS_UNSTATED)
		page_text(page, "units:     ",
			  "not stated; say them with 'jarwright kitchen --units us'");
	else
		page_text(page, "units:     ", units_word(kitchen->units));
	if (kitchen->canners_n == 0)
		page_text(page, "canner:    ",
			  "none; add one with 'jarwright kitchen add NAME --canner KIND'");
	for (size_t i = 0; i < kitchen->canners_n; i++)
		print_canner(page, "canner:    ", &kitchen->canners[i]);
}

/* Exact where it is whole; JSON has no other number for the rest. */
static json_t *json_feet(const struct kitchen *kitchen)
{
	if (!kitchen->elevation_stated)
		return json_null();
	if (kitchen->elevation_mft % 1000 == 0)
		return json_integer(kitchen->elevation_mft / 1000);
	return json_real(kitchen->elevation_mft / 1000.0);
}

static json_t *json_holds(int holds)
{
	return holds ? json_integer(holds) : json_null();
}

static json_t *json_canners(const struct kitchen *kitchen)
{
	json_t *list = json_array();
	for (size_t i = 0; i < kitchen->canners_n; i++) {
		const struct kitchen_canner *canner = &kitchen->canners[i];
		json_t *item = json_pack("{s:s, s:s, s:o, s:o, s:o}", "name", canner->name, "kind",
					 canner_word(canner->kind), "holds_quarts",
					 json_holds(canner->holds_quarts), "holds_pints",
					 json_holds(canner->holds_pints), "holds_half_pints",
					 json_holds(canner->holds_half_pints));
		if (json_array_append_new(list, item) != 0) {
			json_decref(list);
			return NULL;
		}
	}
	return list;
}

/* NULL: out of memory. A path need not be UTF-8, JSON must be: then it is null. */
static json_t *json_kitchen(const char *path, const struct kitchen *kitchen)
{
	json_t *file = json_string(path);
	return json_pack("{s:o, s:o, s:s?, s:s?, s:o}", "file", file ? file : json_null(),
			 "elevation_ft", json_feet(kitchen), "elevation_typed",
			 kitchen->elevation_stated ? kitchen->elevation_typed : NULL, "units",
			 kitchen->units == UNITS_UNSTATED ? NULL : units_word(kitchen->units),
			 "canners", json_canners(kitchen));
}

static int show(struct invocation *inv, const char *path, const struct kitchen *kitchen)
{
	if (flag(inv, "json"))
		return answer_json(inv, json_kitchen(path, kitchen), STATUS_DONE);
	struct page page = answer_page(inv);
	print_kitchen(&page, path, kitchen);
	return STATUS_DONE;
}

/* What one run of the command changes. */
struct change {
	enum { CHANGE_NOTHING, CHANGE_FACTS, CHANGE_ADD, CHANGE_REMOVE } what;
	struct kitchen_change facts;
	struct elevation elevation;
	struct kitchen_canner canner;
	bool replaced;
};

static bool read_facts(struct invocation *inv, struct change *out)
{
	const char *elevation = option(inv, "elevation"), *units = option(inv, "units");
	if (elevation && !elevation_parse(elevation, &out->elevation, inv->err))
		return false;
	if (units && !units_parse(units, &out->facts.units, inv->err))
		return false;
	out->facts.elevation_stated = out->elevation.stated;
	out->facts.elevation_mft = out->elevation.mft;
	out->facts.elevation_typed = out->elevation.typed;
	if (elevation || units)
		out->what = CHANGE_FACTS;
	return true;
}

static bool read_kind(const char *word, enum canner *out, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	for (int kind = 0; word && kind < CANNER_COUNT; kind++)
		if (strcmp(word, canner_word((enum canner)kind)) == 0) {
			*out = (enum canner)kind;
			return true;
		}
	text_show(word ? word : "", SIZE_MAX, shown);
	return error_usage(err,
			   "kitchen: %s%s%s; say --canner boiling-water, steam, dial-gauge or "
			   "weighted-gauge",
			   word ? "no canner is called '" : "the kind of canner is missing", shown,
			   word ? "'" : "");
}

static bool read_name(struct invocation *inv, struct change *out)
{
	const char *name = inv->operands[1];
	if (strlen(name) >= sizeof out->canner.name)
		return error_usage(inv->err,
				   "kitchen: the name is longer than %zu bytes; shorten it",
				   sizeof out->canner.name - 1);
	memcpy(out->canner.name, name, strlen(name) + 1);
	return true;
}

static bool read_holds(struct invocation *inv, const char *name, int *out)
{
	const char *given = option(inv, name);
	return !given || count_parse(name, given, KITCHEN_HOLDS_MAX, out, inv->err);
}

static bool read_canner(struct invocation *inv, struct change *out)
{
	return read_name(inv, out) &&
	       read_kind(option(inv, "canner"), &out->canner.kind, inv->err) &&
	       read_holds(inv, "holds-quarts", &out->canner.holds_quarts) &&
	       read_holds(inv, "holds-pints", &out->canner.holds_pints) &&
	       read_holds(inv, "holds-half-pints", &out->canner.holds_half_pints);
}

/* An option that goes with another form of the command would be lost in silence. */
static bool only_options(struct invocation *inv, const char *form, const char *const *allowed)
{
	for (size_t i = 0; i < inv->given_n; i++) {
		const char *const *name = allowed;
		while (*name && strcmp(*name, inv->given[i].name) != 0)
			name++;
		if (!*name)
			return error_usage(inv->err,
					   "kitchen: --%s does not go with %s; 'jarwright kitchen "
					   "--help' shows what does",
					   inv->given[i].name, form);
	}
	return true;
}

static bool read_change(struct invocation *inv, struct change *out)
{
	static const char *const facts[] = {"elevation", "units", "json", "no-color", NULL};
	static const char *const add[] = {
	    "canner", "holds-quarts", "holds-pints", "holds-half-pints", "json", "no-color", NULL};
	static const char *const remove[] = {"json", "no-color", NULL};
	if (inv->operands_n == 0)
		return only_options(inv, "the kitchen's own facts", facts) && read_facts(inv, out);
	bool adds = strcmp(inv->operands[0], "add") == 0;
	if (!adds && strcmp(inv->operands[0], "remove") != 0) {
		char shown[TEXT_SHOWN_SIZE];
		text_show(inv->operands[0], SIZE_MAX, shown);
		return error_usage(inv->err, "kitchen: cannot '%s'; say add or remove", shown);
	}
	if (!operands_between(inv, 2, 2, "name"))
		return false;
	out->what = adds ? CHANGE_ADD : CHANGE_REMOVE;
	return adds ? only_options(inv, "add", add) && read_canner(inv, out)
		    : only_options(inv, "remove", remove);
}

static bool save(struct invocation *inv, struct household *db, struct change *change)
{
	switch (change->what) {
	case CHANGE_FACTS:
		inv->saved = household_change_kitchen(db, &change->facts, inv->err);
		return inv->saved;
	case CHANGE_ADD:
		inv->saved = household_put_canner(db, &change->canner, &change->replaced, inv->err);
		return inv->saved;
	case CHANGE_REMOVE:
		inv->saved = household_remove_canner(db, inv->operands[1], inv->err);
		return inv->saved;
	case CHANGE_NOTHING:
		break;
	}
	return true;
}

static void tell(struct invocation *inv, const struct change *change)
{
	FILE *out = inv->out;
	char feet[32];
	if (change->what == CHANGE_FACTS && change->facts.elevation_stated) {
		feet_text(change->elevation.mft, feet, sizeof feet);
		fprintf(out, "elevation is now %s ft\n", feet);
	}
	if (change->what == CHANGE_FACTS && change->facts.units != UNITS_UNSTATED)
		fprintf(out, "units are now %s\n", units_word(change->facts.units));
	struct page page = answer_page(inv);
	if (change->what == CHANGE_ADD)
		print_canner(&page, change->replaced ? "replaced canner " : "added canner ",
			     &change->canner);
	if (change->what == CHANGE_REMOVE)
		fprintf(out, "removed canner '%s'\n", inv->operands[1]);
}

static int run_kitchen(struct invocation *inv)
{
	struct change change = {0};
	struct kitchen kitchen;
	char path[HOUSEHOLD_PATH_SIZE];
	struct household *db;
	if (!read_change(inv, &change) || !household_path(path, sizeof path, inv->err))
		return command_failed(inv);
	enum household_access access =
	    change.what == CHANGE_NOTHING ? HOUSEHOLD_READ : HOUSEHOLD_WRITE;
	if (!household_open(path, access, &db, inv->err))
		return command_failed(inv);
	bool ok = save(inv, db, &change) && household_kitchen(db, &kitchen, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	if (!flag(inv, "json"))
		tell(inv, &change);
	return show(inv, path, &kitchen);
}

/* clang-format off */
static const struct option_spec kitchen_options[] = {
    OPTION_ELEVATION,
    {"units", "us|metric", "how quantities are shown"},
    {"canner", "KIND", "with add: boiling-water, steam, dial-gauge or weighted-gauge"},
    {"holds-quarts", "N", "with add: quart jars in one load, 1 to 100"},
    {"holds-pints", "N", "with add: pint jars in one load, 1 to 100"},
    {"holds-half-pints", "N", "with add: half-pint jars in one load, 1 to 100"},
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example kitchen_examples[] = {
    {"jarwright kitchen --elevation 2900ft --units us",
     "keeps the elevation, so that later answers are for this kitchen"},
    {"jarwright kitchen add \"big pot\" --canner boiling-water --holds-quarts 7",
     "keeps a canner and what it holds, for planning loads"},
    EXAMPLES_END,
};

const struct command command_kitchen = {
    .name = "kitchen",
    .synopsis = "[add|remove NAME] [--canner KIND] [--elevation E] [--units us|metric]",
    .summary = "your elevation, units and canners, kept for later answers",
    .description =
	"Shows or changes the facts about your kitchen that answers depend on. Nothing is "
	"assumed: an elevation that is not stated is asked for, because water boils cooler "
	"higher up and the process must be longer. The first change makes the household file: "
	"$JARWRIGHT_DB, else $XDG_DATA_HOME/jarwright/household.db, else "
	"~/.local/share/jarwright/household.db.",
    .options = kitchen_options,
    .examples = kitchen_examples,
    .run = run_kitchen,
};
