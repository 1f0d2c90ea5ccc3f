/* What the commands about canners share. */
#ifndef JARWRIGHT_CLI_OWN_CANNER_H
#define JARWRIGHT_CLI_OWN_CANNER_H

#include "cli.h"
#include "jarwright/household.h"
#include "jarwright/render.h"

/* "'big pot' (boiling-water, holds 7 quarts or 9 pints)" behind `lead`. */
void print_canner(const struct page *page, const char *lead, const struct kitchen_canner *canner);
/* Its name, kind and what it holds, null where that is not said; NULL: out of memory. */
json_t *json_canner(const struct kitchen_canner *canner);

#endif
