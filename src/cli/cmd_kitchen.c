#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"
#include "own_canner.h"
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
			  "none; add one with 'jarwright canner add NAME --kind KIND'");
	for (size_t i = 0; i < kitchen->canners_n; i++)
		print_canner(page, "canner:    ", &kitchen->canners[i]);
	if (kitchen->canners_more > 0)
		page_format(page, "canner:    ", "and %zu more; 'jarwright canner list' shows all",
			    kitchen->canners_more);
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

static json_t *json_canners(const struct kitchen *kitchen)
{
	json_t *list = json_array();
	for (size_t i = 0; i < kitchen->canners_n; i++) {
		if (json_array_append_new(list, json_canner(&kitchen->canners[i])) != 0) {
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
	struct kitchen_change facts;
	struct elevation elevation;
};

static bool read_change(struct invocation *inv, struct change *out)
{
	const char *elevation = option(inv, "elevation"), *units = option(inv, "units");
	if (!operands_between(inv, 0, 0, ""))
		return false;
	if (elevation && !elevation_parse(elevation, &out->elevation, inv->err))
		return false;
	if (units && !units_parse(units, &out->facts.units, inv->err))
		return false;
	out->facts.elevation_stated = out->elevation.stated;
	out->facts.elevation_mft = out->elevation.mft;
	out->facts.elevation_typed = out->elevation.typed;
	return true;
}

static bool is_change(const struct kitchen_change *facts)
{
	return facts->elevation_stated || facts->units != UNITS_UNSTATED;
}

static bool save(struct invocation *inv, struct household *db, const struct change *change)
{
	if (!is_change(&change->facts))
		return true;
	inv->saved = household_change_kitchen(db, &change->facts, inv->err);
	return inv->saved;
}

static void tell(struct invocation *inv, const struct change *change)
{
	char feet[32];
	if (change->facts.elevation_stated) {
		feet_text(change->elevation.mft, feet, sizeof feet);
		fprintf(inv->out, "elevation is now %s ft\n", feet);
	}
	if (change->facts.units != UNITS_UNSTATED)
		fprintf(inv->out, "units are now %s\n", units_word(change->facts.units));
}

static int run_kitchen(struct invocation *inv)
{
	struct change change = {0};
	struct kitchen kitchen;
	char path[HOUSEHOLD_PATH_SIZE];
	struct household *db;
	if (!read_change(inv, &change) || !household_path(path, sizeof path, inv->err))
		return command_failed(inv);
	enum household_access access = is_change(&change.facts) ? HOUSEHOLD_WRITE : HOUSEHOLD_READ;
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
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example kitchen_examples[] = {
    {"jarwright kitchen --elevation 2900ft --units us",
     "keeps the elevation, so that later answers are for this kitchen"},
    {"jarwright kitchen", "what is known of your kitchen, its canners too"},
    EXAMPLES_END,
};

const struct command command_kitchen = {
    .name = "kitchen",
    .synopsis = "[--elevation E] [--units us|metric]",
    .summary = "your elevation and units, kept for later answers",
    .description =
	"Shows or changes the facts about your kitchen that answers depend on. Nothing is "
	"assumed: an elevation that is not stated is asked for, because water boils cooler "
	"higher up and the process must be longer. The first change makes the household file: "
	"$JARWRIGHT_DB, else $XDG_DATA_HOME/jarwright/household.db, else "
	"~/.local/share/jarwright/household.db. Canners are kept with 'jarwright canner'.",
    .options = kitchen_options,
    .examples = kitchen_examples,
    .run = run_kitchen,
};
