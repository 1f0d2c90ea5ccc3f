#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "compare_fixture.h"

const struct compare_facts fixture_facts = {VINEGAR_LABELLED, 5000};

static max_align_t memory[(size_t)2 * 1024 * 1024 / sizeof(max_align_t)];

const struct formula_set *fixture_formulas(void)
{
	static struct formula_set *set;
	struct error err = {.kind = ERROR_NONE};
	if (set)
		return set;
	ck_assert_uint_le(formula_set_size(reference_edition()), sizeof memory);
	set = formula_set_prepare(reference_edition(), reference_tables_edition(), memory,
				  sizeof memory, &err);
	ck_assert_msg(set != NULL, "%s", err.text);
	return set;
}

/* "replaces line 4" in the note of a line of this variant. */
static bool is_replaced(const struct formula *formula, const struct formula_line *line)
{
	const struct food *food = formula->food;
	for (size_t i = 0; i < food->formula_n && *formula->variant; i++) {
		const struct formula_line *other = &food->formula[i];
		const char *at = strstr(other->note, "replaces");
		at = at ? strstr(at, "line ") : NULL;
		if (strcmp(other->variant, formula->variant) == 0 && at && !*line->variant &&
		    strtol(at + 5, NULL, 10) == line->line)
			return true;
	}
	return false;
}

void fixture_lines_of(const struct formula *formula, struct fixture_lines *out)
{
	out->n = 0;
	for (size_t i = 0; i < formula->food->formula_n; i++) {
		const struct formula_line *line = &formula->food->formula[i];
		if (strcmp(line->ingredient, "(yield)") == 0 || strcmp(line->quantity, "0") == 0 ||
		    is_replaced(formula, line) ||
		    (*line->variant && strcmp(line->variant, formula->variant) != 0))
			continue;
		ck_assert_uint_lt(out->n, FIXTURE_LINES_MAX);
		out->line[out->n++] = line;
	}
}

bool fixture_is_measured(const struct formula *formula)
{
	struct fixture_lines lines;
	fixture_lines_of(formula, &lines);
	for (size_t i = 0; i < lines.n; i++)
		if (strcmp(lines.line[i]->role, "main") == 0 && !*lines.line[i]->quantity)
			return false;
	return true;
}

void fixture_recipe(const char *text, struct recipe *out)
{
	struct error err = {.kind = ERROR_NONE};
	ck_assert_msg(recipe_read("test", SYSTEM_US, text, strlen(text), out, &err), "%s: %s",
		      err.text, text);
}

void fixture_recipe_of(const struct formula *formula, struct recipe *out)
{
	struct fixture_lines lines;
	static char text[16384];
	size_t n = 0;
	fixture_lines_of(formula, &lines);
	for (size_t i = 0; i < lines.n; i++) {
		const struct formula_line *line = lines.line[i];
		bool each = strcmp(line->unit, "each") == 0;
		n += (size_t)snprintf(text + n, sizeof text - n, "%s %s %s%s%s%s\n", line->quantity,
				      each || !*line->quantity ? "" : line->unit, line->ingredient,
				      *line->preparation ? ", " : "", line->preparation,
				      strstr(line->note, "bottled") ? ", bottled" : "");
		ck_assert_uint_lt(n, sizeof text);
	}
	fixture_recipe(text, out);
}

void fixture_set_line(struct recipe *recipe, size_t line, const char *text)
{
	struct error err = {.kind = ERROR_NONE};
	struct recipe_line *at = &recipe->lines[line];
	ck_assert_uint_lt(strlen(text), sizeof at->text);
	ck_assert_msg(ingredient_line_parse(text, strlen(text), &at->read, &err), "%s", err.text);
	snprintf(at->text, sizeof at->text, "%s", text);
}

void fixture_add_line(struct recipe *recipe, const char *text)
{
	struct recipe_line *more =
	    realloc(recipe->lines, (recipe->lines_n + 1) * sizeof *recipe->lines);
	ck_assert_ptr_nonnull(more);
	recipe->lines = more;
	recipe->lines[recipe->lines_n].number = (int)recipe->lines_n + 1;
	fixture_set_line(recipe, recipe->lines_n, text);
	recipe->lines_n++;
}

void fixture_scale_line(struct recipe *recipe, size_t line, int64_t num, int64_t den)
{
	struct ingredient_line *read = &recipe->lines[line].read;
	struct rational factor;
	ck_assert(rational_make(num, den, &factor));
	ck_assert(rational_mul(read->quantity, factor, &read->quantity));
	ck_assert(rational_mul(read->quantity_max, factor, &read->quantity_max));
}

/* One amount from US measures into a unit that is there, or into millilitres or grams. */
static void rewrite(struct rational *amount, const struct kitchen_measure *us,
		    const struct kitchen_measure *there)
{
	struct rational in_unit;
	ck_assert(rational_mul(*amount, us->amount, amount));
	if (!there)
		return;
	ck_assert(rational_div(*amount, there->amount, &in_unit));
	*amount = in_unit;
}

void fixture_rewrite(struct recipe *recipe, enum measuring_system system)
{
	const struct reference_tables *tables = reference_tables_edition();
	for (size_t i = 0; i < recipe->lines_n; i++) {
		struct ingredient_line *read = &recipe->lines[i].read;
		enum kitchen_unit unit;
		enum measuring_system said;
		struct kitchen_measure us, there;
		if (!read->has_quantity || !*read->unit ||
		    !kitchen_unit_find(read->unit, &unit, &said))
			continue;
		ck_assert(kitchen_measure_find(tables, unit, SYSTEM_US, &us));
		bool kept = !kitchen_unit_is_mass(unit) &&
			    kitchen_measure_find(tables, unit, system, &there);
		rewrite(&read->quantity, &us, kept ? &there : NULL);
		rewrite(&read->quantity_max, &us, kept ? &there : NULL);
		if (!kept)
			read->unit = kitchen_unit_is_mass(unit) ? "g" : "ml";
	}
	recipe->system = system;
}

enum verdict fixture_verdict(const struct recipe *recipe, const struct formula *formula)
{
	static struct comparison out;
	recipe_compare(fixture_formulas(), recipe, &fixture_facts, formula, &out);
	return out.verdict;
}

bool fixture_speaks(const struct comparison *comparison, const char *rule)
{
	for (size_t i = 0; i < comparison->findings_n; i++)
		if (strcmp(comparison->findings[i].rule, rule) == 0)
			return true;
	return false;
}
