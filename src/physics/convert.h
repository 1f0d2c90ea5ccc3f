/* Between the units people use and those the formulations are written in. */
#ifndef JARWRIGHT_PHYSICS_CONVERT_H
#define JARWRIGHT_PHYSICS_CONVERT_H

/*
 * Exact, NIST Special Publication 811 (2008), appendix B: foot and inch, pound,
 * standard gravity; a psi is a pound-force on a square inch.
 */
#define METRES_PER_FOOT 0.3048
#define PASCALS_PER_PSI (0.45359237 * 9.80665 / (0.0254 * 0.0254))
#define PASCALS_PER_MPA 1e6

/* NIST Special Publication 811 (2008), appendix B: T(K) = (t(F) + 459.67) / 1.8. */
static inline double kelvin_from_fahrenheit(double fahrenheit)
{
	return (fahrenheit + 459.67) / 1.8;
}

static inline double fahrenheit_from_kelvin(double kelvin)
{
	return kelvin * 1.8 - 459.67;
}

static inline double mpa_from_psi(double psi)
{
	return psi * (PASCALS_PER_PSI / PASCALS_PER_MPA);
}

static inline double psi_from_mpa(double mpa)
{
	return mpa / (PASCALS_PER_PSI / PASCALS_PER_MPA);
}

#endif
