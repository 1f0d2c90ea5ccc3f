/* The canners of the kitchen, as the log keeps them. */
#include <string.h>

#include "jarwright/text.h"
#include "log.h"

/* The canner in use by this name; 0: there is none. */
static bool canner_in_use(struct household *db, const char *name, int64_t *id, struct error *err)
{
	sqlite3_stmt *query;
	*id = 0;
	if (!store_cached(db, "SELECT id FROM canner WHERE name = ?1 AND retired = 0", &query, err))
		return false;
	sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	if (sqlite3_step(query) == SQLITE_ROW)
		*id = sqlite3_column_int64(query, 0);
	return store_done(db, query, err);
}

static bool count_canners(struct household *db, int *n, struct error *err)
{
	return store_integer(db, "SELECT count(*) FROM canner WHERE retired = 0", n, err);
}

static bool set_holds(json_t *body, const char *key, int holds)
{
	return holds == 0 || json_object_set_new(body, key, json_integer(holds)) == 0;
}

static json_t *canner_body(const struct kitchen_canner *canner)
{
	json_t *body =
	    json_pack("{s:s, s:s}", "name", canner->name, "kind", canner_word(canner->kind));
	if (body && set_holds(body, "quarts", canner->holds_quarts) &&
	    set_holds(body, "pints", canner->holds_pints) &&
	    set_holds(body, "half_pints", canner->holds_half_pints))
		return body;
	json_decref(body);
	return NULL;
}

static bool put_canner(struct household *db, const struct kitchen_canner *canner, bool *replaced,
		       struct error *err)
{
	int64_t id;
	int n;
	if (!canner_in_use(db, canner->name, &id, err) || !count_canners(db, &n, err))
		return false;
	*replaced = id != 0;
	if (!*replaced && n >= KITCHEN_CANNERS_MAX)
		return error_usage(err,
				   "canner '%s': there are %d already; remove one with 'jarwright "
				   "kitchen remove NAME'",
				   canner->name, KITCHEN_CANNERS_MAX);
	return log_append(db, *replaced ? "canner-change" : "canner-add", id,
			  instant_at(time(NULL)), canner_body(canner), NULL, err);
}

static bool holds_check(int holds, const char *jars, struct error *err)
{
	if (holds >= 0 && holds <= KITCHEN_HOLDS_MAX)
		return true;
	return error_usage(err, "canner: it cannot hold %d %s; say a number from 1 to %d", holds,
			   jars, KITCHEN_HOLDS_MAX);
}

static bool canner_check(const struct kitchen_canner *canner, struct error *err)
{
	if (canner->name[0] == '\0' || plain_text_check(canner->name) != PLAIN_TEXT)
		return error_usage(err, "canner: its name is empty or no plain text; type a name");
	return holds_check(canner->holds_quarts, "quarts", err) &&
	       holds_check(canner->holds_pints, "pints", err) &&
	       holds_check(canner->holds_half_pints, "half-pints", err);
}

bool household_put_canner(struct household *db, const struct kitchen_canner *canner, bool *replaced,
			  struct error *err)
{
	if (!canner_check(canner, err) || !log_begin(db, err))
		return false;
	return log_end(db, put_canner(db, canner, replaced, err), err);
}

static bool no_such_canner(const struct kitchen *kitchen, const char *name, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE], list[KITCHEN_CANNERS_MAX * (KITCHEN_NAME_SIZE + 4)];
	size_t length = 0;
	text_show(name, SIZE_MAX, shown);
	if (kitchen->canners_n == 0)
		return error_usage(err,
				   "canner '%s': there is none; add it with 'jarwright kitchen "
				   "add NAME --canner KIND'",
				   shown);
	for (size_t i = 0; i < kitchen->canners_n; i++) {
		sqlite3_snprintf((int)(sizeof list - length), list + length, "%s'%s'",
				 i ? ", " : "", kitchen->canners[i].name);
		length += strlen(list + length);
	}
	return error_usage(err, "canner '%s': there is none of that name; there is %s", shown,
			   list);
}

/* The message lists those that are there. */
static bool canner_missing(struct household *db, const char *name, struct error *err)
{
	struct kitchen kitchen;
	return household_canners(db, &kitchen, err) && no_such_canner(&kitchen, name, err);
}

static bool remove_canner(struct household *db, const char *name, struct error *err)
{
	int64_t id;
	if (!canner_in_use(db, name, &id, err))
		return false;
	if (!id)
		return canner_missing(db, name, err);
	return log_append(db, "canner-retire", id, instant_at(time(NULL)), json_object(), NULL,
			  err);
}

bool household_remove_canner(struct household *db, const char *name, struct error *err)
{
	if (!log_begin(db, err))
		return false;
	return log_end(db, remove_canner(db, name, err), err);
}
