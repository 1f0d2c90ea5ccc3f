/* The jars that somebody names, in groups as on the shelf. */
#include <string.h>

#include "jarwright/household_jars.h"
#include "log.h"
#include "shelf.h"

bool shelf_find_pick(struct household *db, const struct jar_pick *pick, int64_t *batch,
		     struct error *err)
{
	struct batch_code code = {.year = pick->year, .number = pick->number};
	char text[BATCH_CODE_SIZE];
	memcpy(code.device, pick->device, sizeof code.device);
	if (!store_has_log(db))
		return error_usage(err, "batch %s: there is none; see 'jarwright batch list'",
				   batch_code_text(code.year, code.number, text));
	return find_batch_code(db, &code, batch, err);
}

/* Is the jar of this row among those picked, of which `taken` are there already? */
static bool is_picked(const struct jar_pick *pick, int number, bool gone, int taken)
{
	if (pick->count > 0)
		return !gone && taken < pick->count;
	return jar_set_count(&pick->jars) > 0 ? jar_set_has(&pick->jars, number) : !gone;
}

/* All that is picked is there, or an error. */
static bool all_taken(const struct jar_pick *pick, const struct jar_set *taken, const char *code,
		      struct error *err)
{
	int n = (int)jar_set_count(taken);
	if (n < pick->count)
		return error_usage(err, "jar: %d of %s are here, not %d; see 'jarwright shelf'", n,
				   code, pick->count);
	for (int jar = jar_set_next(&pick->jars, 0); jar; jar = jar_set_next(&pick->jars, jar))
		if (!jar_set_has(taken, jar))
			return error_usage(err, "jar %s-%02d: there is no such jar in the batch",
					   code, jar);
	return true;
}

static bool read_pick(struct household *db, const struct jar_pick *pick, struct jar_groups *out,
		      struct error *err)
{
	sqlite3_stmt *query;
	struct shelf_batch batch;
	struct jar_set taken = {{0}};
	int64_t id = 0;
	size_t first = out->groups_n;
	bool ok = true;
	if (!shelf_find_pick(db, pick, &id, err) || !shelf_batch_read(db, id, &batch, err) ||
	    !store_cached(db,
			  "SELECT " SHELF_COLUMNS ", gone FROM jar WHERE batch = ?1 ORDER BY "
			  "number",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, id);
	while (ok && sqlite3_step(query) == SQLITE_ROW) {
		int number = sqlite3_column_int(query, 1);
		bool gone = sqlite3_column_int(query, 9) == 1;
		if (!is_picked(pick, number, gone, (int)jar_set_count(&taken)))
			continue;
		jar_set_add(&taken, number);
		ok = shelf_add_row(db, query, &batch, first, out, err);
	}
	return store_done(db, query, err) && ok && all_taken(pick, &taken, batch.code, err);
}

bool household_picked_jars(struct household *db, const struct jar_picks *picks,
			   struct jar_groups *out, struct error *err)
{
	*out = (struct jar_groups){0};
	for (size_t i = 0; i < picks->picks_n; i++)
		if (!read_pick(db, &picks->picks[i], out, err)) {
			jar_groups_release(out);
			return false;
		}
	return true;
}
