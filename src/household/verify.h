/* What the parts of the verification share. */
#ifndef JARWRIGHT_HOUSEHOLD_VERIFY_H
#define JARWRIGHT_HOUSEHOLD_VERIFY_H

#include "jarwright/household_log.h"
#include "log.h"

void verify_fault(struct log_report *report, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* --- verify_state.c --- */

/* Is the state what a rebuild gives? Rebuilds a copy in a temporary file; writes nothing here. */
bool verify_state(struct household *db, struct log_report *report, struct error *err);

#endif
