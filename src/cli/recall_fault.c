/* From what a person types to a fault. */
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "recall.h"

#define MS 1000

/* The first moment of a day where the cook is. */
static int64_t day_begins(struct date date)
{
	struct tm tm = {.tm_year = date.year - 1900,
			.tm_mon = date.month - 1,
			.tm_mday = date.day,
			.tm_isdst = -1};
	return (int64_t)mktime(&tm) * MS;
}

bool fault_period(struct invocation *inv, struct fault *out)
{
	const char *since = option(inv, "since"), *until = option(inv, "until");
	struct date date;
	out->from_ms = 0;
	out->to_ms = INT64_MAX;
	if (since) {
		if (!date_parse("since", since, &date, inv->err))
			return false;
		out->from_ms = day_begins(date);
	}
	if (until) {
		if (!date_parse("until", until, &date, inv->err))
			return false;
		out->to_ms = day_begins(date_from_days(date_days(date) + 1)) - 1;
	}
	return out->from_ms <= out->to_ms ||
	       error_usage(inv->err, "until: it is before --since; type the first day with --since "
				     "and the last with --until");
}

void fault_words(char what[static RECALL_TEXT_SIZE], const char *kind, const char *name,
		 const struct invocation *inv)
{
	const char *since = option(inv, "since"), *until = option(inv, "until");
	char shown[RECALL_TEXT_SIZE - 128];
	text_harmless(name, shown, sizeof shown);
	snprintf(what, RECALL_TEXT_SIZE, "%s '%s'%s%s%s%s", kind, shown, since ? ", from " : "",
		 since ? since : "", until ? ", to " : "", until ? until : "");
}

void fault_food(const char *words, char slug[static FAULT_NAME_SIZE])
{
	struct food_match match;
	reference_find_food(reference_edition(), words, &match);
	const char *name = match.kind == MATCH_ONE ? match.foods[0]->slug : words;
	snprintf(slug, FAULT_NAME_SIZE, "%.*s", FAULT_NAME_SIZE - 1, name);
}

bool fault_jar(struct invocation *inv, struct household *db, const char *words, struct fault *out)
{
	struct jar_picks picks;
	if (!jar_picks_read(&words, 1, &picks, inv->err))
		return false;
	const struct jar_pick *pick = &picks.picks[0];
	if (picks.picks_n != 1 || pick->count || jar_set_count(&pick->jars) != 1)
		return error_usage(inv->err, "jar: type one jar as it is on the lid: 26-041-07");
	out->kind = FAULT_JAR;
	out->number = jar_set_next(&pick->jars, 0);
	return household_find_jar(db, pick, &out->subject, inv->err);
}
