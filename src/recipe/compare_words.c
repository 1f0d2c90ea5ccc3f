/* What the words of an ingredient say it is. */
#include <string.h>

#include "compare_internal.h"
#include "jarwright/words.h"

/*
 * Words are found by these lists and never guessed at; a word in none of them names
 * something of its own. General knowledge: they find, and in doubt nothing matches.
 */
struct word_list {
	unsigned is;
	const char *words;
};
static const struct word_list lists[] = {
    {IS_VINEGAR, "|vinegar|"},
    {IS_CITRIC, "|citric|"},
    {IS_STARCH, "|flour|cornflour|cornstarch|starch|tapioca|arrowroot|thickener|gelatin|gelatine|"
		"agar|gum|roux|"},
    {IS_FAT, "|oil|butter|margarine|lard|suet|ghee|shortening|dripping|fat|mayonnaise|pesto|"
	     "tahini|hummus|nut|peanut|almond|walnut|pecan|cashew|"},
    {IS_DAIRY, "|milk|cream|cheese|yogurt|yoghurt|buttermilk|ricotta|feta|mozzarella|parmesan|"
	       "mascarpone|kefir|creme|paneer|"},
    {IS_GRAIN, "|rice|barley|oat|oatmeal|bread|breadcrumb|cracker|quinoa|wheat|couscous|pasta|"
	       "noodle|macaroni|spaghetti|vermicelli|bulgur|"},
    {IS_MEAT, "|beef|pork|chicken|turkey|bacon|ham|sausage|lamb|mutton|venison|fish|salmon|tuna|"
	      "egg|yolk|shrimp|prawn|meat|poultry|anchovy|seafood|chorizo|"},
    {IS_VEGETABLE,
     "|onion|shallot|leek|scallion|garlic|celery|carrot|corn|sweetcorn|bean|pea|mushroom|cabbage|"
     "cauliflower|broccoli|cucumber|zucchini|squash|pumpkin|okra|beet|turnip|parsnip|potato|"
     "eggplant|asparagus|lentil|chickpea|garbanzo|avocado|olive|artichoke|kohlrabi|radish|"
     "rutabaga|sprout|spinach|kale|jicama|chayote|marrow|swede|celeriac|"
     "courgette|aubergine|tofu|tempeh|fennel|yam|kumara|cassava|plantain|taro|eddoe|fiddlehead|"
     "bamboo|edamame|hominy|nopale|"},
};
static const char pepper_words[] = "|pepper|chile|chili|chilli|chilly|jalapeno|serrano|habanero|"
				   "poblano|anaheim|pimiento|pimento|capsicum|";
static const char dry_words[] = "|dried|dry|ground|powder|powdered|flake|seed|peppercorn|";
static const char spice_words[] =
    "|turmeric|cinnamon|allspice|nutmeg|mace|paprika|peppercorn|cardamom|cumin|saffron|"
    "fenugreek|anise|spice|";
/* Spices only when they are dry too. */
static const char herb_words[] =
    "|mustard|ginger|coriander|celery|dill|oregano|basil|thyme|rosemary|marjoram|sage|bay|"
    "fennel|caraway|parsley|tarragon|savory|pepper|chile|chili|chilli|chilly|poppy|curry|cayenne|";
/* May be missing on one side without its being another thing. */
static const char neutral_words[] =
    "|fresh|ripe|firm|large|medium|small|tender|organic|raw|extra|plain|good|best|of|the|a|"
    "washed|canning|pickling|granulated|bunch|head|stick|clove|peeled|chopped|sliced|diced|"
    "minced|finely|thinly|coarsely|grated|shredded|trimmed|cored|seeded|pitted|packed|bottled|"
    "bought|commercially|commercial|cold|unsalted|acidity|at|least|strength|";
/*
 * May be left unsaid where the formula says them. A cook's own counts: white peaches are
 * another fruit; only an onion is an onion in every colour.
 */
static const char colour_words[] = "|red|yellow|white|brown|";
/* Each of these sorts is one only if the name has no words but these, neutral ones and colours. */
static const char vinegar_only[] =
    "|vinegar|cider|apple|distilled|malt|wine|rice|balsamic|sherry|champagne|spirit|cleaning|home|"
    "made|homemade|coconut|cane|date|fruit|raspberry|flavoured|flavored|seasoned|or|pure|";
static const char salt_only[] = "|salt|kosher|sea|table|iodized|iodised|fine|coarse|flake|non|pure|"
				"cooking|preserving|or|";
static const char sugar_only[] =
    "|sugar|light|dark|golden|caster|castor|superfine|fine|cane|demerara|muscovado|turbinado|"
    "preserving|soft|firmly|beet|";
static const char juice_only[] = "|lemon|lime|juice|freshly|squeezed|or|";
static const char pepper_only[] =
    "|pepper|chile|chili|chilli|chilly|jalapeno|serrano|habanero|poblano|anaheim|pimiento|pimento|"
    "capsicum|bell|sweet|hot|mild|green|orange|long|banana|hungarian|wax|cubanelle|fingerhot|thai|"
    "cayenne|padron|and|or|";
/* A dried spice has these beside its name and no others. */
static const char spice_form_words[] =
    "|whole|mixed|leaf|leave|hot|sweet|crushed|star|root|broken|black|white|red|yellow|brown|and|";
static const char water_words[] = "|water|ice|cold|hot|boiling|fresh|filtered|cool|tap|boiled|";
static const char puree_words[] =
    "|puree|pureed|mashed|blended|liquidised|liquidized|smooth|blitzed|"
    "processor|blender|juiced|";
static const char fine_words[] = "|ground|crushed|sieved|strained|pulp|blended|mashed|grated|"
				 "milled|pulped|";
static const char changed_words[] =
    "|dried|smoked|fried|roasted|candied|pickled|fermented|caramelised|caramelized|canned|tinned|"
    "frozen|sundried|";
static const char soak_words[] = "|drained|rinsed|soak|";

uint32_t word_hash(const char *text, size_t length)
{
	uint32_t h = 2166136261U; /* FNV-1a */
	for (size_t i = 0; i < length; i++)
		h = (h ^ (unsigned char)text[i]) * 16777619U;
	return h;
}

/* Two words for one thing in different countries. */
const char *word_at_home(const char *word)
{
	static const char *const pairs[][2] = {
	    {"courgette", "zucchini"}, {"beetroot", "beet"}, {"aubergine", "eggplant"},
	    {"sultana", "raisin"},     {"maize", "corn"},    {"chilli", "chile"},
	    {"chili", "chile"},        {"chilly", "chile"},  {"garbanzo", "chickpea"},
	    {"neep", "rutabaga"},
	};
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
		if (strcmp(pairs[i][0], word) == 0)
			return pairs[i][1];
	return word;
}

uint32_t item_words_head(const struct item_words *words)
{
	for (unsigned i = words->n; i-- > 0;)
		if (!(words->neutral >> i & 1U))
			return words->word[i];
	return words->n ? words->word[words->n - 1] : 0;
}

/* What the words come to as a whole: marks gathered word by word. */
struct gathered {
	/* True until a word says otherwise. */
	bool only_vinegar, only_salt, only_sugar, only_juice, only_pepper, all_water, all_spice;
	/* False until a word says so. */
	bool pepper, flaked, dry, spice, herb, fresh, seed, celery, powder, salt, sugar, sweet,
	    lemon, juice;
	bool water, black, garlic, clove, ginger, paste, tomato, wine, odd;
};

/* A word that says nothing of what the thing is. */
static bool is_plain(const char *word, size_t length)
{
	return word_in_list(neutral_words, word, length) ||
	       word_in_list(colour_words, word, length) || (*word >= '0' && *word <= '9');
}

static void gather_only(const char *word, size_t length, struct gathered *g)
{
	const bool plain = is_plain(word, length);
	g->only_vinegar &= plain || word_in_list(vinegar_only, word, length);
	g->only_salt &= plain || word_in_list(salt_only, word, length);
	g->only_sugar &= plain || word_in_list(sugar_only, word, length);
	g->only_juice &= plain || word_in_list(juice_only, word, length);
	g->only_pepper &= plain || word_in_list(pepper_only, word, length);
	g->all_water &= word_in_list(water_words, word, length);
	g->all_spice &= plain || word_in_list(spice_words, word, length) ||
			word_in_list(herb_words, word, length) ||
			word_in_list(dry_words, word, length) ||
			word_in_list(spice_form_words, word, length);
}

static void gather_word(const char *word, size_t length, struct gathered *g, struct item_words *out)
{
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++)
		if (word_in_list(lists[i].words, word, length))
			out->is |= lists[i].is;
	g->pepper |= word_in_list(pepper_words, word, length);
	g->dry |= word_in_list(dry_words, word, length);
	g->spice |= word_in_list(spice_words, word, length);
	g->herb |= word_in_list(herb_words, word, length);
	g->salt |= word_in_list("|salt|", word, length);
	g->sugar |= word_in_list("|sugar|", word, length);
	g->sweet |=
	    word_in_list("|honey|syrup|molasse|molasses|treacle|sucralose|sweetener|stevia|agave|",
			 word, length);
	g->lemon |= word_in_list("|lemon|lime|", word, length);
	g->juice |= word_in_list("|juice|", word, length);
	g->water |= word_in_list("|water|ice|", word, length);
	g->black |= word_in_list("|black|cayenne|peppercorn|", word, length);
	g->fresh |= word_in_list("|fresh|", word, length);
	g->seed |= word_in_list("|seed|", word, length);
	g->celery |= word_in_list("|celery|", word, length);
	g->powder |= word_in_list("|dried|dry|powder|powdered|flake|", word, length);
	g->flaked |= word_in_list("|powder|powdered|flake|", word, length);
	g->garlic |= word_in_list("|garlic|", word, length);
	g->clove |= word_in_list("|clove|", word, length);
	g->ginger |= word_in_list("|ginger|mustard|coriander|", word, length);
	g->paste |= word_in_list("|paste|", word, length);
	g->tomato |= word_in_list("|tomato|", word, length);
	g->wine |= word_in_list("|wine|sherry|champagne|balsamic|", word, length);
	g->odd |=
	    word_in_list("|malt|rice|coconut|fruit|raspberry|spirit|cleaning|balsamic|flavoured|"
			 "flavored|seasoned|cane|date|",
			 word, length);
	if (word_in_list("|or|", word, length))
		out->said |= SAID_OR;
	if (word_in_list("|home|homemade|", word, length))
		out->said |= SAID_HOME_MADE;
}

/*
 * Dried through and through. Fresh peppers are ground too, whole dried ones swell to food
 * again, and celery is dry as seed.
 */
static bool is_dry_spice(const struct gathered *g)
{
	if (!g->all_spice || g->fresh || g->garlic)
		return false;
	if (g->spice || g->clove)
		return true;
	if (g->celery)
		return g->seed;
	if (g->pepper)
		return g->flaked || g->black;
	return g->herb && g->dry;
}

static void conclude(const struct gathered *g, struct item_words *out)
{
	const uint32_t head = item_words_head(out);
	if (!g->only_vinegar)
		out->is &= ~(unsigned)IS_VINEGAR;
	if (out->is & IS_VINEGAR)
		out->is = IS_VINEGAR; /* rice vinegar is no grain */
	if (g->lemon && g->juice && g->only_juice)
		out->is |= IS_CITRUS_JUICE;
	if (g->salt && g->only_salt)
		out->is |= IS_SALT;
	if (g->sugar && g->only_sugar)
		out->is = IS_SUGAR; /* beet sugar is no vegetable */
	if (g->sweet)
		out->is |= IS_SWEETENER;
	if (g->water && g->all_water)
		out->is |= IS_WATER;
	if (is_dry_spice(g))
		out->is = (out->is & ~(unsigned)IS_VEGETABLE) | IS_DRY_SPICE;
	else if (g->all_spice && !g->fresh && !g->garlic && (g->herb || g->pepper))
		out->is |= IS_MAYBE_DRY;
	if (g->pepper && !(out->is & IS_DRY_SPICE))
		out->is |= g->only_pepper ? IS_PEPPER : IS_VEGETABLE;
	if (g->paste && g->tomato && head == word_hash("paste", 5))
		out->is |= IS_TOMATO_PASTE;
	if (g->wine)
		out->said |= SAID_WINE;
	if (g->odd)
		out->said |= SAID_ODD_VINEGAR;
	if (!(out->is & IS_VINEGAR))
		out->said &= ~(unsigned)(SAID_WINE | SAID_ODD_VINEGAR | SAID_HOME_MADE);
}

/* Marks in the preparation, the note, and the name alike. */
static void said_word(const char *word, size_t length, bool in_note, struct item_words *out)
{
	if (word_in_list("|bottled|", word, length))
		out->said |= SAID_BOTTLED;
	if (word_in_list("|optional|", word, length))
		out->said |= SAID_OPTIONAL;
	if (word_in_list(puree_words, word, length))
		out->said |= SAID_PUREED | SAID_FINE;
	if (word_in_list(fine_words, word, length))
		out->said |= SAID_FINE;
	if (word_in_list("|fresh|squeezed|freshly|", word, length) && (out->is & IS_CITRUS_JUICE))
		out->said |= SAID_FRESH_JUICE;
	if (word_in_list("|homemade|home|", word, length) && (out->is & IS_VINEGAR))
		out->said |= SAID_HOME_MADE;
	if (word_in_list("|wine|", word, length) && (out->is & IS_VINEGAR))
		out->said |= SAID_WINE;
	if (word_in_list("|heaped|heaping|scant|generous|rounded|", word, length))
		out->said |= SAID_EDGE;
	if (!in_note && word_in_list(changed_words, word, length))
		out->said |= SAID_CHANGED;
	if (word_in_list(soak_words, word, length))
		out->said |= SAID_SOAK;
}

/* Walks the words of folded text. */
static bool next_word(char **at, char **word, size_t *length)
{
	if (**at == '\0')
		return false;
	*word = *at;
	*length = strcspn(*at, " ");
	*at += *length;
	if (**at == ' ')
		*(*at)++ = '\0';
	return true;
}

/* Folds what fits; what does not is cut, and said to be too long. */
static bool fold_cut(const char *text, char folded[WORDS_SIZE])
{
	folded[0] = '\0';
	if (*text == '\0')
		return true;
	return words_fold(text, strlen(text), folded);
}

bool word_is_food(const char *folded)
{
	const size_t length = strlen(folded);
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++)
		if (word_in_list(lists[i].words, folded, length))
			return true;
	return word_in_list(pepper_words, folded, length);
}

static void said_text(const char *text, bool in_note, struct item_words *out)
{
	char word[WORDS_SIZE];
	while (text_next_word(&text, word))
		said_word(word, strlen(word), in_note, out);
}

/* The text without what stands in parentheses. */
static void without_parentheses(const char *text, char *out, size_t size)
{
	size_t n = 0;
	int depth = 0;
	for (; *text && n + 1 < size; text++) {
		if (*text == '(')
			depth++;
		if (depth == 0)
			out[n++] = *text;
		if (*text == ')' && depth > 0)
			depth--;
	}
	out[n] = '\0';
}

void item_words_read(const char *ingredient, const char *preparation, const char *note,
		     struct item_words *out)
{
	char name[INGREDIENT_FIELD_SIZE], folded[WORDS_SIZE] = "", *at = folded, *word;
	struct gathered g = {true, true, true, true, true, true, true, .water = false};
	uint32_t forms = 0; /* bit i: word i tells the form that a spice comes in */
	size_t length;
	*out = (struct item_words){0};
	without_parentheses(ingredient, name, sizeof name);
	if (!fold_cut(name, folded))
		out->said |= SAID_TOO_LONG;
	while (next_word(&at, &word, &length)) {
		gather_word(word, length, &g, out);
		gather_only(word, length, &g);
		if (out->n == ITEM_WORDS_MAX) {
			out->said |= SAID_TOO_LONG;
			continue;
		}
		const char *same = word_at_home(word);
		if (word_in_list(neutral_words, word, length) || (*word >= '0' && *word <= '9'))
			out->neutral |= 1U << out->n;
		if (word_in_list(colour_words, word, length))
			out->colour |= 1U << out->n;
		if (word_in_list("|ground|dried|dry|whole|powdered|", word, length))
			forms |= 1U << out->n;
		out->word[out->n++] = word_hash(same, strlen(same));
	}
	g.dry |= g.ginger && text_has_word(preparation, "|ground|dried|powdered|");
	conclude(&g, out);
	if (out->is & IS_DRY_SPICE)
		out->neutral |= forms;
	said_text(name, false, out);
	said_text(preparation, false, out);
	said_text(note, true, out);
	if (fold_cut(preparation, folded))
		out->preparation = word_hash(folded, strlen(folded));
}
