/* From the JSON of a decision back to the request it answers. */
#include <math.h>
#include <string.h>

#include "jarwright/render.h"

#define MILLI     1000
#define NL_PER_ML 1000000

static const char *word_of(const json_t *request, const char *key)
{
	return json_string_value(json_object_get(request, key));
}

/* Thousandths of a number; false: it is null. */
static bool milli_of(const json_t *request, const char *key, int32_t *out)
{
	const json_t *value = json_object_get(request, key);
	if (!json_is_number(value) || fabs(json_number_value(value)) > INT32_MAX / MILLI)
		return false;
	*out = (int32_t)llround(json_number_value(value) * MILLI);
	return true;
}

static int count_of(const json_t *request, const char *key)
{
	json_int_t value = json_integer_value(json_object_get(request, key));
	return value > 0 && value < MILLI ? (int)value : 0;
}

static const struct barred *barred_of(const struct reference *ref, enum facet facet,
				      const char *slug)
{
	for (size_t i = 0; slug && i < ref->barred_n; i++)
		if (ref->barred[i].facet == facet && strcmp(ref->barred[i].slug, slug) == 0)
			return &ref->barred[i];
	return NULL;
}

static void read_canner(const struct reference *ref, const char *word, struct request *out)
{
	for (int canner = 0; word && canner < CANNER_COUNT; canner++)
		if (strcmp(word, canner_word((enum canner)canner)) == 0) {
			out->canner_choice = CHOICE_CANNER;
			out->canner = (enum canner)canner;
			return;
		}
	if (word && strcmp(word, "pressure") == 0) {
		out->canner_choice = CHOICE_PRESSURE_UNSTATED;
		return;
	}
	out->method = barred_of(ref, FACET_METHOD, word);
	if (out->method)
		out->canner_choice = CHOICE_BARRED;
}

static void read_jar(const struct reference *ref, const json_t *request, struct jar_choice *out)
{
	const char *name = word_of(request, "jar");
	const json_t *ml = json_object_get(request, "jar_ml");
	for (int jar = 0; name && jar < JAR_COUNT; jar++)
		if (strcmp(name, ref->jars[jar].name) == 0)
			*out = (struct jar_choice){.stated = true, .jar = (enum jar)jar};
	if (name || !json_is_number(ml))
		return;
	*out = (struct jar_choice){.stated = true,
				   .by_volume = true,
				   .volume_nl = llround(json_number_value(ml) * NL_PER_ML)};
}

/* Everything that is one of a few words. */
static void read_words(const json_t *request, struct request *out)
{
	const char *pack = word_of(request, "pack"), *jars = word_of(request, "jars");
	const char *vinegar = word_of(request, "vinegar"), *acid = word_of(request, "acid");
	if (pack)
		out->pack = strcmp(pack, pack_word(PACK_RAW)) == 0 ? PACK_RAW : PACK_HOT;
	if (jars)
		out->jars = strcmp(jars, "sterile") == 0 ? JARS_STERILE : JARS_NOT_STERILE;
	for (int i = VINEGAR_LABELLED; vinegar && i <= VINEGAR_WINE; i++)
		if (strcmp(vinegar, vinegar_word((enum vinegar_choice)i)) == 0)
			out->vinegar = (enum vinegar_choice)i;
	for (int i = ACID_VINEGAR; acid && i <= ACID_NONE; i++)
		if (strcmp(acid, acid_word((enum acid)i)) == 0)
			out->acid = (enum acid)i;
}

static void read_food(const struct reference *ref, const char *slug, struct food_match *out)
{
	const struct food *food = slug ? reference_food(ref, slug) : NULL;
	*out = (struct food_match){.kind = MATCH_NONE};
	if (food)
		*out = (struct food_match){.kind = MATCH_ONE, .foods = {food}, .foods_n = 1};
}

bool decision_request(const struct reference *ref, const json_t *decision, struct request *out)
{
	const json_t *request = json_object_get(decision, "request");
	memset(out, 0, sizeof *out);
	if (!json_is_object(request))
		return false;
	read_food(ref, word_of(decision, "food"), &out->food);
	read_canner(ref, word_of(request, "canner"), out);
	read_jar(ref, request, &out->jar);
	read_words(request, out);
	out->elevation_stated = milli_of(request, "elevation_ft", &out->elevation_mft);
	if (!milli_of(request, "vinegar_percent", &out->vinegar_milli_percent) &&
	    out->vinegar == VINEGAR_LABELLED)
		out->vinegar = VINEGAR_UNKNOWN;
	out->ph_stated = milli_of(request, "ph", &out->ph_milli);
	out->psi = count_of(request, "psi");
	out->holds_quarts = count_of(request, "holds_quarts");
	out->closure = barred_of(ref, FACET_CLOSURE, word_of(request, "closure"));
	out->container = barred_of(ref, FACET_CONTAINER, word_of(request, "container"));
	return true;
}
