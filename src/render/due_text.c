/* What is due, in words. */
#include <string.h>

#include "jarwright/render_shelf.h"
#include "jarwright/text.h"

const char *due_kind_word(enum due_kind kind)
{
	switch (kind) {
	case DUE_CHILL:
		return "chill";
	case DUE_SEAL:
		return "seal-check";
	case DUE_EAT:
		return "eat";
	case DUE_BEST:
		return "best-before";
	case DUE_GAUGE:
		break;
	}
	return "gauge-test";
}

static const char *lead_words(const struct due *due)
{
	enum shelf_act act = due->line ? due->line->act : ACT_NONE;
	switch (due->kind) {
	case DUE_CHILL:
		if (act == ACT_FACTS)
			return "give the missing facts of the load, or chill in time and else "
			       "discard";
		return act == ACT_DISCARD ? "DISCARD, do not taste"
					  : "refrigerate, freeze or process again";
	case DUE_SEAL:
		return "test the seals";
	case DUE_EAT:
		return "eat";
	case DUE_BEST:
		return "best before this day";
	case DUE_GAUGE:
		break;
	}
	return "";
}

char *due_words(const struct due *due, char *buffer, size_t size)
{
	char title[JAR_TITLE_SIZE], set[JAR_SET_SIZE];
	*buffer = '\0';
	const struct gauge_due *gauge = due->gauge;
	if (gauge)
		snprintf(buffer, size, "test the gauge of '%s'%s",
			 text_harmless(gauge->canner, title, sizeof title),
			 gauge->tested ? "" : ", which was never tested");
	if (gauge || !due->line)
		return buffer;
	const struct jar_group *group = due->line->group;
	bool says = due->kind == DUE_CHILL || due->kind == DUE_EAT;
	snprintf(buffer, size, "%s: %s, %s %s%s%s", lead_words(due),
		 text_harmless(group->title, title, sizeof title), group->code,
		 jar_set_text(&due->jars, set, sizeof set), says ? ", " : "",
		 says ? jar_state_word(group->state) : "");
	return buffer;
}

static void put_when(const struct due *due, struct instant now, char *buffer, size_t size)
{
	char until[INSTANT_SIZE], from[INSTANT_SIZE], day[DATE_SIZE];
	bool overdue = due->until_ms ? due->until_ms < now.ms
				     : date_days(due->day) < date_days(instant_date(now));
	const char *mark = overdue || due->now ? "OVERDUE " : "";
	if (due->now)
		snprintf(buffer, size, "%s", mark);
	else if (due->until_ms && due->from_ms)
		snprintf(buffer, size, "%s%s to %s  ", mark,
			 instant_text(instant_at((time_t)(due->from_ms / 1000)), from),
			 instant_text(instant_at((time_t)(due->until_ms / 1000)), until));
	else if (due->until_ms)
		snprintf(buffer, size, "%sbefore %s  ", mark,
			 instant_text(instant_at((time_t)(due->until_ms / 1000)), until));
	else
		snprintf(buffer, size, "%s%s  ", mark, date_text(due->day, day));
}

void due_text(const struct page *page, const struct due_list *list, struct instant now, int days)
{
	struct source_list sources = {.sources_n = 0};
	if (list->items_n == 0)
		page_format(page, "", "Nothing is due within %d day%s.", days,
			    days == 1 ? "" : "s");
	for (size_t i = 0; i < list->items_n; i++) {
		const struct due *due = &list->items[i];
		char when[WORDS_BUFFER], words[2048], source[WORDS_BUFFER] = "";
		put_when(due, now, when, sizeof when);
		if (due->line && due->line->limit.from)
			cite(&sources, source, sizeof source, due->line->limit.from);
		if (due->gauge) {
			const struct published_rule *rule = published_find(
			    reference_edition(), "gauge", "times per year", "check dial gauges");
			if (rule)
				cite(&sources, source, sizeof source, &rule->from);
		}
		page_format(page, "", "%s%s %s", when, due_words(due, words, sizeof words), source);
	}
	sources_text(page, &sources);
}
