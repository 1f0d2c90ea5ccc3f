#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "compare_internal.h"

/* Variants of one food that are looked at; more is a fault of the tables. */
#define VARIANTS_MAX 8

static bool is_yield(const struct formula_line *line)
{
	return strcmp(line->ingredient, "(yield)") == 0;
}

/* The number behind "line " in a note that says what it replaces; 0: replaces none. */
static long replaced_line(const struct formula_line *line)
{
	const char *at = strstr(line->note, "replaces ");
	at = at ? strstr(at, "line ") : NULL;
	return at ? strtol(at + strlen("line "), NULL, 10) : 0;
}

/* The variants named in a food, each once; *plain: some lines are as printed. */
static size_t variants_of(const struct food *food, const char *out[VARIANTS_MAX], bool *plain)
{
	size_t n = 0;
	*plain = false;
	for (size_t i = 0; i < food->formula_n; i++) {
		const char *variant = food->formula[i].variant;
		size_t seen = 0;
		if (*variant == '\0') {
			*plain |= !is_yield(&food->formula[i]);
			continue;
		}
		while (seen < n && strcmp(out[seen], variant) != 0)
			seen++;
		if (seen == n && n < VARIANTS_MAX)
			out[n++] = variant;
	}
	return n;
}

/*
 * Is the recipe as printed whole without its variants? Not if a variant brings what every
 * form must have: produce or meat that neither replaces a line nor may be left out.
 */
static bool plain_is_whole(const struct food *food)
{
	for (size_t i = 0; i < food->formula_n; i++) {
		const struct formula_line *line = &food->formula[i];
		if (*line->variant == '\0' || *line->note != '\0')
			continue;
		if (strcmp(line->role, "main") == 0 || strcmp(line->role, "low-acid") == 0)
			return false;
	}
	return true;
}

/* Does another line of this variant stand in place of this one? */
static bool is_replaced(const struct food *food, const char *variant,
			const struct formula_line *line)
{
	if (*variant == '\0' || *line->variant != '\0')
		return false;
	for (size_t i = 0; i < food->formula_n; i++)
		if (strcmp(food->formula[i].variant, variant) == 0 &&
		    replaced_line(&food->formula[i]) == line->line)
			return true;
	return false;
}

static enum role role_of(const struct formula_line *line)
{
	static const char *const words[ROLE_COUNT] = {
	    [ROLE_MAIN] = "main",
	    [ROLE_VINEGAR] = "vinegar",
	    [ROLE_CITRUS] = "lemon-lime",
	    [ROLE_LOW_ACID] = "low-acid",
	    [ROLE_SUGAR] = "sugar",
	    [ROLE_SALT] = "salt",
	    [ROLE_SPICE] = "spice",
	    [ROLE_WATER] = "water",
	    [ROLE_PECTIN] = "pectin",
	    [ROLE_STARCH] = "starch",
	    [ROLE_DRIED_FRUIT] = "dried-fruit",
	    [ROLE_OTHER] = "other",
	};
	for (int i = 0; i < ROLE_COUNT; i++)
		if (strcmp(words[i], line->role) == 0)
			return (enum role)i;
	return ROLE_OTHER;
}

/*
 * The tables know a spice by its role; of these the words say that it is fresh, or no spice
 * alone, so that the rule for dried ones does not hold.
 */
static void mark_spice(struct item *item)
{
	static const char *const not_dry[] = {"fresh",  "root",    "cilantro", "parsley",
					      "fennel", "candies", "extract",  "prepared"};
	const char *name = item->printed->ingredient;
	bool dry = !strstr(name, "ginger") || (item->words.is & IS_DRY_SPICE);
	for (size_t i = 0; i < sizeof not_dry / sizeof *not_dry; i++)
		dry &= !strstr(name, not_dry[i]);
	item->words.is &= ~(unsigned)(IS_DRY_SPICE | IS_PEPPER);
	if (dry)
		item->words.is |= IS_DRY_SPICE;
}

bool formula_line_text(const struct formula_line *line, char *out, size_t size)
{
	bool counted = *line->quantity && strcmp(line->unit, "each") == 0;
	int n = snprintf(out, size, "%s%s%s%s%s%s%s", line->quantity, *line->quantity ? " " : "",
			 counted || !*line->quantity ? "" : line->unit,
			 counted || !*line->quantity || !*line->unit ? "" : " ", line->ingredient,
			 *line->preparation ? ", " : "", line->preparation);
	return n > 0 && (size_t)n < size && n <= INGREDIENT_LINE_MAX;
}

/* "0.5" is "1/2"; thirds are printed as decimals and stay so. *many: above one. */
static void quantity_words(const char *printed, char *out, size_t size, bool *many)
{
	static const struct rational one = {1, 1};
	struct rational value;
	struct error err = {.kind = ERROR_NONE};
	const bool read = *printed && rational_parse(printed, &value, &err);
	*many = !read || rational_compare(value, one) > 0;
	if (read && value.den <= 16)
		rational_words(out, size, value);
	else
		snprintf(out, size, "%s", printed);
}

/* "cups"; the printed word where it is no kitchen measure; nothing for plain pieces. */
static const char *unit_words(const struct formula_line *line, bool many)
{
	enum kitchen_unit unit;
	enum measuring_system said;
	if (!*line->quantity || strcmp(line->unit, "each") == 0)
		return "";
	return kitchen_unit_find(line->unit, &unit, &said) ? kitchen_unit_name(unit, many)
							   : line->unit;
}

const char *formula_line_words(const struct formula_set *set, const struct formula *formula,
			       size_t i, char *buffer, size_t size)
{
	const struct item *item = &formula_items(set, formula)[i];
	const struct formula_line *line = item->printed;
	char quantity[64];
	if (item->gone)
		return NULL;
	bool many;
	quantity_words(line->quantity, quantity, sizeof quantity, &many);
	const char *unit = unit_words(line, many);
	snprintf(buffer, size, "%s%s%s%s%s%s%s%s", quantity, *quantity ? " " : "", unit,
		 *unit ? " " : "", line->ingredient, *line->preparation ? ", " : "",
		 line->preparation, *line->quantity ? "" : " (no amount in these tables)");
	return buffer;
}

/* Reads the line as if a cook in the United States had written it. */
static void item_from(const struct formula_set *set, const struct formula_line *line,
		      struct item *out)
{
	char text[INGREDIENT_FIELD_SIZE];
	struct recipe_line read = {.number = 1};
	struct recipe one = {.system = SYSTEM_US, .lines = &read, .lines_n = 1};
	const struct items items = {.set = set, .recipe = &one, .item = out};
	struct error err;
	*out = (struct item){.printed = line, .name = line->ingredient, .role = (int)role_of(line)};
	item_words_read(line->ingredient, line->preparation, line->note, &out->words);
	if (out->role == ROLE_SPICE)
		mark_spice(out);
	out->gone = strcmp(line->quantity, "0") == 0;
	out->amount = (struct amount){.sort = AMOUNT_UNKNOWN, .unit = "", .size = ""};
	out->read = out->words;
	if (!out->gone && formula_line_text(line, text, sizeof text) &&
	    ingredient_line_parse(text, strlen(text), &read.read, &err)) {
		item_words_read(read.read.ingredient, read.read.preparation, line->note,
				&out->read);
		amount_read(set->tables, SYSTEM_US, &read.read, &out->amount);
		item_grams(&items, 0);
	}
	out->grams.asked = true;
}

/* Adds one variant's lines. False: it has more lines than a formula can. */
static bool add_formula(struct formula_set *set, const struct food *food, const char *variant)
{
	struct formula *formula = &set->formulas[set->formulas_n];
	*formula = (struct formula){food, variant, set->items_n, 0};
	for (size_t i = 0; i < food->formula_n; i++) {
		const struct formula_line *line = &food->formula[i];
		if (is_yield(line) || is_replaced(food, variant, line) ||
		    (*line->variant && strcmp(line->variant, variant) != 0))
			continue;
		if (formula->lines_n == FORMULA_LINES_MAX)
			return false;
		item_from(set, line, &set->items[set->items_n++]);
		formula->lines_n++;
	}
	set->formulas_n += formula->lines_n > 0;
	return true;
}

static bool add_food(struct formula_set *set, const struct food *food)
{
	const char *variants[VARIANTS_MAX];
	bool plain;
	size_t n = variants_of(food, variants, &plain);
	if (plain && plain_is_whole(food) && !add_formula(set, food, ""))
		return false;
	for (size_t i = 0; i < n; i++)
		if (!add_formula(set, food, variants[i]))
			return false;
	return true;
}

/* How many formulas and lines there can be at most. */
static void count(const struct reference *ref, size_t *formulas, size_t *items)
{
	*formulas = *items = 0;
	for (size_t i = 0; i < ref->foods_n; i++) {
		const char *variants[VARIANTS_MAX];
		bool plain;
		if (ref->foods[i].formula_n == 0)
			continue;
		size_t n = variants_of(&ref->foods[i], variants, &plain) + 1;
		*formulas += n;
		*items += n * ref->foods[i].formula_n;
	}
}

/* Rounded up so that what follows is aligned. */
static size_t rounded(size_t size)
{
	return (size + sizeof(max_align_t) - 1) / sizeof(max_align_t) * sizeof(max_align_t);
}

/* Hands out a part of the caller's memory. */
static void *take(char **at, size_t size)
{
	void *part = *at;
	*at += rounded(size);
	return part;
}

static size_t size_with(const struct reference *ref, const struct reference_tables *tables)
{
	size_t formulas, items;
	count(ref, &formulas, &items);
	return rounded(sizeof(struct formula_set)) + rounded(formulas * sizeof(struct formula)) +
	       rounded(items * sizeof(struct item)) + rounded(CHANGE_COUNT * sizeof(const void *)) +
	       rounded(tables->density_n * sizeof(struct word_starts));
}

size_t formula_set_size(const struct reference *ref)
{
	return size_with(ref, reference_tables_edition());
}

/* Lays the set out in memory that is large enough. */
static struct formula_set *lay_out(const struct reference *ref,
				   const struct reference_tables *tables, void *memory)
{
	size_t formulas, items;
	char *at = memory;
	struct formula_set *set = take(&at, sizeof *set);
	count(ref, &formulas, &items);
	*set = (struct formula_set){.ref = ref, .tables = tables};
	set->formulas = take(&at, formulas * sizeof *set->formulas);
	set->items = take(&at, items * sizeof *set->items);
	set->rules = take(&at, CHANGE_COUNT * sizeof(const void *));
	set->density = take(&at, tables->density_n * sizeof *set->density);
	for (size_t i = 0; i < tables->density_n; i++)
		density_starts(&tables->density[i], &set->density[i]);
	return set;
}

struct formula_set *formula_set_prepare(const struct reference *ref,
					const struct reference_tables *tables, void *memory,
					size_t size, struct error *err)
{
	if (size < size_with(ref, tables)) {
		error_failed(err, "formulas: too little memory was set aside for them; this is a "
				  "fault of the program, report it");
		return NULL;
	}
	struct formula_set *set = lay_out(ref, tables, memory);
	if (!change_rules_find(tables, set->rules, err))
		return NULL;
	for (size_t i = 0; i < ref->foods_n; i++) {
		if (!add_food(set, &ref->foods[i])) {
			error_failed(err,
				     "formula of %s: more than %d lines; this is a fault of the "
				     "tables, report it",
				     ref->foods[i].slug, FORMULA_LINES_MAX);
			return NULL;
		}
	}
	return set;
}

size_t formula_set_count(const struct formula_set *set)
{
	return set->formulas_n;
}

const struct formula *formula_set_at(const struct formula_set *set, size_t i)
{
	return &set->formulas[i];
}

const struct formula *formula_set_find(const struct formula_set *set, const struct food *food,
				       const char *variant)
{
	for (size_t i = 0; i < set->formulas_n; i++)
		if (set->formulas[i].food == food &&
		    (*variant == '\0' || strcmp(set->formulas[i].variant, variant) == 0))
			return &set->formulas[i];
	return NULL;
}

const struct item *formula_items(const struct formula_set *set, const struct formula *formula)
{
	return &set->items[formula->first];
}
