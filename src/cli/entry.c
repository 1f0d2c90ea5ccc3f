#include "entry.h"

#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"

void print_entry(const struct page *page, const struct log_entry *entry)
{
	char lead[KITCHEN_NAME_SIZE + 96], when[INSTANT_SIZE], device[KITCHEN_NAME_SIZE + 8];
	char subject[LOG_SUBJECT_SIZE], words[LOG_WORDS_SIZE];
	text_harmless(entry->device, device, sizeof device);
	text_harmless(entry->subject, subject, sizeof subject);
	text_harmless(entry->words, words, sizeof words);
	snprintf(lead, sizeof lead, "%s#%lld  %s  ", device, (long long)entry->number,
		 instant_text(entry->at, when));
	page_format(page, lead, "%s%s: %s", entry->undone ? "[taken back] " : "", subject, words);
	if (*entry->conflict)
		page_format(page, "    does not fit what was before it: ", "%s", entry->conflict);
}

json_t *json_entry(const struct log_entry *entry)
{
	char at[INSTANT_SIZE];
	return json_pack("{s:s, s:I, s:s, s:s, s:s, s:s, s:s, s:b, s:s?}", "device", entry->device,
			 "number", (json_int_t)entry->number, "uuid", entry->uuid, "at",
			 instant_iso(entry->at, at), "kind", entry->kind, "about", entry->subject,
			 "says", entry->words, "undone", entry->undone, "conflict",
			 *entry->conflict ? entry->conflict : NULL);
}
