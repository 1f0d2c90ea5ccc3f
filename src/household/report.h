/* The report on a year, a source a subject. */
#ifndef JARWRIGHT_HOUSEHOLD_REPORT_INTERNAL_H
#define JARWRIGHT_HOUSEHOLD_REPORT_INTERNAL_H

#include "jarwright/household_report.h"
#include "store.h"

/* The year as the queries take it. */
struct report_span {
	char first[DATE_SIZE], last[DATE_SIZE]; /* days, both inside */
	int64_t from_ms, to_ms;                 /* the end outside */
};

/* Room for one more of `size` bytes, zeroed; NULL: out of memory, *err is filled. */
void *report_more(void **list, size_t *n, size_t size, struct error *err);
/* The month of a day, from 0; -1: it is none. */
int report_month(const char *day);

bool report_lids(struct household *db, const struct report_span *span, struct report_year *out,
		 struct error *err);
bool report_loads(struct household *db, const struct report_span *span, struct report_year *out,
		  struct error *err);
bool report_recalls(struct household *db, const struct report_span *span, struct report_year *out,
		    struct error *err);

#endif
