/* What convert answers, as text and as JSON. */
#include <inttypes.h>
#include <math.h>
#include <string.h>

#include "convert.h"
#include "jarwright/text.h"
#include "request.h"

#define PERCENT        100
#define DECIMALS_MAX   15
#define ROWS_SHOWN_MAX 12
#define ENDS           4    /* least and most, of the volume and of the weight */
#define FAR_OFF        0.05 /* a rounding beyond this is warned of */

/* Every decimal if there is an end of them, else "about" and eight figures. */
static char *exact_words(char *buffer, size_t size, struct rational a)
{
	int64_t scale = 1, low, high;
	for (int decimals = 0; decimals <= DECIMALS_MAX; decimals++, scale *= 10) {
		if (!rational_floor(a, scale, &low) || !rational_ceil(a, scale, &high))
			break;
		if (low != high)
			continue;
		if (decimals == 0)
			snprintf(buffer, size, "%" PRId64, low);
		else
			snprintf(buffer, size, "%" PRId64 ".%0*" PRId64, low / scale, decimals,
				 low % scale);
		return buffer;
	}
	snprintf(buffer, size, "about %.8g", rational_double(a));
	return buffer;
}

static const char *base_unit(bool mass)
{
	return mass ? "g" : "mL";
}

/* "0.44 % less" */
static char *error_words(char *buffer, size_t size, double error)
{
	double percent = fabs(error) * PERCENT;
	snprintf(buffer, size, "%.*f %% %s",
		 percent < 1    ? 2
		 : percent < 10 ? 1
				: 0,
		 percent, error > 0 ? "more" : "less");
	return buffer;
}

static void rounding_line(const struct page *page, struct rational exact, const struct practical *p,
			  bool mass)
{
	char wanted[64], amount[64], off[64], words[PRACTICAL_WORDS_SIZE];
	enum kitchen_unit unit = p->parts[0].measure.unit;
	bool base = unit == UNIT_MILLILITRE || unit == UNIT_GRAM;
	exact_words(wanted, sizeof wanted, exact);
	error_words(off, sizeof off, p->error);
	practical_words(words, sizeof words, p);
	if (rational_compare(exact, p->amount) == 0)
		page_format(page, "  ", "exactly %s %s, nothing rounded", wanted, base_unit(mass));
	else if (base)
		page_format(page, "  ", "exactly %s %s; %s is %s", wanted, base_unit(mass), words,
			    off);
	else
		page_format(page, "  ", "exactly %s %s; %s comes to %s %s, %s", wanted,
			    base_unit(mass), words, exact_words(amount, sizeof amount, p->amount),
			    base_unit(mass), off);
	if (fabs(p->error) > FAR_OFF)
		page_text(page, "  careful ",
			  "No such measure comes near: take metric measures, or weigh it.");
}

static void converted_text(const struct page *page, const struct conversion *c,
			   const struct converted *to, bool mass)
{
	char least[PRACTICAL_WORDS_SIZE], most[PRACTICAL_WORDS_SIZE];
	if (!to->known)
		return;
	practical_words(least, sizeof least, &to->least_practical);
	practical_words(most, sizeof most, &to->most_practical);
	bool range = rational_compare(to->least, to->most) != 0;
	page_format(page, "", "%s: %s%s%s (%s)", mass ? "Weight" : "Volume", least,
		    range ? " to " : "", range ? most : "", measuring_system_word(c->to));
	rounding_line(page, to->least, &to->least_practical, mass);
	if (range)
		rounding_line(page, to->most, &to->most_practical, mass);
}

static void measure_line(const struct page *page, const struct kitchen_measure *m,
			 struct source_list *sources)
{
	char amount[64], source[WORDS_BUFFER];
	if (m->unit == UNIT_MILLILITRE)
		return; /* one is one */
	page_format(page, "  ", "one %s (%s): %s %s%s %s", kitchen_unit_name(m->unit, false),
		    m->row->system, exact_words(amount, sizeof amount, m->amount),
		    base_unit(kitchen_unit_is_mass(m->unit)),
		    m->exact ? "" : ", by custom or at second hand, not by definition",
		    cite(sources, source, sizeof source, &m->row->from));
}

/* Calls `each` for every measure that the answer rests on, each once. */
static void each_measure(const struct conversion *c,
			 void (*each)(void *, const struct kitchen_measure *), void *with)
{
	const struct practical *all[ENDS] = {
	    c->volume.known ? &c->volume.least_practical : NULL,
	    c->volume.known ? &c->volume.most_practical : NULL,
	    c->mass.known ? &c->mass.least_practical : NULL,
	    c->mass.known ? &c->mass.most_practical : NULL,
	};
	const struct measure_row *seen[ENDS * PRACTICAL_PARTS + 1];
	size_t seen_n = 0;
	if (!c->count && c->from.row != NULL) {
		each(with, &c->from);
		seen[seen_n++] = c->from.row;
	}
	for (size_t i = 0; i < ENDS; i++) {
		for (size_t j = 0; all[i] != NULL && j < all[i]->parts_n; j++) {
			const struct kitchen_measure *m = &all[i]->parts[j].measure;
			bool new_row = m->row != NULL;
			for (size_t k = 0; k < seen_n; k++)
				new_row = new_row && seen[k] != m->row;
			if (!new_row)
				continue;
			each(with, m);
			seen[seen_n++] = m->row;
		}
	}
}

struct measure_lines {
	const struct page *page;
	struct source_list *sources;
};

static void show_measure(void *with, const struct kitchen_measure *m)
{
	const struct measure_lines *lines = with;
	measure_line(lines->page, m, lines->sources);
}

static void rows_text(const struct page *page, const struct mass_rows *rows,
		      struct source_list *sources)
{
	char source[WORDS_BUFFER];
	for (size_t i = 0; i < rows->rows_n && i < ROWS_SHOWN_MAX; i++) {
		const struct density_row *row = rows->rows[i].row;
		page_format(page, "  ", "one %s of %s (%s): %s g %s", row->volume_unit, row->food,
			    row->form, row->grams,
			    cite(sources, source, sizeof source, &row->from));
	}
	if (rows->rows_n > ROWS_SHOWN_MAX)
		page_format(page, "  ", "and %zu more", rows->rows_n - ROWS_SHOWN_MAX);
	if (rows->foods_n > 1)
		page_text(page, "careful ",
			  "Several foods go by these words; name yours for a narrower answer.");
	else if (rational_compare(rows->least, rows->most) != 0)
		page_text(page, "careful ",
			  "Several published figures fit; where they differ in form, say yours "
			  "for a narrower answer.");
	if (rows->form_ignored)
		page_text(
		    page, "careful ",
		    "No published figure has the form you said; the range is over all forms.");
}

static void conversion_text(struct invocation *inv, const struct conversion *c)
{
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	char of[TEXT_SHOWN_SIZE] = "";
	if (c->of != NULL)
		text_show(c->of, SIZE_MAX, of);
	const char *from = option(inv, "from");
	bool said = from != NULL && !c->count;
	page_format(&page, "", "%s%s%s%s%s%s", c->typed, said ? " (" : "",
		    said ? measuring_system_word(c->from.system) : "", said ? ")" : "",
		    !*of       ? ""
		    : c->count ? " "
			       : " of ",
		    of);
	converted_text(&page, c, &c->mass, true);
	converted_text(&page, c, &c->volume, false);
	page_blank(&page);
	rows_text(&page, &c->rows, &sources);
	each_measure(c, show_measure, &(struct measure_lines){&page, &sources});
	if (!c->count && c->from.unit == UNIT_OUNCE)
		page_text(&page, "note    ", "An ounce is a weight here; say fl oz for a volume.");
	page_text(&page, "note    ",
		  "A recipe in other measures is still only a recipe: whether it may be canned is "
		  "what check says.");
	sources_text(&page, &sources);
}

static json_t *json_rational(struct rational a)
{
	char words[64];
	snprintf(words, sizeof words, "%" PRId64 "/%" PRId64, a.num, a.den);
	return json_string(words);
}

static json_t *end_json(struct rational exact, const struct practical *p)
{
	char words[PRACTICAL_WORDS_SIZE];
	practical_words(words, sizeof words, p);
	return json_pack("{s:o, s:f, s:s, s:o, s:f}", "exact", json_rational(exact), "about",
			 rational_double(exact), "practical", words, "practical_exact",
			 json_rational(p->amount), "error_percent", p->error * PERCENT);
}

static json_t *converted_json(const struct converted *to, bool mass)
{
	if (!to->known)
		return json_null();
	return json_pack("{s:s, s:o, s:o}", "unit", base_unit(mass), "least",
			 end_json(to->least, &to->least_practical), "most",
			 end_json(to->most, &to->most_practical));
}

static json_t *measure_json(const struct kitchen_measure *m)
{
	return json_pack("{s:s, s:s, s:s, s:o, s:s, s:b, s:o}", "unit",
			 kitchen_unit_name(m->unit, false), "system",
			 measuring_system_word(m->system), "table", m->row->system, "amount",
			 json_rational(m->amount), "of", base_unit(kitchen_unit_is_mass(m->unit)),
			 "by_definition", (int)m->exact, "source", json_citation(&m->row->from));
}

static void add_measure(void *with, const struct kitchen_measure *m)
{
	json_t **list = with;
	if (*list)
		*list = json_append(*list, measure_json(m));
}

static json_t *rows_json(const struct mass_rows *rows)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < rows->rows_n; i++) {
		const struct density_row *row = rows->rows[i].row;
		list = json_append(list,
				   json_pack("{s:s, s:s, s:s, s:s, s:o}", "food", row->food, "form",
					     row->form, "measure", row->volume_unit, "grams",
					     row->grams, "source", json_citation(&row->from)));
	}
	return list;
}

static json_t *conversion_json(const struct conversion *c)
{
	json_t *measures = json_array();
	each_measure(c, add_measure, (void *)&measures);
	const char *from = c->count ? NULL : measuring_system_word(c->from.system);
	return json_pack("{s:s, s:s?, s:s, s:s?, s:o, s:o, s:o, s:o, s:i, s:b}", "quantity",
			 c->typed, "from", from, "to", measuring_system_word(c->to), "of", c->of,
			 "mass", converted_json(&c->mass, true), "volume",
			 converted_json(&c->volume, false), "measures", measures, "rows",
			 rows_json(&c->rows), "foods", (int)c->rows.foods_n, "form_ignored",
			 (int)c->rows.form_ignored);
}

int conversion_answer(struct invocation *inv, const struct conversion *c)
{
	if (flag(inv, "json"))
		return answer_json(inv, conversion_json(c), STATUS_DONE);
	conversion_text(inv, c);
	return STATUS_DONE;
}

static int ambiguity_json(struct invocation *inv, enum kitchen_unit unit,
			  const struct kitchen_measure *all, size_t n)
{
	json_t *measures = json_array();
	for (size_t i = 0; i < n; i++)
		add_measure((void *)&measures, &all[i]);
	return answer_json(inv,
			   json_pack("{s:s, s:s, s:s, s:o}", "verdict", "unclear", "asks", "from",
				     "unit", kitchen_unit_name(unit, false), "measures", measures),
			   STATUS_UNCLEAR);
}

static void ambiguity_text(struct invocation *inv, enum kitchen_unit unit, struct rational number,
			   const struct kitchen_measure *all, size_t n)
{
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	struct rational least = all[0].amount, most = all[0].amount;
	char headline[128], source[WORDS_BUFFER], amount[64];
	snprintf(headline, sizeof headline, "whose %s?", kitchen_unit_name(unit, false));
	page_headline(&page, "UNCLEAR", headline);
	for (size_t i = 0; i < n; i++) {
		double whole = rational_double(all[i].amount) * rational_double(number);
		page_format(&page, "  ", "--from %s: one is %s mL%s, all of it %.4g mL %s",
			    measuring_system_word(all[i].system),
			    exact_words(amount, sizeof amount, all[i].amount),
			    all[i].exact ? "" : " (not by definition)", whole,
			    cite(&sources, source, sizeof source, &all[i].row->from));
		if (rational_compare(all[i].amount, least) < 0)
			least = all[i].amount;
		if (rational_compare(all[i].amount, most) > 0)
			most = all[i].amount;
	}
	page_format(&page, "  ",
		    "The largest holds %.2g %% more than the smallest. Look where the "
		    "recipe comes from, and say --from.",
		    (rational_double(most) / rational_double(least) - 1) * PERCENT);
	sources_text(&page, &sources);
}

int ambiguity_answer(struct invocation *inv, enum kitchen_unit unit, struct rational number)
{
	struct kitchen_measure all[SYSTEM_COUNT];
	bool differ;
	size_t n = kitchen_measure_all(reference_tables_edition(), unit, all, &differ);
	if (flag(inv, "json"))
		return ambiguity_json(inv, unit, all, n);
	ambiguity_text(inv, unit, number, all, n);
	return STATUS_UNCLEAR;
}
