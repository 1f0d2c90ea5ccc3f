/* The published change rules that are judged by, and the differences they are applied to. */
#include <string.h>

#include "compare_internal.h"

/* How the rows of relation change_rule begin; each is looked for when formulas are prepared. */
static const char *const changes[CHANGE_COUNT] = {
    [CHANGE_LESS_ACID] = "less acid than the recipe",
    [CHANGE_PROPORTIONS] = "proportions of vinegar, food or water altered in pickles and relishes",
    [CHANGE_MORE_VEGETABLES] = "more onions or other vegetables than the recipe",
    [CHANGE_MORE_PEPPERS] = "more peppers than the recipe",
    [CHANGE_OTHER_VEGETABLE] = "other low-acid vegetables added or substituted",
    [CHANGE_LESS_VEGETABLE] = "less low-acid vegetable",
    [CHANGE_PEPPER_FOR_PEPPER] = "one kind of pepper for another",
    [CHANGE_THICKENER] = "flour, cornflour or other thickener added",
    [CHANGE_MEAT] = "meat added to a recipe that does not call for it",
    [CHANGE_GRAIN_IN_MEAT] = "rice, pasta or barley added to canned meat",
    [CHANGE_FAT_IN_MEAT] = "fat added to canned meat",
    [CHANGE_PRESERVING] = "any change that affects the preserving factors",
    [CHANGE_OWN_RECIPE] = "own or untested recipe canned",
    [CHANGE_PUREE] = "vegetable mashed or pureed instead of cubed",
    [CHANGE_SPICE_KIND] = "dried spice or herb: kind changed",
    [CHANGE_SPICE_AMOUNT] = "dried spice or herb: amount changed",
    [CHANGE_SALT_PICKLE] = "less or no salt in quick-process (fresh-pack) pickles",
    [CHANGE_SALT_SALSA] = "less or no salt in salsa",
    [CHANGE_SALT_PLAIN] = "less or no salt in canned vegetables, tomato products, meat",
    [CHANGE_SALT_FERMENTED] = "any change of salt amount or kind in sauerkraut",
    [CHANGE_SUGAR_FRUIT] = "less or no sugar in canned fruit",
    [CHANGE_SUGAR_PICKLE] = "less or no sugar in quick-process pickles or tomato products",
    [CHANGE_SUGAR_SALSA] = "less sugar in salsa",
    [CHANGE_SUGAR_JAM] = "less sugar in a standard jam or jelly",
    [CHANGE_SUGAR_MORE] = "more sugar to mask sourness (salsa, pickles)",
    [CHANGE_ACID_SWAPPED] = "acid source swapped in any other product",
    [CHANGE_CITRIC] = "citric acid in place of lemon juice or vinegar",
    [CHANGE_FRESH_JUICE] = "fresh lemon juice where bottled is required",
    [CHANGE_JUICE_FOR_VINEGAR] = "bottled lemon or lime juice in place of vinegar",
    [CHANGE_VINEGAR_KIND] = "white or cider vinegar exchanged at 5%",
    [CHANGE_DILUTED] = "vinegar diluted with water",
    [CHANGE_TOMATO_PASTE] = "tomato paste added to thicken salsa",
    [CHANGE_STARCH_PRINTED] = "starch printed in the tested formula itself",
    [CHANGE_DOUBLED] = "jam or jelly batch doubled",
};

/* A difference in general, and the published changes it may be judged by. */
#define CHANGES_MAX 5
struct difference_rule {
	struct compare_rule rule;
	enum change changes[CHANGES_MAX];
	size_t changes_n;
};
/* clang-format off: one to a paragraph */
static const struct difference_rule differences[DIFF_COUNT] = {
    [DIFF_LESS_ACID] = {{"less-acid", "Never less vinegar, lemon or lime juice than was tested.",
			 "Use the formula's amount."},
			{CHANGE_LESS_ACID},
			1},
    [DIFF_MORE_ACID] = {{"more-acid", "A larger share of acid than was tested.",
			 "Keep the formula's proportions."},
			{CHANGE_PROPORTIONS, CHANGE_OWN_RECIPE},
			2},
    [DIFF_ACID_CHANGED] = {{"acid-changed", "Another acid than was tested.",
			    "Use the acid that the formula names."},
			   {CHANGE_ACID_SWAPPED, CHANGE_CITRIC},
			   2},
    [DIFF_FRESH_JUICE] = {{"fresh-juice", "The acid of fresh fruit varies from fruit to fruit.",
			   "Use bottled juice, and write 'bottled' in the recipe."},
			  {CHANGE_FRESH_JUICE},
			  1},
    [DIFF_JUICE_FOR_VINEGAR] = {{"juice-for-vinegar",
				 "Bottled lemon or lime juice may take the place of vinegar, equal "
				 "measure, where the food "
				 "says so.",
				 ""},
				{CHANGE_JUICE_FOR_VINEGAR},
				1},
    [DIFF_VINEGAR_KIND] =
	{{"vinegar-kind", "Only white and cider vinegar are published as standing for each other.",
	  "Use white distilled or cider vinegar of 5 %."},
	 {CHANGE_VINEGAR_KIND},
	 1},
    [DIFF_VINEGAR_DILUTED] =
	{{"vinegar-diluted", "Vinegar may not be thinned beyond the formula.",
	  "Use it undiluted, and write water on a line of its own if the formula has any."},
	 {CHANGE_DILUTED},
	 1},
    [DIFF_MORE_LOW_ACID] = {{"more-low-acid",
			     "Low-acid food takes up the acid; no more of it than was tested.",
			     "Use the formula's amount, or less."},
			    {CHANGE_MORE_VEGETABLES},
			    1},
    [DIFF_LOW_ACID_ADDED] = {{"low-acid-added", "A low-acid food that the formula does not have.",
			      "Leave it out; add it when you open the jar."},
			     {CHANGE_OTHER_VEGETABLE},
			     1},
    [DIFF_LESS_LOW_ACID] = {{"less-low-acid",
			     "Less of a low-acid vegetable, with nothing in its place.",
			     "Use the formula's amount."},
			    {CHANGE_LESS_VEGETABLE, CHANGE_OWN_RECIPE},
			    2},
    [DIFF_MORE_PEPPERS] = {{"more-peppers",
			    "Peppers are low-acid; no more of them in all than was tested.",
			    "Use the formula's amount of peppers in all, or less."},
			   {CHANGE_MORE_PEPPERS},
			   1},
    [DIFF_PEPPER_FOR_PEPPER] = {{"pepper-for-pepper",
				 "Peppers may stand for one another, the total being no more.", ""},
				{CHANGE_PEPPER_FOR_PEPPER},
				1},
    [DIFF_PROPORTIONS] = {{"proportions", "Another share of the main produce than was tested.",
			   "Keep the formula's proportions."},
			  {CHANGE_PROPORTIONS, CHANGE_OWN_RECIPE},
			  2},
    [DIFF_AMOUNT_CHANGED] = {{"amount-changed",
			      "Another share of an ingredient that no publication lets vary.",
			      "Keep the formula's proportions."},
			     {CHANGE_PROPORTIONS, CHANGE_OWN_RECIPE},
			     2},
    [DIFF_LEFT_OUT] = {{"left-out", "The formula has it, the recipe does not.",
			"Put it in, in the formula's amount."},
		       {CHANGE_OWN_RECIPE},
		       1},
    [DIFF_NOT_IN_FORMULA] =
	{{"not-in-formula",
	  "The formula does not have it, and nothing published says that it may be added.",
	  "Leave it out."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_NO_FORMULA] = {{"no-formula", "No tested formula has anything in common with the recipe.",
			  "Keep it in the refrigerator or the freezer."},
			 {CHANGE_OWN_RECIPE},
			 1},
    [DIFF_SEASONING] = {{"seasoning",
			 "Another share of a fresh seasoning; only dried spices may vary.",
			 "Keep the formula's proportions."},
			{CHANGE_PROPORTIONS, CHANGE_OWN_RECIPE},
			2},
    [DIFF_LESS_SEASONING] = {{"less-seasoning",
			      "A fresh seasoning left out, which no publication says it may be.",
			      "Put it in, in the formula's amount."},
			     {CHANGE_OWN_RECIPE},
			     1},
    [DIFF_DRIED_SPICE] =
	{{"dried-spice",
	  "Dried spices and herbs may be changed in kind and amount. The publication says so of "
	  "salsa; elsewhere the answer says that.",
	  ""},
	 {CHANGE_SPICE_KIND, CHANGE_SPICE_AMOUNT},
	 2},
    [DIFF_SPICE_MUCH] =
	{{"spice-much",
	  "More of a dried spice than seasons: a thick mixture lets the heat through too slowly. "
	  "The "
	  "limit is this program's, not published: a quarter cup to the formula as printed.",
	  "Use less, or the formula's amount."},
	 {CHANGE_PRESERVING},
	 1},
    [DIFF_HERB_UNSURE] =
	{{"herb-unsure",
	  "Dried herbs and spices may change, fresh ones may not; the line does not say which.",
	  "Write 'dried' or 'ground' if it is; leave a fresh one out."},
	 {CHANGE_SPICE_KIND},
	 1},
    [DIFF_MORE_SALT] = {{"more-salt", "More salt than was tested: less is published, more is not.",
			 "Use the formula's amount, or less where the food may have less."},
			{CHANGE_OWN_RECIPE, CHANGE_SALT_FERMENTED},
			2},
    [DIFF_LESS_SALT] = {{"less-salt", "Less salt than was tested, which only some foods may have.",
			 "Use the formula's amount."},
			{CHANGE_SALT_PICKLE, CHANGE_SALT_SALSA, CHANGE_SALT_PLAIN,
			 CHANGE_OWN_RECIPE},
			4},
    [DIFF_SALT_FERMENTED] = {{"salt-fermented",
			      "Fermenting needs the very share and kind of salt that was tested.",
			      "Use the formula's amount of canning or pickling salt."},
			     {CHANGE_SALT_FERMENTED},
			     1},
    [DIFF_MORE_SUGAR] = {{"more-sugar",
			  "More sugar than was tested, which only some foods may have.",
			  "Use the formula's amount."},
			 {CHANGE_SUGAR_MORE, CHANGE_OWN_RECIPE},
			 2},
    [DIFF_LESS_SUGAR] = {{"less-sugar",
			  "Less sugar than was tested, which only some foods may have.",
			  "Use the formula's amount."},
			 {CHANGE_SUGAR_FRUIT, CHANGE_SUGAR_PICKLE, CHANGE_SUGAR_SALSA,
			  CHANGE_SUGAR_JAM, CHANGE_OWN_RECIPE},
			 5},
    [DIFF_WATER] = {{"water", "Another share of water than was tested.",
		     "Use the formula's amount."},
		    {CHANGE_PROPORTIONS, CHANGE_OWN_RECIPE},
		    2},
    [DIFF_MORE_WATER] = {{"more-water", "Water thins what keeps the food.",
			  "Use no more than the formula has."},
			 {CHANGE_DILUTED, CHANGE_OWN_RECIPE},
			 2},
    [DIFF_THICKENER] = {{"thickener", "Another share of a thickener than was tested.",
			 "Use the formula's amount."},
			{CHANGE_PROPORTIONS, CHANGE_OWN_RECIPE},
			2},
    [DIFF_MORE_THICKENER] = {{"more-thickener", "Starch only in the amount printed.",
			      "Use the formula's amount."},
			     {CHANGE_STARCH_PRINTED},
			     1},
    [DIFF_THICKENER_ADDED] = {{"thickener-added", "Heat gets through a thickened jar too slowly.",
			       "Leave it out; thicken when you open the jar."},
			      {CHANGE_THICKENER},
			      1},
    [DIFF_MEAT_ADDED] = {{"meat-added", "Meat, fish or egg that the formula does not have.",
			  "Leave it out; add it when you open the jar."},
			 {CHANGE_MEAT},
			 1},
    [DIFF_GRAIN_ADDED] = {{"grain-added", "Grain and pasta swell and keep the heat out.",
			   "Leave it out; add it when you open the jar."},
			  {CHANGE_GRAIN_IN_MEAT},
			  1},
    [DIFF_DAIRY_ADDED] = {{"dairy-added", "Dairy that the formula does not have.",
			   "Leave it out; add it when you open the jar."},
			  {CHANGE_PRESERVING},
			  1},
    [DIFF_FAT_ADDED] = {{"fat-added", "Fat keeps the heat from where it is needed.",
			 "Leave it out; add it when you open the jar."},
			{CHANGE_FAT_IN_MEAT},
			1},
    [DIFF_TOMATO_PASTE] = {{"tomato-paste", "Tomato paste may be added to thicken a salsa.", ""},
			   {CHANGE_TOMATO_PASTE},
			   1},
    [DIFF_PUREED] = {{"pureed", "Pureed where the formula has pieces: too dense for the heat.",
		      "Cut it as the formula does; mash it when you open the jar."},
		     {CHANGE_PUREE},
		     1},
    [DIFF_FORM_CHANGED] = {{"form-changed",
			    "Dried, cooked, preserved or cut finer, which the formula's is not.",
			    "Prepare it as the formula says."},
			   {CHANGE_OWN_RECIPE},
			   1},
    [DIFF_WHICH_ONE] = {{"which-one", "The line leaves several things to choose from.",
			 "Name one."},
			{CHANGE_OWN_RECIPE},
			1},
    [DIFF_LINE_UNSURE] = {{"line-unsure", "The line seems to name more than one thing.",
			   "Write each ingredient on a line of its own, with its amount."},
			  {CHANGE_OWN_RECIPE},
			  1},
    [DIFF_WORD_UNKNOWN] =
	{{"word-unknown",
	  "A word of the line is not known; it may be another food, or change this one.",
	  "Write the amount, the food and how it is cut, and any other food on its own line."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_METHOD_UNSURE] =
	{{"method-unsure", "The recipe's method seems to add, thicken or puree something.",
	  "Move ingredients above the method's heading; make it by the formula's own steps."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_OPTIONAL_LINE] = {{"optional-line", "The recipe leaves open whether it goes in.",
			     "Decide, and strike out 'optional' or the line."},
			    {CHANGE_OWN_RECIPE},
			    1},
    [DIFF_TWO_AMOUNTS] = {{"two-amounts", "Two amounts on one line that are not the same.",
			   "Strike one out."},
			  {CHANGE_OWN_RECIPE},
			  1},
    [DIFF_UNKNOWN_MEASURE] =
	{{"unknown-measure", "A measure whose size no published table gives.",
	  "Measure what yours holds, and write that in cups, mL or by weight."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_AMOUNT_MISSING] = {{"amount-missing", "No amount, where one is needed.", "Say how much."},
			     {CHANGE_OWN_RECIPE},
			     1},
    [DIFF_AMOUNT_UNSURE] =
	{{"amount-unsure",
	  "An amount that cannot be told surely enough to hold it against the formula's.",
	  "Measure it as the formula does."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_AMOUNT_NOT_PRINTED] =
	{{"amount-not-printed", "The tables have no amount of the formula's to hold yours against.",
	  "Look it up in the publication."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_SCALE_UNKNOWN] =
	{{"scale-unknown",
	  "Everything is held against the main produce; how much there is cannot be told.",
	  "Weigh it, or give it in the formula's measure."},
	 {CHANGE_OWN_RECIPE},
	 1},
    [DIFF_BATCH_SIZE] = {{"batch-size", "A jam or jelly batch larger than the formula sets badly.",
			  "Make it in batches of the formula's size."},
			 {CHANGE_DOUBLED},
			 1},
};
/* clang-format on */

const struct compare_rule *difference_rule(enum difference difference)
{
	return &differences[difference].rule;
}

const struct compare_rule *compare_rule_at(size_t i)
{
	return i < DIFF_COUNT ? &differences[i].rule : NULL;
}

static const struct change_rule_row *row_of(const struct reference_tables *tables,
					    enum change change)
{
	size_t length = strlen(changes[change]);
	for (size_t r = 0; r < tables->change_rule_n; r++)
		if (strncmp(tables->change_rule[r].change, changes[change], length) == 0)
			return &tables->change_rule[r];
	return NULL;
}

const struct change_rule_row *compare_rule_published(const struct reference_tables *tables,
						     const struct compare_rule *rule, size_t i)
{
	for (size_t d = 0; d < DIFF_COUNT; d++)
		if (&differences[d].rule == rule)
			return i < differences[d].changes_n
				   ? row_of(tables, differences[d].changes[i])
				   : NULL;
	return NULL;
}

bool change_rules_find(const struct reference_tables *tables,
		       const struct change_rule_row *out[CHANGE_COUNT], struct error *err)
{
	for (int i = 0; i < CHANGE_COUNT; i++) {
		out[i] = row_of(tables, (enum change)i);
		if (!out[i])
			return error_failed(
			    err,
			    "change rules: none begins with \"%s\"; the tables this "
			    "program was built with are incomplete, build it anew",
			    changes[i]);
	}
	return true;
}

const char *compare_keeping(const struct formula_set *set, const struct citation **from)
{
	const struct change_rule_row *row = set->rules[CHANGE_OWN_RECIPE];
	*from = &row->from;
	return row->condition;
}
