/* What the canners of the cook's own kitchen hold. */
#include "own_canner.h"

#include <stdio.h>
#include <string.h>

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

/* ", holds 7 quarts", then " or 9 pints"; nothing where she has not said. */
static void holds_words(char *buffer, size_t size, int holds, const char *jars)
{
	size_t n = strlen(buffer);
	if (holds > 0)
		snprintf(buffer + n, size - n, "%s%d %s%s", n == 0 ? ", holds " : " or ", holds,
			 jars, holds == 1 ? "" : "s");
}

void print_canner(const struct page *page, const char *lead, const struct kitchen_canner *canner)
{
	char holds[WORDS_BUFFER] = "";
	holds_words(holds, sizeof holds, canner->holds_quarts, "quart");
	holds_words(holds, sizeof holds, canner->holds_pints, "pint");
	holds_words(holds, sizeof holds, canner->holds_half_pints, "half-pint");
	page_format(page, lead, "'%s' (%s%s)", canner->name, canner_word(canner->kind), holds);
}

static json_t *json_holds(int holds)
{
	return holds ? json_integer(holds) : json_null();
}

json_t *json_canner(const struct kitchen_canner *canner)
{
	return json_pack("{s:s, s:s, s:o, s:o, s:o}", "name", canner->name, "kind",
			 canner_word(canner->kind), "holds_quarts",
			 json_holds(canner->holds_quarts), "holds_pints",
			 json_holds(canner->holds_pints), "holds_half_pints",
			 json_holds(canner->holds_half_pints));
}
