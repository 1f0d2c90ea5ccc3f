/*
 * What stands where: jars in the order of an index that has only those that are here, grouped
 * while they are read. What is said of their batch is looked up once a batch.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/household_jars.h"
#include "jarwright/load_judge.h"
#include "log.h"
#include "shelf.h"

#define HOUR_MS INT64_C(3600000)

void jar_groups_release(struct jar_groups *groups)
{
	free(groups->groups);
	*groups = (struct jar_groups){0};
}

static struct jar_group *new_group(struct jar_groups *groups, struct error *err)
{
	if (groups->groups_n == groups->room) {
		size_t room = groups->room ? groups->room * 2 : 64;
		struct jar_group *more = realloc(groups->groups, room * sizeof *more);
		if (!more) {
			error_failed(err,
				     "jars: out of memory; close other programs and try again");
			return NULL;
		}
		groups->groups = more;
		groups->room = room;
	}
	struct jar_group *group = &groups->groups[groups->groups_n++];
	memset(group, 0, sizeof *group);
	return group;
}

/* --- The batch --- */

/* Fills what the batch says; the rest of *out is left alone. */
static bool read_batch(struct household *db, int64_t batch, struct shelf_batch *out,
		       struct error *err)
{
	sqlite3_stmt *query;
	char day[16], code[BATCH_CODE_SIZE];
	bool ok = true;
	if (!store_cached(db,
			  "SELECT batch.year, batch.number, batch.title, batch.food, batch.day, "
			  "batch.keep = 'shelf' AND batch.held = 0, event.uuid FROM batch JOIN "
			  "event ON event.id = batch.id WHERE batch.id = ?1",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, batch);
	memset(out, 0, sizeof *out);
	out->id = batch;
	if (sqlite3_step(query) == SQLITE_ROW) {
		snprintf(out->code, sizeof out->code, "%s",
			 batch_code_text(sqlite3_column_int(query, 0), sqlite3_column_int(query, 1),
					 code));
		store_cut_text(query, 2, out->title, sizeof out->title);
		store_cut_text(query, 3, out->food, sizeof out->food);
		store_cut_text(query, 4, day, sizeof day);
		ok = date_parse("batch", day, &out->day, err);
		out->for_shelf = sqlite3_column_int(query, 5) == 1;
		if (sqlite3_column_bytes(query, 6) == UUID_SIZE)
			memcpy(out->uuid, sqlite3_column_blob(query, 6), UUID_SIZE);
	}
	return store_done(db, query, err) && ok;
}

/* Jars of the batch that an open recall names. */
static bool read_recalled(struct household *db, struct shelf_batch *out, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT recall_jar.number FROM recall_jar JOIN recall ON recall.id = "
			  "recall_jar.recall WHERE recall_jar.batch = ?1 AND disposition IS NULL "
			  "AND closed_ms IS NULL",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, out->id);
	while (sqlite3_step(query) == SQLITE_ROW)
		jar_set_add(&out->recalled, sqlite3_column_int(query, 0));
	return store_done(db, query, err);
}

int shelf_gauge_limit(void)
{
	struct load_rules rules;
	struct error err = {.kind = ERROR_NONE};
	/* Without the figure no error is allowed. */
	if (!load_rules_find(reference_edition(), reference_tables_edition(), &rules, &err))
		return 0;
	return rules.gauge_psi * 1000;
}

/* The load of the group's jars: when it came out, and how. */
static bool read_load(struct household *db, struct jar_group *group, struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT load.out_ms, load.outcome, " SHELF_PROCESSED
			  " FROM load JOIN batch ON batch.id = load.batch WHERE load.batch = ?1 "
			  "AND load.number = ?2",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, group->batch);
	sqlite3_bind_int(query, 2, group->load);
	sqlite3_bind_int(query, 3, shelf_gauge_limit());
	if (sqlite3_step(query) == SQLITE_ROW) {
		char outcome[32];
		group->out_ms = sqlite3_column_int64(query, 0);
		store_cut_text(query, 1, outcome, sizeof outcome);
		group->processed = sqlite3_column_int(query, 2) == 1;
		group->unclear = strcmp(outcome, "unclear") == 0;
	}
	return store_done(db, query, err);
}

bool shelf_batch_read(struct household *db, int64_t batch, struct shelf_batch *out,
		      struct error *err)
{
	return read_batch(db, batch, out, err) && read_recalled(db, out, err);
}

/* --- Grouping --- */

/* columns of SHELF_COLUMNS; text points into the row */
struct row {
	int number, load;
	const char *size, *state, *place;
	int64_t since_ms;
	bool sealed, late, recalled;
};

static const char *text_of(sqlite3_stmt *query, int column)
{
	const char *text = (const char *)sqlite3_column_text(query, column);
	return text ? text : "";
}

static void read_row(sqlite3_stmt *query, const struct shelf_batch *batch, struct row *out)
{
	out->number = sqlite3_column_int(query, 1);
	out->size = text_of(query, 2);
	out->load = sqlite3_column_int(query, 3);
	out->state = text_of(query, 4);
	out->place = text_of(query, 5);
	out->since_ms = sqlite3_column_int64(query, 6);
	out->sealed = sqlite3_column_int(query, 7) == 1;
	out->late = sqlite3_column_int(query, 8) == 1;
	out->recalled = jar_set_has(&batch->recalled, out->number);
}

static bool alike(const struct jar_group *group, const struct row *row)
{
	return group->load == row->load && group->late == row->late &&
	       group->sealed == row->sealed && group->recalled == row->recalled &&
	       strcmp(jar_state_word(group->state), row->state) == 0 &&
	       strcmp(group->place, row->place) == 0 && strcmp(group->size, row->size) == 0;
}

static bool begin_group(struct household *db, const struct shelf_batch *batch,
			const struct row *row, struct jar_groups *out, struct jar_group **group,
			struct error *err)
{
	struct jar_group *g = new_group(out, err);
	*group = g;
	if (!g)
		return false;
	g->batch = batch->id;
	memcpy(g->uuid, batch->uuid, sizeof g->uuid);
	memcpy(g->code, batch->code, sizeof g->code);
	memcpy(g->title, batch->title, sizeof g->title);
	memcpy(g->food, batch->food, sizeof g->food);
	g->day = batch->day;
	g->load = row->load;
	snprintf(g->size, sizeof g->size, "%s", row->size);
	snprintf(g->place, sizeof g->place, "%s", row->place);
	g->since_ms = row->since_ms;
	g->sealed = row->sealed;
	g->late = row->late;
	g->recalled = row->recalled;
	g->for_shelf = batch->for_shelf;
	return (jar_state_find(row->state, &g->state) ||
		error_failed(err,
			     "jars: the file has a jar '%s', which this jarwright does not "
			     "know; it may be damaged, put back a backup",
			     row->state)) &&
	       read_load(db, g, err);
}

/* Adds the jar of the row to a group of its batch; `first`: where those of the batch begin. */
bool shelf_add_row(struct household *db, sqlite3_stmt *query, const struct shelf_batch *batch,
		   size_t first, struct jar_groups *out, struct error *err)
{
	struct row row;
	struct jar_group *group = NULL;
	read_row(query, batch, &row);
	for (size_t i = first; i < out->groups_n && !group; i++)
		if (alike(&out->groups[i], &row))
			group = &out->groups[i];
	if (!group && !begin_group(db, batch, &row, out, &group, err))
		return false;
	jar_set_add(&group->jars, row.number);
	if (row.since_ms < group->since_ms)
		group->since_ms = row.since_ms;
	return true;
}

/* --- Filtering --- */

/* Is it in the text, whatever the case of A to Z? */
static bool has_words(const char *text, const char *words)
{
	return strcasestr(text, words) != NULL;
}

static bool batch_wanted(const struct shelf_batch *batch, const struct shelf_filter *filter)
{
	if (filter->before_day != INT64_MAX && date_days(batch->day) > filter->before_day)
		return false;
	return !filter->words || has_words(batch->title, filter->words) ||
	       has_words(batch->food, filter->words) ||
	       (filter->food && strcmp(filter->food, batch->food) == 0);
}

static bool place_wanted(sqlite3_stmt *query, const struct shelf_filter *filter)
{
	return !filter->place || has_words(text_of(query, 5), filter->place);
}

static bool read_rows(struct household *db, sqlite3_stmt *query, const struct shelf_filter *filter,
		      struct jar_groups *out, struct error *err)
{
	struct shelf_batch batch = {0};
	size_t first = 0;
	bool wanted = false;
	while (sqlite3_step(query) == SQLITE_ROW) {
		int64_t id = sqlite3_column_int64(query, 0);
		if (id != batch.id) {
			if (!shelf_batch_read(db, id, &batch, err))
				return false;
			wanted = batch_wanted(&batch, filter);
			first = out->groups_n;
		}
		if (wanted && place_wanted(query, filter) &&
		    !shelf_add_row(db, query, &batch, first, out, err))
			return false;
	}
	return true;
}

bool household_shelf(struct household *db, const struct shelf_filter *filter,
		     struct jar_groups *out, struct error *err)
{
	static const char here[] = SHELF_HERE;
	static const char all[] = "SELECT " SHELF_COLUMNS " FROM jar ORDER BY batch, number";
	sqlite3_stmt *query;
	*out = (struct jar_groups){0};
	if (!store_has_log(db))
		return true;
	if (!store_cached(db, filter->gone_too ? all : here, &query, err))
		return false;
	bool ok = read_rows(db, query, filter, out, err);
	ok = store_done(db, query, err) && ok;
	if (!ok)
		jar_groups_release(out);
	return ok;
}

struct jar_standing jar_group_standing(const struct jar_group *group, const struct jar_hold *hold,
				       int64_t now_ms)
{
	int hours = group->processed ? hold->failed_hours : hold->wrong_hours;
	return (struct jar_standing){
	    .state = group->state,
	    .processed = group->processed,
	    .late = group->late,
	    .shelf_stable = group->processed && !group->late,
	    .overdue = now_ms - group->out_ms > hours * HOUR_MS,
	};
}
