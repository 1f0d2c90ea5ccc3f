/* Commands that are several in one: "canner add", "lot list". */
#ifndef JARWRIGHT_CLI_SUBCOMMAND_H
#define JARWRIGHT_CLI_SUBCOMMAND_H

#include "cli.h"

#define ALLOWED_MAX 24

struct subcommand {
	const char *name;
	const char *operands;             /* what follows it, for messages: "NAME"; "" nothing */
	size_t least, most;               /* operands, this word counted */
	const char *allowed[ALLOWED_MAX]; /* options beside the common ones; then NULL */
	int (*run)(struct invocation *inv);
};

/*
 * Runs the one that the first operand names, if its options and operands fit. The list ends with
 * a name of NULL. An option that goes with another one would be lost in silence: it is refused.
 */
int run_subcommand(struct invocation *inv, const struct subcommand *list);

#endif
