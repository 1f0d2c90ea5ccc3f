/* To whom jars went: also of those that were eaten or thrown away since. */
#include <string.h>

#include "jarwright/household_recalls.h"
#include "log.h"

/* Rows of jars of any struct that begins with a touched_jar. */
struct rows {
	char *first;
	size_t n, stride;
};

static struct touched_jar *row_at(const struct rows *rows, size_t i)
{
	return (struct touched_jar *)(void *)(rows->first + i * rows->stride);
}

/* The jars of one batch, which stand together from `from` to before `to`. */
static void take_gift(const struct rows *rows, size_t from, size_t to, const char *jars,
		      const char *whom)
{
	struct jar_set set;
	if (!jars || !jar_set_parse(jars, &set))
		return;
	for (size_t i = from; i < to; i++) {
		struct touched_jar *jar = row_at(rows, i);
		if (jar_set_has(&set, jar->number))
			sqlite3_snprintf(sizeof jar->given_to, jar->given_to, "%s",
					 whom ? whom : "");
	}
}

/* The latest gift counts. */
static bool read_gifts(struct household *db, const struct rows *rows, size_t from, size_t to,
		       struct error *err)
{
	sqlite3_stmt *query;
	if (!store_cached(db,
			  "SELECT body ->> 'jars', body ->> 'place' FROM event WHERE subject = ?1 "
			  "AND kind = 'jar' AND body ->> 'to' = 'given' AND NOT EXISTS "
			  "(SELECT 1 FROM undone WHERE undone.event = event.id) AND NOT EXISTS "
			  "(SELECT 1 FROM conflict WHERE conflict.event = event.id) ORDER BY uuid",
			  &query, err))
		return false;
	sqlite3_bind_int64(query, 1, row_at(rows, from)->batch);
	while (sqlite3_step(query) == SQLITE_ROW)
		take_gift(rows, from, to, (const char *)sqlite3_column_text(query, 0),
			  (const char *)sqlite3_column_text(query, 1));
	return store_done(db, query, err);
}

bool household_given(struct household *db, struct touched_jar *jars, size_t n, size_t stride,
		     struct error *err)
{
	const struct rows rows = {(char *)jars, n, stride};
	for (size_t from = 0, to; from < n; from = to) {
		bool gone = false;
		for (to = from; to < n && row_at(&rows, to)->batch == row_at(&rows, from)->batch;
		     to++)
			gone = gone || jar_state_gone(row_at(&rows, to)->state);
		if (gone && !read_gifts(db, &rows, from, to, err))
			return false;
	}
	return true;
}
