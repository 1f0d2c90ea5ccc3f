#include <stdio.h>
#include <string.h>

#include "jarwright/recipe.h"
#include "jarwright/words.h"

/* An ingredient's words, and what its amounts are to be read in. */
struct weighing {
	const struct reference_tables *tables;
	enum measuring_system system;
	const struct ingredient_line *line;
};

struct range {
	struct rational least, most;
};

static bool multiply(struct range a, struct range b, struct range *out)
{
	return rational_mul(a.least, b.least, &out->least) &&
	       rational_mul(a.most, b.most, &out->most);
}

/* The words as written say the most; where they fit several foods, the name they came to decides.
 */
static bool by_volume(const struct weighing *w, enum kitchen_unit unit, struct mass_rows *rows)
{
	const struct ingredient_line *line = w->line;
	if (mass_by_volume(w->tables, line->ingredient, line->preparation, unit, rows) &&
	    (rows->foods_n == 1 || !line->matched))
		return true;
	return line->matched &&
	       mass_by_volume(w->tables, line->matched, line->preparation, unit, rows);
}

static bool by_count(const struct weighing *w, const char *size, struct mass_rows *rows)
{
	const struct ingredient_line *line = w->line;
	if (mass_by_count(w->tables, line->ingredient, line->preparation, size, rows) &&
	    (rows->foods_n == 1 || !line->matched))
		return true;
	return line->matched &&
	       mass_by_count(w->tables, line->matched, line->preparation, size, rows);
}

/*
 * "2 breakfast cups plums": a measure that no table has is among the words, so that it is not
 * two plums. Units of one letter are not looked for: "a" or "t" may be anything.
 */
static bool names_a_measure(const char *words)
{
	char word[32];
	for (const char *at = words; *at;) {
		size_t n = strcspn(at, " -");
		enum kitchen_unit unit;
		enum measuring_system said;
		snprintf(word, sizeof word, "%.*s", n < sizeof word ? (int)n : 0, at);
		if (n > 2 && kitchen_unit_find(word, &unit, &said))
			return true;
		at += n;
		at += strspn(at, " -");
	}
	return false;
}

/* Of a fruit only the juice is taken: what one yields counts, never what it weighs whole. */
static bool juice_of_one(const struct weighing *w, struct mass_rows *rows)
{
	char folded[WORDS_SIZE];
	const char *name = w->line->matched;
	return name && words_fold(name, strlen(name), folded) && words_all_in(folded, "juice") &&
	       mass_by_count(w->tables, name, "yields", "", rows);
}

/* Grams of one of this unit, which is no kitchen measure: a clove, a medium one. */
static bool count_grams(const struct weighing *w, const char *unit, struct range *out)
{
	struct mass_rows rows;
	if (names_a_measure(w->line->ingredient))
		return false;
	if (!(strcmp(unit, "fruit") == 0 ? juice_of_one(w, &rows)
					 : by_count(w, *unit ? unit : w->line->size, &rows)))
		return false;
	*out = (struct range){rows.least, rows.most};
	return true;
}

/* Grams of one of this unit. */
static bool unit_grams(const struct weighing *w, const char *unit, struct range *out)
{
	enum kitchen_unit kitchen;
	enum measuring_system said;
	struct kitchen_measure measure;
	struct mass_rows rows;
	if (*unit == '\0' || !kitchen_unit_find(unit, &kitchen, &said))
		return count_grams(w, unit, out);
	if (!kitchen_measure_find(w->tables, kitchen, w->system, &measure))
		return false;
	*out = (struct range){measure.amount, measure.amount};
	if (kitchen_unit_is_mass(kitchen))
		return true;
	return by_volume(w, kitchen, &rows) &&
	       multiply(*out, (struct range){rows.least, rows.most}, out);
}

static bool amount_grams(const struct weighing *w, const struct ingredient_amount *amount,
			 struct range *out)
{
	struct range one;
	return amount->present && unit_grams(w, amount->unit, &one) &&
	       multiply((struct range){amount->quantity, amount->quantity_max}, one, out);
}

static bool is_mass(const struct ingredient_amount *amount)
{
	enum kitchen_unit unit;
	enum measuring_system said;
	return amount->present && kitchen_unit_find(amount->unit, &unit, &said) &&
	       kitchen_unit_is_mass(unit);
}

/* The line's own amount: so many packs of so much, or so much. */
static bool main_grams(const struct weighing *w, struct range *out)
{
	const struct ingredient_line *line = w->line;
	const struct ingredient_amount own = {true, line->quantity, line->quantity_max, line->unit};
	struct range pack;
	if (!line->pack.present)
		return amount_grams(w, &own, out);
	return amount_grams(w, &line->pack, &pack) &&
	       multiply((struct range){own.quantity, own.quantity_max}, pack, out);
}

bool recipe_line_grams(const struct reference_tables *tables, const struct recipe *recipe,
		       size_t line, struct rational *least, struct rational *most)
{
	const struct ingredient_line *read = &recipe->lines[line].read;
	const struct weighing w = {tables, recipe->system, read};
	const struct ingredient_amount own = {true, read->quantity, read->quantity_max, read->unit};
	struct range grams, plus;
	if (!read->has_quantity)
		return false;
	/* Where the cook gave a weight as well, it is surer than any density. */
	if (is_mass(&read->alternative) && !is_mass(&own)) {
		if (!amount_grams(&w, &read->alternative, &grams))
			return false;
	} else if (!main_grams(&w, &grams) && !amount_grams(&w, &read->alternative, &grams)) {
		return false;
	}
	if (read->plus.present) {
		if (!amount_grams(&w, &read->plus, &plus) ||
		    !rational_add(grams.least, plus.least, &grams.least) ||
		    !rational_add(grams.most, plus.most, &grams.most))
			return false;
	}
	*least = grams.least;
	*most = grams.most;
	return true;
}
