/*
 * Batches with all that a second look at their decision needs: the decision as it was stored, what
 * was said of each load, what is known today of the gauge it went by, and where the jars are.
 */
#ifndef JARWRIGHT_HOUSEHOLD_REVIEW_H
#define JARWRIGHT_HOUSEHOLD_REVIEW_H

#include "jarwright/household_batches.h"

struct review_load {
	int number;
	int64_t canner; /* 0: none */
	char canner_name[KITCHEN_NAME_SIZE];
	struct kitchen_canner kind; /* as it is today */
	struct instant started;
	enum load_outcome outcome; /* as it was judged */
	struct load_said said;     /* as it was said; .gauge as it was then */
	/* The worst of the last test before the day, those of the day, and the first after it: a
	 * gauge found wrong was so from the test before. */
	struct load_gauge gauge;
};

struct review_jar {
	int number, load;
	char size[32];
	enum jar_state state;
	bool late;
	bool recalled; /* an open recall names it */
};

struct review_case {
	struct batch_record record; /* without the counts */
	json_t *decision;           /* NULL: it cannot be read */
	struct review_load *loads;
	size_t loads_n;
	struct review_jar *jars;
	size_t jars_n;
};

struct review_filter {
	/* Also batches whose jars are all eaten or thrown away; else those of which a jar is here,
	 * was given away, or went into a later batch. */
	bool all;
	const char *since; /* "2026-06-01": put up that day or later; NULL: any */
	const char *food;  /* a slug; NULL: any */
	int64_t canner;    /* with a load in it; 0: any */
};

/*
 * Gives each batch in the order of its beginning to `each`, which returns false to end it (with
 * *err filled). What the case points to ends with the call. One transaction.
 */
typedef bool review_each(void *context, const struct review_case *batch, struct error *err);
bool household_review(struct household *db, const struct review_filter *filter, review_each *each,
		      void *context, struct error *err);

#endif
