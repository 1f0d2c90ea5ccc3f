#include "jarwright/household_recipes.h"

#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"
#include "store.h"

/* The list grows in steps of this many. */
#define ENTRIES_STEP 64

void stored_recipe_release(struct stored_recipe *recipe)
{
	free(recipe->text);
	*recipe = (struct stored_recipe){0};
}

void recipe_list_release(struct recipe_list *list)
{
	free(list->entries);
	*list = (struct recipe_list){0};
}

static bool no_memory(struct error *err)
{
	return error_failed(err, "recipe: out of memory; close other programs and try again");
}

/* A row that no jarwright wrote. */
static bool damaged(const struct household *db, struct error *err)
{
	return error_failed(
	    err, "household file '%s': one of its recipes is damaged; put back a backup", db->path);
}

/* Name and system, the first two columns. */
static bool read_entry(sqlite3_stmt *row, char name[RECIPE_NAME_SIZE],
		       enum measuring_system *system)
{
	const char *word = (const char *)sqlite3_column_text(row, 1);
	return store_text(row, 0, name, RECIPE_NAME_SIZE) && word &&
	       measuring_system_find(word, system) && *system != SYSTEM_UNSTATED;
}

static bool read_recipe(struct household *db, sqlite3_stmt *row, struct stored_recipe *out,
			struct error *err)
{
	const char *text = (const char *)sqlite3_column_text(row, 2);
	size_t length = (size_t)sqlite3_column_bytes(row, 2);
	if (!read_entry(row, out->name, &out->system) || !text || length == 0 ||
	    length > RECIPE_BYTES_MAX)
		return damaged(db, err);
	out->text = malloc(length + 1);
	if (!out->text)
		return no_memory(err);
	memcpy(out->text, text, length);
	out->text[length] = '\0';
	out->length = length;
	return true;
}

/* *found is false, and nothing wrong, where there is none of that name. */
static bool find(struct household *db, const char *name, struct stored_recipe *out, bool *found,
		 struct error *err)
{
	sqlite3_stmt *query;
	*found = false;
	*out = (struct stored_recipe){0};
	if (!store_prepare(db, "SELECT name, system, source FROM recipe WHERE name = ?1", &query,
			   err))
		return false;
	int code = sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	if (code == SQLITE_OK)
		code = sqlite3_step(query);
	*found = code == SQLITE_ROW;
	bool ok = *found ? read_recipe(db, query, out, err)
			 : code == SQLITE_DONE || store_failed(db, err);
	sqlite3_finalize(query);
	return ok;
}

static bool no_such_recipe(const char *name, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	return error_usage(err,
			   "recipe '%s': there is none of that name; 'jarwright recipe list' shows "
			   "those there are",
			   shown);
}

/* Recipes came with the second migration; an older file is read as one without any. */
static bool keeps_recipes(const struct household *db)
{
	return db->sql && db->version >= 2;
}

bool household_find_recipe(struct household *db, const char *name, struct stored_recipe *out,
			   bool *found, struct error *err)
{
	*found = false;
	*out = (struct stored_recipe){0};
	return !keeps_recipes(db) || find(db, name, out, found, err);
}

bool household_recipe(struct household *db, const char *name, struct stored_recipe *out,
		      struct error *err)
{
	bool found;
	return household_find_recipe(db, name, out, &found, err) &&
	       (found || no_such_recipe(name, err));
}

static bool append(struct household *db, sqlite3_stmt *row, struct recipe_list *list,
		   struct error *err)
{
	if (list->entries_n == HOUSEHOLD_RECIPES_MAX)
		return damaged(db, err);
	if (list->entries_n % ENTRIES_STEP == 0) {
		struct recipe_entry *more =
		    realloc(list->entries, (list->entries_n + ENTRIES_STEP) * sizeof *more);
		if (!more)
			return no_memory(err);
		list->entries = more;
	}
	struct recipe_entry *entry = &list->entries[list->entries_n];
	if (!read_entry(row, entry->name, &entry->system))
		return damaged(db, err);
	list->entries_n++;
	return true;
}

bool household_recipes(struct household *db, struct recipe_list *out, struct error *err)
{
	sqlite3_stmt *query;
	*out = (struct recipe_list){0};
	if (!keeps_recipes(db))
		return true;
	if (!store_prepare(db, "SELECT name, system FROM recipe ORDER BY name", &query, err))
		return false;
	int code = SQLITE_ROW;
	bool ok = true;
	while (ok && (code = sqlite3_step(query)) == SQLITE_ROW)
		ok = append(db, query, out, err);
	if (ok && code != SQLITE_DONE)
		ok = store_failed(db, err);
	sqlite3_finalize(query);
	if (!ok)
		recipe_list_release(out);
	return ok;
}

static bool insert(struct household *db, const char *name, enum measuring_system system,
		   const char *text, size_t length, struct error *err)
{
	sqlite3_stmt *statement;
	int count;
	if (!store_integer(db, "SELECT count(*) FROM recipe", &count, err))
		return false;
	if (count >= HOUSEHOLD_RECIPES_MAX)
		return error_usage(err, "recipe: there are %d already; remove one first",
				   HOUSEHOLD_RECIPES_MAX);
	if (!store_prepare(db, "INSERT INTO recipe (name, system, source) VALUES (?1, ?2, ?3)",
			   &statement, err))
		return false;
	int code = sqlite3_bind_text(statement, 1, name, -1, SQLITE_STATIC);
	code |= sqlite3_bind_text(statement, 2, measuring_system_word(system), -1, SQLITE_STATIC);
	code |= sqlite3_bind_text(statement, 3, text, (int)length, SQLITE_STATIC);
	if (code != SQLITE_OK) {
		sqlite3_finalize(statement);
		return store_failed(db, err);
	}
	return store_finish(db, statement, err);
}

static bool add(struct household *db, const char *name, enum measuring_system system,
		const char *text, size_t length, bool *already, struct error *err)
{
	struct stored_recipe old;
	bool found;
	if (!find(db, name, &old, &found, err))
		return false;
	*already = old.text && old.system == system && old.length == length &&
		   memcmp(old.text, text, length) == 0;
	stored_recipe_release(&old);
	if (*already)
		return true;
	if (!found)
		return insert(db, name, system, text, length, err);
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	return error_usage(err,
			   "recipe '%s': there is one of that name that says something else; give "
			   "this one another name, or remove the other first",
			   shown);
}

bool household_add_recipe(struct household *db, const char *name, enum measuring_system system,
			  const char *text, size_t length, bool *already, struct error *err)
{
	struct recipe read;
	*already = false;
	if (!recipe_read(name, system, text, length, &read, err))
		return false;
	recipe_release(&read);
	if (!store_begin(db, err))
		return false;
	return store_end(db, add(db, name, system, text, length, already, err), err);
}

static bool remove_recipe(struct household *db, const char *name, struct error *err)
{
	sqlite3_stmt *statement;
	if (!store_prepare(db, "DELETE FROM recipe WHERE name = ?1", &statement, err))
		return false;
	if (sqlite3_bind_text(statement, 1, name, -1, SQLITE_STATIC) != SQLITE_OK) {
		sqlite3_finalize(statement);
		return store_failed(db, err);
	}
	if (!store_finish(db, statement, err))
		return false;
	return sqlite3_changes(db->sql) == 1 || no_such_recipe(name, err);
}

bool household_remove_recipe(struct household *db, const char *name, struct error *err)
{
	if (!store_begin(db, err))
		return false;
	return store_end(db, remove_recipe(db, name, err), err);
}
