/* table: what a publication prints for a food, the cook's own column marked. */
#include <string.h>

#include "cli.h"
#include "jarwright/render_page.h"
#include "jarwright/text.h"
#include "page_file.h"
#include "request.h"

static const struct option_spec options[] = {
    {"canner", "KIND", "only the tables of this kind of canner"},
    OPTION_ELEVATION,
    OPTION_CHART,
    OPTION_OUT,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright table pickled-beets --elevation 2900ft", "all tables of a food"},
    {"jarwright table carrots --canner dial-gauge", "one kind of canner"},
    {"jarwright table carrots --elevation 2900ft --chart --out carrots.html", "for the wall"},
    EXAMPLES_END,
};

/* Steam has no tables of its own: it goes by those for boiling water. */
static bool wanted(const struct asked *asked, const struct process_table *table)
{
	enum canner canner = asked->request.canner;
	switch (asked->request.canner_choice) {
	case CHOICE_CANNER:
		return table->canner == (canner == CANNER_STEAM ? CANNER_BOILING_WATER : canner);
	case CHOICE_PRESSURE_UNSTATED:
		return table->canner != CANNER_BOILING_WATER;
	default:
		return true;
	}
}

static void steam_line(const struct page *page, const struct reference *ref)
{
	char limit[WORDS_BUFFER];
	page_format(
	    page, "",
	    "A steam canner takes the boiling-water times, for acid food and up to %s minutes "
	    "at your elevation; ask check.",
	    milli_words(limit, sizeof limit, ref->rules[RULE_STEAM_TIME_LIMIT].limit_milli));
}

static void print_tables(struct invocation *inv, const struct asked *asked, const struct food *food,
			 struct elevation_mark here)
{
	const struct reference *ref = reference_edition();
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	size_t shown = 0;
	page_format(&page, "", "%s: %s", food->slug, food->title);
	for (size_t i = 0; i < food->tables_n; i++) {
		if (!wanted(asked, &food->tables[i]))
			continue;
		page_blank(&page);
		table_text(&page, ref, &food->tables[i], here, &sources);
		shown++;
	}
	page_blank(&page);
	if (shown == 0)
		page_text(&page, "",
			  food->tables_n
			      ? "No table is published for this canner."
			      : "No process is published: refrigerate it, or freeze it.");
	else
		steam_line(&page, ref);
	if (!here.stated)
		page_text(&page, "", "Say --elevation to have your own column marked.");
	sources_text(&page, &sources);
}

static int tables_json(struct invocation *inv, const struct asked *asked, const struct food *food,
		       struct elevation_mark here)
{
	const struct reference *ref = reference_edition();
	json_t *list = json_array();
	for (size_t i = 0; list && i < food->tables_n; i++)
		if (wanted(asked, &food->tables[i]))
			list = json_append(list, table_json(ref, &food->tables[i], here));
	return answer_json(inv,
			   json_pack("{s:s, s:s, s:s, s:o, s:o}", "food", food->slug, "title",
				     food->title, "edition", ref->edition, "elevation_ft",
				     json_milli(here.stated ? here.mft : NONE), "tables", list),
			   STATUS_DONE);
}

static int tables_chart(struct invocation *inv, const struct asked *asked, const struct food *food,
			struct elevation_mark here)
{
	struct table_chart chart = {.food = food, .here = here};
	for (size_t i = 0; i < food->tables_n; i++)
		if (wanted(asked, &food->tables[i]))
			chart.tables[chart.tables_n++] = &food->tables[i];
	struct page_file file;
	if (!page_open(inv, &file))
		return command_failed(inv);
	table_chart_html(file.out, reference_edition(), &chart);
	return page_close(inv, &file, true) ? STATUS_DONE : command_failed(inv);
}

static int several(struct invocation *inv, const struct food_match *match)
{
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:n, s:o}", "food", "candidates", json_foods(match)),
				   STATUS_UNCLEAR);
	struct page page = answer_page(inv);
	page_headline(&page, "UNCLEAR", "Which of these is it?");
	for (size_t i = 0; i < match->foods_n; i++)
		page_format(&page, "  ", "%s: %s", match->foods[i]->slug, match->foods[i]->title);
	return STATUS_UNCLEAR;
}

static int unknown(struct invocation *inv, const struct food_match *match, const char *words)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(words, SIZE_MAX, shown);
	if (match->foods_n > 0)
		error_usage(inv->err, "table: no food goes by '%s'; did you mean %s?", shown,
			    match->foods[0]->slug);
	else
		error_usage(inv->err, "table: no food goes by '%s'; 'jarwright foods' lists all",
			    shown);
	return command_failed(inv);
}

static int run(struct invocation *inv)
{
	char words[ARGUMENT_MAX];
	struct food_match match;
	struct asked asked = {.own_canner = false};
	struct elevation elevation;
	if (!operands_between(inv, 1, 32, "FOOD") || !chart_options(inv) ||
	    !operand_words(inv, words, sizeof words) || !asked_canner(inv, &asked) ||
	    !invocation_elevation(inv, &elevation))
		return command_failed(inv);
	if (asked.request.canner_choice == CHOICE_BARRED)
		return answer_barred(inv, asked.request.method);
	struct elevation_mark here = {.stated = elevation.stated, .mft = elevation.mft};
	reference_find_food(reference_edition(), words, &match);
	switch (match.kind) {
	case MATCH_SEVERAL:
		return several(inv, &match);
	case MATCH_BARRED:
		return answer_barred(inv, match.barred);
	case MATCH_NONE:
		return unknown(inv, &match, words);
	case MATCH_ONE:
		break;
	}
	if (flag(inv, "json"))
		return tables_json(inv, &asked, match.foods[0], here);
	if (flag(inv, "chart"))
		return tables_chart(inv, &asked, match.foods[0], here);
	print_tables(inv, &asked, match.foods[0], here);
	return STATUS_DONE;
}

const struct command command_table = {
    .name = "table",
    .synopsis = "FOOD [--canner KIND] [--elevation E] [--chart [--out FILE]]",
    .summary = "the published process table of a food",
    .description = "Prints the table as published, jars down and elevations across. The column "
		   "for your elevation is marked with a star and named below it. --chart makes a "
		   "page of it for the kitchen wall.",
    .options = options,
    .examples = examples,
    .run = run,
};
