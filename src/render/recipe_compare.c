/* A recipe held against the tested formulas: the verdict, the differences, the way out. */
#include <string.h>

#include "jarwright/render_recipe.h"

static const char *const leads[] = {
    [LEVEL_NOTE] = "  note    ",
    [LEVEL_WARN] = "  careful ",
    [LEVEL_ASK] = "  say     ",
    [LEVEL_REFUSE] = "  no      ",
};

static const char *headline(enum verdict verdict)
{
	static const char *const words[] = {"TESTED", "REFUSED", "UNTESTED", "UNCLEAR"};
	return words[verdict];
}

/* "pickled-beets", "pickled-beets (spiced)". */
static char *formula_words(char *buffer, size_t size, const struct formula *formula)
{
	snprintf(buffer, size, "%s%s%s%s", formula->food->slug, *formula->variant ? " (" : "",
		 formula->variant, *formula->variant ? ")" : "");
	return buffer;
}

static void put_verdict(const struct page *page, const struct comparison *c)
{
	char name[WORDS_BUFFER];
	char says[2 * WORDS_BUFFER];
	if (!c->formula)
		snprintf(says, sizeof says, "No tested formula is near this recipe.");
	else if (c->verdict == VERDICT_TESTED)
		snprintf(says, sizeof says,
			 "This is the tested formula %s. Make it by its published steps; jar, "
			 "canner and time: 'jarwright check %s'.",
			 formula_words(name, sizeof name, c->formula), c->formula->food->slug);
	else
		snprintf(says, sizeof says, "Not the tested formula %s.",
			 formula_words(name, sizeof name, c->formula));
	page_headline(page, headline(c->verdict), says);
	if (c->verdict == VERDICT_UNCLEAR)
		page_text(page, "  ", "Not for the shelf until the questions are answered.");
	else if (c->verdict != VERDICT_TESTED)
		page_text(page, "  ", "Do not put it on the shelf as it is.");
}

/* Changes of dried spices are all alike: the first is shown, the others counted. */
static bool is_spice(const struct compare_finding *finding)
{
	return finding->level < LEVEL_ASK && strcmp(finding->rule, "dried-spice") == 0;
}

static void put_findings(const struct page *page, const struct comparison *c,
			 struct source_list *sources)
{
	char source[WORDS_BUFFER];
	size_t spices = 0;
	for (size_t i = 0; i < c->findings_n; i++) {
		const struct compare_finding *f = &c->findings[i];
		if (is_spice(f) && spices++ > 0)
			continue;
		page_format(page, leads[f->level], "%s (%s) %s", f->text, f->rule,
			    cite(sources, source, sizeof source, f->from));
	}
	if (spices > 1)
		page_format(page, "          ", "and %zu more of dried spices", spices - 1);
	if (c->findings_left_out > 0)
		page_format(page, "          ", "and %zu of less weight", c->findings_left_out);
}

static void put_repair(const struct page *page, const struct repair *repair)
{
	char name[WORDS_BUFFER];
	page_blank(page);
	page_format(page, "", "A way out, to the tested formula %s:",
		    formula_words(name, sizeof name, repair->formula));
	for (size_t i = 0; i < repair->steps_n; i++)
		page_text(page, "  - ", repair->steps[i].text);
	page_blank(page);
	page_format(page, "", "The changed recipe, in %s measures:",
		    measuring_system_title(repair->recipe.system));
	for (size_t i = 0; i < repair->recipe.lines_n; i++)
		page_text(page, "  ", repair->recipe.lines[i].text);
}

/* Where no few changes lead there, or none were looked for, the formula itself is the answer. */
static void put_formula(const struct page *page, const struct formula_set *set,
			const struct formula *formula, bool looked, struct source_list *sources)
{
	char name[WORDS_BUFFER], line[2 * WORDS_BUFFER], source[WORDS_BUFFER];
	page_blank(page);
	page_format(page, "", "%sThe tested formula %s, in US measures: %s",
		    looked ? "No few changes bring it there. " : "",
		    formula_words(name, sizeof name, formula),
		    cite(sources, source, sizeof source, &formula->food->formula->from));
	for (size_t i = 0; i < formula->lines_n; i++)
		if (formula_line_words(set, formula, i, line, sizeof line))
			page_text(page, "  ", line);
}

#define NEAREST_SHOWN 3
static void put_nearest(const struct page *page, const struct comparison *c)
{
	char name[WORDS_BUFFER];
	size_t shown = 0;
	for (size_t i = 0; i < c->nearest_n && shown < NEAREST_SHOWN; i++) {
		if (c->nearest[i].formula == c->formula)
			continue;
		if (shown++ == 0) {
			page_blank(page);
			page_text(page, "",
				  c->formula
				      ? "Other formulas with something in common:"
				      : "Those with something in common; name one to hold the "
					"recipe against it:");
		}
		page_format(page, "  ", "%s, %s",
			    formula_words(name, sizeof name, c->nearest[i].formula),
			    c->nearest[i].formula->food->title);
	}
}

static void put_keeping(const struct page *page, const struct formula_set *set,
			struct source_list *sources)
{
	const struct citation *from = NULL;
	char source[WORDS_BUFFER];
	const char *words = compare_keeping(set, &from);
	page_blank(page);
	page_format(page, "", "Or do not can it: %s. %s", words,
		    cite(sources, source, sizeof source, from));
}

void comparison_text(const struct page *page, const struct formula_set *set,
		     const struct comparison *comparison, const struct repair *repair)
{
	struct source_list sources = {0};
	const bool tested = comparison->verdict == VERDICT_TESTED;
	put_verdict(page, comparison);
	put_findings(page, comparison, &sources);
	if (repair && repair->found && repair->steps_n > 0)
		put_repair(page, repair);
	else if (!tested && comparison->formula)
		put_formula(page, set, comparison->formula, repair != NULL, &sources);
	if (!tested) {
		put_keeping(page, set, &sources);
		put_nearest(page, comparison);
	}
	sources_text(page, &sources);
}

static json_t *formula_json(const struct formula *formula)
{
	char name[WORDS_BUFFER];
	return formula ? json_string(formula_words(name, sizeof name, formula)) : json_null();
}

static json_t *findings_json(const struct comparison *c)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < c->findings_n; i++) {
		const struct compare_finding *f = &c->findings[i];
		list = json_append(list, json_pack("{s:s, s:s, s:s, s:o}", "rule", f->rule, "level",
						   level_word(f->level), "text", f->text, "source",
						   json_citation(f->from)));
	}
	return list;
}

static json_t *grams_json(bool known, double grams)
{
	return known ? json_real(grams) : json_null();
}

static json_t *repair_json(const struct repair *repair)
{
	json_t *list = json_array();
	for (size_t i = 0; list && repair && repair->found && i < repair->steps_n; i++) {
		const struct repair_step *s = &repair->steps[i];
		list = json_append(list,
				   json_pack("{s:s, s:o, s:o, s:s}", "ingredient", s->ingredient,
					     "from_g", grams_json(s->from_known, s->from_g), "to_g",
					     grams_json(s->to_known, s->to_g), "text", s->text));
	}
	return list;
}

/* The changed recipe's lines; [] where nothing is changed. */
static json_t *changed_json(const struct repair *repair)
{
	json_t *list = json_array();
	for (size_t i = 0;
	     list && repair && repair->found && repair->steps_n && i < repair->recipe.lines_n; i++)
		list = json_append(list, json_string(repair->recipe.lines[i].text));
	return list;
}

static json_t *keeping_json(const struct formula_set *set, const struct comparison *c)
{
	const struct citation *from = NULL;
	if (c->verdict == VERDICT_TESTED)
		return json_null();
	const char *words = compare_keeping(set, &from);
	return json_pack("{s:s, s:o}", "text", words, "source", json_citation(from));
}

json_t *comparison_json(const struct formula_set *set, const struct comparison *comparison,
			const struct repair *repair)
{
	json_t *nearest = json_array();
	for (size_t i = 0; nearest && i < comparison->nearest_n; i++)
		nearest = json_append(
		    nearest, json_pack("{s:o, s:s, s:f}", "formula",
				       formula_json(comparison->nearest[i].formula), "title",
				       comparison->nearest[i].formula->food->title, "distance",
				       comparison->nearest[i].distance));
	return json_pack("{s:s, s:o, s:o, s:o, s:o, s:o, s:o}", "verdict",
			 verdict_word(comparison->verdict), "formula",
			 formula_json(comparison->formula), "findings", findings_json(comparison),
			 "repair", repair_json(repair), "changed", changed_json(repair), "instead",
			 keeping_json(set, comparison), "nearest", nearest);
}
