/* Dissociation constants of an acid at the salt of the mixture. */
#include <math.h>
#include <string.h>

#include "acidity_internal.h"

/*
 * Two kinds of published constants: at zero ionic strength, and adjusted or fitted by USDA-ARS
 * at 2 percent NaCl, of which it gives the ionic strength: 0.342 mol/L.
 */
static const double ARS_IONIC = 0.342;

static bool at_two_percent(const struct dissociation_row *row)
{
	return strstr(row->from.place, "2% NaCl") || strstr(row->from.place, "fitted");
}

static bool same_acid(const char *row, const char *acid)
{
	size_t n = strcspn(acid, "(");
	while (n > 0 && acid[n - 1] == ' ')
		n--;
	return n > 0 && strncmp(row, acid, n) == 0 && (row[n] == '\0' || row[n] == ' ');
}

/* The sum of the constants of one kind, for their mean. */
struct mean {
	double sum[3];
	int n;
};

static bool read_constants(const struct dissociation_row *row, double pk[3], int *steps,
			   struct error *err)
{
	const char *const text[3] = {row->pka1, row->pka2, row->pka3};
	for (*steps = 0; *steps < 3 && text[*steps][0] != '\0'; ++*steps)
		if (!figure("dissociation", text[*steps], &pk[*steps], err))
			return false;
	return true;
}

static void widen(struct acid_constants *out, const double pk[3], bool first)
{
	for (int i = 0; i < out->steps; i++) {
		out->low[i] = first ? pk[i] : fmin(out->low[i], pk[i]);
		out->high[i] = first ? pk[i] : fmax(out->high[i], pk[i]);
	}
}

static void move(double pk[3], int steps, double from, double to)
{
	for (int i = 0; i < steps; i++)
		pk[i] += acidity_davies(to, -i) - acidity_davies(from, -i);
}

/* Between the two kinds by the salt there is: each counts most where it was measured. */
static void blend(struct acid_constants *out, const struct mean *zero, const struct mean *ars,
		  double ionic)
{
	double share = ars->n == 0 ? 0 : zero->n == 0 ? 1 : fmin(ionic / ARS_IONIC, 1);
	for (int i = 0; i < out->steps; i++) {
		double at_zero = zero->n ? zero->sum[i] / zero->n : 0;
		double at_ars = ars->n ? ars->sum[i] / ars->n : 0;
		out->best[i] = at_zero * (1 - share) + at_ars * share;
	}
}

bool acid_constants(const struct mixture *mix, const char *acid, struct acid_constants *out,
		    bool *found, struct error *err)
{
	struct mean zero = {0};
	struct mean ars = {0};
	*out = (struct acid_constants){0};
	for (size_t i = 0; i < mix->tables->dissociation_n; i++) {
		const struct dissociation_row *row = &mix->tables->dissociation[i];
		if (!same_acid(row->acid, acid))
			continue;
		if (out->molar_mass <= 0 && row->molar_mass[0] != '\0' &&
		    !figure("dissociation", row->molar_mass, &out->molar_mass, err))
			return false;
		double pk[3] = {0};
		int steps = 0;
		if (!read_constants(row, pk, &steps, err))
			return false;
		/* The publication with the fewest steps would not do for the others' mean. */
		bool first = zero.n + ars.n == 0;
		if (steps == 0 || (!first && steps < out->steps))
			continue;
		if (first)
			out->steps = steps;
		bool salted = at_two_percent(row);
		move(pk, out->steps, salted ? ARS_IONIC : 0, mix->ionic);
		widen(out, pk, first);
		struct mean *mean = salted ? &ars : &zero;
		for (int s = 0; s < out->steps; s++)
			mean->sum[s] += pk[s];
		mean->n++;
	}
	blend(out, &zero, &ars, mix->ionic);
	*found = out->steps > 0 && out->molar_mass > 0;
	return true;
}
