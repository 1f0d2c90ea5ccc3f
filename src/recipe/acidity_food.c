/* The charges of a food by its name: titrated, else by its acids and pH, else stood in for. */
#include <math.h>
#include <string.h>

#include "acidity_internal.h"
#include "jarwright/words.h"

/*
 * Titrated foods that are neither dried nor an additive: what a food without data may be like.
 * The first are fresh produce.
 */
static const char *const STAND_INS[] = {
    "cucumber juice", "cucumber juice medium", "onion juice", "avocado", "egg yolk", "bacon",
    "anchovy"};
enum { FRESH_N = 4, STAND_INS_N = sizeof STAND_INS / sizeof *STAND_INS };

struct range {
	double low, high;
	bool any;
};

static void range_add(struct range *range, double low, double high)
{
	range->low = range->any ? fmin(range->low, low) : low;
	range->high = range->any ? fmax(range->high, high) : high;
	range->any = true;
}

static bool read_range(const char *table, const char *low, const char *high, struct range *out,
		       struct error *err)
{
	double a;
	double b;
	const char *least = low[0] != '\0' ? low : high;
	const char *most = high[0] != '\0' ? high : low;
	if (least[0] == '\0')
		return true;
	if (!figure(table, least, &a, err) || !figure(table, most, &b, err))
		return false;
	range_add(out, a, b);
	return true;
}

static bool ph_range(const struct mixture *mix, const char *name, struct range *out,
		     struct error *err)
{
	for (size_t i = 0; i < mix->tables->ph_n; i++) {
		const struct ph_row *row = &mix->tables->ph[i];
		if (food_named(row->food, name) &&
		    !read_range("ph", row->ph_min, row->ph_max, out, err))
			return false;
	}
	return true;
}

/* The two ends of a food's acids, as charges of its grams; no buffers if there are none. */
struct acids {
	struct acidity_charge least, most;
};

static bool acid_seen(const struct mixture *mix, size_t row, const char *name)
{
	for (size_t i = 0; i < row; i++)
		if (strcmp(mix->tables->acid_content[i].acid,
			   mix->tables->acid_content[row].acid) == 0 &&
		    food_named(mix->tables->acid_content[i].food, name))
			return true;
	return false;
}

/* The content of the acid of one row, over all rows of the food. */
static bool acid_range(const struct mixture *mix, const char *acid, const char *name,
		       struct range *out, struct error *err)
{
	for (size_t i = 0; i < mix->tables->acid_content_n; i++) {
		const struct acid_content_row *row = &mix->tables->acid_content[i];
		if (strcmp(row->acid, acid) == 0 && food_named(row->food, name) &&
		    !read_range("acid_content", row->g_per_100g_min, row->g_per_100g_max, out, err))
			return false;
	}
	return true;
}

static void acid_add(struct acidity_charge *charge, const struct acid_constants *acid, double grams)
{
	struct acidity_buffer *buffer = &charge->buffers[charge->buffers_n++];
	*buffer = (struct acidity_buffer){.mol = grams / acid->molar_mass, .steps = acid->steps};
	memcpy(buffer->pk, acid->best, sizeof buffer->pk);
}

static bool food_acids(const struct mixture *mix, const struct acidity_part *part,
		       struct acids *out, struct error *err)
{
	for (size_t i = 0; i < mix->tables->acid_content_n; i++) {
		const struct acid_content_row *row = &mix->tables->acid_content[i];
		if (!food_named(row->food, part->name) || acid_seen(mix, i, part->name) ||
		    out->least.buffers_n == ACIDITY_BUFFERS_MAX)
			continue;
		struct acid_constants acid;
		struct range content = {0};
		bool found = false;
		if (!acid_constants(mix, row->acid, &acid, &found, err) ||
		    !acid_range(mix, row->acid, part->name, &content, err))
			return false;
		if (!found || !content.any)
			continue;
		acid_add(&out->least, &acid, content.low * part->grams / 100);
		acid_add(&out->most, &acid, content.high * part->grams / 100);
	}
	return true;
}

/* Gives a charge the strong ions with which the food alone has this pH. */
static void settle(struct acidity_charge *charge, double grams, double ph)
{
	double water = grams / 1000 * (pow(10, ph - 14) - pow(10, -ph));
	charge->offset = 0;
	charge->offset = -acidity_charge_at(charge, ph) - water;
}

static bool stand_ins(const struct mixture *mix, const struct acidity_part *part, size_t names_n,
		      struct part_charges *out, struct error *err)
{
	for (size_t i = 0; i < mix->tables->buffer_n; i++) {
		const struct buffer_row *row = &mix->tables->buffer[i];
		for (size_t s = 0; s < names_n; s++)
			if (row->buffers[0] != '\0' && food_named(row->ingredient, STAND_INS[s]) &&
			    !titrated_charge(mix, row, part->grams, out, err))
				return false;
	}
	return true;
}

/* The best case is the mean of the charges from..to. */
static void weigh(struct part_charges *out, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++)
		out->weights[i] = 1 / (double)(to - from);
}

/* Buffers of fresh produce, each settled at one or both ends of the food's pH. */
static bool settled_stand_ins(const struct mixture *mix, const struct acidity_part *part,
			      const struct range *ph, bool both, struct part_charges *out,
			      struct error *err)
{
	const double ends[2] = {ph->high, ph->low};
	for (int end = 0; end < (both ? 2 : 1); end++) {
		size_t from = out->n;
		if (!stand_ins(mix, part, FRESH_N, out, err))
			return false;
		for (size_t i = from; i < out->n; i++)
			settle(&out->charges[i], part->grams, ends[end]);
	}
	return true;
}

/*
 * Other titrated forms of the food, as garlic powder for garlic, at its highest pH. Dried they
 * buffer more than as much of the fresh, so they only widen the range, upwards.
 */
static bool settled_forms(const struct mixture *mix, const struct acidity_part *part, double ph,
			  struct part_charges *out, struct error *err)
{
	char name[WORDS_SIZE];
	char form[WORDS_SIZE];
	if (!words_fold(part->name, strlen(part->name), name))
		return true;
	for (size_t i = 0; i < mix->tables->buffer_n; i++) {
		const struct buffer_row *row = &mix->tables->buffer[i];
		if (row->buffers[0] == '\0' || strcmp(row->kind, "ingredient") != 0 ||
		    !words_fold(row->ingredient, strlen(row->ingredient), form) ||
		    !words_all_in(form, name))
			continue;
		if (!titrated_charge(mix, row, part->grams, out, err))
			return false;
		settle(&out->charges[out->n - 1], part->grams, ph);
	}
	return true;
}

static bool by_acids(const struct mixture *mix, const struct acidity_part *part,
		     const struct acids *acids, const struct range *ph, struct part_charges *out,
		     struct error *err)
{
	const struct acidity_charge *const content[2] = {&acids->least, &acids->most};
	const double ends[2] = {ph->high, ph->low};
	for (int end = 0; end < 2; end++) {
		for (int c = 0; c < 2; c++) {
			out->charges[out->n] = *content[c];
			settle(&out->charges[out->n++], part->grams, ends[end]);
		}
	}
	weigh(out, 0, 2);
	out->reasons |= ACIDITY_BY_ACIDS;
	/* Acids are not all that buffers: proteins and phosphates do too. */
	return settled_stand_ins(mix, part, ph, false, out, err) &&
	       settled_forms(mix, part, ph->high, out, err);
}

static bool untitrated(const struct mixture *mix, const struct acidity_part *part,
		       struct part_charges *out, struct error *err)
{
	struct range ph = {0};
	struct acids acids = {0};
	if (!ph_range(mix, part->name, &ph, err) || !food_acids(mix, part, &acids, err))
		return false;
	bool has_acids = acids.least.buffers_n > 0;
	if (ph.any && has_acids)
		return by_acids(mix, part, &acids, &ph, out, err);
	if (ph.any) {
		out->reasons |= ACIDITY_NO_ACIDS;
		if (!settled_stand_ins(mix, part, &ph, true, out, err))
			return false;
		weigh(out, 0, out->n / 2);
		return settled_forms(mix, part, ph.high, out, err);
	}
	if (has_acids) {
		/* As free acid it is at its most sour; as other fresh produce, at its least. */
		out->reasons |= ACIDITY_NO_PH;
		out->charges[out->n++] = acids.most;
		if (!stand_ins(mix, part, FRESH_N, out, err))
			return false;
	} else {
		out->reasons |= ACIDITY_NO_DATA;
		out->charges[out->n++] = (struct acidity_charge){0};
		if (!stand_ins(mix, part, STAND_INS_N, out, err))
			return false;
	}
	weigh(out, 1, out->n);
	return true;
}

bool food_charges(const struct mixture *mix, const struct acidity_part *part,
		  struct part_charges *out, struct error *err)
{
	for (size_t i = 0; i < mix->tables->buffer_n; i++) {
		const struct buffer_row *row = &mix->tables->buffer[i];
		if (row->buffers[0] != '\0' && food_named(row->ingredient, part->name) &&
		    !titrated_charge(mix, row, part->grams, out, err))
			return false;
	}
	if (out->n == 0)
		return untitrated(mix, part, out, err);
	weigh(out, 0, out->n);
	out->titrated = true;
	out->reasons |= ACIDITY_BY_TITRATION;
	return true;
}
