/* recipe yield: grams, grams cooked down, jars of a cooked volume, the published yield. */
#include <inttypes.h>
#include <string.h>

#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "own_recipe.h"
#include "recipe.h"
#include "recipe_scale.h"
#include "request.h"

#define MG_PER_G 1000

/* A volume from least to most, in millilitres. */
struct volume {
	bool known;
	struct rational least, most;
};

struct jar_line {
	char words[WORDS_BUFFER];
	int64_t nl;
};
#define JAR_LINES_MAX 3

struct yield_answer {
	struct recipe recipe;
	struct recipe_total total;
	struct rational left_share; /* after cooking down; 1: not stated */
	bool reduced;
	struct volume volume;
	struct jar_line jars[JAR_LINES_MAX];
	size_t jars_n;
	const struct food *formula; /* asked for, or the one it counts as; or NULL */
	const struct formula_line *published;
	double times;    /* its produce in the formula's; 0: not known */
	bool by_formula; /* the volume is the published yield's */
};

static bool read_reduced(struct invocation *inv, struct yield_answer *out)
{
	const char *given = option(inv, "reduced");
	struct quantity share;
	out->left_share = (struct rational){1, 1};
	if (!given)
		return true;
	if (!quantity_parse(DIMENSION_PERCENT, "reduced", given, &share, inv->err))
		return false;
	const struct rational all = {100, 1};
	if (share.amount.num <= 0 || rational_compare(share.amount, all) > 0)
		return error_usage(inv->err, "reduced: say the share that is left, above 0 and at "
					     "most 100%%");
	out->reduced = true;
	return rational_div(share.amount, all, &out->left_share) ||
	       error_usage(inv->err, "reduced: that share does not fit; say a simpler one");
}

static bool lines_left_out(const struct yield_answer *answer)
{
	for (size_t i = 0; i < answer->recipe.lines_n; i++)
		if (answer->total.left_out[i])
			return true;
	return false;
}

/* Grams through the density of a food the cook says it is like. */
static bool volume_like(struct invocation *inv, struct yield_answer *out)
{
	const char *like = option(inv, "like");
	char shown[TEXT_SHOWN_SIZE];
	struct mass_rows rows;
	struct rational least, most;
	text_show(like, SIZE_MAX, shown);
	if (lines_left_out(out))
		return error_usage(inv->err,
				   "like: some lines have no published weight, so the whole is not "
				   "known; measure the cooked volume and say --cooked");
	if (!mass_by_volume(reference_tables_edition(), like, "", UNIT_CUP, &rows))
		return error_usage(
		    inv->err,
		    "like: no density is published for '%s'; measure the cooked volume "
		    "and say --cooked",
		    shown);
	if (rational_make(out->total.least_mg, MG_PER_G, &least) &&
	    rational_make(out->total.most_mg, MG_PER_G, &most) &&
	    rational_mul(least, out->left_share, &least) &&
	    rational_mul(most, out->left_share, &most) &&
	    rational_div(least, rows.most, &out->volume.least) &&
	    rational_div(most, rows.least, &out->volume.most)) {
		out->volume.known = true;
		return true;
	}
	return error_usage(inv->err, "like: the amounts do not fit; say --cooked instead");
}

static bool read_volume(struct invocation *inv, struct yield_answer *out)
{
	bool cooked = option(inv, "cooked") != NULL, like = option(inv, "like") != NULL;
	if (cooked && like)
		return error_usage(inv->err, "recipe yield: say --cooked or --like, not both");
	if (cooked && out->reduced)
		return error_usage(inv->err, "recipe yield: --cooked is measured after cooking "
					     "down; leave --reduced out");
	if (like)
		return volume_like(inv, out);
	if (!cooked)
		return true;
	if (!volume_option(inv, "cooked", &out->volume.least))
		return false;
	out->volume.most = out->volume.least;
	out->volume.known = true;
	return true;
}

static void usual_jars(struct yield_answer *out)
{
	static const enum jar usual[JAR_LINES_MAX] = {JAR_HALF_PINT, JAR_PINT, JAR_QUART};
	const struct reference *ref = reference_edition();
	for (out->jars_n = 0; out->jars_n < JAR_LINES_MAX; out->jars_n++) {
		const struct jar_size *jar = &ref->jars[usual[out->jars_n]];
		struct jar_line *line = &out->jars[out->jars_n];
		line->nl = jar->volume_nl;
		snprintf(line->words, sizeof line->words, "%s jars", jar->name);
	}
}

static bool read_jars(struct invocation *inv, struct yield_answer *out)
{
	if (option(inv, "jar")) {
		out->jars_n = 1;
		return jar_option(inv, &out->jars[0].nl, out->jars[0].words,
				  sizeof out->jars[0].words);
	}
	usual_jars(out);
	return true;
}

/*
 * The formula's published yield, for this much produce. How strong the vinegar is changes no
 * volume, so it counts as of the published strength here.
 */
static bool find_formula(const struct food *wanted, struct yield_answer *out, struct error *err)
{
	const struct compare_facts facts = {
	    VINEGAR_LABELLED, reference_edition()->rules[RULE_VINEGAR_WEAK].limit_milli};
	struct held held;
	out->formula = wanted;
	if (!recipe_hold(&out->recipe, &facts, wanted, &held, err))
		return false;
	const struct comparison *c = held.comparison;
	if (!wanted && c->verdict == VERDICT_TESTED)
		out->formula = c->formula->food;
	if (c->formula && c->formula->food == out->formula)
		out->times = c->scale;
	held_release(&held);
	if (!out->formula)
		return true;
	out->published = recipe_published_yield(out->formula);
	if (!out->volume.known && out->published &&
	    recipe_yield_volume(reference_edition(), out->published, out->times,
				&out->volume.least)) {
		out->volume.most = out->volume.least;
		out->volume.known = out->by_formula = true;
	}
	return true;
}

static bool read_formula(struct invocation *inv, struct yield_answer *out)
{
	const struct food *wanted;
	return formula_option(inv, &wanted) && find_formula(wanted, out, inv->err);
}

static void print_jars(const struct page *page, const struct yield_answer *a, size_t i)
{
	struct recipe_jars least, most;
	if (!recipe_jars(a->volume.least, a->jars[i].nl, &least) ||
	    !recipe_jars(a->volume.most, a->jars[i].nl, &most)) {
		page_format(page, "  ", "%s: the number does not fit", a->jars[i].words);
		return;
	}
	double left_least = rational_double(least.left_ml),
	       left_most = rational_double(most.left_ml);
	if (least.full != most.full)
		page_format(page, "  ", "%s: %" PRId64 " to %" PRId64 " full", a->jars[i].words,
			    least.full, most.full);
	else if (left_most < 1)
		page_format(page, "  ", "%s: %" PRId64 " full", a->jars[i].words, least.full);
	else if (left_most - left_least < 1)
		page_format(page, "  ",
			    "%s: %" PRId64 " full, and %.0f mL left over for the refrigerator",
			    a->jars[i].words, least.full, left_most);
	else
		page_format(page, "  ",
			    "%s: %" PRId64 " full, and %.0f to %.0f mL left over for the "
			    "refrigerator",
			    a->jars[i].words, least.full, left_least, left_most);
}

static void print_volume(const struct page *page, const struct yield_answer *a)
{
	double least = rational_double(a->volume.least), most = rational_double(a->volume.most);
	if (!a->volume.known) {
		page_text(
		    page, "",
		    "How much room it takes is not known: no density is published for the "
		    "mixture. Measure it when it is cooked and say --cooked, or say --like with "
		    "a food it resembles.");
		return;
	}
	if (a->by_formula && a->formula)
		page_format(
		    page, "",
		    "About %.0f mL, by the published yield of %s for %.4g times its produce:", most,
		    a->formula->slug, a->times);
	else if (least < most)
		page_format(page, "", "About %.0f to %.0f mL:", least, most);
	else
		page_format(page, "", "%.0f mL:", most);
	for (size_t i = 0; i < a->jars_n; i++)
		print_jars(page, a, i);
	page_text(
	    page, "  ",
	    "Jars count at their full volume; headspace is published in inches, so that there "
	    "may be a jar more.");
	if (a->formula && a->formula->headspace_milli_in != NONE) {
		char words[WORDS_BUFFER];
		page_format(page, "  ", "Headspace for %s: %s.", a->formula->slug,
			    inches_words(words, sizeof words, a->formula->headspace_milli_in));
	}
}

static void print_published(const struct page *page, const struct yield_answer *a,
			    struct source_list *sources)
{
	char source[WORDS_BUFFER];
	const struct formula_line *y = a->published;
	if (!a->formula)
		return;
	if (!y) {
		page_format(page, "", "No yield is published for %s.", a->formula->slug);
		return;
	}
	page_format(page, "", "Published for %s as printed: %s %s%s%s%s%s%s %s", a->formula->slug,
		    y->quantity, y->unit, *y->unit_note ? ", " : "", y->unit_note,
		    *y->note ? " (" : "", y->note, *y->note ? ")" : "",
		    cite(sources, source, sizeof source, &y->from));
}

static int print(struct invocation *inv, const struct yield_answer *a)
{
	struct page page = answer_page(inv);
	struct source_list sources = {0};
	double share = rational_double(a->left_share);
	recipe_total_text(&page, &a->recipe, &a->total);
	if (a->reduced)
		page_format(&page, "", "Cooked down to %.4g %% of that: %.0f to %.0f g.",
			    share * 100, (double)a->total.least_mg / MG_PER_G * share,
			    (double)a->total.most_mg / MG_PER_G * share);
	print_volume(&page, a);
	print_published(&page, a, &sources);
	sources_text(&page, &sources);
	return STATUS_DONE;
}

static json_t *jars_json(const struct yield_answer *a)
{
	json_t *list = json_array();
	for (size_t i = 0; list && a->volume.known && i < a->jars_n; i++) {
		struct recipe_jars least, most;
		if (!recipe_jars(a->volume.least, a->jars[i].nl, &least) ||
		    !recipe_jars(a->volume.most, a->jars[i].nl, &most))
			continue;
		bool one = rational_compare(a->volume.least, a->volume.most) == 0;
		list = json_append(
		    list,
		    json_pack("{s:s, s:I, s:I, s:o}", "jar", a->jars[i].words, "least",
			      (json_int_t)least.full, "most", (json_int_t)most.full, "left_ml",
			      one ? json_real(rational_double(least.left_ml)) : json_null()));
	}
	return list;
}

static json_t *published_json(const struct yield_answer *a)
{
	const struct formula_line *y = a->published;
	if (!y || !a->formula)
		return json_null();
	return json_pack("{s:s, s:o, s:s, s:s, s:s, s:s, s:o}", "formula", a->formula->slug,
			 "times", a->times > 0 ? json_real(a->times) : json_null(), "quantity",
			 y->quantity, "unit", y->unit, "unit_note", y->unit_note, "note", y->note,
			 "source", json_citation(&y->from));
}

static json_t *volume_json(const struct yield_answer *a)
{
	return a->volume.known ? json_pack("[f, f]", rational_double(a->volume.least),
					   rational_double(a->volume.most))
			       : json_null();
}

static int to_json(struct invocation *inv, const struct yield_answer *a)
{
	return answer_json(
	    inv,
	    json_pack(
		"{s:o, s:o, s:o, s:o, s:o}", "total", recipe_total_json(&a->recipe, &a->total),
		"reduced_to", a->reduced ? json_real(rational_double(a->left_share)) : json_null(),
		"volume_ml", volume_json(a), "jars", jars_json(a), "published", published_json(a)),
	    STATUS_DONE);
}

static bool work_out(struct invocation *inv, struct yield_answer *out)
{
	struct rational factor;
	return factor_option(inv, "scale", &factor) &&
	       recipe_scale(&out->recipe, factor, inv->err) &&
	       recipe_total(reference_tables_edition(), &out->recipe, &out->total, inv->err) &&
	       read_reduced(inv, out) && read_volume(inv, out) && read_jars(inv, out) &&
	       read_formula(inv, out);
}

static bool expect(struct recipe *recipe, struct yield_answer *out, struct error *err)
{
	memset(out, 0, sizeof *out);
	out->recipe = *recipe;
	usual_jars(out);
	return find_formula(NULL, out, err);
}

bool recipe_expected_text(struct invocation *inv, const struct page *page, struct recipe *recipe)
{
	struct yield_answer answer;
	struct source_list sources = {0};
	if (!expect(recipe, &answer, inv->err))
		return false;
	page_blank(page);
	if (answer.volume.known) {
		print_volume(page, &answer);
		print_published(page, &answer, &sources);
	} else {
		page_text(page, "note    ",
			  "How many jars it fills shows when it is cooked: measure it, and say "
			  "'jarwright recipe yield' with --cooked.");
	}
	sources_text(page, &sources);
	return true;
}

json_t *recipe_expected_json(struct invocation *inv, struct recipe *recipe)
{
	struct yield_answer answer;
	if (!expect(recipe, &answer, inv->err))
		return NULL;
	return json_pack("{s:o, s:o, s:o}", "volume_ml", volume_json(&answer), "jars",
			 jars_json(&answer), "published", published_json(&answer));
}

int recipe_yield_command(struct invocation *inv)
{
	struct yield_answer answer;
	memset(&answer, 0, sizeof answer);
	if (!recipe_find(inv, &answer.recipe))
		return command_failed(inv);
	int status = !work_out(inv, &answer) ? command_failed(inv)
		     : flag(inv, "json")     ? to_json(inv, &answer)
					     : print(inv, &answer);
	recipe_release(&answer.recipe);
	return status;
}
