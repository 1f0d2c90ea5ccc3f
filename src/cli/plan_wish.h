/* What plan and sheet are asked for: jars, loads and the time of day. False: inv->err is filled. */
#ifndef JARWRIGHT_CLI_PLAN_WISH_H
#define JARWRIGHT_CLI_PLAN_WISH_H

#include "jarwright/plan.h"
#include "request.h"

/* clang-format off */
#define PLAN_AMOUNT_OPTIONS \
	{"jars", "N", "how many jars to make"}, \
	{"have", "WEIGHT", "what you have instead, with its unit: 20lb, 9kg"}, \
	{"holds-jars", "N", "jars of this size that one load of your canner takes"}
/* clang-format on */

#define CLOCK_MIDNIGHT (24 * 60)
/* "9:05" or "21:30", also "24:00": minutes since midnight. */
bool clock_parse(const char *what, const char *text, int *out, struct error *err);
/* --start, else now. */
bool plan_start_read(struct invocation *inv, struct plan_wish *wish);
/* --have WEIGHT in jars of the food that was found tested; jars 0 if it was not given. */
bool plan_have_read(struct invocation *inv, const struct asked *asked, struct yield *yield);
/* A kind of canner of which the kitchen has one is that one. */
bool plan_canner_settle(struct invocation *inv, struct asked *asked);
/* Jars in a load: as said, else as the kitchen's canner has it, else the published load. */
bool plan_load_read(struct invocation *inv, const struct asked *asked, struct plan_wish *wish);

#endif
