/* boil: what water, steam and a gauge do at this elevation. */
#include <math.h>
#include <string.h>

#include "cli.h"
#include "jarwright/measure.h"
#include "jarwright/physics.h"
#include "jarwright/plan.h"
#include "jarwright/render_page.h"
#include "page_file.h"
#include "request.h"

static const struct option_spec options[] = {
    OPTION_ELEVATION,
    {"measured", "TEMPERATURE", "a boiling point you measured, with its unit: 202F, 94.5C"},
    OPTION_CHART,
    OPTION_OUT,
    OPTION_JSON,
    OPTIONS_END,
};

static const struct example examples[] = {
    {"jarwright boil --elevation 2900ft", "boiling point, jelly point, pressure for 240 F"},
    {"jarwright boil --measured 202F", "the elevation a boiling pot tells"},
    {"jarwright boil --elevation 2900ft --chart --out boil.html", "by elevation, for the wall"},
    EXAMPLES_END,
};

#define MILLI     1000
#define FT_TO_M   0.3048 /* exact: international foot */
#define PROCESS_F 240.0  /* the temperature that the guide names for low-acid food, p. 1-19 */
#define GAUGES    3
static const int gauge_psi[GAUGES] = {5, 10, 15};

struct boil {
	bool measured;
	double ft, boiling_f, pressure_psi;
	double gauge_f[GAUGES];
	bool jelly; /* is a jelly point published? */
	int jelly_rise_f;
	const struct citation *jelly_from;
};

static double celsius(double fahrenheit)
{
	return (fahrenheit - 32) / 1.8;
}

/* The published jelly point and boiling point, both at sea level, give the rise. */
static void find_jelly_rise(struct boil *boil)
{
	const struct reference *ref = reference_edition();
	const struct published_rule *jelly =
	    published_find(ref, "gel-point", "degF", "|sea level|");
	const struct published_rule *boils =
	    published_find(ref, "steam-altitude", "F", "|boiling point at sea level|");
	struct span jelly_f, boiling_f;
	boil->jelly =
	    jelly && boils && published_span(jelly, &jelly_f) && published_span(boils, &boiling_f);
	if (!boil->jelly)
		return;
	boil->jelly_rise_f = jelly_f.least - boiling_f.least;
	boil->jelly_from = &jelly->from;
}

static bool read_place(struct invocation *inv, struct boil *boil)
{
	const char *measured = option(inv, "measured");
	struct elevation elevation;
	struct quantity temperature;
	if (measured && option(inv, "elevation"))
		return error_usage(inv->err,
				   "boil: say either --elevation or --measured, not both");
	if (measured) {
		if (!quantity_parse(DIMENSION_TEMPERATURE, "measured", measured, &temperature,
				    inv->err))
			return false;
		boil->measured = true;
		boil->boiling_f = rational_double(temperature.amount);
		boil->ft = physics_elevation_of_boiling_point(boil->boiling_f);
		return !isnan(boil->ft) ||
		       error_usage(inv->err, "measured: water boils at no such temperature in any "
					     "kitchen; measure again");
	}
	if (!invocation_elevation(inv, &elevation))
		return false;
	if (!elevation.stated)
		return error_usage(inv->err,
				   "boil: the elevation is not known; say --elevation 2900ft, "
				   "or --measured 202F");
	boil->ft = (double)elevation.mft / MILLI;
	boil->boiling_f = physics_boiling_point(boil->ft);
	return true;
}

static bool compute(struct invocation *inv, struct boil *boil)
{
	/* Rounded up to a tenth: a gauge read to the rounded figure is never short. */
	boil->pressure_psi = ceil(physics_gauge_pressure_for(PROCESS_F, boil->ft) * 10) / 10;
	bool known = !isnan(boil->boiling_f) && !isnan(boil->pressure_psi);
	for (int i = 0; i < GAUGES; i++) {
		boil->gauge_f[i] = physics_canner_temperature(gauge_psi[i], boil->ft);
		known = known && !isnan(boil->gauge_f[i]);
	}
	find_jelly_rise(boil);
	return known || error_usage(inv->err, "boil: the standard atmosphere ends before this "
					      "elevation; check what you typed");
}

static void temperature_line(const struct page *page, const char *what, double fahrenheit)
{
	page_format(page, "  ", "%s %.1f °F (%.1f °C)", what, fahrenheit, celsius(fahrenheit));
}

static void print(struct invocation *inv, const struct boil *boil)
{
	struct page page = answer_page(inv);
	char feet[WORDS_BUFFER], what[64], source[WORDS_BUFFER];
	feet_words(feet, sizeof feet, (int32_t)ceil(boil->ft));
	page_format(&page, "", "At %s ft (%.0f m)%s:", feet, boil->ft * FT_TO_M,
		    boil->measured ? ", as the measured boiling point tells" : "");
	temperature_line(&page, "Water boils at", boil->boiling_f);
	temperature_line(&page, "Steam in an atmospheric steam canner has", boil->boiling_f);
	if (boil->jelly) {
		temperature_line(&page, "Jelly without added pectin sets at",
				 boil->boiling_f + boil->jelly_rise_f);
		page_format(&page, "    ", "[%d °F above the boiling point: %s]",
			    boil->jelly_rise_f,
			    citation_words(source, sizeof source, boil->jelly_from));
	}
	page_format(&page, "  ", "A vented pressure canner reaches %.0f °F (%.1f °C) at %.1f psi",
		    PROCESS_F, celsius(PROCESS_F), boil->pressure_psi);
	for (int i = 0; i < GAUGES; i++) {
		snprintf(what, sizeof what, "At %d psi it has", gauge_psi[i]);
		temperature_line(&page, what, boil->gauge_f[i]);
	}
	page_blank(&page);
	if (boil->measured)
		page_format(
		    &page, "careful ",
		    "A thermometer that reads one degree Fahrenheit high puts you %.0f ft too "
		    "low: compare with a map, and take the higher elevation.",
		    physics_elevation_of_boiling_point(boil->boiling_f - 1) - boil->ft);
	page_text(
	    &page, "note    ",
	    "From the standard atmosphere; weather shifts it. These figures explain the tables "
	    "and never replace them: the process is what check says.");
}

static json_t *gauges_json(const struct boil *boil)
{
	json_t *list = json_array();
	for (int i = 0; list && i < GAUGES; i++)
		list = json_append(list, json_pack("{s:i, s:o, s:o}", "psi", gauge_psi[i], "f",
						   json_tenth(boil->gauge_f[i]), "c",
						   json_tenth(celsius(boil->gauge_f[i]))));
	return list;
}

static json_t *to_json(const struct boil *boil)
{
	double jelly = boil->boiling_f + boil->jelly_rise_f;
	return json_pack("{s:o, s:o, s:b, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "elevation_ft",
			 json_tenth(boil->ft), "elevation_m", json_tenth(boil->ft * FT_TO_M),
			 "measured", (int)boil->measured, "boiling_f", json_tenth(boil->boiling_f),
			 "boiling_c", json_tenth(celsius(boil->boiling_f)), "steam_f",
			 json_tenth(boil->boiling_f), "jelly_f",
			 boil->jelly ? json_tenth(jelly) : json_null(), "jelly_c",
			 boil->jelly ? json_tenth(celsius(jelly)) : json_null(), "psi_for_240f",
			 json_tenth(boil->pressure_psi), "gauge", gauges_json(boil));
}

/* The chart is for every elevation; the kitchen's own is marked if it is known. */
static int chart(struct invocation *inv)
{
	struct elevation elevation;
	struct page_file file;
	if (option(inv, "measured"))
		error_usage(inv->err, "boil: the chart marks an elevation; say --elevation "
				      "instead of --measured");
	if (inv->err->kind != ERROR_NONE || !invocation_elevation(inv, &elevation) ||
	    !page_open(inv, &file))
		return command_failed(inv);
	struct boil_chart wall = {.here = {elevation.stated, elevation.mft},
				  .edition = reference_edition()->edition};
	bool whole = boil_chart_html(file.out, &wall, inv->err);
	return page_close(inv, &file, whole) ? STATUS_DONE : command_failed(inv);
}

static int run(struct invocation *inv)
{
	struct boil boil = {.measured = false};
	if (!operands_between(inv, 0, 0, "nothing") || !chart_options(inv))
		return command_failed(inv);
	if (flag(inv, "chart"))
		return chart(inv);
	if (!read_place(inv, &boil) || !compute(inv, &boil))
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, to_json(&boil), STATUS_DONE);
	print(inv, &boil);
	return STATUS_DONE;
}

const struct command command_boil = {
    .name = "boil",
    .synopsis = "[--elevation E | --measured TEMPERATURE] [--chart [--out FILE]]",
    .summary = "boiling point, jelly point and canner pressure at an elevation",
    .description = "Computes from the standard atmosphere and the steam tables what water, steam "
		   "and a pressure canner reach where you are, or where you are from a boiling "
		   "point you measured. It explains the published tables and decides nothing. "
		   "--chart makes a page for the wall, with every elevation up to 10,000 ft.",
    .options = options,
    .examples = examples,
    .run = run,
};
