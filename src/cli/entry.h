/* Entries of the log in words and as JSON: for log and undo. */
#ifndef JARWRIGHT_CLI_ENTRY_H
#define JARWRIGHT_CLI_ENTRY_H

#include <jansson.h>

#include "cli.h"
#include "jarwright/household_log.h"
#include "jarwright/render.h"

void print_entry(const struct page *page, const struct log_entry *entry);
json_t *json_entry(const struct log_entry *entry);

#endif
