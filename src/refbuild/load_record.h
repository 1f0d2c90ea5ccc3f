/* A record of any kind but a process table into its SQL table. */
#ifndef REFBUILD_LOAD_RECORD_H
#define REFBUILD_LOAD_RECORD_H

#include "load.h"

/* Inserts the record, and its doses if it is a food. */
bool load_record(struct loader *loader, const struct record *record, struct error *err);

#endif
