/* explain: a rule, its reason and its source. */
#include <string.h>

#include "cli.h"
#include "jarwright/compare.h"
#include "jarwright/spelling.h"
#include "jarwright/text.h"
#include "jarwright/words.h"
#include "request.h"

static const struct option_spec options[] = {OPTION_JSON, OPTIONS_END};

static const struct example examples[] = {
    {"jarwright explain steam-time-limit", "why, and who says so"},
    {"jarwright explain oven", "why a method is refused"},
    {"jarwright explain less-acid", "a finding of 'recipe compare'"},
    {"jarwright explain venting", "what is published on a topic"},
    {"jarwright explain", "everything that can be explained"},
    EXAMPLES_END,
};

/* The rule's sentence in general: its own figure filled in, a case's left open. */
static void general_words(char *buffer, size_t size, const struct rule *rule, const char *text)
{
	size_t n = 0;
	while (*text && n + 1 < size) {
		const char *end = *text == '{' ? strchr(text, '}') : NULL;
		char figure[WORDS_BUFFER] = "...";
		if (!end) {
			buffer[n++] = *text++;
			continue;
		}
		if (strncmp(text, "{limit}", 7) == 0)
			milli_words(figure, sizeof figure, rule->limit_milli);
		int written = snprintf(buffer + n, size - n, "%s", figure);
		n += written > 0 && (size_t)written < size - n ? (size_t)written : 0;
		text = end + 1;
	}
	buffer[n] = '\0';
}

#define RULE_TEXT 1000

static int explain_rule(struct invocation *inv, const struct rule *rule)
{
	char source[WORDS_BUFFER], limit[WORDS_BUFFER];
	char says[RULE_TEXT], why[RULE_TEXT], instead[RULE_TEXT];
	general_words(says, sizeof says, rule, rule->says);
	general_words(why, sizeof why, rule, rule->why);
	general_words(instead, sizeof instead, rule, rule->instead);
	citation_words(source, sizeof source, &rule->from);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:s, s:s, s:s, s:o, s:s, s:s}", "rule",
					     rule->id, "says", says, "why", why, "instead", instead,
					     "limit", json_milli(rule->limit_milli), "unit",
					     rule->unit, "source", source),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	page_headline(&page, rule->id, says);
	if (*rule->why)
		page_format(&page, "  why     ", "%s", why);
	if (*rule->instead)
		page_format(&page, "  instead ", "%s", instead);
	if (rule->limit_milli != NONE)
		page_format(&page, "  limit   ", "%s %s",
			    milli_words(limit, sizeof limit, rule->limit_milli), rule->unit);
	page_format(&page, "  source  ", "%s", source);
	return STATUS_DONE;
}

static json_t *changes_json(const struct compare_rule *rule)
{
	const struct reference_tables *tables = reference_tables_edition();
	const struct change_rule_row *row;
	json_t *list = json_array();
	for (size_t i = 0; list && (row = compare_rule_published(tables, rule, i)) != NULL; i++)
		list = json_append(list,
				   json_pack("{s:s, s:s, s:s, s:o}", "change", row->change,
					     "verdict", row->verdict, "condition", row->condition,
					     "source", json_citation(&row->from)));
	return list;
}

/* A difference between a recipe and a formula, with the published changes it rests on. */
static int explain_difference(struct invocation *inv, const struct compare_rule *rule)
{
	const struct reference_tables *tables = reference_tables_edition();
	const struct change_rule_row *row;
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	char source[WORDS_BUFFER];
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:s, s:s, s:o}", "rule", rule->slug, "says",
					     rule->says, "instead", rule->instead, "published",
					     changes_json(rule)),
				   STATUS_DONE);
	page_headline(&page, rule->slug, rule->says);
	if (*rule->instead)
		page_text(&page, "  instead ", rule->instead);
	for (size_t i = 0; (row = compare_rule_published(tables, rule, i)) != NULL; i++)
		page_format(&page, i == 0 ? "  published " : "            ", "%s: %s%s%s%s %s",
			    row->change, row->verdict, *row->condition ? " (" : "", row->condition,
			    *row->condition ? ")" : "",
			    cite(&sources, source, sizeof source, &row->from));
	sources_text(&page, &sources);
	return STATUS_DONE;
}

static int explain_barred(struct invocation *inv, const struct barred *barred)
{
	/* Knowing about a refused thing is an answer, not a refusal. */
	int answered = answer_barred(inv, barred);
	return answered == STATUS_REFUSED || answered == STATUS_UNTESTED ? STATUS_DONE : answered;
}

/* A list such as "pints;quarts" with room to wrap after each entry. */
static void spaced_words(char *buffer, size_t size, const char *list)
{
	size_t n = 0;
	for (; *list && n + 2 < size; list++) {
		buffer[n++] = *list;
		if (list[0] == ';' && list[1] != ' ')
			buffer[n++] = ' ';
	}
	buffer[n] = '\0';
}

static void published_line(const struct page *page, const struct published_rule *rule,
			   struct source_list *sources)
{
	char source[WORDS_BUFFER], applies_to[RULE_TEXT];
	spaced_words(applies_to, sizeof applies_to, rule->applies_to);
	page_format(page, "  ", "%s%s%s%s%s%s%s%s %s", rule->says, *rule->value ? ": " : "",
		    rule->value, *rule->unit ? " " : "", rule->unit, *rule->applies_to ? " (" : "",
		    applies_to, *applies_to ? ")" : "",
		    cite(sources, source, sizeof source, &rule->from));
	if (*rule->note)
		page_format(page, "    ", "%s", rule->note);
}

static int explain_topic(struct invocation *inv, const char *topic)
{
	const struct reference *ref = reference_edition();
	struct page page = answer_page(inv);
	bool json = flag(inv, "json");
	json_t *list = json ? json_array() : NULL;
	struct source_list sources = {.sources_n = 0};
	if (!json)
		page_headline(&page, topic, "as published:");
	for (size_t i = 0; i < ref->published_n; i++) {
		const struct published_rule *rule = &ref->published[i];
		if (strcmp(rule->topic, topic) != 0)
			continue;
		if (!json) {
			published_line(&page, rule, &sources);
			continue;
		}
		list = json_append(
		    list, json_pack("{s:s, s:s, s:s, s:s, s:s, s:o}", "says", rule->says, "value",
				    rule->value, "unit", rule->unit, "applies_to", rule->applies_to,
				    "note", rule->note, "source", json_citation(&rule->from)));
	}
	if (json)
		return answer_json(inv, json_pack("{s:s, s:o}", "topic", topic, "rules", list),
				   STATUS_DONE);
	sources_text(&page, &sources);
	return STATUS_DONE;
}

/* Calls visit with each name that can be explained, kind by kind. */
typedef void visitor(void *context, const char *kind, const char *name);

static void each_name(const struct reference *ref, visitor *visit, void *context)
{
	static const char *const facets[] = {[FACET_METHOD] = "method",
					     [FACET_FOOD] = "food",
					     [FACET_CLOSURE] = "closure",
					     [FACET_CONTAINER] = "container"};
	for (size_t i = 0; i < RULE_COUNT; i++)
		visit(context, "rule", ref->rules[i].id);
	const struct compare_rule *rule;
	for (size_t i = 0; (rule = compare_rule_at(i)) != NULL; i++)
		visit(context, "change", rule->slug);
	for (size_t facet = 0; facet < sizeof facets / sizeof *facets; facet++)
		for (size_t i = 0; i < ref->barred_n; i++)
			if (ref->barred[i].facet == facet)
				visit(context, facets[facet], ref->barred[i].slug);
	const char *last = "";
	for (size_t i = 0; i < ref->published_n; i++) {
		if (strcmp(ref->published[i].topic, last) != 0)
			visit(context, "topic", ref->published[i].topic);
		last = ref->published[i].topic;
	}
}

struct listing {
	const struct page *page;
	const char *kind;
};

static void print_name(void *context, const char *kind, const char *name)
{
	struct listing *listing = context;
	if (!listing->kind || strcmp(kind, listing->kind) != 0) {
		if (listing->kind)
			page_blank(listing->page);
		page_format(listing->page, "", "%s:", kind);
		listing->kind = kind;
	}
	page_text(listing->page, "  ", name);
}

static void add_name(void *context, const char *kind, const char *name)
{
	json_t **list = context;
	if (*list)
		*list = json_append(*list, json_pack("{s:s, s:s}", "kind", kind, "name", name));
}

static int list_names(struct invocation *inv)
{
	const struct reference *ref = reference_edition();
	struct page page = answer_page(inv);
	struct listing listing = {.page = &page};
	if (!flag(inv, "json")) {
		each_name(ref, print_name, &listing);
		return STATUS_DONE;
	}
	json_t *list = json_array();
	each_name(ref, add_name, &list);
	return answer_json(inv, list, STATUS_DONE);
}

struct nearest {
	const char *word, *name;
	size_t distance;
};

static void weigh_name(void *context, const char *kind, const char *name)
{
	struct nearest *nearest = context;
	(void)kind;
	size_t distance = spelling_distance(nearest->word, name);
	if (distance < nearest->distance) {
		nearest->distance = distance;
		nearest->name = name;
	}
}

static int unknown(struct invocation *inv, const char *words)
{
	struct nearest nearest = {.word = words, .distance = spelling_limit(words) + 1};
	char shown[TEXT_SHOWN_SIZE];
	text_show(words, SIZE_MAX, shown);
	each_name(reference_edition(), weigh_name, &nearest);
	if (nearest.name)
		error_usage(inv->err, "explain: '%s' is not known; did you mean %s?", shown,
			    nearest.name);
	else
		error_usage(inv->err, "explain: '%s' is not known; 'jarwright explain' lists all",
			    shown);
	return command_failed(inv);
}

static int run(struct invocation *inv)
{
	const struct reference *ref = reference_edition();
	char words[ARGUMENT_MAX];
	if (!operands_between(inv, 0, 32, "RULE") || !operand_words(inv, words, sizeof words))
		return command_failed(inv);
	if (inv->operands_n == 0)
		return list_names(inv);
	for (size_t i = 0; i < RULE_COUNT; i++)
		if (words_same(ref->rules[i].id, words))
			return explain_rule(inv, &ref->rules[i]);
	const struct compare_rule *difference;
	for (size_t i = 0; (difference = compare_rule_at(i)) != NULL; i++)
		if (words_same(difference->slug, words))
			return explain_difference(inv, difference);
	for (int facet = FACET_METHOD; facet <= FACET_CONTAINER; facet++) {
		const struct barred *barred = reference_find_barred(ref, (enum facet)facet, words);
		if (barred)
			return explain_barred(inv, barred);
	}
	for (size_t i = 0; i < ref->published_n; i++)
		if (words_same(ref->published[i].topic, words))
			return explain_topic(inv, ref->published[i].topic);
	return unknown(inv, words);
}

const struct command command_explain = {
    .name = "explain",
    .synopsis = "[RULE|PUBLISHED-TOPIC|METHOD]",
    .summary = "a rule, its reason and its source",
    .description = "Says what a rule of an answer means, why it holds and who published it; also "
		   "what a finding of 'recipe compare' means, why a method, food or lid is "
		   "refused, and what is published on a topic. "
		   "Without a word it lists them all.",
    .options = options,
    .examples = examples,
    .run = run,
};
