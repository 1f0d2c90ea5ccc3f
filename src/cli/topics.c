#include "topics.h"

#include <string.h>

#include "cli.h"
#include "jarwright/reference.h"
#include "jarwright/spelling.h"

/* Generated from topics.txt. */
#include "topics_text.h"

#define TYPED_INDENT "    "

const struct topic *topic_find(const char *name)
{
	for (size_t i = 0; i < topics_n; i++)
		if (strcmp(topics[i].name, name) == 0)
			return &topics[i];
	return NULL;
}

const char *nearest_topic(const char *name)
{
	const char *nearest = NULL;
	size_t least = spelling_limit(name) + 1;
	for (size_t i = 0; i < topics_n; i++) {
		size_t distance = spelling_distance(name, topics[i].name);
		if (distance < least) {
			least = distance;
			nearest = topics[i].name;
		}
	}
	return nearest;
}

const char *topic_citation(const char *at, size_t *id_n)
{
	at = strchr(at, '[');
	if (!at)
		return NULL;
	at++;
	*id_n = strcspn(at, " ]");
	return at;
}

static const struct source *source_named(const char *id, size_t id_n)
{
	const struct reference *ref = reference_edition();
	for (size_t i = 0; i < ref->sources_n; i++) {
		const struct source *source = &ref->sources[i];
		if (strlen(source->id) == id_n && memcmp(source->id, id, id_n) == 0)
			return source;
	}
	return NULL;
}

/* What the short names in the topic's brackets stand for. */
static void sources_part(const struct page *page, const struct topic *topic)
{
	struct source_list cited = {0};
	size_t id_n;
	for (size_t i = 0; i < topic->lines_n; i++) {
		const char *at = topic->lines[i].text;
		while ((at = topic_citation(at, &id_n)) != NULL) {
			struct citation citation = {source_named(at, id_n), ""};
			char words[WORDS_BUFFER];
			if (citation.source)
				cite(&cited, words, sizeof words, &citation);
		}
	}
	sources_text(page, &cited);
}

void help_topic(const struct page *page, const struct topic *topic)
{
	fprintf(page->out, "jarwright help %s: %s\n", topic->name, topic->title);
	enum topic_line_kind before = TOPIC_TEXT;
	for (size_t i = 0; i < topic->lines_n; i++) {
		const struct topic_line *line = &topic->lines[i];
		/* Entries of a list, and lines to type, stand close together. */
		if (line->kind == TOPIC_TEXT || line->kind != before)
			page_blank(page);
		if (line->kind == TOPIC_TYPED)
			fprintf(page->out, TYPED_INDENT "%s\n", line->text);
		else
			page_text(page, line->kind == TOPIC_ITEM ? "  - " : "", line->text);
		before = line->kind;
	}
	sources_part(page, topic);
}
