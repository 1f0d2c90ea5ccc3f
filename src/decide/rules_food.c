/* Rules on what the food is: known, one, named as unsafe, or without a published process. */
#include "decide_internal.h"

void rule_food_unknown(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->food.kind != MATCH_NONE)
		return;
	/* A word near a known one is more likely a slip than a new food: ask. */
	if (f->rq->food.foods_n > 0)
		find(d, rule, LEVEL_ASK);
	else
		find(d, rule, LEVEL_REFUSE)->uncovered = true;
}

void rule_food_ambiguous(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->food.kind == MATCH_SEVERAL)
		find(d, rule, LEVEL_ASK);
}

void rule_food_or_recipe(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->recipe)
		find(d, rule, LEVEL_ASK)->word = f->rq->recipe;
}

void rule_food_barred(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->food.kind != MATCH_BARRED)
		return;
	struct finding *finding = find(d, rule, LEVEL_REFUSE);
	finding->barred = f->rq->food.barred;
	finding->uncovered = !f->rq->food.barred->refused;
}

void rule_food_by_word(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->food && f->rq->food.by_synonym)
		find(d, rule, LEVEL_NOTE)->word = f->food->title;
}

void rule_no_process(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->food)
		return;
	if (f->food->tables_n == 0 || f->food->acid_class == ACID_CLASS_UNSTATED) {
		struct finding *finding = find(d, rule, LEVEL_REFUSE);
		finding->uncovered = true;
		finding->word = f->food->title;
	}
}
