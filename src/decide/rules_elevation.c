/* Rules on the elevation and its bands. */
#include "decide_internal.h"

void rule_elevation_missing(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->rq->elevation_stated)
		find(d, rule, LEVEL_ASK);
}

void rule_elevation_above(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->rq->elevation_stated)
		return;
	int32_t top = rule_limit(f, rule);
	if (f->table && f->table->bands[f->table->bands_n - 1].to_ft < top / MILLI)
		top = f->table->bands[f->table->bands_n - 1].to_ft * MILLI;
	if (f->rq->elevation_mft > top)
		find(d, rule, LEVEL_REFUSE)->a_milli = top;
}

void rule_elevation_below_sea(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->elevation_stated && f->rq->elevation_mft < 0)
		find(d, rule, LEVEL_NOTE);
}

/* A barometer's mood or a map's contour is larger than 50 ft: take the upper band. */
void rule_elevation_near_border(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->band < 0 || (size_t)f->band + 1 >= f->table->bands_n)
		return;
	int32_t border = f->table->bands[f->band].to_ft * MILLI;
	if (border - f->rq->elevation_mft <= rule_limit(f, rule))
		find(d, rule, LEVEL_WARN)->a_milli = border;
}

void rule_sweet_spread(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->line || f->minutes == f->line->cells[f->band].minutes)
		return;
	struct finding *finding = find(d, rule, LEVEL_NOTE);
	finding->a_milli = f->minutes * MILLI;
	finding->b_milli = f->line->cells[f->band].minutes * MILLI;
}
