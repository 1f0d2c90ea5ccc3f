/* recipe: the table of its subcommands, and which options go with which. */
#include "recipe.h"
#include "subcommand.h"

static const struct option_spec options[] = {
    {"measures", "SYSTEM",
     "whose cups and pints: us, imperial, canada, australia, new-zealand, "
     "metric"},
    {"in", "SYSTEMS", "measures to show side by side: us,imperial,metric,au"},
    {"scale", "FACTOR", "multiply every amount: 1/2, 3"},
    {"by", "FACTOR", "scale: multiply every amount: 1/2, 3"},
    {"jars", "N", "scale: jars wanted, with --jar and --makes"},
    {"jar", "JAR", "half-pint, pint, quart ... or a volume with its unit: 500mL, 1L"},
    {"makes", "AMOUNT", "what the recipe makes as written: '4 pints', 2L"},
    {"have", "WEIGHT", "scale: produce at hand, with its unit: 1.7kg, 4lb"},
    {"of", "WORDS", "scale: which line --have weighs, if not the heaviest produce"},
    {"cooked", "VOLUME", "yield: the cooked volume, as measured: '3 pints', 1.6L"},
    {"like", "FOOD", "yield: a food with a published density that the cooked mix is like"},
    {"reduced", "SHARE", "yield: the share left after cooking down: 60%"},
    {"formula", "FOOD",
     "yield: by what this tested formula is published to make, in proportion; if "
     "not said, the one the recipe counts as"},
    {"vinegar", "STRENGTH", "acidity on the label (5%), or: homemade, unknown, wine"},
    {"as", "text|json|jsonld",
     "export: as typed, with exact amounts, or for web pages and for import"},
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright recipe add 'plum chutney' chutney.txt --measures imperial",
     "keeps a recipe, one ingredient a line"},
    {"jarwright recipe import 'green relish' page.html --measures us", "out of a saved web page"},
    {"jarwright recipe show 'plum chutney' --in us,imperial,metric,au --scale 1/2",
     "half of it in everybody's measures"},
    {"jarwright recipe scale 'plum chutney' --have 1.7kg", "for the plums at hand"},
    {"jarwright recipe compare 'plum chutney' --vinegar 5%",
     "held against the tested formulas, with a way to make it safe"},
    EXAMPLES_END,
};

static const struct subcommand subcommands[] = {
    {"add", "NAME FILE|-", 3, 3, {"measures", "json"}, recipe_add_command},
    {"import", "NAME FILE|-", 3, 3, {"measures", "json"}, recipe_import_command},
    {"list", "", 1, 1, {"json"}, recipe_list_command},
    {"show", "NAME", 2, 2, {"in", "scale", "json"}, recipe_show_command},
    {"scale",
     "NAME",
     2,
     2,
     {"by", "jars", "jar", "makes", "have", "of", "in", "json"},
     recipe_scale_command},
    {"yield",
     "NAME",
     2,
     2,
     {"scale", "cooked", "like", "reduced", "formula", "jar", "json"},
     recipe_yield_command},
    {"compare", "NAME [FORMULA]", 2, 3, {"vinegar", "json"}, recipe_compare_command},
    {"acid", "NAME", 2, 2, {"vinegar", "json"}, recipe_acid_command},
    {"export", "NAME", 2, 2, {"as", "in"}, recipe_export_command},
    {"remove", "NAME", 2, 2, {"json"}, recipe_remove_command},
    {"parse", "-", 2, 2, {"json"}, recipe_parse_command},
    {NULL, NULL, 0, 0, {NULL}, NULL},
};

static int run_recipe(struct invocation *inv)
{
	return run_subcommand(inv, subcommands);
}

const struct command command_recipe = {
    .name = "recipe",
    .synopsis = "add|import|list|show|scale|yield|compare|acid|export|remove|parse [NAME] [FILE|-]",
    .summary = "your own recipes: any country's measures, scaled, held against tested formulas",
    .description =
	"Keeps recipes as typed, one ingredient a line, in the measures you say; shows them in "
	"any country's, at any scale. A recipe is no tested process: compare holds it against the "
	"tested formulas, with every difference and its source, and the smallest changes that "
	"bring it inside one. compare exits with 0 for tested, 3 refused, 4 untested, 5 unclear. "
	"acid estimates the pH of the mixture; it decides nothing.",
    .options = options,
    .examples = examples,
    .run = run_recipe,
};
