/*
 * The engine: work out the facts, run every rule, let the findings make the verdict.
 */
#include <assert.h>

#include "decide_internal.h"

/*
 * Every rule of db/rules.txt, its function, and the situations outside which it has nothing
 * to say: most rules are silent for most requests, and are passed over without a call.
 */
static const struct {
	rule_function *look;
	unsigned when; /* enum when, or-ed: all must hold */
} rules[RULE_COUNT] = {
    [RULE_FOOD_UNKNOWN] = {rule_food_unknown, WHEN_NOT_ONE_FOOD},
    [RULE_FOOD_AMBIGUOUS] = {rule_food_ambiguous, WHEN_NOT_ONE_FOOD},
    [RULE_FOOD_OR_RECIPE] = {rule_food_or_recipe, WHEN_ANY},
    [RULE_FOOD_BARRED] = {rule_food_barred, WHEN_NOT_ONE_FOOD},
    [RULE_FOOD_BY_WORD] = {rule_food_by_word, WHEN_FOOD},
    [RULE_NO_PROCESS] = {rule_no_process, WHEN_FOOD | WHEN_NO_LINE},
    [RULE_CANNER_MISSING] = {rule_canner_missing, WHEN_NO_LINE},
    [RULE_GAUGE_KIND_MISSING] = {rule_gauge_kind_missing, WHEN_NO_LINE},
    [RULE_METHOD_BARRED] = {rule_method_barred, WHEN_NO_LINE},
    [RULE_LOW_ACID_NEEDS_PRESSURE] = {rule_low_acid_needs_pressure, WHEN_FOOD},
    [RULE_CANNER_NOT_PUBLISHED] = {rule_canner_not_published, WHEN_FOOD | WHEN_NO_LINE},
    [RULE_CANNER_TOO_SMALL] = {rule_canner_too_small, WHEN_ANY},
    [RULE_GAUGE_CHECK] = {rule_gauge_check, WHEN_PRESSURE | WHEN_LINE},
    [RULE_VENT] = {rule_vent, WHEN_PRESSURE | WHEN_LINE},
    [RULE_STEAM_ACID_ONLY] = {rule_steam_acid_only, WHEN_STEAM},
    [RULE_STEAM_NEEDS_BOILING_WATER] = {rule_steam_needs_boiling_water, WHEN_STEAM | WHEN_NO_LINE},
    [RULE_STEAM_TIME_LIMIT] = {rule_steam_time_limit, WHEN_STEAM | WHEN_LINE},
    [RULE_STEAM_JAR] = {rule_steam_jar, WHEN_STEAM},
    [RULE_STEAM_ADVICE] = {rule_steam_advice, WHEN_STEAM | WHEN_LINE},
    [RULE_PACK_MISSING] = {rule_pack_missing, WHEN_NO_LINE},
    [RULE_PACK_NOT_PUBLISHED] = {rule_pack_not_published, WHEN_NO_LINE},
    [RULE_PACK_UNSTATED] = {rule_pack_unstated, WHEN_NO_LINE},
    [RULE_PACK_ONLY] = {rule_pack_only, WHEN_LINE},
    [RULE_JAR_MISSING] = {rule_jar_missing, WHEN_NO_LINE},
    [RULE_JAR_TOO_LARGE] = {rule_jar_too_large, WHEN_NO_LINE},
    [RULE_JAR_COVERED] = {rule_jar_covered, WHEN_ANY},
    [RULE_JAR_NAMESAKE] = {rule_jar_namesake, WHEN_ANY},
    [RULE_CLOSURE_BARRED] = {rule_closure_barred, WHEN_BARRED},
    [RULE_CONTAINER_BARRED] = {rule_container_barred, WHEN_BARRED},
    [RULE_MAYONNAISE_JAR] = {rule_mayonnaise_jar, WHEN_BARRED},
    [RULE_JARS_NOT_STERILE] = {rule_jars_not_sterile, WHEN_LINE},
    [RULE_STERILE_JARS] = {rule_sterile_jars, WHEN_LINE},
    [RULE_ELEVATION_MISSING] = {rule_elevation_missing, WHEN_NO_LINE},
    [RULE_ELEVATION_ABOVE] = {rule_elevation_above, WHEN_NO_LINE},
    [RULE_ELEVATION_BELOW_SEA] = {rule_elevation_below_sea, WHEN_ANY},
    [RULE_ELEVATION_NEAR_BORDER] = {rule_elevation_near_border, WHEN_ANY},
    [RULE_SWEET_SPREAD] = {rule_sweet_spread, WHEN_LINE},
    [RULE_VINEGAR_MISSING] = {rule_vinegar_missing, WHEN_ACID},
    [RULE_VINEGAR_WEAK] = {rule_vinegar_weak, WHEN_ACID},
    [RULE_VINEGAR_STRONG] = {rule_vinegar_strong, WHEN_ACID},
    [RULE_VINEGAR_UNKNOWN] = {rule_vinegar_unknown, WHEN_ACID},
    [RULE_VINEGAR_HOME_MADE] = {rule_vinegar_home_made, WHEN_ACID},
    [RULE_VINEGAR_WINE] = {rule_vinegar_wine, WHEN_ACID},
    [RULE_ACID_LEFT_OUT] = {rule_acid_left_out, WHEN_ACID},
    [RULE_ACID_FRESH_JUICE] = {rule_acid_fresh_juice, WHEN_ACID},
    [RULE_ACID_TABLETS] = {rule_acid_tablets, WHEN_ACID},
    [RULE_ACID_NOT_IN_FORMULA] = {rule_acid_not_in_formula, WHEN_ACID},
    [RULE_ACID_PER_JAR] = {rule_acid_per_jar, WHEN_ACID | WHEN_LINE},
    [RULE_ACID_BOTTLED] = {rule_acid_bottled, WHEN_ACID | WHEN_LINE},
    [RULE_PH_TOO_HIGH] = {rule_ph_too_high, WHEN_PH},
    [RULE_PH_NEAR] = {rule_ph_near, WHEN_PH},
    [RULE_PH_NO_HELP] = {rule_ph_no_help, WHEN_PH},
    [RULE_PSI_NOT_PUBLISHED] = {rule_psi_not_published, WHEN_NO_LINE},
    [RULE_PSI_CHOICES] = {rule_psi_choices, WHEN_PRESSURE | WHEN_LINE},
    [RULE_CELL_NOT_PUBLISHED] = {rule_cell_not_published, WHEN_NO_LINE},
    [RULE_READINGS] = {rule_readings, WHEN_LINE},
    [RULE_TABLE_NOTE] = {rule_table_note, WHEN_LINE},
    [RULE_HEADSPACE] = {rule_headspace, WHEN_LINE},
};

/* A rule adds one finding; psi-choices and acid-per-jar up to four, table-note two. */
static_assert(FINDINGS_MAX >= RULE_COUNT + 3 + 3 + 1, "room for every finding there can be");

struct finding *find(struct decision *d, enum rule_id rule, enum level level)
{
	assert(d->findings_n < FINDINGS_MAX);
	struct finding *f = &d->findings[d->findings_n++];
	*f = (struct finding){.rule = rule, .level = level, .a_milli = NONE, .b_milli = NONE};
	return f;
}

/* Refusals before gaps, gaps before questions, then warnings and notes. */
static int weight(const struct finding *f)
{
	return (int)f->level * 2 - (f->uncovered ? 1 : 0);
}

/* Insertion sort: stable, so rule order holds within a level, and the list is short. */
static void worst_first(struct decision *d)
{
	for (size_t i = 1; i < d->findings_n; i++) {
		if (weight(&d->findings[i - 1]) >= weight(&d->findings[i]))
			continue;
		struct finding moved = d->findings[i];
		size_t j = i;
		for (; j > 0 && weight(&d->findings[j - 1]) < weight(&moved); j--)
			d->findings[j] = d->findings[j - 1];
		d->findings[j] = moved;
	}
}

static enum verdict verdict_of(const struct facts *f, const struct decision *d)
{
	const struct finding *worst = d->findings_n ? &d->findings[0] : NULL;
	if (worst && worst->level == LEVEL_REFUSE)
		return worst->uncovered ? VERDICT_UNTESTED : VERDICT_REFUSED;
	if (worst && worst->level == LEVEL_ASK)
		return VERDICT_UNCLEAR;
	return f->line ? VERDICT_TESTED : VERDICT_UNTESTED;
}

static void fill_process(const struct facts *f, struct process *p)
{
	const struct cell *cell = &f->line->cells[f->band];
	*p = (struct process){
	    .table = f->table,
	    .line = f->line,
	    .band = &f->table->bands[f->band],
	    .minutes = f->minutes,
	    .psi = cell->psi,
	    .vent_minutes = f->pressure ? rule_limit(f, RULE_VENT) / MILLI : 0,
	    .sterile_jars = needs_sterile_jars(f),
	};
	for (size_t i = 0; f->pressure && i < f->lines_n && p->choices_n < CHOICES_MAX; i++) {
		const struct cell *choice = &f->first[i].cells[f->band];
		if (choice->minutes > 0)
			p->choices[p->choices_n++] =
			    (struct pressure_choice){choice->minutes, choice->psi};
	}
}

static unsigned situation(const struct facts *f)
{
	bool barred = f->rq->closure || f->rq->container;
	return (f->food ? WHEN_FOOD : WHEN_NOT_ONE_FOOD) | (f->line ? WHEN_LINE : WHEN_NO_LINE) |
	       (f->steam ? WHEN_STEAM : 0) | (f->pressure ? WHEN_PRESSURE : 0) |
	       (f->food && f->food->acid_need ? WHEN_ACID : 0) | (barred ? WHEN_BARRED : 0) |
	       (f->rq->ph_stated ? WHEN_PH : 0);
}

void decide(const struct reference *ref, const struct request *request, struct decision *out)
{
	struct facts facts;
	facts_resolve(ref, request, &facts);
	unsigned now = situation(&facts);
	out->food = facts.food;
	out->findings_n = 0;
	/* Unrolled, the rules that link-time optimization inlines cost no call: measured in bench.
	 */
#pragma GCC unroll 64
	for (enum rule_id rule = 0; rule < RULE_COUNT; rule++) {
#ifdef RULE_OFF /* only ever defined by the harness that proves each rule earns its place */
		if (rule == RULE_OFF)
			continue;
#endif
		if ((rules[rule].when & now) == rules[rule].when)
			rules[rule].look(&facts, rule, out);
	}
	worst_first(out);
	out->verdict = verdict_of(&facts, out);
	if (out->verdict == VERDICT_TESTED)
		fill_process(&facts, &out->process);
	else
		out->process = (struct process){0};
}

const char *verdict_word(enum verdict verdict)
{
	static const char *const words[] = {"tested", "refused", "untested", "unclear"};
	return words[verdict];
}

const char *level_word(enum level level)
{
	static const char *const words[] = {"note", "warn", "ask", "refuse"};
	return words[level];
}

int verdict_exit_code(enum verdict verdict)
{
	static const int codes[] = {0, 3, 4, 5};
	return codes[verdict];
}
