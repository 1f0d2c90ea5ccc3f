/* Findings: what each one weighs, its words, and what they come to. */
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "compare_internal.h"
#include "jarwright/text.h"

/* What the finding comes to, and which lines it stands against. */
static void mark(struct judge *j, enum weight weight, size_t line, int printed)
{
	j->asked |= weight == WEIGH_ASK;
	j->uncovered |= weight == WEIGH_UNCOVERED;
	j->forbidden |= weight == WEIGH_FORBIDDEN;
	if (weight >= WEIGH_ASK && printed >= 0)
		j->bad_printed[printed] = true;
	if (weight >= WEIGH_ASK && line != COMPARE_NO_LINE)
		j->bad_line[line] = true;
}

static bool is_worse(const struct compare_finding *a, const struct compare_finding *b)
{
	return a->level > b->level || (a->level == b->level && !a->uncovered && b->uncovered);
}

/* Worst first; of the same weight in order. */
static void insert(struct comparison *out, const struct compare_finding *new)
{
	size_t at = out->findings_n;
	while (at > 0 && is_worse(new, &out->findings[at - 1]))
		at--;
	if (out->findings_n == COMPARE_FINDINGS_MAX) {
		out->findings_left_out++;
		if (at == COMPARE_FINDINGS_MAX)
			return;
		out->findings_n--;
	}
	memmove(&out->findings[at + 1], &out->findings[at], (out->findings_n - at) * sizeof *new);
	out->findings[at] = *new;
	out->findings_n++;
}

void judge_cite(struct judge *j, enum weight weight, const char *rule, const struct citation *from,
		size_t line, int printed, const char *text)
{
	static const enum level levels[] = {LEVEL_NOTE, LEVEL_WARN, LEVEL_ASK, LEVEL_REFUSE,
					    LEVEL_REFUSE};
	mark(j, weight, line, printed);
	if (!j->out)
		return;
	struct compare_finding new = {rule, levels[weight], weight == WEIGH_UNCOVERED, line, "",
				      from};
	snprintf(new.text, sizeof new.text, "%s", text);
	text_drop_partial(new.text);
	insert(j->out, &new);
}

void judge_say(struct judge *j, enum weight weight, enum difference difference, enum change change,
	       size_t line, int printed, const char *format, ...)
{
	const struct compare_rule *rule = difference_rule(difference);
	char text[COMPARE_TEXT_SIZE] = "";
	va_list args;
	va_start(args, format);
	if (j->out)
		vsnprintf(text, sizeof text, format, args);
	va_end(args);
	/* What is refused or asked ends with what to do about it. */
	size_t n = strlen(text);
	if (j->out && weight >= WEIGH_ASK)
		snprintf(text + n, sizeof text - n, " %s", rule->instead);
	judge_cite(j, weight, rule->slug, &j->set->rules[change]->from, line, printed, text);
}

void judge_words(struct judge *j, enum weight weight, enum difference difference,
		 enum change change, size_t line, const char *what)
{
	char shown[TEXT_SHOWN_SIZE];
	if (weight >= WEIGH_ASK)
		j->bad_words[line] = true;
	if (j->out)
		text_show(j->items->recipe->lines[line].text, (size_t)-1, shown);
	else
		shown[0] = '\0';
	judge_say(j, weight, difference, change, line, j->pairing->to[line], "%s: %s", shown, what);
}

enum verdict judge_verdict(const struct judge *j)
{
	if (j->forbidden)
		return VERDICT_REFUSED;
	if (j->uncovered)
		return VERDICT_UNTESTED;
	return j->asked ? VERDICT_UNCLEAR : VERDICT_TESTED;
}
