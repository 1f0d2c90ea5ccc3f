/* Rules on the figure itself: the pressure chosen, gaps, how well it was read, remarks. */
#include "decide_internal.h"

void rule_psi_not_published(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->psi != PSI_UNSTATED && f->first && f->band >= 0 && !f->line)
		find(d, rule, LEVEL_REFUSE)->a_milli = f->rq->psi * MILLI;
}

void rule_psi_choices(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->line || f->rq->psi != PSI_UNSTATED)
		return;
	for (size_t i = 0; i < f->lines_n && i < CHOICES_MAX; i++) {
		const struct cell *cell = &f->first[i].cells[f->band];
		if (&f->first[i] == f->line || cell->minutes == 0)
			continue;
		struct finding *finding = find(d, rule, LEVEL_NOTE);
		finding->a_milli = cell->minutes * MILLI;
		finding->b_milli = cell->psi * MILLI;
	}
}

void rule_cell_not_published(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->rq->psi == PSI_UNSTATED && f->first && f->band >= 0 && !f->line)
		find(d, rule, LEVEL_REFUSE)->uncovered = true;
}

/* Three readings agree for most of the tables; fewer is said. */
void rule_readings(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->line && f->line->readings * MILLI < rule_limit(f, rule))
		find(d, rule, f->line->readings == 1 ? LEVEL_WARN : LEVEL_NOTE)->a_milli =
		    f->line->readings * MILLI;
}

void rule_table_note(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (!f->line)
		return;
	const char *notes[] = {f->table->note, f->line->note};
	for (size_t i = 0; i < sizeof notes / sizeof *notes; i++) {
		if (!*notes[i])
			continue;
		struct finding *finding = find(d, rule, LEVEL_NOTE);
		finding->word = notes[i];
		finding->from = &f->table->from;
	}
}

void rule_headspace(const struct facts *f, enum rule_id rule, struct decision *d)
{
	if (f->line && (f->food->headspace_milli_in == NONE || *f->food->headspace_note))
		find(d, rule, LEVEL_NOTE)->word = f->food->headspace_note;
}
