/* canner test: a dial gauge beside a master gauge. */
#ifndef JARWRIGHT_CLI_CANNER_TEST_H
#define JARWRIGHT_CLI_CANNER_TEST_H

#include "cli.h"
#include "jarwright/household_canners.h"

int canner_test_command(struct invocation *inv);
/* What is known of the canner's gauge, and what to do. */
void print_gauge(struct invocation *inv, const struct canner_record *record);

#endif
