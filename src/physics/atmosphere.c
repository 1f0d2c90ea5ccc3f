#include <math.h>

#include "convert.h"
#include "jarwright/physics.h"

/*
 * U.S. Standard Atmosphere, 1976 (NOAA, NASA and USAF; NOAA-S/T 76-1562, reprinted as
 * NASA-TM-X-74335): the layer from sea level to 11 km geopotential, where temperature
 * falls linearly.
 */
/* Sea-level pressure, Pa, and temperature, K. */
#define SEA_LEVEL_PRESSURE    101325.0
#define SEA_LEVEL_TEMPERATURE 288.15
/* Fall of temperature with geopotential height, K/m. */
#define LAPSE_RATE 0.0065
/* g0' M0 / R*, K/m, of the standard's 9.80665 m/s2, 28.9644 kg/kmol, 8314.32 N m/(kmol K). */
#define HYDROSTATIC_CONSTANT (9.80665 * 28.9644 / 8314.32)
/* Effective radius of the earth for geopotential, m. */
#define EARTH_RADIUS 6356766.0

/* The range of the header, ft. */
#define LOWEST_FT  (-16000.0)
#define HIGHEST_FT 36000.0
/* What rounding may add on the way back, so that a pressure from the very edge is inside. */
#define ROUNDING_FT 1e-6

#define EXPONENT (HYDROSTATIC_CONSTANT / LAPSE_RATE)

double physics_air_pressure(double elevation_ft)
{
	if (!(elevation_ft >= LOWEST_FT && elevation_ft <= HIGHEST_FT))
		return NAN;
	double geometric = elevation_ft * METRES_PER_FOOT;
	double geopotential = EARTH_RADIUS * geometric / (EARTH_RADIUS + geometric);
	double temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential;
	double pascals = SEA_LEVEL_PRESSURE * pow(temperature / SEA_LEVEL_TEMPERATURE, EXPONENT);
	return pascals / PASCALS_PER_PSI;
}

double physics_elevation_of_pressure(double psia)
{
	double ratio = psia * PASCALS_PER_PSI / SEA_LEVEL_PRESSURE;
	double temperature = SEA_LEVEL_TEMPERATURE * pow(ratio, 1.0 / EXPONENT);
	double geopotential = (SEA_LEVEL_TEMPERATURE - temperature) / LAPSE_RATE;
	double geometric = EARTH_RADIUS * geopotential / (EARTH_RADIUS - geopotential);
	double elevation_ft = geometric / METRES_PER_FOOT;
	if (!(elevation_ft >= LOWEST_FT - ROUNDING_FT && elevation_ft <= HIGHEST_FT + ROUNDING_FT))
		return NAN;
	return elevation_ft;
}
