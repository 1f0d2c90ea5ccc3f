/*
 * What a person names to trace or recall. Where several have one name all of them are asked about,
 * those used up too: a jar of last year's carton must not be missed because a new one has its name.
 */
#include <stdio.h>
#include <string.h>

#include "jarwright/household_recalls.h"
#include "jarwright/text.h"
#include "log.h"

struct named {
	int64_t id;
	int n;
	char list[512];
};

static bool collect(struct household *db, const char *text, const char *name, struct named *out,
		    struct error *err)
{
	sqlite3_stmt *query;
	*out = (struct named){.n = 0};
	if (!store_cached(db, text, &query, err))
		return false;
	sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	while (sqlite3_step(query) == SQLITE_ROW) {
		const char *words = (const char *)sqlite3_column_text(query, 1);
		size_t length = strlen(out->list);
		snprintf(out->list + length, sizeof out->list - length, "%s%s", out->n ? ", " : "",
			 words ? words : "?");
		out->id = sqlite3_column_int64(query, 0);
		out->n++;
	}
	text_drop_partial(out->list);
	return store_done(db, query, err);
}

static bool find(struct household *db, const char *what, const char *text, const char *name,
		 int64_t *id, struct error *err)
{
	struct named named = {.n = 0};
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	if (store_has_log(db) && !collect(db, text, name, &named, err))
		return false;
	*id = named.id;
	if (named.n > 1)
		return error_usage(err,
				   "%s '%s': there are %d: %s; type the @ and what follows it "
				   "of the one you mean, and do so for each",
				   what, shown, named.n, named.list);
	return named.n == 1 ||
	       error_usage(err,
			   "%s '%s': there is none of that name; see 'jarwright %s list --all'",
			   what, shown, what);
}

/* "@1a2b3c" is the end of the UUID that began it. CROSS JOIN: few lots, never all events. */
#define MARKED(table)                                                                              \
	"(substr(?1, 1, 1) = '@' AND lower(substr(hex(event.uuid), -6)) = lower(substr(?1, 2))) "  \
	"ORDER BY " table ".id"

bool household_find_lot(struct household *db, const char *name, int64_t *id, struct error *err)
{
	return find(
	    db, "lot",
	    "SELECT lot.id, lot.name || coalesce(' (' || lot.code || ')', '') || ' @' || "
	    "lower(substr(hex(event.uuid), -6)) || iif(lot.finished, ', used up', '') FROM "
	    "lot CROSS JOIN event ON event.id = lot.id WHERE lot.name = ?1 OR lot.code = ?1 "
	    "OR " MARKED("lot"),
	    name, id, err);
}

bool household_find_canner(struct household *db, const char *name, int64_t *id, struct error *err)
{
	return find(db, "canner",
		    "SELECT canner.id, canner.name || ' of ' || canner.kind || ' @' || "
		    "lower(substr(hex(event.uuid), -6)) || iif(canner.retired, ', retired', '') "
		    "FROM canner CROSS JOIN event ON event.id = canner.id WHERE canner.name = ?1 "
		    "OR " MARKED("canner"),
		    name, id, err);
}

static bool no_batch(struct error *err, const char *code)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(code, SIZE_MAX, shown);
	return error_usage(err, "batch '%s': there is none yet; see 'jarwright batch list'", shown);
}

bool household_find_batch(struct household *db, const char *code, int64_t *id, struct error *err)
{
	return store_has_log(db) ? find_batch(db, code, id, err) : no_batch(err, code);
}

bool household_find_jar(struct household *db, const struct jar_pick *pick, int64_t *batch,
			struct error *err)
{
	struct batch_code code = {.year = pick->year, .number = pick->number};
	char text[BATCH_CODE_SIZE];
	sqlite3_stmt *query;
	int number = jar_set_next(&pick->jars, 0);
	memcpy(code.device, pick->device, sizeof code.device);
	batch_code_text(pick->year, pick->number, text);
	if (!store_has_log(db))
		return no_batch(err, text);
	if (!find_batch_code(db, &code, batch, err) ||
	    !store_cached(db, "SELECT 1 FROM jar WHERE batch = ?1 AND number = ?2", &query, err))
		return false;
	sqlite3_bind_int64(query, 1, *batch);
	sqlite3_bind_int(query, 2, number);
	bool there = sqlite3_step(query) == SQLITE_ROW;
	return store_done(db, query, err) &&
	       (there ||
		error_usage(err, "jar %s-%02d: there is no such jar in the batch", text, number));
}
