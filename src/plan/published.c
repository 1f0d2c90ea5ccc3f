/* Published rules as figures. */
#include <string.h>

#include "jarwright/plan.h"
#include "jarwright/words.h"

static bool speaks_of(const struct published_rule *rule, const char *words)
{
	const char *item;
	size_t length;
	while (words_next(&words, &item, &length)) {
		char wanted[WORDS_SIZE];
		if (length >= sizeof wanted)
			return false;
		memcpy(wanted, item, length);
		wanted[length] = '\0';
		if (!strstr(rule->says, wanted) && !strstr(rule->applies_to, wanted))
			return false;
	}
	return true;
}

const struct published_rule *published_find(const struct reference *ref, const char *topic,
					    const char *unit, const char *words)
{
	for (size_t i = 0; i < ref->published_n; i++) {
		const struct published_rule *rule = &ref->published[i];
		if (strcmp(rule->topic, topic) == 0 && strcmp(rule->unit, unit) == 0 &&
		    speaks_of(rule, words))
			return rule;
	}
	return NULL;
}

#define FIGURE_MAX 10000

/* Reads digits up to `end`; false: none, something else, or a figure no rule has. */
static bool whole_number(const char *text, const char *end, int *out)
{
	*out = 0;
	for (const char *c = text; c < end; c++) {
		if (*c < '0' || *c > '9' || *out > FIGURE_MAX)
			return false;
		*out = *out * 10 + (*c - '0');
	}
	return end > text;
}

bool published_span(const struct published_rule *rule, struct span *out)
{
	const char *value = rule->value, *end = value + strlen(value);
	const char *dash = strchr(value, '-');
	out->from = &rule->from;
	if (!whole_number(value, dash ? dash : end, &out->least))
		return false;
	out->most = out->least;
	return !dash || (whole_number(dash + 1, end, &out->most) && out->most >= out->least);
}
