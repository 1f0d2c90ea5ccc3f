/* Charge balance: the charge of a set of buffers, and the pH where all charge is zero. */
#include "jarwright/acidity.h"

#include <math.h>

/* Kw = 1e-14, as in the buffer models of the source. */
static const double PKW = 14;
/* Bisections of the bracket 0 to 14: 14 / 2^50 is beyond what a double of that size tells. */
enum { BISECTIONS = 50 };

/*
 * Mean charges that one molecule has given off, from the populations of its forms. The mean of
 * an ensemble whose weights grow with pH in the order of the charge, so it never falls.
 */
static double protons_lost(const struct acidity_buffer *buffer, double ph)
{
	double weight = 1;
	double sum = 1;
	double lost = 0;
	for (int i = 0; i < buffer->steps; i++) {
		weight *= pow(10, ph - buffer->pk[i]);
		sum += weight;
		lost += (i + 1) * weight;
	}
	return lost / sum;
}

double acidity_charge_at(const struct acidity_charge *charge, double ph)
{
	double sum = charge->offset;
	for (size_t i = 0; i < charge->buffers_n; i++) {
		const struct acidity_buffer *buffer = &charge->buffers[i];
		double lost = protons_lost(buffer, ph);
		sum += buffer->mol * (buffer->base ? lost - 1 : lost);
	}
	return sum;
}

double acidity_solve(const struct acidity_charge *charge, double litres)
{
	double low = 0;
	double high = PKW;
	for (int i = 0; i < BISECTIONS; i++) {
		double middle = (low + high) / 2;
		double water = litres * (pow(10, middle - PKW) - pow(10, -middle));
		if (acidity_charge_at(charge, middle) + water < 0)
			low = middle;
		else
			high = middle;
	}
	return (low + high) / 2;
}

double acidity_davies(double ionic, int z)
{
	const double debye_hueckel = 0.509; /* 25 C */
	double root = sqrt(ionic);
	double bracket = root / (1 + root) - 0.3 * ionic;
	return -debye_hueckel * bracket * (1 - 2 * z);
}
