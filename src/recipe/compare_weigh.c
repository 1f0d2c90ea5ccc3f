/*
 * Grams of a line, soon enough for a thousand recipes a second: recipe_line_grams() reads
 * every row of the densities, so it is given only those that can fit. A row fits if all the
 * words of the name are said in it, and one in its food (see kitchen_measure.h); that is asked
 * here of the first letters alone, so no row that fits is left out.
 */
#include <string.h>

#include "compare_internal.h"
#include "jarwright/words.h"

/* Rows that are handed on; more, and all are. */
#define NEAR_ROWS_MAX 160

/* The start of a word: folding may differ only further on ("halve", "half"). */
static uint32_t start_of(const char *word, size_t length)
{
	uint32_t start = 0;
	for (size_t i = 0; i < length && i < 3; i++)
		start = start << 8 | (unsigned char)word[i];
	return start;
}

/* Words that the densities pass over are short, or tell how finely something was cut. */
static bool says_something(const char *word, size_t length)
{
	if (length < 5 || (length == 5 && memcmp(word, "about", 5) == 0))
		return false;
	return memcmp(word + length - 2, "ly", 2) != 0;
}

static void starts_add(const char *text, struct word_starts *out)
{
	char folded[WORDS_SIZE];
	if (*text == '\0')
		return;
	if (!words_fold(text, strlen(text), folded)) {
		out->any = true;
		return;
	}
	for (const char *at = folded; *at != '\0';) {
		size_t n = strcspn(at, " ");
		if (out->n == WORD_STARTS_MAX) {
			out->any = true;
			return;
		}
		out->must[out->n] = says_something(at, n);
		out->start[out->n++] = start_of(at, n);
		at += n + (at[n] == ' ');
	}
}

void density_starts(const struct density_row *row, struct word_starts *out)
{
	*out = (struct word_starts){.n = 0};
	starts_add(row->food, out);
	out->food_n = out->n;
	starts_add(row->form, out);
	starts_add(row->volume_unit, out);
}

static bool has_start(const struct word_starts *row, unsigned n, uint32_t start)
{
	for (unsigned i = 0; i < n; i++)
		if (row->start[i] == start)
			return true;
	return false;
}

static bool may_fit(const struct word_starts *name, const struct word_starts *row)
{
	bool shared = false;
	if (name->any || row->any)
		return true;
	for (unsigned i = 0; i < name->n; i++) {
		shared |= has_start(row, row->food_n, name->start[i]);
		if (name->must[i] && !has_start(row, row->n, name->start[i]))
			return false;
	}
	return shared;
}

static void weigh(const struct items *items, size_t line, struct grams *out)
{
	const struct ingredient_line *read = &items->recipe->lines[line].read;
	const struct reference_tables *all = items->set->tables;
	struct density_row near[NEAR_ROWS_MAX];
	struct reference_tables tables = *all;
	struct word_starts name = {.n = 0}, matched = {.n = 0};
	struct rational least, most;
	size_t n = 0;
	starts_add(read->ingredient, &name);
	if (read->matched)
		starts_add(read->matched, &matched);
	for (size_t i = 0; i < all->density_n && n <= NEAR_ROWS_MAX; i++) {
		const struct word_starts *row = &items->set->density[i];
		if (!may_fit(&name, row) && !(read->matched && may_fit(&matched, row)))
			continue;
		if (n < NEAR_ROWS_MAX)
			near[n] = all->density[i];
		n++;
	}
	if (n <= NEAR_ROWS_MAX) {
		tables.density = near;
		tables.density_n = n;
	}
	out->known = recipe_line_grams(&tables, items->recipe, line, &least, &most);
	if (out->known) {
		out->least = rational_double(least);
		out->most = rational_double(most);
	}
}

const struct grams *item_grams(const struct items *items, size_t line)
{
	struct grams *grams = &items->item[line].grams;
	if (!grams->asked)
		weigh(items, line, grams);
	grams->asked = true;
	return grams;
}
