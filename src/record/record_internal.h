/* What the sources of this module share. */
#ifndef JARWRIGHT_RECORD_INTERNAL_H
#define JARWRIGHT_RECORD_INTERNAL_H

#include "jarwright/record.h"

/* Finds the outcome and its reasons in what was seen; all readings are in. */
void record_conclude(struct record_judge *judge);

#endif
