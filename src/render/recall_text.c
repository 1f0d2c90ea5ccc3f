/* Touched jars in words: where they are, and what to do with them. */
#include <string.h>

#include "jarwright/plan.h"
#include "jarwright/render_recall.h"
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "recall_words.h"

const char never_used[] = "Never used: no jar in the log was made with it.";

const char eaten_advice[] =
    "If somebody who ate of it has any sign - double or blurred vision, drooping eyelids, slurred "
    "speech, trouble swallowing or breathing, weak muscles - or feels ill, see a doctor or call "
    "the "
    "emergency number at once, and say that it may be botulism and that home-canned food was "
    "eaten. If all feel well, call a doctor or a poison centre all the same. Nothing here "
    "replaces their judgement.";

char *batch_words(char buffer[static BATCH_WORDS_SIZE], int year, int number)
{
	if (year >= 2000 && year <= 2099)
		snprintf(buffer, BATCH_WORDS_SIZE, "%02d-%03d", year - 2000, number);
	else
		snprintf(buffer, BATCH_WORDS_SIZE, "%d-%03d", year, number);
	return buffer;
}

void touched_batch_code(const struct touched_jar *jar, char *buffer, size_t size)
{
	char code[BATCH_WORDS_SIZE];
	snprintf(buffer, size, "%s", batch_words(code, jar->year, jar->number_of_batch));
}

char *place_words(char *buffer, size_t size, const struct touched_jar *jar)
{
	char place[PLACE_SIZE], given[PLACE_SIZE];
	text_harmless(jar->place, place, sizeof place);
	text_harmless(jar->given_to, given, sizeof given);
	const char *state = jar->missing ? "not in the log any more" : jar_state_word(jar->state);
	if (!jar->missing && jar->state == JAR_SHELF)
		state = "on the shelf";
	bool to = !jar->missing && jar->state == JAR_GIVEN;
	snprintf(buffer, size, "%s%s%s%s%s", state, *place ? (to ? " to " : ", ") : "", place,
		 *given && !to ? ", was given to " : "", *given && !to ? given : "");
	if (to && !*place)
		snprintf(buffer, size, "given away, not said to whom");
	return buffer;
}

bool same_place(const struct touched_jar *a, const struct touched_jar *b)
{
	return a->batch == b->batch && a->state == b->state && a->missing == b->missing &&
	       (a->step > 0) == (b->step > 0) && strcmp(a->place, b->place) == 0 &&
	       strcmp(a->given_to, b->given_to) == 0 && strcmp(a->size, b->size) == 0;
}

/* The jars like this one, unless one of them came before it. */
static bool bunch(const struct touched_jars *jars, size_t first, size_t i, struct jar_set *out)
{
	memset(out, 0, sizeof *out);
	for (size_t k = first; k < i; k++)
		if (same_place(&jars->jars[k], &jars->jars[i]))
			return false;
	for (size_t k = i; k < jars->jars_n && jars->jars[k].batch == jars->jars[i].batch; k++)
		if (same_place(&jars->jars[k], &jars->jars[i]))
			jar_set_add(out, jars->jars[k].number);
	return true;
}

static void batch_head(const struct page *page, const struct touched_jar *jar)
{
	char code[BATCH_WORDS_SIZE], title[TITLE_SIZE], lead[BATCH_WORDS_SIZE + 4];
	snprintf(lead, sizeof lead, "%s  ", batch_words(code, jar->year, jar->number_of_batch));
	page_format(page, lead, "%s, %s", text_harmless(jar->title, title, sizeof title), jar->day);
}

static void count_text(const struct page *page, const struct touched_jars *jars)
{
	size_t batches = 0, later = 0;
	for (size_t i = 0; i < jars->jars_n; i++) {
		batches += i == 0 || jars->jars[i].batch != jars->jars[i - 1].batch;
		later += jars->jars[i].step > 0;
	}
	page_format(page, "", "%zu jar%s of %zu batch%s%s", jars->jars_n,
		    jars->jars_n == 1 ? "" : "s", batches, batches == 1 ? "" : "es",
		    later ? ", some of them made with jars of it:" : ":");
}

void touched_text(const struct page *page, const struct touched_jars *jars, const char *none)
{
	size_t first = 0;
	if (jars->jars_n == 0 && jars->unfilled_n == 0)
		page_text(page, "", none);
	else if (jars->jars_n == 0)
		page_text(page, "", "No jar in the log was made with it yet.");
	else
		count_text(page, jars);
	for (size_t i = 0; i < jars->jars_n; i++) {
		const struct touched_jar *jar = &jars->jars[i];
		struct jar_set set;
		char place[WORDS_BUFFER], numbers[JAR_SET_SIZE], size[64];
		if (i == 0 || jar->batch != jars->jars[i - 1].batch) {
			first = i;
			batch_head(page, jar);
		}
		if (bunch(jars, first, i, &set))
			page_format(page, "  ", "%s %s (%s)%s: %s",
				    jar_set_count(&set) == 1 ? "jar" : "jars",
				    jar_set_text(&set, numbers, sizeof numbers),
				    text_harmless(jar->size, size, sizeof size),
				    jar->step ? ", made with jars of it" : "",
				    place_words(place, sizeof place, jar));
	}
	unfilled_text(page, jars);
}

void unfilled_text(const struct page *page, const struct touched_jars *jars)
{
	for (size_t i = 0; i < jars->unfilled_n; i++) {
		const struct unfilled_batch *batch = &jars->unfilled[i];
		char code[BATCH_WORDS_SIZE], title[TITLE_SIZE];
		page_format(page, "careful   ",
			    "Batch %s (%s, %s) is begun with it and has no jars in the log yet.",
			    batch_words(code, batch->year, batch->number),
			    text_harmless(batch->title, title, sizeof title), batch->day);
	}
}

/* --- What to do --- */

enum whereabouts { HERE, COLD, GIVEN, EATEN, GONE, WHEREABOUTS };

static enum whereabouts whereabouts(enum jar_state state)
{
	switch (state) {
	case JAR_REFRIGERATED:
	case JAR_FROZEN:
		return COLD;
	case JAR_GIVEN:
		return GIVEN;
	case JAR_EATEN:
		return EATEN;
	case JAR_DISCARDED:
		return GONE;
	default:
		return HERE;
	}
}

static void here_text(const struct page *page)
{
	page_text(page, "here      ",
		  "Set these jars apart. Do not open or taste them, not even a little: food that "
		  "makes ill may look and smell well. Discard them as suspect jars: with gloves; a "
		  "sealed jar stays closed and goes into a bag, and the bag into the trash; one "
		  "that is open, unsealed or leaking must be made harmless first. 'jarwright help "
		  "seals' and SAFETY.md say how. [aib539-2015-g1 p. 1-27]");
}

static void cold_text(const struct page *page, const struct load_rules *rules,
		      struct source_list *sources)
{
	char source[WORDS_BUFFER];
	page_format(page, "cold      ",
		    "Cold does not make safe what grew before. Of these, only what went into the "
		    "cold within %d hours after it came out of the canner may be kept; do not "
		    "taste the rest, or one you doubt: discard it like those on the shelf. %s",
		    rules->wrong_h, cite(sources, source, sizeof source, &rules->wrong->from));
}

void advice_text(const struct page *page, const struct load_rules *rules, unsigned states)
{
	bool any[WHEREABOUTS] = {false};
	struct source_list sources = {.sources_n = 0};
	for (int state = 0; state < JAR_STATE_COUNT; state++)
		if (states & 1U << state)
			any[whereabouts((enum jar_state)state)] = true;
	if (states == 0)
		return;
	page_blank(page);
	page_text(page, "", "What to do:");
	if (any[HERE])
		here_text(page);
	if (any[COLD])
		cold_text(page, rules, &sources);
	if (any[GIVEN])
		page_text(
		    page, "given     ",
		    "Tell whoever has them, now: they are not to be tasted. 'jarwright recall "
		    "show' has a sheet to hand or send to them.");
	if (any[EATEN] || any[GIVEN] || any[HERE])
		page_text(page, "eaten     ", eaten_advice);
	if (any[GONE])
		page_text(page, "discarded ",
			  "If one of them leaked or was open, what it touched is to be cleaned as "
			  "SAFETY.md says. [aib539-2015-g1 p. 1-27]");
	page_text(page, "ask       ",
		  "Where you doubt, your extension service or food safety authority decides, not "
		  "this program.");
	sources_text(page, &sources);
}
