/*
 * Traces, recalls and the review as text for a cook, as a sheet to hand on, and as JSON. As in
 * render.h: decides nothing, knows no SQL, a JSON value is the caller's or NULL.
 */
#ifndef JARWRIGHT_RENDER_RECALL_H
#define JARWRIGHT_RENDER_RECALL_H

#include "jarwright/household_recalls.h"
#include "jarwright/household_trace.h"
#include "jarwright/load_judge.h"
#include "jarwright/render.h"

/* The jars by batch, where they are and to whom they went; none: what to say if there are none. */
void touched_text(const struct page *page, const struct touched_jars *jars, const char *none);
extern const char never_used[];
json_t *touched_json(const struct touched_jars *jars);
/* "26-041": the batch of the jar. */
void touched_batch_code(const struct touched_jar *jar, char *buffer, size_t size);
/* Touched batches without jars, or nothing. */
void unfilled_text(const struct page *page, const struct touched_jars *jars);
json_t *unfilled_json(const struct touched_jars *jars);

/* What to do with jars that may be unsafe, by where they are: states has 1 << enum jar_state. */
void advice_text(const struct page *page, const struct load_rules *rules, unsigned states);
/* The one sentence on those who may have eaten of it. */
extern const char eaten_advice[];

/* What is traced; one of lot, canner and back is there, or none. */
struct trace_view {
	const char *what; /* in plain words */
	const struct trace_lot *lot;
	const struct trace_canner *canner;
	const struct trace *back;
	const struct touched_jars *jars;
};
void trace_text(const struct page *page, const struct trace_view *view);
json_t *trace_json(const struct trace_view *view);

/* A recall that was opened, or would be. */
struct opening_view {
	const char *code; /* "" none was opened */
	bool dry_run;
	const char *what;
	/* Of a gauge or an elevation: what was looked at and stays out; "" nothing to say. */
	const char *left_out;
	bool in_question; /* loads were looked at, so it was used even if no jar is touched */
	const struct touched_jars *jars;
	const struct load_rules *rules;
};
void opening_text(const struct page *page, const struct opening_view *view);
json_t *opening_json(const struct opening_view *view);

void recall_list_text(const struct page *page, const struct recall_list *list);
json_t *recall_list_json(const struct recall_list *list);
/* Every jar and what became of it, for the one who opened the recall. */
void recall_jars_text(const struct page *page, const struct recall_sheet *sheet,
		      const struct load_rules *rules);
json_t *recall_json(const struct recall_sheet *sheet);
/*
 * To hand or send to those who were given jars, one part a person; to: one of them alone, NULL:
 * all. Writes nothing of the household that they need not know. How many parts there were.
 */
size_t recall_sheet_text(const struct page *page, const struct recall_sheet *sheet, const char *to);

/* A batch or a load of it that is no longer covered, or may not be. */
struct review_finding {
	char code[BATCH_CODE_MAX], title[BATCH_TITLE_SIZE], day[16];
	int load; /* 0: all of it */
	struct jar_set jars;
	size_t recalled_n; /* of the jars: under an open recall already */
	bool question;     /* only if the elevation was wrong, and not if she moved */
	char why[2048];
	char line[512]; /* what to type to recall them */
};
struct review_view {
	const char *edition;
	size_t batches_n;      /* looked at */
	size_t unsettled_n;    /* not covered, without the questions */
	const char *elevation; /* in words, of the questions; "" not known */
	const struct review_finding *findings;
	size_t findings_n;
};
void review_text(const struct page *page, const struct review_view *view);
json_t *review_json(const struct review_view *view);

#endif
