/*
 * Memory that runs out: allocations of the whole process fail at a chosen one. Under the address
 * sanitizer, which has the allocator to itself, only those of SQLite and Jansson do.
 */
#ifndef JARWRIGHT_TESTS_FAULT_MEMORY_H
#define JARWRIGHT_TESTS_FAULT_MEMORY_H

#include <stdbool.h>

/* Before the first use of SQLite and of the household; a second time does nothing. */
void memory_install(void);
/* Counts from now on; the n-th fails (0: none), with stays all later ones too. */
void memory_refuse(long n, bool stays);
/* Stops, and gives the count. */
long memory_heal(void);

#endif
