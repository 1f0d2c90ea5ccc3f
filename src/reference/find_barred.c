/* Methods, foods, closures and containers that are refused by name. */
#include <string.h>

#include "jarwright/reference.h"
#include "jarwright/words.h"

static bool is_called(const struct barred *thing, const char *folded)
{
	return words_fold_to(thing->slug, strlen(thing->slug), folded) ||
	       words_listed(thing->words, folded);
}

const struct barred *reference_find_barred(const struct reference *ref, enum facet facet,
					   const char *words)
{
	char folded[WORDS_SIZE];
	if (!words_fold(words, strlen(words), folded))
		return NULL;
	for (size_t i = 0; i < ref->barred_n; i++)
		if (ref->barred[i].facet == facet && is_called(&ref->barred[i], folded))
			return &ref->barred[i];
	return NULL;
}
