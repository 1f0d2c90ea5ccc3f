/* Batches as text for a cook and as JSON; see render.h for what holds of all of it. */
#ifndef JARWRIGHT_RENDER_BATCH_H
#define JARWRIGHT_RENDER_BATCH_H

#include "jarwright/household_batches.h"
#include "jarwright/load_judge.h"
#include "jarwright/render.h"

/*
 * Where a function takes a list of sources, it cites by short names and adds to the list; the
 * caller prints it at the end with sources_text().
 */

/* A dial gauge that a batch or a load goes by. */
struct gauge_view {
	bool dial; /* false: nothing to say */
	const char *canner;
	const struct gauge_record *record;
	struct date today;
	int psi; /* that the process needs; 0: not known */
};
/* Warns of a gauge that was never tested, long ago, or reads high; nothing if all is well. */
void gauge_text(const struct page *page, const struct load_rules *rules,
		const struct gauge_view *gauge, struct source_list *sources);
/* Is it off by more than may be adjusted for? */
bool gauge_is_unfit(const struct load_rules *rules, const struct gauge_view *gauge);
json_t *gauge_json(const struct load_rules *rules, const struct gauge_view *gauge);

/* What to type when a load of this batch is out. */
void batch_next_text(const struct page *page, const struct batch_start *start, const char *code);
/* How long what is kept cold keeps; barred: it was refused by name, and that said how long. */
void batch_cold_text(const struct page *page, const struct load_rules *rules, const char *keep,
		     bool barred, struct source_list *sources);

/* A load just logged or amended. */
struct load_view {
	const char *code;
	int number;
	struct jar_set jars; /* new ones */
	struct jar_set again;
	struct instant out, now;
	enum load_outcome outcome;
	const struct load_judgement *judgement; /* NULL: cold */
	const char *why;
	const char *record_why; /* why a recorder's file leaves it no better, or "" */
	bool held;              /* the batch is off the shelf whatever the load is */
};
/* Jars of the load that are out of reach although it fell short: to be taken back. */
void load_away_text(const struct page *page, const struct batch_view *view, int load);
void load_text(const struct page *page, const struct load_rules *rules,
	       const struct load_view *load, struct source_list *sources);
json_t *load_json(const struct load_view *load);
/* What the sources allow for jars that were wrongly processed, and came out then. */
void wrong_text(const struct page *page, const struct load_rules *rules, struct instant out,
		struct instant now, struct source_list *sources);
/* And for jars whose seal failed. */
void unsealed_text(const struct page *page, const struct load_rules *rules, struct instant out,
		   struct instant now, struct source_list *sources);

void batch_view_text(const struct page *page, const struct batch_view *view);
json_t *batch_view_json(const struct batch_view *view);
void batch_list_text(const struct page *page, const struct batch_list *list);
json_t *batch_list_json(const struct batch_list *list);

/* "26-041-07", "26-041-01 to 26-041-06, 26-041-08"; cut to fit. Returns buffer. */
char *jar_codes(char *buffer, size_t size, const char *code, const struct jar_set *jars);

#endif
