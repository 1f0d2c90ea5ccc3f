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
		snprintf(says, sizeof says,
			 "No tested formula has anything in common with this recipe.");
	else if (c->verdict == VERDICT_TESTED)
		snprintf(
		    says, sizeof says,
		    "As the tested formula %s. Ask check for its process: in its jar, its canner "
		    "and at your elevation.",
		    formula_words(name, sizeof name, c->formula));
	else
		snprintf(says, sizeof says, "Held against the tested formula %s, %s.",
			 formula_words(name, sizeof name, c->formula), c->formula->food->title);
	page_headline(page, headline(c->verdict), says);
	if (c->verdict != VERDICT_TESTED && c->verdict != VERDICT_UNCLEAR)
		page_text(page, "  ", "Do not put it on the shelf as it is.");
}

static void put_findings(const struct page *page, const struct comparison *c,
			 struct source_list *sources)
{
	char source[WORDS_BUFFER];
	for (size_t i = 0; i < c->findings_n; i++) {
		const struct compare_finding *f = &c->findings[i];
		page_format(page, leads[f->level], "%s (%s) %s", f->text, f->rule,
			    cite(sources, source, sizeof source, f->from));
	}
	if (c->findings_left_out > 0)
		page_format(page, "  ", "and %zu of less weight", c->findings_left_out);
}

static void put_repair(const struct page *page, const struct repair *repair)
{
	char name[WORDS_BUFFER];
	if (!repair || !repair->found || repair->steps_n == 0)
		return;
	page_blank(page);
	page_format(page, "", "To bring it inside the tested formula %s:",
		    formula_words(name, sizeof name, repair->formula));
	for (size_t i = 0; i < repair->steps_n; i++)
		page_text(page, "  - ", repair->steps[i].text);
}

static void put_keeping(const struct page *page, const struct formula_set *set,
			struct source_list *sources)
{
	const struct citation *from = NULL;
	char source[WORDS_BUFFER];
	const char *words = compare_keeping(set, &from);
	page_blank(page);
	page_format(page, "", "Or do not can it: %s %s", words,
		    from ? cite(sources, source, sizeof source, from) : "");
}

void comparison_text(const struct page *page, const struct formula_set *set,
		     const struct comparison *comparison, const struct repair *repair)
{
	struct source_list sources = {0};
	char name[WORDS_BUFFER];
	put_verdict(page, comparison);
	put_findings(page, comparison, &sources);
	put_repair(page, repair);
	if (comparison->nearest_n > 0) {
		page_blank(page);
		page_text(page, "", "Nearest tested formulas:");
	}
	for (size_t i = 0; i < comparison->nearest_n; i++)
		page_format(page, "  ", "%s, %s",
			    formula_words(name, sizeof name, comparison->nearest[i].formula),
			    comparison->nearest[i].formula->food->title);
	if (comparison->verdict != VERDICT_TESTED)
		put_keeping(page, set, &sources);
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

json_t *comparison_json(const struct comparison *comparison, const struct repair *repair)
{
	json_t *nearest = json_array();
	for (size_t i = 0; nearest && i < comparison->nearest_n; i++)
		nearest = json_append(
		    nearest, json_pack("{s:o, s:s, s:f}", "formula",
				       formula_json(comparison->nearest[i].formula), "title",
				       comparison->nearest[i].formula->food->title, "distance",
				       comparison->nearest[i].distance));
	return json_pack("{s:s, s:o, s:o, s:o, s:o}", "verdict", verdict_word(comparison->verdict),
			 "formula", formula_json(comparison->formula), "findings",
			 findings_json(comparison), "repair", repair_json(repair), "nearest",
			 nearest);
}
