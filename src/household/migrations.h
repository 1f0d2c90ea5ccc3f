/* The household file's migrations, from schema/household/, in number order. */
#ifndef JARWRIGHT_HOUSEHOLD_MIGRATIONS_H
#define JARWRIGHT_HOUSEHOLD_MIGRATIONS_H

#include <stddef.h>

/* household_migrations[n] takes a file from user_version n to n + 1. */
extern const char *const household_migrations[];
extern const size_t household_migrations_n;

#endif
