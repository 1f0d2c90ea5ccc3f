#include "suggest.h"

#include <string.h>

#include "jarwright/spelling.h"
#include "jarwright/words.h"

#define SUGGESTIONS_MAX 6

/* The suggestions so far, nearest first. */
struct nearest {
	const char *folded;
	size_t length;
	size_t limit; /* the greatest distance that still counts */
	const struct food *foods[SUGGESTIONS_MAX + 1];
	size_t distances[SUGGESTIONS_MAX + 1];
	size_t n;
};

static void drop(struct nearest *near, size_t at)
{
	near->n--;
	for (size_t i = at; i < near->n; i++) {
		near->foods[i] = near->foods[i + 1];
		near->distances[i] = near->distances[i + 1];
	}
}

/* Each food once, at its smallest distance; of equals, the one found first. */
static void insert(struct nearest *near, const struct food *food, size_t distance)
{
	for (size_t i = 0; i < near->n; i++) {
		if (near->foods[i] != food)
			continue;
		if (near->distances[i] <= distance)
			return;
		drop(near, i);
		break;
	}
	size_t at = near->n;
	while (at > 0 && near->distances[at - 1] > distance) {
		near->foods[at] = near->foods[at - 1];
		near->distances[at] = near->distances[at - 1];
		at--;
	}
	near->foods[at] = food;
	near->distances[at] = distance;
	near->n++;
	if (near->n > SUGGESTIONS_MAX)
		near->n = SUGGESTIONS_MAX;
}

static void weigh(struct nearest *near, const struct food *food, const char *word)
{
	size_t length = strlen(word);
	size_t apart = length > near->length ? length - near->length : near->length - length;
	if (apart > near->limit)
		return;
	size_t distance = spelling_distance(word, near->folded);
	if (distance <= near->limit)
		insert(near, food, distance);
}

static void weigh_title_words(struct nearest *near, const struct food *food)
{
	char title[WORDS_SIZE];
	if (!words_fold(food->title, strlen(food->title), title))
		return;
	for (char *word = title; *word;) {
		size_t n = strcspn(word, " ");
		bool last = word[n] == '\0';
		word[n] = '\0';
		weigh(near, food, word);
		word += n + !last;
	}
}

void suggest_foods(const struct reference *ref, const char *folded, struct food_match *out)
{
	struct nearest near = {.folded = folded, .length = strlen(folded)};
	near.limit = near.length <= 4 ? 1 : 2;
	/* Of equals the first found stays first: a food's own name before a word of a title. */
	for (size_t i = 0; i < ref->foods_n; i++) {
		char slug[WORDS_SIZE];
		if (words_fold(ref->foods[i].slug, strlen(ref->foods[i].slug), slug))
			weigh(&near, &ref->foods[i], slug);
	}
	for (size_t i = 0; i < ref->synonyms_n; i++) {
		char word[WORDS_SIZE];
		if (words_fold(ref->synonyms[i].word, strlen(ref->synonyms[i].word), word))
			weigh(&near, ref->synonyms[i].food, word);
	}
	for (size_t i = 0; i < ref->foods_n; i++)
		weigh_title_words(&near, &ref->foods[i]);
	for (size_t i = 0; i < near.n; i++)
		out->foods[out->foods_n++] = near.foods[i];
}
