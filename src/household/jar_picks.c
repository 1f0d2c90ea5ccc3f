/* From what a person types to jars: "26-041-07", "26-041 1-6", "3 of 26-041". */
#include <stdio.h>
#include <string.h>

#include "jarwright/household_jars.h"
#include "jarwright/text.h"
#include "log.h"

#define WORD_SIZE 512

/* A reader over words that are parted by blanks, within and between the texts. */
struct reader {
	const char *const *texts;
	size_t texts_n;
	const char *at; /* in texts[0] */
	struct error *err;
};

/* The next word; false: there is none, or it is too long (after the error). */
static bool next_word(struct reader *r, char word[static WORD_SIZE])
{
	for (; r->texts_n > 0; r->texts++, r->texts_n--, r->at = NULL) {
		if (!r->at)
			r->at = *r->texts;
		r->at += strspn(r->at, " ");
		size_t n = strcspn(r->at, " ");
		if (n == 0)
			continue;
		if (n >= WORD_SIZE)
			return error_usage(r->err, "jar: one of the words is too long for jars");
		memcpy(word, r->at, n);
		word[n] = '\0';
		r->at += n;
		return true;
	}
	return false;
}

/* "01..12,15" is "01-12,15". */
static bool read_set(const char *text, struct jar_set *out)
{
	char plain[WORD_SIZE];
	size_t n = 0;
	for (; *text; text++) {
		plain[n] = *text;
		if (text[0] == '.' && text[1] == '.') {
			plain[n] = '-';
			text++;
		}
		n++;
	}
	plain[n] = '\0';
	return jar_set_parse(plain, out);
}

/*
 * Reads "26-041", or "26-041-07" and what may stand for the 07, with an "@device" at the end or
 * behind the batch. *jars: is there a jar in it?
 */
static bool read_code(const char *word, struct jar_pick *out, bool *jars)
{
	struct batch_code code;
	char text[WORD_SIZE] = "";
	*jars = false;
	if (!strchr(word, '-'))
		return false;
	size_t batch = (size_t)(strchr(word, '-') - word) + 1;
	batch += strspn(word + batch, "0123456789");
	const char *rest = word + batch, *device = strchr(word, '@');
	if (*rest == '@')
		rest += strcspn(rest, "-");
	else if (!device)
		device = "";
	size_t named = device ? strcspn(device, "-") : 0;
	snprintf(text, sizeof text, "%.*s%.*s", (int)batch, word, (int)named, device ? device : "");
	if (!batch_code_parse(text, &code))
		return false;
	*out = (struct jar_pick){.year = code.year, .number = code.number};
	memcpy(out->device, code.device, sizeof out->device);
	if (*rest != '-')
		return *rest == '\0';
	*jars = true;
	snprintf(text, sizeof text, "%.*s", (int)strcspn(rest + 1, "@"), rest + 1);
	return read_set(text, &out->jars);
}

static bool no_jar(struct error *err, const char *word)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(word, SIZE_MAX, shown);
	return error_usage(err,
			   "jar: '%s' is no jar; type it as it is on the lid: 26-041-07, "
			   "26-041-01..12, '26-041 1-6' or '3 of 26-041'",
			   shown);
}

/* "3 of 26-041", the 3 being read already. */
static bool read_count(struct reader *r, int count, struct jar_pick *out)
{
	char word[WORD_SIZE] = "";
	bool jars;
	if (!next_word(r, word) || strcmp(word, "of") != 0 || !next_word(r, word) ||
	    !read_code(word, out, &jars) || jars)
		return r->err->kind ? false : no_jar(r->err, word);
	out->count = count;
	return true;
}

/* A plain "3": not "26-026", which would be a range of one. */
static bool is_count(const char *word, int *count)
{
	struct jar_set set;
	if (strspn(word, "0123456789") != strlen(word) || !jar_set_parse(word, &set))
		return false;
	*count = jar_set_next(&set, 0);
	return true;
}

/* What follows a batch: its jars. */
static bool read_jars_of(struct reader *r, const char *batch, struct jar_pick *out)
{
	char word[WORD_SIZE] = "";
	if (next_word(r, word))
		return read_set(word, &out->jars) || no_jar(r->err, word);
	return r->err->kind
		   ? false
		   : error_usage(r->err, "jar: which jars of %s? say '%s 1-6', or '3 of %s'", batch,
				 batch, batch);
}

bool jar_picks_read(const char *const *words, size_t words_n, struct jar_picks *out,
		    struct error *err)
{
	struct reader r = {words, words_n, NULL, err};
	char word[WORD_SIZE] = "";
	memset(out, 0, sizeof *out);
	while (next_word(&r, word)) {
		int count;
		bool jars, ok;
		if (out->picks_n == JAR_PICKS_MAX)
			return error_usage(err, "jar: these are more than %d at once; say fewer",
					   JAR_PICKS_MAX);
		struct jar_pick *pick = &out->picks[out->picks_n++];
		if (is_count(word, &count))
			ok = read_count(&r, count, pick);
		else if (!read_code(word, pick, &jars))
			ok = no_jar(err, word);
		else
			ok = jars || read_jars_of(&r, word, pick);
		if (!ok)
			return false;
	}
	return err->kind == ERROR_NONE;
}

bool jar_picks_or_batch_read(const char *const *words, size_t words_n, struct jar_picks *out,
			     struct error *err)
{
	bool jars;
	memset(out, 0, sizeof *out);
	if (words_n == 1 && read_code(words[0], &out->picks[0], &jars) && !jars) {
		out->picks_n = 1;
		return true;
	}
	return jar_picks_read(words, words_n, out, err);
}
