/* A process table with its bands, lines and cells into SQL. */
#ifndef REFBUILD_LOAD_TABLE_H
#define REFBUILD_LOAD_TABLE_H

#include "load.h"

bool load_process_table(struct loader *loader, const struct record *record, struct error *err);

#endif
