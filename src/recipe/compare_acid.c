/* The strength and kind of the vinegar, and whose juice. */
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

static void say_vinegar(struct judge *j, enum rule_id id, enum weight weight, size_t line,
			int32_t milli)
{
	const struct rule *rule = &j->set->ref->rules[id];
	const struct finding finding = {.rule = id, .level = LEVEL_REFUSE, .a_milli = milli};
	char text[COMPARE_TEXT_SIZE] = "";
	if (j->out)
		finding_text(j->set->ref, &finding, text, sizeof text);
	j->bad_words[line] = true;
	judge_cite(j, weight, rule->id, &rule->from, line, j->pairing->to[line], text);
}

static void judge_strength(struct judge *j, size_t line, int32_t milli)
{
	const struct rule *rules = j->set->ref->rules;
	if (milli < rules[RULE_VINEGAR_WEAK].limit_milli)
		say_vinegar(j, RULE_VINEGAR_WEAK, WEIGH_FORBIDDEN, line, milli);
	else if (milli >= rules[RULE_VINEGAR_STRONG].limit_milli)
		say_vinegar(j, RULE_VINEGAR_STRONG, WEIGH_FORBIDDEN, line, milli);
}

/* Thousandths of a percent; -1: no number, or none that a vinegar can have. */
static int32_t strength_of(const char *text, size_t length)
{
	char number[16];
	struct rational percent;
	struct error err = {.kind = ERROR_NONE};
	int64_t milli;
	if (length == 0 || length >= sizeof number)
		return -1;
	memcpy(number, text, length);
	number[length] = '\0';
	if (!rational_parse(number, &percent, &err) || !rational_floor(percent, 1000, &milli) ||
	    milli > 100000)
		return -1;
	return (int32_t)milli;
}

/* Every number of "4 to 5 %", walking back from the sign. False: there is none. */
static bool judge_before_sign(struct judge *j, size_t line, const char *text, const char *sign)
{
	static const char digits[] = "0123456789.";
	const char *from = sign;
	bool any = false;
	/* A dash between numbers may be one of three bytes. */
	while (from > text && (strchr("0123456789. -to%/", from[-1]) || (from[-1] & 0x80)))
		from--;
	while (from < sign) {
		size_t n = strspn(from, digits);
		if (n > (size_t)(sign - from))
			n = (size_t)(sign - from);
		if (n == 0) {
			from++;
			continue;
		}
		int32_t milli = strength_of(from, n);
		if (milli < 0)
			return false;
		judge_strength(j, line, milli);
		any = true;
		from += n;
	}
	return any;
}

/* The first sign or word for "per cent" in the text, or NULL. */
static const char *percent_sign(const char *text, size_t *length)
{
	static const char *const signs[] = {"%", "percent", "per cent"};
	const char *first = NULL;
	for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
		const char *at = strcasestr(text, signs[i]);
		if (!at || (first && at > first))
			continue;
		first = at;
		*length = strlen(signs[i]);
	}
	return first;
}

enum said { SAID_NOTHING, SAID_STRENGTH, SAID_UNREADABLE };

/* "vinegar 4°": a figure beside its name is no amount, so it may be a strength. */
static bool has_number(const char *name)
{
	return name[strcspn(name, "0123456789")] != '\0';
}

/* What the line's own words say of the strength: each figure must do. */
static enum said judge_said_strength(struct judge *j, size_t line)
{
	const char *text = j->items->recipe->lines[line].text;
	enum said said = SAID_NOTHING;
	const char *at = text, *sign;
	size_t length = 0;
	while ((sign = percent_sign(at, &length)) != NULL) {
		if (!judge_before_sign(j, line, text, sign))
			return SAID_UNREADABLE;
		said = SAID_STRENGTH;
		at = sign + length;
	}
	if (said == SAID_NOTHING && (text_has_word(text, "|acidity|grain|acid|strength|") ||
				     has_number(j->items->recipe->lines[line].read.ingredient)))
		return SAID_UNREADABLE;
	return said;
}

/* The strength in the line and the one on the cook's label: both must do. */
static void judge_strengths(struct judge *j, size_t line)
{
	const enum said said = judge_said_strength(j, line);
	if (j->facts->vinegar == VINEGAR_LABELLED)
		judge_strength(j, line, j->facts->vinegar_milli_percent);
	if (j->facts->vinegar == VINEGAR_UNKNOWN)
		say_vinegar(j, RULE_VINEGAR_UNKNOWN, WEIGH_FORBIDDEN, line, 0);
	else if (said == SAID_UNREADABLE ||
		 (said == SAID_NOTHING && j->facts->vinegar == VINEGAR_UNSTATED))
		say_vinegar(j, RULE_VINEGAR_MISSING, WEIGH_ASK, line, 0);
}

/* Thinned, or one of several, where the formula's line says nothing of the kind. */
static bool is_thinned(const struct judge *j, size_t line)
{
	static const char words[] = "|water|diluted|dilute|weakened|brine|mixed|";
	const struct item *printed = &j->printed[j->pairing->to[line]];
	const char *at = j->items->recipe->lines[line].text;
	char word[WORDS_SIZE];
	while (text_next_word(&at, word)) {
		if (text_has_word(word, words) && !printed_says(printed, word))
			return true;
	}
	return false;
}

static void judge_one_vinegar(struct judge *j, size_t line)
{
	const unsigned said = j->items->item[line].words.said;
	if (is_thinned(j, line))
		judge_words(j, WEIGH_FORBIDDEN, DIFF_VINEGAR_DILUTED, CHANGE_DILUTED, line,
			    "thinned vinegar.");
	if ((said & SAID_WINE) || j->facts->vinegar == VINEGAR_WINE)
		say_vinegar(j, RULE_VINEGAR_WINE, WEIGH_FORBIDDEN, line, 0);
	else if ((said & SAID_HOME_MADE) || j->facts->vinegar == VINEGAR_HOME_MADE)
		say_vinegar(j, RULE_VINEGAR_HOME_MADE, WEIGH_FORBIDDEN, line, 0);
	else if (said & SAID_ODD_VINEGAR)
		judge_words(j, WEIGH_UNCOVERED, DIFF_VINEGAR_KIND, CHANGE_VINEGAR_KIND, line,
			    "only white and cider vinegar are published as standing for each "
			    "other.");
	judge_strengths(j, line);
}

bool needs_bottled(const struct formula *formula, const struct item *printed)
{
	return printed->role == ROLE_VINEGAR || (printed->words.said & SAID_BOTTLED) ||
	       (formula->food->acid_need & ACID_NEED_BOTTLED_JUICE);
}

static void judge_juice(struct judge *j, size_t line, const struct item *printed)
{
	const struct item *mine = &j->items->item[line];
	const struct recipe_line *written = &j->items->recipe->lines[line];
	bool fresh =
	    (mine->words.said & SAID_FRESH_JUICE) || strcmp(written->read.unit, "fruit") == 0;
	char shown[TEXT_SHOWN_SIZE];
	text_show(mine->name, (size_t)-1, shown);
	if (printed->role == ROLE_VINEGAR)
		judge_say(j, WEIGH_FINE, DIFF_JUICE_FOR_VINEGAR, CHANGE_JUICE_FOR_VINEGAR, line, -1,
			  "%s: bottled juice may take the place of the vinegar, equal measure.",
			  shown);
	if (is_thinned(j, line))
		judge_words(j, WEIGH_FORBIDDEN, DIFF_LESS_ACID, CHANGE_LESS_ACID, line,
			    "thinned juice.");
	if (!needs_bottled(j->formula, printed) || (!fresh && (mine->words.said & SAID_BOTTLED)))
		return;
	judge_words(j, fresh ? WEIGH_FORBIDDEN : WEIGH_ASK, DIFF_FRESH_JUICE, CHANGE_FRESH_JUICE,
		    line, "the acid of fresh fruit varies.");
}

void judge_acids(struct judge *j)
{
	for (size_t i = 0; i < j->items->recipe->lines_n; i++) {
		if (j->pairing->to[i] < 0)
			continue;
		const struct item *printed = &j->printed[j->pairing->to[i]];
		const struct item *mine = &j->items->item[i];
		if (mine->words.is & IS_VINEGAR)
			judge_one_vinegar(j, i);
		else if ((mine->words.is & IS_CITRUS_JUICE) &&
			 (printed->role == ROLE_VINEGAR || printed->role == ROLE_CITRUS))
			judge_juice(j, i, printed);
	}
}
