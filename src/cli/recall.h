/* What trace, recall and review share. */
#ifndef JARWRIGHT_CLI_RECALL_H
#define JARWRIGHT_CLI_RECALL_H

#include "cli.h"
#include "jarwright/household_recalls.h"
#include "jarwright/household_review.h"
#include "jarwright/render_recall.h"
#include "request.h"

/* --- recall_fault.c: from words to a fault --- */

/* --since and --until, whole days, into a fault's moments; unsaid: always. */
bool fault_period(struct invocation *inv, struct fault *out);
/* "lot 'wide lids'"; what is foreign in it is made harmless. */
void fault_words(char what[static RECALL_TEXT_SIZE], const char *kind, const char *name,
		 const struct invocation *inv);
/* A food by a cook's words, or a slug of an older edition as it is, into a name of the fault. */
void fault_food(const char *words, char slug[static FAULT_NAME_SIZE]);
/* One jar: "26-041-07". */
bool fault_jar(struct invocation *inv, struct household *db, const char *words, struct fault *out);

/* --- recall_open.c --- */

int recall_open_command(struct invocation *inv);

/* --- recall_loads.c: faults that are worked out load by load --- */

/* Batches and loads that a fault is in; loads is owned. */
struct faulty_loads {
	struct fault_load *loads;
	size_t n;
	size_t looked_at; /* loads or batches in question, faulty or not */
	size_t doubtful;  /* of the faulty: taken for so because a fact is missing */
};
/* Loads in the fault's canner and time whose pressure, less so many thousandths of a psi, fell
 * short of what was decided. */
bool loads_of_gauge(struct invocation *inv, struct household *db, const struct fault *canner,
		    int32_t high_mpsi, struct faulty_loads *out);
/* Batches decided at one elevation whose process is too little at another. */
bool loads_of_elevation(struct invocation *inv, struct household *db, const struct fault *period,
			int32_t was_mft, int32_t is_mft, struct faulty_loads *out);
/* Batches of a food; canner, pack and edition: NULL any. What a batch does not say counts. */
bool loads_of_process(struct invocation *inv, struct household *db, const struct fault *food,
		      const char *canner, const char *pack, struct faulty_loads *out);

/* Is the batch's process enough at this elevation, as the tables are now? *why, if not. */
bool batch_holds(const struct review_case *batch, int32_t mft, char *why, size_t size);

#endif
