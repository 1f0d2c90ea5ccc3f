/* Rules on pack, jar, closure and the state of the empty jars. */
#include <string.h>

#include "decide_internal.h"

void rule_pack_missing(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->pack == PACK_UNSTATED && f->tables_n > 1)
		find(d, rule, LEVEL_ASK);
}

void rule_pack_not_published(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->pack == PACK_UNSTATED || f->tables_n == 0 || f->table || f->pack_unstated_table)
		return;
	struct finding *finding = find(d, rule, LEVEL_REFUSE);
	finding->uncovered = true;
	finding->word = pack_word(f->rq->pack);
}

void rule_pack_unstated(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->pack != PACK_UNSTATED && f->pack_unstated_table && !f->table)
		find(d, rule, LEVEL_ASK);
}

/* No pack was said and the table has one only: the process is for that one. */
void rule_pack_only(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->pack == PACK_UNSTATED && f->table->pack != PACK_UNSTATED)
		find(d, rule, LEVEL_WARN)->word = pack_word(f->table->pack);
}

void rule_jar_missing(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->rq->jar.stated)
		find(d, rule, LEVEL_ASK);
}

void rule_jar_too_large(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->table || !(f->jar_beyond || (f->jar_known && !f->first)))
		return;
	enum jar largest = f->table->lines[f->table->lines_n - 1].jar;
	find(d, rule, LEVEL_REFUSE)->word = f->ref->jars[largest].name;
}

/* The cook's jar is not itself in the table: it takes the time of the next larger one. */
void rule_jar_covered(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->first)
		return;
	bool between = f->rq->jar.by_volume && !f->jar_by_namesake &&
		       f->rq->jar.volume_nl < f->ref->jars[f->jar].volume_nl;
	if (f->first->jar != f->jar || between)
		find(d, rule, LEVEL_NOTE)->word = f->ref->jars[f->first->jar].name;
}

/* The next larger jar of the table than the one that covers the cook's, or NONE. */
static int32_t next_larger(const struct facts *f)
{
	for (size_t i = 0; f->first && i < f->table->lines_n; i++)
		if (f->table->lines[i].jar > f->first->jar)
			return (int32_t)f->table->lines[i].jar;
	return NONE;
}

void rule_jar_namesake(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->jar_by_namesake)
		return;
	struct finding *finding = find(d, rule, LEVEL_WARN);
	finding->a_milli = f->ref->jars[f->jar].namesake_ml * MILLI;
	finding->b_milli = next_larger(f);
	finding->word = f->ref->jars[f->jar].name;
}

void rule_closure_barred(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->closure)
		find(d, rule, LEVEL_REFUSE)->barred = f->rq->closure;
}

static bool mayonnaise_jar(const struct facts *f)
{
	return f->rq->container && strcmp(f->rq->container->slug, "mayonnaise-jar") == 0;
}

void rule_container_barred(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->container && !mayonnaise_jar(f))
		find(d, rule, LEVEL_REFUSE)->barred = f->rq->container;
}

/* Dressing jars: not under pressure and not for low-acid food; else a risk of breakage. */
void rule_mayonnaise_jar(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!mayonnaise_jar(f))
		return;
	bool acid = f->food && (f->food->acid_class == ACID_CLASS_HIGH ||
				f->food->acid_class == ACID_CLASS_ACIDIFIED);
	bool water = f->canner_known && !f->pressure;
	find(d, rule, acid && water ? LEVEL_WARN : LEVEL_REFUSE);
}

void rule_jars_not_sterile(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->line && f->rq->jars == JARS_NOT_STERILE && needs_sterile_jars(f))
		find(d, rule, LEVEL_REFUSE);
}

void rule_sterile_jars(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->line && f->rq->jars != JARS_NOT_STERILE && needs_sterile_jars(f))
		find(d, rule, LEVEL_WARN);
}
