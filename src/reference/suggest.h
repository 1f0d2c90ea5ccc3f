/* Foods whose name is near in spelling. Private to src/reference. */
#ifndef JARWRIGHT_REFERENCE_SUGGEST_H
#define JARWRIGHT_REFERENCE_SUGGEST_H

#include "jarwright/reference.h"

/*
 * Puts up to six foods into out->foods whose slug, synonyms or a word of whose title is
 * at most two letters from the folded words (one, where they are short), nearest first.
 */
void suggest_foods(const struct reference *ref, const char *folded, struct food_match *out);

#endif
