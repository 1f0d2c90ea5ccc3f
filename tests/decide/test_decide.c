/*
 * Each rule of the engine on both sides of its limit, on the real tables.
 *
 * Figures are those of USDA AIB 539 (2015) unless a comment says otherwise; the guide and
 * page stand beside each. A case starts from a request that is tested and changes one fact.
 */
#include <string.h>

#include "jarwright/decide.h"
#include "suite.h"

static const struct reference *ref;

static void setup(void)
{
	ref = reference_edition();
}

/* A complete request: food, canner, pack, jar and elevation in whole feet. */
static struct request ask(const char *food, enum canner canner, enum pack pack, enum jar jar,
			  int feet)
{
	struct request rq = {
	    .canner_choice = CHOICE_CANNER,
	    .canner = canner,
	    .jar = {.stated = true, .jar = jar},
	    .pack = pack,
	    .elevation_stated = true,
	    .elevation_mft = feet * 1000,
	};
	reference_find_food(ref, food, &rq.food);
	return rq;
}

static struct request labelled(struct request rq, int milli_percent)
{
	rq.vinegar = VINEGAR_LABELLED;
	rq.vinegar_milli_percent = milli_percent;
	return rq;
}

static struct decision answer(struct request rq)
{
	struct decision d;
	decide(ref, &rq, &d);
	return d;
}

static const struct finding *finding(const struct decision *d, enum rule_id rule)
{
	for (size_t i = 0; i < d->findings_n; i++)
		if (d->findings[i].rule == rule)
			return &d->findings[i];
	return NULL;
}

static void expect_process(struct request rq, int minutes, int psi)
{
	struct decision d = answer(rq);
	ck_assert_str_eq(verdict_word(d.verdict), "tested");
	ck_assert_int_eq(d.process.minutes, minutes);
	ck_assert_int_eq(d.process.psi, psi);
}

static void expect(struct request rq, enum verdict verdict, enum rule_id rule, enum level level)
{
	struct decision d = answer(rq);
	ck_assert_str_eq(verdict_word(d.verdict), verdict_word(verdict));
	const struct finding *f = finding(&d, rule);
	ck_assert_msg(f != NULL, "no finding of rule '%s'", ref->rules[rule].id);
	ck_assert_str_eq(level_word(f->level), level_word(level));
	char text[2000];
	size_t n = finding_text(ref, f, text, sizeof text);
	ck_assert_uint_gt(n, 0);
	ck_assert_uint_lt(n, sizeof text);
	ck_assert_msg(strchr(text, '{') == NULL, "blank left in: %s", text);
	ck_assert_ptr_nonnull(finding_citation(ref, f)->source);
	if (verdict != VERDICT_TESTED)
		ck_assert_int_eq(d.process.minutes, 0);
}

static void expect_without(struct request rq, enum verdict verdict, enum rule_id rule)
{
	struct decision d = answer(rq);
	ck_assert_str_eq(verdict_word(d.verdict), verdict_word(verdict));
	ck_assert_msg(finding(&d, rule) == NULL, "unexpected finding of rule '%s'",
		      ref->rules[rule].id);
}

static struct request beets(void) /* guide 6, p. 6-15: pickled beets, hot, boiling water */
{
	return labelled(ask("pickled-beets", CANNER_STEAM, PACK_HOT, JAR_HALF_PINT, 2900), 5000);
}

static struct request plums(void) /* guide 2: plums, hot or raw */
{
	return ask("plums", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 500);
}

static struct request tomatoes(void) /* guide 3, p. 3-8: crushed tomatoes, hot */
{
	return ask("tomatoes-crushed", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 500);
}

static struct request asparagus(void) /* guide 4: asparagus, hot or raw, pressure only */
{
	return ask("asparagus", CANNER_DIAL_GAUGE, PACK_HOT, JAR_PINT, 500);
}

START_TEST(published_examples)
{
	/* Pickled beets at 1,001 to 3,000 ft: 35 min (guide 6, p. 6-16); steam borrows it. */
	expect_process(beets(), 35, 0);
	/* Peaches, hot, quarts, 2,500 ft (guide 1, p. 1-23 and 1-24): 30 min in boiling water,
	 * 10 min at 7 psi dial, 10 min at 10 psi weighted. */
	expect_process(ask("peaches", CANNER_BOILING_WATER, PACK_HOT, JAR_QUART, 2500), 30, 0);
	expect_process(ask("peaches", CANNER_DIAL_GAUGE, PACK_HOT, JAR_QUART, 2500), 10, 7);
	expect_process(ask("peaches", CANNER_WEIGHTED_GAUGE, PACK_HOT, JAR_QUART, 2500), 10, 10);
}
END_TEST

START_TEST(food_rules)
{
	struct request rq = plums();
	reference_find_food(ref, "plumz", &rq.food);
	expect(rq, VERDICT_UNCLEAR, RULE_FOOD_UNKNOWN, LEVEL_ASK);
	reference_find_food(ref, "zzzzqqqq xyzzy", &rq.food);
	expect(rq, VERDICT_UNTESTED, RULE_FOOD_UNKNOWN, LEVEL_REFUSE);
	reference_find_food(ref, "beetroot", &rq.food);
	expect(rq, VERDICT_UNCLEAR, RULE_FOOD_AMBIGUOUS, LEVEL_ASK);
	reference_find_food(ref, "pesto", &rq.food);
	expect(rq, VERDICT_REFUSED, RULE_FOOD_BARRED, LEVEL_REFUSE);
	rq = plums();
	expect_without(rq, VERDICT_TESTED, RULE_FOOD_OR_RECIPE);
	rq.recipe = "plums";
	expect(rq, VERDICT_UNCLEAR, RULE_FOOD_OR_RECIPE, LEVEL_ASK);
	rq = plums();
	expect_without(rq, VERDICT_TESTED, RULE_FOOD_BY_WORD);
	rq.food.by_synonym = true;
	expect(rq, VERDICT_TESTED, RULE_FOOD_BY_WORD, LEVEL_NOTE);
	/* No process was read for papaya; lemon curd is a refrigerator product here. */
	expect(ask("papaya", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 500), VERDICT_UNTESTED,
	       RULE_NO_PROCESS, LEVEL_REFUSE);
	expect(ask("lemon-curd", CANNER_BOILING_WATER, PACK_HOT, JAR_HALF_PINT, 500),
	       VERDICT_UNTESTED, RULE_NO_PROCESS, LEVEL_REFUSE);
}
END_TEST

START_TEST(canner_rules)
{
	struct request rq = plums();
	rq.canner_choice = CHOICE_UNSTATED;
	expect(rq, VERDICT_UNCLEAR, RULE_CANNER_MISSING, LEVEL_ASK);
	rq.canner_choice = CHOICE_PRESSURE_UNSTATED;
	expect(rq, VERDICT_UNCLEAR, RULE_GAUGE_KIND_MISSING, LEVEL_ASK);
	rq.canner_choice = CHOICE_BARRED;
	rq.method = reference_find_barred(ref, FACET_METHOD, "oven");
	ck_assert_ptr_nonnull(rq.method);
	expect(rq, VERDICT_REFUSED, RULE_METHOD_BARRED, LEVEL_REFUSE);

	rq = asparagus();
	expect_process(rq, 30, 11); /* guide 4, p. 4-5: pints 30 min, 11 psi to 2,000 ft */
	rq.canner = CANNER_BOILING_WATER;
	expect(rq, VERDICT_REFUSED, RULE_LOW_ACID_NEEDS_PRESSURE, LEVEL_REFUSE);
	rq.canner = CANNER_STEAM;
	expect(rq, VERDICT_REFUSED, RULE_STEAM_ACID_ONLY, LEVEL_REFUSE);

	/* Grapes: boiling water only (guide 2). Smoked fish: no dial table in pints raw. */
	expect(ask("grapes-whole", CANNER_DIAL_GAUGE, PACK_HOT, JAR_PINT, 500), VERDICT_UNTESTED,
	       RULE_CANNER_NOT_PUBLISHED, LEVEL_REFUSE);

	rq = asparagus();
	rq.holds_quarts = 4; /* guide 1, p. 1-35: at least 4 quart jars */
	expect_without(rq, VERDICT_TESTED, RULE_CANNER_TOO_SMALL);
	rq.holds_quarts = 3;
	expect(rq, VERDICT_REFUSED, RULE_CANNER_TOO_SMALL, LEVEL_REFUSE);
	rq = asparagus();
	expect(rq, VERDICT_TESTED, RULE_GAUGE_CHECK, LEVEL_NOTE);
	expect(rq, VERDICT_TESTED, RULE_VENT, LEVEL_WARN);
	ck_assert_int_eq(answer(rq).process.vent_minutes, 10); /* guide 1, p. 1-20 */
	expect_without(plums(), VERDICT_TESTED, RULE_VENT);
	ck_assert_int_eq(answer(plums()).process.vent_minutes, 0);
}
END_TEST

START_TEST(steam_rules)
{
	/* Tomatoes, crushed, hot, in boiling water (guide 3, p. 3-8): pints 35, 40, 45, 50;
	 * quarts 45, 50, 55, 60. Steam: 45 min at most (Oklahoma State University Extension). */
	struct request rq = tomatoes();
	rq.canner = CANNER_STEAM;
	rq.elevation_mft = 6000 * 1000;
	expect_process(rq, 45, 0);
	expect_without(rq, VERDICT_TESTED, RULE_STEAM_TIME_LIMIT);
	rq.elevation_mft = 6000 * 1000 + 1;
	expect(rq, VERDICT_REFUSED, RULE_STEAM_TIME_LIMIT, LEVEL_REFUSE);
	rq.elevation_mft = 1000 * 1000;
	rq.jar.jar = JAR_QUART;
	expect_process(rq, 45, 0);
	rq.elevation_mft = 1001 * 1000;
	expect(rq, VERDICT_REFUSED, RULE_STEAM_TIME_LIMIT, LEVEL_REFUSE);

	expect(beets(), VERDICT_TESTED, RULE_STEAM_ADVICE, LEVEL_NOTE);
	rq = beets();
	rq.jar.jar = JAR_QUARTER_PINT; /* Iowa State: half-pint, pint, quart */
	expect(rq, VERDICT_REFUSED, RULE_STEAM_JAR, LEVEL_REFUSE);
	/* Apple juice has half-gallon times (guide 2); steam stops at the quart. */
	rq = ask("apple-juice", CANNER_STEAM, PACK_HOT, JAR_HALF_GALLON, 500);
	expect(rq, VERDICT_REFUSED, RULE_STEAM_JAR, LEVEL_REFUSE);
	rq.canner = CANNER_BOILING_WATER;
	expect_process(rq, 10, 0);
	/* Chili con carne has pressure tables only. */
	rq = ask("chile-con-carne", CANNER_STEAM, PACK_HOT, JAR_PINT, 500);
	expect(rq, VERDICT_REFUSED, RULE_STEAM_NEEDS_BOILING_WATER, LEVEL_REFUSE);
}
END_TEST

START_TEST(pack_rules)
{
	struct request rq = plums();
	rq.pack = PACK_UNSTATED;
	expect(rq, VERDICT_UNCLEAR, RULE_PACK_MISSING, LEVEL_ASK);
	/* Sliced apples have a hot pack only (guide 2, p. 2-7). */
	rq = ask("apples-sliced", CANNER_BOILING_WATER, PACK_RAW, JAR_PINT, 500);
	expect(rq, VERDICT_UNTESTED, RULE_PACK_NOT_PUBLISHED, LEVEL_REFUSE);
	rq.pack = PACK_UNSTATED;
	expect_process(rq, 20, 0);
	expect(rq, VERDICT_TESTED, RULE_PACK_ONLY, LEVEL_WARN);
	rq.pack = PACK_HOT;
	expect_without(rq, VERDICT_TESTED, RULE_PACK_ONLY);
	/* Tuna: the table does not name the pack (guide 5, p. 5-15). */
	rq = ask("tuna", CANNER_DIAL_GAUGE, PACK_RAW, JAR_PINT, 500);
	expect(rq, VERDICT_UNCLEAR, RULE_PACK_UNSTATED, LEVEL_ASK);
	rq.pack = PACK_UNSTATED;
	expect_process(rq, 100, 11);
}
END_TEST

START_TEST(jar_rules)
{
	struct request rq = plums();
	rq.jar = (struct jar_choice){0};
	expect(rq, VERDICT_UNCLEAR, RULE_JAR_MISSING, LEVEL_ASK);
	/* Plums: pints and quarts (guide 2): 20 and 25 min to 1,000 ft. */
	rq = plums();
	expect_without(rq, VERDICT_TESTED, RULE_JAR_COVERED);
	rq.jar.jar = JAR_HALF_PINT;
	expect(rq, VERDICT_TESTED, RULE_JAR_COVERED, LEVEL_NOTE);
	expect_process(rq, 20, 0);
	rq.jar.jar = JAR_PINT_AND_HALF;
	expect_process(rq, 25, 0);
	rq.jar.jar = JAR_HALF_GALLON;
	expect(rq, VERDICT_REFUSED, RULE_JAR_TOO_LARGE, LEVEL_REFUSE);
	rq.jar = (struct jar_choice){.stated = true, .by_volume = true, .volume_nl = 4000000000};
	expect(rq, VERDICT_REFUSED, RULE_JAR_TOO_LARGE, LEVEL_REFUSE);

	/* By volume: a pint is 473.176473 mL (NIST Handbook 44); one nanolitre over is a quart's.
	 */
	rq.jar.volume_nl = 473176473;
	expect_process(rq, 20, 0);
	rq.jar.volume_nl = 473176474;
	expect_process(rq, 25, 0);
	expect(rq, VERDICT_TESTED, RULE_JAR_COVERED, LEVEL_NOTE);
	/* Metric jars as their namesakes: common practice, no source. */
	rq.jar.volume_nl = 500000000;
	expect(rq, VERDICT_TESTED, RULE_JAR_NAMESAKE, LEVEL_WARN);
	expect_process(rq, 20, 0);
	char text[1000];
	struct decision d = answer(rq);
	finding_text(ref, finding(&d, RULE_JAR_NAMESAKE), text, sizeof text);
	ck_assert_ptr_nonnull(strstr(text, "--jar quart"));
	rq.jar.volume_nl = 1000000000; /* as a quart, the largest there is */
	d = answer(rq);
	finding_text(ref, finding(&d, RULE_JAR_NAMESAKE), text, sizeof text);
	ck_assert_ptr_nonnull(strstr(text, "do not use it"));
	rq.jar.volume_nl = 500000001;
	expect_without(rq, VERDICT_TESTED, RULE_JAR_NAMESAKE);
	expect_process(rq, 25, 0);
}
END_TEST

START_TEST(closure_rules)
{
	struct request rq = plums();
	rq.closure = reference_find_barred(ref, FACET_CLOSURE, "wire-bail");
	ck_assert_ptr_nonnull(rq.closure);
	expect(rq, VERDICT_REFUSED, RULE_CLOSURE_BARRED, LEVEL_REFUSE);
	rq = plums();
	rq.container = reference_find_barred(ref, FACET_CONTAINER, "metal-can");
	ck_assert_ptr_nonnull(rq.container);
	expect(rq, VERDICT_REFUSED, RULE_CONTAINER_BARRED, LEVEL_REFUSE);
	rq.container = reference_find_barred(ref, FACET_CONTAINER, "mayonnaise-jar");
	ck_assert_ptr_nonnull(rq.container);
	expect(rq, VERDICT_TESTED, RULE_MAYONNAISE_JAR, LEVEL_WARN); /* guide 1, p. 1-14 */
	rq.canner = CANNER_DIAL_GAUGE;
	expect(rq, VERDICT_REFUSED, RULE_MAYONNAISE_JAR, LEVEL_REFUSE);
	/* An acidified food is acid food, p. 1-14; a low-acid one is not, in any canner. */
	rq = beets();
	rq.container = reference_find_barred(ref, FACET_CONTAINER, "mayonnaise-jar");
	expect(rq, VERDICT_TESTED, RULE_MAYONNAISE_JAR, LEVEL_WARN);
	rq = ask("asparagus", CANNER_DIAL_GAUGE, PACK_RAW, JAR_PINT, 500);
	rq.container = reference_find_barred(ref, FACET_CONTAINER, "mayonnaise-jar");
	expect(rq, VERDICT_REFUSED, RULE_MAYONNAISE_JAR, LEVEL_REFUSE);
}
END_TEST

START_TEST(sterile_jar_rules)
{
	/* Apple butter, pints to 1,000 ft: 5 min in sterile jars; quarts 10 in clean ones
	 * (guide 2, p. 2-6). The sweet spread rule adds a minute above sea level. */
	struct request rq = ask("apple-butter", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 0);
	expect_process(rq, 5, 0);
	expect(rq, VERDICT_TESTED, RULE_STERILE_JARS, LEVEL_WARN);
	ck_assert(answer(rq).process.sterile_jars);
	rq.jars = JARS_NOT_STERILE;
	expect(rq, VERDICT_REFUSED, RULE_JARS_NOT_STERILE, LEVEL_REFUSE);
	rq.jar.jar = JAR_QUART;
	expect_process(rq, 10, 0);
	expect_without(rq, VERDICT_TESTED, RULE_JARS_NOT_STERILE);
	/* A pressure process sterilises the jar itself, however short. */
	rq = ask("peaches", CANNER_DIAL_GAUGE, PACK_HOT, JAR_PINT, 500);
	expect_without(rq, VERDICT_TESTED, RULE_STERILE_JARS);
}
END_TEST

START_TEST(elevation_rules)
{
	struct request rq = plums();
	rq.elevation_stated = false;
	expect(rq, VERDICT_UNCLEAR, RULE_ELEVATION_MISSING, LEVEL_ASK);
	/* Plums, pints: 20, 25, 30, 35 at 0-1,000, 1,001-3,000, 3,001-6,000, above 6,000 ft. */
	rq = plums();
	rq.elevation_mft = 1000 * 1000;
	expect_process(rq, 20, 0);
	rq.elevation_mft = 1000 * 1000 + 1; /* a fraction of a foot belongs to the upper band */
	expect_process(rq, 25, 0);
	rq.elevation_mft = -500 * 1000;
	expect_process(rq, 20, 0);
	expect(rq, VERDICT_TESTED, RULE_ELEVATION_BELOW_SEA, LEVEL_NOTE);
	rq.elevation_mft = 10000 * 1000;
	expect_process(rq, 35, 0);
	rq.elevation_mft = 10000 * 1000 + 1;
	expect(rq, VERDICT_REFUSED, RULE_ELEVATION_ABOVE, LEVEL_REFUSE);
	rq.elevation_mft = INT32_MAX;
	expect(rq, VERDICT_REFUSED, RULE_ELEVATION_ABOVE, LEVEL_REFUSE);
	/* Dial-gauge tables end at 8,000 ft (guide 1, p. 1-24). */
	rq = asparagus();
	rq.elevation_mft = 8000 * 1000;
	expect_process(rq, 30, 14);
	rq.elevation_mft = 8000 * 1000 + 1;
	expect(rq, VERDICT_REFUSED, RULE_ELEVATION_ABOVE, LEVEL_REFUSE);
	rq = plums();
	rq.elevation_mft = 949 * 1000;
	expect_without(rq, VERDICT_TESTED, RULE_ELEVATION_NEAR_BORDER);
	rq.elevation_mft = 950 * 1000;
	expect(rq, VERDICT_TESTED, RULE_ELEVATION_NEAR_BORDER, LEVEL_WARN);
}
END_TEST

START_TEST(sweet_spread_rule)
{
	/* Guide 1, p. 1-30: 5 min plus 1 per 1,000 ft; table of guide 7, p. 7-8: 5, 10, 15. */
	struct request rq =
	    ask("jelly-powdered-pectin", CANNER_BOILING_WATER, PACK_HOT, JAR_HALF_PINT, 0);
	expect_process(rq, 5, 0);
	expect_without(rq, VERDICT_TESTED, RULE_SWEET_SPREAD);
	rq.elevation_mft = 1;
	expect_process(rq, 6, 0);
	expect(rq, VERDICT_TESTED, RULE_SWEET_SPREAD, LEVEL_NOTE);
	rq.elevation_mft = 5000 * 1000;
	expect_process(rq, 10, 0);
	rq.elevation_mft = 5001 * 1000;
	expect_process(rq, 11, 0);
	rq.elevation_mft = 6001 * 1000;
	expect_process(rq, 15, 0);
}
END_TEST

START_TEST(vinegar_rules)
{
	struct request rq = beets();
	rq.vinegar = VINEGAR_UNSTATED;
	expect(rq, VERDICT_UNCLEAR, RULE_VINEGAR_MISSING, LEVEL_ASK);
	/* 5 % at least (South Dakota State), under 6 % (Wisconsin). */
	expect_without(labelled(beets(), 5000), VERDICT_TESTED, RULE_VINEGAR_WEAK);
	expect(labelled(beets(), 4999), VERDICT_REFUSED, RULE_VINEGAR_WEAK, LEVEL_REFUSE);
	expect_without(labelled(beets(), 5999), VERDICT_TESTED, RULE_VINEGAR_STRONG);
	expect(labelled(beets(), 6000), VERDICT_REFUSED, RULE_VINEGAR_STRONG, LEVEL_REFUSE);
	rq.vinegar = VINEGAR_UNKNOWN;
	expect(rq, VERDICT_REFUSED, RULE_VINEGAR_UNKNOWN, LEVEL_REFUSE);
	rq.vinegar = VINEGAR_HOME_MADE;
	expect(rq, VERDICT_REFUSED, RULE_VINEGAR_HOME_MADE, LEVEL_REFUSE);
	rq.vinegar = VINEGAR_WINE;
	expect(rq, VERDICT_REFUSED, RULE_VINEGAR_WINE, LEVEL_REFUSE);
	/* A food without vinegar is not asked about it. */
	expect_without(plums(), VERDICT_TESTED, RULE_VINEGAR_MISSING);
	expect_without(labelled(plums(), 1000), VERDICT_TESTED, RULE_VINEGAR_WEAK);
}
END_TEST

START_TEST(acid_rules)
{
	struct request rq = tomatoes();
	expect(rq, VERDICT_TESTED, RULE_ACID_PER_JAR, LEVEL_WARN);
	rq.acid = ACID_NONE;
	expect(rq, VERDICT_REFUSED, RULE_ACID_LEFT_OUT, LEVEL_REFUSE);
	rq.canner = CANNER_DIAL_GAUGE; /* the acid is required under pressure too (guide 3) */
	expect(rq, VERDICT_REFUSED, RULE_ACID_LEFT_OUT, LEVEL_REFUSE);
	rq = tomatoes();
	rq.acid = ACID_FRESH_JUICE;
	expect(rq, VERDICT_REFUSED, RULE_ACID_FRESH_JUICE, LEVEL_REFUSE);
	rq.acid = ACID_TABLETS;
	expect(rq, VERDICT_REFUSED, RULE_ACID_TABLETS, LEVEL_REFUSE);
	rq.acid = ACID_CITRIC;
	struct decision d = answer(rq);
	ck_assert_str_eq(verdict_word(d.verdict), "tested");
	const struct finding *dose = finding(&d, RULE_ACID_PER_JAR);
	ck_assert_ptr_nonnull(dose);
	ck_assert_str_eq(dose->word, "1/4 tsp"); /* guide 3: 1/4 tsp citric acid a pint */
	rq.acid = ACID_VINEGAR;
	expect(rq, VERDICT_UNCLEAR, RULE_VINEGAR_MISSING, LEVEL_ASK);
	expect(labelled(rq, 4000), VERDICT_REFUSED, RULE_VINEGAR_WEAK, LEVEL_REFUSE);

	/* Citric acid is not the acid of pickled beets; juice may replace vinegar in chile salsa
	 * (guide 3) but not in pickled beets. */
	rq = beets();
	rq.acid = ACID_CITRIC;
	expect(rq, VERDICT_REFUSED, RULE_ACID_NOT_IN_FORMULA, LEVEL_REFUSE);
	rq.acid = ACID_BOTTLED_JUICE;
	expect(rq, VERDICT_REFUSED, RULE_ACID_NOT_IN_FORMULA, LEVEL_REFUSE);
	rq = ask("chile-salsa", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 500);
	rq.acid = ACID_BOTTLED_JUICE;
	expect_without(rq, VERDICT_TESTED, RULE_VINEGAR_MISSING);
	rq = ask("mango-sauce", CANNER_BOILING_WATER, PACK_HOT, JAR_HALF_PINT, 500);
	expect(rq, VERDICT_TESTED, RULE_ACID_BOTTLED, LEVEL_WARN);
}
END_TEST

START_TEST(ph_rules)
{
	struct request rq = beets();
	rq.ph_stated = true;
	rq.ph_milli = 4000; /* 21 CFR 114.80 and .90: above 4.0 by meter */
	expect_without(rq, VERDICT_TESTED, RULE_PH_NEAR);
	rq.ph_milli = 4001;
	expect(rq, VERDICT_TESTED, RULE_PH_NEAR, LEVEL_WARN);
	rq.ph_milli = 4600;
	expect_without(rq, VERDICT_TESTED, RULE_PH_TOO_HIGH);
	rq.ph_milli = 4601;
	expect(rq, VERDICT_REFUSED, RULE_PH_TOO_HIGH, LEVEL_REFUSE);
	/* A low reading helps nobody past a rule. */
	rq = asparagus();
	rq.canner = CANNER_BOILING_WATER;
	rq.ph_stated = true;
	rq.ph_milli = 3000;
	expect(rq, VERDICT_REFUSED, RULE_PH_NO_HELP, LEVEL_NOTE);
}
END_TEST

START_TEST(pressure_choices)
{
	/* Crushed tomatoes, dial gauge, pints, 0 to 2,000 ft (guide 3, p. 3-8): 20 min at 6 psi
	 * or 15 min at 11 psi. */
	struct request rq = tomatoes();
	rq.canner = CANNER_DIAL_GAUGE;
	expect_process(rq, 20, 6);
	expect(rq, VERDICT_TESTED, RULE_PSI_CHOICES, LEVEL_NOTE);
	ck_assert_uint_eq(answer(rq).process.choices_n, 2);
	rq.psi = 11;
	expect_process(rq, 15, 11);
	rq.psi = 10;
	expect(rq, VERDICT_REFUSED, RULE_PSI_NOT_PUBLISHED, LEVEL_REFUSE);
	/* Weighted gauge: 15 psi only to 1,000 ft, where above it is not recommended. */
	rq.canner = CANNER_WEIGHTED_GAUGE;
	rq.psi = 0;
	rq.elevation_mft = 1001 * 1000;
	ck_assert_uint_eq(answer(rq).process.choices_n, 2);
	rq = plums();
	rq.psi = 10;
	expect(rq, VERDICT_REFUSED, RULE_PSI_NOT_PUBLISHED, LEVEL_REFUSE);
}
END_TEST

START_TEST(figures_and_remarks)
{
	/* Sauerkraut's table was read in one copy, crushed tomatoes' at 15 psi in two. */
	struct request rq = ask("sauerkraut", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 500);
	expect(rq, VERDICT_TESTED, RULE_READINGS, LEVEL_WARN);
	rq = ask("tomatoes-crushed", CANNER_WEIGHTED_GAUGE, PACK_HOT, JAR_PINT, 500);
	rq.psi = 15;
	expect(rq, VERDICT_TESTED, RULE_READINGS, LEVEL_NOTE);
	expect_without(plums(), VERDICT_TESTED, RULE_READINGS);
	/* Fish in quart jars carries its own way of running the canner (guide 5, p. 5-12). */
	rq = ask("fish-quart", CANNER_DIAL_GAUGE, PACK_RAW, JAR_QUART, 500);
	expect(rq, VERDICT_TESTED, RULE_TABLE_NOTE, LEVEL_NOTE);
	rq = ask("fruit-baby-food", CANNER_BOILING_WATER, PACK_HOT, JAR_PINT, 500);
	expect(rq, VERDICT_TESTED, RULE_HEADSPACE, LEVEL_NOTE);
	expect_without(plums(), VERDICT_TESTED, RULE_HEADSPACE);
}
END_TEST

/* A table with a gap: no published one has it where no pressure is asked for. */
START_TEST(gap_in_a_table)
{
	static const struct cell cells[] = {{10, 0}, {0, 0}};
	static const struct band bands[] = {{0, 1000}, {1001, BAND_OPEN}};
	struct food food = *reference_food(ref, "plums");
	struct process_line line = {.jar = JAR_PINT, .readings = 3, .note = "", .cells = cells};
	struct process_table table = {.canner = CANNER_BOILING_WATER,
				      .pack = PACK_HOT,
				      .bands = bands,
				      .bands_n = 2,
				      .lines = &line,
				      .lines_n = 1,
				      .note = "",
				      .from = food.from};
	food.tables = &table;
	food.tables_n = 1;
	struct request rq = plums();
	rq.food.foods[0] = &food;
	expect_process(rq, 10, 0);
	rq.elevation_mft = 2000 * 1000;
	expect(rq, VERDICT_UNTESTED, RULE_CELL_NOT_PUBLISHED, LEVEL_REFUSE);
	/* An acid food that has pressure tables only has nothing for steam to borrow. */
	table.canner = CANNER_DIAL_GAUGE;
	rq.canner = CANNER_STEAM;
	expect(rq, VERDICT_UNTESTED, RULE_STEAM_NEEDS_BOILING_WATER, LEVEL_REFUSE);
}
END_TEST

START_TEST(all_reasons_are_kept)
{
	/* Asparagus in an oven, fresh start: method, jar, elevation and pack, all at once. */
	struct request rq = {0};
	reference_find_food(ref, "asparagus", &rq.food);
	struct decision d = answer(rq);
	ck_assert_str_eq(verdict_word(d.verdict), "unclear");
	ck_assert_ptr_nonnull(finding(&d, RULE_CANNER_MISSING));
	ck_assert_ptr_nonnull(finding(&d, RULE_JAR_MISSING));
	ck_assert_ptr_nonnull(finding(&d, RULE_ELEVATION_MISSING));
	for (size_t i = 1; i < d.findings_n; i++)
		ck_assert_int_ge((int)d.findings[i - 1].level, (int)d.findings[i].level);
}
END_TEST

START_TEST(ways_are_tested)
{
	struct way ways[WAYS_MAX];
	struct request rq = beets();
	size_t n = decide_ways(ref, &rq, ways, WAYS_MAX);
	ck_assert_uint_gt(n, 0);
	ck_assert_int_eq((int)ways[0].jar, (int)JAR_PINT);
	for (size_t i = 0; i < n; i++) {
		struct request way = rq;
		way.canner = ways[i].canner;
		way.pack = ways[i].pack;
		way.jar.jar = ways[i].jar;
		expect_process(way, ways[i].minutes, ways[i].psi);
	}
	/* The list is cut, never overrun. */
	ck_assert_uint_eq(decide_ways(ref, &rq, ways, 1), 1);
	ck_assert_uint_eq(decide_ways(ref, &rq, ways, 0), 0);
}
END_TEST

/* Whoever has larger jars may take smaller ones, but is never sent to a larger one than needed. */
START_TEST(ways_in_smaller_jars)
{
	struct way ways[WAYS_MAX];
	struct request rq = ask("asparagus", CANNER_DIAL_GAUGE, PACK_RAW, JAR_QUART, 500);
	bool pints = false;
	size_t n = decide_ways(ref, &rq, ways, WAYS_MAX);
	for (size_t i = 0; i < n; i++)
		pints = pints || ways[i].jar == JAR_PINT;
	ck_assert(pints); /* guide 4, p. 4-5: pints and quarts */
	rq.jar.jar = JAR_PINT;
	n = decide_ways(ref, &rq, ways, WAYS_MAX);
	ck_assert_uint_gt(n, 0);
	for (size_t i = 0; i < n; i++)
		ck_assert_int_le((int)ways[i].jar, (int)JAR_PINT);
}
END_TEST

static Suite *decide_suite(void)
{
	Suite *suite = suite_create("decide");
	TCase *tcase = tcase_create("rules");
	tcase_add_checked_fixture(tcase, setup, NULL);
	tcase_add_test(tcase, published_examples);
	tcase_add_test(tcase, food_rules);
	tcase_add_test(tcase, canner_rules);
	tcase_add_test(tcase, steam_rules);
	tcase_add_test(tcase, pack_rules);
	tcase_add_test(tcase, jar_rules);
	tcase_add_test(tcase, closure_rules);
	tcase_add_test(tcase, sterile_jar_rules);
	tcase_add_test(tcase, elevation_rules);
	tcase_add_test(tcase, sweet_spread_rule);
	tcase_add_test(tcase, vinegar_rules);
	tcase_add_test(tcase, acid_rules);
	tcase_add_test(tcase, ph_rules);
	tcase_add_test(tcase, pressure_choices);
	tcase_add_test(tcase, figures_and_remarks);
	tcase_add_test(tcase, gap_in_a_table);
	tcase_add_test(tcase, all_reasons_are_kept);
	tcase_add_test(tcase, ways_are_tested);
	tcase_add_test(tcase, ways_in_smaller_jars);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(decide_suite())
