/*
 * Words of a line that nobody knows. A line is its amount, its food, and how that is cut; a word
 * that is none of these may be another food ("1 lb onions; ricotta") or another form of it
 * ("dehydrated"), so it is asked about. The lists are general knowledge: they only let pass.
 */
#include <string.h>

#include "compare_internal.h"

/* Amounts and their joints, in lines of any kind. */
static const char amount_words[] =
    "|a|an|the|of|and|or|to|for|in|into|at|by|from|per|each|with|as|it|if|you|your|plus|x|no|"
    "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen|half|quarter|third|"
    "about|approx|approximately|around|roughly|circa|ca|heaped|heaping|scant|generous|rounded|good|"
    "up|least|most|over|under|big|full|additional|few|some|more|extra|needed|taste|desired|like|"
    "enough|total|level|divided|equal|part|exactly|volume|measured|optional|"
    "optionally|not|fl|fluid|oz|imp|imperial|metric|us|uk|australian|canadian|british|customary|"
    "bag|bottle|box|bulb|bunch|can|carton|clove|cob|container|drop|dash|ear|handful|head|"
    "jar|knob|pack|package|packet|piece|pinch|pkg|pod|punnet|sachet|size|slice|splash|sprig|stalk|"
    "stick|tin|tub|cupful|inch|mm|cm|mg|in|small|medium|large|"
    "very|well|such|kind|any|assorted|mixed|combined|together|separate|separately|"
    "breakfast|coffee|tall|wide|thick|long|diameter|cube|c|";
/* What produce may be said to be, and how it may be cut, and still be the fresh food. */
static const char produce_words[] =
    "|fresh|freshly|ripe|firm|tender|young|mature|raw|organic|homegrown|home|grown|garden|local|"
    "seasonal|sound|clean|cleaned|washed|rinsed|scrubbed|wiped|picked|just|unblemished|"
    "best|quality|peeled|unpeeled|skinned|skin|on|off|pared|cored|core|seeded|deseeded|"
    "unseeded|seed|pip|stone|stoned|pitted|pit|stem|stemmed|destemmed|top|topped|tailed|tail|end|"
    "blossom|root|husk|husked|unhusked|shelled|shucked|podded|hulled|trimmed|removed|discarded|"
    "without|only|their|rib|rind|membrane|string|strung|leave|leaf|outer|bruise|blemish|"
    "chopped|chop|coarsely|coarse|finely|fine|roughly|rough|thinly|thin|lightly|neatly|evenly|"
    "sliced|slice|diced|dice|cubed|cut|quartered|halved|minced|shredded|grated|julienned|"
    "slivered|chunk|ring|strip|wedge|round|bite|sized|pea|lengthwise|crosswise|"
    "across|diagonally|whole|blanched|packed|loosely|firmly|"
    "prepared|"
    "red|yellow|white|brown|pickling|canning|preserving|plain|usual|";
/* What the acid may be said to be; it must all go into the jar as it comes from the bottle. */
static const char acid_words[] =
    "|percent|cent|acid|acidity|strength|grain|labelled|labeled|label|standard|white|distilled|"
    "bottled|bought|store|shop|commercial|commercially|made|concentrate|pure|plain|"
    "clear|pickling|reconstituted|not|ph|room|temperature|cold|"
    "unopened|fresh|freshly|squeezed|home|homemade|";
/* What keeps well may be said to be, and what it is tied up in. */
static const char store_words[] =
    "|fresh|freshly|dried|dry|ground|whole|crushed|cracked|broken|powdered|powder|flake|leaf|"
    "leave|seed|toasted|bruised|tied|bag|spice|cheesecloth|muslin|cloth|packed|firmly|loosely|"
    "sifted|fine|finely|coarse|coarsely|pure|plain|granulated|canning|pickling|preserving|non|"
    "iodized|iodised|white|brown|light|dark|hot|sweet|mild|red|black|yellow|green|preferably|"
    "good|best|bought|store|brand|favourite|favorite|own|my|"
    "strength|double|concentrated|cold|boiling|boiled|"
    "without|additive|anti|caking|agent|table|sea|kosher|flaked|";

/* A dash, a fraction, a degree sign ...: bytes that spell nothing. */
static size_t mark_length(const char *at)
{
	const unsigned char *b = (const unsigned char *)at;
	if (b[0] >= '0' && b[0] <= '9')
		return 1;
	if (b[0] == 0xC2 && b[1])
		return 2;
	if (b[0] == 0xC3 && b[1] == 0x97) /* the sign for "times" */
		return 2;
	if (b[0] == 0xE2 && (b[1] == 0x80 || b[1] == 0x81 || b[1] == 0x85) && b[2])
		return 3;
	return 0;
}

/* The word without the numbers and marks before it: "500g" is "g". */
static const char *without_marks(const char *word)
{
	size_t n;
	while ((n = mark_length(word)) > 0)
		word += n;
	return word;
}

/* What stands behind a number: "500g"; or a measure by itself. */
static bool is_measure(const char *word)
{
	enum kitchen_unit unit;
	enum measuring_system said;
	return *word == '\0' || kitchen_unit_find(word, &unit, &said) ||
	       word_in_list(amount_words, word, strlen(word));
}

static const char *words_for(const struct item *item)
{
	const unsigned is = item->words.is;
	if (is & (IS_VINEGAR | IS_CITRUS_JUICE | IS_CITRIC))
		return acid_words;
	if (is & (IS_SALT | IS_SUGAR | IS_SWEETENER | IS_WATER | IS_DRY_SPICE | IS_TOMATO_PASTE |
		  IS_MAYBE_DRY))
		return store_words;
	return produce_words;
}

bool item_next_unknown(const struct item *item, const char **text, char folded[WORDS_SIZE])
{
	const char *known = words_for(item);
	while (text_next_word(text, folded)) {
		const char *word = without_marks(folded);
		if (is_measure(word) || word_in_list(known, word, strlen(word)) ||
		    item_words_have(&item->words, word))
			continue;
		memmove(folded, word, strlen(word) + 1);
		return true;
	}
	return false;
}
