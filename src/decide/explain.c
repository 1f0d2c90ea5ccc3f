/*
 * A finding in words: the rule's sentence, what it means in this case, what to do.
 * The sentences are data (db/rules.txt); this file only fills their blanks.
 */
#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "decide_internal.h"

/* Bounded like snprintf: len is what the whole text takes, the buffer holds what fits. */
struct writer {
	char *buffer;
	size_t size;
	size_t len;
};

static void put_char(struct writer *w, char c)
{
	if (w->len + 1 < w->size) {
		w->buffer[w->len] = c;
		w->buffer[w->len + 1] = '\0';
	}
	w->len++;
}

static void put(struct writer *w, const char *text)
{
	for (; *text; text++)
		put_char(w, *text);
}

/* Thousandths as people write them: 45, 4.6, 2.25; thousands of whole units get a comma. */
static void put_milli(struct writer *w, int32_t milli)
{
	char digits[32];
	int64_t whole = llabs((long long)milli) / MILLI;
	int64_t part = llabs((long long)milli) % MILLI;
	if (milli < 0)
		put_char(w, '-');
	if (whole >= 1000)
		snprintf(digits, sizeof digits, "%" PRId64 ",%03" PRId64, whole / 1000,
			 whole % 1000);
	else
		snprintf(digits, sizeof digits, "%" PRId64, whole);
	put(w, digits);
	if (part == 0)
		return;
	snprintf(digits, sizeof digits, ".%03" PRId64, part);
	for (size_t n = strlen(digits); digits[n - 1] == '0'; n--)
		digits[n - 1] = '\0';
	put(w, digits);
}

const char *acid_dose_words(enum acid acid)
{
	switch (acid) {
	case ACID_VINEGAR:
		return "vinegar of at least 5 %";
	case ACID_CITRIC:
		return "citric acid";
	default:
		return "bottled lemon juice";
	}
}

/* What to do instead of counting a metric jar as its namesake: b is the next larger jar. */
static void put_strict(struct writer *w, const struct reference *ref, const struct finding *f)
{
	if (f->b_milli < 0 || f->b_milli >= JAR_COUNT) {
		put(w, "do not use it: no larger jar is published for this food.");
		return;
	}
	put(w, "take the time of the next larger published jar: ask again with --jar ");
	put(w, ref->jars[f->b_milli].name);
	put(w, ".");
}

/* {a} {b} figures, {limit} the rule's, {word} text, {acid} and {jar} of a dose, {strict}. */
static void put_blank(struct writer *w, const struct reference *ref, const struct finding *f,
		      const char *name, size_t n)
{
	if (n == 1 && *name == 'a')
		put_milli(w, f->a_milli);
	else if (n == 1 && *name == 'b')
		put_milli(w, f->b_milli);
	else if (n == 5 && strncmp(name, "limit", n) == 0)
		put_milli(w, ref->rules[f->rule].limit_milli);
	else if (n == 4 && strncmp(name, "word", n) == 0)
		put(w, f->word ? f->word : "");
	else if (n == 4 && strncmp(name, "acid", n) == 0)
		put(w, acid_dose_words((enum acid)f->a_milli));
	else if (n == 6 && strncmp(name, "strict", n) == 0)
		put_strict(w, ref, f);
	else if (n == 3 && strncmp(name, "jar", n) == 0 && f->b_milli >= 0 &&
		 f->b_milli < JAR_COUNT)
		put(w, ref->jars[f->b_milli].name);
}

static void put_template(struct writer *w, const struct reference *ref, const struct finding *f,
			 const char *text)
{
	while (*text) {
		const char *end = *text == '{' ? strchr(text, '}') : NULL;
		if (!end) {
			put_char(w, *text++);
			continue;
		}
		put_blank(w, ref, f, text + 1, (size_t)(end - text - 1));
		text = end + 1;
	}
}

static void put_sentence(struct writer *w, const struct reference *ref, const struct finding *f,
			 const char *text)
{
	if (!*text)
		return;
	if (w->len > 0)
		put_char(w, ' ');
	put_template(w, ref, f, text);
}

size_t finding_text(const struct reference *ref, const struct finding *finding, char *buffer,
		    size_t size)
{
	struct writer w = {.buffer = buffer, .size = size};
	const struct rule *rule = &ref->rules[finding->rule];
	if (size > 0)
		*buffer = '\0';
	if (finding->barred) {
		put_sentence(&w, ref, finding, finding->barred->says);
		put_sentence(&w, ref, finding, finding->barred->instead);
		return w.len;
	}
	put_sentence(&w, ref, finding, rule->says);
	put_sentence(&w, ref, finding, rule->here);
	put_sentence(&w, ref, finding, rule->instead);
	return w.len;
}

const struct citation *finding_citation(const struct reference *ref, const struct finding *finding)
{
	if (finding->from)
		return finding->from;
	return finding->barred ? &finding->barred->from : &ref->rules[finding->rule].from;
}
