#include <math.h>

#include "jarwright/physics.h"

/* ln 10: lethal rates are powers of ten. */
#define LN_10 2.302585092994045684

double physics_lethal_rate(double temperature_f, double reference_f, double z_f)
{
	if (!(z_f > 0.0))
		return NAN;
	return exp(LN_10 * (temperature_f - reference_f) / z_f);
}

/*
 * The integral of rate(from) * 10^((to - from) t / (minutes z)) over t, in closed form.
 * expm1() keeps its digits where the temperature hardly changes; where it does not change
 * at all the quotient is its limit, 1.
 */
double physics_lethality(double from_f, double to_f, double minutes, double reference_f, double z_f)
{
	if (!(minutes >= 0.0))
		return NAN;
	double rise = LN_10 * (to_f - from_f) / z_f;
	double mean = rise == 0.0 ? 1.0 : expm1(rise) / rise;
	return minutes * physics_lethal_rate(from_f, reference_f, z_f) * mean;
}
