/* What a measure or a count of an ingredient weighs, by the published rows. */
#include <string.h>

#include "jarwright/kitchen_measure.h"
#include "jarwright/words.h"

/* Words that say nothing about what a measure weighs. */
static const char noise[] = "|of|the|a|an|and|or|in|to|into|for|with|about|finely|coarsely|freshly|"
			    "roughly|thinly|each|";
/*
 * A part of a food, or a package of it: a count means it only if it is said ("1 apricot"
 * is no half apricot). Common practice, no source.
 */
static const char parts[] = "|half|ball|piece|envelope|box|cube|";

/* What was asked, folded. */
struct ask {
	char name[WORDS_SIZE];
	char words[2 * WORDS_SIZE]; /* name and form, and for a count the size */
	bool count;
	enum kitchen_unit unit; /* by volume */
};

/* A row as the matching sees it. */
struct candidate {
	char food[WORDS_SIZE];
	char said[3 * WORDS_SIZE]; /* food, form and, for a count, the unit */
	char unit[WORDS_SIZE];
	enum kitchen_unit measure; /* by volume */
	struct rational ml;        /* by volume */
};

enum fit { FIT_NONE, FIT_CONTAINS, FIT_WHOLE };

static bool is_listed(const char *list, const char *word, size_t length)
{
	const char *item;
	size_t n;
	while (words_next(&list, &item, &n))
		if (n == length && memcmp(item, word, n) == 0)
			return true;
	return false;
}

/* Folding takes the s from a plural in -ves and leaves "halve" and "leave". */
static void mend_plural(char *word, size_t *length)
{
	if (*length == 5 && (memcmp(word, "halve", 5) == 0 || memcmp(word, "leave", 5) == 0)) {
		*length = 4;
		word[3] = 'f';
	}
}

/* Appends the folded words of text that say something. False: it does not fit. */
static bool add_words(char *to, size_t size, const char *text)
{
	char folded[WORDS_SIZE];
	if (!words_fold(text, strlen(text), folded))
		return strlen(text) < WORDS_SIZE; /* nothing but blanks */
	for (const char *at = folded; *at != '\0';) {
		size_t n = strcspn(at, " "), used = strlen(to);
		if (!is_listed(noise, at, n)) {
			if (used + n + 2 > size)
				return false;
			if (used > 0)
				to[used++] = ' ';
			memcpy(to + used, at, n);
			size_t length = n;
			mend_plural(to + used, &length);
			to[used + length] = '\0';
		}
		at += n + (at[n] == ' ');
	}
	return true;
}

static size_t count_words(const char *folded)
{
	size_t n = *folded != '\0';
	for (; *folded != '\0'; folded++)
		n += *folded == ' ';
	return n;
}

static bool share_word(const char *a, const char *b)
{
	char word[WORDS_SIZE];
	while (*a != '\0') {
		size_t n = strcspn(a, " ");
		memcpy(word, a, n);
		word[n] = '\0';
		if (words_all_in(b, word))
			return true;
		a += n + (a[n] == ' ');
	}
	return false;
}

/* May the text have one of these folded words? */
static bool may_share_word(const char *words, const char *text)
{
	for (const char *at = words; *at != '\0'; at += *at == ' ') {
		if (words_may_have(text, at))
			return true;
		at += strcspn(at, " ");
	}
	return false;
}

/* May the row say every word asked for? */
static bool may_fit(const struct ask *ask, const struct density_row *row)
{
	for (const char *at = ask->words; *at != '\0'; at += *at == ' ') {
		if (!words_may_have(row->food, at) && !words_may_have(row->form, at) &&
		    !(ask->count && words_may_have(row->volume_unit, at)))
			return false;
		at += strcspn(at, " ");
	}
	return true;
}

/* A pint in the rows is a box of berries as bought; which pint fills it is not said. */
static bool is_measuring(bool named, enum kitchen_unit unit)
{
	return named && !kitchen_unit_is_mass(unit) && unit != UNIT_PINT;
}

/* Does the row hold a measure of the kind that is asked for, and may it fit? */
static bool read_candidate(const struct reference_tables *tables, const struct density_row *row,
			   const struct ask *ask, struct candidate *out)
{
	enum measuring_system ignored;
	struct kitchen_measure measure;
	if (!may_fit(ask, row))
		return false;
	out->food[0] = out->said[0] = '\0';
	bool named = kitchen_unit_find(row->volume_unit, &out->measure, &ignored);
	if (ask->count ? named : !is_measuring(named, out->measure))
		return false;
	if (!ask->count) {
		if (!kitchen_measure_find(tables, out->measure, SYSTEM_US, &measure))
			return false;
		out->ml = measure.amount;
	}
	if (!add_words(out->food, sizeof out->food, row->food) ||
	    !words_fold(row->volume_unit, strlen(row->volume_unit), out->unit))
		return false;
	memcpy(out->said, out->food, sizeof out->food);
	if (!add_words(out->said, sizeof out->said, row->form))
		return false;
	return !ask->count || add_words(out->said, sizeof out->said, row->volume_unit);
}

/* A count of a part, or in a unit of its own ("clove"), must be said. */
static bool count_is_meant(const struct ask *ask, const struct candidate *row)
{
	if (strcmp(row->unit, "each") != 0)
		return words_all_in(ask->words, row->unit);
	for (const char *at = row->said; *at != '\0';) {
		char word[WORDS_SIZE];
		size_t n = strcspn(at, " ");
		memcpy(word, at, n);
		word[n] = '\0';
		if (is_listed(parts, at, n) && !words_all_in(ask->words, word))
			return false;
		at += n + (at[n] == ' ');
	}
	return true;
}

static enum fit fit_of(const struct ask *ask, const struct candidate *row)
{
	if (!words_all_in(row->said, ask->words) || !share_word(ask->name, row->food) ||
	    (ask->count && !count_is_meant(ask, row)))
		return FIT_NONE;
	return words_all_in(ask->words, row->food) ? FIT_WHOLE : FIT_CONTAINS;
}

/* Rows that fit, far above any food's. */
#define FITTING_MAX 256

struct fitting {
	size_t row[FITTING_MAX];
	size_t rows_n;
	enum fit best;
	size_t words; /* the most that a wholly named food has */
};

/* False: there are too many for an answer. */
static bool find_fitting(const struct reference_tables *tables, const struct ask *ask,
			 struct fitting *out)
{
	out->rows_n = out->words = 0;
	out->best = FIT_NONE;
	const char *food = NULL; /* the last row's; a food's rows mostly follow each other */
	bool may_share = false;
	for (size_t i = 0; i < tables->density_n; i++) {
		struct candidate row;
		enum fit fit = FIT_NONE;
		if (tables->density[i].food != food) {
			food = tables->density[i].food;
			may_share = may_share_word(ask->name, food);
		}
		if (may_share && read_candidate(tables, &tables->density[i], ask, &row))
			fit = fit_of(ask, &row);
		if (fit == FIT_NONE)
			continue;
		if (out->rows_n == FITTING_MAX)
			return false;
		out->row[out->rows_n++] = i;
		if (fit > out->best)
			out->best = fit;
		if (fit == FIT_WHOLE && count_words(row.food) > out->words)
			out->words = count_words(row.food);
	}
	return true;
}

static bool same_form(const struct density_row *a, const struct density_row *b)
{
	return strcmp(a->food, b->food) == 0 && strcmp(a->form, b->form) == 0;
}

/* Is `other` the better row of the same form? The asked unit first, then the larger one. */
static bool is_better(const struct ask *ask, const struct candidate *other,
		      const struct candidate *than)
{
	if (other->measure == than->measure)
		return false;
	if (other->measure == ask->unit || than->measure == ask->unit)
		return other->measure == ask->unit;
	return rational_compare(other->ml, than->ml) > 0;
}

static bool is_outdone(const struct reference_tables *tables, const struct ask *ask, size_t at,
		       const struct candidate *row)
{
	for (size_t i = 0; !ask->count && i < tables->density_n; i++) {
		struct candidate other;
		if (i != at && same_form(&tables->density[i], &tables->density[at]) &&
		    read_candidate(tables, &tables->density[i], ask, &other) &&
		    is_better(ask, &other, row))
			return true;
	}
	return false;
}

/* False: there are too many rows for an answer, or a figure that cannot be held. */
static bool add_row(const struct density_row *row, const struct ask *ask,
		    const struct candidate *read, struct mass_rows *out)
{
	struct error ignored;
	struct mass_row added = {.row = row};
	if (out->rows_n == MASS_ROWS_MAX || !rational_parse(row->grams, &added.grams, &ignored))
		return false;
	if (!ask->count && !rational_div(added.grams, read->ml, &added.grams))
		return false;
	bool first = out->rows_n == 0, new_food = true;
	for (size_t i = 0; i < out->rows_n; i++)
		new_food = new_food && strcmp(out->rows[i].row->food, row->food) != 0;
	out->foods_n += new_food;
	if (first || rational_compare(added.grams, out->least) < 0)
		out->least = added.grams;
	if (first || rational_compare(added.grams, out->most) > 0)
		out->most = added.grams;
	out->rows[out->rows_n++] = added;
	return true;
}

static bool collect(const struct reference_tables *tables, const struct ask *ask,
		    struct mass_rows *out)
{
	struct fitting fitting;
	if (!find_fitting(tables, ask, &fitting))
		return false;
	for (size_t i = 0; i < fitting.rows_n; i++) {
		struct candidate row;
		size_t at = fitting.row[i];
		if (!read_candidate(tables, &tables->density[at], ask, &row) ||
		    fit_of(ask, &row) != fitting.best ||
		    (fitting.best == FIT_WHOLE && count_words(row.food) != fitting.words) ||
		    is_outdone(tables, ask, at, &row))
			continue;
		if (!add_row(&tables->density[at], ask, &row, out)) {
			*out = (struct mass_rows){.rows_n = 0};
			return false;
		}
	}
	return out->rows_n > 0;
}

/* With the form, then, if no row says it, without. */
static bool find_rows(const struct reference_tables *tables, struct ask *ask, const char *form,
		      const char *size, struct mass_rows *out)
{
	char name_and_size[sizeof ask->words];
	*out = (struct mass_rows){.rows_n = 0};
	if (strcmp(ask->name, "") == 0)
		return false;
	memcpy(ask->words, ask->name, sizeof ask->name);
	if (!add_words(ask->words, sizeof ask->words, size))
		return false;
	memcpy(name_and_size, ask->words, sizeof name_and_size);
	if (!add_words(ask->words, sizeof ask->words, form))
		return false;
	if (collect(tables, ask, out))
		return true;
	if (strcmp(ask->words, name_and_size) == 0)
		return false;
	memcpy(ask->words, name_and_size, sizeof ask->words);
	if (!collect(tables, ask, out))
		return false;
	out->form_ignored = true;
	return true;
}

bool mass_by_volume(const struct reference_tables *tables, const char *name, const char *form,
		    enum kitchen_unit unit, struct mass_rows *out)
{
	struct ask ask = {.unit = unit};
	*out = (struct mass_rows){.rows_n = 0};
	return add_words(ask.name, sizeof ask.name, name) && find_rows(tables, &ask, form, "", out);
}

bool mass_by_count(const struct reference_tables *tables, const char *name, const char *form,
		   const char *size, struct mass_rows *out)
{
	struct ask ask = {.count = true};
	*out = (struct mass_rows){.rows_n = 0};
	return add_words(ask.name, sizeof ask.name, name) &&
	       find_rows(tables, &ask, form, size, out);
}
