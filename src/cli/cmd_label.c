/* label: one for each jar, on sheets or as strips, with the jar's code to be read by a camera. */
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_paper.h"
#include "label_sheet.h"
#include "label_words.h"
#include "page_file.h"
#include "request.h"

/* A strip goes round a lid or across it. In um. */
#define STRIP_WIDTH  78000
#define STRIP_HEIGHT 15000
#define USED_MAX     2500

/* What the labels are printed on. */
struct printed_on {
	bool strip;
	struct label_sheet sheet;
};

static bool read_paper(struct invocation *inv, struct printed_on *out)
{
	const char *sheet = option(inv, "sheet"), *skip = option(inv, "skip");
	out->strip = flag(inv, "strip");
	if (out->strip && (sheet || skip))
		return error_usage(inv->err,
				   "label: --strip is for plain paper, --%s for a sheet of labels; "
				   "leave one out",
				   sheet ? "sheet" : "skip");
	if (flag(inv, "json") && option(inv, "out"))
		return error_usage(inv->err, "label: --out is for the page and --json makes a "
					     "line; say one");
	return label_sheet_parse(sheet, &out->sheet, inv->err) &&
	       (!skip || count_parse("skip", skip, USED_MAX, &out->sheet.used, inv->err));
}

static int answer_list(struct invocation *inv, const struct label_words *words, size_t n)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < n; i++) {
		const struct paper_label *l = &words[i].label;
		list = json_append(list, json_pack("{s:s, s:s, s:s, s:s, s:s, s:s}", "jar", l->code,
						   "batch", l->batch, "food", l->food, "put_up",
						   l->put_up, "best_before", l->best_before, "keep",
						   l->keep));
	}
	return answer_json(inv, json_pack("{s:o}", "labels", list), STATUS_DONE);
}

static int answer_page_of(struct invocation *inv, const struct printed_on *on,
			  const struct label_words *words, size_t n)
{
	struct page_file file;
	struct paper_label *labels = calloc(n, sizeof *labels);
	if (!labels) {
		error_failed(inv->err, "label: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	for (size_t i = 0; i < n; i++)
		labels[i] = words[i].label;
	bool ok = page_open(inv, &file);
	if (ok) {
		ok = on->strip ? label_strips_html(file.out, STRIP_WIDTH, STRIP_HEIGHT, labels, n,
						   inv->err)
			       : labels_html(file.out, &on->sheet, labels, n, inv->err);
		ok = page_close(inv, &file, ok);
	}
	free(labels);
	return ok ? STATUS_DONE : command_failed(inv);
}

static int answer(struct invocation *inv, const struct printed_on *on,
		  const struct jar_groups *groups)
{
	struct shelf_list list = {0};
	struct label_words *words = NULL;
	size_t n = 0;
	int status;
	if (!shelf_list_make(groups, instant_at(inv->now), &list, inv->err))
		return command_failed(inv);
	if (!label_words_make(groups, &list, &words, &n, inv->err))
		status = command_failed(inv);
	else if (flag(inv, "json"))
		status = answer_list(inv, words, n);
	else
		status = answer_page_of(inv, on, words, n);
	free(words);
	shelf_list_release(&list);
	return status;
}

static int run(struct invocation *inv)
{
	struct printed_on on = {.strip = false};
	struct jar_picks picks;
	struct jar_groups groups;
	struct household *db;
	if (!operands_between(inv, 1, 64, "BATCH or JARS") || !read_paper(inv, &on) ||
	    !jar_picks_or_batch_read(inv->operands, inv->operands_n, &picks, inv->err) ||
	    !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_picked_jars(db, &picks, &groups, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	if (groups.groups_n == 0)
		error_usage(
		    inv->err,
		    "label: batch %s has no jars here; log them with 'jarwright batch load'",
		    inv->operands[0]);
	int status = groups.groups_n > 0 ? answer(inv, &on, &groups) : command_failed(inv);
	jar_groups_release(&groups);
	return status;
}

/* clang-format off */
static const struct option_spec options[] = {
    {"sheet", "SIZE", "the size of a label, in mm: 70x37mm, 63.5x38.1mm, 38.1x21.2mm (A4), "
		      "66.7x25.4mm (Letter); or any sheet as you measured it: "
		      "70x37mm,3x8,paper=a4,margin=0x0.5,gap=0x0"},
    {"skip", "N", "labels that are gone from the first sheet already"},
    {"strip", NULL, "plain strips for lids, 78 by 15 mm, on any paper, to be cut apart"},
    OPTION_OUT,
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright label 26-041 --out labels.html", "a label for every jar of a batch that is here"},
    {"jarwright label 26-041 1-6 --sheet 63.5x38.1mm --skip 4 --out labels.html",
     "six of them, on a sheet of which four are gone"},
    {"jarwright label 26-041-07 --strip --out strip.html", "one, to be cut out for its lid"},
    EXAMPLES_END,
};

const struct command command_label = {
    .name = "label",
    .synopsis = "BATCH|JARS [--sheet SIZE] [--skip N] [--strip] [--out FILE]",
    .summary = "labels for jars, with a QR code of each jar's code",
    .description =
	"Makes a page of labels, one a jar: what is in it, its code, when it was put up, best "
	"before. A jar that is not for the shelf says so: keep refrigerated and use by, or what "
	"it is kept apart for. There is no label before its seal is tested. Print the page at "
	"its full size, without margins of the printer's own.",
    .options = options,
    .examples = examples,
    .run = run,
};
