/* Rules on what makes the food acid enough: vinegar, bottled juice, doses, a pH reading. */
#include "decide_internal.h"

static bool acid_food(const struct facts *f)
{
	return f->food && (f->food->acid_class == ACID_CLASS_HIGH ||
			   f->food->acid_class == ACID_CLASS_ACIDIFIED);
}

static bool has_dose_of(const struct food *food, enum acid acid)
{
	for (size_t i = 0; i < food->doses_n; i++)
		if (food->doses[i].acid == acid)
			return true;
	return false;
}

/* Does the safety of this food hang on the vinegar the cook has? */
static bool vinegar_counts(const struct facts *f)
{
	if (!f->food)
		return false;
	if (f->food->acid_need & ACID_NEED_VINEGAR)
		return !(f->food->acid_need & ACID_MAY_BE_JUICE) ||
		       f->rq->acid != ACID_BOTTLED_JUICE;
	return (f->food->acid_need & ACID_NEED_PER_JAR) && f->rq->acid == ACID_VINEGAR;
}

void rule_vinegar_missing(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (vinegar_counts(f) && f->rq->vinegar == VINEGAR_UNSTATED)
		find(d, rule, LEVEL_ASK);
}

void rule_vinegar_weak(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (vinegar_counts(f) && f->rq->vinegar == VINEGAR_LABELLED &&
	    f->rq->vinegar_milli_percent < rule_limit(f, rule))
		find(d, rule, LEVEL_REFUSE)->a_milli = f->rq->vinegar_milli_percent;
}

void rule_vinegar_strong(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (vinegar_counts(f) && f->rq->vinegar == VINEGAR_LABELLED &&
	    f->rq->vinegar_milli_percent >= rule_limit(f, rule))
		find(d, rule, LEVEL_REFUSE)->a_milli = f->rq->vinegar_milli_percent;
}

static void refuse_vinegar(const struct facts *f, enum vinegar_choice kind, enum rule_id rule,
			   struct decision *d)
{
	if (vinegar_counts(f) && f->rq->vinegar == kind)
		find(d, rule, LEVEL_REFUSE);
}

void rule_vinegar_unknown(const struct facts *f, enum rule_id rule, struct decision *d)
{
	refuse_vinegar(f, VINEGAR_UNKNOWN, rule, d);
}

void rule_vinegar_home_made(const struct facts *f, enum rule_id rule, struct decision *d)
{
	refuse_vinegar(f, VINEGAR_HOME_MADE, rule, d);
}

void rule_vinegar_wine(const struct facts *f, enum rule_id rule, struct decision *d)
{
	refuse_vinegar(f, VINEGAR_WINE, rule, d);
}

static void refuse_acid(const struct facts *f, enum acid acid, enum rule_id rule,
			struct decision *d)
{
	if (f->food && f->food->acid_need && f->rq->acid == acid)
		find(d, rule, LEVEL_REFUSE);
}

void rule_acid_left_out(const struct facts *f, enum rule_id rule, struct decision *d)
{
	refuse_acid(f, ACID_NONE, rule, d);
}

void rule_acid_fresh_juice(const struct facts *f, enum rule_id rule, struct decision *d)
{
	refuse_acid(f, ACID_FRESH_JUICE, rule, d);
}

void rule_acid_tablets(const struct facts *f, enum rule_id rule, struct decision *d)
{
	refuse_acid(f, ACID_TABLETS, rule, d);
}

static bool in_formula(const struct food *food, enum acid acid)
{
	switch (acid) {
	case ACID_VINEGAR:
		return (food->acid_need & ACID_NEED_VINEGAR) || has_dose_of(food, acid);
	case ACID_BOTTLED_JUICE:
		return (food->acid_need & (ACID_NEED_BOTTLED_JUICE | ACID_MAY_BE_JUICE)) ||
		       has_dose_of(food, acid);
	case ACID_CITRIC:
		return has_dose_of(food, acid);
	default: /* not said, or refused by the rules above */
		return true;
	}
}

void rule_acid_not_in_formula(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->food && f->food->acid_need && !in_formula(f->food, f->rq->acid))
		find(d, rule, LEVEL_REFUSE);
}

/* The dose of the smallest dosed jar that holds the covering jar, one finding an acid. */
static void dose_finding(const struct facts *f, enum acid acid, enum rule_id rule,
			 struct decision *d)
{
	for (size_t i = 0; i < f->food->doses_n; i++) {
		const struct acid_dose *dose = &f->food->doses[i];
		if (dose->acid != acid || dose->jar < f->jar)
			continue;
		struct finding *finding = find(d, rule, LEVEL_WARN);
		finding->word = dose->amount;
		finding->a_milli = (int32_t)acid;
		finding->b_milli = (int32_t)dose->jar;
		finding->from = &dose->from;
		return;
	}
}

void rule_acid_per_jar(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->line || !(f->food->acid_need & ACID_NEED_PER_JAR))
		return;
	static const enum acid acids[] = {ACID_BOTTLED_JUICE, ACID_CITRIC, ACID_VINEGAR};
	for (size_t i = 0; i < sizeof acids / sizeof *acids; i++)
		if (f->rq->acid == ACID_UNSTATED || f->rq->acid == acids[i])
			dose_finding(f, acids[i], rule, d);
}

void rule_acid_bottled(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->line && (f->food->acid_need & ACID_NEED_BOTTLED_JUICE) &&
	    f->rq->acid != ACID_BOTTLED_JUICE)
		find(d, rule, LEVEL_WARN);
}

void rule_ph_too_high(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (acid_food(f) && f->rq->ph_stated && f->rq->ph_milli > rule_limit(f, rule))
		find(d, rule, LEVEL_REFUSE)->a_milli = f->rq->ph_milli;
}

void rule_ph_near(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (acid_food(f) && f->rq->ph_stated && f->rq->ph_milli > rule_limit(f, rule) &&
	    f->rq->ph_milli <= rule_limit(f, RULE_PH_TOO_HIGH))
		find(d, rule, LEVEL_WARN)->a_milli = f->rq->ph_milli;
}

/* A reading only ever makes a verdict stricter. */
void rule_ph_no_help(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->ph_stated && !acid_food(f))
		find(d, rule, LEVEL_NOTE);
}
