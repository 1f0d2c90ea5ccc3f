/* What the canners of the cook's own kitchen hold. */
#include "request.h"

const struct kitchen_canner *only_canner(const struct kitchen *kitchen, enum canner kind)
{
	const struct kitchen_canner *found = NULL;
	for (size_t i = 0; i < kitchen->canners_n; i++) {
		if (kitchen->canners[i].kind != kind)
			continue;
		if (found)
			return NULL;
		found = &kitchen->canners[i];
	}
	return found;
}

int canner_load(const struct kitchen_canner *canner, enum jar jar)
{
	switch (jar) {
	case JAR_QUART:
		return canner->holds_quarts;
	case JAR_PINT:
		return canner->holds_pints;
	case JAR_HALF_PINT:
		return canner->holds_half_pints;
	default:
		return 0;
	}
}
