/* Plots as inline SVG: ink on paper, no colour needed. */
#include <math.h>

#include "jarwright/render_page.h"

/* The drawing's own units, about a CSS pixel each on paper. */
#define HIGH         230.0
#define LEFT         52.0
#define RIGHT        26.0
#define TOP          14.0
#define BOTTOM       44.0
#define COLUMNS_WIDE 680.0

static double across(const struct line_plot *plot, double value)
{
	const struct plot_axis *x = &plot->x;
	return LEFT + (value - x->least) / (x->most - x->least) * (plot->wide - LEFT - RIGHT);
}

static double down(const struct plot_axis *y, double value)
{
	return HIGH - BOTTOM - (value - y->least) / (y->most - y->least) * (HIGH - TOP - BOTTOM);
}

static void begin(FILE *out, const char *says, double wide)
{
	html_print(out, "<svg role=\"img\" aria-label=\"%s\" ", says);
	fprintf(out, "viewBox=\"0 0 %.0f %.0f\">\n", wide, HIGH);
}

/* Text at a place; anchor: "start", "middle" or "end". */
static void label(FILE *out, double x, double y, const char *anchor, const char *words)
{
	fprintf(out, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">", x, y, anchor);
	html_text(out, words);
	fputs("</text>\n", out);
}

static void rule(FILE *out, double x1, double y1, double x2, double y2, const char *stroke)
{
	fprintf(out, "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" %s/>\n", x1, y1, x2, y2,
		stroke);
}

static int ticks(const struct plot_axis *axis)
{
	return (int)floor((axis->most - axis->least) / axis->step + 1e-9) + 1;
}

/* "12,000", or one decimal where the step is not whole. */
static void tick_words(const struct plot_axis *axis, int tick, char *buffer, size_t size)
{
	double value = axis->least + tick * axis->step;
	if (axis->step < 1)
		snprintf(buffer, size, "%.1f", value);
	else
		feet_words(buffer, size, (int32_t)lround(value));
}

#define GRID "stroke=\"#b9b2a6\" stroke-width=\"0.7\""
#define AXIS "stroke=\"#1d1b18\" stroke-width=\"1.4\""

static void axes(FILE *out, const struct line_plot *plot)
{
	const struct plot_axis *x = &plot->x, *y = &plot->y;
	double right = plot->wide - RIGHT;
	char words[32];
	for (int i = 0; i < ticks(y); i++) {
		double at = down(y, y->least + i * y->step);
		tick_words(y, i, words, sizeof words);
		rule(out, LEFT, at, right, at, GRID);
		label(out, LEFT - 6, at + 4, "end", words);
	}
	for (int i = 0; i < ticks(x); i++) {
		double at = across(plot, x->least + i * x->step);
		tick_words(x, i, words, sizeof words);
		rule(out, at, HIGH - BOTTOM, at, HIGH - BOTTOM + 5, AXIS);
		label(out, at, HIGH - BOTTOM + 18, "middle", words);
	}
	rule(out, LEFT, HIGH - BOTTOM, right, HIGH - BOTTOM, AXIS);
	label(out, (LEFT + right) / 2, HIGH - 6, "middle", x->title);
	label(out, 4, TOP - 4, "start", y->title);
}

static void mark(FILE *out, const struct line_plot *plot)
{
	double x = across(plot, plot->mark_x), y = down(&plot->y, plot->mark_y);
	bool late = x > plot->wide / 2, rising = plot->ys[plot->n - 1] > plot->ys[0];
	/* On the side of the curve that is empty to the right of the mark, or to its left. */
	bool above = rising == late;
	rule(out, x, TOP, x, HIGH - BOTTOM,
	     "stroke=\"#1d1b18\" stroke-width=\"1\" stroke-dasharray=\"5 4\"");
	fprintf(out, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"5\" fill=\"#1d1b18\"/>\n", x, y);
	label(out, late ? x - 8 : x + 8, above ? y - 10 : y + 18, late ? "end" : "start",
	      plot->mark_says);
}

void plot_line(FILE *out, const struct line_plot *plot)
{
	begin(out, plot->says, plot->wide);
	axes(out, plot);
	fputs("<polyline fill=\"none\" stroke=\"#1d1b18\" stroke-width=\"2.4\" points=\"", out);
	for (size_t i = 0; i < plot->n; i++)
		fprintf(out, "%s%.1f,%.1f", i ? " " : "", across(plot, plot->xs[i]),
			down(&plot->y, plot->ys[i]));
	fputs("\"/>\n", out);
	if (plot->marked)
		mark(out, plot);
	fputs("</svg>\n", out);
}

void plot_columns(FILE *out, const struct column_plot *plot)
{
	double most = 0;
	for (size_t i = 0; i < plot->n; i++)
		most = fmax(most, plot->values[i]);
	double step = (COLUMNS_WIDE - 2 * RIGHT) / (double)plot->n, floor_y = HIGH - 24;
	begin(out, plot->says, COLUMNS_WIDE);
	for (size_t i = 0; i < plot->n; i++) {
		double value = plot->values[i], left = RIGHT + step * (double)i;
		double high = most > 0 ? value / most * (floor_y - 30) : 0;
		char words[32];
		snprintf(words, sizeof words, value == floor(value) ? "%.0f" : "%.1f", value);
		fprintf(out,
			"<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" "
			"fill=\"#55504a\"/>\n",
			left + step * 0.14, floor_y - high, step * 0.72, high);
		if (value > 0)
			label(out, left + step / 2, floor_y - high - 6, "middle", words);
		label(out, left + step / 2, HIGH - 8, "middle", plot->names[i]);
	}
	rule(out, RIGHT, floor_y, COLUMNS_WIDE - RIGHT, floor_y, AXIS);
	fputs("</svg>\n", out);
}

void plot_cell_bar(FILE *out, double value, double most)
{
	double wide = most > 0 ? value / most * 100 : 0;
	fprintf(out,
		"<svg class=\"bar\" aria-hidden=\"true\" viewBox=\"0 0 100 10\" "
		"preserveAspectRatio=\"none\"><path d=\"M0 0h%.2fv10h-%.2fz\" fill=\"#55504a\"/>"
		"<path d=\"M0 10h100\" stroke=\"#b9b2a6\"/></svg>",
		wide, wide);
}
