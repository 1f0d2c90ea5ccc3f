/* Exact look-ups in the edition. */
#include <string.h>

#include "jarwright/reference.h"

const struct food *reference_food(const struct reference *ref, const char *slug)
{
	size_t low = 0, high = ref->foods_n;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		int order = strcmp(slug, ref->foods[middle].slug);
		if (order == 0)
			return &ref->foods[middle];
		if (order < 0)
			high = middle;
		else
			low = middle + 1;
	}
	return NULL;
}

const struct process_table *reference_table(const struct food *food, enum canner canner,
					    enum pack pack)
{
	for (size_t i = 0; i < food->tables_n; i++)
		if (food->tables[i].canner == canner && food->tables[i].pack == pack)
			return &food->tables[i];
	return NULL;
}

const char *canner_word(enum canner canner)
{
	static const char *const words[CANNER_COUNT] = {
	    [CANNER_BOILING_WATER] = "boiling-water",
	    [CANNER_STEAM] = "steam",
	    [CANNER_DIAL_GAUGE] = "dial-gauge",
	    [CANNER_WEIGHTED_GAUGE] = "weighted-gauge",
	};
	return (unsigned)canner < CANNER_COUNT ? words[canner] : "unknown";
}

const char *pack_word(enum pack pack)
{
	switch (pack) {
	case PACK_RAW:
		return "raw";
	case PACK_HOT:
		return "hot";
	case PACK_UNSTATED:
		break;
	}
	return "unstated";
}

bool reference_jar_for(const struct reference *ref, int64_t volume_nl, enum jar *jar,
		       bool *namesake)
{
	const int64_t nl_a_ml = 1000000;
	for (int i = 0; i < JAR_COUNT; i++) {
		const struct jar_size *size = &ref->jars[i];
		*jar = (enum jar)i;
		*namesake = size->namesake_ml != NONE && volume_nl == size->namesake_ml * nl_a_ml;
		if (*namesake || size->volume_nl >= volume_nl)
			return true;
	}
	return false;
}
