#include <math.h>

#include "jarwright/physics.h"

/*
 * IAPWS R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997 for the
 * Thermodynamic Properties of Water and Steam, region 4: coefficients of table 34,
 * numbered as there (n[0] is not used).
 */
static const double n[11] = {
    0.0,
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
};

/* The range of the formulation: from 273.15 K to the critical point. */
#define LOWEST_K    273.15
#define HIGHEST_K   647.096
#define LOWEST_MPA  0.000611213
#define HIGHEST_MPA 22.064

/* Equation 30. */
double physics_saturation_pressure_mpa(double kelvin)
{
	if (!(kelvin >= LOWEST_K && kelvin <= HIGHEST_K))
		return NAN;
	double theta = kelvin + n[9] / (kelvin - n[10]);
	double a = theta * theta + n[1] * theta + n[2];
	double b = n[3] * theta * theta + n[4] * theta + n[5];
	double c = n[6] * theta * theta + n[7] * theta + n[8];
	double beta = 2.0 * c / (-b + sqrt(b * b - 4.0 * a * c)); /* pressure^(1/4) */
	return beta * beta * beta * beta;
}

/* Equation 31. */
double physics_saturation_temperature_k(double mpa)
{
	if (!(mpa >= LOWEST_MPA && mpa <= HIGHEST_MPA))
		return NAN;
	double beta = sqrt(sqrt(mpa));
	double e = beta * beta + n[3] * beta + n[6];
	double f = n[1] * beta * beta + n[4] * beta + n[7];
	double g = n[2] * beta * beta + n[5] * beta + n[8];
	double d = 2.0 * g / (-f - sqrt(f * f - 4.0 * e * g));
	double sum = n[10] + d;
	return (sum - sqrt(sum * sum - 4.0 * (n[9] + n[10] * d))) / 2.0;
}
