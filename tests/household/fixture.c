#include <sqlite3.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "suites.h"

char folder[64];
char path[128];
struct error err;

void setup(void)
{
	snprintf(folder, sizeof folder, "/tmp/jarwright-household-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	memset(&err, 0, sizeof err);
}

void teardown(void)
{
	char command[128];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

struct household *opened(enum household_access access)
{
	struct household *db;
	if (!household_open(path, access, &db, &err))
		ck_abort_msg("%s", err.text);
	return db;
}

void tamper(const char *sql)
{
	sqlite3 *db;
	ck_assert_int_eq(sqlite3_open(path, &db), SQLITE_OK);
	char *message = NULL;
	if (sqlite3_exec(db, sql, NULL, NULL, &message) != SQLITE_OK)
		ck_abort_msg("%s", message);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
}
