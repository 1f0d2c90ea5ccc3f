/*
 * Pages of an invented kitchen, for the page tests: samples FOLDER writes them there.
 *
 * Beside a page of labels stands a list of the codes that its QR codes must give back, a line
 * each. The pages called hostile have in every text what a page must not obey.
 */
#include <stdlib.h>
#include <string.h>

#include "jarwright/reference.h"
#include "jarwright/render_paper.h"

#define LABELS_MAX 64

/* All texts here are invented. */
static const char hostile[] =
    // NOLINTNEXTLINE(misc-misleading-bidirectional): it must not turn the page
    "</title></style><script>document.body.innerHTML='run'</script>\" onload='x' &amp; <b>&#60; "
    "\x1b[2J\a\r\n\t\xE2\x80\xAE" /* a right-to-left override */
    "txet\xE2\x81\xA6\xFF\xC0\x80 \xEF\xBF\xBE =HYPERLINK(1) ']]><!-- "
    "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xF0\x9F\xAB\x99 "
    "Donaudampfschifffahrtsgesellschaftskapitaenspflaumenmarmelade";

static void fail(const char *what)
{
	fprintf(stderr, "samples: %s\n", what);
	exit(EXIT_FAILURE);
}

static FILE *open_in(const char *folder, const char *name)
{
	char path[1024];
	int n = snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *file = n > 0 && (size_t)n < sizeof path ? fopen(path, "we") : NULL;
	if (!file)
		fail("a file in the folder cannot be opened");
	return file;
}

static void close_whole(FILE *file)
{
	if (ferror(file) != 0 || fclose(file) != 0)
		fail("a page cannot be written");
}

/* --- Labels --------------------------------------------------------------------------- */

static char codes[LABELS_MAX][16];

static void fill_labels(struct paper_label *labels, size_t n, const char *text)
{
	static const char *const foods[] = {
	    "Pickled beets", "Plums, halved or whole, in light syrup",
	    "Tomatoes, whole or halved (packed in water)", "Carrots, sliced or diced", "Marmalade"};
	for (size_t i = 0; i < n; i++) {
		snprintf(codes[i], sizeof codes[i], "26-%03zu-%02zu", 41 + i / 20, i % 20 + 1);
		labels[i] = (struct paper_label){
		    .food = text ? text : foods[i % 5],
		    .code = codes[i],
		    .batch = i < 20   ? "26-041"
			     : i < 40 ? "26-042"
				      : "26-043",
		    .put_up = "2026-08-14",
		    .best_before = i % 7 == 6 ? "" : "2027-08",
		    .keep = i % 6 == 5 ? "keep in the refrigerator" : "",
		};
	}
}

static void write_codes(const char *folder, const char *name, size_t n)
{
	FILE *file = open_in(folder, name);
	for (size_t i = 0; i < n; i++)
		fprintf(file, "%s\n", codes[i]);
	close_whole(file);
}

static void sheet_of_labels(const char *folder, const char *name, const struct label_sheet *sheet,
			    size_t n, const char *text)
{
	struct paper_label labels[LABELS_MAX];
	struct error err = {0};
	char file_name[64];
	fill_labels(labels, n, text);
	snprintf(file_name, sizeof file_name, "%s.html", name);
	FILE *file = open_in(folder, file_name);
	bool made = sheet ? labels_html(file, sheet, labels, n, &err)
			  : label_strips_html(file, 78000, 15000, labels, n, &err);
	if (!made)
		fail(err.text);
	close_whole(file);
	snprintf(file_name, sizeof file_name, "%s.codes", name);
	write_codes(folder, file_name, n);
}

static void all_labels(const char *folder)
{
	static const struct label_sheet a4 = {.paper_width = 210000,
					      .paper_height = 297000,
					      .label_width = 63500,
					      .label_height = 38100,
					      .columns = 3,
					      .rows = 7,
					      .margin_left = 7200,
					      .margin_top = 15100,
					      .gap_across = 2500,
					      .used = 4};
	static const struct label_sheet letter = {.paper_width = 215900,
						  .paper_height = 279400,
						  .label_width = 66700,
						  .label_height = 25400,
						  .columns = 3,
						  .rows = 10,
						  .margin_left = 4800,
						  .margin_top = 12700,
						  .gap_across = 3100};
	static const struct label_sheet small = {.paper_width = 210000,
						 .paper_height = 297000,
						 .label_width = 38100,
						 .label_height = 21200,
						 .columns = 5,
						 .rows = 13,
						 .margin_left = 4700,
						 .margin_top = 10700,
						 .gap_across = 2500};
	sheet_of_labels(folder, "labels-a4", &a4, 24, NULL);
	sheet_of_labels(folder, "labels-letter", &letter, 30, NULL);
	sheet_of_labels(folder, "labels-small", &small, 12, NULL);
	sheet_of_labels(folder, "labels-hostile", &a4, 6, hostile);
	sheet_of_labels(folder, "strips", NULL, 14, NULL);
	sheet_of_labels(folder, "strips-hostile", NULL, 3, hostile);
}

/* --- The sheet for the wall ---------------------------------------------------------------- */

/* The amounts are invented and no formula. */
static const struct sheet_ingredient beets[] = {
    {"3.2 kg (7 lb)", "beets of 2 to 2 1/2 inches"},
    {"950 mL (4 cups)", "vinegar, 5 %"},
    {"7 mL (1 1/2 tsp)", "canning or pickling salt"},
    {"400 g (2 cups)", "sugar"},
    {"475 mL (2 cups)", "water"},
    {"2", "cinnamon sticks"},
    {"12", "whole cloves"},
    {"4 to 6", "onions of 2 to 2 1/2 inches, sliced"},
};
static const struct sheet_ingredient carrots[] = {{"20 kg (44 lb)", "carrots without tops"},
						  {"1 tsp a quart, if you like", "salt"}};
static const struct sheet_process steam = {
    .minutes = 35,
    .canner = "steam canner",
    .pack = "hot pack",
    .jar = "half-pint jars",
    .elevation = "2,900 ft (1,001 to 3,000 ft)",
    .headspace = "1/2 inch",
    .source = "Complete Guide to Home Canning, 2015, guide 6, p. 6-16",
};
static const struct sheet_step steps[] = {
    {"heat the loaded canner until steam comes", "write the time"},
    {"wait for an unbroken column of pure steam", ""},
    {"process; the time starts now", "35 minutes"},
    {"heat off; open the lid away from you, let it rest", "2 to 3 minutes"},
    {"jars onto a towel, upright, apart, untouched", "12 to 24 hours"},
};
static const struct sheet_load loads[] = {
    {1, 7, "09:00", "10:05", ""}, {8, 14, "10:10", "11:15", ""}, {15, 18, "11:20", "12:25", ""}};
static const struct sheet_fixed fixed[] = {
    {"Never less vinegar, and never weaker than 5 %.", "guide 1, p. 1-28"},
    {"No other vegetables, and not more onions.", "guide 6, p. 6-16"},
    {"Not a larger jar than the table has.", "guide 6, p. 6-16"},
};

static void wall_sheet(const char *folder, const char *name, const struct paper_sheet *sheet)
{
	FILE *file = open_in(folder, name);
	sheet_html(file, sheet);
	close_whole(file);
}

static void hostile_sheet(const char *folder)
{
	const struct sheet_ingredient line = {hostile, hostile};
	const struct sheet_process process = {.minutes = 20,
					      .psi = 11,
					      .vent = 10,
					      .canner = hostile,
					      .pack = hostile,
					      .jar = hostile,
					      .elevation = hostile,
					      .headspace = hostile,
					      .source = hostile};
	const struct sheet_step step = {hostile, hostile};
	const struct sheet_load load = {1, 7, hostile, hostile, hostile};
	const struct sheet_fixed stays = {hostile, hostile};
	wall_sheet(folder, "sheet-hostile.html",
		   &(struct paper_sheet){.title = hostile,
					 .batch = hostile,
					 .day = hostile,
					 .makes = hostile,
					 .note = "",
					 .ingredients = &line,
					 .ingredients_n = 1,
					 .process = &process,
					 .steps = &step,
					 .steps_n = 1,
					 .loads = &load,
					 .loads_n = 1,
					 .fixed = &stays,
					 .fixed_n = 1,
					 .jars = 7,
					 .edition = hostile});
}

static void all_sheets(const char *folder)
{
	struct paper_sheet sheet = {
	    .title = "Pickled beets",
	    .batch = "26-041",
	    .day = "2026-08-14",
	    .makes = "about 18 half-pints",
	    .note = "",
	    .ingredients = beets,
	    .ingredients_n = sizeof beets / sizeof *beets,
	    .process = &steam,
	    .steps = steps,
	    .steps_n = sizeof steps / sizeof *steps,
	    .loads = loads,
	    .loads_n = sizeof loads / sizeof *loads,
	    .fixed = fixed,
	    .fixed_n = sizeof fixed / sizeof *fixed,
	    .jars = 18,
	    .edition = reference_edition()->edition,
	};
	wall_sheet(folder, "sheet.html", &sheet);
	struct sheet_process pressure = steam;
	pressure.minutes = 30;
	pressure.psi = 12;
	pressure.vent = 10;
	pressure.canner = "dial-gauge pressure canner";
	pressure.jar = "quart jars";
	pressure.elevation = "2,900 ft (2,001 to 4,000 ft)";
	pressure.headspace = "1 inch";
	pressure.source = "Complete Guide to Home Canning, 2015, guide 4, p. 4-10";
	sheet.title = "Carrots, sliced or diced";
	sheet.makes = "18 quarts";
	sheet.ingredients = carrots;
	sheet.ingredients_n = sizeof carrots / sizeof *carrots;
	sheet.process = &pressure;
	wall_sheet(folder, "sheet-pressure.html", &sheet);
	sheet.process = NULL;
	wall_sheet(folder, "sheet-untested.html", &sheet);
	hostile_sheet(folder);
}

/* --- The year -------------------------------------------------------------------------------- */

static void write_report(const char *folder, const char *name, const struct report_year *report)
{
	FILE *file = open_in(folder, name);
	report_html(file, report);
	close_whole(file);
}

static void all_reports(const char *folder)
{
	static struct report_food foods[] = {
	    {"Pickled beets", {0, 0, 0, 0, 0, 0, 0, 18, 24, 9, 0, 0}, 21, 4, 1, 25},
	    {"Plums, halved or whole", {0, 0, 0, 0, 0, 0, 0, 31, 42, 0, 0, 0}, 30, 6, 0, 37},
	    {"Tomatoes, whole or halved (packed in water)",
	     {0, 0, 0, 0, 0, 0, 14, 63, 70, 0, 0, 0},
	     64,
	     2,
	     7,
	     74},
	    {"Carrots, sliced or diced", {0, 0, 0, 0, 0, 0, 0, 0, 16, 32, 8, 0}, 20, 0, 0, 36},
	    {"Marmalade", {22, 30, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}, 33, 9, 0, 10},
	    {"Rhubarb, stewed", {0, 0, 0, 12, 18, 6, 0, 0, 0, 0, 0, 0}, 19, 0, 2, 15},
	};
	static struct report_lot lots[] = {
	    {0, "wide lids, spring", "L-2207 B", "maker one", 212, 3, 1},
	    {0, "wide lids, autumn", "L-2209 A", "maker one", 118, 17, 2},
	    {0, "narrow lids", "00417", "maker two", 64, 1, 3},
	    {0, "gift", "", "", 11, 0, 4},
	    {0, "new carton", "L-2301 A", "maker one", 0, 0, 5},
	    {REPORT_SEVERAL_LOTS, "", "", "", 9, 1, 0},
	    {REPORT_NO_LOT, "", "", "", 45, 2, 0}};
	static struct report_size sizes[] = {{"pint", 301}, {"quart", 104}, {"half-pint", 32}};
	static struct report_recall recalls[] = {
	    {"lot wide lids, autumn", {INT64_C(1790000000000), 0}, false, 118, 4}};
	struct report_year report = {
	    .year = 2026,
	    .sizes = sizes,
	    .sizes_n = sizeof sizes / sizeof *sizes,
	    .recalls = recalls,
	    .recalls_n = sizeof recalls / sizeof *recalls,
	    .loads = 61,
	    .loads_untimed = 3,
	    .foods = foods,
	    .foods_n = sizeof foods / sizeof *foods,
	    .lots = lots,
	    .lots_n = sizeof lots / sizeof *lots,
	    .batches = {3, 4, 0, 1, 2, 1, 2, 12, 15, 5, 1, 0},
	    .minutes = {410, 560, 0, 130, 255, 120, 305, 2210, 2890, 940, 200, 0},
	    .edition = reference_edition()->edition,
	};
	write_report(folder, "report.html", &report);
	report.foods_n = report.lots_n = report.sizes_n = report.recalls_n = 0;
	memset(report.batches, 0, sizeof report.batches);
	memset(report.minutes, 0, sizeof report.minutes);
	write_report(folder, "report-empty.html", &report);
	struct report_food food = {.put_up = {1}, .eaten = 1000000};
	struct report_lot lot = {.sealed = 1, .failed = 1000000};
	struct report_size size = {.jars = 1};
	struct report_recall recall = {.jars = 7, .open = 1000000};
	snprintf(food.food, sizeof food.food, "%s", hostile);
	snprintf(lot.lot, sizeof lot.lot, "%s", hostile);
	snprintf(lot.code, sizeof lot.code, "%s", hostile);
	snprintf(lot.maker, sizeof lot.maker, "%s", hostile);
	snprintf(size.size, sizeof size.size, "%.31s", hostile);
	snprintf(recall.what, sizeof recall.what, "%s", hostile);
	report.foods = &food;
	report.lots = &lot;
	report.sizes = &size;
	report.recalls = &recall;
	report.foods_n = report.lots_n = report.sizes_n = report.recalls_n = 1;
	write_report(folder, "report-hostile.html", &report);
}

int main(int argc, char **argv)
{
	if (argc != 2)
		fail("say the folder to write into");
	all_labels(argv[1]);
	all_sheets(argv[1]);
	all_reports(argv[1]);
	return EXIT_SUCCESS;
}
