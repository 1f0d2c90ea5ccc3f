/*
 * Air, water and steam: what a canner can reach at an elevation.
 *
 * Nothing here decides a process; the engine goes by the published tables. These
 * functions explain the tables and run the steam canner's thermometer.
 * Temperatures are in degrees Fahrenheit, pressures in psi, elevations in feet
 * (geometric, above sea level), unless the name says otherwise. Every function
 * is pure. Outside the range its comment gives, a function returns NAN.
 */
#ifndef JARWRIGHT_PHYSICS_H
#define JARWRIGHT_PHYSICS_H

/*
 * Absolute pressure of the standard atmosphere (U.S. Standard Atmosphere, 1976:
 * the layer below 11 km geopotential). Range: -16,000 to 36,000 ft.
 */
double physics_air_pressure(double elevation_ft);

/* The inverse: the elevation at which the standard atmosphere has this pressure. */
double physics_elevation_of_pressure(double psia);

/*
 * Saturation pressure and temperature of water and steam: IAPWS-IF97, region 4,
 * equations 30 and 31, in the formulation's own units.
 * Ranges: 273.15 to 647.096 K, 0.000611213 to 22.064 MPa.
 */
double physics_saturation_pressure_mpa(double kelvin);
double physics_saturation_temperature_k(double mpa);

/* Boiling point of water at an elevation. */
double physics_boiling_point(double elevation_ft);

/* Temperature of saturated steam in a vented canner at this gauge pressure. */
double physics_canner_temperature(double gauge_psi, double elevation_ft);

/* Gauge pressure at which saturated steam has this temperature. */
double physics_gauge_pressure_for(double temperature_f, double elevation_ft);

/*
 * Elevation at which water boils at a measured temperature, in whole feet, rounded
 * up: the safe side, since a higher band never asks for less.
 * A thermometer's error is the caller's to add.
 */
double physics_elevation_of_boiling_point(double temperature_f);

/*
 * The general method: what a minute at a temperature is worth in minutes at a reference
 * temperature, 10^((T - reference) / z), with z in degrees Fahrenheit, > 0; as printed for a
 * reference of 121.1 C and a z of 10 C in FAO Fisheries Technical Paper 285, section 1.3.
 */
double physics_lethal_rate(double temperature_f, double reference_f, double z_f);

/*
 * Minutes at the reference temperature that a passage of this many minutes (>= 0) from one
 * temperature to another is worth. Between the two the temperature is taken to change evenly;
 * for that the result is exact: the rate is integrated, not sampled.
 */
double physics_lethality(double from_f, double to_f, double minutes, double reference_f,
			 double z_f);

/*
 * Reference temperature and z of F0, the customary measure for low-acid canned food: 121.1 C
 * and 10 C (FAO Fisheries Technical Paper 285, section 1.3), in the round figures 250 and 18 F.
 */
#define PHYSICS_F0_REFERENCE_F 250.0
#define PHYSICS_F0_Z_F         18.0

#endif
