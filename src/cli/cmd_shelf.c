#include <jansson.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "request.h"

#define AGE_MAX 10000

/* "12months", "1 year": the day so long before today. */
static bool read_age(struct invocation *inv, const char *text, int64_t *day)
{
	static const struct {
		const char *word;
		int months, days;
	} units[] = {{"day", 0, 1}, {"week", 0, 7}, {"month", 1, 0}, {"year", 12, 0}};
	char shown[TEXT_SHOWN_SIZE], number[16];
	size_t digits = strspn(text, "0123456789");
	const char *unit = text + digits + strspn(text + digits, " ");
	const struct date today = instant_date(instant_at(inv->now));
	int n;
	text_show(text, SIZE_MAX, shown);
	snprintf(number, sizeof number, "%.*s", (int)digits, text);
	for (size_t i = 0; digits > 0 && digits < 6 && i < sizeof units / sizeof *units; i++) {
		size_t length = strlen(units[i].word);
		if (strncmp(unit, units[i].word, length) != 0 ||
		    (unit[length] && strcmp(unit + length, "s") != 0))
			continue;
		if (!count_parse("older-than", number, AGE_MAX, &n, inv->err))
			return false;
		*day = units[i].months ? date_days(date_add_months(today, -n * units[i].months))
				       : date_days(today) - (int64_t)n * units[i].days;
		return true;
	}
	return error_usage(
	    inv->err, "older-than: '%s' is no age; write 12months, 1year, 6weeks or 30days", shown);
}

static bool read_filter(struct invocation *inv, struct shelf_filter *out)
{
	struct food_match match;
	const char *age = option(inv, "older-than");
	*out = (struct shelf_filter){.gone_too = flag(inv, "all"),
				     .words = option(inv, "food"),
				     .place = option(inv, "place"),
				     .before_day = INT64_MAX};
	if (out->words) {
		reference_find_food(reference_edition(), out->words, &match);
		if (match.kind == MATCH_ONE)
			out->food = match.foods[0]->slug;
	}
	return !age || read_age(inv, age, &out->before_day);
}

static int run_shelf(struct invocation *inv)
{
	struct shelf_filter filter;
	struct jar_groups groups;
	struct shelf_list list;
	struct household *db;
	if (!operands_between(inv, 0, 0, "") || !read_filter(inv, &filter) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_shelf(db, &filter, &groups, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = STATUS_DONE;
	const struct page page = answer_page(inv);
	if (!shelf_list_make(&groups, instant_at(inv->now), &list, inv->err))
		status = command_failed(inv);
	else if (flag(inv, "json"))
		status = answer_json(inv, shelf_json(&list), STATUS_DONE);
	else
		shelf_text(&page, &list);
	if (inv->err->kind == ERROR_NONE)
		shelf_list_release(&list);
	jar_groups_release(&groups);
	return status;
}

/* clang-format off */
static const struct option_spec options[] = {
    {"food", "WORDS", "only what these words mean, or have in their title"},
    {"place", "WORDS", "only what stands at such a place"},
    {"older-than", "AGE", "only what was put up so long ago: 12months, 1year, 6weeks, 30days"},
    {"all", NULL, "also what is eaten, given away or discarded"},
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright shelf", "what there is, what needs doing on top, what to use first next"},
    {"jarwright shelf --food beets --older-than 12months", "beets past their best"},
    EXAMPLES_END,
};

const struct command command_shelf = {
    .name = "shelf",
    .synopsis = "[--food WORDS] [--place WORDS] [--older-than AGE] [--all]",
    .summary = "what jars there are, and what to use first",
    .description =
	"Lists the jars that are here. On top is what may not stand on a shelf, and what to do "
	"with "
	"it; then what is opened, chilled and frozen, each with its limit, and the shelf, the "
	"oldest first. The limits are the published ones, the shorter where they differ.",
    .options = options,
    .examples = examples,
    .run = run_shelf,
};
