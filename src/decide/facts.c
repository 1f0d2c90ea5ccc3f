/*
 * From a request to its place in the published tables: which table, line and column.
 * Nothing is interpolated, clamped or taken from a neighbour: a jar takes the next larger
 * published one, an elevation belongs to exactly one band.
 */
#include <string.h>

#include "decide_internal.h"

static bool is_sweet_spread(const struct food *food)
{
	/* AIB 539 (2015) guide 7 counts fruit butters among the sweet spreads. */
	return strcmp(food->kind, "jam") == 0 || strcmp(food->kind, "jelly") == 0 ||
	       strcmp(food->kind, "butter") == 0;
}

int sweet_spread_minutes(const struct facts *f)
{
	/* "1 minute for each 1,000 ft above sea level": AIB 539 (2015) guide 1, p. 1-30. A part
	 * of a thousand counts whole. */
	const int32_t mft_a_minute = 1000 * MILLI;
	if (!f->food || f->pressure || !is_sweet_spread(f->food))
		return 0;
	int base = rule_limit(f, RULE_SWEET_SPREAD) / MILLI;
	int32_t mft = f->rq->elevation_mft;
	return mft <= 0 ? base : base + (mft + mft_a_minute - 1) / mft_a_minute;
}

bool needs_sterile_jars(const struct facts *f)
{
	if (f->pressure)
		return false;
	return (f->line->marks & LINE_STERILE_JARS) != 0 ||
	       f->minutes * MILLI < rule_limit(f, RULE_STERILE_JARS);
}

static void resolve_canner(struct facts *f)
{
	f->canner_known = f->rq->canner_choice == CHOICE_CANNER;
	if (!f->canner_known)
		return;
	f->steam = f->rq->canner == CANNER_STEAM;
	f->pressure = f->rq->canner == CANNER_DIAL_GAUGE || f->rq->canner == CANNER_WEIGHTED_GAUGE;
}

static void resolve_table(struct facts *f)
{
	enum canner tables = f->steam ? CANNER_BOILING_WATER : f->rq->canner;
	const struct process_table *last = NULL;
	for (size_t i = 0; i < f->food->tables_n; i++) {
		const struct process_table *table = &f->food->tables[i];
		if (table->canner != tables)
			continue;
		f->tables_n++;
		last = table;
		if (table->pack == PACK_UNSTATED)
			f->pack_unstated_table = true;
		if (f->rq->pack != PACK_UNSTATED && table->pack == f->rq->pack)
			f->table = table;
	}
	if (f->rq->pack == PACK_UNSTATED && f->tables_n == 1)
		f->table = last;
}

static void resolve_jar(struct facts *f)
{
	const struct jar_choice *choice = &f->rq->jar;
	if (!choice->stated)
		return;
	if (!choice->by_volume) {
		f->jar_known = true;
		f->jar = choice->jar;
		return;
	}
	f->jar_known = reference_jar_for(f->ref, choice->volume_nl, &f->jar, &f->jar_by_namesake);
	f->jar_beyond = !f->jar_known;
}

/* Lines stand by jar, smallest first: the first line that holds the jar is the covering one. */
static void resolve_lines(struct facts *f)
{
	for (size_t i = 0; i < f->table->lines_n; i++) {
		const struct process_line *line = &f->table->lines[i];
		if (!f->first && line->jar >= f->jar)
			f->first = line;
		if (f->first && line->jar == f->first->jar)
			f->lines_n++;
	}
}

static void resolve_band(struct facts *f)
{
	int64_t top_ft = rule_limit(f, RULE_ELEVATION_ABOVE) / MILLI;
	for (size_t i = 0; i < f->table->bands_n; i++) {
		int64_t to_ft = f->table->bands[i].to_ft;
		if (to_ft > top_ft)
			to_ft = top_ft;
		if (f->rq->elevation_mft <= to_ft * MILLI) {
			f->band = (int)i;
			return;
		}
	}
}

static void resolve_line(struct facts *f)
{
	for (size_t i = 0; i < f->lines_n && !f->line; i++) {
		const struct cell *cell = &f->first[i].cells[f->band];
		if (cell->minutes > 0 &&
		    (f->rq->psi == PSI_UNSTATED || (f->pressure && f->rq->psi == cell->psi)))
			f->line = &f->first[i];
	}
	if (!f->line)
		return;
	f->minutes = f->line->cells[f->band].minutes;
	int spread = sweet_spread_minutes(f);
	if (spread > f->minutes)
		f->minutes = spread;
}

void facts_resolve(const struct reference *ref, const struct request *rq, struct facts *out)
{
	*out = (struct facts){.ref = ref, .rq = rq, .band = -1};
	if (rq->food.kind == MATCH_ONE)
		out->food = rq->food.foods[0];
	resolve_canner(out);
	resolve_jar(out);
	if (!out->food || !out->canner_known || out->food->acid_class == ACID_CLASS_UNSTATED)
		return;
	resolve_table(out);
	if (!out->table)
		return;
	if (out->jar_known)
		resolve_lines(out);
	if (rq->elevation_stated)
		resolve_band(out);
	if (out->first && out->band >= 0)
		resolve_line(out);
}
