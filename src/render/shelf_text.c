/* The shelf as text: what to do at once on top, then what to use first. */
#include <string.h>

#include "jarwright/render_shelf.h"
#include "jarwright/text.h"

static const char *const headings[SHELF_SECTIONS] = {
    [SHELF_ACT] = "NOT FOR THE SHELF: do this",
    [SHELF_COOLING] = "Cooling: test the seals",
    [SHELF_OPENED] = "Opened: keep in the refrigerator",
    [SHELF_CHILLED] = "In the refrigerator",
    [SHELF_FROZEN] = "In the freezer",
    [SHELF_GOOD] = "On the shelf, what to use first on top",
    [SHELF_GONE] = "Gone",
};

/* May the two stand in one line? */
static bool together(const struct shelf_line *a, const struct shelf_line *b)
{
	return a->section == b->section && a->act == b->act && a->dated == b->dated &&
	       a->deadline_ms == b->deadline_ms && a->from_ms == b->from_ms &&
	       a->limit.from == b->limit.from && a->borrowed == b->borrowed &&
	       (!a->dated || date_days(a->until) == date_days(b->until)) &&
	       a->group->state == b->group->state && a->group->processed == b->group->processed &&
	       strcmp(a->group->title, b->group->title) == 0 &&
	       strcmp(a->group->place, b->group->place) == 0;
}

/* "4 pint 26-041: 1-4" */
static size_t put_jars(const struct jar_group *group, char *buffer, size_t size, size_t n)
{
	char set[JAR_SET_SIZE], jar[64];
	size_t jars = jar_set_count(&group->jars);
	int written = snprintf(buffer + n, size - n, "%s%zu %s jar%s (%s: %s)", n ? ", " : "", jars,
			       text_harmless(group->size, jar, sizeof jar), jars == 1 ? "" : "s",
			       group->code, jar_set_text(&group->jars, set, sizeof set));
	return written > 0 && (size_t)written < size - n ? n + (size_t)written : n;
}

static const char *moment(int64_t ms, char buffer[static INSTANT_SIZE])
{
	return instant_text(instant_at((time_t)(ms / 1000)), buffer);
}

/* What to do with it, without source. */
static void act_words(const struct shelf_line *line, char *buffer, size_t size)
{
	char until[INSTANT_SIZE];
	const char *state = line->group->state == JAR_UNSEALED ? "unsealed"
			    : line->group->unclear ? "not known to be processed as decided"
						   : "not processed as decided";
	moment(line->deadline_ms, until);
	switch (line->act) {
	case ACT_RECALLED:
		snprintf(buffer, size,
			 "RECALLED: keep it apart, do not open, eat or give it; see "
			 "'jarwright recall list'");
		return;
	case ACT_DISCARD:
		snprintf(buffer, size, "DISCARD, do not taste: %s",
			 line->group->late || line->group->processed
			     ? "it stood unsealed or unprocessed for too long"
			     : "it stood too long without a process that covers it");
		return;
	case ACT_CHILL:
		snprintf(buffer, size,
			 "%s: refrigerate, freeze or process again before %s; after that, discard",
			 state, until);
		return;
	case ACT_FACTS:
		snprintf(buffer, size,
			 "%s: give the missing facts of its load; without them refrigerate, freeze "
			 "or process again before %s, after that, discard",
			 state, until);
		return;
	case ACT_TEST_SEAL:
		snprintf(buffer, size,
			 "TEST THE SEAL now: it was due by %s; if it is not sealed, discard",
			 until);
		return;
	case ACT_NONE:
		break;
	}
	*buffer = '\0';
}

static void until_words(const struct shelf_line *line, char *buffer, size_t size)
{
	char until[DATE_SIZE], from[INSTANT_SIZE], to[INSTANT_SIZE];
	const char *lead = line->section == SHELF_GOOD || line->section == SHELF_FROZEN ||
				   (line->section == SHELF_CHILLED && line->group->sealed)
			       ? "best before"
			       : "use by";
	if (line->section == SHELF_COOLING)
		snprintf(buffer, size, "from %s to %s", moment(line->from_ms, from),
			 moment(line->deadline_ms, to));
	else if (line->dated)
		snprintf(buffer, size, "%s%s %s%s", line->past ? "PAST: " : "", lead,
			 date_text(line->until, until),
			 line->borrowed ? " (no time is published for it; the strictest near it)"
					: "");
	else
		*buffer = '\0';
}

static void put_line(const struct page *page, const struct shelf_line *line, const char *jars,
		     struct source_list *sources)
{
	char title[JAR_TITLE_SIZE], place[JAR_PLACE_SIZE], source[WORDS_BUFFER] = "";
	char act[WORDS_BUFFER], until[WORDS_BUFFER];
	const struct jar_group *group = line->group;
	bool stands = group->state == JAR_SEALED && line->section == SHELF_GOOD;
	act_words(line, act, sizeof act);
	until_words(line, until, sizeof until);
	text_harmless(group->title, title, sizeof title);
	text_harmless(group->place, place, sizeof place);
	if (line->limit.from)
		cite(sources, source, sizeof source, line->limit.from);
	page_format(page, "  ", "%s: %s%s%s%s%s%s%s%s%s%s%s", title, jars,
		    *place ? (group->state == JAR_GIVEN ? ", to " : ", ") : "", place,
		    stands ? ", not put away yet" : "", line->section == SHELF_GONE ? ", " : "",
		    line->section == SHELF_GONE ? jar_state_word(group->state) : "",
		    *act || *until ? "; " : "", act, until, *source ? " " : "", source);
}

void shelf_text(const struct page *page, const struct shelf_list *list)
{
	struct source_list sources = {.sources_n = 0};
	enum shelf_section section = SHELF_SECTIONS;
	for (size_t i = 0; i < list->lines_n;) {
		const struct shelf_line *line = &list->lines[i];
		char jars[JAR_SET_SIZE + WORDS_BUFFER] = "";
		size_t n = 0;
		if (line->section != section) {
			if (section != SHELF_SECTIONS)
				page_blank(page);
			page_text(page, "", headings[line->section]);
			section = line->section;
		}
		/* A line that would be too long begins anew. */
		while (i < list->lines_n && together(line, &list->lines[i]) && n < WORDS_BUFFER / 2)
			n = put_jars(list->lines[i++].group, jars, sizeof jars, n);
		put_line(page, line, jars, &sources);
	}
	if (list->lines_n == 0)
		page_text(page, "", "No jars here.");
	sources_text(page, &sources);
}
