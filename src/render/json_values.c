/* Single values of an answer in JSON. */
#include <math.h>

#include "jarwright/render.h"

#define MILLI 1000

json_t *json_append(json_t *list, json_t *value)
{
	if (json_array_append_new(list, value) == 0)
		return list;
	json_decref(list);
	return NULL;
}

json_t *json_milli(int32_t milli)
{
	if (milli == NONE)
		return json_null();
	if (milli % MILLI == 0)
		return json_integer(milli / MILLI);
	return json_real((double)milli / MILLI);
}

json_t *json_tenth(double number)
{
	double tenths = round(number * 10);
	return fmod(tenths, 10) == 0 ? json_integer((json_int_t)(tenths / 10))
				     : json_real(tenths / 10);
}

json_t *json_positive(int number)
{
	return number > 0 ? json_integer(number) : json_null();
}

json_t *json_citation(const struct citation *citation)
{
	char words[WORDS_BUFFER];
	return json_string(citation_words(words, sizeof words, citation));
}

json_t *json_band(const struct band *band)
{
	if (band->to_ft == BAND_OPEN)
		return json_pack("[i, n]", (int)band->from_ft);
	return json_pack("[i, i]", (int)band->from_ft, (int)band->to_ft);
}

json_t *json_foods(const struct food_match *match)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < match->foods_n; i++) {
		const struct food *food = match->foods[i];
		list = json_append(
		    list, json_pack("{s:s, s:s}", "food", food->slug, "title", food->title));
	}
	return list;
}
