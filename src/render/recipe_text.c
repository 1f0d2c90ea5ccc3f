/* A recipe as one table: a line an ingredient, a column a country. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_recipe.h"
#include "jarwright/text.h"

#define MG_PER_G 1000.0
/* Rounding above this is worth a word: one part in a hundred. */
#define ROUNDING_SHOWN 0.01
#define COLUMN_GAP     2
#define FRACTION_MOST  16 /* finer factors are shown as decimals */

static int columns(const char *text)
{
	return text_columns(text, strlen(text));
}

static void put_padded(const struct page *page, const char *text, int width)
{
	fprintf(page->out, "%s%*s", text, width - columns(text), "");
}

/* Grams of a line: "118", "118 to 125", or "" where nothing published says. */
static void grams_words(const struct recipe_view *view, size_t line, char *buffer, size_t size)
{
	struct rational least, most;
	*buffer = '\0';
	if (!recipe_line_grams(view->tables, view->recipe, line, &least, &most))
		return;
	double low = rational_double(least), high = rational_double(most);
	int digits = high < 10 ? 1 : 0;
	if (rational_compare(least, most) == 0)
		snprintf(buffer, size, "%.*f g", digits, low);
	else
		snprintf(buffer, size, "%.*f to %.*f g", digits, low, digits, high);
}

/* The widths of the columns: the countries', then grams. */
struct widths {
	int system[SYSTEM_COUNT];
	int grams;
	double rounding;
};

static void wider(int *width, const char *text)
{
	int n = columns(text) + COLUMN_GAP;
	if (n > *width)
		*width = n;
}

static void measure_columns(const struct recipe_view *view, struct widths *out)
{
	struct recipe_cell cell;
	char grams[64];
	*out = (struct widths){0};
	wider(&out->grams, "grams");
	for (size_t s = 0; s < view->in_n; s++)
		wider(&out->system[s], measuring_system_title(view->in[s]));
	for (size_t i = 0; i < view->recipe->lines_n; i++) {
		for (size_t s = 0; s < view->in_n; s++) {
			recipe_cell_make(view, i, view->in[s], &cell);
			wider(&out->system[s], cell.words);
			out->rounding = fmax(out->rounding, cell.error);
		}
		grams_words(view, i, grams, sizeof grams);
		wider(&out->grams, grams);
	}
}

static void put_row(const struct page *page, const struct recipe_view *view,
		    const struct widths *widths, size_t line)
{
	const struct ingredient_line *read = &view->recipe->lines[line].read;
	struct recipe_cell cell;
	char grams[64];
	for (size_t s = 0; s < view->in_n; s++) {
		recipe_cell_make(view, line, view->in[s], &cell);
		put_padded(page, cell.words, widths->system[s]);
	}
	grams_words(view, line, grams, sizeof grams);
	put_padded(page, grams, widths->grams);
	fprintf(page->out, "%s%s%s%s%s%s\n", read->ingredient, *read->preparation ? ", " : "",
		read->preparation, *read->note ? " (" : "", read->note, *read->note ? ")" : "");
}

static void put_factor(const struct page *page, const struct recipe_view *view)
{
	static const struct rational as_written = {1, 1};
	char words[64];
	if (rational_compare(view->factor, as_written) == 0)
		page_text(page, "", view->recipe->name);
	else if (view->factor.den <= FRACTION_MOST)
		page_format(page, "", "%s, times %s", view->recipe->name,
			    rational_words(words, sizeof words, view->factor));
	else
		page_format(page, "", "%s, times about %.4g", view->recipe->name,
			    rational_double(view->factor));
}

void recipe_total_text(const struct page *page, const struct recipe *recipe,
		       const struct recipe_total *total)
{
	double least = (double)total->least_mg / MG_PER_G, most = (double)total->most_mg / MG_PER_G;
	if (total->weighed_n == 0)
		page_text(page, "", "Nothing published says what any of it weighs.");
	else if (most - least < 1)
		page_format(page, "", "In all %.0f g.", most);
	else
		page_format(page, "", "In all %.0f to %.0f g.", least, most);
	for (size_t i = 0; i < recipe->lines_n; i++)
		if (total->left_out[i])
			page_format(page, "  ", "not in it, no published weight: line %d, %s",
				    recipe->lines[i].number, recipe->lines[i].text);
}

/* Jam and jelly batches above one. */
static void put_batch_rule(const struct page *page, const struct recipe_view *view,
			   struct source_list *sources)
{
	static const struct rational as_written = {1, 1};
	char source[WORDS_BUFFER];
	const struct change_rule_row *rule = recipe_batch_rule(view->tables, view->recipe);
	if (!rule || rational_compare(view->factor, as_written) <= 0)
		return;
	page_blank(page);
	page_format(
	    page, "careful ",
	    "Do not make a jam or jelly in more than one batch's amount at once: it may stay "
	    "soft. Make one batch after the other. (published: %s) %s",
	    rule->condition, cite(sources, source, sizeof source, &rule->from));
}

static void put_method(const struct page *page, const struct recipe *recipe)
{
	if (!*recipe->method)
		return;
	page_blank(page);
	page_text(page, "", "Method, as written:");
	for (const char *at = recipe->method; *at;) {
		size_t n = strcspn(at, "\n");
		fprintf(page->out, "  %.*s\n", (int)n, at);
		at += n + (at[n] == '\n');
	}
}

void recipe_view_text(const struct page *page, const struct recipe_view *view)
{
	struct widths widths;
	struct source_list sources = {0};
	measure_columns(view, &widths);
	put_factor(page, view);
	page_format(page, "", "Written in %s measures.",
		    measuring_system_title(view->recipe->system));
	page_blank(page);
	for (size_t s = 0; s < view->in_n; s++)
		put_padded(page, measuring_system_title(view->in[s]), widths.system[s]);
	put_padded(page, "grams", widths.grams);
	fputs("ingredient\n", page->out);
	for (size_t i = 0; i < view->recipe->lines_n; i++)
		put_row(page, view, &widths, i);
	page_blank(page);
	recipe_total_text(page, view->recipe, view->total);
	if (widths.rounding > ROUNDING_SHOWN)
		page_format(
		    page, "",
		    "Rounded to what can be measured out, what is sour never down and what is low "
		    "in acid never up; the most by %.1f %%. --json gives the exact amounts.",
		    widths.rounding * 100);
	put_batch_rule(page, view, &sources);
	put_method(page, view->recipe);
	page_blank(page);
	page_text(
	    page, "note    ",
	    "This is a recipe, not a tested process: hold it against the tested formulas with "
	    "'jarwright recipe compare' before a jar goes on the shelf.");
	sources_text(page, &sources);
}
