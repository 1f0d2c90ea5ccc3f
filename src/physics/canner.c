#include <math.h>

#include "convert.h"
#include "jarwright/physics.h"

/* A gauge shows the pressure above the air's; steam goes by the pressure in all. */
static double saturated_steam_f(double psia)
{
	return fahrenheit_from_kelvin(physics_saturation_temperature_k(mpa_from_psi(psia)));
}

static double saturation_psia(double temperature_f)
{
	return psi_from_mpa(physics_saturation_pressure_mpa(kelvin_from_fahrenheit(temperature_f)));
}

double physics_boiling_point(double elevation_ft)
{
	return saturated_steam_f(physics_air_pressure(elevation_ft));
}

double physics_canner_temperature(double gauge_psi, double elevation_ft)
{
	return saturated_steam_f(physics_air_pressure(elevation_ft) + gauge_psi);
}

double physics_gauge_pressure_for(double temperature_f, double elevation_ft)
{
	return saturation_psia(temperature_f) - physics_air_pressure(elevation_ft);
}

double physics_elevation_of_boiling_point(double temperature_f)
{
	double elevation_ft = physics_elevation_of_pressure(saturation_psia(temperature_f));
	return ceil(elevation_ft) + 0.0; /* + 0.0: sea level is 0, never -0 */
}
