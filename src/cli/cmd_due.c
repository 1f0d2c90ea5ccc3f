#include <errno.h>
#include <jansson.h>
#include <string.h>

#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "request.h"

#define DAYS_USUAL 30
#define DAYS_MAX   10000

/* A calendar of before may be written anew; any other file is somebody's work. */
static bool may_write(const char *path, struct error *err)
{
	static const char opening[] = "BEGIN:VCALENDAR";
	char shown[TEXT_SHOWN_SIZE], begins[sizeof opening] = "";
	FILE *file = fopen(path, "re");
	if (!file)
		return true;
	size_t n = fread(begins, 1, sizeof begins - 1, file);
	fclose(file);
	text_show(path, SIZE_MAX, shown);
	return n == 0 || strcmp(begins, opening) == 0 ||
	       error_usage(err, "ical: '%s' is there already and is no calendar; name another file",
			   shown);
}

static bool write_file(const char *path, const struct due_list *list, struct instant now,
		       struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(path, SIZE_MAX, shown);
	if (!may_write(path, err))
		return false;
	FILE *file = fopen(path, "we");
	if (!file)
		return error_failed(err, "ical: '%s' cannot be written: %s; check its folder",
				    shown, strerror(errno));
	due_calendar(file, list, now);
	bool ok = ferror(file) == 0;
	ok = fclose(file) == 0 && ok;
	return ok || error_failed(err, "ical: '%s' cannot be written: %s; check the disk", shown,
				  strerror(errno));
}

static int answer(struct invocation *inv, const struct due_list *list, struct instant now, int days)
{
	char shown[TEXT_SHOWN_SIZE];
	const char *ical = option(inv, "ical");
	const struct page page = answer_page(inv);
	text_show(ical ? ical : "", SIZE_MAX, shown);
	if (ical && strcmp(ical, "-") == 0) {
		due_calendar(inv->out, list, now);
		return STATUS_DONE;
	}
	if (ical && !write_file(ical, list, now, inv->err))
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, due_json(list, now), STATUS_DONE);
	if (ical)
		fprintf(inv->out, "wrote %zu entr%s to '%s'\n", list->items_n,
			list->items_n == 1 ? "y" : "ies", shown);
	else
		due_text(&page, list, now, days);
	return STATUS_DONE;
}

static int make_due(struct invocation *inv, const struct jar_groups *groups,
		    const struct gauges_due *gauges, int days)
{
	struct shelf_list shelf;
	struct due_list list;
	const struct instant now = instant_at(inv->now);
	if (!shelf_list_make(groups, now, &shelf, inv->err))
		return command_failed(inv);
	int status;
	if (due_list_make(&shelf, gauges, now, days, &list, inv->err)) {
		status = answer(inv, &list, now, days);
		due_list_release(&list);
	} else {
		status = command_failed(inv);
	}
	shelf_list_release(&shelf);
	return status;
}

static int run_due(struct invocation *inv)
{
	const struct shelf_filter all = {.before_day = INT64_MAX};
	struct jar_groups groups = {0};
	struct gauges_due gauges;
	struct household *db;
	int days = DAYS_USUAL;
	const char *given = option(inv, "days");
	if (!operands_between(inv, 0, 0, "") ||
	    (given && !count_parse("days", given, DAYS_MAX, &days, inv->err)) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok =
	    household_shelf(db, &all, &groups, inv->err) && household_gauges(db, &gauges, inv->err);
	household_close(db);
	int status = ok ? make_due(inv, &groups, &gauges, days) : command_failed(inv);
	jar_groups_release(&groups);
	return status;
}

/* clang-format off */
static const struct option_spec options[] = {
    {"days", "N", "look so many days ahead, 1 to 10000; without it, 30"},
    {"ical", "FILE|-", "as an iCalendar file for a calendar program; - for standard output"},
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright due", "what is overdue, and what is due in the next 30 days"},
    {"jarwright due --days 366 --ical jars.ics", "a calendar of the year ahead"},
    EXAMPLES_END,
};

const struct command command_due = {
    .name = "due",
    .synopsis = "[--days N] [--ical FILE|-]",
    .summary = "seal checks, time limits, gauge tests and best-before dates",
    .description =
	"Lists what is due: seals to test, unsealed or wrongly processed jars to chill in time, "
	"opened jars to eat, dial gauges to have tested, jars to use before their best-quality "
	"date. What is overdue is always listed.",
    .options = options,
    .examples = examples,
    .run = run_due,
};
