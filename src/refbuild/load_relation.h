/* A row of a relation into the SQL table of the same name. */
#ifndef REFBUILD_LOAD_RELATION_H
#define REFBUILD_LOAD_RELATION_H

#include "load.h"

bool load_row(struct loader *loader, const struct relation_row *row, struct error *err);

#endif
