/* The estimate of a mixture: its charges, the three pHs, and what each part does in it. */
#include "jarwright/acidity.h"

#include <math.h>
#include <string.h>

#include "acidity_internal.h"

static const double SALT_MOLAR_MASS = 58.44;            /* g/mol */
static const double TITRATED_FROM = 2, TITRATED_TO = 9; /* pH where the titrations mostly lie */

/* How far such models missed measured solutions at most: relation buffer, study jfs-85-918. */
static const double MODEL_ERROR = 0.11;

/* Which of the possible charges of each part counts. */
enum envelope { MOST_ACID, BEST, LEAST_ACID };

/* Never falls as pH rises: a least, a greatest or a mean of charges that never fall. */
static double part_charge_at(const struct part_charges *part, enum envelope envelope, double ph)
{
	double result = envelope == BEST ? 0 : NAN;
	for (size_t i = 0; i < part->n; i++) {
		double charge = acidity_charge_at(&part->charges[i], ph);
		if (envelope == BEST)
			result += part->weights[i] * charge;
		else if (envelope == MOST_ACID)
			result = fmax(result, charge);
		else
			result = fmin(result, charge);
	}
	return part->n ? result : 0;
}

static double balance(const struct mixture *mix, const struct part_charges *parts, size_t n,
		      enum envelope envelope, double ph)
{
	double sum = mix->litres * (pow(10, ph - 14) - pow(10, -ph));
	for (size_t i = 0; i < n; i++)
		sum += part_charge_at(&parts[i], envelope, ph);
	return sum;
}

/* The balance never falls with pH, so bisection keeps its zero between the ends. */
static double solve(const struct mixture *mix, const struct part_charges *parts, size_t n,
		    enum envelope envelope)
{
	double low = 0;
	double high = 14;
	for (int i = 0; i < 50; i++) {
		double middle = (low + high) / 2;
		if (balance(mix, parts, n, envelope, middle) < 0)
			low = middle;
		else
			high = middle;
	}
	return (low + high) / 2;
}

static double mass(const struct acidity_part *part)
{
	return part->kind == ACIDITY_VINEGAR ? part->ml : part->grams;
}

static bool check_part(const struct acidity_part *part, size_t number, struct error *err)
{
	double amount = mass(part);
	if (!(amount >= 0 && amount <= ACIDITY_GRAMS_MAX))
		return error_usage(err,
				   "acidity of a mixture: the amount of part %zu is not "
				   "between 0 and %.0f; say how much there is",
				   number, ACIDITY_GRAMS_MAX);
	if (part->kind == ACIDITY_VINEGAR && !(part->strength_pct > 0 && part->strength_pct <= 100))
		return error_usage(err, "acidity of a mixture: the strength of a vinegar is not "
					"between 0 and 100 percent; read it from the label");
	bool named = part->kind == ACIDITY_FOOD || part->kind == ACIDITY_ACID;
	if (named && (!part->name || part->name[0] == '\0'))
		return error_usage(err, "acidity of a mixture: part %zu has no name; name it",
				   number);
	if (part->kind == ACIDITY_TITRATED && (!part->row || part->row->buffers[0] == '\0'))
		return error_usage(err,
				   "acidity of a mixture: part %zu has no titration; name "
				   "the food instead",
				   number);
	return true;
}

static bool measure(const struct reference_tables *tables, const struct acidity_part *parts,
		    size_t n, struct mixture *mix, unsigned *reasons, struct error *err)
{
	if (n == 0)
		return error_usage(err, "acidity of a mixture: nothing is in it; name its parts");
	if (n > ACIDITY_PARTS_MAX)
		return error_usage(err,
				   "acidity of a mixture: more than %d parts; put like parts "
				   "together",
				   ACIDITY_PARTS_MAX);
	double salt = 0;
	double all = 0;
	for (size_t i = 0; i < n; i++) {
		if (!check_part(&parts[i], i + 1, err))
			return false;
		all += mass(&parts[i]);
		salt += parts[i].kind == ACIDITY_SALT ? parts[i].grams : 0;
	}
	if (!(all > salt))
		return error_usage(err, "acidity of a mixture: no food and no water is in it; say "
					"how much there is");
	double ionic = salt / SALT_MOLAR_MASS / (all / 1000);
	if (ionic > ACIDITY_IONIC_MAX) {
		ionic = ACIDITY_IONIC_MAX;
		*reasons |= ACIDITY_SALT_HIGH;
	}
	*mix = (struct mixture){.tables = tables, .ionic = ionic, .litres = all / 1000};
	return true;
}

/* Share of each part in the buffering: how fast its charge changes with pH. */
static void shares(const struct part_charges *charges, struct acidity *out)
{
	const double step = 0.01;
	double sum = 0;
	for (size_t i = 0; i < out->parts_n; i++) {
		double slope = part_charge_at(&charges[i], BEST, out->best + step) -
			       part_charge_at(&charges[i], BEST, out->best - step);
		out->parts[i].buffering = fmax(slope, 0);
		sum += out->parts[i].buffering;
	}
	for (size_t i = 0; i < out->parts_n; i++) {
		if (sum > 0)
			out->parts[i].buffering /= sum;
		if (out->parts[i].buffering > out->parts[out->dominant].buffering)
			out->dominant = i;
	}
}

static void titrated_share(const struct acidity_part *parts, const struct part_charges *charges,
			   struct acidity *out)
{
	double foods = 0;
	double titrated = 0;
	for (size_t i = 0; i < out->parts_n; i++) {
		if (parts[i].kind != ACIDITY_FOOD && parts[i].kind != ACIDITY_TITRATED)
			continue;
		foods += parts[i].grams;
		titrated += charges[i].titrated ? parts[i].grams : 0;
	}
	out->titrated = foods > 0 ? titrated / foods : 0;
}

bool acidity_estimate(const struct reference_tables *tables, const struct acidity_part *parts,
		      size_t parts_n, struct acidity *out, struct error *err)
{
	struct mixture mix = {0};
	struct part_charges charges[ACIDITY_PARTS_MAX];
	*out = (struct acidity){0};
	if (!measure(tables, parts, parts_n, &mix, &out->reasons, err))
		return false;
	out->parts_n = parts_n;
	for (size_t i = 0; i < parts_n; i++) {
		if (!part_charges(&mix, &parts[i], &charges[i], err))
			return false;
		out->parts[i].reasons = charges[i].reasons;
		out->reasons |= charges[i].reasons;
	}
	out->low = solve(&mix, charges, parts_n, MOST_ACID);
	out->best = solve(&mix, charges, parts_n, BEST);
	out->high = solve(&mix, charges, parts_n, LEAST_ACID);
	/* No pH lies outside the bracket of the solver. */
	out->low = fmax(0, out->low - MODEL_ERROR);
	out->high = fmin(14, out->high + MODEL_ERROR);
	if (out->low < TITRATED_FROM || out->high > TITRATED_TO)
		out->reasons |= ACIDITY_OUT_OF_RANGE;
	shares(charges, out);
	titrated_share(parts, charges, out);
	return true;
}
