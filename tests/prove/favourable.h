/*
 * The request that leaves only food, pack, canner, jar and elevation to decide: the
 * vinegar is labelled 5 %, the empty jars are sterile, the pressure canner holds seven
 * quarts, and lid and jar are what a published process is for.
 */
#ifndef JARWRIGHT_TESTS_FAVOURABLE_H
#define JARWRIGHT_TESTS_FAVOURABLE_H

#include <stdint.h>

#include "jarwright/decide.h"
#include "jarwright/reference.h"

#define PACK_COUNT 3 /* PACK_UNSTATED, PACK_RAW, PACK_HOT */

/* Elevation is set apart, since callers walk it: see favourable_at(). */
static inline struct request favourable_request(const struct food *food, enum pack pack,
						enum canner canner, enum jar jar)
{
	struct request request = {
	    .food = {.kind = MATCH_ONE, .foods = {food}, .foods_n = 1},
	    .canner_choice = CHOICE_CANNER,
	    .canner = canner,
	    .jar = {.stated = true, .jar = jar},
	    .pack = pack,
	    .elevation_stated = true,
	    .vinegar = VINEGAR_LABELLED,
	    .vinegar_milli_percent = 5000,
	    .jars = JARS_STERILE,
	    .holds_quarts = 7,
	};
	return request;
}

static inline void favourable_at(struct request *request, int32_t foot)
{
	request->elevation_mft = foot * 1000;
}

#endif
