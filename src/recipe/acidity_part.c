/* The charges of one part, by its kind. */
#include <string.h>

#include "acidity_internal.h"

static bool pure_acid(const struct mixture *mix, const char *name, double grams,
		      struct part_charges *out, struct error *err)
{
	struct acid_constants acid;
	bool found = false;
	if (!acid_constants(mix, name, &acid, &found, err))
		return false;
	if (!found)
		return error_usage(err,
				   "acidity of a mixture: no dissociation constants of the "
				   "acid \"%.60s\" are published here; leave it out, which "
				   "errs on the safe side",
				   name);
	const double *const pk[3] = {acid.best, acid.low, acid.high};
	for (int i = 0; i < 3; i++) {
		struct acidity_charge *charge = &out->charges[out->n++];
		*charge = (struct acidity_charge){.buffers_n = 1};
		charge->buffers[0].mol = grams / acid.molar_mass;
		charge->buffers[0].steps = acid.steps;
		memcpy(charge->buffers[0].pk, pk[i], sizeof charge->buffers[0].pk);
	}
	out->weights[0] = 1;
	return true;
}

bool part_charges(const struct mixture *mix, const struct acidity_part *part,
		  struct part_charges *out, struct error *err)
{
	*out = (struct part_charges){0};
	switch (part->kind) {
	case ACIDITY_FOOD:
		return food_charges(mix, part, out, err);
	case ACIDITY_TITRATED:
		if (!titrated_charge(mix, part->row, part->grams, out, err))
			return false;
		out->weights[0] = 1;
		out->titrated = true;
		out->reasons = ACIDITY_BY_TITRATION;
		return true;
	case ACIDITY_VINEGAR:
		return pure_acid(mix, "acetic", part->ml * part->strength_pct / 100, out, err);
	case ACIDITY_ACID:
		return pure_acid(mix, part->name, part->grams, out, err);
	case ACIDITY_SALT:
	case ACIDITY_WATER:
		return true;
	}
	return error_failed(err, "acidity of a mixture: a part of no known kind; this is a fault "
				 "of the program");
}
