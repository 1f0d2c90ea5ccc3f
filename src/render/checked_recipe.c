/* A recipe of the cook's own in the answers of check: as which formula, or why as none. */
#include "jarwright/render_recipe.h"

static const char *const leads[] = {
    [LEVEL_NOTE] = "  note    ",
    [LEVEL_WARN] = "  careful ",
    [LEVEL_ASK] = "  say     ",
    [LEVEL_REFUSE] = "  no      ",
};

void checked_recipe_text(const struct page *page, const char *name,
			 const struct comparison *comparison)
{
	const struct formula *formula = comparison->formula;
	struct source_list sources = {0};
	char source[WORDS_BUFFER];
	page_blank(page);
	page_format(page, "", "Your recipe '%s' counts as the tested formula %s%s%s%s%s", name,
		    formula->food->slug, *formula->variant ? " (" : "", formula->variant,
		    *formula->variant ? ")" : "", comparison->findings_n > 0 ? ":" : ".");
	for (size_t i = 0; i < comparison->findings_n; i++) {
		const struct compare_finding *f = &comparison->findings[i];
		page_format(page, leads[f->level], "%s (%s) %s", f->text, f->rule,
			    cite(&sources, source, sizeof source, f->from));
	}
	sources_text(page, &sources);
}

void uncovered_recipe_text(const struct page *page, const struct formula_set *set, const char *name,
			   const struct comparison *comparison)
{
	comparison_text(page, set, comparison, NULL);
	page_blank(page);
	page_format(page, "",
		    "This is your recipe '%s'. For changes that would bring it inside a tested "
		    "formula run: jarwright recipe compare '%s'",
		    name, name);
}

json_t *checked_recipe_json(const struct formula_set *set, const char *name,
			    const struct comparison *comparison)
{
	json_t *compared = comparison ? comparison_json(set, comparison, NULL) : json_null();
	/* None was looked for. */
	if (json_is_object(compared))
		json_object_del(compared, "repair");
	return json_pack("{s:s, s:o}", "name", name, "comparison", compared);
}

json_t *uncovered_recipe_json(const struct reference *ref, const struct formula_set *set,
			      const struct request *request, const struct comparison *comparison)
{
	struct request nothing = *request;
	const struct decision decision = {.verdict = comparison->verdict};
	nothing.food = (struct food_match){.kind = MATCH_NONE};
	json_t *compared = comparison_json(set, comparison, NULL);
	json_t *answer = decision_json(ref, &nothing, &decision);
	if (answer &&
	    json_object_set(answer, "findings", json_object_get(compared, "findings")) != 0) {
		json_decref(answer);
		answer = NULL;
	}
	json_decref(compared);
	return answer;
}
