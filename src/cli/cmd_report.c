/* report: a year of the kitchen in figures and plots. */
#include <string.h>

#include "jarwright/render_paper.h"
#include "jarwright/text.h"
#include "page_file.h"
#include "request.h"

#define YEAR_LEAST 1970
#define YEAR_MOST  9998

/* Midnight of New Year where she is. */
static bool new_year(struct invocation *inv, int year, int64_t *ms)
{
	char text[64];
	struct instant at;
	snprintf(text, sizeof text, "%04d-01-01 00:00", year);
	if (!instant_parse("year", text, instant_at(inv->now), &at, inv->err))
		return false;
	*ms = at.ms;
	return true;
}

static bool read_year(struct invocation *inv, int *year)
{
	const char *text = inv->operands[0];
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	*year = 0;
	if (strlen(text) == 4 && strspn(text, "0123456789") == 4)
		for (int i = 0; i < 4; i++)
			*year = *year * 10 + (text[i] - '0');
	if (*year < YEAR_LEAST || *year > YEAR_MOST)
		return error_usage(inv->err, "year: '%s' is no year; type it in full: 2026", shown);
	return !flag(inv, "json") || !option(inv, "out") ||
	       error_usage(inv->err, "report: --out is for the page and --json makes a line; say "
				     "one");
}

static int answer(struct invocation *inv, const struct report_year *report)
{
	struct page_file file;
	const struct page page = answer_page(inv);
	if (flag(inv, "json"))
		return answer_json(inv, report_json(report), STATUS_DONE);
	report_summary(&page, report);
	if (!option(inv, "out"))
		return STATUS_DONE;
	page_blank(&page);
	if (!page_open(inv, &file))
		return command_failed(inv);
	report_html(file.out, report);
	return page_close(inv, &file, true) ? STATUS_DONE : command_failed(inv);
}

static int run(struct invocation *inv)
{
	int year;
	int64_t from, to;
	struct report_year report;
	struct household *db;
	if (!operands_between(inv, 1, 1, "YEAR") || !read_year(inv, &year) ||
	    !new_year(inv, year, &from) || !new_year(inv, year + 1, &to) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_report(db, year, from, to, &report, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	report.edition = reference_edition()->edition;
	int status = answer(inv, &report);
	report_year_release(&report);
	return status;
}

static const struct option_spec options[] = {
    {"out", "FILE", "also make a page of it, with plots and months, in this file"},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright report 2026", "the year in a few lines"},
    {"jarwright report 2026 --out year.html", "and as a page with plots, by month"},
    EXAMPLES_END,
};

const struct command command_report = {
    .name = "report",
    .synopsis = "YEAR [--out FILE]",
    .summary = "a year in figures: jars, seals by lid lot, hours, what was eaten",
    .description =
	"Says what was put up in a year by food and size, which seals failed by the lot of their "
	"lids, the hours at the canner, what was eaten, given and discarded, and which recalls "
	"were open. A rate of few jars is not given. What the log does not know is said. --out "
	"makes a page with plots and months.",
    .options = options,
    .examples = examples,
    .run = run,
};
