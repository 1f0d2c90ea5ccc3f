/* What other sources of this folder need of the kitchen. */
#ifndef JARWRIGHT_HOUSEHOLD_KITCHEN_INTERNAL_H
#define JARWRIGHT_HOUSEHOLD_KITCHEN_INTERNAL_H

#include "store.h"

/* As household_change_kitchen(), within the caller's transaction. */
bool kitchen_change(struct household *db, const struct kitchen_change *change, struct error *err);

#endif
