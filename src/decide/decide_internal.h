/*
 * Inside the engine: what is worked out once from a request, and how a rule reports.
 * Rules read struct facts and add findings; they change nothing else.
 */
#ifndef JARWRIGHT_DECIDE_INTERNAL_H
#define JARWRIGHT_DECIDE_INTERNAL_H

#include "jarwright/decide.h"

#define MILLI 1000

/* What the request comes to in the published tables. Members stay NULL, -1 or false when a
 * fact before them is missing; the rules say which. */
struct facts {
	const struct reference *ref;
	const struct request *rq;
	const struct food *food;           /* the one food, or NULL */
	bool canner_known;                 /* one of the four kinds */
	bool steam, pressure;              /* of a known canner */
	size_t tables_n;                   /* tables of this food for the canner, any pack */
	bool pack_unstated_table;          /* the canner's only table does not name a pack */
	const struct process_table *table; /* food, canner and pack settled */
	bool jar_known;                    /* a jar no larger than the largest there is */
	enum jar jar;                      /* the smallest named jar that holds the cook's */
	bool jar_by_namesake;              /* a metric jar taken for its US namesake */
	bool jar_beyond;                   /* larger than every named jar */
	const struct process_line *first;  /* first line of the covering jar, or NULL */
	size_t lines_n;                    /* lines of that jar: its pressure choices */
	int band;                          /* index in table->bands, or -1 */
	const struct process_line *line;   /* the line chosen, with a figure in the band */
	int minutes;                       /* of the process; includes the sweet spread rule */
};

void facts_resolve(const struct reference *ref, const struct request *rq, struct facts *out);

/* The figure a rule turns on, in thousandths of its unit. */
static inline int32_t rule_limit(const struct facts *f, enum rule_id rule)
{
	return f->ref->rules[rule].limit_milli;
}

/* Adds a finding and returns it for its template values; never NULL. */
struct finding *find(struct decision *d, enum rule_id rule, enum level level);

/* The minutes a sweet spread needs at least at this elevation, or 0 for other foods. */
int sweet_spread_minutes(const struct facts *f);

/* Are sterile empty jars part of this process? Only with a line chosen. */
bool needs_sterile_jars(const struct facts *f);

/* Situations a rule can be confined to. */
enum when {
	WHEN_ANY = 0,
	WHEN_NOT_ONE_FOOD = 1 << 0,
	WHEN_FOOD = 1 << 1,    /* one food is meant */
	WHEN_NO_LINE = 1 << 2, /* no published figure was reached: a fact or a table is missing */
	WHEN_LINE = 1 << 3,
	WHEN_STEAM = 1 << 4,
	WHEN_PRESSURE = 1 << 5,
	WHEN_ACID = 1 << 6,   /* the food is what it is by an acid of its formula */
	WHEN_BARRED = 1 << 7, /* a closure or a container refused by name */
	WHEN_PH = 1 << 8,     /* a reading was given */
};

/* One rule: looks at the facts, adds what it finds. */
typedef void rule_function(const struct facts *f, enum rule_id rule, struct decision *d);

rule_function rule_food_unknown, rule_food_ambiguous, rule_food_or_recipe, rule_food_barred,
    rule_food_by_word, rule_no_process;
rule_function rule_canner_missing, rule_gauge_kind_missing, rule_method_barred,
    rule_low_acid_needs_pressure, rule_canner_not_published, rule_canner_too_small,
    rule_gauge_check, rule_vent;
rule_function rule_steam_acid_only, rule_steam_needs_boiling_water, rule_steam_time_limit,
    rule_steam_jar, rule_steam_advice;
rule_function rule_pack_missing, rule_pack_not_published, rule_pack_unstated, rule_pack_only;
rule_function rule_jar_missing, rule_jar_too_large, rule_jar_covered, rule_jar_namesake,
    rule_closure_barred, rule_container_barred, rule_mayonnaise_jar, rule_jars_not_sterile,
    rule_sterile_jars;
rule_function rule_elevation_missing, rule_elevation_above, rule_elevation_below_sea,
    rule_elevation_near_border, rule_sweet_spread;
rule_function rule_vinegar_missing, rule_vinegar_weak, rule_vinegar_strong, rule_vinegar_unknown,
    rule_vinegar_home_made, rule_vinegar_wine, rule_acid_left_out, rule_acid_fresh_juice,
    rule_acid_tablets, rule_acid_not_in_formula, rule_acid_per_jar, rule_acid_bottled,
    rule_ph_too_high, rule_ph_near, rule_ph_no_help;
rule_function rule_psi_not_published, rule_psi_choices, rule_cell_not_published, rule_readings,
    rule_table_note, rule_headspace;

#endif
