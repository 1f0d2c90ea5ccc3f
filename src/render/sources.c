/* Short citations in the text, and what they stand for at its end. */
#include <string.h>

#include "jarwright/render.h"

char *cite(struct source_list *list, char *buffer, size_t size, const struct citation *citation)
{
	const struct source *source = citation->source;
	size_t i = 0;
	while (i < list->sources_n && list->sources[i] != source)
		i++;
	if (i == list->sources_n && i < SOURCES_MAX)
		list->sources[list->sources_n++] = source;
	snprintf(buffer, size, "[%s%s%s]", source->id, *citation->place ? " " : "",
		 citation->place);
	return buffer;
}

void sources_text(const struct page *page, const struct source_list *list)
{
	if (list->sources_n == 0)
		return;
	page_blank(page);
	page_text(page, "", "Sources:");
	for (size_t i = 0; i < list->sources_n; i++) {
		const struct citation whole = {.source = list->sources[i], .place = ""};
		char words[WORDS_BUFFER];
		page_format(page, "  ", "%s: %s", list->sources[i]->id,
			    citation_words(words, sizeof words, &whole));
	}
}
