/* Recipes and the kitchen, which are no part of the log. */
#include <stdio.h>
#include <string.h>

#include "import.h"
#include "jarwright/text.h"
#include "kitchen_internal.h"

#define BESIDE_MAX 99

/* --- Recipes --- */

struct coming {
	const char *name, *system, *text;
	size_t length;
};

/* Is there one of this name; and does it say the same? */
static bool compare(struct household *db, const struct coming *recipe, const char *name,
		    bool *there, bool *same, struct error *err)
{
	sqlite3_stmt *query;
	*there = *same = false;
	if (!store_cached(db, "SELECT system = ?2 AND source = ?3 FROM recipe WHERE name = ?1",
			  &query, err))
		return false;
	sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	sqlite3_bind_text(query, 2, recipe->system, -1, SQLITE_STATIC);
	sqlite3_bind_text(query, 3, recipe->text, (int)recipe->length, SQLITE_STATIC);
	*there = sqlite3_step(query) == SQLITE_ROW;
	*same = *there && sqlite3_column_int(query, 0) == 1;
	return store_done(db, query, err);
}

static bool insert(struct household *db, const struct coming *recipe, const char *name,
		   struct error *err)
{
	sqlite3_stmt *add;
	int count;
	if (!store_integer(db, "SELECT count(*) FROM recipe", &count, err))
		return false;
	if (count >= HOUSEHOLD_RECIPES_MAX)
		return error_usage(err, "there would be more than %d recipes; remove some first",
				   HOUSEHOLD_RECIPES_MAX);
	if (!store_cached(db, "INSERT INTO recipe (name, system, source) VALUES (?1, ?2, ?3)", &add,
			  err))
		return false;
	sqlite3_bind_text(add, 1, name, -1, SQLITE_STATIC);
	sqlite3_bind_text(add, 2, recipe->system, -1, SQLITE_STATIC);
	sqlite3_bind_text(add, 3, recipe->text, (int)recipe->length, SQLITE_STATIC);
	return store_run(db, add, err);
}

/* "plum chutney (tablet)", "plum chutney (tablet 2)"; the name is cut if it must be. */
static void name_beside(const char *name, const char *whose, int n, char out[RECIPE_NAME_SIZE])
{
	char tail[KITCHEN_NAME_SIZE + 16];
	if (n == 1)
		snprintf(tail, sizeof tail, " (%s)", whose);
	else
		snprintf(tail, sizeof tail, " (%s %d)", whose, n);
	snprintf(out, RECIPE_NAME_SIZE - strlen(tail), "%s", name);
	text_drop_partial(out);
	memcpy(out + strlen(out), tail, strlen(tail) + 1);
}

static bool put_beside(struct intake *in, const struct coming *recipe, const char *whose,
		       struct error *err)
{
	for (int n = 1; n <= BESIDE_MAX; n++) {
		char name[RECIPE_NAME_SIZE];
		bool there, same;
		name_beside(recipe->name, whose, n, name);
		if (!compare(in->db, recipe, name, &there, &same, err))
			return false;
		if (same) {
			in->report->recipes_known++;
			return true;
		}
		if (there)
			continue;
		in->report->recipes_new++;
		in->report->recipes_beside++;
		return insert(in->db, recipe, name, err);
	}
	return error_usage(err, "recipe '%s': there are %d others of that name; remove some first",
			   recipe->name, BESIDE_MAX);
}

/* A copy that the other file put beside its own, of what stands here under the plain name? */
static bool is_ours_back(struct intake *in, const struct coming *recipe, bool *is,
			 struct error *err)
{
	char plain[RECIPE_NAME_SIZE];
	bool there;
	size_t n = strlen(recipe->name);
	*is = false;
	const char *open = strstr(recipe->name, " (");
	if (!open || open == recipe->name || recipe->name[n - 1] != ')')
		return true;
	for (const char *more = open; (more = strstr(more + 1, " (")) != NULL;)
		open = more;
	snprintf(plain, sizeof plain, "%.*s", (int)(open - recipe->name), recipe->name);
	return compare(in->db, recipe, plain, &there, is, err);
}

bool intake_recipe(struct intake *in, const char *name, enum measuring_system system,
		   const char *text, const char *whose, struct error *err)
{
	struct recipe read;
	const struct coming recipe = {name, measuring_system_word(system), text, strlen(text)};
	bool there, same, back = false;
	if (!recipe_read(name, system, text, recipe.length, &read, err))
		return error_context(err, "recipe");
	recipe_release(&read);
	if (!compare(in->db, &recipe, name, &there, &same, err) ||
	    (!there && !is_ours_back(in, &recipe, &back, err)))
		return false;
	if (same || back) {
		in->report->recipes_known++;
		return true;
	}
	if (there)
		return put_beside(in, &recipe, whose, err);
	in->report->recipes_new++;
	return insert(in->db, &recipe, name, err);
}

/* --- The kitchen --- */

static bool read_here(struct intake *in, bool *elevation, bool *units, struct error *err)
{
	sqlite3_stmt *row;
	struct intake_report *report = in->report;
	*elevation = *units = false;
	if (!store_cached(in->db, "SELECT elevation_typed, units FROM kitchen", &row, err))
		return false;
	if (sqlite3_step(row) == SQLITE_ROW) {
		*elevation = sqlite3_column_type(row, 0) != SQLITE_NULL;
		*units = sqlite3_column_type(row, 1) != SQLITE_NULL;
		if (*elevation)
			(void)store_text(row, 0, report->elevation_here,
					 sizeof report->elevation_here);
	}
	return store_done(in->db, row, err);
}

static bool take_over(struct intake *in, const struct kitchen_said *said, bool elevation,
		      bool units, struct error *err)
{
	struct kitchen_change change = {.units = UNITS_UNSTATED};
	if (elevation) {
		if (said->elevation_mft < KITCHEN_ELEVATION_MIN_FT * INT64_C(1000) ||
		    said->elevation_mft > KITCHEN_ELEVATION_MAX_FT * INT64_C(1000))
			return error_usage(err, "its elevation is out of range; use another copy");
		change.elevation_stated = true;
		change.elevation_mft = (int32_t)said->elevation_mft;
		change.elevation_typed = said->elevation;
	}
	if (units && !units_parse(said->units, &change.units, err))
		return false;
	in->report->kitchen_taken = elevation || units;
	return kitchen_change(in->db, &change, err);
}

bool intake_kitchen(struct intake *in, const struct kitchen_said *said, bool take,
		    struct error *err)
{
	bool elevation, units;
	struct intake_report *report = in->report;
	if (!read_here(in, &elevation, &units, err))
		return false;
	if (said->elevation && strlen(said->elevation) < sizeof report->elevation_there)
		memcpy(report->elevation_there, said->elevation, strlen(said->elevation) + 1);
	/* It decides process times: never changed by what another file says. */
	report->elevation_differs = said->elevation && (elevation || !take) &&
				    strcmp(report->elevation_here, said->elevation) != 0;
	if (!take)
		return true;
	return take_over(in, said, said->elevation && !elevation, said->units && !units, err);
}
