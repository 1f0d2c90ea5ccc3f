/* What a recorder's trace came to: as text, as JSON, and as a plot in SVG. */
#ifndef JARWRIGHT_RENDER_RECORD_H
#define JARWRIGHT_RENDER_RECORD_H

#include "jarwright/load_judge.h"
#include "jarwright/record.h"
#include "jarwright/record_csv.h"
#include "jarwright/render.h"

/* All pointers are the caller's. */
struct record_report {
	const char *file;            /* its name, safe to show */
	const char *subject;         /* "Asparagus, spears or pieces, pint jars, ..." */
	const char *food;            /* its name in the tables */
	const struct citation *from; /* where the process stands */
	/* For what to do with the jars; NULL: that is said elsewhere, as of a load in the log. */
	const struct load_rules *rules;
	const struct record_need *need;
	const struct record_judgement *judgement;
	const struct record_csv_found *found;
};

/* Cites by short names and adds them to the list; the caller prints it with sources_text(). */
void record_text(const struct page *page, const struct record_report *report,
		 struct source_list *sources);
json_t *record_json(const struct record_report *report);

/*
 * One self-contained drawing: a panel for each channel that was read, the requirement as a
 * dashed line, the dips numbered below the curve, start and end of the process. Nothing is
 * told by colour alone. Failures of the stream are the caller's to notice.
 */
void record_svg(FILE *out, const struct record_report *report,
		const struct record_outline *outline);

/* "14:05:00", or "0:15:30" from the first row where no time of day is known. */
char *record_moment_words(char *buffer, size_t size, const struct record_report *report,
			  double time_s);
/* "14 min 59 s"; cut down to whole seconds, so that nothing looks longer than it was. */
char *record_length_words(char *buffer, size_t size, double seconds);
/* "held" ... as a headline, "HELD" */
const char *record_headline(enum record_outcome outcome);
/* One reason: a word for programs, and sentences with what to do. */
const char *record_reason_word(enum record_reason reason);
const char *record_reason_words(char *buffer, size_t size, const struct record_report *report,
				enum record_reason reason);
/* Why the record leaves a load no better than it does, in sentences; "" if it was held. */
char *record_leaves_words(char *buffer, size_t size, const struct record_report *report,
			  const struct record_leaves *leaves);
/* What to do with the jars, by the rules; "" if they were held. Returns buffer. */
char *record_advice(char *buffer, size_t size, enum record_outcome outcome,
		    const struct load_rules *rules);
/* What a record can never show. */
extern const char record_caution[];

#endif
