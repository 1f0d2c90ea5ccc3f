/* Ingredient, preparation and note: the words of a line behind its amount. */
#include <string.h>
#include <strings.h>

#include "ingredient_internal.h"

static const char adverbs[] = "|finely|coarsely|thinly|roughly|freshly|thickly|lightly|firmly|very|"
			      "well|gently|loosely|evenly|tightly|rough|diagonally|lengthwise|"
			      "lengthways|fine|crosswise|completely|fully|";

/* What the cook does to a thing; "ground", "crushed" and "dried" name another thing to buy. */
static const char deeds[] =
    "|chopped|diced|sliced|minced|grated|shredded|peeled|cubed|julienned|"
    "melted|beaten|sifted|packed|quartered|halved|pitted|cored|hulled|"
    "trimmed|deseeded|seeded|stemmed|rinsed|washed|scrubbed|softened|husked|"
    "squeezed|mashed|destoned|stoned|topped and tailed|zested|toasted|";

static void field_add(struct line_reader *reader, char *field, const char *joint, const char *text,
		      size_t length)
{
	while (length > 0 && strchr(" ,;", *text)) {
		text++;
		length--;
	}
	while (length > 0 && strchr(" ,;", text[length - 1]))
		length--;
	if (length == 0)
		return;
	size_t n = strlen(field), more = *field ? strlen(joint) : 0;
	if (n + more + length >= INGREDIENT_FIELD_SIZE) {
		reader->overflow = true;
		return;
	}
	memcpy(field + n, joint, more);
	memcpy(field + n + more, text, length);
	field[n + more + length] = '\0';
}

void note_add(struct line_reader *reader, const char *text, size_t length)
{
	field_add(reader, reader->out->note, "; ", text, length);
}

void preparation_add(struct line_reader *reader, const char *text, size_t length)
{
	field_add(reader, reader->out->preparation, ", ", text, length);
}

/* Bytes of "finely chopped", "peeled and sliced" at `at`. */
static size_t deeds_length(const char *at)
{
	size_t done = 0;
	for (size_t n = 0;;) {
		size_t word = word_listed(at + n, adverbs);
		bool adverb = word > 0;
		if (!adverb)
			word = word_listed(at + n, deeds);
		if (word == 0)
			return done;
		n += word;
		if (!adverb)
			done = n;
		if (!adverb && word_listed(at + n, "| and| or| &|"))
			n += word_listed(at + n, "| and| or| &|");
		while (at[n] == ' ' || at[n] == ',')
			n++;
	}
}

static bool is_deed(const char *text)
{
	const char *at = text;
	for (size_t n; (n = word_listed(at, adverbs)) > 0; blanks_skip(&at))
		at += n;
	size_t n = word_length(at);
	/* These say what was bought, not what is done with it. */
	if (word_listed(at, "|bottled|canned|tinned|dried|mixed|unsweetened|sweetened|red|need|"
			    "needed|seed|salted|unsalted|unpeeled|flavored|flavoured|"))
		return false;
	return word_listed(at, "|cut|ground|torn|split|thawed|drained|broken|crushed|") > 0 ||
	       (n > 4 && strncasecmp(at + n - 2, "ed", 2) == 0);
}

/* Files a text: behind a comma, what is no remark is a preparation; in parentheses a note. */
static void text_file(struct line_reader *reader, const char *text, size_t length, bool comma)
{
	static const char note_starts[] =
	    "|to taste|or|as needed|as required|optional|plus|for|if|about|approximately|approx|"
	    "divided|see|such as|preferably|depending|like|i.e.|e.g.|eg|ie|and|from|more|extra|any|"
	    "not|use|weighing|enough|around|each|total|your|";
	char copy[INGREDIENT_LINE_MAX + 1];
	while (length > 0 && *text == ' ') {
		text++;
		length--;
	}
	memcpy(copy, text, length);
	copy[length] = '\0';
	if (length == 0 || aside_amount(reader, text, length))
		return;
	if (word_listed(copy, "|optional|if desired|if liked|") || strcasestr(copy, "optional"))
		reader->out->optional = true;
	if (word_listed(copy, "|to taste|or to taste|as needed|as required|"))
		reader->out->to_taste = true;
	if (word_listed(copy, "|or|"))
		reader->out->alternatives = true;
	if (word_listed(copy, note_starts) == 0 && (comma || is_deed(copy)))
		preparation_add(reader, text, length);
	else
		note_add(reader, text, length);
	if (word_listed(copy, "|plus|and|") && strpbrk(copy, "0123456789"))
		reader->doubtful = true;
}

static void aside_file(struct line_reader *reader, const char *text, size_t length)
{
	text_file(reader, text, length, false);
}

/* Takes parentheses out of text, in place, and files what stands in them. */
static void parentheses_take(struct line_reader *reader, char *text)
{
	char *to = text;
	for (const char *from = text; *from;) {
		if (*from != '(' && *from != '[') {
			*to++ = *from++;
			continue;
		}
		const char *inside = ++from;
		int depth = 1;
		for (; *from && depth > 0; from++)
			depth += *from == '(' || *from == '['   ? 1
				 : *from == ')' || *from == ']' ? -1
								: 0;
		aside_file(reader, inside, (size_t)(from - inside) - (depth == 0));
		reader->doubtful |= depth > 0;
		while (to > text && to[-1] == ' ')
			to--;
		if (*from == ' ' || is_letter(*from))
			*to++ = ' ';
		while (*from == ' ')
			from++;
	}
	*to = '\0';
}

/* Does a list of adjectives end here: "boneless, skinless chicken", "red, ripe tomatoes"? */
static bool ends_in_adjective(const char *text, size_t length)
{
	static const char adjectives[] =
	    "|boneless|skinless|fresh|ripe|firm|small|medium|large|sweet|tart|hot|red|green|yellow|"
	    "white|raw|dry|frozen|whole|young|tender|seedless|unsalted|thick|thin|long|plump|"
	    "hard|unripe|mild|cold|dried|low-sodium|unsweetened|lean|extra|virgin|";
	char copy[INGREDIENT_LINE_MAX + 1];
	memcpy(copy, text, length);
	copy[length] = '\0';
	char *last = strrchr(copy, ' ');
	return word_listed(last ? last + 1 : copy, adjectives) > 0;
}

/* Bytes up to the comma that ends the ingredient's name. */
static size_t name_length(const char *text)
{
	for (size_t n = 0;; n++) {
		n += strcspn(text + n, ",;:-/");
		char c = text[n];
		if (c == '\0' || c == ';')
			return n;
		if (c == ':' || (c == '-' && n > 0 && text[n - 1] == ' ' && text[n + 1] == ' '))
			return n;
		if (c == ',' &&
		    !(n > 0 && (ends_in_adjective(text, n) || deeds_length(text) > n) &&
		      is_letter(text[n + 2]) && (deeds_length(text) > n || !is_deed(text + n + 2))))
			return n;
	}
}

/* "to taste", "for frying" at the end of the name go to the note. */
static size_t tail_take(struct line_reader *reader, const char *name, size_t length)
{
	static const char *const tails[] = {" to taste",   " as needed", " for ",
					    " if desired", " optional",  " such as ",
					    " plus more",  " to cover",  " per "};
	for (size_t at = 1; at < length; at++)
		for (size_t i = 0; i < sizeof tails / sizeof *tails; i++)
			if (strncasecmp(name + at, tails[i], strlen(tails[i])) == 0) {
				aside_file(reader, name + at + 1, length - at - 1);
				return at;
			}
	return length;
}

/* "Sugar 500 g": the amount behind the name, where none stands before it. */
static size_t trailing_amount(struct line_reader *reader, const char *name, size_t length)
{
	if (reader->out->has_quantity)
		return length;
	for (size_t at = 1; at + 1 < length; at++)
		if (name[at] == ' ' && !is_letter(name[at + 1]) &&
		    aside_amount(reader, name + at + 1, length - at - 1))
			return at;
	return length;
}

/* "sugar + 2 T.": the second amount behind the name. */
static size_t trailing_plus(struct line_reader *reader, const char *name, size_t length)
{
	for (size_t at = 1; at + 1 < length; at++)
		if (name[at] == ' ' && plus_aside(reader, name + at + 1, length - at - 1))
			return at;
	return length;
}

/* "garlic cloves", "celery stalks": the count's unit behind the name. */
static size_t trailing_unit(struct line_reader *reader, const char *name, size_t length)
{
	char copy[INGREDIENT_LINE_MAX + 1];
	struct ingredient_line *out = reader->out;
	memcpy(copy, name, length);
	copy[length] = '\0';
	const char *last = strrchr(copy, ' ');
	if (!out->has_quantity || *out->unit || !last ||
	    word_listed(copy, "|bay|vine|grape|whole|"))
		return length;
	const char *at = last + 1;
	const struct line_unit *unit = unit_read(&at);
	if (!unit || unit->class != UNIT_COUNT || *at != '\0' ||
	    (strcmp(unit->name, "clove") == 0 && !strcasestr(copy, "garlic")))
		return length;
	out->unit = unit->name;
	reader->class = UNIT_COUNT;
	return (size_t)(last - copy);
}

static void name_file(struct line_reader *reader, const char *name, size_t length)
{
	struct ingredient_line *out = reader->out;
	length = tail_take(reader, name, length);
	size_t deed = reader->class == UNIT_CONTAINER && *out->unit ? 0 : deeds_length(name);
	if (deed > 0 && deed < length) {
		preparation_add(reader, name, deed);
		name += deed;
		length -= deed;
		while (length > 0 && (*name == ' ' || *name == ',')) {
			name++;
			length--;
		}
	}
	const char *sized = name;
	const char *size = *out->size ? NULL : size_read(&sized);
	if (size && *sized == ' ') {
		out->size = size;
		length -= (size_t)(sized - name) + 1;
		name = sized + 1;
	}
	length = trailing_amount(reader, name, length);
	length = trailing_plus(reader, name, length);
	length = trailing_unit(reader, name, length);
	field_add(reader, out->ingredient, " ", name, length);
	if (strcasestr(out->ingredient, " or ") || strcasestr(out->ingredient, " and ") ||
	    strchr(out->ingredient, '&') || strchr(out->ingredient, '/'))
		out->alternatives = true;
	/* A number left among the words is an amount that was not understood. */
	if (strpbrk(out->ingredient, "0123456789"))
		reader->doubtful = true;
}

void rest_file(struct line_reader *reader)
{
	char text[INGREDIENT_LINE_MAX + 1];
	size_t n = strlen(reader->at);
	memcpy(text, reader->at, n + 1);
	parentheses_take(reader, text);
	const char *at = text;
	while (*at && strchr(" ,;:", *at))
		at++;
	n = name_length(at);
	const char *behind = at + n;
	name_file(reader, at, n);
	while (*behind) {
		behind++;
		n = strcspn(behind, ",;");
		const char *dash = strstr(behind, " - ");
		if (dash && (size_t)(dash - behind) < n)
			n = (size_t)(dash - behind) + 1;
		text_file(reader, behind, n, true);
		behind += n;
	}
}
