/* recipe acid: an estimate of the mixture's pH. Screening only: it decides nothing. */
#include <string.h>

#include "jarwright/acidity.h"
#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "jarwright/words.h"
#include "recipe.h"
#include "request.h"

/* The parts of the mixture and the lines they are of. */
struct mixture {
	struct acidity_part parts[ACIDITY_PARTS_MAX];
	size_t lines[ACIDITY_PARTS_MAX];
	size_t parts_n;
	bool left_out[RECIPE_LINES_MAX]; /* no published weight */
	bool strength_asked;             /* there is vinegar and nobody said how strong */
};

static bool line_says(const struct recipe_line *line, const char *words)
{
	char folded[WORDS_SIZE];
	const char *name = line->read.ingredient;
	return words_fold(name, strlen(name), folded) && words_all_in(folded, words);
}

/* Millilitres of a line; of a weight, one gram counts as one millilitre, as in acidity.h. */
static double line_ml(const struct recipe *recipe, size_t i, double grams)
{
	const struct ingredient_line *read = &recipe->lines[i].read;
	enum kitchen_unit unit;
	enum measuring_system said;
	struct kitchen_measure measure;
	if (read->pack.present || read->plus.present ||
	    !kitchen_unit_find(read->unit, &unit, &said) || kitchen_unit_is_mass(unit) ||
	    !kitchen_measure_find(reference_tables_edition(), unit, recipe->system, &measure))
		return grams;
	return (rational_double(read->quantity) + rational_double(read->quantity_max)) / 2 *
	       rational_double(measure.amount);
}

static void set_part(const struct recipe *recipe, size_t i, double strength,
		     struct acidity_part *part)
{
	const struct recipe_line *line = &recipe->lines[i];
	part->kind = ACIDITY_FOOD;
	part->name = line->read.matched ? line->read.matched : line->read.ingredient;
	if (line_says(line, "vinegar")) {
		part->kind = ACIDITY_VINEGAR;
		part->ml = line_ml(recipe, i, part->grams);
		part->strength_pct = strength;
	} else if (line_says(line, "citric acid")) {
		part->kind = ACIDITY_ACID;
		part->name = "citric";
	} else if (words_same(line->read.ingredient, "water")) {
		part->kind = ACIDITY_WATER;
	} else if (line->read.matched && strncmp(line->read.matched, "salt", 4) == 0) {
		part->kind = ACIDITY_SALT;
	} else if (line_says(line, "sugar")) {
		part->name = "sugar";
	}
}

static bool mix(struct invocation *inv, const struct recipe *recipe, double strength,
		struct mixture *out)
{
	for (size_t i = 0; i < recipe->lines_n; i++) {
		struct rational least, most;
		out->left_out[i] =
		    !recipe_line_grams(reference_tables_edition(), recipe, i, &least, &most);
		if (out->left_out[i])
			continue;
		if (out->parts_n == ACIDITY_PARTS_MAX)
			return error_usage(
			    inv->err,
			    "recipe acid: more than %d ingredients; the estimate takes "
			    "no more",
			    ACIDITY_PARTS_MAX);
		struct acidity_part *part = &out->parts[out->parts_n];
		part->grams = (rational_double(least) + rational_double(most)) / 2;
		set_part(recipe, i, strength, part);
		if (part->kind == ACIDITY_VINEGAR && strength <= 0)
			out->strength_asked = true;
		out->lines[out->parts_n++] = i;
	}
	return out->parts_n > 0 ||
	       error_usage(inv->err, "recipe acid: no line has a published weight; give weights");
}

static bool read_strength(struct invocation *inv, double *out)
{
	struct asked asked;
	memset(&asked, 0, sizeof asked);
	*out = 0;
	if (!asked_vinegar(inv, &asked))
		return false;
	if (asked.request.vinegar == VINEGAR_LABELLED)
		*out = asked.request.vinegar_milli_percent / 1000.0;
	return true;
}

static int ask_strength(struct invocation *inv)
{
	static const char text[] = "How strong is the vinegar? Say --vinegar 5%, as on its label.";
	if (flag(inv, "json"))
		return answer_json(inv, json_pack("{s:n, s:s}", "ph", "text", text),
				   STATUS_UNCLEAR);
	struct page page = answer_page(inv);
	page_headline(&page, "UNCLEAR", text);
	return STATUS_UNCLEAR;
}

static void print_reasons(const struct page *page, const char *lead, unsigned reasons)
{
	for (unsigned bit = 1; bit <= ACIDITY_OUT_OF_RANGE; bit <<= 1)
		if (reasons & bit)
			page_text(page, lead, acidity_reason_text((enum acidity_reason)bit));
}

static int print(struct invocation *inv, const struct recipe *recipe, const struct mixture *mixture,
		 const struct acidity *acidity)
{
	struct page page = answer_page(inv);
	page_format(&page, "", "Estimated pH %.1f, in a range of %.1f to %.1f.", acidity->best,
		    acidity->low, acidity->high);
	page_text(&page, "", acidity_no_test_text());
	page_text(&page, "", acidity_meter_text());
	page_format(&page, "", "%.0f %% of the mass of the foods was titrated.",
		    acidity->titrated * 100);
	print_reasons(&page, "", acidity->reasons & (ACIDITY_SALT_HIGH | ACIDITY_OUT_OF_RANGE));
	page_blank(&page);
	page_text(&page, "", "Share of the buffering, and what each rests on:");
	for (size_t i = 0; i < mixture->parts_n; i++) {
		page_format(&page, "  ", "%3.0f %%  %s%s", acidity->parts[i].buffering * 100,
			    recipe->lines[mixture->lines[i]].read.ingredient,
			    i == acidity->dominant ? ", the greatest" : "");
		print_reasons(&page, "         ", acidity->parts[i].reasons);
	}
	for (size_t i = 0; i < recipe->lines_n; i++)
		if (mixture->left_out[i])
			page_format(&page, "  ", "left out, no published weight: line %d, %s",
				    recipe->lines[i].number, recipe->lines[i].text);
	return STATUS_DONE;
}

static json_t *parts_json(const struct recipe *recipe, const struct mixture *mixture,
			  const struct acidity *acidity)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < mixture->parts_n; i++)
		list = json_append(list, json_pack("{s:s, s:f, s:f}", "ingredient",
						   recipe->lines[mixture->lines[i]].read.ingredient,
						   "grams", mixture->parts[i].grams, "buffering",
						   acidity->parts[i].buffering));
	return list;
}

static json_t *left_out_json(const struct recipe *recipe, const struct mixture *mixture)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < recipe->lines_n; i++)
		if (mixture->left_out[i])
			list = json_append(list, json_integer(recipe->lines[i].number));
	return list;
}

static int to_json(struct invocation *inv, const struct recipe *recipe,
		   const struct mixture *mixture, const struct acidity *acidity)
{
	return answer_json(
	    inv,
	    json_pack("{s:f, s:f, s:f, s:f, s:s, s:o, s:o, s:s, s:s}", "ph", acidity->best,
		      "ph_low", acidity->low, "ph_high", acidity->high, "titrated",
		      acidity->titrated, "dominant",
		      recipe->lines[mixture->lines[acidity->dominant]].read.ingredient, "parts",
		      parts_json(recipe, mixture, acidity), "lines_left_out",
		      left_out_json(recipe, mixture), "decides_nothing", acidity_no_test_text(),
		      "meter", acidity_meter_text()),
	    STATUS_DONE);
}

static int estimate(struct invocation *inv, const struct recipe *recipe)
{
	struct mixture mixture;
	struct acidity acidity;
	double strength;
	memset(&mixture, 0, sizeof mixture);
	if (!read_strength(inv, &strength) || !mix(inv, recipe, strength, &mixture))
		return command_failed(inv);
	if (mixture.strength_asked)
		return ask_strength(inv);
	if (!acidity_estimate(reference_tables_edition(), mixture.parts, mixture.parts_n, &acidity,
			      inv->err))
		return command_failed(inv);
	return flag(inv, "json") ? to_json(inv, recipe, &mixture, &acidity)
				 : print(inv, recipe, &mixture, &acidity);
}

int recipe_acid_command(struct invocation *inv)
{
	struct recipe recipe;
	if (!recipe_find(inv, &recipe))
		return command_failed(inv);
	int status = estimate(inv, &recipe);
	recipe_release(&recipe);
	return status;
}
