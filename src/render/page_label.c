/* Labels for jars on sheets, and strips for lids. */
#include <inttypes.h>
#include <string.h>

#include "jarwright/render_page.h"
#include "jarwright/render_paper.h"
#include "page_label_fit.h"

#define GRID_MAX     50
#define STRIP_WIDE   190000 /* what the margins of A4 and Letter leave, less a little */
#define STRIP_HIGH   120000
#define PAPER_LONG   2000000
#define SHEET_SPARED 300 /* of the paper's height, so that rounding makes no empty page */

static const char label_style[] =
    ":root{color-scheme:light}\n"
    "*{box-sizing:border-box;margin:0;padding:0}\n"
    "html{background:#fff;color:#000;"
    "font-family:Arial,\"Liberation Sans\",Helvetica,\"DejaVu Sans\",sans-serif}\n"
    ".unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}\n"
    "ul{list-style:none}\n"
    ".label{display:flex;overflow:hidden}\n"
    ".label .qr{flex:none;display:block;align-self:center}\n"
    ".text{flex:1;min-width:0;display:flex;flex-direction:column;"
    "overflow-wrap:anywhere}\n"
    ".food,.keep,.code{font-weight:700}\n"
    ".code{white-space:nowrap;margin-top:auto}\n"
    ".small span{display:inline-block}\n"
    ".small b{font-weight:400;white-space:nowrap}\n";

/* "63.5mm" */
static void length(FILE *out, const char *before, int32_t um)
{
	fprintf(out, "%s%" PRId32 ".%03" PRId32 "mm", before, um / 1000, um % 1000);
}

static void layout_style(FILE *out, const struct label_layout *layout)
{
	fputs(label_style, out);
	length(out, ".label{width:", layout->width);
	length(out, ";height:", layout->height);
	length(out, ";padding:", layout->pad);
	length(out, ";gap:", layout->pad);
	length(out, "}\n.label .qr{width:", layout->qr);
	length(out, ";height:", layout->qr);
	length(out, "}\n.text{font-size:", layout->size);
	fprintf(out,
		";line-height:%d.%02d}\n.code{font-size:%d%%}\n"
		".small span{margin-right:%d.%02dem}\n",
		LABEL_LINE / 100, LABEL_LINE % 100, LABEL_CODE, LABEL_GAP / 100, LABEL_GAP % 100);
	/* One class a size, since the page has no styles in its elements. */
	for (int32_t size = LABEL_TEXT_LEAST; size <= layout->size * 2; size += LABEL_TEXT_STEP) {
		fprintf(out, ".f%" PRId32, size / LABEL_TEXT_STEP);
		length(out, "{font-size:", size);
		fputs("}\n", out);
	}
}

static void small_texts(FILE *out, const struct paper_label *label)
{
	struct label_small texts[LABEL_SMALL_TEXTS];
	label_small_texts(label, texts);
	fputs("<p class=\"small\">", out);
	for (size_t i = 0; i < LABEL_SMALL_TEXTS; i++)
		if (*texts[i].words)
			html_print(out, "<span>%s <b>%s</b></span> ", texts[i].lead,
				   texts[i].words);
	fputs("</p>\n", out);
}

static bool one_label(FILE *out, const struct label_layout *layout, const struct paper_label *label,
		      struct error *err)
{
	struct label_food food;
	label_food_fit(layout, label, &food);
	fputs("<li class=\"label\">", out);
	if (!qr_svg(out, label->code, err))
		return false;
	html_print(out, "\n<div class=\"text\">\n<p class=\"food f%d\">%s</p>\n",
		   (int)(food.size / LABEL_TEXT_STEP), food.words);
	if (*label->keep)
		html_print(out, "<p class=\"keep\">%s</p>\n", label->keep);
	html_print(out, "<p class=\"code\">%s</p>\n", label->code);
	small_texts(out, label);
	fputs("</div></li>\n", out);
	return true;
}

static bool bad_size(struct error *err, const char *what, int32_t um)
{
	return error_usage(err,
			   "labels: %s of %" PRId32 ".%03" PRId32
			   " mm is out of range; measure the "
			   "sheet again, in mm",
			   what, um / 1000, um % 1000);
}

/* Is the length from least to most, both inside? */
static bool within(int32_t um, int32_t least, int32_t most)
{
	return um >= least && um <= most;
}

static bool lengths_check(const struct label_sheet *s, struct error *err)
{
	if (!within(s->paper_width, PAPER_LABEL_LEAST_WIDTH, PAPER_LONG))
		return bad_size(err, "a width of the paper", s->paper_width);
	if (!within(s->paper_height, PAPER_LABEL_LEAST_HEIGHT, PAPER_LONG))
		return bad_size(err, "a height of the paper", s->paper_height);
	if (!within(s->label_width, PAPER_LABEL_LEAST_WIDTH, s->paper_width))
		return bad_size(err, "a width of the label", s->label_width);
	if (!within(s->label_height, PAPER_LABEL_LEAST_HEIGHT, s->paper_height))
		return bad_size(err, "a height of the label", s->label_height);
	if (!within(s->margin_left, 0, s->paper_width))
		return bad_size(err, "a left margin", s->margin_left);
	if (!within(s->margin_top, 0, s->paper_height))
		return bad_size(err, "a top margin", s->margin_top);
	if (!within(s->gap_across, 0, s->paper_width))
		return bad_size(err, "a gap across", s->gap_across);
	if (!within(s->gap_down, 0, s->paper_height))
		return bad_size(err, "a gap down", s->gap_down);
	return true;
}

static bool sheet_check(const struct label_sheet *s, struct error *err)
{
	if (!lengths_check(s, err))
		return false;
	if (s->columns < 1 || s->columns > GRID_MAX || s->rows < 1 || s->rows > GRID_MAX)
		return error_usage(err,
				   "labels: %d columns and %d rows are out of range; a sheet has 1 "
				   "to %d of each",
				   s->columns, s->rows, GRID_MAX);
	int64_t wide = s->margin_left + (int64_t)s->columns * s->label_width +
		       (int64_t)(s->columns - 1) * s->gap_across;
	int64_t high = s->margin_top + (int64_t)s->rows * s->label_height +
		       (int64_t)(s->rows - 1) * s->gap_down;
	if (wide > s->paper_width || high > s->paper_height)
		return error_usage(err,
				   "labels: they take %" PRId64 ".%03" PRId64 " by %" PRId64
				   ".%03" PRId64 " mm with the margins, more than the paper has; "
				   "measure the sheet again, in mm",
				   wide / 1000, wide % 1000, high / 1000, high % 1000);
	if (s->used < 0 || s->used >= s->columns * s->rows)
		return error_usage(err, "labels: %d used ones are out of range; the sheet has %d",
				   s->used, s->columns * s->rows);
	return true;
}

static bool count_check(size_t n, struct error *err)
{
	return (n >= 1 && n <= PAPER_LABELS_MAX) ||
	       error_usage(err, "labels: %zu are asked for; one file has 1 to %d", n,
			   PAPER_LABELS_MAX);
}

static void sheet_style(FILE *out, const struct label_sheet *s)
{
	length(out, "@page{size:", s->paper_width);
	length(out, " ", s->paper_height);
	length(out, ";margin:0}\n.sheet{display:grid;align-content:start;overflow:hidden;width:",
	       s->paper_width);
	length(out, ";height:", s->paper_height - SHEET_SPARED);
	length(out, ";padding:", s->margin_top);
	length(out, " 0 0 ", s->margin_left);
	length(out, ";column-gap:", s->gap_across);
	length(out, ";row-gap:", s->gap_down);
	fprintf(out, ";grid-template-columns:repeat(%d,", s->columns);
	length(out, "", s->label_width);
	fputs(")}\n.sheet+.unseen+.sheet{break-before:page}\n", out);
	fputs("@media screen{.label{outline:.2mm dotted #777}}\n", out);
}

bool labels_html(FILE *out, const struct label_sheet *sheet, const struct paper_label *labels,
		 size_t n, struct error *err)
{
	struct label_layout layout;
	if (!sheet_check(sheet, err) || !count_check(n, err) ||
	    !label_layout_make(sheet->label_width, sheet->label_height, labels, n, &layout, err))
		return false;
	html_begin_bare(out, "Labels for jars");
	layout_style(out, &layout);
	sheet_style(out, sheet);
	html_heading_bare(out, "Labels for jars");
	size_t place = (size_t)sheet->used,
	       per_sheet = (size_t)sheet->columns * (size_t)sheet->rows;
	for (size_t i = 0; i < n; i++, place++) {
		if (i == 0 || place % per_sheet == 0)
			html_print(out,
				   "<h2 class=\"unseen\">Sheet %d</h2>\n<ul class=\"sheet\">\n",
				   (int)(place / per_sheet) + 1);
		for (size_t gone = 0; i == 0 && gone < place; gone++)
			fputs("<li aria-hidden=\"true\"></li>\n", out);
		if (!one_label(out, &layout, &labels[i], err))
			return false;
		if (i + 1 == n || (place + 1) % per_sheet == 0)
			fputs("</ul>\n", out);
	}
	html_end_bare(out);
	return true;
}

bool label_strips_html(FILE *out, int32_t width, int32_t height, const struct paper_label *labels,
		       size_t n, struct error *err)
{
	struct label_layout layout;
	if (!within(width, PAPER_LABEL_LEAST_WIDTH, STRIP_WIDE))
		return bad_size(err, "a width of the strip", width);
	if (!within(height, PAPER_LABEL_LEAST_HEIGHT, STRIP_HIGH))
		return bad_size(err, "a height of the strip", height);
	if (!count_check(n, err) || !label_layout_make(width, height, labels, n, &layout, err))
		return false;
	html_begin_bare(out, "Strips for lids");
	layout_style(out, &layout);
	fputs("@page{margin:12mm}\n@media screen{body{padding:12mm}}\n"
	      ".label{break-inside:avoid;outline:.2mm dashed #777}\n",
	      out);
	html_heading_bare(out, "Strips for lids");
	fputs("<ul>\n", out);
	for (size_t i = 0; i < n; i++)
		if (!one_label(out, &layout, &labels[i], err))
			return false;
	fputs("</ul>\n", out);
	html_end_bare(out);
	return true;
}
