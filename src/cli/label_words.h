/* What the label of a jar says, from what the shelf knows of it. */
#ifndef JARWRIGHT_CLI_LABEL_WORDS_H
#define JARWRIGHT_CLI_LABEL_WORDS_H

#include "jarwright/render_paper.h"
#include "jarwright/shelf.h"

struct label_words {
	struct paper_label label; /* points into this struct and into the group */
	char code[JAR_CODE_SIZE + 16], put_up[DATE_SIZE], best_before[DATE_SIZE], keep[128];
	size_t batch; /* in the order of the batches */
	int number;
};

/*
 * Labels for all jars of the lines, in the order of their batches in `groups` and of their
 * numbers; *out is to be freed. A jar that has left, or whose seal is not tested, is a usage error
 * that says what to do; what is not for the shelf says so.
 */
bool label_words_make(const struct jar_groups *groups, const struct shelf_list *list,
		      struct label_words **out, size_t *n, struct error *err);

#endif
