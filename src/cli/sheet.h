/* The sheet for the wall while it is put together: its texts and lists. */
#ifndef JARWRIGHT_CLI_SHEET_H
#define JARWRIGHT_CLI_SHEET_H

#include "jarwright/household_batches.h"
#include "jarwright/render_paper.h"
#include "own_recipe.h"
#include "plan_wish.h"
#include "recipe.h"

#define SHEET_FIXED_MAX      128
#define SHEET_STEPS_MAX      (PLAN_STEPS_MAX + 2)
#define SHEET_DIRECTIONS_MAX 64
#define SHEET_TEXTS_MAX      4096

/* Owns every text of .sheet, which is written into the lists as they fill. */
struct sheet_maker {
	struct paper_sheet sheet;
	struct sheet_process process;
	struct sheet_ingredient ingredients[RECIPE_LINES_MAX];
	struct sheet_fixed reasons[SHEET_FIXED_MAX], fixed[SHEET_FIXED_MAX];
	struct sheet_step steps[SHEET_STEPS_MAX];
	struct sheet_load loads[PLAN_JARS_MAX];
	const char *directions[SHEET_DIRECTIONS_MAX];
	const char *sources[SOURCES_MAX];
	struct source_list cited; /* their short names are on the sheet */
	char *texts[SHEET_TEXTS_MAX];
	size_t texts_n;
	bool lost; /* a text or a row found no room: the sheet is thrown away */
};
/* NULL: inv->err is filled. Release it with sheet_release(), which takes NULL too. */
struct sheet_maker *sheet_new(struct invocation *inv);
void sheet_release(struct sheet_maker *maker);
/* A copy of the text that lives as long as the maker. */
const char *sheet_keep(struct sheet_maker *maker, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* --- sheet_recipe.c: --in and --scale, once the process is there; false: inv->err is filled --- */

/* Her own recipe of that name; *found is false when it is no longer kept. */
bool sheet_own_recipe(struct invocation *inv, const char *name, struct sheet_maker *maker,
		      bool *found);
/* The published recipe of a food; nothing where there is none. */
bool sheet_formula(struct invocation *inv, const struct food *food, struct sheet_maker *maker);

/* --- sheet_process.c --- */

/* The process of a tested decision, what must not be changed, and else the reasons. */
void sheet_decision(struct sheet_maker *maker, const struct request *request,
		    const struct decision *decision);
/* from: NULL, where the household file says so. */
void sheet_reason(struct sheet_maker *maker, const char *says, const struct citation *from);
/* Once nothing is added any more: what the short names of the sources stand for. */
void sheet_sources(struct sheet_maker *maker);
void sheet_plan_steps(struct sheet_maker *maker, const struct plan *plan);
/* The loads of a plan; with times only if a start was said. */
void sheet_plan_loads(struct sheet_maker *maker, const struct plan *plan, bool timed);

/* --- sheet_batch.c --- */

/* The batch of operand 0, as it stands in the log. False: inv->err is filled. */
bool sheet_batch(struct invocation *inv, struct sheet_maker *maker);

#endif
