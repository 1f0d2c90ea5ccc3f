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
    {IS_FAT, "|oil|butter|margarine|lard|suet|ghee|shortening|dripping|fat|mayonnaise|"},
    {IS_DAIRY, "|milk|cream|cheese|yogurt|yoghurt|buttermilk|"},
    {IS_GRAIN, "|rice|barley|oat|oatmeal|bread|breadcrumb|cracker|quinoa|wheat|couscous|pasta|"
	       "noodle|macaroni|spaghetti|vermicelli|bulgur|"},
    {IS_MEAT, "|beef|pork|chicken|turkey|bacon|ham|sausage|lamb|mutton|venison|fish|salmon|tuna|"
	      "egg|yolk|shrimp|prawn|meat|poultry|anchovy|seafood|chorizo|"},
    {IS_VEGETABLE,
     "|onion|shallot|leek|scallion|garlic|celery|carrot|corn|sweetcorn|bean|pea|mushroom|cabbage|"
     "cauliflower|broccoli|cucumber|zucchini|squash|pumpkin|okra|beet|turnip|parsnip|potato|"
     "eggplant|asparagus|lentil|chickpea|garbanzo|avocado|olive|artichoke|kohlrabi|radish|"
     "rutabaga|sprout|spinach|kale|jicama|chayote|marrow|swede|celeriac|"},
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
    "cayenne|padron|ancho|and|or|";
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

static bool listed(const char *list, const char *word, size_t length)
{
	for (const char *at = list; (at = strstr(at, word)) != NULL; at++)
		if (at[-1] == '|' && at[length] == '|')
			return true;
	return false;
}

static uint32_t hash(const char *text, size_t length)
{
	uint32_t h = 2166136261U; /* FNV-1a */
	for (size_t i = 0; i < length; i++)
		h = (h ^ (unsigned char)text[i]) * 16777619U;
	return h;
}

/* Two words for one thing in different countries. */
static const char *same_word(const char *word)
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

/* The last word that is not neutral names the thing: tomato paste is no paste tomato. */
static uint32_t head_word(const struct item_words *words)
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
	return listed(neutral_words, word, length) || listed(colour_words, word, length) ||
	       (*word >= '0' && *word <= '9');
}

static void gather_only(const char *word, size_t length, struct gathered *g)
{
	const bool plain = is_plain(word, length);
	g->only_vinegar &= plain || listed(vinegar_only, word, length);
	g->only_salt &= plain || listed(salt_only, word, length);
	g->only_sugar &= plain || listed(sugar_only, word, length);
	g->only_juice &= plain || listed(juice_only, word, length);
	g->only_pepper &= plain || listed(pepper_only, word, length);
	g->all_water &= listed(water_words, word, length);
	g->all_spice &= plain || listed(spice_words, word, length) ||
			listed(herb_words, word, length) || listed(dry_words, word, length) ||
			listed(spice_form_words, word, length);
}

static void gather_word(const char *word, size_t length, struct gathered *g, struct item_words *out)
{
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++)
		if (listed(lists[i].words, word, length))
			out->is |= lists[i].is;
	g->pepper |= listed(pepper_words, word, length);
	g->dry |= listed(dry_words, word, length);
	g->spice |= listed(spice_words, word, length);
	g->herb |= listed(herb_words, word, length);
	g->salt |= listed("|salt|", word, length);
	g->sugar |= listed("|sugar|", word, length);
	g->sweet |=
	    listed("|honey|syrup|molasse|molasses|treacle|sucralose|sweetener|stevia|agave|", word,
		   length);
	g->lemon |= listed("|lemon|lime|", word, length);
	g->juice |= listed("|juice|", word, length);
	g->water |= listed("|water|ice|", word, length);
	g->black |= listed("|black|cayenne|peppercorn|", word, length);
	g->fresh |= listed("|fresh|", word, length);
	g->seed |= listed("|seed|", word, length);
	g->celery |= listed("|celery|", word, length);
	g->powder |= listed("|dried|dry|powder|powdered|flake|", word, length);
	g->flaked |= listed("|powder|powdered|flake|", word, length);
	g->garlic |= listed("|garlic|", word, length);
	g->clove |= listed("|clove|", word, length);
	g->ginger |= listed("|ginger|mustard|coriander|", word, length);
	g->paste |= listed("|paste|", word, length);
	g->tomato |= listed("|tomato|", word, length);
	g->wine |= listed("|wine|sherry|champagne|balsamic|", word, length);
	g->odd |= listed("|malt|rice|coconut|fruit|raspberry|spirit|cleaning|balsamic|flavoured|"
			 "flavored|seasoned|cane|date|",
			 word, length);
	if (listed("|or|", word, length))
		out->said |= SAID_OR;
	if (listed("|home|homemade|", word, length))
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
	const uint32_t head = head_word(out);
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
	if (g->paste && g->tomato && head == hash("paste", 5))
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
	if (listed("|bottled|", word, length))
		out->said |= SAID_BOTTLED;
	if (listed("|optional|", word, length))
		out->said |= SAID_OPTIONAL;
	if (listed(puree_words, word, length))
		out->said |= SAID_PUREED | SAID_FINE;
	if (listed(fine_words, word, length))
		out->said |= SAID_FINE;
	if (listed("|fresh|squeezed|freshly|", word, length) && (out->is & IS_CITRUS_JUICE))
		out->said |= SAID_FRESH_JUICE;
	if (listed("|homemade|home|", word, length) && (out->is & IS_VINEGAR))
		out->said |= SAID_HOME_MADE;
	if (listed("|wine|", word, length) && (out->is & IS_VINEGAR))
		out->said |= SAID_WINE;
	if (listed("|heaped|heaping|scant|generous|rounded|", word, length))
		out->said |= SAID_EDGE;
	if (!in_note && listed(changed_words, word, length))
		out->said |= SAID_CHANGED;
	if (listed(soak_words, word, length))
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

/* What words are made of; bytes above ASCII are parts of letters. */
static bool is_of_word(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
	       c == '\'' || (c & 0x80);
}

bool text_next_word(const char **text, char folded[WORDS_SIZE])
{
	for (;;) {
		size_t n = 0;
		while (**text && !is_of_word(**text))
			++*text;
		if (!**text)
			return false;
		while (is_of_word((*text)[n]))
			n++;
		const char *word = *text;
		*text += n;
		if (words_fold(word, n, folded))
			return true;
	}
}

bool text_has_word(const char *text, const char *list)
{
	char word[WORDS_SIZE];
	while (text_next_word(&text, word))
		if (listed(list, word, strlen(word)))
			return true;
	return false;
}

bool word_is_food(const char *folded)
{
	const size_t length = strlen(folded);
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++)
		if (listed(lists[i].words, folded, length))
			return true;
	return listed(pepper_words, folded, length);
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
	char name[INGREDIENT_FIELD_SIZE], folded[WORDS_SIZE], *at = folded, *word;
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
		const char *same = same_word(word);
		if (listed(neutral_words, word, length) || (*word >= '0' && *word <= '9'))
			out->neutral |= 1U << out->n;
		if (listed(colour_words, word, length))
			out->colour |= 1U << out->n;
		if (listed("|ground|dried|dry|whole|powdered|", word, length))
			forms |= 1U << out->n;
		out->word[out->n++] = hash(same, strlen(same));
	}
	g.dry |= g.ginger && text_has_word(preparation, "|ground|dried|powdered|");
	conclude(&g, out);
	if (out->is & IS_DRY_SPICE)
		out->neutral |= forms;
	said_text(name, false, out);
	said_text(preparation, false, out);
	said_text(note, true, out);
	if (fold_cut(preparation, folded))
		out->preparation = hash(folded, strlen(folded));
}

static bool has_word(const struct item_words *in, uint32_t word)
{
	for (unsigned i = 0; i < in->n; i++)
		if (in->word[i] == word)
			return true;
	return false;
}

bool item_words_have(const struct item_words *words, const char *folded)
{
	const char *same = same_word(folded);
	return has_word(words, hash(same, strlen(same)));
}

/* Is every word of a, but for those that may be missing, in b? *missing counts. */
static bool within(const struct item_words *a, const struct item_words *b, uint32_t may_be_missing,
		   int *missing)
{
	*missing = 0;
	for (unsigned i = 0; i < a->n; i++) {
		if (has_word(b, a->word[i]))
			continue;
		if (!(may_be_missing >> i & 1U))
			return false;
		(*missing)++;
	}
	return true;
}

static bool same_words(const struct item_words *a, const struct item_words *b)
{
	return a->n == b->n && memcmp(a->word, b->word, a->n * sizeof *a->word) == 0;
}

#define IS_NAMED_BY_SORT                                                                           \
	(IS_VINEGAR | IS_CITRUS_JUICE | IS_CITRIC | IS_SALT | IS_SUGAR | IS_SWEETENER | IS_WATER | \
	 IS_TOMATO_PASTE | IS_DRY_SPICE | IS_FAT | IS_STARCH)

/* One of several things that the formula leaves to choose from. */
static bool one_of(const struct item_words *recipe, const struct item_words *formula)
{
	int missing;
	bool named = false;
	for (unsigned i = 0; i < recipe->n; i++)
		named |= !((recipe->neutral | recipe->colour) >> i & 1U);
	return named && (formula->said & SAID_OR) && recipe->is == formula->is &&
	       within(recipe, formula, recipe->neutral, &missing);
}

/* The same name, one of them saying more. */
static bool same_thing(const struct item_words *recipe, const struct item_words *formula,
		       int *extra)
{
	const uint32_t head = head_word(recipe);
	const uint32_t mine = recipe->neutral | (head == hash("onion", 5) ? recipe->colour : 0);
	int none;
	if (head != head_word(formula))
		return false;
	return (within(recipe, formula, 0, &none) &&
		within(formula, recipe, formula->neutral | formula->colour, extra)) ||
	       (within(formula, recipe, 0, &none) && within(recipe, formula, mine, extra));
}

int item_words_score(const struct item_words *recipe, const struct item_words *formula)
{
	const unsigned both = recipe->is & formula->is;
	int extra;
	if (recipe->n == 0 || formula->n == 0 || ((recipe->said | formula->said) & SAID_TOO_LONG))
		return 0;
	if (same_words(recipe, formula))
		return 100;
	if ((recipe->is ^ formula->is) & IS_NAMED_BY_SORT)
		return 0;
	if (same_thing(recipe, formula, &extra))
		return 95 - extra;
	if (one_of(recipe, formula))
		return 85;
	if (both & (IS_VINEGAR | IS_SALT | IS_WATER))
		return SCORE_SAME_SORT;
	return both & IS_SUGAR ? 75 : 0;
}
