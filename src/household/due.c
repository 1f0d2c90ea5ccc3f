/* The dial gauges in use and when each was last tested. */
#include <stdio.h>
#include <string.h>

#include "jarwright/household_jars.h"
#include "log.h"
#include "shelf.h"

static bool read_gauge(sqlite3_stmt *row, struct gauge_due *out, struct error *err)
{
	const char *name = (const char *)sqlite3_column_text(row, 0);
	const char *last = (const char *)sqlite3_column_text(row, 2);
	snprintf(out->canner, sizeof out->canner, "%s", name ? name : "");
	if (sqlite3_column_bytes(row, 1) == UUID_SIZE)
		memcpy(out->uuid, sqlite3_column_blob(row, 1), UUID_SIZE);
	out->tested = last != NULL;
	return !last || date_parse("gauge test", last, &out->last, err);
}

bool household_gauges(struct household *db, struct gauges_due *out, struct error *err)
{
	sqlite3_stmt *query;
	bool ok = true;
	memset(out, 0, sizeof *out);
	if (!store_has_log(db))
		return true;
	if (!store_cached(
		db,
		"SELECT canner.name, event.uuid, (SELECT max(tested) FROM gauge_test "
		"WHERE gauge_test.canner = canner.id) FROM canner CROSS JOIN event ON event.id "
		"= canner.id WHERE canner.retired = 0 AND canner.kind = 'dial-gauge' "
		"ORDER BY canner.name, canner.id",
		&query, err))
		return false;
	while (ok && out->gauges_n < sizeof out->gauges / sizeof *out->gauges &&
	       sqlite3_step(query) == SQLITE_ROW)
		ok = read_gauge(query, &out->gauges[out->gauges_n++], err);
	return store_done(db, query, err) && ok;
}
