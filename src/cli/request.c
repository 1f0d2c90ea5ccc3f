#include "request.h"

#include <stdlib.h>
#include <string.h>

#include "jarwright/household_canners.h"
#include "jarwright/measure.h"
#include "jarwright/spelling.h"
#include "jarwright/text.h"
#include "jarwright/words.h"

#define NEAR 2 /* letters that a word may be off to be taken for a slip */

/* What people call the canners, besides the names that canner_word() gives. */
struct canner_name {
	const char *words; /* between bars */
	enum canner_choice choice;
	enum canner canner;
};
static const struct canner_name canner_names[] = {
    {"|boiling-water|boiling water canner|boiling water bath|water bath|water-bath canner|"
     "hot water bath|bwb|bath|",
     CHOICE_CANNER, CANNER_BOILING_WATER},
    {"|steam|steam canner|atmospheric steam|atmospheric steam canner|", CHOICE_CANNER,
     CANNER_STEAM},
    {"|dial-gauge|dial|dial gauge canner|dial-gauge pressure canner|pressure-dial|", CHOICE_CANNER,
     CANNER_DIAL_GAUGE},
    {"|weighted-gauge|weighted|weighted gauge canner|weighted-gauge pressure canner|"
     "pressure-weighted|",
     CHOICE_CANNER, CANNER_WEIGHTED_GAUGE},
    {"|pressure|pressure canner|pressure canning|pressure cooker|pressure saucepan|",
     CHOICE_PRESSURE_UNSTATED, CANNER_DIAL_GAUGE},
};

/* A word of a closed list and what it stands for. */
struct choice {
	const char *word;
	int value;
};

static const struct choice packs[] = {
    {"raw", PACK_RAW}, {"raw pack", PACK_RAW}, {"hot", PACK_HOT}, {"hot pack", PACK_HOT}};
static const struct choice jar_states[] = {{"sterile", JARS_STERILE}, {"clean", JARS_NOT_STERILE}};
static const struct choice acids[] = {{"vinegar", ACID_VINEGAR},
				      {"bottled-lemon", ACID_BOTTLED_JUICE},
				      {"bottled-lime", ACID_BOTTLED_JUICE},
				      {"citric-acid", ACID_CITRIC},
				      {"fresh-lemon", ACID_FRESH_JUICE},
				      {"fresh-lime", ACID_FRESH_JUICE},
				      {"tablets", ACID_TABLETS},
				      {"none", ACID_NONE}};
static const struct choice vinegars[] = {{"homemade", VINEGAR_HOME_MADE},
					 {"home made", VINEGAR_HOME_MADE},
					 {"unknown", VINEGAR_UNKNOWN},
					 {"wine", VINEGAR_WINE},
					 {"wine vinegar", VINEGAR_WINE}};
#define COUNT(list) (sizeof(list) / sizeof *(list))

/* The cook's word, safe and short enough for a message. */
struct shown {
	char text[TEXT_SHOWN_SIZE];
};

static struct shown show(const char *text)
{
	struct shown shown = {.text = ""};
	text_show(text, SIZE_MAX, shown.text);
	return shown;
}

static bool chosen(const struct choice *choices, size_t n, const char *text, int *value)
{
	for (size_t i = 0; i < n; i++) {
		if (!words_same(choices[i].word, text))
			continue;
		*value = choices[i].value;
		return true;
	}
	return false;
}

bool operand_words(struct invocation *inv, char *buffer, size_t size)
{
	size_t n = 0;
	for (size_t i = 0; i < inv->operands_n; i++) {
		size_t length = strlen(inv->operands[i]);
		if (n + length + 2 > size)
			return error_usage(inv->err,
					   "food: the name is too long; type a few words");
		if (i > 0)
			buffer[n++] = ' ';
		memcpy(buffer + n, inv->operands[i], length);
		n += length;
	}
	buffer[n] = '\0';
	return inv->operands_n == 0 || strspn(buffer, " ") < n ||
	       error_usage(inv->err, "%s: the name is empty; type 'jarwright %s %s'",
			   inv->command->name, inv->command->name, inv->command->synopsis);
}

/* A bare 0 lacks more than a unit. */
static bool is_nothing(const char *text)
{
	struct rational number;
	struct error ignored = {.kind = ERROR_NONE};
	return rational_parse(text, &number, &ignored) && number.num <= 0;
}

bool harvest_weight(struct invocation *inv, bool *given, struct rational *lb)
{
	const char *have = option(inv, "have");
	struct quantity mass;
	*given = have != NULL;
	if (!have)
		return true;
	if (!quantity_parse(DIMENSION_MASS, "have", have, &mass, inv->err))
		return false;
	*lb = mass.amount;
	return mass.amount.num > 0 ||
	       error_usage(inv->err, "have: nothing to put up; type a weight such as 20lb");
}

bool count_parse(const char *what, const char *text, int most, int *out, struct error *err)
{
	struct rational number;
	if (!rational_parse(text, &number, err))
		return error_context(err, "%s", what);
	if (number.den != 1 || number.num < 1 || number.num > most) {
		return error_usage(err, "%s: '%s' is no whole number from 1 to %d; type one", what,
				   show(text).text, most);
	}
	*out = (int)number.num;
	return true;
}

/* The nearest of the canners' names in spelling, or NULL. */
static const char *near_canner(const char *text)
{
	if (spelling_distance(text, "pressure") <= NEAR)
		return "dial-gauge or weighted-gauge (pressure)";
	for (int canner = 0; canner < CANNER_COUNT; canner++)
		if (spelling_distance(text, canner_word((enum canner)canner)) <= NEAR)
			return canner_word((enum canner)canner);
	return NULL;
}

static void take_canner(const struct kitchen_canner *canner, struct asked *out)
{
	out->own_canner = true;
	out->kitchen_canner = *canner;
	out->request.canner_choice = CHOICE_CANNER;
	out->request.canner = canner->kind;
	out->request.holds_quarts = canner->holds_quarts;
}

/* By its mark, "@1a2b3c", or a name that several have: then which one is asked. */
static bool marked_canner(struct invocation *inv, const char *text, struct asked *out)
{
	struct household *db;
	struct canner_record record;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_canner(db, text, &record, inv->err);
	household_close(db);
	if (ok)
		take_canner(&record.canner, out);
	return ok;
}

static bool own_canner(struct invocation *inv, const char *text, struct asked *out)
{
	struct kitchen kitchen;
	const struct kitchen_canner *found = NULL;
	if (*text == '@')
		return marked_canner(inv, text, out);
	if (!invocation_kitchen(inv, &kitchen))
		return false;
	for (size_t i = 0; i < kitchen.canners_n; i++) {
		if (!words_same(kitchen.canners[i].name, text))
			continue;
		if (found)
			return marked_canner(inv, text, out);
		found = &kitchen.canners[i];
	}
	if (found) {
		take_canner(found, out);
		return true;
	}
	const char *near = near_canner(text);
	if (near)
		return error_usage(inv->err, "canner: '%s' is not known; did you mean %s?",
				   show(text).text, near);
	return error_usage(
	    inv->err,
	    "canner: '%s' is neither a kind of canner nor one of your kitchen's; type "
	    "boiling-water, steam, dial-gauge or weighted-gauge",
	    show(text).text);
}

bool asked_canner(struct invocation *inv, struct asked *out)
{
	const struct reference *ref = reference_edition();
	const char *text = option(inv, "canner");
	if (!text)
		return true;
	struct request *rq = &out->request;
	char folded[WORDS_SIZE];
	if (!words_fold(text, strlen(text), folded))
		return error_usage(inv->err, "canner: the name is empty or too long; type "
					     "boiling-water, steam, dial-gauge or weighted-gauge");
	for (size_t i = 0; i < COUNT(canner_names); i++) {
		if (!words_listed(canner_names[i].words, folded))
			continue;
		rq->canner_choice = canner_names[i].choice;
		rq->canner = canner_names[i].canner;
		return true;
	}
	rq->method = reference_find_barred(ref, FACET_METHOD, text);
	if (rq->method) {
		rq->canner_choice = CHOICE_BARRED;
		return true;
	}
	return own_canner(inv, text, out);
}

#define NL_PER_ML 1000000

/* "16 oz" on a jar means fluid ounces, which a kitchen scale's "oz" does not. */
static bool volume_parse(const char *text, struct quantity *out, struct error *err)
{
	if (quantity_parse(DIMENSION_VOLUME, "jar", text, out, err))
		return true;
	size_t n = strlen(text);
	char fluid[64];
	struct error ignored = {.kind = ERROR_NONE};
	if (n < 3 || n + 4 > sizeof fluid || strcmp(text + n - 2, "oz") != 0)
		return false;
	memcpy(fluid, text, n - 2);
	memcpy(fluid + n - 2, "fl oz", sizeof "fl oz");
	if (!quantity_parse(DIMENSION_VOLUME, "jar", fluid, out, &ignored))
		return false;
	*err = (struct error){.kind = ERROR_NONE};
	return true;
}

/* A volume within a nanolitre of a named jar's is that jar: their sizes are kept rounded. */
static bool name_volume(const struct reference *ref, struct rational ml, struct jar_choice *jar)
{
	int64_t down;
	if (!rational_floor(ml, NL_PER_ML, &down))
		return false;
	for (int i = 0; i < JAR_COUNT; i++) {
		if (ref->jars[i].volume_nl != down)
			continue;
		*jar = (struct jar_choice){.stated = true, .jar = (enum jar)i};
		return true;
	}
	return false;
}

static bool holds_nothing(const char *text, struct error *err)
{
	return error_usage(err,
			   "jar: '%s' holds nothing; type the volume of the jar, such as 500mL",
			   show(text).text);
}

static bool take_volume(const struct reference *ref, const char *text, struct rational ml,
			struct jar_choice *jar, struct error *err)
{
	if (ml.num <= 0)
		return holds_nothing(text, err);
	if (name_volume(ref, ml, jar))
		return true;
	*jar = (struct jar_choice){.stated = true, .by_volume = true};
	if (!rational_ceil(ml, NL_PER_ML, &jar->volume_nl))
		return error_usage(err, "jar: '%s' is too large; type the volume of one jar",
				   show(text).text);
	return true;
}

/*
 * Volumes before names: a jar of 500 mL is not exactly a pint, and the answer says what
 * that means.
 */
bool jar_parse(const char *text, struct jar_choice *out, struct error *err)
{
	const struct reference *ref = reference_edition();
	struct quantity volume;
	char folded[WORDS_SIZE];
	if (is_nothing(text))
		return holds_nothing(text, err);
	bool number = strpbrk(text, "0123456789") != NULL;
	if (number && volume_parse(text, &volume, err))
		return take_volume(ref, text, volume.amount, out, err);
	/* A sign or a fraction would be lost in folding: no name has one. */
	bool name = *text != '-' && !strpbrk(text, "./") && words_fold(text, strlen(text), folded);
	for (int jar = 0; name && jar < JAR_COUNT; jar++) {
		if (!words_same(ref->jars[jar].name, text) &&
		    !words_listed(ref->jars[jar].words, folded))
			continue;
		*out = (struct jar_choice){.stated = true, .jar = (enum jar)jar};
		*err = (struct error){.kind = ERROR_NONE};
		return true;
	}
	if (number)
		return false; /* the reason why it is no volume is in err */
	return error_usage(
	    err,
	    "jar: '%s' is not known; type half-pint, pint, quart or another size, or "
	    "its volume such as 500mL",
	    show(text).text);
}

static bool read_jar(struct invocation *inv, struct request *rq)
{
	const char *text = option(inv, "jar");
	return !text || jar_parse(text, &rq->jar, inv->err);
}

static bool read_choice(struct invocation *inv, const char *name, const struct choice *choices,
			size_t n, const char *allowed, int *value)
{
	const char *text = option(inv, name);
	if (!text || chosen(choices, n, text, value))
		return true;
	return error_usage(inv->err, "%s: '%s' is not known; type %s", name, show(text).text,
			   allowed);
}

#define MILLI 1000

static bool read_vinegar(struct invocation *inv, struct request *rq)
{
	const char *text = option(inv, "vinegar");
	int kind = VINEGAR_UNSTATED;
	if (!text)
		return true;
	if (chosen(vinegars, COUNT(vinegars), text, &kind)) {
		rq->vinegar = (enum vinegar_choice)kind;
		return true;
	}
	struct quantity strength;
	int64_t milli = 0;
	if (!strpbrk(text, "0123456789"))
		return error_usage(
		    inv->err,
		    "vinegar: '%s' is not known; type the acidity on the label such as "
		    "5%%, or homemade, unknown or wine",
		    show(text).text);
	if (!quantity_parse(DIMENSION_PERCENT, "vinegar", text, &strength, inv->err))
		return false;
	if (!rational_floor(strength.amount, MILLI, &milli) || strength.amount.num <= 0 ||
	    rational_compare(strength.amount, (struct rational){100, 1}) > 0)
		return error_usage(
		    inv->err,
		    "vinegar: '%s' is no strength of vinegar; type the acidity on the "
		    "label, such as 5%%",
		    show(text).text);
	rq->vinegar = VINEGAR_LABELLED;
	rq->vinegar_milli_percent = (int32_t)milli;
	return true;
}

static bool read_ph(struct invocation *inv, struct request *rq)
{
	const char *text = option(inv, "ph");
	struct rational ph;
	int64_t milli = 0;
	if (!text)
		return true;
	if (!rational_parse(text, &ph, inv->err))
		return error_context(inv->err, "ph");
	if (ph.num < 0 || rational_compare(ph, (struct rational){14, 1}) > 0 ||
	    !rational_ceil(ph, MILLI, &milli)) {
		return error_usage(inv->err, "ph: '%s' is outside the pH scale; type 0 to 14",
				   show(text).text);
	}
	rq->ph_stated = true;
	rq->ph_milli = (int32_t)milli;
	return true;
}

#define PSI_MOST 100 /* above any canner's gauge: a slip of the keyboard */

static bool read_psi(struct invocation *inv, struct request *rq)
{
	const char *text = option(inv, "psi");
	struct quantity pressure = {.dimension = DIMENSION_PRESSURE};
	struct error ignored = {.kind = ERROR_NONE};
	if (!text)
		return true;
	if (!rational_parse(text, &pressure.amount, &ignored) &&
	    !quantity_parse(DIMENSION_PRESSURE, "psi", text, &pressure, inv->err))
		return false;
	if (pressure.amount.den != 1 || pressure.amount.num < 1 || pressure.amount.num > PSI_MOST) {
		return error_usage(
		    inv->err, "psi: '%s' is no published pressure; type whole pounds, such as 11",
		    show(text).text);
	}
	rq->psi = (int)pressure.amount.num;
	return true;
}

static bool read_holds(struct invocation *inv, struct request *rq)
{
	const char *text = option(inv, "holds");
	return !text || count_parse("holds", text, KITCHEN_HOLDS_MAX, &rq->holds_quarts, inv->err);
}

/* Lists what the facet knows, for a message. */
static void list_barred(const struct reference *ref, enum facet facet, char *buffer, size_t size)
{
	size_t n = 0;
	*buffer = '\0';
	for (size_t i = 0; i < ref->barred_n; i++) {
		const char *slug = ref->barred[i].slug;
		if (ref->barred[i].facet != facet || n + strlen(slug) + 3 > size)
			continue;
		n += (size_t)snprintf(buffer + n, size - n, "%s%s", n ? ", " : "", slug);
	}
}

/* A closure or a container: the usual one, or one that is refused by name. */
static bool read_barred(struct invocation *inv, const struct reference *ref, const char *name,
			enum facet facet, const char *usual, const struct barred **out)
{
	const char *text = option(inv, name), *first = usual;
	char folded[WORDS_SIZE];
	if (!text || (words_fold(text, strlen(text), folded) && words_listed(usual, folded)))
		return true;
	*out = reference_find_barred(ref, facet, text);
	if (*out)
		return true;
	char known[512];
	const char *item = "";
	size_t length = 0;
	words_next(&first, &item, &length);
	list_barred(ref, facet, known, sizeof known);
	return error_usage(inv->err, "%s: '%s' is not known; type %.*s, or one of: %s", name,
			   show(text).text, (int)length, item, known);
}

static bool read_details(struct invocation *inv, const char *jars_option, struct request *rq)
{
	int pack = PACK_UNSTATED, acid = ACID_UNSTATED, state = JARS_UNSTATED;
	if (!read_choice(inv, "pack", packs, COUNT(packs), "raw or hot", &pack) ||
	    !read_choice(
		inv, "acid", acids, COUNT(acids),
		"vinegar, bottled-lemon, bottled-lime, citric-acid, fresh-lemon, tablets or "
		"none",
		&acid) ||
	    !read_choice(inv, jars_option, jar_states, COUNT(jar_states), "sterile or clean",
			 &state))
		return false;
	rq->pack = (enum pack)pack;
	rq->acid = (enum acid)acid;
	rq->jars = (enum jars_choice)state;
	return read_vinegar(inv, rq) && read_ph(inv, rq) && read_psi(inv, rq) &&
	       read_holds(inv, rq);
}

bool asked_read(struct invocation *inv, const char *jars_option, struct asked *out)
{
	const struct reference *ref = reference_edition();
	char food[ARGUMENT_MAX];
	memset(out, 0, sizeof *out);
	struct request *rq = &out->request;
	if (!operands_between(inv, 1, 32, "FOOD") || !operand_words(inv, food, sizeof food))
		return false;
	reference_find_food(ref, food, &rq->food);
	if (!asked_canner(inv, out) || !read_jar(inv, rq) || !read_details(inv, jars_option, rq))
		return false;
	if (!read_barred(inv, ref, "closure", FACET_CLOSURE, "|two-piece|two-piece lid|",
			 &rq->closure) ||
	    !read_barred(inv, ref, "container", FACET_CONTAINER,
			 "|preserving|preserving jar|canning jar|", &rq->container))
		return false;
	if (!invocation_elevation(inv, &out->elevation))
		return false;
	rq->elevation_stated = out->elevation.stated;
	rq->elevation_mft = out->elevation.mft;
	return true;
}

int answer_barred(struct invocation *inv, const struct barred *barred)
{
	char source[WORDS_BUFFER];
	int status = barred->refused ? STATUS_REFUSED : STATUS_UNTESTED;
	citation_words(source, sizeof source, &barred->from);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:s, s:s, s:s}", "barred", barred->slug, "text",
					     barred->says, "instead", barred->instead, "source",
					     source),
				   status);
	struct page page = answer_page(inv);
	page_headline(&page, barred->refused ? "REFUSED" : "UNTESTED", barred->slug);
	page_format(&page, "  ", "%s %s", barred->says, barred->instead);
	page_format(&page, "  ", "[%s]", source);
	return status;
}

struct page answer_page(const struct invocation *inv)
{
	return (struct page){
	    .out = inv->out, .width = inv->width > 0 ? inv->width : PAGE_WIDTH, .bold = inv->color};
}

json_t *with_member(json_t *object, const char *name, json_t *member)
{
	if (json_object_set_new(object, name, member) == 0)
		return object;
	json_decref(object);
	return NULL;
}

int answer_json(struct invocation *inv, json_t *json, int status)
{
	bool written = json && json_write(inv->out, json);
	json_decref(json);
	if (!written) {
		error_failed(inv->err, "answer: out of memory; close other programs and try again");
		return command_failed(inv);
	}
	fputc('\n', inv->out);
	return status;
}

bool asked_jar(struct invocation *inv, struct asked *out)
{
	return read_jar(inv, &out->request);
}

bool asked_vinegar(struct invocation *inv, struct asked *out)
{
	return read_vinegar(inv, &out->request);
}
