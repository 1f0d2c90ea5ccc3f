/* Rules on the canner: its kind, its size, and what atmospheric steam may do. */
#include "decide_internal.h"

void rule_canner_missing(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->canner_choice == CHOICE_UNSTATED)
		find(d, rule, LEVEL_ASK);
}

void rule_gauge_kind_missing(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->canner_choice == CHOICE_PRESSURE_UNSTATED)
		find(d, rule, LEVEL_ASK);
}

void rule_method_barred(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->canner_choice == CHOICE_BARRED)
		find(d, rule, LEVEL_REFUSE)->barred = f->rq->method;
}

static bool low_acid(const struct facts *f)
{
	return f->food && f->food->acid_class == ACID_CLASS_LOW;
}

void rule_low_acid_needs_pressure(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (low_acid(f) && f->canner_known && !f->pressure)
		find(d, rule, LEVEL_REFUSE)->word = f->food->title;
}

void rule_canner_not_published(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->food || !f->canner_known || f->steam || f->tables_n > 0 || f->food->tables_n == 0)
		return;
	struct finding *finding = find(d, rule, LEVEL_REFUSE);
	finding->uncovered = true;
	finding->word = canner_word(f->rq->canner);
}

void rule_canner_too_small(const struct facts *f, enum rule_id rule, struct decision *d)
{
	bool gauge = f->pressure || f->rq->canner_choice == CHOICE_PRESSURE_UNSTATED;
	int holds = f->rq->holds_quarts;
	if (gauge && holds > 0 && holds * MILLI < rule_limit(f, rule))
		find(d, rule, LEVEL_REFUSE)->a_milli = holds * MILLI;
}

void rule_gauge_check(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->canner_known && f->rq->canner == CANNER_DIAL_GAUGE && f->line)
		find(d, rule, LEVEL_NOTE);
}

void rule_vent(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->pressure && f->line)
		find(d, rule, LEVEL_WARN);
}

void rule_steam_acid_only(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->steam && low_acid(f))
		find(d, rule, LEVEL_REFUSE);
}

void rule_steam_needs_boiling_water(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->steam && f->food && f->food->tables_n > 0 && f->tables_n == 0)
		find(d, rule, LEVEL_REFUSE)->uncovered = true;
}

void rule_steam_time_limit(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->steam && f->line && f->minutes * MILLI > rule_limit(f, rule))
		find(d, rule, LEVEL_REFUSE)->a_milli = f->minutes * MILLI;
}

void rule_steam_jar(const struct facts *f, enum rule_id rule, struct decision *d)
{
	/* The advice names half-pint, pint and quart; a smaller jar is doubtful, so refused. */
	if (f->steam && f->jar_known && (f->jar < JAR_HALF_PINT || f->jar > JAR_QUART))
		find(d, rule, LEVEL_REFUSE);
}

void rule_steam_advice(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->steam && f->line)
		find(d, rule, LEVEL_NOTE);
}
