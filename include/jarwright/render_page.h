/*
 * Pages for the wall and the printer: each one self-contained HTML file, without script, picture
 * or anything from the net, for A4 and Letter, legible in black and white.
 *
 * As in render.h: decides nothing, knows no SQL; a failing stream is the caller's to notice.
 * Text from outside becomes markup in one place only, html_text().
 */
#ifndef JARWRIGHT_RENDER_PAGE_H
#define JARWRIGHT_RENDER_PAGE_H

#include "jarwright/error.h"
#include "jarwright/render.h"

/*
 * Text as HTML, in an element or an attribute: what is markup is escaped; a line break or a tab
 * becomes a blank; '?' stands for what text_is_obeyed(), for a byte that is not UTF-8, and for
 * a code point that is no character.
 */
void html_text(FILE *out, const char *text);

/*
 * Markup with values in it. Takes %s (through html_text()), %d and %%; anything else is a bug
 * and aborts. The format is ours and never from outside.
 */
void html_print(FILE *out, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* The page up to its open <main>. kicker: a line over the heading, or "". style: more CSS, or "".
 */
void html_begin(FILE *out, const char *title, const char *kicker, const char *style);
/* Closes <main>; a footer with the edition and the caution that belongs on every sheet. */
void html_end(FILE *out, const char *edition);
/*
 * A page without our frame, for labels, whose every millimetre counts: what is written between the
 * first two is all its style, which has a class "unseen" for the heading.
 */
void html_begin_bare(FILE *out, const char *title);
void html_heading_bare(FILE *out, const char *title);
void html_end_bare(FILE *out);

/* "lead" in bold, then the citation's words, as a small paragraph. */
void html_source(FILE *out, const char *lead, const struct citation *citation);

/* --- Plots, as inline SVG; a text alternative stands in each, the figures in a table beside it */

struct plot_axis {
	double least, most, step; /* least < most; a tick at each step from least, step > 0 */
	const char *title;
};
struct line_plot {
	const char *says; /* the text alternative */
	double wide;      /* in CSS pixels: 340 for half a page's width, 680 for all of it */
	struct plot_axis x, y;
	const double *xs, *ys; /* n of each, inside the axes; x ascending */
	size_t n;
	bool marked; /* mark_x, mark_y is shown, with mark_says beside it */
	double mark_x, mark_y;
	const char *mark_says; /* short */
};
void plot_line(FILE *out, const struct line_plot *plot);

struct column_plot {
	const char *says;
	const char *const *names; /* short: "Jan" */
	const double *values;     /* n, each >= 0 */
	size_t n;                 /* 1 to 24 */
};
/* Upright columns, each with its figure above it: whole numbers, or one decimal. */
void plot_columns(FILE *out, const struct column_plot *plot);

/* A bar for a cell of a table, beside its figure: value of most, 0 <= value <= most. */
void plot_cell_bar(FILE *out, double value, double most);

/* --- Charts -------------------------------------------------------------------------- */

struct table_chart {
	const struct food *food;
	const struct process_table *tables[64]; /* those to show */
	size_t tables_n;
	struct elevation_mark here;
};
void table_chart_html(FILE *out, const struct reference *ref, const struct table_chart *chart);

struct boil_chart {
	struct elevation_mark here;
	const char *edition;
};
/* False: the elevation lies outside the standard atmosphere's range; err is filled. */
bool boil_chart_html(FILE *out, const struct boil_chart *chart, struct error *err);

#endif
