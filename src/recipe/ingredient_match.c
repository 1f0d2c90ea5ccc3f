/* The reference's name for the words of an ingredient. */
#include <string.h>

#include "ingredient_internal.h"
#include "jarwright/reference_tables.h"
#include "jarwright/words.h"

/*
 * Everyday words, folded, for names of the reference; general knowledge. Only what is the same
 * thing: a word for a thing that merely resembles a name stays unmatched.
 */
static const struct {
	const char *words, *name;
} everyday[] = {
    /* Which one is for the cook to say. */
    {"olive", NULL},
    {"ginger", NULL},
    {"corn", NULL},
    {"bean", NULL},
    /* Calcium hydroxide, not the fruit. */
    {"pickling lime", "pickling lime"},
    {"sugar", "sugar, white granulated"},
    {"white sugar", "sugar, white granulated"},
    {"granulated sugar", "sugar, white granulated"},
    {"light brown sugar", "sugar, brown"},
    {"dark brown sugar", "sugar, brown"},
    {"confectioner sugar", "sugar, powdered"},
    {"icing sugar", "sugar, powdered"},
    {"bay leave", "bay leaf"},
    {"bay", "bay leaf"},
    {"courgette", "squash, zucchini"},
    {"zucchini", "squash, zucchini"},
    {"aubergine", "eggplant"},
    {"beetroot", "beet"},
    {"swede", "rutabaga"},
    {"sultana", "raisin, golden seedless"},
    {"golden raisin", "raisin, golden seedless"},
    {"raisin", "raisin, seedless"},
    {"spring onion", "onion, green"},
    {"scallion", "onion, green"},
    {"salad onion", "onion, green"},
    {"cornflour", "cornstarch"},
    {"bicarbonate of soda", "baking soda"},
    {"bicarb soda", "baking soda"},
    {"plain flour", "flour, wheat all-purpose"},
    {"all purpose flour", "flour, wheat all-purpose"},
    {"flour", "flour, wheat all-purpose"},
    {"fresh ginger", "ginger root"},
    {"root ginger", "ginger root"},
    {"fresh root ginger", "ginger root"},
    {"fresh ginger root", "ginger root"},
    {"cumin", "cumin seed"},
    {"ground cumin", "cumin seed"},
    {"black peppercorn", "pepper, black"},
    {"cayenne", "pepper, red or cayenne"},
    {"cayenne pepper", "pepper, red or cayenne"},
    {"bell pepper", "pepper, sweet green"},
    {"green bell pepper", "pepper, sweet green"},
    {"red bell pepper", "pepper, sweet red"},
    {"yellow bell pepper", "pepper, sweet yellow"},
    {"green capsicum", "pepper, sweet green"},
    {"red capsicum", "pepper, sweet red"},
    {"red pepper", "pepper, sweet red"},
    {"jalapeno", "pepper, jalapeno"},
    {"jalapeno pepper", "pepper, jalapeno"},
    {"white vinegar", "vinegar, distilled white"},
    {"distilled vinegar", "vinegar, distilled white"},
    {"white distilled vinegar", "vinegar, distilled white"},
    {"apple cider vinegar", "vinegar, cider"},
    {"egg", "egg, whole"},
    {"green bean", "bean, snap green"},
    {"lemon zest", "lemon peel"},
    {"lemon rind", "lemon peel"},
    {"orange zest", "orange peel"},
    {"orange rind", "orange peel"},
    {"table salt", "salt, table"},
    {"salt", "salt, table"},
    {"fresh coriander", "cilantro"},
    {"walnut", "walnut, english"},
    {"rockmelon", "cantaloupe"},
    {"passionfruit", "passion fruit"},
    {"unsalted butter", "butter"},
    {"blackcurrant", "currant, black"},
    {"redcurrant", "currant, red or white"},
};

/* A word that makes another food of it: in one of the two names only, they do not match. */
static const char form_words[] =
    "dried dry dehydrated powder powdered paste puree sauce juice juiced canned tinned pickled "
    "smoked candied crystallized crystallised sweetened concentrate flake flaked seed oil extract "
    "syrup kosher sea sun evaporated cooked boiled frozen salted preserved roasted zest peel rind "
    "leave leaf stock broth bouillon jelly jam relish granulated ketchup wine green "
    "black sour tart baby distilled hot chili chile chilli sweet cider balsamic rice malt homemade "
    "reduced free "
    "substitute mix blend salt flour starch";
/* Words that say nothing on what the food is, on either side. */
static const char neutral_words[] = "raw fresh whole ground ripe large small medium firm "
				    "prepared all variety mature good quality best cold warm hot "
				    "chopped organic";

/*
 * Words of `text` that are not in `other`; -1: one of them, or of `forms`, makes another food
 * of it.
 */
static int surplus(const char *text, const char *other, const char *forms)
{
	int count = 0;
	while (*text) {
		size_t n = strcspn(text, " ");
		if (!words_have(other, text, n)) {
			if (words_have(form_words, text, n) || words_have(forms, text, n))
				return -1;
			count += !words_have(neutral_words, text, n);
		}
		text += n + (text[n] == ' ');
	}
	return count;
}

struct candidate {
	const char *name;
	int unused; /* words on either side that the other lacks */
	bool tie;   /* another name is as good */
};

/* "pepper, black" or "black pepper" (its head is the whole): how well does it fit the words? */
static void candidate_try(const char *words, const char *name, struct candidate *best)
{
	char head[WORDS_SIZE], all[WORDS_SIZE];
	const char *last = strrchr(words, ' ');
	last = last ? last + 1 : words;
	if (*name == '(' || !words_may_have(name, last))
		return;
	if (!words_fold(name, strcspn(name, ",("), head) ||
	    !words_fold(name, strcspn(name, "("), all) || !words_all_in(words, head))
		return;
	if (!words_have(head, last, strlen(last)))
		return;
	int ours = surplus(words, all, ""), theirs = surplus(all, words, "ground");
	/* Words left over on both sides ("rice", "distilled white") are another kind. */
	if (ours < 0 || theirs < 0 || (ours > 0 && theirs > 0))
		return;
	if (!best->name || ours + theirs < best->unused) {
		*best = (struct candidate){name, ours + theirs, false};
	} else if (ours + theirs == best->unused && strcmp(best->name, name) != 0) {
		/* "apple, raw" and "apple, with skin raw" are one food: the first is taken. */
		best->tie |= theirs > 0;
	}
}

static bool best_of(const char *words, size_t table, struct candidate *best)
{
	const struct reference_tables *tables = reference_tables_edition();
	const struct reference *ref = reference_edition();
	*best = (struct candidate){NULL, 0, false};
	if (table == 0)
		for (size_t i = 0; i < tables->density_n; i++)
			/* A food's rows mostly follow each other. */
			if (i == 0 || tables->density[i].food != tables->density[i - 1].food)
				candidate_try(words, tables->density[i].food, best);
	if (table == 1)
		for (size_t i = 0; i < tables->composition_n; i++)
			candidate_try(words, tables->composition[i].food, best);
	if (table == 2)
		for (size_t i = 0; i < tables->acid_content_n; i++)
			candidate_try(words, tables->acid_content[i].food, best);
	if (table == 3)
		for (size_t i = 0; i < tables->buffer_n; i++)
			if (strcmp(tables->buffer[i].kind, "ingredient") == 0)
				candidate_try(words, tables->buffer[i].ingredient, best);
	if (table == 4)
		for (size_t i = 0; i < ref->foods_n; i++)
			for (size_t j = 0; j < ref->foods[i].formula_n; j++)
				candidate_try(words, ref->foods[i].formula[j].ingredient, best);
	return best->name && !best->tie;
}

/* Is the folded text an everyday word? Its name may be NULL: too wide a word to match. */
static bool everyday_name(const char *folded, const char **name)
{
	for (size_t i = 0; i < sizeof everyday / sizeof *everyday; i++)
		if (strcmp(everyday[i].words, folded) == 0) {
			*name = everyday[i].name;
			return true;
		}
	return false;
}

const char *ingredient_match(const char *words, bool *exact)
{
	char folded[WORDS_SIZE];
	struct candidate best;
	if (exact)
		*exact = false;
	if (!words_fold(words, strlen(words), folded))
		return NULL;
	const char *name = NULL;
	bool known = everyday_name(folded, &name);
	if (exact)
		*exact = name != NULL;
	for (size_t table = 0; !known && table < 5; table++) {
		known = best_of(folded, table, &best);
		if (known) {
			name = best.name;
			if (exact)
				*exact = best.unused == 0;
		}
	}
	return name;
}
