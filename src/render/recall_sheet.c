/* What is handed or sent to those who were given jars: plain, and nothing they need not know. */
#include <string.h>

#include "jarwright/instant.h"
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "recall_words.h"

/* To whom it went; "" if to nobody, or it is not said. */
static const char *person_of(const struct recalled_jar *jar)
{
	if (jar->jar.missing)
		return "";
	if (*jar->jar.given_to)
		return jar->jar.given_to;
	return jar->jar.state == JAR_GIVEN ? jar->jar.place : "";
}

static bool was_given(const struct recalled_jar *jar)
{
	return !jar->jar.missing && (*jar->jar.given_to || jar->jar.state == JAR_GIVEN) &&
	       jar->disposition != DISPOSITION_CLEARED;
}

static bool is_of(const struct recalled_jar *jar, const char *person)
{
	return was_given(jar) && strcmp(person_of(jar), person) == 0;
}

/* Is it the first jar of its person? */
static bool is_first(const struct recall_sheet *sheet, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (is_of(&sheet->jars[k], person_of(&sheet->jars[i])))
			return false;
	return true;
}

static void put_jar(const struct page *page, const struct touched_jar *jar)
{
	char code[BATCH_WORDS_SIZE], title[TITLE_SIZE], size[64], lead[BATCH_WORDS_SIZE + 16];
	snprintf(lead, sizeof lead, "  [ ] %s-%02d  ",
		 batch_words(code, jar->year, jar->number_of_batch), jar->number);
	page_format(page, lead, "%s, %s jar, made %s",
		    text_harmless(jar->title, title, sizeof title),
		    text_harmless(jar->size, size, sizeof size), jar->day);
}

static void put_person(const struct page *page, const struct recall_sheet *sheet,
		       const char *person)
{
	char name[PLACE_SIZE], opened[INSTANT_SIZE];
	struct instant at = instant_at((time_t)(sheet->entry.opened_ms / 1000));
	date_text(instant_date(at), opened);
	page_headline(page, "PLEASE DO NOT EAT", "from these jars");
	page_format(page, "For: ", "%s",
		    *person ? text_harmless(person, name, sizeof name) : "(whoever has them)");
	page_format(page, "",
		    "Recall %s of %s. These home-canned jars may not be safe to eat. The "
		    "code is on the lid.",
		    sheet->entry.code, opened);
	page_blank(page);
	for (size_t i = 0; i < sheet->entry.jars_n; i++)
		if (is_of(&sheet->jars[i], person))
			put_jar(page, &sheet->jars[i].jar);
	page_blank(page);
	page_text(page, "1. ",
		  "Do not open or taste them, even if they look and smell well. If one "
		  "went into other food, do not eat that either.");
	page_text(page, "2. ",
		  "Give them back closed, or discard them: with gloves, a sealed jar closed in a "
		  "bag, the bag in the trash, out of reach of children and animals. Do not empty "
		  "one that is open or leaks; ask first how it is made harmless.");
	page_text(page, "3. ", eaten_advice);
	page_text(page, "4. ",
		  "Tick each jar and say what became of it: given back, thrown away, "
		  "eaten (when, by whom), given on (to whom).");
}

size_t recall_sheet_text(const struct page *page, const struct recall_sheet *sheet, const char *to)
{
	size_t parts = 0;
	for (size_t i = 0; i < sheet->entry.jars_n; i++) {
		const char *person = person_of(&sheet->jars[i]);
		if (!was_given(&sheet->jars[i]) || !is_first(sheet, i) ||
		    (to && strcmp(person, to) != 0))
			continue;
		if (parts++ > 0) {
			page_blank(page);
			page_text(page, "", "- - - - - cut here - - - - -");
			page_blank(page);
		}
		put_person(page, sheet, person);
	}
	return parts;
}
